//! Prints the smallest job that is planned here, for programs in other languages that measure the same.

fn main() {
    if let Some((_, job)) = hilum_benches::jobs().first() {
        println!("{job}");
    }
}
