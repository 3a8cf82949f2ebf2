//! A living product: its titre, how long a mix and treated seed last, and how its cells die.

use hilum::quantity::{
    CellsPerMass, CellsPerSeed, CellsPerVolume, Measure, Temperature, TemperatureDifference, Time,
};
use hilum::rate::{CellCount, PerSeed};
use hilum::seed::Share;
use hilum::text::Bases;
use hilum::viability::{
    DecimalReduction, Life, Model, Reference, Survival, Titre, TitrePerMass, TitrePerVolume, TwoPhase,
    WeibullScale, WeibullShape,
};

use super::after::duration;
use super::ask::{Asked, Field, optional};
use super::order::field;
use crate::document::{self, SurvivalModel};
use crate::problem::{Gathered, Pointer, quoted};
use crate::read::unknown;

/// A living product's declarations.
#[derive(Debug)]
pub(crate) struct Living {
    /// As stated: of the mix, or of a part.
    pub(crate) titre: Titre,
    /// Whether it is a part's.
    pub(crate) of_part: bool,
    pub(crate) recovery: Share,
    pub(crate) minimum: Option<PerSeed<CellCount>>,
    pub(crate) pot_life: Option<Time>,
    pub(crate) on_seed_life: Option<Life>,
    pub(crate) store_below: Option<Temperature>,
    pub(crate) agitate: bool,
    pub(crate) survival: Option<Survival>,
}

/// Reads what is alive in a product.
pub(crate) fn living(
    doc: &document::Living,
    product: &document::Treatment,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Living> {
    let titre = titre(&doc.titre, &at.field("titre"), gathered);
    let of_part = titre_of(doc, product, &at.field("titre_of"), gathered);
    let recovery = optional!(doc.recovery, |doc| field(doc, at, "recovery").share(gathered));
    let minimum = optional!(doc.minimum_at_planting, |doc| field(doc, at, "minimum_at_planting")
        .get::<CellsPerSeed, _>("cells per seed", PerSeed::new, gathered));
    let pot_life = optional!(doc.pot_life, |doc| duration(doc, &at.field("pot_life"), gathered));
    let on_seed_life = optional!(doc.on_seed_life, |doc| {
        duration(doc, &at.field("on_seed_life"), gathered).and_then(|time| Life::new(time).ok())
    });
    let store_below = optional!(doc.store_below, |doc| field(doc, at, "store_below").temperature(gathered));
    let survival = optional!(doc.survival, |doc| survival(doc, &at.field("survival"), gathered));
    Some(Living {
        titre: titre?,
        of_part: of_part?,
        recovery: recovery?.unwrap_or(Share::WHOLE),
        minimum: minimum?,
        pot_life: pot_life?,
        on_seed_life: on_seed_life?,
        store_below: store_below?,
        agitate: doc.agitate.unwrap_or(true),
        survival: survival?,
    })
}

fn titre(doc: &document::Quantity, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Titre> {
    let wanted = "a titre, cells per volume or cells per mass,";
    let asked = Asked::read(doc, at, gathered)?;
    let (value, powers) = asked.measured(&Bases::default(), wanted, at, gathered)?;
    let titre = if powers == CellsPerVolume::POWERS {
        TitrePerVolume::new(CellsPerVolume::from_base(value)).map(Titre::PerVolume)
    } else if powers == CellsPerMass::POWERS {
        TitrePerMass::new(CellsPerMass::from_base(value)).map(Titre::PerMass)
    } else {
        asked.wrong(powers, wanted, at, gathered);
        return None;
    };
    asked.checked(titre, at, gathered)
}

/// Whether the titre is a part's; the part must be in a pack.
fn titre_of(
    doc: &document::Living,
    product: &document::Treatment,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<bool> {
    let Some(name) = doc.titre_of.as_deref().filter(|name| *name != "mix") else { return Some(false) };
    let packs = product.packs.as_deref().unwrap_or_default().iter();
    let parts: alloc::vec::Vec<&str> = packs
        .flat_map(|pack| pack.parts.as_deref().unwrap_or_default())
        .map(|part| part.part.as_str())
        .collect();
    if parts.contains(&name) {
        return Some(true);
    }
    let message = if parts.is_empty() {
        "names a part, but the product's packs list none".into()
    } else {
        unknown("part", name, &parts)
    };
    gathered.add(at, Some(quoted(name)), message);
    None
}

fn survival(doc: &document::Survival, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Survival> {
    foreign(doc, at, gathered)?;
    let reference = reference(doc, at, gathered);
    let model = match doc.model {
        SurvivalModel::LogLinear => needed(doc.decimal_reduction.as_ref(), at, "decimal_reduction", gathered)
            .and_then(|field| reduction(&field, gathered))
            .map(Model::LogLinear),
        SurvivalModel::Weibull => weibull(doc, at, gathered),
        SurvivalModel::TwoPhase => two_phase(doc, at, gathered),
    };
    Some(Survival::new(model?, reference?))
}

/// Refuses the parameters of other models.
fn foreign(doc: &document::Survival, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<()> {
    use SurvivalModel::{LogLinear, TwoPhase, Weibull};
    let parameters = [
        ("decimal_reduction", doc.decimal_reduction.is_some(), LogLinear),
        ("scale", doc.scale.is_some(), Weibull),
        ("shape", doc.shape.is_some(), Weibull),
        ("fraction", doc.fraction.is_some(), TwoPhase),
        ("fast", doc.fast.is_some(), TwoPhase),
        ("slow", doc.slow.is_some(), TwoPhase),
    ];
    let strangers: alloc::vec::Vec<_> =
        parameters.iter().filter(|(_, given, model)| *given && *model != doc.model).collect();
    for (name, _, _) in &strangers {
        gathered.add(&at.field(name), None, "belongs to another survival model; leave it out");
    }
    strangers.is_empty().then_some(())
}

const PARAMETER: &str = "a time, \"10 d\", as this survival model needs it";

fn needed<'a, 'j>(
    doc: Option<&'j document::Quantity>,
    at: &'a Pointer<'a>,
    name: &'a str,
    gathered: &mut Gathered,
) -> Option<Field<'a, 'j>> {
    if doc.is_none() {
        let give =
            if name == "fraction" { "a share, \"90 %\", as this survival model needs it" } else { PARAMETER };
        gathered.missing(&at.field(name), give);
    }
    doc.map(|doc| field(doc, at, name))
}

fn reduction(field: &Field<'_, '_>, gathered: &mut Gathered) -> Option<DecimalReduction> {
    field.get::<Time, _>("a time", DecimalReduction::new, gathered)
}

fn weibull(doc: &document::Survival, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Model> {
    let scale = needed(doc.scale.as_ref(), at, "scale", gathered)
        .and_then(|field| field.get::<Time, _>("a time", WeibullScale::new, gathered));
    let at = at.field("shape");
    let Some(shape) = doc.shape else {
        gathered.missing(&at, "a number, 2, as this survival model needs it");
        return None;
    };
    let shape = WeibullShape::new(hilum::quantity::Ratio::from_base(shape))
        .map_err(|error| gathered.add(&at, Some(crate::digits::exact(shape)), super::ask::refusal(error)))
        .ok();
    Some(Model::Weibull { scale: scale?, shape: shape? })
}

fn two_phase(doc: &document::Survival, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Model> {
    let fraction =
        needed(doc.fraction.as_ref(), at, "fraction", gathered).and_then(|field| field.share(gathered));
    let fast = needed(doc.fast.as_ref(), at, "fast", gathered).and_then(|field| reduction(&field, gathered));
    let slow = needed(doc.slow.as_ref(), at, "slow", gathered).and_then(|field| reduction(&field, gathered));
    TwoPhase::new(fraction?, fast?, slow?)
        .map_err(|_| {
            let value = doc.fast.as_ref().map(super::ask::shown);
            gathered.add(&at.field("fast"), value, "is slower than slow; exchange the two");
        })
        .ok()
        .map(Model::TwoPhase)
}

/// `at` and `z`, together or not at all.
fn reference(
    doc: &document::Survival,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Option<Reference>> {
    match (&doc.at, &doc.z) {
        (None, None) => Some(None),
        (Some(_), None) => {
            gathered.missing(&at.field("z"), "both at and z, or neither");
            None
        }
        (None, Some(_)) => {
            gathered.missing(&at.field("at"), "both at and z, or neither");
            None
        }
        (Some(point), Some(z)) => {
            let point = field(point, at, "at").temperature(gathered);
            let z = field(z, at, "z");
            let point = point?;
            z.get::<TemperatureDifference, _>(
                "a temperature difference in K",
                |z| Reference::new(point, z),
                gathered,
            )
            .map(Some)
        }
    }
}
