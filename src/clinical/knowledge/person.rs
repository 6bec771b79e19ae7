//! Who is examined, as far as Penlight asks.
//!
//! Names are never asked for.

use serde::{Deserialize, Serialize};

/// Age as far as it was given.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Age {
    /// 16 or over, no more is known. Enough for the rules of this screen, not for norms by age.
    Adult,
    /// Whole years, 1 to 120.
    Years(u8),
    /// Whole months, 0 to 35.
    Months(u8),
}

/// Why an age was not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AgeError {
    /// Not a whole number.
    NotANumber,
    /// Zero years: months say more.
    GiveMonths,
    /// Above 120 years.
    Over120,
    /// Above 35 months.
    GiveYears,
}

/// The unit an age was typed in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AgeUnit {
    /// Years, 1 to 120.
    Years,
    /// Months, 0 to 35.
    Months,
}

impl Age {
    /// Reads what was typed.
    ///
    /// # Errors
    /// [`AgeError`] with the words to show beside the field.
    ///
    /// ```
    /// use penlight::clinical::knowledge::person::{Age, AgeError, AgeUnit};
    /// assert_eq!(Age::parse("72", AgeUnit::Years), Ok(Age::Years(72)));
    /// assert_eq!(Age::parse("121", AgeUnit::Years), Err(AgeError::Over120));
    /// assert_eq!(Age::parse("0", AgeUnit::Years), Err(AgeError::GiveMonths));
    /// assert_eq!(Age::parse("abc", AgeUnit::Years), Err(AgeError::NotANumber));
    /// ```
    pub fn parse(typed: &str, unit: AgeUnit) -> Result<Age, AgeError> {
        let n: u64 = typed.trim().parse().map_err(|_| AgeError::NotANumber)?;
        match (unit, n) {
            (AgeUnit::Years, 0) => Err(AgeError::GiveMonths),
            (AgeUnit::Years, 1..=120) => Ok(Age::Years(n as u8)),
            (AgeUnit::Years, _) => Err(AgeError::Over120),
            (AgeUnit::Months, 0..=35) => Ok(Age::Months(n as u8)),
            (AgeUnit::Months, _) => Err(AgeError::GiveYears),
        }
    }

    /// The youngest the person can be, in months.
    pub fn at_least_months(self) -> u32 {
        match self {
            Age::Adult => 16 * 12,
            Age::Years(y) => u32::from(y) * 12,
            Age::Months(m) => u32::from(m),
        }
    }

    /// Whether the person is known to be younger than so many years.
    ///
    /// "16 or over" is old enough for every line, as an age that was not given is: where a
    /// policy draws a line above 16 years, a count must not be left out for everybody who is an
    /// adult and no more is known.
    pub fn under_years(self, years: i32) -> bool {
        self != Age::Adult && i64::from(self.at_least_months()) < i64::from(years) * 12
    }

    /// 16 or over: the line that the adult breathing bands use.
    pub fn is_adult(self) -> bool {
        self.at_least_months() >= 16 * 12
    }
}

/// Sex, where a published table is split by it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Sex {
    /// Female.
    Female,
    /// Male.
    Male,
}

macro_rules! languages {
    ($($(#[$doc:meta])* $variant:ident = $tag:literal;)*) => {
        /// The language spoken in speech tasks, where a published table has speakers of it.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
        pub enum Language { $($(#[$doc])* $variant,)* }

        impl Language {
            /// All, in the order shown.
            pub const ALL: &[Language] = &[$(Language::$variant),*];

            /// Its BCP 47 tag; "und" where no table has speakers of it.
            pub const fn tag(self) -> &'static str {
                match self { $(Language::$variant => $tag,)* }
            }
        }
    };
}

languages! {
    /// English.
    English = "en";
    /// Hebrew.
    Hebrew = "he";
    /// Arabic.
    Arabic = "ar";
    /// Mandarin.
    Mandarin = "zh";
    /// Tamil.
    Tamil = "ta";
    /// Japanese.
    Japanese = "ja";
    /// Portuguese.
    Portuguese = "pt";
    /// Danish.
    Danish = "da";
    /// Any other.
    Other = "und";
}

/// Where the visit takes place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Setting {
    /// Hospital ward.
    Ward,
    /// At home.
    Home,
    /// Clinic or practice.
    Clinic,
    /// Care home.
    CareHome,
}

impl Setting {
    /// All, in the order shown.
    pub const ALL: [Setting; 4] = [
        Setting::Ward,
        Setting::Home,
        Setting::Clinic,
        Setting::CareHome,
    ];
}

/// Who holds the phone: decides who may go on past a block.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Role {
    /// A clinician trained to screen.
    #[default]
    Screener,
    /// A speech-language pathologist.
    Slp,
}

/// The letters that a speech-language pathologist signs with: 1 to 4.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String")]
pub struct Initials(String);

/// Why initials were not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InitialsError {
    /// Nothing was typed.
    Empty,
    /// More than letters.
    NotLetters,
    /// Over 4 letters; the number there are.
    TooLong(usize),
}

impl TryFrom<String> for Initials {
    type Error = InitialsError;

    fn try_from(text: String) -> Result<Initials, InitialsError> {
        Initials::parse(&text)
    }
}

impl Initials {
    /// Most letters they have: more would be a name.
    pub const MOST: usize = 4;

    /// Reads what was typed; full stops and spaces between the letters are dropped.
    ///
    /// # Errors
    /// [`InitialsError`] with the words to show beside the field.
    ///
    /// ```
    /// use penlight::clinical::knowledge::person::{Initials, InitialsError};
    /// assert_eq!(Initials::parse(" A. B. ").map(|i| i.as_str().to_owned()), Ok("AB".to_owned()));
    /// assert_eq!(Initials::parse(" "), Err(InitialsError::Empty));
    /// assert_eq!(Initials::parse("A1"), Err(InitialsError::NotLetters));
    /// assert_eq!(Initials::parse(&"A".repeat(40)), Err(InitialsError::TooLong(40)));
    /// ```
    pub fn parse(typed: &str) -> Result<Initials, InitialsError> {
        let dropped = |c: &char| !c.is_whitespace() && *c != '.';
        let letters: String = typed.chars().filter(dropped).collect();
        match letters.chars().count() {
            0 => Err(InitialsError::Empty),
            n if n > Initials::MOST => Err(InitialsError::TooLong(n)),
            _ if !letters.chars().all(char::is_alphabetic) => Err(InitialsError::NotLetters),
            _ => Ok(Initials(letters)),
        }
    }

    /// The letters.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// What a visit is called on this phone: 1 to 60 characters, never a name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String")]
pub struct Label(String);

/// Why a label was not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LabelError {
    /// Nothing but spaces.
    Empty,
    /// Over 60 characters; the number there are.
    TooLong(usize),
}

impl TryFrom<String> for Label {
    type Error = LabelError;

    fn try_from(text: String) -> Result<Label, LabelError> {
        Label::parse(&text)
    }
}

impl Label {
    /// Most characters a label has.
    pub const MOST: usize = 60;

    /// Reads what was typed; runs of white space become one space.
    ///
    /// # Errors
    /// [`LabelError`] with the words to show beside the field.
    pub fn parse(typed: &str) -> Result<Label, LabelError> {
        let text = typed.split_whitespace().collect::<Vec<_>>().join(" ");
        match text.chars().count() {
            0 => Err(LabelError::Empty),
            n if n > Label::MOST => Err(LabelError::TooLong(n)),
            _ => Ok(Label(text)),
        }
    }

    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels() {
        assert_eq!(Label::parse("  "), Err(LabelError::Empty));
        assert_eq!(
            Label::parse(&"x".repeat(200)),
            Err(LabelError::TooLong(200))
        );
        let label = Label::parse(" Visit  3,\n14:10 ").map(|l| l.as_str().to_owned());
        assert_eq!(label, Ok("Visit 3, 14:10".to_owned()));
    }

    #[test]
    fn months_and_years_meet() {
        assert_eq!(Age::parse("35", AgeUnit::Months), Ok(Age::Months(35)));
        assert_eq!(Age::parse("36", AgeUnit::Months), Err(AgeError::GiveYears));
        assert_eq!(Age::parse("-3", AgeUnit::Years), Err(AgeError::NotANumber));
        assert!(!Age::Years(15).is_adult());
        assert!(Age::Years(16).is_adult());
    }
}
