use hilum::limit::{SeasonLimit, total_on_seed};
use hilum::quantity::{MassPerArea, Measure};
use hilum::rate::ActivePerSeed;

use super::{Answer, one, seed};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

fn on_seed(inputs: &Inputs) -> Result<ActivePerSeed, Refusal> {
    Ok(ActivePerSeed::new(inputs.quantity("active")?)?)
}

fn used(inputs: &Inputs) -> Result<MassPerArea, Refusal> {
    if inputs.has("used") { inputs.quantity("used") } else { Ok(MassPerArea::from_base(0.0)) }
}

pub(super) fn per_area(inputs: &Inputs) -> Answer {
    // What a season comes to does not depend on what it may come to.
    let any = MassPerArea::from_base(1.0);
    let season = SeasonLimit::new(any, used(inputs)?)?;
    one(Value::quantity("per_area", season.total(on_seed(inputs)?, seed::sown(inputs)?).get()))
}

pub(super) fn max_sowing(inputs: &Inputs) -> Answer {
    let season = SeasonLimit::new(inputs.quantity("limit")?, used(inputs)?)?;
    one(Value::quantity("sown", season.max_sowing(on_seed(inputs)?)))
}

pub(super) fn share(inputs: &Inputs) -> Answer {
    let season = SeasonLimit::new(inputs.quantity("limit")?, used(inputs)?)?;
    one(Value::number("share", season.share(on_seed(inputs)?, seed::sown(inputs)?)))
}

pub(super) fn on_seed_in_all(inputs: &Inputs) -> Answer {
    let first = ActivePerSeed::new(inputs.quantity("first")?)?;
    let second = ActivePerSeed::new(inputs.quantity("second")?)?;
    one(Value::quantity("active", total_on_seed([first, second])?.get()))
}
