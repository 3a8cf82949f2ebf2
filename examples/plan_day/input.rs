//! Where a job comes from: the built-in demo, a file, or standard input.

use std::ffi::OsString;
use std::fmt::{self, Display};
use std::fs::File;
use std::io::{self, Read};
use std::path::PathBuf;

use hilum_job::limits::BYTES;

/// The demo.
const DEMO: &str = include_str!("../jobs/dealer_day.json");

/// Where a job comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Source {
    /// Built in.
    Demo,
    /// `-`
    StandardInput,
    /// A path.
    File(PathBuf),
}

impl From<OsString> for Source {
    fn from(argument: OsString) -> Self {
        if argument == "-" { Self::StandardInput } else { Self::File(argument.into()) }
    }
}

impl Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Demo => f.write_str("the built-in demo"),
            Self::StandardInput => f.write_str("standard input"),
            Self::File(path) => write!(f, "{}", path.display()),
        }
    }
}

impl Source {
    /// The text of the job; else what is wrong, in words.
    pub(crate) fn text(&self) -> Result<String, String> {
        match self {
            Self::Demo => Ok(DEMO.to_owned()),
            Self::StandardInput => text(io::stdin().lock()),
            Self::File(path) => text(File::open(path).map_err(|error| format!("cannot be opened: {error}"))?),
        }
    }
}

/// Reads text to the end, and no further than a job may reach.
fn text(from: impl Read) -> Result<String, String> {
    let most = u64::try_from(BYTES).unwrap_or(u64::MAX);
    let mut bytes = Vec::new();
    from.take(most.saturating_add(1))
        .read_to_end(&mut bytes)
        .map_err(|error| format!("cannot be read: {error}"))?;
    if bytes.len() > BYTES {
        return Err(format!("has more than {BYTES} bytes (16 MiB), the most that is read"));
    }
    String::from_utf8(bytes).map_err(|error| {
        let offset = error.utf8_error().valid_up_to();
        format!("is not UTF-8 text: the byte at offset {offset} does not belong; save the job as UTF-8")
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_that_is_not_utf_8_is_refused_with_its_place() {
        let message = text(&b"{\"a\": \xff}"[..]).unwrap_err();
        assert!(message.contains("offset 6"), "{message}");
    }

    #[test]
    fn reading_stops_behind_the_limit() {
        let message = text(io::repeat(b' ')).unwrap_err();
        assert!(message.contains("16 MiB"), "{message}");
        let most = u64::try_from(BYTES).unwrap();
        assert_eq!(text(io::repeat(b' ').take(most)).unwrap().len(), BYTES);
    }

    #[test]
    fn a_dash_is_standard_input() {
        assert_eq!(Source::from(OsString::from("-")), Source::StandardInput);
        assert_eq!(Source::from(OsString::from("a.json")), Source::File("a.json".into()));
    }
}
