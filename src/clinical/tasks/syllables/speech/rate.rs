//! One trial of repeated syllables beside the published values.

use crate::clinical::findings::fact::{OlderLine, Pace, SyllablesFact};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::measured::Measured;
use crate::clinical::findings::speech::{Repeated, Syllables, Timing};
use crate::clinical::knowledge::norms::{
    Compared, Method, NoNorm, NotCompared, Quantity, Unit, Who,
};
use crate::clinical::knowledge::person::Sex;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::compared::{BELOW_USUAL, Judged, level, no_norm};
use crate::measure::by_count::{RateError, count_by_time};
use crate::measure::time::Millis;
use crate::measure::units::{Seconds, SyllablesPerSecond};

/// Children: so many standard deviations above the mean time, or more, are slow (FLE72, UW).
pub const CHILD_SLOW: f64 = 2.0;
/// Children: from here on it is worth watching.
pub const CHILD_WATCH: f64 = 1.0;
/// Adults, pa-ta-ka: its authors' line in syllables per second (IBD14).
pub const ADULT_LINE: f64 = 5.4;
/// From 65 years, pa: syllables per second below which swallowing difficulty was told (TAK20).
pub const PA_LINE: f64 = 6.2;
/// From 65 years, ta, men: called low below this (IWA).
pub const TA_LINE_MEN: f64 = 5.2;
/// From 65 years, ta, women: called low below this (IWA).
pub const TA_LINE_WOMEN: f64 = 5.4;
/// Above so many taps a second a finger miscounts more (ITO09).
pub const TAP_LIMIT: f64 = 7.0;
/// From this age on the lines for older people are told. Local policy.
const OLDER_FROM_YEARS: u32 = 65;

/// Judges one trial of repeated syllables.
///
/// Children from 6 to 13 are compared in seconds for 20 (10) repetitions, everybody else in
/// syllables per second; nothing is converted or extrapolated. A flag above a note needs the
/// person's own group.
///
/// # Errors
/// [`RateError`] where there is no rate: no time at all, or above 100 syllables per second.
pub fn repeated(trial: &Repeated, who: &Who) -> Result<Judged, RateError> {
    let rate = trial.rate()?;
    let value = Measured::Repeated(*trial);
    let compared = compare(trial, rate, who);
    let mut flags = Vec::new();
    match &compared {
        Ok(compared) => flags.extend(placed(*trial, *compared)),
        Err(why) => flags.push(no_norm(value.clone(), *why)),
    }
    // The lines are in syllables per second counted within a time, each syllable counted.
    if !matches!(trial.timing, Timing::ByCount { .. }) && !trial.is_coarse() {
        flags.extend(adult_line(trial.what, rate, compared.as_ref().ok()));
        flags.extend(older_line(trial.what, rate, who));
    }
    flags.extend(tap_limit(trial));
    Ok(Judged {
        value,
        compared,
        flags,
    })
}

/// The name of a window. No table has another than these; by [`Method::Count60s`] every group is
/// then told to have been measured otherwise.
fn window_method(window: Seconds) -> Method {
    match window.millis() {
        Millis(5_000) => Method::Count5s,
        Millis(8_000) => Method::Count8s,
        Millis(10_000) => Method::Count10s,
        Millis(15_000) => Method::Count15s,
        _ => Method::Count60s,
    }
}

fn compare(trial: &Repeated, rate: SyllablesPerSecond, who: &Who) -> Result<Compared, NotCompared> {
    let task = trial.what.task();
    let (repetitions_of_table, by_count) = trial.what.by_count();
    let find = |method, value: Quantity| Compared::find(task, method, value, who);
    // What the other way of timing would have been put beside; its value does not matter here.
    let otherwise = |method, value: Quantity| find(method, value).ok().map(|c| c.norm.row);
    match trial.timing {
        Timing::ByCount { repetitions, time } => {
            let compared = find(by_count, time.into()).map_err(|why| NotCompared::NoNorm {
                why,
                otherwise: otherwise(Method::Count5s, rate.into()),
            })?;
            // Asked last, so that an age without any table is told first.
            if repetitions.get() == repetitions_of_table {
                Ok(compared)
            } else {
                Err(NoNorm::OtherMethod(task, by_count).into())
            }
        }
        Timing::Syllables { window, .. } | Timing::Sequences { window, .. } => {
            let compared =
                find(window_method(window), rate.into()).map_err(|why| NotCompared::NoNorm {
                    why,
                    otherwise: otherwise(by_count, window.into()),
                })?;
            match coarseness(trial, window) {
                Some(step) => Err(NotCompared::TooCoarse(step)),
                None => Ok(compared),
            }
        }
    }
}

/// By how much one sequence more moves the rate, where whole sequences were counted: 0.6 syllables
/// per second in 5 seconds.
fn coarseness(trial: &Repeated, window: Seconds) -> Option<SyllablesPerSecond> {
    if trial.is_coarse() {
        count_by_time(trial.what.each().get(), window.millis()).ok()
    } else {
        None
    }
}

/// What the comparison says; nothing where the group has no published spread.
fn placed(trial: Repeated, compared: Compared) -> Option<Flag> {
    compared.place.z?;
    let worse = |line| compared.is_worse_by(line);
    let (rule, own, is) = if compared.norm.row.unit == Unit::Seconds {
        // In seconds more is slower is worse; one worksheet has it the wrong way round.
        let (own, is) = if worse(CHILD_SLOW) {
            (Level::Refer, Pace::SlowForAge)
        } else if worse(CHILD_WATCH) {
            (Level::Note, Pace::WorthWatching)
        } else {
            (Level::Pass, Pace::Usual)
        };
        (&rules::SPEECH_CHILD_TIME, own, is)
    } else {
        let (own, is) = if worse(BELOW_USUAL) {
            (Level::Refer, Pace::BelowUsual)
        } else {
            (Level::Pass, Pace::Usual)
        };
        let rule = match trial.what {
            Syllables::PaTaKa => &rules::SPEECH_ADULT_SEQUENCE,
            _ => &rules::SPEECH_OLDER_SINGLE,
        };
        (rule, own, is)
    };
    let level = level(&compared, own);
    let fact = SyllablesFact::Placed {
        trial,
        compared,
        is,
    };
    Some(rule.flag(level, Domain::SpeechVoice, fact))
}

fn note(rule: &'static Rule, fact: SyllablesFact) -> Flag {
    rule.flag(Level::Note, Domain::SpeechVoice, fact)
}

/// The line of the authors of the English norm: told only where that norm is the one read.
fn adult_line(
    what: Syllables,
    rate: SyllablesPerSecond,
    compared: Option<&Compared>,
) -> Option<Flag> {
    let english = compared.is_some_and(|c| c.norm.row.speaks("en"));
    (what == Syllables::PaTaKa && english && rate.get() < ADULT_LINE).then(|| {
        note(
            &rules::SPEECH_ADULT_LINE,
            SyllablesFact::BelowAdultLine(rate),
        )
    })
}

/// The lines told for older people: odds and a study's own word, no rule.
fn older_line(what: Syllables, rate: SyllablesPerSecond, who: &Who) -> Option<Flag> {
    if !who.is_from(OLDER_FROM_YEARS) {
        return None;
    }
    let per_second = rate.get();
    let line = match (what, who.sex) {
        (Syllables::Pa, _) if per_second < PA_LINE => OlderLine::Pa,
        (Syllables::Ta, Some(Sex::Male)) if per_second < TA_LINE_MEN => OlderLine::TaOfMan,
        (Syllables::Ta, Some(Sex::Female)) if per_second < TA_LINE_WOMEN => OlderLine::TaOfWoman,
        (Syllables::Ta, None) if per_second < TA_LINE_WOMEN => OlderLine::TaSexNotGiven,
        _ => return None,
    };
    Some(note(
        &rules::SPEECH_OLDER_LINE,
        SyllablesFact::BelowOlderLine(line, rate),
    ))
}

/// Taps too quick for a finger: one tap falls to each thing counted.
fn tap_limit(trial: &Repeated) -> Option<Flag> {
    let (taps, time) = match trial.timing {
        Timing::ByCount { repetitions, time } => (repetitions.get(), time),
        Timing::Syllables { count, window } | Timing::Sequences { count, window } => {
            (count, window)
        }
    };
    let taps = count_by_time(taps, time.millis()).ok()?;
    (taps.get() > TAP_LIMIT).then(|| {
        note(
            &rules::SPEECH_TAP_LIMIT,
            SyllablesFact::TooQuickForAFinger(taps),
        )
    })
}
