//! Where a task stands, as its page shows it: what may be pressed, what leads on, what is told.

use crate::support::*;
use penlight::clinical::decision::task_state::{PadPlace, TaskState, WayOn, Without};
use penlight::clinical::findings::next_trial::{NextTrial, WaitsFor};
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::spec::Face;
use penlight::measure::time::Stamp;

/// The state at so many milliseconds.
fn state(s: &Scene, task: TaskId, ms: i64) -> TaskState {
    let exam = &s.visit.exam;
    let now: Stamp = at(ms);
    let phase = exam.latest(task).map(|t| tasks::spec(task).phase(t, now));
    let face = phase.map_or(Face::Ready, Face::from);
    TaskState::of(task, exam, face, exam.now)
}

#[test]
fn before_the_start_the_pad_waits_for_what_is_in_the_way() {
    let mut s = ready(Role::Screener);
    // The voice before comes first.
    let asks = state(&s, TaskId::Water90, 90_000);
    assert!(!asks.is_free() && asks.asks_before() && !asks.has_signs());
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear");
    let free = state(&s, TaskId::Water90, 90_000);
    assert!(free.is_free() && free.asks_before() && !free.tells_in_the_way());
    assert_eq!(free.pad(), PadPlace::Pad);
    assert_eq!(free.without(), Some(Without::CouldNotOrSkip { skip: true }));
    s.gate(&[("awake", "drowsy")]);
    let held = state(&s, TaskId::Water90, 90_000);
    assert!(!held.is_free() && !held.asks_before() && held.tells_in_the_way());
    assert_eq!(held.without(), Some(Without::GoOnWithout));
    assert_eq!(held.way_on(), None);
}

#[test]
fn what_was_begun_is_finished_in_the_open() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start);
    s.gate(&[("awake", "drowsy")]);
    let running = state(&s, TaskId::Water90, 103_000);
    assert_eq!(running.face, Face::Running);
    assert!(running.is_free() && running.has_signs() && !running.tells_in_the_way());
    assert_eq!((running.pad(), running.way_on()), (PadPlace::Pad, None));
}

/// A tap that comes late must not hit a sign; the way on stands with the signs once all is over.
#[test]
fn the_pads_place_stays_taken_while_the_watch_runs() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start)
        .mark(108_000, MarkKind::End);
    let watching = state(&s, TaskId::Water90, 120_000);
    assert_eq!(watching.pad(), PadPlace::Watch);
    assert_eq!(watching.way_on(), Some(WayOn::WatchGoesOn));
    assert!(!watching.way_on_by_signs() && watching.has_signs());
    s.mark(168_030, MarkKind::WatchOver);
    let over = state(&s, TaskId::Water90, 170_000);
    assert_eq!(
        (over.pad(), over.way_on()),
        (PadPlace::Over, Some(WayOn::Open))
    );
    assert!(over.way_on_by_signs() && !over.done);
    s.choose("cup", "in-one-go").choose("voice-after", "clear");
    let done = state(&s, TaskId::Water90, 180_000);
    assert!(done.done);
    assert_eq!(done.way_on(), Some(WayOn::Done));
}

#[test]
fn after_a_sign_no_sip_is_offered_and_the_way_on_stands_with_the_words() {
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[(Sign::Cough, 1_000)]);
    let ended = state(&s, TaskId::Sips, 190_000);
    assert_eq!(ended.next, Some(NextTrial::Waits(WaitsFor::SignSeen)));
    assert!(ended.ended_by_sign() && ended.done && !ended.leaves_the_rest());
    assert_eq!((ended.pad(), ended.way_on()), (PadPlace::Waiting, None));
}

#[test]
fn the_next_own_trial_is_a_touch_away_until_something_stands_in_the_way() {
    let mut s = own_trials(Role::Slp);
    s.open(TaskId::Own);
    s.choose("own-level", "d0")
        .mark(100_000, MarkKind::Start)
        .mark(102_000, MarkKind::End);
    let next = state(&s, TaskId::Own, 110_000);
    assert!(next.next_now() && !next.tells_in_the_way());
    assert_eq!(next.pad(), PadPlace::Pad);
    s.mark(112_000, MarkKind::Sign(Sign::Cough));
    let held = state(&s, TaskId::Own, 115_000);
    assert!(!held.next_now() && held.tells_in_the_way());
    assert_eq!(held.pad(), PadPlace::Watch);
}

/// What the cracker asks first is asked before anything is held up by it.
#[test]
fn the_crackers_questions_come_before_its_pad() {
    let s = ready(Role::Slp);
    let first = state(&s, TaskId::Cracker, 100_000);
    assert!(first.asks_before() && !first.is_free());
}

#[test]
fn several_trials_are_offered_and_one_that_could_not_be_begun_is_an_answer() {
    let mut s = ready(Role::Slp);
    s.open(TaskId::LongestAh);
    s.choose("could-not", "no-voice");
    let said = state(&s, TaskId::LongestAh, 100_000);
    assert_eq!(said.face, Face::Over);
    assert!(said.untimed && said.done && said.another);
    assert_eq!(said.tried, 1);
}

/// A rate counted long ago clears nothing to drink: it is counted again first.
#[test]
fn breaths_counted_long_ago_lead_on_last() {
    let s = ready(Role::Screener);
    let breaths = |ms| {
        let exam = &s.visit.exam;
        TaskState::of(TaskId::Breathing, exam, Face::Over, exam.now.next(at(ms)))
    };
    assert_eq!(breaths(60_000).way_on(), Some(WayOn::Done));
    let old = breaths(90 * 60_000);
    assert!(old.read_long_ago);
    assert_eq!(old.way_on(), Some(WayOn::Open));
}
