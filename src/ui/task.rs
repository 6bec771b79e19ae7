//! The task page: what to say, the pad, how it was cued and what came out, and what comes next.
//!
//! One component serves every task; what differs is in the task's data.

use leptos::prelude::*;

use super::count::Attach;
use super::desk::Desk;
use super::holds::{Holds, held};
use super::live::{follow, live, press};
use super::order::SyllableOrder;
use super::pad::{Face, Pad, face};
use super::parts::{Choices, ChokingButton, Frame, button, overview_of, para};
use super::questions::{Questions, question};
use super::result::{Figures, TaskResult, own_table};
use super::route::{Page, Route};
use super::sign_said::SignSaid;
use super::silence::Silence;
use super::steps;
use super::tally;
use crate::clinical::exam::EndedEarly;
use crate::clinical::flag::Level;
use crate::clinical::order::Order;
use crate::clinical::sign::{SignTask, meaning, meaning_under};
use crate::clinical::task::{Choice, NOT_VALID, TaskId, Untimed, WATCH_CUT, When};
use crate::clinical::tasks::{self, cracker, kept, water};
use crate::clinical::trial::Answer;
use crate::record::event::Event;
use crate::record::visit::Visit;

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
    // What is asked first is asked before anything is held up by it.
    let asks_first = task == TaskId::Cracker;
    let asked = follow(move || {
        !asks_first
            || desk
                .visit
                .with(|v| v.as_ref().is_some_and(|v| cracker::asked(&v.exam)))
    });
    let free = follow(move || holds.get().is_empty() && asked.get() || face.get() != Face::Ready);
    let offer = follow(move || {
        desk.visit
            .with(|v| v.as_ref().and_then(|v| tasks::offer(task, &v.exam)))
    });
    let goes_on = tasks::goes_on(task);
    // The next trial is due, and something is in its way.
    let next_held = move || {
        goes_on
            && matches!(face.get(), Face::Watching | Face::Over)
            && offer.get().is_some_and(|o| !o.waits)
            && !holds.get().is_empty()
    };
    let done = follow(move || {
        desk.visit
            .with(|v| v.as_ref().is_some_and(|v| steps::done(v, task)))
    });
    // No sip is due any more, and not because all were given: the way on stands on top.
    let ended_by_sign = move || {
        task == TaskId::Sips
            && matches!(face.get(), Face::Watching | Face::Over)
            && offer.get().is_some()
            && done.get()
    };
    let resting = move || matches!(face.get(), Face::Ready | Face::Over | Face::Late);
    let loose = desk
        .visit
        .with_untracked(|v| v.as_ref().is_some_and(Visit::is_loose));
    let next = move || {
        if loose {
            desk.go(Route::Home);
            return;
        }
        if let Some(page) = desk
            .visit
            .with_untracked(|v| v.as_ref().map(|v| steps::after_task(v, task)))
        {
            desk.turn(page);
        }
    };
    let not_timed = move || {
        let newest = |v: &Visit| v.exam.latest(task).is_some_and(|t| spec.is_untimed(t));
        desk.visit.with(|v| v.as_ref().is_some_and(newest))
    };
    let another = follow(move || {
        desk.visit
            .with(|v| v.as_ref().is_some_and(|v| tasks::another(task, &v.exam)))
    });
    let has_result = move || matches!(face.get(), Face::Over | Face::Late | Face::Watching);
    let not_valid = spec.questions.iter().find(|q| q.id == NOT_VALID);
    // The pad comes last, at the lower edge of the screen, so that it stands in the same place
    // before and after the start; what is above it scrolls by itself and is never covered.
    view! {
        <Frame title=spec.title back=overview_of(desk) with_pad=true>
            <div class="above">
            {live(move || (face.get() == Face::Ready).then(|| view! { <WhatToSay task=task/> }))}
            {live(move || (!free.get() || next_held()).then(|| view! { <Holds held=holds/> }))}
            {live(move || ((free.get() || asks_first) && face.get() == Face::Ready).then(|| view! { <Before task=task/> }))}
            {live(move || (face.get() == Face::Running).then(|| stop_words(desk, task)).flatten().map(|words| view! {
                <p class="advice" role="alert"><b>{words}</b></p>
            }))}
            {spec.pad.beat.map(|_| view! { <Silence task=task/> })}
            {live(move || ended_by_sign().then(|| view! {
                <p class="advice" role="alert"><b>"A sign was seen: give no further sip."</b></p>
                <button type="button" class="big primary" on:click=press(move |_| next())><b>"Next"</b></button>
            }))}
            {live(move || has_result().then(|| view! { <SignSaid task=task/> }))}
            {live(move || (task == TaskId::Own && (has_result() || face.get() == Face::Running)).then(|| own_table(desk)))}
            {live(move || (spec.trials > 1 && !goes_on && has_result()).then(|| view! { <Figures task=task/> }))}
            {live(move || (task == TaskId::Meal && face.get() == Face::Running).then(|| view! { <tally::Running/> }))}
            {live(move || (task == TaskId::Own && matches!(face.get(), Face::Watching | Face::Over)).then(|| view! {
                <button type="button" class="big" on:click=press(move |_| desk.repeat(task, None))>
                    <b>"Change what is given"</b>
                </button>
            }))}
            {live(move || matches!(face.get(), Face::Watching | Face::Over).then(|| view! {
                <Questions task=task when=When::After without=NOT_VALID/>
            }))}
            {live(move || (face.get() == Face::Over).then(|| view! {
                <Questions task=task when=When::AfterWatch/>
            }))}
            {live(move || match (face.get(), done.get()) {
                (Face::Running | Face::Countdown, _) | (Face::Ready, false) => ().into_any(),
                // Trials of the plan are still due: going on is in the quiet row below.
                (_, false) if goes_on => ().into_any(),
                _ if ended_by_sign() => ().into_any(),
                (Face::Watching, _) => view! {
                    <button type="button" class="big" on:click=press(move |_| next())>
                        <b>"Next"</b>
                        <span>"The watch goes on"</span>
                    </button>
                }.into_any(),
                _ => view! {
                    // What still needs an answer comes first.
                    <button type="button" class="big" class:primary=done.get() on:click=press(move |_| next())><b>{if loose { "Done" } else { "Next" }}</b></button>
                }.into_any(),
            })}
            {live(move || (face.get() == Face::Over && spec.trials > 1 && !goes_on).then(|| if another.get() {
                view! {
                    <button type="button" class="big" on:click=press(move |_| desk.repeat(task, None))>
                        <b>"Next trial"</b>
                        <span>{live(move || desk.visit.with(|v| {
                            let done = v.as_ref().map_or(0, |v| kept::numbered(task, &v.exam).count());
                            format!("{done} done, up to {}", spec.trials)
                        }))}</span>
                    </button>
                }.into_any()
            } else {
                para("small", format!("{} trials are done: no more are asked for.", spec.trials))
            }))}
            {spec.untimed.map(|untimed| live(move || (face.get() == Face::Over && not_timed()).then(|| {
                button("choice", "Take this answer back", move || desk.answer(task, untimed.question, None))
            })))}
            {live(move || (face.get() == Face::Watching).then(|| view! { <WatchCut task=task/> }))}
            {live(move || has_result().then(|| view! { <TaskResult task=task/> }))}
            {live(move || (task == TaskId::Meal && face.get() == Face::Over).then(|| view! { <tally::Ended/> }))}
            {live(move || (!spec.say.is_empty() && matches!(face.get(), Face::Over | Face::Late)).then(|| view! {
                <Cued task=task/>
            }))}
            {not_valid.map(|q| live(move || resting().then(|| view! {
                <details class="more">
                    <summary>{q.ask}</summary>
                    {question(desk, task, q)}
                </details>
            })))}
            {live(move || (face.get() == Face::Over && spec.trials == 1).then(|| view! {
                <div class="row quiet">
                    <button type="button" on:click=press(move |_| desk.repeat(task, None))>"Do it again"</button>
                </div>
            }))}
            {live(move || (goes_on && !done.get() && matches!(face.get(), Face::Watching | Face::Over)).then(|| view! {
                <div class="row quiet">
                    <button type="button" on:click=press(move |_| next())>"Go on without the rest"</button>
                </div>
            }))}
            {(task == TaskId::Breathing && !loose).then(|| live(move || resting().then(|| view! {
                // Neither clears an adult: not in the open.
                <details class="more">
                    <summary>"Another way to count"</summary>
                    <div class="row">
                        {[(TaskId::BreathTaps, "By taps"), (TaskId::Breaths30, "30 seconds only")].map(|(other, words)| view! {
                            <button type="button" on:click=press(move |_| desk.turn(Page::Task(other)))>{words}</button>
                        })}
                    </div>
                </details>
            })))}
            {live(move || match (face.get() == Face::Ready, holds.get().is_empty()) {
                (false, _) => ().into_any(),
                (true, _) if done.get() && spec.untimed.is_none() => ().into_any(),
                (true, true) => view! {
                    <div class="row quiet">
                        {spec.untimed.map(|untimed| could_not(desk, task, untimed))}
                        // A task on its own is left by "back".
                        {(!loose && !done.get()).then(|| button("", "Skip: not done", next))}
                    </div>
                }.into_any(),
                (true, false) if done.get() => ().into_any(),
                (true, false) => view! {
                    <button type="button" class="big primary" on:click=press(move |_| next())>
                        <b>"Go on without it"</b>
                    </button>
                }.into_any(),
            })}
            {live(move || (loose && face.get() == Face::Over).then(|| view! { <Attach/> }))}
            {(!loose && Order::ALL.contains(&task)).then(|| live(move || (face.get() == Face::Ready).then(|| view! { <SyllableOrder/> })))}
            {(!loose).then(|| view! { <Leave/> })}
            </div>
            {live(move || free.get().then(|| view! {
                <Pad task=task length=Signal::derive(|| None) face=face/>
            }))}
        </Frame>
    }
}

/// What can be said of a trial without a touch of the pad.
fn could_not(desk: Desk, task: TaskId, untimed: Untimed) -> Vec<AnyView> {
    let say = |choice: &'static Choice| {
        button("", choice.words, move || {
            let answer = Answer::Choice(choice.id.to_owned());
            desk.answer(task, untimed.question, Some(answer));
            desk.hold_still();
        })
    };
    untimed.choices.iter().map(say).collect()
}

/// What to do at once after a sign that stops a trial was pressed in the newest one.
fn stop_words(desk: Desk, task: TaskId) -> Option<&'static str> {
    let column = tasks::spec(task).pad.signs?;
    let worst = desk.visit.with(|v| {
        let exam = &v.as_ref()?.exam;
        // A policy can make a sign stop the trial, never let one pass.
        let level = |sign| {
            let plain = meaning(sign, column).0;
            plain.max(meaning_under(sign, column, &exam.policy).0)
        };
        exam.latest(task)?.signs().map(|(s, _)| level(s)).max()
    })?;
    match (column, worst) {
        // Somebody who coughs at a meal is watched on; what stops every trial stops the meal.
        (SignTask::Meal, Level::Stop) => Some("Stop: nothing more to eat or drink now."),
        (SignTask::Cracker, Level::Stop | Level::Refer) => Some("Stop. Nothing more to eat."),
        (SignTask::Meal | SignTask::Cracker, _) => None,
        (_, Level::Stop | Level::Refer) => Some("Stop. Take the cup away."),
        _ => None,
    }
}

/// The questions before the start: what is needed in the open, the rest behind a press.
#[component]
fn Before(task: TaskId) -> impl IntoView {
    let spec = tasks::spec(task);
    let optional = spec
        .questions
        .iter()
        .any(|q| q.when == When::Before && !q.needed && q.id != NOT_VALID);
    if optional {
        view! {
            <details class="more">
                <summary>{spec.more}</summary>
                <Questions task=task when=When::Before without=NOT_VALID/>
            </details>
        }
        .into_any()
    } else {
        view! { <Questions task=task when=When::Before without=NOT_VALID/> }.into_any()
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
                <button type="button" on:click=press(move |_| desk.turn(Page::Show(task)))>"Show to patient"</button>
            })}
            {(!spec.steps.is_empty()).then(|| view! {
                <details class="more">
                    <summary>"How"</summary>
                    <ol>{spec.steps.iter().map(|s| view! { <li>{*s}</li> }).collect_view()}</ol>
                    <p class="small">"For: "{spec.for_whom}</p>
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
        <div class="row quiet"><ChokingButton/></div>
        <details class="more leave">
            <summary>"End the screen here"</summary>
            <div class="row">
                <button type="button" on:click=press(move |_| end(EndedEarly::Refused))>"Person declined"</button>
                <button type="button" on:click=press(move |_| end(EndedEarly::Withdrew))>"Person wants to stop"</button>
                <button type="button" on:click=press(move |_| end(EndedEarly::BrokenOff))>"I must break off"</button>
            </div>
        </details>
    }
}
