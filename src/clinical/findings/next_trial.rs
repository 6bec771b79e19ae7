//! What the pad offers where one trial of a task follows the other.

use crate::clinical::findings::fact::OwnGiven;
use crate::measure::units::Millilitres;

/// What comes next, while nothing runs on the pad.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NextTrial {
    /// It waits for something: a touch does nothing yet.
    Waits(WaitsFor),
    /// It may be given now.
    Now(ToGive),
}

/// What the next trial waits for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WaitsFor {
    /// Nothing any more: a sign was seen, no further sip is given.
    SignSeen,
    /// The end of a watch; meanwhile this sip is made ready.
    Watch(Sip),
    /// The answers to what is asked after the last.
    Answers,
    /// The voice before.
    VoiceBefore,
    /// What is given.
    WhatIsGiven,
}

/// What is given next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ToGive {
    /// A sip.
    Sip(Sip),
    /// A trial of the clinician's own.
    Own {
        /// Whether one was given before.
        again: bool,
        /// What, where it was said.
        given: Option<OwnGiven>,
    },
}

/// A sip to come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sip {
    /// Its size.
    pub size: Millilitres,
    /// Which of that size.
    pub nth: usize,
    /// Of how many.
    pub of: u8,
}

impl NextTrial {
    /// Whether a touch begins it.
    pub fn is_now(&self) -> bool {
        matches!(self, NextTrial::Now(_))
    }
}
