//! The lister against a crate whose public items were written down by hand.

use std::fs;

use super::list;

/// Lists a crate made of these files.
fn listed(test: &str, files: &[(&str, &str)]) -> Vec<String> {
    let folder = std::env::temp_dir().join(format!("hilum-api-{test}-{}", std::process::id()));
    for (name, text) in files {
        let file = folder.join(name);
        fs::create_dir_all(file.parent().unwrap()).unwrap();
        fs::write(file, text).unwrap();
    }
    let lines = list("my-crate", &folder.join("lib.rs"));
    fs::remove_dir_all(&folder).unwrap();
    lines.unwrap()
}

#[test]
fn items_fields_variants_and_methods() {
    let source = "
        /// Doc.
        #[derive(Clone, Copy)] #[must_use]
        pub struct Size { pub count: f64, mass: f64 }
        pub struct Pair(pub f64, f64);
        #[non_exhaustive]
        pub enum Fault { Low, High { by: f64 }, Other(u8) }
        impl Size {
            pub const ONE: Self = Size { count: 1.0, mass: 1.0 };
            #[must_use]
            pub fn count_in(self, mass: f64) -> f64 { self.count * mass }
            fn hidden(self) {}
            pub(crate) fn also_hidden(self) {}
        }
        pub const MOST: f64 = 1e30;
        pub fn long_name(first_argument: Option<&'static str>, second_argument: Result<f64, Fault>, third: [u8; 4]) -> f64 { 1.0 }
        fn private() {}
        #[cfg(test)] pub fn only_tested() {}
    ";
    assert_eq!(
        listed("items", &[("lib.rs", source)]),
        [
            "my_crate::Fault: #[non_exhaustive] pub enum Fault",
            "my_crate::Fault::High: High { by: f64 }",
            "my_crate::Fault::Low: Low",
            "my_crate::Fault::Other: Other(u8)",
            "my_crate::MOST: pub const MOST: f64",
            "my_crate::Pair: pub struct Pair with private fields",
            "my_crate::Pair::0: pub 0: f64",
            "my_crate::Size: #[derive(Clone, Copy)] pub struct Size with private fields",
            "my_crate::Size::ONE: pub const ONE: Self",
            "my_crate::Size::count: pub count: f64",
            "my_crate::Size::count_in: pub fn count_in(self, mass: f64) -> f64",
            "my_crate::long_name: pub fn long_name(first_argument: Option<&'static str>, \
             second_argument: Result<f64, Fault>, third: [u8; 4]) -> f64",
        ]
    );
}

#[test]
fn modules_and_what_they_pass_on() {
    let files = [
        (
            "lib.rs",
            "pub mod open; mod shut; pub use open::Seen; pub use shut::{Kept, inner as outer}; pub use core::f64::*;",
        ),
        ("open.rs", "pub struct Seen; pub(crate) struct Unseen; impl Unseen { pub fn no(&self) {} }"),
        (
            "shut/mod.rs",
            "pub struct Kept; pub struct Lost; pub mod inner; impl super::open::Seen { pub fn far(&self) {} }",
        ),
        ("shut/inner.rs", "use super::Kept; impl Kept { pub fn made() -> Kept { Kept } } pub fn f() {}"),
    ];
    assert_eq!(
        listed("modules", &files),
        [
            "my_crate::*: pub use core::f64::*",
            "my_crate::Kept: pub struct Kept",
            "my_crate::Kept: pub use shut::Kept",
            "my_crate::Kept::made: pub fn made() -> Kept",
            "my_crate::Seen: pub use open::Seen",
            "my_crate::open: pub mod open",
            "my_crate::open::Seen: pub struct Seen",
            "my_crate::open::Seen::far: pub fn far(&self)",
            "my_crate::outer: pub use shut::inner",
            "my_crate::outer::f: pub fn f()",
        ]
    );
}

#[test]
fn traits_and_their_impls() {
    let source = "
        pub trait Basis: Copy { const NAME: &'static str; type Unit; fn per(self) -> f64; fn twice(self) -> f64 { 2.0 } }
        trait Hidden {}
        pub struct Dose<B>(B);
        impl<B: Basis> Dose<B> { pub fn basis(&self) -> &B { &self.0 } }
        impl<B> Hidden for Dose<B> {}
        impl Dose<u8> { pub fn one(&self) {} }
        impl Dose<u16> { pub fn one(&self) {} }
        impl<B> core::ops::Neg for Dose<B> { type Output = f64; fn neg(self) -> f64 { 0.0 } }
        impl Basis for f64 { const NAME: &'static str = \"x\"; type Unit = u8; fn per(self) -> f64 { self } }
    ";
    assert_eq!(
        listed("traits", &[("lib.rs", source)]),
        [
            "f64: impl Basis for f64 { type Unit = u8; }",
            "my_crate::Basis: pub trait Basis: Copy",
            "my_crate::Basis::NAME: const NAME: &'static str;",
            "my_crate::Basis::Unit: type Unit;",
            "my_crate::Basis::per: fn per(self) -> f64;",
            "my_crate::Basis::twice: fn twice(self) -> f64 {}",
            "my_crate::Dose: impl<B> core::ops::Neg for Dose<B> { type Output = f64; }",
            "my_crate::Dose: pub struct Dose<B> with private fields",
            "my_crate::Dose::basis: impl<B: Basis> Dose<B> pub fn basis(&self) -> &B",
            "my_crate::Dose::one: impl Dose<u16> pub fn one(&self)",
            "my_crate::Dose::one: impl Dose<u8> pub fn one(&self)",
        ]
    );
}

#[test]
fn macro_calls_stand_for_what_they_make() {
    let source = "
        macro_rules! table { ($($t:tt)*) => {} }
        #[macro_export] macro_rules! public { () => {} }
        table! { base { mass; } /// Doc.
                 Mass, \"mass\", [P1 Z0] { 10 gram 1e-3, \"g\"; 20 pound 0.5, \"lb\"; } }
        mod shut { table!(unseen); table! { Made, checked; Hidden, checked(Made) } table! { pub enum Kind { Dry, Wet = \"wet\", } } impl Made { pub fn far() {} } }
        pub use shut::{Kind, Made};
        macro_rules! checked { ($name:ident) => {
            /// Doc.
            #[derive(Clone)] #[must_use] pub struct $name(f64);
            impl $name { pub fn get(self) -> f64 { let x = self.0; x } pub(crate) fn no() {} }
            $(pub const $more: f64 = 1.0;)*
        } }
        checked!(Ratio);
        impl Ratio { pub fn whole() {} }
    ";
    assert_eq!(
        listed("macros", &[("lib.rs", source)]),
        [
            "my_crate: checked! Ratio",
            "my_crate: table! Mass, \"mass\", [P1 Z0] { 10 gram 1e-3, \"g\"",
            "my_crate: table! Mass, \"mass\", [P1 Z0] { 20 pound 0.5, \"lb\"",
            "my_crate: table! base { mass",
            "my_crate::Kind: pub use shut::Kind",
            "my_crate::Kind: table! pub enum Kind { Dry",
            "my_crate::Kind: table! pub enum Kind { Wet = \"wet\"",
            "my_crate::Made: pub use shut::Made",
            "my_crate::Made: table! Made, checked",
            "my_crate::Made::far: pub fn far()",
            "my_crate::Ratio::whole: pub fn whole()",
            "my_crate::checked!: #[derive(Clone)] pub struct $name(f64)",
            "my_crate::checked!: impl $name",
            "my_crate::checked!: pub const $more: f64 = 1.0",
            "my_crate::checked!: pub fn get(self) -> f64",
            "my_crate::public: macro_rules!",
        ]
    );
}

#[test]
fn a_module_without_a_file_is_an_error() {
    let folder = std::env::temp_dir().join(format!("hilum-api-missing-{}", std::process::id()));
    fs::create_dir_all(&folder).unwrap();
    fs::write(folder.join("lib.rs"), "pub mod gone;").unwrap();
    let problem = list("my-crate", &folder.join("lib.rs")).err();
    fs::remove_dir_all(&folder).unwrap();
    assert!(problem.unwrap().starts_with("The module gone has no file in "));
}
