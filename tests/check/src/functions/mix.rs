use hilum::mix::{self, HoldUp, Slurry, Water};
use hilum::rate::{Density, RatePerMass};

use super::{Answer, one, rate, seed};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

fn rate_named(inputs: &Inputs, name: &str) -> Result<RatePerMass, Refusal> {
    Ok(RatePerMass::new(inputs.quantity(name)?)?)
}

fn slurry(inputs: &Inputs) -> Result<Slurry, Refusal> {
    Ok(Slurry::of([rate_named(inputs, "slurry")?], Water::None)?)
}

fn hold_up(inputs: &Inputs) -> Result<HoldUp, Refusal> {
    Ok(HoldUp::new(inputs.quantity("hold_up")?)?)
}

fn with_water(product: RatePerMass, inputs: &Inputs) -> Result<Slurry, Refusal> {
    let water = if inputs.has("plus") {
        Water::Plus(rate_named(inputs, "plus")?)
    } else {
        Water::UpTo(rate_named(inputs, "make_up_to")?)
    };
    Ok(Slurry::of([product], water)?)
}

pub(super) fn share(inputs: &Inputs) -> Answer {
    let product = rate::rate_of(inputs)?;
    one(Value::quantity("share", with_water(product, inputs)?.share(product)?.get()))
}

pub(super) fn water(inputs: &Inputs) -> Answer {
    let slurry = with_water(rate::rate_of(inputs)?, inputs)?;
    Ok(vec![Value::quantity("water", slurry.water()), Value::quantity("share", slurry.water_share().get())])
}

pub(super) fn treats(inputs: &Inputs) -> Answer {
    let (slurry, volume) = (slurry(inputs)?, inputs.quantity("volume")?);
    one(Value::quantity(
        "mass",
        if inputs.has("hold_up") {
            hold_up(inputs)?.treats(slurry, volume)?
        } else {
            slurry.treats(volume)?
        },
    ))
}

pub(super) fn fill(inputs: &Inputs) -> Answer {
    let (slurry, mass) = (slurry(inputs)?, inputs.quantity("mass")?);
    one(Value::quantity(
        "volume",
        if inputs.has("hold_up") { hold_up(inputs)?.mixed(slurry, mass)? } else { slurry.fill(mass)? },
    ))
}

pub(super) fn total_liquid(inputs: &Inputs) -> Answer {
    let rates = [rate_named(inputs, "first")?, rate_named(inputs, "second")?];
    one(Value::quantity("rate", mix::total_liquid(rates)?.get()))
}

pub(super) fn pour_of(inputs: &Inputs) -> Answer {
    let share = seed::share_of(inputs, "share")?;
    one(Value::quantity("volume", mix::pour(share, inputs.quantity("volume")?)?))
}

pub(super) fn weigh_of(inputs: &Inputs) -> Answer {
    let density = Density::new(inputs.quantity("density")?)?;
    one(Value::quantity("mass", mix::weigh(inputs.quantity("volume")?, density)?))
}
