//! The job: orders of seed, treatments with their labels' rates, tanks, treater, shifts.

use alloc::string::String;
use alloc::vec::Vec;

use super::Quantity;
use crate::limits::{ORDERS, PACKS, SHIFTS, TANKS, TREATMENTS};
use crate::read::{MaybeAbsent, document, words};

impl MaybeAbsent for String {}
impl MaybeAbsent for u32 {}
impl MaybeAbsent for f64 {}
impl MaybeAbsent for Quantity {}
impl MaybeAbsent for SurvivalModel {}
impl<T> MaybeAbsent for Vec<T> {}

document! {
    /// A day or a week of seed treating.
    pub struct Job {
        /// The version of this format: 1, also if absent.
        format: optional u32,
        /// What the sheet is headed with.
        title: optional String,
        /// What the plan is written in; metric if absent.
        units: optional Units,
        /// The currency of the prices, for the sheet.
        currency: optional String,
        /// By how much a product of a mix may be off before a new mix is due.
        recipe_tolerance: optional Quantity,
        /// The seed, in running order.
        orders: required Vec<Order>,
        /// The products, with the rates of their labels.
        treatments: required Vec<Treatment>,
        /// Limits of active ingredients.
        actives: optional Vec<ActiveLimit>,
        /// The tanks that mixes are made in.
        tanks: optional Vec<Tank>,
        /// The machine.
        treater: optional Treater,
        /// The shifts, ordered and apart.
        work: optional Vec<Shift>,
        /// What becomes of the seed between treating and planting.
        after: optional After,
    }
}

words! {
    /// What a plan is written in.
    pub enum Units {
        /// kg, L, ha.
        Metric = "metric",
        /// lb, fl oz, ac.
        Us = "us",
    }
}

document! {
    /// One customer's seed of one lot.
    pub struct Order, at most ORDERS {
        /// Its number; unique in the job.
        order: required String,
        /// The seed lot; may repeat.
        lot: required String,
        /// Whose it is.
        customer: optional String,
        /// What it is.
        crop: optional String,
        /// How much: mass, seeds, units, bushels, or the area it is to sow.
        amount: required Quantity,
        /// Seeds per mass, or the mass of a number of seeds.
        size: required Quantity,
        /// How far the size may be off, as a share.
        size_tolerance: optional Quantity,
        /// What this seed is sold in: a number of seeds or a mass.
        unit: optional Quantity,
        /// The crop's standard bushel, a mass.
        bushel: optional Quantity,
        /// What it is packed in.
        package: optional Package,
        /// Share of pure seed.
        purity: optional Quantity,
        /// Share of the pure seed that germinates.
        germination: optional Quantity,
        /// How it will be sown.
        sowing: optional Sowing,
        /// Of the seed when treated.
        temperature: optional Quantity,
        /// Mass of seed per time; overrides the treater's.
        seed_flow: optional Quantity,
        /// The products it gets; every treatment if absent.
        treat: optional Vec<String>,
        /// Active ingredients from an earlier treating.
        on_seed: optional Vec<ActiveOnSeed>,
        /// Overrides the job's, field by field.
        after: optional After,
    }
}

document! {
    /// Bags, boxes or bulk containers.
    pub struct Package {
        /// How much seed one holds.
        holds: required Quantity,
    }
}

document! {
    /// How the seed will be sown: a rate, or a stand of plants.
    pub struct Sowing {
        /// Seeds or mass of seed per area.
        rate: optional Quantity,
        /// Plants wanted per area.
        stand: optional Quantity,
        /// Share of the viable seed that gives a plant.
        emergence: optional Quantity,
    }
}

document! {
    /// An active ingredient that is on the seed already.
    pub struct ActiveOnSeed {
        /// Its common name, as in the job's `actives`.
        active: required String,
        /// Mass of it on one seed.
        per_seed: required Quantity,
    }
}

document! {
    /// A product and the dose its label states.
    pub struct Treatment, at most TREATMENTS {
        /// Its name; unique in the job.
        product: required String,
        /// The tank it is mixed in; applied dry if absent.
        tank: optional String,
        /// The dose, as product per mass, bushel, unit, seed or area.
        rate: optional Quantity,
        /// The dose, as active ingredient.
        active_rate: optional ActiveRate,
        /// The dose, as living cells on the seed, after recovery.
        cells: optional Quantity,
        /// What the label calls a unit: a number of seeds.
        label_unit: optional Quantity,
        /// What the label calls a bushel: a mass.
        label_bushel: optional Quantity,
        /// Other statements of the same dose.
        also_stated: optional Vec<Quantity>,
        /// The least the label allows.
        min_rate: optional Quantity,
        /// The most the label allows.
        max_rate: optional Quantity,
        /// The crops on the label; capitals of a to z count as small letters.
        crops: optional Vec<String>,
        /// Its registration number.
        registration: optional String,
        /// Its lot number.
        lot_number: optional String,
        /// The last day it may be used: year-month-day.
        expires: optional String,
        /// Mass per volume.
        density: optional Quantity,
        /// The active ingredients in it.
        actives: optional Vec<ActiveContent>,
        /// What else is in it that matters to living cells, such as zinc.
        constituents: optional Vec<String>,
        /// Whether it colours the seed; false if absent.
        colourant: optional bool,
        /// What its maker says of living products.
        with_living: optional Vec<WithLiving>,
        /// What is alive in it.
        living: optional Living,
        /// The sizes it is sold in.
        packs: optional Vec<Pack>,
        /// What the choice of packs is after; least leftover if absent.
        choose: optional Choose,
    }
}

document! {
    /// A dose stated as active ingredient.
    pub struct ActiveRate {
        /// Which of the product's actives.
        active: required String,
        /// Mass of it per mass, bushel, unit, seed or area.
        rate: required Quantity,
    }
}

document! {
    /// An active ingredient of a product.
    pub struct ActiveContent {
        /// Its common name.
        active: required String,
        /// Mass per volume of product, or share by mass.
        content: required Quantity,
    }
}

document! {
    /// What a maker declares of a living product.
    pub struct WithLiving {
        /// The living product.
        living: required String,
        /// May be in one tank with it; false if absent.
        same_tank: optional bool,
        /// May be on one seed with it.
        same_seed: optional bool,
        /// The seed must dry between the two.
        dry_between: optional bool,
        /// How long the living product lasts on seed beside this one.
        life: optional Quantity,
    }
}

document! {
    /// A living product.
    pub struct Living {
        /// Cells per volume or per mass.
        titre: required Quantity,
        /// What the titre is of: `mix` (if absent), or the name of a part.
        titre_of: optional String,
        /// Share of the cells that reach the seed alive; 100 % if absent.
        recovery: optional Quantity,
        /// Cells that each seed must carry on planting day.
        minimum_at_planting: optional Quantity,
        /// How long a mix may be used, from the start of mixing.
        pot_life: optional Quantity,
        /// How long treated seed may be kept before planting.
        on_seed_life: optional Quantity,
        /// The warmest that treated seed may be stored.
        store_below: optional Quantity,
        /// Whether it wants an agitated tank; true if absent.
        agitate: optional bool,
        /// How the cells die on the seed.
        survival: optional Survival,
    }
}

words! {
    /// How cells die.
    pub enum SurvivalModel {
        /// One rate: a straight line in log10.
        LogLinear = "log_linear",
        /// A curve in log10, of a power of time.
        Weibull = "weibull",
        /// Two populations, a fast and a slow one.
        TwoPhase = "two_phase",
    }
}

document! {
    /// A survival model with its parameters; those of another model are errors.
    pub struct Survival {
        /// Which model.
        model: required SurvivalModel,
        /// log_linear: the time in which nine of ten die.
        decimal_reduction: optional Quantity,
        /// weibull: the time of the first tenfold drop.
        scale: optional Quantity,
        /// weibull: the power of time.
        shape: optional f64,
        /// two_phase: the share that dies fast.
        fraction: optional Quantity,
        /// two_phase: the decimal reduction time of the fast share.
        fast: optional Quantity,
        /// two_phase: the decimal reduction time of the rest.
        slow: optional Quantity,
        /// The temperature that the parameters hold at.
        at: optional Quantity,
        /// How much warmer makes dying ten times as fast.
        z: optional Quantity,
    }
}

document! {
    /// A size a product is sold in: a set of parts that are used together.
    pub struct Pack, at most PACKS {
        /// Its name; unique in the product.
        pack: required String,
        /// What is in one set.
        parts: optional Vec<Part>,
        /// How much seed one set treats: mass, units or seeds.
        covers: optional Quantity,
        /// Sets in a case.
        per_case: optional u32,
        /// Sets on the shelf; unlimited if absent.
        on_hand: optional u32,
        /// Of one set, in the job's currency.
        price: optional f64,
    }
}

document! {
    /// A container of a set.
    pub struct Part {
        /// Its name.
        part: required String,
        /// What it holds.
        fill: required Quantity,
        /// What can be got out of it; the fill if absent.
        usable: optional Quantity,
    }
}

words! {
    /// What a choice of packs is after.
    pub enum Choose {
        /// The least left over.
        LeastLeftover = "least_leftover",
        /// The least cost of what is opened.
        LeastCost = "least_cost",
        /// The fewest sets.
        FewestSets = "fewest_sets",
    }
}

document! {
    /// Limits of one active ingredient.
    pub struct ActiveLimit {
        /// Its common name; unique in the job.
        active: required String,
        /// The most per area in a season.
        season_limit: optional Quantity,
        /// What this season's other uses took of it.
        season_used: optional Quantity,
        /// The most on one seed.
        max_per_seed: optional Quantity,
        /// The most per mass of seed.
        max_per_mass: optional Quantity,
    }
}

document! {
    /// A tank that a mix is made in, and its pump.
    pub struct Tank, at most TANKS {
        /// Its name; unique in the job.
        tank: required String,
        /// What it holds at most.
        capacity: required Quantity,
        /// What its agitator needs at least.
        min_fill: optional Quantity,
        /// What fills the lines and is not applied.
        hold_up: optional Quantity,
        /// The slurry rate that water makes the mix up to.
        make_up_to: optional Quantity,
        /// The water that is added to the products.
        water: optional Quantity,
        /// How long a mix takes to make.
        mixing: optional Quantity,
        /// Whether it has an agitator; false if absent.
        agitated: optional bool,
        /// Whether it may be refilled while it runs; when empty if absent.
        refill: optional Refill,
        /// Its pump.
        pump: optional Pump,
    }
}

words! {
    /// When a tank is refilled.
    pub enum Refill {
        /// When the last mix is used up.
        WhenEmpty = "when_empty",
        /// At any time, without a stop.
        TopUp = "top_up",
    }
}

document! {
    /// A pump and its calibration.
    pub struct Pump {
        /// The least it delivers evenly.
        min: optional Quantity,
        /// The most it delivers.
        max: optional Quantity,
        /// Flows caught at settings.
        curve: optional Vec<CurvePoint>,
    }
}

document! {
    /// One catch of a pump's calibration.
    pub struct CurvePoint {
        /// What the pump was set to.
        setting: required f64,
        /// What it delivered.
        flow: required Quantity,
    }
}

document! {
    /// The treater.
    pub struct Treater {
        /// Mass of seed per time while running.
        seed_flow: optional Quantity,
        /// Mass of seed per charge of a batch treater.
        charge: optional Quantity,
        /// Time per charge of a batch treater.
        cycle: optional Quantity,
        /// Share of the shift in which seed runs.
        utilisation: optional Quantity,
        /// Time between two orders.
        changeover: optional Quantity,
        /// The least liquid per mass of seed that covers it.
        min_liquid: optional Quantity,
        /// The most liquid per mass of seed that it takes up.
        max_liquid: optional Quantity,
    }
}

document! {
    /// One shift.
    pub struct Shift, at most SHIFTS {
        /// Its start: RFC 3339.
        from: required String,
        /// Its end: RFC 3339.
        to: required String,
    }
}

document! {
    /// Between treating and planting.
    pub struct After {
        /// Where the seed lies, period by period; the last goes on until planting.
        storage: optional Vec<Storage>,
        /// When it is planted: RFC 3339.
        plant_on: optional String,
        /// How long after treating it is planted.
        plant_after: optional Quantity,
        /// Whether it stands in direct sun; false if absent.
        in_sunlight: optional bool,
    }
}

document! {
    /// A period of storage.
    pub struct Storage {
        /// How long.
        r#for: required Quantity,
        /// At what temperature.
        at: required Quantity,
    }
}
