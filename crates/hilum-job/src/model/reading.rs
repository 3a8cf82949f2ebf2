//! Readings of a run → amounts of the core, and how sure they are.

use alloc::vec::Vec;

use hilum::Argument;
use hilum::account::{Measured, Quantity, Reading};
use hilum::error::not_negative;
use hilum::quantity::{Mass, Measure, Volume};
use hilum::text::Bases;

use super::ask::{Asked, Field, optional, shown};
use super::order::field;
use crate::document;
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
        let place = at.field("start");
        let (doc, inner) = amount(self.start);
        let place = inner.map_or(place, |inner| Pointer::Field(&place, inner));
        let asked = Asked::read(doc, &place, gathered)?;
        let (_, powers) = asked.measured(&Bases::default(), wanted, &place, gathered)?;
        if powers == Volume::POWERS {
            let (used, resolved) = self.used("a volume, as at the start,", at, gathered)?;
            return Some((Drawn::Volume(used), resolved));
        }
        if powers == Mass::POWERS {
            let (used, resolved) = self.used("a mass, as at the start,", at, gathered)?;
            return Some((Drawn::Mass(used), resolved));
        }
        asked.wrong(powers, wanted, &place, gathered);
        None
    }

    /// What was put to use: start − end + added − lost.
    pub(crate) fn used<Q: Quantity + Measure>(
        &self,
        wanted: &str,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<(Measured<Q>, Resolved)> {
        let scale = Scale::<Q>::of(self.resolution, wanted, at, gathered)?;
        let start = scale.read(self.start, &at.field("start"), gathered);
        let end = scale.read(self.end, &at.field("end"), gathered);
        let added = scale.all(self.added, &at.field("added"), gathered);
        let lost = scale.all(self.lost, &at.field("lost"), gathered);
        let ((start, a), (end, b), (added, c), (lost, d)) = (start?, end?, added?, lost?);
        let used = Measured::used(start, end, &added, &lost).map_err(|_| {
            let message = "leaves less than nothing used: start and added come to less than end and lost; \
                           check the readings, and list all that was added";
            gathered.add(&at.field("end"), Some(shown(amount(self.end).0)), message);
        });
        Some((used.ok()?, a.and(b).and(c).and(d)))
    }
}

/// An instrument: what its readings measure, and the step that they show where they do not say.
pub(crate) struct Scale<'w, Q> {
    resolution: Option<Q>,
    wanted: &'w str,
}

impl<'w, Q: Quantity + Measure> Scale<'w, Q> {
    /// The instrument whose resolution stands beside its readings, if it is given.
    pub(crate) fn of(
        resolution: Option<&document::Quantity>,
        wanted: &'w str,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<Self> {
        let resolution = optional!(resolution, |doc| step(&field(doc, at, "resolution"), wanted, gathered))?;
        Some(Self { resolution, wanted })
    }

    /// One reading.
    pub(crate) fn read(
        &self,
        doc: &document::Reading,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<(Reading<Q>, Resolved)> {
        let (amount, inner) = amount(doc);
        let at_amount = inner.map_or(*at, |inner| at.field(inner));
        let shown = Field { doc: amount, at: at_amount }.get(
            self.wanted,
            |shown: Q| not_negative(Argument::Reading, Measure::to_base(shown)).map(|_| shown),
            gathered,
        );
        let resolution = match doc {
            document::Reading::Amount(_) => self.resolution,
            document::Reading::Resolved { resolution, .. } => {
                Some(step(&field(resolution, at, "resolution"), self.wanted, gathered)?)
            }
        };
        let resolved = if resolution.is_some() { Resolved::All } else { Resolved::NotAll };
        let reading = Reading::new(shown?, resolution.unwrap_or(Q::from_base(0.0)));
        Some((reading.ok()?, resolved))
    }

    fn all(
        &self,
        docs: Option<&document::Readings>,
        at: &Pointer<'_>,
        gathered: &mut Gathered,
    ) -> Option<(Vec<Reading<Q>>, Resolved)> {
        let list = match docs {
            None => return Some((Vec::new(), Resolved::All)),
            Some(document::Readings::One(one)) => alloc::vec![self.read(one, at, gathered)],
            Some(document::Readings::Several(list)) => {
                list.iter().enumerate().map(|(i, doc)| self.read(doc, &at.item(i), gathered)).collect()
            }
        };
        let list: Vec<(Reading<Q>, Resolved)> = list.into_iter().collect::<Option<_>>()?;
        let resolved = list.iter().fold(Resolved::All, |all, (_, resolved)| all.and(*resolved));
        Some((list.into_iter().map(|(reading, _)| reading).collect(), resolved))
    }
}

/// The amount of a reading, and the field that it stands in if not in the reading itself.
pub(crate) fn amount(doc: &document::Reading) -> (&document::Quantity, Option<&'static str>) {
    match doc {
        document::Reading::Amount(amount) => (amount, None),
        document::Reading::Resolved { reading, .. } => (reading, Some("reading")),
    }
}

fn step<Q: Measure>(field: &Field<'_, '_>, wanted: &str, gathered: &mut Gathered) -> Option<Q> {
    field.get(wanted, |step: Q| not_negative(Argument::Resolution, step.to_base()).map(|_| step), gathered)
}
