//! Tables for a spreadsheet, as comma-separated values (RFC 4180).

use std::borrow::Cow;

/// A table being written, row by row.
pub(crate) struct Spreadsheet(csv::Writer<Vec<u8>>);

impl Spreadsheet {
    /// A table with the words over its columns.
    pub(crate) fn new<F: AsRef<str>>(heads: impl IntoIterator<Item = F>) -> Result<Self, csv::Error> {
        let mut table = Self(csv::Writer::from_writer(Vec::new()));
        table.row(heads)?;
        Ok(table)
    }

    /// Adds a row.
    pub(crate) fn row<F: AsRef<str>>(&mut self, fields: impl IntoIterator<Item = F>) -> Result<(), csv::Error> {
        for field in fields {
            self.0.write_field(guarded(field.as_ref()).as_bytes())?;
        }
        self.0.write_record(None::<&[u8]>)
    }

    /// Its text.
    pub(crate) fn text(self) -> Result<String, csv::Error> {
        let bytes = self.0.into_inner().map_err(csv::IntoInnerError::into_error)?;
        Ok(String::from_utf8_lossy(&bytes).into_owned())
    }
}

/// What makes a spreadsheet take a field for a formula, if the field begins with it.
///
/// After OWASP, "CSV Injection", its Application Security Verification Standard 5.0, 1.2.10, and CWE-1236. The wide forms are
/// those of East Asian keyboards.
const BEGINS_A_FORMULA: [char; 12] = ['=', '+', '-', '@', '\t', '\r', '\n', '\0', '＝', '＋', '－', '＠'];

/// A field that no spreadsheet runs: with an apostrophe before it, as all of these say. A plain number stays a number.
fn guarded(field: &str) -> Cow<'_, str> {
    if field.starts_with(BEGINS_A_FORMULA) && !is_plain_number(field) {
        return Cow::Owned(format!("'{field}"));
    }
    Cow::Borrowed(field)
}

fn is_plain_number(field: &str) -> bool {
    let digits = field.strip_prefix(['-', '+']).unwrap_or(field);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, "0"));
    [whole, part].iter().all(|digits| !digits.is_empty() && digits.bytes().all(|digit| digit.is_ascii_digit()))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::*;

    #[test]
    fn no_field_is_run_by_a_spreadsheet() {
        for field in ["=1+1", "@SUM(A1)", "+cmd|' /C calc'!A0", "-2+3", "-", "\t=1", "\r=1", "＝1", "-1.", "--1"] {
            assert_eq!(guarded(field), format!("'{field}"));
        }
    }

    #[test]
    fn numbers_names_and_days_stay_as_they_are() {
        for field in ["-12.50", "12", "+3", "-0.5", "2026-11-25", "Curlew hanger", "a=b", "", "'quoted"] {
            assert_eq!(guarded(field), field);
        }
    }

    #[test]
    fn a_reader_of_the_text_finds_the_fields_again() {
        let mut table = Spreadsheet::new(["name", "due"]).unwrap();
        table.row(["=HYPERLINK(\"a\", \"b\")", "-1.50"]).unwrap();
        let text = table.text().unwrap();
        let rows: Vec<csv::StringRecord> =
            csv::Reader::from_reader(text.as_bytes()).records().map(Result::unwrap).collect();
        assert_eq!(rows, [vec!["'=HYPERLINK(\"a\", \"b\")", "-1.50"]]);
    }
}
