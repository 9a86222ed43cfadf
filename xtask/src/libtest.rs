//! The lines in which a Rust test program sums up.

/// Tests that passed and tests that failed.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Counts {
    pub(crate) passed: u64,
    pub(crate) failed: u64,
}

impl Counts {
    /// True if no test ran at all.
    pub(crate) fn is_empty(self) -> bool {
        self == Self::default()
    }
}

impl std::ops::AddAssign for Counts {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
    }
}

/// The counts of a summing-up line; none for any other line.
pub(crate) fn counts(line: &str) -> Option<Counts> {
    let (_, sums) = line
        .trim()
        .strip_prefix("test result: ")?
        .split_once(". ")?;
    let mut counts = Counts::default();
    for part in sums.split("; ") {
        match part.split_once(' ') {
            Some((number, "passed")) => counts.passed = number.parse().ok()?,
            Some((number, "failed")) => counts.failed = number.parse().ok()?,
            _ => {}
        }
    }
    Some(counts)
}

/// The name of a test that was skipped, and why; none for any other line.
pub(crate) fn skipped(line: &str) -> Option<(&str, &str)> {
    line.trim()
        .strip_prefix("test ")?
        .split_once(" ... ignored, ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_summing_up_is_read() {
        let line = "test result: ok. 12 passed; 0 failed; 1 ignored; 0 measured; 3 filtered out; finished in 0.01s";
        assert_eq!(
            counts(line),
            Some(Counts {
                passed: 12,
                failed: 0
            })
        );
        let line = "test result: FAILED. 3 passed; 2 failed; 0 ignored; 0 measured; 0 filtered out; finished in 1.20s";
        assert_eq!(
            counts(line),
            Some(Counts {
                passed: 3,
                failed: 2
            })
        );
    }

    #[test]
    fn a_skipped_test_is_read_with_its_reason() {
        let line = "test engines::trouble::webkit::full ... ignored, there is no quota to set";
        let skipped_one = ("engines::trouble::webkit::full", "there is no quota to set");
        assert_eq!(skipped(line), Some(skipped_one));
        assert_eq!(skipped("test engines::saving ... ok"), None);
        assert_eq!(skipped("2 ignored, 3 passed"), None);
    }

    #[test]
    fn other_lines_are_not_counted() {
        for line in [
            "test quantity::reads ... ok",
            "running 3 tests",
            "12 passed; 0 failed",
            "test result: ok. many passed; 0 failed;",
            "",
        ] {
            assert_eq!(counts(line), None, "{line}");
        }
    }
}
