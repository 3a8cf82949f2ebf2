//! What is in a package? A bill of materials as CycloneDX 1.6, from cargo's own tree and lock file.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::fs;
use std::path::Path;

use crate::command::{self, cargo};

/// A package that is shipped: its crate, with the features and the target that it is built with.
pub(crate) struct Package {
    pub(crate) name: &'static str,
    of: &'static str,
    features: &'static str,
    target: Option<&'static str>,
}

pub(crate) const PACKAGES: &[Package] = &[
    Package { name: "hilum-c", of: "hilum-c", features: "job", target: None },
    Package {
        name: "hilum-npm",
        of: "hilum-wasm",
        features: "text,numbers,job",
        target: Some("wasm32-unknown-unknown"),
    },
];

/// A line of the tree.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Crate {
    name: String,
    version: String,
    licence: String,
}

impl Crate {
    fn reference(&self) -> String {
        format!("pkg:cargo/{}@{}", self.name, self.version)
    }
}

/// Writes the bill of a package.
pub(crate) fn write(root: &Path, package: &Package, to: &Path) -> Result<(), String> {
    let mut tree =
        cargo(root, &["tree", "--locked", "--package", package.of, "--features", package.features]);
    tree.args(["--edges", "normal", "--prefix", "depth", "--no-dedupe", "--format", "{p}\t{l}"]);
    if let Some(target) = package.target {
        tree.args(["--target", target]);
    }
    let tree = command::output(&mut tree)?;
    let lock = fs::read_to_string(root.join("Cargo.lock"))
        .map_err(|why| format!("Cargo.lock cannot be read: {why}."))?;
    let text = bill(&tree, &sums(&lock))?;
    if let Some(folder) = to.parent() {
        fs::create_dir_all(folder).map_err(|why| format!("{} cannot be made: {why}.", folder.display()))?;
    }
    fs::write(to, text).map_err(|why| format!("{} cannot be written: {why}.", to.display()))
}

/// SHA-256 by name and version, out of the lock file.
fn sums(lock: &str) -> BTreeMap<(String, String), String> {
    let field = |entry: &str, name: &str| {
        entry.lines().find_map(|line| Some(line.strip_prefix(name)?.trim_matches([' ', '=', '"']).to_owned()))
    };
    lock.split("[[package]]")
        .filter_map(|entry| {
            Some(((field(entry, "name")?, field(entry, "version")?), field(entry, "checksum")?))
        })
        .collect()
}

/// Depth and crate of a line such as `2libm v0.2.16\tMIT`.
fn read(line: &str) -> Option<(usize, Crate)> {
    let digits = line.chars().take_while(char::is_ascii_digit).count();
    let (depth, rest) = line.split_at_checked(digits)?;
    let (package, licence) = rest.split_once('\t')?;
    let mut words = package.split(' ');
    let (name, version) = (words.next()?.to_owned(), words.next()?.trim_start_matches('v').to_owned());
    Some((
        depth.parse().ok()?,
        Crate { name, version, licence: licence.replace('/', " OR ").replace("  ", " ") },
    ))
}

fn bill(tree: &str, sums: &BTreeMap<(String, String), String>) -> Result<String, String> {
    let lines: Vec<(usize, Crate)> = tree.lines().filter_map(read).collect();
    let Some((_, root)) = lines.first() else { return Err("cargo tells no tree of dependencies.".into()) };
    let mut needs: BTreeMap<&Crate, BTreeSet<&Crate>> = BTreeMap::new();
    let mut above: Vec<&Crate> = Vec::new();
    for (depth, own) in &lines {
        above.truncate(*depth);
        if let Some(parent) = above.last() {
            needs.entry(parent).or_default().insert(own);
        }
        needs.entry(own).or_default();
        above.push(own);
    }
    let others = needs.keys().filter(|own| **own != root);
    let components: Vec<String> = others.map(|own| component(own, sums)).collect();
    let edges: Vec<String> = needs
        .iter()
        .map(|(own, on)| {
            let on: Vec<String> = on.iter().map(|on| format!("\"{}\"", on.reference())).collect();
            format!("    {{ \"ref\": \"{}\", \"dependsOn\": [{}] }}", own.reference(), on.join(", "))
        })
        .collect();
    Ok(format!(
        "{{\n  \"bomFormat\": \"CycloneDX\",\n  \"specVersion\": \"1.6\",\n  \"version\": 1,\n  \"metadata\": {{ \"component\": {} }},\n  \"components\": [\n    {}\n  ],\n  \"dependencies\": [\n{}\n  ]\n}}\n",
        component(root, sums),
        components.join(",\n    "),
        edges.join(",\n")
    ))
}

fn component(own: &Crate, sums: &BTreeMap<(String, String), String>) -> String {
    let mut text = format!(
        "{{ \"type\": \"library\", \"bom-ref\": \"{0}\", \"name\": \"{1}\", \"version\": \"{2}\", \"purl\": \"{0}\", \"licenses\": [{{ \"expression\": \"{3}\" }}]",
        own.reference(),
        own.name,
        own.version,
        own.licence
    );
    if let Some(sum) = sums.get(&(own.name.clone(), own.version.clone())) {
        let _ = write!(text, ", \"hashes\": [{{ \"alg\": \"SHA-256\", \"content\": \"{sum}\" }}]");
    }
    text + " }"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tree_becomes_components_and_edges() {
        let tree = "0hilum-c v0.1.0 (/somewhere)\tMIT\n1hilum v0.1.0 (/else)\tMIT\n2libm v0.2.16\tMIT/Apache-2.0\n1memchr v2.8.0\tUnlicense OR MIT\n";
        let lock =
            "[[package]]\nname = \"libm\"\nversion = \"0.2.16\"\nsource = \"registry\"\nchecksum = \"abc\"\n";
        let text = bill(tree, &sums(lock)).unwrap();
        assert!(text.contains("{ \"ref\": \"pkg:cargo/hilum-c@0.1.0\", \"dependsOn\": [\"pkg:cargo/hilum@0.1.0\", \"pkg:cargo/memchr@2.8.0\"] }"), "{text}");
        assert!(text.contains("\"expression\": \"MIT OR Apache-2.0\" }], \"hashes\": [{ \"alg\": \"SHA-256\", \"content\": \"abc\" }]"), "{text}");
        assert_eq!(text.matches("\"bom-ref\"").count(), 4);
    }
}
