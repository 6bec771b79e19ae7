//! A measured value beside the published one, in words.

use crate::clinical::findings::measured::Measured;
use crate::clinical::knowledge::norms::{Compared, NotCompared, Row};
use crate::clinical::tasks::compare::Comparison;
use crate::measure::decimals::decimals;
use crate::measure::normal::Percentile;
use crate::wording::breathing;
use crate::wording::dry;
use crate::wording::norms::{self, method, remarks, score, unit, which};
use crate::wording::speech;
use crate::wording::words::small;

/// Stands beside every comparison (ZIE19, GM08: rates are an insensitive and unspecific marker,
/// and counts by ear are less reliable than a diagnosis needs).
pub const CAVEAT: &str = "Comparison with published groups, not a diagnosis.";

/// Where a value stands; none where the group has no published spread.
pub fn stands(compared: &Compared) -> Option<String> {
    let z = score(compared.place.z?);
    Some(match compared.place.percentile() {
        Some(percentile) => format!("{z}; {}", share(percentile)),
        None => z,
    })
}

/// The group with its figures and its source, and in which way it is not the person's own.
pub fn group(compared: &Compared) -> String {
    let row = compared.norm.row;
    let mut sentences = vec![format!(
        "{}: {} ({}; {}: {}).",
        which(&compared.norm),
        row.population,
        middle(row),
        row.mark.words(),
        row.source.key
    )];
    sentences.extend(remarks(&compared.norm));
    sentences.join(" ")
}

/// The middle of a group: "mean 4.8 seconds", or its middle half.
fn middle(row: &Row) -> String {
    let unit = unit(row.unit);
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

/// The part of a group that did worse. Nobody is told to be the very last or first: no group was
/// large enough.
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
pub fn not_compared(why: &NotCompared) -> String {
    match why {
        NotCompared::NoNorm { why, otherwise } => {
            let why = norms::no_norm(why);
            match otherwise {
                Some(row) if row.method.is_strict() => {
                    format!("{why} Published for this age: {}.", method(row.method))
                }
                Some(row) => format!(
                    "{why} Published for this age: counted over a time, in {}.",
                    unit(row.unit)
                ),
                None => why,
            }
        }
        NotCompared::TooCoarse(step) => format!(
            "Not compared: counted in whole sequences, one more or less moves the rate by {} \
             syllables per second. Count every syllable to compare.",
            decimals(step.get(), 1)
        ),
    }
}

/// A value with its unit written out.
pub fn measured(measured: &Measured) -> String {
    match measured {
        Measured::Repeated(trial) => speech::repeated(trial),
        Measured::Held(sound, held) => speech::longest(*sound, held),
        Measured::DrySwallows(n) => dry::in_window(n),
        Measured::Breaths(rate, method) => breathing::rate(*rate, *method),
    }
}

/// The published value, where this one stands, and how far the group is the person's own; or why
/// there is no published value.
pub fn comparison(comparison: &Comparison) -> String {
    let value = measured(&comparison.value);
    let norm = match &comparison.norm {
        Ok(norm) => norm,
        Err(none) => return format!("{value}. {}", norms::no_norm(none)),
    };
    let mut words = vec![format!(
        "{value}. Published: {}.",
        small(&norms::row(norm.row))
    )];
    if let Some(z) = comparison.place.and_then(|place| place.z) {
        words.push(format!("This one is {}.", score(z)));
    }
    words.push(format!("{}: {}.", which(norm), norm.row.population));
    words.extend(remarks(norm));
    words.join(" ")
}
