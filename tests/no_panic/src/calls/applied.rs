//! What was applied, afterwards and while running.

use hilum::account::{Achieved, Measured, Reading};
use hilum::quantity::{Mass, Volume};
use hilum::rate::Liquid;
use hilum::treater::monitor::Monitor;

use super::{four, one, three, two};

pub(super) fn all() {
    account();
    monitor();
}

fn account() {
    two(Reading::<Volume>::new);
    one(<Measured<Volume> as From<Reading<Volume>>>::from);
    one(Measured::<Volume>::get);
    one(Measured::<Volume>::uncertainty);
    four(Measured::<Volume>::used);
    two(Measured::<Volume>::share);
    two(Measured::<Volume>::weighed);
    two(Measured::<Mass>::measured);
    two(Measured::<Mass>::before_treating);
    two(Achieved::<Liquid>::on::<Volume>);
    one(Achieved::<Liquid>::rate);
    one(Achieved::<Liquid>::uncertainty);
    two(Achieved::<Liquid>::deviation);
    three(Achieved::<Liquid>::verdict);
}

fn monitor() {
    one(Monitor::<16>::new);
    four(Monitor::<16>::feed);
}
