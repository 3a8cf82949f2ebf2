//! How many tests passed, out of what `cargo test` prints.

use std::ops::AddAssign;

/// Tests, or checks that are not tests.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Tally {
    pub(crate) passed: u64,
    pub(crate) failed: u64,
}

impl AddAssign for Tally {
    fn add_assign(&mut self, more: Self) {
        self.passed += more.passed;
        self.failed += more.failed;
    }
}

/// The numbers of a line such as `test result: ok. 12 passed; 0 failed; 3 ignored; …`.
pub(crate) fn result_line(line: &str) -> Option<Tally> {
    let (_, numbers) = line.trim().strip_prefix("test result: ")?.split_once(". ")?;
    let number = |what: &str| {
        numbers.split(';').find_map(|part| part.trim().strip_suffix(what)?.trim().parse::<u64>().ok())
    };
    Some(Tally { passed: number("passed")?, failed: number("failed")? })
}

/// The name in a line such as `test mix::tests::it_adds_up ... FAILED`.
pub(crate) fn failed_test(line: &str) -> Option<&str> {
    line.trim().strip_prefix("test ")?.strip_suffix(" ... FAILED")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_result_line_gives_its_numbers() {
        let ok =
            "test result: ok. 12 passed; 0 failed; 3 ignored; 0 measured; 1 filtered out; finished in 0.00s";
        assert_eq!(result_line(ok), Some(Tally { passed: 12, failed: 0 }));
        let failed = "test result: FAILED. 7 passed; 2 failed; 0 ignored; 0 measured; 0 filtered out\n";
        assert_eq!(result_line(failed), Some(Tally { passed: 7, failed: 2 }));
    }

    #[test]
    fn a_failed_test_is_named() {
        assert_eq!(failed_test("test mix::it_adds_up ... FAILED\n"), Some("mix::it_adds_up"));
        let doctest = "test crates/hilum/src/seed.rs - seed::SeedSize (line 12) ... FAILED";
        assert_eq!(failed_test(doctest), Some("crates/hilum/src/seed.rs - seed::SeedSize (line 12)"));
        assert_eq!(failed_test("test mix::it_adds_up ... ok"), None);
        assert_eq!(failed_test("test result: FAILED. 7 passed; 2 failed; 0 ignored"), None);
    }

    #[test]
    fn other_lines_give_none() {
        for line in [
            "",
            "running 12 tests",
            "test mix::tests::it_adds_up ... ok",
            "12 passed, 0 failed",
            "test result: ok.",
            "test result: ok. many passed; 0 failed;",
            "all doctests ran in 0.52s; merged doctests compilation took 0.50s",
        ] {
            assert_eq!(result_line(line), None, "{line}");
        }
    }
}
