//! Packs of one living product that cover a mass and a number of seeds, on orders of different size.
#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test stops at the first surprise")]

use hilum_job::document::{Batch, Code};
use hilum_job::{Job, Plan, plan};

/// One thousand kg each of 5,000 and of 8,000 seeds/kg; 1 µL a seed made up to 10 mL/kg: two recipes.
fn planned(packs: [&str; 2]) -> Plan {
    planned_in("100 L", packs)
}

fn planned_in(tank: &str, packs: [&str; 2]) -> Plan {
    let text = format!(
        r#"{{ "orders": [
            {{ "order": "large", "lot": "a", "amount": "1000 kg", "size": "5000 seeds/kg" }},
            {{ "order": "small", "lot": "b", "amount": "1000 kg", "size": "8000 seeds/kg" }} ],
          "treatments": [ {{ "product": "Living", "tank": "A", "rate": "1 µL/seed",
            "living": {{ "titre": "1e9 CFU/mL" }}, "packs": [ {} ] }} ],
          "tanks": [ {{ "tank": "A", "capacity": "{tank}", "make_up_to": "10 mL/kg", "agitated": true }} ] }}"#,
        packs.join(", ")
    );
    plan(&Job::from_json(&text).unwrap()).unwrap()
}

const BY_MASS: &str = r#"{ "pack": "by mass", "covers": "500 kg" }"#;
const BY_SEEDS: &str = r#"{ "pack": "by seeds", "covers": "2500000 seeds" }"#;

/// Sets, litres of living product poured, litres of mix thrown away.
fn figures(batch: &Batch) -> (u32, f64, f64) {
    (batch.sets.iter().map(|sets| sets.sets).sum(), batch.pour[0].volume.value, batch.discarded.value)
}

#[track_caller]
fn is(batch: &Batch, sets: u32, poured: f64, discarded: f64) {
    let (got_sets, got_poured, got_discarded) = figures(batch);
    assert_eq!(got_sets, sets);
    assert!((got_poured - poured).abs() < 1e-9, "{got_poured} L poured");
    assert!((got_discarded - discarded).abs() < 1e-9, "{got_discarded} L thrown away");
}

/// A set adds coverage × rate. Worked by hand: 500 kg × 5 mL/kg is 2.5 L to the first mix, 500 kg × 8 mL/kg is 4 L to
/// the second; both orders take two sets, and nothing is left.
#[test]
fn a_set_by_mass_adds_what_the_recipe_s_dose_makes_of_it() {
    let plan = planned([BY_MASS, BY_SEEDS]);
    let batches = &plan.tanks[0].batches;
    is(&batches[0], 2, 5.0, 0.0);
    is(&batches[1], 2, 8.0, 0.0);
    assert!(batches.iter().all(|batch| batch.sets.iter().all(|sets| sets.pack == "by mass")));
}

/// 2.5 million seeds × 1 µL is 2.5 L to either mix: two sets, then four for 8 L, of which 2 L over in 2 / 0.8 L of mix.
#[test]
fn a_set_by_seeds_adds_the_same_to_every_recipe() {
    let plan = planned([BY_SEEDS, BY_MASS]);
    let batches = &plan.tanks[0].batches;
    is(&batches[0], 2, 5.0, 0.0);
    is(&batches[1], 4, 10.0, 2.5);
}

/// 25 million seeds × 1 µL is 25 L, of which a mix is 50 L and 31.25 L. By mass it is 5 L in either recipe: all the sets
/// at hand, two and two.
#[test]
fn packs_of_which_a_set_fits_the_tank_come_first() {
    let stocked = r#"{ "pack": "by mass", "covers": "500 kg", "on_hand": 4 }"#;
    let plan = planned_in("5 L", [r#"{ "pack": "by seeds", "covers": "25000000 seeds" }"#, stocked]);
    let batches = &plan.tanks[0].batches;
    assert_eq!(batches.len(), 4, "{:?}", plan.findings);
    is(&batches[0], 1, 2.5, 0.0);
    is(&batches[3], 1, 4.0, 0.0);
    assert!(plan.findings.iter().all(|finding| finding.code != Code::TankTooSmall));
}

/// As above, without a set of 500 kg: what is at hand makes 50 L at least.
#[test]
fn a_tank_is_too_small_for_what_is_at_hand() {
    let sold_out = r#"{ "pack": "by mass", "covers": "500 kg", "on_hand": 0 }"#;
    let plan = planned_in("5 L", [r#"{ "pack": "by seeds", "covers": "25000000 seeds" }"#, sold_out]);
    let told: Vec<_> = plan.findings.iter().filter(|finding| finding.code == Code::TankTooSmall).collect();
    assert_eq!(told.len(), 1);
    assert!(
        told[0].message.contains("one whole set of \"Living\" makes a mix of 50 L"),
        "{}",
        told[0].message
    );
}

/// Of 2.5 million seeds one set is at hand, of 50 million any number, too much for the tank; of 500 kg any number: sets that do not run out come first.
#[test]
fn packs_that_do_not_run_out_come_first() {
    let stocked = r#"{ "pack": "by seeds", "covers": "2500000 seeds", "on_hand": 1 }"#;
    let large = r#"{ "pack": "large", "covers": "50000000 seeds" }"#;
    let plan = planned_in("5 L", [&format!("{stocked}, {large}"), BY_MASS]);
    is(&plan.tanks[0].batches[0], 1, 2.5, 0.0);
    assert!(plan.findings.iter().all(|finding| finding.code != Code::ShortOfProduct), "{:?}", plan.findings);
}

/// Both kinds cannot be weighed against each other in one plan, and it says so; one kind can.
#[test]
fn leaving_packs_out_is_told() {
    let told = |plan: &Plan| plan.findings.iter().any(|finding| finding.code == Code::BoundReached);
    assert!(told(&planned([BY_MASS, BY_SEEDS])));
    let half = r#"{ "pack": "half", "covers": "250 kg" }"#;
    assert!(!told(&planned([BY_MASS, half])));
}
