//! Several pads at once: one for each thing counted, or two for two hands.

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::live::{follow, live, press};
use super::pad::is_press;
use crate::browser::prefs::Hands;
use crate::browser::{clock, vibrate};
use crate::clinical::counted::{Counted, OnePad, pads};
use crate::clinical::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::trial::MarkKind;
use crate::measure::time::Stamp;

/// The pads a task is counted on; one or none is the plain pad.
pub(super) fn several(desk: Desk, task: TaskId) -> Vec<OnePad> {
    let own = pads(task);
    let spec = tasks::spec(task);
    let (one, many) = spec.pad.counts;
    if !own.is_empty() || spec.pad.touch_ends || one.is_empty() {
        return own.to_vec();
    }
    let pad = |kind| OnePad { kind, one, many };
    match desk.prefs.get_untracked().hands {
        Hands::One => Vec::new(),
        // Only a count of anything can be of two things: every rule looks at one.
        Hands::TwoThings if task == TaskId::FreeCount => {
            vec![pad(MarkKind::Tap), pad(MarkKind::Count(Counted::Other))]
        }
        Hands::TwoPads | Hands::TwoThings => vec![pad(MarkKind::Tap); 2],
    }
}

/// The pads, each with its own count.
#[component]
pub(super) fn Pads(
    /// The task.
    task: TaskId,
    /// What each counts.
    pads: Vec<OnePad>,
) -> impl IntoView {
    let desk = Desk::get();
    let touch = move |kind: MarkKind, at: Stamp| {
        desk.press(task, None, at, kind);
        if desk.prefs.get_untracked().vibrate {
            vibrate::buzz(&[15]);
        }
    };
    let class = if pads.len() > 2 { "pads three" } else { "pads" };
    view! {
        <div class=class role="group" aria-label="Pads">
            {pads.into_iter().enumerate().map(|(i, OnePad { kind, one, many })| {
                let n = follow(move || desk.visit.with(|v| {
                    v.as_ref().and_then(|v| v.exam.latest(task)).map_or(0, |t| t.count_of(kind))
                }));
                view! {
                    <button
                        type="button"
                        id=(i == 0).then_some("pad")
                        class="pad running"
                        on:pointerdown=move |event: ev::PointerEvent| {
                            if event.button() == 0 { touch(kind, clock::stamp_of(event.as_ref())) }
                        }
                        on:touchstart=move |event: ev::TouchEvent| event.prevent_default()
                        on:click=press(move |event: ev::MouseEvent| {
                            if event.detail() == 0 { touch(kind, clock::stamp_of(event.as_ref())) }
                        })
                        on:keydown=move |event: ev::KeyboardEvent| {
                            event.stop_propagation();
                            if is_press(&event) {
                                event.prevent_default();
                                if !event.repeat() { touch(kind, clock::stamp_of(event.as_ref())) }
                            }
                        }
                        on:keyup=move |event: ev::KeyboardEvent| { if is_press(&event) { event.prevent_default(); } }
                        on:contextmenu=press(move |event: ev::MouseEvent| event.prevent_default())
                    >
                        <span class="count">{live(move || n.get())}</span>
                        <span class="what">{live(move || if n.get() == 1 { one } else { many })}</span>
                    </button>
                }
            }).collect_view()}
        </div>
    }
}
