//! Random jobs, up to three tanks of any kind: every plan keeps the rules.
use crate::support::{litres, order, run, seconds};
use crate::valid;
use hilum::batch::{Error, Filling, Job, Need, Order, Refill, SetSize, Shift, Tank};
use hilum::quantity::{Mass, Volume, mass::kilogram, volume::liter};
use proptest::prelude::*;

#[derive(Clone, Debug)]
struct RandomTank {
    capacity: f64,
    hold_up: f64,
    mixing: f64,
    pot_life: Option<f64>,
    top_up: bool,
    sets: Vec<SetSize>,
    /// Living share of a recipe, by its number.
    shares: Vec<f64>,
}

#[derive(Clone, Debug)]
struct RandomJob {
    orders: Vec<Order>,
    tanks: Vec<RandomTank>,
    needs: Vec<(u32, f64)>,
    shifts: Vec<Shift>,
}

fn sets() -> impl Strategy<Value = Vec<SetSize>> {
    let set = (0.5..25.0, prop::option::weighted(0.3, 0..40_u32), 0.0..9.0_f64);
    prop::collection::vec(set, 0..4).prop_map(|sets| {
        sets.into_iter()
            .map(|(adds, stock, rank)| SetSize { adds: litres(adds), stock, ranks: [rank, 0.0] })
            .collect()
    })
}

fn tank() -> impl Strategy<Value = RandomTank> {
    let numbers = (30.0..120.0, prop_oneof![Just(0.0), 0.1..4.0], 0.0..40.0, prop::option::of(0.7..40.0));
    let shares = prop::collection::vec(prop_oneof![4 => 0.3..1.0, 1 => Just(1.0), 1 => Just(0.0)], 6);
    (numbers, any::<bool>(), sets(), shares).prop_map(
        |((capacity, hold_up, mixing, pot_life), top_up, sets, shares)| RandomTank {
            capacity,
            hold_up,
            mixing,
            pot_life,
            top_up,
            sets,
            shares,
        },
    )
}

fn shifts() -> impl Strategy<Value = Vec<Shift>> {
    let shift = (prop_oneof![1 => 0.0..0.5, 2 => 5.0..16.0], prop_oneof![1 => 0.01..0.4, 4 => 1.0..10.0]);
    (1.6e9..1.9e9, prop::collection::vec(shift, 0..6)).prop_map(|(start, lengths)| {
        let mut at: f64 = start;
        lengths
            .into_iter()
            .map(|(night, work)| {
                let from = at + night * 3600.0;
                at = from + work * 3600.0;
                Shift { from: seconds(from), to: seconds(at) }
            })
            .collect()
    })
}

fn job() -> impl Strategy<Value = RandomJob> {
    let orders = prop::collection::vec((20.0..9000.0, 1500.0..6000.0, 0.0..20.0), 1..12);
    (orders, prop::collection::vec(tank(), 1..4), shifts()).prop_flat_map(|(orders, tanks, shifts)| {
        let needs = prop::collection::vec((0..6_u32, 1.0..6.0), orders.len() * tanks.len());
        needs.prop_map(move |needs| RandomJob {
            orders: orders.iter().map(|it| order(it.0, it.1, it.2)).collect(),
            tanks: tanks.clone(),
            needs,
            shifts: shifts.clone(),
        })
    })
}

fn check(random: &RandomJob) -> Result<(), TestCaseError> {
    let tanks: Vec<Tank<'_>> = random
        .tanks
        .iter()
        .map(|it| Tank {
            capacity: litres(it.capacity),
            hold_up: litres(it.hold_up),
            mixing: seconds(60.0 * it.mixing),
            refill: if it.top_up { Refill::TopUp } else { Refill::WhenEmpty },
            pot_life: it.pot_life.map(|life| seconds(3600.0 * life)),
            filling: if it.sets.is_empty() { Filling::Measured } else { Filling::Sets(&it.sets) },
        })
        .collect();
    let number = |index: usize, recipe: u32| (index % tanks.len(), usize::try_from(recipe).unwrap());
    let needs: Vec<Option<Need>> = random
        .needs
        .iter()
        .enumerate()
        .map(|(index, (recipe, rate))| {
            let (tank, recipe_number) = number(index, *recipe);
            let per_mass = Volume::new::<liter>(rate * 1e-3) / Mass::new::<kilogram>(1.0);
            let living = random.tanks[tank].shares[recipe_number];
            // The last recipe number stands for an order that does not need the tank; two thirds share one recipe.
            (*recipe < 5).then_some(Need {
                per_mass,
                recipe: recipe / 4,
                living: if *recipe < 4 { random.tanks[tank].shares[0] } else { living },
            })
        })
        .collect();
    let job = Job { orders: &random.orders, tanks: &tanks, needs: &needs, shifts: &random.shifts };
    match run(job) {
        Ok(planned) => {
            valid::check(&job, &planned);
            Ok(())
        }
        Err(Error::TankTooSmall { tank }) => {
            let it = &random.tanks[tank];
            let least = it.sets.iter().map(|set| set.adds.get::<liter>()).fold(f64::INFINITY, f64::min);
            prop_assert!(
                it.shares.iter().any(|share| *share > 0.0 && least > it.capacity * share - it.hold_up)
            );
            Ok(())
        }
        Err(error) => Err(TestCaseError::fail(error.to_string())),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(crate::optimum::cases()) })]

    #[test]
    fn random_jobs_keep_the_rules(random in job()) {
        check(&random)?;
    }
}
