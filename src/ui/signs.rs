//! The sign buttons, the same for every trial by mouth, and what a sign asks for at once.

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::follow::follow;
use super::route::Page;
use crate::browser::{clock, page, vibrate};
use crate::clinical::findings::flag::Level;
use crate::clinical::findings::trial::MarkKind;
use crate::clinical::knowledge::sign::{Sign, SignTask, meaning, meaning_under};
use crate::clinical::knowledge::task::TaskId;
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
                .map_or(0, |t| t.count_of(MarkKind::Sign(sign)))
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

/// What to do at once after a sign that stops a trial was pressed in the newest one.
pub(super) fn stop_words(desk: Desk, task: TaskId) -> Option<&'static str> {
    let column = task.sign_column()?;
    let worst = desk.visit.with(|v| {
        let exam = &v?.exam;
        // A policy can make a sign stop the trial, never let one pass.
        let level = |sign| {
            let plain = meaning(sign, column).0;
            plain.max(meaning_under(sign, column, &exam.policy).0)
        };
        let trial = exam.latest(task)?;
        let seen = |sign: &Sign| trial.count_of(MarkKind::Sign(*sign)) > 0;
        Sign::ALL.into_iter().filter(seen).map(level).max()
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
