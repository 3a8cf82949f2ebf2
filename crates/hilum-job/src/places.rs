//! Where in a list each name stands.

use alloc::vec::Vec;

/// Names and the places where they stand first, in alphabetical order: a map of names would be as much code as two
/// screens of findings, and ten thousand names are soon put in their places.
#[derive(Debug, Default)]
pub(crate) struct Places<'a>(Vec<(&'a str, usize)>);

impl<'a> Places<'a> {
    /// The places of the names of a list, which is asked for them one by one.
    pub(crate) fn of(name: &dyn Fn(usize) -> Option<&'a str>) -> Self {
        let mut places = Self::default();
        for (place, name) in (0..).map_while(|place| Some((place, name(place)?))) {
            places.first(name, place);
        }
        places
    }

    /// Where a name that stands at a place stands first.
    #[inline(never)]
    pub(crate) fn first(&mut self, name: &'a str, place: usize) -> usize {
        if let Some(first) = self.get(name) {
            return first;
        }
        self.0.insert(self.before(name), (name, place));
        place
    }

    #[inline(never)]
    pub(crate) fn get(&self, name: &str) -> Option<usize> {
        self.0.get(self.before(name)).filter(|(known, _)| *known == name).map(|(_, place)| *place)
    }

    /// How many names come before one.
    fn before(&self, name: &str) -> usize {
        self.0.partition_point(|(known, _)| *known < name)
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// All names, in alphabetical order.
    pub(crate) fn names(&self) -> Vec<&'a str> {
        self.0.iter().map(|(name, _)| *name).collect()
    }
}
