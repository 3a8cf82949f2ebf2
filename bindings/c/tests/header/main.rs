//! The committed header is what the sources say.
#![expect(clippy::unwrap_used, reason = "a test may stop at what is not there")]

mod write;

use std::fs;

/// Rewrites what is committed instead of comparing with it.
fn compare(path: &str, generated: &str) {
    let path = write::root().join(path);
    if std::env::var_os("HILUM_BLESS").is_some() {
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(&path, generated).unwrap();
    }
    let committed = fs::read_to_string(&path).unwrap_or_default();
    let differs = committed.lines().zip(generated.lines()).find(|(old, new)| old != new);
    assert!(
        committed == generated,
        "{} is not what the sources say (first difference: {differs:?}); \
         HILUM_BLESS=1 cargo test -p hilum-c --test header rewrites it",
        path.display()
    );
}

#[test]
fn the_header_is_up_to_date() {
    compare("include/hilum.h", &write::header());
}
