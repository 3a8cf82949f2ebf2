//! Random numbers for tests, the same in each run: xorshift64*.

pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    pub(crate) fn bits(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_f491_4f6c_dd1d)
    }

    pub(crate) fn below(&mut self, end: usize) -> usize {
        usize::try_from(self.bits() >> 33).unwrap() % end
    }

    pub(crate) fn one_of<'a>(&mut self, of: &[&'a str]) -> &'a str {
        of[self.below(of.len())]
    }
}
