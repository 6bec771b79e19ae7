//! Ending a screen before it is through; what is said of one that was, and the way back into it.

use super::desk::Desk;
use super::holds::TAKE_UP;
use super::parts::{big, choking_button, folded};
use super::route::Page;
use super::told::clock_now;
use crate::browser::clock;
use crate::clinical::findings::exam::EndedEarly;
use crate::draw::{El, Piece, all, el, when};
use crate::measure::time::Stamp;
use crate::record::event::Event;
use crate::record::visit::Visit;
use crate::record::way;
use crate::wording::verdict::ended_under;

/// "Broken off 09:31", with its date on another day, where the screen was ended before it was through.
pub(super) fn broken_off(visit: &Visit) -> Option<String> {
    visit.exam.ended?;
    let last = visit.breaks.last()?;
    let words = match last.why {
        EndedEarly::BrokenOff => "Broken off".to_owned(),
        why => format!("Ended early: {},", ended_under(why, &visit.exam.policy)),
    };
    Some(format!("{words} {}", clock_now().say(last.at)))
}

/// The way back into a screen that was ended.
pub(super) fn take_up(desk: Desk, class: &'static str) -> El {
    big(class, TAKE_UP, move |_| {
        desk.record([Event::TakenUpAgain]);
        if let Some(page) = desk.visit.with_untracked(|v| v.map(way::next)) {
            desk.turn(page);
        }
    })
}

/// Choking, and the ways out of a screen, at any point.
pub(super) fn leave() -> Piece {
    all![choking_row(), end_here()]
}

pub(super) fn choking_row() -> El {
    el("div.row.quiet").with(choking_button())
}

/// Refusal, withdrawal and breaking off.
pub(super) fn end_here() -> Piece {
    let desk = Desk::get();
    let end = move |why: EndedEarly, at: Stamp| {
        let events = desk
            .visit
            .with_untracked(|v| v.map_or(Vec::new(), |v| v.ending(why, at)));
        desk.record(events);
        // What was swallowed is watched to the end of its minute.
        let watched = desk
            .visit
            .with_untracked(|v| v.and_then(|v| way::watched(v).map(|t| t.task)));
        desk.turn(watched.map_or(Page::Decision, Page::Task));
    };
    let ways = [
        (EndedEarly::Refused, "Person declined"),
        (EndedEarly::Withdrew, "Person wants to stop"),
        (EndedEarly::BrokenOff, "I must break off"),
    ];
    let open = move || {
        desk.visit
            .with(|v| v.is_some_and(|v| v.exam.ended.is_none()))
    };
    when(open, move || {
        folded("End the screen here").with(el("div.row").with(ways.map(|(why, words)| {
            el("button")
                .press(move |event| end(why, clock::stamp_of(event.as_ref())))
                .with(words)
        })))
    })
}
