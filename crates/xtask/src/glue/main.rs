//! `glue WASM FOLDER NAME` writes, into the folder, the wasm and the JavaScript that calls it.
//!
//! wasm-bindgen's command line as a library, so that nothing is installed by hand and the version is the one
//! that Cargo.lock says.

use std::process::ExitCode;

use wasm_bindgen_cli_support::Bindgen;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [wasm, folder, name] = arguments.as_slice() else {
        eprintln!("Usage: glue WASM FOLDER NAME.");
        return ExitCode::FAILURE;
    };
    match write(wasm, folder, name) {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("{problem}");
            ExitCode::FAILURE
        }
    }
}

/// For a module that is handed its wasm: the package carries the bytes in the script, so that one file works
/// in browsers, bundlers and Node alike.
fn write(wasm: &str, folder: &str, name: &str) -> Result<(), String> {
    let mut bindgen = Bindgen::new();
    let told = bindgen.input_path(wasm).out_name(name).web(true).and_then(|bindgen| {
        bindgen.omit_default_module_path(true).typescript(true).remove_name_section(true).generate(folder)
    });
    told.map_err(|why| format!("The glue for {wasm} cannot be made: {why:#}."))
}
