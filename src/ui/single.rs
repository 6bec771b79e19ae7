//! One task on its own, attached to a visit afterwards.

use super::desk::Desk;
use super::parts::frame;
use super::route::Route;
use crate::browser::sound;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::draw::{Piece, all, el};
use crate::wording::tasks as words;

/// The task of the visit on the desk, where it is one task on its own.
pub(super) fn single_task(desk: Desk) -> Option<TaskId> {
    desk.visit.with_untracked(|v| {
        let first = v?.exam.trials.first()?.task;
        (first != TaskId::FreeCount).then_some(first)
    })
}

/// The page: every task that needs no gate.
pub(super) fn single_page() -> Piece {
    let desk = Desk::get();
    frame(
        "One task".into(),
        Route::Home,
        all![
            el("ul.steps").with(
                TaskId::ALL
                    .iter()
                    .copied()
                    .filter(|id| tasks::spec(*id).alone)
                    .map(|id| el("li").with(
                        el("button.head")
                            .press(move |_| {
                                sound::unlock();
                                desk.begin_single(id);
                            })
                            .with(el("b").with(words::of(id).title))
                    ))
                    .collect::<Piece>()
            ),
            el("p.small").with("Kept on this phone, and attached to a visit afterwards.")
        ],
    )
}
