//! What is in the way of a task, a file for each source of it. Who may go on past it stands with
//! the thing itself.

mod breathing;
pub mod choked;
mod covered;
mod cracker;
mod dry;
mod ended;
mod gate;
mod holding;
mod kind;
mod meanwhile;
mod old;
mod person;
mod seen;
mod sips;
pub mod stored;
mod voice;
mod weakness;
mod who;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::gate::State;
use crate::clinical::findings::go_on::WentOn;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::moment::Moment;
use crate::clinical::knowledge::task::TaskId;

pub use breathing::closing as closing_readings;
pub use kind::InTheWay;

/// What is in the way of `task` at a moment, what was gone past already left out.
pub fn in_the_way(task: TaskId, exam: &Exam, now: Moment) -> Vec<InTheWay> {
    let mut all = standing(task, exam, now);
    all.retain(|one| !is_passed(one, exam));
    all
}

fn is_passed(one: &InTheWay, exam: &Exam) -> bool {
    exam.went_past(one, one.who_may_go_on()).is_some() || covered::covered(one, exam)
}

/// The same with what was gone past, in the order it is shown.
pub fn standing(task: TaskId, exam: &Exam, now: Moment) -> Vec<InTheWay> {
    let mut all: Vec<InTheWay> = Vec::new();
    all.extend(person::not_for(task, exam));
    all.extend(ended::ended(task, exam));
    all.extend(gate::answers(task, exam));
    all.extend(gate::against(task, exam));
    all.extend(person::child(task, exam));
    all.extend(weakness::could_be_new(task, exam));
    all.extend(choked::choked(task, exam));
    all.extend(gate::open(task, exam));
    all.extend(old::answers(task, exam, now));
    all.extend(breathing::readings(task, exam));
    all.extend(voice::wet_before(task, exam));
    all.extend(cracker::reasons(task, exam));
    all.extend(dry::swallows(task, exam));
    all.extend(seen::in_trials(task, exam));
    all.extend(sips::first(task, exam));
    all
}

/// Whether the gate, the mouth or the breathing still show what was gone past.
pub fn stands(key: &str, exam: &Exam) -> bool {
    shown(exam).any(|one| one.key() == key)
}

/// Whether they tell a reason themselves: for what they show, and may be gone past so.
pub fn tells(on: &WentOn, exam: &Exam) -> bool {
    shown(exam).any(|one| one.key() == on.hold && one.who_may_go_on().open_to(on.by))
}

fn shown(exam: &Exam) -> impl Iterator<Item = InTheWay> {
    gate::all_answers(exam)
        .chain(gate::all_against(exam))
        .chain(breathing::all(exam))
}

/// What closes the gate, what was gone past left out: blocks among its answers, and readings.
pub fn closing(exam: &Exam) -> impl Iterator<Item = InTheWay> {
    let blocks = gate::all_answers(exam).filter(|one| {
        let Obstacle::Gate { state, .. } = one else {
            return false;
        };
        [State::Block, State::Stop].contains(state)
    });
    let all = blocks.chain(closing_readings(exam));
    all.filter(|one| exam.went_past(one, one.who_may_go_on()).is_none())
}
