//! The first line: the decision, whom it goes to and by when.

use super::addressed;
use super::flag::{names_sign, worded};
use crate::clinical::decision::{Decision, Verdict};
use crate::clinical::exam::EndedEarly;
use crate::clinical::flag::Flag;
use crate::clinical::rules;
use crate::clinical::screen::ScreenId;
use crate::clinical::tasks::breathing;
use crate::handover::action::is_deterioration;
use crate::record::event::Plan;
use crate::record::visit::Visit;

pub(in crate::handover) fn headline(visit: &Visit, decision: &Decision, plan: &Plan) -> String {
    let (whom, by_when) = addressed(decision, plan);
    match decision.verdict {
        Verdict::Stop => format!("STOP: no more trials by mouth. Call {whom} {by_when}."),
        Verdict::Refer => format!("REFER to {whom} {by_when}."),
        Verdict::Incomplete => format!("INCOMPLETE: not cleared. To {whom} {by_when}."),
        Verdict::Pass => {
            let (of, only) = match visit.screen {
                Some(ScreenId::OwnTrials) => {
                    (" in what was given, listed below", ", and of nothing else")
                }
                _ => (" on this screen", ""),
            };
            // A sign that decides nothing is none to be read over.
            let noted = decision
                .also
                .iter()
                .any(|f| f.domain().decides() && f.rule() != &rules::HOLD_PASSED && names_sign(f));
            let noted = match (noted, only.is_empty()) {
                (false, _) => "",
                (true, true) => ", but what is noted below",
                (true, false) => ", but what is noted there",
            };
            format!(
                "NO SIGN SEEN{of}{noted}{only}. This screen changes no eating or drinking order."
            )
        }
        Verdict::NoDecision if visit.exam.ended.is_some() => {
            "EXAMINATION NOT FINISHED: face, mouth or speech. No food or drink was tested. \
             This changes no eating or drinking order."
                .to_owned()
        }
        Verdict::NoDecision => "EXAMINED: face, mouth or speech. No food or drink was tested. \
                                This changes no eating or drinking order."
            .to_owned(),
        Verdict::NotDone(EndedEarly::Emergency) => {
            "EMERGENCY: swallow screen NOT DONE. Use your local emergency procedure.".to_owned()
        }
        Verdict::NotDone(why) => {
            let why = closed_by(decision)
                .first()
                .map_or_else(|| why.told(&visit.exam.policy), |f| worded(f));
            format!("SWALLOW SCREEN NOT DONE: {why}. To {whom} {by_when}.")
        }
    }
}

/// What closed the gate.
pub(super) fn closed_by(decision: &Decision) -> Vec<&Flag> {
    if decision.verdict != Verdict::NotDone(EndedEarly::GateClosed) {
        return Vec::new();
    }
    let closed = |f: &&Flag| {
        let id = f.rule().id;
        breathing::closes(f) || id.starts_with("gate.") && id != rules::GATE_NOT_ASKED.id
    };
    // Failing breathing or alertness gives the headline, whatever else closed it.
    let (grave, others): (Vec<&Flag>, Vec<&Flag>) = decision
        .missing
        .iter()
        .filter(closed)
        .partition(|f| is_deterioration(f));
    grave.into_iter().chain(others).collect()
}
