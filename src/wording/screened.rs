//! When somebody was screened, by whom, and when the text was issued.

use crate::clinical::knowledge::person::{Initials, Role};

/// What the times are of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// Something was given by mouth.
    Swallow,
    /// Nothing was given, though the screen asks for it.
    NoSwallow,
    /// Face, mouth or speech was examined.
    Examination,
}

/// Who screened: "AB (speech-language pathologist, role as stated)"; without initials a name has its
/// place there, to be written by hand.
pub fn by(role: Role, initials: Option<&Initials>) -> String {
    match initials {
        Some(initials) => format!("{} ({}, role as stated)", initials.as_str(), role.words()),
        None => format!("____ ({})", role.words()),
    }
}

/// "Screened at 14:01 to 14:09 by ____ (clinician trained to screen). Issued at 14:31, 25 Nov 2026."
pub fn line(what: What, between: Option<String>, by: &str, time: &str, date: &str) -> String {
    let issued = format!("Issued at {time}, {date}.");
    let Some(between) = between else {
        return format!("Nothing looked at yet, by {by}. {issued}");
    };
    let what = match what {
        What::Swallow => "Screened",
        What::NoSwallow => "No swallow was tested. Examined",
        What::Examination => "Examined",
    };
    format!("{what} at {between} by {by}. {issued}")
}
