use hilum::mix::{Slurry, Water};
use hilum::rate::RatePerMass;

use super::{Answer, one, rate};
use crate::inputs::Inputs;
use crate::value::Value;

pub(super) fn share(inputs: &Inputs) -> Answer {
    let product: RatePerMass = rate::rate_of(inputs)?;
    let volume = RatePerMass::new(inputs.quantity("make_up_to")?)?;
    one(Value::quantity("share", Slurry::of([product], Water::UpTo(volume))?.share(product)?.get()))
}

pub(super) fn treats(inputs: &Inputs) -> Answer {
    let slurry = Slurry::of([RatePerMass::new(inputs.quantity("slurry")?)?], Water::None)?;
    one(Value::quantity("mass", slurry.treats(inputs.quantity("volume")?)?))
}
