//! The C library as a C programmer meets it: the header, the exports, programs in C.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test may stop at what is not there")]
#![expect(clippy::indexing_slicing, reason = "a test may stop at what is not there")]

mod coverage;
mod exports;
mod header;
mod hostile;
#[cfg(feature = "job")]
mod job;
mod layout;
mod names;
mod program;
mod programs;
mod prototype;
mod readme;
mod values;

use std::fs;

/// Rewrites what is committed instead of comparing with it.
fn compare(path: &str, generated: &str) {
    let path = header::root().join(path);
    if std::env::var_os("HILUM_BLESS").is_some() {
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(&path, generated).unwrap();
    }
    let committed = fs::read_to_string(&path).unwrap_or_default();
    let differs = committed.lines().zip(generated.lines()).find(|(old, new)| old != new);
    assert!(
        committed == generated,
        "{} is not what the sources say (first difference: {differs:?}); \
         HILUM_BLESS=1 cargo test -p hilum-c --test c rewrites it",
        path.display()
    );
}

#[test]
fn the_header_is_up_to_date() {
    compare("include/hilum.h", &header::header());
}
