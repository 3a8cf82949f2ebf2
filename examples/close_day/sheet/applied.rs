//! What went on the seed: mixes, products, actives, living cells.

use hilum_job::document::{Account, AccountedOrder, Out, Verdict};

use super::{MARGIN, signed, unit};
use crate::clock::moment;
use crate::number::{cells, count, dose, percent, product};
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// What was asked for and what was achieved, with the verdict.
struct Rate<'a> {
    used: &'a Out,
    achieved: &'a Out,
    uncertainty: Option<&'a Out>,
    target: &'a Out,
    deviation: f64,
    verdict: Verdict,
}

/// One line for each order and tank.
pub(super) fn tanks(account: &Account) -> Vec<String> {
    let tanks = account.orders.iter().flat_map(|order| order.tanks.iter().map(move |tank| (order, tank)));
    rates(
        "tank",
        tanks.map(|(order, tank)| {
            let rate = Rate {
                used: &tank.used,
                achieved: &tank.achieved,
                uncertainty: tank.uncertainty.as_ref(),
                target: &tank.target,
                deviation: tank.deviation,
                verdict: tank.verdict,
            };
            (order, tank.tank.as_str(), rate)
        }),
    )
}

/// One line for each order and dry product.
pub(super) fn dry(account: &Account) -> Vec<String> {
    let dry = account.orders.iter().flat_map(|order| order.dry.iter().flatten().map(move |dry| (order, dry)));
    rates(
        "product",
        dry.map(|(order, dry)| {
            let rate = Rate {
                used: &dry.used,
                achieved: &dry.achieved,
                uncertainty: dry.uncertainty.as_ref(),
                target: &dry.target,
                deviation: dry.deviation,
                verdict: dry.verdict,
            };
            (order, dry.product.as_str(), rate)
        }),
    )
}

fn rates<'a>(
    what: &str,
    rates: impl Iterator<Item = (&'a AccountedOrder, &'a str, Rate<'a>)>,
) -> Vec<String> {
    let rates: Vec<_> = rates.collect();
    let per_mass = unit(rates.iter().map(|(_, _, rate)| rate.achieved));
    let mut table = Table::new([
        (Left, "order".to_owned()),
        (Left, what.to_owned()),
        (Right, "used".to_owned()),
        (Right, format!("achieved\n{per_mass}")),
        (Right, "give or take".to_owned()),
        (Right, format!("asked for\n{per_mass}")),
        (Right, "off".to_owned()),
        (Left, "that is".to_owned()),
    ])
    .beside(MARGIN);
    let mut last = "";
    for (order, name, rate) in &rates {
        table.row([
            once(&mut last, &order.order),
            (*name).to_owned(),
            product(rate.used),
            dose(rate.achieved.value),
            rate.uncertainty.map(|uncertainty| dose(uncertainty.value)).unwrap_or_default(),
            dose(rate.target.value),
            signed(rate.deviation),
            word(rate.verdict).to_owned(),
        ]);
    }
    table.lines()
}

fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Low => "LOW",
        Verdict::OnTarget => "on target",
        Verdict::High => "HIGH",
        Verdict::CannotTell => "cannot tell",
    }
}

/// An order's number where it first stands.
fn once<'a>(last: &mut &'a str, order: &'a str) -> String {
    if *last == order {
        return String::new();
    }
    *last = order;
    order.to_owned()
}

/// One line for each order and product of a mix.
pub(super) fn products(account: &Account) -> Vec<String> {
    let mixed = |order: &'_ AccountedOrder| order.tanks.iter().flat_map(|tank| &tank.products).count();
    if account.orders.iter().map(mixed).sum::<usize>() == 0 {
        return Vec::new();
    }
    let all = || account.orders.iter().flat_map(|order| &order.tanks).flat_map(|tank| &tank.products);
    let mut table = Table::new([
        (Left, "order".to_owned()),
        (Left, "product".to_owned()),
        (Right, "used".to_owned()),
        (Right, format!("on the seed\n{}", unit(all().map(|product| &product.per_mass)))),
        (Right, unit(all().map(|product| &product.per_seed)).to_owned()),
        (Right, format!("asked for\n{}", unit(all().map(|product| &product.target)))),
        (Right, "off".to_owned()),
    ])
    .beside(MARGIN);
    let mut last = "";
    for order in &account.orders {
        for applied in order.tanks.iter().flat_map(|tank| &tank.products) {
            table.row([
                once(&mut last, &order.order),
                applied.product.clone(),
                product(&applied.used),
                dose(applied.per_mass.value),
                dose(applied.per_seed.value),
                dose(applied.target.value),
                signed(applied.deviation),
            ]);
        }
    }
    table.lines()
}

/// One line for each order and active ingredient.
pub(super) fn actives(account: &Account) -> Vec<String> {
    let all = || account.orders.iter().flat_map(|order| &order.actives);
    let sowing = unit(all().filter_map(|active| active.max_sowing.as_ref()));
    let mut table = Table::new([
        (Left, "order".to_owned()),
        (Left, "active".to_owned()),
        (Right, unit(all().map(|active| &active.per_seed)).to_owned()),
        (Right, unit(all().map(|active| &active.per_mass)).to_owned()),
        (Right, unit(all().filter_map(|active| active.per_area.as_ref())).to_owned()),
        (Right, "of the season's\nlimit".to_owned()),
        (Right, format!("sow at most\n{sowing}")),
    ])
    .beside(MARGIN);
    let shown = |out: &Option<Out>| out.as_ref().map(|out| dose(out.value)).unwrap_or_default();
    let mut last = "";
    for order in &account.orders {
        for active in &order.actives {
            table.row([
                once(&mut last, &order.order),
                active.active.clone(),
                dose(active.per_seed.value),
                dose(active.per_mass.value),
                shown(&active.per_area),
                active.share_of_season_limit.map(percent).unwrap_or_default(),
                active.max_sowing.as_ref().map(count).unwrap_or_default(),
            ]);
        }
    }
    table.lines()
}

/// One line for each order and living product.
pub(super) fn living(account: &Account) -> Vec<String> {
    let mut table = Table::new([
        (Left, "order"),
        (Left, "product"),
        (Right, "at treating\nCFU/seed"),
        (Right, "at planting\nCFU/seed"),
        (Right, "at least\nCFU/seed"),
        (Left, "plant by"),
    ])
    .beside(MARGIN);
    for order in &account.orders {
        for living in order.living.iter().flatten() {
            table.row([
                order.order.clone(),
                living.product.clone(),
                cells(&living.at_treating),
                living.at_planting.as_ref().map(cells).unwrap_or_default(),
                living.minimum.as_ref().map(cells).unwrap_or_default(),
                living.plant_by.as_deref().map(moment).unwrap_or_default(),
            ]);
        }
    }
    table.lines()
}
