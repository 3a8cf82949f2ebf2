//! Metals whose soluble salts can kill living cells on the seed. Common practice; what a maker declares
//! comes before it, and compatibility is always a product's, never inferred from one constituent.

/// As a list of constituents names them.
const NAMES: [&str; 9] =
    ["molybdenum", "zinc", "iron", "copper", "manganese", "cobalt", "nickel", "silver", "mercury"];
/// What else their salts are called.
const SALTS: [&str; 9] =
    ["molybdate", "molybdic", "ferrous", "ferric", "cuprous", "cupric", "manganous", "cobaltous", "mercuric"];
/// Symbols, as the whole of a constituent.
const SYMBOLS: [&str; 9] = ["Mo", "Zn", "Fe", "Cu", "Mn", "Co", "Ni", "Ag", "Hg"];

/// Whether a constituent names a metal that can kill living cells near it: any of its words does, in any
/// letter case, or it is the metal's symbol and no other word (`"Mn"`, `"Zn²⁺"`).
///
/// ```
/// use hilum::viability::is_metal;
/// // Common practice: soluble metal salts next to living cells.
/// assert!(is_metal("Zinc sulphate") && is_metal("sodium molybdate") && is_metal("Mn"));
/// assert!(!is_metal("calcium carbonate") && !is_metal("co-formulant"));
/// ```
#[must_use]
pub fn is_metal(constituent: &str) -> bool {
    // Bytes do, and need no table of Unicode: no byte of a sign beyond ASCII is an ASCII letter.
    let words = || {
        let words = constituent.as_bytes().split(|byte| !byte.is_ascii_alphanumeric());
        words.filter(|word| !word.is_empty())
    };
    let is = |name: &str, word: &[u8]| word.eq_ignore_ascii_case(name.as_bytes());
    let symbol = |word: &[u8]| SYMBOLS.iter().any(|symbol| symbol.as_bytes() == word);
    words().any(|word| NAMES.iter().chain(&SALTS).any(|name| is(name, word)))
        || (words().count() == 1 && words().any(symbol))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_metal_is_a_word_of_its_own() {
        for named in [
            "zinc",
            "ZINC",
            "chelated iron (EDTA)",
            "manganese,copper",
            "Ferrous sulphate",
            " Cu ",
            "Zn²⁺",
            "\u{a0}Cu\u{3000}",
        ] {
            assert!(is_metal(named), "{named}");
        }
        for other in [
            "",
            "zincate",
            "environment",
            "ironwood",
            "boron",
            "co-formulant",
            "silvery clay",
            "fe",
            "Co blue",
            "²⁺",
        ] {
            assert!(!is_metal(other), "{other}");
        }
    }
}
