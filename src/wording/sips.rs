//! Small sips of water in words.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::SeenSign;
use crate::clinical::findings::looked::Looked;
use crate::clinical::findings::trial::Trial;
use crate::clinical::tasks::by_mouth::reading::{Reading, Watch};
use crate::clinical::tasks::sips;
use crate::measure::decimals::short;

/// A sip in words: "3 mL: swallowed after 1.2 s, 2 more dry swallows, watched for 60 seconds".
pub fn line(trial: &Trial) -> String {
    let mut words = Vec::new();
    let reading = Reading::of(trial);
    let run = sips::run(trial);
    let length = reading.drinking.and_then(|time| time.length);
    words.push(match (run.swallowed, length) {
        (Looked::Absent, _) => "no swallow".to_owned(),
        (Looked::Present, Some(length)) => format!("swallowed after {length}"),
        (Looked::Present, None) => "swallowed".to_owned(),
        (Looked::NotTested, _) => "swallow not marked".to_owned(),
    });
    words.extend(run.extra.map(|n| match n {
        0 => "no more dry swallow".to_owned(),
        n => format!("{n} more dry swallows"),
    }));
    words.extend(reading.signs().into_iter().map(sign));
    let watched = match reading.watch {
        Watch::Whole if reading.unwatched.is_none() => "watched for 60 seconds",
        Watch::Running => "the watch runs",
        Watch::Whole | Watch::Cut(_) | Watch::NotBegun => "not watched to the end",
    };
    words.push(watched.to_owned());
    let size = trial.number(sips::SIZE).map_or("?".to_owned(), short);
    format!("{size} mL: {}", words.join(", "))
}

/// A sign in words, without a word about levels: "coughed after 3 s".
pub fn sign(seen: SeenSign) -> String {
    match seen.seen.after() {
        Some(after) => format!("{} after {} s", seen.sign.past(), after.0 / 1000),
        None => seen.sign.past().to_owned(),
    }
}

/// What was given, in a few words for the handover.
pub fn summary(exam: &Exam) -> Option<String> {
    let summary = sips::summary(exam)?;
    let given: Vec<String> = summary
        .given
        .iter()
        .map(|(size, n)| format!("{n} of {} mL", short(size.get())))
        .collect();
    let end = match (summary.clear, summary.seen) {
        (true, true) => ", each watched for 60 seconds",
        (true, false) => ", each watched for 60 seconds, no sign",
        (false, _) => "",
    };
    Some(format!("small sips of water: {}{end}", given.join(", ")))
}
