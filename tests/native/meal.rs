//! At the table: a meal is watched, not given. What its tally needs, what stops the next, what is told.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::counted::Counted;
use penlight::clinical::findings::counted::note_id;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::spec::Phase;
use penlight::handover::full_note;
use penlight::handover::tally;
use penlight::record::event::Event;

const MEAL: TaskId = TaskId::Meal;

fn at_the_table(role: Role) -> Scene {
    let mut s = adult(role);
    s.on(ScreenId::FullVisit).open(MEAL);
    s.mark(0, MarkKind::Start);
    s
}

/// The person eats what is ordered, whether anybody screens or not.
#[test]
fn a_meal_needs_no_gate() {
    let mut s = adult(Role::Screener);
    assert!(holds(MEAL, &s.visit.exam).is_empty());
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
    // Nor an open one: what closes the gate to water closes no meal.
    s.gate(&[("awake", "no"), ("saliva", "no"), ("consent", "no")])
        .breaths(30)
        .dry(&[]);
    assert!(holds(MEAL, &s.visit.exam).is_empty());
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
}

/// What happens at the table while somebody watches is counted to the end that is pressed.
#[test]
fn a_running_tally_is_never_stopped() {
    let mut s = at_the_table(Role::Screener);
    s.mark(20_000, MarkKind::Sign(Sign::Choke))
        .mark(30_000, MarkKind::Sign(Sign::BreathingChange));
    s.say(Event::Choking(at(21_000)));
    s.gate(&[("awake", "no")]).breaths(30);
    // The next one is held up; this one runs on, however long it lasts.
    assert!(!holds(MEAL, &s.visit.exam).is_empty());
    for ms in [40_000, 3_600_000, 8 * 3_600_000] {
        let trial = s.visit.exam.latest(MEAL).unwrap();
        let spec = tasks::spec(MEAL);
        assert!(
            matches!(spec.phase(trial, at(ms)), Phase::Running(_)),
            "{ms}"
        );
        assert_eq!(spec.due(trial, at(ms)), None, "{ms}");
    }
    let meal = s.visit.exam.latest(MEAL).unwrap().number;
    s.trial = meal;
    s.mark(3_700_000, MarkKind::Tap)
        .mark(3_760_000, MarkKind::End);
    let trial = s.visit.exam.latest(MEAL).unwrap();
    assert_eq!(trial.taps(), 1);
    assert_eq!(tasks::spec(MEAL).phase(trial, at(3_800_000)), Phase::Over);
}

/// A minute after the last mouthful a cough may be of something else: told, and not counted.
#[test]
fn a_sign_long_after_the_end_of_a_meal_is_told() {
    for (after, verdict) in [
        (60_000, Verdict::Refer),
        (60_001, Verdict::Pass),
        (75_000, Verdict::Pass),
    ] {
        let mut s = ready(Role::Screener);
        s.water(&[]).open(MEAL);
        s.mark(300_000, MarkKind::Start)
            .mark(310_000, MarkKind::Tap)
            .mark(900_000, MarkKind::End)
            .mark(900_000 + after, MarkKind::Sign(Sign::Cough));
        assert_eq!(s.verdict(), verdict, "{after}");
        let text = s.text();
        let found = text.split("Recommendation:").next().unwrap();
        assert!(found.contains("coughed"), "{text}");
        assert!(!text.starts_with("NO SIGN SEEN"), "{text}");
    }
}

/// The words of a note that was taken back stay in the journal, under a time at which nothing is.
#[test]
fn a_note_that_is_taken_back_leaves_words_that_nothing_points_to() {
    let mut s = at_the_table(Role::Slp);
    let note = MarkKind::Count(Counted::Note);
    s.mark(4_000, note)
        .words(&note_id(at(4_000)), "leans to the left");
    s.mark(60_000, MarkKind::End);
    let file = |s: &Scene| tally::csv(s.visit.exam.latest(MEAL).unwrap());
    assert!(file(&s).contains("4.0,note,\"leans to the left\""));

    let mut s = at_the_table(Role::Slp);
    s.mark(4_000, note)
        .words(&note_id(at(4_000)), "leans to the left");
    s.undo();
    s.mark(9_000, note).words(&note_id(at(9_000)), "slower now");
    s.mark(60_000, MarkKind::End);
    let csv = file(&s);
    assert!(csv.contains("9.0,note,\"slower now\""), "{csv}");
    assert_eq!(csv.matches(",note,\"").count(), 1, "{csv}");
    let full = full_note::write(&s.visit, &clock("14:31")).unwrap().text;
    for text in [csv, s.text(), full] {
        assert!(!text.contains("leans"), "{text}");
    }
    // They are kept all the same: a journal loses nothing.
    let kept = &s.visit.exam.latest(MEAL).unwrap().answers;
    assert!(kept.contains_key(&note_id(at(4_000))));
}

#[test]
fn what_was_seen_at_a_meal_holds_the_next_trial() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Meal);
    s.mark(0, MarkKind::Start)
        .mark(20_000, MarkKind::Sign(Sign::BreathingChange))
        .mark(60_000, MarkKind::End);
    assert_eq!(s.verdict(), Verdict::Stop);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().any(|h| h.id.starts_with("after.Meal")),
        "{held:?}"
    );
    assert!(!held[0].go_on.open_to(Role::Screener));
    // A meal that showed nothing holds nothing, and its end needs no watch.
    let mut s = ready(Role::Screener);
    s.open(TaskId::Meal);
    s.mark(0, MarkKind::Start).mark(60_000, MarkKind::End);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// A cough or a request to stop at the table holds no tally: a meal is watched.
#[test]
fn only_what_stops_every_trial_holds_the_meal() {
    for (sign, holds_it) in [
        (Sign::Cough, false),
        (Sign::AskedToStop, false),
        (Sign::NoSwallow, true),
    ] {
        let mut s = ready(Role::Slp);
        s.open(TaskId::Meal);
        s.mark(100_000, MarkKind::Start)
            .mark(120_000, MarkKind::Sign(sign))
            .mark(200_000, MarkKind::End);
        let held = holds(TaskId::Meal, &s.visit.exam);
        assert_eq!(!held.is_empty(), holds_it, "{sign:?} {held:?}");
    }
    // A choke is gone past once, not twice.
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Choke, 1_000)]).chokes(109_400, "clear");
    s.pass(TaskId::Meal, "choked", Role::Slp);
    assert!(holds(TaskId::Meal, &s.visit.exam).is_empty());
}

/// "Stop: no more trials by mouth": then nobody eats on unasked, as after a choke.
#[test]
fn a_stop_holds_the_meal() {
    for sign in [Sign::BreathingChange, Sign::NoSwallow] {
        let mut s = ready(Role::Screener);
        s.water(&[(sign, 1_000)]);
        assert!(!holds(TaskId::Meal, &s.visit.exam).is_empty(), "{sign:?}");
    }
}
