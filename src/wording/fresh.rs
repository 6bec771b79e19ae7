//! What is too old when something is about to be given, in words.

use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::gate::Group;
use crate::clinical::findings::old::{Old, Stands};
use crate::wording::gate;

/// What was asked, counted, read or heard, within a sentence.
pub fn what(what: Answered) -> String {
    match what {
        Answered::Group(group) => format!("\"{}\"", gate::group_title(group)),
        Answered::Breaths => "breaths".to_owned(),
        Answered::Saturation => "SpO2".to_owned(),
        Answered::Voice => "the voice before it".to_owned(),
    }
}

/// That it is too old.
pub fn says(old: &Old) -> String {
    let was = match old.what {
        Answered::Group(_) => format!("{} was asked", what(old.what)),
        Answered::Breaths => "Breaths were counted".to_owned(),
        Answered::Saturation => "SpO2 was read".to_owned(),
        Answered::Voice => "The voice was heard".to_owned(),
    };
    match old.older_than {
        Some(stands) => format!("{was} more than {} ago", length(stands)),
        None => format!("{was} at a time that is not known"),
    }
}

fn length(stands: Stands) -> String {
    match stands {
        Stands::Minutes(n) => format!("{n} minutes"),
        Stands::Hours(n) => format!("{n} hours"),
    }
}

/// What to do about it.
pub const fn advice(what: Answered) -> &'static str {
    match what {
        Answered::Group(Group::Airway | Group::Ready) => "It is a state of the moment.",
        Answered::Group(Group::Person | Group::Orders) => "It may have changed since.",
        Answered::Breaths => "Count them again.",
        Answered::Saturation => "Read it again.",
        Answered::Voice => "Hear it again.",
    }
}
