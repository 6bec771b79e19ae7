//! Several pads at once: one for each thing counted, or two for two hands.

use std::rc::Rc;

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::follow::follow;
use crate::browser::prefs::Hands;
use crate::browser::{clock, vibrate};
use crate::clinical::findings::counted::Counted;
use crate::clinical::findings::pads::pads;
use crate::clinical::findings::trial::MarkKind;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::draw::{Drawn, Piece, Said, all, el, live, said};
use crate::measure::time::Stamp;
use crate::wording::counted::pad as pad_words;
use crate::wording::tasks as words;

/// One pad of several.
#[derive(Clone, Copy)]
pub(super) struct OnePad {
    kind: MarkKind,
    /// Its word for one.
    one: &'static str,
    /// Its word for many.
    many: &'static str,
}

/// The pads a task is counted on; one or none is the plain pad.
pub(super) fn several(desk: Desk, task: TaskId) -> Vec<OnePad> {
    let own = pads(task);
    let spec = tasks::spec(task);
    let pad = |kind| {
        let (one, many) = pad_words(task, kind).unwrap_or(words::of(task).counts);
        OnePad { kind, one, many }
    };
    if !own.is_empty() || spec.pad.touch_ends || !spec.pad.counts {
        return own.iter().copied().map(pad).collect();
    }
    match desk.prefs.get_untracked().hands {
        Hands::One => Vec::new(),
        Hands::TwoThings if spec.two_things => {
            vec![pad(MarkKind::Tap), pad(MarkKind::Count(Counted::Other))]
        }
        Hands::TwoPads | Hands::TwoThings => vec![pad(MarkKind::Tap); 2],
    }
}

/// The pads, each with its own count.
pub(super) fn all_pads(desk: Desk, task: TaskId, pads: Vec<OnePad>) -> Piece {
    let touch = move |kind: MarkKind, at: Stamp| {
        desk.press(task, None, at, kind);
        if desk.prefs.get_untracked().vibrate {
            vibrate::buzz(&[15]);
        }
    };
    let class = if pads.len() > 2 { "pads three" } else { "pads" };
    let buttons: Vec<Piece> = pads
        .into_iter()
        .enumerate()
        .map(|(i, OnePad { kind, one, many })| {
            let n = follow(move || {
                desk.visit.with(|v| {
                    v.and_then(|v| v.exam.latest(task))
                        .map_or(0, |t| t.count_of(kind))
                })
            });
            let inside = figures(
                live(move || n.get()),
                live(move || if n.get() == 1 { one } else { many }),
            );
            let id = if i == 0 { "pad" } else { "" };
            pad_button(
                id,
                said(|| "pad running"),
                Rc::new(move |at| touch(kind, at)),
                inside,
            )
        })
        .collect();
    el("div")
        .class(class)
        .attr("role", "group")
        .attr("aria-label", "Pads")
        .with(buttons)
        .piece()
}

/// A count and what is counted.
pub(super) fn figures(count: Piece, what: Piece) -> Piece {
    all![el("span.count").with(count), el("span.what").with(what)]
}

/// A pad: it takes a touch on its way down, a key, and a screen reader's press, each once.
pub(super) fn pad_button(
    id: &'static str,
    class: Said,
    touch: Rc<dyn Fn(Stamp)>,
    inside: Piece,
) -> Piece {
    let [down, click, key] = [Rc::clone(&touch), Rc::clone(&touch), touch];
    let mut pad = el("button").class(class);
    if !id.is_empty() {
        pad = pad.attr("id", id);
    }
    pad.on("pointerdown", move |event: ev::PointerEvent| {
        // A second button of a mouse is no tap.
        if event.button() == 0 {
            down(clock::stamp_of(event.as_ref()))
        }
    })
    // A touch that was counted on its way down must not become a click on whatever
    // stands there when the finger leaves.
    .on("touchstart", move |event: ev::TouchEvent| {
        event.prevent_default()
    })
    // A screen reader's press comes as a click without a pointer.
    .press(move |event: ev::MouseEvent| {
        if event.detail() == 0 {
            click(clock::stamp_of(event.as_ref()))
        }
    })
    .on("keydown", move |event: ev::KeyboardEvent| {
        event.stop_propagation();
        on_key(&event, &*key);
    })
    .on("keyup", move |event: ev::KeyboardEvent| {
        if is_press(&event) {
            event.prevent_default();
        }
    })
    .on("contextmenu", move |event: ev::MouseEvent| {
        event.prevent_default()
    })
    .with(inside)
    .piece()
}

/// A key that presses, once for as long as it is held.
pub(super) fn on_key(event: &ev::KeyboardEvent, touch: &dyn Fn(Stamp)) {
    if is_press(event) {
        // Else the browser would make a click of it, and it would count twice.
        event.prevent_default();
        if !event.repeat() {
            touch(clock::stamp_of(event.as_ref()));
        }
    }
}

/// Keys that press: space, enter, and what a presentation clicker sends.
fn is_press(event: &ev::KeyboardEvent) -> bool {
    matches!(event.key().as_str(), " " | "Enter" | "PageDown")
}
