//! The situation: what the decision rests on.

use super::flag::{is_seen, situated};
use super::headline::closed_by;
use crate::clinical::decision::{Decision, Verdict};
use crate::clinical::exam::EndedEarly;
use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::screen::ScreenId;
use crate::handover::room::{Part, kept, some_of};
use crate::record::visit::Visit;

pub(super) fn situation(visit: &Visit, decision: &Decision, most: usize) -> String {
    let reasons = || decision.reasons.iter().map(situated);
    let words = |words: &str| kept(words);
    let mut parts: Vec<Part> = match decision.verdict {
        Verdict::Stop | Verdict::Refer => reasons().collect(),
        Verdict::Incomplete => decision.missing.iter().map(situated).collect(),
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
        Verdict::NotDone(EndedEarly::Emergency) => decision
            .missing
            .iter()
            .chain(&decision.reasons)
            .filter(|f| f.domain() == Domain::Urgent || f.level() >= Level::Refer || is_seen(f))
            .map(situated)
            .collect(),
        // The headline says why it was not done; what was seen before is told all the same.
        Verdict::NotDone(_) => {
            let closed = closed_by(decision);
            let told: Vec<&str> = closed.iter().map(|f| f.reason()).collect();
            let seen = |f: &&Flag| is_seen(f) && !told.contains(&f.reason());
            let seen = decision.missing.iter().filter(seen);
            closed.iter().copied().chain(seen).map(situated).collect()
        }
    };
    match (visit.exam.ended, decision.verdict) {
        (Some(EndedEarly::Withdrew | EndedEarly::Refused | EndedEarly::BrokenOff), verdict)
            if !matches!(verdict, Verdict::NotDone(_)) =>
        {
            parts.extend(visit.exam.ended.map(|e| kept(e.words())));
        }
        _ => {}
    }
    if parts.is_empty() {
        parts.push(words("swallow screen not done"));
    }
    some_of(parts, 0, most)
}
