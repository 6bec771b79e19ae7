//! The rule of the 90 mL: from a finding to its flags.

use crate::clinical::findings::fact::{
    ByMouthFact, Missing, Seen, SeenSign, SignFact, WaterFact, With,
};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::{Sign, SignTask, meaning, meaning_under};
use crate::clinical::tasks::by_mouth::reading::{Cup, Reading, Watch};
use crate::clinical::tasks::water::LEAST;

/// The rule of this task.
pub fn judge(finding: &Reading, choked: bool, policy: &Policy) -> Vec<Flag> {
    let eating = Domain::EatingDrinking;
    let mut flags = Vec::new();
    for (sign, seen, times) in grouped(&finding.pressed) {
        let (level, rule) = meaning_under(sign, SignTask::Water90, policy);
        let too_late = seen.is_late() && level != Level::Stop;
        let fact = SignFact {
            sign,
            seen,
            times,
            too_late,
            with: With::Cup {
                stopped: finding.stopped,
            },
        };
        let (level, rule) = match too_late {
            true => (Level::Note, &rules::WATER_AFTER_WATCH),
            false => (level, rule),
        };
        flags.push(rule.flag(level, eating, fact));
    }
    if finding.start.is_none() {
        if flags.iter().all(|f| f.level() < Level::Refer) {
            let fact = WaterFact::NotGiven(finding.not_given.clone());
            flags.push(rules::WATER_UNFINISHED.flag(Level::Incomplete, eating, fact));
        }
        return flags;
    }
    match finding.cup {
        Some(Cup::Paused) => {
            flags.push(rules::WATER_INTERRUPTED.flag(Level::Refer, eating, WaterFact::Paused));
        }
        Some(Cup::Left(left)) => {
            flags.push(rules::WATER_LEFT.flag(Level::Refer, eating, WaterFact::Left(left)));
        }
        Some(Cup::InOneGo | Cup::Empty) | None => {}
    }
    flags.extend(voice(finding, policy));
    // A trial that was rightly stopped is not asked for its end, nor for what comes after it.
    let ended = ended(finding, choked);
    let missing = missing(finding, ended).into_iter();
    flags.extend(missing.map(|fact| rules::WATER_UNFINISHED.flag(Level::Incomplete, eating, fact)));
    if let Some(doubt) = finding.watch_doubt {
        let fact = ByMouthFact::WatchDoubt(doubt);
        flags.push(rules::WATER_UNFINISHED.flag(Level::Note, eating, fact));
    }
    if !ended && flags.iter().all(|f| f.level() == Level::Note) {
        // What decides nothing was seen all the same.
        let voice = flags.iter().any(|f| f.rule() == &rules::WATER_VOICE);
        let late = finding.pressed.iter().all(|s| s.is_late());
        let no_sign = late && !voice && finding.taken_back.is_empty();
        flags.push(rules::WATER_CLEAR.flag(Level::Pass, eating, WaterFact::Clear { no_sign }));
    }
    flags
}

/// What is missing of a cup that was given.
fn missing(finding: &Reading, ended: bool) -> Vec<WaterFact> {
    let too_quick = finding
        .drinking
        .and_then(|time| time.length)
        .is_some_and(|length| length < LEAST);
    let afterwards = [
        finding.stopped.then_some(WaterFact::Missing(Missing::End)),
        match &finding.watch {
            Watch::NotBegun => Some(WaterFact::Missing(Missing::End)),
            Watch::Running => Some(WaterFact::Missing(Missing::WatchRuns)),
            Watch::Cut(why) => Some(WaterFact::Missing(Missing::WatchCut(why.clone()))),
            Watch::Whole => None,
        },
    ];
    let unwatched = finding.unwatched.map(Missing::Unwatched);
    let said_not = finding.not_given.clone().map(WaterFact::GivenAndNot);
    let all = [
        too_quick.then_some(WaterFact::TooQuick),
        (finding.cup.is_none() && !ended).then_some(WaterFact::CupNotRecorded),
        (finding.after.is_none() && !ended).then_some(WaterFact::VoiceAfterNotRecorded),
        (finding.before.is_none()).then_some(WaterFact::Missing(Missing::VoiceBefore)),
        (finding.is_voiceless() && !ended).then_some(WaterFact::Missing(Missing::NoVoiceBefore)),
        unwatched.filter(|_| !ended).map(WaterFact::Missing),
        said_not,
    ];
    let afterwards = afterwards.into_iter().filter(|_| !ended);
    afterwards.chain(all).flatten().collect()
}

/// Whether the trial was stopped: by choking, or a sign that stops every trial.
pub fn ended(finding: &Reading, choked: bool) -> bool {
    let stops = |s: &SeenSign| !s.is_late() && meaning(s.sign, SignTask::Water90).0 == Level::Stop;
    choked || finding.pressed.iter().any(stops)
}

/// The same sign seen while drinking counts up; later ones stand with their times.
fn grouped(signs: &[SeenSign]) -> Vec<(Sign, Seen, usize)> {
    let mut groups: Vec<(Sign, Seen, usize)> = Vec::new();
    for SeenSign { sign, seen } in signs {
        match groups.iter_mut().find(|(s, at, _)| s == sign && at == seen) {
            Some((_, _, times)) => *times += 1,
            None => groups.push((*sign, *seen, 1)),
        }
    }
    groups
}

/// The voice before and after.
fn voice(finding: &Reading, policy: &Policy) -> Option<Flag> {
    let after = finding.after?;
    let before = finding.before;
    if finding.voice_changed() {
        let level = if policy.voice_refers {
            Level::Refer
        } else {
            Level::Note
        };
        let fact = WaterFact::Voice { before, after };
        return Some(rules::WATER_VOICE.flag(level, Domain::EatingDrinking, fact));
    }
    let fact = WaterFact::VoiceBefore(before.filter(|voice| voice.is_changed())?);
    Some(rules::WATER_BASELINE_VOICE.flag(Level::Note, Domain::SpeechVoice, fact))
}
