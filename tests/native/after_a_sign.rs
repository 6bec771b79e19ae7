//! After a sign that refers or stops the trials by mouth end: nothing leads on to more, a voice that
//! was not heard is not taken as given, and who goes on says why. What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::in_the_way::in_the_way;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::in_the_way::Obstacle;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::{Sign, SignTask, meaning};
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::{sips, water};
use penlight::clinical::{decision::task_state::TaskState, findings::flag::Level};
use penlight::record::clears::{Clears, clears};
use penlight::record::event::Event;
use penlight::record::way::{Step, after_task, next, shows, trials_after_sign};

/// The first sip of 3 mL, with this sign in its minute.
fn first_sip(role: Role, sign: Sign) -> Scene {
    let mut s = stepped(role, 97);
    s.given(TaskId::Sips, 100_000, &[(sign, 5_000)])
        .number("sip", 3);
    s
}

fn ends(sign: Sign, column: SignTask) -> bool {
    meaning(sign, column).0 >= Level::Refer
}

/// The cough on 3 mL, and "Next" that led to the cup of 90 mL.
#[test]
fn after_a_sign_on_a_small_sip_the_way_leads_to_the_verdict() {
    for sign in Sign::ALL.into_iter().filter(|s| ends(*s, SignTask::Sips)) {
        for role in [Role::Screener, Role::Slp] {
            let s = first_sip(role, sign);
            assert_eq!(
                after_task(&s.visit, TaskId::Sips),
                Step::Decision,
                "{sign:?}"
            );
            assert_eq!(next(&s.visit), Step::Decision, "{sign:?}");
            assert_ne!(s.verdict(), Verdict::Incomplete);
        }
    }
}

/// In whatever trial by mouth, attached or not.
#[test]
fn no_sign_that_ends_leads_to_more_by_mouth() {
    let tasks = [
        TaskId::Sips,
        TaskId::TimedWater,
        TaskId::Own,
        TaskId::Cracker,
    ];
    for task in tasks {
        for sign in Sign::ALL {
            let column = task.sign_column().unwrap();
            let mut s = stepped(Role::Screener, 97);
            s.given(task, 100_000, &[(sign, 5_000)]);
            let leads_on = matches!(next(&s.visit), Step::Task(t) if t.is_by_mouth());
            assert_eq!(leads_on, !ends(sign, column), "{task:?} {sign:?}");
        }
    }
}

/// The cup is neither listed nor said to a trained screener, and no reason of hers frees it.
#[test]
fn the_cup_is_not_shown_to_a_trained_screener_after_a_sign() {
    let mut s = first_sip(Role::Screener, Sign::Cough);
    for task in GIVEN.into_iter().filter(|task| *task != TaskId::Sips) {
        assert!(!shows(&s.visit, task), "{task:?}");
    }
    // What was begun stays where it was.
    assert!(shows(&s.visit, TaskId::Sips) && shows(&s.visit, TaskId::Breathing));
    s.pass_all(TaskId::Water90, "low risk in my judgement", Role::Screener);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().any(|h| !h.go_on.open_to(Role::Screener)),
        "{held:?}"
    );
    let exam = &s.visit.exam;
    let page = TaskState::of(TaskId::Water90, exam, Default::default(), exam.now);
    assert!(!page.says() && !page.is_free() && !page.asks_before());
}

/// Deliberately: a press on the decision page, then a reason on the page of the task.
#[test]
fn a_speech_language_pathologist_goes_on_by_a_press_and_a_reason() {
    let nobody = stepped(Role::Slp, 97);
    assert_eq!(trials_after_sign(&nobody.visit), None);
    assert_eq!(
        trials_after_sign(&first_sip(Role::Screener, Sign::Cough).visit),
        None
    );
    let mut s = first_sip(Role::Slp, Sign::Cough);
    assert_eq!(trials_after_sign(&s.visit), Some(Step::Task(TaskId::Own)));
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
    s.pass_all(TaskId::Own, "needed for the assessment", Role::Slp);
    assert!(holds(TaskId::Own, &s.visit.exam).is_empty());
    // A reason for own trials frees no cup; one for the cup leads to it.
    assert_eq!(next(&s.visit), Step::Decision);
    s.pass_all(TaskId::Water90, "needed for the assessment", Role::Slp);
    assert_eq!(next(&s.visit), Step::Task(TaskId::Water90));
}

fn taken(s: &Scene, task: TaskId) -> Option<String> {
    let answers = (penlight::clinical::tasks::spec(task).taken_over)(&s.visit.exam);
    let voice = answers
        .into_iter()
        .find(|(id, _)| *id == water::VOICE_BEFORE)?;
    voice.1.choice().map(str::to_owned)
}

/// Heard after the first sip, not after the second: nobody knows how it is now.
#[test]
fn a_voice_that_was_not_heard_after_the_last_sip_is_not_taken_as_given() {
    let tasks = [TaskId::Sips, TaskId::Water90, TaskId::TimedWater];
    let mut s = stepped(Role::Screener, 97);
    let sip = |s: &mut Scene, from: i64| {
        s.open(TaskId::Sips);
        s.number("sip", 3).choose("voice-before", "clear");
        s.mark(from, MarkKind::Start)
            .mark(from + 2_000, MarkKind::End);
        s.mark(from + 62_030, MarkKind::WatchOver);
    };
    sip(&mut s, 100_000);
    assert!(tasks.iter().all(|task| taken(&s, *task).is_none()));
    s.choose("voice-after", "hoarse");
    for task in tasks {
        assert_eq!(taken(&s, task).as_deref(), Some("hoarse"), "{task:?}");
    }
    sip(&mut s, 200_000);
    assert!(tasks.iter().all(|task| taken(&s, *task).is_none()));
    assert!(sips::over(&s.visit.exam) || !sips::taken_over(&s.visit.exam).is_empty());
    // Nor after something else was given, nor after a choking.
    s.choose("voice-after", "clear");
    assert!(taken(&s, TaskId::Water90).is_some());
    s.say(Event::Choking(at(400_000)));
    assert_eq!(taken(&s, TaskId::Water90), None);
}

/// Choked; "back to baseline", breaths and voice: without one of them nobody goes on, whoever it is
/// and whatever the reason. What was asked before the choking does not count.
#[test]
fn after_choking_nobody_goes_on_before_all_of_it_is_recorded() {
    type Act = fn(&mut Scene);
    let acts: [Act; 3] = [
        |s| {
            s.say(Event::BackToBaseline(at(160_000)));
        },
        |s| {
            s.breaths(18);
        },
        |s| {
            s.say(Event::VoiceAfterChoking("clear".to_owned()));
        },
    ];
    let held = |s: &Scene| {
        let held = holds(TaskId::Own, &s.visit.exam);
        held.into_iter().find(|h| h.id.starts_with("choked"))
    };
    for order in [[0, 1, 2], [0, 2, 1], [1, 2, 0]] {
        let mut s = ready(Role::Slp);
        s.water(&[(Sign::Choke, -2_000)]);
        s.say(Event::Choking(at(106_400)));
        for act in order {
            assert!(
                !held(&s).unwrap().go_on.open_to(Role::Slp),
                "{order:?} before {act}"
            );
            s.pass_all(TaskId::Own, "low risk", Role::Slp);
            assert!(held(&s).is_some());
            acts[act](&mut s);
        }
        assert!(held(&s).is_none_or(|h| h.go_on.open_to(Role::Slp)));
        assert!(!held(&s).is_some_and(|h| h.go_on.open_to(Role::Screener)));
        // A second choking asks for all of it once more.
        s.say(Event::Choking(at(500_000)));
        assert!(!held(&s).unwrap().go_on.open_to(Role::Slp));
    }
}

/// Still wet after it: as a wet voice before anything else.
#[test]
fn a_voice_that_is_wet_after_choking_holds_everything_by_mouth() {
    let mut s = recovered(Role::Slp, "wet");
    for task in GIVEN {
        let held = holds(task, &s.visit.exam);
        assert!(
            held.iter().any(|h| h.id.starts_with("water.wet-before")),
            "{task:?}"
        );
    }
    for text in [s.text(), s.note()] {
        assert!(text.contains("voice wet after it"), "{text}");
    }
    // It is heard anew where it was heard so.
    let exam = &s.visit.exam;
    let held = in_the_way(TaskId::Own, exam, exam.now);
    let wet = held
        .iter()
        .find(|one| matches!(one, Obstacle::WetBefore { .. }));
    assert_eq!(
        clears(wet.unwrap(), exam),
        Some(Clears::Page(Step::Choking))
    );
    s.say(Event::VoiceAfterChoking("clear".to_owned()));
    let held = holds(TaskId::Own, &s.visit.exam);
    assert!(
        held.iter().all(|h| !h.id.starts_with("water.wet-before")),
        "{held:?}"
    );
}

/// The entry of a choking that is lost, its sign kept: it can be said that it is over.
#[test]
fn a_choke_without_its_entry_can_be_over_too() {
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Choke, -2_000)]);
    assert!(s.visit.choking().is_none());
    let since = s.visit.choking_or_its_sign().unwrap().since;
    assert_eq!(since, at(106_400));
    s.say(Event::BackToBaseline(at(160_000))).breaths(18);
    s.say(Event::VoiceAfterChoking("clear".to_owned()));
    assert_eq!(s.visit.choking().unwrap().since, since);
    let held = holds(TaskId::Own, &s.visit.exam);
    assert!(held.iter().all(|h| h.go_on.open_to(Role::Slp)), "{held:?}");
}

/// An own trial with this sign after it.
fn own(s: &mut Scene, n: i64, sign: Option<Sign>) {
    let signs: Vec<(Sign, i64)> = sign.into_iter().map(|sign| (sign, 3_000)).collect();
    s.given(TaskId::Own, 100_000 * n, &signs)
        .choose("own-level", "d0");
}

/// One reason after a cough: the next spoons need none, coughed or not; another kind does.
#[test]
fn one_reason_in_own_trials_covers_later_signs_of_its_kind() {
    let mut s = own_trials(Role::Slp);
    own(&mut s, 1, Some(Sign::Cough));
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
    s.pass_all(TaskId::Own, "needed for the assessment", Role::Slp);
    for n in 2..4 {
        own(&mut s, n, (n == 2).then_some(Sign::Cough));
        let held = holds(TaskId::Own, &s.visit.exam);
        assert!(held.is_empty(), "trial {n}: {held:?}");
    }
    // Other food, the same sign.
    own(&mut s, 4, Some(Sign::Cough));
    s.choose("own-level", "f4");
    assert!(holds(TaskId::Own, &s.visit.exam).is_empty());
    // The cup needs its own.
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
    own(&mut s, 5, Some(Sign::VoiceChange));
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
}

/// What stops every trial, and a wish to stop, ask each time they come; between them nothing asks.
#[test]
fn what_stops_asks_anew_each_time_in_own_trials() {
    for sign in [Sign::BreathingChange, Sign::NoSwallow, Sign::AskedToStop] {
        let mut s = own_trials(Role::Slp);
        own(&mut s, 1, Some(sign));
        for n in [2, 4] {
            assert!(
                !holds(TaskId::Own, &s.visit.exam).is_empty(),
                "{sign:?} {n}"
            );
            s.pass_all(TaskId::Own, "needed for the assessment", Role::Slp);
            own(&mut s, n, None);
            assert!(holds(TaskId::Own, &s.visit.exam).is_empty(), "{sign:?} {n}");
            own(&mut s, n + 1, Some(sign));
        }
    }
    let mut s = own_trials(Role::Slp);
    for n in 1..3 {
        own(&mut s, n, Some(Sign::Choke));
        s.say(Event::Choking(at(100_000 * n + 5_000)));
        s.say(Event::BackToBaseline(at(100_000 * n + 50_000)))
            .breaths(18);
        s.say(Event::VoiceAfterChoking("clear".to_owned()));
        assert!(!holds(TaskId::Own, &s.visit.exam).is_empty(), "{n}");
        s.pass_all(TaskId::Own, "needed for the assessment", Role::Slp);
        assert!(holds(TaskId::Own, &s.visit.exam).is_empty(), "{n}");
    }
}

/// Nobody else may give such a reason.
#[test]
fn a_trained_screener_s_reason_covers_nothing_in_own_trials() {
    let mut s = own_trials(Role::Screener);
    s.on(ScreenId::OwnTrials);
    own(&mut s, 1, Some(Sign::Cough));
    s.pass_all(TaskId::Own, "needed for the assessment", Role::Screener);
    own(&mut s, 2, None);
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
}
