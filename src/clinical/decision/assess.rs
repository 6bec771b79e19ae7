//! From an examination to its decision.

use crate::clinical::decision::gate_flags;
use crate::clinical::decision::in_the_way;
use crate::clinical::decision::verdict::{Decision, Verdict, decide};
use crate::clinical::findings::exam::{EndedEarly, Exam};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::screen::Screen;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::by_mouth::lag;
use crate::clinical::tasks::oral;
use crate::clinical::tasks::own::shared as own_shared;
use crate::clinical::tasks::{breathing, by_mouth};
use crate::wording::counted::counted;
use crate::wording::words::small;

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
    let choked = exam.choked || exam.choke_pressed();
    let said = [rules::WATER_CHOKE.id, rules::TRIAL_CHOKE.id];
    if choked && flags.iter().all(|f| !said.contains(&f.rule().id)) {
        flags.push(rules::WATER_CHOKE.flag(Level::Stop, Domain::EatingDrinking, "choked"));
    }
    if exam.emergency_changed && !oral::flags::emergency(exam) {
        flags.push(rules::GATE_NEW_WEAKNESS.flag(
            Level::Note,
            Domain::Urgent,
            "new weakness, droop or speech was first answered as an emergency, then changed",
        ));
    }
    if exam.unread > 0 {
        flags.push(rules::RECORD_UNREAD.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            format!(
                "{} missing or can't be read",
                counted(
                    usize::try_from(exam.unread).unwrap_or(usize::MAX),
                    "entry of this visit is",
                    "entries of this visit are"
                )
            ),
        ));
    }
    if exam.age.is_none() {
        flags.push(rules::PERSON_AGE.flag(
            Level::Note,
            Domain::EatingDrinking,
            "age not given: the rules for adults were used",
        ));
    }
    for on in &exam.went_on {
        // What still stands is told with what was gone past.
        if !on.lapsed && in_the_way::stands(&on.hold, exam) {
            continue;
        }
        // A reason for going on that led to nothing is no news.
        let past = exam.gone_past.get(&on.hold);
        let cracker = matches!(past, Some(Obstacle::Cracker { .. }));
        let led_to = exam.trials.iter().find_map(|trial| match trial.task {
            _ if !on.led_to.contains(&trial.number) => None,
            TaskId::Cracker => Some("A cracker was given"),
            _ if cracker => None,
            TaskId::Own => Some("A trial by mouth was given"),
            TaskId::Meal => Some("A meal was watched"),
            task if tasks::spec(task).by_mouth => Some("Water was given"),
            _ => None,
        });
        let Some(what) = led_to else {
            continue;
        };
        flags.push(rules::HOLD_PASSED.flag(
            Level::Note,
            Domain::EatingDrinking,
            format!(
                "{what} despite this{}decided by the {}: {}",
                if on.says.is_empty() {
                    ", ".to_owned()
                } else {
                    format!(": {}; ", small(on.says.trim_end_matches('.')))
                },
                on.by.words(),
                small(&on.because)
            ),
        ));
    }
    flags
}

/// What is told of a count that was attached: that no sign was in it clears nothing, and is a note;
/// failing breathing is what it is anywhere.
fn attached_told(flag: Flag) -> Option<Flag> {
    match (flag.domain().decides(), flag.level()) {
        (false, _) | (true, Level::Refer | Level::Stop | Level::Note) => Some(flag),
        (true, Level::Pass) => {
            let (rule, domain) = (flag.rule(), flag.domain());
            Some(rule.flag(Level::Note, domain, flag.reason().to_owned()))
        }
        (true, Level::Incomplete) => breathing::closes(&flag).then_some(flag),
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
        .any(|task| tasks::spec(*task).by_mouth && tasks::aside(*task, exam).is_some())
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
