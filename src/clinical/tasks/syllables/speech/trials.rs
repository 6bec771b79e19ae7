//! Which trial is scored, and what is offered at all.

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::compared::Who;
use crate::clinical::tasks::syllables::speech::{Repeated, Syllables, Timing};
use crate::measure::decimals::decimals;
use crate::measure::series::{Series, SeriesError};
use crate::measure::units::Percent;

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

/// The trial that is scored, or none, and what is said of it.
#[derive(Clone, Debug)]
pub struct Best {
    /// Its place among the trials, from 0, and the trial itself.
    pub scored: Option<(usize, Repeated)>,
    /// Which one is scored, in words: always a note.
    pub flag: Flag,
}

/// The trial to score: the fastest of all correct ones, the first of equals (DIE19). A trial
/// without a rate is passed over.
pub fn best(what: Syllables, tries: &[Try]) -> Best {
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
    let of = tries.len();
    let reason = match scored {
        Some((at, ..)) => format!(
            "{}: trial {} of {of} is scored, the fastest correct one.",
            what.words(),
            at + 1
        ),
        None if of == 0 => format!("{}: no trial, so no rate.", what.words()),
        None => format!(
            "{}: no correct trial with a time among {of}, so no rate is scored.",
            what.words()
        ),
    };
    Best {
        scored: scored.map(|(at, trial, _)| (at, trial)),
        flag: note(&rules::SPEECH_BEST_TRIAL, reason),
    }
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
        let reason = format!(
            "Sequences such as pa-ta-ka are left out: {correct} of the single syllables succeeded, \
             and it takes {SINGLES_NEEDED}."
        );
        let flag = note(&rules::SPEECH_SKIP_LONGER, reason);
        (Sequences::LeftOut, Some(flag))
    }
}

/// The youngest that are asked to repeat syllables, in months (DIE19).
const FROM_MONTHS: u32 = 36;

/// Steps aside under 3 years; nothing where the age is not given.
pub fn from_three(age: Option<Age>) -> Option<Flag> {
    let age = age.filter(|age| age.at_least_months() < FROM_MONTHS)?;
    let reason = format!(
        "Repeated syllables are offered from 3 years; this child is {age} old. Under half of \
         2-year-olds managed more than one."
    );
    Some(note(&rules::SPEECH_FROM_THREE, reason))
}

/// How even the taps are.
#[derive(Clone, Debug)]
pub struct Evenness {
    /// Coefficient of variation of the intervals.
    pub variation: Percent,
    /// It in words, and that no line is drawn on it: always a note.
    pub flag: Flag,
}

/// Describes the evenness of taps. Never judged: it is that of the finger (AJP19, GM08), and no
/// published line was found.
///
/// # Errors
/// [`SeriesError`] under three taps, or where all lie at one moment.
pub fn evenness(taps: &Series) -> Result<Evenness, SeriesError> {
    let variation = taps.cv()?;
    let mean = taps.mean_interval()?;
    let reason = format!(
        "The taps lie {} seconds apart on average and vary by {} %. This is the evenness of \
         the finger, not of the person: nothing is judged by it.",
        decimals(mean.get(), 2),
        decimals(variation.get(), 0)
    );
    Ok(Evenness {
        variation,
        flag: note(&rules::SPEECH_TAPPER, reason),
    })
}

fn note(rule: &'static Rule, reason: String) -> Flag {
    rule.flag(Level::Note, Domain::SpeechVoice, reason)
}
