//! Structures have the same size, alignment and offsets on both sides.

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::fs;
use std::mem::{align_of, offset_of, size_of};

use hilum_c::{
    account, active, batch, dose, limit, mix, monitor, pack, quantity, rows, seed, text, treater, unit,
    viability,
};

use crate::header;
use crate::program::{C11, folder};
use crate::prototype::declared;

struct Layout {
    name: &'static str,
    size: usize,
    align: usize,
    offsets: &'static [(&'static str, usize)],
}

macro_rules! layouts {
    ($($structure:ty { $($field:ident)* })+) => {
        const LAYOUTS: &[Layout] = &[$(Layout {
            name: stringify!($structure),
            size: size_of::<$structure>(),
            align: align_of::<$structure>(),
            offsets: &[$((stringify!($field), offset_of!($structure, $field))),*],
        }),+];
    };
}

layouts! {
    unit::hilum_powers { length mass time temperature seeds cells }
    unit::hilum_word { text }
    unit::hilum_unit { factor number powers symbol ucum }
    quantity::amount::hilum_mass { kg }
    quantity::amount::hilum_volume { m3 }
    quantity::amount::hilum_seeds { seeds }
    quantity::amount::hilum_cells { cfu }
    quantity::amount::hilum_area { m2 }
    quantity::amount::hilum_time { s }
    quantity::amount::hilum_temperature_difference { kelvin }
    quantity::amount::hilum_share { one }
    quantity::temperature::hilum_temperature { celsius }
    quantity::sown::hilum_seed_size { seeds_per_kg }
    quantity::sown::hilum_sown { seeds_per_m2 }
    quantity::sown::hilum_mass_per_seed { kg_per_seed }
    quantity::sown::hilum_mass_per_area { kg_per_m2 }
    quantity::content::hilum_density { kg_per_m3 }
    quantity::content::hilum_active_content { kg_per_m3 }
    quantity::content::hilum_titre_per_volume { cfu_per_m3 }
    quantity::content::hilum_titre_per_mass { cfu_per_kg }
    quantity::flow::hilum_seed_flow { kg_per_s }
    quantity::flow::hilum_flow { m3_per_s }
    seed::hilum_seed_unit { is seeds mass }
    seed::hilum_bushel { kg }
    dose::liquid::hilum_rate_per_mass { m3_per_kg }
    dose::liquid::hilum_rate_per_seed { m3_per_seed }
    dose::liquid::hilum_rate_per_area { m3_per_m2 }
    dose::dry::hilum_dry_per_mass { kg_per_kg }
    dose::dry::hilum_dry_per_seed { kg_per_seed }
    dose::dry::hilum_dry_per_area { kg_per_m2 }
    dose::active::hilum_active_per_mass { kg_per_kg }
    dose::active::hilum_active_per_seed { kg_per_seed }
    dose::active::hilum_active_per_area { kg_per_m2 }
    active::hilum_content { stated per_volume by_mass }
    dose::cells::hilum_cells_per_mass { cfu_per_kg }
    dose::cells::hilum_cells_per_seed { cfu_per_seed }
    dose::cells::hilum_cells_per_area { cfu_per_m2 }
    text::hilum_measured { value is powers }
    pack::hilum_coverage { kg }
    pack::hilum_order_need { seed set }
    pack::hilum_sets_needed { sets }
    pack::hilum_pack_size { covers price stock }
    pack::hilum_choice { sets covered leftover cost proof supply }
    mix::hilum_water { volume how }
    mix::hilum_slurry { products total }
    mix::hilum_recipe_share { recipe own }
    mix::hilum_hold_up { m3 }
    mix::hilum_min_fill { m3 }
    batch::input::hilum_batch_order { mass speed changeover }
    batch::input::hilum_batch_need { per_mass living recipe }
    batch::input::hilum_batch_set { adds ranks stock }
    batch::input::hilum_batch_tank { capacity hold_up mixing pot_life sets n_sets refill }
    batch::input::hilum_batch_shift { from to }
    batch::input::hilum_batch_job { orders n_orders tanks n_tanks needs n_needs shifts n_shifts }
    batch::output::hilum_batch_mix { mixed applied hold_up discarded mix_at ready_at use_by done_at sets tank number has_times has_use_by }
    batch::output::hilum_batch_portion { mass mix order }
    batch::output::hilum_batch_summary { treated finish all_treated has_finish proof short_of_stock }
    batch::output::hilum_batch_first { at known }
    mix::hilum_mix_part { share density }
    batch::output::hilum_batch_room { firsts work n_work mixes n_mixes portions n_portions pours labels }
    treater::hilum_batch_treater { charge cycle }
    treater::hilum_setting { number }
    treater::hilum_curve_point { setting flow }
    treater::hilum_pump_curve {  }
    account::used::hilum_volume_reading { shown resolution }
    account::used::hilum_used_volume {  }
    account::used::hilum_mass_reading { shown resolution }
    account::used::hilum_used_mass {  }
    account::achieved::hilum_achieved {  }
    account::achieved::hilum_achieved_dry {  }
    monitor::hilum_seed_sensor { shows total_resolution flow_resolution most }
    monitor::hilum_liquid_sensor { shows resolution most }
    monitor::hilum_monitor_setup { target tolerance seed liquid }
    monitor::hilum_monitor_16 {  }
    monitor::hilum_seed_reading { shows total flow }
    monitor::hilum_liquid_reading { shows volume }
    monitor::hilum_run { rate explained verdict known }
    monitor::hilum_report { window since_start step }
    monitor::hilum_monitor_64 {  }
    viability::titre::hilum_titre { stated per_volume per_mass }
    viability::survival::hilum_decimal_reduction { s }
    viability::survival::hilum_survival { curve has_reference reduction fast fraction scale shape reference z }
    viability::survival::hilum_period { lasts at known }
    viability::keeping::hilum_crossing { at is }
    viability::keeping::hilum_life { s }
    viability::keeping::hilum_plant_by { within is because }
    viability::fit::hilum_sample { at count }
    viability::fit::hilum_fit { log10_initial reduction log10_initial_error reduction_error residual known }
    limit::hilum_season_limit { limit used }
    rows::living::hilum_kept_rows { curves n_curves which first lasts at n_periods }
}

impl Layout {
    fn structure(&self) -> String {
        self.name.rsplit("::").next().unwrap().trim().to_owned()
    }
}

/// Static assertions in C for what Rust sees.
fn assertions() -> String {
    let mut text = String::from("#include <hilum.h>\n#include <stddef.h>\n");
    for layout in LAYOUTS {
        let name = layout.structure();
        let _ = writeln!(text, "_Static_assert(sizeof({name}) == {}, \"size of {name}\");", layout.size);
        let _ =
            writeln!(text, "_Static_assert(_Alignof({name}) == {}, \"alignment of {name}\");", layout.align);
        for (field, offset) in layout.offsets {
            let _ =
                writeln!(text, "_Static_assert(offsetof({name}, {field}) == {offset}, \"{name}.{field}\");");
        }
    }
    text
}

#[test]
fn c_lays_out_every_structure_as_rust_does() {
    let source = folder("layout").join("layout.c");
    fs::write(&source, assertions()).unwrap();
    C11.compiles(&source).unwrap();
    let wrong = folder("layout").join("wrong.c");
    fs::write(&wrong, assertions().replacen(") == 8,", ") == 9,", 1)).unwrap();
    assert!(C11.compiles(&wrong).is_err());
}

#[test]
fn every_structure_and_field_of_the_header_is_compared() {
    let declared = declared(&header::committed());
    let compared: BTreeSet<(String, String)> = LAYOUTS
        .iter()
        .flat_map(|layout| {
            let name = layout.structure();
            let fields = layout.offsets.iter().map(|(field, _)| (*field).to_owned());
            fields.chain(["opaque".to_owned()]).map(move |field| (name.clone(), field))
        })
        .collect();
    for (name, fields) in &declared.structures {
        // Private to the library; three words by the header and by its own assertion.
        if name == "hilum_work" {
            continue;
        }
        for field in fields {
            assert!(compared.contains(&(name.clone(), field.name.clone())), "{name}.{}", field.name);
        }
    }
}
