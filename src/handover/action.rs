//! What is to be done until review, to whom and by when: the words, and when they are enough.

use crate::clinical::decision::basis::{basis, is_for};
use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::findings::exam::{EndedEarly, Exam};
use crate::clinical::findings::fact::{Fact, GateFact};
use crate::clinical::findings::flag::Flag;
use crate::clinical::knowledge::rules;
use crate::record::event::{Action, ByWhen, Event, Plan, Whom};
use crate::record::visit::Visit;

impl Action {
    /// All, in the order offered.
    pub const ALL: [Action; 3] = [
        Action::NothingByMouth,
        Action::KeepPlan,
        Action::AcknowledgedRisk,
    ];

    /// The words on the button.
    pub const fn button(self) -> &'static str {
        match self {
            Action::NothingByMouth => "Nothing by mouth, tablets included, until assessed",
            Action::KeepPlan => "Keep the current plan, because ...",
            Action::AcknowledgedRisk => "Acknowledged-risk plan",
        }
    }
}

impl Whom {
    /// All, in the order offered.
    pub const ALL: [Whom; 3] = [Whom::Slp, Whom::Doctor, Whom::Nurse];

    /// The words.
    pub const fn words(self) -> &'static str {
        match self {
            Whom::Slp => "speech-language pathology",
            Whom::Doctor => "the doctor",
            Whom::Nurse => "the nurse in charge",
        }
    }
}

impl ByWhen {
    /// All, in the order offered.
    pub const ALL: [ByWhen; 3] = [ByWhen::Now, ByWhen::Today, ByWhen::Within24Hours];

    /// The words.
    pub const fn words(self) -> &'static str {
        match self {
            ByWhen::Now => "now",
            ByWhen::Today => "today",
            ByWhen::Within24Hours => "within 24 hours",
        }
    }
}

/// Rules after which breathing or alertness itself may be getting worse. Every column of the sign
/// table has its rule for a change of breathing here; a test keeps that.
const BREATHING: [&str; 10] = [
    rules::BREATHING_RATE.id,
    rules::BREATHING_SPO2.id,
    rules::BREATHING_SECOND_SCALE.id,
    rules::BREATHING_SPO2_LOW.id,
    rules::BREATHING_SPO2_FALL.id,
    rules::WATER_BREATHING_CHANGE.id,
    rules::TRIAL_BREATHING_CHANGE.id,
    rules::THREE_ML_BREATHING.id,
    rules::GATE_DISTRESS.id,
    rules::GATE_AWAKE.id,
];

/// The rules of choking.
const CHOKING: [&str; 2] = [rules::WATER_CHOKE.id, rules::TRIAL_CHOKE.id];

fn names_choking(flags: &[Flag]) -> bool {
    flags.iter().any(|f| CHOKING.contains(&f.rule().id))
}

/// Whether a flag is about breathing or alertness that may be failing. Who is drowsy is checked
/// again.
pub fn is_deterioration(flag: &Flag) -> bool {
    let drowsy = matches!(flag.fact(), Fact::Gate(GateFact::Excepted { exception, .. })
        if exception.id == "drowsy");
    BREATHING.contains(&flag.rule().id) && !drowsy
}

/// Whether a flag is what calls the doctor, now.
pub fn calls_doctor(flag: &Flag) -> bool {
    is_deterioration(flag) || CHOKING.contains(&flag.rule().id)
}

/// What names the local procedure for it.
pub const DETERIORATION: &str =
    "Breathing or alertness: use your local procedure for deterioration.";

/// Whether the local procedure for deterioration is to be named.
pub fn deteriorating(decision: &Decision) -> bool {
    // What closed the gate, and a low reading in a trial, stand under what is missing. An
    // emergency names its own procedure.
    let emergency = decision.verdict == Verdict::NotDone(EndedEarly::Emergency);
    let fails = |flags: &[Flag]| flags.iter().any(is_deterioration);
    !emergency && fails(&decision.missing) || fails(&decision.reasons)
}

/// To whom and by when, where the clinician left it as suggested.
///
/// Choking, an emergency and failing breathing go to the doctor, now; everything else to
/// speech-language pathology, today. National guidance asks for specialist assessment preferably
/// within 24 hours (NICE).
pub fn suggested(decision: &Decision) -> (Whom, ByWhen) {
    let emergency = decision.verdict == Verdict::NotDone(EndedEarly::Emergency);
    if emergency || deteriorating(decision) || names_choking(&decision.reasons) {
        (Whom::Doctor, ByWhen::Now)
    } else {
        (Whom::Slp, ByWhen::Today)
    }
}

/// The plan as far as it was made for this decision.
///
/// **Invariant:** what was pressed and written for one verdict and its reasons says nothing about
/// others: "keep the plan" pressed while the screen was incomplete does not stand after a choke,
/// nor one pressed for an unfinished cup after a cough, nor the remark beside it.
pub fn standing(decision: &Decision, plan: &Plan) -> Plan {
    if is_for(&plan.verdict, decision) {
        plan.clone()
    } else {
        Plan {
            verdict: basis(decision),
            ..Plan::default()
        }
    }
}

/// What one press records where everything by mouth ends at the gate: the end of the screen, and
/// nothing by mouth until review. Of an order to fast whoever gave it says what it covers.
pub fn at_a_stop(visit: &Visit) -> Vec<Event> {
    let decision = visit.decision().filter(|_| !visit.exam.fasts());
    let plan = decision.map(|decision| {
        Event::Plan(Plan {
            action: Some(Action::NothingByMouth),
            ..standing(&decision, &visit.plan)
        })
    });
    let ended = Event::EndedEarly(EndedEarly::GateClosed);
    std::iter::once(ended).chain(plan).collect()
}

/// Whether an order to fast that closed the gate says already what to do until review.
pub fn is_ordered(decision: &Decision, exam: &Exam) -> bool {
    exam.fasts() && decision.verdict == Verdict::NotDone(EndedEarly::GateClosed)
}

/// Whether a plan has its reason: spaces and full stops alone are none.
pub fn says_why(plan: &Plan) -> bool {
    plan.because.chars().any(|c| !c.is_whitespace() && c != '.')
}

/// What is still missing before the text may leave: words to show, or none.
///
/// **Invariant:** no refer, stop, incomplete or not-done text leaves without what to do until
/// review, be it an order to fast; "keep the plan" never leaves without its reason, nor a plan with acknowledged risks that
/// nobody knew of at the gate.
pub fn missing(decision: &Decision, plan: &Plan, exam: &Exam) -> Option<&'static str> {
    if !decision.verdict.needs_action() {
        return None;
    }
    let plan = standing(decision, plan);
    match plan.action {
        None if is_ordered(decision, exam) => None,
        None => Some("First press what to do until review."),
        Some(Action::KeepPlan) if !says_why(&plan) => Some("Say why the current plan is kept."),
        Some(Action::AcknowledgedRisk) if !says_why(&plan) && !exam.has_risk_plan() => {
            Some("Say why: no plan with acknowledged risks was known before.")
        }
        Some(_) => None,
    }
}
