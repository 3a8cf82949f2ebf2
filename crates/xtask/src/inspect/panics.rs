//! Which symbols of a linked image say that it can panic?

use std::fs;
use std::path::Path;

use object::{Object, ObjectSymbol, SymbolKind};

/// Their mangled names; an image without any symbol is an error, since it would prove nothing.
pub(crate) fn symbols(image: &Path) -> Result<Vec<String>, String> {
    let unreadable = |why: String| format!("{} cannot be read: {why}.", image.display());
    let bytes = fs::read(image).map_err(|why| unreadable(why.to_string()))?;
    let file = object::File::parse(&*bytes).map_err(|why| unreadable(why.to_string()))?;
    // The name of a source file or a section says nothing about the code.
    let code =
        file.symbols().filter(|symbol| !matches!(symbol.kind(), SymbolKind::File | SymbolKind::Section));
    let names: Vec<&str> = code.filter_map(|symbol| symbol.name().ok()).collect();
    if !names.contains(&"_start") {
        return Err(format!("{} has no symbol _start: it was stripped, or is no image.", image.display()));
    }
    Ok(names.into_iter().filter(|name| can_panic(name)).map(str::to_owned).collect())
}

/// `core::panicking`, `panic_handler`, `rust_begin_unwind`, and what `core` calls when an index, a
/// slice, an unwrap or a division fails: all go through `core::panicking`.
fn can_panic(name: &str) -> bool {
    name.contains("panic") || name.contains("rust_begin_unwind")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_that_can_panic() {
        for name in [
            "_RNvNtCs1_4core9panicking9panic_fmt",
            "_ZN4core9panicking5panic17h0123456789abcdefE",
            "_RNvCs1_7___rustc17rust_begin_unwind",
        ] {
            assert!(can_panic(name), "{name}");
        }
        for name in ["_start", "_RNvNtCs1_4libm4math3pow", "memcpy", "__aeabi_dmul"] {
            assert!(!can_panic(name), "{name}");
        }
    }

    #[test]
    fn what_is_no_image_is_refused() {
        let manifest = Path::new(env!("CARGO_MANIFEST_DIR")).join("Cargo.toml");
        assert!(symbols(&manifest).is_err());
    }
}
