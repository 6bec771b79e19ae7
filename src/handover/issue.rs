//! A text against the one of its kind that left before it.

use crate::measure::time::Millis;
use crate::record::event::Text;
use crate::record::visit::{Visit, correction};

/// When the text is written, in the phone's own local words.
#[derive(Clone, Debug)]
pub struct Clock {
    /// "25 Nov 2026".
    pub date: String,
    /// "14:10".
    pub time: String,
    /// Date and time of a wall time in the same words.
    pub local: fn(Millis) -> (String, String),
}

impl Clock {
    /// A time of this visit: with its date where that is another day.
    pub(super) fn say(&self, wall: Millis) -> String {
        let (date, time) = (self.local)(wall);
        if date == self.date {
            time
        } else {
            format!("{time} on {date}")
        }
    }
}

/// The text as `compose` writes it for a time, below the line it is given. Where an earlier text
/// of its kind left with other words, that line says which it replaces.
pub(super) fn after_last(
    visit: &Visit,
    which: Text,
    now: &Clock,
    compose: &dyn Fn(&Clock, &str) -> String,
) -> String {
    let text = compose(now, "");
    let Some(last) = visit.issued.iter().rev().find(|i| i.which == which) else {
        return text;
    };
    // The same words at another time are no correction.
    let then = Clock {
        time: last.clock.clone(),
        ..now.clone()
    };
    let line = correction(&last.text);
    let body = last.text.strip_prefix(line).unwrap_or(&last.text);
    // The line above takes room too, so the old words are fitted as they were then.
    let before = if line.is_empty() {
        ""
    } else {
        "CORRECTED 00:00, replaces 00:00.\n"
    };
    if compose(&then, before).ends_with(body) {
        // A correction that leaves once more still says what it replaced.
        return format!("{line}{text}");
    }
    let corrected = format!("CORRECTED {}, replaces {}.\n", now.time, last.clock);
    compose(now, &corrected)
}
