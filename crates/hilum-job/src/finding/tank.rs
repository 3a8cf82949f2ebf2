//! Do tank and pump fit the mix?

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use hilum::quantity::{Measure, Volume};
use hilum::treater::{Flow, PumpSetting, Reach};

use super::words::{apart, orders, product, tank, told};
use super::{Found, Group};
use crate::document::{Code, Severity};
use crate::list::keep;
use crate::model::tank::Tank;
use crate::plan::Worked;
use crate::plan::out::{FLOW, LIQUID};
use crate::plan::pack::adds;
use crate::plan::recipe::{TankWork, pump};

pub(super) fn findings(worked: &Worked<'_, '_>, found: &mut Found) {
    for (k, (tank, work)) in worked.draft.model.tanks.iter().zip(&worked.tanks).enumerate() {
        too_small(worked, k, tank, work, found);
        pump_range(worked, k, tank, work, found);
        too_little(worked, k, tank, found);
        recipe_changes(worked, k, work, found);
    }
}

fn too_small(worked: &Worked<'_, '_>, k: usize, tank_: &Tank<'_>, work: &TankWork, found: &mut Found) {
    if !worked.batches.too_small.contains(&k) {
        return;
    }
    let units = worked.draft.units();
    let name = tank(worked, k);
    let capacity = LIQUID.of(tank_.capacity, units);
    let lines = told(&LIQUID.of(tank_.hold_up.get(), units));
    let message = match smallest_mix(worked, k, work) {
        _ if tank_.capacity <= tank_.hold_up.get() => format!(
            "Tank {name} holds {}, no more than stays in its lines ({lines}). Use a larger tank.",
            told(&capacity),
        ),
        Some((mix, t)) if mix > tank_.capacity.value => {
            let (mix, capacity) = apart(&LIQUID.of(Volume::from_base(mix), units), &capacity);
            format!(
                "Tank {name} holds {capacity}, but one whole set of {} makes a mix of {mix}. Use a larger tank or a smaller pack.",
                product(worked, t)
            )
        }
        _ => format!(
            "No whole sets make a mix that fills the lines of tank {name} ({lines}) and fits into it ({}). Use a larger tank or other packs.",
            told(&capacity),
        ),
    };
    found.add(Severity::Stop, Code::TankTooSmall, format!("/tanks/{k}"), message);
}

/// The mix that the smallest set at hand makes in the recipe where that is most, and its product.
fn smallest_mix(worked: &Worked<'_, '_>, k: usize, work: &TankWork) -> Option<(f64, usize)> {
    let t = worked.batches.ruling.get(k).copied().flatten()?;
    let line = worked.draft.lines.get(t)?;
    let mixes = work.recipes.iter().filter_map(|recipe| {
        let share = recipe.share(t).number();
        let dose = line.doses.iter().find(|dose| recipe.orders.first() == Some(&dose.order))?;
        let packs = line.treatment.packs.iter().filter(|pack| pack.doc.on_hand != Some(0));
        let sets = packs.filter_map(|pack| adds(&worked.draft, line, pack, dose));
        sets.map(|set| set.base() / share).reduce(f64::min)
    });
    mixes.reduce(f64::max).map(|mix| (mix, t))
}

fn pump_range(worked: &Worked<'_, '_>, k: usize, tank_: &Tank<'_>, work: &TankWork, found: &mut Found) {
    let (mut slow, mut fast): (Group<Flow>, Group<Flow>) = Default::default();
    let Some(range) = tank_.pump.as_ref().map(|pump| pump.range) else { return };
    for draw in &work.orders {
        let Some(order) = worked.draft.order(draw.order) else { continue };
        let pump = pump(tank_, &worked.draft.model.treater, order, draw);
        let Some(flow) = pump.flow else { continue };
        match (range.reach(flow), pump.setting) {
            (Reach::TooSlow, _) | (_, Some(PumpSetting::BelowCurve)) => {
                slow.add(draw.order, -flow.get().value, flow);
            }
            (Reach::TooFast, _) | (_, Some(PumpSetting::AboveCurve)) => {
                fast.add(draw.order, flow.get().value, flow);
            }
            _ => {}
        }
    }
    let messages = [
        (
            slow,
            "less",
            "Run more seed per minute, add water, or fit a smaller pump; catch it at that flow first",
        ),
        (
            fast,
            "more",
            "Run less seed per minute, add less water, or fit a larger pump; catch it at that flow first",
        ),
    ];
    for (group, less, remedy) in messages {
        let Some((places, flow)) = group.told() else { continue };
        let message = format!(
            "The pump of tank {} would have to deliver {} for {}, {less} than it is known to deliver evenly. {remedy}.",
            tank(worked, k),
            told(&FLOW.of(flow.get(), worked.draft.units())),
            orders(worked, &places),
        );
        found.add(Severity::Warn, Code::PumpOutOfRange, format!("/tanks/{k}"), message);
    }
}

/// Mixes that the agitator or the pump does not reach.
fn too_little(worked: &Worked<'_, '_>, k: usize, tank_: &Tank<'_>, found: &mut Found) {
    let Some(least) = tank_.min_fill else { return };
    let (mut smallest, mut numbers) = (f64::INFINITY, Vec::new());
    for (mix, _) in worked.batches.of_tank(k) {
        if least.missed_by(mix.mixed).unwrap_or_default() {
            smallest = smallest.min(mix.mixed.value);
            numbers.push(mix.number.to_string());
        }
    }
    if numbers.is_empty() {
        return;
    }
    let units = worked.draft.units();
    let (smallest, least) =
        apart(&LIQUID.of(Volume::from_base(smallest), units), &LIQUID.of(least.get(), units));
    let word = if numbers.len() == 1 { "Mix" } else { "Mixes" };
    let message = format!(
        "{word} {} of tank {} come to {smallest}, below the {least} that it needs to mix and pump. Mix in a smaller tank, or put orders of one recipe together.",
        counted(&numbers),
        tank(worked, k),
    );
    found.add(Severity::Warn, Code::BelowMinFill, format!("/tanks/{k}"), message);
}

fn counted(numbers: &[String]) -> String {
    match numbers {
        [first, second, third, more @ ..] if !more.is_empty() => {
            format!("{first}, {second}, {third} and {} more", more.len())
        }
        few => few.join(", "),
    }
}

fn recipe_changes(worked: &Worked<'_, '_>, k: usize, work: &TankWork, found: &mut Found) {
    if work.recipes.len() < 2 {
        return;
    }
    let mut begins = Vec::new();
    for recipe in work.recipes.iter().skip(1) {
        keep(&mut begins, recipe.orders.first().copied());
    }
    let message = format!(
        "Tank {} needs {} mixes of different composition: a new one from {} on. Empty and rinse it between, and run orders of one recipe after each other to save mixes.",
        tank(worked, k),
        work.recipes.len(),
        orders(worked, &begins),
    );
    found.add(Severity::Note, Code::RecipeChanges, format!("/tanks/{k}"), message);
}
