//! From the root through what is public.

use std::collections::{BTreeMap, BTreeSet};

use syn::{Fields, Item, ItemUse};

use super::modules::{Import, Meaning, Module, Place, attributes, imports, is_public, name_of, visibility};
use super::{macros, print};

/// How far a chain of `use` is followed.
pub(super) const DEPTH: u8 = 16;

#[derive(Default)]
pub(super) struct Found {
    pub(super) lines: BTreeSet<String>,
    /// Under which path a caller reaches what is defined in a place.
    pub(super) public: BTreeMap<Place, String>,
}

impl Found {
    fn line(&mut self, path: &str, what: &str) {
        self.lines.insert(format!("{path}: {what}"));
    }
}

/// The public items of a module that a caller reaches under `path`.
pub(super) fn module(root: &Module, module: &Module, path: &str, found: &mut Found) {
    for item in &module.items {
        match item {
            Item::Macro(call) => macro_lines(call, path, found),
            item if !visibility(item).is_some_and(is_public) => {}
            Item::Mod(declaration) => {
                let name = declaration.ident.to_string();
                if let Some(child) = module.modules.iter().find(|child| child.name == name) {
                    let path = format!("{path}::{name}");
                    found.line(&path, &format!("{}pub mod {name}", print::attributes(attributes(item))));
                    self::module(root, child, &path, found);
                }
            }
            Item::Use(item) => exported(root, module, item, path, found),
            item => one(module, item, name_of(item).as_deref(), path, found),
        }
    }
}

/// One item, under the name by which a caller reaches it.
fn one(home: &Module, item: &Item, name: Option<&str>, path: &str, found: &mut Found) {
    let (Some(own), Some(name)) = (name_of(item), name) else { return };
    let path = format!("{path}::{name}");
    found.public.entry((home.path.clone(), own)).or_insert_with(|| path.clone());
    found.line(&path, &print::item(item));
    match item {
        Item::Struct(item) => fields(&item.fields, &path, found),
        Item::Enum(item) => {
            for variant in &item.variants {
                found.line(&format!("{path}::{}", variant.ident), &print::variant(variant));
            }
        }
        Item::Trait(item) => {
            for (name, line) in item.items.iter().filter_map(print::trait_item) {
                found.line(&format!("{path}::{name}"), &line);
            }
        }
        _ => {}
    }
}

fn fields(fields: &Fields, path: &str, found: &mut Found) {
    for (index, field) in fields.iter().enumerate().filter(|(_, field)| is_public(&field.vis)) {
        let name = field.ident.as_ref().map_or_else(|| index.to_string(), ToString::to_string);
        found.line(&format!("{path}::{name}"), &print::field(field, &name));
    }
}

/// A `pub use`: the line itself, and in full what has no public path of its own.
fn exported(root: &Module, module: &Module, item: &ItemUse, path: &str, found: &mut Found) {
    for Import { name, path: target } in imports(&item.tree) {
        let shown = name.clone().unwrap_or_else(|| "*".into());
        let line = format!("{}pub use {}", print::attributes(&item.attrs), target.join("::"));
        found.line(&format!("{path}::{shown}"), &if name.is_none() { format!("{line}::*") } else { line });
        match (module.meaning(root, &target, DEPTH), &name) {
            (Some(Meaning::Module(target)), _) if target.is_public => {}
            (Some(Meaning::Module(target)), Some(name)) => {
                self::module(root, target, &format!("{path}::{name}"), found);
            }
            (Some(Meaning::Module(target)), None) => self::module(root, target, path, found),
            (Some(Meaning::Item(home, item)), Some(name)) if !home.is_public => {
                one(home, item, Some(name), path, found);
            }
            (None, Some(name)) => made(root, module, &target, &format!("{path}::{name}"), found),
            _ => {}
        }
    }
}

/// What a macro makes in a private module.
fn made(root: &Module, module: &Module, target: &[String], path: &str, found: &mut Found) {
    let Some((name, home)) = target.split_last() else { return };
    if let Some(Meaning::Module(home)) = module.meaning(root, home, DEPTH)
        && !home.is_public
    {
        for statement in macros::statements_making(home, name) {
            found.line(path, &statement);
            found.public.insert((home.path.clone(), name.clone()), path.to_owned());
        }
    }
}

fn macro_lines(call: &syn::ItemMacro, path: &str, found: &mut Found) {
    match &call.ident {
        Some(name) if call.attrs.iter().any(|attribute| attribute.path().is_ident("macro_export")) => {
            found.line(&format!("{path}::{name}"), "macro_rules!");
        }
        Some(_) => {}
        None => {
            let name = print::tokens(&call.mac.path);
            for statement in macros::statements(&call.mac.tokens) {
                found.line(path, &format!("{name}! {statement}"));
            }
        }
    }
}
