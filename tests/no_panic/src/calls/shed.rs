//! What is done in the treating shed: packs, mixes, pumps, limits, the bus.

use hilum::ddi::{self, Entry, Row};
use hilum::limit::{self, SeasonLimit};
use hilum::mix::{self, HoldUp, MinFill, Slurry};
use hilum::pack::{self, Choice, Coverage, Price, SetsNeeded};
use hilum::quantity::Mass;
use hilum::rate::{Liquid, PerMass};
use hilum::treater::{self, BatchTreater, Dumps, Flow, PumpCurve, PumpRange, SeedFlow, Setting};

use super::{Each, one, three, two};

pub(super) fn all() {
    packs();
    mixes();
    treaters();
    limits();
    bus();
}

fn packs() {
    one(Coverage::new);
    two(Coverage::at::<Liquid>);
    two(Coverage::difference);
    two(Coverage::disagrees);
    two(Coverage::exceeds);
    one(Price::new);
    one(Price::number);
    one(|orders: Each<_>| SetsNeeded::sum(orders));
    one(SetsNeeded::number);
    two(SetsNeeded::seed);
    one(SetsNeeded::whole);
    three(pack::choose);
    one(|choice: Choice| Choice::sets(&choice).sum::<u64>());
    two(pack::cases);
    three(pack::almost_covered);
}

fn mixes() {
    one(|parts: Each<_>| mix::density(parts));
    two(|products: Each<_>, water| Slurry::of(products, water));
    one(Slurry::rate);
    one(Slurry::water);
    one(Slurry::water_share);
    two(Slurry::share);
    two(Slurry::fill);
    two(Slurry::treats);
    one(HoldUp::new);
    three(HoldUp::mixed);
    three(HoldUp::treats);
    one(MinFill::new);
    two(MinFill::missed_by);
    two(mix::pour);
    two(mix::weigh);
    one(|rates: Each<_>| mix::total_liquid(rates));
    two(|shares: Each<_>, tolerance| mix::keeps_recipe(shares, tolerance));
}

fn treaters() {
    one(SeedFlow::new);
    two(SeedFlow::effective);
    two(SeedFlow::liquid);
    two(SeedFlow::time_for);
    one(Flow::new);
    two(Flow::rate);
    two(Flow::deviation);
    three(Flow::off_target);
    two(treater::caught_volume);
    three(treater::caught_mass);
    two(BatchTreater::new);
    one(BatchTreater::seed_flow);
    two(BatchTreater::per_charge);
    one(Dumps::of);
    three(Dumps::seed_flow);
    two(Dumps::liquid);
    two(PumpRange::reach);
    one(Setting::new);
    one(Setting::number);
    three(Setting::corrected);
    one(PumpCurve::through);
    two(PumpCurve::setting);
}

fn limits() {
    two(PerMass::<Liquid>::agreement);
    one(|doses: Each<_>| limit::total_on_seed(doses));
    two(SeasonLimit::new);
    three(SeasonLimit::total);
    three(SeasonLimit::share);
    three(SeasonLimit::exceeded);
    two(SeasonLimit::max_sowing);
}

fn bus() {
    one(Entry::<Mass>::number);
    two(Entry::<Mass>::encode);
    two(Entry::<Mass>::decode);
    one(ddi::find);
    two(Row::encode);
    two(Row::decode);
}
