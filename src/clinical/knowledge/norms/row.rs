//! One published value, and the words it is looked up by.

use std::fmt;

use serde::Serialize;

use crate::clinical::knowledge::person::Sex;
use crate::clinical::knowledge::source;
use crate::clinical::knowledge::source::{Mark, Source};
use crate::measure::decimals::decimals;
use crate::wording::words::capital;

macro_rules! words {
    ($(#[$meta:meta])* $name:ident { $($(#[$doc:meta])* $variant:ident = $words:literal,)* }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
        pub enum $name { $($(#[$doc])* $variant,)* }

        impl $name {
            /// All, in order.
            pub const ALL: &[$name] = &[$($name::$variant),*];

            /// In words for a sentence.
            pub const fn words(self) -> &'static str {
                match self { $($name::$variant => $words,)* }
            }
        }
    };
}

words! {
    /// What a person does.
    Task {
        /// Repeats "pa".
        Pa = "pa",
        /// Repeats "ta".
        Ta = "ta",
        /// Repeats "ka".
        Ka = "ka",
        /// Repeats "pa-ta-ka".
        PaTaKa = "pa-ta-ka",
        /// Holds "ah" as long as possible.
        Ah = "longest ah",
        /// Holds "s" as long as possible.
        S = "longest s",
        /// Holds "z" as long as possible.
        Z = "longest z",
        /// Glides from the lowest to the highest pitch.
        Glide = "pitch range",
        /// Talks or reads: the pitch of the voice.
        Talk = "speaking pitch",
        /// Swallows saliva as often as possible.
        SwallowSaliva = "dry swallows",
        /// Drinks a cup against the clock.
        Drink = "timed water",
        /// Eats one cracker.
        EatCracker = "timed cracker",
        /// Opens the mouth wide.
        OpenMouth = "mouth opening",
        /// Breathes at rest.
        Breathe = "breaths a minute",
    }
}

words! {
    /// The unit a value is published in. A value is only ever put against its own.
    Unit {
        /// Seconds for a number of repetitions, or for a sound.
        Seconds = "seconds",
        /// Syllables a second.
        SyllablesPerSecond = "syllables per second",
        /// Whole sequences (pa-ta-ka) a second: a third of the syllables.
        SequencesPerSecond = "sequences per second",
        /// Semitones.
        Semitones = "semitones",
        /// Hertz.
        Hertz = "hertz",
        /// Swallows in 30 seconds.
        PerHalfMinute = "in 30 seconds",
        /// Millilitres a second.
        MillilitresPerSecond = "millilitres per second",
        /// Bites.
        Bites = "bites",
        /// Chewing movements.
        Chews = "chews",
        /// Swallows.
        Swallows = "swallows",
        /// Millimetres.
        Millimetres = "millimetres",
        /// Times a minute.
        PerMinute = "a minute",
    }
}

words! {
    /// How it was measured.
    Method {
        /// Timed over 20 repetitions.
        Time20 = "seconds for 20 repetitions",
        /// Timed over 10 repetitions.
        Time10 = "seconds for 10 repetitions",
        /// Counted for 5 s.
        Count5s = "a count of 5 seconds",
        /// Counted for 8 s.
        Count8s = "a count of 8 seconds",
        /// Counted for 10 s.
        Count10s = "a count of 10 seconds",
        /// Counted for 15 s.
        Count15s = "a count of 15 seconds",
        /// Pooled from several studies.
        Pooled = "several methods, pooled",
        /// Not shown in what was read.
        NotShown = "a method that was not shown",
        /// Three trials.
        ThreeTrials = "three trials",
        /// The longest of some trials.
        Longest = "the longest of some trials",
        /// A sung voice range profile.
        SungProfile = "a sung voice range profile",
        /// A glide.
        Glide = "a glide",
        /// Conversation.
        Conversation = "conversation",
        /// Reading.
        Reading = "reading",
        /// Counted for 30 s.
        Count30s = "a count of 30 seconds",
        /// Counted for 60 s.
        Count60s = "a count of 60 seconds",
        /// A cup of 150 mL.
        Cup150 = "a cup of 150 mL",
        /// A cup of 100 mL.
        Cup100 = "a cup of 100 mL",
        /// A cup of another volume.
        CupOther = "a cup of another volume",
        /// One plain cracker.
        OneCracker = "one cracker",
        /// A ruler.
        Ruler = "a ruler",
        /// A table of taught ranges.
        RangeTable = "a table of taught ranges",
    }
}

impl Method {
    /// Whether a value by this method may be put only against values by the same one: so many
    /// repetitions by a watch, or a cup of so much, have no other unit to meet in.
    pub const fn is_strict(self) -> bool {
        matches!(
            self,
            Method::Time20 | Method::Time10 | Method::Cup150 | Method::Cup100 | Method::CupOther
        )
    }
}

/// One published value.
#[derive(Debug)]
pub struct Row {
    /// The task.
    pub task: Task,
    /// How it was measured.
    pub method: Method,
    /// The unit of every figure in the row.
    pub unit: Unit,
    /// Language of the group as a BCP 47 tag; "-" where language does not matter, "not shown"
    /// where it was not seen.
    pub language: &'static str,
    /// Sex, where the table is split by it.
    pub sex: Option<Sex>,
    /// Ages of the group in whole months, both ends included.
    pub ages: (u32, u32),
    /// Whether those ages were seen; else they are those it is taken for.
    pub ages_seen: bool,
    /// Ages in whole months for which this row is read where no nearer one is published.
    pub read: Option<(u32, u32)>,
    /// Mean.
    pub mean: Option<f64>,
    /// Standard deviation, only where it was published.
    pub sd: Option<f64>,
    /// 25th percentile.
    pub p25: Option<f64>,
    /// Median.
    pub p50: Option<f64>,
    /// 75th percentile.
    pub p75: Option<f64>,
    /// Lower end of a published range.
    pub low: Option<f64>,
    /// Upper end of a published range.
    pub high: Option<f64>,
    /// People.
    pub n: Option<u32>,
    /// Who was studied.
    pub population: &'static str,
    /// How.
    pub procedure: &'static str,
    /// Where it is published.
    pub source: &'static Source,
    /// How it was seen.
    pub mark: Mark,
    /// What to keep in mind.
    pub caveat: &'static str,
}

include!(concat!(env!("OUT_DIR"), "/norms.rs"));

/// Months in words, as the start of a table: "6 years".
pub(super) fn starts(months: u32) -> String {
    if months < 12 || months < 36 && !months.is_multiple_of(12) {
        format!("{months} months")
    } else {
        format!("{} years", months / 12)
    }
}

/// Months in words, as the end of a table: 167 months are "13 years".
pub(super) fn ends(months: u32) -> String {
    if months < 12 {
        format!("{months} months")
    } else {
        format!("{} years", months / 12)
    }
}

impl Row {
    /// The ages of the group in words: "6 years", "18 to 26 years", "0 to 11 months".
    pub fn ages_words(&self) -> String {
        let (first, last) = (starts(self.ages.0), ends(self.ages.1));
        match (first.strip_suffix(" years"), first.strip_suffix(" months")) {
            _ if !self.ages_seen => format!("not seen; taken from {first}"),
            _ if first == last => first,
            (Some(n), _) if last.ends_with("years") => format!("{n} to {last}"),
            (_, Some(n)) if last.ends_with("months") => format!("{n} to {last}"),
            _ => format!("{first} to {last}"),
        }
    }

    /// Whether a language tag is of the same language: the part before the first "-".
    pub fn speaks(&self, language: &str) -> bool {
        let base = |tag: &str| tag.split('-').next().unwrap_or_default().to_owned();
        !matches!(self.language, "-" | "not shown") && base(self.language) == base(language)
    }
}

/// The figures in words: "mean 6.2, SD 0.8 syllables per second, n = 141".
impl fmt::Display for Row {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let figure = |value: f64| {
            decimals(value, 2)
                .trim_end_matches('0')
                .trim_end_matches('.')
                .to_owned()
        };
        let mut parts = Vec::new();
        if let Some(mean) = self.mean {
            parts.push(format!("mean {}", figure(mean)));
        }
        if let Some(sd) = self.sd {
            parts.push(format!("SD {}", figure(sd)));
        }
        if let Some(median) = self.p50 {
            parts.push(format!("median {}", figure(median)));
        }
        if let (Some(p25), Some(p75)) = (self.p25, self.p75) {
            parts.push(format!("middle half {} to {}", figure(p25), figure(p75)));
        }
        if let (Some(low), Some(high)) = (self.low, self.high) {
            parts.push(format!("range {} to {}", figure(low), figure(high)));
        }
        write!(f, "{} {}", capital(&parts.join(", ")), self.unit.words())?;
        match self.n {
            Some(n) => write!(f, ", n = {n}"),
            None => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ages_in_words() {
        let words: Vec<String> = ROWS.iter().map(Row::ages_words).collect();
        for expected in [
            "6 years",
            "18 to 26 years",
            "0 to 11 months",
            "60 to 95 years",
        ] {
            assert!(words.iter().any(|w| w == expected), "{expected}: {words:?}");
        }
    }
}
