//! Examinations as values, for tables and properties, and what is asked of them.

use penlight::clinical::decision::assess::assess;
use penlight::clinical::decision::verdict::{Decision, Verdict};
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::flag::{Flag, Level};
use penlight::clinical::findings::gate::{GateAnswers, HOLDS, ITEMS};
use penlight::clinical::findings::go_on::WentOn;
use penlight::clinical::findings::trial::Trial;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::source::Source;

use super::trials::{breaths, clear_sips, dry, water};

/// Every item of the gate holds.
pub(crate) fn gate_holds() -> GateAnswers {
    GateAnswers(
        ITEMS
            .iter()
            .map(|item| (item.id.to_owned(), HOLDS.to_owned()))
            .collect(),
    )
}

/// An examination of an adult with these trials, every item of the gate holding.
pub(crate) fn exam(trials: Vec<Trial>) -> Exam {
    Exam {
        age: Some(Age::Adult),
        gate: gate_holds(),
        trials,
        ..Exam::default()
    }
}

/// An examination in which no sign was seen, with this water trial.
pub(crate) fn exam_with_water(water: Trial) -> Exam {
    exam(vec![
        breaths(16),
        dry(&[2_100, 9_800, 17_500, 26_000]),
        water,
    ])
}

/// An examination in which no sign was seen, with this count of dry swallows.
pub(crate) fn exam_with_dry(dry: Trial) -> Exam {
    exam(vec![breaths(16), dry, water()])
}

pub(crate) fn went_on(hold: &str, by: Role) -> WentOn {
    WentOn {
        hold: hold.to_owned(),
        because: "agreed with the physician".to_owned(),
        by,
        says: String::new(),
        initials: None,
        ground: None,
        lapsed: false,
        led_to: Vec::new(),
    }
}

/// What the swallow screen makes of it.
pub(crate) fn decision(exam: &Exam) -> Decision {
    assess(ScreenId::Swallow.screen(), exam)
}

pub(crate) fn verdict(exam: &Exam) -> Verdict {
    decision(exam).verdict
}

/// How grave a verdict is: Stop > Refer > (Not done, Incomplete) > Pass.
pub(crate) fn grave(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::Stop => 3,
        Verdict::Refer => 2,
        Verdict::Incomplete | Verdict::NoDecision | Verdict::NotDone(_) => 1,
        Verdict::Pass => 0,
    }
}

pub(crate) fn worst(flags: &[Flag]) -> Option<Level> {
    flags.iter().map(Flag::level).max()
}

/// All reasons in one text, for looking for words in it.
pub(crate) fn words(flags: &[Flag]) -> String {
    flags
        .iter()
        .map(|f| f.reason())
        .collect::<Vec<_>>()
        .join("; ")
}

/// Every flag of a decision.
pub(crate) fn all(decision: &Decision) -> Vec<Flag> {
    [
        &decision.reasons,
        &decision.missing,
        &decision.clear,
        &decision.also,
    ]
    .into_iter()
    .flatten()
    .cloned()
    .collect()
}

/// The stepped screen with these sips, and the 90 mL after them.
pub(crate) fn exam_with_sips(sips: Vec<Trial>, water: Option<Trial>) -> Exam {
    let mut trials = vec![breaths(16), dry(&[2_100, 9_800, 17_500, 26_000])];
    trials.extend(sips);
    trials.extend(water);
    Exam {
        screen: Some(ScreenId::Stepped),
        ..exam(trials)
    }
}

/// ... with six clear sips and a timed cup.
pub(crate) fn exam_with_cup(cup: Trial) -> Exam {
    exam_with_sips(clear_sips(6), Some(cup))
}

/// An examination by own trials.
pub(crate) fn exam_with_own(trials: Vec<Trial>) -> Exam {
    let mut all = vec![breaths(16)];
    all.extend(trials);
    Exam {
        screen: Some(ScreenId::OwnTrials),
        ..exam(all)
    }
}

/// What the screen that was chosen makes of it.
pub(crate) fn decided(exam: &Exam) -> Decision {
    assess(exam.screen.unwrap().screen(), exam)
}

#[track_caller]
pub(crate) fn rests_on(flag: &Flag, source: &'static Source) {
    assert!(flag.rule().sources().contains(&source), "{flag:?}");
}

/// The flag with these words in its reason.
#[track_caller]
pub(crate) fn reason<'a>(flags: &'a [Flag], part: &str) -> &'a Flag {
    let found = flags.iter().find(|f| f.reason().contains(part));
    assert!(found.is_some(), "{part} is not in {flags:?}");
    found.unwrap()
}

/// The rules that speak, each with its level.
pub(crate) fn says(flags: &[Flag]) -> Vec<(&'static str, Level)> {
    flags.iter().map(|f| (f.rule().id, f.level())).collect()
}
