//! One trial of repeated syllables beside the published values.

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::norms::{Method, NoNorm, Quantity, Unit};
use crate::clinical::knowledge::person::Sex;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::compared::{
    BELOW_USUAL, CAVEAT, Compared, Judged, NotCompared, Who, no_norm,
};
use crate::clinical::tasks::syllables::speech::{Repeated, Syllables, Timing, millis};
use crate::measure::by_count::{RateError, count_by_time};
use crate::measure::decimals::decimals;
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
    let value = trial.words()?;
    let compared = compare(trial, rate, who);
    let mut flags = Vec::new();
    match &compared {
        Ok(compared) => flags.extend(placed(trial.what, &value, compared)),
        Err(why) => flags.push(no_norm(&value, why)),
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
    match millis(window) {
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
        count_by_time(trial.what.each().get(), millis(window)).ok()
    } else {
        None
    }
}

/// What the comparison says; nothing where the group has no published spread.
fn placed(what: Syllables, value: &str, compared: &Compared) -> Option<Flag> {
    let stands = compared.stands()?;
    let worse = |line| compared.is_worse_by(line);
    let (rule, level, says) = if compared.norm.row.unit == Unit::Seconds {
        // In seconds more is slower is worse; one worksheet has it the wrong way round.
        let (level, says) = if worse(CHILD_SLOW) {
            (Level::Refer, "slow for this age")
        } else if worse(CHILD_WATCH) {
            (Level::Note, "worth watching")
        } else {
            (Level::Pass, "in the usual range")
        };
        (&rules::SPEECH_CHILD_TIME, level, says)
    } else {
        let (level, says) = if worse(BELOW_USUAL) {
            (Level::Refer, "below the usual range")
        } else {
            (Level::Pass, "in the usual range")
        };
        let rule = match what {
            Syllables::PaTaKa => &rules::SPEECH_ADULT_SEQUENCE,
            _ => &rules::SPEECH_OLDER_SINGLE,
        };
        (rule, level, says)
    };
    let group = compared.group();
    let reason = format!("{value}: {says}; {stands}. {group} {CAVEAT}");
    Some(rule.flag(compared.level(level), Domain::SpeechVoice, reason))
}

fn note(rule: &'static Rule, reason: String) -> Flag {
    rule.flag(Level::Note, Domain::SpeechVoice, reason)
}

/// A rate beside a line is shown to two decimals: 5.38 is below 5.4.
fn exactly(rate: SyllablesPerSecond) -> String {
    format!("{} syllables per second", decimals(rate.get(), 2))
}

/// The line of the authors of the English norm: told only where that norm is the one read.
fn adult_line(
    what: Syllables,
    rate: SyllablesPerSecond,
    compared: Option<&Compared>,
) -> Option<Flag> {
    let english = compared.is_some_and(|c| c.norm.row.speaks("en"));
    (what == Syllables::PaTaKa && english && rate.get() < ADULT_LINE).then(|| {
        let reason = format!(
            "pa-ta-ka {}: below 5.4, which the authors of the English norm call a \
             possible abnormality. It is one standard deviation below the mean: about 16 in 100 \
             healthy people fall below it.",
            exactly(rate)
        );
        note(&rules::SPEECH_ADULT_LINE, reason)
    })
}

/// The lines told for older people: odds and a study's own word, no rule.
fn older_line(what: Syllables, rate: SyllablesPerSecond, who: &Who) -> Option<Flag> {
    if !who.is_from(OLDER_FROM_YEARS) {
        return None;
    }
    let (per_second, shown) = (rate.get(), exactly(rate));
    let reason = match (what, who.sex) {
        (Syllables::Pa, _) if per_second < PA_LINE => format!(
            "pa {shown}: below 6.2, which went with swallowing difficulty in a questionnaire of \
             older people (odds ratio 2.9). Odds, not a rule: the mean of healthy people of 79 \
             and 80 is below that line too."
        ),
        (Syllables::Ta, Some(Sex::Male)) if per_second < TA_LINE_MEN => {
            format!("ta {shown}: below 5.2, called low for older men in one study.")
        }
        (Syllables::Ta, Some(Sex::Female)) if per_second < TA_LINE_WOMEN => {
            format!("ta {shown}: below 5.4, called low for older women in one study.")
        }
        (Syllables::Ta, None) if per_second < TA_LINE_WOMEN => format!(
            "ta {shown}: one study calls less than 5.2 low for older men and less than 5.4 for \
             older women; the sex was not given."
        ),
        _ => return None,
    };
    Some(note(&rules::SPEECH_OLDER_LINE, reason))
}

/// Taps too quick for a finger: one tap falls to each thing counted.
fn tap_limit(trial: &Repeated) -> Option<Flag> {
    let (taps, time) = match trial.timing {
        Timing::ByCount { repetitions, time } => (repetitions.get(), time),
        Timing::Syllables { count, window } | Timing::Sequences { count, window } => {
            (count, window)
        }
    };
    let taps = count_by_time(taps, millis(time)).ok()?;
    (taps.get() > TAP_LIMIT).then(|| {
        let reason = format!(
            "{} taps a second: above 7 a finger miscounts more, so this rate is less certain.",
            decimals(taps.get(), 2)
        );
        note(&rules::SPEECH_TAP_LIMIT, reason)
    })
}
