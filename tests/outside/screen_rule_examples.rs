//! A worked example for every rule of the gate, the breathing, the dry swallows, the 90 mL of water
//! and the decision: an examination that raises it, and what it says. Which publication a rule
//! rests on stands in its row of `rules.csv`.

#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "../support/mod.rs"]
mod support;

use penlight::clinical::assess::{assess, flags};
use penlight::clinical::decision::Verdict;
use penlight::clinical::exam::Exam;
use penlight::clinical::flag::{Domain, Level};
use penlight::clinical::gate::ITEMS;
use penlight::clinical::hold::holds;
use penlight::clinical::person::{Age, Role};
use penlight::clinical::rules;
use penlight::clinical::screen::ScreenId;
use penlight::clinical::sign::Sign;
use penlight::clinical::source;
use penlight::clinical::task::{NOT_VALID, TaskId};
use penlight::clinical::tasks::{breathing, saturation, water as water90};
use penlight::clinical::trial::{MarkKind, Trial};
use support::*;

/// The groups of rules that are exemplified here.
const GROUPS: [&str; 8] = [
    "gate.",
    "breathing.rate",
    "breathing.spo2",
    "breathing.child",
    "breathing.not-counted",
    "dry.",
    "water.",
    "person.",
];

fn raised(exam: &Exam) -> Vec<(&'static str, Level)> {
    flags(ScreenId::Swallow.screen(), exam)
        .iter()
        .map(|f| (f.rule().id, f.level()))
        .collect()
}

fn with_sign(sign: Sign, after: i64) -> Exam {
    let mut trial = water();
    mark(&mut trial, MarkKind::Sign(sign), at(LAST_SWALLOW + after));
    exam_with_water(trial)
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
    let mut uncounted = clear();
    uncounted.trials.remove(0);
    let ageless = Exam {
        age: None,
        ..clear()
    };
    let mut all = vec![
        ("gate.not-asked", not_asked, Incomplete),
        ("breathing.rate", breathing(25), Incomplete),
        ("breathing.rate", breathing(8), Incomplete),
        ("breathing.rate", breathing(21), Note),
        ("breathing.rate", breathing(11), Note),
        ("breathing.spo2", saturated, Incomplete),
        ("breathing.spo2-fall", fallen(96, 92), Stop),
        ("breathing.child", child(30), Incomplete),
        ("breathing.not-counted", uncounted, Incomplete),
        ("dry.few", exam_with_dry(dry(&[4_000, 19_000])), Refer),
        (
            "dry.few",
            exam_with_dry(dry(&[3_000, 15_000, 30_000])),
            Pass,
        ),
        ("dry.none", exam_with_dry(dry(&[])), Stop),
        ("dry.not-valid", exam_with_dry(not_felt), Incomplete),
        ("dry.adults", child(30), Note),
        ("water.clear", clear(), Pass),
        ("water.left", exam_with_water(left), Refer),
        ("water.unfinished", exam_with_water(unfinished), Incomplete),
        ("water.after-watch", with_sign(Sign::Cough, 61_000), Note),
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
    ];
    // Every exception of every item of the gate raises the item's rule.
    for item in ITEMS {
        for exception in item.exceptions {
            let mut exam = clear();
            exam.gate
                .0
                .insert(item.id.to_owned(), exception.id.to_owned());
            let level = raised(&exam)
                .into_iter()
                .find(|(id, _)| *id == item.rule.id)
                .map(|(_, level)| level);
            // Its level goes by the state of the exception, which the gate's own tests hold.
            all.push((item.rule.id, exam, level.unwrap_or(Stop)));
        }
    }
    all
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
        if GROUPS.iter().any(|group| rule.id.starts_with(group)) {
            assert!(
                examples.iter().any(|(id, ..)| *id == rule.id),
                "no example for {}",
                rule.id
            );
        }
    }
}

/// `hold.passed`: water given after a sign, with a reason, is told.
#[test]
fn going_on_past_a_sign_is_told() {
    let mut exam = exam_with_dry(dry(&[4_000, 19_000]));
    exam.trials.truncate(2);
    let hold = holds(TaskId::Water90, &exam).remove(0);
    exam.went_on.push(went_on(&hold.id, Role::Slp));
    exam.trials.push(water());
    assert!(raised(&exam).contains(&("hold.passed", Level::Note)));
}

/// `record.unread`: an entry that can't be read keeps the screen incomplete.
#[test]
fn what_can_not_be_read_keeps_it_incomplete() {
    let exam = Exam {
        unread: 1,
        ..exam_with_water(water())
    };
    assert!(raised(&exam).contains(&("record.unread", Level::Incomplete)));
}

/// `decision.headline` and `decision.also-found`: a ratio or a mouth never makes the headline.
#[test]
fn what_is_not_about_swallowing_stands_apart() {
    let mut clear = assess(ScreenId::Swallow.screen(), &exam_with_water(water()));
    let verdict = clear.verdict;
    let mut all: Vec<_> = clear.clear.drain(..).collect();
    all.push(rules::MOUTH_OPENING.flag(Level::Refer, Domain::Mouth, "mouth opens 30 mm"));
    all.push(rules::VOICE_S_Z.flag(Level::Refer, Domain::SpeechVoice, "ratio 1.5"));
    let decision = penlight::clinical::decision::decide(all, None);
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
    for row in penlight::clinical::norms::ROWS {
        assert!(source::ALL.iter().any(|s| s.key == row.source.key));
        assert!(!row.mark.words().is_empty() && !row.population.is_empty());
    }
}

/// The numbers in `text` that stand before `(published: KEY)`, back to the last full stop or
/// bracket: each with the key.
fn claims(text: &str) -> Vec<(String, Vec<String>)> {
    let mut claims = Vec::new();
    for mark in ["(published: ", "(published, secondary copy: "] {
        for (at, _) in text.match_indices(mark) {
            let key: String = text[at + mark.len()..]
                .chars()
                .take_while(|c| c.is_ascii_alphanumeric() || *c == '-')
                .collect();
            let before = &text[..at];
            let from = before.rfind(['(', ')', ':', ';']).map_or(0, |i| i + 1);
            let numbers = before[from..]
                .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == ','))
                .map(|n| n.trim_matches(['.', ',']).to_owned())
                .filter(|n| n.contains(|c: char| c.is_ascii_digit()))
                .collect();
            claims.push((key, numbers));
        }
    }
    claims
}

/// Every figure that the app's own text gives with "(published: KEY)" stands in that source's row,
/// or in a table row of it.
#[test]
fn every_published_figure_in_a_text_is_in_its_sources_row() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut folders = vec![root];
    let mut seen = 0;
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            if path.extension().is_none_or(|end| end != "rs") {
                continue;
            }
            let text = std::fs::read_to_string(&path).unwrap();
            for (key, numbers) in claims(&text) {
                let source = source::ALL.iter().find(|s| s.key == key);
                let source = source.unwrap_or_else(|| panic!("{key} in {}", path.display()));
                let mut known = format!("{} {}", source.population, source.citation);
                for row in penlight::clinical::norms::ROWS {
                    if row.source.key == key {
                        known.push_str(&row.to_string());
                    }
                }
                for number in numbers {
                    assert!(
                        known.contains(&number),
                        "{number} of {key} in {}",
                        path.display()
                    );
                    seen += 1;
                }
            }
        }
    }
    assert!(
        seen >= 4,
        "only {seen} figures found: the texts are written otherwise now"
    );
}

/// "SpO2 fall of more than about 3 points, or below target: stop for respiratory safety; do not
/// label as aspiration": a design choice, no published line (BRI18: a fall is no sign of
/// aspiration).
#[test]
fn a_fall_of_saturation_stops_for_respiratory_safety() {
    let verdict = |exam: &Exam| assess(ScreenId::Swallow.screen(), exam).verdict;
    let stop = Verdict::Stop;
    assert_eq!(verdict(&fallen(96, 93)), Verdict::Pass);
    assert_eq!(verdict(&fallen(96, 92)), stop);
    // What is told calls it by what it is, and no "no sign seen" stands beside it.
    let told = raised(&fallen(96, 92));
    assert!(told.contains(&("breathing.spo2-fall", Level::Stop)));
    assert!(!told.iter().any(|(rule, _)| *rule == "water.clear"));
    let said = flags(ScreenId::Swallow.screen(), &fallen(96, 92));
    let said = said.iter().find(|f| f.rule().id == "breathing.spo2-fall");
    assert!(said.is_some_and(|f| f.reason().contains("does not show aspiration")));

    // Below a prescribed target one point is enough; without a reading before, nothing is said.
    let mut target = fallen(90, 87);
    number(&mut target.trials[0], breathing::TARGET, 880);
    assert_eq!(verdict(&target), stop);
    let mut unread = fallen(96, 85);
    unread.trials[0] = breaths(16);
    assert!(
        !raised(&unread)
            .iter()
            .any(|(rule, _)| *rule == "breathing.spo2-fall")
    );
    // After it, nothing more by mouth without a reason.
    assert!(
        holds(TaskId::TimedWater, &fallen(96, 92))
            .iter()
            .any(|h| h.says.contains("oxygen saturation fell"))
    );
}
