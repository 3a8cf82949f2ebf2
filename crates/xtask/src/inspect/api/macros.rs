//! What can be said of macros without expanding them.
//!
//! A call is listed with what it is called with, statement by statement; a definition with the heads
//! of what it makes. Together they show most changes.

use proc_macro2::{Delimiter, TokenStream, TokenTree};
use syn::Item;

use super::modules::Module;
use super::print;

/// What a macro is called with, each statement behind the heads of the blocks around it.
pub(super) fn statements(input: &TokenStream) -> Vec<String> {
    let mut statements = Vec::new();
    split(input, "", ';', &mut statements);
    statements
}

fn split(input: &TokenStream, heads: &str, end: char, statements: &mut Vec<String>) {
    for Segment { head, block } in segments(input, end) {
        let line = format!("{heads}{}", print::tokens(&head));
        let Some(block) = block else {
            statements.push(line);
            continue;
        };
        // Fields and variants end with commas.
        let is_end = |tree: TokenTree| matches!(tree, TokenTree::Punct(mark) if mark.as_char() == ';');
        let end = if block.clone().into_iter().any(is_end) { ';' } else { ',' };
        split(&block, &format!("{line} {{ "), end, statements);
    }
}

/// The statements of the calls in a module that make an item of this name.
pub(super) fn statements_making(module: &Module, name: &str) -> Vec<String> {
    let calls = module.items.iter().filter_map(|item| match item {
        Item::Macro(call) if call.ident.is_none() => Some(call),
        _ => None,
    });
    calls
        .flat_map(|call| {
            let own = print::tokens(&call.mac.path);
            let statements = statements(&call.mac.tokens).into_iter();
            statements.filter(|line| makes(line, name)).map(move |line| format!("{own}! {line}"))
        })
        .collect()
}

/// The heads of what the crate's macros make: `hilum::checked!: pub fn get(self) -> $quantity`.
pub(super) fn definitions(root: &Module) -> Vec<String> {
    let mut lines = Vec::new();
    for item in root.all().iter().flat_map(|module| &module.items) {
        if let Item::Macro(item) = item
            && let Some(name) = &item.ident
        {
            let mut heads = Vec::new();
            made(&item.mac.tokens, &mut heads);
            lines.extend(heads.into_iter().map(|head| format!("{}::{name}!: {head}", root.name)));
        }
    }
    lines
}

fn made(tokens: &TokenStream, heads: &mut Vec<String>) {
    for Segment { head, block } in segments(tokens, ';') {
        if is_public(&head) {
            heads.push(print::tokens(&head));
        }
        if let Some(block) = block {
            made(&block, heads);
        }
        repeated(head, heads);
    }
}

/// `$( … )*` holds items, too.
fn repeated(head: TokenStream, heads: &mut Vec<String>) {
    let mut after_dollar = false;
    for tree in head {
        if let TokenTree::Group(group) = &tree
            && after_dollar
        {
            made(&group.stream(), heads);
        }
        after_dollar = matches!(&tree, TokenTree::Punct(mark) if mark.as_char() == '$');
    }
}

/// `pub` without a restriction, or an impl.
fn is_public(head: &TokenStream) -> bool {
    let mut trees = head.clone().into_iter().peekable();
    while let Some(tree) = trees.next() {
        let restricted = matches!(trees.peek(), Some(TokenTree::Group(group)) if group.delimiter() == Delimiter::Parenthesis);
        match tree {
            TokenTree::Ident(word) if word == "impl" => return true,
            TokenTree::Ident(word) if word == "pub" && !restricted => return true,
            _ => {}
        }
    }
    false
}

/// What stands before an end (`;`, or `,` inside a list) or a block.
struct Segment {
    head: TokenStream,
    block: Option<TokenStream>,
}

fn segments(input: &TokenStream, end: char) -> Vec<Segment> {
    let mut segments = Vec::new();
    let mut head = TokenStream::new();
    let mut trees = input.clone().into_iter().peekable();
    while let Some(tree) = trees.next() {
        match tree {
            TokenTree::Punct(mark) if mark.as_char() == end => {
                segments.push(Segment { head: std::mem::take(&mut head), block: None });
            }
            TokenTree::Punct(mark) if mark.as_char() == '#' && trees.peek().is_some_and(is_dropped) => {
                trees.next();
            }
            TokenTree::Group(group) if group.delimiter() == Delimiter::Brace => {
                segments.push(Segment { head: std::mem::take(&mut head), block: Some(group.stream()) });
            }
            tree => head.extend([tree]),
        }
    }
    if !head.is_empty() {
        segments.push(Segment { head, block: None });
    }
    segments
}

/// An attribute that callers do not see.
fn is_dropped(tree: &TokenTree) -> bool {
    let TokenTree::Group(group) = tree else { return false };
    let first = group.stream().into_iter().next();
    matches!(first, Some(TokenTree::Ident(name)) if !print::KEPT.iter().any(|kept| name == kept))
}

/// Whether a statement or a head around it begins with the name, as `Share(Ratio)` or `pub struct Job {`.
fn makes(statement: &str, name: &str) -> bool {
    statement.split(" { ").any(|part| {
        let mut words = part.split(|mark: char| !mark.is_alphanumeric() && mark != '_');
        words.find(|word| !["pub", "struct", "enum", "type", "const", "fn"].contains(word)) == Some(name)
    })
}
