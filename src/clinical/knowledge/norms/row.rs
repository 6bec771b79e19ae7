//! One published value, and what it is looked up by.

use serde::Serialize;

use crate::clinical::knowledge::person::Sex;
use crate::clinical::knowledge::source;
use crate::clinical::knowledge::source::{Mark, Source};

macro_rules! listed {
    ($(#[$meta:meta])* $name:ident { $($(#[$doc:meta])* $variant:ident,)* }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
        pub enum $name { $($(#[$doc])* $variant,)* }

        impl $name {
            /// All, in order.
            pub const ALL: &[$name] = &[$($name::$variant),*];
        }
    };
}

listed! {
    /// What a person does.
    Task {
        /// Repeats "pa".
        Pa,
        /// Repeats "ta".
        Ta,
        /// Repeats "ka".
        Ka,
        /// Repeats "pa-ta-ka".
        PaTaKa,
        /// Holds "ah" as long as possible.
        Ah,
        /// Holds "s" as long as possible.
        S,
        /// Holds "z" as long as possible.
        Z,
        /// Glides from the lowest to the highest pitch.
        Glide,
        /// Talks or reads: the pitch of the voice.
        Talk,
        /// Swallows saliva as often as possible.
        SwallowSaliva,
        /// Drinks a cup against the clock.
        Drink,
        /// Eats one cracker.
        EatCracker,
        /// Opens the mouth wide.
        OpenMouth,
        /// Breathes at rest.
        Breathe,
    }
}

listed! {
    /// The unit a value is published in. A value is only ever put against its own.
    Unit {
        /// Seconds for a number of repetitions, or for a sound.
        Seconds,
        /// Syllables a second.
        SyllablesPerSecond,
        /// Whole sequences (pa-ta-ka) a second: a third of the syllables.
        SequencesPerSecond,
        /// Semitones.
        Semitones,
        /// Hertz.
        Hertz,
        /// Swallows in 30 seconds.
        PerHalfMinute,
        /// Millilitres a second.
        MillilitresPerSecond,
        /// Bites.
        Bites,
        /// Chewing movements.
        Chews,
        /// Swallows.
        Swallows,
        /// Millimetres.
        Millimetres,
        /// Times a minute.
        PerMinute,
    }
}

listed! {
    /// How it was measured.
    Method {
        /// Timed over 20 repetitions.
        Time20,
        /// Timed over 10 repetitions.
        Time10,
        /// Counted for 5 s.
        Count5s,
        /// Counted for 8 s.
        Count8s,
        /// Counted for 10 s.
        Count10s,
        /// Counted for 15 s.
        Count15s,
        /// Pooled from several studies.
        Pooled,
        /// Not shown in what was read.
        NotShown,
        /// Three trials.
        ThreeTrials,
        /// The longest of some trials.
        Longest,
        /// A sung voice range profile.
        SungProfile,
        /// A glide.
        Glide,
        /// Conversation.
        Conversation,
        /// Reading.
        Reading,
        /// Counted for 30 s.
        Count30s,
        /// Counted for 60 s.
        Count60s,
        /// A cup of 150 mL.
        Cup150,
        /// A cup of 100 mL.
        Cup100,
        /// A cup of another volume.
        CupOther,
        /// One plain cracker.
        OneCracker,
        /// A ruler.
        Ruler,
        /// A table of taught ranges.
        RangeTable,
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

/// A row is known by its place in the table.
impl PartialEq for Row {
    fn eq(&self, other: &Row) -> bool {
        std::ptr::eq(self, other)
    }
}

impl Row {
    /// Whether a language tag is of the same language: the part before the first "-".
    pub fn speaks(&self, language: &str) -> bool {
        let base = |tag: &str| tag.split('-').next().unwrap_or_default().to_owned();
        !matches!(self.language, "-" | "not shown") && base(self.language) == base(language)
    }
}
