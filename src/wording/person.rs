//! The person, the place and who holds the phone, in words; and why what was typed of them was not taken.

use std::fmt;

use crate::clinical::knowledge::person::{
    Age, AgeError, Initials, InitialsError, LabelError, Language, Role, Setting, Sex,
};
use crate::clinical::knowledge::signed::SignedError;

impl fmt::Display for Age {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Age::Adult => f.write_str("adult"),
            Age::Years(1) => f.write_str("1 year"),
            Age::Years(y) => write!(f, "{y} years"),
            Age::Months(1) => f.write_str("1 month"),
            Age::Months(m) => write!(f, "{m} months"),
        }
    }
}

impl fmt::Display for AgeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            AgeError::NotANumber => "Age is a whole number, like 72.",
            AgeError::GiveMonths => "Under 1 year: choose months.",
            AgeError::Over120 => "Age goes up to 120 years.",
            AgeError::GiveYears => "From 36 months on, choose years.",
        })
    }
}

impl fmt::Display for LabelError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LabelError::Empty => f.write_str("Give the visit a label, so that it can be found."),
            LabelError::TooLong(n) => {
                write!(f, "A label has at most 60 characters; this one has {n}.")
            }
        }
    }
}

impl fmt::Display for InitialsError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            InitialsError::Empty => f.write_str("Give your initials, like AB."),
            InitialsError::NotLetters => f.write_str("Initials are letters only, like AB."),
            InitialsError::TooLong(n) => {
                write!(f, "Initials have at most 4 letters; these have {n}.")
            }
        }
    }
}

impl fmt::Display for SignedError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SignedError::NotHere => f.write_str("Local policy takes this role off this phone."),
            SignedError::Initials(error) => error.fmt(f),
        }
    }
}

/// Who did it: "speech-language pathologist AB, role as stated". Penlight can't check a role; where
/// no initials were asked for, the role stands alone.
pub fn signed(by: Role, initials: Option<&Initials>) -> String {
    match initials {
        Some(initials) => format!("{} {}, role as stated", by.words(), initials.as_str()),
        None => by.words().to_owned(),
    }
}

impl Sex {
    /// The word shown.
    pub const fn words(self) -> &'static str {
        match self {
            Sex::Female => "female",
            Sex::Male => "male",
        }
    }
}

impl Language {
    /// The word shown.
    pub const fn words(self) -> &'static str {
        match self {
            Language::English => "English",
            Language::Hebrew => "Hebrew",
            Language::Arabic => "Arabic",
            Language::Mandarin => "Mandarin",
            Language::Tamil => "Tamil",
            Language::Japanese => "Japanese",
            Language::Portuguese => "Portuguese",
            Language::Danish => "Danish",
            Language::Other => "another",
        }
    }
}

impl Setting {
    /// The word shown.
    pub const fn words(self) -> &'static str {
        match self {
            Setting::Ward => "ward",
            Setting::Home => "home",
            Setting::Clinic => "clinic",
            Setting::CareHome => "care home",
        }
    }
}

impl Role {
    /// The words shown and handed over.
    pub const fn words(self) -> &'static str {
        match self {
            Role::Screener => "clinician trained to screen",
            Role::Slp => "speech-language pathologist",
        }
    }
}
