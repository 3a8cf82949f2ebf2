//! What findings say in numbers and names, worked out by hand.

use Code::*;
use hilum_job::document::Code;

use super::job::{edited, findings};

/// An edit, the finding that it raises, and what stands in its message.
#[rustfmt::skip]
const CASES: &[(&str, Code, &[&str])] = &[
    // The freezing point on each scale.
    (r#"{"/orders/0/temperature": "-2.5 degC"}"#, FrozenSeed, &["-2.5 °C", "\"N-1\""]),
    (r#"{"/units": "us", "/orders/0/temperature": "-2.5 degC"}"#, FrozenSeed, &["27.5 °F"]),
    // 61 d on a seed that the inoculant lasts 60 d on, or 9 d beside a partner; of two orders the later is told.
    (r#"{"/after/plant_after": "61 d"}"#, OnSeedLifeExceeded, &["planting 61 d after treating", "beyond the 60 d that it lasts on the seed."]),
    (r#"{"/treatments/1/with_living/0/life": "9 d"}"#, OnSeedLifeExceeded, &["10 d after", "the 9 d that it lasts on the seed beside the other products"]),
    (r#"{"/orders/1/after": {"plant_after": "80 d"}, "/after/plant_after": "61 d"}"#, OnSeedLifeExceeded, &["planting 80 d after", "\"N-1\" and \"N-2\""]),
    // 2.56e5 when treated, 1.887e5 after ten days.
    (r#"{"/treatments/0/living/minimum_at_planting": "2e5 CFU/seed"}"#, TooFewCells, &["1.9e5 CFU/seed on planting day", "the 2.0e5 CFU/seed"]),
    (r#"{"/after/plant_after": null, "/treatments/0/living/minimum_at_planting": "3e5 CFU/seed"}"#, TooFewCells, &["2.6e5 CFU/seed when treated"]),
    // Of two orders the one with fewer: 20 d at 8 °C are × 10^−0.26478, 1.391e5.
    (r#"{"/orders/1/after": {"storage": [{"for": "20 d", "at": "8 degC"}], "plant_after": "20 d"}, "/treatments/0/living/minimum_at_planting": "2e5 CFU/seed"}"#,
        TooFewCells, &["1.4e5 CFU/seed on planting day", "\"N-1\" and \"N-2\""]),
    // 9,000 d at 60 °C count 10^2.5 times: 47,434 decimal reductions leave nothing.
    (r#"{"/after": {"storage": [{"for": "9000 d", "at": "60 degC"}], "plant_after": "9000 d"}}"#, TooFewCells, &[": 0 CFU/seed on planting day"]),
    (r#"{"/after/storage/0/at": "22.5 degC"}"#, StorageTooWarm, &["22.5 °C", "20 °C"]),
    (r#"{"/treatments/0/also_stated/0": "60 mL/unit"}"#, StatementsDisagree, &["the label's \"60 mL/unit\" is 25 % above its \"200 mL/100 kg\"", "\"N-1\" and \"N-2\""]),
    (r#"{"/treatments/0/also_stated/0": "46.8 mL/unit"}"#, StatementsDisagree, &["is 2.5 % below its \"200 mL/100 kg\"", "The plan goes by \"200 mL/100 kg\"."]),
    // 24 kg to a unit, 48 mL; 27 kg of the second order's 0.18 g, 54 mL: of 57.6 mL that order is only told in a note.
    (r#"{"/treatments/0/also_stated/0": "57.6 mL/unit", "/orders/1/size": "180 g/1000 seeds"}"#, StatementsDisagree, &["20 % above", "order \"N-1\""]),
    (r#"{"/treatments/0/rate": null, "/treatments/0/cells": "256000 CFU/seed", "/treatments/0/also_stated/0": "60 mL/unit"}"#, StatementsDisagree, &["25 % above its \"256000 CFU/seed\""]),
    (r#"{"/treatments/1/rate": null, "/treatments/1/active_rate": {"active": "demo fungicide", "rate": "40 g/100 kg"}, "/treatments/1/also_stated": ["125 mL/100 kg"]}"#,
        StatementsDisagree, &["25 % above its \"40 g/100 kg\""]),
    (r#"{"/treatments/1/min_rate": "110 mL/100 kg"}"#, BelowMinRate, &["at 100 mL/100 kg on orders \"N-1\" and \"N-2\"", "the least on its label, 110 mL/100 kg"]),
    (r#"{"/treatments/1/max_rate": "90 mL/100 kg"}"#, AboveMaxRate, &["100 mL/100 kg", "90 mL/100 kg"]),
    // 24 mL on a unit of 24 and of 21.6 kg are 100 and 111.11 mL/100 kg: the lesser one is told.
    (r#"{"/treatments/1/rate": "24 mL/unit", "/treatments/1/min_rate": "115 mL/100 kg", "/orders/1/size": "144 g/1000 seeds"}"#,
        BelowMinRate, &["at 100 mL/100 kg on orders \"N-1\" and \"N-2\""]),
    // The last seed is treated on the second day.
    (r#"{"/work/1": {"from": "2027-04-21T08:00:00+02:00", "to": "2027-04-21T12:00:00+02:00"}, "/work/0/to": "2027-04-20T08:40:00+02:00", "/treatments/1/expires": "2027-04-20"}"#,
        ProductExpired, &["expires on 2027-04-20", "still treated with it on 2027-04-21"]),
    // From 07:10 to 08:10 run 60 × 136 kg; 12,840 kg and a change of order take 94.4 and 10 min more.
    (r#"{"/work": [{"from": "2027-04-20T07:00:00+02:00", "to": "2027-04-20T08:10:00+02:00"}]}"#,
        OutOfTime, &["8160 kg of 21000 kg of seed can be treated", "order \"N-1\" is not finished", "more than 1 h 44 min of shift time"]),
    // One can runs out before that; with more of them it is as above.
    (r#"{"/work": [{"from": "2027-04-20T07:00:00+02:00", "to": "2027-04-20T08:10:00+02:00"}], "/treatments/0/packs/0/on_hand": 1}"#,
        OutOfTime, &["8160 kg of 21000 kg of seed can be treated"]),
    (r#"{"/work": [{"from": "2027-04-20T07:00:00+02:00", "to": "2027-04-20T08:10:00+02:00"}], "/treatments/0/packs/0/on_hand": 1}"#,
        ShortOfProduct, &["\"Live culture\" runs short"]),
    (r#"{"/treatments/1/packs/0/on_hand": 2}"#, ShortOfProduct, &["2 of \"jug\" on hand cover 20000 kg of the 21000 kg of seed"]),
    (r#"{"/treatments/1/packs": [{"pack": "a", "parts": [{"part": "jug", "fill": "10 L"}], "on_hand": 1}, {"pack": "b", "parts": [{"part": "jug", "fill": "2 L"}], "on_hand": 3}]}"#,
        ShortOfProduct, &["1 of \"a\" and 3 of \"b\" on hand cover 16000 kg of the 21000 kg of seed"]),
    // 21 L are there for 21 L on seed, and none for the lines.
    (r#"{"/treatments/1/packs": [{"pack": "a", "parts": [{"part": "jug", "fill": "10.5 L"}], "on_hand": 2}]}"#,
        ShortOfProduct, &["fill its lines take more than is on hand"]),
    (r#"{"/tanks/0/capacity": "11.9 L"}"#, TankTooSmall, &["holds 11.9 L, but one whole set of \"Live culture\" makes a mix of 12 L"]),
    (r#"{"/tanks/1/hold_up": "60 L"}"#, TankTooSmall, &["Tank \"Coat\" holds 60 L, no more than stays in its lines (60 L)"]),
    (r#"{"/tanks/0/hold_up": "13 L", "/tanks/0/capacity": "20 L"}"#, TankTooSmall, &["fills the lines of tank \"Living\" (13 L) and fits into it (20 L)"]),
    (r#"{"/tanks/0/capacity": "11.9 L", "/orders/1/treat": ["Root guard", "Blue colourant"]}"#, TankTooSmall, &["one whole set of \"Live culture\" makes a mix of 12 L"]),
    // The smaller of two packs counts: 5 L of product in 7.5 L of mix.
    (r#"{"/tanks/0/capacity": "7 L", "/treatments/0/packs/1": {"pack": "flask", "parts": [{"part": "culture", "fill": "5 L"}]}}"#,
        TankTooSmall, &["holds 7 L, but one whole set of \"Live culture\" makes a mix of 7.5 L"]),
    (r#"{"/tanks/1/pump/max": "479 mL/min"}"#, PumpOutOfRange, &["tank \"Coat\" would have to deliver 480 mL/min for orders \"N-1\" and \"N-2\", more than"]),
    // Half the seed, half the flow: the order with the least is told.
    (r#"{"/tanks/1/pump/min": "481 mL/min", "/orders/1/seed_flow": "80 kg/min"}"#, PumpOutOfRange, &["deliver 240 mL/min for orders \"N-1\" and \"N-2\", less than"]),
    (r#"{"/tanks/1/pump/max": "400 mL/min", "/orders/1/seed_flow": "200 kg/min"}"#, PumpOutOfRange, &["deliver 600 mL/min for orders \"N-1\" and \"N-2\", more than"]),
    // 35.6 and 28 L.
    (r#"{"/tanks/1/min_fill": "30 L"}"#, BelowMinFill, &["Mix 2 of tank \"Coat\" come to 28 L, below the 30 L"]),
    (r#"{"/tanks/1/min_fill": "50 L"}"#, BelowMinFill, &["Mixes 1, 2 of tank \"Coat\" come to 28 L, below the 50 L"]),
    (r#"{"/treatments/0/packs/0/covers": "5000 kg"}"#, CoverageDisagrees, &["stated to cover 5000 kg of seed, 25 % more than the 4000 kg"]),
    (r#"{"/treatments/0/packs/0/covers": "3800 kg"}"#, CoverageDisagrees, &["3800 kg of seed, 5 % less than the 4000 kg"]),
    (r#"{"/treatments/1/packs/0/parts/0/fill": "10.5 L"}"#, AlmostCovered, &["\"Root guard\"", "at most 1 % of the seed"]),
    // Later by 52 d than the 9 d beside a partner, and by 20 d than its own 60 d; then by 11 d and by 20 d.
    (r#"{"/orders/1/after": {"plant_after": "80 d"}, "/after/plant_after": "61 d", "/treatments/1/with_living/0/life": "9 d", "/orders/1/treat": ["Live culture", "Blue colourant"]}"#,
        OnSeedLifeExceeded, &["planting 61 d after", "the 9 d"]),
    (r#"{"/orders/1/after": {"plant_after": "80 d"}, "/after/plant_after": "20 d", "/treatments/1/with_living/0/life": "9 d", "/orders/1/treat": ["Live culture", "Blue colourant"]}"#,
        OnSeedLifeExceeded, &["planting 80 d after", "the 60 d"]),
    (r#"{"/actives/0/season_used": "80 g/ha"}"#, SeasonLimit, &["106 g/ha", "80 g/ha", "Nothing of the limit is left: leave it off this seed"]),
    (r#"{"/actives/0/season_used": "60 g/ha"}"#, SeasonLimit, &["85.6 g/ha", "80 g/ha", "Sow at most 312500 seeds/ha"]),
    (r#"{"/treatments/1/with_living/0/same_seed": false}"#, UnsafeWithLiving, &["\"N-1\""]),
    (r#"{"/treatments/1/with_living/0/same_seed": false, "/orders/0/treat": ["Live culture", "Blue colourant"]}"#, UnsafeWithLiving, &["\"N-2\""]),
    (r#"{"/orders/1/sowing": null}"#, MissingInput, &["doses per area, and checks the season's limits."]),
    (r#"{"/orders/1/sowing": null, "/actives/0/season_limit": null}"#, MissingInput, &["the sowing of order \"N-2\"", "doses per area."]),
    (r#"{"/work": null}"#, MissingInput, &["when to mix, whether the time is enough, until when each mix is good and the last day to plant."]),
    (r#"{"/work": null, "/orders/0/treat": ["Root guard", "Blue colourant"], "/orders/1/treat": ["Root guard", "Blue colourant"]}"#,
        MissingInput, &["when to mix, whether the time is enough."]),
    (r#"{"/treatments/0/living/on_seed_life": null}"#, MissingInput, &["Give on_seed_life of the living product \"Live culture\""]),
    // The first order is done at 08:48:15, the second begins ten minutes later; 4,682 kg are left at 09:30.
    (r#"{"/work": [{"from": "2027-04-20T07:00:00+02:00", "to": "2027-04-20T09:30:00+02:00"}]}"#, OutOfTime, &["order \"N-2\" is not finished", "more than 34 min 25 s"]),
    // 63.6 L in three mixes alike of at most 22 L, 21.2 L, and in tanks of 10 L.
    (r#"{"/tanks/1/capacity": "22 L", "/tanks/1/min_fill": "22 L"}"#, BelowMinFill, &["Mixes 1, 2, 3 of tank \"Coat\" come to 21.2 L"]),
    (r#"{"/tanks/1/capacity": "10 L", "/tanks/1/min_fill": "20 L"}"#, BelowMinFill, &["Mixes 1, 2, 3 and 4 more of tank \"Coat\""]),
    // 160 units of 24 and 27 kg are 3,840 and 4,320 kg; 140 are 3,360 and 3,780 kg; 8 L cover 4,000 kg.
    (r#"{"/treatments/0/packs/0/covers": "160 units", "/orders/1/size": "180 g/1000 seeds"}"#, CoverageDisagrees, &["cover 4320 kg of seed, 8 % more than the 4000 kg"]),
    (r#"{"/treatments/0/packs/0/covers": "140 units", "/orders/1/size": "180 g/1000 seeds"}"#, CoverageDisagrees, &["cover 3360 kg of seed, 16 % less than the 4000 kg"]),
    (r#"{"/treatments/3": {"product": "Talc", "rate": "50 g/100 kg", "max_rate": "45 g/100 kg"}}"#, AboveMaxRate, &["\"Talc\" at 50 g/100 kg", "45 g/100 kg"]),
    (r#"{"/treatments/3": {"product": "Talc", "rate": "50 g/100 kg", "min_rate": "55 g/100 kg"}}"#, BelowMinRate, &["\"Talc\" at 50 g/100 kg", "55 g/100 kg"]),
    (r#"{"/treatments/3": {"product": "Talc", "rate": "50 g/100 kg", "also_stated": ["60 g/100 kg"]}}"#, StatementsDisagree, &["20 % above its \"50 g/100 kg\""]),
];

#[test]
fn each_tells_the_figures_of_the_job() {
    let mut wrong: Vec<String> = Vec::new();
    for (edit, code, told) in CASES {
        let raised = findings(&edited(edit));
        let messages =
            raised.iter().filter(|finding| finding.code == *code).map(|finding| finding.message.as_str());
        let messages: Vec<&str> = messages.collect();
        if !messages.iter().any(|message| told.iter().all(|words| message.contains(words))) {
            wrong.push(format!("{edit}\n  {code:?} does not say {told:?}: {messages:#?}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
