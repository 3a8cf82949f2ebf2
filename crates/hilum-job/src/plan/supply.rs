//! What is opened of every product, against its mixes where it goes into a tank.

use alloc::vec::Vec;

use hilum::batch::{Mix, Portion};
use hilum::pack::{Coverage, Proof, Supply};
use hilum::quantity::{Mass, Measure};

use super::batch::Batches;
use super::draft::{Draft, Line};
use super::pack::{Decided, NoSize, Opened, Size, choice, count, sizes};
use super::recipe::TankWork;
use super::tank::recipe;
use crate::model::ask::{refusal, shown};
use crate::problem::{Gathered, Pointer, Problems, quoted};

/// The pack sizes of every product.
pub(crate) fn all_sizes(draft: &Draft<'_, '_>) -> Result<Vec<Vec<Size>>, Problems> {
    let mut gathered = Gathered::default();
    let root = Pointer::Root;
    let at = root.field("treatments");
    let mut all = Vec::new();
    for (t, line) in draft.lines.iter().enumerate() {
        let at = at.item(t);
        let packs = at.field("packs");
        let mut own = Vec::new();
        if !line.doses.is_empty() {
            for (i, size) in sizes(draft, line).into_iter().enumerate() {
                match size {
                    Ok(size) => own.push(size),
                    Err(why) => refuse(&why, line, i, &at, &packs.item(i), &mut gathered),
                }
            }
        }
        all.push(own);
    }
    gathered.settle(Some(all))
}

fn refuse(
    why: &NoSize,
    line: &Line<'_, '_>,
    pack: usize,
    treatment_at: &Pointer<'_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) {
    let doc = line.treatment.packs.get(pack).and_then(|pack| pack.doc.covers.as_ref());
    match why {
        NoSize::Covers(message) => gathered.add(&at.field("covers"), doc.map(shown), message.clone()),
        NoSize::Set(hilum::Error::Needed { argument: hilum::Argument::Density }) => {
            let message = alloc::format!(
                "\"1.04 kg/L\" or the like, to go between volume and mass of the packs' parts of {}",
                quoted(&line.treatment.doc.product)
            );
            gathered.missing(&treatment_at.field("density"), &message);
        }
        NoSize::Set(error) => match doc {
            Some(doc) => gathered.add(&at.field("covers"), Some(shown(doc)), refusal(*error)),
            None => gathered.add(at, None, refusal(*error)),
        },
    }
}

/// What becomes of a product beyond what the orders take up.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Beyond {
    /// In the lines of its tank.
    pub(crate) hold_up: f64,
    /// Poured in all; 0 where nothing is planned.
    pub(crate) poured: f64,
}

/// A product in the mixes of its tank.
pub(crate) fn beyond(tanks: &[TankWork], batches: &Batches, line: &Line<'_, '_>, treatment: usize) -> Beyond {
    let Some((k, work)) = line.treatment.tank.and_then(|k| Some((k, tanks.get(k)?))) else {
        return Beyond::default();
    };
    let share =
        |portions: &[Portion]| recipe(work, portions).map_or(0.0, |recipe| recipe.share(treatment).number());
    let mut beyond = Beyond::default();
    for (mix, portions) in batches.of_tank(k) {
        let mix: &Mix = mix;
        beyond.hold_up += mix.hold_up.value * share(portions);
        beyond.poured += mix.mixed.value * share(portions);
    }
    beyond
}

/// What is opened of a product: the sets poured into mixes, or the best choice for its need.
pub(crate) fn opened(
    line: &Line<'_, '_>,
    sizes: &[Size],
    batches: &Batches,
    treatment: usize,
    beyond: Beyond,
    treated: Mass,
) -> Result<Option<Opened>, hilum::Error> {
    let tank = line.treatment.tank.filter(|k| batches.ruling.get(*k).copied().flatten() == Some(treatment));
    if let Some(k) = tank.filter(|k| !batches.too_small.contains(k)) {
        let mut sets = alloc::vec![0_u64; sizes.len()];
        for (mix, _) in batches.of_tank(k) {
            for (sum, more) in sets.iter_mut().zip(mix.sets) {
                *sum = sum.saturating_add(u64::from(more));
            }
        }
        let supply = if batches.short.contains(&k) { Supply::Short } else { Supply::Enough };
        let almost = almost(line, sizes, &sets, beyond);
        return Ok(Some(Opened { sets, decided: Decided::ByMixes, supply, proof: Proof::Proven, almost }));
    }
    choice(line, sizes, beyond.hold_up, treated)
}

/// As for a choice, but by the product that was poured: each unit of it stands for one of seed.
fn almost(line: &Line<'_, '_>, sizes: &[Size], sets: &[u64], beyond: Beyond) -> bool {
    let adds = || sizes.iter().map(|size| Mass::from_base(size.adds.base()));
    let all: f64 = adds().zip(sets).map(|(adds, sets)| adds.value * count(*sets)).sum();
    let opened =
        sets.iter().copied().zip(adds()).filter_map(|(sets, adds)| Some((sets, Coverage::new(adds).ok()?)));
    let need = Mass::from_base(line.needed.base() + beyond.hold_up);
    super::pack::almost(need, Mass::from_base(all), opened).unwrap_or(false)
}
