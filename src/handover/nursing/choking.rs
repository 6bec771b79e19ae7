//! How a choking went.

use crate::handover::issue::Clock;
use crate::measure::time::{Millis, elapsed};
use crate::record::visit::Visit;
use crate::wording::choking;

/// How a choking went.
pub(in crate::handover) fn choking(visit: &Visit, now: &Clock) -> Option<String> {
    let choking = visit.choking()?;
    let after = |at| {
        elapsed(choking.since, at, true)
            .length
            .map_or_else(|| "an unknown time".to_owned(), minutes)
    };
    let help = choking.help.map_or_else(
        || "help call not recorded".to_owned(),
        // Noted once it was over: when it was, nobody knows.
        |at| match choking.over {
            Some(over)
                if elapsed(over, at, true)
                    .length
                    .is_none_or(|l| l > Millis::ZERO) =>
            {
                "help called (noted afterwards)".to_owned()
            }
            _ => format!("help called after {}", after(at)),
        },
    );
    let over = choking.over.map_or_else(
        || "NOT back to baseline yet".to_owned(),
        |at| format!("back to baseline after {}", after(at)),
    );
    let voice = choking.voice.and_then(|(voice, _)| choking::voice(voice));
    let (_, earlier) = visit.chokings.split_last()?;
    // The one that went well does not cover the one before it.
    let no_help = earlier.iter().any(|c| c.help.is_none());
    let no_end = earlier.iter().any(|c| c.over.is_none());
    let before = match (no_help, no_end) {
        (true, true) => " (before that: help call not recorded, back to baseline not recorded)",
        (true, false) => " (before that: help call not recorded)",
        (false, true) => " (before that: back to baseline not recorded)",
        (false, false) => "",
    };
    let times = visit.chokings.iter().map(|c| now.say(c.since.wall));
    let when = choking::when(&times.collect::<Vec<_>>());
    let voice = voice.map_or_else(String::new, |voice| format!(", {voice}"));
    Some(format!("{when}: {help}, {over}{voice}{before}"))
}

/// "1 min 5 s".
fn minutes(length: Millis) -> String {
    let seconds = length.0.max(0) / 1000;
    if seconds < 60 {
        format!("{seconds} s")
    } else {
        format!("{} min {} s", seconds / 60, seconds % 60)
    }
}
