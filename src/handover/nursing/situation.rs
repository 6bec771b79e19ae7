//! The situation: what the decision rests on.

use super::flag::{gravest_first, is_seen, situated};
use super::headline::closed_by;
use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::flag::{Domain, Flag};
use crate::clinical::knowledge::screen::ScreenId;
use crate::handover::issue::Clock;
use crate::handover::parts::{Need, Part};
use crate::record::visit::Visit;
use crate::wording::verdict;

pub(super) fn situation(visit: &Visit, decision: &Decision, now: &Clock) -> Vec<Part> {
    let reasons = || gravest_first(decision.reasons.iter());
    let words = |words: &str| Part::new(Need::First, words);
    let situated = |flag: &Flag| situated(flag, Need::First);
    let mut parts: Vec<Part> = match decision.verdict {
        Verdict::Stop | Verdict::Refer => reasons().into_iter().map(situated).collect(),
        Verdict::Incomplete => {
            let missing = gravest_first(decision.missing.iter());
            missing.into_iter().map(situated).collect()
        }
        Verdict::Pass if visit.screen == Some(ScreenId::OwnTrials) => {
            vec![words("own trials given")]
        }
        Verdict::Pass => vec![words("swallow screen done")],
        Verdict::NoDecision if visit.exam.ended.is_some() => {
            vec![words("examination not finished")]
        }
        Verdict::NoDecision => {
            vec![words("examination done")]
        }
        // What it is, then the signs, then what else was seen.
        Verdict::NotDone(EndedEarly::Emergency) => {
            let urgent = |f: &&Flag| f.domain() == Domain::Urgent;
            let (is, seen): (Vec<&Flag>, Vec<&Flag>) = decision.missing.iter().partition(urgent);
            let seen = gravest_first(seen.into_iter().filter(|f| is_seen(f)));
            is.into_iter()
                .chain(reasons())
                .chain(seen)
                .map(situated)
                .collect()
        }
        // The headline says why it was not done; what was seen before is told all the same.
        Verdict::NotDone(_) => {
            let closed = closed_by(decision);
            let told = |flag: &Flag| closed.iter().any(|closed| closed.fact() == flag.fact());
            let seen = |f: &&Flag| is_seen(f) && !told(f);
            let seen = decision.missing.iter().filter(seen);
            closed.iter().copied().chain(seen).map(situated).collect()
        }
    };
    match (visit.exam.ended, decision.verdict) {
        (Some(EndedEarly::Withdrew | EndedEarly::Refused | EndedEarly::BrokenOff), verdict)
            if !matches!(verdict, Verdict::NotDone(_)) =>
        {
            parts.extend(visit.exam.ended.map(|e| words(verdict::ended(e))));
        }
        _ => {}
    }
    parts.extend(taken_up(visit, now).map(|told| words(&told)));
    if parts.is_empty() {
        parts.push(words("swallow screen not done"));
    }
    parts
}

/// When the screen was ended and when it was taken up again.
pub(in crate::handover) fn taken_up<'a>(
    visit: &'a Visit,
    now: &'a Clock,
) -> impl Iterator<Item = String> + 'a {
    visit.breaks.iter().filter_map(|ended| {
        Some(format!(
            "{} at {}, taken up again at {}",
            verdict::ended(ended.why),
            now.say(ended.at),
            now.say(ended.again?)
        ))
    })
}
