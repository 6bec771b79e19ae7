//! What every task must say of itself.

use crate::support::*;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::wording::tasks as words;

/// From any result one press leads to the rules that read it, whatever came out.
#[test]
fn every_task_says_for_whom_it_is_and_by_which_rules_it_is_read() {
    for id in TaskId::ALL {
        let spec = tasks::spec(*id);
        let words = words::of(*id);
        assert!(words.for_whom.ends_with('.'), "{id:?}");
        // A free count is compared with nothing, and says so.
        let rules = spec.rules.len();
        assert_eq!(rules == 0, *id == TaskId::FreeCount, "{id:?}");
        assert!(!words.caveat.is_empty(), "{id:?}");
    }
}

/// A task steps aside by a rule of its own, with the sentence that is shown.
#[test]
fn a_task_steps_aside_by_one_of_its_rules() {
    let of = |age| Exam {
        age: Some(age),
        ..Exam::default()
    };
    let mut stepped_aside = 0;
    for id in TaskId::ALL {
        let spec = tasks::spec(*id);
        if let Some(flag) = (spec.not_for)(*id, &of(Age::Months(6))) {
            stepped_aside += 1;
            assert!(
                spec.rules.contains(&flag.rule()),
                "{id:?}: {}",
                flag.rule().id
            );
            assert!(flag.reason().ends_with('.'), "{id:?}");
        }
        assert!((spec.not_for)(*id, &of(Age::Years(40))).is_none(), "{id:?}");
    }
    // Dry swallows, 90 mL, the four of repeated syllables, the six signs.
    assert_eq!(stepped_aside, 7);
}

/// What holds a task up names its rule, so that it can be looked up where it stands.
#[test]
fn what_is_in_the_way_names_its_rule() {
    let mut exam = exam_with_dry(dry(&[]));
    exam.gate.0.insert("awake".to_owned(), "drowsy".to_owned());
    exam.gate.0.remove("upright");
    exam.choked = true;
    let held = holds(TaskId::Water90, &exam);
    let rules: Vec<_> = held.iter().map(|hold| hold.rule.id).collect();
    for id in ["gate.awake", "gate.not-asked", "trial.choke", "dry.none"] {
        assert!(rules.contains(&id), "{id} in {rules:?}");
    }
}
