//! Giving something although something is in the way: who may, and how far one reason goes.

#![allow(clippy::unwrap_used)]

use crate::support::bedside;
use crate::support::script;

use crate::support::in_the_way::holds;
use bedside::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::go_on::GoOn;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::task::TaskId;
use penlight::record::event::Event;
use script::*;

/// What gives something by mouth.
const GIVEN: [TaskId; 5] = [
    TaskId::Water90,
    TaskId::Sips,
    TaskId::TimedWater,
    TaskId::Own,
    TaskId::Cracker,
];

/// Water for the wrong person, or for one who does not want it, has no reason that makes it right.
#[test]
fn without_knowing_who_it_is_or_without_consent_nobody_goes_on() {
    for (item, exception, verdict) in [
        ("identity", "unsure", Verdict::Incomplete),
        ("consent", "no", Verdict::NotDone(EndedEarly::GateClosed)),
    ] {
        for role in [Role::Screener, Role::Slp] {
            let mut s = ready(role);
            s.gate(&[(item, exception)]);
            for task in GIVEN {
                let held = holds(task, &s.visit.exam);
                let hold = held.iter().find(|h| h.go_on == GoOn::Never).unwrap();
                assert!(!hold.go_on.open_to(Role::Slp), "{task:?}");
                // A record that says so all the same frees nothing.
                s.say(Event::WentOn {
                    hold: hold.id.clone(),
                    because: "needed for the assessment".to_owned(),
                    by: role,
                    says: hold.says.clone(),
                    ground: None,
                });
                let held = holds(task, &s.visit.exam);
                assert!(held.iter().any(|h| h.go_on == GoOn::Never), "{held:?}");
            }
            assert_eq!(s.verdict(), verdict);
            // Water that was given all the same clears nobody.
            s.water(&[]);
            assert_eq!(s.verdict(), verdict);
        }
    }
}

/// Drowsy is drowsy, whatever is given: who said why goes on with the next task as well.
#[test]
fn a_reason_for_what_is_said_of_the_person_speaks_for_every_task() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::Swallow)
        .gate(&[("awake", "drowsy")])
        .breaths(30)
        .dry(&[2_000, 9_000]);
    s.examined(&[("mouth.moist", "pooled")]);
    let of_the_person = |s: &Script, task| {
        let held = holds(task, &s.visit.exam).into_iter();
        let kept = held.filter(|h| h.go_on.open_to(Role::Slp));
        let mut rules: Vec<_> = kept.map(|h| h.rule.id).collect();
        rules.sort_unstable();
        rules
    };
    let four = ["breathing.rate", "dry.few", "gate.awake", "gate.saliva"];
    for task in [TaskId::Own, TaskId::Sips, TaskId::Water90] {
        assert_eq!(of_the_person(&s, task), four, "{task:?}");
    }
    for hold in holds(TaskId::Own, &s.visit.exam) {
        s.say(Event::WentOn {
            hold: hold.id,
            because: "agreed with the team".to_owned(),
            by: Role::Slp,
            says: hold.says,
            ground: None,
        });
    }
    for task in [TaskId::Own, TaskId::Sips, TaskId::Water90] {
        assert!(of_the_person(&s, task).is_empty(), "{task:?}");
    }
}
