//! Breathing rates of children and bands of adults against their published figures, to the
//! printed digit.
//!
//! Keys such as RUS94 are those of `clinical/sources.csv`, where the citations stand.

#![allow(clippy::unwrap_used, clippy::panic)]

use penlight::clinical::findings::breathing::{NoRange, State};
use penlight::clinical::findings::flag::{Domain, Flag, Level};
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::tasks::breath_taps::judge as breath_taps;
use penlight::clinical::tasks::breath_taps::judge::Taps;
use penlight::clinical::tasks::breathing;
use penlight::clinical::tasks::breathing::Band;
use penlight::clinical::tasks::breathing::adult_bands;
use penlight::clinical::tasks::breathing::adult_bands::{
    Breathes, ConfirmedTarget, NotConfirmed, Prescription, Saturation, Step,
};
use penlight::clinical::tasks::breathing::child::{InfantMonths, Line, judge, percentile, usual};
use penlight::measure::decimals::decimals;
use penlight::measure::series::Series;
use penlight::measure::time::Millis;
use penlight::measure::units::{PerMinute, PerSecond};

fn at(months: f64, state: State, line: Line) -> String {
    let months = InfantMonths::new(months).unwrap();
    decimals(percentile(months, state, line).unwrap().get(), 1)
}

fn breaths(n: u16) -> PerMinute {
    PerMinute::new(f64::from(n)).unwrap()
}

#[track_caller]
fn only(flags: &[Flag]) -> &Flag {
    assert_eq!(flags.len(), 1, "{flags:?}");
    assert_eq!(
        (flags[0].level(), flags[0].domain()),
        (Level::Note, Domain::Breathing)
    );
    &flags[0]
}

/// RUS94, awake: 5th (Z = -1.65), 50th, 95th (Z = 1.645) percentile.
#[test]
fn awake_to_the_printed_digit() {
    for (months, printed) in [
        (1.0, ["33.7", "46.6", "64.4"]),
        (6.0, ["29.9", "41.1", "56.3"]),
        (12.0, ["26.5", "36.0", "48.9"]),
        (24.0, ["22.2", "29.6", "39.5"]),
        (36.0, ["20.4", "26.7", "34.8"]),
    ] {
        let ours = [Line::Low, Line::Middle, Line::High].map(|l| at(months, State::Awake, l));
        assert_eq!(ours, printed, "{months} months");
    }
}

/// RUS94, asleep: 50th percentile.
#[test]
fn asleep_to_the_printed_digit() {
    for (months, printed) in [
        (1.0, "36.7"),
        (6.0, "32.0"),
        (12.0, "27.9"),
        (24.0, "23.1"),
        (36.0, "21.5"),
    ] {
        assert_eq!(at(months, State::Asleep, Line::Middle), printed, "{months}");
    }
}

/// RUS94: 15 days to 3 years, and nothing outside.
#[test]
fn nothing_outside_the_ages_of_the_study() {
    for months in [0.5, 36.0] {
        assert!(InfantMonths::new(months).is_some(), "{months}");
    }
    for months in [0.0, 0.49, 36.01, -1.0, f64::NAN, f64::INFINITY] {
        assert!(InfantMonths::new(months).is_none(), "{months}");
    }
    assert_eq!(
        usual(Age::Months(0), Some(State::Awake)).unwrap_err(),
        NoRange::TooYoung
    );
    assert_eq!(
        usual(Age::Years(2), Some(State::Awake)).unwrap_err(),
        NoRange::GiveMonths
    );
    assert_eq!(
        usual(Age::Months(6), None).unwrap_err(),
        NoRange::StateNotGiven
    );
    for age in [Age::Months(0), Age::Years(2), Age::Years(16), Age::Adult] {
        assert!(judge(breaths(90), age, Some(State::Awake)).is_empty());
    }
}

/// RUS94, 6 months awake: 29.9 to 56.3; asleep the same rate is above.
#[test]
fn a_note_outside_the_percentiles_only() {
    let awake = |n| judge(breaths(n), Age::Months(6), Some(State::Awake));
    assert!(awake(30).is_empty() && awake(56).is_empty());
    assert_eq!(
        only(&awake(57)).reason(),
        "breathing 57 a minute awake: above the middle 90 of 100 children of 6 months (29.9 to \
         56.3)"
    );
    assert_eq!(only(&awake(29)).rule().id, "breathing.infant");
    assert!(only(&awake(29)).reason().contains("below"));
    let asleep = judge(breaths(56), Age::Months(6), Some(State::Asleep));
    assert!(only(&asleep).reason().contains("asleep: above"));
}

/// FLE-APP, the taught ranges named there: 3 years 24 to 40, 5 years 22 to 34, 6 to 12 years 18 to
/// 30, 13 to 15 years 12 to 16; both ends belong to them.
#[test]
fn taught_ranges() {
    for (years, low, high) in [
        (3, 24, 40),
        (5, 22, 34),
        (6, 18, 30),
        (12, 18, 30),
        (15, 12, 16),
    ] {
        let of = |n| judge(breaths(n), Age::Years(years), None);
        assert!(of(low).is_empty() && of(high).is_empty(), "{years}");
        for outside in [low - 1, high + 1] {
            assert_eq!(only(&of(outside)).rule().id, "breathing.taught-range");
        }
        let Ok(penlight::clinical::tasks::breathing::child::Usual::Taught(norm)) =
            usual(Age::Years(years), None)
        else {
            panic!("{years}: no table");
        };
        assert_eq!(norm.row.source.key, "FLE-APP");
    }
}

/// NEWS2 (Royal College of Physicians 2017), breathing rate; and the bands of the gate agree.
#[test]
fn adult_rates() {
    let band = |rate| breathing::rate_band(rate, &Policy::default());
    for rate in 0..=120 {
        let step = match rate {
            0..=8 | 25.. => Step::Three,
            21..=24 => Step::Two,
            9..=11 => Step::One,
            12..=20 => Step::Usual,
        };
        assert_eq!(band(rate), step.band(), "{rate}");
    }
    // Local policy: half up before the band.
    let whole = |n| PerMinute::new(n).unwrap().whole() as u16;
    assert_eq!((whole(24.5), whole(24.49)), (25, 24));
    assert_eq!((band(25), band(24)), (Band::Block, Band::Caution));
}

/// A count of a part of a minute, and taps (KAR14; 4 intervals within 15 %: local policy), to the
/// rate and its NEWS2 band.
#[test]
fn rates_of_short_counts_and_of_taps() {
    for (breaths, seconds, rate) in [(5.0, 15.0, 20), (9.0, 30.0, 18), (17.0, 60.0, 17)] {
        let per_second = PerSecond::new(breaths / seconds).unwrap();
        assert_eq!(per_second.per_minute().whole(), rate);
    }
    let read = |taps: &[i64]| {
        let series = Series::new(taps.iter().copied().map(Millis));
        breath_taps::read(&series, breath_taps::Setting::default())
    };
    for (taps, rate, left_out, step) in [
        (
            &[0, 3_100, 6_000, 9_200, 12_100][..],
            "20.0",
            0,
            Step::Usual,
        ),
        (
            &[0, 3_000, 6_100, 12_200, 15_100, 18_100],
            "20.0",
            1,
            Step::Usual,
        ),
        (
            &[0, 2_400, 4_800, 7_300, 9_600, 12_100],
            "25.0",
            0,
            Step::Three,
        ),
    ] {
        let Taps::Rate {
            rate: ours,
            left_out: ours_out,
        } = read(taps)
        else {
            panic!("{taps:?}");
        };
        assert_eq!(
            (decimals(ours.get(), 1).as_str(), ours_out),
            (rate, left_out)
        );
        let band = breathing::rate_band(ours.whole() as u16, &Policy::default());
        assert_eq!(band, step.band());
    }
    assert_eq!(read(&[0, 5_000, 6_000, 11_500]), Taps::KeepTapping);
    for few in [
        &[][..],
        &[0],
        &[0, 3_000, 6_000, 9_000],
        &[7, 7, 7, 7, 7, 7],
    ] {
        assert_eq!(read(few), Taps::KeepTapping, "{few:?}");
    }
}

/// NEWS2, saturation on the first scale: the bands of the gate agree.
#[test]
fn saturation_on_the_first_scale() {
    for percent in 0..=100_u8 {
        let step = match percent {
            ..=91 => Step::Three,
            92 | 93 => Step::Two,
            94 | 95 => Step::One,
            96.. => Step::Usual,
        };
        let gate = breathing::spo2_band(f64::from(percent), None, &Policy::default());
        assert_eq!(gate, step.band(), "{percent}");
    }
    assert!(Saturation::new(101).is_none());
}

/// NEWS2, saturation on the second scale, which needs the confirmed target.
#[test]
fn saturation_on_the_second_scale() {
    use Breathes::{Air, Oxygen};
    let prescribed = Prescription {
        hypercapnic_failure_confirmed: true,
        lowest: 88,
        highest: 92,
    };
    let target = ConfirmedTarget::try_from(prescribed).unwrap();
    for (percent, breathes, step) in [
        (83, Air, Step::Three),
        (83, Oxygen, Step::Three),
        (84, Air, Step::Two),
        (85, Oxygen, Step::Two),
        (86, Air, Step::One),
        (87, Oxygen, Step::One),
        (88, Oxygen, Step::Usual),
        (92, Oxygen, Step::Usual),
        (93, Air, Step::Usual),
        (100, Air, Step::Usual),
        (93, Oxygen, Step::One),
        (94, Oxygen, Step::One),
        (95, Oxygen, Step::Two),
        (96, Oxygen, Step::Two),
        (97, Oxygen, Step::Three),
    ] {
        let saturation = Saturation::new(percent).unwrap();
        assert_eq!(
            adult_bands::scale_2(saturation, breathes, target),
            step,
            "{percent} {breathes:?}"
        );
    }
    let unconfirmed = Prescription {
        hypercapnic_failure_confirmed: false,
        ..prescribed
    };
    assert_eq!(
        ConfirmedTarget::try_from(unconfirmed),
        Err(NotConfirmed::Failure)
    );
    let other = Prescription {
        highest: 94,
        ..prescribed
    };
    assert_eq!(
        ConfirmedTarget::try_from(other),
        Err(NotConfirmed::OtherTarget)
    );
}
