//! Is the npm package right, and small?

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::bom;
use crate::command::{self, cargo, cargo_home, target_folder};
use crate::step::Session;
use crate::steps::targets::{WASM, installed};

pub(super) const PACKAGE: &str = "bindings/wasm/npm";

/// What is compiled of bindings/wasm for the package.
struct Entry {
    /// Its name and feature.
    name: &'static str,
    /// The level that makes it smallest.
    level: &'static str,
    /// What else the compiler is told.
    flags: &'static [&'static str],
    optimised: Optimised,
}

enum Optimised {
    ByCompiler,
    /// Of what asks for memory all crates and the allocator, of which the linker sees that freeing does nothing: a tenth less.
    ByLinker,
}

const ENTRIES: [Entry; 6] = [
    Entry { name: "formulas", level: "3", flags: VECTORS, optimised: Optimised::ByCompiler },
    Entry { name: "text", level: "2", flags: SHORT, optimised: Optimised::ByCompiler },
    Entry { name: "numbers", level: "3", flags: VECTORS, optimised: Optimised::ByCompiler },
    Entry { name: "after", level: "3", flags: VECTORS, optimised: Optimised::ByCompiler },
    Entry { name: "shed", level: "z", flags: &[], optimised: Optimised::ByLinker },
    Entry { name: "job", level: "z", flags: &[], optimised: Optimised::ByLinker },
];

const VECTORS: &[&str] = &["-Ctarget-feature=+simd128"];

/// Vectors where columns are laid down and taken up, and else what is short rather than fast.
const SHORT: &[&str] = &[
    "-Ctarget-feature=+simd128",
    "-Cno-vectorize-slp",
    "-Cllvm-args=-force-vector-interleave=1",
    "-Cllvm-args=-unroll-threshold=0",
    "-Cllvm-args=-inline-threshold=110",
];

pub(super) fn wasm(session: &mut Session) -> Result<(), String> {
    installed(WASM)?;
    packages(session, PACKAGE)?;
    let work = work()?;
    for entry in ENTRIES {
        built(session, &work.join(format!("{}.wasm", entry.name)), &entry)?;
    }
    describe(session, &work)?;
    let folder = work.to_string_lossy().into_owned();
    let outcome = command::run(&mut node(session, PACKAGE, &["build/build.mjs", &folder]));
    let outcome = outcome.and_then(|()| {
        let package = bom::PACKAGES.iter().find(|package| package.name == "hilum-npm");
        let to = session.path(PACKAGE).join("dist/hilum.cdx.json");
        package.map_or(Ok(()), |package| bom::write(&session.root, package, &to))
    });
    let is_built = outcome.is_ok();
    session.check("the npm package is built, with its types", outcome);
    if !is_built {
        return Ok(());
    }
    let outcome = command::run(&mut node(session, PACKAGE, &["build/size.mjs", &folder]));
    session.check("the npm package keeps its budget", outcome);
    let types = ["node_modules/typescript/bin/tsc", "-p", "test/types"];
    let outcome = command::run(&mut node(session, PACKAGE, &types));
    session.check("what must compile does, and what must not does not", outcome);
    let tests = [
        "test/check_values",
        "test/calculators",
        "test/columns",
        "test/shed",
        "test/job",
        "test/leak",
        "test/packed",
    ];
    node_tests(session, PACKAGE, &tests.map(|name| format!("{name}.test.mjs")));
    Ok(())
}

/// The folder where the package's parts meet before they are one.
pub(super) fn work() -> Result<PathBuf, String> {
    Ok(target_folder()?.join("npm"))
}

/// One entry's wasm.
fn built(session: &Session, to: &Path, entry: &Entry) -> Result<(), String> {
    let build = ["build", "--quiet", "--profile", "wasm", "--package", "hilum-wasm", "--lib"];
    let mut build = cargo(&session.root, &build);
    build.args(["--target", WASM, "--features", entry.name]).env("CARGO_PROFILE_WASM_OPT_LEVEL", entry.level);
    let mut flags: Vec<String> = entry.flags.iter().map(|&flag| flag.to_owned()).collect();
    // Wherever it is built, the package is the same.
    flags.extend(
        cargo_home().map(|home| format!("--remap-path-prefix={}=", home.join("registry/src").display())),
    );
    if matches!(entry.optimised, Optimised::ByLinker) {
        flags.extend(["-Clinker-plugin-lto", "-Clink-arg=--lto-O3"].map(str::to_owned));
        build.env("CARGO_PROFILE_WASM_LTO", "off");
    }
    build.env("CARGO_ENCODED_RUSTFLAGS", flags.join("\u{1f}"));
    command::run(&mut build)?;
    let wasm = target_folder()?.join(WASM).join("wasm").join("hilum_wasm.wasm");
    let unwritable = |why| format!("{} cannot be written: {why}.", to.display());
    to.parent().map_or(Ok(()), fs::create_dir_all).map_err(unwritable)?;
    fs::copy(wasm, to).map_err(unwritable).map(|_| ())
}

/// What the package is generated from, and what it is compared with.
fn describe(session: &Session, work: &Path) -> Result<(), String> {
    let run =
        ["run", "--quiet", "--package", "hilum-wasm", "--features", "describe", "--bin", "describe", "--"];
    let write = |arguments: &[&str], name: &str| {
        let text = command::output(cargo(&session.root, &run).args(arguments))?;
        let path = work.join(name);
        fs::write(&path, text).map_err(|why| format!("{} cannot be written: {why}.", path.display()))
    };
    write(&[], "describe.json")?;
    write(&["vectors"], "vectors.txt")?;
    for (folder, word) in [("examples/jobs", "plan"), ("examples/runs", "account")] {
        let folder = session.path(folder);
        let unreadable = |why| format!("{} cannot be read: {why}.", folder.display());
        for document in fs::read_dir(&folder).map_err(unreadable)? {
            let document = document.map_err(unreadable)?;
            let name = document.file_name().to_string_lossy().into_owned();
            write(&[word, &document.path().to_string_lossy()], &format!("{word}_{name}"))?;
        }
    }
    Ok(())
}

/// Node in a folder of the repository.
pub(super) fn node(session: &Session, folder: &str, arguments: &[&str]) -> Command {
    let mut node = Command::new("node");
    node.args(arguments).current_dir(session.path(folder));
    node
}

/// Node's tests, counted one by one.
pub(super) fn node_tests(session: &mut Session, folder: &str, files: &[String]) {
    let reporter =
        format!("--test-reporter={}", session.path("bindings/wasm/npm/test/reporter.mjs").display());
    let mut tests = node(session, folder, &["--test", "--test-concurrency=1", &reporter]);
    if let Ok(work) = work() {
        tests.env("HILUM_WORK", work);
    }
    session.tests(tests.args(files));
}

/// What a package.json needs, exactly as its lock file says; installed anew only when that changed.
pub(super) fn packages(session: &Session, folder: &str) -> Result<(), String> {
    let version = command::output(Command::new("node").arg("--version")).unwrap_or_default();
    let major =
        version.trim().trim_start_matches('v').split('.').next().and_then(|major| major.parse::<u32>().ok());
    if major.is_none_or(|major| major < 20) {
        return Err(
            "Node 20 or later is needed (Debian: `apt-get install nodejs npm`, or nodejs.org).".into()
        );
    }
    let path = session.path(folder);
    let unreadable = |why| format!("{folder}/package-lock.json cannot be read: {why}.");
    let wanted = fs::read(path.join("package-lock.json")).map_err(unreadable)?;
    let stamp = path.join("node_modules/.installed-lock.json");
    if fs::read(&stamp).is_ok_and(|installed| installed == wanted) {
        return Ok(());
    }
    let install = ["ci", "--ignore-scripts", "--no-audit", "--no-fund"];
    command::run(Command::new("npm").args(install).current_dir(&path))
        .map_err(|why| format!("The packages of {folder} cannot be installed: {why}"))?;
    fs::write(&stamp, wanted).map_err(|why| format!("{} cannot be written: {why}.", stamp.display()))
}
