//! The list of visits: it never keeps saying "no sign seen" of one that has one now, and what was
//! closed is closed for what it was closed for. What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::record::event::Event;
use penlight::record::head::Head;
use penlight::wording::verdict::in_list;

/// The list at home never keeps saying "no sign seen" of a visit that has one now, and what was
/// closed is closed for what it was closed for.
#[test]
fn a_sign_after_the_decision_shows_in_the_list() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.decided();
    assert_eq!(in_list(&Head::of(&s.visit)), "No sign seen");
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    let head = Head::of(&s.visit);
    assert_eq!(
        (in_list(&head).as_str(), head.unclosed),
        ("Now: Refer", true)
    );
    s.say(Event::Closed("seen".to_owned()));
    assert!(!Head::of(&s.visit).unclosed);
    s.mark(130_000, MarkKind::Sign(Sign::Choke));
    assert!(Head::of(&s.visit).unclosed);
}

/// Consent, or being awake, taken back after the decision.
#[test]
fn the_list_does_not_keep_no_sign_seen_of_a_gate_that_is_open_again() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.decided();
    assert_eq!(in_list(&Head::of(&s.visit)), "No sign seen");
    s.say(Event::GateCleared("awake".to_owned()));
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert_ne!(in_list(&Head::of(&s.visit)), "No sign seen");
}

#[test]
fn the_list_does_not_keep_no_sign_seen_of_a_screen_that_was_then_ended() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.decided();
    s.say(Event::EndedEarly(EndedEarly::Withdrew));
    assert_ne!(in_list(&Head::of(&s.visit)), "No sign seen");
}

/// Closed for a cough; the press was then put right to what it was.
#[test]
fn what_was_closed_for_a_cough_is_not_closed_for_a_choke() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    let trial = s.trial;
    s.say(Event::Closed("seen".to_owned()));
    assert!(!Head::of(&s.visit).unclosed);
    s.say(Event::Undo { trial })
        .mark(121_000, MarkKind::Sign(Sign::Choke));
    assert!(Head::of(&s.visit).unclosed);
}

/// What can't be read came after the decision: it may be a sign.
#[test]
fn the_list_does_not_keep_no_sign_seen_of_a_visit_with_an_unreadable_entry_since() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.decided();
    assert_eq!(in_list(&Head::of(&s.visit)), "No sign seen");
    s.lost();
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert_ne!(in_list(&Head::of(&s.visit)), "No sign seen");
}

/// "Not done" is too little for an emergency, and somebody is to close it.
#[test]
fn an_emergency_is_one_in_the_list_until_it_is_closed() {
    let mut s = adult(Role::Screener);
    s.gate(&[("new-weakness", "new")]);
    s.decided();
    let head = Head::of(&s.visit);
    assert_eq!(
        (in_list(&head).as_str(), head.unclosed),
        ("Emergency", true)
    );
    s.say(Event::Closed("seen by the doctor".to_owned()));
    assert!(!Head::of(&s.visit).unclosed);
}
