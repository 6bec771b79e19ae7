//! What is to be done until review, to whom and by when: the words, and when they are enough.

use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::findings::exam::{EndedEarly, Exam};
use crate::clinical::findings::flag::Flag;
use crate::clinical::knowledge::rules;
use crate::record::event::{Action, ByWhen, Plan, Whom};

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
const BREATHING: [&str; 9] = [
    rules::BREATHING_RATE.id,
    rules::BREATHING_SPO2.id,
    rules::BREATHING_SECOND_SCALE.id,
    rules::BREATHING_SPO2_FALL.id,
    rules::WATER_BREATHING_CHANGE.id,
    rules::TRIAL_BREATHING_CHANGE.id,
    rules::THREE_ML_BREATHING.id,
    rules::GATE_DISTRESS.id,
    rules::GATE_AWAKE.id,
];

/// The rules of choking.
const CHOKING: [&str; 2] = [rules::WATER_CHOKE.id, rules::TRIAL_CHOKE.id];

fn names(flags: &[Flag], rules: &[&str]) -> bool {
    flags.iter().any(|f| rules.contains(&f.rule().id))
}

/// Whether a flag is about breathing or alertness that may be failing.
pub fn is_deterioration(flag: &Flag) -> bool {
    BREATHING.contains(&flag.rule().id)
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
    !emergency && names(&decision.missing, &BREATHING) || names(&decision.reasons, &BREATHING)
}

/// To whom and by when, where the clinician left it as suggested.
///
/// Choking, an emergency and failing breathing go to the doctor, now; everything else to
/// speech-language pathology, today. National guidance asks for specialist assessment preferably
/// within 24 hours (NICE).
pub fn suggested(decision: &Decision) -> (Whom, ByWhen) {
    let emergency = decision.verdict == Verdict::NotDone(EndedEarly::Emergency);
    if emergency || deteriorating(decision) || names(&decision.reasons, &CHOKING) {
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
    let basis = basis(decision, true);
    // Plans of earlier versions carry the verdict alone, or with its rules, or no notes.
    let known = [
        decision.verdict.id(),
        &basis,
        &self::basis(decision, false),
        &rules_of(decision),
    ];
    if known.contains(&plan.verdict.as_str()) {
        plan.clone()
    } else {
        Plan {
            verdict: basis,
            ..Plan::default()
        }
    }
}

/// What a plan is made for: the verdict, and a digest of all that speaks for it, with what is only
/// noted of eating and drinking: a late cough. A plan that is asked for once too often is the safe
/// side.
fn basis(decision: &Decision, notes: bool) -> String {
    // FNV-1a; each part ends with a zero, so that two never read as one.
    let mut digest = 0xcbf2_9ce4_8422_2325_u64;
    let mut add = |words: &str| {
        for byte in words.bytes().chain([0]) {
            digest = (digest ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    };
    if let Verdict::NotDone(why) = decision.verdict {
        add(why.words());
    }
    let noted = decision
        .also
        .iter()
        .filter(|f| notes && f.domain().decides());
    let speaks = decision.reasons.iter().chain(&decision.missing);
    for flag in speaks.chain(noted) {
        add(flag.rule().id);
        add(&flag.reason());
    }
    if deteriorating(decision) {
        add("deteriorating");
    }
    if notes {
        add("notes");
    }
    let chokings: Vec<String> = decision
        .chokings
        .iter()
        .map(|at| at.0.to_string())
        .collect();
    add(&chokings.join("+"));
    format!("{} {digest:016x}", decision.verdict.id())
}

/// What a plan was made for in earlier versions: the verdict, and the rules that gave it.
fn rules_of(decision: &Decision) -> String {
    let mut basis = decision.verdict.id().to_owned();
    for flag in &decision.reasons {
        let id = flag.rule().id;
        if !basis.split(' ').any(|known| known == id) {
            basis.push(' ');
            basis.push_str(id);
        }
    }
    basis
}

/// What is still missing before the text may leave: words to show, or none.
///
/// **Invariant:** no refer, stop, incomplete or not-done text leaves without what to do until
/// review; "keep the plan" never leaves without its reason, nor a plan with acknowledged risks that
/// nobody knew of at the gate.
pub fn missing(decision: &Decision, plan: &Plan, exam: &Exam) -> Option<&'static str> {
    if !decision.verdict.needs_action() {
        return None;
    }
    let plan = standing(decision, plan);
    match plan.action {
        None => Some("First press what to do until review."),
        Some(Action::KeepPlan) if plan.because.trim().is_empty() => {
            Some("Say why the current plan is kept.")
        }
        Some(Action::AcknowledgedRisk)
            if plan.because.trim().is_empty() && !exam.has_risk_plan() =>
        {
            Some("Say why: no plan with acknowledged risks was known before.")
        }
        Some(_) => None,
    }
}
