//! The questions of a task, drawn from its data.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{follow, live};
use super::parts::{Choices, NumberField, WordsField};
use crate::clinical::task::{Question, Takes, TaskId, TaskSpec, When};
use crate::clinical::tasks;
use crate::clinical::trial::{Answer, Trial};

/// The questions of one stage.
#[component]
pub(super) fn Questions(
    /// The task.
    task: TaskId,
    /// The stage.
    when: When,
    /// Leave these out; they have a place of their own.
    #[prop(optional)]
    without: Option<&'static str>,
) -> impl IntoView {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    // Which questions apply changes only with the answers they depend on.
    let ids = follow(move || {
        desk.visit.with(|v| {
            let empty = Trial::new(task, 0, None);
            let trial = v
                .as_ref()
                .and_then(|v| v.exam.latest(task))
                .unwrap_or(&empty);
            let fits = |id: &&str| v.as_ref().is_none_or(|v| tasks::fits(task, id, &v.exam));
            asked(spec, when, trial, without)
                .into_iter()
                .filter(fits)
                .collect::<Vec<_>>()
        })
    });
    view! {
        <div class="questions">
            <For each=move || ids.get() key=|id| *id let:id>
                {spec.questions.iter().find(|q| q.id == id).map(|q| question(desk, task, q))}
            </For>
        </div>
    }
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
pub(super) fn question(desk: Desk, task: TaskId, q: &'static Question) -> AnyView {
    let answer = follow(move || {
        desk.visit.with(|v| {
            let exam = &v.as_ref()?.exam;
            let newest = exam.latest(task);
            let given = newest.and_then(|t| t.answers.get(q.id).cloned());
            // Before a trial starts, what it will take over is shown as given.
            let to_come = newest.is_none_or(|t| t.start().is_none());
            given.or_else(|| {
                let taken = if to_come {
                    tasks::taken_over(task, exam)
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
    match q.takes {
        Takes::OneOf(choices) => view! {
            <Choices
                label=q.ask
                options=choices.iter().map(|c| (c.id.to_owned(), c.words.to_owned())).collect()
                chosen=Signal::derive(move || {
                    let given = answer.get().and_then(|a| a.choice().map(str::to_owned));
                    given.or_else(|| desk.visit.with(|v| {
                        v.as_ref().and_then(|v| tasks::spec(task).assumed(&v.exam, q.id))
                    }))
                })
                pick=Callback::new(move |id: Option<String>| {
                    // A double touch does not take back an answer that is needed.
                    if id.is_some() || !q.needed {
                        desk.answer(task, q.id, id.map(Answer::Choice));
                    }
                })
            />
        }
        .into_any(),
        Takes::Words(most) => live(move || {
            view! {
                <WordsField
                    id=q.id
                    label=q.ask
                    value=match answer.get() {
                        Some(Answer::Words(words)) => words,
                        _ => String::new(),
                    }
                    most=u32::from(most)
                    take=Callback::new(move |words: String| {
                        let words = words.trim().to_owned();
                        desk.answer(task, q.id, (!words.is_empty()).then_some(Answer::Words(words)));
                    })
                />
            }
        }),
        Takes::Number {
            unit,
            least,
            most,
            step,
        } => view! {
            <NumberField
                id=q.id
                label=q.ask
                unit=unit
                value=Signal::derive(move || match answer.get() {
                    Some(Answer::Tenths(n)) => Some(n),
                    _ => None,
                })
                range=(least, most)
                step=step * 10
                take=Callback::new(move |tenths: Option<i32>| {
                    desk.answer(task, q.id, tenths.map(Answer::Tenths));
                })
            />
        }
        .into_any(),
        Takes::Tenths { unit, least, most } => view! {
            <NumberField
                id=q.id
                label=q.ask
                unit=unit
                value=Signal::derive(move || match answer.get() {
                    Some(Answer::Tenths(n)) => Some(n),
                    _ => None,
                })
                range=(least, most)
                step=1
                coarse=10
                take=Callback::new(move |tenths: Option<i32>| {
                    desk.answer(task, q.id, tenths.map(Answer::Tenths));
                })
            />
        }
        .into_any(),
    }
}
