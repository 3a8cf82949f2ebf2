//! The command line as people and programs meet it.
