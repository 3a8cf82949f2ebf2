//! Readings of a run → amounts of the core, and how sure they are.

use alloc::vec::Vec;

use hilum::account::{Measured, Quantity, Reading};
use hilum::quantity::{Mass, Measure, Volume};
use hilum::text::Bases;
use hilum::unit::Powers;

use super::ask::{Field, field, shown};
use crate::document;
use crate::list::keep;
use crate::problem::{Gathered, Pointer};

/// An amount that was read, by volume or by mass.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Drawn {
    Volume(Measured<Volume>),
    Mass(Measured<Mass>),
}

/// Whether every reading of an amount has a resolution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Resolved {
    All,
    /// Readings without one count as exact.
    NotAll,
}

impl Resolved {
    pub(crate) fn and(self, other: Self) -> Self {
        if self == Self::All { other } else { Self::NotAll }
    }
}

/// The readings of one tank, or of one product.
pub(crate) struct Drawdown<'r> {
    pub(crate) start: &'r document::Reading,
    pub(crate) end: &'r document::Reading,
    pub(crate) added: Option<&'r document::Readings>,
    pub(crate) lost: Option<&'r document::Readings>,
    pub(crate) resolution: Option<&'r document::Quantity>,
}

impl Drawdown<'_> {
    /// What was put to use, all by volume or all by mass, as the start is.
    pub(crate) fn drawn(&self, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<(Drawn, Resolved)> {
        let wanted = "what is in the tank, a volume or a mass,";
        let check = |_, powers| Ok([Volume::POWERS, Mass::POWERS].contains(&powers).then_some(powers));
        let start = at.field("start");
        let powers = amount_field(self.start, &start).one_of(&Bases::default(), wanted, check, gathered)?;
        if powers == Volume::POWERS {
            let (used, resolved) = self.used("a volume, as at the start,", at, gathered)?;
            return Some((Drawn::Volume(used), resolved));
        }
        let (used, resolved) = self.used("a mass, as at the start,", at, gathered)?;
        Some((Drawn::Mass(used), resolved))
    }

    /// What was put to use: start − end + added − lost.
    pub(crate) fn used<Q: Quantity + Measure>(
        &self,
        wanted: &str,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<(Measured<Q>, Resolved)> {
        let scale = Scale::of(self.resolution, Q::POWERS, wanted, at, gathered)?;
        let start = scale.read(self.start, &at.field("start"), gathered);
        let end = scale.read(self.end, &at.field("end"), gathered);
        let added = scale.all(self.added, &at.field("added"), gathered);
        let lost = scale.all(self.lost, &at.field("lost"), gathered);
        let (start, end, added, lost) = (start?, end?, added?, lost?);
        let resolved = added
            .iter()
            .chain(&lost)
            .fold(start.resolved().and(end.resolved()), |all, shown| all.and(shown.resolved()));
        let readings = |list: Vec<Shown>| list.into_iter().filter_map(Shown::reading).collect::<Vec<_>>();
        let used = Measured::used(start.reading()?, end.reading()?, &readings(added), &readings(lost)).ok();
        if used.is_none() {
            let message = "leaves less than nothing used: start and added come to less than end and lost; \
                           check the readings, and list all that was added";
            gathered.add(&at.field("end"), Some(shown(amount(self.end).0)), message);
        }
        Some((used?, resolved))
    }
}

/// What an instrument showed and the step that it shows, in base units.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Shown {
    amount: f64,
    step: Option<f64>,
}

impl Shown {
    pub(crate) fn resolved(self) -> Resolved {
        if self.step.is_some() { Resolved::All } else { Resolved::NotAll }
    }

    pub(crate) fn reading<Q: Quantity + Measure>(self) -> Option<Reading<Q>> {
        Reading::new(Q::from_base(self.amount), Q::from_base(self.step.unwrap_or(0.0))).ok()
    }
}

/// An instrument: what its readings measure, and the step that they show where they do not say.
#[derive(Clone, Copy)]
pub(crate) struct Scale<'w> {
    step: Option<f64>,
    measures: Powers,
    wanted: &'w str,
}

impl<'w> Scale<'w> {
    /// The instrument whose resolution stands beside its readings, if it is given.
    pub(crate) fn of(
        resolution: Option<&document::Quantity>,
        measures: Powers,
        wanted: &'w str,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<Self> {
        let scale = Self { step: None, measures, wanted };
        let step = scale.number(&field(resolution, at, "resolution"), gathered);
        (resolution.is_some() == step.is_some()).then_some(Self { step, ..scale })
    }

    /// One reading.
    #[inline(never)]
    pub(crate) fn read(
        self,
        doc: &document::Reading,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<Shown> {
        let amount = self.number(&amount_field(doc, at), gathered);
        let step = match doc {
            document::Reading::Amount(_) => self.step,
            document::Reading::Resolved { resolution, .. } => {
                Some(self.number(&field(Some(resolution), at, "resolution"), gathered)?)
            }
        };
        Some(Shown { amount: amount?, step })
    }

    #[inline(never)]
    fn all(
        self,
        docs: Option<&document::Readings>,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<Vec<Shown>> {
        let mut all = Vec::new();
        let list = docs.map(document::Readings::as_slice).unwrap_or_default();
        for (i, doc) in list.iter().enumerate() {
            let item = at.item(i);
            let at = if matches!(docs, Some(document::Readings::One(_))) { at } else { &item };
            keep(&mut all, self.read(doc, at, gathered));
        }
        (all.len() == list.len()).then_some(all)
    }

    /// What stands in a field, in base units.
    fn number(self, field: &Field<'_, '_>, gathered: &mut Gathered) -> Option<f64> {
        field.not_negative(self.measures, self.wanted, gathered)
    }
}

/// The amount of a reading, and the field that it stands in if not in the reading itself.
pub(crate) fn amount(doc: &document::Reading) -> (&document::Quantity, Option<&'static str>) {
    match doc {
        document::Reading::Amount(amount) => (amount, None),
        document::Reading::Resolved { reading, .. } => (reading, Some("reading")),
    }
}

fn amount_field<'a, 'r>(doc: &'r document::Reading, at: &'a Pointer<'a>) -> Field<'a, 'r> {
    let (amount, inner) = amount(doc);
    Field { doc: Some(amount), at: inner.map_or(*at, |inner| at.field(inner)) }
}
