//! Giving something although something is in the way: who may, and for what one reason speaks.
//! What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate;
use penlight::clinical::findings::gate::Group;
use penlight::clinical::findings::gate::HOLDS;
use penlight::clinical::findings::go_on::GoOn;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::by_mouth::saturation;
use penlight::record::event::Event;

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
                    initials: None,
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
    let of_the_person = |s: &Scene, task| {
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
    s.pass_all(TaskId::Own, "agreed with the team", Role::Slp);
    for task in [TaskId::Own, TaskId::Sips, TaskId::Water90] {
        assert!(of_the_person(&s, task).is_empty(), "{task:?}");
    }
}

#[test]
fn a_reason_after_one_choking_does_not_speak_for_the_next() {
    let mut s = ready(Role::Slp);
    s.chokes(1_000, "clear");
    s.pass(TaskId::Water90, "choked", Role::Slp);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
    s.chokes(200_000, "clear");
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(held.iter().any(|h| h.id.starts_with("choked")), "{held:?}");
}

#[test]
fn a_reason_after_a_cough_does_not_speak_for_failing_breath_in_the_same_cup() {
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    s.pass(TaskId::Water90, "again.Water90", Role::Slp);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
    s.mark(150_000, MarkKind::Sign(Sign::BreathingChange));
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

#[test]
fn a_reason_after_a_cough_does_not_speak_for_a_fall_of_saturation() {
    let mut s = adult(Role::Slp);
    s.gate(&[])
        .spo2(96)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[(Sign::Cough, 1_000)]);
    s.pass(TaskId::Own, "after.Water90", Role::Slp);
    assert!(holds(TaskId::Own, &s.visit.exam).is_empty());
    s.number(saturation::LOWEST, 80);
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
}

#[test]
fn a_reason_after_a_cough_with_a_drink_does_not_speak_for_worse_before_a_cracker() {
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    let water = s.trial;
    s.cracker();
    s.pass(TaskId::Cracker, "cracker.", Role::Slp);
    assert!(holds(TaskId::Cracker, &s.visit.exam).is_empty());
    s.say(Event::Mark {
        trial: water,
        at: at(150_000),
        kind: MarkKind::Sign(Sign::BreathingChange),
    });
    assert!(!holds(TaskId::Cracker, &s.visit.exam).is_empty());
}

/// A mistaken second choking takes back nothing of the first, and a reason for one that was a
/// mistake does not speak for the next.
#[test]
fn a_reason_for_a_choking_that_was_a_slip_speaks_for_no_other() {
    let mut s = ready(Role::Slp);
    s.chokes(1_000, "clear");
    s.pass(TaskId::Water90, "choked", Role::Slp);
    s.chokes(100_000, "clear");
    s.pass(TaskId::Water90, "choked", Role::Slp);
    s.say(Event::NotChoking);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
    s.say(Event::Choking(at(200_000)));
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// A wet voice gone past for 3 mL from a syringe is not gone past for a cup.
#[test]
fn a_reason_for_a_sip_despite_a_wet_voice_does_not_speak_for_the_cup() {
    let mut s = stepped(Role::Slp, 97);
    s.open(TaskId::Sips);
    s.choose("voice-before", "wet");
    s.pass(TaskId::Sips, "water.wet-before", Role::Slp);
    s.sips_given(&mut |_, s| {
        s.choose("voice-before", "wet").choose("voice-after", "wet");
    });
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().any(|h| h.id.starts_with("water.wet-before")),
        "{held:?}"
    );
}

/// A teaspoon after the choke was reasoned for; 90 mL were not.
#[test]
fn a_reason_after_a_choke_speaks_for_its_own_task_alone() {
    let mut s = ready(Role::Slp);
    s.chokes(1_000, "clear");
    s.pass(TaskId::Own, "choked", Role::Slp);
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

#[test]
fn a_reason_after_a_cough_speaks_for_its_own_task_alone() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 1_000)]);
    s.pass(TaskId::Own, "after.Water90", Role::Screener);
    assert!(!holds(TaskId::Sips, &s.visit.exam).is_empty());
}

/// Drowsy, reasoned for, awake, drowsy again: the reason was for the first time.
#[test]
fn a_reason_at_the_gate_does_not_speak_for_the_same_state_come_again() {
    let mut s = adult(Role::Slp);
    s.gate(&[("awake", "drowsy")])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    s.pass(TaskId::Water90, "gate.awake", Role::Slp);
    s.gate(&[]).gate(&[("awake", "drowsy")]);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().any(|h| h.id.starts_with("gate.awake")),
        "{held:?}"
    );
    // The same answer pressed once more is no new state.
    s.pass(TaskId::Water90, "gate.awake", Role::Slp);
    s.gate(&[("awake", "drowsy")]);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// Gone on although drowsy, at two; drowsy still at five: that is another decision.
#[test]
fn a_reason_for_a_state_of_the_moment_does_not_speak_hours_later() {
    for (group, item, state) in [
        (Group::Ready, "awake", "drowsy"),
        (Group::Ready, "upright", "flat"),
    ] {
        let mut s = adult(Role::Slp);
        s.gate(&[(item, state)]);
        s.pass(TaskId::Own, "gate.", Role::Slp);
        s.breaths(16).dry(&[2_000, 9_000, 17_000]);
        let held = |s: &Scene| {
            let held = holds(TaskId::Own, &s.visit.exam);
            held.iter().any(|h| h.id.starts_with("gate."))
        };
        let still = |ms, s: &mut Scene| {
            let answer = |i: &gate::Item| if i.id == item { state } else { HOLDS };
            let answers = group
                .items()
                .map(|i| (i.id.to_owned(), answer(i).to_owned()));
            s.say_at(at(ms), Event::Gate(answers.collect()));
        };
        still(20 * MINUTE, &mut s);
        assert!(!held(&s), "{item}");
        still(3 * HOUR, &mut s);
        assert!(held(&s), "{item}");
        s.pass(TaskId::Own, "gate.", Role::Slp);
        assert!(!held(&s), "{item}");
    }
    // A tube in the airway is what it was.
    let mut s = adult(Role::Slp);
    s.gate(&[("airway-tube", "tracheostomy")]);
    s.pass(TaskId::Own, "gate.", Role::Slp);
    let tube = ("airway-tube".to_owned(), "tracheostomy".to_owned());
    s.say_at(at(3 * HOUR), Event::Gate(vec![tube]));
    assert!(s.visit.exam.went_on.iter().all(|on| !on.lapsed));
}
