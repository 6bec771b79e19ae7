//! The task page: what to say, the pad, how it was cued and what came out, and what comes next.
//!
//! One component serves every task; what differs is in the task's data.

use leptos::prelude::*;

use super::desk::Desk;
use super::holds::{Holds, held};
use super::pad::{Face, Pad, face, stage};
use super::parts::{Choices, Frame, overview_of};
use super::questions::{Questions, question};
use super::result::TaskResult;
use super::route::Page;
use super::steps;
use crate::clinical::exam::EndedEarly;
use crate::clinical::task::{NOT_VALID, TaskId, WATCH_CUT, When};
use crate::clinical::tasks::{self, water};
use crate::clinical::trial::Answer;
use crate::record::event::Event;

/// The question under which the way of cueing is kept.
const CUE: &str = "cue";

/// A task.
#[component]
pub(super) fn TaskPage(
    /// Which.
    task: TaskId,
) -> impl IntoView {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let face = face(desk, task);
    let holds = held(desk, task);
    // Running trials are never held up: what has begun is finished in the open.
    let free = Memo::new(move |_| holds.with(Vec::is_empty) || face.get() != Face::Ready);
    let resting = move || matches!(face.get(), Face::Ready | Face::Over | Face::Late);
    let next = move |_| {
        if let Some(page) = desk
            .visit
            .with_untracked(|v| v.as_ref().map(|v| steps::after_task(v, task)))
        {
            desk.turn(page);
        }
    };
    let has_result = move || matches!(face.get(), Face::Over | Face::Late | Face::Watching);
    let done = Memo::new(move |_| {
        desk.visit
            .with(|v| v.as_ref().is_some_and(|v| steps::done(v, task)))
    });
    let not_valid = spec.questions.iter().find(|q| q.id == NOT_VALID);
    view! {
        <Frame title=spec.title back=overview_of(desk)>
            {move || (face.get() == Face::Ready).then(|| view! { <WhatToSay task=task/> })}
            {move || if free.get() {
                view! {
                    {move || (face.get() == Face::Ready).then(|| view! {
                        <Questions task=task when=When::Before without=NOT_VALID/>
                    })}
                    <Pad task=task length=Signal::derive(|| None) face=face/>
                }.into_any()
            } else {
                view! { <Holds task=task held=holds/> }.into_any()
            }}
            {move || stage(face.get()).filter(|s| *s == When::After).map(|_| view! {
                <Questions task=task when=When::After/>
            })}
            {move || (face.get() == Face::Over).then(|| view! {
                <Questions task=task when=When::After without=NOT_VALID/>
                <Questions task=task when=When::AfterWatch/>
            })}
            {move || (face.get() == Face::Watching).then(|| view! { <WatchCut task=task/> })}
            {move || has_result().then(|| view! { <TaskResult task=task/> })}
            {move || (!spec.say.is_empty() && matches!(face.get(), Face::Over | Face::Late)).then(|| view! {
                <Cued task=task/>
            })}
            {not_valid.map(|q| view! {
                {move || resting().then(|| view! {
                    <details class="more">
                        <summary>{q.ask}</summary>
                        {question(desk, task, q)}
                    </details>
                })}
            })}
            {move || (face.get() == Face::Over).then(|| view! {
                <div class="row quiet">
                    <button type="button" on:click=move |_| desk.repeat(task, None)>"Do it again"</button>
                </div>
            })}
            <div class="foot">
                {move || match (face.get(), done.get()) {
                    (Face::Running | Face::Countdown, _) => ().into_any(),
                    (Face::Ready, false) => view! {
                        <button type="button" class="big" on:click=next><b>"Skip: not done"</b></button>
                    }.into_any(),
                    (Face::Watching, _) => view! {
                        <button type="button" class="big" on:click=next>
                            <b>"Next"</b>
                            <span>"The watch goes on"</span>
                        </button>
                    }.into_any(),
                    _ => view! {
                        <button type="button" class="big primary" on:click=next><b>"Next"</b></button>
                    }.into_any(),
                }}
                <Leave/>
            </div>
        </Frame>
    }
}

/// What to say, word for word, and how it is done.
#[component]
fn WhatToSay(task: TaskId) -> impl IntoView {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    view! {
        <section class="say">
            {(!spec.say.is_empty()).then(|| view! {
                <blockquote>{spec.say}</blockquote>
                <button type="button" on:click=move |_| desk.turn(Page::Show(task))>"Show to patient"</button>
            })}
            {(!spec.steps.is_empty()).then(|| view! {
                <details class="more">
                    <summary>"How"</summary>
                    <ol>{spec.steps.iter().map(|s| view! { <li>{*s}</li> }).collect_view()}</ol>
                </details>
            })}
        </section>
    }
}

/// How it was cued.
#[component]
fn Cued(task: TaskId) -> impl IntoView {
    let desk = Desk::get();
    let cue = Signal::derive(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| v.exam.latest(task))
                .and_then(|t| t.choice(CUE).map(str::to_owned))
        })
    });
    view! {
        <Choices
            label="How was it cued?"
            options=[("spoken", "Spoken"), ("shown", "Shown"), ("copied", "Copied")]
                .map(|(id, words)| (id.to_owned(), words.to_owned()))
                .to_vec()
            chosen=cue
            pick=Callback::new(move |id: Option<String>| {
                desk.answer(task, CUE, id.map(Answer::Choice));
            })
        />
    }
}

/// Ending the watch early asks why.
#[component]
fn WatchCut(task: TaskId) -> impl IntoView {
    let desk = Desk::get();
    view! {
        <details class="more">
            <summary>"End the watch early"</summary>
            <Choices
                label="Why? The screen stays incomplete where no sign decided it."
                options=water::WATCH_CUT_REASONS
                    .iter()
                    .map(|c| (c.id.to_owned(), c.words.to_owned()))
                    .collect()
                chosen=Signal::derive(|| None::<String>)
                pick=Callback::new(move |id: Option<String>| {
                    desk.answer(task, WATCH_CUT, id.map(Answer::Choice));
                })
            />
        </details>
    }
}

/// Refusal, withdrawal and breaking off, at any point.
#[component]
pub(super) fn Leave() -> impl IntoView {
    let desk = Desk::get();
    let end = move |why: EndedEarly| {
        desk.record([Event::EndedEarly(why)]);
        desk.turn(Page::Decision);
    };
    view! {
        <details class="more leave">
            <summary>"End the screen here"</summary>
            <div class="row">
                <button type="button" on:click=move |_| end(EndedEarly::Refused)>"Person declined"</button>
                <button type="button" on:click=move |_| end(EndedEarly::Withdrew)>"Person wants to stop"</button>
                <button type="button" on:click=move |_| end(EndedEarly::BrokenOff)>"I must break off"</button>
            </div>
        </details>
    }
}
