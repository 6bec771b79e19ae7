//! A screen that was ended before it was through: what is said of it, and the way back into it.

use super::desk::Desk;
use super::parts::big;
use super::steps;
use super::told::clock_now;
use crate::clinical::exam::EndedEarly;
use crate::draw::El;
use crate::record::event::Event;
use crate::record::visit::Visit;

/// "Broken off 09:31", with its date on another day, where the screen was ended before it was through.
pub(super) fn broken_off(visit: &Visit) -> Option<String> {
    visit.exam.ended?;
    let last = visit.breaks.last()?;
    let words = match last.why {
        EndedEarly::BrokenOff => "Broken off".to_owned(),
        why => format!("Ended early: {},", why.told(&visit.exam.policy)),
    };
    Some(format!("{words} {}", clock_now().say(last.at)))
}

/// The way back into a screen that was ended.
pub(super) fn take_up(desk: Desk, class: &'static str) -> El {
    big(class, "Take the screen up again", move |_| {
        desk.record([Event::TakenUpAgain]);
        if let Some(page) = desk.visit.with_untracked(|v| v.map(steps::next)) {
            desk.turn(page);
        }
    })
}
