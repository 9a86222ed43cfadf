//! `readings.csv`: rows of text as a spreadsheet reads them (RFC 4180).
//!
//! Records end in CR LF, the last one too, and a cell is quoted when it must be. A spreadsheet
//! takes a cell that starts with `=`, `+`, `-` or `@` for something to work out, so a remark could
//! run as a formula; such a cell gets an apostrophe in front and stays text. The same goes for
//! their full-width forms, for the minus sign U+2212 and for a tab or line break in front. A plain
//! negative number such as `-12.5` stays as it is: it cannot be a formula, and back-dish is
//! negative.

/// Characters that make a spreadsheet work a cell out.
const LEADING: [char; 12] = [
    '=', '+', '-', '@', '\t', '\r', '\n', '\u{2212}', '\u{FF1D}', '\u{FF0B}', '\u{FF0D}',
    '\u{FF20}',
];

/// The rows as CSV, the first of them the header.
pub fn csv(rows: &[Vec<String>]) -> String {
    rows.iter().map(|row| record(row)).collect()
}

fn record(row: &[String]) -> String {
    let cells: Vec<_> = row.iter().map(|text| cell(text)).collect();
    cells.join(",") + "\r\n"
}

fn cell(text: &str) -> String {
    let mut kept = String::new();
    if text.starts_with(LEADING) && !is_negative_number(text) {
        kept.push('\'');
    }
    kept.push_str(text);
    if kept.contains([',', '"', '\r', '\n']) {
        kept = format!("\"{}\"", kept.replace('"', "\"\""));
    }
    kept
}

fn is_negative_number(text: &str) -> bool {
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    text.strip_prefix('-').is_some_and(|number| {
        number
            .split_once('.')
            .map_or(digits(number), |(whole, rest)| {
                digits(whole) && digits(rest)
            })
    })
}

#[cfg(test)]
mod tests {
    use super::{cell, csv};

    #[test]
    fn records_end_in_cr_lf_and_cells_are_quoted_when_they_must_be() {
        let rows = [
            ["part", "says"],
            ["felloe 3", "split, \"bad\"\r\nat the dowel"],
        ]
        .map(|row| row.map(String::from).to_vec());
        assert_eq!(
            csv(&rows),
            "part,says\r\nfelloe 3,\"split, \"\"bad\"\"\r\nat the dowel\"\r\n"
        );
    }

    #[test]
    fn what_a_spreadsheet_would_work_out_stays_text() {
        for (given, kept) in [
            ("=1+1", "'=1+1"),
            ("+44 1", "'+44 1"),
            ("-spoke", "'-spoke"),
            ("-1+2", "'-1+2"),
            ("-", "'-"),
            ("-.5", "'-.5"),
            ("@here", "'@here"),
            ("\t=1", "'\t=1"),
            ("\r=1", "\"'\r=1\""),
            ("\n=1", "\"'\n=1\""),
            ("\u{2212}3", "'\u{2212}3"),
            ("\u{FF1D}1", "'\u{FF1D}1"),
            ("=a,b", "\"'=a,b\""),
        ] {
            assert_eq!(cell(given), kept);
        }
    }

    #[test]
    fn numbers_and_plain_words_are_left_alone() {
        for text in ["-12.5", "-3", "12", "", "3 - 4", "'quoted"] {
            assert_eq!(cell(text), text);
        }
    }
}
