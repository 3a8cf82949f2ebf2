//! What errors say.

use core::fmt;

use super::Error;

/// How a caller writes the numbers of a message.
pub type Number = fn(f64, &mut fmt::Formatter<'_>) -> fmt::Result;

impl Error {
    /// What the error displays, its numbers written by the caller.
    ///
    /// Core's writing of a double is 17 kB of a web page or of flash, and whoever writes JSON has another already.
    ///
    /// # Errors
    /// What the formatter or the caller's own writer refuses.
    ///
    /// ```
    /// struct Rounded(hilum::Error);
    ///
    /// impl core::fmt::Display for Rounded {
    ///     fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
    ///         self.0.tell(f, |value, f| write!(f, "{value:.1}"))
    ///     }
    /// }
    ///
    /// let error = hilum::Error::NotRising { value: -0.25 };
    /// assert!(Rounded(error).to_string().contains("changes by -0.2 m³/s"));
    /// ```
    pub fn tell(&self, f: &mut fmt::Formatter<'_>, number: Number) -> fmt::Result {
        let n = |value| Shown(value, number);
        match *self {
            Self::NotFinite { argument, value } => {
                write!(f, "{argument} must be a finite number, but is {}", n(value))
            }
            Self::NotPositive { argument, value } => {
                write!(f, "{argument} must be more than 0, but is {}", n(value))
            }
            Self::Negative { argument, value } => {
                write!(f, "{argument} must not be negative, but is {}", n(value))
            }
            Self::OutOfRange { argument, value } => write!(
                f,
                "{argument} must lie within 1e-30 and 1e30 base units, but is {}; check the number and its unit",
                n(value)
            ),
            Self::NotAShare { argument, value } => {
                write!(f, "{argument} must lie within 0 % and 100 %, but is {} (1 = 100 %)", n(value))
            }
            Self::BelowAbsoluteZero { argument, value } => {
                write!(f, "{argument} must be at or above absolute zero (-273.15 °C), but is {} °C", n(value))
            }
            Self::MoreThan { argument, value, most } => {
                write!(f, "{argument} must be at most {}, but is {}", n(most), n(value))
            }
            Self::TooFew { argument, given, least } => {
                write!(f, "{argument}: at least {least} are needed, but there are {given}")
            }
            Self::AllEqual { argument, value } => {
                write!(f, "{argument} must differ, but all are {}", n(value))
            }
            Self::NotFalling { argument, value } => write!(
                f,
                "{argument} must fall with time, but changes by {} decimal orders per second; check the counts and times",
                n(value)
            ),
            Self::TooLittle { argument, value, least } => {
                write!(f, "{argument} must be at least {}, but is {}", n(least), n(value))
            }
            Self::OneSetting { value } => write!(
                f,
                "a pump curve of several catches needs two different settings, but all are {}",
                n(value)
            ),
            Self::NotRising { value } => write!(
                f,
                "the flow of a pump must rise with its setting, but changes by {} m³/s per step; check the catches",
                n(value)
            ),
            Self::SizesOfPack { value } => write!(
                f,
                "a choice is made among 1 to 8 sizes of pack, but there are {value}; leave out what you would not open"
            ),
            Self::TooManySets { value } => write!(
                f,
                "{} sets cannot be counted; look at the coverage of a set and the mass of seed",
                n(value)
            ),
            Self::NotForTheBus { ddi, value, most } => write!(
                f,
                "DDI {ddi} carries 0 or 1 to {most} steps, but this would be {}; check the value and its unit",
                n(value)
            ),
            Self::Needed { argument } => write!(f, "{argument} is needed here, but was not given"),
        }
    }
}

impl core::error::Error for Error {}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.tell(f, shown)
    }
}

struct Shown(f64, Number);

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.1(self.0, f)
    }
}

/// A number as a message shows it: 1e300 rather than three hundred digits.
fn shown(value: f64, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let size = value.abs();
    if size > 0.0 && size.is_finite() && !(1e-6..1e15).contains(&size) {
        write!(f, "{value:e}")
    } else {
        write!(f, "{value}")
    }
}
