//! Chance that is the same every time.

#![allow(dead_code, clippy::unwrap_used)]

pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    pub(crate) fn below(&mut self, n: usize) -> usize {
        let step = self.0.wrapping_mul(6_364_136_223_846_793_005);
        self.0 = step.wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % n
    }

    pub(crate) fn of<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.below(all.len())]
    }
}
