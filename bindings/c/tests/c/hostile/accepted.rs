//! What may be spoilt without being refused, and why. Each row must really be accepted.

/// One row; `*` stands for all.
pub(super) struct Accepted {
    function: &'static str,
    parameter: &'static str,
    path: &'static str,
    hows: &'static [&'static str],
}

fn matches(pattern: &str, text: &str) -> bool {
    match pattern.split_once('*') {
        Some((start, end)) => {
            text.len() >= start.len() + end.len() && text.starts_with(start) && text.ends_with(end)
        }
        None => pattern == text,
    }
}

impl Accepted {
    pub(super) fn is(&self, function: &str, parameter: &str, path: &str, how: &str) -> bool {
        matches(self.function, function)
            && matches(self.parameter, parameter)
            && matches(self.path, path)
            && self.hows.contains(&how)
    }
}

const fn row(
    function: &'static str,
    parameter: &'static str,
    path: &'static str,
    hows: &'static [&'static str],
) -> Accepted {
    Accepted { function, parameter, path, hows }
}

const NEGATIVE: &[&str] = &["negative"];
const NUMBERS: &[&str] = &["nan", "infinite", "huge", "negative"];

pub(super) const ACCEPTED: &[Accepted] = &[
    // Plain quantities may be negative: differences, scales that show less than nothing. What is calculated
    // from them looks at them.
    row("hilum_mass_from", "value", "value", NEGATIVE),
    row("hilum_mass_in", "mass", "mass", NEGATIVE),
    row("hilum_volume_from", "value", "value", NEGATIVE),
    row("hilum_volume_in", "volume", "volume", NEGATIVE),
    row("hilum_seeds_from", "value", "value", NEGATIVE),
    row("hilum_seeds_in", "seeds", "seeds", NEGATIVE),
    row("hilum_cells_from", "value", "value", NEGATIVE),
    row("hilum_cells_in", "cells", "cells", NEGATIVE),
    row("hilum_area_from", "value", "value", NEGATIVE),
    row("hilum_area_in", "area", "area", NEGATIVE),
    row("hilum_time_from", "value", "value", NEGATIVE),
    row("hilum_time_in", "time", "time", NEGATIVE),
    row("hilum_temperature_difference_from", "value", "value", NEGATIVE),
    row("hilum_temperature_difference_in", "difference", "difference", NEGATIVE),
    row("hilum_mass_per_seed_from", "value", "value", NEGATIVE),
    row("hilum_mass_per_seed_in", "mass", "mass", NEGATIVE),
    row("hilum_mass_per_area_from", "value", "value", NEGATIVE),
    row("hilum_mass_per_area_in", "rate", "rate", NEGATIVE),
    row("hilum_mass_from_n", "values", "values", NEGATIVE),
    row("hilum_mass_in_n", "masses", ".kg", NEGATIVE),
    row("hilum_volume_from_n", "values", "values", NEGATIVE),
    row("hilum_volume_in_n", "volumes", ".m3", NEGATIVE),
    row("hilum_area_from_n", "values", "values", NEGATIVE),
    row("hilum_area_in_n", "areas", ".m2", NEGATIVE),
    row("hilum_text_count_in", "value", "value", NEGATIVE),
    row("hilum_text_*_rows", "numbers", "numbers", NEGATIVE),
    // It freezes.
    row("hilum_temperature_*", "*", "*", NEGATIVE),
    row("hilum_storage_*", "*", "*", NEGATIVE),
    row("hilum_survival_*", "survival", ".reference.celsius", NEGATIVE),
    row("hilum_survival_*", "storage", ".at.celsius", NEGATIVE),
    // Instants lie before or after one of the caller's choice.
    row("hilum_batch_work_between", "from", "*", NEGATIVE),
    row("hilum_batch_work_between", "to", "*", NEGATIVE),
    row("hilum_batch_*", "shifts", "*", NEGATIVE),
    // What the choice beside it makes of no account is not looked at.
    row("*", "unit", ".mass.kg", NUMBERS),
    row("*", "content", ".by_mass.one", NUMBERS),
    row("*", "titre", ".per_mass.cfu_per_kg", NUMBERS),
    row("hilum_monitor_*", "setup", ".seed.flow_resolution.kg_per_s", NUMBERS),
    row("hilum_monitor_*", "seed", ".flow.kg_per_s", NUMBERS),
    row("hilum_survival_*", "survival", ".fast.s", NUMBERS),
    row("hilum_survival_*", "survival", ".fraction.one", NUMBERS),
    row("hilum_survival_*", "survival", ".scale.s", NUMBERS),
    row("hilum_survival_*", "survival", ".shape", NUMBERS),
    // An empty word is no metal.
    row("hilum_is_metal", "length", "length", &["none"]),
    // The count at time 0 does not depend on how sure it is; any logarithm has a power, which saturates.
    row("hilum_fit_initial", "fit", ".log10_initial", &["huge", "negative"]),
    row("hilum_fit_initial", "fit", ".log10_initial_error", NUMBERS),
    row("hilum_fit_initial", "fit", ".reduction_error.s", NUMBERS),
    row("hilum_fit_initial", "fit", ".residual", NUMBERS),
    row("hilum_fit_initial", "fit", ".known", &["choice"]),
];
