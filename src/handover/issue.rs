//! A text against the one of its kind that left before it.

use crate::measure::time::Millis;
use crate::record::event::{Correction, Event, Route, Text};
use crate::record::visit::{Issue, Stood, Visit};
use crate::wording::correction;

/// When the text is written, in the phone's own local words.
#[derive(Clone, Debug)]
pub struct Clock {
    /// "25 Nov 2026".
    pub date: String,
    /// "14:10".
    pub time: String,
    /// The same by the wall clock.
    pub wall: Millis,
    /// Date and time of a wall time in the same words.
    pub local: fn(Millis) -> (String, String),
}

impl Clock {
    /// A time of this visit: with its date where that is another day.
    pub fn say(&self, wall: Millis) -> String {
        let (date, time) = (self.local)(wall);
        if date == self.date {
            time
        } else {
            format!("{time} on {date}")
        }
    }

    /// From a time to a later one; their date is said once where it is the same.
    pub(super) fn say_between(&self, first: Millis, last: Millis) -> String {
        let (first_date, first_time) = (self.local)(first);
        let (last_date, last_time) = (self.local)(last);
        match (first_date == last_date, first_time == last_time) {
            (true, true) => self.say(last),
            (true, false) => format!("{first_time} to {}", self.say(last)),
            (false, _) => format!("{} to {}", self.say(first), self.say(last)),
        }
    }

    /// When an earlier text left, and now: with their dates where they differ.
    fn apart(&self, earlier: &Clock) -> (String, String) {
        let say = |clock: &Clock| match self.date == earlier.date {
            true => clock.time.clone(),
            false => format!("{} on {}", clock.time, clock.date),
        };
        (say(earlier), say(self))
    }

    /// The time that a text carries which left.
    pub(super) fn of(&self, issue: &Issue) -> Clock {
        Clock {
            date: (self.local)(issue.at).0,
            time: issue.clock.clone(),
            wall: issue.at,
            ..self.clone()
        }
    }
}

/// A text as it would leave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// Which.
    pub which: Text,
    /// Its words.
    pub text: String,
    /// What it replaces.
    pub corrects: Option<Correction>,
}

impl Written {
    /// That it left, at a time in its own words.
    pub fn issued(self, route: Route, time: &str) -> Event {
        Event::Issued {
            route,
            text: self.text,
            clock: time.to_owned(),
            which: self.which,
            corrects: self.corrects,
        }
    }
}

/// The text as `compose` writes it for a time, below the line it is given, with what is otherwise than
/// in the text it replaces. Where an earlier text
/// of its kind left with other words, that line says which it replaces.
pub(super) fn after_last(
    visit: &Visit,
    which: Text,
    now: &Clock,
    compose: &dyn Fn(&Clock, &str, Option<&Stood>) -> String,
) -> Written {
    let written = |corrects: Option<Correction>, replaced: Option<&Issue>| Written {
        which,
        text: compose(
            now,
            &correction::line(corrects.as_ref()),
            replaced.map(|text| &text.stood),
        ),
        corrects,
    };
    let Some((last, before)) = visit.last_of(which) else {
        return written(None, None);
    };
    // The same words at another time are no correction, nor on another day.
    let then = now.of(last);
    let line = correction::line(last.corrects.as_ref());
    if compose(&then, &line, before.map(|text| &text.stood)) == last.text {
        // A correction that leaves once more still says what it replaced.
        return written(last.corrects.clone(), before);
    }
    let (replaces, at) = now.apart(&then);
    written(Some(Correction { at, replaces }), Some(last))
}
