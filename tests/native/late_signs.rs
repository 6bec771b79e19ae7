//! Signs after the minute that counts: told, asked for between two trials, and never "no sign seen".
//! That they do not count is the published rule; the rest is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::by_mouth::lag;
use penlight::record::event::Event;
use penlight::record::head::Head;
use penlight::wording::verdict::in_list;

/// Own trials follow one another: a sign long after the minute of one may be the next one's, given
/// with both hands busy. Until somebody says, nothing is clear.
#[test]
fn a_sign_between_two_own_trials_is_asked_for() {
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[]).choose("own-level", "d0");
    assert_eq!(s.verdict(), Verdict::Pass);
    assert!(
        s.text().starts_with("NO SIGN SEEN in what was given"),
        "{}",
        s.text()
    );
    let late = at(100_000 + 2_000 + 127_000);
    s.mark(229_000, MarkKind::Sign(Sign::Cough));
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(
        s.text()
            .contains("not said whether the next was in the mouth"),
        "{}",
        s.text()
    );
    // It was: the next trial is given, with that sign.
    let mut with = own_trials(Role::Slp);
    with.given(TaskId::Own, 100_000, &[])
        .choose("own-level", "d0");
    let before = with.trial;
    with.mark(229_000, MarkKind::Sign(Sign::Cough));
    let to = with.open(TaskId::Own);
    with.mark(229_000, MarkKind::Start);
    with.say(Event::SignMoved {
        from: before,
        to,
        sign: Sign::Cough,
        at: late,
    });
    assert_eq!(with.verdict(), Verdict::Refer);
    // It was not: told, and not counted.
    s.choose(&lag::late_id(late), lag::NOTHING);
    assert_eq!(s.verdict(), Verdict::Pass);
}

/// A cough 5 seconds after the minute of the first cup, and a second cup that was clear.
#[test]
fn a_late_cough_of_the_first_cup_is_told_after_a_clear_second() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 65_000)]);
    assert!(s.text().contains("coughed 65 seconds"), "{}", s.text());
    s.water(&[]);
    assert!(s.text().contains("coughed 65 seconds"), "{}", s.text());
}

/// A cough long after the minute: until it is said what was in the mouth, nothing more is given.
#[test]
fn a_late_sign_that_nobody_placed_holds_the_next_trial() {
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[]).number("sip", 3);
    s.choose("sip-way", "under-tongue")
        .choose("extra-swallows", "2");
    s.mark(240_000, MarkKind::Sign(Sign::Cough));
    let offer = (tasks::spec(TaskId::Sips).next)(&s.visit.exam).unwrap();
    assert!(
        !offer.is_now() || !holds(TaskId::Sips, &s.visit.exam).is_empty(),
        "{offer:?}"
    );
}

#[test]
fn a_late_sign_of_the_sips_that_nobody_placed_holds_an_own_trial() {
    let mut s = ready(Role::Screener);
    s.given(TaskId::Own, 100_000, &[]).choose("own-level", "d0");
    s.mark(240_000, MarkKind::Sign(Sign::Cough));
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// Said to be of nothing: then it holds no more. A reason frees what it was given for.
#[test]
fn a_late_sign_holds_until_it_is_said() {
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[]).number("sip", 3);
    s.choose("sip-way", "under-tongue")
        .choose("extra-swallows", "2");
    assert!(holds(TaskId::Sips, &s.visit.exam).is_empty());
    s.mark(240_000, MarkKind::Sign(Sign::Cough));
    let held = holds(TaskId::Sips, &s.visit.exam);
    assert_eq!(held.len(), 1, "{held:?}");
    assert!(held[0].advice.contains("next was in the mouth"), "{held:?}");
    let mut on = s.visit.clone();
    assert!(held[0].go_on.open_to(Role::Screener));
    s.choose(&lag::late_id(at(240_000)), lag::NOTHING);
    assert!(holds(TaskId::Sips, &s.visit.exam).is_empty());
    std::mem::swap(&mut s.visit, &mut on);
    s.pass(TaskId::Sips, "again.Sips", Role::Screener);
    assert!(holds(TaskId::Sips, &s.visit.exam).is_empty());
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// Told and not counted, by the published rule; but nobody reads "no sign" where one was pressed.
#[test]
fn a_late_sign_is_no_no_sign() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 121_000)]);
    assert_eq!(s.verdict(), Verdict::Pass);
    assert_eq!(
        s.headline(),
        "No sign within the 60 seconds; one came later"
    );
    let text = s.text();
    assert!(
        text.starts_with(
            "NO SIGN within the 60 seconds; LATER: coughed 121 seconds after the last swallow of \
             the 90 mL. This screen changes no eating or drinking order."
        ),
        "{text}"
    );
    assert!(
        text.contains("Recommendation: let speech-language pathology know of the sign; keep to"),
        "{text}"
    );
    assert!(!text.contains("no sign"), "{text}");
    s.decided();
    assert_eq!(in_list(&Head::of(&s.visit)), "Sign noted");
}

/// One that is only noted, in time; and beside it a graver one that came too late.
#[test]
fn a_sign_that_is_only_noted_is_no_no_sign() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::ThroatClear, 20_000)]);
    assert_eq!(s.headline(), "No sign that refers; one was noted");
    let noted = "NO SIGN THAT REFERS; NOTED: cleared the throat 20 seconds after the last swallow \
                 of the 90 mL. ";
    assert!(s.text().starts_with(noted), "{}", s.text());

    let mut s = ready(Role::Screener);
    s.water(&[(Sign::ThroatClear, 20_000), (Sign::Cough, 70_000)]);
    let noted = "NO SIGN THAT REFERS; NOTED: coughed 70 seconds after the last swallow of the \
                 90 mL, and 1 more. ";
    assert!(s.text().starts_with(noted), "{}", s.text());
    assert!(s.text().contains("cleared the throat 20 seconds"));

    let mut s = ready(Role::Screener);
    s.water(&[]);
    assert_eq!(s.headline(), "No sign seen on this screen");
}

/// The sips have a rule of their own for it.
#[test]
fn a_late_sign_of_a_sip_is_no_no_sign() {
    let mut s = stepped(Role::Screener, 97);
    s.sips_given(&mut |n, s| {
        if n == 2 {
            s.mark(305_000, MarkKind::Sign(Sign::Cough));
            s.choose(&lag::late_id(at(305_000)), lag::NOTHING);
        }
    });
    s.given(TaskId::Water90, 600_000, &[])
        .choose("cup", "one-go");
    assert_eq!(s.verdict(), Verdict::Pass, "{}", s.text());
    let late = "NO SIGN within the 60 seconds; LATER: sip of 5 mL: coughed 63 seconds after the \
                swallow. ";
    assert!(s.text().starts_with(late), "{}", s.text());
}

/// Thirty seconds at the first line: a cough that does not count was one all the same.
#[test]
fn the_headline_does_not_read_over_a_sign_that_decides_nothing() {
    for (sign, after, noted) in [
        (
            Sign::Cough,
            64_000,
            "NO SIGN within the 60 seconds; LATER: ",
        ),
        (Sign::ThroatClear, 5_000, "NO SIGN THAT REFERS; NOTED: "),
    ] {
        let mut s = ready(Role::Screener);
        s.water(&[(sign, after)]);
        assert_eq!(s.verdict(), Verdict::Pass);
        assert!(s.first_line().starts_with(noted), "{}", s.text());
        assert!(s.found().contains(sign.past()), "{}", s.text());
    }
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::ThroatClear, 1_000)])
        .choose("own-level", "d0");
    let noted = "NO SIGN THAT REFERS in what was given, listed below, and of nothing else; NOTED: ";
    assert!(s.first_line().starts_with(noted), "{}", s.text());
    let mut s = ready(Role::Screener);
    s.water(&[]);
    assert!(
        s.first_line()
            .starts_with("NO SIGN SEEN on this screen. This"),
        "{}",
        s.text()
    );
}

/// "STOP", and beside it "later than the 60 seconds that count", would contradict each other.
#[test]
fn what_stops_whenever_it_was_seen_is_not_called_too_late() {
    for sign in [Sign::Choke, Sign::BreathingChange, Sign::NoSwallow] {
        let mut s = own_trials(Role::Slp);
        s.given(TaskId::Own, 100_000, &[(sign, 61_500)])
            .choose("own-level", "d0");
        assert_eq!(s.verdict(), Verdict::Stop);
        assert!(!s.text().contains("that count"), "{}", s.text());
    }
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::Cough, 61_500)])
        .choose("own-level", "d0");
    assert!(
        s.text()
            .contains("LATER: 0 Thin (given once): coughed 62 seconds"),
        "{}",
        s.text()
    );
}

/// A change of breathing 61 seconds after the swallow stops whatever its time; the page said
/// "told, not counted" of it.
#[test]
fn what_stops_whenever_it_comes_is_not_called_uncounted() {
    for task in [TaskId::Water90, TaskId::Own] {
        for sign in [Sign::BreathingChange, Sign::NoSwallow, Sign::Choke] {
            let mut s = ready(Role::Screener);
            s.given(task, 100_000, &[(sign, 61_000)]);
            assert_eq!(s.verdict(), Verdict::Stop, "{sign:?}");
            let near = s.visit.exam.trials.iter().flat_map(lag::near);
            assert_eq!(near.count(), 0, "{sign:?}");
        }
    }
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 61_000)]);
    let near = s.visit.exam.trials.iter().flat_map(lag::near);
    assert_eq!(near.count(), 1);
}
