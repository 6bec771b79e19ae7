//! Published values in words: what they are of, whose they are, and why there is none.

use std::fmt;

use crate::clinical::knowledge::norms::{Method, NoNorm, Norm, Row, Task, Unit};
use crate::measure::decimals::decimals;
use crate::measure::normal::StandardScore;
use crate::wording::words::capital;

/// What a person does, in words for a sentence.
pub const fn task(task: Task) -> &'static str {
    match task {
        Task::Pa => "pa",
        Task::Ta => "ta",
        Task::Ka => "ka",
        Task::PaTaKa => "pa-ta-ka",
        Task::Ah => "longest ah",
        Task::S => "longest s",
        Task::Z => "longest z",
        Task::Glide => "pitch range",
        Task::Talk => "speaking pitch",
        Task::SwallowSaliva => "dry swallows",
        Task::Drink => "timed water",
        Task::EatCracker => "timed cracker",
        Task::OpenMouth => "mouth opening",
        Task::Breathe => "breaths a minute",
    }
}

/// A unit, in words for a sentence.
pub const fn unit(unit: Unit) -> &'static str {
    match unit {
        Unit::Seconds => "seconds",
        Unit::SyllablesPerSecond => "syllables per second",
        Unit::SequencesPerSecond => "sequences per second",
        Unit::Semitones => "semitones",
        Unit::Hertz => "hertz",
        Unit::PerHalfMinute => "in 30 seconds",
        Unit::MillilitresPerSecond => "millilitres per second",
        Unit::Bites => "bites",
        Unit::Chews => "chews",
        Unit::Swallows => "swallows",
        Unit::Millimetres => "millimetres",
        Unit::PerMinute => "a minute",
    }
}

/// How it was measured, in words for a sentence.
pub const fn method(method: Method) -> &'static str {
    match method {
        Method::Time20 => "seconds for 20 repetitions",
        Method::Time10 => "seconds for 10 repetitions",
        Method::Count5s => "a count of 5 seconds",
        Method::Count8s => "a count of 8 seconds",
        Method::Count10s => "a count of 10 seconds",
        Method::Count15s => "a count of 15 seconds",
        Method::Pooled => "several methods, pooled",
        Method::NotShown => "a method that was not shown",
        Method::ThreeTrials => "three trials",
        Method::Longest => "the longest of some trials",
        Method::SungProfile => "a sung voice range profile",
        Method::Glide => "a glide",
        Method::Conversation => "conversation",
        Method::Reading => "reading",
        Method::Count30s => "a count of 30 seconds",
        Method::Count60s => "a count of 60 seconds",
        Method::Cup150 => "a cup of 150 mL",
        Method::Cup100 => "a cup of 100 mL",
        Method::CupOther => "a cup of another volume",
        Method::OneCracker => "one cracker",
        Method::Ruler => "a ruler",
        Method::RangeTable => "a table of taught ranges",
    }
}

/// The figures of a row: "Mean 6.2, SD 0.8 syllables per second, n = 141".
pub fn row(row: &Row) -> String {
    let figure = |value: f64| {
        decimals(value, 2)
            .trim_end_matches('0')
            .trim_end_matches('.')
            .to_owned()
    };
    let mut parts = Vec::new();
    if let Some(mean) = row.mean {
        parts.push(format!("mean {}", figure(mean)));
    }
    if let Some(sd) = row.sd {
        parts.push(format!("SD {}", figure(sd)));
    }
    if let Some(median) = row.p50 {
        parts.push(format!("median {}", figure(median)));
    }
    if let (Some(p25), Some(p75)) = (row.p25, row.p75) {
        parts.push(format!("middle half {} to {}", figure(p25), figure(p75)));
    }
    if let (Some(low), Some(high)) = (row.low, row.high) {
        parts.push(format!("range {} to {}", figure(low), figure(high)));
    }
    let n = row.n.map_or(String::new(), |n| format!(", n = {n}"));
    format!("{} {}{n}", capital(&parts.join(", ")), unit(row.unit))
}

/// The ages of a row's group: "6 years", "18 to 26 years", "0 to 11 months".
pub fn ages(row: &Row) -> String {
    let (first, last) = (starts(row.ages.0), ends(row.ages.1));
    match (first, last) {
        _ if !row.ages_seen => format!("not seen; taken from {first}"),
        _ if first == last => first.to_string(),
        (Shown::Years(n), Shown::Years(_)) | (Shown::Months(n), Shown::Months(_)) => {
            format!("{n} to {last}")
        }
        _ => format!("{first} to {last}"),
    }
}

/// An age as a table shows it.
#[derive(Clone, Copy, PartialEq)]
enum Shown {
    Years(u32),
    Months(u32),
}

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Shown::Years(n) => write!(f, "{n} years"),
            Shown::Months(n) => write!(f, "{n} months"),
        }
    }
}

/// Months as the start of a table: "6 years".
fn starts(months: u32) -> Shown {
    if months < 12 || months < 36 && !months.is_multiple_of(12) {
        Shown::Months(months)
    } else {
        Shown::Years(months / 12)
    }
}

/// Months as the end of a table: 167 months are "13 years".
fn ends(months: u32) -> Shown {
    if months < 12 {
        Shown::Months(months)
    } else {
        Shown::Years(months / 12)
    }
}

/// Whose group it is: to stand before who was studied.
pub fn which(norm: &Norm) -> &'static str {
    if norm.fit.nearest_group {
        "Nearest published group"
    } else {
        "Group"
    }
}

/// What to say beside it, a sentence each: in which way the group is not the person's own.
pub fn remarks(norm: &Norm) -> Vec<String> {
    let fit = norm.fit;
    let mut remarks = Vec::new();
    let mut say = |when: bool, sentence: &str| {
        if when {
            remarks.push(sentence.to_owned());
        }
    };
    say(fit.ages_not_seen, "The ages of the group were not seen.");
    say(fit.other_language, "The group speaks another language.");
    say(
        fit.language_not_given,
        "The person's language was not given.",
    );
    if fit.other_method {
        remarks.push(match norm.row.method {
            Method::NotShown => "How it was measured there was not shown.".to_owned(),
            Method::Pooled => "Measured there in several ways.".to_owned(),
            other => format!("Measured otherwise there: {}.", method(other)),
        });
    }
    remarks
}

/// How far a value is off a mean, to two decimals. It does not say which way is better.
pub fn score(z: StandardScore) -> String {
    let size = decimals(z.get().abs(), 2);
    if size == "0.00" {
        return "at the mean".to_owned();
    }
    let side = if z.get() < 0.0 { "below" } else { "above" };
    format!("{size} standard deviations {side} the mean")
}

/// Why there is no published value.
pub fn no_norm(why: &NoNorm) -> String {
    match *why {
        NoNorm::NoTable(of) => format!("No published value for {}.", task(of)),
        NoNorm::OtherUnit(of, published) => format!(
            "No published value for {} in this unit; published in {}.",
            task(of),
            unit(published)
        ),
        NoNorm::OtherMethod(of, published) => format!(
            "No published value for {} measured this way; published: {}.",
            task(of),
            method(published)
        ),
        NoNorm::AgeNotGiven => "No comparison without the age in years.".to_owned(),
        NoNorm::SexNotGiven => {
            "No comparison: at this age the published values go by sex, and none was given."
                .to_owned()
        }
        NoNorm::OtherSex(sex) => format!(
            "No published value: at this age it is published for the {} sex only.",
            sex.words()
        ),
        NoNorm::TooYoung(age, first) => format!(
            "No published value for age {age}: the nearest table starts at {}.",
            starts(first)
        ),
        NoNorm::TooOld(age, last) => format!(
            "No published value for age {age}: the nearest table ends at {}.",
            ends(last)
        ),
        NoNorm::Between(age, last, first) => format!(
            "No published value for age {age}: one table ends at {}, the next starts at {}.",
            ends(last),
            starts(first)
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clinical::knowledge::norms::ROWS;

    #[test]
    fn ages_in_words() {
        let words: Vec<String> = ROWS.iter().map(ages).collect();
        for expected in [
            "6 years",
            "18 to 26 years",
            "0 to 11 months",
            "60 to 95 years",
        ] {
            assert!(words.iter().any(|w| w == expected), "{expected}: {words:?}");
        }
    }

    #[test]
    fn a_distance_from_the_mean_in_words() {
        for (value, words) in [
            (6.8, "2.00 standard deviations above the mean"),
            (2.6, "2.20 standard deviations below the mean"),
            (4.801, "at the mean"),
        ] {
            let z = StandardScore::new(value, 4.8, 1.0).ok();
            assert_eq!(z.map(score).as_deref(), Some(words));
        }
    }
}
