//! What to say, in large type, for the patient.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{live, press};
use super::route::{Page, Route};
use crate::browser::{page, speak};

/// The page: nothing but the words, and a way back.
#[component]
pub(super) fn ShowPage(
    /// The words.
    words: &'static str,
    /// Where "back" leads.
    back: Page,
) -> impl IntoView {
    let desk = Desk::get();
    // A task on its own has no visit to go back to.
    let go_back = move |_| {
        let task = match back {
            Page::Task(task) => Some(task),
            _ => None,
        };
        let loose = desk.visit.with_untracked(|v| {
            v.as_ref()
                .filter(|v| v.is_loose())
                .map(|v| Route::Count(v.id.clone(), task))
        });
        match loose {
            Some(place) => desk.go(place),
            None => desk.turn(back),
        }
    };
    // Some browsers know their voices only a moment after they were first asked.
    let can = RwSignal::new(speak::can());
    let asked = page::every(400, move || can.set(speak::can()));
    let asking = StoredValue::new_local(Some(asked));
    on_cleanup(move || {
        asking.set_value(None);
        speak::hush();
    });
    view! {
        <main class="show">
            <h1 tabindex="-1">{words}</h1>
            {live(move || can.get().then(|| view! {
                <button type="button" class="big" on:click=press(move |_| speak::say(words))>
                    <b>"Say it aloud"</b>
                </button>
            }))}
            <button type="button" class="big" on:click=press(go_back)>
                <b>"Back"</b>
            </button>
        </main>
    }
}
