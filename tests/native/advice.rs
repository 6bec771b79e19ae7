//! What the nurse is told to do: orders that stand, levels beside them, medicines, how to sit.
//! What must hold is local policy unless a source is named.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::action;
use penlight::record::event::Action;
use penlight::record::event::Event;
use penlight::record::event::Plan;

/// Fasting for an operation; the screen was given all the same, or not. "Until assessed" and "no
/// sign seen" both read as if food may be given afterwards.
#[test]
fn an_order_of_nothing_by_mouth_for_another_reason_stands_above_everything() {
    let stands = "Nothing by mouth for another reason: that order stands.";
    let mut s = much_to_tell(Role::Slp);
    let order = ("nothing-by-mouth".to_owned(), "other-reason".to_owned());
    s.say(Event::Gate(vec![order]));
    let above = |s: &Scene| s.text().split("\n\n").next().unwrap().to_owned();
    for action in [Action::NothingByMouth, Action::KeepPlan] {
        s.plan(action, "the doctor decided so");
        assert!(above(&s).contains(stands), "{}", s.text());
    }
    s.spo2(97).dry(&[2_000, 9_000, 17_000]).water(&[]);
    assert_eq!(s.verdict(), Verdict::NotDone(EndedEarly::GateClosed));
    s.plan(Action::KeepPlan, "the doctor decided so");
    assert!(above(&s).contains(stands), "{}", s.text());
    let note = s.note();
    assert!(note.contains(stands), "{note}");
    assert!(!ready(Role::Slp).text().contains(stands));
}

/// Fasting for an operation, the clinician's levels from an earlier plan beside it: a nurse reads
/// what may be drunk.
#[test]
fn no_level_stands_beside_an_order_to_fast() {
    let mut s = adult(Role::Slp);
    let order = ("nothing-by-mouth", "other-reason");
    s.gate(&[order]);
    let levels = |s: &Scene| {
        let basis = action::standing(&s.visit.decision().unwrap(), &Plan::default());
        Event::Plan(Plan {
            action: Some(Action::KeepPlan),
            because: "the doctor decided so".to_owned(),
            drink: Some(2),
            food: Some(5),
            ..basis
        })
    };
    let plan = levels(&s);
    s.say(plan);
    assert!(!s.text().contains("level"), "{}", s.text());
    assert!(!s.text().contains("what that plan allows"), "{}", s.text());
    s.breaths(16).dry(&[2_000, 9_000, 17_000]).water(&[]);
    let plan = levels(&s);
    s.say(plan);
    assert_eq!(s.verdict(), Verdict::NotDone(EndedEarly::GateClosed));
    assert!(!s.text().contains("level"), "{}", s.text());
    assert!(!s.text().contains("food and drink"), "{}", s.text());
}

/// Tablets are held in an emergency too; a dose against fits is not to be forgotten in it.
#[test]
fn an_emergency_does_not_forget_medicines_that_cannot_wait() {
    let mut s = ready(Role::Screener);
    let new = ("new-weakness".to_owned(), "new".to_owned());
    s.say(Event::Gate(vec![new]));
    let text = s.text();
    let medicines = "Time-critical medicines: ask the prescriber now for another route.";
    assert!(text.contains(medicines), "{text}");
}

/// "Upright" of somebody who cannot be raised: a nurse at night raises him all the same, or stops
/// reading.
#[test]
fn nobody_is_told_to_sit_somebody_up_who_cannot_be_raised() {
    for (state, gone_past) in [("flat", false), ("flat", true), ("part", false)] {
        let mut s = adult(Role::Slp);
        s.gate(&[("upright", state)]);
        if gone_past {
            s.pass(TaskId::Water90, "gate.", Role::Slp);
        }
        s.breaths(16).dry(&[2_000, 9_000, 17_000]);
        if gone_past || state == "part" {
            s.water(&[]);
        }
        let text = s.text();
        let advice = text.split("Recommendation:").nth(1).unwrap();
        assert!(advice.contains("as upright as tolerated"), "{text}");
    }
}

#[test]
fn an_emergency_names_no_level_to_drink() {
    let mut s = adult(Role::Screener);
    s.gate(&[("new-weakness", "new")]);
    s.plan_with(|plan| Plan {
        drink: Some(0),
        food: Some(7),
        ..plan
    });
    let text = s.text();
    assert!(text.contains("NOTHING BY MOUTH"), "{text}");
    assert!(!text.contains("rinks level"), "{text}");
}

/// RCSLT: where such a plan is known, nothing by mouth is not written without asking for it.
#[test]
fn an_emergency_does_not_silence_a_risk_plan() {
    let mut s = adult(Role::Screener);
    s.gate(&[("new-weakness", "new"), ("risk-plan", "plan")]);
    let text = s.text();
    assert!(text.contains("ask now whether it stands"), "{text}");
}

#[test]
fn a_limit_of_neck_or_spine_goes_before_upright() {
    let mut s = adult(Role::Screener);
    s.gate(&[("spine", "limit")])
        .breaths(16)
        .dry(&[2_000, 9_000]);
    s.plan(Action::NothingByMouth, "");
    let text = s.text();
    let advice = text.split("Recommendation:").nth(1).unwrap();
    assert!(
        !advice.contains("upright") || advice.contains("limit"),
        "{text}"
    );
}

/// RHD, STM: no swallow felt: stop, clear the mouth, refer.
#[test]
fn no_swallow_tells_to_clear_the_mouth() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::NoSwallow, -1_000)]);
    let text = s.text();
    assert!(text.starts_with("STOP"), "{text}");
    assert!(text.contains("clear the mouth"), "{text}");
}

/// Nothing by mouth until this screen: the gate lets it through, and the text ends no order.
#[test]
fn a_clear_screen_lifts_no_order() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let order = "keep to the orders in force; an order of nothing by mouth until this screen: only \
                 whoever gave it lifts it; food and drink only awake";
    assert!(s.text().contains(order), "{}", s.text());
}
