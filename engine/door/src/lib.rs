//! The one door that files are opened by: regular files alone, without waiting, and never more than a bound.
//!
//! What stands under a name may be a pipe that nobody writes to, a device without an end, or a file whose size the system
//! tells wrongly. So it is looked at before and after it is opened, and reading stops at the bound whatever was told.

mod error;
mod lines;

use std::fs::{self, File, Metadata, OpenOptions};
use std::io::Read;
use std::path::Path;

pub use error::OpenError;
pub use lines::ShortLines;

/// The most bytes of a text of the maker's: a design is a page or two.
pub const MOST_TEXT: u64 = 4_000_000;
/// The most bytes of a library of knots: one with everything in it has a few million.
pub const MOST_LIBRARY: u64 = 32_000_000;
/// The most bytes of one line of a book's text: the longest holds a whole page.
pub const MOST_LINE: usize = 10_000_000;

/// Opens a regular file for reading. A link is followed.
///
/// # Errors
/// [`OpenError`] when nothing stands there, when it is no regular file, or when the system refuses.
pub fn open(path: &Path) -> Result<File, OpenError> {
    // Looked at first: a socket can't be opened, and to open a device may already do something.
    regular(&fs::metadata(path)?)?;
    let file = for_reading(path)?;
    // Something else may have come in its place meanwhile.
    regular(&file.metadata()?)?;
    Ok(file)
}

/// Reads a whole file of at most so many bytes.
///
/// # Errors
/// [`OpenError`] as for [`open`], and when there are more bytes.
pub fn read(path: &Path, most: u64) -> Result<Vec<u8>, OpenError> {
    let file = open(path)?;
    let told = file.metadata()?.len();
    if told > most {
        return Err(OpenError::TooLong(most));
    }
    // What is told may be wrong; where it is right, the file is read at one go.
    let mut bytes = Vec::with_capacity(usize::try_from(told).unwrap_or_default() + 1);
    file.take(most + 1).read_to_end(&mut bytes)?;
    if bytes.len() as u64 > most { Err(OpenError::TooLong(most)) } else { Ok(bytes) }
}

/// Reads a whole text of at most so many bytes.
///
/// # Errors
/// [`OpenError`] as for [`read`], and when it is not UTF-8.
pub fn read_text(path: &Path, most: u64) -> Result<String, OpenError> {
    String::from_utf8(read(path, most)?).map_err(|_| OpenError::NotText)
}

/// Opens without waiting: a pipe would wait for somebody to write to it.
#[allow(clippy::disallowed_methods, reason = "this is the door that all others must use")]
fn for_reading(path: &Path) -> std::io::Result<File> {
    let mut how = OpenOptions::new();
    how.read(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        // The bits are those of the system's own calls, which take a signed number.
        how.custom_flags((rustix::fs::OFlags::NONBLOCK | rustix::fs::OFlags::NOCTTY).bits().cast_signed());
    }
    how.open(path)
}

/// Refuses what is no regular file.
///
/// # Errors
/// [`OpenError::NotAFile`], which says what it is.
pub fn regular(about: &Metadata) -> Result<(), OpenError> {
    if about.is_file() { Ok(()) } else { Err(OpenError::NotAFile(sort_of(about))) }
}

#[cfg(unix)]
fn sort_of(about: &Metadata) -> &'static str {
    use std::os::unix::fs::FileTypeExt;
    let sort = about.file_type();
    match () {
        () if sort.is_dir() => "a folder",
        () if sort.is_fifo() => "a pipe",
        () if sort.is_socket() => "a socket",
        () => "a device",
    }
}

#[cfg(not(unix))]
fn sort_of(about: &Metadata) -> &'static str {
    if about.is_dir() { "a folder" } else { "a device" }
}

#[cfg(all(test, unix))]
#[allow(clippy::disallowed_methods, reason = "a test makes its files by hand")]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use std::os::unix::net::UnixListener;

    use super::*;

    fn said(path: impl AsRef<Path>) -> String {
        read(path.as_ref(), 1000).unwrap_err().to_string()
    }

    #[test]
    fn only_regular_files_are_opened() {
        let folder = tempfile::tempdir().unwrap();
        let at = |name: &str| folder.path().join(name);
        rustix::fs::mkfifoat(rustix::fs::CWD, at("pipe"), rustix::fs::Mode::RWXU).unwrap();
        let _socket = UnixListener::bind(at("socket")).unwrap();
        std::os::unix::fs::symlink("/dev/zero", at("link")).unwrap();
        std::os::unix::fs::symlink("nowhere", at("dangling")).unwrap();
        fs::write(at("file"), "words").unwrap();
        assert_eq!(said("/dev/zero"), "is a device and not a file");
        assert_eq!(said(at("link")), "is a device and not a file");
        assert_eq!(said(at("pipe")), "is a pipe and not a file");
        assert_eq!(said(at("socket")), "is a socket and not a file");
        assert_eq!(said(folder.path()), "is a folder and not a file");
        assert!(matches!(read(&at("dangling"), 9), Err(OpenError::Missing)));
        assert_eq!(read(&at("file"), 5).unwrap(), b"words");
        assert_eq!(read(&at("file"), 4).unwrap_err().to_string(), "has more than 4 bytes");
    }

    #[test]
    #[cfg(target_os = "linux")]
    fn the_bound_holds_whatever_the_system_says_of_the_size() {
        // The system says that this file has no bytes.
        let about = fs::metadata("/proc/cpuinfo").unwrap();
        assert_eq!((about.is_file(), about.len()), (true, 0));
        assert!(matches!(read(Path::new("/proc/cpuinfo"), 10), Err(OpenError::TooLong(10))));
        assert!(read(Path::new("/proc/cpuinfo"), MOST_TEXT).unwrap().len() > 10);
    }
}
