//! The text for nursing: the decision and what to do first, then the order of ISBAR
//! (identify, situation, background, assessment, recommendation).

use super::action::standing;
use super::changed::changed;
use super::issue::after_last;
pub use super::issue::{Clock, Written};
use super::parts::{Joined, Line, List, Part, fitted};
use super::screened::screened;
use crate::clinical::decision::verdict::Decision;
use crate::record::event::Text;
use crate::record::visit::{Stood, Visit};

mod addressed;
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
pub(super) use situation::taken_up;
pub(super) use until_review::until_review;

/// Most characters the text of a Swallow screen may have: one phone screen.
pub const MOST: usize = 1_200;

/// Writes the text. None where the visit has no screen to decide on.
pub fn write(visit: &Visit, now: &Clock) -> Option<Written> {
    let decision = visit.decision()?;
    Some(after_last(
        visit,
        Text::Nursing,
        now,
        &|now, before, stood| {
            // The line about what it replaces is never cut.
            let most = MOST.saturating_sub(before.chars().count());
            format!(
                "{before}{}",
                fitted(&lines(visit, &decision, stood, now), most)
            )
        },
    ))
}

/// The lines in their order. Those at the top are never cut.
fn lines(visit: &Visit, decision: &Decision, before: Option<&Stood>, now: &Clock) -> Vec<Line> {
    let plan = standing(decision, &visit.plan);
    let list = |heading, parts: Vec<Part>| Line::of(List::new(heading, Joined::List, parts));
    let run = |heading, parts: Vec<Part>| Line::of(List::new(heading, Joined::Run, parts));
    let mut lines = vec![Line::always(headline(visit, decision, &plan))];
    let first = until_review(visit, decision, &plan).into_iter();
    lines.extend(first.map(|part| run("", vec![part])));
    lines.push(Line::always(""));
    lines.push(Line::always(format!("Identify: {}", identify(visit))));
    lines.push(Line::always(screened(visit, now)));
    let changed = changed(visit, before, now);
    lines.extend((!changed.is_empty()).then(|| list("Changed: ", changed)));
    lines.push(list("Situation: ", situation(visit, decision, now)));
    lines.push(list("Background: ", background(visit, now)));
    lines.push(list("Assessment: ", assessment(visit, decision, now)));
    lines.extend(examined(visit));
    lines.push(run(
        "Recommendation: ",
        recommendation(visit, decision, &plan),
    ));
    lines.push(Line::always(
        "A screen, not a diagnosis; silent aspiration is not seen.",
    ));
    lines
}

pub(super) fn identify(visit: &Visit) -> String {
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
    format!("{}. Patient: ____ (check the name band).", parts.join(", "))
}
