//! The text for nursing: the decision and what to do first, then the order of ISBAR
//! (identify, situation, background, assessment, recommendation).

use super::action::suggested;
use super::levels;
use crate::clinical::decision::{Decision, Verdict};
use crate::clinical::exam::EndedEarly;
use crate::clinical::flag::{Domain, Flag};
use crate::clinical::gate::{State, hold_id};
use crate::clinical::hold::{GoOn, PASSED};
use crate::clinical::task::TaskId;
use crate::clinical::tasks::{breathing, dry_swallow, water};
use crate::clinical::words::small;
use crate::record::event::{Action, Plan};
use crate::record::visit::Visit;

/// Most characters the text of a Swallow screen may have: one phone screen.
pub const MOST: usize = 1_200;

/// When the text is written, in the phone's own local words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clock {
    /// "25 Nov 2026".
    pub date: String,
    /// "14:10".
    pub time: String,
}

/// Writes the text. None where the visit has no screen to decide on.
///
/// Where an earlier text left with other words, the new one says which it replaces.
pub fn write(visit: &Visit, now: &Clock) -> Option<String> {
    let decision = visit.decision()?;
    let body = body(visit, &decision, now);
    Some(match replaced(visit, now, &body) {
        Some(earlier) => format!("CORRECTED {}, replaces {earlier}.\n{body}", now.time),
        None => body,
    })
}

/// The clock time of the newest text that left, where this one says something else.
fn replaced(visit: &Visit, now: &Clock, body: &str) -> Option<String> {
    let last = visit.issued.last()?;
    // The time of writing may differ; the content may not.
    let same = |text: &str, clock: &str| {
        let text = match text.strip_prefix("CORRECTED ") {
            Some(rest) => rest.split_once('\n').map_or(rest, |(_, body)| body),
            None => text,
        };
        text.replace(clock, "")
    };
    (same(&last.text, &last.clock) != same(body, &now.time)).then(|| last.clock.clone())
}

fn body(visit: &Visit, decision: &Decision, now: &Clock) -> String {
    let mut lines = vec![headline(visit, decision)];
    lines.extend(until_review(decision, &visit.plan));
    lines.push(String::new());
    lines.push(format!("Identify: {}", identify(visit, now)));
    lines.push(format!("Situation: {}", situation(decision)));
    lines.push(format!("Background: {}", background(visit)));
    let assessment = assessment(visit, decision);
    if !assessment.is_empty() {
        lines.push(format!("Assessment: {assessment}"));
    }
    lines.push(format!(
        "Recommendation: {}",
        recommendation(decision, &visit.plan)
    ));
    lines.push(format!(
        "A screen, no diagnosis; silent aspiration is not seen. Policy: {}.",
        visit.exam.policy.name
    ));
    lines.join("\n")
}

fn headline(visit: &Visit, decision: &Decision) -> String {
    let (whom, by_when) = addressed(decision, &visit.plan);
    match decision.verdict {
        Verdict::Stop => format!("STOP. Call {whom} {by_when}."),
        Verdict::Refer => format!("REFER to {whom} {by_when}."),
        Verdict::Incomplete => format!("INCOMPLETE: not cleared. To {whom} {by_when}."),
        Verdict::Pass => "NO SIGN SEEN on this screen. \
                          This screen changes no eating or drinking order."
            .to_owned(),
        Verdict::NotDone(EndedEarly::Emergency) => {
            "EMERGENCY: swallow screen NOT DONE. Use your local emergency procedure.".to_owned()
        }
        Verdict::NotDone(why) => {
            format!("SCREEN NOT DONE: {}. To {whom} {by_when}.", why.words())
        }
    }
}

fn addressed(decision: &Decision, plan: &Plan) -> (&'static str, &'static str) {
    let (whom, by_when) = suggested(decision.verdict);
    (
        plan.whom.unwrap_or(whom).words(),
        plan.by_when.unwrap_or(by_when).words(),
    )
}

/// What to do until somebody reviews.
fn until_review(decision: &Decision, plan: &Plan) -> Vec<String> {
    let mut lines = Vec::new();
    if decision.verdict.needs_action() {
        match plan.action {
            Some(Action::NothingByMouth) => {
                lines.push("NOTHING BY MOUTH, tablets included, until assessed.".to_owned());
            }
            Some(Action::KeepPlan) => {
                lines.push(format!(
                    "Keep the current plan, because {}.",
                    sentence(&plan.because)
                ));
            }
            Some(Action::AcknowledgedRisk) => {
                lines.push("The plan to eat and drink with acknowledged risks goes on.".to_owned())
            }
            None => {}
        }
        lines.push("Time-critical medicines: ask the prescriber now for another route.".to_owned());
    }
    if let Some(levels) = diet(plan) {
        lines.push(levels);
    }
    lines
}

/// The levels the clinician picked, if any.
fn diet(plan: &Plan) -> Option<String> {
    let drink = plan.drink.and_then(levels::drink);
    let food = plan.food.and_then(levels::food);
    match (drink, food) {
        (None, None) => None,
        (Some(d), None) => Some(format!("Drinks: level {d} (set by the clinician).")),
        (None, Some(f)) => Some(format!("Food: level {f} (set by the clinician).")),
        (Some(d), Some(f)) => Some(format!(
            "Drinks: level {d}. Food: level {f} (set by the clinician)."
        )),
    }
}

fn identify(visit: &Visit, now: &Clock) -> String {
    let mut parts = vec![visit.label()];
    if let Some(details) = &visit.details {
        parts.extend(details.age.map(|a| a.to_string()));
        parts.extend(details.sex.map(|s| s.words().to_owned()));
        parts.extend(details.setting.map(|s| s.words().to_owned()));
    }
    format!(
        "{}. By a {}, {}, {}.",
        parts.join(", "),
        visit.role.words(),
        now.date,
        now.time
    )
}

fn situation(decision: &Decision) -> String {
    let reasons = join(&decision.reasons);
    match decision.verdict {
        Verdict::Stop | Verdict::Refer => format!("swallow screen: {reasons}."),
        Verdict::Incomplete => format!("swallow screen: {}.", join(&decision.missing)),
        Verdict::Pass => "swallow screen done.".to_owned(),
        Verdict::NotDone(_) => {
            let closed: Vec<_> = decision
                .missing
                .iter()
                .filter(|f| f.rule().id.starts_with("gate.") && f.rule().id != "gate.not-asked")
                .chain(
                    decision
                        .missing
                        .iter()
                        .filter(|f| ["breathing.rate", "breathing.spo2"].contains(&f.rule().id)),
                )
                .cloned()
                .collect();
            if closed.is_empty() {
                "swallow screen not done.".to_owned()
            } else {
                format!("swallow screen not done: {}.", join(&closed))
            }
        }
    }
}

/// Reasons in one line: "a; b".
fn join(flags: &[Flag]) -> String {
    flags
        .iter()
        .map(|f| small(f.reason()))
        .collect::<Vec<_>>()
        .join("; ")
}

fn background(visit: &Visit) -> String {
    let mut parts = Vec::new();
    let settled = visit.exam.gate.open().next().is_none();
    let exceptions: Vec<_> = visit.exam.gate.exceptions(&visit.exam.policy).collect();
    if settled && exceptions.is_empty() {
        parts.push("awake, upright, managing saliva, coughs; no order against it".to_owned());
    }
    for (item, exception, state) in exceptions {
        let words = small(exception.words);
        match visit
            .exam
            .went_on(&hold_id(item, exception), GoOn::SlpWithReason)
        {
            Some(on) => parts.push(format!(
                "{words}, went on all the same ({}): {}",
                on.by.words(),
                on.because
            )),
            // Those that closed the gate stand in the situation already.
            None if state >= State::Block => {}
            None => parts.push(words),
        }
    }
    if let Some(finding) = visit.exam.latest(TaskId::Breathing).map(breathing::read) {
        for (rate, method) in &finding.rates {
            parts.push(breathing::rate_words(*rate, *method));
        }
        if let Some(percent) = finding.spo2 {
            parts.push(breathing::spo2_words(percent, finding.oxygen));
        }
    }
    if !visit.last_well.trim().is_empty() {
        parts.push(format!("last well: {}", sentence(&visit.last_well)));
    }
    if parts.is_empty() {
        parts.push("not all asked".to_owned());
    }
    format!("{}.", parts.join("; "))
}

fn assessment(visit: &Visit, decision: &Decision) -> String {
    let mut parts = Vec::new();
    let said = |words: &str| decision.reasons.iter().any(|f| f.reason() == words);
    for flag in &decision.clear {
        if flag.rule().id == dry_swallow::FEW.id {
            parts.push(small(flag.reason()));
        }
    }
    if let Some(trial) = visit.exam.latest(TaskId::Water90) {
        let finding = water::read(trial);
        if finding.given {
            parts.push(water_words(&finding));
        }
    }
    if decision.verdict != Verdict::Incomplete && !matches!(decision.verdict, Verdict::NotDone(_)) {
        parts.extend(decision.missing.iter().map(|f| small(f.reason())));
    }
    for flag in &decision.also {
        let told = flag.rule().id.starts_with("gate.") || said(flag.reason());
        // The readings stand in the background; going on past one decides and is told here.
        let reading = flag.domain() == Domain::Breathing;
        if !told && !reading {
            let words = small(flag.reason());
            if flag.rule().id == PASSED.id {
                parts.insert(0, words);
            } else {
                parts.push(words);
            }
        }
    }
    if parts.is_empty() {
        String::new()
    } else {
        format!("{}.", parts.join("; "))
    }
}

/// The water test in words a ward uses.
fn water_words(finding: &water::Finding) -> String {
    let mut words = match finding.cup {
        Some(water::Cup::InOneGo) => "90 mL of water drunk in one go".to_owned(),
        Some(water::Cup::Paused) => "90 mL of water drunk with a pause".to_owned(),
        Some(water::Cup::Left(_)) => "90 mL of water offered, not finished".to_owned(),
        None => "90 mL of water offered".to_owned(),
    };
    if let Some(length) = finding.drinking.and_then(|e| e.length)
        && length.0 > 0
    {
        words.push_str(&format!(" in {} seconds", length.0 / 1000));
    }
    match finding.watch {
        water::Watch::Whole if finding.signs.is_empty() => {
            words.push_str(", no sign for 60 seconds after it");
        }
        water::Watch::Whole => words.push_str(", watched for 60 seconds"),
        _ => {}
    }
    if let (Some(before), Some(after)) = (finding.before, finding.after) {
        if before == after {
            words.push_str(&format!(", voice {} before and after", before.words()));
        } else {
            words.push_str(&format!(
                ", voice {} before, {} after",
                before.words(),
                after.words()
            ));
        }
    }
    words
}

fn recommendation(decision: &Decision, plan: &Plan) -> String {
    let mut parts = Vec::new();
    match decision.verdict {
        Verdict::Pass => parts.push(
            "keep to the orders in force. Give food and drink only awake and upright".to_owned(),
        ),
        _ if plan.action == Some(Action::NothingByMouth) => {
            parts.push("mouth care; upright".to_owned());
        }
        _ => parts.push("only awake and upright; mouth care".to_owned()),
    }
    parts.push(
        "Watch for coughing or choking, a wet voice, watering eyes, colour change, fever"
            .to_owned(),
    );
    let (whom, _) = addressed(decision, plan);
    parts.push(format!("Then stop and call {whom}"));
    parts.push("Screen again after any change".to_owned());
    let mut text = parts.join(". ");
    text.push('.');
    if !plan.remark.trim().is_empty() {
        text.push_str(&format!(" {}.", sentence(&plan.remark)));
    }
    text
}

/// Free words as the end of a sentence: trimmed, in one line, without a full stop of their own.
fn sentence(words: &str) -> String {
    let line = words.split_whitespace().collect::<Vec<_>>().join(" ");
    line.trim_end_matches('.').to_owned()
}
