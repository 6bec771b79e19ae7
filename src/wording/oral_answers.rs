//! What can be answered about face, mouth and throat, in words: side, grade, why something was not
//! tested, how it was asked for.

use std::fmt;

use crate::clinical::findings::oral::answer::NotOfIt;
use crate::clinical::findings::oral::{Cue, Reason, Severity, Sides};

/// Sides, on a button.
pub const fn sides(sides: Sides) -> &'static str {
    match sides {
        Sides::Left => "Patient's left",
        Sides::Right => "Patient's right",
        Sides::Both => "Both sides",
    }
}

/// Sides, behind an exception.
pub const fn on_sides(sides: Sides) -> &'static str {
    match sides {
        Sides::Left => " on the left",
        Sides::Right => " on the right",
        Sides::Both => " on both sides",
    }
}

/// How grave.
pub const fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Mild => "mild",
        Severity::Moderate => "moderate",
        Severity::Severe => "severe",
    }
}

/// Why something was not tested.
pub const fn reason(reason: Reason) -> &'static str {
    match reason {
        Reason::Refused => "refused",
        Reason::NotSafe => "not safe",
        Reason::CouldNotFollow => "could not follow",
        Reason::NoEquipment => "no equipment",
        Reason::NoTime => "no time",
        Reason::NotNeeded => "not needed today",
    }
}

/// How a region was asked for.
pub const fn cue(cue: Cue) -> &'static str {
    match cue {
        Cue::Spoken => "Spoken",
        Cue::Shown => "Shown",
        Cue::Copied => "Copied",
    }
}

impl fmt::Display for NotOfIt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            NotOfIt::NoSide => "It is in the middle and has no side.",
            NotOfIt::OneSide => "It goes to one side, not to both.",
            NotOfIt::NoGrade => "It has no grade.",
        })
    }
}
