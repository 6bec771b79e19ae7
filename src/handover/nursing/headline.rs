//! The first line: the decision, whom it goes to and by when.

use super::addressed::{addressed, goes_to};
use super::flag::worded;
use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::flag::Flag;
use crate::clinical::knowledge::person::Role;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::screen::ScreenId;
use crate::clinical::tasks::breathing;
use crate::handover::action::is_deterioration;
use crate::record::event::{Plan, Whom};
use crate::record::visit::Visit;
use crate::wording::verdict::{ended_under, noted};

pub(in crate::handover) fn headline(visit: &Visit, decision: &Decision, plan: &Plan) -> String {
    let (whom, by_when) = addressed(decision, plan);
    match decision.verdict {
        Verdict::Stop => format!("STOP: no more trials by mouth. Call {whom} {by_when}."),
        // Whoever it is referred to wrote it.
        Verdict::Refer if visit.role == Role::Slp && goes_to(decision, plan).0 == Whom::Slp => {
            format!("REFER: {whom} sees to it {by_when}.")
        }
        Verdict::Refer => format!("REFER to {whom} {by_when}."),
        Verdict::Incomplete => format!("INCOMPLETE: not cleared. To {whom} {by_when}."),
        Verdict::Pass => {
            let own = visit.screen == Some(ScreenId::OwnTrials);
            let of = match decision.noted() {
                _ if own => " in what was given, listed below, and of nothing else",
                None => " on this screen",
                Some(_) => "",
            };
            // Never "no sign seen" where one was.
            let said = match decision.noted() {
                None => format!("NO SIGN SEEN{of}"),
                Some(signs) if signs.late => {
                    format!(
                        "NO SIGN within the 60 seconds{of}; LATER: {}",
                        noted(&signs)
                    )
                }
                Some(signs) => format!("NO SIGN THAT REFERS{of}; NOTED: {}", noted(&signs)),
            };
            format!("{said}. This screen changes no eating or drinking order.")
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
                .map_or_else(|| ended_under(why, &visit.exam.policy), |f| worded(f));
            format!("SWALLOW SCREEN NOT DONE: {why}. To {whom} {by_when}.")
        }
    }
}

/// What closed the gate.
pub(super) fn closed_by(decision: &Decision) -> Vec<&Flag> {
    if decision.verdict != Verdict::NotDone(EndedEarly::GateClosed) {
        return Vec::new();
    }
    let asked = |f: &Flag| f.fact().is_of_gate() && f.rule() != &rules::GATE_NOT_ASKED;
    let closed = |f: &&Flag| breathing::closes(f) || asked(f);
    // Failing breathing or alertness gives the headline, whatever else closed it.
    let (grave, others): (Vec<&Flag>, Vec<&Flag>) = decision
        .missing
        .iter()
        .filter(closed)
        .partition(|f| is_deterioration(f));
    grave.into_iter().chain(others).collect()
}
