//! Quantities of a job document → checked values of the core, with a problem where they are not.

use alloc::format;
use alloc::string::String;

use hilum::Argument;
use hilum::error::not_negative;
use hilum::quantity::{Measure, Ratio, Temperature, Time};
use hilum::seed::Share;
use hilum::text::{Atom, Bases, Compound, Measured, TextError, Written};
use hilum::unit::Powers;

use crate::digits::{Told, exact};
use crate::document::Quantity;
use crate::problem::{Gathered, Pointer, quoted};

/// A quantity of the document, read but not yet measured.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Asked<'j> {
    doc: &'j Quantity,
    pub(crate) written: Written,
}

/// A quantity as it stands in the document, for messages.
pub(crate) fn shown(quantity: &Quantity) -> String {
    match quantity {
        Quantity::Text(text) => quoted(text),
        Quantity::Pair { value, unit } => quoted(&format!("{} {unit}", exact(*value))),
    }
}

impl<'j> Asked<'j> {
    /// Reads number and unit, of anything but a stand.
    pub(crate) fn read(doc: &'j Quantity, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self> {
        let asked = Self::read_stand(doc, at, gathered)?;
        let Compound { above, below } = asked.written.unit;
        if above == Atom::Plant || below.is_some_and(|(_, below)| below == Atom::Plant) {
            asked.refuse(at, gathered, "counts plants, which only a stand does; write seeds");
            return None;
        }
        Some(asked)
    }

    /// Reads number and unit, where plants may be counted.
    pub(crate) fn read_stand(doc: &'j Quantity, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self> {
        let written = match doc {
            Quantity::Text(text) => Written::read_with(text, gathered.decimal),
            Quantity::Pair { value, .. } if !value.is_finite() => Err(TextError::NotFinite),
            Quantity::Pair { value, unit } => {
                Compound::read_with(unit, gathered.decimal).map(|unit| Written { number: *value, unit })
            }
        };
        written
            .map_err(|error| gathered.add(at, Some(shown(doc)), format!("{error}")))
            .ok()
            .map(|written| Self { doc, written })
    }

    /// Notes a problem with it.
    pub(crate) fn refuse(&self, at: &Pointer<'_>, gathered: &mut Gathered, message: impl Into<String>) {
        gathered.add(at, Some(shown(self.doc)), message);
    }

    /// Value in base units and what it measures.
    pub(crate) fn measured(
        &self,
        bases: &Bases,
        wanted: &str,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<(f64, Powers)> {
        match self.written.measured(bases) {
            Ok(Measured::Quantity { value, powers }) => return Some((value, powers)),
            Ok(Measured::Temperature(_)) => {
                self.refuse(at, gathered, format!("is a temperature, but {wanted} is needed"));
            }
            Err(error) => self.refuse(at, gathered, format!("{error}")),
        }
        None
    }

    /// A quantity of one kind; `wanted` says which in words ("a seed size, seeds per mass,").
    pub(crate) fn quantity<Q: Measure>(
        &self,
        bases: &Bases,
        wanted: &str,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<Q> {
        let (value, powers) = self.measured(bases, wanted, at, gathered)?;
        if powers == Q::POWERS {
            return Some(Q::from_base(value));
        }
        self.wrong(powers, wanted, at, gathered);
        None
    }

    /// Notes that it measures something else.
    pub(crate) fn wrong(&self, given: Powers, wanted: &str, at: &Pointer<'_>, gathered: &mut Gathered) {
        self.refuse(at, gathered, format!("gives {}, where {wanted} is needed", in_words(given)));
    }

    /// What the core made of it, or its refusal as a problem.
    pub(crate) fn checked<T>(
        &self,
        result: Result<T, hilum::Error>,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<T> {
        result.map_err(|error| self.refuse(at, gathered, refusal(error))).ok()
    }
}

/// What a dimension is called.
pub(crate) fn in_words(powers: Powers) -> &'static str {
    powers.name().unwrap_or("a quantity of a kind that is not used here")
}

/// The core's refusal, as it reads behind a value of a document.
pub(crate) fn refusal(error: hilum::Error) -> String {
    use hilum::Error;
    match error {
        Error::NotFinite { .. } => "is not a finite number; write one".into(),
        Error::NotPositive { .. } => "must be more than 0".into(),
        Error::Negative { .. } => "must not be negative".into(),
        Error::OutOfRange { .. } => {
            "is beyond what can be calculated with; values lie within 1e-30 and 1e30 kg, m3, s, seeds or CFU; check the number and its unit"
                .into()
        }
        Error::NotAShare { .. } => "must lie within 0 % and 100 %".into(),
        Error::BelowAbsoluteZero { .. } => "is below absolute zero (-273.15 degC); check the number and its unit".into(),
        other => {
            let other = Told(other);
            format!("cannot be used: {other}")
        }
    }
}

/// What a field of the job is read with. Where it is absent nothing is read; where it is wrong that is noted, and
/// whoever gathers the problems throws away what else was read.
pub(crate) struct Field<'a, 'j> {
    pub(crate) doc: Option<&'j Quantity>,
    pub(crate) at: Pointer<'a>,
}

/// A field of an order or of another object.
#[inline(never)]
pub(crate) fn field<'a, 'j>(doc: Option<&'j Quantity>, at: &'a Pointer<'a>, name: &'a str) -> Field<'a, 'j> {
    Field { doc, at: at.field(name) }
}

impl<'j> Field<'_, 'j> {
    /// Number and unit, to be measured later.
    #[inline(never)]
    pub(crate) fn asked(&self, gathered: &mut Gathered) -> Option<Asked<'j>> {
        Asked::read(self.doc?, &self.at, gathered)
    }

    /// A checked value of one dimension.
    pub(crate) fn get<Q: Measure, T>(
        &self,
        wanted: &str,
        check: impl FnOnce(Q) -> Result<T, hilum::Error>,
        gathered: &mut Gathered,
    ) -> Option<T> {
        let base = self.base(Q::POWERS, wanted, gathered)?;
        check(Q::from_base(base)).map_err(|error| self.refuse(error, gathered)).ok()
    }

    /// A checked value of one of several dimensions; what is of none of them is `None` to `check`.
    pub(crate) fn one_of<T>(
        &self,
        bases: &Bases,
        wanted: &str,
        check: impl FnOnce(f64, Powers) -> Result<Option<T>, hilum::Error>,
        gathered: &mut Gathered,
    ) -> Option<T> {
        let (asked, value, powers) = self.measured(bases, wanted, gathered)?;
        match check(value, powers) {
            Ok(None) => asked.wrong(powers, wanted, &self.at, gathered),
            Ok(some) => return some,
            Err(error) => self.refuse(error, gathered),
        }
        None
    }

    /// Its value in base units, and what it measures.
    #[inline(never)]
    fn measured(
        &self,
        bases: &Bases,
        wanted: &str,
        gathered: &mut Gathered,
    ) -> Option<(Asked<'j>, f64, Powers)> {
        let asked = self.asked(gathered)?;
        let (value, powers) = asked.measured(bases, wanted, &self.at, gathered)?;
        Some((asked, value, powers))
    }

    /// Its value in base units, if it has these dimensions.
    #[inline(never)]
    fn base(&self, powers: Powers, wanted: &str, gathered: &mut Gathered) -> Option<f64> {
        let (asked, value, given) = self.measured(&Bases::default(), wanted, gathered)?;
        if given == powers {
            return Some(value);
        }
        asked.wrong(given, wanted, &self.at, gathered);
        None
    }

    /// Its value in base units, if it has these dimensions and is not negative.
    #[inline(never)]
    pub(crate) fn not_negative(&self, powers: Powers, wanted: &str, gathered: &mut Gathered) -> Option<f64> {
        let base = self.base(powers, wanted, gathered)?;
        not_negative(Argument::Reading, base).map_err(|error| self.refuse(error, gathered)).ok()
    }

    #[inline(never)]
    fn refuse(&self, error: hilum::Error, gathered: &mut Gathered) {
        gathered.add(&self.at, self.doc.map(shown), refusal(error));
    }

    /// A share, 0 to 100 %.
    #[inline(never)]
    pub(crate) fn share(&self, gathered: &mut Gathered) -> Option<Share> {
        self.get::<Ratio, _>("a share in %", Share::new, gathered)
    }

    /// A duration, which may be 0.
    #[inline(never)]
    pub(crate) fn duration(&self, gathered: &mut Gathered) -> Option<Time> {
        self.not_negative(Time::POWERS, "a time", gathered).map(Time::from_base)
    }

    /// A point on the temperature scale.
    #[inline(never)]
    pub(crate) fn temperature(&self, gathered: &mut Gathered) -> Option<Temperature> {
        let asked = self.asked(gathered)?;
        match asked.written.measured(&Bases::default()) {
            Ok(Measured::Temperature(at)) => return asked.checked(at.checked(), &self.at, gathered),
            Ok(Measured::Quantity { powers, .. }) => {
                asked.wrong(powers, "a temperature in degC or degF", &self.at, gathered);
            }
            Err(error) => asked.refuse(&self.at, gathered, format!("{error}")),
        }
        None
    }
}
