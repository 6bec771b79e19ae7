//! What was changed, in words: an answer with what it was and what it is; and what is otherwise than
//! in the text before.

use crate::clinical::findings::changed::{Asked, Changed, Said};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::gate::{self, HOLDS};
use crate::clinical::knowledge::oral;
use crate::clinical::tasks;
use crate::wording;
use crate::wording::figures::said;
use crate::wording::words::small;

/// What to do until review was changed.
pub const PLAN: &str = "what to do until review";

/// The label, the age or the like was changed.
pub const PERSON: &str = "the details of the person or the place";

/// Nothing of all that can be named.
pub const OTHER: &str = "times or findings given below";

/// "90 mL of water: voice after: wet, changed to clear at 14:20 by the speech-language pathologist".
pub fn answer(changed: &Changed, exam: &Exam, at: &str) -> String {
    let asked = &changed.asked;
    let words = |said: &Said| small(&said_to(asked, said, exam));
    let now = asked.said(exam);
    let now = now.map_or_else(|| "not answered".to_owned(), |now| words(&now));
    let by = wording::person::signed(changed.by.role, changed.by.initials.as_ref());
    let what = asked_of(asked, exam);
    format!(
        "{what}\"{}\" changed to \"{now}\" at {at} by the {by}",
        words(&changed.was)
    )
}

/// What was asked; nothing where what is said says it too.
fn asked_of(asked: &Asked, exam: &Exam) -> String {
    match asked {
        Asked::Trial { number, question } => {
            let trial = exam.trials.iter().find(|t| t.number == *number);
            trial.map_or_else(String::new, |trial| {
                let ask = wording::tasks::ask(trial.task, question);
                let ask = small(ask.trim_end_matches(['?', '.']));
                format!("{}: {ask}: ", small(wording::tasks::of(trial.task).title))
            })
        }
        Asked::Gate(_) => String::new(),
        Asked::Oral(item) => oral::items()
            .find(|of| of.id == item.as_str())
            .map_or_else(String::new, |item| {
                format!("{}: ", small(wording::oral_items::name(item)))
            }),
    }
}

/// What was said to it. Where this version does not know it, its id stands.
fn said_to(asked: &Asked, said_: &Said, exam: &Exam) -> String {
    match (asked, said_) {
        (Asked::Trial { number, question }, Said::Answer(answer)) => {
            let trial = exam.trials.iter().find(|t| t.number == *number);
            trial.map_or_else(String::new, |trial| {
                said(tasks::spec(trial.task), question, answer)
            })
        }
        (Asked::Gate(id), Said::Gate(answer)) => {
            let Some(item) = gate::find(id) else {
                return answer.clone();
            };
            let exception = item.exceptions.iter().find(|e| e.id == answer.as_str());
            match exception {
                Some(exception) => wording::gate::exception(item, exception).to_owned(),
                None if answer == HOLDS => wording::gate::holds(item).to_owned(),
                None => answer.clone(),
            }
        }
        (Asked::Oral(id), Said::Seen(seen)) => oral::items()
            .find(|of| of.id == id.as_str())
            .map_or_else(String::new, |item| wording::oral::said(item, seen)),
        _ => String::new(),
    }
}

/// A reason that was not in the text before.
pub fn new(flag: &Flag) -> String {
    format!("new: {}", small(&flag.reason()))
}

/// A reason that was in the text before, and no longer is.
pub fn gone(flag: &Flag) -> String {
    format!("no longer: {}", small(&flag.reason()))
}
