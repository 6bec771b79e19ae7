//! The pad: start, then every tap counts.
//!
//! **Invariants:** a tap's time is the event's own stamp, not the moment the handler ran; it is
//! counted on the way down, so nothing that comes after (scroll, palm, cancel) can lose it; two
//! thumbs are two taps.

use std::rc::Rc;

use leptos::ev;
use leptos::prelude::*;

use super::banner::whole_seconds;
use super::desk::Desk;
use super::holds::held;
use super::live::{Follow, follow, live, press, said};
use super::pads::{all_pads, figures, on_key, pad_button, several};
use super::signs::SignButtons;
use crate::browser::{clock, page, sound, vibrate};
use crate::clinical::counted::word;
use crate::clinical::task::{Length, Phase, TaskId, TaskSpec};
use crate::clinical::tasks::{self, meal::minutes};
use crate::clinical::trial::{MarkKind, Trial};
use crate::measure::beat::Beat;
use crate::measure::time::{Millis, Stamp};

/// How long "ready, set" lasts before "go".
const COUNTDOWN: Millis = Millis::from_secs(3);

/// Two touches closer than this are one, where the second would end a swallow.
const BOUNCE: Millis = Millis(250);

/// The phase's name, without its running figures: what decides which pad is drawn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Face {
    #[default]
    Ready,
    Countdown,
    Running,
    Late,
    Watching,
    Over,
}

/// Which face the pad of a task shows now.
pub(super) fn face(desk: Desk, task: TaskId) -> Follow<Face> {
    follow(move || {
        let now = desk.now.get();
        match phase_of(desk, task, now) {
            Phase::Ready => Face::Ready,
            Phase::Countdown(_) => Face::Countdown,
            Phase::Running(_) => Face::Running,
            Phase::Late(_) => Face::Late,
            Phase::Watching(_) => Face::Watching,
            Phase::Over => Face::Over,
        }
    })
}

fn phase_of(desk: Desk, task: TaskId, now: Stamp) -> Phase {
    with_trial(desk, task, |spec, trial| spec.phase(trial, now)).unwrap_or(Phase::Ready)
}

fn with_trial<T>(desk: Desk, task: TaskId, f: impl FnOnce(&TaskSpec, &Trial) -> T) -> Option<T> {
    desk.visit.with(|v| {
        let trial = v.as_ref()?.exam.latest(task)?;
        Some(f(tasks::spec(task), trial))
    })
}

/// The pad of a task.
#[component]
pub(super) fn Pad(
    /// The task.
    task: TaskId,
    /// The window chosen on the page, where the task leaves it open.
    #[prop(into)]
    length: Signal<Option<Millis>>,
    /// The face to show.
    face: Follow<Face>,
) -> impl IntoView {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let taps = follow(move || with_trial(desk, task, |_, t| t.taps()).unwrap_or(0));

    // What it offers where nothing runs: the next of many trials, or what that waits for.
    let offer = follow(move || {
        desk.visit
            .with(|v| v.as_ref().and_then(|v| tasks::offer(task, &v.exam)))
    });
    let lately = follow(move || {
        desk.visit
            .with(|v| v.as_ref().and_then(|v| tasks::lately(task, &v.exam)))
    });
    let goes_on = tasks::goes_on(task);
    let held = held(desk, task);
    // Whether a touch begins the next trial.
    let next_now =
        move || goes_on && offer.get().is_some_and(|o| !o.waits) && held.get().is_empty();
    // Nothing is counted: the time runs to its end by itself, on a plain panel.
    let silent = spec.pad.counts.0.is_empty() && !spec.pad.touch_ends;
    let split = move || several(desk, task).len() > 1;

    let buzz = move |ms: u32| {
        if desk.prefs.get_untracked().vibrate {
            vibrate::buzz(&[ms]);
        }
    };
    let start = move |at: Stamp| {
        sound::unlock();
        let countdown = spec.pad.countdown
            && !spec.pad.first_counts
            && (silent || desk.prefs.get_untracked().countdown);
        let at = if countdown {
            if desk.prefs.get_untracked().sound {
                sound::countdown();
            }
            at.later(COUNTDOWN)
        } else {
            // A syllable or a sound that starts the time is on its way already, and a beat has its
            // own first tick: no tone over them.
            let quiet = spec.pad.first_counts || spec.pad.touch_ends;
            if desk.prefs.get_untracked().sound && !quiet {
                sound::go_tone();
            }
            at
        };
        desk.press(task, length.get_untracked(), at, MarkKind::Start);
        // The first beat is now, not at the next turn of the clock.
        desk.tick();
        page::above_to_top();
        if split() {
            // The pads stand where other things were: a second touch must not hit those.
            desk.hold_still();
        }
        buzz(40);
        desk.said.set("Started.".to_owned());
    };
    let end = move |at: Stamp| {
        desk.press(task, None, at, MarkKind::End);
        desk.hold_still();
        page::above_to_top();
        buzz(60);
        desk.said.set("Ended.".to_owned());
    };
    let bounced = move |at: Stamp| {
        with_trial(desk, task, |_, trial| {
            let since = trial
                .start()
                .and_then(|start| trial.between(start, at).length);
            since.is_some_and(|since| since < BOUNCE)
        })
        .unwrap_or(false)
    };
    // What a press means depends on the face that was on the screen when it came.
    let touch = move |at: Stamp| match face.get_untracked() {
        Face::Ready if offer.get_untracked().is_some_and(|o| o.waits) => {}
        Face::Ready => start(at),
        // A finger that bounces has not felt a swallow.
        Face::Running if spec.pad.signs.is_some() && spec.pad.touch_ends && bounced(at) => {}
        Face::Running if spec.pad.touch_ends => end(at),
        Face::Countdown if spec.pad.touch_ends => {}
        Face::Countdown | Face::Running | Face::Late => {
            desk.press(task, None, at, MarkKind::Tap);
            buzz(15);
        }
        Face::Watching | Face::Over => {
            // A second touch of the end is no new trial.
            if next_now() && !desk.still.get_untracked() {
                desk.repeat(task, None);
                start(at);
            }
        }
    };
    // A paired keyboard or clicker counts wherever the focus is, unless it is in a field or on
    // another button.
    let keys = window_event_listener(ev::keydown, move |event| {
        if !page::is_in_control(event.as_ref()) {
            on_key(&event, &touch);
        }
    });
    on_cleanup(move || keys.remove());

    let (one, many) = spec.pad.counts;
    // The number to be said now.
    let beats = follow(move || {
        let now = desk.now.get();
        with_trial(desk, task, |spec, trial| {
            let beat = Beat::every(spec.pad.beat?)?;
            let since = trial.between(trial.start()?, now).length?;
            Some(beat.sounded(since))
        })
        .flatten()
        .unwrap_or(0)
    });
    let big = move || {
        match face.get() {
        Face::Ready => view! {
            <span class="start">{offer.get().map_or_else(|| spec.pad.start.to_owned(), |o| o.words)}</span>
        }
        .into_any(),
        Face::Countdown => {
            let left = move || match phase_of(desk, task, desk.now.get()) {
                Phase::Countdown(left) if left.0 > 2000 => "Ready",
                Phase::Countdown(left) if left.0 > 1000 => "Set",
                Phase::Countdown(_) => "Go in a moment",
                _ => "Go",
            };
            view! { <span class="start">{live(left)}</span> }.into_any()
        }
        Face::Running if spec.pad.touch_ends => view! {
            {spec.pad.beat.map(|_| view! {
                <span class="count" class:beat=move || beats.get() % 2 == 1>{live(move || beats.get())}</span>
            })}
            <span class="start">{spec.pad.end}</span>
        }
        .into_any(),
        Face::Running | Face::Late => figures(
            live(move || taps.get()),
            live(move || if taps.get() == 1 { one } else { many }),
        ),
        Face::Watching | Face::Over => view! {
            <span class="start">{offer.get().map(|o| o.words)}</span>
            {(face.get() == Face::Watching).then(|| view! {
                <span class="what"><b class="left">{live(move || left_to_watch(desk, task))}</b>" left to watch"</span>
            })}
        }
        .into_any(),
    }
    };
    let waits = move || goes_on && offer.get().is_some_and(|o| o.waits);
    let shown = move || match face.get() {
        Face::Watching | Face::Over if next_now() => Shown::Pad,
        Face::Watching | Face::Over => Shown::Nothing,
        Face::Ready if waits() => Shown::Nothing,
        Face::Ready => Shown::Pad,
        Face::Countdown | Face::Running | Face::Late if silent => Shown::Panel,
        Face::Countdown | Face::Running | Face::Late if split() => Shown::Pads,
        Face::Countdown | Face::Running | Face::Late => Shown::Pad,
    };
    let pad_class = move || match face.get() {
        Face::Ready | Face::Watching | Face::Over => "pad ready",
        Face::Countdown => "pad countdown",
        Face::Late => "pad late",
        _ => "pad running",
    };
    let undoable = follow(move || {
        desk.visit
            .with(|v| {
                let visit = v.as_ref()?;
                let t = visit.trial(visit.undo_goes_to(task)?)?;
                let pressed = t.marks.iter().filter(|m| m.kind.pressed()).count();
                let over = t.first(MarkKind::WindowOver).is_some();
                // A window that ran to its end is not taken back, only taps in it; not the first
                // either where one press was both.
                let kept = match (over, spec.pad.first_counts) {
                    (false, _) => 0,
                    (true, false) => 1,
                    (true, true) => 2,
                };
                Some(pressed > kept)
            })
            .unwrap_or(false)
    });
    // A trial before this one: its signs are still pressed while this one is made ready.
    let before = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .is_some_and(|v| v.exam.latest_started(task).is_some())
        })
    });
    let no_click = move |event: ev::TouchEvent| {
        // A touch that was counted on its way down must not become a click on whatever stands
        // there when the finger leaves.
        event.prevent_default();
    };
    view! {
        <div class="pad-area" class:with-signs=spec.pad.signs.is_some()>
            <Clock task=task face=face length=length/>
            <div class="beside-pad">
                {live(move || undoable.get().then(|| view! {
                    <button type="button" class="undo" on:click=press(move |_| desk.undo(task))>
                        {live(move || undo_words(desk, task))}
                    </button>
                }))}
                {live(move || match (face.get(), spec.pad.end) {
                    (Face::Running, Some(words)) if !spec.pad.touch_ends => Some(view! {
                        <button
                            type="button"
                            class="end"
                            on:pointerdown=move |event: ev::PointerEvent| {
                                if event.button() == 0 { end(clock::stamp_of(event.as_ref())) }
                            }
                            on:touchstart=no_click
                            on:click=press(move |event: ev::MouseEvent| {
                                if event.detail() == 0 { end(clock::stamp_of(event.as_ref())) }
                            })
                        >
                            {words}
                        </button>
                    }),
                    _ => None,
                })}
                {live(move || lately.get().map(|words| view! { <p class="lately">{words}</p> }))}
            </div>
            {spec.pad.signs.map(|_| live(move || {
                // After the watch too: what comes late is recorded and told.
                let begun = match face.get() {
                    Face::Ready => before.get(),
                    face => matches!(face, Face::Running | Face::Watching | Face::Over),
                };
                begun.then(|| view! { <SignButtons task=task/> })
            }))}
            {live(move || match shown() {
                Shown::Nothing => ().into_any(),
                Shown::Panel => view! {
                    <div class="pad panel">
                        <span class="start" role="timer">{live(move || seconds_left(desk, task))}</span>
                        <span class="what">{live(move || if face.get() == Face::Countdown { "then uncover the tip" } else { "then cover the tip" })}</span>
                    </div>
                }.into_any(),
                Shown::Pads => all_pads(desk, task, several(desk, task)),
                Shown::Pad => pad_button("pad", said(pad_class), Rc::new(touch), live(big)),
            })}
            // The pad's place stays taken while the watch runs: a tap that comes late must not
            // hit a sign.
            {live(move || match face.get() {
                Face::Watching if !next_now() => Some(view! {
                    <div class="pad panel">
                        <span class="start">{live(move || left_to_watch(desk, task))}</span>
                        <span class="what">"left to watch"</span>
                        <span class="what">{live(move || offer.get().filter(|o| o.waits).map(|o| o.words))}</span>
                    </div>
                }.into_any()),
                Face::Ready | Face::Over if waits() => Some(view! {
                    <div class="pad panel"><span class="what">{live(move || offer.get().map(|o| o.words))}</span></div>
                }.into_any()),
                _ => None,
            })}
        </div>
    }
}

/// What stands in the pad's place.
enum Shown {
    Nothing,
    /// The one pad.
    Pad,
    /// Several at once.
    Pads,
    /// Figures that nothing can be pressed on.
    Panel,
}

/// What undo says: which press it takes back where there are several kinds.
fn undo_words(desk: Desk, task: TaskId) -> String {
    let newest = desk.visit.with(|v| {
        let visit = v.as_ref()?;
        let trial = visit.trial(visit.undo_goes_to(task)?)?;
        trial.marks.iter().rev().find(|m| m.kind.pressed()).copied()
    });
    newest.map_or_else(String::new, |m| {
        format!("Undo: {}", word(task, m.kind).to_ascii_lowercase())
    })
}

/// Whole seconds until "go", then until the window's end.
fn seconds_left(desk: Desk, task: TaskId) -> String {
    let now = desk.now.get();
    with_trial(desk, task, |spec, trial| match spec.phase(trial, now) {
        Phase::Countdown(left) => whole_seconds(left),
        Phase::Running(so_far) => match (so_far.length, spec.window(trial)) {
            (Some(length), Some(window)) => whole_seconds(window - length),
            _ => "not known".to_owned(),
        },
        _ => String::new(),
    })
    .unwrap_or_default()
}

/// The time left of a task's watch.
fn left_to_watch(desk: Desk, task: TaskId) -> String {
    let now = desk.now.get();
    desk.visit
        .with(|v| {
            let trial = v.as_ref()?.exam.latest_started(task)?;
            let spec = tasks::spec(task);
            Some(match (spec.phase(trial, now), spec.pad.watch) {
                (Phase::Watching(so_far), Some(watch)) => so_far.length.map_or_else(
                    || "not known".to_owned(),
                    |l| format!("{} s", whole_seconds(watch - l)),
                ),
                _ => String::new(),
            })
        })
        .unwrap_or_default()
}

/// The running figures: time so far, time left.
#[component]
fn Clock(
    task: TaskId,
    face: Follow<Face>,
    #[prop(into)] length: Signal<Option<Millis>>,
) -> impl IntoView {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let figures = move || {
        let now = desk.now.get();
        let so_far_words = desk.visit.with(|v| {
            let exam = &v.as_ref()?.exam;
            tasks::running(task, exam.latest(task)?, exam)
        });
        with_trial(desk, task, |spec, trial| {
            let so_far = match spec.phase(trial, now) {
                Phase::Running(so_far) | Phase::Late(so_far) => so_far,
                _ => return (String::new(), String::new()),
            };
            let Some(elapsed) = so_far.length else {
                return ("not known".to_owned(), String::new());
            };
            match spec.phase(trial, now) {
                Phase::Late(_) => (
                    elapsed.to_string(),
                    "time is up; later ones are kept apart".to_owned(),
                ),
                _ => match spec.window(trial) {
                    Some(window) => (
                        format!("{} s", whole_seconds(window - elapsed)),
                        "left".to_owned(),
                    ),
                    // A meal is told in minutes.
                    None if task == TaskId::Meal => (minutes(elapsed), String::new()),
                    None => (elapsed.to_string(), so_far_words.unwrap_or_default()),
                },
            }
        })
        .unwrap_or_default()
    };
    let figures = follow(figures);
    let before_runs = move || !left_to_watch(desk, task).is_empty();
    // Where nothing is counted the panel shows it.
    let on_panel = spec.pad.counts.0.is_empty() && !spec.pad.touch_ends;
    live(move || match face.get() {
        Face::Running | Face::Late if on_panel => ().into_any(),
        Face::Running | Face::Late => view! {
            <p class="clock" role="timer">
                <b>{live(move || figures.get().0)}</b>
                " "
                <span>{live(move || figures.get().1)}</span>
            </p>
        }
        .into_any(),
        Face::Ready if before_runs() => view! {
            <p class="clock" role="timer">
                <b>{live(move || left_to_watch(desk, task))}</b>
                " "
                <span>"left to watch, the trial before"</span>
            </p>
        }
        .into_any(),
        Face::Ready => {
            let window = match spec.pad.length {
                Length::Fixed(window) => Some(window),
                Length::Answered(question, lengths) => desk.visit.with(|v| {
                    let visit = v.as_ref()?;
                    let given = visit
                        .exam
                        .latest(task)
                        .and_then(|t| t.choice(question).map(str::to_owned));
                    let id = given.or_else(|| spec.assumed(&visit.exam, question))?;
                    lengths.iter().find(|(known, _)| *known == id)?.1
                }),
                _ => length.get(),
            };
            let from = if spec.pad.first_counts {
                "first tap"
            } else {
                "start"
            };
            window
                .map(|w| view! { <p class="clock"><span>{format!("{} seconds from the {from}", w.0 / 1000)}</span></p> })
                .into_any()
        }
        Face::Countdown | Face::Watching | Face::Over => ().into_any(),
    })
}
