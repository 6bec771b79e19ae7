//! Worked examples and figures of publications that stand in no row of `clinical/norms`, checked
//! by their own arithmetic.
//!
//! Where the other worked examples are: T1 to T15, T18 to T22, T28 and T30 in `speech_vectors.rs`; T16
//! and T17 in `tests/native/measure_vectors.rs`; dry swallows and 90 mL of water, row by row, in
//! `tests/native/swallow_vectors.rs`; timed water, 3 mL, flow, taps and the other flags in
//! `swallow_rule_examples.csv` and its test; the bands of NEWS2 beside
//! `tasks/breathing/adult_bands.rs` and `tasks/breathing/bands.rs`; the infant equation in
//! `infant_breathing.rs`.
//!
//! Keys that are not in `clinical/sources.csv` are named with what was read of them. No rule uses
//! what is checked here, and nothing of it is shown.

#![allow(clippy::unwrap_used)]

use std::num::NonZeroU32;

use penlight::measure::by_count::{count_by_time, time_by_count};
use penlight::measure::time::Millis;
use penlight::measure::units::SyllablesPerSecond;

/// Equal to as many decimals as printed, halves either way.
#[track_caller]
fn prints(value: f64, printed: &str, what: &str) {
    let places = printed.split_once('.').map_or(0, |(_, d)| d.len());
    let half = 0.5 * 10_f64.powi(-(places as i32)) + 1e-9;
    let figure: f64 = printed.parse().unwrap();
    assert!(
        (value - figure).abs() <= half,
        "{what}: {value} is not {printed}"
    );
}

fn number(n: u32) -> NonZeroU32 {
    NonZeroU32::new(n).unwrap()
}

/// Thai children of 6 to 13, all ages together (Int J Lang Commun Disord 2003, pp 417-428, n =
/// 197): seconds for 20, 15 and 10 repetitions as rates. No row: values by age were not seen.
#[test]
fn rates_of_the_thai_children() {
    for (repetitions, each, ms, printed) in [
        (20, 1, 4_550, "4.40"),
        (20, 1, 4_580, "4.37"),
        (20, 1, 4_850, "4.12"),
        (15, 2, 6_970, "4.30"),
        (15, 2, 7_520, "3.99"),
        (10, 3, 6_850, "4.38"),
    ] {
        let rate = time_by_count(number(repetitions), number(each), Millis(ms)).unwrap();
        prints(rate.get(), printed, "Thai children");
    }
}

/// The unit trap: two papers print sequences as syllables. Persian speakers of 60 to 80 (J Res
/// Rehabil Sci 13(3)): 1.58 printed as syllables a second; Thai adults (J Med Assoc Thai
/// 1998;81:784-788): 26.5 in 15 seconds. A healthy adult below 3 is in sequences, above 4 in
/// syllables. Neither is a row: no SD was seen.
#[test]
fn sequences_that_were_printed_as_syllables() {
    let three = number(3);
    for (sequences, syllables, what) in [
        (1.58, 4.74, "Persian speakers"),
        (1.7667, 5.30, "Thai adults"),
    ] {
        let rate = SyllablesPerSecond::new(syllables).unwrap();
        prints(rate.sequences(three).get(), &sequences.to_string(), what);
        assert!(sequences < 3.0 && syllables > 4.0, "{what}");
    }
}

/// AJP19: a start and a stop pressed together spread by 0.10 s. 20 repetitions in 3.7 s are then
/// 5.41 syllables a second, 5.26 to 5.56 within one SD; one syllable more or less in 5 s is 0.2.
#[test]
fn what_a_press_adds_to_a_rate() {
    let rate = |ms| {
        time_by_count(number(20), number(1), Millis(ms))
            .unwrap()
            .get()
    };
    prints(rate(3_700), "5.41", "AJP19");
    prints(rate(3_800), "5.26", "AJP19, 0.10 s more");
    prints(rate(3_600), "5.56", "AJP19, 0.10 s less");
    let counted = |n| count_by_time(n, Millis(5_000)).unwrap().get();
    prints(counted(31) - counted(30), "0.2", "one syllable in 5 s");
}
