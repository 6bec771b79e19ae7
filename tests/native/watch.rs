//! The 60 seconds after a trial: where nobody watched them to their end, "no sign" is not said.
//! What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::by_mouth::watched;
use penlight::measure::time::PageLife;
use penlight::measure::time::Stamp;
use penlight::record::event::Event;

/// A watch of which nobody saw the end: the app was off for hours.
#[test]
fn a_watch_that_ran_out_unseen_is_asked_for() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear");
    s.mark(100_000, MarkKind::Start)
        .mark(108_400, MarkKind::End);
    let trial = s.trial;
    let late = Stamp {
        life: PageLife(8),
        ..at(10_908_400)
    };
    s.say(Event::Mark {
        trial,
        at: late,
        kind: MarkKind::WatchOver,
    });
    s.choose("cup", "one-go").choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(
        s.text().contains("not said whether it was watched"),
        "{}",
        s.text()
    );
    s.choose(watched::WATCHED, "no");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    s.choose(watched::WATCHED, "yes");
    assert_eq!(s.verdict(), Verdict::Pass);
    assert!(
        s.text().contains("restarted during this time"),
        "{}",
        s.text()
    );
}

/// A watch of which more than a moment was hidden is none, until somebody says that only the phone was
/// dark; what is pressed then is handed over.
#[test]
fn a_watch_hidden_for_more_than_a_moment_is_asked_for() {
    let hidden = |length: i64| {
        let mut s = ready(Role::Screener);
        s.open(TaskId::Water90);
        s.choose("voice-before", "clear");
        s.mark(100_000, MarkKind::Start)
            .mark(108_400, MarkKind::End);
        s.say(Event::Hidden {
            from: at(120_000),
            to: at(120_000 + length),
        });
        s.mark(168_430, MarkKind::WatchOver)
            .choose("cup", "one-go")
            .choose("voice-after", "clear");
        s
    };
    assert_eq!(hidden(5_000).verdict(), Verdict::Pass);
    let mut s = hidden(5_001);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(
        s.text().contains("not said whether it was watched"),
        "{}",
        s.text()
    );
    s.choose(watched::WATCHED, "no");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    s.choose(watched::WATCHED, "yes");
    assert_eq!(s.verdict(), Verdict::Pass);
    assert!(s.note().contains("only the phone was dark"), "{}", s.note());
}

/// The page was killed in the watch and opened again in it: for how long nobody looked, the phone can't
/// say, though the minute ends in time.
#[test]
fn a_watch_with_a_restart_in_it_is_asked_for() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear");
    s.mark(100_000, MarkKind::Start)
        .mark(108_400, MarkKind::End);
    let trial = s.trial;
    let on_time = Stamp {
        life: PageLife(8),
        ..at(168_430)
    };
    s.say(Event::Mark {
        trial,
        at: on_time,
        kind: MarkKind::WatchOver,
    });
    s.choose("cup", "one-go").choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    s.choose(watched::WATCHED, "yes");
    assert_eq!(s.verdict(), Verdict::Pass);
}

#[test]
fn a_watch_that_was_cut_is_no_clear_trial() {
    let mut s = own_trials(Role::Slp);
    s.open(TaskId::Own);
    s.choose("own-level", "d0").mark(100_000, MarkKind::Start);
    s.mark(102_000, MarkKind::End)
        .choose("watch-cut", "called-away");
    let text = s.text();
    assert!(
        text.contains("not watched for 60 seconds") && !text.contains("no sign"),
        "{text}"
    );
}

/// Somebody says that nobody watched: then there is no "no sign for 60 seconds".
#[test]
fn a_watch_that_nobody_kept_is_not_told_as_without_a_sign() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear");
    s.mark(100_000, MarkKind::Start)
        .mark(108_400, MarkKind::End);
    s.mark_stamped(
        Stamp {
            life: PageLife(8),
            ..at(10_908_400)
        },
        MarkKind::WatchOver,
    );
    s.choose("cup", "one-go").choose("voice-after", "clear");
    s.choose(watched::WATCHED, "no");
    assert!(!s.text().contains("no sign for 60 seconds"), "{}", s.text());
}

#[test]
fn a_cracker_that_nobody_watched_is_incomplete() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.cracker();
    s.mark(300_000, MarkKind::Start)
        .mark(300_000, MarkKind::Tap)
        .mark(330_000, MarkKind::End);
    s.mark_stamped(
        Stamp {
            life: PageLife(8),
            ..at(10_908_400)
        },
        MarkKind::WatchOver,
    );
    s.choose(watched::WATCHED, "no");
    assert_eq!(s.verdict(), Verdict::Incomplete, "{}", s.text());
}

#[test]
fn an_own_trial_that_nobody_watched_is_not_told_as_without_a_sign() {
    let mut s = own_trials(Role::Slp);
    s.open(TaskId::Own);
    s.choose("own-level", "d0").mark(100_000, MarkKind::Start);
    s.mark(102_000, MarkKind::End);
    s.mark_stamped(
        Stamp {
            life: PageLife(8),
            ..at(10_908_400)
        },
        MarkKind::WatchOver,
    );
    s.choose(watched::WATCHED, "no");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(!s.text().contains("given once, no sign"), "{}", s.text());
}

#[test]
fn an_own_trial_whose_end_was_not_marked_is_not_told_as_without_a_sign() {
    let mut s = own_trials(Role::Slp);
    s.open(TaskId::Own);
    s.choose("own-level", "d0").mark(100_000, MarkKind::Start);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(!s.text().contains("given once, no sign"), "{}", s.text());
}

/// One of the three was not watched: "each watched" is not so.
#[test]
fn a_sip_whose_watch_was_cut_is_not_told_as_watched() {
    let mut s = stepped(Role::Screener, 97);
    s.open(TaskId::Sips);
    s.choose("voice-before", "clear")
        .mark(20_000, MarkKind::Start)
        .mark(22_000, MarkKind::End)
        .number("sip", 3)
        .choose("sip-way", "under-tongue")
        .choose("extra-swallows", "2")
        .choose("voice-after", "clear")
        .choose("watch-cut", "called-away");
    s.sips_given(&mut |_, _| {});
    assert!(!s.text().contains("each watched"), "{}", s.text());
}

/// While the watch runs the page of the task lists what was seen; the decision is as careful as ever.
#[test]
fn a_running_watch_is_no_finding() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start)
        .mark(108_000, MarkKind::End);
    let task = TaskId::Water90;
    assert!(tasks::flags_so_far(task, &s.visit.exam).is_empty());
    assert!(!tasks::flags(task, &s.visit.exam).is_empty());
    assert_eq!(s.verdict(), Verdict::Incomplete);
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    let shown = tasks::flags_so_far(task, &s.visit.exam);
    assert!(
        shown.len() == 1 && shown[0].level() == Level::Refer,
        "{shown:?}"
    );
    s.mark(168_030, MarkKind::WatchOver);
    let open = tasks::flags_so_far(task, &s.visit.exam);
    assert!(open.iter().any(|f| f.level() == Level::Incomplete));
}
