//! The pad with what stands beside it: the time, undo, the end, the signs.

use std::rc::Rc;

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::follow::{Follow, follow};
use super::pad_face::{face_of_pad, panel, waiting, watch};
use super::pads::{all_pads, on_key, pad_button, several};
use super::running::{clock, undo_words};
use super::signs::sign_buttons;
use super::the_pad::ThePad;
use crate::browser::{clock, page};
use crate::clinical::decision::task_state::{PadPlace, TaskState};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::spec::Face;
use crate::draw::{Drawn, El, Piece, el, live, said, when};
use crate::measure::time::Millis;
use crate::wording::task::lately;
use crate::wording::tasks as words;

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
