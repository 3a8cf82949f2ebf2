//! A run in, an account out.

mod finding;
mod living;
mod order;
mod record;
mod write;

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use self::order::Done;
use crate::document::{Account, Run};
use crate::model::{Model, run};
use crate::plan::draft::Draft;
use crate::plan::recipe::{self, TankWork};
use crate::problem::{Gathered, Pointer, Problem, Problems};

/// Accounts for a run: what was really applied, against what the job asked for.
///
/// # Errors
/// All that is wrong with the quantities and references of the run and its job.
pub fn account(run: &Run) -> Result<Account, Problems> {
    let of_job = |problems: Problems| problems.under("/job");
    let (model, read) = match (Model::of(&run.job).map_err(of_job), run::Run::of(run)) {
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
    account(&Run::from_json(text)?)?.to_json()
}

impl Account {
    /// The account as JSON text: the same bytes from every language.
    ///
    /// # Errors
    /// When it cannot be written, which no account made here is known to cause.
    pub fn to_json(&self) -> Result<String, Problems> {
        serde_json::to_string(self).map_err(|error| {
            let message = format!("has an account that cannot be written: {error}");
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
        let orders = self.run.orders.iter().enumerate();
        let done: Vec<_> =
            orders.map(|(i, read)| order::done(self, read, &at.item(i), &mut gathered)).collect();
        gathered.settle(done.into_iter().collect())
    }
}
