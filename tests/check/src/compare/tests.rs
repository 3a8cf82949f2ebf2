use super::*;

/// A good case; the tests spoil it by replacing a piece of its text.
const GOOD: &str = r#"{"id": "sown", "function": "sowing.mass_per_area",
    "inputs": {"sown": "150000 seeds/ac", "size": "2750 seeds/lb"},
    "expect": {"rate": "54.5 lb/ac"}, "tolerance": {"abs": "0.05 lb/ac"},
    "source": "ia-agron212", "locator": "problem 1", "kind": "published"}"#;

fn spoilt(piece: &str, by: &str) -> Result<Verdict, String> {
    assert!(GOOD.contains(piece), "{piece}");
    let case: Case = serde_json::from_str(&GOOD.replace(piece, by)).map_err(|why| why.to_string())?;
    run(case).map(|outcome| outcome.verdict).map_err(|why| why.to_string())
}

// 150,000 / 2750 = 54.5454… lb/ac is 0.0454… from what is printed, 0.909… of the tolerance.
#[test]
fn a_deviation_is_a_fraction_of_the_tolerance() {
    let Ok(Verdict::Within(deviation)) = spoilt("published", "published") else { panic!() };
    assert!((deviation - 1.0 / 1.1).abs() < 1e-9, "{deviation}");
}

#[test]
fn a_result_outside_the_tolerance_is_wrong() {
    for (piece, by) in [
        ("0.05 lb/ac", "0.045 lb/ac"),
        ("54.5 lb/ac", "54.6 lb/ac"),
        ("2750", "0"),
        (
            r#""expect": {"rate": "54.5 lb/ac"}, "tolerance": {"abs": "0.05 lb/ac"}"#,
            r#""error": "not_positive""#,
        ),
    ] {
        assert!(matches!(spoilt(piece, by), Ok(Verdict::Wrong(_))), "{by}");
    }
}

#[test]
fn a_case_that_is_not_what_the_readme_says_is_refused() {
    for (piece, by) in [
        (r#""kind""#, r#""note": "", "kind""#),
        ("published", "regression"),
        ("sowing.mass_per_area", "sowing.mass"),
        (r#""size": "#, r#""length": "#),
        (r#""sown": "150000 seeds/ac", "#, ""),
        (r#""sown": "150000 seeds/ac", "#, r#""sown": "150000 seeds/ac", "sown": "150000 seeds/ac", "#),
        (r#""sown": "150000 seeds/ac""#, r#""sown": 150000"#),
        (r#"{"rate": "54.5 lb/ac"}"#, r#"{"mass": "54.5 lb/ac"}"#),
        ("54.5 lb/ac", "54.5 lb"),
        ("54.5 lb/ac", "54.5 lb/acre"),
        (r#"{"rate": "54.5 lb/ac"}"#, r#"{"rate": 54.5}"#),
        ("0.05 lb/ac", "0.05 lb"),
        ("0.05 lb/ac", "-0.05 lb/ac"),
        (r#"{"abs": "0.05 lb/ac"}"#, r#"{"most": "0.05 lb/ac"}"#),
        (r#", "tolerance": {"abs": "0.05 lb/ac"}"#, ""),
        (r#""kind": "published""#, r#""kind": "published", "error": "not_positive""#),
        (r#""kind": "published""#, r#""kind": "published", "disagrees": "because""#),
        (r#""kind": "published""#, r#""kind": "published", "printed": {"rate": "56 lb/ac"}"#),
    ] {
        assert!(spoilt(piece, by).is_err(), "{by}");
    }
}

#[test]
fn a_disagreement_must_be_one() {
    let printed = |rate: &str| {
        let by = format!(r#""kind": "published", "disagrees": "because", "printed": {{"rate": "{rate}"}}"#);
        spoilt(r#""kind": "published""#, &by)
    };
    assert!(matches!(printed("54.4 lb/ac"), Ok(Verdict::Within(_))));
    assert!(printed("54.51 lb/ac").is_err());
}

#[test]
fn a_refusal_for_another_reason_is_wrong() {
    let error = |code: &str| {
        let good = r#""expect": {"rate": "54.5 lb/ac"}, "tolerance": {"abs": "0.05 lb/ac"}"#;
        let by = GOOD.replace(good, &format!(r#""error": "{code}""#)).replace("2750", "0");
        run(serde_json::from_str(&by).unwrap()).unwrap().verdict
    };
    assert_eq!(error("not_positive"), Verdict::Refused(Code::NotPositive));
    assert!(matches!(error("negative"), Verdict::Wrong(_)));
}
