//! Oxygen saturation in a trial by mouth: where it is asked for.

#![allow(clippy::unwrap_used)]

use crate::support::bedside;

use bedside::*;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::breathing::SATURATION;
use penlight::clinical::tasks::by_mouth::saturation::LOWEST;

/// Without a reading before it there is nothing to compare with, and nobody is sent for an oximeter.
#[test]
fn it_is_asked_for_after_a_trial_only_where_it_was_read_before() {
    let given = [
        TaskId::Water90,
        TaskId::Sips,
        TaskId::TimedWater,
        TaskId::Own,
        TaskId::Cracker,
    ];
    let asked = |s: &crate::support::script::Script| {
        given.map(|task| {
            let spec = tasks::spec(task);
            let there = spec.questions.iter().any(|q| q.id == LOWEST);
            assert!(there, "{task:?} has no such question");
            tasks::fits(task, LOWEST, &s.visit.exam)
        })
    };
    let mut s = ready(Role::Screener);
    assert_eq!(asked(&s), [false; 5]);
    s.breaths(16).number(SATURATION, 97);
    assert_eq!(asked(&s), [true; 5]);
}
