//! The library for a processor, and images linked with it.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::{Arithmetic, Processor};
use crate::command::{self, cargo, target_folder};
use crate::step::Session;

const PROFILE: &str = "controller";
/// Loops that copy stay loops: the start calls no memory function before the memory is set up.
const FLAGS: &[&str] = &[
    "-std=c11",
    "-Os",
    "-fno-tree-loop-distribute-patterns",
    "-Wall",
    "-Wextra",
    "-ffunction-sections",
    "-fdata-sections",
];
const LINK: &[&str] =
    &["-nostartfiles", "-Wl,--gc-sections", "-Wl,-z,noexecstack", "-Wl,--no-warn-rwx-segments", "-lm"];
/// The small C library that makers of microcontrollers link.
pub(super) const SMALL: &str = "--specs=nano.specs";
/// The cases of the check values and the C library's printf need more memory than the controller.
pub(super) const WITH_NEWLIB: &[&str] =
    &["-DLINES=\"lines.inc\"", "-Wl,--defsym=ram_size=128K", "--specs=nosys.specs", "-Wl,-w"];

pub(super) fn library(session: &Session, processor: &Processor) -> Result<(), String> {
    let mut build = cargo(&session.root, &["rustc", "--quiet", "--package", "hilum-c", "--lib"]);
    build.args(["--profile", PROFILE, "--features", "panic-handler", "--crate-type", "staticlib"]);
    command::run(build.args(["--target", processor.target]))?;
    let built = target_folder()?.join(processor.target).join(PROFILE).join("libhilum_c.a");
    let archive = archive(processor)?;
    write(&archive, "")?;
    fs::copy(&built, &archive).map_err(|why| format!("{} cannot be copied: {why}.", built.display()))?;
    if processor.arithmetic == Arithmetic::Gcc { without_builtins(&archive) } else { Ok(()) }
}

/// Takes out Rust's copy of what the C compiler brings along: arithmetic of doubles and of 64-bit numbers.
fn without_builtins(archive: &Path) -> Result<(), String> {
    let members = command::output(Command::new("arm-none-eabi-ar").arg("t").arg(archive))?;
    let builtins = members.lines().filter(|member| member.starts_with("compiler_builtins"));
    let mut ar = Command::new("arm-none-eabi-ar");
    command::run(ar.arg("d").arg(archive).args(builtins))
}

fn archive(processor: &Processor) -> Result<PathBuf, String> {
    Ok(target_folder()?.join(format!("controller/libhilum-{}.a", processor.name)))
}

/// An image out of sources in examples/controller.
pub(super) fn image(
    session: &Session,
    processor: &Processor,
    name: &str,
    sources: &[&str],
    more: &[&str],
) -> Result<PathBuf, String> {
    let here = session.path("examples/controller");
    let made = target_folder()?.join("controller");
    let image = made.join(format!("{name}-{}.elf", processor.name));
    fs::create_dir_all(&made).map_err(|why| format!("{} cannot be made: {why}.", made.display()))?;
    let mut gcc = Command::new("arm-none-eabi-gcc");
    gcc.args(processor.flags).args(FLAGS).current_dir(&here);
    gcc.arg("-I").arg(session.path("bindings/c/include")).arg("-I").arg(&here).arg("-I").arg(&made);
    gcc.args(sources).arg(archive(processor)?).args(LINK).args(["-T", "link.ld"]).args(more);
    command::run(gcc.arg("-o").arg(&image))?;
    Ok(image)
}

pub(super) fn write(path: &Path, text: &str) -> Result<(), String> {
    path.parent()
        .map_or(Ok(()), fs::create_dir_all)
        .and_then(|()| fs::write(path, text))
        .map_err(|why| format!("{} cannot be written: {why}.", path.display()))
}
