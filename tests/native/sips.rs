//! Small sips before the 90 mL: what comes next, what stops them, and worked examples of 3 mL.
//!
//! Keys such as DAN06T are those of `clinical/sources.csv`, where the citations stand.

use crate::support::any::any_sign;
use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::flag::Flag;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::looked::Looked;
use penlight::clinical::findings::next_trial::{NextTrial, Sip, ToGive, WaitsFor};
use penlight::clinical::findings::trial::Mark;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::findings::trial::Trial;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::policy::Wording;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::by_mouth::watched;
use penlight::clinical::tasks::sips;
use penlight::clinical::tasks::sips::judge::Next;
use penlight::clinical::tasks::sips::three_ml::Grade;
use penlight::clinical::tasks::sips::three_ml::grades;
use penlight::clinical::tasks::six_signs;
use penlight::clinical::tasks::six_signs::recorded::Whence;
use penlight::clinical::tasks::spec::WATCH_CUT;
use penlight::clinical::tasks::water;
use penlight::handover::nursing;
use penlight::handover::nursing::Clock;
use penlight::measure::time::Millis;
use penlight::measure::units::Millilitres;
use penlight::record::event::Action;
use penlight::record::id::VisitId;
use penlight::record::visit::Visit;
use proptest::prelude::*;

fn give(ml: u8) -> Next {
    Next::Give(Millilitres::whole(ml))
}

/// What the pad of the sips offers.
fn offered(exam: &Exam) -> NextTrial {
    (tasks::spec(TaskId::Sips).next)(exam).unwrap()
}

fn of_3(nth: usize) -> Sip {
    let size = Millilitres::whole(3);
    Sip { size, nth, of: 2 }
}

/// DAN06T: small before large, each twice; 3 mL first and the 90 mL last are local policy.
#[test]
fn all_clear_reads_as_no_sign() {
    let exam = exam_with_sips(clear_sips(6), Some(water()));
    let decision = decided(&exam);
    assert_eq!(decision.verdict, Verdict::Pass, "{decision:?}");
    let clear = reason(&decision.clear, "sips of 3, 5, 10 mL, each given twice");
    rests_on(clear, &source::DAN06T);
}

#[test]
fn what_comes_next_follows_the_plan() {
    let due: Vec<Next> = (0..=6)
        .map(|n| sips::next(&exam_with_sips(clear_sips(n), None)))
        .collect();
    let plan = [3, 3, 5, 5, 10, 10].map(give);
    assert_eq!(due[..6], plan);
    assert_eq!(due[6], Next::Done);
}

#[test]
fn while_the_watch_runs_the_next_is_made_ready_and_not_given() {
    let mut given = clear_sips(1);
    given[0].marks.pop();
    let exam = exam_with_sips(given, None);
    assert_eq!(sips::next(&exam), give(3));
    assert_eq!(offered(&exam), NextTrial::Waits(WaitsFor::Watch(of_3(2))));
    let over = offered(&exam_with_sips(clear_sips(1), None));
    assert_eq!(over, NextTrial::Now(ToGive::Sip(of_3(2))));
}

#[test]
fn nothing_is_offered_before_the_voice_was_heard() {
    let first = offered(&exam_with_sips(Vec::new(), None));
    assert_eq!(first, NextTrial::Waits(WaitsFor::VoiceBefore));
    let mut given = clear_sips(1);
    given[0].answers.remove(water::VOICE_AFTER);
    let open = offered(&exam_with_sips(given, None));
    assert_eq!(open, NextTrial::Waits(WaitsFor::Answers));
}

/// The last sip watched to its end, and nobody said how the voice was: not all were clear.
#[test]
fn a_sip_of_which_the_voice_was_not_heard_is_not_clear() {
    let mut given = clear_sips(6);
    given[5].answers.remove(water::VOICE_AFTER);
    let exam = exam_with_sips(given, Some(water()));
    assert_eq!(decided(&exam).verdict, Verdict::Incomplete);
    assert!(!sips::summary(&exam).unwrap().clear);
}

#[test]
fn a_watch_cut_short_asks_for_the_same_sip_again() {
    let mut given = clear_sips(3);
    given[2].marks.pop();
    choose(&mut given[2], WATCH_CUT, "called-away");
    let exam = exam_with_sips(given, None);
    // 3 mL twice, 5 mL once and not watched: 5 mL is due as before, twice.
    assert_eq!(sips::next(&exam), give(5));
    reason(
        &sips::flags(&exam),
        "sips of 5 mL: 0 of 2 given and watched",
    );
}

/// DAN06T, GRA: a cough at once or within one minute ends it; no larger sip is given.
#[test]
fn every_stop_point_ends_the_sips_and_holds_the_90_ml() {
    for n in 1..=6 {
        for (sign, verdict) in [
            (Sign::Cough, Verdict::Refer),
            (Sign::VoiceChange, Verdict::Refer),
            (Sign::Spill, Verdict::Refer),
            (Sign::BreathingChange, Verdict::Stop),
            (Sign::NoSwallow, Verdict::Stop),
            (Sign::Choke, Verdict::Stop),
            (Sign::AskedToStop, Verdict::Incomplete),
        ] {
            let mut given = clear_sips(n);
            let last = given.last_mut().unwrap();
            let end = last.end().unwrap();
            last.marks.push(Mark {
                at: end.later(Millis(20_000)),
                kind: MarkKind::Sign(sign),
            });
            let exam = exam_with_sips(given, None);
            assert_eq!(sips::next(&exam), Next::Ended, "{sign:?} after sip {n}");
            assert_eq!(offered(&exam), NextTrial::Waits(WaitsFor::SignSeen));
            assert_eq!(decided(&exam).verdict, verdict, "{sign:?} after sip {n}");
            let mut held = holds(TaskId::Water90, &exam);
            // A choke holds by itself besides.
            let choke = held.iter().any(|h| h.id.starts_with("choked."));
            assert_eq!(choke, sign == Sign::Choke);
            held.retain(|h| !h.id.starts_with("choked."));
            assert_eq!(held.len(), 1, "{held:?}");
            let slp_only = !held[0].go_on.open_to(Role::Screener);
            assert_eq!(slp_only, verdict != Verdict::Incomplete, "{sign:?}");
            is_handed_over(&exam, sign, n);
        }
    }
}

/// The reason and the text for the ward name the sip and the sign.
fn is_handed_over(exam: &Exam, sign: Sign, n: usize) {
    let decision = decided(exam);
    let mut visit = Visit::new(VisitId::new("visit-0000000001").unwrap());
    visit.screen = exam.screen;
    visit.plan.verdict = decision.verdict.id().to_owned();
    visit.plan.action = Some(Action::NothingByMouth);
    visit.exam = exam.clone();
    let now = Clock {
        date: "25 Nov 2026".to_owned(),
        time: "14:40".to_owned(),
        wall: Millis::ZERO,
        local: |wall| ("25 Nov 2026".to_owned(), wall.0.to_string()),
    };
    let text = nursing::write(&visit, &now).unwrap().text;
    let begins = match decision.verdict {
        Verdict::Stop => "STOP: no more trials by mouth.",
        Verdict::Refer => "REFER to ",
        _ => "INCOMPLETE: not cleared.",
    };
    assert!(text.starts_with(begins), "{sign:?} after sip {n}: {text}");
    assert!(text.contains("NOTHING BY MOUTH"), "{text}");
    assert!(text.chars().count() < nursing::MOST, "{text}");
    let ml = [3, 3, 5, 5, 10, 10][n - 1];
    let told = format!("sip of {ml} mL: {}", sign.past());
    let flags: Vec<Flag> = decision
        .reasons
        .into_iter()
        .chain(decision.missing)
        .collect();
    assert!(words(&flags).contains(&told), "{told}: {}", words(&flags));
    assert!(text.contains(&told), "{told} is not in {text}");
}

#[test]
fn a_voice_that_turned_wet_is_a_sign_without_a_press() {
    let mut given = clear_sips(2);
    choose(&mut given[1], water::VOICE_AFTER, "wet");
    let exam = exam_with_sips(given, None);
    assert_eq!(decided(&exam).verdict, Verdict::Refer);
    reason(&decided(&exam).reasons, "sip of 3 mL: voice turned wet");
}

/// The sips count among the six signs, each place named once; the voice as it was answered.
#[test]
fn six_signs_read_the_sips() {
    let mut given = clear_sips(6);
    let rows = six_signs::rows(&exam_with_sips(given.clone(), None));
    assert_eq!(rows[5].looked, Looked::Absent);
    let (task, seen) = (TaskId::Sips, false);
    assert_eq!(rows[5].from, [Whence::Water { task, seen }]);
    choose(&mut given[1], water::VOICE_AFTER, "wet");
    let rows = six_signs::rows(&exam_with_sips(given, None));
    assert_eq!(rows[5].looked, Looked::Present);
}

#[test]
fn the_90_ml_wait_for_every_sip() {
    for n in 0..6 {
        let exam = exam_with_sips(clear_sips(n), None);
        assert_eq!(holds(TaskId::Water90, &exam).len(), 1, "{n}");
        assert_eq!(decided(&exam).verdict, Verdict::Incomplete, "{n}");
    }
    assert!(holds(TaskId::Water90, &exam_with_sips(clear_sips(6), None)).is_empty());
    // And the plain screen is as it was.
    let plain = exam(vec![breaths(16), dry(&[2_100, 9_800, 17_500])]);
    assert!(holds(TaskId::Water90, &plain).is_empty());
}

#[test]
fn sips_that_are_missing_leave_it_incomplete_whatever_the_90_ml_showed() {
    for n in 0..6 {
        let exam = exam_with_sips(clear_sips(n), Some(water()));
        assert_eq!(decided(&exam).verdict, Verdict::Incomplete, "{n}");
    }
}

#[test]
fn fewer_than_two_more_dry_swallows_hold_the_90_ml_and_refer_nobody() {
    let mut given = clear_sips(6);
    choose(&mut given[1], sips::EXTRA, "1");
    let exam = exam_with_sips(given, None);
    let flags = sips::flags(&exam);
    assert_eq!(worst(&flags), Some(Level::Incomplete), "{flags:?}");
    reason(
        &flags,
        "fewer than two more dry swallows within 30 seconds (in 1 of 2 tries)",
    );
    assert_eq!(holds(TaskId::Water90, &exam).len(), 1);
}

#[test]
fn sizes_and_repeats_are_those_of_the_policy() {
    let policy = Policy {
        sip_first: 5,
        sip_second: 10,
        sip_third: 20,
        sip_repeats: 1,
        ..Policy::default()
    };
    let exam = |given: Vec<Trial>| Exam {
        policy: policy.clone(),
        ..exam_with_sips(given, None)
    };
    let sip_at = |ml, n: u32| sip(n, ml, i64::from(n) * 70_000, &[]);
    let one = exam(vec![sip_at(5, 10)]);
    assert_eq!(sips::next(&one), give(10));
    let all = exam(vec![sip_at(5, 10), sip_at(10, 11), sip_at(20, 12)]);
    assert_eq!(sips::next(&all), Next::Done);
    reason(&sips::flags(&all), "sips of 5, 10, 20 mL, each given once");
}

/// Residue counts in wording B only (STM), and is asked only there.
#[test]
fn residue_counts_by_the_wording() {
    let mut given = clear_sips(1);
    choose(&mut given[0], sips::RESIDUE, "yes");
    let a = exam_with_sips(given, None);
    assert!(!tasks::spec(TaskId::Sips).asks(sips::RESIDUE, &a));
    assert_eq!(sips::next(&a), give(3));
    let b = Exam {
        policy: Policy {
            small_water_wording: Wording::B,
            ..Policy::default()
        },
        ..a
    };
    assert!(tasks::spec(TaskId::Sips).asks(sips::RESIDUE, &b));
    assert_eq!(sips::next(&b), Next::Ended);
    assert_eq!(decided(&b).verdict, Verdict::Refer);
}

/// Worked examples of the 3 mL test (STM, TOH03), wording A, each run as a trial.
#[test]
fn three_ml_rows() {
    let run = |signs: &[(Sign, i64)], extra: &str| {
        let mut trial = sip(10, 3, 0, signs);
        choose(&mut trial, sips::EXTRA, extra);
        sips::run(&trial)
    };
    let grade = |runs: &[_]| grades(runs).a;
    let late = 1_000;
    assert_eq!(
        grade(&[run(&[(Sign::NoSwallow, late)], "0")]),
        Some(Grade::NotRated)
    );
    let reacts = [(Sign::NoSwallow, late), (Sign::Cough, late)];
    assert_eq!(grade(&[run(&reacts, "0")]), Some(Grade::One));
    let distress = [(Sign::BreathingChange, late), (Sign::Cough, late)];
    assert_eq!(grade(&[run(&distress, "2")]), Some(Grade::Two));
    assert_eq!(
        grade(&[run(&[(Sign::VoiceChange, late)], "2")]),
        Some(Grade::Three)
    );
    assert_eq!(grade(&[run(&[], "1")]), Some(Grade::Four));
    let (four, five) = (run(&[], "1"), run(&[], "2"));
    assert_eq!(grade(&[five, four, five]), Some(Grade::Four));
    assert_eq!(grade(&[five, five, five]), Some(Grade::Five));
    assert_eq!(
        grade(&[four, run(&[(Sign::Cough, late)], "2")]),
        Some(Grade::Three)
    );
}

#[test]
fn a_watch_in_a_hidden_page_is_told() {
    let mut given = clear_sips(6);
    let end = given[5].end().unwrap();
    given[5]
        .hidden
        .push((end.later(Millis(5_000)), end.later(Millis(45_000))));
    let exam = exam_with_sips(given.clone(), Some(water()));
    assert_eq!(decided(&exam).verdict, Verdict::Incomplete);
    // It was watched; only the phone was dark.
    choose(&mut given[5], watched::WATCHED, "yes");
    let exam = exam_with_sips(given, Some(water()));
    assert_eq!(decided(&exam).verdict, Verdict::Pass);
    reason(&decided(&exam).also, "Watch of 60 seconds: ");
}

proptest! {
    /// A further sign never makes the stepped screen read better.
    #[test]
    fn a_sign_never_improves_the_stepped_screen(
        n in 0_usize..=6,
        with_water in any::<bool>(),
        seen in prop::collection::vec((0_usize..6, any_sign(), -1_000_i64..70_000), 0..3),
        which in 0_usize..6,
        sign in any_sign(),
        after in -1_000_i64..70_000,
    ) {
        let mut given = clear_sips(n);
        let add = |given: &mut Vec<Trial>, i: usize, sign, after| {
            if let Some(trial) = given.get_mut(i) {
                let end = trial.end().unwrap();
                trial.marks.push(Mark { at: end.later(Millis(after)), kind: MarkKind::Sign(sign) });
            }
        };
        for (i, sign, after) in seen {
            add(&mut given, i, sign, after);
        }
        let before = exam_with_sips(given.clone(), with_water.then(water));
        add(&mut given, which, sign, after);
        let now = exam_with_sips(given, with_water.then(water));
        prop_assert!(grave(decided(&now).verdict) >= grave(decided(&before).verdict));
        // And what had ended goes on no more.
        if sips::over(&before) && sips::next(&before) == Next::Ended {
            prop_assert_eq!(sips::next(&now), Next::Ended);
        }
    }
}

/// TOH03: 3 mL without two more dry swallows is not the best of the published grades.
#[test]
fn sips_without_two_more_swallows_are_not_no_sign_seen() {
    let mut s = stepped(Role::Screener, 97);
    s.sips_given(&mut |n, s| {
        if n == 0 {
            s.choose("extra-swallows", "0");
        }
    });
    s.pass(TaskId::Water90, "first.", Role::Screener);
    s.water(&[]);
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
}

/// Throat clearing decides nothing, and was a sign all the same.
#[test]
fn sips_with_a_throat_clear_are_not_told_as_without_a_sign() {
    let mut s = adult(Role::Screener);
    s.on(ScreenId::Stepped)
        .gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    for (n, ml) in [3, 3, 5, 5, 10, 10].into_iter().enumerate() {
        let from = 100_000 + i64::try_from(n).unwrap() * 70_000;
        let signs: &[(Sign, i64)] = match n {
            2 => &[(Sign::ThroatClear, 5_000)],
            _ => &[],
        };
        s.given(TaskId::Sips, from, signs).number("sip", ml);
        if ml == 3 {
            s.choose("sip-way", "under-tongue")
                .choose("extra-swallows", "2");
        }
    }
    let text = s.text();
    assert!(text.contains("cleared the throat"), "{text}");
    assert!(
        text.contains("each watched for 60 seconds") && !text.contains("seconds, no sign"),
        "{text}"
    );
}
