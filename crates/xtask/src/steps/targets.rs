//! Which crate compiles for which target, with which features.

use std::collections::BTreeMap;
use std::process::Command;

use crate::command::{self, cargo};
use crate::step::Session;

/// Cortex-M4F and M7F, the usual controllers.
pub(super) const CORTEX_M: &str = "thumbv7em-none-eabihf";
pub(super) const CORTEX_M_SOFTFP: &str = "thumbv7em-none-eabi";
pub(super) const CORTEX_M0: &str = "thumbv6m-none-eabi";
pub(super) const WASM: &str = "wasm32-unknown-unknown";

struct Promise {
    package: &'static str,
    /// Without default features, and with these.
    features: &'static [&'static [&'static str]],
    /// Besides the host.
    targets: &'static [&'static str],
}

/// Package by package: in one build, the features of one crate would hide what another one lacks.
const PROMISES: &[Promise] = &[
    Promise { package: "hilum", features: &[&[]], targets: &[WASM, CORTEX_M, CORTEX_M0] },
    Promise {
        package: "hilum-c",
        features: &[&["--features", "panic-handler"]],
        targets: &[CORTEX_M, CORTEX_M0],
    },
    Promise { package: "hilum-job", features: &[&[], &["--features", "schema"]], targets: &[WASM, CORTEX_M] },
];

pub(super) fn targets(session: &mut Session) -> Result<(), String> {
    let wanted = PROMISES.iter().flat_map(|promise| promise.targets);
    let libraries: BTreeMap<&str, _> = wanted.map(|target| (*target, installed(target))).collect();
    for promise in PROMISES {
        for features in promise.features {
            let check =
                [&["check", "--package", promise.package, "--no-default-features"], *features].concat();
            session.check_command(&mut cargo(&session.root, &check));
            for target in promise.targets {
                let mut command = cargo(&session.root, &check);
                command.args(["--target", *target]);
                match libraries.get(target) {
                    Some(Err(missing)) => session.check(command::shown(&command), Err(missing.clone())),
                    _ => session.check_command(&mut command),
                }
            }
        }
    }
    Ok(())
}

/// Makes sure that the standard library for a target is there.
pub(super) fn installed(target: &str) -> Result<(), String> {
    if command::output(Command::new("rustup").args(["target", "list", "--installed"]))
        .is_ok_and(|list| list.lines().any(|line| line.trim() == target))
    {
        return Ok(());
    }
    match command::run(Command::new("rustup").args(["target", "add", target])) {
        Ok(()) => Ok(()),
        // A toolchain without rustup may have it all the same.
        Err(_) if library_is_there(target) => Ok(()),
        Err(why) => Err(format!("The Rust target {target} is missing and cannot be added: {why}")),
    }
}

fn library_is_there(target: &str) -> bool {
    command::output(Command::new("rustc").args(["--print", "target-libdir", "--target", target]))
        .is_ok_and(|folder| std::path::Path::new(folder.trim()).is_dir())
}
