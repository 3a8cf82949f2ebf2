//! Can a program in C use an installed copy of the library?

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::command::{self, target_folder};
use crate::dist;
use crate::step::Session;
use crate::tools::needed;

const SAYS: &str = "65.000 L with hilum ";

pub(super) fn installed(session: &mut Session) -> Result<(), String> {
    needed(&[("gcc", "gcc"), ("pkg-config", "pkg-config"), ("cmake", "cmake")])?;
    let work = target_folder()?.join("installed");
    let _ = fs::remove_dir_all(&work);
    let (prefix, empty) = (work.join("prefix"), work.join("empty"));
    fs::create_dir_all(&empty).map_err(|why| format!("{} cannot be made: {why}.", empty.display()))?;
    session.check("cargo xtask dist c", dist::c(&session.root, &prefix));
    session.check("the shared library's soname is libhilum.so.0", soname(&prefix));
    for (how, build) in WAYS {
        session.check(format_args!("a program builds with {how}, and runs"), build(session, &prefix, &work));
        let outcome = match build(session, &empty, &work) {
            Ok(()) => Err(format!("With {how} a program builds without an installed copy.")),
            Err(_) => Ok(()),
        };
        session.check(format_args!("with {how} it does not build without an installed copy"), outcome);
    }
    Ok(())
}

type Build = fn(&Session, &Path, &Path) -> Result<(), String>;

const WAYS: &[(&str, Build)] = &[
    ("plain flags", plain),
    ("plain flags, static", plain_static),
    ("pkg-config", pkg_config),
    ("pkg-config --static", pkg_config_static),
    ("find_package(hilum)", cmake),
];

fn source(session: &Session) -> PathBuf {
    session.path("bindings/c/tests/consumer/consumer.c")
}

/// Compiles and runs; the dynamic linker looks into the prefix.
fn built(session: &Session, prefix: &Path, work: &Path, flags: &[String]) -> Result<(), String> {
    let program = work.join("consumer");
    let _ = fs::remove_file(&program);
    let mut gcc = Command::new("gcc");
    gcc.args(["-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Werror"]);
    command::run(gcc.arg(source(session)).args(flags).arg("-o").arg(&program))?;
    says(&program, prefix)
}

fn says(program: &Path, prefix: &Path) -> Result<(), String> {
    let text = command::output(Command::new(program).env("LD_LIBRARY_PATH", prefix.join("lib")))?;
    if text.starts_with(SAYS) { Ok(()) } else { Err(format!("{} says \"{text}\".", program.display())) }
}

fn words(text: &str) -> Vec<String> {
    text.split_whitespace().map(str::to_owned).collect()
}

fn plain(session: &Session, prefix: &Path, work: &Path) -> Result<(), String> {
    let flags = words(&format!("-I{0}/include -L{0}/lib -lhilum", prefix.display()));
    built(session, prefix, work, &flags)
}

fn plain_static(session: &Session, prefix: &Path, work: &Path) -> Result<(), String> {
    let flags = words(&format!("-I{0}/include {0}/lib/libhilum.a -lpthread -ldl -lm", prefix.display()));
    built(session, &work.join("nowhere"), work, &flags)
}

fn asked(prefix: &Path, words_asked: &[&str]) -> Result<Vec<String>, String> {
    let mut asked = Command::new("pkg-config");
    asked.args(words_asked).arg("hilum").env("PKG_CONFIG_LIBDIR", prefix.join("lib/pkgconfig"));
    command::output(&mut asked).map(|text| words(&text))
}

fn pkg_config(session: &Session, prefix: &Path, work: &Path) -> Result<(), String> {
    built(session, prefix, work, &asked(prefix, &["--cflags", "--libs"])?)
}

fn pkg_config_static(session: &Session, prefix: &Path, work: &Path) -> Result<(), String> {
    let mut flags = asked(prefix, &["--static", "--cflags", "--libs"])?;
    flags.retain(|flag| flag != "-lhilum");
    flags.insert(0, format!("{}/lib/libhilum.a", prefix.display()));
    built(session, &work.join("nowhere"), work, &flags)
}

fn cmake(session: &Session, prefix: &Path, work: &Path) -> Result<(), String> {
    let build = work.join("cmake");
    let _ = fs::remove_dir_all(&build);
    let mut configure = Command::new("cmake");
    configure.arg("-S").arg(session.path("bindings/c/tests/consumer")).arg("-B").arg(&build);
    configure.arg(format!("-DCMAKE_PREFIX_PATH={}", prefix.display()));
    configure.arg("-DCMAKE_FIND_USE_CMAKE_SYSTEM_PATH=OFF");
    command::run(&mut configure)?;
    command::run(Command::new("cmake").arg("--build").arg(&build))?;
    says(&build.join("consumer"), prefix)?;
    says(&build.join("consumer_static"), &work.join("nowhere"))
}

fn soname(prefix: &Path) -> Result<(), String> {
    let text = command::output(Command::new("readelf").arg("-d").arg(prefix.join("lib/libhilum.so")))?;
    if text.contains("Library soname: [libhilum.so.0]") { Ok(()) } else { Err(format!("It is not:\n{text}")) }
}
