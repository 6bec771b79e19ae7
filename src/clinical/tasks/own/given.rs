//! What is given in an own trial, and how: the choices, their words, what is taken over.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::OwnGiven;
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::levels::{drink, food};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{Choice, choice};
use crate::wording::own as wording;

/// What is given: a level of the framework.
pub const LEVEL: &str = "own-level";
/// What is given, in free words.
pub const WHAT: &str = "own-what";
/// How much.
pub const AMOUNT: &str = "own-amount";
/// How much, in millilitres.
pub const MILLILITRES: &str = "own-ml";
/// Spoon, cup, straw.
pub const BY: &str = "own-by";
/// Posture.
pub const POSTURE: &str = "own-posture";
/// Strategy.
pub const STRATEGY: &str = "own-strategy";
/// Another strategy, in free words.
pub const STRATEGY_WORDS: &str = "own-strategy-words";

/// What is taken over from the trial before.
const SETTINGS: [&str; 8] = [
    LEVEL,
    WHAT,
    AMOUNT,
    MILLILITRES,
    BY,
    POSTURE,
    STRATEGY,
    STRATEGY_WORDS,
];

/// Two answers that say one thing: where one is given anew, the other is not taken over.
const PAIRS: [[&str; 2]; 3] = [
    [LEVEL, WHAT],
    [AMOUNT, MILLILITRES],
    [STRATEGY, STRATEGY_WORDS],
];

/// The answer that another takes the place of: an amount is one of those offered or typed.
pub fn instead(question: &str) -> Option<&'static str> {
    match question {
        AMOUNT => Some(MILLILITRES),
        MILLILITRES => Some(AMOUNT),
        _ => None,
    }
}

const fn level(id: &'static str, name: Option<&'static str>) -> Choice {
    Choice {
        id,
        words: match name {
            Some(name) => name,
            None => "",
        },
    }
}

/// The levels of the framework.
pub static LEVELS: &[Choice] = &[
    level("d0", drink(0)),
    level("d1", drink(1)),
    level("d2", drink(2)),
    level("d3", drink(3)),
    level("d4", drink(4)),
    level("f3", food(3)),
    level("f4", food(4)),
    level("f5", food(5)),
    level("f6", food(6)),
    level("f7", food(7)),
];

/// How much may be given.
pub static AMOUNTS: &[Choice] = &[
    choice("teaspoon", "Teaspoon"),
    choice("mouthful", "Sip or bite"),
    choice("5", "5 mL"),
    choice("10", "10 mL"),
    choice("20", "20 mL"),
    choice("free", "As wanted"),
];

/// By what.
pub static WAYS: &[Choice] = &[
    choice("spoon", "Spoon"),
    choice("cup", "Cup"),
    choice("straw", "Straw"),
    choice("self", "Self-fed"),
    choice("syringe", "Syringe"),
];

/// The postures.
pub static POSTURES: &[Choice] = &[
    choice("upright", "Upright"),
    choice("reclined", "Reclined"),
    choice("chin-down", "Chin down"),
    choice("turned-left", "Head turned left"),
    choice("turned-right", "Head turned right"),
    choice("side", "Lying on the side"),
];

/// The strategies.
pub static STRATEGIES: &[Choice] = &[
    choice("none", "No strategy"),
    choice("slow", "Small, one at a time"),
    choice("twice", "Two swallows each"),
    choice("effort", "Effortful swallow"),
    choice("breath", "Breath held first"),
    choice("wash", "Drink after food"),
];

/// Whether it was said what is given.
pub(super) fn said(trial: &Trial) -> bool {
    [LEVEL, WHAT].iter().any(|q| trial.answers.contains_key(*q))
}

/// The settings of the trial before.
pub fn taken_over(exam: &Exam) -> Vec<(&'static str, Answer)> {
    let Some(before) = exam.latest_started(TaskId::Own) else {
        return Vec::new();
    };
    let anew = exam.latest(TaskId::Own).filter(|t| t.start().is_none());
    let kept = |q: &&str| {
        !PAIRS
            .iter()
            .filter(|pair| pair.contains(q))
            .flatten()
            .any(|other| other != q && anew.is_some_and(|t| t.answers.contains_key(*other)))
    };
    SETTINGS
        .into_iter()
        .filter(kept)
        .filter_map(|q| Some((q, before.answers.get(q)?.clone())))
        .collect()
}

/// What the next trial is, as chosen now: "5 Minced & moist, teaspoon"; none where nothing was said.
pub(super) fn to_come(exam: &Exam) -> Option<String> {
    let newest = exam.latest(TaskId::Own).filter(|t| t.start().is_none());
    let mut trial = Trial::new(TaskId::Own, 0, None);
    trial.answers.extend(
        taken_over(exam)
            .into_iter()
            .map(|(question, answer)| (question.to_owned(), answer)),
    );
    if let Some(newest) = newest {
        trial.answers.extend(newest.answers.clone());
    }
    // Posture and strategy stand on the page: what is put into the mouth is on the pad.
    for question in [POSTURE, STRATEGY, STRATEGY_WORDS] {
        trial.answers.remove(question);
    }
    said(&trial).then(|| brief(&trial))
}

/// What was given in a trial, and how.
pub(in crate::clinical::tasks) fn given(trial: &Trial) -> OwnGiven {
    let id = |question: &str| trial.choice(question).map(str::to_owned);
    let typed = |question: &str| match trial.answers.get(question) {
        Some(Answer::Words(words)) => Some(words.clone()),
        _ => None,
    };
    OwnGiven {
        level: id(LEVEL),
        what: typed(WHAT),
        amount: id(AMOUNT),
        millilitres: trial.number(MILLILITRES),
        by: id(BY),
        posture: id(POSTURE),
        strategy: id(STRATEGY),
        strategy_words: typed(STRATEGY_WORDS),
    }
}

/// "0 Thin, 5 mL, spoon, upright".
pub(in crate::clinical::tasks) fn settings(trial: &Trial) -> String {
    wording::settings(&given(trial))
}

/// The same for a reason that must fit a line: free words only where no choice stands for them.
pub(in crate::clinical::tasks) fn brief(trial: &Trial) -> String {
    wording::brief(&given(trial))
}
