//! The sign buttons: the same for every trial by mouth.

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::follow::follow;
use super::route::Page;
use crate::browser::{clock, page, vibrate};
use crate::clinical::sign::Sign;
use crate::clinical::task::TaskId;
use crate::clinical::trial::MarkKind;
use crate::draw::{Drawn, Piece, el, live};
use crate::record::event::Event;

/// The buttons, each with how often it was pressed.
pub(super) fn sign_buttons(
    // The task.
    task: TaskId,
) -> Piece {
    let desk = Desk::get();
    let touch = move |sign: Sign, event: &ev::PointerEvent| {
        let at = clock::stamp_of(event.as_ref());
        note(desk, task, sign, at);
    };
    let count = move |sign: Sign| {
        desk.visit.with(|v| {
            v.and_then(|v| v.exam.latest_started(task))
                .map_or(0, |t| t.signs().filter(|(s, _)| *s == sign).count())
        })
    };
    el("div.signs")
        .attr("role", "group")
        .attr("aria-label", "Signs")
        .with(
            Sign::ALL
                .into_iter()
                .map(|sign| {
                    let n = follow(move || count(sign));
                    let seen = move || n.get() > 0;
                    el("button")
                        .class(if sign == Sign::Choke {
                            "sign grave"
                        } else {
                            "sign"
                        })
                        .class_if("seen", seen)
                        .on("pointerdown", move |event: ev::PointerEvent| {
                            touch(sign, &event)
                        })
                        .on("touchstart", move |event: ev::TouchEvent| {
                            event.prevent_default()
                        })
                        // The press was counted at its own time; the click that follows is the same.
                        .press(move |event| {
                            if event.detail() == 0 {
                                note(desk, task, sign, clock::stamp_of(event.as_ref()));
                            }
                        })
                        .with(sign.button())
                        .with(el("span.n").with(live(move || match n.get() {
                            0 => String::new(),
                            n => format!(" {n}"),
                        })))
                })
                .collect::<Piece>(),
        )
        .piece()
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
