//! A measured value beside the published one that fits the person, or why it stands alone.

use std::fmt;

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::norms::{
    Method, NoNorm, Norm, Place, Quantity, Query, Row, Task, lookup,
};
use crate::clinical::knowledge::person::{Age, Sex};
use crate::clinical::knowledge::rules;
use crate::measure::decimals::decimals;
use crate::measure::normal::Percentile;
use crate::measure::units::{Seconds, SyllablesPerSecond};

/// Stands beside every comparison (ZIE19, GM08: rates are an insensitive and unspecific marker,
/// and counts by ear are less reliable than a diagnosis needs).
pub const CAVEAT: &str = "Comparison with published groups, not a diagnosis.";

/// So many standard deviations on the worse side of the mean, or more, are below the usual range:
/// the 5th percentile where values are normally spread. Local policy.
pub const BELOW_USUAL: f64 = 1.645;

/// The person, as far as published values go by it.
#[derive(Clone, Copy, Debug, Default)]
pub struct Who<'a> {
    /// Age, if given.
    pub age: Option<Age>,
    /// Sex, if given.
    pub sex: Option<Sex>,
    /// Language as a BCP 47 tag, if given.
    pub language: Option<&'a str>,
}

impl Who<'_> {
    /// Whether the rules for adults are used: 16 and over, and where no age was given.
    pub fn by_adult_rules(&self) -> bool {
        self.age.is_none_or(Age::is_adult)
    }

    /// What to add to a sentence that rests on the rules for adults: a blank and a sentence where
    /// no age was given, else nothing.
    pub(super) fn age_remark(&self) -> &'static str {
        match self.age {
            None => " Age not given: read by the rule for adults.",
            Some(_) => "",
        }
    }

    /// Whether the person is known to have reached this many years.
    pub(super) fn is_from(&self, years: u32) -> bool {
        match self.age {
            // 16 or over, no more is known.
            Some(Age::Adult) => years <= 16,
            Some(age) => age.at_least_months() >= years * 12,
            None => false,
        }
    }
}

/// A value beside the published one that fits.
#[derive(Clone, Copy, Debug)]
pub struct Compared {
    /// The published value and how near its group is.
    pub norm: Norm,
    /// Where the value stands.
    pub place: Place,
}

impl Compared {
    /// Looks up the published value and puts `value` beside it, in the value's own unit.
    ///
    /// # Errors
    /// [`NoNorm`] where none fits.
    pub fn find(
        task: Task,
        method: Method,
        value: impl Into<Quantity>,
        who: &Who,
    ) -> Result<Compared, NoNorm> {
        let value = value.into();
        let norm = lookup(&Query {
            task,
            method,
            unit: value.unit(),
            age: who.age,
            sex: who.sex,
            language: who.language,
        })?;
        let place = norm
            .place(value)
            .map_err(|wrong| NoNorm::OtherUnit(task, wrong.wanted))?;
        Ok(Compared { norm, place })
    }

    /// Whether the value is so many standard deviations on the worse side, or more; no where the
    /// group has no published spread.
    pub(super) fn is_worse_by(&self, line: f64) -> bool {
        self.place.sds_worse().is_some_and(|worse| worse >= line)
    }

    /// The level of a conclusion from this comparison: `own` where the group is the person's own,
    /// else a note.
    pub(super) fn level(&self, own: Level) -> Level {
        if self.norm.fit.is_own() {
            own
        } else {
            Level::Note
        }
    }

    /// Where the value stands, in words; none where the group has no published spread.
    pub fn stands(&self) -> Option<String> {
        let z = self.place.z?;
        Some(match self.place.percentile() {
            Some(percentile) => format!("{z}; {}", share(percentile)),
            None => z.to_string(),
        })
    }

    /// The group with its figures and its source, and in which way it is not the person's own.
    pub fn group(&self) -> String {
        let row = self.norm.row;
        let mut sentences = vec![format!(
            "{}: {} ({}; {}: {}).",
            self.norm.which(),
            row.population,
            figures(row),
            row.mark.words(),
            row.source.key
        )];
        sentences.extend(self.norm.remarks());
        sentences.join(" ")
    }
}

/// The middle of a group in words: "mean 4.8 seconds", or its middle half.
fn figures(row: &Row) -> String {
    let unit = row.unit.words();
    match (row.mean, row.p25, row.p75) {
        (Some(mean), _, _) => format!("mean {} {unit}", short(mean)),
        (None, Some(p25), Some(p75)) => {
            format!("middle half {} to {} {unit}", short(p25), short(p75))
        }
        _ => format!("in {unit}"),
    }
}

/// To two decimals, without noughts at the end but one: 4.8, 22.27, 5.0.
fn short(figure: f64) -> String {
    let text = decimals(figure, 2);
    text.strip_suffix('0').unwrap_or(&text).to_owned()
}

/// The part of a group that did worse, in words. Nobody is told to be the very last or first: no
/// group was large enough.
fn share(percentile: Percentile) -> String {
    let worse = percentile.get();
    if worse < 1.0 {
        "fewer than 1 in 100 of the group did worse".to_owned()
    } else if worse > 99.0 {
        "more than 99 in 100 of the group did worse".to_owned()
    } else {
        format!("about {} in 100 of the group did worse", decimals(worse, 0))
    }
}

/// Why a value is not compared.
#[derive(Clone, Copy, Debug)]
pub enum NotCompared {
    /// No published value fits.
    NoNorm {
        /// Why.
        why: NoNorm,
        /// What is published for this person when the task is timed the other way.
        otherwise: Option<&'static Row>,
    },
    /// It was counted in whole sequences: one more or less moves the rate by this much.
    TooCoarse(SyllablesPerSecond),
}

impl From<NoNorm> for NotCompared {
    fn from(why: NoNorm) -> NotCompared {
        NotCompared::NoNorm {
            why,
            otherwise: None,
        }
    }
}

impl fmt::Display for NotCompared {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NotCompared::NoNorm { why, otherwise } => {
                why.fmt(f)?;
                match otherwise {
                    Some(row) if row.method.is_strict() => {
                        write!(f, " Published for this age: {}.", row.method.words())
                    }
                    Some(row) => write!(
                        f,
                        " Published for this age: counted over a time, in {}.",
                        row.unit.words()
                    ),
                    None => Ok(()),
                }
            }
            NotCompared::TooCoarse(step) => write!(
                f,
                "Not compared: counted in whole sequences, one more or less moves the rate by {} \
                 syllables per second. Count every syllable to compare.",
                decimals(step.get(), 1)
            ),
        }
    }
}

/// What a task comes to: the value, what it is put beside, and flags.
#[derive(Clone, Debug)]
pub struct Judged {
    /// The value in words, its unit written out.
    pub value: String,
    /// The published value beside it, or why there is none.
    pub compared: Result<Compared, NotCompared>,
    /// What the rules say.
    pub flags: Vec<Flag>,
}

impl Judged {
    /// What stands under the value, a sentence or a few each: the group, where the value stands,
    /// what to keep in mind; or why it is not compared.
    pub fn beside(&self) -> Vec<String> {
        let compared = match &self.compared {
            Ok(compared) => compared,
            Err(why) => return vec![why.to_string()],
        };
        let mut lines = vec![compared.group()];
        lines.extend(compared.stands().map(|stands| format!("{stands}.")));
        let caveat = compared.norm.row.caveat;
        if !caveat.is_empty() {
            lines.push(caveat.to_owned());
        }
        lines.push(CAVEAT.to_owned());
        lines
    }
}

/// That a value is shown and not judged, and why.
pub(super) fn no_norm(value: &str, why: &NotCompared) -> Flag {
    let reason = format!("{value}. {why}");
    rules::SPEECH_NO_NORM.flag(Level::Note, Domain::SpeechVoice, reason)
}

/// Seconds in words, cut off at the tenth as on every page: what says 10.0 has reached ten.
pub(super) fn seconds(time: Seconds) -> String {
    // By whole milliseconds: a tenth cut off 2.3 as it stands would leave 2.2.
    let tenths = (time.get() * 1000.0).round() / 100.0;
    format!("{} seconds", decimals((tenths + 1e-9).floor() / 10.0, 1))
}
