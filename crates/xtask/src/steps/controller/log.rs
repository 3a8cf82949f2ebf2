//! What the log of the firmware must say. The times of the mishaps are those of examples/controller/main.c.

use crate::step::Session;

/// When the pump loses 15 % of its flow, and when it is well again.
const FAULT: u32 = 600;
const REPAIR: u32 = 1000;
const REFILL: u32 = 1500;
/// When the pot life ends.
const TOO_OLD: u32 = 2400;
const WATCH: u32 = 5;
/// The window of 64 readings.
const WINDOW: u32 = 64 * WATCH;

/// Holds the log to what happened.
pub(super) fn check(session: &mut Session, processor: &str, log: &str) {
    for (what, outcome) in judged(log) {
        let outcome = outcome.map_err(|why| format!("{why}\n{log}"));
        session.check(format_args!("{processor}: {what}"), outcome);
    }
}

/// The seconds at which a line begins with these words.
fn times(log: &str, words: &str) -> Vec<u32> {
    let lines = log.lines().filter_map(|line| line.split_once(' '));
    lines.filter(|(_, text)| text.starts_with(words)).filter_map(|(at, _)| at.parse().ok()).collect()
}

fn within(what: &str, times: &[u32], from: u32, to: u32) -> Result<(), String> {
    match times {
        [at] if (from..=to).contains(at) => Ok(()),
        _ => Err(format!("{what} must be told once, at {from} to {to} s, and was at {times:?}.")),
    }
}

fn judged(log: &str) -> Vec<(&'static str, Result<(), String>)> {
    let low = times(log, "ALARM: rate low");
    let high = times(log, "ALARM: rate high");
    let over = times(log, "rate: no alarm");
    let done = log.lines().last() == Some("done");
    let none =
        if high.is_empty() { Ok(()) } else { Err(format!("There is an alarm of a high rate: {high:?}.")) };
    vec![
        (
            "the weak pump raises an alarm, within one window",
            within("The alarm", &low, FAULT + WATCH, FAULT + WINDOW),
        ),
        ("it ends within a window and the calm after the repair", {
            within("Its end", &over, REPAIR + WATCH, REPAIR + WINDOW + 24 * WATCH)
        }),
        ("no alarm of a high rate", none),
        ("the refill is left out, once", {
            within("The refill", &times(log, "left out: the tank"), REFILL, REFILL + WATCH)
        }),
        ("the end of the pot life is told at its second", {
            within("The end of the pot life", &times(log, "ALARM: the mix is too old"), TOO_OLD, TOO_OLD)
        }),
        ("the account agrees with what the world did", account(log)),
        ("the run ends well", if done { Ok(()) } else { Err("The last line is not \"done\".".into()) }),
    ]
}

/// 400 of 2700 s at 85 %: 2.2 % less than wanted, and half a per cent for scale and start.
fn account(log: &str) -> Result<(), String> {
    let line = log.lines().find(|line| line.starts_with("seed kg ")).ok_or("There is no account.")?;
    let deviation = line.split(' ').nth(5).and_then(|number| number.parse::<f64>().ok());
    let deviation = deviation.ok_or_else(|| format!("\"{line}\" has no deviation."))?;
    let expected = -0.15 * f64::from(REPAIR - FAULT) / 2700.0 * 100.0;
    if (deviation - expected).abs() < 0.5 && line.ends_with(" on target") {
        Ok(())
    } else {
        Err(format!("\"{line}\": a deviation of {expected:.2} % was expected."))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GOOD: &str = "770 ALARM: rate low\n1200 rate: no alarm\n1500 left out: the tank's scale jumped\n\
        2400 ALARM: the mix is too old\nseed kg 10790.000 deviation % -2.112 on target\ndone\n";

    fn wrong(log: &str) -> usize {
        judged(log).iter().filter(|(_, outcome)| outcome.is_err()).count()
    }

    #[test]
    fn each_mishap_that_is_told_wrongly_is_seen() {
        assert_eq!(wrong(GOOD), 0);
        for (from, to) in [
            ("770 ALARM", "590 ALARM"),
            ("770 ALARM: rate low", "770 ALARM: rate high"),
            ("1200 rate", "1700 rate"),
            ("1500 left", "1400 left"),
            ("2400 ALARM", "2405 ALARM"),
            ("-2.112", "-4.0"),
            ("done", ""),
        ] {
            assert!(wrong(&GOOD.replace(from, to)) > 0, "{from}");
        }
    }
}
