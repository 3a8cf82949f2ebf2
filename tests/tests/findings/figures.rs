//! Every figure of the clean job's plan, worked out by hand.

use serde_json::{Value, json};

use super::job::{edited, planned};

fn plan(edits: &str) -> Value {
    serde_json::to_value(planned(&edited(edits))).unwrap()
}

/// Places, numbers and units.
#[track_caller]
fn are(plan: &Value, place: &str, figures: &[(&str, f64, &str)]) {
    for (at, value, unit) in figures {
        let at = format!("{place}{at}");
        let got = plan.pointer(&at).unwrap_or_else(|| panic!("{at} is missing"));
        let (number, own) = if got.is_object() {
            (got["value"].as_f64().unwrap(), got["unit"].as_str().unwrap())
        } else {
            (got.as_f64().unwrap_or_else(|| panic!("{at}: {got}")), "")
        };
        assert!((number - value).abs() <= value.abs() * 1e-6, "{at}: {number} is not {value}");
        assert_eq!(own, *unit, "{at}");
    }
}

#[track_caller]
fn say(plan: &Value, texts: &[(&str, &str)]) {
    for (at, text) in texts {
        assert_eq!(plan.pointer(at), Some(&json!(text)), "{at}");
    }
}

// 12 t of 0.16 g are 75 million seeds, 500 units of 150,000, 187.5 ha of 400,000 seeds; 9 t are three quarters of it.
#[test]
fn seed() {
    let plan = plan("{}");
    are(
        &plan,
        "/orders/0",
        &[
            ("/mass", 12_000.0, "kg"),
            ("/seeds", 75e6, "seeds"),
            ("/units", 500.0, "units"),
            ("/area", 187.5, "ha"),
            ("/liquid/per_mass", 600.0, "mL/100 kg"),
            ("/liquid/limit", 800.0, "mL/100 kg"),
        ],
    );
    are(
        &plan,
        "/orders/1",
        &[
            ("/mass", 9_000.0, "kg"),
            ("/seeds", 56.25e6, "seeds"),
            ("/units", 375.0, "units"),
            ("/area", 140.625, "ha"),
        ],
    );
}

// 2 mL/kg on 0.16 g is 0.32 µL a seed, 48 mL a unit of 24 kg, 128 mL on 400,000 seeds. 48.2 mL a unit are right for units
// of 24.1 kg, 6,224.0664 seeds/kg, and 0.2 of 48 more. 0.32 µL × 1e6 CFU/µL × 80 % = 256,000; ten days at 8 °C are
// 10 × 10^−0.1 of 60 d at 10 °C: × 10^−0.1323880 = 0.7372452.
#[test]
fn doses() {
    let plan = plan("{}");
    are(
        &plan,
        "/treatments/0/orders/0",
        &[
            ("/per_mass", 200.0, "mL/100 kg"),
            ("/per_seed", 0.32, "µL/seed"),
            ("/per_unit", 48.0, "mL/unit"),
            ("/per_area", 128.0, "mL/ha"),
            ("/statements/0/implied_size", 6_224.066_4, "seeds/kg"),
            ("/statements/0/difference", 0.2 / 48.0, ""),
            ("/living/at_treating", 256_000.0, "CFU/seed"),
            ("/living/at_planting", 188_734.774, "CFU/seed"),
            ("/living/minimum", 1e5, "CFU/seed"),
        ],
    );
    say(
        &plan,
        &[
            ("/treatments/0/orders/0/statements/0/stated", "48.2 mL/unit"),
            ("/treatments/0/orders/0/living/because", "minimum"),
        ],
    );
    // 1 mL/kg of 400 g/L; 10 g/ha are used of 80, 70 are left: 1,093,750 seeds.
    are(
        &plan,
        "/treatments/1/orders/1/actives/0",
        &[("/per_mass", 400.0, "mg/kg"), ("/per_seed", 0.064, "mg/seed"), ("/per_area", 25.6, "g/ha")],
    );
    are(
        &plan,
        "/actives/1",
        &[
            ("/per_mass", 400.0, "mg/kg"),
            ("/per_seed", 0.064, "mg/seed"),
            ("/per_area", 25.6, "g/ha"),
            ("/share_of_season_limit", 0.445, ""),
            ("/max_sowing", 1_093_750.0, "seeds/ha"),
        ],
    );
    say(&plan, &[("/actives/1/active", "demo fungicide"), ("/actives/1/order", "N-2")]);
}

// 21 t take 42, 21 and 6.3 L; of the lines' 1 L two thirds and of 0.6 L a third and a tenth are product: 42.67, 21.2 and
// 6.36 L out of six cans of 8 L, three jugs of 10 L and four of 2 L.
#[test]
fn packs_and_what_is_left_of_them() {
    let plan = plan("{}");
    let packs =
        [(42.0, 6, 24_000.0, 5.333_333_333), (21.0, 3, 30_000.0, 8.8), (6.3, 4, 26_666.666_667, 1.64)];
    for (t, (needed, sets, covers, left)) in packs.into_iter().enumerate() {
        let at = format!("/treatments/{t}");
        are(
            &plan,
            &at,
            &[
                ("/needed", needed, "L"),
                ("/packs/0/sets", f64::from(sets), ""),
                ("/packs/0/covers", covers, "kg"),
                ("/leftover", left, "L"),
            ],
        );
    }
    // Good for half an hour, ten minutes of which are mixing: a can lasts 20 min of the 88.2 and 66.2 min of running, and no less than
    // ten if the change of orders comes between. So five and four cans.
    let soon = self::plan(r#"{"/treatments/0/living/pot_life": "30 min"}"#);
    are(&soon, "/treatments/0", &[("/needed", 42.0, "L"), ("/packs/0/sets", 9.0, "")]);
    let short = self::plan(r#"{"/treatments/1/packs/0/on_hand": 2}"#);
    assert_eq!(short.pointer("/treatments/1/leftover"), None, "of what runs short nothing is left");
    // Seed that is 5 % larger or smaller changes the number of seeds and what goes by it: 48 mL on 875 units are 42 L.
    let by_seed = self::plan(
        r#"{"/treatments/0/rate": "48 mL/unit", "/orders/0/size_tolerance": "5 %", "/orders/1/size_tolerance": "5 %"}"#,
    );
    are(
        &by_seed,
        "/treatments/0",
        &[("/needed", 42.0, "L"), ("/needed_low", 39.9, "L"), ("/needed_high", 44.1, "L")],
    );
}

// Six cans at 180 are 1,080, and 42 of their 48 L go on seed: 945; three jugs at 320 are 960, 21 of 30 L: 672. The
// colourant has no price. 1,617 on 875 units and on 328.125 ha.
#[test]
fn cost() {
    let plan = plan("{}");
    are(&plan, "/treatments/0", &[("/cost_opened", 1_080.0, ""), ("/cost_applied", 945.0, "")]);
    are(&plan, "/treatments/1", &[("/cost_opened", 960.0, ""), ("/cost_applied", 672.0, "")]);
    assert_eq!(plan.pointer("/treatments/2/cost_opened"), None);
    are(
        &plan,
        "/cost",
        &[
            ("/opened", 2_040.0, ""),
            ("/applied", 1_617.0, ""),
            ("/per_unit", 1.848, ""),
            ("/per_area", 4.928, ""),
        ],
    );
    // Two packs of one product: 10 L at 320 and 4 L at 150 for 21.2 L are one and three, 22 L at 770, of which 21 go on.
    let two = self::plan(
        r#"{"/treatments/1/packs/1": {"pack": "flask", "parts": [{"part": "flask", "fill": "4 L"}], "price": 150}, "/orders/1/unit": "80000 seeds", "/orders/1/sowing": null}"#,
    );
    are(
        &two,
        "/treatments/1",
        &[
            ("/packs/0/sets", 1.0, ""),
            ("/packs/1/sets", 3.0, ""),
            ("/cost_opened", 770.0, ""),
            ("/cost_applied", 735.0, ""),
        ],
    );
    // Units of two kinds, and land of one order only, are not added up.
    assert_eq!((two.pointer("/cost/per_unit"), two.pointer("/cost/per_area")), (None, None));
    let none = self::plan(r#"{"/treatments/0/packs/0/price": null, "/treatments/1/packs/0/price": null}"#);
    assert_eq!(none.get("cost"), None);
}

// 300 mL/100 kg at 160 kg/min are 480 mL/min; 16 mL/min a step of the setting. A charge of 80 kg takes 240 mL.
#[test]
fn pumps() {
    let plan = plan("{}");
    for tank in 0..2 {
        let at = format!("/tanks/{tank}/orders/1");
        are(
            &plan,
            &at,
            &[("/slurry", 300.0, "mL/100 kg"), ("/flow", 480.0, "mL/min"), ("/setting", 30.0, "")],
        );
    }
    let charges =
        self::plan(r#"{"/treater/seed_flow": null, "/treater/charge": "80 kg", "/treater/cycle": "30 s"}"#);
    are(&charges, "/tanks/0/orders/0", &[("/per_charge", 0.24, "L")]);
    // 80 kg in 30 s are 160 kg/min: the clock is the same.
    assert_eq!(charges.pointer("/tanks/0/batches"), plan.pointer("/tanks/0/batches"));
}

// Three cans fill 36 L of 40: 1 L for the lines, 35 L on 11,666.67 kg at 136 kg/min, 5,147.06 s from 07:10 on. The coat
// that goes with it is 35.6 L. The second mixes begin on the next whole second, 08:35:48, and 9,333.33 kg run 4,117.65 s
// from 08:45:48 on, with 10 min from order to order; 28 of 36 L are used.
#[test]
fn mixes() {
    let plan = plan("{}");
    let living = |number: usize| format!("/tanks/0/batches/{number}");
    are(
        &plan,
        &living(0),
        &[
            ("/pour/0/volume", 24.0, "L"),
            ("/pour/0/mass", 24.24, "kg"),
            ("/pour/1/volume", 12.0, "L"),
            ("/mixed", 36.0, "L"),
            ("/sets/0/sets", 3.0, ""),
            ("/orders/0/mass", 11_666.666_667, "kg"),
            ("/applied", 35.0, "L"),
            ("/hold_up", 1.0, "L"),
            ("/discarded", 0.0, "L"),
        ],
    );
    are(
        &plan,
        &living(1),
        &[
            ("/mixed", 36.0, "L"),
            ("/orders/0/mass", 333.333_333, "kg"),
            ("/orders/1/mass", 9_000.0, "kg"),
            ("/applied", 28.0, "L"),
            ("/hold_up", 0.0, "L"),
            ("/discarded", 8.0, "L"),
        ],
    );
    are(
        &plan,
        "/tanks/1/batches/0",
        &[("/mixed", 35.6, "L"), ("/applied", 35.0, "L"), ("/hold_up", 0.6, "L")],
    );
    are(
        &plan,
        "/tanks/1/batches/1",
        &[("/mixed", 28.0, "L"), ("/applied", 28.0, "L"), ("/discarded", 0.0, "L")],
    );
    say(
        &plan,
        &[
            ("/tanks/0/batches/0/mix_at", "2027-04-20T07:00:00+02:00"),
            ("/tanks/0/batches/0/ready_at", "2027-04-20T07:10:00+02:00"),
            ("/tanks/0/batches/0/done_at", "2027-04-20T08:35:48+02:00"),
            ("/tanks/0/batches/0/use_by", "2027-04-20T13:00:00+02:00"),
            ("/tanks/0/batches/1/mix_at", "2027-04-20T08:35:48+02:00"),
            ("/tanks/0/batches/1/done_at", "2027-04-20T10:04:26+02:00"),
            ("/tanks/0/batches/1/use_by", "2027-04-20T14:35:48+02:00"),
            ("/tanks/1/batches/1/ready_at", "2027-04-20T08:45:48+02:00"),
        ],
    );
    are(
        &plan,
        "/tanks/1/recipes/0/parts",
        &[("/0/share", 1.0 / 3.0, ""), ("/1/share", 0.1, ""), ("/2/share", 17.0 / 30.0, "")],
    );
    assert_eq!(plan.pointer("/tanks/1/recipes/0/orders"), Some(&json!(["N-1", "N-2"])));
}

// 50 g/100 kg on 12 and 9 t.
#[test]
fn what_is_applied_dry() {
    assert_eq!(plan("{}").get("dry"), None);
    let plan = plan(r#"{"/treatments/3": {"product": "Talc", "rate": "50 g/100 kg"}}"#);
    are(&plan, "/dry/0/orders", &[("/0/mass", 6.0, "kg"), ("/1/mass", 4.5, "kg")]);
    are(
        &plan,
        "/treatments/3/orders/0",
        &[
            ("/per_mass", 50.0, "g/100 kg"),
            ("/per_seed", 0.08, "mg/seed"),
            ("/per_unit", 12.0, "g/unit"),
            ("/per_area", 32.0, "g/ha"),
        ],
    );
    say(&plan, &[("/dry/0/product", "Talc"), ("/dry/0/orders/1/order", "N-2")]);
    assert_eq!(plan.pointer("/dry/1"), None);
    let unused = self::plan(
        r#"{"/treatments/3": {"product": "Talc", "rate": "50 g/100 kg"}, "/orders/0/treat": ["Live culture"], "/orders/1/treat": ["Live culture"]}"#,
    );
    assert_eq!(unused.get("dry"), None);
}

// 12,000 kg in packages of 40 and of 50 units, a hair below too; 2 mL/kg on a bushel of 27 kg.
#[test]
fn packages_and_bushels() {
    for (holds, packages) in
        [("40 units", 13.0), ("50 units", 10.0), ("49.9999999999 units", 10.0), ("1000 kg", 12.0)]
    {
        let plan =
            plan(&format!(r#"{{"/orders/0/package": {{"holds": "{holds}"}}, "/orders/0/bushel": "27 kg"}}"#));
        are(&plan, "/orders/0", &[("/packages", packages, ""), ("/bushels", 12_000.0 / 27.0, "bu")]);
        are(&plan, "/treatments/0/orders/0", &[("/per_bushel", 54.0, "mL/bu")]);
    }
}

// 128 mL/ha on 64 kg/ha are 2 mL/kg, so that a statement per unit implies a size; 12 g a unit of 24 kg is 50 g/100 kg, and
// 55 g/100 kg say the same of seed of 0.08 mg / 550 mg/kg.
#[test]
fn statements_in_every_basis() {
    let by_area = plan(r#"{"/treatments/0/rate": "128 mL/ha", "/orders/0/sowing": {"rate": "64 kg/ha"}}"#);
    are(
        &by_area,
        "/treatments/0/orders/0",
        &[("/per_mass", 200.0, "mL/100 kg"), ("/statements/0/implied_size", 6_224.066_4, "seeds/kg")],
    );
    let dry = plan(
        r#"{"/treatments/3": {"product": "Talc", "rate": "12 g/unit", "also_stated": ["55 g/100 kg", {"value": 50, "unit": "g/100 kg"}]}}"#,
    );
    are(
        &dry,
        "/treatments/3/orders/0",
        &[
            ("/per_mass", 50.0, "g/100 kg"),
            ("/statements/0/implied_size", 6_875.0, "seeds/kg"),
            ("/statements/0/difference", 0.1, ""),
            ("/statements/1/implied_size", 6_250.0, "seeds/kg"),
        ],
    );
    say(&dry, &[("/treatments/3/orders/0/statements/1/stated", "50 g/100 kg")]);
}

// 21.2 L out of jugs of 10 L and flasks of 4 L: 22 L by leftover, 24 L in the fewest sets, six flasks where they are cheap.
#[test]
fn each_objective_opens_its_own() {
    let opened = |choose: &str, price: f64| {
        let plan = plan(&format!(
            r#"{{"/treatments/1/packs/1": {{"pack": "flask", "parts": [{{"part": "flask", "fill": "4 L"}}], "price": {price}, "per_case": 4}}, "/treatments/1/choose": "{choose}"}}"#
        ));
        plan["treatments"][1]["packs"].clone()
    };
    assert_eq!(opened("least_leftover", 90.0)[0]["sets"], 1);
    assert_eq!(opened("fewest_sets", 90.0)[0]["sets"], 2);
    let cheap = opened("least_cost", 90.0);
    assert_eq!(
        (&cheap[0]["pack"], &cheap[0]["sets"], &cheap[0]["cases"]),
        (&json!("flask"), &json!(6), &json!(2))
    );
    assert_eq!(cheap.as_array().map(Vec::len), Some(1));
    // What is not opened needs no price.
    let drum =
        plan(r#"{"/treatments/1/packs/1": {"pack": "drum", "parts": [{"part": "drum", "fill": "500 L"}]}}"#);
    are(&drum, "/treatments/1", &[("/packs/0/sets", 3.0, ""), ("/cost_opened", 960.0, "")]);
}

// A third of 6 L stays in the lines: 23 L take a third jug of 11 L. Without parts 1,000 kg of seed stand for 0.3 L: 21.2 of
// them, 22, and 0.24 L are left.
#[test]
fn what_stays_in_the_lines_is_opened_too() {
    let plan_of = plan;
    let plan = plan_of(r#"{"/tanks/1/hold_up": "6 L", "/treatments/1/packs/0/parts/0/fill": "11 L"}"#);
    are(&plan, "/treatments/1", &[("/packs/0/sets", 3.0, ""), ("/leftover", 10.0, "L")]);
    let plan = plan_of(r#"{"/treatments/2/packs": [{"pack": "a", "covers": "1000 kg"}]}"#);
    are(&plan, "/treatments/2", &[("/packs/0/sets", 22.0, ""), ("/leftover", 0.24, "L")]);
}

// A part of half, of three quarters of a set: the lower one is promised, 1e9 × ½ × 0.32e-3 × 80 %.
#[test]
fn the_titre_of_a_part_is_that_of_the_weakest_pack() {
    let half =
        r#"{"pack": "half", "parts": [{"part": "culture", "fill": "4 U"}, {"part": "feed", "fill": "4 U"}]}"#;
    let more =
        r#"{"pack": "more", "parts": [{"part": "culture", "fill": "6 U"}, {"part": "feed", "fill": "2 U"}]}"#;
    for packs in [format!("[{half}, {more}]"), format!("[{more}, {half}]")] {
        let wet = plan(&format!(
            r#"{{"/treatments/0/living/titre_of": "culture", "/treatments/0/packs": {}}}"#,
            packs.replace('U', "L")
        ));
        are(&wet, "/treatments/0/orders/0/living", &[("/at_treating", 128_000.0, "CFU/seed")]);
        let dry = plan(&format!(
            r#"{{"/treatments/0/living/titre_of": "culture", "/treatments/0/living/titre": "1e9 CFU/g", "/treatments/0/tank": null,
                "/treatments/0/rate": "200 g/100 kg", "/treatments/0/also_stated": null, "/treatments/0/packs": {}}}"#,
            packs.replace('U', "kg")
        ));
        are(&dry, "/treatments/0/orders/0/living", &[("/at_treating", 128_000.0, "CFU/seed")]);
    }
}

// The first seed runs at 07:10; 30.836620 d later 1e5 are left: 03:14:43 on 21 May.
#[test]
fn the_last_moment_to_plant() {
    say(&plan("{}"), &[("/treatments/0/orders/0/living/plant_by", "2027-05-21T03:14:43+02:00")]);
}

#[test]
fn a_tank_without_water_pours_none() {
    let plan = plan(r#"{"/tanks/0/water": null}"#);
    assert_eq!(plan["tanks"][0]["recipes"][0]["parts"].as_array().map(Vec::len), Some(1));
    assert_eq!(plan["tanks"][0]["batches"][0]["pour"].as_array().map(Vec::len), Some(1));
}

// A charge of 80 kg takes 240 mL, known without a cycle; an order with a flow of its own gets no charges.
#[test]
fn charges_are_for_orders_without_a_flow_of_their_own() {
    let plan = plan(
        r#"{"/treater/seed_flow": null, "/treater/charge": "80 kg", "/orders/1/seed_flow": "100 kg/min"}"#,
    );
    are(&plan, "/tanks/0/orders", &[("/0/per_charge", 0.24, "L"), ("/1/flow", 300.0, "mL/min")]);
    assert_eq!(
        (plan.pointer("/tanks/0/orders/0/flow"), plan.pointer("/tanks/0/orders/1/per_charge")),
        (None, None)
    );
}

#[test]
fn which_tank_comes_first_changes_nothing() {
    let mut job = edited(r#"{"/treatments/0/packs/0/on_hand": 5}"#);
    let one = serde_json::to_value(planned(&job)).unwrap();
    job["tanks"].as_array_mut().unwrap().reverse();
    let other = serde_json::to_value(planned(&job)).unwrap();
    assert_eq!(one["treatments"], other["treatments"]);
    assert_eq!(one["findings"], other["findings"]);
    assert_eq!(one["tanks"][0], other["tanks"][1]);
}
