//! Where in a list each name stands.

use alloc::collections::BTreeMap;
use alloc::vec::Vec;

/// Names and the places where they stand first. One map for every list: each kind of map is as much code as a screen of findings.
#[derive(Debug, Default)]
pub(crate) struct Places<'a>(BTreeMap<&'a str, usize>);

impl<'a> Places<'a> {
    /// The places of the names of a list.
    pub(crate) fn of(names: impl Iterator<Item = &'a str>) -> Self {
        let mut places = Self::default();
        for (place, name) in names.enumerate() {
            places.first(name, place);
        }
        places
    }

    /// Where a name that stands at a place stands first.
    #[inline(never)]
    pub(crate) fn first(&mut self, name: &'a str, place: usize) -> usize {
        *self.0.entry(name).or_insert(place)
    }

    #[inline(never)]
    pub(crate) fn get(&self, name: &str) -> Option<usize> {
        self.0.get(name).copied()
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// All names, in alphabetical order.
    pub(crate) fn names(&self) -> Vec<&'a str> {
        self.0.keys().copied().collect()
    }
}
