//! The modules of a crate, out of its files.

use std::fs;
use std::path::{Path, PathBuf};

use quote::ToTokens;
use syn::{Attribute, Item, UseTree, Visibility};

/// One module: its own items, and its modules.
pub(super) struct Module {
    pub(super) name: String,
    /// From the crate's root, whose path is empty.
    pub(super) path: Vec<String>,
    /// Whether it can be reached under its own path.
    pub(super) is_public: bool,
    pub(super) items: Vec<Item>,
    pub(super) modules: Vec<Module>,
}

/// Where something is defined: the module's path and the name.
pub(super) type Place = (Vec<String>, String);

/// What a path means.
pub(super) enum Meaning<'a> {
    Module(&'a Module),
    Item(&'a Module, &'a Item),
}

impl Module {
    /// Reads the crate whose root is this file.
    pub(super) fn load(name: &str, file: &Path) -> Result<Self, String> {
        let folder = file.parent().map(Path::to_path_buf).unwrap_or_default();
        let mut root = Self {
            name: name.into(),
            path: Vec::new(),
            is_public: true,
            items: Vec::new(),
            modules: Vec::new(),
        };
        root.fill(parsed(file)?, &folder)?;
        Ok(root)
    }

    fn fill(&mut self, items: Vec<Item>, folder: &Path) -> Result<(), String> {
        for item in items {
            if attributes(&item).iter().any(is_test) {
                continue;
            }
            if let Item::Mod(module) = &item {
                let name = module.ident.to_string();
                let mut path = self.path.clone();
                path.push(name.clone());
                let is_public = self.is_public && is_public(&module.vis);
                let mut child = Self { name, path, is_public, items: Vec::new(), modules: Vec::new() };
                let inside = folder.join(&child.name);
                let items = match &module.content {
                    Some((_, items)) => items.clone(),
                    None => parsed(&module_file(folder, &child.name)?)?,
                };
                child.fill(items, &inside)?;
                self.modules.push(child);
            }
            self.items.push(item);
        }
        Ok(())
    }

    /// What a path means that is written in this module.
    pub(super) fn meaning<'a>(&'a self, root: &'a Self, path: &[String], depth: u8) -> Option<Meaning<'a>> {
        let (first, rest) = path.split_first()?;
        if depth == 0 {
            return None;
        }
        let start = match first.as_str() {
            "crate" => Meaning::Module(root),
            "self" => Meaning::Module(self),
            "super" => Meaning::Module(root.descend(self.path.split_last()?.1)?),
            name => self.named(root, name, depth)?,
        };
        match (start, rest) {
            (start, []) => Some(start),
            (Meaning::Module(module), rest) => module.meaning(root, rest, depth - 1),
            (Meaning::Item(..), _) => None,
        }
    }

    fn named<'a>(&'a self, root: &'a Self, name: &str, depth: u8) -> Option<Meaning<'a>> {
        if let Some(module) = self.modules.iter().find(|module| module.name == name) {
            return Some(Meaning::Module(module));
        }
        if let Some(item) = self.items.iter().find(|item| name_of(item).is_some_and(|own| own == name)) {
            return Some(Meaning::Item(self, item));
        }
        self.items.iter().find_map(|item| {
            let Item::Use(item) = item else { return None };
            imports(&item.tree).into_iter().find_map(|import| match &import.name {
                Some(own) if own == name => self.meaning(root, &import.path, depth - 1),
                Some(_) => None,
                None => match self.meaning(root, &import.path, depth - 1)? {
                    Meaning::Module(module) if module.path != self.path => {
                        module.named(root, name, depth - 1)
                    }
                    _ => None,
                },
            })
        })
    }

    fn descend(&self, path: &[String]) -> Option<&Self> {
        path.iter().try_fold(self, |at, name| at.modules.iter().find(|module| module.name == *name))
    }

    /// `name` of this module, from the crate's name on.
    pub(super) fn under(&self, root: &str, name: &str) -> String {
        let path = std::iter::once(root).chain(self.path.iter().map(String::as_str)).chain([name]);
        path.collect::<Vec<_>>().join("::")
    }

    /// This module and all below it.
    pub(super) fn all(&self) -> Vec<&Self> {
        std::iter::once(self).chain(self.modules.iter().flat_map(Self::all)).collect()
    }
}

/// One name that a `use` brings, or all of them.
pub(super) struct Import {
    pub(super) name: Option<String>,
    pub(super) path: Vec<String>,
}

/// The names of a `use`, one by one.
pub(super) fn imports(tree: &UseTree) -> Vec<Import> {
    match tree {
        UseTree::Path(path) => {
            let mut inner = imports(&path.tree);
            for import in &mut inner {
                import.path.insert(0, path.ident.to_string());
                // `use a::{self}` brings `a`.
                if import.path.len() > 1 && import.path.last().is_some_and(|last| last == "self") {
                    import.path.pop();
                    if import.name.as_deref() == Some("self") {
                        import.name = import.path.last().cloned();
                    }
                }
            }
            inner
        }
        UseTree::Name(name) => {
            let name = name.ident.to_string();
            vec![Import { name: Some(name.clone()), path: vec![name] }]
        }
        UseTree::Rename(rename) => {
            vec![Import { name: Some(rename.rename.to_string()), path: vec![rename.ident.to_string()] }]
        }
        UseTree::Glob(_) => vec![Import { name: None, path: Vec::new() }],
        UseTree::Group(group) => group.items.iter().flat_map(imports).collect(),
    }
}

fn parsed(file: &Path) -> Result<Vec<Item>, String> {
    let text =
        fs::read_to_string(file).map_err(|why| format!("{} cannot be read: {why}.", file.display()))?;
    let file = syn::parse_file(&text).map_err(|why| format!("{} is no Rust: {why}.", file.display()))?;
    Ok(file.items)
}

fn module_file(folder: &Path, name: &str) -> Result<PathBuf, String> {
    let files = [folder.join(format!("{name}.rs")), folder.join(name).join("mod.rs")];
    let missing = || format!("The module {name} has no file in {}.", folder.display());
    files.into_iter().find(|file| file.is_file()).ok_or_else(missing)
}

pub(super) fn is_public(visibility: &Visibility) -> bool {
    matches!(visibility, Visibility::Public(_))
}

fn is_test(attribute: &Attribute) -> bool {
    attribute.path().is_ident("cfg") && attribute.meta.to_token_stream().to_string().contains("(test)")
}

/// The name of an item that another one can use.
pub(super) fn name_of(item: &Item) -> Option<String> {
    let name = match item {
        Item::Const(item) => &item.ident,
        Item::Enum(item) => &item.ident,
        Item::Fn(item) => &item.sig.ident,
        Item::Static(item) => &item.ident,
        Item::Struct(item) => &item.ident,
        Item::Trait(item) => &item.ident,
        Item::TraitAlias(item) => &item.ident,
        Item::Type(item) => &item.ident,
        Item::Union(item) => &item.ident,
        _ => return None,
    };
    Some(name.to_string())
}

pub(super) fn visibility(item: &Item) -> Option<&Visibility> {
    match item {
        Item::Const(item) => Some(&item.vis),
        Item::Enum(item) => Some(&item.vis),
        Item::ExternCrate(item) => Some(&item.vis),
        Item::Fn(item) => Some(&item.vis),
        Item::Mod(item) => Some(&item.vis),
        Item::Static(item) => Some(&item.vis),
        Item::Struct(item) => Some(&item.vis),
        Item::Trait(item) => Some(&item.vis),
        Item::TraitAlias(item) => Some(&item.vis),
        Item::Type(item) => Some(&item.vis),
        Item::Union(item) => Some(&item.vis),
        Item::Use(item) => Some(&item.vis),
        _ => None,
    }
}

pub(super) fn attributes(item: &Item) -> &[Attribute] {
    match item {
        Item::Const(item) => &item.attrs,
        Item::Enum(item) => &item.attrs,
        Item::ExternCrate(item) => &item.attrs,
        Item::Fn(item) => &item.attrs,
        Item::Impl(item) => &item.attrs,
        Item::Macro(item) => &item.attrs,
        Item::Mod(item) => &item.attrs,
        Item::Static(item) => &item.attrs,
        Item::Struct(item) => &item.attrs,
        Item::Trait(item) => &item.attrs,
        Item::TraitAlias(item) => &item.attrs,
        Item::Type(item) => &item.attrs,
        Item::Union(item) => &item.attrs,
        Item::Use(item) => &item.attrs,
        _ => &[],
    }
}
