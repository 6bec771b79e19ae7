//! What to do until somebody reviews.

use super::addressed::sentence;
use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::flag::Flag;
use crate::clinical::knowledge::sign::{Sign, SignTask, meaning};
use crate::handover::action::{DETERIORATION, deteriorating, is_ordered, says_why};
use crate::handover::levels;
use crate::handover::parts::{Need, Part};
use crate::record::event::{Action, Plan};
use crate::record::visit::Visit;
use crate::wording::words::{capital, small};

const OTHER_ROUTE: &str = "Time-critical medicines: ask the prescriber now for another route.";

/// Where somebody fasts for something else than this screen.
const OTHER_ORDER: &str = "Nothing by mouth for another reason: that order stands.";

/// Of a plan that needs its reason: it can't leave so, and is read on the page before it does.
const NO_REASON_YET: &str = "reason not given yet";

/// What to do until somebody reviews.
pub(in crate::handover) fn until_review(
    visit: &Visit,
    decision: &Decision,
    plan: &Plan,
) -> Vec<Part> {
    let mut lines = Vec::new();
    let mut line = |words: String| lines.push(Part::new(Need::Always, words));
    let nothing = "NOTHING BY MOUTH, tablets included, until assessed.";
    let planned_risk = visit.exam.has_risk_plan();
    let ask = "A plan to eat and drink with acknowledged risks exists: ask now whether it stands.";
    let emergency = decision.verdict == Verdict::NotDone(EndedEarly::Emergency);
    let fasts = visit.exam.fasts();
    let nothing_by_mouth = emergency || fasts || plan.action == Some(Action::NothingByMouth);
    if emergency {
        if !visit.last_well.trim().is_empty() {
            line(format!("Last well: {}.", sentence(&visit.last_well)));
        }
        line(nothing.to_owned());
        if planned_risk {
            line(ask.to_owned());
        }
    }
    if emergency {
        line(OTHER_ROUTE.to_owned());
    }
    // "Until assessed" does not end it, nor does a clear screen.
    if fasts {
        line(OTHER_ORDER.to_owned());
    }
    if deteriorating(decision) {
        line(DETERIORATION.to_owned());
    }
    if decision.reasons.iter().any(no_swallow) {
        line("No swallow was seen or felt: clear the mouth.".to_owned());
    }
    let chokes = visit.choking().is_some_and(|c| c.over.is_none());
    if chokes && !nothing_by_mouth {
        line("Choking is not over: nothing by mouth before back to baseline.".to_owned());
    }
    if decision.verdict.needs_action() {
        match plan.action {
            Some(Action::NothingByMouth) => {
                line(nothing.to_owned());
                if planned_risk {
                    line(ask.to_owned());
                }
            }
            Some(Action::KeepPlan) => {
                let why = match because(plan) {
                    Some(because) => format!(", because {because}."),
                    None => format!(": {NO_REASON_YET}."),
                };
                lines.push(Part::or(
                    Need::Short,
                    format!("Keep the current plan for eating and drinking{why}"),
                    format!("Keep the current plan{why}"),
                ));
            }
            Some(Action::AcknowledgedRisk) => line(if planned_risk {
                "The plan to eat and drink with acknowledged risks goes on.".to_owned()
            } else {
                let why = because(plan).map_or_else(
                    || format!(" ({NO_REASON_YET})"),
                    |because| format!(", because {because}"),
                );
                format!("Acknowledged-risk plan{why}: follow it where it is recorded.")
            }),
            None if is_ordered(decision, &visit.exam) => {}
            // It can't leave so.
            None => line("UNTIL REVIEWED: not chosen yet.".to_owned()),
        }
        lines.push(match plan.action {
            Some(Action::NothingByMouth) => Part::new(Need::Always, OTHER_ROUTE),
            _ => Part::or(
                Need::Short,
                "Time-critical medicines: ask the prescriber now whether and how to give them.",
                "Time-critical medicines: ask the prescriber now.",
            ),
        });
    }
    // No level to drink or eat beside "nothing by mouth".
    if !nothing_by_mouth {
        lines.extend(diet(plan).map(|words| Part::new(Need::Always, words)));
    }
    lines
}

/// Why, within a sentence.
fn because(plan: &Plan) -> Option<String> {
    says_why(plan).then(|| small(&sentence(&plan.because)))
}

/// Whether a flag says that something was given and no swallow came.
fn no_swallow(flag: &Flag) -> bool {
    SignTask::ALL
        .iter()
        .any(|task| meaning(Sign::NoSwallow, *task).1.id == flag.rule().id)
}

/// The levels the clinician picked, if any.
fn diet(plan: &Plan) -> Option<String> {
    let drink = plan
        .drink
        .and_then(levels::drink)
        .map(|d| format!("drinks level {d}"));
    let food = plan
        .food
        .and_then(levels::food)
        .map(|f| format!("food level {f}"));
    let both: Vec<String> = drink.into_iter().chain(food).collect();
    (!both.is_empty()).then(|| {
        format!(
            "{}: set by the clinician, not by this screen.",
            capital(&both.join(", "))
        )
    })
}
