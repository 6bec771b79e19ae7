//! From an examination to its decision.

use crate::clinical::decision::gate_flags;
use crate::clinical::decision::in_the_way;
use crate::clinical::decision::verdict::{Decision, Verdict, decide};
use crate::clinical::findings::exam::{EndedEarly, Exam};
use crate::clinical::findings::fact::{Past, VisitFact};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::go_on::WentOn;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::screen::Screen;
use crate::clinical::knowledge::sign::{Sign, SignTask, meaning};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::by_mouth::lag;
use crate::clinical::tasks::oral;
use crate::clinical::tasks::own::shared as own_shared;
use crate::clinical::tasks::{breathing, by_mouth};

/// Every flag of a screen, in the order of its tasks.
pub fn flags(screen: &Screen, exam: &Exam) -> Vec<Flag> {
    let mut flags = Vec::new();
    if screen.gate {
        flags.extend(gate_flags::flags(exam));
    }
    if screen.oral.is_some() {
        flags.extend(gate_flags::of_weakness(exam, screen.gate));
        flags.extend(oral::flags::flags(exam));
    }
    let own = screen.tasks_of(exam);
    for task in &own {
        flags.extend(tasks::flags(*task, exam));
    }
    // What was added to the screen counts as soon as it was begun, or refused.
    for task in screen.extras() {
        let told = by_mouth::given(task, exam).next().is_some()
            || by_mouth::refused(task, exam).is_some()
            || by_mouth::wet_before(task, exam).is_some();
        if told {
            flags.extend(tasks::flags(task, exam));
        }
    }
    // What was attached to the visit and is no part of its screen is told; it decides only where it
    // is a sign.
    let attached = TaskId::ALL.iter().filter(|task| {
        let added = screen.extras().any(|extra| extra == **task);
        !own.contains(task) && !tasks::BESIDE.contains(task) && !added
    });
    for task in attached.filter(|task| exam.latest(**task).is_some()) {
        flags.extend(
            tasks::flags(*task, exam)
                .into_iter()
                .filter_map(attached_told),
        );
    }
    for task in tasks::BESIDE {
        if !own.contains(&task) {
            flags.extend(tasks::flags(task, exam));
        }
    }
    flags.extend(lag::flags(exam));
    flags.extend(own_shared::across(exam));
    flags.extend(of_visit(exam, &flags));
    flags.extend(gone_past(exam));
    flags
}

/// What is told of a count that was attached: that no sign was in it clears nothing, and is a note;
/// failing breathing is what it is anywhere.
fn attached_told(flag: Flag) -> Option<Flag> {
    match (flag.domain().decides(), flag.level()) {
        (false, _) | (true, Level::Refer | Level::Stop | Level::Note) => Some(flag),
        (true, Level::Pass) => {
            let (rule, domain) = (flag.rule(), flag.domain());
            Some(rule.flag(Level::Note, domain, flag.fact().clone()))
        }
        (true, Level::Incomplete) => breathing::closes(&flag).then_some(flag),
    }
}

/// What is told of the visit as a whole: a choke that no trial has, an emergency that was answered
/// otherwise later, entries that can't be read, an age that was not given.
fn of_visit(exam: &Exam, told: &[Flag]) -> Vec<Flag> {
    let eating = Domain::EatingDrinking;
    let mut flags: Vec<Flag> = Vec::new();
    let choke = [rules::WATER_CHOKE.id, rules::TRIAL_CHOKE.id];
    let is_told = told.iter().any(|f| choke.contains(&f.rule().id));
    if (exam.choked || exam.choke_pressed()) && !is_told {
        let (level, rule) = meaning(Sign::Choke, SignTask::Water90);
        flags.push(rule.flag(level, eating, VisitFact::Choked));
    }
    if exam.emergency_changed && !oral::flags::emergency(exam) {
        let rule = &rules::GATE_NEW_WEAKNESS;
        flags.push(rule.flag(Level::Note, Domain::Urgent, VisitFact::EmergencyChanged));
    }
    if exam.unread > 0 {
        let fact = VisitFact::Unread(exam.unread);
        flags.push(rules::RECORD_UNREAD.flag(Level::Incomplete, eating, fact));
    }
    if exam.age.is_none() {
        flags.push(rules::PERSON_AGE.flag(Level::Note, eating, VisitFact::AgeNotGiven));
    }
    flags
}

/// What was gone past and led to something. What still stands is told with its reason by itself.
fn gone_past(exam: &Exam) -> Vec<Flag> {
    let told_itself = |on: &WentOn| !on.lapsed && in_the_way::tells(on, exam);
    let passed = exam.went_on.iter().filter(|on| !told_itself(on));
    passed
        .filter_map(|on| {
            let fact = VisitFact::GonePast {
                given: led_to(on, exam)?,
                past: past(on, exam),
                gone: on.gone_past(),
            };
            Some(rules::HOLD_PASSED.flag(Level::Note, Domain::EatingDrinking, fact))
        })
        .collect()
}

/// What was given after a reason for going on; one that led to nothing is no news.
fn led_to(on: &WentOn, exam: &Exam) -> Option<TaskId> {
    let past = exam.gone_past.get(&on.hold);
    let cracker = matches!(past, Some(Obstacle::Cracker { .. }));
    let gives = |task: TaskId| task == TaskId::Meal || task.is_by_mouth();
    let mut after = exam
        .trials
        .iter()
        .filter(|trial| on.led_to.contains(&trial.number));
    after
        .find(|trial| match cracker {
            true => trial.task == TaskId::Cracker,
            false => gives(trial.task),
        })
        .map(|trial| trial.task)
}

fn past(on: &WentOn, exam: &Exam) -> Past<Flag> {
    if !on.says.is_empty() {
        return Past::Words(on.says.clone());
    }
    // Records of earlier versions without words are told as they were.
    let known = exam.gone_past.get(&on.hold).filter(|_| on.ground.is_some());
    match known {
        Some(thing) => Past::Thing(Box::new(thing.clone())),
        None => Past::NotKnown,
    }
}

/// Why the gate is closed, if it is: an emergency, or a block nobody took on.
pub fn gate_closed(exam: &Exam) -> Option<EndedEarly> {
    if oral::flags::emergency(exam) {
        return Some(EndedEarly::Emergency);
    }
    let mut closing = in_the_way::closing(exam);
    closing.next().map(|_| EndedEarly::GateClosed)
}

/// The decision of a screen.
pub fn assess(screen: &Screen, exam: &Exam) -> Decision {
    let closed = if screen.gate {
        gate_closed(exam)
    } else {
        // The examination asks of new or worse weakness without a gate.
        (screen.oral.is_some() && oral::flags::emergency(exam)).then_some(EndedEarly::Emergency)
    };
    let too_young = screen
        .tasks
        .iter()
        .any(|task| task.is_by_mouth() && tasks::aside(*task, exam).is_some())
        .then_some(EndedEarly::NotForAge);
    // An emergency or a closed gate is the graver word than "broken off".
    let mut decision = decide(flags(screen, exam), closed.or(too_young).or(exam.ended));
    decision.chokings = exam.choked_at();
    // A screen without a swallow that ended early is no swallow screen that was not done.
    let decided = match decision.verdict {
        Verdict::Incomplete | Verdict::Pass => false,
        Verdict::NotDone(why) => why == EndedEarly::Emergency,
        _ => true,
    };
    if !screen.decides && decision.missing.is_empty() && !decided {
        decision.verdict = Verdict::NoDecision;
    }
    decision
}
