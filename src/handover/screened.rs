//! When somebody was screened, and by whom: apart from when the text is issued.

use super::issue::Clock;
use crate::measure::time::Millis;
use crate::record::visit::Visit;
use crate::wording::screened::{self, What};

/// When, by whom, and when the text is issued, in a line.
pub(super) fn screened(visit: &Visit, now: &Clock) -> String {
    let (what, times) = times(visit);
    let first_last = times.iter().min().zip(times.iter().max());
    let between = first_last.map(|(first, last)| now.say_between(*first, *last));
    let by = screened::by(visit.role, visit.initials.as_ref());
    screened::line(what, between, &by, &now.time, &now.date)
}

/// The starts of the trials by mouth; where none was given, when anything was looked at.
fn times(visit: &Visit) -> (What, Vec<Millis>) {
    let starts = |by_mouth: bool| {
        let trials = visit.exam.trials.iter();
        let trials = trials.filter(move |t| !by_mouth || t.task.sign_column().is_some());
        trials.filter_map(|t| Some(t.start()?.wall))
    };
    let given: Vec<Millis> = starts(true).collect();
    if !given.is_empty() {
        return (What::Swallow, given);
    }
    let looked = [visit.seen_first, visit.seen];
    let looked = looked.into_iter().filter(|at| *at != Millis::ZERO);
    let times = looked.chain(starts(false)).collect();
    let asks_to_swallow = visit.screen.is_some_and(|id| id.screen().gate);
    match asks_to_swallow {
        true => (What::NoSwallow, times),
        false => (What::Examination, times),
    }
}
