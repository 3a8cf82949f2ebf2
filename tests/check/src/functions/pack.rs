use hilum::pack::{Coverage, SetsNeeded};

use super::{Answer, one};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

pub(super) fn sets(inputs: &Inputs) -> Answer {
    let set = Coverage::new(inputs.quantity("covers")?)?;
    let sets = SetsNeeded::sum([(inputs.quantity("need")?, set)])?.whole()?;
    let sets = u32::try_from(sets).map_err(|_| Refusal::Case(format!("{sets} sets are no example")))?;
    one(Value::number("sets", f64::from(sets)))
}
