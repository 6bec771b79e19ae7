//! What is given in an own trial, and how: the choices, what is taken over, and what they come to.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{Amount, OwnGiven};
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::task::TaskId;

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

/// An amount that says the way as well.
const TEASPOON: &str = "teaspoon";
/// The way that it says.
const SPOON: &str = "spoon";
/// The strategy that is none.
const NO_STRATEGY: &str = "none";

/// The amounts offered that are a measure, in millilitres: as if they were typed.
const MEASURES: [(&str, i32); 3] = [("5", 5), ("10", 10), ("20", 20)];

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

/// The levels of the framework: 0 to 4 of drinks, 3 to 7 of food.
pub static LEVELS: &[&str] = &["d0", "d1", "d2", "d3", "d4", "f3", "f4", "f5", "f6", "f7"];

/// Amounts.
pub static AMOUNTS: &[&str] = &[TEASPOON, "mouthful", "5", "10", "20", "free"];

/// Ways.
pub static WAYS: &[&str] = &[SPOON, "cup", "straw", "self", "syringe"];

/// Postures.
pub static POSTURES: &[&str] = &[
    "upright",
    "reclined",
    "chin-down",
    "turned-left",
    "turned-right",
    "side",
];

/// Strategies.
pub static STRATEGIES: &[&str] = &[NO_STRATEGY, "slow", "twice", "effort", "breath", "wash"];

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

/// What the next trial is, as chosen now; none where nothing was said.
pub(super) fn to_come(exam: &Exam) -> Option<OwnGiven> {
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
    let given = OwnGiven {
        posture: None,
        strategy: None,
        strategy_words: None,
        ..given(&trial)
    };
    given.is_said().then_some(given)
}

/// What was given in a trial.
pub fn given(trial: &Trial) -> OwnGiven {
    let chosen = |question: &str| trial.choice(question).map(str::to_owned);
    let typed = |question: &str| match trial.answers.get(question) {
        Some(Answer::Words(words)) => Some(words.clone()),
        _ => None,
    };
    let amount = amount(trial);
    let by_teaspoon = amount == Some(Amount::Choice(TEASPOON.to_owned()));
    OwnGiven {
        level: chosen(LEVEL),
        what: typed(WHAT),
        by: chosen(BY).filter(|by| by != SPOON || !by_teaspoon),
        amount,
        posture: chosen(POSTURE),
        strategy: chosen(STRATEGY).filter(|strategy| strategy != NO_STRATEGY),
        strategy_words: typed(STRATEGY_WORDS),
    }
}

/// How much, a measure always in millilitres.
fn amount(trial: &Trial) -> Option<Amount> {
    if let Some(Answer::Tenths(tenths)) = trial.answers.get(MILLILITRES) {
        return Some(Amount::Tenths(*tenths));
    }
    let id = trial.choice(AMOUNT)?;
    let measure = MEASURES.iter().find(|(of, _)| *of == id);
    Some(match measure {
        Some((_, ml)) => Amount::Tenths(ml * 10),
        None => Amount::Choice(id.to_owned()),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(answers: &[(&str, Answer)]) -> OwnGiven {
        let mut trial = Trial::new(TaskId::Own, 0, None);
        let own = |(q, a): &(&str, Answer)| ((*q).to_owned(), a.clone());
        trial.answers.extend(answers.iter().map(own));
        given(&trial)
    }

    fn chosen(id: &str) -> Answer {
        Answer::Choice(id.to_owned())
    }

    #[test]
    fn what_is_said_in_two_ways_is_one_thing() {
        let teaspoon = said(&[(AMOUNT, chosen(TEASPOON))]);
        assert_eq!(
            said(&[(AMOUNT, chosen(TEASPOON)), (BY, chosen(SPOON))]),
            teaspoon
        );
        assert_ne!(
            said(&[(AMOUNT, chosen(TEASPOON)), (BY, chosen("cup"))]),
            teaspoon
        );
        assert_eq!(
            said(&[(MILLILITRES, Answer::Tenths(50))]),
            said(&[(AMOUNT, chosen("5"))])
        );
        assert_eq!(said(&[(STRATEGY, chosen(NO_STRATEGY))]), said(&[]));
    }

    #[test]
    fn what_was_typed_is_never_taken_for_a_choice() {
        let words = |words: &str| Answer::Words(words.to_owned());
        assert_ne!(
            said(&[(WHAT, words("0 Thin"))]),
            said(&[(LEVEL, chosen("d0"))])
        );
        assert_ne!(
            said(&[(WHAT, words("rice, teaspoon"))]),
            said(&[(WHAT, words("rice")), (AMOUNT, chosen(TEASPOON))])
        );
    }
}
