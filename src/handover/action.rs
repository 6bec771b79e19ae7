//! What is to be done until review, to whom and by when: the words, and when they are enough.

use crate::clinical::decision::{Decision, Verdict};
use crate::clinical::exam::EndedEarly;
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
            Whom::Doctor => "the doctor on duty",
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

/// To whom and by when, where the clinician left it as suggested.
///
/// A stop and an emergency go to the doctor, now; everything else to speech-language pathology,
/// today. National guidance asks for specialist assessment preferably within 24 hours (NICE).
pub fn suggested(verdict: Verdict) -> (Whom, ByWhen) {
    match verdict {
        Verdict::Stop | Verdict::NotDone(EndedEarly::Emergency) => (Whom::Doctor, ByWhen::Now),
        _ => (Whom::Slp, ByWhen::Today),
    }
}

/// What is still missing before the text may leave: words to show, or none.
///
/// **Invariant:** no refer, stop, incomplete or not-done text leaves without what to do until
/// review; "keep the plan" never leaves without its reason.
pub fn missing(decision: &Decision, plan: &Plan) -> Option<&'static str> {
    if !decision.verdict.needs_action() {
        return None;
    }
    match plan.action {
        None => Some("First press what to do until review."),
        Some(Action::KeepPlan) if plan.because.trim().is_empty() => {
            Some("Say why the current plan is kept.")
        }
        Some(_) => None,
    }
}
