//! Text whose lines may not be longer than a bound.

use std::io::{self, Read};

/// Passes text on, and fails at a line that is longer than the bound: whoever gathers lines never holds more.
#[derive(Debug)]
pub struct ShortLines<R> {
    from: R,
    most: usize,
    /// Bytes of the line so far.
    line: usize,
}

impl<R> ShortLines<R> {
    /// Text whose lines have at most so many bytes.
    pub fn new(from: R, most: usize) -> Self {
        Self { from, most, line: 0 }
    }
}

impl<R: Read> Read for ShortLines<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let count = self.from.read(buffer)?;
        for part in buffer[..count].split_inclusive(|byte| *byte == b'\n') {
            self.line += part.len();
            if self.line > self.most {
                let why = format!("it has more than {} bytes", self.most);
                return Err(io::Error::new(io::ErrorKind::InvalidData, why));
            }
            if part.ends_with(b"\n") {
                self.line = 0;
            }
        }
        Ok(count)
    }
}

#[cfg(test)]
mod tests {
    use std::io::{BufRead, BufReader};

    use super::*;

    #[test]
    fn a_line_past_the_bound_is_an_error_and_shorter_ones_pass() {
        let read = |text: &'static str| {
            let lines = BufReader::with_capacity(2, ShortLines::new(text.as_bytes(), 4)).lines();
            lines.map(Result::ok).collect::<Option<Vec<String>>>()
        };
        assert_eq!(read("abc\n\nxyz\nabcd"), Some(vec!["abc".into(), String::new(), "xyz".into(), "abcd".into()]));
        assert_eq!(read("abc\nabcde"), None);
    }
}
