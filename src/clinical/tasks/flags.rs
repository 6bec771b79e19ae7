//! What the rules of a task say, with what holds for every trial by mouth.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::ByMouthFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth::reading::{Reading, Watch};
use crate::clinical::tasks::by_mouth::{self, saturation};
use crate::clinical::tasks::catalogue::spec;

/// What a task's rules say about an examination.
pub fn flags(id: TaskId, exam: &Exam) -> Vec<Flag> {
    let spec = spec(id);
    let mut flags = (spec.flags)(id, exam);
    flags.extend(by_mouth::wet_before(id, exam));
    let fell = saturation::flags(id, exam);
    // Choking that was pressed on its own page may have been with any of them.
    let choked = exam.choked && id.is_by_mouth();
    if choked || fell.iter().any(|flag| flag.level() > Level::Note) {
        // "No sign seen" is not said of a trial that was stopped.
        flags.retain(|flag| flag.level() != Level::Pass);
    }
    // Nor is it asked for what choking left no time for.
    let within = |t: &Trial| exam.chokings.iter().any(|at| by_mouth::was_within(t, *at));
    if choked && exam.latest_started(id).is_some_and(within) {
        let open = [rules::TIMED_CUP_UNFINISHED.id, rules::EATEN_UNFINISHED.id];
        flags.retain(|f| f.level() != Level::Incomplete || !open.contains(&f.rule().id));
    }
    flags.extend(fell);
    if of_adults(id, exam) && exam.latest_started(id).is_some() {
        let fact = ByMouthFact::StudiedInAdults(id);
        flags.push(rules::PERSON_CHILD_TRIAL.flag(Level::Note, Domain::EatingDrinking, fact));
    }
    flags
}

/// The same while a plan is gone through, or a watch runs: what is still to come is no finding.
pub fn flags_so_far(id: TaskId, exam: &Exam) -> Vec<Flag> {
    let spec = spec(id);
    let mut flags = flags(id, exam);
    let watching = |t: &Trial| {
        let over = t.first(MarkKind::WatchOver).is_some();
        !over && spec.pad.watch.is_some() && Reading::of(t).watch == Watch::Running
    };
    if (spec.over)(exam) == Some(false) || exam.latest_started(id).is_some_and(watching) {
        flags.retain(|f| {
            f.level() != Level::Incomplete
                || f.fact().of_sign().is_some()
                || f.fact().is_of_breathing()
        });
    }
    flags
}

/// Whether a task was studied in adults and this is a child.
pub fn of_adults(id: TaskId, exam: &Exam) -> bool {
    spec(id).studied_in_adults && exam.age.is_some_and(|age| !age.is_adult())
}
