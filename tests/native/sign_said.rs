//! What the clinician can say of a sign after its press: that it was seen within the minute, and
//! which of two of their own trials it is of. And millilitres typed for a trial.

use crate::support::any::any_sign;
use crate::support::*;
use penlight::clinical::decision::assess::assess;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::fact::{Amount, OwnGiven};
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::{Answer, Mark, MarkKind, Trial};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::by_mouth::lag;
use penlight::clinical::tasks::own;
use penlight::clinical::tasks::own::shared as own_shared;
use penlight::clinical::tasks::own::{Came, InTrial};
use penlight::clinical::tasks::spec::{WATCH_CUT, parse_tenths};
use penlight::measure::time::Millis;
use penlight::record::envelope::{Envelope, SCHEMA, body};
use penlight::record::event::Event;
use penlight::record::id::VisitId;
use penlight::record::visit::Visit;
use penlight::wording;
use penlight::wording::number;
use proptest::prelude::*;

fn within(trial: &mut Trial) {
    for near in lag::near(trial) {
        choose(trial, &lag::id(near.at), lag::WITHIN);
    }
}

fn coughed(after: i64) -> Trial {
    let mut trial = water();
    mark(
        &mut trial,
        MarkKind::Sign(Sign::Cough),
        at(LAST_SWALLOW + after),
    );
    trial
}

/// TH4, IDC: later than 60 seconds is told and not counted. The clinician may say that it was seen
/// within them, up to 2 seconds later and no more.
#[test]
fn a_press_just_after_the_minute_counts_where_the_clinician_says_so() {
    for (after, near) in [
        (60_000, false),
        (60_001, true),
        (60_400, true),
        (62_000, true),
        (62_001, false),
    ] {
        let mut trial = coughed(after);
        assert_eq!(!lag::near(&trial).is_empty(), near, "{after}");
        let before = verdict(&exam_with_water(trial.clone()));
        within(&mut trial);
        let said = decision(&exam_with_water(trial.clone()));
        if !near {
            assert_eq!(said.verdict, before, "{after}: nothing can be said of it");
            // Not even by an answer that found its way into the record.
            let id = lag::id(at(LAST_SWALLOW + after));
            choose(&mut trial, &id, lag::WITHIN);
            assert_eq!(verdict(&exam_with_water(trial)), before, "{after}");
            continue;
        }
        assert_eq!(
            grave(before),
            0,
            "{after}: left alone it is told, not counted"
        );
        assert_eq!(grave(said.verdict), 2, "{after}");
        let words = words(&all(&said));
        assert!(
            words.contains("coughed 60 seconds after the last swallow"),
            "{words}"
        );
        let seconds = (after + 999) / 1_000;
        let told = format!(
            "coughed: pressed {seconds} seconds after the swallow, seen within the 60 as the clinician says"
        );
        assert!(words.contains(&told), "{words}");
    }
}

#[test]
fn it_is_said_in_every_task_that_is_watched() {
    for task in TaskId::ALL.iter().copied() {
        let spec = tasks::spec(task);
        let Some(watch) = spec.pad.watch else {
            continue;
        };
        let mut trial = trial(
            task,
            &[
                (MarkKind::Start, 0),
                (MarkKind::End, 3_000),
                (MarkKind::WatchOver, 3_000 + watch.0),
                (MarkKind::Sign(Sign::Cough), 3_000 + watch.0 + 900),
            ],
        );
        let worst = |trial: &Trial| worst(&tasks::flags(task, &exam(vec![trial.clone()])));
        let level = |trial: &Trial| {
            tasks::flags(task, &exam(vec![trial.clone()]))
                .iter()
                .any(|f| f.level() == Level::Refer && f.reason().contains("cough"))
        };
        let before = worst(&trial);
        assert!(!level(&trial), "{task:?}");
        within(&mut trial);
        assert!(level(&trial), "{task:?}");
        assert!(worst(&trial) >= before);
    }
}

fn own_trial(number: u32, level: &str, from: i64, signs: &[(Sign, i64)]) -> Trial {
    let mut marks = vec![(MarkKind::Start, from), (MarkKind::End, from + 3_000)];
    marks.extend(signs.iter().map(|(s, ms)| (MarkKind::Sign(*s), *ms)));
    marks.push((MarkKind::WatchOver, from + 63_000));
    let mut trial = trial(TaskId::Own, &marks);
    trial.number = number;
    choose(&mut trial, own::LEVEL, level);
    trial
}

fn moved(exam: &Exam, shared: &own_shared::Shared) -> Exam {
    let mut visit = Visit::new(VisitId::new("visit-0000000001").unwrap());
    visit.exam = exam.clone();
    visit.take(&Envelope {
        device: "device-1".to_owned(),
        visit: visit.id.clone(),
        seq: 0,
        schema: SCHEMA,
        key: String::new(),
        at: at(200_000),
        body: body(&Event::SignMoved {
            from: shared.of.0,
            to: shared.other.0,
            sign: shared.sign,
            at: shared.at,
        })
        .unwrap(),
    });
    visit.exam
}

#[test]
fn a_sign_in_two_minutes_goes_to_the_other_trial_by_one_event_and_back() {
    let exam = exam(vec![
        own_trial(1, "d2", 0, &[]),
        own_trial(2, "f4", 20_000, &[(Sign::Cough, 30_000)]),
        own_trial(3, "f4", 100_000, &[(Sign::Spill, 110_000)]),
    ]);
    let open = own_shared::shared(&exam);
    assert_eq!(
        open.len(),
        1,
        "the third is later than the minute: {open:?}"
    );
    let level = |given: &OwnGiven| given.level.clone().unwrap();
    assert_eq!(
        (level(&open[0].of.1), level(&open[0].other.1)),
        ("f4".to_owned(), "d2".to_owned())
    );
    let signs =
        |exam: &Exam| -> Vec<Came> { own::table(exam).into_iter().map(|row| row.came).collect() };
    let (cough, spill) = (InTrial::Sign(Sign::Cough), InTrial::Sign(Sign::Spill));
    assert_eq!(
        signs(&exam),
        [Came::NoSign, Came::Seen(vec![(cough, 1), (spill, 1)])]
    );
    let other = moved(&exam, &open[0]);
    assert_eq!(
        signs(&other),
        [Came::Seen(vec![(cough, 1)]), Came::Seen(vec![(spill, 1)])]
    );
    let said = own_shared::shared(&other);
    assert!(said[0].said, "{said:?}");
    let notes = |exam: &Exam| words(&tasks::flags(TaskId::Own, exam));
    assert!(notes(&exam).contains("either may be meant"));
    assert!(
        !notes(&other).contains("either may be meant"),
        "somebody said which"
    );
    assert_eq!(signs(&moved(&other, &said[0])), signs(&exam));
    // What is not there moves nothing.
    let mut nowhere = open[0].clone();
    nowhere.other.0 = 99;
    assert_eq!(signs(&moved(&exam, &nowhere)), signs(&exam));
}

#[test]
fn millilitres_stand_for_the_amount_and_are_taken_over() {
    assert_eq!(parse_tenths("12,5", 1, 250), Ok(125));
    let refused = parse_tenths("0", 1, 250).unwrap_err();
    assert_eq!(number::problem(&refused, "mL"), "Between 1 and 250 mL.");
    let mut first = own_trial(1, "d2", 0, &[]);
    choose(&mut first, own::BY, "cup");
    number(&mut first, own::MILLILITRES, 125);
    let mut exam = exam(vec![first]);
    let given = own::table(&exam)[0].given.clone();
    assert_eq!(given.amount, Some(Amount::Tenths(125)));
    assert_eq!(wording::own::given(&given), "2 Mildly thick, 12.5 mL, cup");
    let taken = |exam: &Exam| own::taken_over(exam);
    let ml = (own::MILLILITRES, Answer::Tenths(125));
    assert!(taken(&exam).contains(&ml));
    let mut next = Trial::new(TaskId::Own, 2, None);
    choose(&mut next, own::AMOUNT, "teaspoon");
    exam.trials.push(next);
    assert!(!taken(&exam).contains(&ml), "another amount is given");
    for (one, other) in [
        (own::AMOUNT, own::MILLILITRES),
        (own::MILLILITRES, own::AMOUNT),
    ] {
        assert_eq!((tasks::spec(TaskId::Own).instead)(one), Some(other));
    }
    assert_eq!((tasks::spec(TaskId::Own).instead)(own::LEVEL), None);
}

proptest! {
    /// What the clinician says of a sign never makes anything read better.
    #[test]
    fn saying_so_never_improves_a_decision(
        signs in prop::collection::vec((any_sign(), 59_000_i64..63_000), 1..4),
        cut in any::<bool>(),
    ) {
        let mut trial = water();
        for (sign, after) in signs {
            mark(&mut trial, MarkKind::Sign(sign), at(LAST_SWALLOW + after));
        }
        if cut {
            trial.marks.retain(|m| m.kind != MarkKind::WatchOver);
            choose(&mut trial, WATCH_CUT, "wish");
        }
        let before = verdict(&exam_with_water(trial.clone()));
        within(&mut trial);
        prop_assert!(grave(verdict(&exam_with_water(trial))) >= grave(before));
    }

    /// Nor does whose it is.
    #[test]
    fn moving_a_sign_never_changes_the_verdict(
        signs in prop::collection::vec((any_sign(), 23_000_i64..83_000), 1..4),
    ) {
        let mut now = own_trial(2, "f4", 20_000, &[]);
        for (sign, ms) in signs {
            now.marks.push(Mark { at: at(ms), kind: MarkKind::Sign(sign) });
        }
        let exam = exam(vec![breaths(16), own_trial(1, "d2", 0, &[]), now]);
        let verdict = |exam: &Exam| grave(assess(ScreenId::OwnTrials.screen(), exam).verdict);
        for shared in own_shared::shared(&exam) {
            prop_assert!(shared.at.mono <= Millis(63_000));
            let other = moved(&exam, &shared);
            prop_assert_eq!(verdict(&other), verdict(&exam));
            let count = |e: &Exam| e.trials.iter().map(|t| t.signs().count()).sum::<usize>();
            prop_assert_eq!(count(&other), count(&exam), "nothing is lost");
        }
    }
}
