//! A sound document with places changed: nearer to what people send than a random text, and further in.

use arbitrary::{Result, Unstructured};
use serde_json::{Map, Value, json};

use crate::numbers;

/// Places that one attack changes at most.
const MOST: u8 = 12;

const UNITS: &[&str] = &[
    "kg",
    "lb",
    "g",
    "mg",
    "oz av",
    "cwt",
    "t",
    "L",
    "mL",
    "µL",
    "fl oz",
    "gal",
    "imp gal",
    "seeds",
    "units",
    "bu",
    "ac",
    "ha",
    "m2",
    "s",
    "min",
    "h",
    "d",
    "degF",
    "°C",
    "K",
    "delta_degF",
    "CFU",
    "%",
    "fl oz/cwt",
    "mL/100 kg",
    "oz av/cwt",
    "mg/kg",
    "fl oz/unit",
    "mL/unit",
    "fl oz/bu",
    "mL/ha",
    "fl oz/ac",
    "g/ha",
    "µL/seed",
    "mg/seed",
    "CFU/seed",
    "CFU/mL",
    "CFU/g",
    "seeds/lb",
    "seeds/kg",
    "g/1000 seeds",
    "fl oz/140000 seeds",
    "seeds/ac",
    "lb/ac",
    "plants/ac",
    "lb/min",
    "kg/h",
    "mL/min",
    "fl oz/min",
    "kg/L",
    "lb/gal",
    "g/L",
    "oz",
    "ton",
    "unit",
    "[foz_us]/[scwt_av]",
    "mL/(100.kg)",
    "",
];

const WORDS: &[&str] = &[
    "",
    "metric",
    "us",
    "soybean",
    "mix",
    "log_linear",
    "weibull",
    "two_phase",
    "least_leftover",
    "least_cost",
    "fewest_sets",
    "when_empty",
    "top_up",
    "zinc",
    "before",
    "after",
    "2026-05-04",
    "2026-05-04T07:00:00-05:00",
    "2026-05-04T17:00:00-05:00",
    "2027-09-30T00:00:00Z",
    "0001-01-01T00:00:00Z",
    "9999-12-31T23:59:59+23:59",
    "1\u{0}",
    "/~0~1",
    "\u{202e}x",
    "ｍＬ",
];

/// The text that the bytes stand for: themselves when they look like JSON, else a sound document, changed.
pub(crate) fn text(bytes: &[u8], sound: &[&str]) -> Option<String> {
    if bytes.first().is_none_or(|first| *first == b'{' || *first == b'[' || first.is_ascii_whitespace()) {
        return core::str::from_utf8(bytes).ok().map(str::to_owned);
    }
    changed(&mut Unstructured::new(bytes), sound).ok()
}

fn changed(from: &mut Unstructured<'_>, sound: &[&str]) -> Result<String> {
    let mut document =
        serde_json::from_str(sound[from.choose_index(sound.len())?]).expect("a sound document");
    for _ in 0..from.int_in_range(1..=MOST)? {
        if from.is_empty() {
            break;
        }
        change(&mut document, from)?;
    }
    Ok(document.to_string())
}

/// Every place in a document.
fn places(value: &Value, here: &mut String, all: &mut Vec<String>) {
    all.push(here.clone());
    let length = here.len();
    let mut inside = |name: &str, value: &Value| {
        here.push('/');
        here.push_str(&name.replace('~', "~0").replace('/', "~1"));
        places(value, here, all);
        here.truncate(length);
    };
    match value {
        Value::Object(fields) => fields.iter().for_each(|(name, value)| inside(name, value)),
        Value::Array(items) => items.iter().enumerate().for_each(|(i, value)| inside(&i.to_string(), value)),
        _ => {}
    }
}

fn change(document: &mut Value, from: &mut Unstructured<'_>) -> Result<()> {
    let mut all = Vec::new();
    places(document, &mut String::new(), &mut all);
    let place = all[from.choose_index(all.len())?].clone();
    let other = document.pointer(&all[from.choose_index(all.len())?]).cloned().unwrap_or_default();
    let way = from.int_in_range(0..=9_u8)?;
    let Some(here) = document.pointer_mut(&place) else { return Ok(()) };
    match (way, here) {
        (0, here) => *here = other,
        (1, Value::Array(items)) if !items.is_empty() => {
            let item = items[from.choose_index(items.len())?].clone();
            let times = from.int_in_range(1..=6)?;
            items.extend(core::iter::repeat_n(item, times));
        }
        (1 | 2, Value::Array(items)) => drop(items.pop()),
        (2, Value::Object(fields)) => take(fields, from)?,
        (3, Value::Object(fields)) => drop(fields.insert("hold_up".into(), value(from)?)),
        (4, Value::Array(items)) => items.reverse(),
        (_, here) => *here = value(from)?,
    }
    Ok(())
}

fn take(fields: &mut Map<String, Value>, from: &mut Unstructured<'_>) -> Result<()> {
    if let Some(name) = fields.keys().nth(from.choose_index(fields.len().max(1))?).cloned() {
        fields.remove(&name);
    }
    Ok(())
}

fn value(from: &mut Unstructured<'_>) -> Result<Value> {
    Ok(match from.int_in_range(0..=11_u8)? {
        0 => Value::Null,
        1 => json!(from.arbitrary::<bool>()?),
        2 => json!(numbers::any(from)?),
        3 => json!([]),
        4 => json!({}),
        5 => json!(WORDS[from.choose_index(WORDS.len())?]),
        6 => json!({ "value": numbers::any(from)?, "unit": UNITS[from.choose_index(UNITS.len())?] }),
        7 => json!(format!("{:?} {}", numbers::any(from)?, UNITS[from.choose_index(UNITS.len())?])),
        _ => json!(format!("{} {}", numbers::plain(from)?, UNITS[from.choose_index(UNITS.len())?])),
    })
}
