//! Words about a meal or drink that is watched, outside the sentence of a flag.

use crate::clinical::findings::counted::Counted;
use crate::clinical::findings::fact::Lasted;
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::meal::{PART, kinds, lasted, summary, totals};
use crate::measure::time::Millis;
use crate::wording::counted::{counted, pad};

/// One and many of what a press was, for a sentence.
pub fn words_of(kind: MarkKind) -> (&'static str, &'static str) {
    match kind {
        MarkKind::Sign(sign) => match sign {
            Sign::Cough => ("cough", "coughs"),
            Sign::VoiceChange => ("wet voice", "times wet voice"),
            Sign::ThroatClear => ("throat clear", "throat clears"),
            Sign::Pause => ("pause", "pauses"),
            Sign::Spill => ("spill or drool", "spills or drools"),
            Sign::BreathingChange => ("breathing change", "breathing changes"),
            Sign::NoSwallow => ("time no swallow felt", "times no swallow felt"),
            Sign::AskedToStop => ("request to stop", "requests to stop"),
            Sign::Choke => ("choking", "chokings"),
        },
        MarkKind::Count(Counted::Note) => ("note", "notes"),
        _ => pad(TaskId::Meal, kind).unwrap_or(("", "")),
    }
}

/// What was pressed, and how often: "34 swallows, 2 coughs".
pub(super) fn pressed(counts: impl IntoIterator<Item = (MarkKind, usize)>) -> String {
    let parts: Vec<String> = counts
        .into_iter()
        .filter(|(_, n)| *n > 0)
        .map(|(kind, n)| {
            let (one, many) = words_of(kind);
            counted(n, one, many)
        })
        .collect();
    if parts.is_empty() {
        "nothing pressed".to_owned()
    } else {
        parts.join(", ")
    }
}

/// "0 to 5 min".
pub fn part_words(part: Option<usize>) -> String {
    let minutes = usize::try_from(PART.0 / 60_000).unwrap_or(1);
    part.map_or_else(
        || "time not known".to_owned(),
        |part| format!("{} to {} min", part * minutes, (part + 1) * minutes),
    )
}

/// "12 min 5 s".
pub fn minutes(length: Millis) -> String {
    let seconds = length.0.max(0) / 1000;
    if seconds < 60 {
        format!("{seconds} s")
    } else {
        format!("{} min {} s", seconds / 60, seconds % 60)
    }
}

/// How long a tally lasted.
pub(super) fn length(lasted: Lasted) -> String {
    match lasted {
        Lasted::For(length) => minutes(length),
        Lasted::NotKnown => "time not known".to_owned(),
        Lasted::NotEnded => "not ended".to_owned(),
    }
}

/// The first line says it whole, the others part by part.
pub fn lines(trial: &Trial) -> Vec<String> {
    let told = |counts: Vec<usize>| pressed(kinds().into_iter().zip(counts));
    let mut lines = vec![format!(
        "{}: {}",
        length(lasted(trial)),
        told(totals(trial))
    )];
    let parts = summary(trial);
    if parts.len() > 1 {
        lines.extend(
            parts
                .into_iter()
                .map(|part| format!("{}: {}", part_words(part.part), told(part.counts))),
        );
    }
    lines
}
