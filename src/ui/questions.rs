//! The questions of a task, drawn from its data.

use leptos::prelude::*;

use super::desk::Desk;
use super::follow::follow;
use super::parts::{Number, Steps, choices, number_field, words_field};
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::spec::{Question, Takes, TaskSpec, When};
use crate::draw::{Drawn, Piece, el, live};
use crate::wording::tasks as words;

/// The questions of one stage.
pub(super) fn questions(
    // The task.
    task: TaskId,
    // The stage.
    when: When,
    // Leave these out; they have a place of their own.
    without: Option<&'static str>,
) -> Piece {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    // Which questions apply changes only with the answers they depend on.
    let ids = follow(move || {
        desk.visit.with(|v| {
            let empty = Trial::new(task, 0, None);
            let trial = v.and_then(|v| v.exam.latest(task)).unwrap_or(&empty);
            let fits = |id: &&str| v.is_none_or(|v| tasks::spec(task).asks(id, &v.exam));
            asked(spec, when, trial, without)
                .into_iter()
                .filter(fits)
                .collect::<Vec<_>>()
        })
    });
    // One at a time, so that what is being typed stays where another question comes or goes.
    let each = spec.questions.iter().map(|q| {
        let asked = follow(move || ids.get().contains(&q.id));
        live(move || asked.get().then(|| question(desk, task, q)))
    });
    el("div.questions").with(each.collect::<Piece>()).piece()
}

fn asked(
    spec: &'static TaskSpec,
    when: When,
    trial: &Trial,
    without: Option<&'static str>,
) -> Vec<&'static str> {
    spec.questions_at(when, trial)
        .map(|q| q.id)
        .filter(|id| Some(*id) != without)
        .collect()
}

/// One question.
pub(super) fn question(desk: Desk, task: TaskId, q: &'static Question) -> Piece {
    let answer = follow(move || {
        desk.visit.with(|v| {
            let exam = &v?.exam;
            let newest = exam.latest(task);
            let given = newest.and_then(|t| t.answers.get(q.id).cloned());
            // Before a trial starts, what it will take over is shown as given.
            let to_come = newest.is_none_or(|t| t.start().is_none());
            given.or_else(|| {
                let taken = if to_come {
                    (tasks::spec(task).taken_over)(exam)
                } else {
                    Vec::new()
                };
                taken
                    .into_iter()
                    .find(|(id, _)| *id == q.id)
                    .map(|(_, a)| a)
            })
        })
    });
    let ask = words::ask(task, q.id);
    let number = move |range, steps| {
        let asked = Number {
            id: q.id,
            label: ask,
            unit: words::unit(task, q.id),
            range,
            steps,
        };
        let given = Signal::derive(move || match answer.get() {
            Some(Answer::Tenths(n)) => Some(n),
            _ => None,
        });
        let take = Callback::new(move |tenths: Option<i32>| {
            desk.answer(task, q.id, tenths.map(Answer::Tenths));
        });
        number_field(asked, given, take)
    };
    match q.takes {
        Takes::OneOf(offered) => choices(
            ask.into(),
            words::choices(task, q.id, offered)
                .map(|(id, words)| (id.to_owned(), words.to_owned()))
                .collect(),
            Signal::derive(move || {
                let given = answer.get().and_then(|a| a.choice().map(str::to_owned));
                given.or_else(|| {
                    desk.visit
                        .with(|v| v.and_then(|v| tasks::spec(task).assumed(&v.exam, q.id)))
                })
            }),
            Callback::new(move |id: Option<String>| {
                // A double touch does not take back an answer that is needed.
                if id.is_some() || !q.needed {
                    desk.answer(task, q.id, id.map(Answer::Choice));
                }
            }),
        ),
        Takes::Words(most) => live(move || {
            words_field(
                q.id,
                ask,
                match answer.get() {
                    Some(Answer::Words(words)) => words.into(),
                    _ => "".into(),
                },
                u32::from(most),
                Callback::new(move |words: String| {
                    let words = words.trim().to_owned();
                    desk.answer(
                        task,
                        q.id,
                        (!words.is_empty()).then_some(Answer::Words(words)),
                    );
                }),
            )
        }),
        Takes::Number {
            least,
            most,
            step: 0,
        } => number((least, most), Steps::None),
        Takes::Number { least, most, step } => number((least, most), Steps::By(step * 10)),
        Takes::Tenths { least, most } => number((least, most), Steps::Fine(1, 10)),
    }
}
