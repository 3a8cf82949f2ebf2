//! Does the firmware in examples/controller do what it should, on emulated processors?

mod budget;
mod build;
mod log;

use std::process::Command;

use crate::command::{self, cargo, target_folder};
use crate::step::Session;
use crate::steps::targets::{CORTEX_M, CORTEX_M_SOFTFP, CORTEX_M0, installed};
use crate::tools::needed;

/// A processor: its Rust target, the compiler's flags, and the emulated board.
pub(super) struct Processor {
    name: &'static str,
    target: &'static str,
    flags: &'static [&'static str],
    emulator: &'static [&'static str],
    arithmetic: Arithmetic,
}

/// Whose arithmetic of doubles an image holds.
#[derive(PartialEq, Eq)]
pub(super) enum Arithmetic {
    /// libgcc's: for the Cortex-M4 in assembly, and smaller by a quarter.
    Gcc,
    /// Rust's: for the Cortex-M0 libgcc's is out of C, and larger by 3 kB.
    Rust,
}

const M4F: Processor = Processor {
    name: "m4f",
    target: CORTEX_M,
    flags: &["-mcpu=cortex-m4", "-mthumb", "-mfpu=fpv4-sp-d16", "-mfloat-abi=hard"],
    emulator: &["-machine", "mps2-an386", "-cpu", "cortex-m4"],
    arithmetic: Arithmetic::Gcc,
};
/// The M4F's board, whose clock goes on by one nanosecond with every instruction.
const COUNTING: &[&str] = &["-machine", "mps2-an386", "-cpu", "cortex-m4", "-icount", "shift=0"];
/// The same processor, where the firmware passes doubles in the registers that compute with them.
const M4F_SOFTFP: Processor = Processor {
    name: "m4f-softfp",
    target: CORTEX_M_SOFTFP,
    flags: &["-mcpu=cortex-m4", "-mthumb", "-mfpu=fpv4-sp-d16", "-mfloat-abi=softfp"],
    ..M4F
};
const M0: Processor = Processor {
    name: "m0",
    target: CORTEX_M0,
    flags: &["-mcpu=cortex-m0", "-mthumb"],
    emulator: &["-machine", "microbit"],
    arithmetic: Arithmetic::Rust,
};

const ALL: [Processor; 3] = [M4F, M4F_SOFTFP, M0];

const FIRMWARE: &[&str] = &["startup.c", "board.c", "world.c", "controller.c", "main.c"];

pub(super) fn controller(session: &mut Session) -> Result<(), String> {
    needed(&[
        ("arm-none-eabi-gcc", "gcc-arm-none-eabi libnewlib-arm-none-eabi"),
        ("qemu-system-arm", "qemu-system-arm"),
    ])?;
    let mut logs = Vec::new();
    for processor in ALL {
        installed(processor.target)?;
        build::library(session, &processor)?;
        let image = build::image(session, &processor, "controller", FIRMWARE, &[build::SMALL])?;
        let text = emulated(&processor, &image)?;
        log::check(session, processor.name, &text);
        logs.push(text);
    }
    let same = logs.windows(2).all(|two| matches!(two, [one, other] if one == other));
    let same = if same { Ok(()) } else { Err("The logs differ.".to_owned()) };
    session.check("the M0 prints the log of the M4F, to the last digit", same);
    arithmetic(session)?;
    counted(session)?;
    for processor in [M4F, M4F_SOFTFP] {
        values(session, &processor)?;
    }
    budget::check(session, &ALL)
}

/// The arithmetic of doubles that is linked gives the bits of the machine that runs this.
fn arithmetic(session: &mut Session) -> Result<(), String> {
    let source = session.path("examples/controller/arithmetic.c");
    let here = target_folder()?.join("controller/arithmetic");
    let printing = |how: &str| format!("-Dprint_number(number)={how}");
    let mut gcc = Command::new("gcc");
    gcc.args(["-std=c11", "-O1", "-include", "stdio.h", &printing("(void)printf(\"%d\\n\", (int)(number))")]);
    command::run(gcc.arg(source).arg("-o").arg(&here))?;
    let wanted = command::output(&mut Command::new(&here))?;
    for processor in ALL {
        let sources = ["startup.c", "board.c", "arithmetic.c"];
        let how = printing("board_print_number(number)");
        let more = [build::SMALL, "-include", "board.h", &how];
        let image = build::image(session, &processor, "arithmetic", &sources, &more)?;
        let text = emulated(&processor, &image)?;
        let outcome = if text.trim() == wanted.trim() {
            Ok(())
        } else {
            Err(format!("It says {text}, and this machine {wanted}."))
        };
        session.check(
            format_args!("{}: doubles are calculated as here, to the last bit", processor.name),
            outcome,
        );
    }
    Ok(())
}

/// Instructions of one reading that the monitor takes up, once its window is full, on the M4F.
const MONITOR_UPDATE: u32 = 10_000;

/// No more after three thousand readings than after a hundred.
fn counted(session: &mut Session) -> Result<(), String> {
    let image = build::image(session, &M4F, "count", &["startup.c", "board.c", "count.c"], &[build::SMALL])?;
    let text = emulated(&Processor { emulator: COUNTING, ..M4F }, &image)?;
    let counts: Vec<u32> = text.split_whitespace().filter_map(|word| word.parse().ok()).collect();
    let outcome = match counts.as_slice() {
        [first, last] if first.abs_diff(*last) <= first / 50 && *last <= MONITOR_UPDATE => Ok(()),
        _ => Err(format!("The image says {text}; at most {MONITOR_UPDATE} are allowed, and both alike.")),
    };
    let what = format!("an update of the monitor takes {} instructions on the M4F", text.trim());
    session.check(what, outcome);
    Ok(())
}

/// Builds what the check values need, runs them, and tells how many there are.
pub(super) fn values_alone(session: &mut Session) -> Result<usize, String> {
    needed(&[
        ("arm-none-eabi-gcc", "gcc-arm-none-eabi libnewlib-arm-none-eabi"),
        ("qemu-system-arm", "qemu-system-arm"),
    ])?;
    installed(M4F.target)?;
    build::library(session, &M4F)?;
    let (text, count) = values_printed(session, &M4F)?;
    agreed(&text, count).map(|()| count)
}

fn agreed(text: &str, count: usize) -> Result<(), String> {
    let wanted = format!("{count} of {count} check values agree bit for bit");
    if text.trim() == wanted { Ok(()) } else { Err(format!("The image says:\n{text}")) }
}

/// Every check value, compiled into an image.
fn values(session: &mut Session, processor: &Processor) -> Result<(), String> {
    let (text, count) = values_printed(session, processor)?;
    let what = format!("on the {} {count} check values agree bit for bit", processor.name);
    session.check(what, agreed(&text, count));
    Ok(())
}

/// What the image prints, and how many cases it holds.
fn values_printed(session: &mut Session, processor: &Processor) -> Result<(String, usize), String> {
    // The test writes the cases as lines; the image has them as string literals.
    let mut test = cargo(&session.root, &["test", "--package", "hilum-c", "--test", "c"]);
    command::run(test.args(["--", "every_check_value_agrees"]))?;
    let folder = target_folder()?;
    let path = folder.join("tmp/values/values.txt");
    let lines = std::fs::read_to_string(&path).map_err(|why| format!("{}: {why}.", path.display()))?;
    let literals: Vec<String> = lines.lines().map(|line| format!("{line:?},\n")).collect();
    // Rust escapes quotes and tabs as C does; other characters stay as they are.
    build::write(&folder.join("controller/lines.inc"), &literals.concat())?;
    let sources =
        ["startup.c", "board.c", "newlib.c", "values.c", "../../bindings/c/tests/c/programs/values.c"];
    let image = build::image(session, processor, "values", &sources, build::WITH_NEWLIB)?;
    Ok((emulated(processor, &image)?, literals.len()))
}

/// What an image prints; it must end with exit code 0.
fn emulated(processor: &Processor, image: &std::path::Path) -> Result<String, String> {
    let mut emulator = Command::new("timeout");
    emulator.args(["120", "qemu-system-arm"]).args(processor.emulator);
    emulator.args(["-nographic", "-semihosting-config", "enable=on,target=native", "-kernel"]).arg(image);
    let output = emulator.output().map_err(|why| format!("QEMU cannot be run: {why}."))?;
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    // With `target=native` QEMU prints to its standard error.
    let text = if text.is_empty() { String::from_utf8_lossy(&output.stderr).into_owned() } else { text };
    if output.status.success() {
        Ok(text)
    } else {
        Err(format!("The image ended with {}:\n{text}", output.status))
    }
}
