//! The lookup of published values: who gets which row, and the exact words where nobody does.
//!
//! Keys such as ITO09 are those of `clinical/sources.csv`, where the citations stand.

use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::measured::Measured;
use penlight::clinical::findings::speech::{Repeated, Syllables, Timing};
use penlight::clinical::knowledge::norms::{
    Method, NoNorm, Norm, Quantity, Query, ROWS, Task, Unit, WrongUnit, lookup,
};
use penlight::clinical::knowledge::person::{Age, Language, Sex};
use penlight::clinical::tasks::compare::compare;
use penlight::measure::units::{Seconds, SequencesPerSecond, SyllablesPerSecond};
use penlight::wording::compared::comparison;
use penlight::wording::norms::{ages, no_norm, remarks};

/// A person of this age, of no sex and no language given, asked for a task in its own unit.
fn query(task: Task, age: u8) -> Query<'static> {
    let (method, unit) = match task {
        Task::Pa | Task::Ta | Task::Ka | Task::PaTaKa => {
            (Method::Count10s, Unit::SyllablesPerSecond)
        }
        Task::Glide => (Method::Glide, Unit::Semitones),
        Task::Talk => (Method::Reading, Unit::Hertz),
        Task::SwallowSaliva => (Method::Count30s, Unit::PerHalfMinute),
        Task::Drink => (Method::Cup150, Unit::MillilitresPerSecond),
        Task::OpenMouth => (Method::Ruler, Unit::Millimetres),
        Task::Breathe => (Method::RangeTable, Unit::PerMinute),
        Task::EatCracker => (Method::OneCracker, Unit::Seconds),
        Task::Ah | Task::S | Task::Z => (Method::Longest, Unit::Seconds),
    };
    Query {
        task,
        method,
        unit,
        age: Some(Age::Years(age)),
        sex: None,
        language: None,
    }
}

fn found(query: Query) -> Norm {
    lookup(&query).unwrap()
}

fn says(query: Query) -> String {
    no_norm(&lookup(&query).unwrap_err())
}

const WOMAN: Option<Sex> = Some(Sex::Female);
const MAN: Option<Sex> = Some(Sex::Male);

/// Each reason in its exact words.
#[test]
#[rustfmt::skip] // One reason a line.
fn every_reason_in_its_words() {
    let pa = query(Task::Pa, 30);
    let time20 = Query { method: Method::Time20, unit: Unit::Seconds, ..query(Task::Pa, 14) };
    let dry = query(Task::SwallowSaliva, 90);
    for (query, reason, words) in [
        (query(Task::EatCracker, 40), NoNorm::NoTable(Task::EatCracker), "No published value for timed cracker."),
        (Query { unit: Unit::SequencesPerSecond, ..query(Task::PaTaKa, 30) }, NoNorm::OtherUnit(Task::PaTaKa, Unit::Seconds), "No published value for pa-ta-ka in this unit; published in seconds."),
        (Query { method: Method::Longest, ..time20 }, NoNorm::OtherMethod(Task::Pa, Method::Time20), "No published value for pa measured this way; published: seconds for 20 repetitions."),
        (query(Task::Drink, 40), NoNorm::OtherMethod(Task::Drink, Method::NotShown), "No published value for timed water measured this way; published: a method that was not shown."),
        (Query { age: None, ..pa }, NoNorm::AgeNotGiven, "No comparison without the age in years."),
        (Query { age: Some(Age::Adult), ..pa }, NoNorm::AgeNotGiven, "No comparison without the age in years."),
        (dry, NoNorm::SexNotGiven, "No comparison: at this age the published values go by sex, and none was given."),
        (Query { sex: MAN, ..query(Task::Glide, 22) }, NoNorm::OtherSex(Sex::Female), "No published value: at this age it is published for the female sex only."),
        (Query { sex: WOMAN, ..query(Task::Talk, 45) }, NoNorm::OtherSex(Sex::Male), "No published value: at this age it is published for the male sex only."),
        (pa, NoNorm::TooYoung(Age::Years(30), 65 * 12), "No published value for age 30 years: the nearest table starts at 65 years."),
        (Query { age: Some(Age::Months(20)), ..time20 }, NoNorm::TooYoung(Age::Months(20), 72), "No published value for age 20 months: the nearest table starts at 6 years."),
        (time20, NoNorm::TooOld(Age::Years(14), 13 * 12 + 11), "No published value for age 14 years: the nearest table ends at 13 years."),
        (query(Task::Ah, 30), NoNorm::Between(Age::Years(30), 12 * 12 + 11, 60 * 12), "No published value for age 30 years: one table ends at 12 years, the next starts at 60 years."),
    ] {
        let why = lookup(&query).unwrap_err();
        assert_eq!((why, no_norm(&why).as_str()), (reason, words), "{query:?}");
    }
}

/// A reason names only an age at which this person could get a row.
#[test]
fn a_reason_counts_no_row_of_other_people() {
    let starts = |age, from| {
        format!("No published value for age {age} years: the nearest table starts at {from} years.")
    };
    // ITO09 is read from 65 whatever the language; TAM25 from 50 for Tamil speakers alone.
    for (language, age, from) in [
        (None, 30, 65),
        (Some("en"), 30, 65),
        (Some("en"), 55, 65),
        (Some("en"), 64, 65),
        (Some("ja"), 64, 65),
        (Some("ta"), 49, 50),
    ] {
        let query = Query {
            language,
            ..query(Task::Pa, age)
        };
        assert_eq!(says(query), starts(age, from), "{language:?}");
    }
    let tamil = Query {
        language: Some("ta"),
        ..query(Task::Pa, 55)
    };
    assert_eq!(found(tamil).row.source.key, "TAM25");
    // SH72 is of men: a woman's nearest table is that of the children.
    let woman = Query {
        sex: WOMAN,
        ..query(Task::Talk, 35)
    };
    let ends = "No published value for age 35 years: the nearest table ends at 17 years.";
    assert_eq!(says(woman), ends);
    let man = Query { sex: MAN, ..woman };
    assert_eq!(
        says(man),
        "No published value for age 35 years: one table ends at 29 years, the next starts at 40 \
         years."
    );
}

/// BH24 by sex is of 20 to 90 years and of no language: read where no decade of BH24-P is.
#[test]
fn dry_swallows_at_the_ends_of_the_tables() {
    let dry = |age, sex| Query {
        sex,
        ..query(Task::SwallowSaliva, age)
    };
    for (sex, mean) in [(WOMAN, 6.47), (MAN, 7.6)] {
        assert_eq!(found(dry(85, sex)).row.source.key, "BH24-P");
        assert_eq!(found(dry(89, sex)).row.mean, Some(4.3));
        let oldest = found(dry(90, sex));
        assert_eq!(
            (oldest.row.source.key, oldest.row.mean),
            ("BH24", Some(mean))
        );
        assert!(oldest.fit.is_own());
        assert_eq!(
            says(dry(91, sex)),
            "No published value for age 91 years: the nearest table ends at 90 years."
        );
    }
    assert_eq!(lookup(&dry(90, None)).unwrap_err(), NoNorm::SexNotGiven);
    assert_eq!(
        says(dry(19, None)),
        "No published value for age 19 years: the nearest table starts at 20 years."
    );
}

/// AKI24: the volume of the cup was not seen, and rates of different volumes are never compared
/// (DOD20).
#[test]
fn a_cup_of_unknown_volume_is_put_beside_no_cup() {
    for method in [Method::Cup150, Method::Cup100, Method::CupOther] {
        let query = Query {
            method,
            ..query(Task::Drink, 40)
        };
        assert!(matches!(lookup(&query), Err(NoNorm::OtherMethod(..))));
    }
}

/// Every row is read for somebody who asks by its own method, and where a task has a row, "no
/// table" is never said.
#[test]
fn every_row_can_be_reached() {
    let mut reached = vec![false; ROWS.len()];
    for row in ROWS {
        for months in (0..36).chain((3..=120).map(|years| years * 12)) {
            let age = match u8::try_from(months) {
                Ok(months) if months < 36 => Age::Months(months),
                _ => Age::Years(u8::try_from(months / 12).unwrap()),
            };
            for sex in [None, WOMAN, MAN] {
                for language in [None, Some("fr"), Some(row.language)] {
                    let answer = lookup(&Query {
                        task: row.task,
                        method: row.method,
                        unit: row.unit,
                        age: Some(age),
                        sex,
                        language,
                    });
                    match answer {
                        Ok(norm) => {
                            let at = ROWS.iter().position(|r| std::ptr::eq(r, norm.row));
                            reached[at.unwrap()] = true;
                        }
                        Err(why) => assert!(!matches!(why, NoNorm::NoTable(_)), "{row:?}"),
                    }
                }
            }
        }
    }
    for (row, reached) in ROWS.iter().zip(reached) {
        // Those of boys and girls without a spread stand behind those of both with one.
        let behind = row.source.key == "TAV12" && row.sex.is_some();
        assert!(reached || behind, "{row:?}");
    }
}

/// The unit trap: sequences are a third of the syllables. A value in another unit is refused, not
/// converted.
#[test]
fn a_value_in_another_unit_is_refused() {
    let norm = found(query(Task::PaTaKa, 30));
    assert_eq!(norm.row.unit, Unit::SyllablesPerSecond);
    let sequences = SequencesPerSecond::new(2.07).unwrap();
    let wrong = norm.place(sequences).unwrap_err();
    assert_eq!(
        wrong,
        WrongUnit {
            is: Unit::SequencesPerSecond,
            wanted: Unit::SyllablesPerSecond
        }
    );
    assert!(norm.place(Seconds::new(6.2).unwrap()).is_err());
    assert!(norm.place(Quantity::counted(Unit::PerMinute, 6)).is_err());
    let place = norm.place(SyllablesPerSecond::new(6.2).unwrap()).unwrap();
    assert_eq!(place.sds_worse(), Some(0.0));
}

/// KHA12, TEL08: the ages of the group were not seen, so it is nobody's own.
#[test]
fn a_group_whose_ages_were_not_seen_says_so() {
    for query in [
        Query {
            sex: MAN,
            ..query(Task::OpenMouth, 40)
        },
        Query {
            sex: WOMAN,
            ..query(Task::Glide, 70)
        },
    ] {
        let norm = found(query);
        assert!(norm.fit.ages_not_seen && !norm.fit.is_own());
        let remarks = remarks(&norm).join(" ");
        assert!(remarks.contains("The ages of the group were not seen."));
        let ages = ages(norm.row);
        assert!(ages.starts_with("not seen; taken from"), "{ages}");
    }
}

/// Where no language was given English is taken, and the comparison says so.
#[test]
fn a_comparison_says_that_the_language_was_not_given() {
    let words = |language| {
        let exam = Exam {
            age: Some(Age::Years(30)),
            language,
            ..Exam::default()
        };
        let rate = SyllablesPerSecond::new(5.0).unwrap();
        let timing = Timing::Syllables {
            count: 25,
            window: Seconds::new(5.0).unwrap(),
        };
        let value = Measured::Repeated(Repeated {
            what: Syllables::PaTaKa,
            timing,
        });
        comparison(&compare(
            &exam,
            Task::PaTaKa,
            Method::Pooled,
            rate.into(),
            value,
        ))
    };
    let not_given = words(None);
    assert!(
        not_given.ends_with(
            "Group: English speakers, five studies pooled. The person's language was not given."
        ),
        "{not_given}"
    );
    let english = words(Some(Language::English));
    assert!(!english.contains("language"), "{english}");
    // Where language does not matter nothing is said of it.
    let exam = Exam {
        age: Some(Age::Years(65)),
        ..Exam::default()
    };
    let swallows = compare(
        &exam,
        Task::SwallowSaliva,
        Method::Count30s,
        Quantity::counted(Unit::PerHalfMinute, 4),
        Measured::DrySwallows(4),
    );
    assert_eq!(
        comparison(&swallows),
        "4 in 30 seconds. Published: mean 6.7 in 30 seconds. Group: healthy adults aged 60 to 69."
    );
}
