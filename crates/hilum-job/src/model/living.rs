//! A living product: its titre, how long a mix and treated seed last, and how its cells die.

use alloc::vec::Vec;

use hilum::quantity::{CellsPerMass, CellsPerVolume, Measure, Ratio, Temperature, Time};
use hilum::rate::{CellCount, PerSeed};
use hilum::seed::Share;
use hilum::text::Bases;
use hilum::viability::{
    DecimalReduction, Life, Model, Reference, Survival, Titre, TitrePerMass, TitrePerVolume, TwoPhase,
    WeibullScale, WeibullShape,
};

use super::ask::{Field, field, refusal, shown};
use crate::digits::exact;
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
    let titre = titre(&doc.titre, at, gathered);
    let of_part = titre_of(doc, product, &at.field("titre_of"), gathered);
    let recovery = field(doc.recovery.as_ref(), at, "recovery").share(gathered);
    let minimum = field(doc.minimum_at_planting.as_ref(), at, "minimum_at_planting");
    let minimum = minimum.get("cells per seed", PerSeed::new, gathered);
    let pot_life = field(doc.pot_life.as_ref(), at, "pot_life").duration(gathered);
    let on_seed_life = field(doc.on_seed_life.as_ref(), at, "on_seed_life").duration(gathered);
    let store_below = field(doc.store_below.as_ref(), at, "store_below").temperature(gathered);
    let survival = doc.survival.as_ref().and_then(|doc| survival(doc, &at.field("survival"), gathered));
    Some(Living {
        titre: titre?,
        of_part,
        recovery: recovery.unwrap_or(Share::WHOLE),
        minimum,
        pot_life,
        on_seed_life: on_seed_life.and_then(|life| Life::new(life).ok()),
        store_below,
        agitate: doc.agitate.unwrap_or(true),
        survival,
    })
}

fn titre(doc: &document::Quantity, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Titre> {
    let check = |value, powers| match powers {
        CellsPerVolume::POWERS => {
            TitrePerVolume::new(CellsPerVolume::from_base(value)).map(Titre::PerVolume).map(Some)
        }
        CellsPerMass::POWERS => {
            TitrePerMass::new(CellsPerMass::from_base(value)).map(Titre::PerMass).map(Some)
        }
        _ => Ok(None),
    };
    let wanted = "a titre, cells per volume or cells per mass,";
    field(Some(doc), at, "titre").one_of(&Bases::default(), wanted, check, gathered)
}

/// Whether the titre is a part's; the part must be in a pack.
fn titre_of(
    doc: &document::Living,
    product: &document::Treatment,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> bool {
    let Some(name) = doc.titre_of.as_deref().filter(|name| *name != "mix") else { return false };
    let mut parts = Vec::new();
    for pack in product.packs.as_deref().unwrap_or_default() {
        for part in pack.parts.as_deref().unwrap_or_default() {
            parts.push(part.part.as_str());
        }
    }
    if parts.contains(&name) {
        return true;
    }
    let message = if parts.is_empty() {
        "names a part, but the product's packs list none".into()
    } else {
        unknown("part", name, &parts)
    };
    gathered.add(at, Some(quoted(name)), message);
    false
}

fn survival(doc: &document::Survival, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Survival> {
    foreign(doc, at, gathered)?;
    let reference = reference(doc, at, gathered);
    let model = match doc.model {
        SurvivalModel::LogLinear => {
            let reduction = needed(doc.decimal_reduction.as_ref(), at, "decimal_reduction", gathered);
            reduction.get("a time", DecimalReduction::new, gathered).map(Model::LogLinear)
        }
        SurvivalModel::Weibull => weibull(doc, at, gathered),
        SurvivalModel::TwoPhase => two_phase(doc, at, gathered),
    };
    Some(Survival::new(model?, reference))
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
    let mut own = Some(());
    for (name, given, model) in parameters {
        if given && model != doc.model {
            gathered.add(&at.field(name), None, "belongs to another survival model; leave it out");
            own = None;
        }
    }
    own
}

const PARAMETER: &str = "a time, \"10 d\", as this survival model needs it";

fn needed<'a, 'j>(
    doc: Option<&'j document::Quantity>,
    at: &'a Pointer<'a>,
    name: &'a str,
    gathered: &mut Gathered,
) -> Field<'a, 'j> {
    if doc.is_none() {
        let give =
            if name == "fraction" { "a share, \"90 %\", as this survival model needs it" } else { PARAMETER };
        gathered.missing(&at.field(name), give);
    }
    field(doc, at, name)
}

fn weibull(doc: &document::Survival, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Model> {
    let scale = needed(doc.scale.as_ref(), at, "scale", gathered).get("a time", WeibullScale::new, gathered);
    let at = at.field("shape");
    let Some(shape) = doc.shape else {
        gathered.missing(&at, "a number, 2, as this survival model needs it");
        return None;
    };
    let checked = WeibullShape::new(Ratio::from_base(shape));
    if let Err(error) = checked {
        gathered.add(&at, Some(exact(shape)), refusal(error));
    }
    Some(Model::Weibull { scale: scale?, shape: checked.ok()? })
}

fn two_phase(doc: &document::Survival, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Model> {
    let fraction = needed(doc.fraction.as_ref(), at, "fraction", gathered).share(gathered);
    let fast = needed(doc.fast.as_ref(), at, "fast", gathered).get("a time", DecimalReduction::new, gathered);
    let slow = needed(doc.slow.as_ref(), at, "slow", gathered).get("a time", DecimalReduction::new, gathered);
    let model = TwoPhase::new(fraction?, fast?, slow?).map(Model::TwoPhase).ok();
    if model.is_none() {
        let value = doc.fast.as_ref().map(shown);
        gathered.add(&at.field("fast"), value, "is slower than slow; exchange the two");
    }
    model
}

/// `at` and `z`, together or not at all.
fn reference(doc: &document::Survival, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Reference> {
    if doc.at.is_some() != doc.z.is_some() {
        let lacks = if doc.at.is_some() { "z" } else { "at" };
        gathered.missing(&at.field(lacks), "both at and z, or neither");
        return None;
    }
    let point = field(doc.at.as_ref(), at, "at").temperature(gathered)?;
    let wanted = "a temperature difference in K";
    field(doc.z.as_ref(), at, "z").get(wanted, |z| Reference::new(point, z), gathered)
}
