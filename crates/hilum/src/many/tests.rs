extern crate std;

use std::vec::Vec;
use std::{format, vec};

use super::*;
use crate::error::{LARGEST, SMALLEST};
use crate::quantity::{Volume, VolumePerMass, VolumePerSeed, mass::kilogram, seeds::seed};

fn rate() -> PerMass<Liquid> {
    PerMass::new(base!(VolumePerMass, 3.25e-6)).unwrap()
}

/// A list longer than two chunks, with one other number somewhere.
fn masses(place: usize, kg: f64) -> Vec<Mass> {
    let mut list = vec![Mass::new::<kilogram>(20.0); 2 * CHUNK + 7];
    list[place] = Mass::new::<kilogram>(kg);
    list
}

#[test]
fn a_list_is_refused_as_its_element_alone() {
    let edges = [SMALLEST, LARGEST, f64::from_bits(USUAL), f64::from_bits(MOST_USUAL), 1e-25, 1e25, 1.0];
    let near = edges.iter().flat_map(|edge| [edge.next_down(), *edge, edge.next_up()]);
    let wrong =
        [0.0, -0.0, -1.0, -1e-31, 1e-300, 1e300, f64::INFINITY, f64::NEG_INFINITY, f64::NAN, -f64::NAN];
    for kg in near.chain(wrong) {
        for place in [0, 1, CHUNK - 1, CHUNK, 2 * CHUNK, 2 * CHUNK + 6] {
            let list = masses(place, kg);
            let alone = rate().needed(Mass::new::<kilogram>(kg));
            match needed(rate(), &list) {
                Ok(results) => {
                    let results: Vec<Volume> = results.collect();
                    assert_eq!(results.len(), list.len());
                    let same = |(got, mass): (&Volume, &Mass)| rate().needed(*mass) == Ok(*got);
                    assert!(results.iter().zip(&list).all(same), "{kg:e}");
                }
                Err(bad) => {
                    assert_eq!(bad.index, place, "{kg:e}");
                    assert_eq!(format!("{alone:?}"), format!("{:?}", Err::<Volume, _>(bad.why)));
                }
            }
            assert_eq!(needed(rate(), &list).is_ok(), alone.is_ok(), "{kg:e}");
        }
    }
}

#[test]
fn the_first_bad_element_of_either_list_is_told() {
    let sizes = |place: usize, size: f64| -> Vec<SeedsPerMass> {
        let mut list = vec![base!(SeedsPerMass, 6e3); 2 * CHUNK + 7];
        list[place] = base!(SeedsPerMass, size);
        list
    };
    let bad = |size_at, size, mass_at, mass| {
        let bad = count_in(&sizes(size_at, size), &masses(mass_at, mass)).err().unwrap();
        (bad.index, bad.why)
    };
    let no_size = Error::NotPositive { argument: Argument::SeedSize, value: 0.0 };
    let no_mass = Error::NotPositive { argument: Argument::SeedMass, value: 0.0 };
    assert_eq!(bad(9, 0.0, 600, 0.0), (9, no_size));
    assert_eq!(bad(600, 0.0, 9, 0.0), (9, no_mass));
    assert_eq!(bad(600, 0.0, 600, 0.0), (600, no_size));
    assert_eq!(bad(0, 6e3, 1030, 0.0), (1030, no_mass));
    let counts: Vec<f64> =
        count_in(&sizes(3, 5e3), &masses(3, 1e-28)).unwrap().map(|count| count.value).collect();
    assert_eq!((counts[3], counts[4], counts.len()), (1e-28 * 5e3, 20.0 * 6e3, 2 * CHUNK + 7));
}

#[test]
fn an_empty_list_gives_nothing() {
    assert_eq!(needed::<Liquid, Mass>(rate(), &[]).map(|results| results.len()), Ok(0));
}

#[test]
fn a_list_of_seeds_is_as_its_elements_alone() {
    let counts = [1.0, 140_000.0, 2.5e9].map(Seeds::new::<seed>);
    let dose = PerSeed::<Liquid>::new(base!(VolumePerSeed, 2e-9)).unwrap();
    let volumes: Vec<Volume> = needed_by_seeds(dose, &counts).unwrap().collect();
    assert_eq!(volumes, counts.map(|count| dose.needed(count).unwrap()));
    let sizes = [6e3, 3e4, 2e5].map(|per_kg| base!(SeedsPerMass, per_kg));
    let masses: Vec<Mass> = mass_of(&sizes, &counts).unwrap().collect();
    let alone =
        |(size, count): (&SeedsPerMass, &Seeds)| SeedSize::new(*size).unwrap().mass_of(*count).unwrap();
    assert!(masses.iter().copied().eq(sizes.iter().zip(&counts).map(alone)));
    let none = [1.0, 0.0].map(Seeds::new::<seed>);
    assert_eq!(needed_by_seeds(dose, &none).err().map(|bad| bad.index), Some(1));
}
