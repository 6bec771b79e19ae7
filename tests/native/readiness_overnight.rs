//! Answers that outlive their moment: orders, airway and voices of yesterday before the water of today.
//! What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::gate::Group;
use penlight::clinical::findings::gate::HOLDS;
use penlight::clinical::findings::trial::Answer;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::breathing;
use penlight::record::event::Event;

fn asked_again(s: &mut Scene, groups: &[Group], ms: i64) {
    for group in groups {
        let items = group.items();
        let answers = items.map(|item| (item.id.to_owned(), HOLDS.to_owned()));
        s.say_at(at(ms), Event::Gate(answers.collect()));
    }
}

fn counted_at(s: &mut Scene, ms: i64) {
    s.open(TaskId::Breathing);
    s.answer_at(ms, breathing::TYPED, Answer::Tenths(160));
}

fn old(s: &Scene, task: TaskId) -> Vec<String> {
    let held = holds(task, &s.visit.exam).into_iter();
    let old = held.filter(|h| h.id.starts_with("old."));
    old.map(|h| h.says).collect()
}

/// In the night the person got a mask, and the surgeon an order of nothing by mouth. In the morning
/// only "Ready now" and the breaths were asked before the water.
#[test]
fn orders_and_airway_of_yesterday_are_asked_again_before_the_water() {
    let mut s = ready(Role::Screener);
    let morning = 19 * HOUR;
    asked_again(&mut s, &[Group::Ready], morning);
    counted_at(&mut s, morning);
    assert_eq!(
        old(&s, TaskId::Water90),
        [
            "\"The person\" was asked more than 8 hours ago",
            "\"Orders and limits\" was asked more than 8 hours ago",
            "\"Airway and chest\" was asked more than 60 minutes ago",
        ]
    );
    asked_again(&mut s, &Group::ALL[..3], morning);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// Whoever gave it all the same clears nobody.
#[test]
fn water_on_orders_of_yesterday_is_not_clear() {
    let mut s = ready(Role::Screener);
    let morning = 19 * HOUR;
    asked_again(&mut s, &[Group::Ready], morning);
    counted_at(&mut s, morning);
    s.open(TaskId::Water90);
    s.answer_at(morning, "voice-before", clear());
    s.mark_at(morning, MarkKind::Start);
    s.mark_at(morning + 8_000, MarkKind::End);
    s.mark_at(morning + 68_030, MarkKind::WatchOver);
    s.choose("cup", "one-go").choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    let text = s.text_at(&clock_after(NEXT_DAY + 5));
    let words = "given on answers that were missing or too old: \"The person\", \"Orders and limits\", \
                 \"Airway and chest\"";
    assert!(text.contains(words), "{text}");
}

fn clear() -> Answer {
    Answer::Choice("clear".to_owned())
}

/// The voice before the water was heard, then the clinician was called away; "clear before" in the
/// text was of two hours ago, and a voice that had turned wet meanwhile was no change.
#[test]
fn a_voice_that_was_heard_before_a_break_is_heard_again() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.answer_at(2 * MINUTE, "voice-before", clear());
    let water = s.trial;
    let later = 2 * HOUR;
    asked_again(&mut s, &Group::ALL, later);
    counted_at(&mut s, later);
    assert_eq!(
        old(&s, TaskId::Water90),
        ["The voice was heard more than 60 minutes ago"]
    );
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(held[0].id.starts_with(&format!("old.voice.{water}.")));
    s.trial = water;
    s.answer_at(later, "voice-before", clear());
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// Small sips in the evening: in the morning their voices were taken over as heard before the next
/// sip and before the cup.
#[test]
fn no_voice_of_yesterday_is_taken_over() {
    let voice = |s: &Scene, task| {
        let taken = (tasks::spec(task).taken_over)(&s.visit.exam);
        taken.into_iter().any(|(id, _)| id == "voice-before")
    };
    let mut s = stepped(Role::Slp, 97);
    s.sips_given(&mut |_, _| {});
    for task in [TaskId::Sips, TaskId::Water90, TaskId::TimedWater] {
        assert!(voice(&s, task), "{task:?}");
    }
    asked_again(&mut s, &Group::ALL, 19 * HOUR);
    for task in [TaskId::Sips, TaskId::Water90, TaskId::TimedWater] {
        assert!(!voice(&s, task), "{task:?}");
    }
    // Heard before a sip, it is not known after it; heard after it, it stands for what comes next.
    s.open(TaskId::Sips);
    s.answer_at(19 * HOUR, "voice-before", clear());
    s.mark_at(19 * HOUR + MINUTE, MarkKind::Start);
    s.mark_at(19 * HOUR + MINUTE + 2_000, MarkKind::End);
    assert!(!voice(&s, TaskId::Sips));
    s.answer_at(19 * HOUR + MINUTE + 2_000, "voice-after", clear());
    assert!(voice(&s, TaskId::Sips));
}

/// The cup was given, and only then somebody looked at the questions before it.
#[test]
fn water_given_before_it_was_asked_clears_nobody() {
    let mut s = adult(Role::Screener);
    s.breaths(16).dry(&[2_000, 9_000, 17_000]).water(&[]);
    s.gate(&[]);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    let words = "given on answers that were missing or too old: \"The person\", \
                 \"Orders and limits\", \"Airway and chest\", \"Ready now\"";
    assert!(s.text().contains(words), "{}", s.text());
}
