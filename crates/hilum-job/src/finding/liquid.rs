//! Can the seed take the liquid?

use alloc::format;

use hilum::rate::{PerMass, RatePerMass};

use super::Found;
use super::words::{apart, order_name};
use crate::document::{Code, Severity};
use crate::plan::Worked;
use crate::plan::order::liquids;
use crate::plan::out::Written;
use crate::problem::quoted;

pub(super) fn findings(worked: &Worked<'_, '_>, found: &mut Found) {
    let draft = &worked.draft;
    let (units, treater) = (draft.units(), &draft.model.treater);
    for (o, liquid) in liquids(draft.model.orders.len(), &worked.tanks).into_iter().enumerate() {
        // An order without any liquid has nothing that could be too much or too little.
        let Ok(liquid) = RatePerMass::new(liquid) else { continue };
        let told = |limit: PerMass<_>| {
            let (liquid, limit) = apart(&liquid.out(units), &limit.out(units));
            (
                format!(
                    "Order {} gets {liquid} of liquid from all tanks together",
                    quoted(order_name(worked, o))
                ),
                limit,
            )
        };
        if let Some(most) = treater.max_liquid.filter(|most| liquid.exceeds(*most)) {
            let (gets, most) = told(most);
            let message = format!(
                "{gets}, more than the {most} that the seed takes up: it stays wet and sticks. Add less water first, or make two passes if the labels allow."
            );
            found.add(Severity::Warn, Code::LiquidTooHigh, format!("/orders/{o}"), message);
        }
        if let Some(least) = treater.min_liquid.filter(|least| liquid.falls_below(*least)) {
            let (gets, least) = told(least);
            let message = format!(
                "{gets}, less than the {least} that it takes to cover the seed evenly. Make the mix up with more water."
            );
            found.add(Severity::Warn, Code::LiquidTooLow, format!("/orders/{o}"), message);
        }
    }
}
