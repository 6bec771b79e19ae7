//! The verdict in words: headlines, short words for a list, why a screen ended early.

use crate::clinical::decision::verdict::{Decision, Noted, Verdict};
use crate::clinical::findings::ended::EndedEarly;
use crate::clinical::findings::fact::{Fact, SignFact};
use crate::clinical::knowledge::person::Role;
use crate::clinical::knowledge::policy::Policy;
use crate::record::head::{Head, State};
use crate::wording::flag::sign;

/// What a "no sign seen" leaves open for whoever is fasting for the screen.
pub const ORDER_STANDS: &str =
    "an order of nothing by mouth until this screen: only whoever gave it lifts it";

/// The headline of a verdict.
pub const fn headline(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Stop => "Stop: no further trial by mouth",
        Verdict::Refer => "Refer to speech-language pathology",
        Verdict::Incomplete => "Incomplete: not cleared",
        Verdict::Pass => "No sign seen on this screen",
        Verdict::NoDecision => "Examined: no food or drink was tested",
        Verdict::NotDone(EndedEarly::Emergency) => "Emergency: screen not done",
        Verdict::NotDone(_) => "Screen not done",
    }
}

/// The headline of a decision, a sign that decides nothing taken in, as it reads for who examined.
pub fn decided(decision: &Decision, by: Role) -> &'static str {
    match decision.noted() {
        Some(Noted { late: true, .. }) => "No sign within the 60 seconds; one came later",
        Some(_) => "No sign that refers; one was noted",
        // Whoever it is referred to is here already.
        None if decision.verdict == Verdict::Refer && by == Role::Slp => {
            "Refer: further examination"
        }
        None => headline(decision.verdict),
    }
}

/// Signs that decide nothing: the gravest, and how many more. Where it came too late is said beside
/// it.
pub fn noted(noted: &Noted<'_>) -> String {
    let first = match noted.gravest.fact() {
        Fact::Sign(fact) => sign::plain_of(&SignFact {
            too_late: false,
            ..fact.clone()
        }),
        _ => noted.gravest.reason(),
    };
    match noted.more {
        0 => first,
        n => format!("{first}, and {n} more"),
    }
}

/// The short words for a stored verdict's id.
fn short(id: &str) -> &'static str {
    match id {
        "stop" => "Stop",
        "refer" => "Refer",
        "incomplete" => "Incomplete",
        "pass" => "No sign seen",
        "no-decision" => "Examined",
        "not-done" => "Not done",
        _ => "Decided by a newer version",
    }
}

/// How a visit stands, for a list; empty before anything was decided.
pub fn in_list(head: &Head) -> String {
    match &head.state {
        // Written by an earlier version, in its words.
        None => head.verdict.clone(),
        Some(State::Emergency) => "Emergency".to_owned(),
        Some(State::SignNoted) => "Sign noted".to_owned(),
        Some(State::Decided(id)) => short(id).to_owned(),
        Some(State::Now(id)) => format!("Now: {}", short(id)),
    }
}

/// Why a screen ended early, without a figure.
pub const fn ended(why: EndedEarly) -> &'static str {
    match why {
        EndedEarly::Refused => "the person declined",
        EndedEarly::Withdrew => "the person wanted to stop",
        EndedEarly::GateClosed => "not ready for it",
        EndedEarly::Emergency => "emergency",
        EndedEarly::NotForAge => "not meant for somebody so young",
        EndedEarly::BrokenOff => "broken off by the clinician",
    }
}

/// Why a screen ended early, with the figure of the policy where there is one.
pub fn ended_under(why: EndedEarly, policy: &Policy) -> String {
    ended_from(why, policy.water_from_years)
}

/// The same with the age from which the water is given.
pub(super) fn ended_from(why: EndedEarly, water_from_years: i32) -> String {
    match why {
        EndedEarly::NotForAge => format!("not meant for children under {water_from_years} years"),
        _ => ended(why).to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_stored_verdict_has_its_short_words() {
        let all = [
            Verdict::Stop,
            Verdict::Refer,
            Verdict::Incomplete,
            Verdict::Pass,
            Verdict::NoDecision,
            Verdict::NotDone(EndedEarly::Refused),
        ];
        assert_eq!(
            all.map(|verdict| short(verdict.id())),
            [
                "Stop",
                "Refer",
                "Incomplete",
                "No sign seen",
                "Examined",
                "Not done"
            ]
        );
        assert_eq!(short("later"), "Decided by a newer version");
    }
}
