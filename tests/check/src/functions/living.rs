use hilum::rate::{CellCount, PerSeed};
use hilum::viability::{TitrePerMass, TitrePerVolume};

use super::{Answer, Product, one, rate, seed};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

/// The titre is per volume where it has volumes below the line.
fn titre_is_per_volume(inputs: &Inputs) -> Result<bool, Refusal> {
    Ok(inputs.powers("titre")?.length == -3)
}

fn dose<S: Product>(inputs: &Inputs) -> Result<PerSeed<S>, Refusal> {
    if inputs.has("rate") {
        Ok(rate::rate_of::<S>(inputs)?.per_seed(seed::size(inputs)?))
    } else {
        rate::dose_of(inputs)
    }
}

pub(super) fn cells_per_seed(inputs: &Inputs) -> Answer {
    let recovery = seed::share_of(inputs, "recovery")?;
    let cells = if titre_is_per_volume(inputs)? {
        TitrePerVolume::new(inputs.quantity("titre")?)?.cells(dose(inputs)?, recovery)
    } else {
        TitrePerMass::new(inputs.quantity("titre")?)?.cells(dose(inputs)?, recovery)
    };
    one(Value::quantity("cells", cells.get()))
}

pub(super) fn dose_for(inputs: &Inputs) -> Answer {
    let recovery = seed::share_of(inputs, "recovery")?;
    let cells: PerSeed<CellCount> = PerSeed::new(inputs.quantity("cells")?)?;
    if titre_is_per_volume(inputs)? {
        let titre = TitrePerVolume::new(inputs.quantity("titre")?)?;
        one(Value::quantity("per_seed", titre.dose_for(cells, recovery)?.get()))
    } else {
        let titre = TitrePerMass::new(inputs.quantity("titre")?)?;
        one(Value::quantity("per_seed", titre.dose_for(cells, recovery)?.get()))
    }
}

pub(super) fn titre_for(inputs: &Inputs) -> Answer {
    let recovery = seed::share_of(inputs, "recovery")?;
    let cells: PerSeed<CellCount> = PerSeed::new(inputs.quantity("cells")?)?;
    if inputs.is_liquid("per_seed")? {
        one(Value::quantity("titre", TitrePerVolume::needed(cells, rate::dose_of(inputs)?, recovery)?.get()))
    } else {
        one(Value::quantity("titre", TitrePerMass::needed(cells, rate::dose_of(inputs)?, recovery)?.get()))
    }
}

/// A liquid part in a liquid set, a powder in a dry one, or a powder stirred into a liquid one.
pub(super) fn titre_in_set(inputs: &Inputs) -> Answer {
    if titre_is_per_volume(inputs)? {
        let titre = TitrePerVolume::new(inputs.quantity("titre")?)?;
        return one(Value::quantity(
            "titre",
            titre.in_set(inputs.quantity("part")?, inputs.quantity("set")?)?.get(),
        ));
    }
    let titre = TitrePerMass::new(inputs.quantity("titre")?)?;
    let part = inputs.quantity("part")?;
    if inputs.is_liquid("set")? {
        one(Value::quantity("titre", titre.stirred_into(part, inputs.quantity("set")?)?.get()))
    } else {
        one(Value::quantity("titre", titre.in_set(part, inputs.quantity("set")?)?.get()))
    }
}
