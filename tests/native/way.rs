//! The way through a visit: what comes next, from the first question to the decision.

use crate::support::*;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate::Group;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::oral::Region;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::record::event::Event;
use penlight::record::way::{Step, after_group, after_region, after_task, gag_waits, next};

/// Every step a clear swallow screen leads through, in order.
#[test]
fn a_clear_swallow_screen_leads_from_the_gate_to_the_decision() {
    let mut s = Scene::new(Age::Years(70), Role::Slp);
    assert_eq!(next(&s.visit), Step::Gate(Group::ALL[0]));
    s.gate(&[]);
    assert_eq!(next(&s.visit), Step::Task(TaskId::Breathing));
    s.breaths(16);
    assert_eq!(next(&s.visit), Step::Task(TaskId::DrySwallow));
    s.dry(&[1_000, 5_000, 9_000, 13_000]);
    assert_eq!(next(&s.visit), Step::Task(TaskId::Water90));
    s.water(&[]);
    assert_eq!(next(&s.visit), Step::Decision);
}

#[test]
fn what_the_gate_found_comes_before_the_first_task() {
    let mut s = Scene::new(Age::Years(70), Role::Slp);
    s.gate(&[]);
    let last = *Group::ALL.last().unwrap();
    assert_eq!(
        after_group(&s.visit, Group::ALL[0]),
        Step::Gate(Group::ALL[1])
    );
    assert_eq!(after_group(&s.visit, last), Step::Task(TaskId::Breathing));
    s.gate(&[("awake", "no")]);
    assert_eq!(after_group(&s.visit, last), Step::GateResult);
    assert_eq!(next(&s.visit), Step::GateResult);
}

/// A trial that runs is found again before anything else is offered; choking before that.
#[test]
fn what_runs_comes_first_and_choking_before_it() {
    let mut s = ready(Role::Slp);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start);
    assert_eq!(next(&s.visit), Step::Task(TaskId::Water90));
    s.say(Event::Choking(at(101_000)));
    assert_eq!(next(&s.visit), Step::Choking);
}

#[test]
fn a_screen_that_was_ended_leads_to_its_decision() {
    let mut s = ready(Role::Slp);
    s.say(Event::EndedEarly(EndedEarly::Refused));
    assert_eq!(next(&s.visit), Step::Decision);
    assert_eq!(after_task(&s.visit, TaskId::Breathing), Step::Decision);
}

/// After its questions grew old they are asked again before anything is given.
#[test]
fn old_questions_come_before_the_water() {
    let mut s = ready(Role::Slp);

    assert_eq!(next(&s.visit), Step::Task(TaskId::Water90));
    s.now += 2 * 60 * 60_000;
    s.say(Event::Role(Role::Slp));
    assert!(
        matches!(next(&s.visit), Step::Gate(_)),
        "{:?}",
        next(&s.visit)
    );
}

/// The gag waits until nothing is swallowed any more.
#[test]
fn the_gag_waits_for_the_swallow_trials() {
    let mut s = ready(Role::Slp);
    s.on(ScreenId::FullVisit);
    assert!(gag_waits(&s.visit));
    let last = ScreenId::FullVisit.screen().oral.after().first().copied();
    assert_eq!(last, Some(Region::Gag));
    s.water(&[]);
    assert!(!gag_waits(&s.visit));
}

/// After a sign no trial is led to any more: the gag waits for none.
#[test]
fn the_gag_waits_for_no_trial_that_is_over() {
    let mut s = adult(Role::Screener);
    s.on(ScreenId::FullVisit).gate(&[]).breaths(16);
    s.dry(&[1_000, 5_000, 9_000]);
    assert!(gag_waits(&s.visit));
    s.given(TaskId::Sips, 100_000, &[(Sign::Cough, 1_000)]);
    assert!(!gag_waits(&s.visit));
}

/// From each task the way leads to the screen's next, from the last to the decision or the gag, and
/// from each region to the next: nobody is led in a round, nor through what is done.
#[test]
fn every_screen_is_gone_through_once() {
    for id in ScreenId::ALL {
        let mut s = adult(Role::Slp);
        s.on(id).gate(&[]);
        let screen = id.screen();
        for pair in screen.tasks_of(&s.visit.exam).windows(2) {
            assert_eq!(after_task(&s.visit, pair[0]), Step::Task(pair[1]), "{id:?}");
        }
        if let Some(last) = screen.tasks_of(&s.visit.exam).last() {
            let after = screen.oral.after().first();
            let end = after.map_or(Step::Decision, |region| Step::Oral(*region));
            assert_eq!(after_task(&s.visit, *last), end, "{id:?}");
        }
        // What is done is not gone through again.
        s.breaths(16);
        let dry = after_task(&s.visit, TaskId::FiveForFive);
        assert_eq!(
            dry == Step::Task(TaskId::DrySwallow),
            id == ScreenId::FullVisit
        );
        for pair in screen.oral.before().windows(2) {
            assert_eq!(
                after_region(&s.visit, pair[0]),
                Step::Oral(pair[1]),
                "{id:?}"
            );
        }
    }
}

/// What stands beside every screen leads back to the overview; an extra of the screen, to where that
/// goes on.
#[test]
fn what_was_added_leads_back() {
    let s = ready(Role::Slp);
    for beside in tasks::BESIDE {
        assert_eq!(after_task(&s.visit, beside), Step::Overview, "{beside:?}");
    }
}

/// A sign in the water leads to the decision, never to more by mouth.
#[test]
fn after_a_sign_in_the_water_comes_the_decision() {
    let mut s = ready(Role::Screener);

    s.water(&[(Sign::Cough, 5_000)]);
    assert_eq!(next(&s.visit), Step::Decision);
}
