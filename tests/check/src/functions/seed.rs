use hilum::seed::{SeedSize, Share, Sown, pure_live_seed};

use super::{Answer, one};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

pub(super) fn size(inputs: &Inputs) -> Result<SeedSize, Refusal> {
    Ok(SeedSize::new(inputs.quantity("size")?)?)
}

pub(super) fn sown(inputs: &Inputs) -> Result<Sown, Refusal> {
    Ok(Sown::new(inputs.quantity("sown")?)?)
}

pub(super) fn share_of(inputs: &Inputs, name: &str) -> Result<Share, Refusal> {
    Ok(Share::new(inputs.quantity(name)?)?)
}

pub(super) fn count(inputs: &Inputs) -> Answer {
    one(Value::quantity("seeds", size(inputs)?.count_in(inputs.quantity("mass")?)?))
}

pub(super) fn mass(inputs: &Inputs) -> Answer {
    one(Value::quantity("mass", size(inputs)?.mass_of(inputs.quantity("seeds")?)?))
}

pub(super) fn size_from_thousand(inputs: &Inputs) -> Answer {
    one(Value::quantity("size", SeedSize::of_thousand(inputs.quantity("thousand")?)?.get()))
}

pub(super) fn thousand(inputs: &Inputs) -> Answer {
    one(Value::quantity("thousand", size(inputs)?.thousand()))
}

pub(super) fn units(inputs: &Inputs) -> Answer {
    let units = inputs.seed_unit("unit")?.units_in(inputs.quantity("mass")?, size(inputs)?)?;
    one(Value::number("units", units))
}

pub(super) fn bushels(inputs: &Inputs) -> Answer {
    one(Value::number("bushels", inputs.bushel("bushel")?.bushels_in(inputs.quantity("mass")?)?))
}

pub(super) fn pure_live(inputs: &Inputs) -> Answer {
    let share = pure_live_seed(share_of(inputs, "purity")?, share_of(inputs, "germination")?);
    one(Value::quantity("share", share.get()))
}

pub(super) fn for_stand(inputs: &Inputs) -> Answer {
    let stand = Sown::new(inputs.quantity("stand")?)?;
    let sown = Sown::for_stand(stand, share_of(inputs, "germination")?, share_of(inputs, "emergence")?)?;
    one(Value::quantity("sown", sown.get()))
}

pub(super) fn seeds_per_area(inputs: &Inputs) -> Answer {
    one(Value::quantity("sown", Sown::by_mass(inputs.quantity("rate")?, size(inputs)?)?.get()))
}

pub(super) fn mass_per_area(inputs: &Inputs) -> Answer {
    one(Value::quantity("rate", sown(inputs)?.mass_per_area(size(inputs)?)))
}

pub(super) fn area(inputs: &Inputs) -> Answer {
    one(Value::quantity("area", sown(inputs)?.area(inputs.quantity("seeds")?)?))
}

pub(super) fn size_from_seed(inputs: &Inputs) -> Answer {
    one(Value::quantity("size", SeedSize::of_seed(inputs.quantity("seed")?)?.get()))
}

pub(super) fn seed_mass(inputs: &Inputs) -> Answer {
    one(Value::quantity("seed", size(inputs)?.seed_mass()))
}

pub(super) fn unit_mass(inputs: &Inputs) -> Answer {
    one(Value::quantity("mass", inputs.seed_unit("unit")?.mass(size(inputs)?)))
}

pub(super) fn within(inputs: &Inputs) -> Answer {
    let (least, most) = size(inputs)?.within(share_of(inputs, "tolerance")?)?;
    Ok(vec![Value::quantity("least", least.get()), Value::quantity("most", most.get())])
}

pub(super) fn seeds_for(inputs: &Inputs) -> Answer {
    one(Value::quantity("seeds", sown(inputs)?.seeds_for(inputs.quantity("area")?)?))
}
