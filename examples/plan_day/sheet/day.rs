//! The day as a timeline: shifts, mixes and how long each is good, day by day.

mod block;

use std::collections::BTreeMap;

use chrono::TimeDelta;
use hilum_job::document::{Batch, Code, Job, Plan};

use super::MARGIN;
use crate::clock::{self, Instant, rounded_up};
use crate::number::joined;
use crate::table::Align::{Left, Right};
use crate::table::{Table, labelled, plain};
use block::Block;

/// One mix on the timeline.
#[derive(Clone, Debug)]
struct Mix {
    label: String,
    orders: String,
    begun: Instant,
    ready: Instant,
    done: Instant,
    good_until: Option<Instant>,
}

/// One block for each day on which something is mixed or run.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let mixes = mixes(plan);
    let Some(end) = mixes.iter().map(|mix| mix.done).max() else { return Vec::new() };
    let mut lines = Vec::new();
    for block in block::days(&shifts(job)) {
        let shown: Vec<&Mix> = mixes.iter().filter(|mix| block.shows(mix)).collect();
        if !shown.is_empty() {
            lines.extend(day_lines(&block, &shown));
            lines.push(String::new());
        }
    }
    lines.push(
        "m mixing   # running   - waiting   . time left when empty   ! use by   > good beyond the shift"
            .to_owned(),
    );
    let all_runs = plan.findings.iter().all(|finding| finding.code != Code::OutOfTime);
    if all_runs {
        let end = rounded_up(end).format("%a %-d %b %H:%M");
        lines.extend(labelled(MARGIN, "", &format!("The last seed is treated by {end}.")));
    }
    lines
}

/// All mixes with instants, in the order in which they are made.
fn mixes(plan: &Plan) -> Vec<Mix> {
    let lots: BTreeMap<&str, &str> =
        plan.orders.iter().map(|order| (order.order.as_str(), order.lot.as_str())).collect();
    let of_tank = |name: &str, batch: &Batch| {
        let read = |text: &Option<String>| text.as_deref().and_then(clock::read);
        let runs: Vec<String> = batch
            .orders
            .iter()
            .map(|run| joined(&run.order, lots.get(run.order.as_str()).unwrap_or(&"")))
            .collect();
        Some(Mix {
            label: format!("{} {}", plain(name), batch.number),
            orders: runs.join(", "),
            begun: read(&batch.mix_at)?,
            ready: read(&batch.ready_at)?,
            done: read(&batch.done_at)?,
            good_until: read(&batch.use_by),
        })
    };
    let mut mixes: Vec<Mix> = plan
        .tanks
        .iter()
        .flat_map(|tank| tank.batches.iter().filter_map(|batch| of_tank(&tank.tank, batch)))
        .collect();
    mixes.sort_by_key(|mix| mix.begun);
    mixes
}

/// The shifts, all in the offset of the first, as the plan's instants are.
fn shifts(job: &Job) -> Vec<(Instant, Instant)> {
    let read = job
        .work
        .iter()
        .flatten()
        .filter_map(|shift| Some((clock::read(&shift.from)?, clock::read(&shift.to)?)));
    let shifts: Vec<(Instant, Instant)> = read.collect();
    let Some(offset) = shifts.first().map(|(from, _)| *from.offset()) else { return shifts };
    shifts.into_iter().map(|(from, to)| (from.with_timezone(&offset), to.with_timezone(&offset))).collect()
}

fn day_lines(block: &Block, mixes: &[&Mix]) -> Vec<String> {
    let shifts: Vec<String> = block
        .shifts
        .iter()
        .map(|(from, to)| {
            format!("{} to {}", clock::time(*from), clock::time_seen_from(*to, from.date_naive()))
        })
        .collect();
    let day = block.shifts.first().map(|(from, _)| clock::day(from.date_naive())).unwrap_or_default();
    let head = format!("{day}, {} (one mark is {} min)", shifts.join(" and "), block.minutes);
    let mut table =
        Table::new([(Left, "mix".to_owned()), (Right, block.scale() + " "), (Left, "runs".to_owned())])
            .beside(MARGIN);
    table.row([
        "shift".to_owned(),
        block.bar(|at| if block.works(at) { '=' } else { ' ' }) + " ",
        String::new(),
    ]);
    for mix in mixes {
        let beyond = mix.good_until.unwrap_or(mix.done) > block.end;
        let bar = block.bar(|at| mark(block, mix, at)) + if beyond { ">" } else { " " };
        table.row([mix.label.clone(), bar, mix.orders.clone()]);
    }
    let mut lines = labelled(MARGIN, "", &head);
    lines.extend(table.lines());
    lines
}

/// What a mix does in the step that begins at an instant.
fn mark(block: &Block, mix: &Mix, from: Instant) -> char {
    let to = block.next(from);
    let middle = from.checked_add_signed(TimeDelta::seconds((to - from).num_seconds() / 2)).unwrap_or(from);
    let good_until = mix.good_until.unwrap_or(mix.done);
    if mix.good_until.is_some_and(|use_by| from < use_by && use_by <= to) {
        '!'
    } else if (from <= mix.begun && mix.begun < to) || (mix.begun <= middle && middle < mix.ready) {
        'm'
    } else if middle < mix.ready || middle >= good_until {
        ' '
    } else if middle < mix.done && block.works(from) {
        '#'
    } else if middle < mix.done {
        '-'
    } else {
        '.'
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(time: &str) -> Instant {
        clock::read(&format!("2027-04-14T{time}:00-05:00")).unwrap()
    }

    fn mix(begun: &str, ready: &str, done: &str, good_until: Option<&str>) -> Mix {
        Mix {
            label: "A 1".into(),
            orders: "1".into(),
            begun: at(begun),
            ready: at(ready),
            done: at(done),
            good_until: good_until.map(at),
        }
    }

    fn bar(mix: &Mix) -> String {
        let blocks = block::days(&[(at("07:00"), at("09:00")), (at("09:30"), at("11:00"))]);
        let block = &blocks[0];
        assert_eq!(block.minutes, 5);
        block.bar(|from| mark(block, mix, from))
    }

    #[test]
    fn a_mix_is_made_run_and_kept() {
        // Mixed from 07:00, run from 07:10 to 07:30, good to 08:00.
        let bar = bar(&mix("07:00", "07:10", "07:30", Some("08:00")));
        assert_eq!(bar.trim_end(), "mm####.....!");
        assert_eq!(bar.len(), 48);
    }

    #[test]
    fn a_mix_waits_through_a_break() {
        let bar = bar(&mix("08:40", "08:50", "09:40", None));
        assert_eq!(bar.trim(), "mm##------##");
        assert_eq!(bar.find('m'), Some(20));
    }

    #[test]
    fn a_mix_that_lasts_longer_than_the_shift_is_good_to_its_end() {
        let bar = bar(&mix("10:30", "10:40", "10:50", Some("15:00")));
        assert_eq!(bar.trim_start(), "mm##..");
    }

    #[test]
    fn a_short_mixing_is_not_lost_between_marks() {
        let bar = bar(&mix("07:04", "07:05", "07:20", None));
        assert_eq!(bar.trim_end(), "m###");
    }
}
