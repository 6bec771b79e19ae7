//! What to say, in large type, for the patient.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::press;
use super::route::Page;
use crate::clinical::task::TaskId;
use crate::clinical::tasks;

/// The page: nothing but the words, and a way back.
#[component]
pub(super) fn ShowPage(
    /// The task.
    task: TaskId,
) -> impl IntoView {
    let desk = Desk::get();
    view! {
        <main class="show">
            <h1 tabindex="-1">{tasks::spec(task).say}</h1>
            <button type="button" class="big" on:click=press(move |_| desk.turn(Page::Task(task)))>
                <b>"Back"</b>
            </button>
        </main>
    }
}
