//! A run in, an account out.

mod finding;
mod living;
mod order;
mod record;
mod write;

use alloc::string::String;
use alloc::vec::Vec;

use self::order::Done;
use hilum::text::Decimal;

use crate::document::{self, Account, Run};
use crate::list::keep;
use crate::model::{Model, run};
use crate::plan::draft::Draft;
use crate::plan::recipe::{self, TankWork};
use crate::problem::{Gathered, Pointer, Problem, Problems, nearest};

/// Accounts for a run: what was really applied, against what the job asked for.
///
/// ```
/// use hilum_job::{Run, account, document::Verdict};
/// # fn main() -> Result<(), hilum_job::Problems> {
/// // Worked by hand: 180 − 42.5 − 2.5 = 135 L on 41,000 kg are 329.27 mL/100 kg, 1.3 % above 325.
/// let run = Run::from_json(
///     r#"{ "job": {
///            "orders": [ { "order": "7", "lot": "K-2", "amount": "41000 kg", "size": "180 g/1000 seeds" } ],
///            "treatments": [ { "product": "Colourant", "tank": "A", "rate": "325 mL/100 kg" } ],
///            "tanks": [ { "tank": "A", "capacity": "200 L" } ] },
///          "orders": [ { "order": "7", "seed": { "mass": "41000 kg", "resolution": "20 kg" }, "tanks": [
///            { "tank": "A", "start": "180 L", "end": "42.5 L", "lost": "2.5 L", "resolution": "0.5 L" } ] } ] }"#,
/// )?;
/// let account = account(&run)?;
/// let tank = &account.orders[0].tanks[0];
/// assert!((tank.achieved.value - 329.27).abs() < 0.005);
/// assert_eq!(tank.verdict, Verdict::OnTarget);
/// # Ok(()) }
/// ```
///
/// # Errors
/// All that is wrong with the quantities and references of the run and its job.
pub fn account(run: &Run) -> Result<Account, Problems> {
    accounted(run, nearest)
}

fn accounted(run: &Run, decimal: Decimal) -> Result<Account, Problems> {
    let of_job = |problems: Problems| problems.under("/job");
    let (model, read) = match (Model::of(&run.job, decimal).map_err(of_job), run::Run::of(run, decimal)) {
        (Ok(model), Ok(read)) => (model, read),
        (Err(job), Err(read)) => return Err(job.and(read)),
        (Err(problems), _) | (_, Err(problems)) => return Err(problems),
    };
    let draft = Draft::of(&model).map_err(of_job)?;
    let tanks = recipe::tanks(&draft).map_err(of_job)?;
    let day = Day { draft, tanks, run: read };
    let done = day.done()?;
    Ok(write::account(&day, &done))
}

/// Reads a run from JSON text, accounts for it and writes the account as JSON text.
///
/// # Errors
/// As [`Run::from_json`] and [`account`].
pub fn account_json(text: &str) -> Result<String, Problems> {
    account_json_with(text, nearest)
}

/// As [`account_json`], with a reader of decimals of the caller's.
///
/// # Errors
/// As [`account_json`].
pub fn account_json_with(text: &str, decimal: Decimal) -> Result<String, Problems> {
    accounted(&document::read(text, decimal)?, decimal)?.to_json()
}

impl Account {
    /// The account as JSON text: the same bytes from every language.
    ///
    /// # Errors
    /// When it cannot be written, which no account made here is known to cause.
    pub fn to_json(&self) -> Result<String, Problems> {
        serde_json::to_string(self).map_err(|_| {
            let message = "has an account that cannot be written; report it to who keeps hilum".into();
            Problems::one(Problem { pointer: String::new(), value: None, message })
        })
    }
}

/// What was asked for, and what was read.
pub(crate) struct Day<'m, 'j> {
    pub(crate) draft: Draft<'m, 'j>,
    /// By tank, in the job's order.
    pub(crate) tanks: Vec<TankWork>,
    pub(crate) run: run::Run<'j>,
}

impl Day<'_, '_> {
    /// What each order got.
    fn done(&self) -> Result<Vec<Done>, Problems> {
        let mut gathered = Gathered::default();
        let root = Pointer::Root;
        let at = root.field("orders");
        let mut all = Vec::new();
        for (i, read) in self.run.orders.iter().enumerate() {
            keep(&mut all, order::done(self, read, &at.item(i), &mut gathered));
        }
        gathered.settle(Some(all).filter(|all| all.len() == self.run.orders.len()))
    }
}
