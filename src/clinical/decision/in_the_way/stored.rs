//! What a stored reason for going on was given for: the thing with its key; or, in records of
//! earlier versions, the one that its old id names.
//!
//! An old id was made of sentences where a state mattered. They are not read: the id says which
//! task, which rule and how many trials, and what stood in the way at that moment is what was meant.
//! Where several of one rule could stand there, the words that told them apart are kept here as part
//! of the form: they change no more.
//! Where nothing that stood there fits, the id is kept as it is and speaks for nothing: the reason is
//! asked for again.

use crate::clinical::decision::in_the_way::{InTheWay, standing};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{
    AgainstCracker, CrackerFact, DryCount, DryFact, DryResult, Fact,
};
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::gate;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::person::Role;
use crate::clinical::knowledge::task::TaskId;

/// What a reason that is recorded now was given for, by its stored key or old id.
pub fn meant(stored: &str, by: Role, exam: &Exam) -> Option<InTheWay> {
    let all = || {
        let tasks = TaskId::ALL.iter();
        tasks.flat_map(|task| standing(*task, exam, exam.now))
    };
    // Two that one old id could mean were two questions: each got its own reason.
    let open = |one: &InTheWay| {
        let who = one.who_may_go_on();
        who.open_to(by) && exam.went_past(one, who).is_none()
    };
    all()
        .find(|one| one.key() == stored)
        .or_else(|| all().find(|one| old_id_of(one, stored) && open(one)))
        .or_else(|| all().find(|one| old_id_of(one, stored)))
        .or_else(|| answer(stored, exam))
}

/// Whether this thing had that id in earlier versions, where it had another than the key of today.
fn old_id_of(one: &InTheWay, stored: &str) -> bool {
    let begins = |begin: String| stored.starts_with(&begin);
    match one {
        Obstacle::CouldBeNew { .. } => begins("oral.could-be-new.".to_owned()),
        Obstacle::Cracker { said, .. } => {
            let why = old_against_cracker(said);
            why.is_some_and(|why| begins(format!("{}.no cracker: {why}.", said.rule().id)))
        }
        Obstacle::DrySwallows { said, .. } => {
            let rest = stored.strip_prefix(said.rule().id);
            rest.and_then(|rest| rest.strip_prefix('.'))
                .is_some_and(|rest| old_dry(said, rest))
        }
        Obstacle::Seen {
            of,
            tried,
            task,
            seen,
            ..
        } => {
            let rule = seen.first().map_or("", |flag| flag.rule().id);
            let of_id = of.id();
            begins(match of == task {
                true => format!("again.{of_id}.{tried}.{rule}: "),
                false => format!("after.{of_id}.{tried}.{}.{rule}: ", task.id()),
            })
        }
        Obstacle::SmallSipsFirst { task, tried, said } => {
            begins(format!("{}.{}.{tried}.", said.rule().id, task.id()))
        }
        _ => false,
    }
}

/// How an old id named what speaks against a cracker.
fn old_against_cracker(said: &Flag) -> Option<&'static str> {
    let Fact::Cracker(CrackerFact::Against(against)) = said.fact() else {
        return None;
    };
    match against {
        AgainstCracker::DrinkWentWrong => Some("a drink went wrong"),
        AgainstCracker::NoDrinkTried => Some("no drink was tried before"),
        AgainstCracker::NoTeeth => Some("no teeth and no dentures that fit"),
        AgainstCracker::DietOrder => Some("a diet order does not allow it"),
        // Nobody goes past these, or they hold nothing.
        AgainstCracker::Allergy
        | AgainstCracker::AllergyNotAsked
        | AgainstCracker::TeethNotKnown
        | AgainstCracker::DietOrderNotChecked => None,
    }
}

/// Whether an old id, its rule taken off, named this count of dry swallows: the newest, or one that
/// was counted again since.
fn old_dry(said: &Flag, rest: &str) -> bool {
    let earlier = rest.strip_prefix("first count: ");
    match said.fact() {
        Fact::Dry(DryFact::Count(DryCount::Earlier, DryResult::TooFew { swallows, .. })) => {
            earlier.is_some_and(|rest| rest.starts_with(&format!("{swallows} dry swallow")))
                || *swallows == 0 && earlier.is_some_and(|rest| rest.starts_with("no dry swallow"))
        }
        Fact::Dry(DryFact::Count(DryCount::Earlier, _)) => earlier.is_some(),
        _ => earlier.is_none(),
    }
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
