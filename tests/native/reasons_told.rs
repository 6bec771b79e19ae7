//! What was given although something was in the way is told with its reason, and only that.
//! What must hold is local policy.

use crate::support::*;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::record::event::Event;

#[test]
fn what_was_gone_past_is_told_in_its_words() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[2_000, 9_000]);
    let hold = holds(TaskId::Water90, &s.visit.exam).remove(0);
    s.say(Event::WentOn {
        hold: hold.id,
        because: "the team agreed".to_owned(),
        by: Role::Screener,
        says: hold.says,
        initials: None,
        ground: None,
    });
    s.water(&[]);
    let told = "water was given despite this: 2 dry swallows in 30 seconds (3 or more expected); decided by";
    assert!(s.text().contains(told), "{}", s.text());
}

/// What was gone past after a choke is told, at the table too.
#[test]
fn going_on_to_a_meal_after_a_choke_is_told() {
    let mut s = ready(Role::Slp);
    s.say(Event::Choking(at(1_000)))
        .say(Event::BackToBaseline(at(60_000)));
    s.pass(TaskId::Meal, "choked", Role::Slp);
    s.open(TaskId::Meal);
    s.mark(100_000, MarkKind::Start)
        .mark(200_000, MarkKind::End);
    assert!(
        s.text().contains("needed for the assessment"),
        "{}",
        s.text()
    );
}

/// A cough with an own trial; going on to the cup was reasoned for, and no cup was given.
#[test]
fn a_reason_that_led_to_nothing_is_not_told_as_given() {
    let mut s = ready(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::Cough, 1_000)])
        .choose("own-level", "d2");
    s.pass(TaskId::Water90, "after.Own", Role::Slp);
    assert!(!s.text().contains("given despite"), "{}", s.text());
    // A dry swallow is nothing given.
    s.dry(&[2_000, 9_000, 17_000]);
    assert!(!s.text().contains("given despite"), "{}", s.text());
    s.water(&[]);
    let told = "water was given despite this: a sign was seen";
    assert!(
        s.text().to_lowercase().contains(&told.to_lowercase()),
        "{}",
        s.text()
    );
}

/// Water that was given before the reason was is not what the reason was for.
#[test]
fn a_reason_names_what_was_given_after_it() {
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    s.pass(TaskId::Cracker, "cracker.", Role::Slp);
    s.cracker();
    assert!(!s.text().contains("despite this"), "{}", s.text());
    // What else was given was not given for that reason.
    let cracker = std::mem::replace(&mut s.trial, 0);
    s.given(TaskId::Own, 200_000, &[]);
    assert!(!s.text().contains("despite this"), "{}", s.text());
    s.trial = cracker;
    s.mark(300_000, MarkKind::Start)
        .mark(300_000, MarkKind::Tap)
        .mark(320_000, MarkKind::End)
        .mark(380_030, MarkKind::WatchOver);
    let text = s.text();
    assert!(
        text.contains("cracker was given despite this") && !text.contains("ater was given despite"),
        "{text}"
    );
}

/// Given while drowsy, with a reason; awake since: that it was given so is told.
#[test]
fn what_was_gone_past_at_the_gate_is_told_though_it_holds_since() {
    let mut s = adult(Role::Slp);
    s.gate(&[("awake", "drowsy")])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    s.pass(TaskId::Water90, "gate.awake", Role::Slp);
    s.water(&[]);
    assert!(
        s.text().contains("needed for the assessment"),
        "{}",
        s.text()
    );
    s.gate(&[]);
    let text = s.text();
    assert!(
        text.contains("needed for the assessment") && text.contains("rowsy"),
        "{text}"
    );
}

#[test]
fn breathing_that_was_gone_past_is_told_though_it_was_counted_anew() {
    let mut s = adult(Role::Slp);
    s.gate(&[]).breaths(30).dry(&[2_000, 9_000, 17_000]);
    s.pass(TaskId::Water90, "breathing.rate", Role::Slp);
    s.water(&[]).breaths(16);
    assert!(
        s.text().contains("needed for the assessment"),
        "{}",
        s.text()
    );
}

#[test]
fn what_the_mouth_showed_and_was_gone_past_is_told_though_it_was_taken_back() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::FullVisit).gate(&[]).breaths(16);
    s.dry(&[2_000, 9_000, 17_000])
        .examined(&[("voice.ah", "wet")]);
    s.pass(TaskId::Water90, "oral.voice.ah", Role::Slp);
    s.water(&[]).examined(&[]);
    assert!(
        s.text().contains("needed for the assessment"),
        "{}",
        s.text()
    );
}

/// What is typed ends as it may.
#[test]
fn a_reason_that_was_typed_with_a_full_stop_is_told_with_one() {
    let mut s = adult(Role::Slp);
    s.gate(&[("awake", "drowsy")])
        .breaths(16)
        .dry(&[2_000, 9_000]);
    s.pass_all(TaskId::Water90, " The team agreed. ", Role::Slp);
    s.water(&[]);
    let text = s.text();
    assert!(text.contains("the team agreed"), "{text}");
    assert!(
        !text.contains("..") && !text.contains(".;") && !text.contains(". ;"),
        "{text}"
    );
}
