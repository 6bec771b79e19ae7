//! A sign keeps its weight, and is told, whatever comes after it: a repeat, another trial, a changed
//! age, an end of the screen. What must hold is local policy unless a source is named.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::nursing::write;
use penlight::measure::time::PageLife;
use penlight::measure::time::Stamp;
use penlight::record::event::Event;
use penlight::record::event::Route;
use penlight::record::event::Text;

#[test]
fn an_age_put_right_takes_back_no_sign() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, -2_000)]);
    assert_eq!(s.verdict(), Verdict::Stop);
    s.age(Some(Age::Months(18)));
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(s.text().starts_with("STOP"), "{}", s.text());
}

/// A repeat that was opened and left is no repeat.
#[test]
fn an_unbegun_trial_clears_nothing() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Cracker);
    s.mark(0, MarkKind::Start).mark(20_000, MarkKind::End);
    s.choose("watch-cut", "called-away");
    let before = s.verdict();
    assert_eq!(before, Verdict::Incomplete);
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    s.open(TaskId::Cracker);
    assert_eq!(s.verdict(), Verdict::Incomplete);
}

/// What was tried and holds: a sign keeps its weight whatever comes after it.
#[test]
fn a_sign_keeps_its_weight_whatever_comes_after_it() {
    // A text that left as clear, then a choke.
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let text = s.text();
    s.say(Event::Issued {
        route: Route::Copied,
        text,
        clock: "14:31".to_owned(),
        which: Text::Nursing,
        corrects: None,
    });
    s.mark(160_000, MarkKind::Sign(Sign::Choke));
    let text = write(&s.visit, &clock("14:40")).unwrap().text;
    assert!(
        text.starts_with("CORRECTED 14:40, replaces 14:31.\nSTOP"),
        "{text}"
    );
    // A sign of which the clocks can't say when.
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.mark_stamped(
        Stamp {
            life: PageLife(8),
            ..at(10_908_400)
        },
        MarkKind::Sign(Sign::Cough),
    );
    assert_eq!(s.verdict(), Verdict::Refer);
    // A cough, then a refusal, a broken-off screen, a child's age.
    for end in [
        EndedEarly::Refused,
        EndedEarly::Withdrew,
        EndedEarly::BrokenOff,
    ] {
        let mut s = ready(Role::Screener);
        s.timed_cup(300_000, &[(Sign::Cough, 5_000)], "clear");
        s.say(Event::EndedEarly(end));
        s.age(Some(Age::Months(18)));
        assert_eq!(s.verdict(), Verdict::Refer, "{end:?}");
        assert!(s.text().contains("coughed"), "{}", s.text());
    }
    // A choke in a loose tally that was attached to an examination without a swallow.
    let mut s = adult(Role::Screener);
    s.on(ScreenId::OralMotor);
    s.say(Event::Attached {
        from: s.visit.id.clone(),
        trial: 0,
        task: TaskId::Meal,
        length: None,
        marks: vec![
            (at(0), MarkKind::Start),
            (at(20_000), MarkKind::Sign(Sign::Choke)),
            (at(60_000), MarkKind::End),
        ],
        hidden: Vec::new(),
        answers: Vec::new(),
        chokings: Vec::new(),
    });
    assert!(s.text().starts_with("STOP"), "{}", s.text());
    // A cough with the first own trial, and the same again without.
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::Cough, 1_000)])
        .choose("own-level", "d0");
    s.given(TaskId::Own, 300_000, &[]).choose("own-level", "d0");
    assert_eq!(s.verdict(), Verdict::Refer);
    assert!(
        s.text().contains("given twice, coughed in 1"),
        "{}",
        s.text()
    );
    // "A sign decided already", and there was none.
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start)
        .mark(108_400, MarkKind::End)
        .choose("watch-cut", "sign")
        .choose("cup", "one-go")
        .choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    // A voice gone, not wet.
    let mut s = ready(Role::Screener);
    s.water(&[]).choose("voice-after", "other");
    assert_eq!(s.verdict(), Verdict::Refer);
}

#[test]
fn a_second_cup_that_was_opened_and_left_hides_nothing_of_the_first() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::ThroatClear, 5_000)]);
    s.open(TaskId::Water90);
    let text = s.text();
    assert!(
        text.contains("cleared the throat") && !text.contains("not given"),
        "{text}"
    );
}

/// Sips that were begun and a sign in them, whatever comes of the cup.
#[test]
fn a_sign_in_added_sips_is_not_taken_back_by_a_clear_cup() {
    let mut s = ready(Role::Slp);
    s.given(TaskId::Sips, 100_000, &[(Sign::Cough, 1_000)])
        .number("sip", 5);
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Refer);
}

/// A request to stop in one cracker, and a second that went well.
#[test]
fn a_request_to_stop_in_a_cracker_is_not_taken_back_by_a_second() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    for (from, sign) in [(300_000, true), (500_000, false)] {
        s.cracker();
        s.mark(from, MarkKind::Start)
            .mark(from, MarkKind::Tap)
            .mark(from + 20_000, MarkKind::End);
        if sign {
            s.mark(from + 30_000, MarkKind::Sign(Sign::AskedToStop));
        }
        s.mark(from + 80_030, MarkKind::WatchOver);
    }
    assert!(s.text().contains("asked to stop"), "{}", s.text());
}

#[test]
fn a_request_to_stop_is_told_though_the_screen_was_then_ended() {
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[(Sign::AskedToStop, 5_000)])
        .number("sip", 5);
    assert!(s.text().contains("asked to stop"), "{}", s.text());
    s.say(Event::EndedEarly(EndedEarly::BrokenOff));
    assert!(s.text().contains("asked to stop"), "{}", s.text());
}

/// "Yes: it was given", pressed by mistake and taken back: the cough was there all the same.
#[test]
fn a_sign_that_was_given_to_the_next_trial_is_not_lost_with_it() {
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[]).choose("own-level", "d0");
    let before = s.trial;
    s.mark(229_000, MarkKind::Sign(Sign::Cough));
    assert_eq!(s.verdict(), Verdict::Incomplete);
    let to = s.open(TaskId::Own);
    s.choose("own-level", "d0").mark(229_000, MarkKind::Start);
    s.say(Event::SignMoved {
        from: before,
        to,
        sign: Sign::Cough,
        at: at(229_000),
    });
    assert_eq!(s.verdict(), Verdict::Refer);
    // What "undo" of the page takes back: the newest press, and again.
    for _ in 0..2 {
        let trial = s.visit.undo_goes_to(TaskId::Own).unwrap();
        s.say(Event::Undo { trial });
    }
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
}

/// Water given while the minute of an own trial still ran: a cough may be of either.
#[test]
fn a_sign_within_the_minute_of_another_task_names_both() {
    let mut s = ready(Role::Slp);
    s.open(TaskId::Own);
    s.choose("own-level", "f4").mark(90_000, MarkKind::Start);
    s.mark(95_000, MarkKind::End);
    s.pass(TaskId::Water90, "watch.Own", Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    let text = s.text();
    assert!(text.contains("either may be meant"), "{text}");
}

#[test]
fn a_clear_cup_with_a_throat_clear_is_not_told_as_without_a_sign() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::ThroatClear, 5_000)]);
    assert_eq!(s.verdict(), Verdict::Pass);
    for flag in s.visit.decision().unwrap().clear {
        assert!(!flag.reason().contains("no sign"), "{}", flag.reason());
    }
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::Pause, 1_000)])
        .choose("own-level", "d0");
    for flag in s.visit.decision().unwrap().clear {
        assert!(!flag.reason().contains("no sign"), "{}", flag.reason());
    }
    let mut s = stepped(Role::Screener, 97);
    s.sips_given(&mut |n, s| {
        if n == 5 {
            let from = 100_000 + 5 * 70_000;
            s.mark(from + 5_000, MarkKind::Sign(Sign::ThroatClear));
        }
    });
    for flag in s.visit.decision().unwrap().clear {
        assert!(!flag.reason().contains("no sign"), "{}", flag.reason());
    }
}

fn undone_at(s: &mut Scene, ms: i64) {
    let trial = s.trial;
    s.say_at(at(ms), Event::Undo { trial });
}

/// A cough at 14:01; twenty minutes later, after a reload, a thumb on "Undo: cough". The visit read
/// "no sign seen" and nothing told of it.
#[test]
fn a_sign_that_is_taken_back_long_after_its_press_is_told() {
    let cough_in = |task| {
        let mut s = ready(Role::Slp);
        match task {
            TaskId::Water90 => s.water(&[(Sign::Cough, 1_000)]),
            _ => s
                .given(task, 100_000, &[(Sign::Cough, 1_000)])
                .choose("own-level", "d0"),
        };
        s
    };
    for task in [TaskId::Water90, TaskId::Own] {
        let mut s = cough_in(task);
        undone_at(&mut s, 22 * MINUTE);
        if task == TaskId::Own {
            s.water(&[]);
        }
        assert_eq!(s.verdict(), Verdict::Pass);
        let text = s.text();
        let words = "coughed: pressed, and taken back 20 minutes later";
        assert!(text.starts_with("NO SIGN THAT REFERS"), "{text}");
        assert!(text.contains(words), "{text}");
        let of = if task == TaskId::Water90 {
            "90 mL of water drunk in one go in 8 seconds, no sign"
        } else {
            "0 Thin: given once, no sign"
        };
        assert!(!text.contains(of), "{text}");
        // At once it was a slip.
        let mut s = cough_in(task);
        undone_at(&mut s, 2 * MINUTE);
        assert!(!s.text().contains("taken back"), "{}", s.text());
    }
}
