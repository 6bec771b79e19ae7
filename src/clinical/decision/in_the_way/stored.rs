//! What a stored reason for going on was given for: the thing with its key; or, in records of
//! earlier versions, the one that its old id names.
//!
//! An old id was made of sentences where a state mattered. They are not read: the id says which
//! task, which rule and how many trials, and what stood in the way at that moment is what was meant.
//! Where nothing that stood there fits, the id is kept as it is and speaks for nothing: the reason is
//! asked for again.

use crate::clinical::decision::in_the_way::{InTheWay, standing};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::gate;
use crate::clinical::findings::go_on::Ground;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::person::Role;
use crate::clinical::knowledge::task::TaskId;

/// What a reason that is recorded now was given for, by its stored key or old id.
pub fn meant(stored: &str, by: Role, exam: &Exam) -> Option<InTheWay> {
    let all = || {
        let tasks = TaskId::ALL.iter();
        tasks.flat_map(|task| standing(*task, exam, exam.now))
    };
    let by_key = all().find(|one| one.key() == stored);
    by_key
        .or_else(|| {
            // Two that one old id could mean were two questions: each got its own reason.
            let open = |one: &InTheWay| {
                let who = one.who_may_go_on();
                who.open_to(by) && exam.went_past(one, who).is_none()
            };
            let of = |one: &InTheWay| old_begins(one).is_some_and(|old| stored.starts_with(&old));
            all().find(|one| of(one) && open(one))
        })
        .or_else(|| answer(stored, exam))
}

/// How the id of this thing began in earlier versions; none where the id was the key of today.
fn old_begins(one: &InTheWay) -> Option<String> {
    let rule = |seen: &[Flag]| seen.first().map(|flag| flag.rule().id);
    Some(match one {
        Obstacle::CouldBeNew { .. } => "oral.could-be-new.".to_owned(),
        Obstacle::Cracker { said, .. } | Obstacle::DrySwallows { said, .. } => {
            format!("{}.", said.rule().id)
        }
        Obstacle::Seen {
            of,
            tried,
            task,
            seen,
            ..
        } => {
            let (of_id, rule) = (of.id(), rule(seen)?);
            match of == task {
                true => format!("again.{of_id}.{tried}.{rule}: "),
                false => format!("after.{of_id}.{tried}.{}.{rule}: ", task.id()),
            }
        }
        Obstacle::SmallSipsFirst { task, tried, said } => {
            format!("{}.{}.{tried}.", said.rule().id, task.id())
        }
        _ => return None,
    })
}

/// An answer of the gate, which its key names in full: it may be given after its reason.
fn answer(stored: &str, exam: &Exam) -> Option<InTheWay> {
    let (item, exception) = stored.strip_prefix("gate.")?.split_once('.')?;
    let item = gate::find(item)?;
    let exception = item.exceptions.iter().find(|e| e.id == exception)?;
    Some(Obstacle::Gate {
        item,
        exception,
        state: gate::state_of(item, exception, &exam.policy),
    })
}

/// Why somebody went on, by the words that earlier versions stored for it: none where they mean
/// nothing but themselves.
pub fn ground_of(because: &str) -> Option<Ground> {
    (because == "the team knows").then_some(Ground::TeamKnows)
}
