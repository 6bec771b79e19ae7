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
use super::follow::{Follow, follow};
use super::holds::held;
use super::pads::{all_pads, figures, on_key, pad_button, several};
use super::signs::{sign_buttons, stop_words};
use crate::browser::{clock, page, sound, vibrate};
use crate::clinical::counted::word;
use crate::clinical::task::{Length, Phase, TaskId, TaskSpec};
use crate::clinical::tasks::{self, meal::minutes};
use crate::clinical::trial::{MarkKind, Trial};
use crate::draw::{Drawn, Piece, all, el, live, said, when};
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
        let trial = v?.exam.latest(task)?;
        Some(f(tasks::spec(task), trial))
    })
}

/// Whether the buttons of the signs stand on a task's page. After the watch too: what comes late is recorded and
/// told; and while the next trial is made ready, for the one before.
pub(super) fn signs_stand(desk: Desk, task: TaskId, face: Face) -> bool {
    let begun = || {
        desk.visit
            .with(|v| v.is_some_and(|v| v.exam.latest_started(task).is_some()))
    };
    tasks::spec(task).pad.signs.is_some()
        && match face {
            Face::Ready => begun(),
            face => matches!(face, Face::Running | Face::Watching | Face::Over),
        }
}

/// The pad of a task.
pub(super) fn pad(
    // The task.
    task: TaskId,
    // The window chosen on the page, where the task leaves it open.
    length: Signal<Option<Millis>>,
    // The face to show.
    face: Follow<Face>,
) -> Piece {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let taps = follow(move || with_trial(desk, task, |_, t| t.taps()).unwrap_or(0));

    // What it offers where nothing runs: the next of many trials, or what that waits for.
    let offer = follow(move || {
        desk.visit
            .with(|v| v.and_then(|v| tasks::offer(task, &v.exam)))
    });
    let lately = follow(move || {
        desk.visit
            .with(|v| v.and_then(|v| tasks::lately(task, &v.exam)))
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
    let big = move || match face.get() {
        Face::Ready => el("span.start")
            .with(
                offer
                    .get()
                    .map_or_else(|| spec.pad.start.to_owned(), |o| o.words),
            )
            .piece(),
        Face::Countdown => {
            let left = move || match phase_of(desk, task, desk.now.get()) {
                Phase::Countdown(left) if left.0 > 2000 => "Ready",
                Phase::Countdown(left) if left.0 > 1000 => "Set",
                Phase::Countdown(_) => "Go in a moment",
                _ => "Go",
            };
            el("span.start").with(live(left)).piece()
        }
        Face::Running if spec.pad.touch_ends => all![
            spec.pad.beat.map(|_| el("span.count")
                .class_if("beat", move || beats.get() % 2 == 1)
                .with(live(move || beats.get()))),
            el("span.start").with(spec.pad.end)
        ],
        Face::Running | Face::Late => figures(
            live(move || taps.get()),
            live(move || if taps.get() == 1 { one } else { many }),
        ),
        Face::Watching | Face::Over => all![
            el("span.start").with(offer.get().map(|o| o.words)),
            (face.get() == Face::Watching).then(|| el("span.what")
                .with(el("b.left").with(live(move || left_to_watch(desk, task))))
                .with(" left to watch"))
        ],
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
                let visit = v?;
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
    let no_click = move |event: ev::TouchEvent| {
        // A touch that was counted on its way down must not become a click on whatever stands
        // there when the finger leaves.
        event.prevent_default();
    };
    el("div.pad-area")
        .class_if("with-signs", move || spec.pad.signs.is_some())
        .with(clock(task, face, length))
        .with(
            el("div.beside-pad")
                .with(live(move || {
                    undoable.get().then(|| {
                        el("button.undo")
                            .press(move |_| desk.undo(task))
                            .with(live(move || undo_words(desk, task)))
                    })
                }))
                .with(live(move || match (face.get(), spec.pad.end) {
                    (Face::Running, Some(words)) if !spec.pad.touch_ends => Some(
                        el("button.end")
                            .on("pointerdown", move |event: ev::PointerEvent| {
                                if event.button() == 0 {
                                    end(clock::stamp_of(event.as_ref()))
                                }
                            })
                            .on("touchstart", no_click)
                            .press(move |event: ev::MouseEvent| {
                                if event.detail() == 0 {
                                    end(clock::stamp_of(event.as_ref()))
                                }
                            })
                            .with(words),
                    ),
                    _ => None,
                }))
                .with(live(move || {
                    lately.get().map(|words| el("p.lately").with(words))
                })),
        )
        .with(when(
            move || signs_stand(desk, task, face.get()),
            move || sign_buttons(task),
        ))
        .with(live(move || match shown() {
            // Where the screen is short, what comes next stands far above.
            Shown::Nothing if face.get() == Face::Over => el("button.up")
                .press(move |_| page::scroll_to_top())
                .with("What comes next stands above")
                .piece(),
            Shown::Nothing => ().piece(),
            Shown::Panel => el("div.pad.panel")
                .with(
                    el("span.start")
                        .attr("role", "timer")
                        .with(live(move || seconds_left(desk, task))),
                )
                .with(el("span.what").with(live(move || {
                    if face.get() == Face::Countdown {
                        "then uncover the tip"
                    } else {
                        "then cover the tip"
                    }
                })))
                .piece(),
            Shown::Pads => all_pads(desk, task, several(desk, task)),
            Shown::Pad => pad_button("pad", said(pad_class), Rc::new(touch), live(big)),
        }))
        // The pad's place stays taken while the watch runs: a tap that comes late must not
        // hit a sign.
        .with(live(move || match face.get() {
            Face::Watching if !next_now() => Some(
                el("div.pad.panel")
                    .with(el("span.start").with(live(move || left_to_watch(desk, task))))
                    .with(el("span.what").with("left to watch"))
                    .with(el("span.what").with(live(move || {
                        offer.get().filter(|o| o.waits).map(|o| o.words)
                    })))
                    .piece(),
            ),
            Face::Ready | Face::Over if waits() => Some(
                el("div.pad.panel")
                    .with(el("span.what").with(live(move || offer.get().map(|o| o.words))))
                    .piece(),
            ),
            _ => None,
        }))
        .piece()
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
        let visit = v?;
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
            let trial = v?.exam.latest_started(task)?;
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
fn clock(task: TaskId, face: Follow<Face>, length: Signal<Option<Millis>>) -> Piece {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let figures = move || {
        let now = desk.now.get();
        let so_far_words = desk.visit.with(|v| {
            let exam = &v?.exam;
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
    let at_once = follow(move || {
        (face.get() == Face::Running)
            .then(|| stop_words(desk, task))
            .flatten()
    });
    live(move || match face.get() {
        // In the place of the time: what is counted on with one eye must not hide it.
        Face::Running if at_once.get().is_some() => el("p.clock.at-once")
            .attr("role", "alert")
            .with(at_once.get())
            .piece(),
        Face::Running | Face::Late if on_panel => ().piece(),
        Face::Running | Face::Late => el("p.clock")
            .attr("role", "timer")
            .with(el("b").with(live(move || figures.get().0)))
            .with(" ")
            .with(el("span").with(live(move || figures.get().1)))
            .piece(),
        Face::Ready if before_runs() => el("p.clock")
            .attr("role", "timer")
            .with(el("b").with(live(move || left_to_watch(desk, task))))
            .with(" ")
            .with(el("span").with("left to watch, the trial before"))
            .piece(),
        Face::Ready => {
            let window = match spec.pad.length {
                Length::Fixed(window) => Some(window),
                Length::Answered(question, lengths) => desk.visit.with(|v| {
                    let visit = v?;
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
                .map(|w| {
                    el("p.clock")
                        .with(el("span").with(format!("{} seconds from the {from}", w.0 / 1000)))
                })
                .piece()
        }
        Face::Countdown | Face::Watching | Face::Over => ().piece(),
    })
}
