//! How often a plan asks for memory: one line of tab-separated columns for each job of the benches: what, allocations, bytes
//! in all, bytes at once.

use std::hint::black_box;

use allocation_counter::measure;

fn main() {
    for (what, job) in hilum_benches::jobs() {
        let counted = measure(|| drop(black_box(hilum_job::plan_json(black_box(&job)).ok())));
        println!("{what}\t{}\t{}\t{}", counted.count_total, counted.bytes_total, counted.bytes_max);
    }
}
