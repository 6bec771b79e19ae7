//! The pad: start, then every tap counts.
//!
//! **Invariants:** a tap's time is the event's own stamp, not the moment the handler ran; it is
//! counted on the way down, so nothing that comes after (scroll, palm, cancel) can lose it; two
//! thumbs are two taps.

use std::rc::Rc;

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::follow::{Follow, follow};
use super::holds::held;
use super::pads::{all_pads, figures, on_key, pad_button, several};
use super::running::{Face, clock, left_to_watch, phase_of, seconds_left, undo_words, with_trial};
use super::signs::sign_buttons;
use crate::browser::{clock, page, sound, vibrate};
use crate::clinical::findings::trial::MarkKind;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::spec::Phase;
use crate::draw::{Drawn, Piece, all, el, live, said, when};
use crate::measure::beat::Beat;
use crate::measure::time::{Millis, Stamp};
use crate::wording::tasks as words;

/// How long "ready, set" lasts before "go".
const COUNTDOWN: Millis = Millis::from_secs(3);

/// Two touches closer than this are one, where the second would end a swallow.
const BOUNCE: Millis = Millis(250);

/// Whether the buttons of the signs stand on a task's page. After the watch too: what comes late is recorded and
/// told; and while the next trial is made ready, for the one before.
pub(super) fn signs_stand(desk: Desk, task: TaskId, face: Face) -> bool {
    let begun = || {
        desk.visit
            .with(|v| v.is_some_and(|v| v.exam.latest_started(task).is_some()))
    };
    task.sign_column().is_some()
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
    let words = words::of(task);
    let taps = follow(move || with_trial(desk, task, |_, t| t.taps()).unwrap_or(0));

    // What it offers where nothing runs: the next of many trials, or what that waits for.
    let offer = follow(move || {
        desk.visit
            .with(|v| v.and_then(|v| crate::wording::task::offer(task, &v.exam)))
    });
    let lately = follow(move || {
        desk.visit
            .with(|v| v.and_then(|v| crate::wording::task::lately(task, &v.exam)))
    });
    let goes_on = task.goes_on();
    let held = held(desk, task);
    // Whether a touch begins the next trial.
    let next_now =
        move || goes_on && offer.get().is_some_and(|o| !o.waits) && held.get().is_empty();
    // Nothing is counted: the time runs to its end by itself, on a plain panel.
    let silent = !spec.pad.counts && !spec.pad.touch_ends;
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
        Face::Running if task.sign_column().is_some() && spec.pad.touch_ends && bounced(at) => {}
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

    let (one, many) = words.counts;
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
                    .map_or_else(|| words.start.to_owned(), |o| o.words),
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
            el("span.start").with(words.end)
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
                let pressed = t.marks.pressed();
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
        .class_if("with-signs", move || task.sign_column().is_some())
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
                .with(live(move || match face.get() {
                    Face::Running if spec.pad.ends_by_press() && !spec.pad.touch_ends => Some(
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
                            .with(words.end),
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
