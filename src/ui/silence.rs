//! A beat that the phone silenced: said plainly, with one press to hear it again.

use leptos::prelude::*;

use super::desk::Desk;
use super::follow::follow;
use super::parts::{button, para};
use crate::browser::sound;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::spec::Phase;
use crate::draw::{Piece, el, live};
use crate::measure::time::Millis;

/// A phone takes a moment to let sound begin after the press.
const SETTLES: Millis = Millis(700);

/// Says so while the time of a task with a beat runs and nothing can be heard.
pub(super) fn silence(task: TaskId) -> Piece {
    let desk = Desk::get();
    let silent = follow(move || {
        let now = desk.now.get();
        let since =
            desk.visit.with(
                |v| match tasks::spec(task).phase(v?.exam.latest(task)?, now) {
                    Phase::Running(since) => since.length,
                    _ => None,
                },
            );
        // Whoever turned the sound off knows.
        desk.prefs.get().sound && since.is_some_and(|s| s > SETTLES) && !sound::can_be_heard()
    });
    live(move || {
        silent.get().then(|| {
            let words = "No sound: the phone stopped it. The light goes on with the beat.";
            el("section")
                .attr("role", "alert")
                .with(para("advice", words))
                .with(button("big", "Sound on again", sound::unlock))
        })
    })
}
