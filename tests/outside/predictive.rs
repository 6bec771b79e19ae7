//! Predictive values against published figures, to as many digits as are printed.
//!
//! Keys in capitals are those of `sources.csv` where it has them.

#![allow(clippy::unwrap_used)]

use penlight::clinical::predictive::{Accuracy, Proportion, TwoByTwo};
use penlight::measure::units::UnitError;
use proptest::prelude::*;

fn part(value: f64) -> Proportion {
    Proportion::new(value).unwrap()
}

/// Equal to as many decimals as the source prints.
#[track_caller]
fn prints(value: Proportion, printed: &str) {
    let places = printed.split_once('.').map_or(0, |(_, d)| d.len());
    assert_eq!(format!("{:.places$}", value.get()), printed);
}

/// The same where the source prints hundredths.
#[track_caller]
fn prints_percent(value: Proportion, printed: &str) {
    assert_eq!(value.to_string(), format!("{printed} per cent"));
}

/// Checks both predictive values at 10, 30 and 50 in a hundred.
#[track_caller]
fn predicts(sensitivity: f64, specificity: f64, positive: [&str; 3], negative: [&str; 3]) {
    let test = Accuracy {
        sensitivity: part(sensitivity),
        specificity: part(specificity),
    };
    for (i, prevalence) in [0.1, 0.3, 0.5].map(part).into_iter().enumerate() {
        prints(test.positive_predictive(prevalence).unwrap(), positive[i]);
        prints(test.negative_predictive(prevalence).unwrap(), negative[i]);
    }
}

// Section 15.9: predictive values. Sensitivity and specificity: sections 2.3 and 3.

/// SL08: Suiter and Leder 2008, 90 mL of water against endoscopy, n = 3000.
#[test]
fn water_90_ml_in_one_study() {
    let (positive, negative) = (["0.173", "0.446", "0.653"], ["0.992", "0.970", "0.933"]);
    predicts(0.965, 0.487, positive, negative);
}

/// BRO16: Brodsky and others 2016, consecutive sips of 90 to 100 mL, pooled.
#[test]
fn consecutive_sips_pooled() {
    let (positive, negative) = (["0.177", "0.453", "0.659"], ["0.981", "0.932", "0.855"]);
    predicts(0.91, 0.53, positive, negative);
}

/// BRO16: Brodsky and others 2016, single sips of 1 to 5 mL, pooled.
#[test]
fn single_sips_pooled() {
    let (positive, negative) = (["0.441", "0.753", "0.877"], ["0.965", "0.879", "0.756"]);
    predicts(0.71, 0.90, positive, negative);
}

/// BRO16: Brodsky and others 2016, progressively larger volumes, pooled.
#[test]
fn larger_and_larger_pooled() {
    let (positive, negative) = (["0.214", "0.513", "0.711"], ["0.977", "0.915", "0.823"]);
    predicts(0.86, 0.65, positive, negative);
}

/// OGU00b: Oguchi and others 2000, part 2, fewer than three dry swallows, n = 131.
#[test]
fn dry_swallows_first_study() {
    let (positive, negative) = (["0.243", "0.553", "0.742"], ["0.997", "0.987", "0.971"]);
    predicts(0.98, 0.66, positive, negative);
}

/// RSST25: two dry swallows or fewer, n = 246.
#[test]
fn dry_swallows_later_study() {
    let (positive, negative) = (["0.342", "0.667", "0.824"], ["0.928", "0.770", "0.589"]);
    predicts(0.355, 0.924, positive, negative);
}

// Section 15.8: tables of four counts.

/// The counts in the order of the table there: found and passed with the condition, then without.
fn table([true_positive, false_negative, false_positive, true_negative]: [u32; 4]) -> TwoByTwo {
    TwoByTwo {
        true_positive,
        false_negative,
        false_positive,
        true_negative,
    }
}

/// WU04: Wu and others 2004, 100 mL of water, slower than 10 mL per second; n = 59. The paper's
/// abstract prints 85.5 and 50 per cent.
#[test]
fn slow_drinking() {
    let counts = [47, 8, 2, 2];
    assert_eq!(counts.iter().sum::<u32>(), 59);
    let found = table(counts).accuracy().unwrap();
    prints(found.sensitivity, "0.8545");
    prints(found.specificity, "0.5000");
    prints_percent(found.sensitivity, "85.5");
    prints_percent(found.specificity, "50.0");
}

/// WU04: the same people, choking or wet-hoarse voice. The abstract prints 47.8 and 91.7 per cent.
#[test]
fn choking() {
    let counts = [11, 12, 3, 33];
    assert_eq!(counts.iter().sum::<u32>(), 59);
    let found = table(counts).accuracy().unwrap();
    prints(found.sensitivity, "0.4783");
    prints(found.specificity, "0.9167");
    prints_percent(found.sensitivity, "47.8");
    prints_percent(found.specificity, "91.7");
}

/// ALS23: 90 mL of water in amyotrophic lateral sclerosis, n = 212: 67 aspirated, 78 failed, 134
/// passed. Printed: 55.2 and 71.7 per cent, predictive values 47.4 and 77.6 per cent.
#[test]
fn water_90_ml_in_als() {
    let als = table([37, 30, 41, 104]);
    assert_eq!(als.true_positive + als.false_negative, 67);
    assert_eq!(als.true_positive + als.false_positive, 78);
    assert_eq!(als.true_negative + als.false_negative, 134);

    let found = als.accuracy().unwrap();
    let (positive, negative) = (
        als.positive_predictive().unwrap(),
        als.negative_predictive().unwrap(),
    );
    prints(found.sensitivity, "0.5522");
    prints(found.specificity, "0.7172");
    prints(positive, "0.4744");
    prints(negative, "0.7761");
    prints_percent(found.sensitivity, "55.2");
    prints_percent(found.specificity, "71.7");
    prints_percent(positive, "47.4");
    prints_percent(negative, "77.6");
}

/// SL08: about 686 of the 3000 aspirated, 24 of them among the 1151 who passed. The
/// counts are derived there from the printed rates; they must give these back.
#[test]
fn counts_derived_for_water_90_ml() {
    let derived = table([662, 24, 1187, 1127]);
    assert_eq!(derived.true_positive + derived.false_negative, 686);
    assert_eq!(derived.true_positive + derived.false_positive, 1849);
    assert_eq!(derived.true_negative + derived.false_negative, 1151);
    let found = derived.accuracy().unwrap();
    prints_percent(found.sensitivity, "96.5");
    prints_percent(found.specificity, "48.7");
    prints_percent(found.specificity.rest(), "51.3");
}

/// VDM10: a ratio of s to z still above 1.4 a day after intubation, n = 32: 6 were, and 4 of these
/// had what needs a referral. Printed: sensitivity 100, specificity 93 per cent.
#[test]
fn ratio_of_s_to_z_after_intubation() {
    let counts = [4, 0, 2, 26];
    assert_eq!(counts.iter().sum::<u32>(), 32);
    let found = table(counts).accuracy().unwrap();
    prints(found.sensitivity, "1");
    prints(found.specificity, "0.93");
    // 19 per cent of 32 at 24 hours. The 40 per cent printed for 13 within 6 hours are 40.6.
    prints(part(6.0 / 32.0), "0.19");
    prints(part(13.0 / 32.0), "0.406");
}

/// SLK09: 90 mL of water in 56 children, 22 passed. Printed: sensitivity 100, specificity 51.2 per
/// cent. The only whole numbers that fit: nobody who passed aspirated, and 22 of 43 did not fail.
#[test]
fn water_90_ml_in_children() {
    let children = table([13, 0, 21, 22]);
    assert_eq!(children.true_negative + children.false_negative, 22);
    let found = children.accuracy().unwrap();
    prints_percent(found.sensitivity, "100.0");
    prints_percent(found.specificity, "51.2");
    for without in 22..=56 {
        let rate = 22.0 / f64::from(without);
        assert_eq!(format!("{:.1}", rate * 100.0) == "51.2", without == 43);
    }
}

/// RSST25: two dry swallows or fewer, n = 246. Printed: 35.5, 92.4 and an accuracy of 78.1 per
/// cent. No whole numbers give all three: those that come nearest are 22 of 62 and 170 of 184,
/// with an accuracy of 78.0. The figures are taken as they were read.
#[test]
fn dry_swallows_later_study_in_whole_numbers() {
    let right = |counts: [u32; 4]| f64::from(counts[0] + counts[3]) / 246.0;
    let nearest = [22, 40, 14, 170];
    assert_eq!(nearest.iter().sum::<u32>(), 246);
    let found = table(nearest).accuracy().unwrap();
    prints_percent(found.sensitivity, "35.5");
    prints_percent(found.specificity, "92.4");
    prints_percent(part(right(nearest)), "78.0");
    for with in 1..246_u32 {
        let without = 246 - with;
        for (found, passed) in (0..=with).flat_map(|f| (0..=without).map(move |p| (f, p))) {
            let per_cent = |n: u32, of: u32| format!("{:.1}", 100.0 * f64::from(n) / f64::from(of));
            let accuracy = right([found, with - found, without - passed, passed]);
            if (accuracy * 1000.0).round() == 781.0 {
                let both = per_cent(found, with) == "35.5" && per_cent(passed, without) == "92.4";
                assert!(!both, "{found} of {with}, {passed} of {without}");
            }
        }
    }
}

// What must hold for any figures.

#[test]
fn a_part_is_from_nought_to_one() {
    assert!(Proportion::new(0.0).is_ok());
    assert!(Proportion::new(1.0).is_ok());
    for bad in [-0.001, 1.001, 50.0, f64::NAN, f64::INFINITY] {
        assert!(Proportion::new(bad).is_err(), "{bad}");
    }
    assert_eq!(
        Proportion::new(96.5).map_err(|e: UnitError| e.to_string()),
        Err("This must be 1 or less (part of a whole).".to_owned())
    );
}

#[test]
fn nobody_found_or_passed_has_no_predictive_value() {
    let passes_all = Accuracy {
        sensitivity: part(0.0),
        specificity: part(1.0),
    };
    let finds_all = Accuracy {
        sensitivity: part(1.0),
        specificity: part(0.0),
    };
    assert_eq!(passes_all.positive_predictive(part(0.3)), None);
    assert_eq!(finds_all.negative_predictive(part(0.3)), None);
    assert_eq!(finds_all.positive_predictive(part(0.0)), Some(part(0.0)));
    assert_eq!(passes_all.negative_predictive(part(1.0)), Some(part(0.0)));

    let nobody = table([0; 4]);
    assert_eq!(nobody.accuracy(), None);
    assert_eq!(nobody.positive_predictive(), None);
    assert_eq!(nobody.negative_predictive(), None);
    assert_eq!(nobody.prevalence(), None);
    assert_eq!(
        table([u32::MAX; 4]).prevalence(),
        Some(part(0.5)),
        "no count is too large"
    );
}

proptest! {
    /// By the formula at the study's own prevalence, and straight from its counts.
    #[test]
    fn both_ways_agree(counts in prop::array::uniform4(1_u32..5_000)) {
        let table = table(counts);
        let (found, p) = (table.accuracy().unwrap(), table.prevalence().unwrap());
        for (formula, count) in [
            (found.positive_predictive(p), table.positive_predictive()),
            (found.negative_predictive(p), table.negative_predictive()),
        ] {
            prop_assert!((formula.unwrap().get() - count.unwrap().get()).abs() < 1e-12);
        }
    }

    /// The commoner the condition, the more a refer and the less a pass is worth.
    #[test]
    fn they_move_with_the_prevalence(
        (se, sp) in (0.01..0.99, 0.01..0.99),
        (rare, more) in (0.01..0.4, 0.01..0.5),
    ) {
        let test = Accuracy { sensitivity: part(se), specificity: part(sp) };
        let (rare, common) = (part(rare), part(rare + more));
        prop_assert!(test.positive_predictive(rare) < test.positive_predictive(common));
        prop_assert!(test.negative_predictive(rare) > test.negative_predictive(common));
    }
}
