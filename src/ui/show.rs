//! What to say, in large type, for the patient.

use leptos::prelude::*;

use super::desk::Desk;
use super::parts::big;
use super::route::{Page, Route};
use crate::browser::{page, speak};
use crate::draw::{Drawn, Piece, el, live};

/// The page: nothing but the words, and a way back.
pub(super) fn show_page(
    // The words.
    words: &'static str,
    // Where "back" leads.
    back: Page,
) -> Piece {
    let desk = Desk::get();
    // A task on its own has no visit to go back to.
    let go_back = move |_| {
        let task = match back {
            Page::Task(task) => Some(task),
            _ => None,
        };
        let loose = desk.visit.with_untracked(|v| {
            v.filter(|v| v.is_loose())
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
    el("main.show")
        .with(el("h1").attr("tabindex", "-1").with(words))
        .with(live(move || {
            can.get()
                .then(|| big("", "Say it aloud", move |_| speak::say(words)))
        }))
        .with(big("", "Back", go_back))
        .piece()
}
