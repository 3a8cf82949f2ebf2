//! What is said about a job that cannot be planned.

use hilum_job::Problems;

use crate::input::Source;

/// The longest message, in characters.
const MOST: usize = 1500;

/// All problems, one a line, first problem first, as far as they fit.
pub(crate) fn message(source: &Source, problems: &Problems) -> String {
    let mut lines = problems.iter().map(ToString::to_string);
    let first = lines.next().unwrap_or_default();
    let mut message = cut(&format!("{source}: {first}"));
    for (shown, line) in (1..).zip(lines) {
        let rest = format!("\nand {} more", problems.len().saturating_sub(shown));
        let longer = format!("{message}\n{line}");
        if longer.chars().count().saturating_add(rest.len()).saturating_add(20) > MOST {
            return message + &rest;
        }
        message = longer;
    }
    message
}

/// A message no longer than it may be.
pub(crate) fn cut(message: &str) -> String {
    if message.chars().count() <= MOST {
        return message.to_owned();
    }
    message.chars().take(MOST.saturating_sub(3)).chain("...".chars()).collect()
}

#[cfg(test)]
mod tests {
    use hilum_job::document::Job;

    use super::*;

    #[test]
    fn the_first_problem_stands_first_and_the_rest_follow() {
        let problems = Job::from_json(r#"{"format": 1, "oders": [], "treatmens": []}"#).unwrap_err();
        let message = message(&Source::File("a.json".into()), &problems);
        assert!(message.starts_with("a.json: /oders: "), "{message}");
        assert_eq!(message.lines().count(), problems.len(), "{message}");
    }

    #[test]
    fn a_message_stays_within_its_limit() {
        let fields: Vec<String> =
            (0..40).map(|i| format!("\"{}{i}\": 1", "unknown field ".repeat(6))).collect();
        let problems = Job::from_json(&format!("{{{}}}", fields.join(","))).unwrap_err();
        let message = message(&Source::StandardInput, &problems);
        assert!(message.chars().count() <= MOST, "{}", message.chars().count());
        assert!(message.ends_with("more"), "{message}");
        assert_eq!(cut(&"é".repeat(2000)).chars().count(), MOST);
    }
}
