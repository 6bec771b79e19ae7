//! Dry swallows: a count that was low, missing or in doubt is never made clear by what comes later.
//! What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::assess::assess;
use penlight::clinical::decision::in_the_way::in_the_way;
use penlight::clinical::decision::verdict::Decision;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::findings::trial::Trial;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::task::TaskId;
use penlight::record::clears::{Clears, clears};
use penlight::record::step::Step;
use penlight::record::way::{next, shows};

/// One that came after the 30 seconds is no third one, and is not lost either.
#[test]
fn a_late_one_is_told_beside_the_count() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[3_000, 15_000, 30_200]);
    assert_eq!(s.verdict(), Verdict::Refer);
    let note = s.note();
    for words in ["2 swallows in 30 seconds", "1 swallow later, kept apart"] {
        assert!(note.contains(words), "{note}");
    }
}

/// No swallow counted, and then "could not feel it": whether there was one, nobody knows.
#[test]
fn none_counted_and_then_not_valid_is_no_screener_s_to_pass() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .breaths(16)
        .dry(&[])
        .choose("not-valid", "not-felt");
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().all(|h| !h.go_on.open_to(Role::Screener)),
        "{held:?}"
    );
    assert!(s.text().contains("(0 counted)"), "{}", s.text());
}

/// None counted and not valid; then "do it again" is pressed and left.
#[test]
fn none_counted_stays_no_screener_s_to_pass_after_a_count_that_was_opened() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .breaths(16)
        .dry(&[])
        .choose("not-valid", "not-felt");
    s.open(TaskId::DrySwallow);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().all(|h| !h.go_on.open_to(Role::Screener)),
        "{held:?}"
    );
}

/// None counted and not valid; the second count is not begun: "did not want to".
#[test]
fn none_counted_stays_told_and_held_after_a_second_count_that_was_refused() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .breaths(16)
        .dry(&[])
        .choose("not-valid", "not-felt");
    s.open(TaskId::DrySwallow);
    s.choose("not-valid", "refused");
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().all(|h| !h.go_on.open_to(Role::Screener)),
        "{held:?}"
    );
}

#[test]
fn none_counted_stays_told_after_a_second_count_that_was_refused() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .breaths(16)
        .dry(&[])
        .choose("not-valid", "not-felt");
    s.open(TaskId::DrySwallow);
    s.choose("not-valid", "refused");
    assert!(s.text().contains("0 counted"), "{}", s.text());
}

/// None at all, and three or more once the mouth was moistened: no sign, and both are told.
#[test]
fn none_and_then_enough_is_no_sign_and_both_are_told() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[]);
    assert_eq!(s.verdict(), Verdict::Refer);
    s.dry(THREE);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass, "{}", s.text());
    for text in [s.text(), s.note()] {
        assert!(text.contains("no dry swallow in 30 seconds"), "{text}");
        assert!(text.contains("3 dry swallows in 30 seconds"), "{text}");
    }
}

/// Moistened and still fewer than three: it refers, and anybody may go on with a reason, as after
/// any low count.
#[test]
fn none_and_then_too_few_refers() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[]).dry(&[4_000, 12_000]);
    assert_eq!(s.verdict(), Verdict::Refer);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(!held.is_empty());
    assert!(
        held.iter().all(|h| h.go_on.open_to(Role::Screener)),
        "{held:?}"
    );
}

/// None is counted again once; none again ends the way: a screener is led to the decision, and to no
/// third count.
#[test]
fn none_twice_leads_to_the_decision() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[]);
    let exam = &s.visit.exam;
    let held = in_the_way(TaskId::Water90, exam, exam.now);
    assert_eq!(
        clears(&held[0], exam),
        Some(Clears::Page(Step::Task(TaskId::DrySwallow)))
    );
    s.dry(&[]);
    assert_eq!(next(&s.visit), Step::Decision);
    assert!(!shows(&s.visit, TaskId::Water90));
    let exam = &s.visit.exam;
    let held = in_the_way(TaskId::Water90, exam, exam.now);
    assert!(
        held.iter().any(|one| clears(one, exam).is_none()),
        "{held:?}"
    );
}

/// Where a ward takes none at all for a stop, a repeat does not undo it.
#[test]
fn a_stop_of_the_policy_is_not_undone_by_a_repeat() {
    let policy = Policy {
        dry_none_stops: true,
        ..Policy::default()
    };
    let mut s = Scene::under(policy, Age::Years(72), Role::Screener);
    s.gate(&[]).breaths(16).dry(&[]).dry(THREE);
    assert_eq!(s.verdict(), Verdict::Stop);
}

/// None twice, or once and never again: no screener gives anything by mouth; a speech-language
/// pathologist says why.
#[test]
fn none_at_all_is_a_speech_language_pathologist_s_to_pass() {
    for counts in 1..=2 {
        let mut s = adult(Role::Slp);
        s.gate(&[]).breaths(16);
        for _ in 0..counts {
            s.dry(&[]);
        }
        assert_eq!(s.verdict(), Verdict::Refer);
        for task in [TaskId::Water90, TaskId::Sips, TaskId::Own] {
            let held = holds(task, &s.visit.exam);
            assert!(!held.is_empty(), "{task:?}");
            for hold in held {
                assert!(!hold.go_on.open_to(Role::Screener), "{hold:?}");
                assert!(hold.go_on.open_to(Role::Slp), "{hold:?}");
            }
        }
    }
}

/// A collar, a larynx that can't be felt, a request that was not followed: the cup is read without
/// the count, which is told. Who did not want to, or has too dry a mouth, can still be counted.
#[test]
fn what_cannot_be_done_leaves_a_clean_cup_clean() {
    for (why, verdict) in [
        ("neck", Verdict::Pass),
        ("not-felt", Verdict::Pass),
        ("not-followed", Verdict::Pass),
        ("refused", Verdict::Incomplete),
        ("too-dry", Verdict::Incomplete),
    ] {
        let mut s = adult(Role::Screener);
        s.gate(&[]).breaths(16);
        s.open(TaskId::DrySwallow);
        s.choose("not-valid", why);
        assert_eq!(
            holds(TaskId::Water90, &s.visit.exam).is_empty(),
            verdict == Verdict::Pass
        );
        s.water(&[]);
        assert_eq!(s.verdict(), verdict, "{why}");
        assert!(s.note().contains("ry swallows not valid"), "{}", s.note());
    }
}

/// The 90 mL alone are a screen of their own: dry swallows inform it, where somebody counts them.
#[test]
fn the_water_screen_needs_no_dry_swallows_and_hears_them() {
    let water_screen = || {
        let mut s = adult(Role::Screener);
        s.on(ScreenId::Water).gate(&[]).breaths(16);
        s
    };
    let mut s = water_screen();
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass);
    let mut s = water_screen();
    s.dry(&[4_000, 12_000]);
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Refer);
    // A count that was begun and left is no gap of a screen that does not ask for it.
    let mut s = water_screen();
    s.open(TaskId::DrySwallow);
    s.mark(40_000, MarkKind::Start);
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass, "{}", s.text());
}

/// The line is for adults; that no swallow was felt was seen all the same.
#[test]
fn an_age_put_right_takes_back_no_missing_swallow() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[]);
    assert_eq!(s.verdict(), Verdict::Refer);
    s.age(Some(Age::Years(12)));
    assert!(s.text().contains("no dry swallow"), "{}", s.text());
}

#[test]
fn an_age_put_right_after_no_dry_swallow_still_holds_the_water() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[]);
    s.age(Some(Age::Years(12)));
    s.pass(TaskId::Water90, "breathing.child", Role::Screener);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(!held.is_empty(), "{}", s.text());
}

/// Four dry swallows, counted before the visit and attached after it found none.
#[test]
fn an_attached_older_count_takes_back_no_missing_swallow() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16);
    s.open(TaskId::DrySwallow);
    s.mark(3_600_000, MarkKind::Start)
        .mark(3_630_020, MarkKind::WindowOver)
        .choose("not-valid", "not-felt");
    let mut marks = vec![(at(0), MarkKind::Start)];
    marks.extend((1..5).map(|n| (at(n * 5_000), MarkKind::Tap)));
    marks.push((at(30_020), MarkKind::WindowOver));
    s.attach(TaskId::DrySwallow, marks);
    assert!(
        !holds(TaskId::Water90, &s.visit.exam).is_empty(),
        "{}",
        s.text()
    );
}

/// A finger that bounced: two touches no swallow can come between are not two swallows.
#[test]
fn a_touch_too_quick_for_a_swallow_does_not_make_three() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[2_000, 2_040, 17_000]);
    s.water(&[]);
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
    // Three besides are three.
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[2_000, 2_040, 9_000, 17_000]);
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass, "{}", s.text());
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
