//! The text for nursing: the decision and what to do first, then the order of ISBAR
//! (identify, situation, background, assessment, recommendation).

use super::action::{standing, suggested};
pub use super::issue::Clock;
use super::issue::after_last;
use super::room::{Room, ended, some_of};
use crate::clinical::decision::verdict::Decision;
use crate::record::event::{Plan, Text};
use crate::record::visit::Visit;

mod assessment;
mod background;
mod choking;
mod cup;
mod flag;
mod headline;
mod recommendation;
mod situation;
mod until_review;

use assessment::{assessment, examined};
pub(super) use background::background;
pub(super) use choking::choking;
pub(super) use headline::headline;
pub(super) use recommendation::recommendation;
use situation::situation;
pub(super) use situation::{taken_up, tested};
pub(super) use until_review::until_review;

/// Most characters the text of a Swallow screen may have: one phone screen.
pub const MOST: usize = 1_200;

/// Writes the text. None where the visit has no screen to decide on.
pub fn write(visit: &Visit, now: &Clock) -> Option<String> {
    let decision = visit.decision()?;
    Some(after_last(visit, Text::Nursing, now, &|now, before| {
        fitted(visit, &decision, now, before)
    }))
}

/// The longest text that fits one phone screen. The lines at the top are never cut.
fn fitted(visit: &Visit, decision: &Decision, now: &Clock, before: &str) -> String {
    let mut room = Room::FULL;
    loop {
        let text = format!("{before}{}", body(visit, decision, now, room));
        if text.chars().count() < MOST {
            return text;
        }
        let Some(less) = room.less() else {
            return text;
        };
        room = less;
    }
}

fn body(visit: &Visit, decision: &Decision, now: &Clock, room: Room) -> String {
    let plan = standing(decision, &visit.plan);
    let mut lines = vec![headline(visit, decision, &plan)];
    lines.extend(until_review(visit, decision, &plan, room));
    lines.push(String::new());
    lines.push(format!("Identify: {}", identify(visit, now)));
    let situation = situation(visit, decision, now, room);
    lines.push(format!("Situation: {}", ended(&situation)));
    let background = background(visit, now, room.holding);
    if !background.is_empty() {
        let told = some_of(background, room.background, room, 0);
        lines.push(format!("Background: {}", ended(&told)));
    }
    let assessment = assessment(visit, decision, now);
    if !assessment.is_empty() {
        let told = some_of(assessment, room.assessment, room, 0);
        lines.push(format!("Assessment: {}", ended(&told)));
    }
    lines.extend(examined(visit, room.examined));
    lines.push(format!(
        "Recommendation: {}",
        recommendation(visit, decision, &plan, room)
    ));
    lines.push(format!(
        "This is a screen, not a diagnosis; silent aspiration is not seen. Policy: {}.",
        visit.exam.policy.name
    ));
    lines.join("\n")
}

fn addressed(decision: &Decision, plan: &Plan) -> (&'static str, &'static str) {
    let (whom, by_when) = suggested(decision);
    (
        plan.whom.unwrap_or(whom).words(),
        plan.by_when.unwrap_or(by_when).words(),
    )
}

pub(super) fn identify(visit: &Visit, now: &Clock) -> String {
    let details = visit.details.as_ref();
    let age = details.and_then(|d| d.age);
    let mut parts = vec![
        visit.label(),
        age.map_or_else(|| "age not given".to_owned(), |a| a.to_string()),
    ];
    if let Some(details) = details {
        parts.extend(details.sex.map(|s| s.words().to_owned()));
        parts.extend(details.setting.map(|s| s.words().to_owned()));
    }
    format!(
        "{}. Patient: ____ (check the name band). By a {}, {}, {}.",
        parts.join(", "),
        visit.role.words(),
        now.date,
        now.time
    )
}

/// Free words as the end of a sentence: trimmed, in one line, without a full stop of their own.
fn sentence(words: &str) -> String {
    let line = words.split_whitespace().collect::<Vec<_>>().join(" ");
    line.trim_end_matches('.').to_owned()
}
