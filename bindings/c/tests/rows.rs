//! The functions for rows give, row by row, the bits and the statuses of the functions for one.

#![expect(clippy::indexing_slicing, reason = "a test may stop at what is not there")]
#![expect(clippy::too_many_lines, reason = "calls of C have many arguments")]

use std::fmt::Debug;
use std::mem::MaybeUninit;
use std::ptr;

use hilum_c::dose::{active as one_active, cells as one_cells, dry as one_dry, liquid as one_liquid};
use hilum_c::quantity::{amount, content, sown as one_sown, temperature};
use hilum_c::rows::{dose, living, pack, season, seed, text};
use hilum_c::viability::{keeping, survival, titre};
use hilum_c::{active, limit, pack as one_pack, seed as one_seed, text as one_text};

/// Good values, and what a table may hold instead.
const SPOILT: [f64; 9] = [1.0, 0.37, f64::NAN, 2.5, 0.0, -1.0, f64::INFINITY, 1e40, 1.7];
/// Under Miri only two columns are spoilt.
const N: usize = if cfg!(miri) { 9 * 9 } else { 9 * 9 * 9 };

/// A column around a good value; each column spoils another digit of the row's number in base 9.
fn column<T>(good: f64, digit: u32, make: fn(f64) -> T) -> Vec<T> {
    (0..N).map(|row| make(good * SPOILT[row / 9_usize.pow(digit) % 9])).collect()
}

/// A result of one row: its bits, or none.
fn single<T: Copy>(call: impl FnOnce(Option<&mut MaybeUninit<T>>) -> i32) -> (i32, Option<T>) {
    let mut out = MaybeUninit::uninit();
    let status = call(Some(&mut out));
    // SAFETY: a function that returns 0 has written its result.
    (status, (status == 0).then(|| unsafe { out.assume_init() }))
}

/// Runs both ways. `blank` is what a refused row shows.
fn same<T: Copy + PartialEq + Debug>(
    blank: T,
    rows: impl FnOnce(*mut T, *mut i32, usize) -> i32,
    one: impl Fn(usize, Option<&mut MaybeUninit<T>>) -> i32,
) {
    let mut out = vec![blank; N];
    let mut codes = vec![-1; N];
    assert_eq!(rows(out.as_mut_ptr(), codes.as_mut_ptr(), N), 0);
    let mut refused = 0;
    for row in 0..N {
        let (status, result) = single(|out| one(row, out));
        assert_eq!(codes[row], status, "row {row}");
        assert_eq!(out[row], result.unwrap_or(blank), "row {row}");
        refused += usize::from(status != 0);
    }
    assert!(refused > 0 && refused < N, "{refused}");
}

macro_rules! rows {
    ($($function:ident: $module:ident, $one:path, ($($good:literal $make:path),+) -> $blank:expr;)+) => {
        $(#[test]
        fn $function() {
            let mut digit = 0..;
            let columns = ($(column($good, digit.next().unwrap(), |value| $make(value)),)+);
            rows!(@same $module $function $one, columns, $blank; $($good),+);
        })+
    };
    (@same $module:ident $function:ident $one:path, $columns:ident, $blank:expr; $a:literal, $b:literal, $c:literal) => {
        let (a, b, c) = $columns;
        same(
            $blank,
            // SAFETY: as many as said.
            |out, codes, n| unsafe { $module::$function(a.as_ptr(), b.as_ptr(), c.as_ptr(), out, codes, n) },
            |row, out| $one(a[row], b[row], c[row], out),
        );
    };
    (@same $module:ident $function:ident $one:path, $columns:ident, $blank:expr; $a:literal, $b:literal) => {
        let (a, b) = $columns;
        same(
            $blank,
            // SAFETY: as many as said.
            |out, codes, n| unsafe { $module::$function(a.as_ptr(), b.as_ptr(), out, codes, n) },
            |row, out| $one(a[row], b[row], out),
        );
    };
}

macro_rules! makers {
    ($($name:ident = $module:ident::$type:ident.$field:ident;)+) => {
        $(fn $name($field: f64) -> $module::$type {
            $module::$type { $field }
        })+
    };
}

makers! {
    mass = amount::hilum_mass.kg;
    volume = amount::hilum_volume.m3;
    seeds = amount::hilum_seeds.seeds;
    area = amount::hilum_area.m2;
    time = amount::hilum_time.s;
    share = amount::hilum_share.one;
    celsius = temperature::hilum_temperature.celsius;
    size = one_sown::hilum_seed_size.seeds_per_kg;
    sown = one_sown::hilum_sown.seeds_per_m2;
    mass_per_area = one_sown::hilum_mass_per_area.kg_per_m2;
    content = content::hilum_active_content.kg_per_m3;
    per_volume = content::hilum_titre_per_volume.cfu_per_m3;
    per_mass = content::hilum_titre_per_mass.cfu_per_kg;
    rate = one_liquid::hilum_rate_per_mass.m3_per_kg;
    rate_per_seed = one_liquid::hilum_rate_per_seed.m3_per_seed;
    rate_per_area = one_liquid::hilum_rate_per_area.m3_per_m2;
    dry = one_dry::hilum_dry_per_mass.kg_per_kg;
    dry_per_seed = one_dry::hilum_dry_per_seed.kg_per_seed;
    dry_per_area = one_dry::hilum_dry_per_area.kg_per_m2;
    active_per_mass = one_active::hilum_active_per_mass.kg_per_kg;
    active_per_seed = one_active::hilum_active_per_seed.kg_per_seed;
    active_per_area = one_active::hilum_active_per_area.kg_per_m2;
    cells = one_cells::hilum_cells_per_seed.cfu_per_seed;
    coverage = one_pack::hilum_coverage.kg;
    sets = one_pack::hilum_sets_needed.sets;
    bushel = one_seed::hilum_bushel.kg;
    life = keeping::hilum_life.s;
}

rows! {
    hilum_seed_size_count_in_rows: seed, one_seed::hilum_seed_size_count_in, (6000.0 size, 9e3 mass) -> seeds(0.0);
    hilum_seed_size_mass_of_rows: seed, one_seed::hilum_seed_size_mass_of, (6000.0 size, 1.4e5 seeds) -> mass(0.0);
    hilum_sown_by_mass_rows: seed, one_seed::hilum_sown_by_mass, (6e-3 mass_per_area, 6000.0 size) -> sown(0.0);
    hilum_sown_area_rows: seed, one_seed::hilum_sown_area, (35.0 sown, 1.4e5 seeds) -> area(0.0);
    hilum_rate_per_mass_to_per_seed_rows: dose, one_liquid::hilum_rate_per_mass_to_per_seed, (3e-6 rate, 6000.0 size) -> rate_per_seed(0.0);
    hilum_rate_per_seed_to_per_mass_rows: dose, one_liquid::hilum_rate_per_seed_to_per_mass, (6e-10 rate_per_seed, 6000.0 size) -> rate(0.0);
    hilum_rate_per_seed_to_per_area_rows: dose, one_liquid::hilum_rate_per_seed_to_per_area, (6e-10 rate_per_seed, 35.0 sown) -> rate_per_area(0.0);
    hilum_rate_per_area_to_per_seed_rows: dose, one_liquid::hilum_rate_per_area_to_per_seed, (2e-8 rate_per_area, 35.0 sown) -> rate_per_seed(0.0);
    hilum_rate_per_mass_needed_rows: dose, one_liquid::hilum_rate_per_mass_needed, (3e-6 rate, 9e3 mass) -> volume(0.0);
    hilum_rate_per_seed_needed_rows: dose, one_liquid::hilum_rate_per_seed_needed, (6e-10 rate_per_seed, 1.4e5 seeds) -> volume(0.0);
    hilum_dry_per_mass_to_per_seed_rows: dose, one_dry::hilum_dry_per_mass_to_per_seed, (5e-3 dry, 6000.0 size) -> dry_per_seed(0.0);
    hilum_dry_per_seed_to_per_mass_rows: dose, one_dry::hilum_dry_per_seed_to_per_mass, (6e-7 dry_per_seed, 6000.0 size) -> dry(0.0);
    hilum_dry_per_seed_to_per_area_rows: dose, one_dry::hilum_dry_per_seed_to_per_area, (6e-7 dry_per_seed, 35.0 sown) -> dry_per_area(0.0);
    hilum_dry_per_area_to_per_seed_rows: dose, one_dry::hilum_dry_per_area_to_per_seed, (2e-5 dry_per_area, 35.0 sown) -> dry_per_seed(0.0);
    hilum_dry_per_mass_needed_rows: dose, one_dry::hilum_dry_per_mass_needed, (5e-3 dry, 9e3 mass) -> mass(0.0);
    hilum_dry_per_seed_needed_rows: dose, one_dry::hilum_dry_per_seed_needed, (6e-7 dry_per_seed, 1.4e5 seeds) -> mass(0.0);
    hilum_rate_per_mass_active_rows: dose, active::hilum_rate_per_mass_active, (3e-6 rate, 600.0 content) -> active_per_mass(0.0);
    hilum_dry_per_mass_active_rows: dose, active::hilum_dry_per_mass_active, (5e-3 dry, 0.5 share) -> active_per_mass(0.0);
    hilum_active_per_mass_to_per_seed_rows: dose, one_active::hilum_active_per_mass_to_per_seed, (1e-4 active_per_mass, 6000.0 size) -> active_per_seed(0.0);
    hilum_coverage_at_rows: pack, one_pack::hilum_coverage_at, (0.02 volume, 3e-6 rate) -> coverage(0.0);
    hilum_coverage_at_dry_rows: pack, one_pack::hilum_coverage_at_dry, (20.0 mass, 5e-3 dry) -> coverage(0.0);
    hilum_titre_per_volume_cells_rows: living, titre::hilum_titre_per_volume_cells, (1e15 per_volume, 6e-10 rate_per_seed, 0.5 share) -> cells(0.0);
    hilum_titre_per_mass_cells_rows: living, titre::hilum_titre_per_mass_cells, (1e12 per_mass, 6e-7 dry_per_seed, 0.5 share) -> cells(0.0);
}

#[test]
fn sets_of_orders_by_themselves() {
    let (masses, each) = (column(9e3, 0, mass), column(4e3, 1, coverage));
    same(
        sets(0.0),
        // SAFETY: as many as said.
        |out, codes, n| unsafe {
            pack::hilum_sets_needed_rows(masses.as_ptr(), each.as_ptr(), out, codes, n)
        },
        |row, out| {
            let order = one_pack::hilum_order_need { seed: masses[row], set: each[row] };
            // SAFETY: one.
            unsafe { one_pack::hilum_sets_needed_sum(&raw const order, 1, out) }
        },
    );
    let needed = column(2.5, 0, sets);
    same(
        0,
        // SAFETY: as many as said.
        |out, codes, n| unsafe { pack::hilum_sets_needed_whole_rows(needed.as_ptr(), out, codes, n) },
        |row, out| one_pack::hilum_sets_needed_whole(needed[row], out),
    );
}

#[test]
fn seasons() {
    let (limits, used) = (column(2e-5, 0, mass_per_area), column(5e-6, 1, mass_per_area));
    let (on_seed, sowings) = (column(2e-8, 2, active_per_seed), vec![sown(35.0); N]);
    let of = |row: usize| limit::hilum_season_limit { limit: limits[row], used: used[row] };
    let (l, u, s, w) = (limits.as_ptr(), used.as_ptr(), on_seed.as_ptr(), sowings.as_ptr());
    // SAFETY: as many as said, here and below.
    same(
        active_per_area(0.0),
        |out, codes, n| unsafe { season::hilum_season_limit_total_rows(l, u, s, w, out, codes, n) },
        |row, out| limit::hilum_season_limit_total(Some(&of(row)), on_seed[row], sowings[row], out),
    );
    same(
        0.0,
        |out, codes, n| unsafe { season::hilum_season_limit_share_rows(l, u, s, w, out, codes, n) },
        |row, out| limit::hilum_season_limit_share(Some(&of(row)), on_seed[row], sowings[row], out),
    );
    same(
        false,
        |out, codes, n| unsafe { season::hilum_season_limit_exceeded_rows(l, u, s, w, out, codes, n) },
        |row, out| limit::hilum_season_limit_exceeded(Some(&of(row)), on_seed[row], sowings[row], out),
    );
    same(
        sown(0.0),
        |out, codes, n| unsafe { season::hilum_season_limit_max_sowing_rows(l, u, s, out, codes, n) },
        |row, out| limit::hilum_season_limit_max_sowing(Some(&of(row)), on_seed[row], out),
    );
}

#[test]
fn texts_with_a_unit_and_a_bushel_of_each_row() {
    let (numbers, units, bushels) = (column(2.5, 0, |x| x), column(1.4e5, 1, seeds), column(27.0, 2, bushel));
    for unit in ["fl oz/unit", "fl oz/bu", "fl oz/cwt", "degF"] {
        let (of_unit, of_bushel) = (unit.contains("unit"), unit.contains("bu"));
        let units_column = if of_unit { units.as_ptr() } else { ptr::null() };
        let bushels_column = if of_bushel { bushels.as_ptr() } else { ptr::null() };
        let seed_unit = |row: usize| one_seed::hilum_seed_unit {
            is: one_seed::HILUM_UNIT_OF_SEEDS,
            seeds: units[row],
            mass: mass(0.0),
        };
        let (start, length) = (unit.as_ptr().cast(), unit.len());
        let mut base = vec![0.0; N];
        let mut codes = vec![-1; N];
        // SAFETY: as many as said.
        let status = unsafe {
            text::hilum_text_base_rows(
                numbers.as_ptr(),
                start,
                length,
                units_column,
                bushels_column,
                base.as_mut_ptr(),
                codes.as_mut_ptr(),
                N,
            )
        };
        assert_eq!(status, 0);
        let mut read = 0;
        for row in 0..N {
            let written = format!("{:?} {unit}", numbers[row]);
            let (unit, bushel) = (seed_unit(row), bushels[row]);
            let (unit, bushel) = (of_unit.then_some(&unit), of_bushel.then_some(&bushel));
            // SAFETY: as many bytes as said.
            let (status, one) = single(|out| unsafe {
                one_text::hilum_text_read(written.as_ptr().cast(), written.len(), unit, bushel, out)
            });
            if codes[row] == 0 {
                assert_eq!((status, one.unwrap().value.to_bits()), (0, base[row].to_bits()), "{written}");
                read += 1;
            } else {
                // A text has no NaN, and what it measures is looked at later.
                let later = one.is_some_and(|one| one.value.abs() > 1e30 || one.value < -273.15);
                assert!(status != 0 || later, "{written}: {}", codes[row]);
            }
        }
        assert!(read > N / 81 && read < N, "{read}");
        if unit == "degF" {
            continue;
        }
        same(
            0.0,
            // SAFETY: as many as said.
            |out, codes, n| unsafe {
                text::hilum_text_count_in_rows(
                    numbers.as_ptr(),
                    start,
                    length,
                    units_column,
                    bushels_column,
                    out,
                    codes,
                    n,
                )
            },
            |row, out| {
                let (unit, bushel) = (seed_unit(row), bushels[row]);
                let (unit, bushel) = (of_unit.then_some(&unit), of_bushel.then_some(&bushel));
                // SAFETY: as many bytes as said.
                unsafe { one_text::hilum_text_count_in(numbers[row], start, length, unit, bushel, out) }
            },
        );
    }
}

const DAY: f64 = 86_400.0;

fn curve(days: f64) -> survival::hilum_survival {
    survival::hilum_survival {
        curve: survival::HILUM_LOG_LINEAR,
        has_reference: 1,
        reduction: survival::hilum_decimal_reduction { s: days * DAY },
        fast: survival::hilum_decimal_reduction { s: 0.0 },
        fraction: share(0.0),
        scale: time(0.0),
        shape: 0.0,
        reference: celsius(10.0),
        z: amount::hilum_temperature_difference { kelvin: 20.0 },
    }
}

#[test]
fn cells_after_the_storage_of_each_row() {
    let curves = [curve(60.0), curve(-1.0), curve(15.0)];
    let (lasts, at) = (column(20.0 * DAY, 1, time), column(15.0, 0, celsius));
    // No period, one, two; a curve that is not there.
    let first: Vec<i32> = (0..=N).map(|row| i32::try_from(row / 3 * 3 + row % 3).unwrap() - 1).collect();
    let which: Vec<i32> = (0..N).map(|row| i32::try_from(row % 5).unwrap() - 1).collect();
    let kept = living::hilum_kept_rows {
        curves: curves.as_ptr(),
        n_curves: curves.len(),
        which: which.as_ptr(),
        first: first.as_ptr(),
        lasts: lasts.as_ptr(),
        at: at.as_ptr(),
        n_periods: lasts.len(),
    };
    let (treated, after, least) = (column(4e5, 2, cells), column(40.0 * DAY, 1, time), vec![cells(1e5); N]);
    let mut memory = vec![MaybeUninit::<hilum_c::call::hilum_work>::uninit(); 2];
    let work = memory.as_mut_ptr().cast();
    let one = |row: usize| -> Option<(survival::hilum_survival, Vec<survival::hilum_period>)> {
        let curve = *curves.get(usize::try_from(which[row]).ok()?)?;
        let periods = usize::try_from(first[row]).ok()?..usize::try_from(first[row + 1]).ok()?;
        let period =
            |at_row: usize| survival::hilum_period { lasts: lasts[at_row], at: at[at_row], known: 1 };
        Some((curve, periods.map(period).collect()))
    };
    same(
        cells(0.0),
        // SAFETY: as many as said.
        |out, codes, n| unsafe {
            living::hilum_survival_count_rows(
                Some(&kept),
                treated.as_ptr(),
                after.as_ptr(),
                work,
                2,
                out,
                codes,
                n,
            )
        },
        |row, out| {
            // HILUM_NO_SUCH_INDEX
            let Some((curve, storage)) = one(row) else { return 9 };
            let mut memory = vec![MaybeUninit::<hilum_c::call::hilum_work>::uninit(); storage.len()];
            let (n, work) = (storage.len(), memory.as_mut_ptr().cast());
            // SAFETY: as many as said.
            unsafe {
                survival::hilum_survival_count(
                    Some(&curve),
                    treated[row],
                    storage.as_ptr(),
                    work,
                    n,
                    after[row],
                    out,
                )
            }
        },
    );
    let mut is = vec![-1; N];
    let is_column: *mut i32 = is.as_mut_ptr();
    let crossing = |row: usize| {
        let Some((curve, storage)) = one(row) else { return (9, None) };
        let mut memory = vec![MaybeUninit::<hilum_c::call::hilum_work>::uninit(); storage.len()];
        let (n, work) = (storage.len(), memory.as_mut_ptr().cast());
        // SAFETY: as many as said.
        single(|out| unsafe {
            keeping::hilum_survival_crossing(
                Some(&curve),
                treated[row],
                least[row],
                storage.as_ptr(),
                work,
                n,
                out,
            )
        })
    };
    let mut ats = vec![time(0.0); N];
    let mut codes = vec![-1; N];
    // SAFETY: as many as said.
    let status = unsafe {
        living::hilum_survival_crossing_rows(
            Some(&kept),
            treated.as_ptr(),
            least.as_ptr(),
            work,
            2,
            ats.as_mut_ptr(),
            is_column,
            codes.as_mut_ptr(),
            N,
        )
    };
    assert_eq!(status, 0);
    let blank = keeping::hilum_crossing { at: time(0.0), is: 0 };
    for row in 0..N {
        let (status, one) = crossing(row);
        assert_eq!((codes[row], ats[row], is[row]), {
            let one = one.unwrap_or(blank);
            (status, one.at, one.is)
        });
    }
    assert!(codes.iter().filter(|code| **code == 0).count() > N / 40, "{codes:?}");

    // What does not fit the working memory is refused in its row.
    let (tight, mut out) = ([0, 2], [cells(7.0)]);
    let kept = living::hilum_kept_rows { which: [0].as_ptr(), first: tight.as_ptr(), ..kept };
    // SAFETY: one row.
    let refused = unsafe {
        living::hilum_survival_count_rows(
            Some(&kept),
            treated.as_ptr(),
            after.as_ptr(),
            work,
            1,
            out.as_mut_ptr(),
            codes.as_mut_ptr(),
            1,
        )
    };
    assert_eq!((refused, codes[0], out[0]), (0, 6, cells(0.0)));
}

#[test]
fn the_last_day_of_each_row() {
    let (on_seed, partners) = (column(120.0 * DAY, 0, life), column(90.0 * DAY, 1, life));
    let (at, is) = (
        column(100.0 * DAY, 2, time),
        (0..N).map(|row| i32::try_from(row % 5).unwrap()).collect::<Vec<i32>>(),
    );
    for stated in [(true, true, true), (true, false, false), (false, false, true), (false, false, false)] {
        let column =
            |there: bool, column: *const keeping::hilum_life| if there { column } else { ptr::null() };
        let (mut within, mut by, mut because) = (vec![time(0.0); N], vec![-1; N], vec![-1; N]);
        let mut codes = vec![-1; N];
        // SAFETY: as many as said.
        let status = unsafe {
            living::hilum_plant_by_of_rows(
                column(stated.0, on_seed.as_ptr()),
                column(stated.1, partners.as_ptr()),
                if stated.2 { at.as_ptr() } else { ptr::null() },
                if stated.2 { is.as_ptr() } else { ptr::null() },
                within.as_mut_ptr(),
                by.as_mut_ptr(),
                because.as_mut_ptr(),
                codes.as_mut_ptr(),
                N,
            )
        };
        assert_eq!(status, 0);
        for row in 0..N {
            let crossing = keeping::hilum_crossing { at: at[row], is: is[row] };
            let (status, one) = single(|out| {
                let partner = [partners[row]];
                let own = stated.0.then_some(&on_seed[row]);
                let crossing = stated.2.then_some(&crossing);
                // SAFETY: as many as said.
                unsafe {
                    keeping::hilum_plant_by_of(own, partner.as_ptr(), usize::from(stated.1), crossing, out)
                }
            });
            let blank = keeping::hilum_plant_by { within: time(0.0), is: 0, because: 0 };
            let one = one.unwrap_or(blank);
            assert_eq!(
                (codes[row], within[row], by[row], because[row]),
                (status, one.within, one.is, one.because)
            );
        }
    }
}

#[test]
#[cfg_attr(miri, ignore = "it only searches text, for minutes")]
fn every_function_for_rows_is_compared_here() {
    let exports = include_str!("../exports.txt");
    let here = include_str!("rows.rs");
    let missing: Vec<&str> =
        exports.lines().filter(|name| name.ends_with("_rows") && !here.contains(name)).collect();
    assert_eq!(missing, [""; 0]);
}
