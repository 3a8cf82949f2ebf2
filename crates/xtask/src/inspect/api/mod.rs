//! What can a caller of a crate name?
//!
//! Read from the sources, on the stable toolchain: one line for each public item that can be reached
//! from the crate's root, with its path and signature. What it does not know: the items that a macro
//! makes (its calls and its definition are listed instead, see `macros`), the values of constants, and
//! the auto traits of a type.

mod impls;
mod macros;
mod modules;
mod print;
mod walk;

use std::collections::BTreeSet;
use std::path::Path;

use modules::Module;

/// The lines, sorted.
pub(crate) fn list(name: &str, root: &Path) -> Result<Vec<String>, String> {
    let name = name.replace('-', "_");
    Ok(lines(&Module::load(&name, root)?))
}

fn lines(root: &Module) -> Vec<String> {
    let mut found = walk::Found::default();
    walk::module(root, root, &root.name, &mut found);
    let mut lines: BTreeSet<String> = impls::lines(root, &found.public).into_iter().collect();
    lines.append(&mut found.lines);
    lines.extend(macros::definitions(root));
    lines.into_iter().collect()
}

#[cfg(test)]
mod tests;
