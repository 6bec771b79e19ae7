//! What must hold for any speech, voice and breath value at all.

use std::num::NonZeroU32;

use penlight::clinical::findings::fact::{BreathFact, Fact};
use penlight::clinical::findings::flag::{Flag, Level};
use penlight::clinical::findings::speech::Bubbles;
use penlight::clinical::knowledge::norms::{Method, Query, ROWS, Task, Unit, Who, lookup};
use penlight::clinical::knowledge::person::{Age, Sex};
use penlight::clinical::knowledge::rule::Basis;
use penlight::clinical::knowledge::rules;
use penlight::clinical::tasks::breath::judge as breath;
use penlight::clinical::tasks::compared::Judged;
use penlight::clinical::tasks::longest::voice::{Held, Sound, longest, no_ratio, s_to_z};
use penlight::clinical::tasks::syllables::speech::{Repeated, Syllables, Timing, repeated};
use penlight::measure::units::Seconds;
use penlight::wording::norms;
use proptest::prelude::*;
use proptest::sample::select;

const LANGUAGES: [Option<&str>; 12] = [
    None,
    Some("en"),
    Some("he"),
    Some("ta"),
    Some("ja"),
    Some("zh-MY"),
    Some("ar-JO"),
    Some("pt-BR"),
    Some("da"),
    Some("fr"),
    Some("not shown"),
    Some(""),
];

const SEXES: [Option<Sex>; 3] = [None, Some(Sex::Female), Some(Sex::Male)];

/// Every age that can be given: months up to 35, then whole years up to 120 ([`Age`] has no
/// other; a year is its first month), "16 or over", and none.
fn ages() -> Vec<Option<Age>> {
    let mut ages = vec![None, Some(Age::Adult)];
    ages.extend((0..36).map(|m| Some(Age::Months(m))));
    ages.extend((1..=120).map(|y| Some(Age::Years(y))));
    ages
}

fn who() -> impl Strategy<Value = Who<'static>> {
    (select(ages()), select(&SEXES), select(&LANGUAGES)).prop_map(|(age, sex, language)| Who {
        age,
        sex,
        language,
    })
}

fn syllables() -> impl Strategy<Value = Syllables> {
    select(&Syllables::ALL)
}

/// A lookup gives a row that is of the age or is read for it, or a reason.
#[track_caller]
fn is_answered(query: &Query) {
    match lookup(query) {
        Ok(norm) => {
            let row = norm.row;
            let months = query.age.unwrap().at_least_months();
            let has = |(from, to): (u32, u32)| from <= months && months <= to;
            assert!(has(row.ages) || row.read.is_some_and(has), "{query:?}");
            assert_eq!(norm.fit.nearest_group, !has(row.ages), "{query:?}");
            assert!(
                (row.task, row.unit) == (query.task, query.unit),
                "{query:?}"
            );
            assert!(row.sex.is_none() || row.sex == query.sex, "{query:?}");
        }
        Err(why) => {
            let sentence = norms::no_norm(&why);
            assert!(sentence.starts_with("No ") && sentence.ends_with('.'));
        }
    }
}

/// Every age, both sexes and none, every task and method in every unit; in every language of a
/// table, one of none and none given by the methods of the tables, in three cases of these by any other. Where a
/// task has no row in a unit, the answer hangs on neither sex nor language.
#[test]
fn every_lookup_is_answered() {
    let nobody = vec![(None, None)];
    let people = |languages: &[Option<&'static str>]| -> Vec<_> {
        SEXES
            .into_iter()
            .flat_map(|sex| languages.iter().map(move |language| (sex, *language)))
            .collect()
    };
    let (everybody, some) = (people(&LANGUAGES), people(&LANGUAGES[..3]));
    for &task in Task::ALL {
        for &unit in Unit::ALL {
            let rows = || ROWS.iter().filter(|r| (r.task, r.unit) == (task, unit));
            for &method in Method::ALL {
                let people = if rows().any(|row| row.method == method) {
                    &everybody
                } else if rows().next().is_some() {
                    &some
                } else {
                    &nobody
                };
                for age in ages() {
                    for &(sex, language) in people {
                        is_answered(&Query {
                            task,
                            method,
                            unit,
                            age,
                            sex,
                            language,
                        });
                    }
                }
            }
        }
    }
}

/// How grave: nothing, a pass, a note, a reason to refer. (A pass stands above a note in `Level`,
/// which is about what it says of a screen.) Warnings about the finger are about quick taps.
fn gravity(flags: &[Flag]) -> u8 {
    flags
        .iter()
        .filter(|f| f.rule().id != "speech.tap-limit")
        .map(|f| match f.level() {
            Level::Pass => 1,
            Level::Note => 2,
            Level::Refer => 3,
            Level::Incomplete | Level::Stop => 4,
        })
        .max()
        .unwrap_or(0)
}

#[track_caller]
fn grounded(flags: &[Flag]) {
    for flag in flags {
        let rule = flag.rule();
        assert!(rules::ALL.iter().any(|r| r.id == rule.id));
        match rule.basis {
            Basis::Published(sources) => assert!(!sources.is_empty()),
            Basis::LocalPolicy { why, .. } => assert!(!why.is_empty()),
        }
        assert!(!flag.domain().decides());
        assert!(flag.level() != Level::Stop && flag.level() != Level::Incomplete);
        assert!(flag.reason().ends_with('.'));
    }
}

/// Above a note only beside the person's own group.
#[track_caller]
fn own_group_only(judged: &Judged) {
    let own = judged
        .compared
        .as_ref()
        .is_ok_and(|c| c.norm.fit.is_own() && c.place.z.is_some());
    if !own {
        assert!(judged.flags.iter().all(|f| f.level() == Level::Note));
    }
}

fn millis(ms: u32) -> Seconds {
    Seconds::new(f64::from(ms) / 1000.0).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn any_lookup_is_answered(
        task in select(Task::ALL), method in select(Method::ALL), unit in select(Unit::ALL),
        who in who(),
    ) {
        let Who { age, sex, language } = who;
        is_answered(&Query { task, method, unit, age, sex, language });
    }

    /// By the watch: more time is never lighter.
    #[test]
    fn slower_by_the_watch_is_never_lighter(
        what in syllables(), who in who(), table in any::<bool>(), other in 1_u32..40,
        time in 1_500_u32..30_000, more in 0_u32..10_000,
    ) {
        let of_table = if what == Syllables::PaTaKa { 10 } else { 20 };
        let repetitions = NonZeroU32::new(if table { of_table } else { other }).unwrap();
        let judge = |time| {
            let timing = Timing::ByCount { repetitions, time };
            repeated(&Repeated { what, timing }, &who).unwrap()
        };
        let (quick, slow) = (judge(millis(time)), judge(millis(time + more)));
        prop_assert!(gravity(&slow.flags) >= gravity(&quick.flags));
        for judged in [&quick, &slow] {
            grounded(&judged.flags);
            own_group_only(judged);
        }
    }

    /// By the count: fewer in the same window is never lighter.
    #[test]
    fn slower_by_the_count_is_never_lighter(
        what in syllables(), who in who(), window in select(&[5, 7, 8, 10, 15_u32]),
        few in 0_u32..100, more in 0_u32..60, sequences in any::<bool>(),
    ) {
        let window = millis(window * 1_000);
        let judge = |count| {
            let timing = if sequences {
                Timing::Sequences { count, window }
            } else {
                Timing::Syllables { count, window }
            };
            repeated(&Repeated { what, timing }, &who).unwrap()
        };
        let (slow, quick) = (judge(few), judge(few + more));
        prop_assert!(gravity(&slow.flags) >= gravity(&quick.flags));
        for judged in [&quick, &slow] {
            grounded(&judged.flags);
            own_group_only(judged);
        }
    }

    #[test]
    fn a_shorter_sound_is_never_lighter(
        sound in select(&Sound::ALL), who in who(), short in 0_u32..40_000, more in 0_u32..20_000,
    ) {
        let judge = |ms| longest(sound, &Held::new(&[millis(ms)]).unwrap(), &who);
        let (short, long) = (judge(short), judge(short + more));
        prop_assert!(gravity(&short.flags) >= gravity(&long.flags));
        grounded(&short.flags);
        // Never above a note, and never a pass.
        prop_assert!(short.flags.iter().all(|f| f.level() == Level::Note));
    }

    /// The best, mean and shortest of trials lie in order, and one trial more never shortens.
    #[test]
    fn the_best_of_trials(times in prop::collection::vec(0_u32..60_000, 0..6)) {
        let trials: Vec<Seconds> = times.iter().copied().map(millis).collect();
        match Held::new(&trials) {
            Err(_) => prop_assert!(trials.is_empty() || trials.len() > Held::MOST),
            Ok(held) => {
                prop_assert_eq!(held.count(), trials.len());
                prop_assert!(trials.iter().all(|t| *t <= held.best()));
                prop_assert!(trials.iter().all(|t| *t >= held.shortest()));
                prop_assert!(held.mean().get() <= held.best().get() + 1e-9);
                prop_assert!(held.mean().get() >= held.shortest().get() - 1e-9);
            }
        }
    }

    /// More s to the same z is never lighter, and nothing panics.
    #[test]
    fn a_higher_ratio_is_never_lighter(
        who in who(), s in 0_u32..60_000, more in 0_u32..20_000, z in 0_u32..60_000,
    ) {
        let held = |ms| Held::new(&[millis(ms)]).unwrap();
        let judge = |s| s_to_z(Some(&held(s)), Some(&held(z)), &who);
        match (judge(s), judge(s + more)) {
            (Ok(low), Ok(high)) => {
                prop_assert!(gravity(high.flag.as_slice()) >= gravity(low.flag.as_slice()));
                grounded(high.flag.as_slice());
                if !who.by_adult_rules() {
                    prop_assert!(high.flag.iter().all(|f| f.level() == Level::Note));
                }
            }
            (Err(why), _) => {
                prop_assert!(s == 0 || z == 0);
                prop_assert_eq!(no_ratio(why).level(), Level::Note);
            }
            (Ok(_), Err(why)) => prop_assert!(false, "{why:?}"),
        }
    }

    #[test]
    fn a_lower_count_is_never_lighter(who in who(), low in 0_u32..80, more in 0_u32..80) {
        let (low, high) = (breath::count(low, &who), breath::count(low + more, &who));
        prop_assert!(gravity(&low) >= gravity(&high));
        grounded(&low);
        if !who.by_adult_rules() {
            prop_assert_eq!(gravity(&low), 2);
        }
    }

    #[test]
    fn the_phone_alone_never_passes(ms in 0_u32..60_000,
        seen in select(&[Bubbles::Continuous, Bubbles::Broken, Bubbles::NotSeen]),
    ) {
        let flags = [breath::five(millis(ms), seen), breath::hold(millis(ms))];
        let fact = BreathFact::Five { time: millis(ms), long_enough: ms >= 5_000, bubbles: seen };
        prop_assert_eq!(flags[0].fact(), &Fact::Breath(fact));
        grounded(&flags);
        prop_assert!(flags.iter().all(|flag| flag.level() == Level::Note));
    }
}

/// No time at all is an error in words, not a rate.
#[test]
fn no_time_is_an_error() {
    let window = Seconds::new(0.0).unwrap();
    for what in Syllables::ALL {
        for timing in [
            Timing::Syllables { count: 5, window },
            Timing::Sequences { count: 5, window },
            Timing::ByCount {
                repetitions: NonZeroU32::MIN,
                time: window,
            },
        ] {
            let error = repeated(&Repeated { what, timing }, &Who::default()).unwrap_err();
            assert!(error.to_string().contains("more than zero"));
        }
    }
}
