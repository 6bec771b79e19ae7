//! The full note: a second text of the same visit, for the record of speech-language pathology.
//!
//! What to do stands first, in the words of the nursing text; then everything behind it: each
//! reason with its rule, each task with what was measured and the published value, face, mouth and
//! throat by region, what it points to by cranial nerve, what disagrees, policy and versions.
//! Nothing is shortened.

use super::action::standing;
use super::changed::changed;
use super::issue::{Clock, Written, after_last};
use super::nursing::{
    background, choking, headline, identify, recommendation, taken_up, until_review,
};
use super::parts::Part;
use super::screened::screened;
use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::policy::{Policy, differing};
use crate::clinical::knowledge::signed::Signed;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::compare::Comparison;
use crate::clinical::tasks::oral::points;
use crate::clinical::tasks::spec::NOT_VALID;
use crate::measure::time::Millis;
use crate::record::event::Text;
use crate::record::visit::{Stood, Visit};
use crate::wording;
use crate::wording::figures;
use crate::wording::found;
use crate::wording::oral_answers;
use crate::wording::oral_items;
use crate::wording::verdict;
use crate::wording::words::{capital, small};

/// What the note begins with.
pub const BEGINS: &str = "FULL NOTE, for the record of speech-language pathology.";

/// Writes the note. None where the visit has no screen to decide on.
pub fn write(visit: &Visit, now: &Clock) -> Option<Written> {
    let decision = visit.decision()?;
    Some(after_last(
        visit,
        Text::FullNote,
        now,
        &|now, before, stood| format!("{before}{}", body(visit, &decision, stood, now)),
    ))
}

fn body(visit: &Visit, decision: &Decision, before_text: Option<&Stood>, now: &Clock) -> String {
    let plan = standing(decision, &visit.plan);
    let mut note = vec![BEGINS.to_owned(), headline(visit, decision, &plan)];
    let first = until_review(visit, decision, &plan);
    note.extend(first.iter().map(|part| part.words().to_owned()));
    note.push(String::new());
    note.push(format!("Identify: {}", identify(visit)));
    note.push(screened(visit, now));
    if let Some(id) = visit.screen {
        note.push(format!("Screen: {}.", wording::screen::title(id)));
    }
    let mut before: Vec<String> = background(visit, now)
        .iter()
        .map(|part| item(part.words()))
        .collect();
    // What the nursing text says in its situation.
    let ended = visit
        .exam
        .ended
        .filter(|_| !matches!(decision.verdict, Verdict::NotDone(_)));
    before.extend(ended.map(|why| item(verdict::ended(why))));
    before.extend(taken_up(visit, now).map(|words| item(&words)));
    before.extend(choking(visit, now).iter().map(|words| item(words)));
    before.extend(attached(visit, now).map(|words| item(&words)));
    let (regions, nerves, conflicts) = examined(visit);
    // What points to a nerve stands with its nerve.
    let mut also = decision.also.clone();
    also.retain(|flag| !points::is_pointing(flag));
    let changed = changed(visit, before_text, now);
    for (heading, lines) in [
        (
            "CHANGED",
            changed.iter().map(|part| item(part.words())).collect(),
        ),
        ("WHY", flag_lines(&decision.reasons)),
        ("MISSING OR NOT VALID", flag_lines(&decision.missing)),
        (
            if decision.noted().is_some() {
                "AS EXPECTED"
            } else {
                "NO SIGN"
            },
            flag_lines(&decision.clear),
        ),
        ("BACKGROUND", before),
        ("TASKS", task_lines(visit)),
        ("FACE, MOUTH AND THROAT (sides are the patient's)", regions),
        ("WHAT IT POINTS TO, BY CRANIAL NERVE", nerves),
        ("FINDINGS THAT DISAGREE, NOT RESOLVED", conflicts),
        ("ALSO FOUND", flag_lines(&also)),
        (
            "RECOMMENDATION",
            vec![capital(&told(&recommendation(visit, decision, &plan)))],
        ),
        ("POLICY AND VERSIONS", versions(visit)),
    ] {
        if !lines.is_empty() {
            note.push(format!("\n{heading}"));
            note.extend(lines);
        }
    }
    note.join("\n")
}

/// What was counted elsewhere, whether it still counts or not.
fn attached<'a>(visit: &'a Visit, now: &'a Clock) -> impl Iterator<Item = String> + 'a {
    visit.attached.iter().map(|a| {
        let say = |(at, by): &'a (Millis, Signed)| (now.say(*at), by);
        let counted = a.counted.map(|at| now.say(at));
        wording::attached::told(a.task, counted, say(&a.at), a.detached.as_ref().map(say))
    })
}

/// Parts one after the other, nothing cut.
fn told(parts: &[Part]) -> String {
    parts.iter().map(Part::words).collect()
}

fn item(words: &str) -> String {
    format!("- {}.", capital(words.trim_end_matches('.')))
}

fn flag_lines(flags: &[Flag]) -> Vec<String> {
    flags.iter().map(flag_line).collect()
}

/// A flag with its rule and what that rests on.
fn flag_line(flag: &Flag) -> String {
    let rule = flag.rule();
    format!(
        "{} [{}. {}]",
        item(&flag.reason()),
        rule.id,
        rule.basis_short()
    )
}

/// The tasks of the screen, then whatever else was done.
fn task_lines(visit: &Visit) -> Vec<String> {
    let exam = &visit.exam;
    let screen = visit.screen.map(|id| id.screen());
    let mut own = screen.map_or(Vec::new(), |screen| screen.tasks_of(exam));
    own.extend(screen.map_or(Vec::new(), |screen| screen.left_out(exam)));
    let others = TaskId::ALL
        .iter()
        .filter(|id| !own.contains(id) && exam.trials.iter().any(|t| t.task == **id && is_done(t)));
    let mut lines = Vec::new();
    for id in own.iter().chain(others) {
        let spec = tasks::spec(*id);
        let title = wording::tasks::of(*id).title;
        let done: Vec<&Trial> = exam
            .trials
            .iter()
            .filter(|t| t.task == *id && is_done(t))
            .collect();
        if done.is_empty() {
            lines.push(format!(
                "{}: not done ({}).",
                title,
                why_not(visit, *id).trim_end_matches('.')
            ));
        } else {
            lines.push(format!("{}:", title));
        }
        for (trial, n) in done.iter().zip(1..) {
            let mut words = figures::lines(spec, trial);
            words.extend(figures::answers(spec, trial));
            if spec.id.sign_column().is_some() {
                let presses = wording::by_mouth::time_line(trial);
                words.extend(presses.iter().map(|(at, _, what)| format!("{at} {what}")));
            }
            let number = if done.len() > 1 {
                format!("trial {n}: ")
            } else {
                String::new()
            };
            lines.push(item(&format!("{number}{}", words.join("; "))));
        }
        lines.extend((spec.compare)(spec.id, exam).iter().map(compared));
    }
    lines
}

/// Whether there is anything of a trial: a start, or an answer that is not why it was not given.
fn is_done(trial: &Trial) -> bool {
    trial.start().is_some() || !trial.answers.is_empty() && trial.choice(NOT_VALID).is_none()
}

/// Why a task of the screen was not done.
fn why_not(visit: &Visit, id: TaskId) -> String {
    let newest = visit.exam.latest(id);
    let said = newest
        .filter(|t| t.answers.contains_key(NOT_VALID))
        .map(|t| figures::answers(tasks::spec(id), t).join("; "));
    let left_out = visit
        .screen
        .is_some_and(|screen| screen.screen().left_out(&visit.exam).contains(&id));
    if left_out {
        return "not part of this examination".to_owned();
    }
    said.or_else(|| Some(tasks::aside(id, &visit.exam)?.reason().to_owned()))
        .unwrap_or_else(|| "no reason given".to_owned())
}

/// A value beside the published one, with who was studied and where it is published.
fn compared(comparison: &Comparison) -> String {
    let words = item(&wording::compared::comparison(comparison));
    match &comparison.norm {
        Ok(norm) => format!(
            "{words} [{}. {}: {}]",
            capital(norm.row.population),
            capital(norm.row.mark.words()),
            norm.row.source.key
        ),
        Err(_) => words,
    }
}

/// Face, mouth and throat, where the screen has it: by region, by nerve, and what disagrees.
fn examined(visit: &Visit) -> (Vec<String>, Vec<String>, Vec<String>) {
    let oral = &visit.exam.oral;
    let mut regions = Vec::new();
    if !oral.is_begun() {
        return (regions, Vec::new(), Vec::new());
    }
    if let Some(id) = visit.screen {
        for region in id.screen().oral.regions() {
            let cue = oral.cue(region).map_or(String::new(), |cue| {
                format!(" (asked for: {})", small(oral_answers::cue(cue)))
            });
            // Whose the sides are is said once, above them all.
            let words = wording::oral::line(oral, &[region]);
            regions.push(format!(
                "- {}{cue}: {words}",
                oral_items::region_title(region)
            ));
        }
    }
    let mut nerves = Vec::new();
    let mut conflicts = Vec::new();
    for group in points::groups(oral) {
        nerves.push(oral_items::nerve_heading(group.nerve).to_owned());
        nerves.extend(group.lines.iter().map(|l| item(&found::point(l))));
        for flag in &group.flags {
            let list = if points::is_conflict(flag) {
                &mut conflicts
            } else {
                &mut nerves
            };
            list.push(flag_line(flag));
        }
    }
    if !nerves.is_empty() {
        nerves.insert(0, found::MEANT.to_owned());
    }
    (regions, nerves, conflicts)
}

fn versions(visit: &Visit) -> Vec<String> {
    let policy = &visit.exam.policy;
    let mut lines = vec![format!("Policy: {}.", policy.name)];
    lines.extend(
        differing(policy, &Policy::default())
            .map(|s| format!("- {}: {}.", s.title(), s.words((s.get)(policy)))),
    );
    if let Some(decided) = &visit.decided {
        lines.push(format!(
            "Penlight {}, rules and published values {}.",
            decided.versions.app, decided.versions.rules
        ));
    }
    lines.push(
        "This is a screen, not a diagnosis; silent aspiration is not seen. Diet levels are set \
         by the clinician, never derived."
            .to_owned(),
    );
    lines
}
