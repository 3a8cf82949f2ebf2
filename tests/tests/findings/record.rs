//! The facts of a bag tag and of the treating record.

use super::job::{edited, planned};
use hilum_job::document::Record;

fn record(edits: &str) -> Record {
    planned(&edited(edits)).orders.remove(0).record
}

#[test]
fn it_names_what_is_on_the_seed() {
    let on_seed = r#"{"/actives/1": {"active": "demo nematicide"}, "/orders/0/on_seed": [{"active": "demo nematicide", "per_seed": "0.001 mg/seed"}]}"#;
    let record = record(on_seed);
    assert_eq!(record.treated_with, ["Live culture", "Root guard", "Blue colourant"]);
    assert_eq!(record.actives, ["demo fungicide", "demo nematicide"]);
}

/// 7 CFR 201.31a wants the name even where nobody knows how much of it there is.
#[test]
fn an_active_of_unknown_amount_is_named() {
    let unknown = r#"{"/treatments/1/density": null, "/treatments/1/actives/0/content": "35 %"}"#;
    assert_eq!(record(unknown).actives, ["demo fungicide"]);
}

/// Worked by hand: 70 g/ha are left of the season; 0.064 mg on a seed: 1 093 750 seeds/ha.
#[test]
fn it_states_the_sowing_rate_at_which_the_season_is_full() {
    let most = record("{}").max_sowing.unwrap();
    assert_eq!(most.unit, "seeds/ha");
    assert!((most.value - 1_093_750.0).abs() < 1e-6, "{most:?}");
    let tighter = r#"{"/actives/1": {"active": "demo nematicide", "season_limit": "40 g/ha"},
        "/orders/0/on_seed": [{"active": "demo nematicide", "per_seed": "0.05 mg/seed"}]}"#;
    let most = record(tighter).max_sowing.unwrap();
    assert!((most.value - 800_000.0).abs() < 1e-6, "{most:?}");
}

#[test]
fn what_must_dry_is_a_caution() {
    let caution = "Let the seed dry between \"Root guard\" and \"Live culture\".";
    assert!(!record("{}").cautions.iter().any(|own| own == caution));
    assert!(
        record(r#"{"/treatments/1/with_living/0/dry_between": true}"#)
            .cautions
            .iter()
            .any(|own| own == caution)
    );
}

/// 7 CFR 201.31a, 201.24a and 110.3 (a).
#[test]
fn what_the_rules_ask_for_and_the_job_does_not_say_is_listed() {
    let bare = r#"{"/orders/0/crop": null, "/work": null, "/treatments/1/registration": null, "/treatments/2/colourant": null}"#;
    let missing = record(bare).missing;
    assert_eq!(
        missing,
        [
            "crop",
            "day of treating",
            "registration number of \"Root guard\"",
            "common name of the substance in \"Blue colourant\"",
            "day beyond which the inoculant is not claimed to be effective",
            "place of treating",
            "applicator",
            "certification number of the applicator"
        ]
    );
}

/// Worked by hand: mixing from 07:00 to 07:10, then the first seed. log10 2.56 of 60 d at 10 °C are 24.494 d, at
/// 8 °C 10^0.1 times as many, 30.837 d: 03:15 on 21 May. The part of a day is not promised.
#[test]
fn the_tag_promises_no_day_too_many() {
    let record = record("{}");
    assert_eq!(record.treated_on.as_deref(), Some("2027-04-20"));
    assert_eq!(record.inoculant_use_before.as_deref(), Some("2027-05-21"));
    assert_eq!(record.missing, ["place of treating", "applicator", "certification number of the applicator"]);
}

#[test]
fn the_shortest_life_of_all_inoculants_counts_and_an_unknown_one_promises_nothing() {
    let second = |life: &str| {
        let living = format!(r#"{{"titre": "1e9 CFU/mL"{life}}}"#);
        record(&format!(
            r#"{{"/treatments/3": {{"product": "Second culture", "tank": "Coat", "rate": "10 mL/100 kg", "living": {living}}}}}"#
        ))
        .inoculant_use_before
    };
    assert_eq!(second(r#", "on_seed_life": "20 d""#).as_deref(), Some("2027-05-10"));
    assert_eq!(second(""), None);
}

/// Worked by hand: 2.56e5 CFU/seed when treated, fewer than 3e5, whether or not it is known how they die.
#[test]
fn too_few_cells_from_the_start_promise_no_day_after_treating() {
    let few = r#"{"/treatments/0/living/minimum_at_planting": "3e5 CFU/seed"}"#;
    assert_eq!(record(few).inoculant_use_before.as_deref(), Some("2027-04-20"));
    let few = r#"{"/treatments/0/living/minimum_at_planting": "3e5 CFU/seed", "/treatments/0/living/survival": null}"#;
    assert_eq!(record(few).inoculant_use_before.as_deref(), Some("2027-04-20"));
}

#[test]
fn what_is_not_on_the_seed_asks_for_nothing() {
    let caution = |treat: &str| {
        let cautions = record(&format!(
            r#"{{"/treatments/1/with_living/0/dry_between": true, "/orders/0/treat": {treat}}}"#
        ))
        .cautions;
        cautions.iter().any(|own| own.starts_with("Let the seed dry"))
    };
    assert!(caution(r#"["Live culture", "Root guard"]"#) && !caution(r#"["Root guard", "Blue colourant"]"#));
    let of_run = |treat: &str| {
        record(&format!(r#"{{"/orders/0/treat": {treat}}}"#)).missing.iter().any(|fact| fact == "applicator")
    };
    assert!(of_run(r#"["Root guard"]"#) && !of_run(r#"["Blue colourant"]"#));
}
