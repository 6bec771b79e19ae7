//! The stepped screen, the timed cup, the own trials and the breathing by taps, each through real
//! trials and the whole screen.
//!
//! Keys such as STM are those of `clinical/source.rs`. Expected figures are those of the worked
//! examples, not of the code.

#![allow(clippy::unwrap_used)]

use crate::support;

use crate::support::in_the_way::holds;
use penlight::clinical::decision::assess::{assess, flags};
use penlight::clinical::decision::verdict::{Decision, Verdict};
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::fact::{Amount, OwnGiven};
use penlight::clinical::findings::flag::{Flag, Level};
use penlight::clinical::findings::go_on::WentOn;
use penlight::clinical::findings::looked::Looked;
use penlight::clinical::findings::trial::{Answer, Mark, MarkKind, Trial};
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::policy::Wording;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::source::Source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::own::{Came, InTrial};
use penlight::clinical::tasks::sips::judge::Next;
use penlight::clinical::tasks::sips::three_ml::{Grade, grades};
use penlight::clinical::tasks::six_signs::recorded::Whence;
use penlight::clinical::tasks::spec::WATCH_CUT;
use penlight::clinical::tasks::{
    self, breath_taps, breathing, by_mouth, cracker, own, sips, six_signs, timed_water, water,
};
use penlight::handover::nursing::{self, Clock};
use penlight::measure::time::Millis;
use penlight::measure::units::Millilitres;
use penlight::record::event::Action;
use penlight::record::id::VisitId;
use penlight::record::visit::Visit;
use penlight::wording;
use proptest::prelude::*;
use support::*;

#[track_caller]
fn rests_on(flag: &Flag, source: &'static Source) {
    assert!(flag.rule().sources().contains(&source), "{flag:?}");
}

fn reason<'a>(flags: &'a [Flag], part: &str) -> &'a Flag {
    let found = flags.iter().find(|f| f.reason().contains(part));
    assert!(found.is_some(), "{part} is not in {flags:?}");
    found.unwrap()
}

/// What the pad of the sips offers.
fn offered(exam: &Exam) -> Option<by_mouth::Offer> {
    tasks::offer(TaskId::Sips, exam)
}

// Small sips.

fn stepped(sips: Vec<Trial>, water: Option<Trial>) -> Exam {
    let mut trials = vec![breaths(16), dry(&[2_100, 9_800, 17_500, 26_000])];
    trials.extend(sips);
    trials.extend(water);
    Exam {
        screen: Some(ScreenId::Stepped),
        ..exam(trials)
    }
}

fn decided(exam: &Exam) -> Decision {
    assess(exam.screen.unwrap().screen(), exam)
}

fn give(ml: u8) -> Next {
    Next::Give(Millilitres::whole(ml))
}

/// DAN06T: small before large, each twice; 3 mL first and the 90 mL last are local policy.
#[test]
fn all_clear_reads_as_no_sign() {
    let exam = stepped(clear_sips(6), Some(water()));
    let decision = decided(&exam);
    assert_eq!(decision.verdict, Verdict::Pass, "{decision:?}");
    let clear = reason(&decision.clear, "sips of 3, 5, 10 mL, each given twice");
    rests_on(clear, &source::DAN06T);
}

#[test]
fn what_comes_next_follows_the_plan() {
    let due: Vec<Next> = (0..=6)
        .map(|n| sips::next(&stepped(clear_sips(n), None)))
        .collect();
    let plan = [3, 3, 5, 5, 10, 10].map(give);
    assert_eq!(due[..6], plan);
    assert_eq!(due[6], Next::Done);
}

#[test]
fn while_the_watch_runs_the_next_is_made_ready_and_not_given() {
    let mut given = clear_sips(1);
    given[0].marks.pop();
    let exam = stepped(given, None);
    assert_eq!(sips::next(&exam), give(3));
    let offer = offered(&exam).unwrap();
    assert_eq!(
        (offer.words.as_str(), offer.waits),
        ("Make ready: 3 mL, 2 of 2", true)
    );
    let over = offered(&stepped(clear_sips(1), None)).unwrap();
    assert_eq!(
        (over.words.as_str(), over.waits),
        ("Lip contact: 3 mL, 2 of 2", false)
    );
}

#[test]
fn nothing_is_offered_before_the_voice_was_heard() {
    assert!(offered(&stepped(Vec::new(), None)).unwrap().waits);
    let mut given = clear_sips(1);
    given[0].answers.remove(water::VOICE_AFTER);
    assert!(offered(&stepped(given, None)).unwrap().waits);
}

#[test]
fn a_watch_cut_short_asks_for_the_same_sip_again() {
    let mut given = clear_sips(3);
    given[2].marks.pop();
    choose(&mut given[2], WATCH_CUT, "called-away");
    let exam = stepped(given, None);
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
            let exam = stepped(given, None);
            assert_eq!(sips::next(&exam), Next::Ended, "{sign:?} after sip {n}");
            let offer = offered(&exam).unwrap();
            assert!(offer.waits, "{offer:?}");
            assert_eq!(decided(&exam).verdict, verdict, "{sign:?} after sip {n}");
            let mut held = holds(TaskId::Water90, &exam);
            // A choke holds by itself besides.
            let choke = held.iter().any(|h| h.id.starts_with("choked."));
            assert_eq!(choke, sign == Sign::Choke);
            held.retain(|h| !h.id.starts_with("choked."));
            assert_eq!(held.len(), 1, "{held:?}");
            let slp_only = !held[0].go_on.open_to(Role::Screener);
            assert_eq!(slp_only, verdict == Verdict::Stop, "{sign:?}");
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
        wall: penlight::measure::time::Millis::ZERO,
        local: |wall| ("25 Nov 2026".to_owned(), wall.0.to_string()),
    };
    let text = nursing::write(&visit, &now).unwrap();
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
    let exam = stepped(given, None);
    assert_eq!(decided(&exam).verdict, Verdict::Refer);
    reason(&decided(&exam).reasons, "sip of 3 mL: voice turned wet");
}

/// The sips count among the six signs, each place named once; the voice as it was answered.
#[test]
fn six_signs_read_the_sips() {
    let mut given = clear_sips(6);
    let rows = six_signs::rows(&stepped(given.clone(), None));
    assert_eq!(rows[5].looked, Looked::Absent);
    let (task, seen) = (TaskId::Sips, false);
    assert_eq!(rows[5].from, [Whence::Water { task, seen }]);
    choose(&mut given[1], water::VOICE_AFTER, "wet");
    let rows = six_signs::rows(&stepped(given, None));
    assert_eq!(rows[5].looked, Looked::Present);
}

/// A cracker is held once by a drink that went wrong, and what was given is told by its name.
#[test]
fn a_cracker_after_a_sip_that_went_wrong_is_held_once() {
    let mut given = clear_sips(1);
    given.push(sip(11, 3, 770_000, &[(Sign::Cough, 4_000)]));
    let mut exam = stepped(given, None);
    let mut before = Trial::new(TaskId::Cracker, 30, None);
    for question in [cracker::ALLERGY, cracker::TEETH, cracker::ORDER] {
        choose(&mut before, question, cracker::FINE);
    }
    exam.trials.push(before);
    let held = holds(TaskId::Cracker, &exam);
    assert_eq!(held.len(), 1, "{held:?}");
    let held = holds(TaskId::Own, &exam);
    assert_eq!(held.len(), 1, "{held:?}");
    exam.went_on.push(WentOn {
        hold: held[0].id.clone(),
        because: "Needed for the assessment".to_owned(),
        by: Role::Slp,
        says: String::new(),
        ground: None,
        lapsed: false,
        led_to: Vec::new(),
    });
    // It led to nothing yet: the water was given before it.
    let told = |exam: &Exam| {
        let also = decided(exam).also;
        also.iter().any(|f| f.reason().contains("given despite"))
    };
    assert!(!told(&exam));
    let next = own_trial(40, "d2", &[]);
    exam.went_on[0].led_to.push(next.number);
    exam.trials.push(next);
    reason(
        &decided(&exam).also,
        "A trial by mouth was given despite this",
    );
}

/// What was added to a screen is judged once, and so is what was attached to one without a gate.
#[test]
fn nothing_is_judged_twice() {
    let mut cup = timed(150, 0, 11_800, 7);
    cup.marks.push(Mark {
        at: at(15_000),
        kind: MarkKind::Sign(Sign::Cough),
    });
    for screen in ScreenId::ALL {
        let exam = with_cup(cup.clone());
        let flags = flags(screen.screen(), &exam);
        let coughs = flags
            .iter()
            .filter(|f| f.level() == Level::Refer && f.reason().contains("cough"));
        assert_eq!(coughs.count(), 1, "{screen:?}: {flags:?}");
    }
}

/// A count that was attached to a screen without a swallow is told, clears nothing and makes
/// nothing incomplete; a low one refers.
#[test]
fn an_attached_count_of_dry_swallows_is_told_and_clears_nobody() {
    let decided = |screen: ScreenId, count: Trial| {
        let exam = exam(vec![breaths(16), count]);
        assess(screen.screen(), &exam)
    };
    let told = "4 dry swallows in 30 seconds (3 or more expected)";
    let four = dry(&[2_100, 9_800, 17_500, 26_000]);
    for screen in [ScreenId::OralMotor, ScreenId::OwnTrials] {
        let decision = decided(screen, four.clone());
        assert_eq!(reason(&decision.also, told).level(), Level::Note);
        assert!(decision.clear.iter().all(|f| f.reason() != told));
    }
    let examined = decided(ScreenId::OralMotor, four);
    assert_ne!(examined.verdict, Verdict::Pass);
    assert_eq!(
        decided(ScreenId::OralMotor, dry(&[4_000, 19_000])).verdict,
        Verdict::Refer
    );
    let mut cut = dry(&[4_000]);
    cut.marks.retain(|m| m.kind != MarkKind::WindowOver);
    let dry_missing = |d: &Decision| d.missing.iter().any(|f| f.rule().id.starts_with("dry."));
    assert!(!dry_missing(&decided(ScreenId::OralMotor, cut)));
}

#[test]
fn the_90_ml_wait_for_every_sip() {
    for n in 0..6 {
        let exam = stepped(clear_sips(n), None);
        assert_eq!(holds(TaskId::Water90, &exam).len(), 1, "{n}");
        assert_eq!(decided(&exam).verdict, Verdict::Incomplete, "{n}");
    }
    assert!(holds(TaskId::Water90, &stepped(clear_sips(6), None)).is_empty());
    // And the plain screen is as it was.
    let plain = exam(vec![breaths(16), dry(&[2_100, 9_800, 17_500])]);
    assert!(holds(TaskId::Water90, &plain).is_empty());
}

#[test]
fn sips_that_are_missing_leave_it_incomplete_whatever_the_90_ml_showed() {
    for n in 0..6 {
        let exam = stepped(clear_sips(n), Some(water()));
        assert_eq!(decided(&exam).verdict, Verdict::Incomplete, "{n}");
    }
}

#[test]
fn fewer_than_two_more_dry_swallows_hold_the_90_ml_and_refer_nobody() {
    let mut given = clear_sips(6);
    choose(&mut given[1], sips::EXTRA, "1");
    let exam = stepped(given, None);
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
        ..stepped(given, None)
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
    let a = stepped(given, None);
    assert!(!tasks::fits(TaskId::Sips, sips::RESIDUE, &a));
    assert_eq!(sips::next(&a), give(3));
    let b = Exam {
        policy: Policy {
            small_water_wording: Wording::B,
            ..Policy::default()
        },
        ..a
    };
    assert!(tasks::fits(TaskId::Sips, sips::RESIDUE, &b));
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

// The timed cup.

fn with_cup(cup: Trial) -> Exam {
    stepped(clear_sips(6), Some(cup))
}

/// Worked examples of the timed cup (indices: HUG96; slow: NAT92, WU04).
#[test]
fn timed_water_rows() {
    for (offered, left, ms, swallows, ml_s, each, slow) in [
        (100, 0, 12_500, 8, "8.0", "12.5 mL and 1.6", true),
        (150, 0, 11_800, 7, "12.7", "21.4 mL and 1.7", false),
        (150, 40, 20_000, 9, "5.5", "12.2 mL and 2.2", true),
        (100, 0, 10_000, 6, "10.0", "16.7 mL and 1.7", false),
        (90, 0, 9_500, 5, "9.5", "18.0 mL and 1.9", true),
    ] {
        let trial = timed(offered, left, ms, swallows);
        let lines = timed_water::SPEC.lines.unwrap()(&trial).join("; ");
        assert!(lines.contains(&format!(": {ml_s} mL a second")), "{lines}");
        assert!(
            lines.contains(&format!("{swallows} swallows: {each} seconds")),
            "{lines}"
        );
        let flags = timed_water::flags(&with_cup(trial));
        let note = flags.iter().find(|f| f.rule().id == "timed-water.slow");
        assert_eq!(note.is_some(), slow, "{flags:?}");
        if let Some(note) = note {
            assert_eq!(note.level(), Level::Note);
            rests_on(note, &source::NAT92);
        }
        let unfinished = flags.iter().any(|f| f.level() == Level::Incomplete);
        assert_eq!(unfinished, left > 0, "{flags:?}");
    }
}

#[test]
fn a_cup_without_a_count_asks_for_it() {
    let mut trial = timed(100, 0, 9_000, 0);
    let words = |t: &Trial| timed_water::SPEC.lines.unwrap()(t).join("; ");
    assert!(
        words(&trial).contains("11.1 mL a second"),
        "{}",
        words(&trial)
    );
    assert!(words(&trial).contains("How many swallows were there?"));
    let exam = with_cup(trial.clone());
    assert!(tasks::fits(
        TaskId::TimedWater,
        timed_water::SWALLOWS,
        &exam
    ));
    number(&mut trial, timed_water::SWALLOWS, 60);
    assert!(words(&trial).contains("6 swallows: 16.7 mL"));
}

#[test]
fn impossible_cups_are_refused_with_a_sentence() {
    for (trial, part) in [
        (timed(100, 0, 0, 5), "time must be more than zero"),
        (timed(100, 120, 9_000, 5), "More is left than was offered"),
    ] {
        let flags = timed_water::flags(&with_cup(trial));
        assert_eq!(reason(&flags, part).level(), Level::Incomplete);
    }
}

#[test]
fn the_timed_cup_waits_for_clear_sips() {
    assert!(holds(TaskId::TimedWater, &stepped(clear_sips(6), None)).is_empty());
    let held = holds(TaskId::TimedWater, &stepped(Vec::new(), None));
    assert_eq!(held.len(), 1, "{held:?}");
    assert!(held[0].says.contains("no small sips were given before"));
    assert!(held[0].go_on.open_to(Role::Screener));
}

/// While the minute after a trial of another task runs, nothing else is given.
#[test]
fn a_running_watch_holds_every_other_trial() {
    let mut cup = timed(150, 0, 11_800, 7);
    cup.marks.pop();
    let exam = with_cup(cup);
    for task in [TaskId::Water90, TaskId::Own, TaskId::Sips] {
        let held = holds(task, &exam);
        assert_eq!(held.len(), 1, "{held:?}");
        assert!(held[0].says.contains("still runs"));
    }
    assert!(holds(TaskId::Water90, &with_cup(timed(150, 0, 11_800, 7))).is_empty());
}

#[test]
fn a_watch_in_a_hidden_page_is_told() {
    let mut given = clear_sips(6);
    let end = given[5].end().unwrap();
    given[5]
        .hidden
        .push((end.later(Millis(5_000)), end.later(Millis(45_000))));
    let exam = stepped(given, Some(water()));
    assert_eq!(decided(&exam).verdict, Verdict::Pass);
    reason(&decided(&exam).also, "Watch of 60 seconds: ");
}

#[test]
fn a_cough_in_the_timed_cup_refers_the_visit() {
    let mut cup = timed(150, 0, 11_800, 7);
    cup.marks.push(Mark {
        at: at(15_000),
        kind: MarkKind::Sign(Sign::Cough),
    });
    let mut exam = with_cup(cup);
    exam.trials.push(water());
    assert_eq!(decided(&exam).verdict, Verdict::Refer);
}

#[test]
fn a_ward_reads_no_rate() {
    let exam = with_cup(timed(100, 0, 12_500, 8));
    let words = wording::timed_water::summary(&exam).unwrap();
    assert_eq!(
        words,
        "timed cup of water: 100 of 100 mL drunk, slowly (by itself no sign of aspiration)"
    );
}

// Own trials.

fn own_exam(trials: Vec<Trial>) -> Exam {
    let mut all = vec![breaths(16)];
    all.extend(trials);
    Exam {
        screen: Some(ScreenId::OwnTrials),
        ..exam(all)
    }
}

#[test]
fn own_trials_are_a_table() {
    let exam = own_exam(vec![
        own_trial(1, "d2", &[]),
        own_trial(2, "d2", &[(Sign::Cough, 4_000)]),
        own_trial(3, "f4", &[]),
    ]);
    let table = own::table(&exam);
    assert_eq!(table.len(), 2);
    let given = OwnGiven {
        level: Some("d2".to_owned()),
        amount: Some(Amount::Tenths(50)),
        by: Some("spoon".to_owned()),
        ..OwnGiven::default()
    };
    assert_eq!(table[0].given, given);
    let coughed = Came::Seen(vec![(InTrial::Sign(Sign::Cough), 1)]);
    assert_eq!((table[0].times, &table[0].came), (2, &coughed));
    assert_eq!((table[1].times, &table[1].came), (1, &Came::NoSign));
    let decision = decided(&exam);
    assert_eq!(decision.verdict, Verdict::Refer);
    reason(
        &decision.reasons,
        "2 Mildly thick, 5 mL, spoon (given twice): coughed 4 seconds",
    );
    assert_eq!(
        wording::own::told(&exam),
        [
            "2 Mildly thick, 5 mL, spoon: given twice, coughed in 1 of 2",
            "4 Pureed, 5 mL, spoon: given once, no sign"
        ]
    );
}

#[test]
fn own_trials_without_a_sign() {
    let exam = own_exam(vec![own_trial(1, "d0", &[]), own_trial(2, "d0", &[])]);
    assert_eq!(decided(&exam).verdict, Verdict::Pass);
    let none = own_exam(Vec::new());
    assert_eq!(decided(&none).verdict, Verdict::Incomplete);
    let mut open = own_trial(1, "d0", &[]);
    open.marks.pop();
    assert_eq!(decided(&own_exam(vec![open])).verdict, Verdict::Incomplete);
}

#[test]
fn settings_are_taken_over_and_a_new_level_replaces_old_words() {
    let mut first = own_trial(1, "d2", &[]);
    let words = Answer::Words("orange juice".to_owned());
    first.answers.insert(own::WHAT.to_owned(), words.clone());
    let mut exam = own_exam(vec![first]);
    let taken = |exam: &Exam| -> Vec<&str> {
        own::taken_over(exam)
            .into_iter()
            .map(|(id, _)| id)
            .collect()
    };
    assert_eq!(taken(&exam), [own::LEVEL, own::WHAT, own::AMOUNT, own::BY]);
    let mut second = Trial::new(TaskId::Own, 2, None);
    choose(&mut second, own::LEVEL, "d0");
    exam.trials.push(second);
    assert_eq!(taken(&exam), [own::LEVEL, own::AMOUNT, own::BY]);
}

#[test]
fn after_a_sign_a_further_trial_needs_a_reason() {
    let exam = own_exam(vec![own_trial(1, "d0", &[(Sign::Cough, 1_000)])]);
    assert_eq!(holds(TaskId::Own, &exam).len(), 1);
    assert_eq!(holds(TaskId::TimedWater, &exam).len(), 2);
    assert!(holds(TaskId::Own, &own_exam(vec![own_trial(1, "d0", &[])])).is_empty());
}

#[test]
fn a_sign_within_two_minutes_names_both() {
    let mut second = own_trial(2, "f4", &[(Sign::Cough, 1_000)]);
    // Given 10 s after the first was swallowed.
    let shift = 200_000 - 113_000;
    for mark in second.marks.iter_mut() {
        mark.at = mark.at.later(Millis(-shift));
    }
    let exam = own_exam(vec![own_trial(1, "d2", &[]), second]);
    let note = own::flags(&exam);
    let note = reason(&note, "either may be meant");
    assert_eq!(note.level(), Level::Note);
    assert!(note.reason().starts_with("coughed with 4 Pureed"));
}

// Breathing.

fn taps(ms: &[i64]) -> Trial {
    let mut marks = vec![(MarkKind::Start, ms[0])];
    marks.extend(ms.iter().map(|t| (MarkKind::Tap, *t)));
    marks.push((MarkKind::End, ms[ms.len() - 1] + 500));
    let mut trial = trial(TaskId::BreathTaps, &marks);
    trial.number = 50;
    trial
}

fn breathing_exam(trials: Vec<Trial>, age: Age) -> Exam {
    Exam {
        age: Some(age),
        screen: Some(ScreenId::Stepped),
        ..exam(trials)
    }
}

/// Worked examples of breathing by taps (KAR14).
#[test]
fn breathing_by_taps_rows() {
    for (ms, words) in [
        (
            &[0, 3_100, 6_000, 9_200, 12_100][..],
            "breathing 20 a minute by taps",
        ),
        (
            &[0, 3_000, 6_100, 12_200, 15_100, 18_100][..],
            "breathing 20 a minute by taps, one uneven interval left out",
        ),
        (
            &[0, 2_400, 4_800, 7_300, 9_600, 12_100][..],
            "breathing 25 a minute by taps",
        ),
        (
            &[0, 5_000, 6_000, 11_500][..],
            "too few even ones yet; go on tapping, or count for 60",
        ),
    ] {
        let exam = breathing_exam(vec![taps(ms)], Age::Adult);
        let flags = breath_taps::flags(TaskId::BreathTaps, &exam);
        let flag = reason(&flags, words);
        rests_on(flag, &source::KAR14);
        // Taps alone never clear an adult (RIM19).
        assert_eq!(flag.level(), Level::Incomplete);
        assert!(
            breathing::blocks(&exam)
                .iter()
                .any(|b| b.flag.rule().id == "breathing.not-counted")
        );
    }
}

#[test]
fn the_rate_grows_with_its_consistency() {
    let policy = Policy::default();
    let so_far = |ms: &[i64]| {
        let running = breath_taps::running(&taps(ms), &policy)?;
        Some(wording::breathing::running(running))
    };
    assert_eq!(so_far(&[0]), None);
    assert_eq!(
        so_far(&[0, 3_100]).unwrap(),
        "about 19 a minute, 1 of 1 within 15 %: 3 more"
    );
    assert_eq!(
        so_far(&[0, 3_100, 6_000, 9_200, 12_100]).unwrap(),
        "about 20 a minute, 4 of 4 within 15 %: even enough"
    );
    let uneven = so_far(&[0, 5_000, 6_000, 11_500, 13_000, 20_000, 21_000, 29_000]).unwrap();
    assert!(uneven.ends_with("uneven: count for 60 seconds"), "{uneven}");
}

/// Worked examples: 9 in 30 s is 18; 17 in 60 s is 17 (RIM19).
#[test]
fn counts_of_30_and_60_seconds() {
    let mut marks = vec![(MarkKind::Start, 0)];
    marks.extend((1..=9).map(|n| (MarkKind::Tap, n * 3_000)));
    marks.push((MarkKind::WindowOver, 30_000));
    let thirty = trial(TaskId::Breaths30, &marks);
    let exam = breathing_exam(vec![thirty.clone()], Age::Adult);
    let flags = breath_taps::flags(TaskId::Breaths30, &exam);
    let flag = reason(
        &flags,
        "breathing 18 a minute (counted for 30 seconds, doubled)",
    );
    assert_eq!(flag.level(), Level::Incomplete);
    rests_on(flag, &source::RIM19);
    let counted = breathing_exam(vec![thirty, breaths(17)], Age::Adult);
    assert_eq!(breathing::counted(&counted)[0].0, 17);
    let flags = breath_taps::flags(TaskId::Breaths30, &counted);
    assert_eq!(worst(&flags), Some(Level::Note));
}

/// RUS94: awake at 6 months, 5th to 95th percentile 29.9 to 56.3.
#[test]
fn an_infant_is_read_by_the_published_equation() {
    let mut tapped = taps(&[0, 1_500, 3_000, 4_500, 6_000]);
    choose(&mut tapped, breath_taps::STATE, "awake");
    let exam = breathing_exam(vec![tapped], Age::Months(6));
    assert!(breath_taps::asks_state(&exam));
    let flags = breath_taps::flags(TaskId::BreathTaps, &exam);
    let note = reason(
        &flags,
        "among the middle 90 of 100 children of 6 months (29.9 to 56.3)",
    );
    rests_on(note, &source::RUS94);
    assert_eq!(worst(&flags), Some(Level::Note));
    // The local chart is asked for all the same, and taps are enough to ask.
    let blocks = breathing::blocks(&exam);
    assert_eq!(blocks.len(), 1);
    assert!(blocks[0].flag.reason().contains("breathing 40 a minute"));
    assert_eq!(blocks[0].flag.rule().id, "breathing.child");
}

#[test]
fn an_infant_outside_is_a_note_and_nobody_said_awake_is_said() {
    let mut fast = taps(&[0, 900, 1_800, 2_700, 3_600]);
    let exam = |t: &Trial| breathing_exam(vec![t.clone()], Age::Months(6));
    let flags = breath_taps::flags(TaskId::BreathTaps, &exam(&fast));
    reason(&flags, "go by awake or asleep");
    choose(&mut fast, breath_taps::STATE, "awake");
    let flags = breath_taps::flags(TaskId::BreathTaps, &exam(&fast));
    reason(
        &flags,
        "breathing 67 a minute awake: above the middle 90 of 100",
    );
    assert_eq!(worst(&flags), Some(Level::Note));
}

/// FLE-APP: a taught range of 18 to 30 a minute at 6 to 12 years.
#[test]
fn a_child_is_read_by_a_taught_range() {
    let exam = breathing_exam(vec![breaths(36)], Age::Years(8));
    let flags = breathing::flags(&exam);
    let note = reason(&flags, "above one taught range for 8 years");
    rests_on(note, &source::FLE_APP);
    assert_eq!(note.level(), Level::Note);
}

/// NEWS2: the second scale, and only with a confirmed target of 88 to 92 %.
#[test]
fn the_second_scale_needs_a_confirmed_target() {
    let read = |percent: i32, oxygen: &str, confirmed: bool| {
        let mut trial = breaths(16);
        number(&mut trial, breathing::SATURATION, percent * 10);
        choose(&mut trial, breathing::OXYGEN, oxygen);
        number(&mut trial, breathing::TARGET, 880);
        if confirmed {
            choose(&mut trial, breathing::CONFIRMED, "yes");
        }
        let exam = breathing_exam(vec![trial], Age::Adult);
        let blocked = breathing::blocks(&exam).len() == 1;
        let by_the_second_scale = breathing::flags(&exam)
            .iter()
            .any(|f| f.rule().id == "breathing.second-scale");
        (blocked, by_the_second_scale)
    };
    assert_eq!(read(87, "air", true), (true, false));
    assert_eq!(read(88, "oxygen", true), (false, false));
    assert_eq!(read(93, "air", true), (false, false));
    assert_eq!(read(93, "oxygen", true), (false, true));
    assert_eq!(read(96, "oxygen", true), (false, true));
    assert_eq!(read(97, "oxygen", true), (true, true));
    // Without it an own target blocks below it and says nothing above.
    assert_eq!(read(97, "oxygen", false), (false, false));
    assert_eq!(read(87, "oxygen", false), (true, false));
}

// What must hold for any of it.

fn any_sign() -> impl Strategy<Value = Sign> {
    prop::sample::select(Sign::ALL.to_vec())
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
        let before = stepped(given.clone(), with_water.then(water));
        add(&mut given, which, sign, after);
        let now = stepped(given, with_water.then(water));
        prop_assert!(grave(decided(&now).verdict) >= grave(decided(&before).verdict));
        // And what had ended goes on no more.
        if sips::over(&before) && sips::next(&before) == Next::Ended {
            prop_assert_eq!(sips::next(&now), Next::Ended);
        }
    }

    /// The order in which own trials were given changes no verdict.
    #[test]
    fn own_trials_in_any_order(mut levels in prop::collection::vec(
        (prop::sample::select(vec!["d0", "d2", "f4"]), prop::option::of(any_sign())), 1..6,
    )) {
        let build = |levels: &[(&str, Option<Sign>)]| {
            own_exam(
                levels
                    .iter()
                    .zip(1..)
                    .map(|((level, sign), n)| {
                        let signs: Vec<_> = sign.iter().map(|s| (*s, 5_000)).collect();
                        own_trial(n, level, &signs)
                    })
                    .collect(),
            )
        };
        let one = decided(&build(&levels)).verdict;
        levels.reverse();
        prop_assert_eq!(one, decided(&build(&levels)).verdict);
    }
}
