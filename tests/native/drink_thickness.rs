//! Drink thickness by what is left in a syringe after 10 seconds.
//!
//! Keys such as IDDSI-B are those of `clinical/sources.csv`, where the citations stand.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::Answer;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::flow;
use penlight::clinical::tasks::spec::Phase;

/// Worked examples, flow test: 0.0 to 10.0, and what can't be.
#[test]
fn what_is_left_gives_the_level_of_the_drink() {
    for (tenths, rule, words) in [
        (0, "flow.level", "0 Thin"),
        (9, "flow.level", "0 Thin"),
        (10, "flow.level", "1 Slightly thick"),
        (39, "flow.level", "1 Slightly thick"),
        (40, "flow.border", "repeat the test"),
        (41, "flow.level", "2 Mildly thick"),
        (79, "flow.level", "2 Mildly thick"),
        (80, "flow.border", "repeat the test"),
        (81, "flow.level", "3 Moderately thick"),
        (99, "flow.level", "3 Moderately thick"),
        (100, "flow.none", "confirm with fork drip and spoon tilt"),
    ] {
        let flags = tasks::flags(TaskId::Flow, &exam(vec![poured(tenths)]));
        assert_eq!(flags[0].rule().id, rule, "{tenths}");
        assert!(
            flags[0].reason().contains(words),
            "{tenths}: {}",
            flags[0].reason()
        );
        assert!(flags.iter().all(|f| f.level() == Level::Note));
        assert!(flags[0].rule().sources().contains(&&source::IDDSI_S));
    }
    for wrong in [101, -1] {
        assert!(tasks::flags(TaskId::Flow, &exam(vec![poured(wrong)])).is_empty());
    }
}

#[test]
fn a_drink_decides_nothing_and_is_told_without_advice() {
    let mut exam = exam_with_water(water());
    exam.trials.push(poured(42));
    let decision = decision(&exam);
    assert_eq!(decision.verdict, Verdict::Pass);
    let told = words(&decision.also);
    assert!(told.contains("this drink flows like level 2 Mildly thick: 4.2 mL of 10 left"));
    assert!(told.contains("which level a person is given is the clinician's to say"));
}

#[test]
fn two_drinks_are_told_apart() {
    let mut tea = poured(5);
    tea.answers
        .insert(flow::DRINK.to_owned(), Answer::Words("tea".to_owned()));
    let flags = tasks::flags(TaskId::Flow, &exam(vec![tea, poured(40)]));
    let told = words(&flags);
    assert!(
        told.starts_with("tea: this drink flows like level 0 Thin"),
        "{told}"
    );
    assert!(told.contains("4.0 mL of 10 left"), "{told}");
}

#[test]
fn ten_seconds_end_by_themselves() {
    let trial = trial(TaskId::Flow, &[(MarkKind::Start, 0)]);
    assert_eq!(flow::SPEC.due(&trial, at(9_999)), None);
    assert_eq!(
        flow::SPEC.due(&trial, at(10_000)),
        Some(MarkKind::WindowOver)
    );
    assert!(matches!(
        flow::SPEC.phase(&trial, at(-2_000)),
        Phase::Countdown(_)
    ));
}
