#![no_main]
libfuzzer_sys::fuzz_target!(|bytes: &[u8]| hilum_attack::batch::attack(bytes));
