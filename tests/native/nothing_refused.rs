//! Nothing is offered that is then refused: what a task needs is asked before it, what is in the way
//! has beside it what takes it away, and leaving something out says what it costs.

use crate::support::*;
use penlight::clinical::decision::in_the_way::in_the_way;
use penlight::clinical::decision::task_state::TaskState;
use penlight::clinical::findings::in_the_way::Obstacle;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::task::TaskId;
use penlight::record::clears::{Clears, clears};
use penlight::record::event::Event;
use penlight::record::skip::{Cost, cost};
use penlight::record::way::{Step, after_task, next};
use penlight::wording;

const THREE: &[i64] = &[2_000, 9_000, 17_000];

/// Breaths were skipped: whoever takes the visit up is asked for them before the water; who goes on
/// from page to page is not led in a round, and the page of the water has the press for them.
#[test]
fn breaths_that_were_skipped_are_asked_before_the_water() {
    for role in [Role::Screener, Role::Slp] {
        let mut s = adult(role);
        s.gate(&[]);
        assert_eq!(next(&s.visit), Step::Task(TaskId::Breathing));
        // All of it skipped.
        let on = after_task(&s.visit, TaskId::Breathing);
        assert_eq!(on, Step::Task(TaskId::DrySwallow));
        let water = Step::Task(TaskId::Water90);
        assert_eq!(after_task(&s.visit, TaskId::DrySwallow), water);
        assert_eq!(after_task(&s.visit, TaskId::Water90), Step::Decision);
        s.dry(THREE);
        assert_eq!(next(&s.visit), Step::Task(TaskId::Breathing));
        let held = in_the_way(TaskId::Water90, &s.visit.exam, s.visit.exam.now);
        let press = clears(&held[0], &s.visit.exam);
        assert_eq!(press, Some(Clears::Page(Step::Task(TaskId::Breathing))));
        assert_eq!(
            wording::in_the_way::clears(&held[0]),
            Some("Count the breaths")
        );
    }
}

/// The voice before is asked before there is a pad: without it no sign of the voice can be judged.
#[test]
fn the_pad_waits_for_the_voice_before() {
    for task in [TaskId::Water90, TaskId::TimedWater] {
        let mut s = ready(Role::Screener);
        if task == TaskId::TimedWater {
            s.sips_given(&mut |n, s| {
                if n == 5 {
                    s.say(Event::Answer {
                        trial: s.trial,
                        question: "voice-after".to_owned(),
                        answer: None,
                    });
                }
            });
            s.pass_all(task, "needed for the assessment", Role::Screener);
        }
        let page = |s: &Scene| {
            let exam = &s.visit.exam;
            TaskState::of(task, exam, Default::default(), exam.now)
        };
        assert!(
            page(&s).asks_before() && page(&s).says() && !page(&s).is_free(),
            "{task:?}"
        );
        s.open(task);
        s.choose("voice-before", "clear");
        assert!(page(&s).is_free(), "{task:?}");
    }
}

/// Whatever is in the way of whatever is to be given, in visits pressed at random: something takes it
/// away, or it is one of those that nothing does, and each press has its words.
#[test]
fn whatever_is_in_the_way_has_what_takes_it_away() {
    for number in 0..300 {
        let mut walk = Walk::new(number);
        while walk.step().is_some() {
            let exam = &walk.scene.visit.exam;
            for task in GIVEN {
                for one in in_the_way(task, exam, exam.now) {
                    let nothing = one.ends_trials()
                        || matches!(
                            one,
                            Obstacle::NotFor { .. }
                                | Obstacle::Child { .. }
                                | Obstacle::Seen { .. }
                                | Obstacle::Gate { .. }
                                | Obstacle::WetBefore { .. }
                                | Obstacle::Cracker { .. }
                        );
                    let press = clears(&one, exam);
                    assert!(press.is_some() || nothing, "{task:?} {one:?}");
                    assert!(press.is_none() || wording::in_the_way::clears(&one).is_some());
                    // None leads back to where it stands.
                    assert_ne!(press, Some(Clears::Page(Step::Task(task))), "{one:?}");
                }
            }
        }
    }
}

/// "Skip" says which verdict stays incomplete without it, and what waits for it.
#[test]
fn skip_says_what_it_costs() {
    let mut s = adult(Role::Screener);
    s.on(ScreenId::FullVisit).gate(&[]);
    let says = |s: &Scene, task| wording::skip::costs(cost(&s.visit, task));
    let water = wording::tasks::of(TaskId::Water90).title;
    assert_eq!(
        says(&s, TaskId::Breathing),
        format!("Needed before: {water}. Without it the screen stays incomplete.")
    );
    for task in [TaskId::DrySwallow, TaskId::Water90] {
        let words = says(&s, task);
        assert!(
            words.contains("Without it the screen stays incomplete."),
            "{task:?} {words}"
        );
    }
    for task in [TaskId::SyllablePa, TaskId::LongestAh, TaskId::PitchGlide] {
        assert_eq!(cost(&s.visit, task), Cost::default(), "{task:?}");
    }
    // Once it is done there is nothing to lose.
    s.breaths(16).dry(THREE);
    assert_eq!(cost(&s.visit, TaskId::Breathing), Cost::default());
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[]).number("sip", 3);
    assert_eq!(cost(&s.visit, TaskId::Sips).waits, Some(TaskId::Water90));
}

/// A wet voice that was heard before the cup can be heard again, by one press.
#[test]
fn a_wet_voice_can_be_heard_again() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "wet");
    let held = in_the_way(TaskId::Water90, &s.visit.exam, s.visit.exam.now);
    let Some(Clears::Press(press)) = clears(&held[0], &s.visit.exam) else {
        panic!("no press for {held:?}");
    };
    s.say(*press);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
    s.mark(100_000, MarkKind::Start);
}
