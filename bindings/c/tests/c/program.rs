//! Compiles C programs against the header and the library under test, and runs them.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// The folder of the header.
pub(crate) fn include() -> PathBuf {
    crate::header::root().join("include")
}

/// The folder of the C sources of the tests.
pub(crate) fn sources() -> PathBuf {
    crate::header::root().join("tests/c/programs")
}

/// A folder for what a test makes.
pub(crate) fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::create_dir_all(&folder).unwrap();
    folder
}

/// The library of this very build: it lies beside the test.
pub(crate) fn library(file: &str) -> PathBuf {
    std::env::current_exe().unwrap().with_file_name(file)
}

pub(crate) const WARNINGS: &[&str] = &["-Wall", "-Wextra", "-Wpedantic", "-Werror"];

/// What an executable is linked with besides the library: what Rust's standard library needs.
const SYSTEM: &[&str] = &["-lpthread", "-ldl", "-lm"];

/// One way to compile.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Way {
    pub(crate) compiler: &'static str,
    pub(crate) flags: &'static [&'static str],
}

pub(crate) const C99: Way = Way { compiler: "gcc", flags: &["-std=c99", "-x", "c"] };
pub(crate) const C11: Way = Way { compiler: "gcc", flags: &["-std=c11", "-x", "c"] };
pub(crate) const CXX17: Way = Way { compiler: "g++", flags: &["-std=c++17", "-x", "c++"] };
pub(crate) const SANITIZED: Way = Way {
    compiler: "gcc",
    flags: &[
        "-std=c11",
        "-g",
        "-fsanitize=address,undefined",
        "-fno-sanitize-recover=all",
        "-fno-omit-frame-pointer",
        "-x",
        "c",
    ],
};

impl Way {
    fn command(self, source: &Path) -> Command {
        let mut command = Command::new(self.compiler);
        command.args(self.flags).args(WARNINGS).arg("-I").arg(include()).arg(source).args(["-x", "none"]);
        command
    }

    /// Whether a source compiles, and what the compiler says.
    pub(crate) fn compiles(self, source: &Path) -> Result<(), String> {
        told(&self.command(source).args(["-c", "-o", "/dev/null"]).output().unwrap())
    }

    /// A program, linked with the static library.
    pub(crate) fn program(self, source: &Path, name: &str) -> PathBuf {
        let program = folder("programs").join(name);
        let library = library("libhilum_c.a");
        let mut command = self.command(source);
        command.arg(&library).args(SYSTEM).arg("-o").arg(&program);
        if let Err(why) = told(&command.output().unwrap()) {
            panic!("{} does not build with {self:?}:\n{why}", source.display());
        }
        program
    }
}

fn told(output: &Output) -> Result<(), String> {
    if output.status.success() { Ok(()) } else { Err(String::from_utf8_lossy(&output.stderr).into_owned()) }
}

/// Runs a program that must exit with 0, and gives what it prints.
pub(crate) fn run(program: &mut Command) -> String {
    let output = program.output().unwrap();
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(
        output.status.success(),
        "{program:?} ended with {}:\n{text}{}",
        output.status,
        String::from_utf8_lossy(&output.stderr)
    );
    text
}
