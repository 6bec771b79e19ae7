//! The first page.

use leptos::prelude::*;

use super::desk::Desk;
use super::follow::follow;
use super::heads::head_words;
use super::history::head_row;
use super::parts::big;
use super::route::{Page, Route};
use crate::clinical::knowledge::screen::ScreenId;
use crate::draw::{Piece, all, el, live};
use crate::record::head::Head;
use crate::record::way;
use crate::wording::screen;

/// What a screen is not.
const CAUTION: &str = "A screen is not a diagnosis and does not see silent aspiration. \
    Emergencies go to your local procedure. Local policy and the licensed clinician decide.";

/// The first page: begin, go on, look back.
pub(super) fn home_page() -> Piece {
    let desk = Desk::get();
    // A visit on the desk may be newer than the list that was read.
    let current = follow(move || {
        desk.visit.with(|v| {
            v.filter(|v| v.next > 0 && !v.deleted && (!v.handed_over() || v.running()))
                .map(Head::of)
        })
    });
    let go_on = move |_| {
        let place = desk.visit.with_untracked(|v| {
            v.map(|v| {
                if v.is_loose() {
                    Route::Count(v.id.clone(), None)
                } else if v.exam.ended.is_some() {
                    // There it is taken up again.
                    Route::Visit(v.id.clone(), Page::Overview)
                } else {
                    Route::Visit(v.id.clone(), way::next(v).into())
                }
            })
        });
        if let Some(place) = place {
            desk.go(place);
        }
    };
    let others = move || {
        let open = current.get().map(|h| h.visit);
        desk.heads
            .get()
            .into_iter()
            .filter(|h| !h.deleted && Some(&h.visit) != open.as_ref())
            .take(3)
            .map(|h| head_row(desk, h))
            .collect::<Piece>()
    };
    all![
        el("header.top.home").with(el("h1").attr("tabindex", "-1").with("Penlight")),
        el("main")
            .with(live(move || current.get().map(|head| el(
                "button.big.go-on"
            )
            .press(go_on)
            .with(head_words("Go on: ", &head)))))
            .with(
                ScreenId::ALL
                    .iter()
                    .copied()
                    .map(|id| {
                        el("button.big")
                            .class_if("primary", move || id == ScreenId::Swallow)
                            .press(move |_| desk.go(Route::NewVisit(id)))
                            .with(el("b").with(screen::title(id)))
                            .with(el("span").with(screen::about(id)))
                    })
                    .collect::<Piece>()
            )
            .with(
                big("", "One task", move |_| desk.go(Route::Single))
                    .with(el("span").with("Any count or time on its own"))
            )
            .with(
                big("", "Just count something", move |_| desk.begin_count())
                    .with(el("span").with("Stopwatch, any window, taps"))
            )
            .with(
                el("section.recent")
                    .with(el("h2").with("Last visits"))
                    .with(el("ul.heads").with(live(others)))
                    .with(
                        el("button")
                            .press(move |_| desk.go(Route::History))
                            .with("All visits")
                    )
            )
            .with(el("p.small").with(live(move || if desk.stored.get() {
                "Stored on this phone: opens without a network."
            } else {
                "Not stored on this phone yet: needs the network to open again."
            })))
            .with(el("p.caution").with(CAUTION))
            .with(
                el("div.row.quiet")
                    .with(
                        el("button")
                            .press(move |_| desk.go(Route::Settings))
                            .with("Settings")
                    )
                    .with(
                        el("button")
                            .press(move |_| desk.go(Route::Sources))
                            .with("Sources, about")
                    )
            )
    ]
}
