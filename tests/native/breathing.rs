//! Failing breathing: who is called, and that no later count takes it back.
//! What must hold is local policy unless a source is named.

use crate::support::*;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::breathing;

/// Whatever else closed the gate, failing breathing is what the ward reads first.
#[test]
fn failing_breathing_gives_the_headline_of_a_closed_gate() {
    let mut s = adult(Role::Screener);
    s.gate(&[("consent", "no"), ("distress", "distress")]);
    let text = s.text();
    let first = text.lines().next().unwrap();
    assert!(
        first.contains("visible effort") && first.contains("the doctor now"),
        "{text}"
    );
}

/// "Do it again" pressed and left: the 30 that were counted stand.
#[test]
fn a_count_opened_and_left_takes_back_no_failing_breathing() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(30);
    assert!(s.first_line().contains("the doctor now"), "{}", s.text());
    s.open(TaskId::Breathing);
    assert!(s.first_line().contains("the doctor now"), "{}", s.text());
}

/// A loose count of an hour ago, attached now, is no newer reading.
#[test]
fn an_attached_older_count_takes_back_no_failing_breathing() {
    let mut s = adult(Role::Screener);
    s.gate(&[]);
    s.open(TaskId::Breathing);
    s.mark(3_600_000, MarkKind::Start);
    for n in 0..30 {
        s.mark(3_600_500 + n * 1_990, MarkKind::Tap);
    }
    s.mark(3_660_020, MarkKind::WindowOver);
    assert!(s.first_line().contains("the doctor now"), "{}", s.text());
    let mut marks = vec![(at(0), MarkKind::Start)];
    marks.extend((0..16).map(|n| (at(500 + n * 3_700), MarkKind::Tap)));
    marks.push((at(60_020), MarkKind::WindowOver));
    s.attach(TaskId::Breathing, marks);
    assert!(
        s.first_line().contains("the doctor now")
            && !holds(TaskId::Water90, &s.visit.exam).is_empty(),
        "{}",
        s.text()
    );
}

/// Only the saturation was read anew: the breaths that were counted stand.
#[test]
fn a_saturation_read_anew_takes_back_no_failing_breathing() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(30);
    s.open(TaskId::Breathing);
    s.number(breathing::SATURATION, 97);
    assert!(s.first_line().contains("the doctor now"), "{}", s.text());
    // A count that was begun and left clears nobody either.
    s.open(TaskId::Breathing);
    s.mark(0, MarkKind::Start).mark(3_000, MarkKind::Tap);
    assert!(s.first_line().contains("the doctor now"), "{}", s.text());
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).open(TaskId::Breathing);
    s.mark(0, MarkKind::Start);
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// Too much oxygen in confirmed failure closes the gate: the ward must read why.
#[test]
fn the_second_scale_that_closes_the_gate_is_named() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16);
    s.number(breathing::SATURATION, 98)
        .number(breathing::TARGET, 88)
        .choose(breathing::OXYGEN, "oxygen")
        .choose(breathing::CONFIRMED, "yes");
    let head = s.first_line();
    assert!(head.contains("98 %"), "{}", s.text());
    assert!(head.contains("the doctor now"), "{}", s.text());
}

/// 40 a minute by even taps: not counted for 60 seconds, and fast all the same.
#[test]
fn fast_breathing_by_taps_goes_to_the_doctor_now() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).open(TaskId::BreathTaps);
    s.mark(0, MarkKind::Start).mark(0, MarkKind::Tap);
    for n in 1..20 {
        s.mark(n * 1_500, MarkKind::Tap);
    }
    s.mark(30_000, MarkKind::End);
    assert!(s.text().contains("40"), "{}", s.text());
    assert!(s.first_line().contains("the doctor now"), "{}", s.text());
}

/// A minute of breaths counted alone, attached to an examination of the mouth.
#[test]
fn failing_breathing_that_was_attached_goes_to_the_doctor_now() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OralMotor);
    let mut marks = vec![(at(0), MarkKind::Start)];
    marks.extend((0..34).map(|n| (at(500 + n * 1_700), MarkKind::Tap)));
    marks.push((at(60_020), MarkKind::WindowOver));
    s.attach(TaskId::Breathing, marks);
    let text = s.text();
    assert!(
        s.first_line().contains("the doctor now") && text.contains("deterioration"),
        "{text}"
    );
}
