//! Putting a list in order that nearly is already.

use std::cmp::Ordering;

/// Puts `list` in order, equals left as they stand.
///
/// Presses and stored events come in order but for a few neighbours (two thumbs, a late write),
/// so an insertion sort is one pass over them. The library's sorts are made for long shuffled
/// lists, and each kind of element takes 4 KB of the app for them.
pub fn put_in_order<T>(list: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    for end in 1..list.len() {
        let mut at = end;
        while at > 0 && compare(&list[at - 1], &list[at]) == Ordering::Greater {
            list.swap(at - 1, at);
            at -= 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the standard library's stable sort.
    #[test]
    fn same_as_the_library() {
        let mut seed = 7_u64;
        for length in 0..60 {
            let list: Vec<(u64, usize)> = (0..length)
                .map(|i| {
                    seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
                    (seed >> 60, i)
                })
                .collect();
            let (mut ours, mut theirs) = (list.clone(), list);
            put_in_order(&mut ours, |a, b| a.0.cmp(&b.0));
            theirs.sort_by_key(|a| a.0);
            assert_eq!(ours, theirs);
        }
    }
}
