//! Batches of every tank on one timeline.

use hilum::batch::{self, Plan, Room};

use super::{four, one, three, two};

pub(super) fn all() {
    one(Room::of);
    two(batch::plan);
    one(|plan: Plan<'static>| Plan::room(&plan));
    one(|plan: Plan<'static>| Plan::summary(&plan));
    one(|plan: Plan<'static>| Plan::looks(&plan));
    two(|plan: Plan<'static>, order| Plan::first_seed(&plan, order));
    three(|plan: Plan<'static>, mixes: &mut [batch::Mix], portions: &mut [batch::Portion]| {
        Plan::write(&plan, mixes, portions)
    });
    three(batch::work_between);
    four(batch::most_treatable);
}
