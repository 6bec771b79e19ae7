//! The recommendation: how to care for the person, what to watch for, when to screen again.

use super::addressed::{addressed, sentence};
use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::gate::HOLDS;
use crate::handover::parts::{Need, Part};
use crate::record::event::{Action, Plan};
use crate::record::visit::Visit;
use crate::wording::verdict::ORDER_STANDS;

pub(in crate::handover) fn recommendation(
    visit: &Visit,
    decision: &Decision,
    plan: &Plan,
) -> Vec<Part> {
    let always = |words: String| Part::new(Need::Always, words);
    if decision.verdict == Verdict::NotDone(EndedEarly::Emergency) {
        let words = "the local emergency procedure. Screen when it is over.";
        return vec![always(words.to_owned())];
    }
    let (whom, _) = addressed(decision, plan);
    // A limit of neck or spine goes before sitting up.
    let answer = |id: &str| visit.exam.gate.0.get(id).map(String::as_str);
    let limit = answer("spine") == Some("limit");
    let raised = matches!(answer("upright"), None | Some(HOLDS));
    let position = match (limit, raised) {
        (true, _) => "as upright as the neck or spine limit allows",
        (false, true) => "upright",
        (false, false) => "as upright as tolerated",
    };
    let keep = "keep to the orders in force";
    let fasts = visit.exam.fasts();
    let care = match fasts {
        true => format!("mouth care; {position}"),
        false => format!("food and drink only awake and {position}; mouth care"),
    };
    let first = match (decision.verdict, plan.action) {
        (Verdict::Pass, _) => {
            let tell = match decision.noted() {
                Some(_) => "let speech-language pathology know of the sign; ",
                None => "",
            };
            always(format!("{tell}{keep}; {ORDER_STANDS}; {care}"))
        }
        (Verdict::NoDecision, _) => always(format!("{keep}; {care}")),
        // Not chosen yet: nothing milder than it may be.
        (_, None | Some(Action::NothingByMouth)) => always(format!("mouth care; {position}")),
        _ if fasts => always(care),
        _ => Part::or(
            Need::Short,
            format!("by mouth only what that plan allows, awake and {position}; mouth care"),
            format!("only awake and {position}; mouth care"),
        ),
    };
    // How long is local: said only where the policy says it, and where something may be taken.
    let upright = visit.exam.policy.upright_minutes;
    let may_eat = match plan.action {
        None => !decision.verdict.needs_action(),
        action => action != Some(Action::NothingByMouth),
    };
    let upright = if upright > 0 && may_eat && !fasts {
        format!(
            " {} for {upright} minutes after eating or drinking.",
            if limit || !raised {
                "Stay so"
            } else {
                "Upright"
            }
        )
    } else {
        String::new()
    };
    // Signs to watch for: adult dysphagia policy (NHS-AA). When to screen again: RNAO.
    let stop = match plan.action {
        Some(Action::NothingByMouth) => "",
        _ => "stop, ",
    };
    let watch = Part::or(
        Need::Short,
        format!(
            ".{upright} Watch for choking, colour change: local emergency procedure; \
             cough, wet voice, watering eyes, fever: {stop}call {whom} now."
        ),
        format!(
            ".{upright} Choking: local emergency procedure; cough, wet voice, fever: {stop}call \
             {whom} now."
        ),
    );
    let again = " Screen again after any new weakness, drowsiness, chest or swallowing change.";
    let mut parts = vec![first, watch, Part::new(Need::ScreenAgain, again)];
    if !plan.remark.trim().is_empty() {
        parts.push(always(format!(" {}.", sentence(&plan.remark))));
    }
    parts
}
