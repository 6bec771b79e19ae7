//! What a trial by mouth yields, in words for a sentence.

use crate::clinical::findings::fact::{Missing, Unwatched, Voice, WatchCut, WhyNot};
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{NOT_VALID, WATCH_CUT};
use crate::measure::time::Millis;
use crate::wording::tasks::shared;
use crate::wording::words::small;

/// A voice that is wet before anything is given.
pub const WET_BEFORE: &str = "Voice wet already before any water";

/// The word for a voice.
pub fn voice(voice: Voice) -> &'static str {
    match voice {
        Voice::Clear => "clear",
        Voice::Wet => "wet",
        Voice::Hoarse => "hoarse",
        Voice::Breathy => "breathy",
        Voice::Weak => "weak",
        Voice::Absent => "absent",
        Voice::Other => "changed or absent",
    }
}

/// Why something was not given.
pub fn why_not(why: &WhyNot) -> String {
    shared::choice_of(NOT_VALID, &why.0)
        .map(small)
        .unwrap_or_else(|| "reason not known to this version".to_owned())
}

/// How a watch was ended early.
pub fn watch_cut(cut: &WatchCut) -> String {
    match cut {
        WatchCut::LengthNotKnown => "how long it was is not known".to_owned(),
        WatchCut::Said(id) => id
            .as_ref()
            .and_then(|id| shared::choice_of(WATCH_CUT, id).map(small))
            .unwrap_or_else(|| "no reason known".to_owned()),
    }
}

/// What is missing of a watch that ran out while the app was off.
pub fn unwatched(unwatched: Unwatched) -> &'static str {
    match unwatched {
        Unwatched::Not => "the 60 seconds after it were not watched",
        Unwatched::NotSaid => {
            "the app was not on the screen for all of the watch: not said whether it was watched"
        }
    }
}

/// What is still missing of a trial that was given.
pub fn missing(missing: &Missing) -> String {
    match missing {
        Missing::End => "its end was not marked".to_owned(),
        Missing::WatchRuns => "the watch of 60 seconds is not over".to_owned(),
        Missing::WatchCut(cut) => {
            let why = watch_cut(cut);
            format!("the watch of 60 seconds was ended early: {why}")
        }
        Missing::Unwatched(which) => unwatched(*which).to_owned(),
        Missing::Answers => "what is asked after it is open".to_owned(),
        Missing::VoiceBefore => "voice before it not recorded".to_owned(),
        Missing::NoVoiceBefore => {
            "no voice before it: whether the voice changed could not be judged".to_owned()
        }
    }
}

/// The presses of a trial with their times since its start, for a line of time: whether it is a
/// sign, and its words.
pub fn time_line(trial: &Trial) -> Vec<(Millis, bool, &'static str)> {
    let Some(start) = trial.start() else {
        return Vec::new();
    };
    trial
        .marks
        .iter()
        .filter_map(|mark| {
            let cracker = trial.task == TaskId::Cracker;
            let (sign, words) = match mark.kind {
                MarkKind::Start if cracker => (false, "first bite"),
                MarkKind::End if cracker => (false, "mouth empty"),
                // Its counts stand in the figures.
                MarkKind::Tap if cracker => return None,
                MarkKind::Start => (false, "lip contact"),
                MarkKind::Tap => (false, "swallow"),
                MarkKind::End => (false, "last swallow"),
                MarkKind::Stopped => (false, "stopped"),
                MarkKind::Sign(sign) => (true, sign.past()),
                MarkKind::Count(_) | MarkKind::WindowOver | MarkKind::WatchOver => return None,
            };
            Some((trial.between(start, mark.at).length?, sign, words))
        })
        .collect()
}
