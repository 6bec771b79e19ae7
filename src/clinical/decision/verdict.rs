//! The decision of a visit: the worst flag that decides, or "not done" with a reason.

use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::flag::{Flag, Level};
use crate::clinical::knowledge::person::Role;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::{Sign, is_of_sign};
use crate::measure::order::put_in_order;
use crate::measure::time::Millis;

/// The rule by which the headline is found.
pub static HEADLINE: &Rule = &rules::DECISION_HEADLINE;

/// The rule by which a flag stands under "Also found", whatever its level.
pub static ALSO_FOUND: &Rule = &rules::DECISION_ALSO_FOUND;

/// The headline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// No further oral trial.
    Stop,
    /// Somebody must look further.
    Refer,
    /// Something needed is missing.
    Incomplete,
    /// No sign seen on this screen.
    Pass,
    /// Examined, and nothing said about eating and drinking: no food or drink was given.
    NoDecision,
    /// Not done.
    NotDone(EndedEarly),
}

impl Verdict {
    /// Stable id, stored with the decision.
    pub const fn id(self) -> &'static str {
        match self {
            Verdict::Stop => "stop",
            Verdict::Refer => "refer",
            Verdict::Incomplete => "incomplete",
            Verdict::Pass => "pass",
            Verdict::NoDecision => "no-decision",
            Verdict::NotDone(_) => "not-done",
        }
    }

    /// The headline in full.
    pub const fn headline(self) -> &'static str {
        match self {
            Verdict::Stop => "Stop: no further trial by mouth",
            Verdict::Refer => "Refer to speech-language pathology",
            Verdict::Incomplete => "Incomplete: not cleared",
            Verdict::Pass => "No sign seen on this screen",
            Verdict::NoDecision => "Examined: no food or drink was tested",
            Verdict::NotDone(EndedEarly::Emergency) => "Emergency: screen not done",
            Verdict::NotDone(_) => "Screen not done",
        }
    }

    /// Whether the text may leave only after somebody said what to do until review.
    ///
    /// Only "no sign seen" and an examination without a swallow change nothing; after anything else the ward must be told. An
    /// emergency waits for no press: its text says what holds until somebody came.
    pub const fn needs_action(self) -> bool {
        !matches!(
            self,
            Verdict::Pass | Verdict::NoDecision | Verdict::NotDone(EndedEarly::Emergency)
        )
    }
}

/// The short words for a stored verdict's id.
pub fn short_of(id: &str) -> &'static str {
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

/// The decision with everything behind it.
#[derive(Clone, Debug)]
pub struct Decision {
    /// The headline.
    pub verdict: Verdict,
    /// Why: the flags that decide, the gravest first.
    pub reasons: Vec<Flag>,
    /// What is missing or not valid.
    pub missing: Vec<Flag>,
    /// What was found without a sign.
    pub clear: Vec<Flag>,
    /// Also found: decides nothing.
    pub also: Vec<Flag>,
    /// When each choking was: what tells one from the next.
    pub chokings: Vec<Millis>,
}

/// What a "no sign seen" leaves open for whoever is fasting for the screen.
pub const ORDER_STANDS: &str =
    "an order of nothing by mouth until this screen: only whoever gave it lifts it";

/// Signs that were pressed beside "no sign seen": they decide nothing, and are never passed over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Noted {
    /// All of them came later than what counts.
    pub late: bool,
    /// The gravest in words, and how many more.
    pub words: String,
    /// The gravest in the words of its flag.
    pub reason: String,
}

impl Decision {
    /// The signs of a "no sign seen" that were pressed all the same.
    pub fn noted(&self) -> Option<Noted> {
        let pass = self.verdict == Verdict::Pass;
        let signs = self
            .also
            .iter()
            .filter(|f| pass && f.level() == Level::Note && is_of_sign(f));
        let mut signs: Vec<String> = signs.map(Flag::reason).collect();
        // What is only noted whenever it comes stands last.
        let mild = |words: &str| [Sign::ThroatClear, Sign::Pause].map(|s| words.contains(s.past()));
        put_in_order(&mut signs, |a: &String, b: &String| mild(a).cmp(&mild(b)));
        let (first, more) = signs.split_first()?;
        let late = |words: &str| words.find(": later than");
        let words = &first[..late(first).unwrap_or(first.len())];
        Some(Noted {
            late: signs.iter().all(|s| late(s).is_some()),
            words: match more.len() {
                0 => words.to_owned(),
                n => format!("{words}, and {n} more"),
            },
            reason: first.clone(),
        })
    }

    /// The headline in full, a sign that decides nothing taken in, as it reads for who examined.
    pub fn headline(&self, by: Role) -> &'static str {
        match self.noted() {
            Some(Noted { late: true, .. }) => "No sign within the 60 seconds; one came later",
            Some(_) => "No sign that refers; one was noted",
            // Whoever it is referred to is here already.
            None if self.verdict == Verdict::Refer && by == Role::Slp => {
                "Refer: further examination"
            }
            None => self.verdict.headline(),
        }
    }
}

/// Decides: the headline by [`rules::DECISION_HEADLINE`], the rest by
/// [`rules::DECISION_ALSO_FOUND`].
///
/// An emergency outranks everything. A sign that was seen outranks any other early end: somebody
/// who coughed and then wanted to stop is referred, not "not done".
pub fn decide(flags: Vec<Flag>, ended: Option<EndedEarly>) -> Decision {
    let mut decision = Decision {
        verdict: Verdict::Incomplete,
        reasons: Vec::new(),
        missing: Vec::new(),
        clear: Vec::new(),
        also: Vec::new(),
        chokings: Vec::new(),
    };
    for flag in flags {
        let list = match (flag.domain().decides(), flag.level()) {
            (false, _) | (true, Level::Note) => &mut decision.also,
            (true, Level::Pass) => &mut decision.clear,
            (true, Level::Incomplete) => &mut decision.missing,
            (true, Level::Refer | Level::Stop) => &mut decision.reasons,
        };
        list.push(flag);
    }
    put_in_order(&mut decision.reasons, |a, b| b.level().cmp(&a.level()));
    decision.verdict = match (decision.reasons.first().map(Flag::level), ended) {
        (_, Some(EndedEarly::Emergency)) => Verdict::NotDone(EndedEarly::Emergency),
        (Some(Level::Stop), _) => Verdict::Stop,
        (Some(_), _) => Verdict::Refer,
        (None, Some(why)) => Verdict::NotDone(why),
        (None, None) if decision.missing.is_empty() && !decision.clear.is_empty() => Verdict::Pass,
        (None, None) => Verdict::Incomplete,
    };
    decision
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
            all.map(|verdict| short_of(verdict.id())),
            [
                "Stop",
                "Refer",
                "Incomplete",
                "No sign seen",
                "Examined",
                "Not done"
            ]
        );
        assert_eq!(short_of("later"), "Decided by a newer version");
    }
}
