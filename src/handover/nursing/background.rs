//! The background: what holds at the gate, what was gone past, breathing and saturation.

use super::flag::gone_past;
use crate::clinical::decision::fresh;
use crate::clinical::findings::breathing::Method;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::gate;
use crate::clinical::findings::gate::State;
use crate::clinical::findings::in_the_way::{against_key, gate_key};
use crate::clinical::findings::moment::Moment;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::oral::against_gate::against_gate;
use crate::clinical::tasks::{breath_taps, breathing, water};
use crate::handover::issue::Clock;
use crate::handover::parts::{Need, Part};
use crate::measure::time::Millis;
use crate::record::visit::Visit;
use crate::wording;
use crate::wording::found;
use crate::wording::gone_past::told;
use crate::wording::words::small;

/// Items of the gate worth saying when they hold, and the words for it.
const HOLDING: [(&str, &str); 4] = [
    ("awake", "awake"),
    ("upright", "sits upright"),
    ("saliva", "manages saliva"),
    ("cough", "can cough"),
];

pub(in crate::handover) fn background(visit: &Visit, now: &Clock) -> Vec<Part> {
    let exam = &visit.exam;
    let mut parts = Vec::new();
    let against = against_gate(exam);
    let holding: Vec<&str> = HOLDING
        .iter()
        .filter(|(id, _)| exam.gate.0.get(*id).is_some_and(|a| a == gate::HOLDS))
        // What was seen in the mouth later outranks it.
        .filter(|(id, _)| against.iter().all(|a| a.item.id != *id))
        .filter(|(id, _)| *id != "saliva" || !wet_before(exam))
        .map(|(_, words)| *words)
        .collect();
    if !holding.is_empty() {
        let asked = old_at(exam, now, fresh::ready_at(exam), " (asked at ");
        let end = if asked.is_empty() { "" } else { ")" };
        parts.push(Part::new(
            Need::AsExpected,
            format!("{}{asked}{end}", holding.join(", ")),
        ));
    }
    parts.extend(against.iter().filter_map(|a| {
        let on = exam.went_on(&against_key(&a.found), a.go_on)?;
        Some(gone_past(&found::named(&a.found), &on.gone_past()))
    }));
    // The gravest first: what is counted and not listed is the least.
    for wanted in [State::Block, State::Fix, State::Caution] {
        for (item, exception, state) in exam.gate.exceptions(&exam.policy) {
            if state != wanted {
                continue;
            }
            let says = wording::gate::exception(item, exception);
            match exam.went_on(&gate_key(item, exception), gate::go_on(item, state)) {
                Some(on) => {
                    let gone = on.gone_past();
                    parts.push(if item.rule.id == rules::GATE_AIRWAY_TUBE.id {
                        Part::or(Need::Short, small(&told(says, &gone)), small(says))
                    } else {
                        gone_past(says, &gone)
                    });
                }
                // Those that closed the gate stand in the situation already.
                None if state >= State::Block => {}
                None => parts.push(Part::new(Need::Background, small(says))),
            }
        }
    }
    let mut rates = Vec::new();
    let mut saturations: Vec<String> = Vec::new();
    for trial in exam.trials.iter().filter(|t| t.task == TaskId::Breathing) {
        let finding = breathing::read(trial);
        rates.extend(finding.rates.iter().map(|(r, m)| {
            let at = old_at(exam, now, fresh::counted_at(trial), " at ");
            format!("{}{at}", wording::breathing::rate(*r, *m))
        }));
        if let Some(spo2) = finding.saturation() {
            let read = trial.said_at.get(breathing::SATURATION).copied();
            let at = old_at(exam, now, read, " at ");
            let words = wording::breathing::spo2(spo2);
            saturations.push(format!("{words}{at}"));
        }
    }
    if rates.is_empty() && exam.age.is_some_and(|a| !a.is_adult()) {
        rates.extend(
            breath_taps::rate(exam)
                .map(|(rate, _)| wording::breathing::rate(rate, Method::Shorter)),
        );
    }
    if !rates.is_empty() {
        parts.push(Part::new(Need::Kept, rates.join(", then ")));
    }
    if !saturations.is_empty() {
        parts.push(Part::new(Need::Kept, saturations.join(", then ")));
    }
    let asked = visit.screen.is_some_and(|id| id.screen().gate);
    if parts.is_empty() && asked {
        parts.push(Part::new(
            Need::Background,
            "questions before the start not finished",
        ));
    }
    parts
}

/// Whether the voice was heard wet before something was given.
fn wet_before(exam: &Exam) -> bool {
    let wet = |trial: &Trial| trial.choice(water::VOICE_BEFORE) == Some("wet");
    exam.trials.iter().any(wet)
}

/// When something was found, where that is too long ago to stand without its time.
pub(super) fn old_at(exam: &Exam, now: &Clock, at: Option<Moment>, before: &str) -> String {
    let old = |at: &Moment| {
        let given = fresh::told_against(exam)
            .is_some_and(|then| at.is_older(then, exam.policy.moment_stands()));
        given || fresh::long_between(at.at.wall, now.wall, exam)
    };
    match at.filter(old) {
        Some(at) if at.at.wall == Millis::ZERO => format!("{before}a time not known"),
        Some(at) => format!("{before}{}", now.say(at.at.wall)),
        None => String::new(),
    }
}
