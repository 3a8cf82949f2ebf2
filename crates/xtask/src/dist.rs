//! `cargo xtask dist`: installs what people use without cargo.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::bom;
use crate::command::{self, cargo, target_folder};

const HELP: &str = "Usage: cargo xtask dist c --prefix DIR
  Installs the C library under DIR: header, static and shared library, pkg-config file, CMake package.";

/// The words after `dist`.
pub(crate) fn run(root: &Path, words: &[&str]) -> Result<(), String> {
    match words {
        ["c", "--prefix", prefix] => c(root, &PathBuf::from(prefix)).map(|()| println!("{prefix}")),
        _ => Err(HELP.into()),
    }
}

/// Version of the package, and what a static library is linked with besides.
struct Release {
    version: String,
    system: Vec<String>,
}

/// Installs the C library under a prefix.
pub(crate) fn c(root: &Path, prefix: &Path) -> Result<(), String> {
    let release = build(root)?;
    let built = target_folder()?.join("release");
    let from = root.join("bindings/c");
    let full = format!("libhilum.so.{}", release.version);
    copy(&from.join("include/hilum.h"), &prefix.join("include/hilum.h"))?;
    copy(&built.join("libhilum_c.a"), &prefix.join("lib/libhilum.a"))?;
    copy(&built.join("libhilum_c.so"), &prefix.join("lib").join(&full))?;
    link(&full, &prefix.join(format!("lib/libhilum.so.{}", release.part(0))))?;
    link(&format!("libhilum.so.{}", release.part(0)), &prefix.join("lib/libhilum.so"))?;
    for (template, to) in [
        ("hilum.pc.in", "lib/pkgconfig/hilum.pc"),
        ("hilumConfig.cmake.in", "lib/cmake/hilum/hilumConfig.cmake"),
        ("hilumConfigVersion.cmake.in", "lib/cmake/hilum/hilumConfigVersion.cmake"),
    ] {
        let text = read(&from.join("packaging").join(template))?;
        write(&prefix.join(to), &release.filled(&text))?;
    }
    if let Some(package) = bom::PACKAGES.iter().find(|package| package.name == "hilum-c") {
        bom::write(root, package, &prefix.join("share/doc/hilum/hilum.cdx.json"))?;
    }
    copy(&from.join("README.md"), &prefix.join("share/doc/hilum/README.md"))?;
    copy(&root.join("LICENSE"), &prefix.join("share/doc/hilum/LICENSE"))
}

impl Release {
    fn part(&self, index: usize) -> &str {
        self.version.split('.').nth(index).unwrap_or("0")
    }

    fn filled(&self, template: &str) -> String {
        let bare = self.system.iter().map(|library| library.trim_start_matches("-l"));
        template
            .replace("@VERSION@", &self.version)
            .replace("@MAJOR@", self.part(0))
            .replace("@MINOR@", self.part(1))
            .replace("@SYSTEM@", &self.system.join(" "))
            .replace("@SYSTEM_LIST@", &bare.collect::<Vec<_>>().join(";"))
    }
}

/// Builds both libraries, and hears from the compiler what the static one needs.
fn build(root: &Path) -> Result<Release, String> {
    let id = command::output(&mut cargo(root, &["pkgid", "--package", "hilum-c"]))?;
    let version = id.trim().rsplit(['#', '@']).next().unwrap_or_default().to_owned();
    let mut build = cargo(root, &["rustc", "--release", "--package", "hilum-c", "--features", "job"]);
    build.args(["--lib", "--crate-type", "staticlib,cdylib", "--", "--print", "native-static-libs"]);
    let system = native(&mut build)?;
    Ok(Release { version, system })
}

/// `note: native-static-libs: -lgcc_s -lc`, on the compiler's standard error.
fn native(build: &mut Command) -> Result<Vec<String>, String> {
    println!("$ {}", command::shown(build));
    let output = build.output().map_err(|why| format!("cargo cannot be run: {why}."))?;
    let said = String::from_utf8_lossy(&output.stderr);
    let libraries = said.lines().find_map(|line| line.split_once("native-static-libs: "));
    let (_, libraries) = libraries.ok_or_else(|| format!("The libraries do not build:\n{said}"))?;
    Ok(libraries.split_whitespace().map(str::to_owned).collect())
}

fn read(path: &Path) -> Result<String, String> {
    fs::read_to_string(path).map_err(|why| format!("{} cannot be read: {why}.", path.display()))
}

fn folder_of(path: &Path) -> Result<(), String> {
    path.parent()
        .map_or(Ok(()), fs::create_dir_all)
        .map_err(|why| format!("The folder of {} cannot be made: {why}.", path.display()))
}

fn write(path: &Path, text: &str) -> Result<(), String> {
    folder_of(path)?;
    fs::write(path, text).map_err(|why| format!("{} cannot be written: {why}.", path.display()))
}

fn copy(from: &Path, to: &Path) -> Result<(), String> {
    folder_of(to)?;
    fs::copy(from, to)
        .map(|_| ())
        .map_err(|why| format!("{} cannot be copied to {}: {why}.", from.display(), to.display()))
}

/// A symbolic link beside what it names.
fn link(name: &str, at: &Path) -> Result<(), String> {
    folder_of(at)?;
    let _ = fs::remove_file(at);
    #[cfg(unix)]
    let made = std::os::unix::fs::symlink(name, at);
    #[cfg(not(unix))]
    let made = at.parent().map_or(Ok(0), |folder| fs::copy(folder.join(name), at)).map(|_| ());
    made.map_err(|why| format!("{} cannot be linked: {why}.", at.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn templates_are_filled() {
        let release = Release { version: "0.3.1".into(), system: vec!["-lm".into(), "-lc".into()] };
        let text = "@VERSION@ @MAJOR@ @MINOR@ @SYSTEM@ @SYSTEM_LIST@";
        assert_eq!(release.filled(text), "0.3.1 0 3 -lm -lc m;c");
    }

    #[test]
    fn other_words_are_told_how() {
        assert!(run(Path::new("."), &["c"]).err().unwrap().starts_with("Usage: cargo xtask dist c"));
    }
}
