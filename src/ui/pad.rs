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
use super::pad_face::{face_of_pad, panel, waiting, watch};
use super::pads::{all_pads, on_key, pad_button, several};
use super::running::{clock, undo_words, with_trial};
use super::signs::sign_buttons;
use crate::browser::{clock, page, sound, vibrate};
use crate::clinical::decision::task_state::{PadPlace, TaskState};
use crate::clinical::findings::trial::MarkKind;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::spec::{Face, TaskSpec};
use crate::draw::{Drawn, El, Piece, el, live, said, when};
use crate::measure::time::{Millis, Stamp};
use crate::wording::task::lately;
use crate::wording::tasks as words;

/// How long "ready, set" lasts before "go".
const COUNTDOWN: Millis = Millis::from_secs(3);

/// Two touches closer than this are one, where the second would end a swallow.
const BOUNCE: Millis = Millis(250);

/// The pad of a task: what a press on it does.
#[derive(Clone, Copy)]
pub(super) struct ThePad {
    pub(super) desk: Desk,
    pub(super) task: TaskId,
    pub(super) spec: &'static TaskSpec,
    /// The window chosen on the page, where the task leaves it open.
    pub(super) length: Signal<Option<Millis>>,
    /// The face to show.
    pub(super) face: Follow<Face>,
    /// Where the task stands.
    pub(super) state: Memo<TaskState>,
}

impl ThePad {
    fn buzz(self, ms: u32) {
        if self.desk.prefs.get_untracked().vibrate {
            vibrate::buzz(&[ms]);
        }
    }

    fn is_split(self) -> bool {
        several(self.desk, self.task).len() > 1
    }

    fn start(self, at: Stamp) {
        let (desk, pad) = (self.desk, &self.spec.pad);
        sound::unlock();
        let prefs = desk.prefs.get_untracked();
        let countdown = pad.countdown && !pad.first_counts && (pad.is_silent() || prefs.countdown);
        let at = if countdown {
            if prefs.sound {
                sound::countdown();
            }
            at.later(COUNTDOWN)
        } else {
            // A syllable or a sound that starts the time is on its way already, and a beat has its
            // own first tick: no tone over them.
            let quiet = pad.first_counts || pad.touch_ends;
            if prefs.sound && !quiet {
                sound::go_tone();
            }
            at
        };
        desk.press(self.task, self.length.get_untracked(), at, MarkKind::Start);
        // The first beat is now, not at the next turn of the clock.
        desk.tick();
        page::above_to_top();
        if self.is_split() {
            // The pads stand where other things were: a second touch must not hit those.
            desk.hold_still();
        }
        self.buzz(40);
        desk.said.set("Started.".to_owned());
    }

    fn end(self, at: Stamp) {
        self.desk.press(self.task, None, at, MarkKind::End);
        self.desk.hold_still();
        page::above_to_top();
        self.buzz(60);
        self.desk.said.set("Ended.".to_owned());
    }

    /// Whether a touch comes so soon after the start that a finger bounced: it has felt no swallow.
    fn bounced(self, at: Stamp) -> bool {
        if self.task.sign_column().is_none() {
            return false;
        }
        let since = with_trial(self.desk, self.task, |_, trial| {
            trial.between(trial.start()?, at).length
        });
        since.flatten().is_some_and(|since| since < BOUNCE)
    }

    /// What a press means depends on the face that was on the screen when it came.
    fn touch(self, at: Stamp) {
        let ends = self.spec.pad.touch_ends;
        match self.face.get_untracked() {
            Face::Ready if self.state.get_untracked().waits() => {}
            Face::Ready => self.start(at),
            Face::Running if ends && self.bounced(at) => {}
            Face::Running if ends => self.end(at),
            Face::Countdown if ends => {}
            Face::Countdown | Face::Running | Face::Late => {
                self.desk.press(self.task, None, at, MarkKind::Tap);
                self.buzz(15);
            }
            Face::Watching | Face::Over => {
                // A second touch of the end is no new trial.
                if self.state.get_untracked().next_now() && !self.desk.still.get_untracked() {
                    self.desk.repeat(self.task, None);
                    self.start(at);
                }
            }
        }
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
    // Where the task stands.
    state: Memo<TaskState>,
) -> Piece {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let pad = ThePad {
        desk,
        task,
        spec,
        length,
        face,
        state,
    };
    // A paired keyboard or clicker counts wherever the focus is, unless it is in a field or on
    // another button.
    let keys = window_event_listener(ev::keydown, move |event| {
        if !page::is_in_control(event.as_ref()) {
            on_key(&event, &|at| pad.touch(at));
        }
    });
    on_cleanup(move || keys.remove());

    let place = Memo::new(move |_| state.with(TaskState::pad));
    el("div.pad-area")
        .class_if("with-signs", move || task.sign_column().is_some())
        .with(clock(task, face, length))
        .with(beside(pad))
        .with(when(
            move || state.get().has_signs(),
            move || sign_buttons(task),
        ))
        // Where the screen is short, what comes next stands far above.
        .with(when(
            move || state.get().face == Face::Over && !state.get().next_now(),
            || {
                el("button.up")
                    .press(move |_| page::scroll_to_top())
                    .with("What comes next stands above")
            },
        ))
        .with(live(move || match place.get() {
            PadPlace::Over => ().piece(),
            PadPlace::Panel => panel(pad),
            PadPlace::Watch => watch(pad),
            PadPlace::Waiting => waiting(pad),
            PadPlace::Pad if face.get() != Face::Ready && pad.runs() && pad.is_split() => {
                all_pads(desk, task, several(desk, task))
            }
            PadPlace::Pad => {
                let touch = Rc::new(move |at| pad.touch(at));
                let face = live(move || face_of_pad(pad));
                pad_button("pad", said(move || pad.class()), touch, face)
            }
        }))
        .piece()
}

/// Beside the pad: undo, the end where it is a button of its own, what was given last.
fn beside(pad: ThePad) -> El {
    let ThePad {
        desk, task, spec, ..
    } = pad;
    let undoable = follow(move || desk.visit.with(|v| v.is_some_and(|v| v.can_undo(task))));
    let lately = follow(move || desk.visit.with(|v| v.and_then(|v| lately(task, &v.exam))));
    let has_end = spec.pad.ends_by_press() && !spec.pad.touch_ends;
    let undo = move || {
        el("button.undo")
            .press(move |_| desk.undo(task))
            .with(live(move || undo_words(desk, task)))
    };
    el("div.beside-pad")
        .with(live(move || undoable.get().then(undo)))
        .with(live(move || {
            (has_end && pad.face.get() == Face::Running).then(|| end_button(pad))
        }))
        .with(live(move || {
            lately.get().map(|words| el("p.lately").with(words))
        }))
}

fn end_button(pad: ThePad) -> El {
    el("button.end")
        .on("pointerdown", move |event: ev::PointerEvent| {
            if event.button() == 0 {
                pad.end(clock::stamp_of(event.as_ref()))
            }
        })
        // A touch that was counted on its way down must not become a click on whatever stands
        // there when the finger leaves.
        .on("touchstart", move |event: ev::TouchEvent| {
            event.prevent_default()
        })
        .press(move |event: ev::MouseEvent| {
            if event.detail() == 0 {
                pad.end(clock::stamp_of(event.as_ref()))
            }
        })
        .with(words::of(pad.task).end)
}
