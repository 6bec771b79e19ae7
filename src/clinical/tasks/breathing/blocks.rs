//! Readings that hold up a water trial, and who may go on past each.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::breath_taps;
use crate::clinical::tasks::breathing::bands::{Band, rate_band, reading_band};
use crate::clinical::tasks::breathing::reading::{Method, counts, read, reading};
use crate::clinical::tasks::breathing::words::{rate_words, spo2_words};
use crate::measure::decimals::decimals;

/// A reading that holds up a water trial.
#[derive(Clone, Debug)]
pub struct Block {
    /// The id under which going on is recorded. It carries the reading: a reason given for 25
    /// breaths does not speak for 40.
    pub hold: String,
    /// Who may go on.
    pub go_on: GoOn,
    /// What is said.
    pub flag: Flag,
}

/// Whether a reading closes the gate, rather than asking for a count or a look at the chart.
pub fn closes(flag: &Flag) -> bool {
    [
        rules::BREATHING_RATE.id,
        rules::BREATHING_SPO2.id,
        rules::BREATHING_SECOND_SCALE.id,
    ]
    .contains(&flag.rule().id)
}

/// Readings that hold up a water trial, what was gone past included.
pub fn blocks(exam: &Exam) -> Vec<Block> {
    let finding = reading(exam);
    let mut blocks = Vec::new();
    let mut block = |rule: &'static Rule, reading: String, go_on: GoOn, words: String| {
        blocks.push(Block {
            hold: format!("{}{reading}", rule.id),
            go_on,
            flag: rule.flag(Level::Incomplete, Domain::EatingDrinking, words),
        });
    };
    let slp = GoOn::SlpWithReason;
    let adult = exam.age.is_none_or(|a| a.is_adult());
    let mut rates = finding.as_ref().map_or(Vec::new(), |f| f.rates.clone());
    let none = rates.is_empty();
    let shorter = breath_taps::rate(exam).map(|(rate, _)| (rate, Method::Shorter));
    if none && adult {
        // Neither taps nor a count before one that was not finished clears an adult. What is too
        // fast or too slow by them is so all the same.
        let before = counts(exam).map(|t| read(t).rates).find(|r| !r.is_empty());
        let seen = before.unwrap_or_default().into_iter().chain(shorter);
        rates.extend(seen.filter(|(rate, _)| rate_band(*rate, &exam.policy) == Band::Block));
    } else if none {
        // A child's rate is read with the local chart, however it was counted.
        rates.extend(shorter);
    }
    if none && (adult || rates.is_empty()) {
        let words = match finding.as_ref().and_then(|f| f.doubt) {
            Some(doubt) => format!("Breaths: count again. {doubt}"),
            None => "Breaths not counted".to_owned(),
        };
        block(&rules::BREATHING_NOT_COUNTED, String::new(), slp, words);
    }
    for (rate, method) in &rates {
        let words = rate_words(*rate, *method);
        if !adult {
            let ask = format!("{words}: does it fit the local chart for this age?");
            block(
                &rules::BREATHING_CHILD,
                format!(".{rate}"),
                GoOn::WithReason,
                ask,
            );
        } else if rate_band(*rate, &exam.policy) == Band::Block {
            block(&rules::BREATHING_RATE, format!(".{rate}"), slp, words);
        }
    }
    if let Some(f) = &finding
        && let Some(percent) = f.spo2
    {
        let words = spo2_words(percent, f.oxygen, f.target);
        let below_target = f.target.is_some_and(|lowest| percent < lowest);
        let reading = format!(".{}", decimals(percent, 0));
        // A chart says what is usual, not that a reading which holds an adult is safe.
        if below_target || reading_band(f, percent, &exam.policy) == Band::Block {
            // Above the target it is the second scale that blocks; the id of the hold is stored
            // and stays.
            let rule = match f.confirmed {
                Some(_) if !below_target => &rules::BREATHING_SECOND_SCALE,
                _ => &rules::BREATHING_SPO2,
            };
            let stored = if adult || below_target {
                rules::BREATHING_SPO2.id
            } else {
                rules::BREATHING_CHILD.id
            };
            blocks.push(Block {
                hold: format!("{stored}{reading}"),
                go_on: slp,
                flag: rule.flag(Level::Incomplete, Domain::EatingDrinking, words),
            });
        } else if !adult {
            let ask = format!("{words}: does it fit the local chart for this age?");
            block(&rules::BREATHING_CHILD, reading, GoOn::WithReason, ask);
        }
    }
    blocks
}
