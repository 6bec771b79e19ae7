//! Past visits, newest first, a page at a time.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::desk::Desk;
use super::parts::{big, frame, problem_line};
use super::route::{Page, Route};
use crate::browser::clock;
use crate::draw::{Drawn, Piece, all, el, live};
use crate::measure::time::Millis;
use crate::record::head::Head;
use crate::wording::screen::what;
use crate::wording::verdict::in_list;

/// How many visits a press brings.
const PAGE: usize = 30;

/// "broken off 09:31".
pub(super) fn broken_words(at: Option<Millis>) -> Option<String> {
    at.map(|at| format!("broken off {}", clock::local(at).time))
}

/// One visit as a line that opens it.
pub(super) fn head_row(desk: Desk, head: Head) -> Piece {
    let when = clock::local(head.opened);
    let place = if head.loose {
        Route::Count(head.visit.clone(), None)
    } else {
        Route::Visit(head.visit.clone(), Page::Overview)
    };
    // What was forgotten to be ended hides no verdict.
    let verdict = in_list(&head);
    let state = match (head.running, verdict.as_str()) {
        (true, "") => "running".to_owned(),
        (true, verdict) => format!("{verdict}, running"),
        (false, verdict) => verdict.to_owned(),
    };
    let broken = broken_words(head.broken);
    el("li")
        .with(
            el("button.head")
                .class_if("unclosed", move || head.unclosed)
                .press(move |_| desk.go(place.clone()))
                .with(el("b").with(head.label.to_string()))
                .with(el("span").with(format!("{} {}, {}", when.date, when.time, what(head.what))))
                .with(el("span.state").with(state))
                .with(broken.map(|words| el("span.state.open").with(words)))
                .with(
                    head.unclosed
                        .then(|| el("span.state.open").with("not closed")),
                ),
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
