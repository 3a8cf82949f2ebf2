//! Batches of one living tank: 4 sizes of set, about 60 mixes in 14 shifts.

use std::hint::black_box;

use hilum::batch::{
    Content, Error, Fill, Filling, Job, Label, Memory, Need, Order, Pour, Refill, Room, SetSize, Shift, Tank,
    plan,
};
use hilum::quantity::{Mass, MassFlow, Measure, Time, Volume, VolumePerMass};

use crate::Row;

const SETS: [f64; 4] = [20.0, 10.0, 5.0, 2.5];

fn hours(hours: f64) -> Time {
    Time::from_base(hours * 3600.0)
}

/// The planner's working memory, asked for once.
struct Working {
    numbers: Vec<f64>,
    fills: Vec<Fill>,
    pours: Vec<Pour>,
    labels: Vec<Label>,
    contents: Vec<Content>,
}

impl Working {
    fn of(room: &Room) -> Self {
        Self {
            numbers: vec![0.0; room.numbers],
            fills: vec![Fill::default(); room.fills],
            pours: vec![Pour::default(); room.pours],
            labels: vec![Label::default(); room.labels],
            contents: vec![Content::default(); room.contents],
        }
    }

    fn plan(&mut self, job: Job<'_>) -> Result<f64, Error> {
        let memory = Memory {
            numbers: &mut self.numbers,
            fills: &mut self.fills,
            pours: &mut self.pours,
            labels: &mut self.labels,
            contents: &mut self.contents,
        };
        plan(job, memory).map(|plan| plan.summary().treated.to_base())
    }
}

pub(crate) fn row() -> Row {
    let sets: Vec<SetSize> = SETS
        .iter()
        .map(|liters| SetSize { adds: Volume::from_base(liters * 1e-3), stock: None, ranks: [1.0, 0.0] })
        .collect();
    let orders: Vec<Order> = (0_u8..20)
        .map(|n| Order {
            mass: Mass::from_base(14_000.0 + 137.0 * f64::from(n)),
            speed: Some(MassFlow::from_base(2800.0 / 3600.0)),
            changeover: hours(10.0 / 60.0),
        })
        .collect();
    let needs = vec![Some(Need { per_mass: VolumePerMass::from_base(4e-6), recipe: 1, living: 1.0 }); 20];
    let shifts: Vec<Shift> = (0_u8..14)
        .map(|day| Shift {
            from: hours(24.0 * f64::from(day) + 7.0),
            to: hours(24.0 * f64::from(day) + 17.0),
        })
        .collect();
    let work = move || {
        let tanks = [Tank {
            capacity: Volume::from_base(21e-3),
            hold_up: Volume::from_base(1e-3),
            mixing: hours(0.25),
            refill: Refill::WhenEmpty,
            pot_life: Some(hours(4.0)),
            filling: Filling::Sets(&sets),
        }];
        let job = Job { orders: &orders, tanks: &tanks, needs: &needs, shifts: &shifts };
        black_box(Working::of(&Room::of(&job)).plan(black_box(job)).ok());
    };
    Row::alone("batches of 20 orders, 4 sizes of set, about 60 mixes", work, "100 ms")
}
