use hilum::quantity::{Mass, Measure, Seeds, ratio};
use hilum::rate::{Active, ActiveContent, Content, Density, Dry, Liquid, PerMass, PerSeed};
use hilum::seed::{SeedSize, Share};

use super::{Answer, one, rate, seed};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

fn content(inputs: &Inputs) -> Result<Content, Refusal> {
    if inputs.powers("content")? == ratio::POWERS {
        Ok(Content::ByMass(Share::new(inputs.quantity("content")?)?))
    } else {
        Ok(Content::PerVolume(ActiveContent::new(inputs.quantity("content")?)?))
    }
}

fn density(inputs: &Inputs) -> Result<Option<Density>, Refusal> {
    if !inputs.has("density") {
        return Ok(None);
    }
    Ok(Some(Density::new(inputs.quantity("density")?)?))
}

fn of_liquid(rate: PerMass<Liquid>, inputs: &Inputs) -> Result<PerMass<Active>, Refusal> {
    Ok(rate.active(content(inputs)?.per_volume(density(inputs)?)?))
}

fn of_dry(rate: PerMass<Dry>, inputs: &Inputs) -> Result<PerMass<Active>, Refusal> {
    Ok(rate.active(content(inputs)?.by_mass(density(inputs)?)?)?)
}

fn of_rate(inputs: &Inputs) -> Result<PerMass<Active>, Refusal> {
    if inputs.is_liquid("rate")? {
        of_liquid(rate::rate_of(inputs)?, inputs)
    } else {
        of_dry(rate::rate_of(inputs)?, inputs)
    }
}

pub(super) fn per_mass(inputs: &Inputs) -> Answer {
    one(Value::quantity("active", of_rate(inputs)?.get()))
}

pub(super) fn per_seed(inputs: &Inputs) -> Answer {
    if inputs.has("rate") {
        return one(Value::quantity("active", of_rate(inputs)?.per_seed(seed::size(inputs)?).get()));
    }
    // The core knows the active in a dose per mass; at one seed per kilogram that is the dose per seed.
    let one_per_kg = SeedSize::new(Seeds::from_base(1.0) / Mass::from_base(1.0))?;
    let active = if inputs.is_liquid("per_seed")? {
        of_liquid(rate::dose_of(inputs)?.per_mass(one_per_kg), inputs)?
    } else {
        of_dry(rate::dose_of(inputs)?.per_mass(one_per_kg), inputs)?
    };
    one(Value::quantity("active", active.per_seed(one_per_kg).get()))
}

pub(super) fn per_area(inputs: &Inputs) -> Answer {
    let on_seed: PerSeed<Active> = if inputs.has("size") {
        PerMass::new(inputs.quantity("active")?)?.per_seed(seed::size(inputs)?)
    } else {
        PerSeed::new(inputs.quantity("active")?)?
    };
    one(Value::quantity("per_area", on_seed.per_area(seed::sown(inputs)?).get()))
}

/// Liquid where the content is per volume or the density is given, else dry.
pub(super) fn product(inputs: &Inputs) -> Answer {
    let active: PerMass<Active> = PerMass::new(inputs.quantity("active")?)?;
    match (content(inputs)?, density(inputs)?) {
        (Content::ByMass(share), None) => one(Value::quantity("rate", active.in_dry(share)?.get())),
        (content, density) => {
            one(Value::quantity("rate", active.in_liquid(content.per_volume(density)?).get()))
        }
    }
}
