//! Past visits, newest first, a page at a time.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::desk::Desk;
use super::heads::head_words;
use super::parts::{big, frame, problem_line};
use super::route::{Page, Route};
use crate::draw::{Drawn, Piece, all, el, live};
use crate::measure::time::Millis;
use crate::record::head::Head;

/// How many visits a press brings.
const PAGE: usize = 30;

/// One visit as a line that opens it.
pub(super) fn head_row(desk: Desk, head: Head) -> Piece {
    let place = if head.loose {
        Route::Count(head.visit.clone(), None)
    } else {
        Route::Visit(head.visit.clone(), Page::Overview)
    };
    let words = head_words("", &head);
    el("li")
        .with(
            el("button.head")
                .class_if("unclosed", move || head.unclosed)
                .press(move |_| desk.go(place.clone()))
                .with(words),
        )
        .piece()
}

/// The page.
pub(super) fn history_page() -> Piece {
    let desk = Desk::get();
    let heads = RwSignal::new(Vec::<Head>::new());
    let more = RwSignal::new(true);
    let problem = RwSignal::new(String::new());
    let bring = move || {
        // Several visits may have been touched in the last one's very millisecond, and only some of
        // them have come: that millisecond is asked for again.
        let (again, before) = heads.with_untracked(|h| {
            let last = h.last().map(|h| h.touched);
            let again = h.iter().filter(|h| Some(h.touched) == last).count();
            (again, last.map(|last| last + Millis(1)))
        });
        let most = PAGE + again;
        spawn_local(async move {
            match desk.keeper().heads(most, before).await {
                Ok(mut next) => {
                    more.set(next.len() == most);
                    heads.update(|h| {
                        next.retain(|new| h.iter().all(|old| old.visit != new.visit));
                        h.extend(next);
                    });
                }
                Err(error) => problem.set(error.to_string()),
            }
        });
    };
    bring();
    frame(
        "All visits".into(),
        Route::Home,
        all![
            el("ul.heads").with(live(move || {
                let heads = heads.get().into_iter().filter(|h| !h.deleted);
                heads.map(|head| head_row(desk, head)).collect::<Piece>()
            })),
            problem_line(problem),
            live(move || (!more.get() && heads.with(Vec::is_empty))
                .then(|| el("p").with("No visits yet."))),
            live(move || more
                .get()
                .then(|| big("", "Older visits", move |_| bring())))
        ],
    )
}
