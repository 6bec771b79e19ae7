//! The cup of 90 mL in words a ward uses.

use crate::clinical::flag::Level;
use crate::clinical::sign::Sign;
use crate::clinical::tasks::{by_mouth, saturation, watched, water};
use crate::clinical::trial::Trial;
use crate::measure::time::Millis;
use crate::record::visit::Visit;

/// The water test in words a ward uses.
pub(super) fn water_words(visit: &Visit, trial: &Trial) -> String {
    let finding = water::read(trial);
    let stopped = |(sign, _): &(Sign, water::Seen)| {
        matches!(
            sign,
            Sign::Pause | Sign::Choke | Sign::AskedToStop | Sign::NoSwallow | Sign::BreathingChange
        )
    };
    let mut words = match finding.cup {
        // A sign that means it was not one go outranks the press that says it was.
        Some(water::Cup::InOneGo) if finding.signs.iter().any(stopped) => {
            "90 mL of water, cup emptied".to_owned()
        }
        Some(water::Cup::InOneGo) => "90 mL of water drunk in one go".to_owned(),
        Some(water::Cup::Paused) => "90 mL of water drunk with a pause".to_owned(),
        Some(water::Cup::Left(_)) => "90 mL of water offered, not finished".to_owned(),
        None => "90 mL of water offered".to_owned(),
    };
    if let Some(length) = finding.drinking.and_then(|e| e.length)
        && length >= water::LEAST
    {
        words.push_str(&format!(" in {} seconds", length.0 / 1000));
    }
    match finding.watch {
        water::Watch::Whole if watched::missing(trial).is_some() => {}
        water::Watch::Whole if nothing_seen(visit, trial) => {
            words.push_str(", no sign for 60 seconds after it");
        }
        water::Watch::Whole => words.push_str(", watched for 60 seconds"),
        _ => {}
    }
    match (finding.before, finding.after) {
        (Some(before), Some(after)) if before == after => {
            words.push_str(&format!(", voice {} before and after", before.words()));
        }
        (Some(before), Some(after)) => words.push_str(&format!(
            ", voice {} before, {} after",
            before.words(),
            after.words()
        )),
        _ => {}
    }
    words
}

/// Whether nothing was seen, heard, read or pressed from the start of a cup to the end of its watch.
fn nothing_seen(visit: &Visit, trial: &Trial) -> bool {
    // On the page of choking, which has no trial. What the clocks can't place counts.
    let choked = visit.chokings.iter().any(|choking| {
        let since = |at| trial.between(at, choking.since).length;
        let begun = trial.start().and_then(since);
        let ended = trial.end().and_then(since);
        begun.is_none_or(|l| l >= Millis::ZERO) && ended.is_none_or(|l| l <= water::WATCH)
    });
    let low = trial.number(saturation::LOWEST).is_some()
        && saturation::flags(trial.task, &visit.exam)
            .iter()
            .any(|f| f.level() >= Level::Incomplete);
    !choked && !low && by_mouth::seen(trial).is_empty()
}
