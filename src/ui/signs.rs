//! The sign buttons: the same for every trial by mouth.

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::live::{follow, live, press};
use super::route::Page;
use crate::browser::{clock, page, vibrate};
use crate::clinical::sign::Sign;
use crate::clinical::task::TaskId;
use crate::clinical::trial::MarkKind;
use crate::record::event::Event;

/// The buttons, each with how often it was pressed.
#[component]
pub(super) fn SignButtons(
    /// The task.
    task: TaskId,
) -> impl IntoView {
    let desk = Desk::get();
    let touch = move |sign: Sign, event: &ev::PointerEvent| {
        let at = clock::stamp_of(event.as_ref());
        note(desk, task, sign, at);
    };
    let count = move |sign: Sign| {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| v.exam.latest_started(task))
                .map_or(0, |t| t.signs().filter(|(s, _)| *s == sign).count())
        })
    };
    view! {
        <div class="signs" role="group" aria-label="Signs">
            {Sign::ALL.into_iter().map(|sign| {
                let n = follow(move || count(sign));
                let seen = move || n.get() > 0;
                view! {
                    <button
                        type="button"
                        class=if sign == Sign::Choke { "sign grave" } else { "sign" }
                        class:seen=seen
                        on:pointerdown=move |event| touch(sign, &event)
                        on:touchstart=move |event: ev::TouchEvent| event.prevent_default()
                        // The press was counted at its own time; the click that follows is the same.
                        on:click=press(move |event| {
                            if event.detail() == 0 {
                                note(desk, task, sign, clock::stamp_of(event.as_ref()));
                            }
                        })
                    >
                        {sign.button()}
                        <span class="n">{live(move || match n.get() { 0 => String::new(), n => format!(" {n}") })}</span>
                    </button>
                }
            }).collect_view()}
        </div>
    }
}

/// Records a sign; choking opens its own path.
fn note(desk: Desk, task: TaskId, sign: Sign, at: crate::measure::time::Stamp) {
    desk.press(task, None, at, MarkKind::Sign(sign));
    // What can be said of it stands there.
    page::above_to_top();
    if desk.prefs.get_untracked().vibrate {
        vibrate::buzz(&[30]);
    }
    if sign == Sign::Choke {
        desk.record([Event::Choking(at)]);
        // The page turns under the finger: what stands there next must not take this press.
        desk.hold_still();
        desk.turn(Page::Choking);
    }
}
