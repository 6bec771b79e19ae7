//! Own trials: one reason speaks for later signs of the same kind, whatever is given next. What stops
//! every trial, a request to stop, a low reading and a sign that nobody placed ask anew each time.

use super::kind::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Flag, Level};
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::sign::{Sign, SignTask, meaning};
use crate::clinical::knowledge::task::TaskId;

/// Whether a reason that was given earlier speaks for what was seen in own trials by now.
pub(super) fn covered(one: &InTheWay, exam: &Exam) -> bool {
    let Some(now) = in_own(one) else {
        return false;
    };
    let who = one.who_may_go_on();
    let mut reasons = exam.went_on.iter();
    reasons.any(|on| {
        let past = exam.gone_past.get(&on.hold).and_then(in_own);
        on.counts() && who.open_to(on.by) && past.is_some_and(|past| speaks_for(past, now))
    })
}

/// What was seen in own trials that holds the next of them.
fn in_own(one: &InTheWay) -> Option<&[Flag]> {
    match one {
        Obstacle::Seen { of, task, seen, .. } if of == task && *of == TaskId::Own => Some(seen),
        _ => None,
    }
}

fn speaks_for(past: &[Flag], now: &[Flag]) -> bool {
    now.iter().all(|flag| match flag.fact().of_sign() {
        Some(sign) if meaning(sign, SignTask::Own).0 == Level::Refer => times(sign, past) > 0,
        Some(sign) => times(sign, now) <= times(sign, past),
        None => past.contains(flag),
    })
}

/// How often a sign was seen in all of the trials together.
fn times(sign: Sign, seen: &[Flag]) -> usize {
    let facts = seen.iter().filter_map(|flag| flag.fact().sign());
    facts
        .filter(|fact| fact.sign == sign)
        .map(|fact| fact.times)
        .sum()
}
