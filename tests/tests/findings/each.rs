//! Every code: one edit that raises it, with its severity and place, and a near miss.

use std::collections::BTreeSet;

use hilum_job::document::{Code, Finding, Severity};
use serde_json::Value;

use super::job::{clean, edited, findings, name};
use Code::*;
use Severity::*;

/// Code, severity, where; the edit that raises it; the near miss that does not.
#[rustfmt::skip]
pub(crate) const CASES: &[(Code, Severity, &str, &str, &str)] = &[
    // Seed freezes at 0 °C, 32 °F (common practice).
    (FrozenSeed, Stop, "/orders/0/temperature", r#"{"/orders/0/temperature": "0 degC"}"#, r#"{"/orders/0/temperature": "0.1 degC"}"#),
    (FrozenSeed, Stop, "/orders/1/temperature", r#"{"/orders/1/temperature": "32 degF"}"#, r#"{"/orders/1/temperature": "-5 degC", "/orders/1/treat": []}"#),
    (LivingSharesTank, Stop, "/treatments/1/tank", r#"{"/treatments/1/tank": "Living"}"#,
        r#"{"/treatments/1/tank": "Living", "/treatments/1/with_living/0/same_tank": true}"#),
    (UnsafeWithLiving, Stop, "/treatments/1/with_living/0/same_seed", r#"{"/treatments/1/with_living/0/same_seed": false}"#,
        r#"{"/treatments/1/with_living/0/same_seed": false, "/orders/0/treat": ["Live culture", "Blue colourant"], "/orders/1/treat": ["Root guard", "Blue colourant"]}"#),
    (CompatibilityUnknown, Warn, "/treatments/2", r#"{"/treatments/2/with_living": []}"#, r#"{"/treatments/2/with_living/0/same_seed": null}"#),
    (MetalNearLiving, Warn, "/treatments/1/constituents/0",
        r#"{"/treatments/1/constituents/0": "Zinc sulphate", "/treatments/1/with_living/0/same_seed": null}"#,
        r#"{"/treatments/1/constituents/0": "calcium carbonate", "/treatments/1/with_living/0/same_seed": null}"#),
    (MetalNearLiving, Note, "/treatments/1/constituents/0", r#"{"/treatments/1/constituents/0": "MOLYBDENUM"}"#, r#"{"/treatments/1/constituents/0": "boron"}"#),
    (MetalNearLiving, Stop, "/treatments/1/constituents/0",
        r#"{"/treatments/1/constituents/0": "copper", "/treatments/1/tank": "Living", "/treatments/1/with_living/0/same_tank": true}"#,
        r#"{"/treatments/1/constituents/0": "copper"}"#),
    (NotAgitated, Warn, "/tanks/0/agitated", r#"{"/tanks/0/agitated": false}"#, r#"{"/tanks/0/agitated": false, "/treatments/0/living/agitate": false}"#),
    // Worked by hand: 85 % of 160 kg/min is 136 kg/min; 39 min less 10 min of mixing are 3944 kg, 40 min are 4080 kg; a can covers 4000 kg.
    (PackOutlastsPotLife, Warn, "/treatments/0/packs/0", r#"{"/treatments/0/living/pot_life": "39 min"}"#, r#"{"/treatments/0/living/pot_life": "40 min"}"#),
    (OnSeedLifeExceeded, Stop, "/treatments/0/living", r#"{"/after/plant_after": "61 d"}"#, r#"{"/after/plant_after": "60 d"}"#),
    (OnSeedLifeExceeded, Stop, "/treatments/0/living", r#"{"/treatments/1/with_living/0/life": "9 d"}"#, r#"{"/treatments/1/with_living/0/life": "10 d"}"#),
    // Worked by hand: the first seed runs at 07:10, after mixing; 60 d later is 19 June.
    (OnSeedLifeExceeded, Stop, "/treatments/0/living", r#"{"/after": {"plant_on": "2027-06-19T07:10:01+02:00"}}"#, r#"{"/after": {"plant_on": "2027-06-19T07:10:00+02:00"}}"#),
    // Worked by hand: 2 mL/kg × 160 mg × 1e9 × 80 % = 2.56e5 CFU/seed; ten days at 8 °C count 10^-0.1 of 60 d at 10 °C: 1.887e5 are left.
    (TooFewCells, Stop, "/treatments/0/living", r#"{"/treatments/0/living/minimum_at_planting": "1.89e5 CFU/seed"}"#,
        r#"{"/treatments/0/living/minimum_at_planting": "1.88e5 CFU/seed"}"#),
    (TooFewCells, Stop, "/treatments/0/living", r#"{"/after/plant_after": null, "/treatments/0/living/minimum_at_planting": "2.57e5 CFU/seed"}"#,
        r#"{"/after/plant_after": null, "/treatments/0/living/minimum_at_planting": "2.56e5 CFU/seed"}"#),
    // At or below 10 °C is best, above 25 °C too warm where nothing is declared (common practice).
    (StorageTooWarm, Warn, "/after/storage/0/at", r#"{"/after/storage/0/at": "20.1 degC"}"#, r#"{"/after/storage/0/at": "20 degC"}"#),
    (StorageTooWarm, Warn, "/after/storage/1/at", r#"{"/after/storage/1": {"for": "1 d", "at": "25.1 degC"}, "/treatments/0/living/store_below": null}"#,
        r#"{"/after/storage/1": {"for": "1 d", "at": "25 degC"}, "/treatments/0/living/store_below": null}"#),
    (StorageTooWarm, Note, "/after/storage/0/at", r#"{"/after/storage/0/at": "50.1 degF"}"#, r#"{"/after/storage/0/at": "50 degF"}"#),
    (StorageTooWarm, Note, "/orders/1/after/storage/0/at", r#"{"/orders/1/after": {"storage": [{"for": "1 d", "at": "12 degC"}]}}"#,
        r#"{"/orders/1/after": {"storage": [{"for": "1 d", "at": "21 degC"}]}}"#),
    (Sunlight, Warn, "/after/in_sunlight", r#"{"/after/in_sunlight": true}"#, r#"{"/after/in_sunlight": false}"#),
    (Sunlight, Warn, "/orders/0/after/in_sunlight", r#"{"/orders/0/after": {"in_sunlight": true}}"#,
        r#"{"/orders/0/after": {"in_sunlight": true}, "/orders/0/treat": ["Root guard", "Blue colourant"]}"#),
    (ProductExpired, Stop, "/treatments/1/expires", r#"{"/treatments/1/expires": "2027-04-19"}"#, r#"{"/treatments/1/expires": "2027-04-20"}"#),
    (ProductExpired, Stop, "/treatments/3/expires", r#"{"/treatments/3": {"product": "Talc", "rate": "50 g/100 kg", "expires": "2027-04-19"}}"#,
        r#"{"/treatments/3": {"product": "Talc", "rate": "50 g/100 kg", "expires": "2027-04-20"}}"#),
    // Without shifts no day of treating is known.
    (ProductExpired, Stop, "/treatments/0/expires", r#"{"/treatments/0/expires": "2026-01-01"}"#, r#"{"/treatments/0/expires": "2026-01-01", "/work": null}"#),
    (CropNotOnLabel, Stop, "/orders/0/crop", r#"{"/orders/0/crop": "lupin"}"#, r#"{"/orders/0/crop": "Soybean"}"#),
    (AboveMaxRate, Stop, "/treatments/1/max_rate", r#"{"/treatments/1/max_rate": "99.9 mL/100 kg"}"#, r#"{"/treatments/1/max_rate": "100 mL/100 kg"}"#),
    (BelowMinRate, Warn, "/treatments/1/min_rate", r#"{"/treatments/1/min_rate": "100.1 mL/100 kg"}"#, r#"{"/treatments/1/min_rate": "100 mL/100 kg"}"#),
    // Worked by hand: 1 mL/kg of 400 g/L is 400 mg/kg, 0.064 mg on a seed of 160 mg, 25.6 g/ha of 400 000 seeds/ha; 10 g/ha were used.
    (SeasonLimit, Stop, "/actives/0/season_limit", r#"{"/actives/0/season_limit": "35.5 g/ha"}"#, r#"{"/actives/0/season_limit": "35.6 g/ha"}"#),
    (ActiveLimit, Stop, "/actives/0/max_per_seed", r#"{"/actives/0/max_per_seed": "0.0639 mg/seed"}"#, r#"{"/actives/0/max_per_seed": "0.064 mg/seed"}"#),
    (ActiveLimit, Stop, "/actives/0/max_per_mass", r#"{"/actives/0/max_per_mass": "399 mg/kg"}"#, r#"{"/actives/0/max_per_mass": "400 mg/kg"}"#),
    (ActiveAlreadyOnSeed, Note, "/orders/0/on_seed/0", r#"{"/orders/0/on_seed": [{"active": "demo fungicide", "per_seed": "0.001 mg/seed"}]}"#,
        r#"{"/actives/1": {"active": "demo nematicide"}, "/orders/0/on_seed": [{"active": "demo nematicide", "per_seed": "0.001 mg/seed"}]}"#),
    // Worked by hand: 200 + 100 mL/100 kg from one tank, 300 from the other.
    (LiquidTooHigh, Warn, "/orders/0", r#"{"/treater/max_liquid": "599 mL/100 kg"}"#, r#"{"/treater/max_liquid": "600 mL/100 kg"}"#),
    (LiquidTooLow, Warn, "/orders/1", r#"{"/treater/min_liquid": "601 mL/100 kg"}"#, r#"{"/treater/min_liquid": "600 mL/100 kg"}"#),
    (NoColourant, Warn, "/orders/0", r#"{"/treatments/2/colourant": false}"#, r#"{"/treatments/2/colourant": null, "/treatments/1/colourant": true}"#),
    (NoColourant, Warn, "/orders/1", r#"{"/orders/1/treat": [], "/orders/1/on_seed": [{"active": "demo fungicide", "per_seed": "0.05 mg/seed"}]}"#, r#"{"/orders/1/treat": []}"#),
    // 21 L on seed, and a third of what stays in the lines.
    (ShortOfProduct, Stop, "/treatments/1/packs", r#"{"/treatments/1/packs/0/on_hand": 2}"#, r#"{"/treatments/1/packs/0/on_hand": 3}"#),
    (ShortOfProduct, Stop, "/treatments/0/packs", r#"{"/treatments/0/packs/0/on_hand": 5}"#, r#"{"/treatments/0/packs/0/on_hand": 6}"#),
    // Worked by hand: 21 000 kg at 136 kg/min take 2 h 34 min, without a mix or a changeover.
    (OutOfTime, Stop, "/work", r#"{"/work": [{"from": "2027-04-20T07:00:00+02:00", "to": "2027-04-20T09:30:00+02:00"}]}"#,
        r#"{"/work": [{"from": "2027-04-20T07:00:00+02:00", "to": "2027-04-20T10:30:00+02:00"}]}"#),
    // Worked by hand: 8 L of product make 12 L of mix.
    (TankTooSmall, Stop, "/tanks/0", r#"{"/tanks/0/capacity": "11.9 L"}"#, r#"{"/tanks/0/capacity": "12 L"}"#),
    (TankTooSmall, Stop, "/tanks/1", r#"{"/tanks/1/hold_up": "60 L"}"#, r#"{"/tanks/1/hold_up": "10 L"}"#),
    // Worked by hand: 300 mL/100 kg at 160 kg/min are 480 mL/min.
    (PumpOutOfRange, Warn, "/tanks/1", r#"{"/tanks/1/pump/max": "479 mL/min"}"#, r#"{"/tanks/1/pump/max": "480 mL/min"}"#),
    (PumpOutOfRange, Warn, "/tanks/1", r#"{"/tanks/1/pump/min": "481 mL/min"}"#, r#"{"/tanks/1/pump/min": "480 mL/min"}"#),
    (PumpOutOfRange, Warn, "/tanks/0", r#"{"/tanks/0/pump/curve/1/flow": "470 mL/min"}"#, r#"{"/tanks/0/pump/curve/1/flow": "490 mL/min"}"#),
    // Two mixes of 63.6 L.
    (BelowMinFill, Warn, "/tanks/1", r#"{"/tanks/1/min_fill": "50 L"}"#, r#"{"/tanks/1/min_fill": "3 L"}"#),
    // Beyond 2 % (common practice): 8 L at 2 mL/kg cover 4000 kg.
    (CoverageDisagrees, Warn, "/treatments/0/packs/0/covers", r#"{"/treatments/0/packs/0/covers": "4081 kg"}"#, r#"{"/treatments/0/packs/0/covers": "4079 kg"}"#),
    // Beyond 2 % and 10 % (common practice): a unit of 150 000 seeds is 24 kg and takes 48 mL.
    (StatementsDisagree, Note, "/treatments/0/also_stated/0", r#"{"/treatments/0/also_stated/0": "48.97 mL/unit"}"#, r#"{"/treatments/0/also_stated/0": "48.95 mL/unit"}"#),
    (StatementsDisagree, Note, "/treatments/0/also_stated/0", r#"{"/treatments/0/also_stated/0": "47.03 mL/unit"}"#, r#"{"/treatments/0/also_stated/0": "47.05 mL/unit"}"#),
    (StatementsDisagree, Warn, "/treatments/0/also_stated/0", r#"{"/treatments/0/also_stated/0": "52.81 mL/unit"}"#, r#"{"/treatments/0/also_stated/0": "52.79 mL/unit"}"#),
    // Worked by hand: 21.2 L; two jugs hold 21 L and 20.6 L, 0.9 % and 2.8 % less.
    (AlmostCovered, Note, "/treatments/1/packs", r#"{"/treatments/1/packs/0/parts/0/fill": "10.5 L"}"#, r#"{"/treatments/1/packs/0/parts/0/fill": "10.3 L"}"#),
    // Worked by hand: 4.8 mL/unit on 24 and 24.3 kg differ by 1.25 %, on 24 and 27 kg by 12.5 %.
    (RecipeChanges, Note, "/tanks/1", r#"{"/treatments/2/rate": "4.8 mL/unit", "/orders/1/size": "180 g/1000 seeds"}"#,
        r#"{"/treatments/2/rate": "4.8 mL/unit", "/orders/1/size": "162 g/1000 seeds"}"#),
    // Eight packs without a common measure.
    (BoundReached, Note, "/treatments/2/packs", r#"{"/treatments/2/packs": [
        {"pack": "a", "covers": "14.142136 kg"}, {"pack": "b", "covers": "17.320508 kg"}, {"pack": "c", "covers": "22.360680 kg"}, {"pack": "d", "covers": "26.457513 kg"},
        {"pack": "e", "covers": "33.166248 kg"}, {"pack": "f", "covers": "36.055513 kg"}, {"pack": "g", "covers": "41.231056 kg"}, {"pack": "h", "covers": "43.588989 kg"}]}"#,
        r#"{"/treatments/2/packs": [{"pack": "a", "covers": "1000 kg"}, {"pack": "b", "covers": "300 kg"}]}"#),
    (MissingInput, Note, "/orders/1", r#"{"/orders/1/sowing": null}"#, "{}"),
    (MissingInput, Note, "/orders/0", r#"{"/orders/0/crop": null}"#, r#"{"/orders/0/crop": null, "/treatments/0/crops": null, "/treatments/1/crops": null}"#),
    (MissingInput, Note, "/orders/0", r#"{"/orders/0/temperature": null}"#, r#"{"/orders/0/temperature": null, "/orders/0/treat": []}"#),
    (MissingInput, Note, "/treatments/2", r#"{"/treatments/2/packs": null}"#, r#"{"/treatments/2/packs": null, "/orders/0/treat": ["Live culture", "Root guard"], "/orders/1/treat": ["Live culture", "Root guard"]}"#),
    (MissingInput, Note, "/treatments/1", r#"{"/treatments/1/density": null, "/treatments/1/actives/0/content": "35 %"}"#, r#"{"/treatments/1/density": null}"#),
    (MissingInput, Note, "/treater", r#"{"/treater/seed_flow": null}"#, r#"{"/treater/seed_flow": null, "/treater/charge": "80 kg", "/treater/cycle": "30 s"}"#),
    (MissingInput, Note, "/treater", r#"{"/treater/seed_flow": null, "/treater/charge": "80 kg"}"#, r#"{"/treater/seed_flow": null, "/orders/0/seed_flow": "9 t/h", "/orders/1/seed_flow": "9 t/h"}"#),
    (MissingInput, Note, "/tanks/1", r#"{"/tanks/1/pump/curve": null}"#, r#"{"/tanks/1/pump/curve": null, "/treater/seed_flow": null, "/treater/charge": "80 kg", "/treater/cycle": "30 s"}"#),
    (MissingInput, Note, "", r#"{"/work": null}"#, "{}"),
    (MissingInput, Note, "/treatments/0/living", r#"{"/treatments/0/living/pot_life": null}"#, r#"{"/treatments/0/living/store_below": null}"#),
    (MissingInput, Note, "/treatments/0/living", r#"{"/treatments/0/living/survival": null}"#, r#"{"/treatments/0/living/recovery": null}"#),
    (MissingInput, Note, "/after", r#"{"/after/plant_after": null}"#, r#"{"/after/in_sunlight": null}"#),
    (MissingInput, Note, "/after", r#"{"/after/storage": null}"#, r#"{"/after/storage": null, "/treatments/0/living/survival/at": null, "/treatments/0/living/survival/z": null}"#),
    (MissingInput, Note, "/after/plant_on", r#"{"/after": {"plant_on": "2027-04-20T07:00:00+02:00", "storage": [{"for": "1 d", "at": "8 degC"}]}}"#,
        r#"{"/after": {"plant_on": "2027-04-20T17:00:00+02:00", "storage": [{"for": "1 d", "at": "8 degC"}]}}"#),
    // Only a tank that holds something alive needs an agitator for it.
    (NotAgitated, Warn, "/tanks/0/agitated", r#"{"/tanks/0/agitated": false}"#, r#"{"/tanks/1/agitated": false}"#),
    (LivingSharesTank, Stop, "/treatments/1/tank", r#"{"/treatments/1/tank": "Living"}"#,
        r#"{"/treatments/1/tank": "Living", "/orders/0/treat": ["Live culture", "Blue colourant"], "/orders/1/treat": ["Live culture", "Blue colourant"]}"#),
    // The first of equally warm periods is named.
    (StorageTooWarm, Warn, "/after/storage/0/at", r#"{"/after/storage": [{"for": "1 d", "at": "21 degC"}, {"for": "1 d", "at": "21 degC"}]}"#,
        r#"{"/after/storage": [{"for": "1 d", "at": "20 degC"}, {"for": "1 d", "at": "20 degC"}]}"#),
    (NoColourant, Warn, "/orders/1", r#"{"/orders/1/treat": ["Live culture", "Root guard"]}"#, r#"{"/orders/1/treat": ["Live culture"]}"#),
    // Worked by hand: 42 L and two thirds of a litre in the lines; five cans of 8.5 L lack 0.4 %, of 8.4 L 1.6 %.
    (AlmostCovered, Note, "/treatments/0/packs", r#"{"/treatments/0/packs/0": {"pack": "can", "parts": [{"part": "culture", "fill": "8.5 L"}]}}"#,
        r#"{"/treatments/0/packs/0": {"pack": "can", "parts": [{"part": "culture", "fill": "8.4 L"}]}}"#),
    // A tank that no order uses may be what it is.
    (TankTooSmall, Stop, "/tanks/1", r#"{"/tanks/1/hold_up": "60 L"}"#, r#"{"/tanks/2": {"tank": "Spare", "capacity": "1 L", "hold_up": "2 L"}}"#),
    // Nothing runs without a liquid or shifts, so nobody asks how fast.
    (MissingInput, Note, "/treater", r#"{"/treater/seed_flow": null, "/work": null}"#, r#"{"/treater/seed_flow": null, "/work": null, "/orders/0/treat": [], "/orders/1/treat": []}"#),
    (MissingInput, Note, "/treater", r#"{"/treater/seed_flow": null, "/orders/0/treat": [], "/orders/1/treat": []}"#,
        r#"{"/treater/seed_flow": null, "/work": null, "/orders/0/treat": [], "/orders/1/treat": []}"#),
    (MissingInput, Note, "", r#"{"/work": null, "/orders/0/treat": ["Live culture"], "/orders/1/treat": ["Live culture"], "/treatments/0/tank": null}"#,
        r#"{"/work": null, "/orders/0/treat": [], "/orders/1/treat": []}"#),
    (MissingInput, Note, "/treatments/0/living", r#"{"/treatments/0/living/pot_life": null}"#,
        r#"{"/treatments/0/living/pot_life": null, "/orders/0/treat": ["Root guard", "Blue colourant"], "/orders/1/treat": ["Root guard", "Blue colourant"]}"#),
    // Worked by hand: the first seed runs at 07:10.
    (MissingInput, Note, "/after/plant_on", r#"{"/after": {"plant_on": "2027-04-20T07:09:59+02:00", "storage": [{"for": "1 d", "at": "8 degC"}]}, "/orders/1/after": {"plant_after": "1 d"}}"#,
        r#"{"/after": {"plant_on": "2027-04-20T07:10:00+02:00", "storage": [{"for": "1 d", "at": "8 degC"}]}, "/orders/1/after": {"plant_after": "1 d"}}"#),
    (MissingInput, Note, "/orders/0/after/plant_on", r#"{"/orders/0/after": {"plant_on": "2027-04-20T07:00:00+02:00"}}"#,
        r#"{"/orders/0/after": {"plant_on": "2027-04-20T17:00:00+02:00"}}"#),
    (TreatedSeed, Note, "", "{}", ""),
];

#[test]
fn a_clean_job_raises_nothing_but_the_standing_cautions() {
    let found = findings(&clean());
    let codes: Vec<Code> = found.iter().map(|finding| finding.code).collect();
    assert_eq!(codes, [TreatedSeed], "{found:#?}");
}

#[test]
fn one_edit_raises_each_and_a_near_miss_does_not() {
    let mut wrong: Vec<String> = Vec::new();
    for (code, severity, place, edit, near) in CASES {
        let is = |finding: &Finding| finding.code == *code && finding.severity == *severity;
        let raised = findings(&edited(edit));
        if !raised.iter().any(|finding| is(finding) && finding.r#where == *place) {
            wrong.push(format!("{edit}\n  does not raise {severity:?} {code:?} at {place}: {raised:#?}"));
        }
        // What is always raised has no near miss.
        if near.is_empty() {
            continue;
        }
        let missed = findings(&edited(near));
        wrong.extend(
            missed
                .iter()
                .filter(|finding| is(finding))
                .map(|finding| format!("{near}\n  raises {finding:?}")),
        );
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// A charge alone sets no clock, and without shifts none is wanted.
#[test]
fn a_cycle_is_asked_for_where_there_are_shifts() {
    let asked = |edit: &str| findings(&edited(edit)).iter().any(|finding| finding.r#where == "/treater");
    assert!(asked(r#"{"/treater/seed_flow": null, "/treater/charge": "80 kg"}"#));
    assert!(!asked(r#"{"/treater/seed_flow": null, "/treater/charge": "80 kg", "/work": null}"#));
}

/// What a finding says of its place must stand in the job, or be a thing that is missing there.
#[test]
fn every_place_is_in_the_job() {
    for (.., edit, near) in CASES {
        for edit in [edit, near].into_iter().filter(|edit| !edit.is_empty()) {
            let job = edited(edit);
            for finding in findings(&job) {
                assert!(job.pointer(&finding.r#where).is_some(), "{edit}: {finding:?}");
            }
        }
    }
}

#[test]
fn the_gravest_come_first() {
    let job = edited(
        r#"{"/orders/1/sowing": null, "/treatments/1/max_rate": "90 mL/100 kg", "/tanks/0/agitated": false,
            "/orders/1/temperature": "-1 degC", "/after/in_sunlight": true}"#,
    );
    let severities: Vec<Severity> = findings(&job).iter().map(|finding| finding.severity).collect();
    assert_eq!(severities, [Stop, Stop, Warn, Warn, Note, Note]);
}

/// The codes of the published schema: all but those of an account have a case.
#[test]
fn every_code_has_a_case() {
    let schemas = hilum_job::schema::schemas();
    let (_, plan) = schemas.iter().find(|(name, _)| *name == "plan").unwrap();
    let mut codes = BTreeSet::new();
    words(plan.as_value().pointer("/$defs/Code").unwrap(), &mut codes);
    let tested: BTreeSet<String> = CASES.iter().map(|(code, ..)| name(*code)).collect();
    let of_accounts = ["applied_above_max", "applied_below_min"].map(String::from);
    let untested: Vec<&String> =
        codes.difference(&tested).filter(|code| !of_accounts.contains(code)).collect();
    assert_eq!(untested, Vec::<&String>::new());
    assert!(codes.len() >= 33 + of_accounts.len(), "{codes:?}");
}

/// All that a schema of words allows.
fn words(schema: &Value, into: &mut BTreeSet<String>) {
    match schema {
        Value::Object(fields) => {
            into.extend(fields.get("const").and_then(Value::as_str).map(str::to_owned));
            let listed = fields.get("enum").and_then(Value::as_array);
            into.extend(listed.into_iter().flatten().filter_map(Value::as_str).map(str::to_owned));
            fields.values().for_each(|value| words(value, into));
        }
        Value::Array(items) => items.iter().for_each(|item| words(item, into)),
        _ => {}
    }
}
