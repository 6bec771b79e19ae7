//! What of the speech and breath tasks was not done, and whether it was to be: "not tested" is
//! never "normal".

use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::{self, kept};
use crate::record::visit::Visit;
use crate::wording;
use crate::wording::speech;
use crate::wording::words::small;

/// So many that were not done are named; more are counted.
const NAMED: usize = 4;

/// In a few words each: what is no part of this examination, what stepped aside and why, what was
/// not done.
pub fn told(visit: &Visit, decision: &Decision) -> Vec<String> {
    let exam = &visit.exam;
    let screen = match visit.screen.map(|id| id.screen()) {
        // Where nothing was done the headline says so.
        Some(screen) if !matches!(decision.verdict, Verdict::NotDone(_)) => screen,
        _ => return Vec::new(),
    };
    let mut parts = Vec::new();
    let left_out = names(&screen.left_out(exam));
    if !left_out.is_empty() {
        parts.push(format!("not part of this examination: {left_out}"));
    }
    let mut asked = screen.tasks_of(exam);
    asked.retain(|task| tasks::spec(*task).speech);
    let untried = |task: &&TaskId| kept::numbered(tasks::spec(**task), exam).next().is_none();
    let mut not_done = Vec::new();
    for task in asked.iter().copied().filter(|task| untried(&task)) {
        match tasks::aside(task, exam) {
            Some(why) => {
                let why = small(&speech::aside(why.fact()).unwrap_or_else(|| why.reason()));
                if !parts.contains(&why) {
                    parts.push(why);
                }
            }
            None => not_done.push(task),
        }
    }
    match not_done.len() {
        0 => {}
        n if n == asked.len() => parts.push("speech and breath timing not done".to_owned()),
        n if n > NAMED => parts.push(format!(
            "not done: {n} of {} speech and breath tasks",
            asked.len()
        )),
        _ => parts.push(format!("not done: {}", names(&not_done))),
    }
    parts
}

fn names(tasks: &[TaskId]) -> String {
    let names: Vec<String> = tasks
        .iter()
        .map(|t| small(wording::tasks::of(*t).title))
        .collect();
    names.join(", ")
}
