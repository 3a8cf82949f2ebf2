//! An item as one line.

use quote::ToTokens;
use syn::{Attribute, Field, Fields, ImplItem, Item, ItemImpl, TraitItem, Type, Variant, parse_quote};

use super::modules::is_public;

/// What a caller sees of an attribute: documentation and lints are not the API.
pub(super) const KEPT: [&str; 6] = ["cfg", "cfg_attr", "deprecated", "derive", "non_exhaustive", "repr"];

/// How a function is compiled is nothing that a caller sees.
fn is_kept(attribute: &Attribute) -> bool {
    KEPT.iter().any(|name| attribute.path().is_ident(name)) && !tokens(attribute).ends_with("inline)]")
}

/// `#[non_exhaustive] `
pub(super) fn attributes(attributes: &[Attribute]) -> String {
    attributes.iter().filter(|own| is_kept(own)).fold(String::new(), |line, kept| line + &tokens(kept) + " ")
}

/// An item without what is inside.
pub(super) fn item(item: &Item) -> String {
    let mut item = item.clone();
    let mut note = "";
    match &mut item {
        Item::Fn(item) => {
            item.attrs.retain(is_kept);
            *item.block = parse_quote!({});
        }
        Item::Struct(item) => {
            item.attrs.retain(is_kept);
            if item.fields.iter().any(|field| !is_public(&field.vis)) {
                note = " with private fields";
            }
            // Each public field has a line of its own.
            item.fields = Fields::Unit;
            item.semi_token = Some(parse_quote!(;));
        }
        Item::Enum(item) => {
            item.attrs.retain(is_kept);
            item.variants.clear();
        }
        Item::Trait(item) => {
            item.attrs.retain(is_kept);
            item.items.clear();
        }
        Item::Const(item) => {
            item.attrs.retain(is_kept);
            *item.expr = parse_quote!(_);
        }
        Item::Type(item) => item.attrs.retain(is_kept),
        other => return tokens(other),
    }
    format!("{}{note}", printed(item).trim_end_matches(" = _"))
}

pub(super) fn variant(variant: &Variant) -> String {
    let mut variant = variant.clone();
    variant.attrs.retain(is_kept);
    for field in &mut variant.fields {
        field.attrs.retain(is_kept);
    }
    let inside = printed(parse_quote!(enum E { #variant }));
    let inside = inside.strip_prefix("enum E {").and_then(|rest| rest.strip_suffix('}')).unwrap_or(&inside);
    inside.trim().trim_end_matches(',').to_owned()
}

pub(super) fn field(field: &Field, name: &str) -> String {
    format!("{}pub {name}: {}", attributes(&field.attrs), a_type(&field.ty))
}

pub(super) fn a_type(of: &Type) -> String {
    let line = printed(parse_quote!(type T = #of;));
    line.strip_prefix("type T = ").unwrap_or(&line).to_owned()
}

/// Its name and its line; one that has a default ends with `{}`.
pub(super) fn trait_item(item: &TraitItem) -> Option<(String, String)> {
    let mut item = item.clone();
    let name = match &mut item {
        TraitItem::Fn(item) => {
            item.attrs.retain(is_kept);
            if let Some(default) = &mut item.default {
                *default = parse_quote!({});
            }
            item.sig.ident.to_string()
        }
        TraitItem::Const(item) => {
            item.attrs.retain(is_kept);
            item.ident.to_string()
        }
        TraitItem::Type(item) => {
            item.attrs.retain(is_kept);
            item.ident.to_string()
        }
        _ => return None,
    };
    let line = inside(&printed_whole(parse_quote!(trait T { #item })));
    Some((name, line))
}

/// The name and the line of a public item of a type.
pub(super) fn impl_item(item: &ImplItem) -> Option<(String, String)> {
    match item {
        ImplItem::Fn(item) if is_public(&item.vis) => {
            let (attributes, visibility, signature) = (attributes(&item.attrs), &item.vis, &item.sig);
            let line = inside(&printed_whole(parse_quote!(impl T { #visibility #signature {} })));
            Some((item.sig.ident.to_string(), format!("{attributes}{}", line.trim_end_matches(" {}"))))
        }
        ImplItem::Const(item) if is_public(&item.vis) => {
            let line = format!("{}pub const {}: {}", attributes(&item.attrs), item.ident, a_type(&item.ty));
            Some((item.ident.to_string(), line))
        }
        ImplItem::Macro(item) => Some((tokens(&item.mac.path) + "!", tokens(&item.mac))),
        _ => None,
    }
}

/// `impl Sub for Temperature { type Output = TemperatureDifference; }`
pub(super) fn trait_impl(item: &ItemImpl) -> String {
    let mut item = item.clone();
    item.attrs.retain(is_kept);
    item.items.retain(|inside| matches!(inside, ImplItem::Type(_)));
    printed(Item::Impl(item))
}

/// `impl<T: Tank> Plan<T> `, when the name of the type does not say it all.
pub(super) fn header(item: &ItemImpl) -> String {
    let plain = matches!(&*item.self_ty, Type::Path(own) if own.path.segments.iter().all(|part| part.arguments.is_none()));
    if plain {
        return String::new();
    }
    let mut item = item.clone();
    item.attrs.clear();
    item.items.clear();
    printed(Item::Impl(item)) + " "
}

fn printed(item: Item) -> String {
    let line = printed_whole(item);
    line.trim_end_matches(" {}").trim_end_matches(';').to_owned()
}

fn printed_whole(item: Item) -> String {
    tidy(&prettyplease::unparse(&syn::File {
        shebang: None,
        frontmatter: None,
        attrs: Vec::new(),
        items: vec![item],
    }))
}

fn inside(block: &str) -> String {
    let inside = block.split_once('{').and_then(|(_, rest)| rest.strip_suffix('}')).unwrap_or(block);
    inside.trim().to_owned()
}

/// Tokens as close to how people write them as needs be.
pub(super) fn tokens(of: &impl ToTokens) -> String {
    let spaced = of.to_token_stream().to_string();
    [
        (" ,", ","),
        (" (", "("),
        (" :: ", "::"),
        ("# [", "#["),
        ("[ ", "["),
        (" ]", "]"),
        (" !", "!"),
        (" : ", ": "),
        ("$ ", "$"),
    ]
    .iter()
    .fold(tidy(&spaced), |line, (from, to)| line.replace(from, to))
}

fn tidy(text: &str) -> String {
    let line = text.split_whitespace().collect::<Vec<_>>().join(" ");
    line.replace("( ", "(").replace(", )", ")").replace(" )", ")").replace("< ", "<").replace(", >", ">")
}
