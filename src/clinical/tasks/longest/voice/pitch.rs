//! The range of pitch.

use crate::clinical::findings::flag::{Domain, Level};
use crate::clinical::knowledge::norms::{Method, Row, Task};
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::compared::{CAVEAT, Compared, Judged, NotCompared, Who};
use crate::measure::decimals::decimals;
use crate::measure::units::{Hertz, Semitones};

/// Reports the range between the lowest and the highest pitch beside the published group, in
/// whichever order they are given. Never above a note: no published line for "reduced" was found.
pub fn pitch_range(lowest: Hertz, highest: Hertz, who: &Who) -> Judged {
    let range = Semitones::between(lowest, highest);
    let (low, high) = if lowest.get() <= highest.get() {
        (lowest, highest)
    } else {
        (highest, lowest)
    };
    let value = format!(
        "Pitch range: {} semitones (from {} to {} hertz)",
        decimals(range.get(), 1),
        decimals(low.get(), 1),
        decimals(high.get(), 1)
    );
    let compared =
        Compared::find(Task::Glide, Method::Glide, range, who).map_err(NotCompared::from);
    let reason = match &compared {
        Ok(compared) => {
            let stands = compared
                .stands()
                .or_else(|| quarters(compared.norm.row, range))
                .map(|stands| format!("; {stands}"))
                .unwrap_or_default();
            format!(
                "{value}{stands}. Reported, not judged: no published line was found. {} {CAVEAT}",
                compared.group()
            )
        }
        Err(why) => format!("{value}. Reported, not judged. {why}"),
    };
    Judged {
        value,
        compared,
        flags: vec![rules::VOICE_PITCH_RANGE.flag(Level::Note, Domain::SpeechVoice, reason)],
    }
}

/// Where a range stands in a group published by its quarters.
fn quarters(row: &Row, range: Semitones) -> Option<String> {
    let (p25, p75) = (row.p25?, row.p75?);
    let side = if range.get() < p25 {
        "below"
    } else if range.get() > p75 {
        "above"
    } else {
        "within"
    };
    Some(format!("{side} the middle half of the group"))
}
