//! Worked examples of the usual formulas, and what must hold for any marks at all.
//!
//! T numbers count the examples.

use std::num::{NonZeroU32, NonZeroUsize};

use penlight::measure::by_count::{count_by_time, time_by_count};
use penlight::measure::series::{Breathing, Series, Steadiness};
use penlight::measure::time::Millis;
use penlight::measure::units::{Millilitres, PerMinute, Percent, Ratio, Seconds, UnitError};
use penlight::measure::window::{Window, WindowCount};
use proptest::prelude::*;

/// Equal to as many decimals as the source prints.
#[track_caller]
fn prints(value: f64, printed: &str) {
    let places = printed.split_once('.').map_or(0, |(_, d)| d.len());
    assert_eq!(format!("{value:.places$}"), printed);
}

fn times(n: u32) -> NonZeroU32 {
    NonZeroU32::new(n).unwrap()
}

fn seconds(s: f64) -> Seconds {
    Seconds::new(s).unwrap()
}

// Rates.

/// Worked example T1: time-by-count after Fletcher 1972.
#[test]
fn t1_twenty_single_syllables() {
    let rate = time_by_count(times(20), times(1), Millis(3_700)).unwrap();
    assert_eq!(rate.get(), 20.0 / 3.7);
    prints(rate.get(), "5.4054");
    assert_eq!(format!("{rate:.2}"), "5.41 syllables per second");
}

/// Worked example T2: time-by-count after Fletcher 1972; sequences are a third of it.
#[test]
fn t2_ten_sequences_of_three() {
    let rate = time_by_count(times(10), times(3), Millis(5_700)).unwrap();
    assert_eq!(rate.get(), 30.0 / 5.7);
    prints(rate.get(), "5.26");
    assert_eq!(
        rate.sequences(times(3)).to_string(),
        "1.75 sequences per second"
    );
}

/// Worked example T3: time-by-count after Fletcher 1972.
#[test]
fn t3_fifteen_pairs() {
    let rate = time_by_count(times(15), times(2), Millis(6_000)).unwrap();
    assert_eq!(rate.get(), 5.0);
}

/// Worked example T4: count-by-time.
#[test]
fn t4_thirty_one_in_five_seconds() {
    let rate = count_by_time(31, Millis::from_secs(5)).unwrap();
    assert_eq!(rate.get(), 6.2);
    assert_eq!(rate.to_string(), "6.2 syllables per second");
}

/// Worked example T5: twenty onsets have nineteen intervals; not T1's 5.41.
#[test]
fn t5_onsets_have_one_interval_fewer() {
    let onsets = Series::new((0..20).map(|i| Millis(3_700 * i / 19)));
    let rate = onsets.rate_from_onsets().unwrap();
    prints(rate.get(), "5.14");
}

// Evenness.

/// Worked example T16.
#[test]
fn t16_an_even_run() {
    let taps = Series::new([0, 160, 330, 490, 660, 820, 990, 1_150, 1_320].map(Millis));
    prints(taps.mean_interval().unwrap().get(), "0.165");
    prints(taps.sd().unwrap().get(), "0.00535");
    prints(taps.cv().unwrap().get(), "3.24");
    prints(taps.rate_from_onsets().unwrap().get(), "6.06");
}

/// Worked example T17, given as intervals.
#[test]
fn t17_a_run_that_slows() {
    let mut at = Millis::ZERO;
    let mut marks = vec![at];
    for interval in [150, 160, 170, 180, 190, 200, 210, 220] {
        at = at + Millis(interval);
        marks.push(at);
    }
    let taps = Series::new(marks);
    prints(taps.mean_interval().unwrap().get(), "0.185");
    prints(taps.sd().unwrap().get(), "0.02449");
    prints(taps.cv().unwrap().get(), "13.24");
}

// s/z: the ratio; the limit it is held against is not measured here.

/// Worked examples T18 to T21.
#[test]
fn t18_to_t21_ratio_of_two_times() {
    for (s, z, printed) in [
        (18.0, 13.0, "1.38"),
        (14.0, 10.0, "1.40"),
        (15.4, 11.0, "1.40"),
        (20.0, 14.0, "1.43"),
    ] {
        prints(seconds(s).over(seconds(z)).unwrap().get(), printed);
    }
    // T20: over 1.4 in binary, not over it to two decimals.
    let ratio = seconds(15.4).over(seconds(11.0)).unwrap();
    assert!(ratio.get() > 1.4);
    assert_eq!(ratio.to_hundredths(), Ratio::new(1.4).unwrap());
}

/// Worked example T22.
#[test]
fn t22_no_z_no_ratio() {
    let error = seconds(12.0).over(seconds(0.0)).unwrap_err();
    assert_eq!(error, UnitError::ByZero { unit: "seconds" });
    assert_eq!(
        error.to_string(),
        "This can't be worked out: the number of seconds is zero."
    );
}

// Timed water.

/// Swallow norms, worked examples 15.1, the rows that have a result.
#[test]
fn timed_water_indices() {
    for (offered, left, time, swallows, drunk, capacity, volume_each, time_each) in [
        (100.0, 0.0, 12.5, 8, 100.0, "8.00", "12.50", "1.5625"),
        (150.0, 0.0, 11.8, 7, 150.0, "12.7119", "21.4286", "1.6857"),
        (150.0, 40.0, 20.0, 9, 110.0, "5.50", "12.2222", "2.2222"),
        (100.0, 0.0, 10.0, 6, 100.0, "10.00", "16.6667", "1.6667"),
        (90.0, 0.0, 9.5, 5, 90.0, "9.4737", "18.0", "1.9"),
    ] {
        let volume = Millilitres::new(offered)
            .unwrap()
            .less(Millilitres::new(left).unwrap())
            .unwrap();
        let time = seconds(time);
        assert_eq!(volume.get(), drunk);
        let per_second = volume.over(time).unwrap();
        let per_swallow = volume.per_swallow(times(swallows));
        prints(per_second.get(), capacity);
        prints(per_swallow.get(), volume_each);
        prints(time.each(times(swallows)).get(), time_each);
        // The identity: capacity = volume per swallow / time per swallow.
        let again = per_swallow.get() / time.each(times(swallows)).get();
        assert!((again - per_second.get()).abs() < 1e-9);
    }
}

/// Swallow norms, worked examples 15.1, the row without a count: capacity alone.
#[test]
fn timed_water_without_a_count_has_a_capacity() {
    let volume = Millilitres::new(100.0).unwrap();
    prints(volume.over(seconds(9.0)).unwrap().get(), "11.1111");
    // No swallows can't be divided by: the type has no zero.
    assert_eq!(NonZeroU32::new(0), None);
}

/// Swallow norms, worked examples 15.1, the rows that are refused.
#[test]
fn timed_water_refusals() {
    let offered = Millilitres::new(100.0).unwrap();
    assert!(matches!(
        offered.over(seconds(0.0)),
        Err(UnitError::ByZero { .. })
    ));
    assert_eq!(
        offered.less(Millilitres::new(120.0).unwrap()),
        Err(UnitError::MoreLeftThanOffered)
    );
}

// Dry swallows.

/// The window of the dry swallows: thirty seconds, watched on to sixty.
fn dry_swallows(times: &[i64]) -> WindowCount {
    let times: Vec<Millis> = times.iter().copied().map(Millis).collect();
    Window::new(Millis::from_secs(30), Some(Millis::from_secs(60)))
        .unwrap()
        .split(&times)
}

/// Swallow norms, worked examples 15.2.
#[test]
fn dry_swallow_counts() {
    assert_eq!(dry_swallows(&[2_100, 9_800, 17_500, 26_000]).count(), 4);
    assert_eq!(dry_swallows(&[4_000, 19_000]).count(), 2);

    let late = dry_swallows(&[3_000, 15_000, 30_200]);
    assert_eq!(late.count(), 2);
    assert_eq!(late.late, [Millis(30_200)]);

    assert_eq!(dry_swallows(&[3_000, 15_000, 30_000]).count(), 3);

    let only_late = dry_swallows(&[41_000]);
    assert_eq!(only_late.count(), 0);
    assert_eq!(only_late.late.len(), 1);
}

// Breathing.

/// With the values that ship: four intervals within 15 per cent.
fn breathing<const N: usize>(taps: [i64; N]) -> Breathing {
    Series::new(taps.map(Millis))
        .breathing(NonZeroUsize::new(4).unwrap(), Percent::new(15.0).unwrap())
        .unwrap()
}

/// Swallow norms, worked examples 15.6: all intervals agree.
#[test]
fn breathing_by_taps_that_agree() {
    let breathing = breathing([0, 3_100, 6_000, 9_200, 12_100]);
    prints(breathing.median.get(), "3.0");
    prints(breathing.rate.get(), "20.0");
    assert_eq!((breathing.within, breathing.intervals), (4, 4));
    assert_eq!(breathing.steadiness, Steadiness::Steady);
}

/// Swallow norms, worked examples 15.6: a missed tap makes one interval twice as long.
#[test]
fn breathing_by_taps_with_one_missed() {
    let breathing = breathing([0, 3_000, 6_100, 12_200, 15_100, 18_100]);
    prints(breathing.median.get(), "3.0");
    prints(breathing.rate.get(), "20.0");
    assert_eq!((breathing.within, breathing.intervals), (4, 5));
    assert_eq!(
        breathing.steadiness,
        Steadiness::SteadyApartFrom { outside: 1 }
    );
}

/// Swallow norms, worked examples 15.6: fast, and steady.
#[test]
fn breathing_by_taps_fast() {
    let breathing = breathing([0, 2_400, 4_800, 7_300, 9_600, 12_100]);
    prints(breathing.median.get(), "2.4");
    prints(breathing.rate.get(), "25.0");
    assert_eq!(breathing.rate.whole(), 25);
    assert_eq!(breathing.steadiness, Steadiness::Steady);
}

/// Swallow norms, worked examples 15.6: too few, and they don't agree.
#[test]
fn breathing_by_taps_that_do_not_agree() {
    let breathing = breathing([0, 5_000, 6_000, 11_500]);
    prints(breathing.median.get(), "5.0");
    prints(breathing.rate.get(), "12.0");
    assert_eq!((breathing.within, breathing.intervals), (2, 3));
    assert_eq!(
        breathing.steadiness,
        Steadiness::KeepCounting {
            more: 2,
            outside: 1
        }
    );
    assert_eq!(
        breathing.steadiness.to_string(),
        "Too few intervals agree yet: keep tapping."
    );
}

/// Swallow norms, worked examples 15.6, on rounding: 24.5 is taken for 25.
#[test]
fn a_rate_is_rounded_half_up_before_it_is_banded() {
    let rate = PerMinute::new(24.5).unwrap();
    assert_eq!(rate.whole(), 25);
    assert_eq!(rate.to_string(), "25 per minute");
}

// What must hold for any marks.

/// Marks in order, and the same marks shuffled.
fn marks_twice() -> impl Strategy<Value = (Vec<i64>, Vec<i64>)> {
    prop::collection::vec(-5_000_i64..90_000, 3..60)
        .prop_flat_map(|marks| (Just(marks.clone()), Just(marks).prop_shuffle()))
}

fn series(marks: &[i64]) -> Series {
    Series::new(marks.iter().copied().map(Millis))
}

proptest! {
    #[test]
    fn splitting_never_loses_a_mark(
        marks in prop::collection::vec(any::<i64>(), 0..40),
        near in prop::collection::vec(-2_000_i64..70_000, 0..40),
        length in 1_i64..60_000,
        late in prop::option::of(0_i64..60_000),
    ) {
        let mut marks: Vec<Millis> = marks.into_iter().chain(near).map(Millis).collect();
        let window = Window::new(Millis(length), late.map(|l| Millis(length + l))).unwrap();
        let split = window.split(&marks);
        // The four lists one after another are the marks in order of time, each once.
        let together: Vec<Millis> =
            [split.early, split.inside, split.late, split.after].concat();
        marks.sort_unstable();
        prop_assert_eq!(together, marks);
    }

    #[test]
    fn inside_is_inside(
        marks in prop::collection::vec(-2_000_i64..70_000, 0..60),
        length in 1_i64..60_000,
    ) {
        let window = Window::new(Millis(length), None).unwrap();
        let marks: Vec<Millis> = marks.into_iter().map(Millis).collect();
        let expected = marks.iter().filter(|m| (0..=length).contains(&m.0)).count();
        prop_assert_eq!(window.split(&marks).count(), expected);
    }

    #[test]
    fn figures_do_not_depend_on_the_order_of_the_marks((marks, shuffled) in marks_twice()) {
        let (one, other) = (series(&marks), series(&shuffled));
        prop_assert_eq!(one.sd(), other.sd());
        prop_assert_eq!(one.cv(), other.cv());
    }

    #[test]
    fn figures_do_not_depend_on_where_the_clock_started(
        (marks, _) in marks_twice(),
        shift in -1_000_000_i64..1_000_000,
    ) {
        let shifted: Vec<i64> = marks.iter().map(|m| m + shift).collect();
        let (one, other) = (series(&marks), series(&shifted));
        prop_assert_eq!(one.sd(), other.sd());
        prop_assert_eq!(one.rate_from_onsets(), other.rate_from_onsets());
    }

    #[test]
    fn no_mark_is_dropped_for_being_quick((marks, _) in marks_twice(), threshold in 0_i64..500) {
        let taps = series(&marks);
        let quick = taps.quicker_than(Millis(threshold));
        prop_assert_eq!(taps.count(), marks.len());
        prop_assert_eq!(taps.intervals().len(), marks.len() - 1);
        prop_assert_eq!(quick, taps.intervals().iter().filter(|d| d.0 < threshold).count());
    }

    #[test]
    fn the_mean_lies_between_the_shortest_and_longest((marks, _) in marks_twice()) {
        let taps = series(&marks);
        let intervals = taps.intervals();
        let least = intervals.iter().min().unwrap().seconds() - 1e-9;
        let most = intervals.iter().max().unwrap().seconds() + 1e-9;
        let mean = taps.mean_interval().unwrap().get();
        prop_assert!(least <= mean && mean <= most);
    }

    #[test]
    fn a_rate_times_its_time_is_the_count(
        repetitions in 1_u32..100,
        each in 1_u32..5,
        time in 10_000_i64..120_000,
    ) {
        let rate = time_by_count(times(repetitions), times(each), Millis(time)).unwrap();
        let syllables = rate.get() * Millis(time).seconds();
        prop_assert!((syllables - f64::from(repetitions * each)).abs() < 1e-9);
        // The two ways agree when they are given the same count and time.
        let counted = count_by_time(repetitions * each, Millis(time)).unwrap();
        prop_assert_eq!(rate, counted);
    }

    #[test]
    fn a_rate_from_onsets_times_the_span_is_the_intervals((marks, _) in marks_twice()) {
        let taps = series(&marks);
        let span = Millis(marks.iter().max().unwrap() - marks.iter().min().unwrap());
        prop_assume!(span > Millis::ZERO);
        if let Ok(rate) = taps.rate_from_onsets() {
            let intervals = rate.get() * span.seconds();
            prop_assert!((intervals - (marks.len() - 1) as f64).abs() < 1e-6);
        }
    }
}
