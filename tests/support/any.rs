//! Any part of an examination, for properties.

use penlight::clinical::findings::gate::{GateAnswers, ITEMS};
use penlight::clinical::findings::trial::{Answer, Mark, MarkKind, Trial};
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::policy::{Policy, SETTINGS, out_of_order};
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::spec::{Question, Takes};
use proptest::prelude::*;
use proptest::sample::{Index, select};

use super::{at, gate_holds};

pub(crate) fn any_age() -> impl Strategy<Value = Option<Age>> {
    prop_oneof![
        3 => Just(Some(Age::Adult)),
        2 => Just(None),
        2 => (1_u8..=120).prop_map(|y| Some(Age::Years(y))),
        1 => (0_u8..=35).prop_map(|m| Some(Age::Months(m))),
    ]
}

/// Any policy that a file can give.
pub(crate) fn any_policy() -> impl Strategy<Value = Policy> {
    let values = prop::collection::vec(any::<Index>(), SETTINGS.len());
    let changed = prop::collection::vec(any::<bool>(), SETTINGS.len());
    (values, changed).prop_filter_map(
        "settings that contradict each other",
        |(values, changed)| {
            let mut policy = Policy::default();
            for ((setting, value), changed) in SETTINGS.iter().zip(values).zip(changed) {
                if changed {
                    let taken: Vec<i32> = (0..200).filter(|v| setting.takes(*v)).collect();
                    (setting.set)(&mut policy, *value.get(&taken));
                }
            }
            out_of_order(&policy).is_none().then_some(policy)
        },
    )
}

/// Mostly an open gate, so that what lies behind it is reached; else up to four items otherwise.
pub(crate) fn any_gate() -> impl Strategy<Value = GateAnswers> {
    let otherwise = (any::<Index>(), any::<Index>()).prop_map(|(item, answer)| {
        let item = &ITEMS[item.index(ITEMS.len())];
        let answer = match answer.index(item.exceptions.len() + 1) {
            0 => None,
            n => Some(item.exceptions[n - 1].id.to_owned()),
        };
        (item.id.to_owned(), answer)
    });
    prop_oneof![
        2 => Just(Vec::new()),
        3 => prop::collection::vec(otherwise, 1..4),
    ]
    .prop_map(|otherwise| {
        let mut gate = gate_holds();
        for (item, answer) in otherwise {
            match answer {
                Some(answer) => {
                    gate.0.insert(item, answer);
                }
                None => {
                    gate.0.remove(&item);
                }
            }
        }
        gate
    })
}

pub(crate) fn some_choice(question: &'static Question) -> BoxedStrategy<Option<Answer>> {
    let (choices, least, most) = match question.takes {
        Takes::OneOf(choices) => (choices.to_vec(), 0, 0),
        Takes::Number { least, most, .. } | Takes::Tenths { least, most, .. } => {
            (vec![""], least * 10, most * 10)
        }
        // No rule reads free words.
        Takes::Words(_) => return Just(None).boxed(),
    };
    let number = choices == [""];
    prop::option::of((select(choices), least..=most).prop_map(move |(id, n)| {
        if number {
            Answer::Tenths(n)
        } else {
            Answer::Choice(id.to_owned())
        }
    }))
    .boxed()
}

/// Answers to any of a task's questions, each given or not.
pub(crate) fn any_answers(task: TaskId) -> impl Strategy<Value = Vec<(String, Answer)>> {
    tasks::spec(task)
        .questions
        .iter()
        .map(|q| some_choice(q).prop_map(|a| a.map(|a| (q.id.to_owned(), a))))
        .collect::<Vec<_>>()
        .prop_map(|answers| answers.into_iter().flatten().collect())
}

pub(crate) fn with_answers(mut trial: Trial, answers: Vec<(String, Answer)>) -> Trial {
    trial.answers.extend(answers);
    trial
}

pub(crate) fn any_hidden(trial: Trial) -> impl Strategy<Value = Trial> {
    prop::option::weighted(0.2, (0_i64..80_000, 0_i64..20_000)).prop_map(move |hidden| {
        let mut trial = trial.clone();
        trial.hidden = hidden
            .into_iter()
            .map(|(from, length)| (at(from), at(from + length)))
            .collect();
        trial
    })
}

/// Any sign.
pub(crate) fn any_sign() -> impl Strategy<Value = Sign> {
    select(Sign::ALL.to_vec())
}

/// A sign at any time.
pub(crate) fn any_sign_mark() -> impl Strategy<Value = Mark> {
    (any_sign(), -1_000_i64..90_000).prop_map(|(sign, ms)| Mark {
        at: at(ms),
        kind: MarkKind::Sign(sign),
    })
}

/// So many cases.
pub(crate) fn config(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}
