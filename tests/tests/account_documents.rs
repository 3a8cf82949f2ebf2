//! A run is accounted for: every number worked out by hand, every verdict, finding and refusal.
#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a test stops at the first surprise"
)]

use hilum_job::document::{
    Account, AccountedOrder, AccountedTank, Code, Out, PlantByReason, Severity, Verdict,
};
use hilum_job::{Problems, Run, account, account_json};
use serde_json::{Value, json};

/// 10 t of seed of 0.2 g; 200 mL/100 kg of Coat with 100 mL/100 kg of water from T1, 100 mL/100 kg of Live from
/// T2, 50 g/100 kg of Dust. All of it went on exactly as asked for: 30 L, 10 L and 5 kg.
fn clean() -> Value {
    serde_json::from_str(include_str!("documents/run.json")).unwrap()
}

/// The clean run with places changed; a new place is added, `null` is as good as away.
fn edited(edits: &[(&str, Value)]) -> Value {
    let mut run = clean();
    for (pointer, value) in edits {
        let (parent, last) = pointer.rsplit_once('/').unwrap();
        match run.pointer_mut(parent).unwrap() {
            Value::Object(fields) => drop(fields.insert(last.into(), value.clone())),
            Value::Array(items) if last == "-" => items.push(value.clone()),
            Value::Array(items) => items[last.parse::<usize>().unwrap()] = value.clone(),
            other => panic!("{pointer}: {other}"),
        }
    }
    run
}

fn tried(run: &Value) -> Result<Account, Problems> {
    account(&Run::from_json(&run.to_string())?)
}

fn after(edits: &[(&str, Value)]) -> Account {
    tried(&edited(edits)).unwrap()
}

fn order(account: &Account) -> &AccountedOrder {
    account.orders.first().unwrap()
}

fn tank(account: &Account) -> &AccountedTank {
    order(account).tanks.first().unwrap()
}

fn is(out: &Out, value: f64, unit: &str) {
    assert_eq!(out.unit, unit);
    assert!((out.value / value - 1.0).abs() < 1e-12, "{} is not {value} {unit}", out.value);
}

/// Codes of all findings but the standing cautions.
fn codes(account: &Account) -> Vec<(Severity, Code, &str)> {
    let said = account.findings.iter().filter(|finding| finding.code != Code::TreatedSeed);
    said.map(|finding| (finding.severity, finding.code, finding.r#where.as_str())).collect()
}

#[test]
fn what_a_tank_gave_is_start_less_end_less_lost() {
    let account = tried(&clean()).unwrap();
    let tank = tank(&account);
    // 50 − 18 − 2 L on 10,000 kg.
    is(&tank.used, 30.0, "L");
    is(&tank.achieved, 300.0, "mL/100 kg");
    is(&tank.target, 300.0, "mL/100 kg");
    assert!(tank.deviation.abs() < 1e-12 && tank.verdict == Verdict::OnTarget);
    // Three readings to 0.5 L: 2 × √(3 × 0.5²/12) = 0.5 L on 100 × 100 kg.
    is(tank.uncertainty.as_ref().unwrap(), 5.0, "mL/100 kg");
    // 5 % is common practice where a run does not say.
    assert!((account.tolerance - 0.05).abs() < 1e-15);
}

#[test]
fn what_was_added_counts() {
    let account = after(&[
        ("/orders/0/tanks/0/end", json!("33 L")),
        ("/orders/0/tanks/0/added", json!(["10 L", { "reading": "5 L", "resolution": "0 L" }])),
    ]);
    // 50 − 33 + 10 + 5 − 2; four readings to 0.5 L, one known exactly: 2 × √(4 × 0.5²/12) = 0.57735 L.
    is(&tank(&account).used, 30.0, "L");
    let uncertainty = tank(&account).uncertainty.as_ref().unwrap().value;
    assert!((uncertainty - 5.773_502_691_896_257).abs() < 1e-12, "{uncertainty}");
    let one = after(&[("/orders/0/tanks/0/end", json!("33 L")), ("/orders/0/tanks/0/added", json!("15 L"))]);
    is(&tank(&one).used, 30.0, "L");
}

#[test]
fn products_take_their_shares_of_the_mix() {
    let account = tried(&clean()).unwrap();
    let product = tank(&account).products.first().unwrap();
    assert_eq!(product.product, "Coat");
    // 200 of 300 parts of 30 L; 2 mL/kg × 0.2 g/seed.
    is(&product.used, 20.0, "L");
    is(&product.per_mass, 200.0, "mL/100 kg");
    is(&product.per_seed, 0.4, "µL/seed");
    assert!(product.deviation.abs() < 1e-12);
    let dust = order(&account).dry.as_ref().unwrap().first().unwrap();
    is(&dust.used, 5.0, "kg");
    is(&dust.achieved, 50.0, "g/100 kg");
    is(&dust.per_seed, 0.1, "mg/seed");
    assert_eq!(dust.verdict, Verdict::OnTarget);
}

#[test]
fn actives_and_cells_follow_what_was_applied() {
    // 33 L instead of 30: a tenth more of everything that is in T1.
    let account = after(&[("/orders/0/tanks/0/end", json!("15 L"))]);
    let active = order(&account).actives.first().unwrap();
    // 2.2 mL/kg × 300 g/L = 660 mg/kg; × 0.2 g = 0.132 mg/seed; × 400,000 seeds/ha = 52.8 g/ha of 60.
    is(&active.per_mass, 660.0, "mg/kg");
    is(&active.per_seed, 0.132, "mg/seed");
    is(active.per_area.as_ref().unwrap(), 52.8, "g/ha");
    assert!((active.share_of_season_limit.unwrap() - 0.88).abs() < 1e-12);
    // 8 L instead of 10: 0.16 µL/seed × 4e6 CFU/µL × 50 %.
    let account = after(&[("/orders/0/tanks/1/end", json!("4 L"))]);
    let living = order(&account).living.as_ref().unwrap().first().unwrap();
    is(&living.at_treating, 3.2e5, "CFU/seed");
    is(living.minimum.as_ref().unwrap(), 1e5, "CFU/seed");
}

// A tenth of 4e5 CFU/seed is left after 20 d; 2e3, a two hundredth, after 20 d × log10 200 = 46.020 599 9 d, 46 d
// and 1779.8 s.
#[test]
fn cells_are_followed_from_the_first_seed_that_was_treated() {
    let survival =
        ("/job/treatments/1/living/survival", json!({ "model": "log_linear", "decimal_reduction": "20 d" }));
    let minimum = ("/job/treatments/1/living/minimum_at_planting", json!("2e3 CFU/seed"));
    let plant = ("/job/after", json!({ "plant_on": "2027-05-04T09:00:00+03:00" }));
    let account = after(&[survival.clone(), minimum.clone(), plant]);
    let living = order(&account).living.as_ref().unwrap().first().unwrap();
    // 08:00 +02:00 is 09:00 +03:00: 20 d later to the second.
    is(living.at_planting.as_ref().unwrap(), 4e4, "CFU/seed");
    assert_eq!(living.plant_by.as_deref(), Some("2027-05-30T08:29:39+02:00"));
    assert_eq!(living.because, Some(PlantByReason::Minimum));
    assert_eq!(order(&account).record.inoculant_use_before.as_deref(), Some("2027-05-30"));
    assert_eq!(codes(&account), []);
    let late = after(&[survival, minimum, ("/job/after", json!({ "plant_after": "47 d" }))]);
    assert_eq!(codes(&late), [(Severity::Stop, Code::TooFewCells, "/job/treatments/1/living")]);
    // Without a survival the declared life on the seed is what is known.
    let declared = tried(&clean()).unwrap();
    let living = order(&declared).living.as_ref().unwrap().first().unwrap();
    assert_eq!(living.plant_by.as_deref(), Some("2027-06-13T08:00:00+02:00"));
    assert_eq!((living.because, &living.at_planting), (Some(PlantByReason::OnSeedLife), &None));
}

#[test]
fn an_active_of_a_product_that_was_not_read_is_left_out() {
    let account = after(&[(
        "/orders/0/tanks",
        json!([{ "tank": "T2", "start": "12 L", "end": "2 L", "resolution": "0.1 L" }]),
    )]);
    assert!(order(&account).actives.is_empty());
    assert_eq!(codes(&account), [(Severity::Note, Code::MissingInput, "/orders/0/tanks")]);
    assert_eq!(order(&account).record.missing, ["amount of \"Coat\" that was applied"]);
    // What was on it before is still known of another active.
    let account = after(&[
        ("/orders/0/tanks", json!([])),
        ("/job/orders/0/on_seed", json!([{ "active": "beta", "per_seed": "0.03 mg/seed" }])),
    ]);
    let actives: Vec<&str> = order(&account).actives.iter().map(|active| active.active.as_str()).collect();
    assert_eq!(actives, ["beta"]);
}

// 5 % of 300 are 285 and 315; the readings leave 5 mL/100 kg open either way.
#[test]
fn a_verdict_is_given_only_where_the_readings_allow_it() {
    for (end, off, verdict) in [
        ("18 L", 0.0, Verdict::OnTarget),
        ("17 L", 1.0 / 30.0, Verdict::OnTarget),
        ("16.7 L", 1.3 / 30.0, Verdict::CannotTell),
        ("16.3 L", 1.7 / 30.0, Verdict::CannotTell),
        ("15.9 L", 2.1 / 30.0, Verdict::High),
        ("19.3 L", -1.3 / 30.0, Verdict::CannotTell),
        ("20.1 L", -2.1 / 30.0, Verdict::Low),
    ] {
        let account = after(&[("/orders/0/tanks/0/end", json!(end))]);
        assert_eq!(tank(&account).verdict, verdict, "{end}");
        assert!((tank(&account).deviation - off).abs() < 1e-12, "{end}");
    }
    let wide = after(&[("/tolerance", json!("8 %")), ("/orders/0/tanks/0/end", json!("16.3 L"))]);
    assert_eq!(tank(&wide).verdict, Verdict::OnTarget);
    let low = after(&[("/orders/0/dry/0/end", json!("20.5 kg"))]);
    assert_eq!(order(&low).dry.as_ref().unwrap().first().unwrap().verdict, Verdict::Low);
}

// On the seed are 30 L of mix, of which 20 L weigh 1.25 kg/L and 10 L of water 0.9982 kg/L, 10 L of Live at
// 1 kg/L and 5 kg of Dust: 25 + 9.982 + 10 + 5 = 49.982 kg.
#[test]
fn what_was_weighed_with_the_seed_comes_off() {
    let seed = json!({ "mass": "10049.982 kg", "weighed": "after", "resolution": "0 kg" });
    let account = after(&[("/orders/0/seed", seed)]);
    is(&order(&account).mass, 10_000.0, "kg");
    assert!(tank(&account).deviation.abs() < 1e-12);
    let account = after(&[("/orders/0/seed", json!({ "mass": "10049.982 kg", "resolution": "0 kg" }))]);
    is(&order(&account).mass, 10_049.982, "kg");
}

#[test]
fn a_bin_falls_and_a_totaliser_rises() {
    let rising = tried(&clean()).unwrap();
    let falling =
        after(&[("/orders/0/seed/start", json!("14000 kg")), ("/orders/0/seed/end", json!("4000 kg"))]);
    is(&order(&rising).mass, 10_000.0, "kg");
    is(&order(&falling).mass, 10_000.0, "kg");
    is(&order(&falling).ordered, 10_000.0, "kg");
    // Two readings to 20 kg: 2 × 20 × √(2/12).
    let account = after(&[("/orders/0/seed/resolution", json!("20 kg"))]);
    let uncertainty = order(&account).mass_uncertainty.as_ref().unwrap();
    assert!((uncertainty.value - 16.329_931_618_554_52).abs() < 1e-9, "{}", uncertainty.value);
}

// 34.982 kg of the mix above are 30 L; 36 kg of a mix of 1.2 kg/L are 30 L.
#[test]
fn a_tank_on_a_scale_is_read_by_mass() {
    let by_mass = |density: Value| {
        let end = if density.is_null() { "15.018 kg" } else { "14 kg" };
        after(&[(
            "/orders/0/tanks/0",
            json!({ "tank": "T1", "start": "50 kg", "end": end, "resolution": "0.02 kg", "density": density }),
        )])
    };
    for density in [Value::Null, json!("1.2 kg/L")] {
        let account = by_mass(density);
        is(&tank(&account).used, 30.0, "L");
        assert_eq!(tank(&account).verdict, Verdict::OnTarget);
    }
    let mut run = edited(&[("/orders/0/tanks/1", json!({ "tank": "T2", "start": "12 kg", "end": "2 kg" }))]);
    run["job"]["treatments"][1].as_object_mut().unwrap().remove("density");
    let told = |run: &Value| tried(run).unwrap_err().to_string().split_once("\"Live\"").unwrap().0.to_owned();
    assert!(told(&run).starts_with("/orders/0/tanks/1/density"));
    // By volume it needs none, unless the seed was weighed with what is on it.
    run["orders"][0]["tanks"][1] = json!({ "tank": "T2", "start": "12 L", "end": "2 L" });
    tried(&run).unwrap();
    run["orders"][0]["seed"] = json!({ "mass": "10050 kg", "weighed": "after" });
    assert!(told(&run).starts_with("/orders/0/tanks/1/density"));
}

#[test]
fn readings_without_a_resolution_count_as_exact_and_say_so() {
    let account = after(&[("/orders/0/tanks/0/resolution", Value::Null)]);
    assert_eq!(tank(&account).uncertainty, None);
    assert_eq!(tank(&account).verdict, Verdict::OnTarget);
    assert_eq!(codes(&account), [(Severity::Note, Code::MissingInput, "/orders/0/tanks/0/resolution")]);
    let account = after(&[("/orders/0/seed/resolution", Value::Null)]);
    assert_eq!((&tank(&account).uncertainty, &order(&account).mass_uncertainty), (&None, &None));
    // Two readings to 10 g of 10 t: 2 × √(2/12) × 10 g, in g/100 kg; unknown beside seed of which that is not known.
    let dust = |account: &Account| order(account).dry.as_ref().unwrap()[0].uncertainty.clone();
    assert!((dust(&tried(&clean()).unwrap()).unwrap().value - 0.081_649_658).abs() < 1e-8);
    assert_eq!(dust(&account), None);
}

#[test]
fn a_clean_run_raises_nothing_but_the_standing_note() {
    let account = tried(&clean()).unwrap();
    assert_eq!(codes(&account), []);
    assert_eq!(account.findings.len(), 1);
    assert!(account.findings.iter().all(|finding| finding.severity == Severity::Note));
}

#[test]
fn every_finding_is_raised_by_one_edit() {
    use Code::{
        ActiveLimit, AppliedAboveMax, AppliedBelowMin, MissingInput, OnSeedLifeExceeded, ProductExpired,
        SeasonLimit, TooFewCells,
    };
    use Severity::{Note, Stop, Warn};
    for (place, value, finding) in [
        // 34 L are 226.7 mL/100 kg of Coat, of at most 220; 26 L are 173.3, of at least 180.
        ("/orders/0/tanks/0/end", json!("14 L"), (Stop, AppliedAboveMax, "/job/treatments/0/max_rate")),
        ("/orders/0/tanks/0/end", json!("22 L"), (Warn, AppliedBelowMin, "/job/treatments/0/min_rate")),
        // 48 g/ha, 0.12 mg/seed and 600 mg/kg are on it.
        (
            "/job/actives/0/season_limit",
            json!("47.9 g/ha"),
            (Stop, SeasonLimit, "/job/actives/0/season_limit"),
        ),
        (
            "/job/actives/0/season_used",
            json!("12.1 g/ha"),
            (Stop, SeasonLimit, "/job/actives/0/season_limit"),
        ),
        (
            "/job/actives/0/max_per_seed",
            json!("0.119 mg/seed"),
            (Stop, ActiveLimit, "/job/actives/0/max_per_seed"),
        ),
        (
            "/job/actives/0/max_per_mass",
            json!("599 mg/kg"),
            (Stop, ActiveLimit, "/job/actives/0/max_per_mass"),
        ),
        // 4e5 CFU/seed are on it.
        (
            "/job/treatments/1/living/minimum_at_planting",
            json!("4.1e5 CFU/seed"),
            (Stop, TooFewCells, "/job/treatments/1/living"),
        ),
        (
            "/job/after",
            json!({ "plant_after": "61 d" }),
            (Stop, OnSeedLifeExceeded, "/job/treatments/1/living"),
        ),
        // In UTC the last seed would still be on the 14th.
        (
            "/orders/0/to",
            json!("2027-04-15T00:30:00+02:00"),
            (Stop, ProductExpired, "/job/treatments/0/expires"),
        ),
        ("/orders/0/dry", json!([]), (Note, MissingInput, "/orders/0/dry")),
    ] {
        let account = after(&[(place, value.clone())]);
        assert_eq!(codes(&account), [finding], "{place} {value}");
    }
    for (place, value) in [
        ("/orders/0/tanks/0/end", json!("15 L")),
        ("/orders/0/tanks/0/end", json!("21 L")),
        ("/job/actives/0/season_limit", json!("48 g/ha")),
        ("/job/actives/0/max_per_seed", json!("0.12 mg/seed")),
        ("/job/actives/0/max_per_mass", json!("600 mg/kg")),
        ("/job/treatments/1/living/minimum_at_planting", json!("4e5 CFU/seed")),
        ("/job/after", json!({ "plant_after": "60 d" })),
    ] {
        assert_eq!(codes(&after(&[(place, value.clone())])), [], "{place} {value}");
    }
}

#[test]
fn the_gravest_finding_stands_first() {
    let account = after(&[("/orders/0/dry", json!([])), ("/orders/0/tanks/0/end", json!("14 L"))]);
    let severities: Vec<Severity> = account.findings.iter().map(|finding| finding.severity).collect();
    assert!(severities.is_sorted(), "{severities:?}");
    assert_eq!(severities.first(), Some(&Severity::Stop));
}

// 7 CFR 110.3(a): (1) product and registration number, (2) total amount, (3) location, crop and how much was
// treated, (4) month, day and year, (5) name and certification number; 201.7a and 201.31a: the substances.
#[test]
fn the_record_holds_what_the_rules_ask_for() {
    let account = tried(&clean()).unwrap();
    let record = &order(&account).record;
    let coat = record.products.first().unwrap();
    assert_eq!((coat.product.as_str(), coat.registration.as_deref()), ("Coat", Some("R-1")));
    is(coat.amount.as_ref().unwrap(), 20.0, "L");
    assert_eq!(record.actives, ["alpha"]);
    is(&record.treated, 10_000.0, "kg");
    let facts = [&record.crop, &record.treated_on, &record.place, &record.operator, &record.certificate];
    let facts: Vec<&str> = facts.iter().map(|fact| fact.as_deref().unwrap()).collect();
    assert_eq!(facts, ["soybean", "2027-04-14", "Shed 3", "N. Example", "X-17"]);
    assert_eq!(record.missing, Vec::<String>::new());
}

#[test]
fn what_a_record_lacks_is_listed() {
    for (place, missing) in [
        ("/job/treatments/0/registration", "registration number of \"Coat\""),
        ("/job/treatments/2/colourant", "common name of the substance in \"Dust\""),
        ("/job/orders/0/crop", "crop"),
        ("/orders/0/place", "place of treating"),
        ("/orders/0/operator", "applicator"),
        ("/orders/0/certificate", "certification number of the applicator"),
    ] {
        let account = after(&[(place, Value::Null)]);
        assert_eq!(order(&account).record.missing, [missing], "{place}");
    }
    let account = after(&[("/orders/0/from", Value::Null), ("/orders/0/to", Value::Null)]);
    let inoculant = "day beyond which the inoculant is not claimed to be effective";
    assert_eq!(order(&account).record.missing, [inoculant, "day of treating"]);
    assert_eq!(codes(&account), [(Severity::Note, Code::MissingInput, "/orders/0/from")]);
    assert_eq!(order(&after(&[("/orders/0/place", json!(" "))])).record.missing, ["place of treating"]);
}

// A place, what is written there, where the first problem is, and words of its message.
#[test]
fn what_is_wrong_is_told_with_its_place() {
    for (place, value, at, words) in [
        ("/orders/0/order", json!("a"), "/orders/0/order", "known here: A, B"),
        ("/orders/0/tanks/0/tank", json!("T3"), "/orders/0/tanks/0/tank", "unknown tank"),
        ("/orders/0/tanks/1/tank", json!("T1"), "/orders/0/tanks/1/tank", "stands already"),
        ("/orders/0/dry/0/product", json!("Coat"), "/orders/0/dry/0/product", "not applied dry"),
        ("/orders/0/tanks/0/end", json!("60 L"), "/orders/0/tanks/0/end", "list all that was added"),
        ("/orders/0/tanks/0/end", json!("18 kg"), "/orders/0/tanks/0/end", "a volume, as at the start"),
        ("/orders/0/tanks/0/end", json!("-1 L"), "/orders/0/tanks/0/end", "must not be negative"),
        ("/orders/0/tanks/0/end", Value::Null, "/orders/0/tanks/0/end", "missing. Give"),
        ("/orders/0/tanks/0/start", json!("50 lb/gal"), "/orders/0/tanks/0/start", "a volume or a mass"),
        (
            "/orders/0/tanks/0/resolution",
            json!("-1 L"),
            "/orders/0/tanks/0/resolution",
            "must not be negative",
        ),
        ("/orders/0/tanks/0/resolution", json!("1 kg"), "/orders/0/tanks/0/resolution", "volume"),
        ("/orders/0/tanks/0/lost", json!(["1 L", "1 kg"]), "/orders/0/tanks/0/lost/1", "volume"),
        (
            "/orders/0/tanks/0/lost",
            json!({ "reading": "2 kg", "resolution": "1 L" }),
            "/orders/0/tanks/0/lost/reading",
            "volume",
        ),
        (
            "/orders/0/tanks/0/lost",
            json!({ "reading": "2 L" }),
            "/orders/0/tanks/0/lost/resolution",
            "missing. Give",
        ),
        ("/orders/0/tanks/0/density", json!("1.2"), "/orders/0/tanks/0/density", "has no unit"),
        ("/orders/0/seed", json!({}), "/orders/0/seed", "start and end, or mass"),
        ("/orders/0/seed/mass", json!("1 kg"), "/orders/0/seed/mass", "say it one way"),
        ("/orders/0/seed/start", Value::Null, "/orders/0/seed/start", "both start and end"),
        ("/orders/0/seed/end", Value::Null, "/orders/0/seed/end", "both start and end"),
        ("/orders/0/seed/end", json!("0 kg"), "/orders/0/seed/end", "no seed was treated"),
        ("/orders/0/seed/end", json!("10000 L"), "/orders/0/seed/end", "a mass of seed"),
        ("/orders/0/seed/weighed", json!("wet"), "/orders/0/seed/weighed", "before, after"),
        (
            "/orders/0/seed",
            json!({ "mass": "49 kg", "weighed": "after" }),
            "/orders/0/seed/mass",
            "no more than",
        ),
        ("/orders/0/to", json!("2027-04-14T07:59:59+02:00"), "/orders/0/to", "before the order's from"),
        ("/orders/0/from", json!("this morning"), "/orders/0/from", "date, time and offset"),
        ("/orders/0/operater", json!("N."), "/orders/0/operater", "did you mean \"operator\"?"),
        ("/orders", json!([]), "/orders", "at least one"),
        ("/tolerance", json!("120 %"), "/tolerance", "within 0 % and 100 %"),
        ("/format", json!(2), "/format", "write 1"),
        ("/job", Value::Null, "/job", "missing. Give"),
        ("/job/orders/0/size", json!("200 g"), "/job/orders/0/size", "seed size"),
        ("/job/orders/0/lott", json!("x"), "/job/orders/0/lott", "did you mean \"lot\"?"),
        ("/job/treatments/0/rate", json!("2 L"), "/job/treatments/0/rate", "an amount per mass"),
        ("/job/tanks/0/water", json!("2 L"), "/job/tanks/0/water", "a liquid rate"),
    ] {
        let problems = tried(&edited(&[(place, value.clone())])).expect_err(place);
        let first = problems.iter().next().unwrap();
        assert_eq!(first.pointer, at, "{first}");
        assert!(first.message.contains(words), "{first}");
    }
}

#[test]
fn an_order_stands_in_a_run_once_and_draws_from_its_own_tanks() {
    let twice = edited(&[("/orders/-", clean()["orders"][0].clone())]);
    assert_eq!(tried(&twice).unwrap_err().iter().next().unwrap().pointer, "/orders/1/order");
    let tank = |name: &str| json!([{ "tank": name, "start": "20 L", "end": "5 L", "resolution": "0.5 L" }]);
    let b = |tanks: Value| json!({ "order": "B", "seed": { "mass": "5000 kg" }, "tanks": tanks });
    let account = after(&[("/orders/-", b(tank("T1")))]);
    assert_eq!(account.orders.len(), 2);
    let stranger = tried(&edited(&[("/orders/-", b(tank("T2")))])).unwrap_err();
    assert_eq!(stranger.iter().next().unwrap().pointer, "/orders/1/tanks/0/tank");
    let unread = json!({ "order": "B", "seed": { "mass": "5020 kg", "weighed": "after" } });
    let unread = tried(&edited(&[("/orders/-", unread)])).unwrap_err();
    assert_eq!(unread.iter().next().unwrap().pointer, "/orders/1/tanks");
}

#[test]
fn problems_of_job_and_run_are_told_together() {
    let run = edited(&[("/job/orders/0/size", json!("200 g")), ("/orders/0/to", json!("soon"))]);
    let problems = tried(&run).unwrap_err();
    let places: Vec<&str> = problems.iter().map(|problem| problem.pointer.as_str()).collect();
    assert_eq!(places, ["/job/orders/0/size", "/orders/0/to"]);
}

// The largest and the smallest amounts that are read at all: a number that is not finite would be written null.
#[test]
fn extreme_readings_give_finite_numbers() {
    for (seed, tank) in
        [("1e-29 kg", "1e30 L"), ("1e30 kg", "1e-26 L"), ("1e-29 kg", "1e30 kg"), ("1e30 kg", "0 L")]
    {
        let end = if tank.ends_with('g') { "0 kg" } else { "0 L" };
        let reading = json!({ "tank": "T1", "start": tank, "end": end, "resolution": tank });
        let run = edited(&[
            ("/orders/0/seed", json!({ "mass": seed, "resolution": seed })),
            ("/orders/0/tanks/0", reading),
        ]);
        let text = account_json(&run.to_string()).unwrap();
        assert!(!text.contains("null"), "{seed} {tank}: {text}");
    }
}

#[test]
fn what_went_wrong_is_told_of_its_order() {
    for edits in [("/orders/0/tanks/0/end", json!("1 L")), ("/orders/0/tanks/0/end", json!("30 L"))] {
        let account = after(&[edits]);
        let told = account.findings.iter().filter(|finding| finding.message.contains("order \"A\""));
        assert!(told.count() > 0, "{:?}", account.findings);
    }
}

#[test]
fn an_account_is_read_back_as_it_was_written() {
    let text = account_json(&clean().to_string()).unwrap();
    let read: Account = serde_json::from_str(&text).unwrap();
    assert_eq!(read, tried(&clean()).unwrap());
    assert!(!text.contains("null"), "{text}");
    let run = Run::from_json(&clean().to_string()).unwrap();
    assert_eq!(Run::from_json(&serde_json::to_string(&run).unwrap()).unwrap(), run);
}
