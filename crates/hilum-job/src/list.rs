//! Lists made item by item.

use alloc::vec::Vec;

/// Adds what there is. A list that is extended by an Option, or collected from many, is several times the code.
pub(crate) fn keep<T>(list: &mut Vec<T>, item: Option<T>) {
    if let Some(item) = item {
        list.push(item);
    }
}
