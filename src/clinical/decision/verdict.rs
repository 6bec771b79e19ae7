//! The decision of a visit: the worst flag that decides, or "not done" with a reason.

use std::cmp::Reverse;

use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::flag::{Flag, Level};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::Sign;
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

/// Signs that were pressed beside "no sign seen": they decide nothing, and are never passed over.
#[derive(Clone, Copy, Debug)]
pub struct Noted<'a> {
    /// All of them came later than what counts.
    pub late: bool,
    /// The gravest.
    pub gravest: &'a Flag,
    /// How many more.
    pub more: usize,
}

impl Decision {
    /// The signs of a "no sign seen" that were pressed all the same.
    pub fn noted(&self) -> Option<Noted<'_>> {
        if self.verdict != Verdict::Pass {
            return None;
        }
        let noted = |f: &&Flag| f.level() == Level::Note && f.fact().of_sign().is_some();
        let signs: Vec<&Flag> = self.also.iter().filter(noted).collect();
        // The first of those that are alike.
        let gravest = signs.iter().copied().min_by_key(|flag| mildness(flag))?;
        let late = |flag: &&Flag| flag.fact().is_late_sign();
        Some(Noted {
            late: signs.iter().all(late),
            gravest,
            more: signs.len() - 1,
        })
    }
}

/// What is only noted whenever it comes stands last.
fn mildness(flag: &Flag) -> u8 {
    match flag.fact().of_sign() {
        Some(Sign::ThroatClear) => 2,
        Some(Sign::Pause) => 1,
        _ => 0,
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
    decision.reasons.sort_by_key(|flag| Reverse(flag.level()));
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
