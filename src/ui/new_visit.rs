//! A new visit: everything optional but the label, which is suggested.

use leptos::prelude::*;

use super::desk::Desk;
use super::details::{Form, details_fields};
use super::heads::newest;
use super::history::head_row;
use super::parts::{frame, para};
use super::route::Route;
use super::who::begin_as;
use crate::browser::{clock, page, prefs, sound};
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::screen::ScreenId;
use crate::clinical::knowledge::signed::Signed;
use crate::draw::{Piece, all, el, live};
use crate::record::head::Head;
use crate::wording::tasks;

/// A suggested label: which visit of the day on this phone, and when. Never a bed alone.
fn suggested(heads: &[Head]) -> String {
    let now = clock::local(clock::now().wall);
    let today = heads.iter();
    let today = today.filter(|h| !h.loose && clock::local(h.opened).date == now.date);
    let today = today.count();
    format!("Visit {}, {}", today + 1, now.time)
}

/// The page.
pub(super) fn new_visit_page(
    // The screen to begin with.
    screen: ScreenId,
) -> Piece {
    let desk = Desk::get();
    let heads = newest(desk, LOOKED_AT);
    let form = Form::new(heads.with_untracked(|h| suggested(h)), None, None);
    // The first page knows only the newest of today.
    Effect::new(move || form.suggest(heads.with(|h| suggested(h))));
    let begin = Callback::new(move |by: Signed| {
        sound::unlock();
        if let Some(details) = form.read() {
            desk.begin(details, Some(screen), by);
        } else {
            page::to_refused();
        }
    });
    let policy = prefs::policy_in_force();
    // What this phone keeps of the order is said before it holds.
    let order = desk.prefs.get_untracked().order;
    let kept = if order != Order::default() && screen.screen().has_order() {
        let titles: Vec<&str> = order.tasks().iter().map(|t| tasks::of(*t).title).collect();
        let titles = titles.join(", ");
        let titles = if titles.is_empty() { "none" } else { &titles };
        format!("Syllables, as kept: {titles}")
    } else {
        String::new()
    };
    frame(
        crate::wording::screen::title(screen).into(),
        Route::Home,
        all![
            unclosed(heads),
            details_fields(form),
            el("p.small")
                .with("Local policy: ")
                .with(policy.name.clone()),
            para("small", kept),
            begin_as(policy, begin)
        ],
    )
}

/// Among so many of the newest visits what is open is looked for: those of some weeks.
const LOOKED_AT: usize = 200;

/// So many of them are named; the others stand in the list of all visits.
const NAMED: usize = 8;

/// An earlier refer or stop that nobody closed, so that it is not overlooked at the next visit.
fn unclosed(heads: RwSignal<Vec<Head>>) -> Piece {
    let desk = Desk::get();
    let open = move || {
        let heads = heads.get().into_iter();
        let open = heads.filter(|h| h.unclosed && !h.deleted);
        open.take(NAMED).collect::<Vec<_>>()
    };
    live(move || {
        let open = open();
        (!open.is_empty()).then(|| {
            el("section.found.caution")
                .with(el("h2").with("Earlier, and not closed. Same person?"))
                .with(
                    el("ul.heads").with(
                        open.into_iter()
                            .map(|h| head_row(desk, h))
                            .collect::<Piece>(),
                    ),
                )
        })
    })
}
