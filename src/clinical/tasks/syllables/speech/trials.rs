//! Which trial is scored, and what is offered at all.

use crate::clinical::findings::fact::SyllablesFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::speech::{Repeated, Syllables, Timing};
use crate::clinical::knowledge::norms::Who;
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::measure::series::{Series, SeriesError};

/// How a trial went, by the clinician's ear.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Every syllable as asked.
    Correct,
    /// Distorted or with wrong syllables.
    Distorted,
    /// Could not do it.
    CouldNot,
}

/// One trial.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Try {
    /// How it went.
    pub outcome: Outcome,
    /// Its count and time, where it has one.
    pub timing: Option<Timing>,
}

/// The trial to score, with its place from 0: the fastest of all correct ones, the first of equals
/// (DIE19). A trial without a rate is passed over.
pub fn best(what: Syllables, tries: &[Try]) -> Option<(usize, Repeated)> {
    let mut scored: Option<(usize, Repeated, f64)> = None;
    for (at, one) in tries.iter().enumerate() {
        let (Outcome::Correct, Some(timing)) = (one.outcome, one.timing) else {
            continue;
        };
        let trial = Repeated { what, timing };
        let Ok(rate) = trial.rate() else { continue };
        if scored.is_none_or(|(_, _, fastest)| rate.get() > fastest) {
            scored = Some((at, trial, rate.get()));
        }
    }
    scored.map(|(at, trial, _)| (at, trial))
}

/// That none of so many trials is scored.
pub fn none_scored(what: Syllables, among: usize) -> Flag {
    let fact = match among {
        0 => SyllablesFact::NoTrial(what),
        _ => SyllablesFact::NoneCorrect { what, among },
    };
    note(&rules::SPEECH_BEST_TRIAL, fact)
}

/// How the single syllables went, each by its best trial; none where it was not tried.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Singles {
    /// pa.
    pub pa: Option<Outcome>,
    /// ta.
    pub ta: Option<Outcome>,
    /// ka.
    pub ka: Option<Outcome>,
}

/// Whether sequences such as pa-ta-ka are asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sequences {
    /// They are.
    Offered,
    /// They are left out: too few single syllables succeed.
    LeftOut,
    /// Not decided: a single syllable that was not tried yet can turn it.
    SinglesFirst,
}

/// Single syllables that must succeed before a child is asked for sequences (DIE19).
const SINGLES_NEEDED: usize = 2;

/// Whether sequences are asked for, after the single syllables; the note says so where they are
/// left out. Adults are always asked.
pub fn sequences(singles: &Singles, who: &Who) -> (Sequences, Option<Flag>) {
    let each = [singles.pa, singles.ta, singles.ka];
    let correct = each
        .iter()
        .filter(|o| **o == Some(Outcome::Correct))
        .count();
    let open = each.iter().filter(|o| o.is_none()).count();
    if who.by_adult_rules() || correct >= SINGLES_NEEDED {
        (Sequences::Offered, None)
    } else if correct + open >= SINGLES_NEEDED {
        (Sequences::SinglesFirst, None)
    } else {
        let fact = SyllablesFact::SequencesLeftOut {
            succeeded: correct,
            needed: SINGLES_NEEDED,
        };
        let flag = note(&rules::SPEECH_SKIP_LONGER, fact);
        (Sequences::LeftOut, Some(flag))
    }
}

/// The youngest that are asked to repeat syllables, in months (DIE19).
pub const FROM_MONTHS: u32 = 36;

/// Steps aside under 3 years; nothing where the age is not given.
pub fn from_three(age: Option<Age>) -> Option<Flag> {
    let age = age.filter(|age| age.at_least_months() < FROM_MONTHS)?;
    Some(note(
        &rules::SPEECH_FROM_THREE,
        SyllablesFact::TooYoung(age),
    ))
}

/// How even the taps are, as a note. Never judged: it is the evenness of the finger (AJP19, GM08),
/// and no published line was found.
///
/// # Errors
/// [`SeriesError`] under three taps, or where all lie at one moment.
pub fn evenness(taps: &Series) -> Result<Flag, SeriesError> {
    let fact = SyllablesFact::Evenness {
        variation: taps.cv()?,
        apart: taps.mean_interval()?,
    };
    Ok(note(&rules::SPEECH_TAPPER, fact))
}

fn note(rule: &'static Rule, fact: SyllablesFact) -> Flag {
    rule.flag(Level::Note, Domain::SpeechVoice, fact)
}
