//! Many at once.
