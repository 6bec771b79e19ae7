//! One task on its own, attached to a visit afterwards.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::press;
use super::parts::Frame;
use super::route::Route;
use crate::browser::sound;
use crate::clinical::task::TaskId;
use crate::clinical::tasks;

/// The task of the visit on the desk, where it is one task on its own.
pub(super) fn single_task(desk: Desk) -> Option<TaskId> {
    desk.visit.with_untracked(|v| {
        let first = v.as_ref()?.exam.trials.first()?.task;
        (first != TaskId::FreeCount).then_some(first)
    })
}

/// The page: every task that needs no gate.
#[component]
pub(super) fn SinglePage() -> impl IntoView {
    let desk = Desk::get();
    view! {
        <Frame title="One task" back=Route::Home>
            <ul class="steps">
                {TaskId::ALL
                    .iter()
                    .copied()
                    .filter(|id| tasks::alone(*id))
                    .map(|id| view! {
                        <li>
                            <button type="button" class="head" on:click=press(move |_| { sound::unlock(); desk.begin_single(id); })>
                                <b>{tasks::spec(id).title}</b>
                            </button>
                        </li>
                    })
                    .collect_view()}
            </ul>
            <p class="small">"Kept on this phone, and attached to a visit afterwards."</p>
        </Frame>
    }
}
