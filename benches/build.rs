//! Compiles the rivals in C, each file by itself, so that nothing of them is inlined into what calls them.

fn main() {
    for (file, level) in [("formula", 2), ("by_hand", 2), ("callers", 2), ("loops", 3), ("clock", 2)] {
        let path = format!("src/rival/{file}.c");
        println!("cargo:rerun-if-changed={path}");
        let mut build = cc::Build::new();
        build.file(path).opt_level(level).flag("-std=c11").include("../bindings/c/include");
        build.compile(file);
    }
}
