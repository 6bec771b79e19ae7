//! Children: lines that were drawn in adults are not read for them.

use crate::support::*;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::timed_water;

/// No line for children: somebody says why, and no adult line is drawn.
#[test]
fn children_are_not_read_with_the_lines_of_adults() {
    for task in [TaskId::Sips, TaskId::TimedWater, TaskId::Cracker] {
        let mut s = Scene::new(Age::Years(5), Role::Screener);
        s.gate(&[]).breaths(22);
        let held = holds(task, &s.visit.exam);
        assert!(
            held.iter().any(|h| h.id == format!("child.{task:?}")),
            "{held:?}"
        );
        let mut s = adult(Role::Screener);
        s.gate(&[]).breaths(16);
        let held = holds(task, &s.visit.exam);
        assert!(held.iter().all(|h| !h.id.starts_with("child.")), "{held:?}");
    }
    // 100 mL in 20 seconds: slow in an adult.
    let slow = |age| {
        let mut s = Scene::new(age, Role::Screener);
        s.gate(&[]).breaths(16).open(TaskId::TimedWater);
        s.choose(timed_water::OFFERED, "100")
            .choose("voice-before", "clear");
        s.mark(100_000, MarkKind::Start)
            .mark(105_000, MarkKind::Tap);
        s.mark(120_000, MarkKind::End)
            .mark(180_030, MarkKind::WatchOver);
        s.choose(timed_water::CUP, timed_water::EMPTY)
            .choose("voice-after", "clear");
        let flags = tasks::flags(TaskId::TimedWater, &s.visit.exam);
        let has = |id: &str| flags.iter().any(|f| f.rule().id == id);
        (
            has("timed-water.slow"),
            has("person.child-trial"),
            s.text().contains("slowly"),
        )
    };
    assert_eq!(slow(Age::Years(72)), (true, false, true));
    assert_eq!(slow(Age::Years(5)), (false, true, false));
}

/// The age was put right to one year after the cup: "is not given under 2 years" beside a cup that
/// was drunk read as if it had not been.
#[test]
fn water_that_was_given_to_a_child_it_is_not_meant_for_is_said_to_be_given() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.age(Some(Age::Years(1)));
    let text = s.text();
    let words = "90 mL of water was given, though it is not meant for anybody under 2 years";
    assert!(text.contains(words), "{text}");
}

/// "... fit the local chart for this age?."
#[test]
fn a_question_ends_as_one() {
    let mut s = Scene::new(Age::Years(8), Role::Screener);
    s.gate(&[]).breaths(16).water(&[]);
    assert!(s.text().contains("for this age?"), "{}", s.text());
    assert!(!s.text().contains("?."), "{}", s.text());
}
