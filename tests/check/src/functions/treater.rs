use hilum::math;
use hilum::quantity::{Measure, Time};
use hilum::rate::{Density, RatePerMass};
use hilum::treater::{
    BatchTreater, CurvePoint, Dumps, Flow, PumpCurve, PumpSetting, SeedFlow, Setting, caught_mass,
    caught_volume,
};

use super::{Answer, one, seed};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

fn slurry(inputs: &Inputs) -> Result<RatePerMass, Refusal> {
    Ok(RatePerMass::new(inputs.quantity("slurry")?)?)
}

fn flow_of(inputs: &Inputs, name: &str) -> Result<Flow, Refusal> {
    Ok(Flow::new(inputs.quantity(name)?)?)
}

fn seed_flow(inputs: &Inputs) -> Result<SeedFlow, Refusal> {
    Ok(SeedFlow::new(inputs.quantity("seed_flow")?)?)
}

pub(super) fn flow(inputs: &Inputs) -> Answer {
    one(Value::quantity("flow", seed_flow(inputs)?.liquid(slurry(inputs)?).get()))
}

pub(super) fn dump_flow(inputs: &Inputs) -> Answer {
    let number = inputs.number("dumps")?;
    let dumps = math::to_u64(number).and_then(|dumps| u32::try_from(dumps).ok());
    let dumps = dumps.ok_or_else(|| Refusal::Case(format!("{number} is no count of dumps")))?;
    let flow = Dumps::of(inputs.quantity("dump")?)?.seed_flow(dumps, inputs.quantity("time")?)?;
    one(Value::quantity("seed_flow", flow.get()))
}

pub(super) fn per_charge(inputs: &Inputs) -> Answer {
    // The cycle does not change what goes on a charge.
    let treater = BatchTreater::new(inputs.quantity("charge")?, Time::from_base(60.0))?;
    one(Value::quantity("volume", treater.per_charge(slurry(inputs)?)))
}

pub(super) fn caught_by_volume(inputs: &Inputs) -> Answer {
    one(Value::quantity("flow", caught_volume(inputs.quantity("volume")?, inputs.quantity("time")?)?.get()))
}

pub(super) fn caught_by_mass(inputs: &Inputs) -> Answer {
    let density = Density::new(inputs.quantity("density")?)?;
    let flow = caught_mass(inputs.quantity("mass")?, density, inputs.quantity("time")?)?;
    one(Value::quantity("flow", flow.get()))
}

pub(super) fn deviation(inputs: &Inputs) -> Answer {
    let measured = flow_of(inputs, "measured")?;
    one(Value::number("difference", measured.deviation(flow_of(inputs, "target")?)))
}

pub(super) fn correct_setting(inputs: &Inputs) -> Answer {
    let setting = Setting::new(inputs.number("setting")?)?;
    let corrected = setting.corrected(flow_of(inputs, "target")?, flow_of(inputs, "caught")?)?;
    one(Value::number("setting", corrected.number()))
}

pub(super) fn curve_setting(inputs: &Inputs) -> Answer {
    let point = |setting: &str, flow: &str| -> Result<CurvePoint, Refusal> {
        Ok(CurvePoint { setting: Setting::new(inputs.number(setting)?)?, flow: flow_of(inputs, flow)? })
    };
    let curve = PumpCurve::through(&[point("setting_1", "flow_1")?, point("setting_2", "flow_2")?])?;
    match curve.setting(flow_of(inputs, "wanted")?) {
        PumpSetting::Inside(setting) => one(Value::number("setting", setting.number())),
        outside => Err(Refusal::Case(format!("{outside:?} is no number"))),
    }
}

pub(super) fn time_for(inputs: &Inputs) -> Answer {
    let mut flow = seed_flow(inputs)?;
    if inputs.has("utilisation") {
        flow = flow.effective(seed::share_of(inputs, "utilisation")?)?;
    }
    one(Value::quantity("time", flow.time_for(inputs.quantity("mass")?)?))
}

pub(super) fn rate(inputs: &Inputs) -> Answer {
    one(Value::quantity("rate", flow_of(inputs, "flow")?.rate(seed_flow(inputs)?).get()))
}

pub(super) fn batch_flow(inputs: &Inputs) -> Answer {
    let treater = BatchTreater::new(inputs.quantity("charge")?, inputs.quantity("cycle")?)?;
    one(Value::quantity("seed_flow", treater.seed_flow().get()))
}
