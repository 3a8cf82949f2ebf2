//! How long the treated seed may wait.

use super::survival::{Period, Survival};
use crate::math::floor;
use crate::quantity::{Time, base};
use crate::rate::{CellCount, PerSeed};

/// 2^40 s, some 35,000 years: a count that stays above its minimum so long stays there.
const FOR_EVER: f64 = 1_099_511_627_776.0;

/// When a count falls below a minimum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Crossing {
    /// It is below from the start.
    AlreadyBelow,
    /// The last whole second after treating at which it is still enough.
    At(Time),
    /// Not in 35,000 years.
    Never,
}

impl Survival {
    /// The last moment at which there are enough cells on a seed, to the second below.
    ///
    /// # Examples
    /// See [the module](super).
    #[must_use]
    pub fn crossing(
        self,
        at_treating: PerSeed<CellCount>,
        minimum: PerSeed<CellCount>,
        storage: &[Period],
    ) -> Crossing {
        let enough = |second: f64| self.left(at_treating, storage, second).0 >= minimum.0;
        if !enough(0.0) {
            return Crossing::AlreadyBelow;
        }
        if enough(FOR_EVER) {
            return Crossing::Never;
        }
        // The count falls, so between these two seconds it crosses once.
        let (mut still, mut no_more) = (0.0, FOR_EVER);
        while no_more - still > 1.0 {
            let between = floor(still + (no_more - still) / 2.0);
            if enough(between) { still = between } else { no_more = between }
        }
        Crossing::At(base!(Time, still))
    }
}

checked! {
    /// How long after treating a maker lets the seed be planted.
    Life(Time), not_negative, Life
}

/// What ends the time to plant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Because {
    /// The living product's own life on the seed.
    OnSeedLife,
    /// The life that another product on the seed leaves it.
    Partner,
    /// Too few cells after that.
    Minimum,
}

/// How long after treating the seed may be planted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PlantBy {
    /// There are too few cells from the start.
    NotAtAll,
    /// Until then.
    Within(Time, Because),
    /// Nothing stated limits it.
    Unlimited,
}

/// The earliest of the life on the seed, the lives that partners leave, and the crossing of the minimum.
/// Of equals the first in this order gives the reason.
///
/// ```
/// use hilum::quantity::{Time, time::day};
/// use hilum::viability::{Because, Crossing, Life, PlantBy, plant_by};
/// # fn main() -> Result<(), hilum::Error> {
/// // Worked by hand: a life of 120 d, a partner that leaves 60 d, and enough cells for 75 d.
/// let [life, partner] = [Life::new(Time::new::<day>(120.0))?, Life::new(Time::new::<day>(60.0))?];
/// let crossing = Crossing::At(Time::new::<day>(75.0));
/// let by = plant_by(Some(life), &[partner], Some(crossing));
/// assert_eq!(by, PlantBy::Within(Time::new::<day>(60.0), Because::Partner));
/// # Ok(()) }
/// ```
#[must_use]
pub fn plant_by(on_seed: Option<Life>, partners: &[Life], minimum: Option<Crossing>) -> PlantBy {
    let crossing = match minimum {
        Some(Crossing::AlreadyBelow) => return PlantBy::NotAtAll,
        Some(Crossing::At(time)) => Some((time, Because::Minimum)),
        Some(Crossing::Never) | None => None,
    };
    let partners = partners.iter().map(|life| (life.get(), Because::Partner));
    let lives = on_seed.map(|life| (life.get(), Because::OnSeedLife)).into_iter().chain(partners);
    lives
        .chain(crossing)
        .reduce(|first, next| if next.0 < first.0 { next } else { first })
        .map_or(PlantBy::Unlimited, |(time, because)| PlantBy::Within(time, because))
}

#[cfg(test)]
mod tests {
    use super::super::{DecimalReduction, Model, Reference, WeibullScale, WeibullShape};
    use super::*;
    use crate::quantity::ratio::one;
    use crate::quantity::temperature_difference::kelvin;
    use crate::quantity::time::{day, second};
    use crate::quantity::{CellsPerSeed, Ratio, Temperature, TemperatureDifference};

    fn cells(number: f64) -> PerSeed<CellCount> {
        PerSeed::new(base!(CellsPerSeed, number)).unwrap()
    }
    fn days(number: f64) -> Time {
        Time::new::<day>(number)
    }
    fn life(number: f64) -> Life {
        Life::new(days(number)).unwrap()
    }
    fn log_linear(d: f64) -> Survival {
        Survival::new(Model::LogLinear(DecimalReduction::new(days(d)).unwrap()), None)
    }
    fn seconds(crossing: Crossing) -> f64 {
        match crossing {
            Crossing::At(time) => time.get::<second>(),
            other => panic!("{other:?}"),
        }
    }

    // Worked by hand: D × log10(4e5 / 1e5) = 60 d × 0.602 059 991 = 3 121 079.0 s, δ × 0.602…^(1/2) for p = 2.
    #[test]
    fn the_crossing_is_the_closed_form_rounded_down() {
        let at = seconds(log_linear(60.0).crossing(cells(4e5), cells(1e5), &[]));
        let exact = 60.0 * 86_400.0 * 0.602_059_991_327_962_4;
        assert!(at <= exact && exact - at <= 1.0, "{at} {exact}");
        let shoulder = Model::Weibull {
            scale: WeibullScale::new(days(10.0)).unwrap(),
            shape: WeibullShape::new(Ratio::new::<one>(2.0)).unwrap(),
        };
        let at = seconds(Survival::new(shoulder, None).crossing(cells(4e5), cells(1e5), &[]));
        let exact = 10.0 * 86_400.0 * 0.775_925_248_543_931_9;
        assert!(at <= exact && exact - at <= 1.0, "{at} {exact}");
    }

    #[test]
    fn there_are_enough_then_and_too_few_a_second_later() {
        let reference =
            Reference::new(Temperature::from_celsius(10.0), TemperatureDifference::new::<kelvin>(17.0));
        let survival =
            Survival::new(Model::LogLinear(DecimalReduction::new(days(41.0)).unwrap()), reference.ok());
        let storage = [(2.0, 27.0), (9.0, 12.0), (1.0, 4.0)]
            .map(|(lasts, at)| Period::new(days(lasts), Some(Temperature::from_celsius(at))).unwrap());
        let at = seconds(survival.crossing(cells(7e5), cells(1e5), &storage));
        let left = |t: f64| survival.left(cells(7e5), &storage, t).0;
        assert!(left(at) >= 1e5 && left(at + 1.0) < 1e5);
    }

    #[test]
    fn never_and_already_are_answers_of_their_own() {
        assert_eq!(log_linear(60.0).crossing(cells(9e4), cells(1e5), &[]), Crossing::AlreadyBelow);
        assert_eq!(log_linear(1e20).crossing(cells(2e5), cells(1e5), &[]), Crossing::Never);
        assert_eq!(log_linear(60.0).crossing(cells(1e5), cells(1e5), &[]), Crossing::At(days(0.0)));
        let none = PerSeed::of(0.0);
        assert_eq!(log_linear(60.0).crossing(none, cells(1e5), &[]), Crossing::AlreadyBelow);
    }

    #[test]
    fn the_earliest_limit_gives_the_reason() {
        let at = |time| Some(Crossing::At(days(time)));
        let within = |time, because| PlantBy::Within(days(time), because);
        let partners = [life(90.0), life(60.0)];
        assert_eq!(plant_by(Some(life(50.0)), &partners, at(55.0)), within(50.0, Because::OnSeedLife));
        assert_eq!(plant_by(Some(life(70.0)), &partners, at(65.0)), within(60.0, Because::Partner));
        assert_eq!(plant_by(Some(life(70.0)), &partners, at(40.0)), within(40.0, Because::Minimum));
        assert_eq!(plant_by(Some(life(60.0)), &partners, at(60.0)), within(60.0, Because::OnSeedLife));
        assert_eq!(plant_by(None, &[], Some(Crossing::Never)), PlantBy::Unlimited);
        assert_eq!(plant_by(Some(life(60.0)), &[], Some(Crossing::AlreadyBelow)), PlantBy::NotAtAll);
    }
}
