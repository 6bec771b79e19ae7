//! Every rule of speech, voice and breath with worked examples: what goes in, and the level it
//! must come to; none where the rule must keep silent. The figures are those of the publications
//! each rule names, just on and just off its line.

#![allow(clippy::unwrap_used)]

use crate::outside::groups;

use std::num::NonZeroU32;

use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::flag::{Domain, Flag, Level};
use penlight::clinical::findings::speech::Bubbles;
use penlight::clinical::findings::trial::{Answer, Mark, MarkKind, Trial};
use penlight::clinical::knowledge::norms::Who;
use penlight::clinical::knowledge::person::{Age, Sex};
use penlight::clinical::knowledge::rule::Basis;
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::breath::judge as breath;
use penlight::clinical::tasks::longest::voice::{Held, Sound, longest, no_ratio, s_to_z};
use penlight::clinical::tasks::syllables::speech::trials::{
    Outcome, Singles, Try, best, evenness, from_three, none_scored, sequences,
};
use penlight::clinical::tasks::syllables::speech::{Repeated, Syllables, Timing, repeated};
use penlight::measure::series::Series;
use penlight::measure::time::{Millis, PageLife, Stamp};
use penlight::measure::units::Seconds;

use Outcome::{Correct, CouldNot, Distorted};
use Syllables::{Ka, Pa, PaTaKa, Ta};

/// Rule id, input in words, what comes of it, the level expected of that rule.
type Example = (&'static str, &'static str, Vec<Flag>, Option<Level>);

const NOTE: Option<Level> = Some(Level::Note);
const PASS: Option<Level> = Some(Level::Pass);
const REFER: Option<Level> = Some(Level::Refer);

fn seconds(s: f64) -> Seconds {
    Seconds::new(s).unwrap()
}

/// A person of this age, of a sex and a language or none.
fn who(age: u8, sex: Option<Sex>, language: Option<&'static str>) -> Who<'static> {
    let age = Some(Age::Years(age));
    Who { age, sex, language }
}

fn aged(age: u8) -> Who<'static> {
    who(age, None, None)
}

fn speaks(age: u8, language: &'static str) -> Who<'static> {
    who(age, None, Some(language))
}

fn by_count(what: Syllables, repetitions: u32, time: f64, who: Who) -> Vec<Flag> {
    let timing = Timing::ByCount {
        repetitions: NonZeroU32::new(repetitions).unwrap(),
        time: seconds(time),
    };
    repeated(&Repeated { what, timing }, &who).unwrap().flags
}

/// Syllables in 10 seconds.
fn ten_seconds(what: Syllables, count: u32, who: Who) -> Vec<Flag> {
    let timing = Timing::Syllables {
        count,
        window: seconds(10.0),
    };
    repeated(&Repeated { what, timing }, &who).unwrap().flags
}

fn in_sequences(count: u32, who: Who) -> Vec<Flag> {
    let timing = Timing::Sequences {
        count,
        window: seconds(5.0),
    };
    let what = PaTaKa;
    repeated(&Repeated { what, timing }, &who).unwrap().flags
}

fn tries(outcomes: &[(Outcome, u32)]) -> Vec<Flag> {
    let tries: Vec<Try> = outcomes
        .iter()
        .map(|&(outcome, count)| Try {
            outcome,
            timing: Some(Timing::Syllables {
                count,
                window: seconds(5.0),
            }),
        })
        .collect();
    match best(Pa, &tries) {
        Some(_) => Vec::new(),
        None => vec![none_scored(Pa, tries.len())],
    }
}

fn singles(pa: Outcome, ta: Outcome, ka: Option<Outcome>, age: u8) -> Vec<Flag> {
    let (pa, ta) = (Some(pa), Some(ta));
    let (_, flag) = sequences(&Singles { pa, ta, ka }, &aged(age));
    flag.into_iter().collect()
}

fn held(times: &[f64]) -> Held {
    let times: Vec<Seconds> = times.iter().copied().map(seconds).collect();
    Held::new(&times).unwrap()
}

fn ah(times: &[f64], who: Who) -> Vec<Flag> {
    longest(Sound::Ah, &held(times), &who).flags
}

/// A trial of "ah" as it is kept: so many milliseconds between the touches, or no touch and no voice.
fn ah_trial(length: Option<i64>) -> Vec<Flag> {
    let mut trial = Trial::new(TaskId::LongestAh, 0, None);
    let at = |ms| Stamp {
        life: PageLife(1),
        mono: Millis(ms),
        wall: Millis(ms),
    };
    match length {
        Some(ms) => {
            for (kind, ms) in [(MarkKind::Start, 0), (MarkKind::End, ms)] {
                trial.marks.push(Mark { at: at(ms), kind });
            }
        }
        None => {
            let answer = Answer::Choice("no-voice".to_owned());
            trial.answers.insert("could-not".to_owned(), answer);
        }
    }
    let exam = Exam {
        trials: vec![trial],
        ..Exam::default()
    };
    tasks::flags(TaskId::LongestAh, &exam)
}

fn s_z(s: &[f64], z: &[f64], who: Who) -> Vec<Flag> {
    match s_to_z(Some(&held(s)), Some(&held(z)), &who) {
        Ok(ratio) => ratio.flag.into_iter().collect(),
        Err(why) => vec![no_ratio(why)],
    }
}

#[rustfmt::skip] // One example a line.
fn speech() -> Vec<Example> {
    let man = |age| who(age, Some(Sex::Male), None);
    let woman = |age| who(age, Some(Sex::Female), None);
    let taps = |gap: i64| Series::new((0..9).map(|i| Millis(gap * i + i % 2)));
    let ages = |age| from_three(Some(age)).into_iter().collect::<Vec<_>>();
    let (child, sequence, single) = (
        "speech.child-time",
        "speech.adult-sequence",
        "speech.older-single",
    );
    let (line, older) = ("speech.adult-line", "speech.older-line");
    vec![
        (child, "6 years, pa, 6.8 s", by_count(Pa, 20, 6.8, aged(6)), REFER),
        (child, "English, 6.8 s", by_count(Pa, 20, 6.8, speaks(6, "en-GB")), REFER),
        (child, "Dutch, 6.8 s", by_count(Pa, 20, 6.8, speaks(6, "nl")), NOTE),
        (child, "6.7 s: watch", by_count(Pa, 20, 6.7, aged(6)), NOTE),
        (child, "5.8 s: watch", by_count(Pa, 20, 5.8, aged(6)), NOTE),
        (child, "5.7 s: usual", by_count(Pa, 20, 5.7, aged(6)), PASS),
        (child, "15 repetitions", by_count(Pa, 15, 6.8, aged(6)), None),
        (child, "13 years, 8.7 s", by_count(PaTaKa, 10, 8.7, aged(13)), REFER),
        (child, "14 years", by_count(PaTaKa, 10, 8.7, aged(14)), None),
        (child, "counted by time", ten_seconds(Pa, 20, aged(6)), None),
        (sequence, "30 years, 4.8", ten_seconds(PaTaKa, 48, aged(30)), REFER),
        (sequence, "30 years, 4.9", ten_seconds(PaTaKa, 49, aged(30)), PASS),
        (sequence, "French, 4.8", ten_seconds(PaTaKa, 48, speaks(30, "fr")), NOTE),
        (sequence, "French, 6.2", ten_seconds(PaTaKa, 62, speaks(30, "fr")), NOTE),
        (sequence, "50 years: nearest group", ten_seconds(PaTaKa, 40, aged(50)), NOTE),
        (sequence, "Hebrew, 70, 3.1", ten_seconds(PaTaKa, 31, speaks(70, "he")), REFER),
        (sequence, "Hebrew, 70, 3.2", ten_seconds(PaTaKa, 32, speaks(70, "he")), PASS),
        (sequence, "English, 70, 3.1", ten_seconds(PaTaKa, 31, speaks(70, "en")), NOTE),
        (sequence, "by the sequence", in_sequences(5, aged(30)), None),
        (sequence, "10 by a watch", by_count(PaTaKa, 10, 9.0, aged(30)), None),
        (line, "30 years, 5.3", ten_seconds(PaTaKa, 53, aged(30)), NOTE),
        (line, "30 years, 5.4", ten_seconds(PaTaKa, 54, aged(30)), None),
        (line, "70 years: another norm", ten_seconds(PaTaKa, 40, aged(70)), None),
        (single, "80, Japanese, ka 4.3", ten_seconds(Ka, 43, speaks(80, "ja")), REFER),
        (single, "80, Japanese, ka 4.4", ten_seconds(Ka, 44, speaks(80, "ja")), PASS),
        (single, "80, English, ka 4.3", ten_seconds(Ka, 43, speaks(80, "en")), NOTE),
        (single, "70: nearest group", ten_seconds(Ka, 43, aged(70)), NOTE),
        (single, "Tamil, 55, ka 4.0", ten_seconds(Ka, 40, speaks(55, "ta")), REFER),
        (single, "30 years", ten_seconds(Ka, 40, aged(30)), None),
        (older, "70, pa 6.1", ten_seconds(Pa, 61, aged(70)), NOTE),
        (older, "70, pa 6.2", ten_seconds(Pa, 62, aged(70)), None),
        (older, "64, pa 6.1", ten_seconds(Pa, 61, aged(64)), None),
        (older, "man, ta 5.1", ten_seconds(Ta, 51, man(70)), NOTE),
        (older, "man, ta 5.2", ten_seconds(Ta, 52, man(70)), None),
        (older, "woman, ta 5.3", ten_seconds(Ta, 53, woman(70)), NOTE),
        (older, "woman, ta 5.4", ten_seconds(Ta, 54, woman(70)), None),
        (older, "sex not given, ta 5.3", ten_seconds(Ta, 53, aged(70)), NOTE),
        ("speech.no-norm", "14 years", by_count(Pa, 20, 3.0, aged(14)), NOTE),
        ("speech.no-norm", "5 repetitions", by_count(Pa, 5, 1.0, aged(8)), NOTE),
        ("speech.no-norm", "child by time", ten_seconds(Pa, 40, aged(8)), NOTE),
        ("speech.no-norm", "adult, pa", ten_seconds(Pa, 40, aged(30)), NOTE),
        ("speech.no-norm", "age not given", ten_seconds(Pa, 40, Who::default()), NOTE),
        ("speech.no-norm", "by the sequence", in_sequences(9, aged(30)), NOTE),
        ("speech.no-norm", "6 years has a norm", by_count(Pa, 20, 5.0, aged(6)), None),
        ("speech.best-trial", "the quick one is distorted", tries(&[(Correct, 28), (Distorted, 33), (Correct, 30)]), None),
        ("speech.best-trial", "none is correct", tries(&[(Distorted, 33), (CouldNot, 0)]), NOTE),
        ("speech.not-scored", "no voice came", ah_trial(None), NOTE),
        ("speech.not-scored", "start and stop at one moment", ah_trial(Some(0)), NOTE),
        ("speech.not-scored", "12.0 s", ah_trial(Some(12_000)), None),
        ("speech.skip-longer", "4 years, one of three", singles(Correct, Distorted, Some(CouldNot), 4), NOTE),
        ("speech.skip-longer", "4 years, two of three", singles(Correct, Correct, Some(CouldNot), 4), None),
        ("speech.skip-longer", "4 years, ka not tried yet", singles(Correct, Distorted, None, 4), None),
        ("speech.skip-longer", "adult", singles(CouldNot, CouldNot, Some(CouldNot), 40), None),
        ("speech.from-three", "35 months", ages(Age::Months(35)), NOTE),
        ("speech.from-three", "2 years", ages(Age::Years(2)), NOTE),
        ("speech.from-three", "3 years", ages(Age::Years(3)), None),
        ("speech.tap-limit", "7.1 taps", ten_seconds(Pa, 71, aged(70)), NOTE),
        ("speech.tap-limit", "7.0 taps", ten_seconds(Pa, 70, aged(70)), None),
        ("speech.tap-limit", "20 in 2.6 s", by_count(Pa, 20, 2.6, aged(6)), NOTE),
        ("speech.tap-limit", "10 pa-ta-ka in 2.6 s", by_count(PaTaKa, 10, 2.6, aged(8)), None),
        ("speech.tapper", "9 taps", vec![evenness(&taps(165)).unwrap()], NOTE),
    ]
}

#[rustfmt::skip] // One example a line.
fn voice() -> Vec<Example> {
    let girl = |age| who(age, Some(Sex::Female), None);
    let none = Who::default();
    let (adult, child) = ("voice.longest-ah", "voice.longest-child");
    let (refer, border) = ("voice.s-z", "voice.s-z-border");
    vec![
        (adult, "40 years, 9.9 s", ah(&[8.0, 9.9, 9.0], aged(40)), NOTE),
        (adult, "40 years, best of three 10.0 s", ah(&[8.0, 10.0], aged(40)), None),
        (adult, "age not given, 9.0 s", ah(&[9.0], none), NOTE),
        (adult, "8 years, 5.0 s", ah(&[5.0], aged(8)), None),
        // TAV-C, 7 to 9 years: 7.98 - 1.645 x 1.98 = 4.72.
        (child, "8 years, 4.7 s", ah(&[4.7], aged(8)), NOTE),
        (child, "8 years, 8.0 s", ah(&[8.0], aged(8)), NOTE),
        (child, "11 years: no SD", ah(&[3.0], girl(11)), None),
        (child, "adult", ah(&[5.0], aged(40)), None),
        (refer, "20.0 to 14.0", s_z(&[20.0], &[14.0], aged(40)), REFER),
        (refer, "15.4 to 11.0", s_z(&[15.4], &[11.0], aged(40)), None),
        (refer, "best of trials", s_z(&[13.0, 15.5], &[9.0, 11.0], aged(40)), REFER),
        (refer, "z not held", s_z(&[15.0], &[0.0], aged(40)), NOTE),
        (refer, "8 years, 2.0", s_z(&[10.0], &[5.0], aged(8)), None),
        (border, "1.40", s_z(&[14.0], &[10.0], aged(40)), NOTE),
        (border, "1.20", s_z(&[12.0], &[10.0], aged(40)), NOTE),
        (border, "1.19", s_z(&[11.9], &[10.0], aged(40)), None),
        (border, "1.41", s_z(&[14.1], &[10.0], aged(40)), None),
        ("voice.s-z-child", "8 years, 2.0", s_z(&[10.0], &[5.0], aged(8)), NOTE),
        ("voice.s-z-child", "adult", s_z(&[10.0], &[5.0], aged(40)), None),
    ]
}

#[rustfmt::skip] // One example a line.
fn breath() -> Vec<Example> {
    let count = |n, who: Who| breath::count(n, &who);
    let five = |time, seen| vec![breath::five(seconds(time), seen)];
    let check = "breath.count-check";
    vec![
        ("breath.count", "24", count(24, aged(50)), REFER),
        ("breath.count", "25", count(25, aged(50)), PASS),
        ("breath.count", "age not given, 24", count(24, Who::default()), REFER),
        ("breath.count", "10 years, 12", count(12, aged(10)), None),
        (check, "24", count(24, aged(50)), None),
        (check, "25", count(25, aged(50)), NOTE),
        (check, "40", count(40, aged(50)), NOTE),
        (check, "41", count(41, aged(50)), None),
        ("breath.count-child", "10 years, 12", count(12, aged(10)), NOTE),
        ("breath.count-child", "adult", count(12, aged(50)), None),
        ("breath.hold", "3.0 s", vec![breath::hold(seconds(3.0))], NOTE),
        ("breath.five", "5.0 s, seen", five(5.0, Bubbles::Continuous), NOTE),
        ("breath.five", "9.0 s, not seen", five(9.0, Bubbles::NotSeen), NOTE),
    ]
}

fn all() -> Vec<Example> {
    let mut all = speech();
    all.extend(voice());
    all.extend(breath());
    all
}

#[test]
fn every_example_comes_to_its_level() {
    for (id, input, flags, expected) in all() {
        let of_rule: Vec<_> = flags.iter().filter(|f| f.rule().id == id).collect();
        assert!(of_rule.len() <= 1, "{id}, {input}: {of_rule:?}");
        // Every fact can be written.
        assert!(
            flags.iter().all(|f| !f.fact().key().is_empty()),
            "{id}, {input}"
        );
        let level = of_rule.first().map(|f| f.level());
        assert_eq!(level, expected, "{id}, {input}: {flags:?}");
    }
}

#[test]
fn every_rule_has_an_example_that_raises_it() {
    let examples = all();
    for rule in rules::ALL {
        if groups::stands_for(groups::SPEECH, rule.id) {
            let raised = examples
                .iter()
                .any(|(id, _, _, expected)| *id == rule.id && expected.is_some());
            assert!(raised, "{} has no example that raises it", rule.id);
        }
    }
}

#[test]
fn every_flag_is_by_a_listed_rule_with_its_ground_and_never_decides() {
    for (id, input, flags, _) in all() {
        for flag in flags {
            let rule = flag.rule();
            assert!(rules::ALL.iter().any(|r| r.id == rule.id), "{}", rule.id);
            match rule.basis {
                Basis::Published(sources) => assert!(!sources.is_empty(), "{}", rule.id),
                Basis::LocalPolicy { why, .. } => assert!(!why.is_empty(), "{}", rule.id),
            }
            let domain = match rule.id.starts_with("breath.") {
                true => Domain::Breathing,
                false => Domain::SpeechVoice,
            };
            assert_eq!(flag.domain(), domain, "{id}, {input}");
            assert!(!flag.domain().decides());
            assert!(matches!(
                flag.level(),
                Level::Note | Level::Pass | Level::Refer
            ));
        }
    }
}

/// Words for a ward: no abbreviations, no bare scores, and no diagnosis.
#[test]
fn what_is_said_is_in_plain_words() {
    for (id, input, flags, _) in all() {
        for flag in flags {
            let reason = flag.reason();
            for short in [
                " SD",
                "SDs",
                "z =",
                "z-",
                "MPT",
                "DDK",
                "AMR",
                "SMR",
                "syl/s",
                " Hz",
                " ST",
                "n =",
                "..",
                "  ",
                "NaN",
                "not known ",
            ] {
                assert!(
                    !reason.contains(short),
                    "{id}, {input}: \"{short}\" in \"{reason}\""
                );
            }
            assert!(reason.ends_with('.'), "{id}, {input}: {reason}");
            if flag.level() == Level::Refer {
                assert!(
                    reason.contains("not a diagnosis"),
                    "{id}, {input}: {reason}"
                );
            }
        }
    }
}

/// A conclusion names its group, and says where that is not the person's own.
#[test]
fn a_note_from_another_group_says_so() {
    let reason = |flags: Vec<Flag>| flags[0].reason().to_owned();
    let other = reason(ten_seconds(PaTaKa, 48, speaks(30, "fr")));
    assert!(other.contains("The group speaks another language."));
    let nearest = reason(ten_seconds(PaTaKa, 48, aged(50)));
    assert!(nearest.contains("Nearest published group: English speakers"));
    let unknown = reason(ten_seconds(PaTaKa, 48, aged(30)));
    assert!(unknown.contains("The person's language was not given."));
    let own = reason(ten_seconds(PaTaKa, 48, speaks(30, "en")));
    assert!(!own.contains("language"), "{own}");
}

/// The trial that is scored is the fastest correct one, the first of equals.
#[test]
fn the_fastest_correct_trial_is_scored() {
    let of = |outcome, count| Try {
        outcome,
        timing: Some(Timing::Syllables {
            count,
            window: seconds(5.0),
        }),
    };
    let tries = [
        of(Correct, 28),
        of(Distorted, 33),
        of(Correct, 30),
        of(Correct, 30),
    ];
    let (at, trial) = best(Pa, &tries).unwrap();
    assert_eq!((at, trial.rate().unwrap().get()), (2, 6.0));
    assert!(best(Pa, &[of(CouldNot, 20)]).is_none());
    assert!(best(Pa, &[]).is_none());
    // A window of no length has no rate, and no trial that hides another.
    let broken = Try {
        outcome: Correct,
        timing: Some(Timing::Syllables {
            count: 30,
            window: seconds(0.0),
        }),
    };
    let (at, _) = best(Pa, &[broken, of(Correct, 20)]).unwrap();
    assert_eq!(at, 1);
}

/// Both sides of the line of the Brazilian children are notes, in different words: 4.72 s.
#[test]
fn a_usual_ah_of_a_child_proves_little() {
    let says = |time, words: &str| {
        let flags = ah(&[time], aged(8));
        let reason = flags[0].reason();
        assert!(reason.contains(words), "{reason}");
    };
    says(4.7, ": short beside this group;");
    says(4.8, ": not short beside this group, which proves little");
}
