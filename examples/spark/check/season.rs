//! The steps of the season, in the order in which Spark's are, with the core's own types.

use hilum::limit::SeasonLimit;
use hilum::pack::{Coverage, SetsNeeded};
use hilum::quantity::area::acre;
use hilum::quantity::cells::cell;
use hilum::quantity::mass::{hundredweight, pound};
use hilum::quantity::ratio::{one, percent};
use hilum::quantity::seeds::seed;
use hilum::quantity::temperature_difference::kelvin;
use hilum::quantity::time::day;
use hilum::quantity::volume::{fluid_ounce, gallon, milliliter};
use hilum::quantity::{
    Area, Cells, Mass, MassPerArea, Ratio, Seeds, Temperature, TemperatureDifference, Time, Volume,
};
use hilum::rate::{ActiveContent, CellCount, Liquid, PerMass, PerSeed};
use hilum::seed::{Bushel, SeedSize, Share, Sown, UnitOfSeeds};
use hilum::viability::{
    Because, DecimalReduction, Life, Model, Period, PlantBy, Reference, Survival, TitrePerVolume, TwoPhase,
    WeibullScale, WeibullShape, plant_by,
};
use hilum::{Argument, Error};

use crate::table::{Fate, Row, bits, in_range, of, written};

/// Results of a row, each with a code.
pub(crate) const RESULTS: u64 = 19;

type Liquids = PerMass<Liquid>;

/// What the columns say, readable or not.
struct Order {
    mass: Fate<Mass>,
    size: Fate<hilum::quantity::SeedsPerMass>,
    sown: Fate<hilum::quantity::SeedsPerArea>,
    rate: Fate<hilum::quantity::VolumePerMass>,
    limit: Fate<MassPerArea>,
    used: Fate<MassPerArea>,
}

fn order(row: &Row<'_>) -> Order {
    let per_acre = |lb: f64| Mass::new::<pound>(lb) / Area::new::<acre>(1.0);
    Order {
        mass: row.quantity("mass", Mass::new::<pound>, Argument::SeedMass),
        size: row.quantity("size", |n| Seeds::new::<seed>(n) / Mass::new::<pound>(1.0), Argument::SeedSize),
        sown: row.quantity("sown", |n| Seeds::new::<seed>(n) / Area::new::<acre>(1.0), Argument::Sown),
        rate: row.quantity(
            "rate",
            |n| Volume::new::<fluid_ounce>(n) / Mass::new::<hundredweight>(1.0),
            Argument::RatePerMass,
        ),
        limit: row.quantity("limit", per_acre, Argument::SeasonLimit),
        used: row.quantity("used", per_acre, Argument::SeasonUsed),
    }
}

/// Column and what is in it, for one row.
pub(crate) fn calculated(row: &Row<'_>) -> Vec<(String, Fate<String>)> {
    let mut results = Vec::new();
    let mut tell = |name: &str, fate: Fate<String>| results.push((name.to_owned(), fate));
    let order = order(row);
    let Order { mass, size, sown, rate, limit, used } = order;
    let seeds =
        size.and(mass).then(|(size, mass)| of(SeedSize::new(size).and_then(|size| size.count_in(mass))));
    tell("seeds", seeds.then(|seeds| written(seeds, "seeds")));
    tell("units_rate", units_rate(row, size).then(|rate| written(rate.get(), "mL/100 kg")));
    tell("bushel_area", bushel_area(row, size, sown));
    let per_seed = rate.and(size).then(|(rate, size)| {
        of(Liquids::new(rate).and_then(|rate| SeedSize::new(size).map(|size| rate.per_seed(size))))
    });
    tell("per_seed", per_seed.then(|dose| written(dose.get(), "µL/seed")));
    let needed =
        rate.and(mass).then(|(rate, mass)| of(Liquids::new(rate).and_then(|rate| rate.needed(mass))));
    tell("product_needed", needed.then(|volume| written(volume, "gal")));
    let usable = row.quantity("usable", Volume::new::<gallon>, Argument::ProductAmount);
    let covers = usable
        .and(rate)
        .then(|(usable, rate)| of(Liquids::new(rate).and_then(|rate| Coverage::at::<Liquid>(usable, rate))));
    tell("covers", covers.then(|covers| written(covers.get(), "lb")));
    let sets = mass.and(covers).then(|(mass, covers)| of(SetsNeeded::sum([(mass, covers)])));
    tell("sets", sets.map(|sets| bits(sets.number())));
    tell("whole_sets", sets.then(|sets| of(sets.whole())).map(|whole| whole.to_string()));
    actives(row, (rate, size, sown), limit.and(used), &mut tell);
    let cells = living(row, per_seed);
    tell("cells", cells.then(per_seed_text));
    kept(row, cells, &mut tell);
    results
}

/// fl oz/unit as mL/100 kg.
fn units_rate(row: &Row<'_>, size: Fate<hilum::quantity::SeedsPerMass>) -> Fate<Liquids> {
    let unit = row.quantity("seed_unit", Seeds::new::<seed>, Argument::SeedUnit);
    let dose = row.number("unit_dose", Argument::RatePerSeed).map(Volume::new::<fluid_ounce>);
    let dose = unit.and(dose).then(|(unit, dose)| {
        of(UnitOfSeeds::new(unit)).then(|_| in_range(dose / unit, Argument::RatePerSeed))
    });
    dose.and(size)
        .then(|(dose, size)| of(PerSeed::new(dose).and_then(|dose| Ok(dose.per_mass(SeedSize::new(size)?)))))
}

/// fl oz/bu as mL/ha.
fn bushel_area(
    row: &Row<'_>,
    size: Fate<hilum::quantity::SeedsPerMass>,
    sown: Fate<hilum::quantity::SeedsPerArea>,
) -> Fate<String> {
    let bushel = row.quantity("bushel", Mass::new::<pound>, Argument::Bushel);
    let dose = row.number("bushel_dose", Argument::RatePerMass).map(Volume::new::<fluid_ounce>);
    let dose = bushel.and(dose).then(|(bushel, dose)| {
        of(Bushel::new(bushel)).then(|_| in_range(dose / bushel, Argument::RatePerMass))
    });
    let dose = dose.and(size).and(sown).then(|((dose, size), sown)| {
        let dose = Liquids::new(dose).and_then(|dose| Ok(dose.per_seed(SeedSize::new(size)?)));
        of(dose.and_then(|dose| Ok(dose.per_area(Sown::new(sown)?))))
    });
    dose.then(|dose| written(dose.get(), "mL/ha"))
}

/// Active ingredient on the seed and the season.
fn actives(
    row: &Row<'_>,
    (rate, size, sown): (
        Fate<hilum::quantity::VolumePerMass>,
        Fate<hilum::quantity::SeedsPerMass>,
        Fate<hilum::quantity::SeedsPerArea>,
    ),
    season: Fate<(MassPerArea, MassPerArea)>,
    tell: &mut impl FnMut(&str, Fate<String>),
) {
    let content = row.quantity(
        "content",
        |n| Mass::new::<pound>(n) / Volume::new::<gallon>(1.0),
        Argument::ActiveContent,
    );
    let active = rate.and(content).then(|(rate, content)| {
        of(Liquids::new(rate).and_then(|rate| Ok(rate.active(ActiveContent::new(content)?))))
    });
    tell("active", active.then(|active| written(active.get(), "mg/kg")));
    let on_seed =
        active.and(size).then(|(active, size)| of(SeedSize::new(size).map(|size| active.per_seed(size))));
    tell("on_seed", on_seed.then(|dose| written(dose.get(), "mg/seed")));
    let limit = |(limit, used)| SeasonLimit::new(limit, used);
    let whole = season.and(on_seed).and(sown).then(|((season, on_seed), sown)| {
        of(limit(season).and_then(|season| Ok((season, on_seed, Sown::new(sown)?))))
    });
    tell("season", whole.then(|(l, dose, sown)| written(l.total(dose, sown).get(), "lb/ac")));
    tell("share", whole.map(|(l, dose, sown)| bits(l.share(dose, sown))));
    tell("over", whole.map(|(l, dose, sown)| u8::from(l.exceeded(dose, sown)).to_string()));
    let most = season.and(on_seed).then(|(season, on_seed)| of(limit(season).map(|l| l.max_sowing(on_seed))));
    tell("max_sowing", most.then(|most| written(most, "seeds/ac")));
}

fn living(row: &Row<'_>, dose: Fate<PerSeed<Liquid>>) -> Fate<PerSeed<CellCount>> {
    let titre =
        row.quantity("titre", |n| Cells::new::<cell>(n) / Volume::new::<milliliter>(1.0), Argument::Titre);
    let recovery = row.quantity("recovery", Ratio::new::<percent>, Argument::Recovery);
    titre.and(dose).and(recovery).then(|((titre, dose), recovery)| {
        let titre = TitrePerVolume::new(titre);
        of(titre.and_then(|titre| Ok(titre.cells(dose, Share::new(recovery)?))))
    })
}

fn per_seed_text(cells: PerSeed<CellCount>) -> Fate<String> {
    written(cells.get(), "CFU/seed")
}

/// The made-up products' curves, as season.py has them.
fn curve(product: &str) -> Result<Option<Survival>, Error> {
    let days = Time::new::<day>;
    let reference = |z| {
        Reference::new(Temperature::from_celsius(10.0), TemperatureDifference::new::<kelvin>(z)).map(Some)
    };
    Ok(Some(match product {
        "alder peat" => Survival::new(Model::LogLinear(DecimalReduction::new(days(60.0))?), reference(20.0)?),
        "birch broth" => {
            let shape = WeibullShape::new(Ratio::new::<one>(0.8))?;
            Survival::new(Model::Weibull { scale: WeibullScale::new(days(25.0))?, shape }, reference(17.0)?)
        }
        "cedar film" => {
            let (fast, slow) = (DecimalReduction::new(days(2.0))?, DecimalReduction::new(days(70.0))?);
            let phases = TwoPhase::new(Share::new(Ratio::new::<percent>(90.0))?, fast, slow)?;
            Survival::new(Model::TwoPhase(phases), None)
        }
        _ => return Ok(None),
    }))
}

/// Lengths and temperatures of the periods.
type Stored = (Vec<Time>, Vec<Temperature>);

fn survival(product: &str, (lasts, at): &Stored) -> Fate<(Survival, Vec<Period>)> {
    let Ok(Some(curve)) = curve(product) else { return Fate::Refused(9) };
    let periods = lasts.iter().zip(at).map(|(lasts, at)| Period::new(*lasts, Some(*at)));
    of(periods.collect::<Result<Vec<Period>, Error>>()).map(|periods| (curve, periods))
}

fn kept(row: &Row<'_>, cells: Fate<PerSeed<CellCount>>, tell: &mut impl FnMut(&str, Fate<String>)) {
    let product = row.text("product").to_owned();
    let named = if product.is_empty() { Fate::Null } else { Fate::Fine(()) };
    let lasts = row.periods("lasts", Time::new::<day>);
    let storage = lasts.and(row.temperatures("at")).and(named).map(|(storage, ())| storage);
    // The C library takes no count of 0, as PerSeed::new does not.
    let some = |cells: PerSeed<CellCount>| of(PerSeed::<CellCount>::new(cells.get()));
    let after = row.quantity("after", Time::new::<day>, Argument::TimeSinceTreating);
    let left = cells.and(after).and(storage.clone()).then(|((cells, after), storage)| {
        survival(&product, &storage)
            .then(|(curve, periods)| some(cells).then(|cells| of(curve.count(cells, &periods, after))))
    });
    tell("left", left.then(per_seed_text));
    let minimum =
        row.quantity("minimum", |n| Cells::new::<cell>(n) / Seeds::new::<seed>(1.0), Argument::RatePerSeed);
    let life = row.quantity("life", Time::new::<day>, Argument::Life);
    let by = cells.and(minimum).and(life).and(storage).then(|(((cells, minimum), life), storage)| {
        let crossing = survival(&product, &storage).then(|(curve, periods)| {
            let minimum = some(cells).and(of(PerSeed::<CellCount>::new(minimum)));
            minimum.map(|(cells, minimum)| curve.crossing(cells, minimum, &periods))
        });
        crossing.then(|crossing| of(Life::new(life)).map(|life| plant_by(Some(life), &[], Some(crossing))))
    });
    let within = |by: PlantBy| match by {
        PlantBy::Within(time, _) => time,
        PlantBy::NotAtAll | PlantBy::Unlimited => Time::new::<day>(0.0),
    };
    tell("wait", by.then(|by| written(within(by), "d")));
    // HILUM_NOT_AT_ALL, HILUM_PLANT_WITHIN, HILUM_UNLIMITED, and why.
    let (is, because) = (by.map(|by| sign(by).0), by.map(|by| sign(by).1));
    tell("wait_is", is.map(|is| is.to_string()));
    tell("wait_because", because.map(|because| because.to_string()));
}

const fn sign(by: PlantBy) -> (i32, i32) {
    match by {
        PlantBy::NotAtAll => (1, 0),
        PlantBy::Within(_, Because::OnSeedLife) => (2, 1),
        PlantBy::Within(_, Because::Partner) => (2, 2),
        PlantBy::Within(_, Because::Minimum) => (2, 3),
        PlantBy::Unlimited => (3, 0),
    }
}
