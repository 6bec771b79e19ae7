//! No rule is left without an example that raises it.

use std::collections::BTreeSet;

use crate::outside::groups::{FILES, stands_for, takes};
use crate::outside::screen_rule_examples;
use crate::support::*;
use penlight::clinical::decision::assess::assess;
use penlight::clinical::decision::in_the_way::in_the_way;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::gate;
use penlight::clinical::findings::oral::{FoundId, Seen, Sides};
use penlight::clinical::findings::trial::{MarkKind, Trial};
use penlight::clinical::knowledge::oral;
use penlight::clinical::knowledge::oral::{Points, Sided};
use penlight::clinical::knowledge::person::{Age, Language, Role, Sex};
use penlight::clinical::knowledge::policy::{Policy, Wording};
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::{self, sips, six_signs};
use penlight::record::event::Event;

#[test]
fn every_rule_has_its_file_of_examples() {
    for rule in rules::ALL {
        let files = FILES.iter().filter(|f| stands_for(f, rule.id)).count();
        assert_eq!(files, 1, "{} is exemplified in {files} files", rule.id);
    }
}

#[test]
fn every_group_has_a_rule() {
    for entry in FILES.into_iter().flatten() {
        let rules = rules::ALL.iter().filter(|rule| takes(entry, rule.id));
        assert_ne!(rules.count(), 0, "{entry}");
    }
}

/// Rules that no examination raises, each with why.
const NEVER_RAISED: [(&str, &str); 10] = [
    (
        "decision.headline",
        "how reasons make a verdict: shown beside it",
    ),
    (
        "decision.also-found",
        "what is told beside a verdict: shown beside it",
    ),
    (
        "speech.tapper",
        "of the taps, not of the person: told beside the figures",
    ),
    ("three-ml.no-reaction", GRADED),
    ("three-ml.no-swallow", GRADED),
    ("three-ml.breathing", GRADED),
    ("three-ml.sign", GRADED),
    ("three-ml.extra", GRADED),
    ("three-ml.clear", GRADED),
    ("three-ml.unfinished", GRADED),
];

/// The published grades of 3 mL are kept, and the signs of such a sip are those of any sip.
const GRADED: &str = "a grade of the 3 mL, told and raised by nothing";

/// Rules that a whole examination raised, or held something by.
#[derive(Default)]
struct Raised(BTreeSet<&'static str>);

impl Raised {
    fn scene(&mut self, s: &Scene) {
        self.exam(s.visit.screen.unwrap(), &s.visit.exam);
    }

    /// These findings, everything else not looked at.
    fn mouth(&mut self, age: Age, seen: &[(&'static str, Seen)]) {
        let mut exam = Exam {
            age: Some(age),
            ..Exam::default()
        };
        for (item, seen) in seen {
            exam.oral.take(vec![((*item).to_owned(), seen.clone())]);
        }
        self.decision(ScreenId::OralMotor, &exam);
    }

    fn exam(&mut self, screen: ScreenId, exam: &Exam) {
        self.decision(screen, exam);
        for task in TaskId::ALL {
            let held = in_the_way(*task, exam, exam.now);
            self.0.extend(held.iter().map(|one| one.rule().id));
        }
    }

    fn decision(&mut self, screen: ScreenId, exam: &Exam) {
        let decision = assess(screen.screen(), exam);
        for flag in all(&decision) {
            let (rule, fact) = (flag.rule().id, flag.fact());
            // What is asked of the fact fits the group that its rule stands in.
            let of_group = |group: &str| rule.starts_with(group);
            assert_eq!(fact.is_of_breathing(), of_group("breathing."), "{rule}");
            assert_eq!(fact.is_of_gate(), of_group("gate."), "{rule}");
            self.0.insert(rule);
        }
    }
}

/// No rule that only its own unit knows: each is reached from what a clinician presses.
#[test]
fn every_rule_is_raised_by_a_whole_examination() {
    let mut raised = Raised::default();
    for number in 0..60 {
        let mut walk = Walk::new(number);
        while walk.step().is_some() {
            raised.scene(&walk.scene);
        }
    }
    at_the_gate(&mut raised);
    by_mouth(&mut raised);
    breathing(&mut raised);
    beside(&mut raised);
    in_the_mouth(&mut raised);
    speech_and_breath(&mut raised);
    let never: Vec<&str> = rules::ALL
        .iter()
        .map(|rule| rule.id)
        .filter(|id| !raised.0.contains(id))
        .collect();
    let known = NEVER_RAISED.map(|(id, _)| id);
    let unreachable: Vec<_> = never.iter().filter(|id| !known.contains(id)).collect();
    assert!(unreachable.is_empty(), "nothing raises {unreachable:?}");
    // An exception that is reached by now is none.
    for (id, why) in NEVER_RAISED {
        assert!(never.contains(&id), "{id} is raised, though: {why}");
    }
}

fn at_the_gate(raised: &mut Raised) {
    for item in gate::ITEMS {
        for exception in item.exceptions {
            let mut s = ready(Role::Screener);
            s.gate(&[(item.id, exception.id)]);
            raised.scene(&s);
        }
    }
    raised.scene(&adult(Role::Screener));
    // Left for two hours.
    let mut s = ready(Role::Screener);
    s.say_at(at(2 * HOUR), Event::TakenUpAgain);
    raised.scene(&s);
}

/// Every sign in every task in which something is swallowed, in time, just after it, and late.
fn by_mouth(raised: &mut Raised) {
    for task in TaskId::ALL.iter().filter(|t| t.sign_column().is_some()) {
        for sign in Sign::ALL {
            for after in [1_000, 61_000, 75_000] {
                let mut s = ready(Role::Slp);
                s.on(ScreenId::FullVisit)
                    .given(*task, 100_000, &[(sign, after)]);
                raised.scene(&s);
                s.say_at(at(HOUR), Event::Undo { trial: s.trial });
                raised.scene(&s);
            }
        }
    }
    for (screen, exam) in screen_rule_examples::wholes() {
        raised.exam(screen, &exam);
    }
    for age in [Age::Months(18), Age::Years(5), Age::Years(72)] {
        let mut s = Scene::new(age, Role::Screener);
        s.gate(&[])
            .breaths(16)
            .dry(&[2_000, 9_000, 17_000])
            .water(&[]);
        s.choose("voice-before", "wet").choose("voice-after", "wet");
        s.timed_cup(300_000, &[], "clear");
        s.cracker();
        raised.scene(&s);
    }
    for cup in [
        timed(100, 0, 20_000, 8),
        timed(100, 40, 20_000, 8),
        timed(100, 120, 9_000, 5),
        timed(100, 0, 0, 5),
        timed(60, 0, 9_000, 5),
    ] {
        raised.exam(ScreenId::Stepped, &exam_with_cup(cup));
    }
    let mut two = exam_with_cup(timed(100, 0, 9_000, 5));
    let mut other = timed(150, 0, 9_000, 5);
    other.number += 1;
    two.trials.push(other);
    raised.exam(ScreenId::Stepped, &two);
    let wording_b = Policy {
        small_water_wording: Wording::B,
        ..Policy::default()
    };
    let mut s = Scene::under(wording_b, Age::Years(72), Role::Screener);
    s.on(ScreenId::Stepped)
        .gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    s.sips_given(&mut |_, s| {
        s.choose(sips::RESIDUE, "yes");
    });
    raised.scene(&s);
    let mut s = stepped(Role::Screener, 97);
    s.sips_given(&mut |_, s| raised.scene(s));
    s.water(&[]);
    raised.scene(&s);
}

/// Drink thickness, and the six signs by what is answered.
fn beside(raised: &mut Raised) {
    for tenths in [0, 5, 40, 80, 100] {
        let mut exam = exam_with_water(water());
        exam.trials.push(poured(tenths));
        raised.exam(ScreenId::Swallow, &exam);
    }
    for answer in [six_signs::FOUND, six_signs::NOT_FOUND] {
        for age in [Age::Years(8), Age::Years(72)] {
            let mut s = Scene::new(age, Role::Slp);
            s.gate(&[]).breaths(16).water(&[]).open(TaskId::SixSigns);
            for question in tasks::spec(TaskId::SixSigns).questions {
                s.choose(question.id, answer)
                    .choose(six_signs::COUNTED, six_signs::YES);
                raised.scene(&s);
            }
        }
    }
}

fn breathing(raised: &mut Raised) {
    for age in [
        None,
        Some(Age::Months(0)),
        Some(Age::Months(4)),
        Some(Age::Months(30)),
        Some(Age::Years(5)),
        Some(Age::Years(72)),
    ] {
        for (task, n) in [(TaskId::BreathTaps, 12), (TaskId::Breaths30, 22)] {
            let mut s = ready(Role::Screener);
            s.age(age).open(task);
            s.choose("awake-asleep", "awake").mark(0, MarkKind::Start);
            for breath in 1..=n {
                s.mark(breath * 1_300, MarkKind::Tap);
            }
            s.mark(30_000, MarkKind::WindowOver)
                .mark(30_000, MarkKind::End);
            raised.scene(&s);
        }
    }
}

/// Every exception of every item on every side, alone and beside each other one that points
/// somewhere; opening and flow by their figures.
fn in_the_mouth(raised: &mut Raised) {
    let mut points = Vec::new();
    for item in oral::items() {
        for exception in item.exceptions {
            let sides: &[Option<Sides>] = match exception.side {
                Sided::No => &[None],
                Sided::To | Sided::On => &[Some(Sides::Left), Some(Sides::Right)],
            };
            for side in sides {
                let found = FoundId {
                    what: exception.id.to_owned(),
                    side: *side,
                    severity: None,
                };
                raised.mouth(Age::Adult, &[(item.id, Seen::Found(vec![found.clone()]))]);
                if exception.points != Points::Nowhere {
                    points.push((item.id, found));
                }
            }
        }
    }
    for (n, (item, found)) in points.iter().enumerate() {
        for (other, beside) in &points[..n] {
            let both = match item == other {
                true => vec![(*item, Seen::Found(vec![found.clone(), beside.clone()]))],
                false => vec![
                    (*item, Seen::Found(vec![found.clone()])),
                    (*other, Seen::Found(vec![beside.clone()])),
                ],
            };
            raised.mouth(Age::Adult, &both);
        }
        // ... and with everything else as it should be.
        let mut seen: Vec<_> = oral::items().map(|i| (i.id, Seen::AsExpected)).collect();
        seen.push((*item, Seen::Found(vec![found.clone()])));
        raised.mouth(Age::Adult, &seen);
    }
    for age in [Age::Years(8), Age::Adult] {
        for (item, figures) in [
            ("jaw.mm", [200, 350, 500]),
            ("cough.flow", [900, 2_000, 4_000]),
        ] {
            for tenths in figures {
                for front_teeth in [None, Some(true)] {
                    let tenths = Some(tenths);
                    raised.mouth(
                        age,
                        &[(
                            item,
                            Seen::Measured {
                                tenths,
                                front_teeth,
                            },
                        )],
                    );
                }
            }
        }
    }
}

fn speech_and_breath(raised: &mut Raised) {
    for language in [None, Some("en"), Some("ja"), Some("he")] {
        let spoken_by = |l: &&Language| language == Some(l.tag());
        let language = Language::ALL.iter().find(spoken_by).copied();
        for age in [2, 4, 6, 8, 13, 30, 70, 80] {
            for sex in [None, Some(Sex::Female), Some(Sex::Male)] {
                for step in 0..STEPS {
                    let exam = Exam {
                        age: Some(Age::Years(age)),
                        sex,
                        language,
                        trials: spoken(step),
                        ..Exam::default()
                    };
                    raised.decision(ScreenId::FullVisit, &exam);
                }
            }
        }
    }
    // Two of three singles of a child went wrong: the sequence is not asked for.
    let mut singles = spoken(0);
    singles.retain(|trial| trial.task != TaskId::Sequence);
    let exam = Exam {
        age: Some(Age::Years(4)),
        trials: singles,
        ..Exam::default()
    };
    raised.decision(ScreenId::OralMotor, &exam);
    // Whom nothing is asked of.
    for task in [TaskId::SyllablePa, TaskId::Sequence] {
        let exam = Exam {
            age: Some(Age::Months(20)),
            ..Exam::default()
        };
        let held = in_the_way(task, &exam, exam.now);
        raised.0.extend(held.iter().map(|one| one.rule().id));
    }
}

/// From the slowest and shortest to the fastest and longest.
const STEPS: usize = 5;

/// Every task of speech and breath once.
fn spoken(step: usize) -> Vec<Trial> {
    let (how, taps, ms) = [
        ("10s", 30, 10_000),
        ("by-count", 20, 20_000),
        ("by-count", 20, 6_000),
        ("10s", 50, 10_000),
        ("10s", 75, 10_000),
    ][step];
    let sound = ["could-not", "distorted", "correct", "correct", "correct"][step];
    let end = if how == "10s" {
        MarkKind::WindowOver
    } else {
        MarkKind::End
    };
    let mut trials = Vec::new();
    for task in [
        TaskId::SyllablePa,
        TaskId::SyllableTa,
        TaskId::SyllableKa,
        TaskId::Sequence,
    ] {
        let mut marks = vec![(MarkKind::Start, 0)];
        marks.extend((0..taps).map(|n| (MarkKind::Tap, n * ms / taps)));
        marks.push((end, ms));
        let mut said = trial(task, &marks);
        choose(&mut said, "how", how);
        choose(&mut said, "each-tap", "syllable");
        choose(&mut said, "sound", sound);
        trials.push(said);
    }
    for (task, ms) in [
        (TaskId::LongestAh, [0, 4_000, 9_000, 12_000, 12_000]),
        (TaskId::LongestS, [9_000, 12_000, 14_000, 20_000, 20_000]),
        (TaskId::LongestZ, [10_000; STEPS]),
        (TaskId::BreathCount, [8_000; STEPS]),
        (TaskId::BreathHold, [5_000; STEPS]),
        (TaskId::FiveForFive, [5_000; STEPS]),
    ] {
        let marks = [(MarkKind::Start, 0), (MarkKind::End, ms[step])];
        trials.push(trial(task, &marks));
    }
    for trial in &mut trials {
        number(trial, "reached", [120, 240, 300, 450, 450][step]);
        choose(trial, "bubbles", "continuous");
    }
    let numbered = (0..).zip(trials);
    numbered
        .map(|(number, trial)| Trial { number, ..trial })
        .collect()
}
