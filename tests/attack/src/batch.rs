//! Jobs for the batch planner: every plan is valid, and found within its bound of work.

use arbitrary::{Result, Unstructured};
use hilum::batch::{Error, Filling, Job, Need, Order, Refill, Room, SetSize, Shift, Tank};
use hilum::quantity::{Measure, Time, Volume};

use crate::support::{Planned, hours, litres, order, run_in, seconds, set};
use crate::{numbers, valid};

/// Plans a job.
pub fn attack(bytes: &[u8]) {
    let from = &mut Unstructured::new(bytes);
    if let Ok(true) = from.arbitrary::<bool>() {
        let _ = plausible(from);
    } else {
        let _ = wild(from);
    }
}

#[derive(Debug)]
struct Parts {
    orders: Vec<Order>,
    sets: Vec<Vec<SetSize>>,
    tanks: Vec<Tank<'static>>,
    needs: Vec<Option<Need>>,
    shifts: Vec<Shift>,
    room: Given,
}

/// How generous the caller is with memory.
#[derive(Debug)]
struct Given {
    pours: usize,
    labels: usize,
    fills: usize,
}

impl Parts {
    fn tanks(&self) -> Vec<Tank<'_>> {
        self.tanks
            .iter()
            .zip(&self.sets)
            .map(|(tank, sets)| Tank {
                filling: if sets.is_empty() { Filling::Measured } else { Filling::Sets(sets) },
                ..*tank
            })
            .collect()
    }

    fn planned(&self) -> core::result::Result<Planned, Error> {
        // For whoever looks into what was found.
        if std::env::var_os("HILUM_SHOW").is_some() {
            println!("{self:?}");
        }
        let tanks = self.tanks();
        let job = Job { orders: &self.orders, tanks: &tanks, needs: &self.needs, shifts: &self.shifts };
        let planned = run(&job, &self.room);
        if let Ok(planned) = &planned {
            finite(planned);
        }
        planned
    }
}

fn run(job: &Job<'_>, given: &Given) -> core::result::Result<Planned, Error> {
    let room = Room::of(job);
    // For whoever looks into what was found: of what does it need so little?
    let usual = std::env::var("HILUM_ROOM").unwrap_or_default();
    let of = |name: &str, usually: usize, given: usize| if usual.contains(name) { usually } else { given };
    let given = Given {
        pours: of("pours", room.pours, given.pours),
        labels: of("labels", room.labels, given.labels),
        fills: of("fills", room.fills, given.fills),
    };
    let fills = room.fills.min(given.fills);
    let contents = given.labels * job.tanks.len();
    run_in(*job, Room { fills, pours: given.pours, labels: given.labels, contents, ..room })
}

fn finite(planned: &Planned) {
    for mix in &planned.mixes {
        let volumes = [mix.mixed, mix.applied, mix.hold_up, mix.discarded];
        assert!(volumes.iter().all(|volume| volume.value.is_finite() && volume.value >= 0.0), "{mix:?}");
        if let Some(times) = mix.times {
            let times = [times.mix_at, times.ready_at, times.done_at, times.use_by.unwrap_or_default()];
            assert!(times.iter().all(|time| time.value.is_finite()), "{mix:?}");
        }
    }
    assert!(planned.portions.iter().all(|it| it.mass.value.is_finite() && it.mix < planned.mixes.len()));
}

fn given(from: &mut Unstructured<'_>) -> Result<Given> {
    Ok(Given {
        pours: 2_usize.pow(from.int_in_range(3..=13)?),
        labels: from.int_in_range(0..=1500)?,
        fills: 2_usize.pow(from.int_in_range(3..=11)?),
    })
}

/// Whole numbers and their neighbours, so that things come out even where the planner must decide.
fn plausible(from: &mut Unstructured<'_>) -> Result<()> {
    let given = given(from)?;
    let orders = (0..from.int_in_range(1..=8)?)
        .map(|_| {
            let speed = [1500.0, 3000.0, 3600.0, 6000.0][from.choose_index(4)?];
            Ok(order(numbers::step(from, 90, 9000.0)?.max(20.0), speed, numbers::step(from, 20, 20.0)?))
        })
        .collect::<Result<Vec<Order>>>()?;
    let mut tanks = Vec::new();
    let mut sets = Vec::new();
    for _ in 0..from.int_in_range(1..=3)? {
        let pot_life =
            if from.arbitrary()? { Some(hours(numbers::step(from, 80, 40.0)?.max(0.01))) } else { None };
        tanks.push(Tank {
            capacity: litres(numbers::step(from, 60, 120.0)?.max(4.5)),
            hold_up: litres(numbers::step(from, 8, 4.0)?),
            mixing: seconds(numbers::step(from, 80, 2400.0)?),
            refill: if from.arbitrary()? { Refill::TopUp } else { Refill::WhenEmpty },
            pot_life,
            filling: Filling::Measured,
        });
        let sizes = (0..from.int_in_range(0..=3)?).map(|_| size(from)).collect::<Result<Vec<SetSize>>>()?;
        sets.push(sizes);
    }
    let shares: Vec<f64> =
        (0..3).map(|_| numbers::step(from, 10, 1.0).map(|share| share.min(1.0))).collect::<Result<_>>()?;
    let needs = (0..orders.len() * tanks.len())
        .map(|_| {
            let recipe = from.int_in_range(0..=3_u8)?;
            let rate = numbers::step(from, 50, 5.0)?.max(0.5);
            let per_mass = Measure::from_base(rate * 1e-6);
            let living = shares.get(usize::from(recipe));
            Ok(living.map(|living| Need { per_mass, recipe: u32::from(recipe), living: *living }))
        })
        .collect::<Result<Vec<_>>>()?;
    let shifts = shifts(from)?;
    let parts = Parts { orders, sets, tanks, needs, shifts, room: given };
    match parts.planned() {
        Ok(planned) => parts.check(&planned),
        Err(Error::TankTooSmall { tank }) => {
            let least = parts.sets[tank].iter().map(|set| set.adds.value).fold(f64::INFINITY, f64::min);
            let it = &parts.tanks[tank];
            let fits = |share: &f64| {
                *share <= 0.0 || least <= (it.capacity.value * share - it.hold_up.value) * (1.0 - 1e-6)
            };
            assert!(!shares.iter().all(fits), "its sets fit: {it:?}");
        }
        Err(Error::TooMany { .. }) => {}
        Err(error) => panic!("{error}"),
    }
    Ok(())
}

impl Parts {
    fn check(&self, planned: &Planned) {
        let tanks = self.tanks();
        let job = Job { orders: &self.orders, tanks: &tanks, needs: &self.needs, shifts: &self.shifts };
        valid::check(&job, planned);
    }
}

fn size(from: &mut Unstructured<'_>) -> Result<SetSize> {
    let stock = if from.arbitrary::<u8>()? < 60 { Some(from.int_in_range(0..=40)?) } else { None };
    Ok(SetSize {
        stock,
        ..set(numbers::step(from, 50, 25.0)?.max(0.25), f64::from(from.int_in_range(0..=9_u8)?))
    })
}

fn shifts(from: &mut Unstructured<'_>) -> Result<Vec<Shift>> {
    let mut at = 1.7e9;
    (0..from.int_in_range(0..=5)?)
        .map(|_| {
            let begins = at + (numbers::step(from, 32, 16.0)? * 3600.0).max(0.001);
            at = begins + (numbers::step(from, 40, 10.0)? * 3600.0).max(30.0);
            Ok(Shift { from: seconds(begins), to: seconds(at) })
        })
        .collect()
}

/// Anything at all.
fn wild(from: &mut Unstructured<'_>) -> Result<()> {
    let room = given(from)?;
    let orders = (0..from.int_in_range(0..=5)?)
        .map(|_| {
            let speed = if from.arbitrary()? { Some(Measure::from_base(numbers::any(from)?)) } else { None };
            Ok(Order {
                mass: Measure::from_base(numbers::any(from)?),
                speed,
                changeover: Time::from_base(numbers::any(from)?),
            })
        })
        .collect::<Result<Vec<Order>>>()?;
    let mut tanks = Vec::new();
    let mut sets = Vec::new();
    for _ in 0..from.int_in_range(0..=3)? {
        tanks.push(Tank {
            capacity: Volume::from_base(numbers::any(from)?),
            hold_up: Volume::from_base(numbers::any(from)?),
            mixing: Time::from_base(numbers::any(from)?),
            refill: if from.arbitrary()? { Refill::TopUp } else { Refill::WhenEmpty },
            pot_life: if from.arbitrary()? { Some(Time::from_base(numbers::any(from)?)) } else { None },
            filling: Filling::Measured,
        });
        let sizes = (0..from.int_in_range(0..=9)?)
            .map(|_| {
                let stock = if from.arbitrary()? { Some(from.arbitrary()?) } else { None };
                Ok(SetSize {
                    adds: Volume::from_base(numbers::any(from)?),
                    stock,
                    ranks: [numbers::any(from)?, numbers::any(from)?],
                })
            })
            .collect::<Result<Vec<SetSize>>>()?;
        sets.push(sizes);
    }
    let too_many = usize::from(from.arbitrary::<u8>()? == 0);
    let needs = (0..orders.len() * tanks.len() + too_many)
        .map(|_| {
            let need = Need {
                per_mass: Measure::from_base(numbers::any(from)?),
                recipe: u32::from(from.int_in_range(0..=2_u8)?),
                living: numbers::any(from)?,
            };
            Ok(from.arbitrary::<bool>()?.then_some(need))
        })
        .collect::<Result<Vec<_>>>()?;
    let shifts = (0..from.int_in_range(0..=3)?)
        .map(|_| {
            Ok(Shift { from: Time::from_base(numbers::any(from)?), to: Time::from_base(numbers::any(from)?) })
        })
        .collect::<Result<Vec<Shift>>>()?;
    if let Err(error) = (Parts { orders, sets, tanks, needs, shifts, room }).planned() {
        assert!((10..700).contains(&error.to_string().len()), "{error}");
    }
    Ok(())
}
