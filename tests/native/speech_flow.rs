//! The flow of the repeated syllables, what could not be done, and what is kept without a score:
//! on the way through a screen, in the flags and in the handover.

use crate::support::*;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::{MarkKind, Trial};
use penlight::clinical::knowledge::order::Order;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::spec::Phase;
use penlight::handover::full_note;
use penlight::handover::nursing::Clock;
use penlight::record::id::VisitId;
use penlight::record::visit::Visit;
use proptest::prelude::*;

use TaskId::{BreathCount, BreathHold, FiveForFive, LongestAh, LongestS, LongestZ, PitchGlide};
use TaskId::{Sequence, SyllableKa, SyllablePa, SyllableTa};

fn syllables(task: TaskId, sound: &str) -> Trial {
    let mut trial = trial(
        task,
        &[
            (MarkKind::Start, 0),
            (MarkKind::Tap, 0),
            (MarkKind::WindowOver, 5_000),
        ],
    );
    choose(&mut trial, "how", "5s");
    choose(&mut trial, "each-tap", "syllable");
    choose(&mut trial, "sound", sound);
    trial
}

/// Answered without a touch of the pad.
fn untouched(task: TaskId, question: &str, answer: &str) -> Trial {
    let mut trial = Trial::new(task, 0, None);
    choose(&mut trial, question, answer);
    trial
}

fn could_not(task: TaskId) -> Trial {
    untouched(task, "sound", "could-not")
}

fn held(task: TaskId, ms: i64) -> Trial {
    trial(task, &[(MarkKind::Start, 0), (MarkKind::End, ms)])
}

fn hidden(mut trial: Trial) -> Trial {
    trial.hidden.push((at(2_000), at(5_000)));
    trial
}

/// An examination of somebody of this age, its trials numbered.
fn exam(age: u8, trials: Vec<Trial>) -> Exam {
    let trials = (0..).zip(trials).map(|(n, t)| Trial { number: n, ..t });
    Exam {
        age: Some(Age::Years(age)),
        trials: trials.collect(),
        ..Exam::default()
    }
}

fn ordered(order: &[TaskId], exam: Exam) -> Exam {
    Exam {
        order: Order::from(order.to_vec()),
        ..exam
    }
}

fn told(exam: Exam) -> String {
    text_of(ScreenId::OralMotor, exam)
}

fn way(exam: &Exam) -> Vec<TaskId> {
    ScreenId::OralMotor.screen().tasks_of(exam)
}

#[test]
fn the_order_leads_on_and_what_is_left_out_is_no_part_of_the_way() {
    let exam = ordered(&[SyllableKa, SyllablePa], exam(40, Vec::new()));
    assert_eq!(way(&exam), [SyllableKa, SyllablePa, LongestAh]);
    let screen = ScreenId::OralMotor.screen();
    assert_eq!(screen.left_out(&exam), [SyllableTa, Sequence]);
    // All four out: the way goes on with what follows.
    let none = ordered(&[], exam);
    assert_eq!(way(&none), [LongestAh]);
}

#[test]
fn much_that_was_not_done_is_counted_and_not_named() {
    let nothing = told(exam(40, Vec::new()));
    assert!(
        nothing.contains("speech and breath timing not done"),
        "{nothing}"
    );
    let one = text_of(ScreenId::FullVisit, exam(40, vec![held(LongestAh, 12_000)]));
    assert!(
        one.contains("not done: 10 of 11 speech and breath tasks"),
        "{one}"
    );
}

#[test]
fn what_was_begun_stays_whatever_is_left_out_later() {
    let exam = ordered(
        &[SyllableKa],
        exam(40, vec![syllables(SyllablePa, "correct")]),
    );
    assert_eq!(way(&exam), [SyllableKa, SyllablePa, LongestAh]);
}

#[test]
fn a_screen_without_syllables_has_no_order() {
    let exam = ordered(&[], exam(40, Vec::new()));
    let swallow = ScreenId::Swallow.screen();
    assert!(!swallow.has_order());
    assert_eq!(swallow.tasks_of(&exam), swallow.tasks);
    assert!(swallow.left_out(&exam).is_empty());
}

#[test]
fn left_out_is_handed_over_as_no_part_and_not_as_not_done() {
    let ah = held(LongestAh, 15_000);
    let done = vec![
        syllables(SyllableKa, "correct"),
        syllables(SyllablePa, "correct"),
        ah,
    ];
    let all = told(ordered(&[SyllableKa, SyllablePa], exam(40, done.clone())));
    assert!(
        all.contains("not part of this examination: ta-ta-ta, pa-ta-ka"),
        "{all}"
    );
    assert!(!all.contains("not done"), "{all}");
    // On the way and not begun is another thing.
    let skipped = told(exam(40, done));
    assert!(
        skipped.contains("not done: ta-ta-ta, pa-ta-ka"),
        "{skipped}"
    );
    assert!(!skipped.contains("not part"), "{skipped}");
}

/// Source: DIE19: fewer than two single syllables, and the sequences are left out.
#[test]
fn two_that_could_not_be_begun_leave_the_sequences_out() {
    let failed = vec![could_not(SyllablePa), could_not(SyllableTa)];
    let child = exam(4, failed.clone());
    assert!(
        tasks::aside(Sequence, &child)
            .unwrap()
            .reason()
            .contains("0 of the single syllables succeeded")
    );
    let text = told(child);
    assert!(text.contains("pa could not be said"), "{text}");
    assert!(text.contains("ta could not be said"), "{text}");
    assert!(
        text.contains("sequences such as pa-ta-ka are left out"),
        "{text}"
    );
    assert!(text.contains("not done: ka-ka-ka"), "{text}");
    assert!(!text.contains("not done: pa"), "{text}");
    // Adults are asked all the same.
    assert!(tasks::aside(Sequence, &exam(40, failed)).is_none());
    // Heard and not timed counts as said.
    let heard = vec![
        untouched(SyllablePa, "sound", "correct"),
        untouched(SyllableTa, "sound", "correct"),
    ];
    assert!(tasks::aside(Sequence, &exam(4, heard)).is_none());
}

#[test]
fn an_untouched_trial_is_over_and_tried() {
    for (task, question, answer, said) in [
        (SyllablePa, "sound", "could-not", "could not"),
        (SyllablePa, "sound", "correct", "not timed, correct"),
        (LongestAh, "could-not", "no-voice", "no voice came"),
        (LongestS, "could-not", "could-not", "could not"),
        (PitchGlide, "could-not", "could-not", "could not"),
        (BreathCount, "could-not", "could-not", "could not"),
        (BreathHold, "could-not", "could-not", "could not"),
        (FiveForFive, "could-not", "could-not", "could not"),
    ] {
        let trial = untouched(task, question, answer);
        let spec = tasks::spec(task);
        assert_eq!(spec.phase(&trial, at(0)), Phase::Over, "{task:?}");
        assert_eq!(
            penlight::wording::task::lines(&trial).unwrap(),
            [said],
            "{task:?}"
        );
        let exam = exam(40, vec![trial]);
        // Nothing more is asked of it.
        for q in spec.questions.iter().filter(|q| q.needed) {
            let asked = tasks::spec(task).asks(q.id, &exam);
            assert_eq!(asked, q.id == question, "{task:?} {}", q.id);
        }
        assert!(!tasks::flags(task, &exam).is_empty(), "{task:?}");
        let summary = penlight::wording::task::summary(task, &exam).unwrap();
        assert!(!summary.contains(" 0"), "{summary}");
        // It counts as one of the trials asked for.
        assert_eq!(
            tasks::spec(task).another(&exam),
            spec.trials > 1 || answer == "correct",
            "{task:?}"
        );
    }
    let ready = Trial::new(SyllablePa, 0, None);
    assert_eq!(tasks::spec(SyllablePa).phase(&ready, at(0)), Phase::Ready);
}

#[test]
fn no_voice_is_told_and_is_no_time_of_zero() {
    let text = told(exam(
        40,
        vec![untouched(LongestAh, "could-not", "no-voice")],
    ));
    assert!(
        text.contains("longest \"ah\" not scored: no voice came"),
        "{text}"
    );
    assert!(!text.contains("0.0"), "{text}");
}

/// T22 on the page: z that was tried and never came is not the same as z that was never tried.
#[test]
fn z_without_a_voice_has_no_ratio_and_says_why() {
    let s = held(LongestS, 15_000);
    let flags = |trials| words(&tasks::flags(LongestZ, &exam(40, trials)));
    let silent = flags(vec![
        s.clone(),
        untouched(LongestZ, "could-not", "no-voice"),
    ]);
    assert!(
        silent.contains("cannot be computed: z was not held."),
        "{silent}"
    );
    assert!(flags(vec![s]).contains("there is no time for z."));
}

#[test]
fn a_call_while_a_sound_is_held_is_told_with_its_reason() {
    let trial = hidden(held(LongestAh, 8_000));
    let lines = penlight::wording::task::lines(&trial).unwrap();
    assert_eq!(lines, ["8.0 s, not scored"]);
    let one = exam(40, vec![trial.clone()]);
    let said = words(&tasks::flags(LongestAh, &one));
    assert_eq!(
        said,
        "Longest \"ah\", trial 1: kept, not scored: Penlight was out of sight for 3.0 s during this time."
    );
    let text = told(one);
    assert!(
        text.contains("longest \"ah\" not scored: Penlight was out of sight for 3.0 s"),
        "{text}"
    );
    // It leaves its place to another; beside one with a time it is told all the same.
    let two = exam(40, vec![trial, held(LongestAh, 12_000)]);
    assert!(tasks::spec(LongestAh).another(&two));
    let text = told(two);
    assert!(
        text.contains("longest \"ah\" 12.0 seconds (one trial), 1 trial more not scored"),
        "{text}"
    );
}

#[test]
fn a_call_in_the_middle_of_syllables_is_told_with_its_reason() {
    let called = hidden(syllables(SyllablePa, "correct"));
    let mut cut = syllables(SyllablePa, "correct");
    cut.marks.pop();
    mark(&mut cut, MarkKind::End, at(3_000));
    let why = "Penlight was out of sight for 3.0 s during this time";
    for (trial, why) in [(called, why), (cut, "stopped before the time was up")] {
        let one = exam(40, vec![trial.clone()]);
        let said = words(&tasks::flags(SyllablePa, &one));
        assert!(
            said.contains(&format!("pa-pa-pa, trial 1: kept, not scored: {why}.")),
            "{said}"
        );
        let text = told(one);
        assert!(
            text.contains(&format!("pa no correct trial with a time ({why})")),
            "{text}"
        );
        let two = exam(40, vec![trial, syllables(SyllablePa, "correct")]);
        let summary = penlight::wording::task::summary(SyllablePa, &two).unwrap();
        assert!(
            summary.ends_with(&format!("1 trial more not scored ({why})")),
            "{summary}"
        );
        assert!(tasks::spec(SyllablePa).another(&two));
    }
}

#[test]
fn a_fourth_is_not_asked_for_and_never_scored() {
    let three = |last| {
        exam(
            40,
            vec![
                held(LongestAh, 11_000),
                held(LongestAh, 12_000),
                held(LongestAh, last),
            ],
        )
    };
    assert!(!tasks::spec(LongestAh).another(&three(10_000)));
    let mut four = three(10_000);
    four.trials.push(Trial {
        number: 3,
        ..held(LongestAh, 20_000)
    });
    let flags = words(&tasks::flags(LongestAh, &four));
    assert!(
        flags.contains("trial 4: kept, not scored: the first 3 with a time are."),
        "{flags}"
    );
    let summary = penlight::wording::task::summary(LongestAh, &four).unwrap();
    assert!(
        summary.starts_with("longest \"ah\" 12.0 seconds, the best of 3"),
        "{summary}"
    );
    // Syllables: up to three trials each, whatever became of them.
    let tried = |sound: &str| syllables(SyllablePa, sound);
    let pa = exam(
        40,
        vec![tried("correct"), tried("distorted"), could_not(SyllablePa)],
    );
    assert!(!tasks::spec(SyllablePa).another(&pa));
    assert!(tasks::spec(SyllableTa).another(&pa));
}

#[test]
fn what_was_timed_and_not_answered_is_told() {
    let open = exam(
        40,
        vec![held(FiveForFive, 6_000), held(BreathCount, 12_000)],
    );
    let text = text_of(ScreenId::FullVisit, open.clone());
    for said in [
        "5 cm of water for 5 seconds not scored: 6.0 s timed, what was seen of the bubbles was not said",
        "counting on one breath not scored: 12.0 s timed, the highest number was not said",
    ] {
        let task = if said.starts_with('5') {
            FiveForFive
        } else {
            BreathCount
        };
        assert_eq!(penlight::wording::task::summary(task, &open).unwrap(), said);
        assert!(text.contains(said), "{text}");
        let flags = tasks::flags(task, &open);
        assert!(flags.iter().all(|f| f.level() == Level::Note) && flags.len() == 1);
    }
    assert!(text.contains("INCOMPLETE"), "{text}");
    let mut answered = open;
    choose(&mut answered.trials[0], "bubbles", "continuous");
    number(&mut answered.trials[1], "reached", 300);
    for task in [FiveForFive, BreathCount] {
        let summary = penlight::wording::task::summary(task, &answered).unwrap();
        assert!(!summary.contains("not s"), "{summary}");
    }
}

fn any_order() -> impl Strategy<Value = Vec<TaskId>> {
    Just(Order::ALL.to_vec())
        .prop_shuffle()
        .prop_flat_map(|all| (0..=all.len()).prop_map(move |n| all[..n].to_vec()))
}

proptest! {
    /// Source: DIE19, whatever order and choice: once two of a child's single syllables failed,
    /// pa-ta-ka steps aside; and it is never asked for before those single ones that are.
    #[test]
    fn longer_sequences_wait_for_the_single_ones_in_any_order(
        order in any_order(),
        sounds in proptest::collection::vec(0_usize..4, 3),
        age in 3_u8..15,
    ) {
        let singles = [SyllablePa, SyllableTa, SyllableKa];
        let trials: Vec<Trial> = singles
            .into_iter()
            .zip(&sounds)
            .filter_map(|(task, sound)| match sound {
                0 => Some(syllables(task, "correct")),
                1 => Some(syllables(task, "distorted")),
                2 => Some(could_not(task)),
                _ => None,
            })
            .collect();
        let failed = sounds.iter().filter(|s| [1, 2].contains(*s)).count();
        let child = ordered(&order, exam(age, trials));
        prop_assert_eq!(tasks::aside(Sequence, &child).is_some(), failed >= 2);
        let way = way(&child);
        prop_assert!(order.iter().all(|task| way.contains(task)));
        if let Some(at) = way.iter().position(|t| *t == Sequence) {
            prop_assert!(way[at..].iter().all(|t| !singles.contains(t)));
        }
    }

    /// Nobody's order adds or loses a task: each is on the way once, or left out.
    #[test]
    fn each_task_is_on_the_way_or_left_out(order in any_order(), age in 3_u8..90) {
        let exam = ordered(&order, exam(age, Vec::new()));
        for id in [ScreenId::OralMotor, ScreenId::FullVisit] {
            let screen = id.screen();
            let mut all = screen.tasks_of(&exam);
            all.extend(screen.left_out(&exam));
            all.sort();
            let mut own = screen.tasks.to_vec();
            own.sort();
            prop_assert_eq!(all, own);
        }
    }
}

#[test]
fn the_full_note_tells_the_same() {
    let e = ordered(
        &[SyllableKa, SyllablePa],
        exam(
            40,
            vec![could_not(SyllableKa), hidden(held(LongestAh, 8_000))],
        ),
    );
    let mut visit = Visit::new(VisitId::new("0123456789abcdef").unwrap());
    visit.screen = Some(ScreenId::OralMotor);
    visit.exam = Exam {
        screen: Some(ScreenId::OralMotor),
        ..e
    };
    let now = Clock {
        date: "25 Nov 2026".to_owned(),
        time: "14:10".to_owned(),
        wall: penlight::measure::time::Millis::ZERO,
        local: |wall| ("25 Nov 2026".to_owned(), wall.0.to_string()),
    };
    let note = full_note::write(&visit, &now).unwrap().text;
    for said in [
        "pa-ta-ka: not done (not part of this examination)",
        "pa-pa-pa: not done (no reason given)",
        "could not",
        "8.0 s, not scored",
        "Penlight was out of sight for 3.0 s",
    ] {
        assert!(note.contains(said), "{said}: {note}");
    }
}
