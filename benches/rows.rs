//! Each side of each row, measured by criterion.

use criterion::{Criterion, criterion_group, criterion_main};
use hilum_benches::{Row, rows};

fn all(criterion: &mut Criterion) {
    for Row { what, mut ours, rival, .. } in rows() {
        criterion.bench_function(&what, |bench| bench.iter(&mut ours));
        if let Some((name, mut rival)) = rival {
            criterion.bench_function(&format!("{what}: {name}"), |bench| bench.iter(&mut rival));
        }
    }
}

criterion_group!(benches, all);
criterion_main!(benches);
