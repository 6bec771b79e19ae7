//! What the cracker asks for first: teeth, no allergy, a diet order that allows it, a drink that
//! went well.

use super::holding;
use super::kind::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::AgainstCracker;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::sign::SignTask;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::{by_mouth, cracker};

pub(super) fn reasons(task: TaskId, exam: &Exam) -> Vec<InTheWay> {
    if task != TaskId::Cracker {
        return Vec::new();
    }
    let (went_wrong, seen) = drink(exam);
    let reasons = cracker::holds(exam, went_wrong).into_iter();
    reasons
        .map(|(against, said, go_on)| Obstacle::Cracker {
            go_on,
            said,
            seen: match against {
                AgainstCracker::DrinkWentWrong => seen.clone(),
                _ => Vec::new(),
            },
        })
        .collect()
}

/// Whether a drink of this visit went wrong, and what was seen of it.
fn drink(exam: &Exam) -> (Looked, Vec<Flag>) {
    let drinks = TaskId::ALL.iter().filter(|task| {
        let other = [SignTask::Cracker, SignTask::Meal, SignTask::Own];
        let column = task.sign_column();
        column.is_some_and(|column| !other.contains(&column))
    });
    let tried: Vec<TaskId> = drinks
        .copied()
        .filter(|task| by_mouth::given(*task, exam).next().is_some())
        .collect();
    let seen: Vec<Flag> = tried
        .iter()
        .flat_map(|task| holding::flags(*task, exam))
        .collect();
    let went_wrong = match (tried.is_empty(), seen.is_empty()) {
        (true, _) => Looked::NotTested,
        (false, true) => Looked::Absent,
        (false, false) => Looked::Present,
    };
    (went_wrong, seen)
}
