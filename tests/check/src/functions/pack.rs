use hilum::pack::{Coverage, Objective, PackSize, SetsNeeded, choose};

use super::{Answer, Product, by_substance, one, rate};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

fn covers(inputs: &Inputs, name: &str) -> Result<Coverage, Refusal> {
    Ok(Coverage::new(inputs.quantity(name)?)?)
}

/// A count of sets as a number; no example needs more than a double holds.
fn count(sets: u64) -> Result<f64, Refusal> {
    let sets = u32::try_from(sets).map_err(|_| Refusal::Case(format!("{sets} sets are no example")))?;
    Ok(f64::from(sets))
}

pub(super) fn sets(inputs: &Inputs) -> Answer {
    let set = covers(inputs, "covers")?;
    let sets = SetsNeeded::sum([(inputs.quantity("need")?, set)])?.whole()?;
    one(Value::number("sets", count(sets)?))
}

pub(super) fn coverage(inputs: &Inputs) -> Answer {
    fn of<S: Product>(inputs: &Inputs) -> Answer {
        let set = Coverage::at(inputs.quantity("usable")?, rate::rate_of::<S>(inputs)?)?;
        one(Value::quantity("covers", set.get()))
    }
    by_substance!(inputs, "rate", of)
}

/// With the least leftover, and no limit of stock.
pub(super) fn choose_of(inputs: &Inputs) -> Answer {
    let size = |covers| PackSize { covers, stock: None, price: None };
    let sizes = [size(covers(inputs, "large")?), size(covers(inputs, "small")?)];
    let choice = choose(inputs.quantity("need")?, &sizes, Objective::LeastLeftover)?;
    let mut values = vec![Value::quantity("leftover", choice.leftover)];
    for (name, sets) in ["large", "small"].into_iter().zip(choice.sets()) {
        values.push(Value::number(name, count(sets)?));
    }
    Ok(values)
}
