//! The rule of the 90 mL: from a finding to its flags.

use crate::clinical::findings::fact::{Seen, SeenSign, SignFact, Voice, With};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::{Sign, SignTask, meaning, meaning_under};
use crate::clinical::tasks::by_mouth::reading::{Cup, Reading, Watch};
use crate::clinical::tasks::water::LEAST;
use crate::measure::decimals::decimals;
use crate::measure::time::Elapsed;
use crate::wording::by_mouth as words;
use crate::wording::by_mouth::{unwatched, watch_cut, why_not};

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
            let why = match &finding.not_given {
                Some(why) => format!("90 mL of water not given: {}", why_not(why)),
                None => "90 mL of water not given".to_owned(),
            };
            flags.push(rules::WATER_UNFINISHED.flag(Level::Incomplete, eating, why));
        }
        return flags;
    }
    match finding.cup {
        Some(Cup::Paused) => flags.push(rules::WATER_INTERRUPTED.flag(
            Level::Refer,
            eating,
            "did not drink the 90 mL in one go",
        )),
        Some(Cup::Left(left)) => flags.push(rules::WATER_LEFT.flag(
            Level::Refer,
            eating,
            match left {
                Some(ml) => format!("{} of 90 mL left in the cup", millilitres(ml)),
                None => "did not finish the 90 mL".to_owned(),
            },
        )),
        Some(Cup::InOneGo | Cup::Empty) | None => {}
    }
    voice(finding, policy, &mut flags);
    let mut missing =
        |words: &str| flags.push(rules::WATER_UNFINISHED.flag(Level::Incomplete, eating, words));
    // A trial that was rightly stopped is not asked for its end, nor for what comes after it.
    let ended = ended(finding, choked);
    if finding.stopped && !ended {
        missing("the last swallow was not marked");
    }
    match &finding.watch {
        _ if ended => {}
        Watch::NotBegun => missing("the last swallow was not marked"),
        Watch::Running => missing("the watch of 60 seconds is not over"),
        Watch::Cut(why) => missing(&format!(
            "the watch of 60 seconds was ended early: {}",
            watch_cut(why)
        )),
        Watch::Whole => {}
    }
    if let Some(Elapsed {
        length: Some(length),
        ..
    }) = finding.drinking
        && length < LEAST
    {
        missing("first lip contact and last swallow were marked within one second");
    }
    if finding.cup.is_none() && !ended {
        missing("not recorded whether the cup was emptied");
    }
    if finding.after.is_none() && !ended {
        missing("voice after the water not recorded");
    }
    if finding.before.is_none() {
        missing("voice before the water not recorded");
    }
    if let Some(which) = finding.unwatched.filter(|_| !ended) {
        missing(unwatched(which));
    }
    if let Some(why) = &finding.not_given {
        missing(&format!(
            "90 mL of water: given, and said not to be: {}",
            why_not(why)
        ));
    }
    if let Some(doubt) = finding.watch_doubt {
        flags.push(rules::WATER_UNFINISHED.flag(
            Level::Note,
            eating,
            format!("Watch of 60 seconds: {doubt}"),
        ));
    }
    if !ended && flags.iter().all(|f| f.level() == Level::Note) {
        // What decides nothing was seen all the same.
        let voice = flags.iter().any(|f| f.rule() == &rules::WATER_VOICE);
        let words = if finding.pressed.iter().all(|s| s.is_late())
            && !voice
            && finding.taken_back.is_empty()
        {
            "90 mL of water drunk in one go, no sign for 60 seconds after it"
        } else {
            "90 mL of water drunk in one go, watched for 60 seconds after it"
        };
        flags.push(rules::WATER_CLEAR.flag(Level::Pass, eating, words));
    }
    flags
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
fn voice(finding: &Reading, policy: &Policy, flags: &mut Vec<Flag>) {
    let Some(after) = finding.after else {
        return;
    };
    let eating = Domain::EatingDrinking;
    let changed = finding.before != Some(after);
    if changed && (after.is_sign() || after == Voice::Other) {
        let level = if policy.voice_refers {
            Level::Refer
        } else {
            Level::Note
        };
        flags.push(rules::WATER_VOICE.flag(
            level,
            eating,
            match finding.before {
                Some(before) => format!(
                    "voice {} after the water, {} before",
                    words::voice(after),
                    words::voice(before)
                ),
                None => format!(
                    "voice {} after the water, not recorded before",
                    words::voice(after)
                ),
            },
        ));
    } else if let Some(before) = finding.before.filter(|v| v.is_sign()) {
        flags.push(rules::WATER_BASELINE_VOICE.flag(
            Level::Note,
            Domain::SpeechVoice,
            format!("voice {} already before the water", words::voice(before)),
        ));
    }
}

/// Millilitres without a needless decimal.
pub fn millilitres(ml: f64) -> String {
    if ml.fract() == 0.0 {
        decimals(ml, 0)
    } else {
        decimals(ml, 1)
    }
}
