use hilum::quantity::{Measure, VolumePerArea};
use hilum::rate::{Density, Dry, Liquid, PerArea, PerMass, PerSeed};
use hilum::seed::UnitOfSeeds;

use super::{Answer, Product, by_substance, one, seed};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

pub(super) fn rate_of<S: Product>(inputs: &Inputs) -> Result<PerMass<S>, Refusal> {
    Ok(PerMass::new(inputs.quantity("rate")?)?)
}

pub(super) fn dose_of<S: Product>(inputs: &Inputs) -> Result<PerSeed<S>, Refusal> {
    Ok(PerSeed::new(inputs.quantity("per_seed")?)?)
}

fn unit(inputs: &Inputs) -> Result<UnitOfSeeds, Refusal> {
    Ok(UnitOfSeeds::new(inputs.quantity("unit")?)?)
}

pub(super) fn per_seed(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        one(Value::quantity("per_seed", rate_of::<S>(inputs)?.per_seed(seed::size(inputs)?).get()))
    }
    by_substance!(inputs, "rate", of)
}

pub(super) fn per_mass(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        one(Value::quantity("rate", dose_of::<S>(inputs)?.per_mass(seed::size(inputs)?).get()))
    }
    fn of_unit<S: Product>(inputs: &Inputs) -> Answer {
        let dose = PerSeed::<S>::from_unit(inputs.quantity("per_unit")?, unit(inputs)?)?;
        one(Value::quantity("rate", dose.per_mass(seed::size(inputs)?).get()))
    }
    if inputs.has("per_unit") {
        by_substance!(inputs, "per_unit", of_unit)
    } else {
        by_substance!(inputs, "per_seed", of)
    }
}

pub(super) fn per_unit(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        let dose = rate_of::<S>(inputs)?.per_seed(seed::size(inputs)?);
        one(Value::quantity("per_unit", dose.per_unit(unit(inputs)?)))
    }
    by_substance!(inputs, "rate", of)
}

pub(super) fn from_unit(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        let dose = PerSeed::<S>::from_unit(inputs.quantity("amount")?, unit(inputs)?)?;
        one(Value::quantity("per_seed", dose.get()))
    }
    by_substance!(inputs, "amount", of)
}

pub(super) fn per_bushel(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        one(Value::quantity("amount", rate_of::<S>(inputs)?.per_bushel(inputs.bushel("bushel")?)))
    }
    by_substance!(inputs, "rate", of)
}

pub(super) fn from_bushel(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        let rate = PerMass::<S>::from_bushel(inputs.quantity("amount")?, inputs.bushel("bushel")?)?;
        one(Value::quantity("rate", rate.get()))
    }
    by_substance!(inputs, "amount", of)
}

pub(super) fn per_area(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        one(Value::quantity("per_area", dose_of::<S>(inputs)?.per_area(seed::sown(inputs)?).get()))
    }
    by_substance!(inputs, "per_seed", of)
}

pub(super) fn needed(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        one(Value::quantity("amount", rate_of::<S>(inputs)?.needed(inputs.quantity("mass")?)?))
    }
    by_substance!(inputs, "rate", of)
}

pub(super) fn implied_size(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        one(Value::quantity("size", rate_of::<S>(inputs)?.implied_size(dose_of(inputs)?).get()))
    }
    by_substance!(inputs, "rate", of)
}

pub(super) fn difference(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        let stated = dose_of::<S>(inputs)?.per_mass(seed::size(inputs)?);
        one(Value::number("difference", stated.difference(rate_of(inputs)?)))
    }
    by_substance!(inputs, "rate", of)
}

pub(super) fn treats(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        one(Value::quantity("mass", rate_of::<S>(inputs)?.treats(inputs.quantity("amount")?)?))
    }
    by_substance!(inputs, "rate", of)
}

pub(super) fn from_area(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        let dose = PerArea::<S>::new(inputs.quantity("per_area")?)?;
        one(Value::quantity("per_seed", dose.per_seed(seed::sown(inputs)?).get()))
    }
    if inputs.powers("per_area")? == VolumePerArea::POWERS { of::<Liquid>(inputs) } else { of::<Dry>(inputs) }
}

pub(super) fn weighed(inputs: &Inputs) -> Answer {
    let density = Density::new(inputs.quantity("density")?)?;
    one(Value::quantity("rate", rate_of::<Liquid>(inputs)?.weighed(density).get()))
}

pub(super) fn measured(inputs: &Inputs) -> Answer {
    let density = Density::new(inputs.quantity("density")?)?;
    one(Value::quantity("rate", rate_of::<Dry>(inputs)?.measured(density).get()))
}
