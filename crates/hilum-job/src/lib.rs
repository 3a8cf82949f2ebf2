//! Whole seed treating jobs as documents.
#![no_std]
#![forbid(unsafe_code)]
