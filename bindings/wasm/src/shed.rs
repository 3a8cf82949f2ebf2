//! Entry `hilum/shed`: what a whole list goes into. Numbers in base units come in one list and go out in one.

mod batches;
mod watch;

use alloc::boxed::Box;
use alloc::vec;
use alloc::vec::Vec;

use hilum::pack::{Coverage, Objective, PackSize, Price, Proof, Supply, choose};
use hilum::quantity::{Mass, Measure, VolumeFlow};
use hilum::treater::{CurvePoint, Flow, PumpCurve, PumpSetting, Setting};

/// Numbers for the script, until its next call.
#[repr(C)]
pub struct Told {
    start: *const f64,
    length: usize,
}

/// Memory for so many numbers of the script's, which has read what it was told before.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn numbers_for(length: usize) -> *mut f64 {
    crate::begin();
    vec![0.0; length].leak().as_mut_ptr()
}

/// Which question, in the order of the script's list, of the numbers in the room. The answer begins with 0, or with the number of what is refused.
///
/// # Safety
/// [`numbers_for`] gave it for so many numbers.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn ask(question: usize, at: *const f64, length: usize) -> *const Told {
    // SAFETY: the script keeps to it.
    let given = unsafe { core::slice::from_raw_parts(at, length) };
    let questions = [packs, setting, watch::begin, watch::feed, batches::plan];
    let numbers = match questions.get(question).map(|ask| ask(&mut Given(given.iter()))) {
        Some(Ok(numbers)) => numbers,
        Some(Err(refused)) => refused.0,
        None => Vec::new(),
    };
    let numbers = numbers.leak();
    Box::leak(Box::new(Told { start: numbers.as_ptr(), length: numbers.len() }))
}

/// What the script gave, number by number; what is not there is no number, and refused as such.
struct Given<'a>(core::slice::Iter<'a, f64>);

impl Given<'_> {
    fn number(&mut self) -> f64 {
        self.0.next().copied().unwrap_or(f64::NAN)
    }

    fn is(&mut self) -> bool {
        self.number() > 0.0
    }

    /// NaN stands for what is not given.
    fn optional(&mut self) -> Option<f64> {
        Some(self.number()).filter(|number| !number.is_nan())
    }

    fn quantity<Q: Measure>(&mut self) -> Q {
        Q::from_base(self.number())
    }

    fn count(&mut self) -> usize {
        hilum::math::to_u64(self.number()).and_then(|count| usize::try_from(count).ok()).unwrap_or(0)
    }
}

/// What is refused: its code, then the place in what was asked and the value.
struct Refused(Vec<f64>);

impl From<hilum::Error> for Refused {
    fn from(error: hilum::Error) -> Self {
        Self(crate::refusal::Refusal::from(error).code_and_value().to_vec())
    }
}

fn refused_at(place: usize, error: hilum::Error) -> Refused {
    let [code, value] = crate::refusal::Refusal::from(error).code_and_value();
    Refused(vec![code, value, crate::refusal::count(place)])
}

type Answer = Result<Vec<f64>, Refused>;

/// Need, objective, then for each size coverage, stock and price → proof, supply, covered, leftover, cost, sets.
fn packs(given: &mut Given<'_>) -> Answer {
    let need: Mass = given.quantity();
    let objective = match given.count() {
        0 => Objective::LeastLeftover,
        1 => Objective::LeastCost,
        _ => Objective::FewestSets,
    };
    let mut sizes = Vec::new();
    while given.0.len() > 0 {
        let place = sizes.len().saturating_add(1);
        let covers = Coverage::new(given.quantity()).map_err(|error| refused_at(place, error))?;
        let stock =
            given.optional().and_then(hilum::math::to_u64).and_then(|stock| u32::try_from(stock).ok());
        let price = given.optional().map(Price::new).transpose().map_err(|error| refused_at(place, error))?;
        sizes.push(PackSize { covers, stock, price });
    }
    let choice = choose(need, &sizes, objective)?;
    let mut told = vec![
        0.0,
        f64::from(u8::from(choice.proof == Proof::Proven)),
        f64::from(u8::from(choice.supply == Supply::Enough)),
        choice.covered.to_base(),
        choice.leftover.to_base(),
        choice.cost,
    ];
    for sets in choice.sets() {
        told.push(u32::try_from(sets).map_or(f64::INFINITY, f64::from));
    }
    Ok(told)
}

/// The flow wanted, then setting and flow of each catch → where it lies (0 between the catches, 1 below, 2
/// above), the setting.
fn setting(given: &mut Given<'_>) -> Answer {
    let wanted = Flow::new(given.quantity::<VolumeFlow>())?;
    let mut catches = Vec::new();
    while given.0.len() > 0 {
        let place = catches.len().saturating_add(1);
        let setting = Setting::new(given.number()).map_err(|error| refused_at(place, error))?;
        let flow = Flow::new(given.quantity()).map_err(|error| refused_at(place, error))?;
        catches.push(CurvePoint { setting, flow });
    }
    Ok(match PumpCurve::through(&catches)?.setting(wanted) {
        PumpSetting::Inside(setting) => vec![0.0, 0.0, setting.number()],
        PumpSetting::BelowCurve => vec![0.0, 1.0],
        PumpSetting::AboveCurve => vec![0.0, 2.0],
    })
}
