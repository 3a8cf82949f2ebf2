//! What is implemented for the public types.

use std::collections::BTreeMap;

use syn::{Item, ItemImpl, Path, Type};

use super::modules::{Meaning, Module, Place, name_of};
use super::print;
use super::walk::DEPTH;

/// Impls stand anywhere in a crate, in private modules too.
pub(super) fn lines(root: &Module, public: &BTreeMap<Place, String>) -> Vec<String> {
    let mut lines = Vec::new();
    for module in root.all() {
        for item in &module.items {
            if let Item::Impl(item) = item {
                one(root, module, item, public, &mut lines);
            }
        }
    }
    lines
}

fn one(
    root: &Module,
    module: &Module,
    item: &ItemImpl,
    public: &BTreeMap<Place, String>,
    lines: &mut Vec<String>,
) {
    let reach = |path: &Path| reached(root, module, path, public);
    let shown = print::a_type(&item.self_ty);
    let path = match own_path(&item.self_ty).map(reach) {
        Some(Reach::Public(path)) => path,
        Some(Reach::Private) => return,
        // One that a macro made: only a type of this crate has items of its own.
        Some(Reach::Elsewhere) | None if item.trait_.is_none() => module.under(&root.name, &shown),
        Some(Reach::Elsewhere) | None => shown,
    };
    match &item.trait_ {
        Some((of, _)) if matches!(reach(of), Reach::Private) => {}
        Some(_) => lines.push(format!("{path}: {}", print::trait_impl(item))),
        None => {
            let header = print::header(item);
            for (name, line) in item.items.iter().filter_map(print::impl_item) {
                lines.push(format!("{path}::{name}: {header}{line}"));
            }
        }
    }
}

enum Reach {
    Public(String),
    Private,
    Elsewhere,
}

fn reached(root: &Module, module: &Module, path: &Path, public: &BTreeMap<Place, String>) -> Reach {
    let names: Vec<String> = path.segments.iter().map(|segment| segment.ident.to_string()).collect();
    if let Some(Meaning::Item(home, item)) = module.meaning(root, &names, DEPTH) {
        let place = name_of(item).map(|name| (home.path.clone(), name));
        let path = place.and_then(|place| public.get(&place));
        return path.map_or(Reach::Private, |path| Reach::Public(path.clone()));
    }
    // What a macro makes has its impls beside the call of the macro.
    let made = names.last().and_then(|name| public.get(&(module.path.clone(), name.clone())));
    made.map_or(Reach::Elsewhere, |path| Reach::Public(path.clone()))
}

/// The path of the type itself: `Dose` of `&Dose`.
fn own_path(of: &Type) -> Option<&Path> {
    match of {
        Type::Path(path) => Some(&path.path),
        Type::Reference(reference) => own_path(&reference.elem),
        Type::Paren(inner) => own_path(&inner.elem),
        Type::Group(inner) => own_path(&inner.elem),
        _ => None,
    }
}
