//! Is a file too long to be read?

use std::fs;
use std::path::{Path, PathBuf};

use crate::step::Session;

const MOST: usize = 500;
const FOLDERS: [&str; 6] = ["crates", "tests", "examples", "bindings", "benches", ".ci"];
const SOURCES: [&str; 16] = [
    "rs", "toml", "c", "h", "cc", "cpp", "hpp", "cmake", "js", "mjs", "cjs", "ts", "py", "sh", "html", "css",
];
/// Written by programs, not read from top to bottom.
const GENERATED: [&str; 1] = ["bindings/c/include/hilum.h"];
const SKIPPED: [&str; 6] = ["target", "node_modules", "__pycache__", "pkg", "dist", "generated"];

pub(super) fn lengths(session: &mut Session) -> Result<(), String> {
    let long = too_long(&session.root)?;
    let outcome = if long.is_empty() {
        Ok(())
    } else {
        Err(format!("More than {MOST} lines, so split them: {}.", long.join(", ")))
    };
    session.check("lengths of the source files", outcome);
    Ok(())
}

/// The offenders, with their number of lines.
fn too_long(root: &Path) -> Result<Vec<String>, String> {
    let mut files = Vec::new();
    for folder in FOLDERS.map(|folder| root.join(folder)) {
        if folder.is_dir() {
            sources(&folder, &mut files)?;
        }
    }
    files.sort();
    let mut long = Vec::new();
    for file in files {
        let name = file.strip_prefix(root).unwrap_or(&file).to_string_lossy().replace('\\', "/");
        let bytes = fs::read(&file).map_err(|why| format!("{name} cannot be read: {why}."))?;
        let lines = String::from_utf8_lossy(&bytes).lines().count();
        if lines > MOST && !GENERATED.contains(&name.as_str()) {
            long.push(format!("{name} ({lines})"));
        }
    }
    Ok(long)
}

/// The source files of a folder and the folders in it.
pub(super) fn sources(folder: &Path, files: &mut Vec<PathBuf>) -> Result<(), String> {
    let unreadable = |why| format!("{} cannot be read: {why}.", folder.display());
    for entry in fs::read_dir(folder).map_err(unreadable)? {
        let entry = entry.map_err(unreadable)?;
        let (path, kind) = (entry.path(), entry.file_type().map_err(unreadable)?);
        if kind.is_dir() && !SKIPPED.iter().any(|name| entry.file_name() == *name) {
            sources(&path, files)?;
        } else if kind.is_file() && SOURCES.iter().any(|end| path.extension().is_some_and(|own| own == *end))
        {
            files.push(path);
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn write(root: &Path, name: &str, lines: usize) {
        let path = root.join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, "line\n".repeat(lines)).unwrap();
    }

    #[test]
    fn long_files_are_named_and_others_are_not() {
        let root = std::env::temp_dir().join(format!("hilum-lengths-{}", std::process::id()));
        write(&root, "crates/a/src/long.rs", 501);
        write(&root, "crates/a/src/right.rs", 500);
        write(&root, "bindings/js/deep/long.mjs", 502);
        write(&root, "bindings/js/node_modules/long.js", 900);
        write(&root, "bindings/c/include/hilum.h", 900);
        write(&root, "tests/data/cases.json", 900);
        write(&root, "elsewhere/long.rs", 900);
        let long = too_long(&root);
        fs::remove_dir_all(&root).unwrap();
        assert_eq!(long.unwrap(), ["bindings/js/deep/long.mjs (502)", "crates/a/src/long.rs (501)"]);
    }
}
