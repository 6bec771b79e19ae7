//! The cup of 90 mL in words a ward uses.

use crate::clinical::findings::fact::SeenSign;
use crate::clinical::findings::flag::Level;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::by_mouth::saturation;
use crate::clinical::tasks::{by_mouth, water};
use crate::measure::decimals::short;
use crate::record::visit::Visit;
use crate::wording::by_mouth::voice;
use crate::wording::words::whole_seconds;

/// The water test in words a ward uses: what was drunk, then what came of it.
pub(super) fn water_words(visit: &Visit, trial: &Trial) -> (String, String) {
    let finding = Reading::of(trial);
    let counted = match finding.swallows {
        // Taps are welcome, not needed.
        0 => "swallows not counted".to_owned(),
        1 => "1 swallow counted".to_owned(),
        n => format!("{n} swallows counted"),
    };
    let time = match finding.drinking.and_then(|e| e.length) {
        Some(length) if length >= water::LEAST => format!(" in {}", whole_seconds(length)),
        _ => String::new(),
    };
    let stopped = |seen: &SeenSign| {
        matches!(
            seen.sign,
            Sign::Pause | Sign::Choke | Sign::AskedToStop | Sign::NoSwallow | Sign::BreathingChange
        )
    };
    // How long an unfinished cup took means little.
    let (how, mut words) = match finding.cup {
        // A sign that means it was not one go outranks the press that says it was.
        Some(water::Cup::InOneGo) if finding.pressed.iter().any(stopped) => {
            ("90 mL of water, cup emptied".to_owned(), time)
        }
        Some(water::Cup::InOneGo | water::Cup::Empty) => {
            ("90 mL of water drunk in one go".to_owned(), time)
        }
        Some(water::Cup::Paused) => ("90 mL of water drunk with a pause".to_owned(), time),
        Some(water::Cup::Left(Some(left))) => {
            let drunk = short(f64::from(water::OFFERED) - left);
            let how = format!("{drunk} of 90 mL of water drunk, not finished");
            (how, String::new())
        }
        Some(water::Cup::Left(None)) => (
            "90 mL of water not finished".to_owned(),
            format!(", {counted}, amount drunk not recorded"),
        ),
        None if finding.swallows > 0 => (
            "some of the 90 mL of water drunk".to_owned(),
            format!(", {counted}, amount not recorded"),
        ),
        None => (
            "90 mL of water begun".to_owned(),
            format!(", {counted}, amount drunk not recorded"),
        ),
    };
    match finding.watch {
        water::Watch::Whole if finding.unwatched.is_some() => {}
        water::Watch::Whole if nothing_seen(visit, trial) => {
            words.push_str(", no sign for 60 seconds after it");
        }
        water::Watch::Whole => words.push_str(", watched for 60 seconds"),
        // After a stop there was something else to do.
        water::Watch::NotBegun if !water::ended(&finding, choked(visit, trial)) => {
            words.push_str(", not watched afterwards");
        }
        _ => {}
    }
    match (finding.before, finding.after) {
        (Some(before), Some(after)) if before == after => {
            words.push_str(&format!(", voice {} before and after", voice(before)));
        }
        (Some(before), Some(after)) => words.push_str(&format!(
            ", voice {} before, {} after",
            voice(before),
            voice(after)
        )),
        _ => {}
    }
    (how, words)
}

/// Whether choking was noted in a cup on its own page, which has no trial.
fn choked(visit: &Visit, trial: &Trial) -> bool {
    let mut chokings = visit.exam.chokings.iter();
    chokings.any(|at| by_mouth::was_within(trial, *at))
}

/// Whether nothing was seen, heard, read or pressed from the start of a cup to the end of its watch.
fn nothing_seen(visit: &Visit, trial: &Trial) -> bool {
    let choked = choked(visit, trial);
    let low = trial.number(saturation::LOWEST).is_some()
        && saturation::flags(trial.task, &visit.exam)
            .iter()
            .any(|f| f.level() >= Level::Incomplete);
    !choked && !low && trial.taken_back.is_empty() && Reading::of(trial).signs().is_empty()
}
