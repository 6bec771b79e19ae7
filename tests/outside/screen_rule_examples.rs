//! A worked example for every rule of the gate, the breathing, the dry swallows, the 90 mL of water
//! and the decision: an examination that raises it, and what it says. Which publication a rule
//! rests on stands in its row of `rules.csv`.

#![allow(clippy::unwrap_used, clippy::panic)]

use crate::outside::groups;
use crate::support::*;
use penlight::clinical::decision::assess::{assess, flags};
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::answered::Answered;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::flag::{Domain, Level};
use penlight::clinical::findings::gate::ITEMS;
use penlight::clinical::findings::trial::{MarkKind, Trial};
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::by_mouth::{lag, saturation};
use penlight::clinical::tasks::spec::NOT_VALID;
use penlight::clinical::tasks::{breathing, water as water90};
use penlight::measure::time::Millis;

/// What is raised on the screen that was chosen, the swallow screen where none was.
fn raised(exam: &Exam) -> Vec<(&'static str, Level)> {
    flags(exam.screen.unwrap_or(ScreenId::Swallow).screen(), exam)
        .iter()
        .map(|f| (f.rule().id, f.level()))
        .collect()
}

fn with_sign(sign: Sign, after: i64) -> Exam {
    let mut trial = water();
    mark(&mut trial, MarkKind::Sign(sign), at(LAST_SWALLOW + after));
    exam_with_water(trial)
}

/// A cough that late, of which the clinician says that it was within the minute.
fn said_within(after: i64) -> Exam {
    let mut exam = with_sign(Sign::Cough, after);
    let trial = exam.trials.last_mut().unwrap();
    let id = lag::id(at(LAST_SWALLOW + after));
    choose(trial, &id, lag::WITHIN);
    exam
}

/// SpO2 before the water, and the lowest since.
fn fallen(before: i32, lowest: i32) -> Exam {
    let mut trial = water();
    number(&mut trial, saturation::LOWEST, lowest * 10);
    let mut exam = exam_with_water(trial);
    number(&mut exam.trials[0], breathing::SATURATION, before * 10);
    exam
}

fn child(months: u8) -> Exam {
    Exam {
        age: Some(Age::Months(months)),
        ..exam_with_water(water())
    }
}

fn with_voice(before: &str, after: &str) -> Exam {
    let mut trial = water();
    choose(&mut trial, water90::VOICE_BEFORE, before);
    choose(&mut trial, water90::VOICE_AFTER, after);
    exam_with_water(trial)
}

/// Rule, an examination, and the level at which it is raised.
fn examples() -> Vec<(&'static str, Exam, Level)> {
    use Level::{Incomplete, Note, Pass, Refer, Stop};
    let clear = || exam_with_water(water());
    let breathing = |n| {
        let mut exam = clear();
        exam.trials[0] = breaths(n);
        exam
    };
    let mut unfinished = water();
    unfinished.answers = Default::default();
    let mut left = water();
    choose(&mut left, water90::CUP, water90::SOME_LEFT);
    let mut low = breaths(16);
    number(&mut low, breathing::SATURATION, 910);
    let mut saturated = clear();
    saturated.trials[0] = low;
    let mut not_felt = Trial::new(TaskId::DrySwallow, 1, None);
    choose(&mut not_felt, NOT_VALID, "not-felt");
    let mut not_asked = clear();
    not_asked.gate.0.remove("awake");
    let mut old = clear();
    for trial in &mut old.trials {
        trial.begun_on.push(Answered::Breaths);
    }
    let mut taken_back = clear();
    for trial in &mut taken_back.trials {
        trial.taken_back.push((Sign::Cough, Some(Millis(600_000))));
    }
    let mut uncounted = clear();
    uncounted.trials.remove(0);
    let mut sip = trial(
        TaskId::Sips,
        &[(MarkKind::Start, 0), (MarkKind::End, 1_500)],
    );
    number(&mut sip, "sip", 30);
    let mut child_sip = child(30);
    child_sip.trials.push(sip);
    let ageless = Exam {
        age: None,
        ..clear()
    };
    let mut all = vec![
        ("gate.not-asked", not_asked, Incomplete),
        ("gate.ready-old", old, Incomplete),
        ("breathing.rate", breathing(25), Incomplete),
        ("breathing.rate", breathing(8), Incomplete),
        ("breathing.rate", breathing(21), Note),
        ("breathing.rate", breathing(11), Note),
        ("breathing.spo2", saturated, Incomplete),
        ("breathing.spo2-low", fallen(96, 91), Stop),
        ("breathing.spo2-fall", fallen(96, 93), Note),
        ("breathing.child", child(30), Incomplete),
        ("breathing.not-counted", uncounted, Incomplete),
        ("dry.few", exam_with_dry(dry(&[4_000, 19_000])), Refer),
        (
            "dry.few",
            exam_with_dry(dry(&[3_000, 15_000, 30_000])),
            Pass,
        ),
        ("dry.none", exam_with_dry(dry(&[])), Refer),
        ("dry.not-valid", exam_with_dry(not_felt), Note),
        ("dry.adults", child(30), Note),
        ("water.clear", clear(), Pass),
        ("water.left", exam_with_water(left), Refer),
        ("water.unfinished", exam_with_water(unfinished), Incomplete),
        ("water.after-watch", with_sign(Sign::Cough, 61_000), Note),
        ("sign.within", said_within(61_000), Note),
        ("sign.taken-back", taken_back, Note),
        ("water.cough", said_within(61_000), Refer),
        ("water.baseline-voice", with_voice("wet", "wet"), Note),
        ("water.from-two", child(20), Incomplete),
        ("water.cough", with_sign(Sign::Cough, 60_000), Refer),
        ("water.voice", with_voice("clear", "wet"), Refer),
        ("water.choke", with_sign(Sign::Choke, 1_000), Stop),
        ("water.interrupted", with_sign(Sign::Pause, -1_000), Refer),
        ("water.spill", with_sign(Sign::Spill, -1_000), Refer),
        (
            "water.breathing-change",
            with_sign(Sign::BreathingChange, 5_000),
            Stop,
        ),
        ("water.no-swallow", with_sign(Sign::NoSwallow, -1_000), Stop),
        (
            "water.asked-to-stop",
            with_sign(Sign::AskedToStop, -1_000),
            Refer,
        ),
        (
            "water.throat-clear",
            with_sign(Sign::ThroatClear, 5_000),
            Note,
        ),
        ("person.age", ageless, Note),
        ("person.child-trial", child_sip, Note),
    ];
    all.extend(gate());
    all.extend(other_trials());
    all
}

/// Each answer of the gate but "holds": a caution is a note, every other one keeps the screen
/// incomplete until it is put right or gone past.
#[rustfmt::skip] // One answer a line.
fn gate() -> Vec<(&'static str, Exam, Level)> {
    use Level::{Incomplete, Note};
    let answers = [
        ("gate.identity", "identity", "unsure", Incomplete),
        ("gate.consent", "consent", "no", Incomplete),
        ("gate.language", "language", "no", Note),
        ("gate.aids", "aids", "no", Incomplete),
        ("gate.aids", "aids", "none-here", Note),
        ("gate.nothing-by-mouth", "nothing-by-mouth", "other-reason", Incomplete),
        ("gate.diet", "diet", "modified", Incomplete),
        ("gate.tube", "tube", "tube", Incomplete),
        ("gate.clot-treatment", "clot-treatment", "recent", Incomplete),
        ("gate.fluids", "fluids", "restricted", Note),
        ("gate.allergy", "allergy", "allergy", Note),
        ("gate.spine", "spine", "limit", Note),
        ("gate.risk-plan", "risk-plan", "plan", Note),
        ("gate.airway-tube", "airway-tube", "tracheostomy", Incomplete),
        ("gate.airway-tube", "airway-tube", "laryngectomy", Incomplete),
        ("gate.mask", "mask", "mask", Incomplete),
        ("gate.extubation", "extubation", "recent", Incomplete),
        ("gate.high-flow", "high-flow", "high-flow", Note),
        ("gate.chest", "chest", "chest", Note),
        ("gate.distress", "distress", "distress", Incomplete),
        ("gate.new-weakness", "new-weakness", "new", Incomplete),
        ("gate.new-weakness", "new-weakness", "known", Note),
        ("gate.awake", "awake", "drowsy", Incomplete),
        ("gate.awake", "awake", "no", Incomplete),
        ("gate.awake", "awake", "unrousable", Incomplete),
        ("gate.upright", "upright", "part", Note),
        ("gate.upright", "upright", "flat", Incomplete),
        ("gate.saliva", "saliva", "no", Incomplete),
        ("gate.cough", "cough", "no", Incomplete),
        ("gate.requests", "requests", "no", Note),
        ("gate.mouth", "mouth", "no", Incomplete),
        ("gate.suction", "suction", "none", Note),
    ];
    let exceptions: usize = ITEMS.iter().map(|item| item.exceptions.len()).sum();
    assert_eq!(answers.len(), exceptions, "an answer of the gate without an example");
    answers
        .into_iter()
        .map(|(rule, item, answer, level)| {
            let mut exam = exam_with_water(water());
            exam.gate.0.insert(item.to_owned(), answer.to_owned());
            (rule, exam, level)
        })
        .collect()
}

/// Trials beside the three of the swallow screen, and what is about the record itself.
fn other_trials() -> Vec<(&'static str, Exam, Level)> {
    use Level::{Incomplete, Note, Pass};
    let with = |trial: Trial| {
        let mut exam = exam_with_water(water());
        exam.trials.push(trial);
        exam
    };
    let unended = |mut trial: Trial| {
        trial
            .marks
            .retain(|m| !matches!(m.kind, MarkKind::End | MarkKind::WatchOver));
        trial
    };
    let own = |trials: Vec<Trial>| Exam {
        screen: Some(ScreenId::OwnTrials),
        ..exam([vec![breaths(16)], trials].concat())
    };
    let mut passed = exam_with_dry(dry(&[4_000, 19_000]));
    passed.trials.truncate(2);
    let hold = holds(TaskId::Water90, &passed).remove(0);
    passed.went_on.push(went_on(&hold.id, Role::Slp));
    passed.went_on[0].led_to.push(water().number);
    passed.trials.push(water());
    let unread = Exam {
        unread: 1,
        ..exam_with_water(water())
    };
    // The second one 10 s after the first was swallowed, and a cough with it.
    let mut close = own_trial(2, "f4", &[(Sign::Cough, 1_000)]);
    for mark in close.marks.iter_mut() {
        mark.at = mark.at.later(Millis(-87_000));
    }
    let thirty = |n: i64| {
        let mut marks = vec![(MarkKind::Start, 0)];
        marks.extend((0..n).map(|i| (MarkKind::Tap, 500 + i * 3_000)));
        marks.push((MarkKind::WindowOver, 30_000));
        trial(TaskId::Breaths30, &marks)
    };
    let mut uncounted = with(thirty(9));
    uncounted.trials.remove(0);
    let on_oxygen = |percent: i32| {
        let mut exam = exam_with_water(water());
        let counted = &mut exam.trials[0];
        number(counted, breathing::SATURATION, percent * 10);
        choose(counted, breathing::OXYGEN, "oxygen");
        number(counted, breathing::TARGET, 880);
        choose(counted, breathing::CONFIRMED, "yes");
        exam
    };
    let clear = |n| own_trial(n, "d0", &[]);
    vec![
        ("hold.passed", passed, Note),
        ("record.unread", unread, Incomplete),
        ("breathing.thirty", uncounted, Incomplete),
        ("breathing.thirty", with(thirty(9)), Note),
        ("breathing.second-scale", on_oxygen(93), Note),
        ("breathing.second-scale", on_oxygen(97), Incomplete),
        ("own.clear", own(vec![clear(1), clear(2)]), Pass),
        ("own.unfinished", own(vec![unended(clear(1))]), Incomplete),
        (
            "own.overlap",
            own(vec![own_trial(1, "d2", &[]), close]),
            Note,
        ),
        (
            "timed-cup.unfinished",
            with(unended(timed(100, 0, 9_000, 5))),
            Incomplete,
        ),
        (
            "eaten.unfinished",
            with(unended(eaten(2, 7, 1, 30_000))),
            Incomplete,
        ),
        (
            "meal.tally",
            with(tallied(&[(MarkKind::Tap, 1_000)], 60_000)),
            Note,
        ),
    ]
}

/// Every examination of an example, with its screen.
pub(crate) fn wholes() -> impl Iterator<Item = (ScreenId, Exam)> {
    let examples = examples().into_iter();
    examples.map(|(_, exam, _)| (exam.screen.unwrap_or(ScreenId::Swallow), exam))
}

#[test]
fn every_example_raises_its_rule() {
    for (rule, exam, level) in examples() {
        let raised = raised(&exam);
        assert!(
            raised.contains(&(rule, level)),
            "{rule} at {level:?}: {raised:?}"
        );
    }
}

#[test]
fn every_rule_of_these_groups_has_an_example() {
    let examples = examples();
    for rule in rules::ALL {
        let ours = groups::stands_for(groups::SCREEN, rule.id);
        let raised = examples.iter().any(|(id, ..)| *id == rule.id);
        assert_eq!(ours, raised, "{}", rule.id);
    }
}

/// `decision.headline` and `decision.also-found`: a ratio or a mouth never makes the headline.
#[test]
fn what_is_not_about_swallowing_stands_apart() {
    let mut clear = assess(ScreenId::Swallow.screen(), &exam_with_water(water()));
    let verdict = clear.verdict;
    let mut all: Vec<_> = clear.clear.drain(..).collect();
    all.push(rules::MOUTH_OPENING.flag(
        Level::Refer,
        Domain::Mouth,
        penlight::clinical::findings::fact::VisitFact::AgeNotGiven,
    ));
    all.push(rules::VOICE_S_Z.flag(
        Level::Refer,
        Domain::SpeechVoice,
        penlight::clinical::findings::fact::VisitFact::AgeNotGiven,
    ));
    let decision = penlight::clinical::decision::verdict::decide(all, None);
    assert_eq!(decision.verdict, verdict);
    assert_eq!(decision.also.len(), 2);
    assert!(decision.reasons.is_empty());
}

/// Every rule names sources that are in the list, and every published row and rule can be shown
/// with a mark in words.
#[test]
fn everything_shown_names_where_it_comes_from() {
    for rule in rules::ALL {
        assert!(
            !rule.looks_at.is_empty() && rule.says.ends_with('.'),
            "{}",
            rule.id
        );
        assert!(!rule.basis_line().is_empty(), "{}", rule.id);
        for named in rule.sources() {
            assert!(
                source::ALL.iter().any(|s| s.key == named.key),
                "{}",
                named.key
            );
        }
    }
    for row in penlight::clinical::knowledge::norms::ROWS {
        assert!(source::ALL.iter().any(|s| s.key == row.source.key));
        assert!(!row.mark.words().is_empty() && !row.population.is_empty());
    }
}

/// A reading at which nothing would be given stops, for respiratory safety (NEWS2's gravest band,
/// borrowed; a design choice). It is called by what it is.
#[test]
fn a_low_saturation_in_a_trial_stops_for_respiratory_safety() {
    let verdict = |exam: &Exam| assess(ScreenId::Swallow.screen(), exam).verdict;
    assert_eq!(verdict(&fallen(96, 92)), Verdict::Pass);
    assert_eq!(verdict(&fallen(96, 91)), Verdict::Stop);
    // Without a reading before it is as low.
    let mut unread = fallen(96, 85);
    unread.trials[0] = breaths(16);
    assert_eq!(verdict(&unread), Verdict::Stop);
    // Below a prescribed target one point is enough.
    let mut target = fallen(90, 87);
    number(&mut target.trials[0], breathing::TARGET, 880);
    assert_eq!(verdict(&target), Verdict::Stop);
    // No "no sign seen" stands beside it, and nothing more is given by mouth without a reason.
    let told = raised(&fallen(96, 91));
    assert!(told.contains(&("breathing.spo2-low", Level::Stop)));
    assert!(!told.iter().any(|(rule, _)| *rule == "water.clear"));
    let held = holds(TaskId::TimedWater, &fallen(96, 91));
    assert!(
        held.iter()
            .any(|h| h.says.contains("too low to give anything"))
    );
}

/// BRI18: a fall is not supported as a sign of aspiration, and many studies used one within the error
/// of the device (about 2 %): three points or more are told, and decide nothing alone.
#[test]
fn a_fall_of_saturation_is_told_and_stops_only_with_a_sign_or_faster_breathing() {
    let verdict = |exam: &Exam| assess(ScreenId::Swallow.screen(), exam).verdict;
    let fell = |exam: &Exam| {
        let mut told = raised(exam).into_iter();
        told.find(|(rule, _)| *rule == "breathing.spo2-fall")
    };
    assert_eq!(fell(&fallen(96, 94)), None);
    assert_eq!(
        fell(&fallen(96, 93)),
        Some(("breathing.spo2-fall", Level::Note))
    );
    assert_eq!(verdict(&fallen(96, 93)), Verdict::Pass);
    let said = flags(ScreenId::Swallow.screen(), &fallen(96, 93));
    let said = said.iter().find(|f| f.rule().id == "breathing.spo2-fall");
    let said = said.unwrap().reason();
    assert!(said.contains("from 96 to 93 %") && said.contains("does not show aspiration"));

    let mut with_sign = fallen(96, 93);
    let cup = with_sign
        .trials
        .iter_mut()
        .find(|t| t.task == TaskId::Water90);
    mark(cup.unwrap(), MarkKind::Sign(Sign::ThroatClear), at(6_000));
    assert_eq!(verdict(&with_sign), Verdict::Stop);
    let mut faster = fallen(96, 93);
    faster.trials.push(breaths(24));
    assert_eq!(verdict(&faster), Verdict::Stop);
    let mut as_before = fallen(96, 93);
    as_before.trials.push(breaths(16));
    assert_eq!(verdict(&as_before), Verdict::Pass);
    // Fast, and no faster than before.
    let mut fast_before = fallen(96, 93);
    number(&mut fast_before.trials[0], breathing::TYPED, 240);
    fast_before.trials.push(breaths(22));
    assert_eq!(verdict(&fast_before), Verdict::Pass);
    // A voice that changed is a sign, pressed or answered.
    let mut wet = fallen(96, 93);
    let cup = wet.trials.iter_mut().find(|t| t.task == TaskId::Water90);
    choose(cup.unwrap(), water90::VOICE_AFTER, "wet");
    assert_eq!(verdict(&wet), Verdict::Stop);
}
