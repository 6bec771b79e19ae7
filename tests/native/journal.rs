//! The journal: a visit is nothing but the fold of its events; nothing that was stored is lost,
//! rewritten or unreadable later.
//!
//! Checked against the design's promises ("never lose", "what can't be read is set aside, never
//! deleted", "a deletion leaves a tombstone") and against records of schema 1 kept as a file.

use crate::support::*;
use std::collections::BTreeSet;
use std::future::Future;
use std::path::PathBuf;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::counted::Counted;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate::{Group, HOLDS};
use penlight::clinical::findings::oral::{Cue, FoundId, Reason, Seen, Severity, Sides, Touches};
use penlight::clinical::findings::trial::{Answer, MarkKind};
use penlight::clinical::knowledge::oral::Region;
use penlight::clinical::knowledge::order::Order;
use penlight::clinical::knowledge::person::{Age, Initials, Label, Role, Setting, Sex};
use penlight::clinical::knowledge::policy::{Policy, SETTINGS};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::{self, breathing, water as water90};
use penlight::measure::time::{Millis, PageLife, Stamp};
use penlight::record::called::{Called, What};
use penlight::record::envelope::{Envelope, SCHEMA, Unreadable, body};
use penlight::record::event::{Action, ByWhen, Details, Event, Plan, Route, Text, Versions, Whom};
use penlight::record::export;
use penlight::record::head::Head;
use penlight::record::id::VisitId;
use penlight::record::memory::MemoryStore;
use penlight::record::store::{Store, StoreError};
use penlight::record::visit::Visit;
use penlight::wording::record::aside_lines;
use penlight::wording::screen::what;
use penlight::wording::verdict::in_list;
use proptest::prelude::*;
use proptest::sample::{Index, select};

fn visit_id(n: u32) -> VisitId {
    VisitId::new(&format!("visit-{n:010}")).unwrap()
}

fn envelope(seq: u32, at: Stamp, event: &Event) -> Envelope {
    Envelope {
        device: "device-1".to_owned(),
        visit: visit_id(1),
        seq,
        schema: SCHEMA,
        key: String::new(),
        at,
        body: body(event).unwrap(),
    }
}

/// Events as they would be stored, a second apart.
fn journal(events: &[Event]) -> Vec<Envelope> {
    (0_u32..)
        .zip(events)
        .map(|(seq, event)| envelope(seq, at(i64::from(seq) * 1_000), event))
        .collect()
}

fn replay(envelopes: &[Envelope]) -> Visit {
    Visit::replay(visit_id(1), envelopes.to_vec())
}

fn folded(events: &[Event]) -> Visit {
    replay(&journal(events))
}

/// A visit as text: two visits are the same when these are.
fn shown(visit: &Visit) -> String {
    format!("{visit:?}")
}

/// What was told to a visit, without what is known about the journal itself.
fn kept(visit: &Visit) -> String {
    let Visit {
        opened,
        details,
        screen,
        role,
        exam,
        chokings,
        plan,
        decided,
        pressed_since_decided,
        issued,
        told,
        ..
    } = visit;
    format!(
        "{opened:?} {details:?} {screen:?} {role:?} {:?} {:?} {:?} {chokings:?} {plan:?} \
         {decided:?} {pressed_since_decided:?} {issued:?} {told:?}",
        exam.gate,
        exam.trials,
        (&exam.went_on, &exam.oral, &exam.order)
    )
}

/// Everything the app asks of a visit; whatever is in it, nothing here panics.
fn ask_everything(visit: &Visit, now: Stamp) {
    let _ = (
        visit.decision(),
        visit.called(),
        visit.running(),
        visit.is_loose(),
    );
    let _ = (
        visit.next_trial(),
        Head::of(visit),
        aside_lines(&visit.aside),
    );
    for task in [
        TaskId::Breathing,
        TaskId::DrySwallow,
        TaskId::Water90,
        TaskId::FreeCount,
        TaskId::Cracker,
        TaskId::Meal,
    ] {
        let _ = holds(task, &visit.exam);
    }
    for trial in &visit.exam.trials {
        let spec = tasks::spec(trial.task);
        let _ = (
            spec.phase(trial, now),
            spec.due(trial, now),
            trial.tap_offsets(),
        );
    }
}

fn details(label: &str) -> Details {
    Details {
        label: Label::parse(label).unwrap(),
        age: Some(Age::Years(72)),
        sex: Some(Sex::Female),
        setting: Some(Setting::Ward),
        language: None,
    }
}

fn versions() -> Versions {
    Versions {
        app: "0.1.0".to_owned(),
        rules: "1".to_owned(),
    }
}

fn opened() -> Event {
    opened_under(unsaid())
}

fn opened_under(policy: Policy) -> Event {
    Event::Opened {
        details: details("Visit 3, 14:10"),
        screen: Some(ScreenId::Swallow),
        versions: versions(),
        policy,
        role: Role::Slp,
        initials: None,
    }
}

fn press(trial: u32, kind: MarkKind, ms: i64) -> Event {
    Event::Mark {
        trial,
        at: at(ms),
        kind,
    }
}

fn answer(trial: u32, question: &str, answer: Answer) -> Event {
    Event::Answer {
        trial,
        question: question.to_owned(),
        answer: Some(answer),
    }
}

fn choice(trial: u32, question: &str, id: &str) -> Event {
    answer(trial, question, Answer::Choice(id.to_owned()))
}

fn trial_opened(trial: u32, task: TaskId) -> Event {
    Event::TrialOpened {
        trial,
        task,
        length: None,
    }
}

/// The gate, one press a group.
fn gate_presses() -> Vec<Event> {
    Group::ALL
        .iter()
        .map(|group| {
            Event::Gate(
                group
                    .items()
                    .map(|item| (item.id.to_owned(), HOLDS.to_owned()))
                    .collect(),
            )
        })
        .collect()
}

/// A whole swallow screen without a sign, press by press, up to being told.
fn script() -> Vec<Event> {
    let mut events = vec![opened()];
    events.extend(gate_presses());
    events.push(trial_opened(0, TaskId::Breathing));
    events.push(answer(0, breathing::TYPED, Answer::Tenths(160)));
    events.push(trial_opened(1, TaskId::DrySwallow));
    events.push(press(1, MarkKind::Start, 100_000));
    for ms in [102_100, 109_800, 117_500, 126_000] {
        events.push(press(1, MarkKind::Tap, ms));
    }
    events.push(press(1, MarkKind::WindowOver, 130_000));
    events.push(trial_opened(2, TaskId::Water90));
    events.push(choice(2, water90::VOICE_BEFORE, "clear"));
    events.push(press(2, MarkKind::Start, 200_000));
    events.push(press(2, MarkKind::Tap, 203_000));
    events.push(press(2, MarkKind::End, 212_000));
    events.push(choice(2, water90::CUP, water90::IN_ONE_GO));
    events.push(press(2, MarkKind::WatchOver, 272_000));
    events.push(choice(2, water90::VOICE_AFTER, "clear"));
    events.push(Event::Decided {
        verdict: "pass".to_owned(),
        reasons: Vec::new(),
        versions: versions(),
        policy: Policy::default().name,
    });
    events.push(Event::Plan(Plan {
        whom: Some(Whom::Nurse),
        ..Plan::default()
    }));
    events.push(Event::Issued {
        route: Route::Copied,
        text: "No sign seen on this screen.".to_owned(),
        clock: "14:30".to_owned(),
        which: Text::Nursing,
        corrects: None,
    });
    events.push(Event::Told {
        whom: "Nurse in charge".to_owned(),
        read_back: true,
    });
    events
}

// The fold.

#[test]
fn a_whole_screen_folds_into_its_visit() {
    let events = script();
    let visit = folded(&events);
    assert_eq!(visit.next as usize, events.len());
    assert_eq!(visit.called(), Called::Label("Visit 3, 14:10".to_owned()));
    assert_eq!(visit.opened, at(0).wall);
    assert_eq!(visit.touched, at((events.len() as i64 - 1) * 1_000).wall);
    assert_eq!(
        (visit.screen, visit.role),
        (Some(ScreenId::Swallow), Role::Slp)
    );
    assert_eq!(visit.exam.age, Some(Age::Years(72)));
    assert_eq!(visit.exam.gate, gate_holds());
    assert_eq!(visit.exam.trials.len(), 3);
    assert_eq!(visit.next_trial(), 3);
    assert_eq!(visit.trial(1).unwrap().taps(), 4);
    assert_eq!(visit.decision().unwrap().verdict, Verdict::Pass);
    assert_eq!(visit.decided.as_ref().unwrap().verdict, "pass");
    assert_eq!(visit.plan.whom, Some(Whom::Nurse));
    assert_eq!(visit.issued.len(), 1);
    let told: Vec<_> = visit
        .told
        .iter()
        .map(|told| (told.whom.as_str(), told.read_back))
        .collect();
    assert_eq!(told, [("Nurse in charge", true)]);
    assert!(!visit.running() && !visit.deleted && !visit.is_loose() && visit.aside.is_empty());

    let head = Head::of(&visit);
    assert_eq!(head.label.to_string(), "Visit 3, 14:10");
    assert_eq!(head.what, What::Screen(ScreenId::Swallow));
    assert_eq!(what(head.what), "Swallow screen");
    assert_eq!(in_list(&head), "No sign seen");
    assert!(head.issued && !head.unclosed && !head.running && !head.loose && !head.deleted);
    assert_eq!(head.events as usize, events.len());
}

/// Heads of earlier versions have the title of their day.
#[test]
fn a_head_of_an_earlier_version_says_what_it_is() {
    let mut head = Head::of(&Visit::new(visit_id(1)));
    let mut kept = ScreenId::ALL.map(What::Screen).to_vec();
    kept.extend([What::Count, What::Visit]);
    for is in kept {
        head.what = is;
        let mut stored = serde_json::to_value(&head).unwrap();
        assert_eq!(
            serde_json::from_value::<Head>(stored.clone()).unwrap(),
            head
        );
        // No earlier version wrote its words.
        if is == What::Screen(ScreenId::Water) {
            continue;
        }
        stored["what"] = what(is).into();
        assert_eq!(
            serde_json::from_value::<Head>(stored.clone()).unwrap(),
            head
        );
    }
    for called in [
        Called::Label("Visit 3, 14:10".to_owned()),
        Called::Task(TaskId::Water90),
        Called::Count,
    ] {
        head.label = called;
        let mut stored = serde_json::to_value(&head).unwrap();
        let read: Head = serde_json::from_value(stored.clone()).unwrap();
        assert_eq!(read, head);
        stored["label"] = head.label.to_string().into();
        let read: Head = serde_json::from_value(stored).unwrap();
        assert_eq!(read.label.to_string(), head.label.to_string());
    }
    // One that is not known here is a visit all the same.
    head.what = What::Visit;
    let mut stored = serde_json::to_value(&head).unwrap();
    for later in ["\"Night screen\"", "{\"Screen\":\"Night\"}", "null"] {
        stored["what"] = serde_json::from_str(later).unwrap();
        assert_eq!(
            serde_json::from_value::<Head>(stored.clone()).unwrap(),
            head
        );
    }
}

#[test]
fn answers_and_gate_items_can_be_taken_back() {
    let mut events = script();
    events.push(Event::Answer {
        trial: 2,
        question: water90::VOICE_AFTER.to_owned(),
        answer: None,
    });
    assert_eq!(
        folded(&events).decision().unwrap().verdict,
        Verdict::Incomplete
    );
    events.push(choice(2, water90::VOICE_AFTER, "clear"));
    events.push(Event::GateCleared("awake".to_owned()));
    let visit = folded(&events);
    assert_eq!(visit.exam.gate.open().count(), 1);
    assert_eq!(visit.decision().unwrap().verdict, Verdict::Incomplete);
}

#[test]
fn an_early_end_and_taking_up_again() {
    let mut events = vec![opened()];
    events.extend(gate_presses());
    events.push(Event::EndedEarly(EndedEarly::Withdrew));
    let ended = folded(&events).decision().unwrap().verdict;
    assert_eq!(ended, Verdict::NotDone(EndedEarly::Withdrew));
    events.push(Event::TakenUpAgain);
    assert_eq!(
        folded(&events).decision().unwrap().verdict,
        Verdict::Incomplete
    );
}

#[test]
fn every_prefix_of_a_journal_replays() {
    let mut events = script();
    events.extend(one_of_each());
    let all = journal(&events);
    for n in 0..=all.len() {
        let visit = replay(&all[..n]);
        assert_eq!(visit.next as usize, n);
        ask_everything(&visit, at(500_000));
    }
}

/// No prefix of a screen without a sign reads "no sign seen" before its last answer.
#[test]
fn only_the_whole_screen_reads_as_no_sign() {
    let all = journal(&script());
    let last_answer = script()
        .iter()
        .rposition(|e| matches!(e, Event::Answer { .. }))
        .unwrap();
    for n in 1..=last_answer {
        let verdict = replay(&all[..n]).decision().unwrap().verdict;
        assert_eq!(verdict, Verdict::Incomplete, "after {n} events");
    }
}

#[test]
fn a_second_start_and_a_second_end_change_nothing() {
    let mut events = vec![opened(), trial_opened(0, TaskId::Water90)];
    events.push(press(0, MarkKind::Start, 1_000));
    events.push(press(0, MarkKind::End, 9_000));
    let once = folded(&events);
    events.push(press(0, MarkKind::Start, 20_000));
    events.push(press(0, MarkKind::End, 30_000));
    let twice = folded(&events);
    assert_eq!(once.exam.trials, twice.exam.trials);
    assert_eq!(twice.trial(0).unwrap().start(), Some(at(1_000)));
    assert_eq!(twice.trial(0).unwrap().end(), Some(at(9_000)));
    assert_eq!(twice.next, once.next + 2);
}

#[test]
fn undo_takes_the_newest_press_and_never_the_end_of_a_time() {
    let mut events = vec![opened(), trial_opened(0, TaskId::DrySwallow)];
    events.push(press(0, MarkKind::Start, 0));
    events.push(press(0, MarkKind::Tap, 4_000));
    events.push(press(0, MarkKind::WindowOver, 30_000));
    let kinds = |events: &[Event]| -> Vec<MarkKind> {
        folded(events)
            .trial(0)
            .unwrap()
            .marks
            .iter()
            .map(|m| m.kind)
            .collect()
    };
    events.push(Event::Undo { trial: 0 });
    assert_eq!(kinds(&events), [MarkKind::Start, MarkKind::WindowOver]);
    // Nothing is taken from another trial.
    events.push(trial_opened(1, TaskId::DrySwallow));
    events.push(Event::Undo { trial: 1 });
    events.push(Event::Undo { trial: 7 });
    assert_eq!(kinds(&events), [MarkKind::Start, MarkKind::WindowOver]);
}

/// With its start, a trial of syllables loses what was said of it: it is no trial without a time.
#[test]
fn undoing_a_start_takes_what_was_said_of_the_trial_with_it() {
    let mut events = vec![opened(), trial_opened(0, TaskId::SyllablePa)];
    events.push(press(0, MarkKind::Start, 0));
    events.push(press(0, MarkKind::Tap, 0));
    events.push(press(0, MarkKind::End, 900));
    events.push(choice(0, "sound", "correct"));
    events.push(Event::Undo { trial: 0 });
    assert_eq!(
        folded(&events).trial(0).unwrap().choice("sound"),
        Some("correct")
    );
    events.push(Event::Undo { trial: 0 });
    let visit = folded(&events);
    let trial = visit.trial(0).unwrap();
    assert!(trial.marks.is_empty() && trial.choice("sound").is_none());
    assert!(!tasks::spec(TaskId::SyllablePa).is_tried(trial));
}

/// 3-oz: the watch of 60 s runs from the last swallow. A last swallow that was taken back and
/// pressed anew is watched anew: the end of the first watch does not stand for the second.
#[test]
fn undoing_the_last_swallow_starts_its_watch_anew() {
    let mut events = script();
    let end = events
        .iter()
        .position(|e| {
            matches!(
                e,
                Event::Mark {
                    kind: MarkKind::WatchOver,
                    ..
                }
            )
        })
        .unwrap();
    events.insert(end + 1, Event::Undo { trial: 2 });
    events.insert(end + 2, press(2, MarkKind::End, 275_000));
    let visit = folded(&events);
    assert_eq!(visit.trial(2).unwrap().end(), Some(at(275_000)));
    assert_eq!(
        visit.decision().unwrap().verdict,
        Verdict::Incomplete,
        "no sign for 60 seconds after a swallow that nobody watched"
    );
}

/// The same for a count: breaths counted for 45 s after a start that was taken back are not
/// "counted for 60 seconds".
#[test]
fn undoing_a_start_starts_its_window_anew() {
    let mut events = vec![opened(), trial_opened(0, TaskId::Breathing)];
    events.push(press(0, MarkKind::Start, 0));
    events.push(press(0, MarkKind::WindowOver, 60_000));
    events.push(Event::Undo { trial: 0 });
    events.push(press(0, MarkKind::Start, 100_000));
    for i in 0..12 {
        events.push(press(0, MarkKind::Tap, 101_000 + i * 2_000));
    }
    let visit = folded(&events);
    let finding = breathing::read(visit.trial(0).unwrap());
    assert!(finding.rates.is_empty(), "counted for 24 of 60 seconds");
}

/// A sip that was given stays given: while the next one is only made ready, "undo" takes back a
/// sign of the one before and no more of it.
#[test]
fn undo_never_brings_a_given_sip_up_again() {
    let mut events = vec![opened(), trial_opened(0, TaskId::Sips)];
    events.extend([
        press(0, MarkKind::Start, 1_000),
        press(0, MarkKind::End, 2_000),
        press(0, MarkKind::Sign(Sign::Cough), 5_000),
        trial_opened(1, TaskId::Sips),
    ]);
    let mut undone = 0;
    while let Some(trial) = folded(&events).undo_goes_to(TaskId::Sips) {
        events.push(Event::Undo { trial });
        undone += 1;
    }
    assert_eq!(undone, 1);
    let visit = folded(&events);
    let given = &visit.exam.trials[0];
    assert!(given.start().is_some() && given.end().is_some());
    assert_eq!(given.signs().count(), 0);
    // Once the next one was begun, it is that one's presses that go.
    events.push(press(1, MarkKind::Start, 70_000));
    assert_eq!(folded(&events).undo_goes_to(TaskId::Sips), Some(1));
}

#[test]
fn choking_is_kept_with_help_and_its_end() {
    let mut events = vec![
        opened(),
        Event::HelpCalled(at(1)),
        Event::Choking(at(5_000)),
    ];
    assert!(folded(&events).running());
    events.push(Event::HelpCalled(at(9_000)));
    events.push(Event::BackToBaseline(at(65_000)));
    let visit = folded(&events);
    let choking = visit.choking().unwrap();
    assert_eq!(choking.since, at(5_000));
    assert_eq!(
        (choking.help, choking.over),
        (Some(at(9_000)), Some(at(65_000)))
    );
    assert!(!visit.running());
}

/// A visit in which choking was recorded does not read "no sign seen", also where the sign
/// itself was taken back or never pressed.
#[test]
fn choking_in_the_journal_never_reads_as_no_sign() {
    let mut events = script();
    events.push(Event::Choking(at(205_000)));
    assert_ne!(folded(&events).decision().unwrap().verdict, Verdict::Pass);
}

/// A sign that decided and was never handed over still waits for somebody: the head says so.
#[test]
fn a_refer_that_was_never_handed_over_is_unclosed() {
    let mut events: Vec<Event> = script()
        .into_iter()
        .take_while(|e| !matches!(e, Event::Decided { .. }))
        .collect();
    events.push(press(2, MarkKind::Sign(Sign::Cough), 220_000));
    let visit = folded(&events);
    assert_eq!(visit.decision().unwrap().verdict, Verdict::Refer);
    assert!(Head::of(&visit).unclosed);
    events.push(Event::Closed(
        "seen by speech-language pathology".to_owned(),
    ));
    assert!(!Head::of(&folded(&events)).unclosed);
}

#[test]
fn a_loose_count_is_attached_as_a_copy() {
    let attached = Event::Attached {
        from: visit_id(9),
        trial: 4,
        task: TaskId::FreeCount,
        length: Some(Millis(15_000)),
        marks: vec![(at(0), MarkKind::Start), (at(900), MarkKind::Tap)],
        hidden: vec![(at(10), at(20))],
        answers: vec![("cue".to_owned(), Answer::Choice("shown".to_owned()))],
        chokings: Vec::new(),
    };
    let visit = folded(&[opened(), attached]);
    let copy = visit.trial(4).unwrap();
    assert_eq!(copy.choice("cue"), Some("shown"));
    assert_eq!((copy.taps(), copy.length), (1, Some(Millis(15_000))));
    assert_eq!(copy.hidden, [(at(10), at(20))]);
    assert_eq!(visit.next_trial(), 5);

    let loose = folded(&[
        trial_opened(0, TaskId::FreeCount),
        Event::AttachedTo(visit_id(1)),
    ]);
    assert!(loose.is_loose());
    assert_eq!(loose.attached_to, Some(visit_id(1)));
}

/// What was counted without a visit stands in the list under its task's name; a head that an earlier
/// version wrote keeps the words it holds.
#[test]
fn a_count_without_a_visit_goes_by_what_was_counted() {
    let named = |head: &Head| head.label.to_string();
    for (task, name) in [
        (TaskId::LongestAh, "Longest \"ah\""),
        (TaskId::FreeCount, "Count"),
    ] {
        let visit = folded(&[trial_opened(0, task)]);
        assert_eq!(visit.label(), name);
        let head = Head::of(&visit);
        assert_eq!(named(&head), name);
        let stored = serde_json::to_string(&head).unwrap();
        assert_eq!(serde_json::from_str::<Head>(&stored).unwrap(), head);

        let mut earlier: serde_json::Value = serde_json::from_str(&stored).unwrap();
        let fields = earlier.as_object_mut().unwrap();
        fields.insert("label".to_owned(), name.into());
        assert_eq!(named(&serde_json::from_value(earlier).unwrap()), name);
    }
    let visit = folded(&[opened(), trial_opened(0, TaskId::LongestAh)]);
    assert_eq!(named(&Head::of(&visit)), "Visit 3, 14:10");
}

/// A number at the end of its range, as only a damaged record has it.
#[test]
fn the_last_trial_number_there_is() {
    let visit = folded(&[opened(), trial_opened(u32::MAX, TaskId::DrySwallow)]);
    let _ = visit.next_trial();
    let mut last = envelope(u32::MAX, at(0), &opened());
    last.visit = visit_id(1);
    assert_eq!(replay(&[last]).next, u32::MAX);
}

// What can't be read.

/// One of each kind of record that can't be read, with the reason.
fn unreadable(seq: u32) -> Vec<(Envelope, Unreadable)> {
    let good = envelope(seq, at(0), &press(2, MarkKind::Tap, 203_500));
    let with = |change: &dyn Fn(&mut Envelope)| {
        let mut bad = good.clone();
        change(&mut bad);
        bad
    };
    vec![
        (
            with(&|e| e.schema = SCHEMA + 1),
            Unreadable::Newer(SCHEMA + 1),
        ),
        (with(&|e| e.key = "key-2".to_owned()), Unreadable::Sealed),
        (with(&|e| e.body.truncate(9)), Unreadable::Damaged),
        (with(&|e| e.body.clear()), Unreadable::Damaged),
        (
            with(&|e| e.body = r#"{"Sneezed":3}"#.to_owned()),
            Unreadable::Damaged,
        ),
        (
            with(&|e| e.body = e.body.replace("\"Tap\"", r#"{"Sign":"Hiccup"}"#)),
            Unreadable::Damaged,
        ),
    ]
}

#[test]
fn what_cannot_be_read_is_set_aside_and_everything_else_is_kept() {
    for (bad, why) in unreadable(15) {
        let mut with = journal(&script());
        for later in &mut with[15..] {
            later.seq += 1;
        }
        let without = replay(&with);
        with.push(bad.clone());
        let visit = replay(&with);
        assert_eq!(visit.aside.len(), 1, "{why:?}");
        assert_eq!(visit.aside[0].why, why);
        assert_eq!(visit.next, without.next);
        assert_eq!(kept(&visit), kept(&without), "{why:?}");

        let text = aside_lines(&visit.aside);
        let (reason, raw) = text.split_once('\n').unwrap();
        assert_eq!(reason, format!("# {why}"));
        assert_eq!(serde_json::from_str::<Envelope>(raw).unwrap(), bad);
        ask_everything(&visit, at(0));
    }
}

/// Also as the newest record of all: its number is not given away again.
#[test]
fn the_next_number_lies_after_what_cannot_be_read() {
    for (bad, why) in unreadable(40) {
        let mut all = journal(&script());
        all.push(bad);
        assert_eq!(replay(&all).next, 41, "{why:?}");
    }
}

/// "Not tested" is never "normal": what can't be read may have been the cough.
#[test]
fn what_was_set_aside_never_reads_as_no_sign() {
    for (bad, why) in unreadable(40) {
        let mut all = journal(&script());
        all.push(bad);
        let verdict = replay(&all).decision().unwrap().verdict;
        assert_ne!(verdict, Verdict::Pass, "a record is {why}");
    }
}

/// Nor does a journal in which a record is missing altogether.
#[test]
fn a_gap_in_the_numbers_never_reads_as_no_sign() {
    let mut events = script();
    let last_tap = events
        .iter()
        .rposition(|e| {
            matches!(
                e,
                Event::Mark {
                    kind: MarkKind::Tap,
                    ..
                }
            )
        })
        .unwrap();
    events.insert(last_tap, press(2, MarkKind::Sign(Sign::Cough), 204_000));
    let mut all = journal(&events);
    assert_eq!(replay(&all).decision().unwrap().verdict, Verdict::Refer);
    all.remove(last_tap);
    assert_ne!(replay(&all).decision().unwrap().verdict, Verdict::Pass);
}

/// A visit whose first record is damaged is no "count without a visit".
#[test]
fn a_visit_without_its_first_record_is_not_a_loose_count() {
    let mut all = journal(&script());
    all[0].body.truncate(20);
    assert!(!replay(&all).is_loose());
}

#[test]
fn the_export_of_a_visit_reads_back() {
    let all = journal(&script());
    let text = export::lines(&all);
    let back: Vec<Envelope> = text
        .lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect();
    assert_eq!(back, all);
}

#[test]
fn ids_that_could_not_be_part_of_a_key_are_refused() {
    for bad in [
        "",
        "short",
        "UPPER-CASE-LETTERS",
        "with space in the id",
        "../../../../etc/x",
    ] {
        assert_eq!(VisitId::new(bad), None, "{bad}");
    }
    assert_eq!(VisitId::new(&"x".repeat(41)), None);
}

// Deletion.

#[test]
fn a_deletion_leaves_a_tombstone_and_nothing_else() {
    let mut events = script();
    events.push(Event::Deleted);
    let visit = folded(&events);
    assert!(visit.deleted);
    assert_eq!(visit.next as usize, events.len());
    assert_eq!(visit.touched, at((events.len() as i64 - 1) * 1_000).wall);
    let mut nothing = Visit::new(visit_id(1));
    nothing.opened = visit.opened;
    assert_eq!(kept(&visit), kept(&nothing));
    assert!(visit.closed.is_none() && visit.attached_to.is_none() && visit.aside.is_empty());
    assert_eq!(visit.last_well, "");
    assert!(visit.decision().is_none() && !visit.running() && !visit.is_loose());
    let head = Head::of(&visit);
    assert!(head.deleted && !head.unclosed && !head.issued);
    for told in ["Visit 3", "No sign", "Nurse"] {
        assert!(!format!("{head:?}{visit:?}").contains(told), "{told}");
    }
}

/// A straggler of another window does not bring anything back.
#[test]
fn nothing_comes_back_after_a_deletion() {
    let mut events = script();
    events.push(Event::Deleted);
    let deleted = folded(&events);
    for straggler in one_of_each() {
        if matches!(straggler, Event::Deleted) {
            continue;
        }
        let mut more = events.clone();
        more.push(straggler.clone());
        let visit = folded(&more);
        assert!(visit.deleted);
        assert_eq!(visit.next, deleted.next + 1);
        assert_eq!(kept(&visit), kept(&deleted), "after {straggler:?}");
        assert_eq!((visit.last_well, visit.closed), (String::new(), None));
        assert_eq!(visit.attached_to, None);
    }
}

// The store's contract.

/// Runs a future of the memory store: it never waits.
fn block_on<T>(future: impl Future<Output = T>) -> T {
    let mut future = pin!(future);
    match future
        .as_mut()
        .poll(&mut Context::from_waker(Waker::noop()))
    {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("the memory store waited"),
    }
}

fn of_visit(n: u32, mut envelopes: Vec<Envelope>) -> (Vec<Envelope>, Head) {
    for envelope in &mut envelopes {
        envelope.visit = visit_id(n);
    }
    let head = Head::of(&Visit::replay(visit_id(n), envelopes.clone()));
    (envelopes, head)
}

fn stored(store: &MemoryStore, n: u32) -> Vec<Envelope> {
    block_on(store.read(&visit_id(n))).unwrap().0
}

fn heads(store: &MemoryStore) -> Vec<Head> {
    block_on(store.heads(usize::MAX, None)).unwrap()
}

#[test]
fn the_store_gives_back_what_it_got_in_order() {
    let store = MemoryStore::default();
    let (events, head) = of_visit(1, journal(&script()));
    let mut backwards = events.clone();
    backwards.reverse();
    let (later, earlier) = backwards.split_at(4);
    block_on(store.append(later.to_vec(), head.clone())).unwrap();
    block_on(store.append(earlier.to_vec(), head.clone())).unwrap();
    let (other, other_head) = of_visit(2, journal(&[opened()]));
    block_on(store.append(other.clone(), other_head)).unwrap();

    assert_eq!(stored(&store, 1), events);
    assert_eq!(stored(&store, 2), other);
    assert_eq!(stored(&store, 3), []);
    assert_eq!(
        shown(&Visit::replay(visit_id(1), stored(&store, 1))),
        shown(&replay(&events))
    );
}

#[test]
fn a_taken_number_is_a_conflict_and_nothing_is_written() {
    let store = MemoryStore::default();
    let (events, head) = of_visit(1, journal(&script()));
    block_on(store.append(events[..5].to_vec(), head.clone())).unwrap();
    let mut other_head = head.clone();
    other_head.label = Called::Label("another window".to_owned());
    // The batch starts with a free number and ends with a taken one.
    let batch = vec![events[6].clone(), events[4].clone()];
    let result = block_on(store.append(batch, other_head));
    assert_eq!(result, Err(StoreError::Conflict));
    assert_eq!(stored(&store, 1), events[..5]);
    assert_eq!(heads(&store), std::slice::from_ref(&head));

    // The same number in another visit is free.
    let (other, other_head) = of_visit(2, events[..5].to_vec());
    assert_eq!(block_on(store.append(other, other_head)), Ok(()));
}

/// Two records with one number in one batch: neither may swallow the other.
#[test]
fn a_number_twice_in_one_batch_is_a_conflict() {
    let store = MemoryStore::default();
    let (events, head) = of_visit(1, journal(&script()));
    let mut twin = events[1].clone();
    twin.seq = 0;
    let result = block_on(store.append(vec![events[0].clone(), twin], head));
    assert_eq!(result, Err(StoreError::Conflict));
    assert_eq!(stored(&store, 1), []);
    assert_eq!(heads(&store), []);
}

#[test]
fn heads_come_newest_first_and_page_by_page() {
    let store = MemoryStore::default();
    for n in 1..=5 {
        let mut events = journal(&[opened()]);
        events[0].at = at(i64::from(n * 7 % 5) * 1_000);
        let (events, head) = of_visit(n, events);
        block_on(store.append(events, head)).unwrap();
    }
    let all = heads(&store);
    assert_eq!(all.len(), 5);
    assert!(all.is_sorted_by_key(|h| std::cmp::Reverse(h.touched)));
    let first = block_on(store.heads(2, None)).unwrap();
    let second = block_on(store.heads(2, Some(first[1].touched))).unwrap();
    let third = block_on(store.heads(2, Some(second[1].touched))).unwrap();
    assert_eq!([first, second, third].concat(), all);
}

#[test]
fn burying_leaves_the_tombstone_alone() {
    let store = MemoryStore::default();
    let (events, head) = of_visit(1, journal(&script()));
    let next = u32::try_from(events.len()).unwrap();
    block_on(store.append(events, head)).unwrap();
    let (other, other_head) = of_visit(2, journal(&[opened()]));
    block_on(store.append(other.clone(), other_head)).unwrap();

    let tombstone = envelope(next, at(900_000), &Event::Deleted);
    let (grave, head) = of_visit(1, vec![tombstone.clone()]);
    block_on(store.bury(grave[0].clone(), head)).unwrap();
    assert_eq!(stored(&store, 1), grave);
    assert_eq!(stored(&store, 2), other);
    let heads = heads(&store);
    assert_eq!(heads.len(), 2);
    assert!(heads[0].deleted && heads[0].label.to_string() != "Visit 3, 14:10");
    // The numbers go on after the tombstone.
    let visit = Visit::replay(visit_id(1), stored(&store, 1));
    assert!(visit.deleted);
    assert_eq!(visit.next, next + 1);
}

#[test]
fn a_store_that_fails_writes_nothing_and_works_again_later() {
    for error in [StoreError::Full, StoreError::Locked, StoreError::Missing] {
        let store = MemoryStore::default();
        let (events, head) = of_visit(1, journal(&script()));
        let (first, rest) = events.split_at(6);
        block_on(store.append(first.to_vec(), head.clone())).unwrap();
        let mut changed = head.clone();
        changed.label = Called::Label("changed".to_owned());

        store.fail_with(Some(error.clone()));
        let failed = Err(error.clone());
        assert_eq!(
            block_on(store.append(rest.to_vec(), changed.clone())),
            failed
        );
        assert_eq!(
            block_on(store.bury(rest[0].clone(), changed.clone())),
            failed
        );
        assert_eq!(block_on(store.read(&visit_id(1))), Err(error.clone()));
        assert_eq!(block_on(store.heads(9, None)), Err(error.clone()));
        assert!(!error.to_string().is_empty());

        store.fail_with(None);
        assert_eq!(stored(&store, 1), first);
        assert_eq!(heads(&store), [head]);
        block_on(store.append(rest.to_vec(), changed)).unwrap();
        assert_eq!(stored(&store, 1), events);
    }
}

// Any events at all.

/// Lists every value of an enum without fields; a new variant fails to compile until it is added.
macro_rules! every {
    ($type:ident: $($variant:ident),+) => {{
        fn complete(value: $type) {
            match value {
                $($type::$variant => {})+
            }
        }
        let all = vec![$($type::$variant),+];
        all.iter().for_each(|value| complete(*value));
        all
    }};
}

fn every_mark() -> Vec<MarkKind> {
    let complete = |kind: MarkKind| match kind {
        MarkKind::Start
        | MarkKind::Tap
        | MarkKind::Sign(_)
        | MarkKind::End
        | MarkKind::WindowOver
        | MarkKind::WatchOver
        | MarkKind::Stopped
        | MarkKind::Count(_) => {}
    };
    let mut kinds = vec![
        MarkKind::Start,
        MarkKind::Tap,
        MarkKind::End,
        MarkKind::WindowOver,
        MarkKind::WatchOver,
        MarkKind::Stopped,
    ];
    kinds.extend(Sign::ALL.map(MarkKind::Sign));
    kinds.extend(
        every!(Counted: Chew, Swallow, Breath, Other, Note)
            .into_iter()
            .map(MarkKind::Count),
    );
    kinds.iter().for_each(|kind| complete(*kind));
    kinds
}

/// An event's variant by name. A new variant fails to compile until it stands here and in
/// [`VARIANTS`]; then the tests below ask for it in [`one_of_each`] and in the golden file.
fn variant(event: &Event) -> &'static str {
    match event {
        Event::Opened { .. } => "Opened",
        Event::Details(_) => "Details",
        Event::ScreenChosen(_) => "ScreenChosen",
        Event::Role(_) => "Role",
        Event::Gate(_) => "Gate",
        Event::GateCleared(_) => "GateCleared",
        Event::TrialOpened { .. } => "TrialOpened",
        Event::Mark { .. } => "Mark",
        Event::Undo { .. } => "Undo",
        Event::Hidden { .. } => "Hidden",
        Event::Answer { .. } => "Answer",
        Event::WentOn { .. } => "WentOn",
        Event::EndedEarly(_) => "EndedEarly",
        Event::TakenUpAgain => "TakenUpAgain",
        Event::Choking(_) => "Choking",
        Event::NotChoking => "NotChoking",
        Event::HelpCalled(_) => "HelpCalled",
        Event::BackToBaseline(_) => "BackToBaseline",
        Event::VoiceAfterChoking(_) => "VoiceAfterChoking",
        Event::LastWell(_) => "LastWell",
        Event::Plan(_) => "Plan",
        Event::Decided { .. } => "Decided",
        Event::Issued { .. } => "Issued",
        Event::Told { .. } => "Told",
        Event::Attached { .. } => "Attached",
        Event::AttachedTo(_) => "AttachedTo",
        Event::Closed(_) => "Closed",
        Event::Deleted => "Deleted",
        Event::Oral(_) => "Oral",
        Event::OralTakenBack(_) => "OralTakenBack",
        Event::OralCue { .. } => "OralCue",
        Event::SignMoved { .. } => "SignMoved",
        Event::Order(_) => "Order",
        Event::Detached { .. } => "Detached",
        Event::DetachedFrom(_) => "DetachedFrom",
    }
}

const VARIANTS: [&str; 35] = [
    "Opened",
    "Details",
    "ScreenChosen",
    "Role",
    "Gate",
    "GateCleared",
    "TrialOpened",
    "Mark",
    "Undo",
    "Hidden",
    "Answer",
    "WentOn",
    "EndedEarly",
    "TakenUpAgain",
    "Choking",
    "NotChoking",
    "HelpCalled",
    "BackToBaseline",
    "LastWell",
    "Plan",
    "Decided",
    "Issued",
    "Told",
    "Attached",
    "AttachedTo",
    "Closed",
    "Deleted",
    "Oral",
    "OralTakenBack",
    "OralCue",
    "SignMoved",
    "Order",
    "VoiceAfterChoking",
    "Detached",
    "DetachedFrom",
];

/// One event of every variant, in their order.
fn one_of_each() -> Vec<Event> {
    vec![
        opened(),
        Event::Details(details("Visit 4, 09:10")),
        Event::ScreenChosen(ScreenId::Swallow),
        Event::Role(Role::Screener),
        Event::Gate(vec![
            ("awake".to_owned(), HOLDS.to_owned()),
            ("saliva".to_owned(), "no".to_owned()),
        ]),
        Event::GateCleared("saliva".to_owned()),
        Event::TrialOpened {
            trial: 3,
            task: TaskId::FreeCount,
            length: Some(Millis(15_000)),
        },
        press(3, MarkKind::Tap, 4_000),
        Event::Undo { trial: 3 },
        Event::Hidden {
            from: at(1_000),
            to: stamp(2, 300, 9_000),
        },
        choice(3, water90::CUP, water90::PAUSED),
        Event::WentOn {
            hold: "gate.saliva".to_owned(),
            because: "agreed with the physician".to_owned(),
            by: Role::Slp,
            says: String::new(),
            initials: None,
            ground: None,
        },
        Event::EndedEarly(EndedEarly::Withdrew),
        Event::TakenUpAgain,
        Event::Choking(at(10_000)),
        Event::NotChoking,
        Event::HelpCalled(at(12_000)),
        Event::BackToBaseline(at(70_000)),
        Event::LastWell("yesterday, at supper".to_owned()),
        Event::Plan(Plan {
            verdict: "refer".to_owned(),
            action: Some(Action::NothingByMouth),
            because: "until assessed".to_owned(),
            whom: Some(Whom::Slp),
            by_when: Some(ByWhen::Today),
            drink: Some(2),
            food: Some(5),
            remark: "daughter present".to_owned(),
        }),
        Event::Decided {
            verdict: "refer".to_owned(),
            reasons: vec![(
                "coughed while drinking".to_owned(),
                "water.cough".to_owned(),
            )],
            versions: versions(),
            policy: Policy::default().name,
        },
        Event::Issued {
            route: Route::Copied,
            text: "Refer to speech-language pathology today.\n\"Nothing by mouth\"".to_owned(),
            clock: "14:30".to_owned(),
            which: Text::Nursing,
            corrects: None,
        },
        Event::Told {
            whom: "Nurse in charge".to_owned(),
            read_back: false,
        },
        Event::Attached {
            from: visit_id(9),
            trial: 8,
            task: TaskId::DrySwallow,
            length: None,
            marks: vec![(at(0), MarkKind::Start), (at(900), MarkKind::Tap)],
            hidden: vec![(at(10), at(20))],
            answers: vec![("not-valid".to_owned(), Answer::Choice("neck".to_owned()))],
            chokings: Vec::new(),
        },
        Event::AttachedTo(visit_id(7)),
        Event::Closed("seen by speech-language pathology".to_owned()),
        Event::Deleted,
        Event::Oral(vec![
            ("face.rest".to_owned(), Seen::AsExpected),
            ("tongue.out".to_owned(), Seen::Found(vec![found("to-side")])),
        ]),
        Event::OralTakenBack(vec!["face.rest".to_owned()]),
        Event::OralCue {
            region: Region::Tongue,
            cue: Some(Cue::Copied),
        },
        Event::SignMoved {
            from: 1,
            to: 0,
            sign: Sign::Cough,
            at: at(41_000),
        },
        Event::Order(Order::from(vec![TaskId::Sequence, TaskId::SyllablePa])),
    ]
}

fn found(what: &str) -> FoundId {
    FoundId {
        what: what.to_owned(),
        side: None,
        severity: None,
    }
}

/// A policy that has none of the first settings at its default.
fn every_setting_changed() -> Policy {
    let mut policy = Policy {
        name: "Ward 4".to_owned(),
        ..Policy::default()
    };
    // Other than what a record means that does not name it: then every record names all. What came
    // later stands in the last lines.
    let unsaid = unsaid();
    for setting in SETTINGS.iter().filter(|s| s.field != "slp_here") {
        let meant = (setting.get)(&unsaid);
        let other = (0..200).find(|v| setting.takes(*v) && *v != meant);
        (setting.set)(&mut policy, other.unwrap());
    }
    policy
}

/// The policy of the first records: what one means that names none of its settings.
fn unsaid() -> Policy {
    let name = Policy::default().name;
    serde_json::from_value(serde_json::json!({ "name": name })).unwrap()
}

/// Every value of every enum that is part of a record, so that a renamed one shows.
fn every_value() -> Vec<Event> {
    // What came later stands last: the file then grows by a line and changes in none.
    let (later, first): (Vec<_>, Vec<_>) = every_mark()
        .into_iter()
        .map(|k| (k, press(3, k, 4_000)))
        .partition(|(kind, _)| *kind == MarkKind::Stopped);
    let mut events: Vec<Event> = first.into_iter().map(|(_, event)| event).collect();
    events.extend(
        every!(TaskId: Breathing, DrySwallow, Water90, FreeCount, SyllablePa, SyllableTa, SyllableKa,
            Sequence, LongestAh, LongestS, LongestZ, PitchGlide, BreathCount, BreathHold, FiveForFive,
            Flow, Cracker, Meal, SixSigns, Sips, TimedWater, Own, BreathTaps, Breaths30)
            .into_iter()
            .map(|task| trial_opened(4, task)),
    );
    events.extend(every!(Role: Screener, Slp).into_iter().map(Event::Role));
    events.extend(
        every!(ScreenId: Swallow, OralMotor, FullVisit, Stepped, OwnTrials, Water)
            .into_iter()
            .filter(|screen| *screen != ScreenId::Water)
            .map(Event::ScreenChosen),
    );
    events.extend(
        every!(EndedEarly: Refused, Withdrew, GateClosed, Emergency, NotForAge, BrokenOff)
            .into_iter()
            .map(Event::EndedEarly),
    );
    events.extend(
        every!(Route: Copied, Shared, Saved)
            .into_iter()
            .map(|route| Event::Issued {
                route,
                text: String::new(),
                clock: String::new(),
                which: Text::Nursing,
                corrects: None,
            }),
    );
    let plan = |change: &dyn Fn(&mut Plan)| {
        let mut plan = Plan::default();
        change(&mut plan);
        Event::Plan(plan)
    };
    for action in every!(Action: NothingByMouth, KeepPlan, AcknowledgedRisk) {
        events.push(plan(&|p| p.action = Some(action)));
    }
    for whom in every!(Whom: Slp, Doctor, Nurse) {
        events.push(plan(&|p| p.whom = Some(whom)));
    }
    for by_when in every!(ByWhen: Now, Today, Within24Hours) {
        events.push(plan(&|p| p.by_when = Some(by_when)));
    }
    let mut person = |change: &dyn Fn(&mut Details)| {
        let mut details = details("Visit 4, 09:10");
        change(&mut details);
        events.push(Event::Details(details));
    };
    for age in [
        None,
        Some(Age::Adult),
        Some(Age::Years(120)),
        Some(Age::Months(35)),
    ] {
        match age {
            None | Some(Age::Adult | Age::Years(_) | Age::Months(_)) => {}
        }
        person(&|d| d.age = age);
    }
    for sex in every!(Sex: Female, Male) {
        person(&|d| d.sex = Some(sex));
    }
    for setting in every!(Setting: Ward, Home, Clinic, CareHome) {
        person(&|d| d.setting = Some(setting));
    }
    for given in [
        Answer::Choice("clear".to_owned()),
        Answer::Tenths(-155),
        Answer::Words("said \"no\"".to_owned()),
    ] {
        match given {
            Answer::Choice(_) | Answer::Tenths(_) | Answer::Words(_) => {}
        }
        events.push(answer(3, "any", given));
    }
    events.push(Event::Answer {
        trial: 3,
        question: "any".to_owned(),
        answer: None,
    });
    events.push(opened_under(every_setting_changed()));
    let oral = |item: &str, seen: Seen| Event::Oral(vec![(item.to_owned(), seen)]);
    for side in every!(Sides: Left, Right, Both) {
        let side = Some(side);
        let one = FoundId {
            side,
            ..found("droop")
        };
        events.push(oral("face.rest", Seen::Found(vec![one])));
    }
    for severity in every!(Severity: Mild, Moderate, Severe) {
        let severity = Some(severity);
        let one = FoundId {
            severity,
            ..found("droop")
        };
        events.push(oral("face.rest", Seen::Found(vec![one])));
    }
    for reason in every!(Reason: Refused, NotSafe, CouldNotFollow, NoEquipment, NoTime, NotNeeded) {
        events.push(oral("gag", Seen::NotTested(reason)));
    }
    for front_teeth in [None, Some(true), Some(false)] {
        let tenths = Some(355);
        events.push(oral(
            "jaw.mm",
            Seen::Measured {
                tenths,
                front_teeth,
            },
        ));
    }
    let left = Touches {
        felt: 2,
        less: 1,
        missed: 0,
    };
    let right = Touches::default();
    events.push(oral("touch.cheek", Seen::Touched { left, right }));
    for region in every!(Region: Face, Lips, Jaw, Mouth, Tongue, Palate, Feeling, Voice, Gag) {
        events.push(Event::OralCue { region, cue: None });
    }
    for cue in every!(Cue: Spoken, Shown, Copied) {
        events.push(Event::OralCue {
            region: Region::Face,
            cue: Some(cue),
        });
    }
    events.extend(
        every!(Text: Nursing, FullNote)
            .into_iter()
            .map(|which| Event::Issued {
                route: Route::Copied,
                text: String::new(),
                clock: String::new(),
                which,
                corrects: None,
            }),
    );
    events.extend(later.into_iter().map(|(_, event)| event));
    events.push(Event::ScreenChosen(ScreenId::Water));
    events
}

#[test]
fn every_variant_of_an_event_is_tried() {
    let mut events = one_of_each();
    events.extend(added_since().into_iter().take(3));
    let names: Vec<&str> = events.iter().map(variant).collect();
    assert_eq!(names, VARIANTS);
}

/// What was added to the records since: the variants first. It stands at the end of the file, which
/// then grows by a line and changes in none.
fn added_since() -> Vec<Event> {
    let shared = Policy {
        name: "Ward 4".to_owned(),
        slp_here: false,
        ..Policy::default()
    };
    vec![
        Event::VoiceAfterChoking("wet".to_owned()),
        Event::Detached { trial: 8 },
        Event::DetachedFrom(visit_id(7)),
        Event::Opened {
            details: details("Visit 3, 14:10"),
            screen: Some(ScreenId::Swallow),
            versions: versions(),
            policy: shared,
            role: Role::Slp,
            initials: Initials::parse("AB").ok(),
        },
        Event::WentOn {
            hold: "gate.tube.tube".to_owned(),
            because: "low risk in my judgement".to_owned(),
            by: Role::Slp,
            initials: Initials::parse("AB").ok(),
            says: String::new(),
            ground: None,
        },
    ]
}

/// Where the records of schema 1 are kept: one envelope a line, as the app exports them.
fn golden_path() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/journal-schema-1.jsonl")
}

/// Records written by schema 1 stay readable, to the letter.
///
/// `PENLIGHT_WRITE_GOLDEN=1 cargo test --no-default-features --test journal` writes the file
/// anew. After a release only lines may be added: a line that changed or went is a record on
/// somebody's phone that can't be read any more.
#[test]
fn records_of_schema_1_stay_readable() {
    let mut events = one_of_each();
    events.extend(every_value());
    events.extend(added_since());
    let wanted: String = export::lines(&journal(&events));
    if std::env::var_os("PENLIGHT_WRITE_GOLDEN").is_some_and(|v| v == "1") {
        std::fs::write(golden_path(), &wanted).unwrap();
    }
    let golden = std::fs::read_to_string(golden_path()).unwrap();
    let mut found = BTreeSet::new();
    for (n, line) in (1..).zip(golden.lines()) {
        let envelope: Envelope =
            serde_json::from_str(line).unwrap_or_else(|e| panic!("line {n}: {e}"));
        assert_eq!(envelope.schema, 1, "line {n}");
        let event = envelope
            .open()
            .unwrap_or_else(|e| panic!("line {n}: {e}: {line}"));
        found.insert(variant(&event));
        assert_eq!(body(&event).unwrap(), envelope.body, "line {n}");
        assert_eq!(serde_json::to_string(&envelope).unwrap(), line, "line {n}");
    }
    assert_eq!(found, BTreeSet::from(VARIANTS), "a variant has no line");
    assert_eq!(
        golden, wanted,
        "the file and this version differ: see the comment above"
    );
}

fn plausible_stamp() -> impl Strategy<Value = Stamp> {
    (1_u32..4, 0_i64..200_000, -50_000_i64..200_000).prop_map(|(l, m, w)| stamp(l, m, w))
}

fn wild_stamp() -> impl Strategy<Value = Stamp> {
    (any::<u32>(), any::<i64>(), any::<i64>()).prop_map(|(life, mono, wall)| Stamp {
        life: PageLife(life),
        mono: Millis(mono),
        wall: Millis(wall),
    })
}

/// Any event of any variant, with stamps of this kind.
fn any_event(
    stamps: impl Strategy<Value = Stamp> + Clone + 'static,
) -> impl Strategy<Value = Event> {
    let trial = 0_u32..3;
    let task = select(vec![
        TaskId::Breathing,
        TaskId::DrySwallow,
        TaskId::Water90,
        TaskId::FreeCount,
        TaskId::Cracker,
        TaskId::Meal,
        TaskId::SixSigns,
    ]);
    let length = prop::option::of(any::<i64>().prop_map(Millis));
    let kind = select(every_mark());
    let given = prop_oneof![
        select(vec!["clear", "wet", "one-go", "some-left", "not-felt", ""])
            .prop_map(|id| Answer::Choice(id.to_owned())),
        any::<i32>().prop_map(Answer::Tenths),
        "\\PC{0,12}".prop_map(Answer::Words),
    ];
    let questions = tasks::water::SPEC
        .questions
        .iter()
        .chain(tasks::breathing::SPEC.questions)
        .map(|q| q.id.to_owned())
        .collect::<Vec<_>>();
    let two = (stamps.clone(), stamps.clone());
    let marks = prop::collection::vec((stamps.clone(), kind.clone()), 0..6);
    prop_oneof![
        2 => (trial.clone(), task.clone(), length.clone()).prop_map(|(trial, task, length)| {
            Event::TrialOpened { trial, task, length }
        }),
        6 => (trial.clone(), stamps, kind)
            .prop_map(|(trial, at, kind)| Event::Mark { trial, at, kind }),
        1 => trial.clone().prop_map(|trial| Event::Undo { trial }),
        1 => two.prop_map(|(from, to)| Event::Hidden { from, to }),
        3 => (trial.clone(), select(questions), prop::option::of(given)).prop_map(
            |(trial, question, answer)| Event::Answer { trial, question, answer }
        ),
        1 => (trial, task, length, marks).prop_map(|(trial, task, length, marks)| {
            Event::Attached {
                from: visit_id(9),
                trial,
                task,
                length,
                marks,
                hidden: Vec::new(),
                answers: Vec::new(),
                chokings: Vec::new(),
            }
        }),
        3 => any::<Index>().prop_map(|i| {
            let all = one_of_each();
            // A deletion would hide what came before it too often.
            let kept: Vec<Event> = all.into_iter().filter(|e| *e != Event::Deleted).collect();
            kept[i.index(kept.len())].clone()
        }),
        3 => any::<Index>().prop_map(|i| {
            let all = every_value();
            all[i.index(all.len())].clone()
        }),
    ]
    .boxed()
}

fn any_journal(
    stamps: impl Strategy<Value = Stamp> + Clone + 'static,
) -> impl Strategy<Value = Vec<Envelope>> {
    let wrong = prop_oneof![
        12 => Just(0_u8),
        1 => 1_u8..5,
    ];
    prop::collection::vec((any_event(stamps.clone()), stamps, wrong), 0..40).prop_map(|events| {
        (0_u32..)
            .zip(events)
            .map(|(seq, (event, at, wrong))| {
                let mut envelope = envelope(seq, at, &event);
                match wrong {
                    1 => envelope.schema += 1,
                    2 => envelope.key = "key-2".to_owned(),
                    3 => envelope.body = "{".to_owned(),
                    4 => envelope.body = body(&Event::Deleted).unwrap(),
                    _ => {}
                }
                envelope
            })
            .collect()
    })
}

fn plausible() -> impl Strategy<Value = Stamp> + Clone {
    plausible_stamp().boxed()
}

fn wild() -> impl Strategy<Value = Stamp> + Clone {
    prop_oneof![plausible_stamp(), wild_stamp()].boxed()
}

fn config() -> ProptestConfig {
    ProptestConfig {
        cases: 400,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(config())]

    /// Taken one by one or rebuilt from the store, in whatever order the store gives them.
    #[test]
    fn replay_is_the_same_in_any_order(
        (all, shuffled) in any_journal(plausible())
            .prop_flat_map(|all| (Just(all.clone()), Just(all).prop_shuffle())),
    ) {
        let mut visit = Visit::new(visit_id(1));
        for envelope in &all {
            visit.take(envelope);
            ask_everything(&visit, envelope.at);
        }
        prop_assert_eq!(shown(&replay(&all)), shown(&visit));
        prop_assert_eq!(shown(&replay(&shuffled)), shown(&visit));
    }

    /// An event that was just written need not be read again: what is read is what was written.
    #[test]
    fn an_event_taken_as_it_is_makes_the_visit_that_its_record_makes(
        events in prop::collection::vec((any_event(wild()), wild()), 0..40),
    ) {
        let mut read = Visit::new(visit_id(1));
        let mut new = read.clone();
        let mut head = Head::of(&new);
        for (seq, (event, at)) in (0_u32..).zip(events) {
            let envelope = envelope(seq, at, &event);
            read.take(&envelope);
            new.take_new(&envelope, event);
            prop_assert_eq!(shown(&new), shown(&read));
            head = Head::after(Some(&head), &new);
            prop_assert_eq!(&head, &Head::of(&read));
        }
    }

    /// A clock or a count at the end of its range, as only a damaged record has it.
    #[test]
    fn no_record_is_odd_enough_to_panic(all in any_journal(wild())) {
        let mut visit = Visit::new(visit_id(1));
        for envelope in &all {
            visit.take(envelope);
            ask_everything(&visit, envelope.at);
        }
    }

    #[test]
    fn every_event_reads_back_as_it_was(event in any_event(wild())) {
        let text = body(&event).unwrap();
        prop_assert_eq!(serde_json::from_str::<Event>(&text).unwrap(), event);
    }

    /// Whatever bytes stand in a body: set aside or read, never a panic, never lost.
    #[test]
    fn any_body_is_read_or_set_aside(text in "\\PC{0,40}", key in "[a-z]{0,2}", schema: u16) {
        let mut odd = envelope(3, at(0), &opened());
        odd.body = text;
        odd.key = key;
        odd.schema = schema;
        let visit = replay(&[envelope(0, at(0), &opened()), odd.clone()]);
        prop_assert_eq!(visit.next, 4);
        prop_assert_eq!(visit.aside.len(), usize::from(odd.open().is_err()));
    }
}
