//! Visits on one phone are told apart; a count that was attached to the wrong one is detached, and
//! both are told. What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::{Label, Role};
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::record::called::{Called, unlike};
use penlight::record::event::Event;
use penlight::record::visit::Visit;

fn label(text: &str) -> Label {
    Label::parse(text).unwrap()
}

fn others(labels: &[&str]) -> Vec<Called> {
    labels
        .iter()
        .map(|l| Called::Label((*l).to_owned()))
        .collect()
}

/// Four visits were called "Visit 9".
#[test]
fn a_label_that_a_kept_visit_has_gets_a_number() {
    let taken = others(&["Visit 9", "visit 9 (2)", "Bed by the door"]);
    assert_eq!(unlike(label("Visit 8"), &taken), label("Visit 8"));
    assert_eq!(unlike(label("Visit 9"), &taken), label("Visit 9 (3)"));
    assert_eq!(
        unlike(label("bed by the DOOR"), &taken),
        label("bed by the DOOR (2)")
    );
    // A task on its own is called by its task, and takes no label.
    let tasks = [Called::Task(TaskId::Meal), Called::Count];
    assert_eq!(unlike(label("Count"), &tasks), label("Count"));
}

#[test]
fn the_longest_label_there_is_keeps_its_room() {
    let long = "x".repeat(Label::MOST);
    let free = unlike(label(&long), &others(&[&long]));
    assert_eq!(free.as_str().chars().count(), Label::MOST);
    assert!(free.as_str().ends_with("x (2)"), "{free:?}");
}

/// A meal at which somebody coughed and choked, counted at 14:05 and attached at 14:10.
fn attached() -> Scene {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass);
    s.now = 10 * MINUTE;
    let from = 5 * MINUTE;
    let choked = at(from + 60_000);
    let trial = s.visit.next_trial();
    s.trial = trial;
    s.say(Event::Attached {
        from: s.visit.id.clone(),
        trial,
        task: TaskId::Meal,
        length: None,
        marks: vec![
            (at(from), MarkKind::Start),
            (at(from + 30_000), MarkKind::Sign(Sign::Cough)),
            (choked, MarkKind::Sign(Sign::Choke)),
            (at(from + 90_000), MarkKind::End),
        ],
        hidden: Vec::new(),
        answers: Vec::new(),
        chokings: vec![(choked, None, None)],
    });
    s
}

fn detach(s: &mut Scene) {
    s.now = 12 * MINUTE;
    let trial = s.trial;
    s.say(Event::Detached { trial });
}

/// Attaching was for good: it turned another visit from clear to refer.
#[test]
fn what_was_attached_by_mistake_is_detached_and_both_are_told() {
    let mut s = attached();
    assert_eq!(s.verdict(), Verdict::Stop);
    let told = "ttached to this visit at 14:10 by the clinician trained to screen: ";
    assert!(s.note().contains(told), "{}", s.note());
    assert!(s.note().contains(", counted at 14:05."), "{}", s.note());
    detach(&mut s);
    assert_eq!(s.verdict(), Verdict::Pass);
    assert!(!s.visit.is_choking());
    let note = s.note();
    let out = "; detached at 14:12 by the clinician trained to screen; it does not count.";
    assert!(note.contains(told) && note.contains(out), "{note}");
    // Its number is not given again, and a second press changes nothing.
    assert_eq!(s.visit.next_trial(), s.trial + 1);
    let before = s.visit.exam.trials.clone();
    detach(&mut s);
    assert_eq!(s.visit.exam.trials, before);
}

/// What was recorded of its choking here goes with it.
#[test]
fn a_choking_that_came_with_it_goes_though_its_end_was_recorded_here() {
    let mut s = attached();
    s.say(Event::HelpCalled(at(10 * MINUTE)))
        .say(Event::BackToBaseline(at(10 * MINUTE + 30_000)));
    detach(&mut s);
    assert_eq!(s.verdict(), Verdict::Pass, "{}", s.text());
    assert!(!s.visit.exam.choked);
}

/// The text that left told of the choke: the next one says that it is no longer so.
#[test]
fn a_text_that_left_with_it_is_corrected() {
    let mut s = attached();
    s.leaves(11);
    detach(&mut s);
    let text = s.text();
    assert!(
        text.starts_with("CORRECTED 14:31, replaces 14:11."),
        "{text}"
    );
    assert!(text.contains("no longer: "), "{text}");
}

/// What was pressed in the visit itself is no part of what came from elsewhere.
#[test]
fn detaching_takes_no_sign_with_it_that_was_seen_in_this_visit() {
    // Pressed on the page of the attached meal after it came.
    let mut s = attached();
    s.mark_at(11 * MINUTE, MarkKind::Sign(Sign::Cough));
    detach(&mut s);
    let trial = s.visit.trial(s.trial).unwrap();
    assert_eq!(trial.signs().count(), 1);
    // The same where the phone's clock was set back meanwhile.
    let mut s = attached();
    s.mark_at(5 * MINUTE, MarkKind::Sign(Sign::Cough));
    detach(&mut s);
    assert_eq!(s.visit.trial(s.trial).unwrap().signs().count(), 1);
    // Only what was attached can be detached.
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 1_000)]);
    let trial = s.trial;
    s.say(Event::Detached { trial });
    assert_eq!(s.verdict(), Verdict::Refer);
    // A choking of the visit stays.
    let mut s = attached();
    s.say(Event::Choking(at(11 * MINUTE)));
    detach(&mut s);
    assert_eq!(s.visit.chokings.len(), 1);
    assert_eq!(s.verdict(), Verdict::Stop);
}

/// Detached, the count can be attached to the visit that it belongs to.
#[test]
fn the_count_is_free_again() {
    let mut s = adult(Role::Screener);
    let (here, other) = (s.visit.id.clone(), "fedcba9876543210");
    let other = penlight::record::id::VisitId::new(other).unwrap();
    let to = |v: &Visit| v.attached_to.clone();
    s.say(Event::AttachedTo(here.clone()));
    // Of another visit it says nothing.
    s.say(Event::DetachedFrom(other));
    assert_eq!(to(&s.visit), Some(here.clone()));
    s.say(Event::DetachedFrom(here));
    assert_eq!(to(&s.visit), None);
}
