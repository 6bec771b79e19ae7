//! Small sips of water, small before large, each size as often as planned, each watched.

use crate::clinical::findings::fact::{SeenSign, SipsFact, With};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::SignTask;
use crate::clinical::tasks::by_mouth::signs;
use crate::measure::order::put_in_order;
use crate::measure::units::Millilitres;

/// What is to be given: local policy.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// The sizes.
    pub sizes: Vec<Millilitres>,
    /// How often each is given.
    pub repeats: u8,
}

/// 3, 5 and 10 mL, twice each. The published steps are 5, 10 and 20 mL, twice each (DAN06T).
impl Default for Plan {
    fn default() -> Plan {
        Plan {
            sizes: [3, 5, 10].map(Millilitres::whole).to_vec(),
            repeats: 2,
        }
    }
}

/// One sip that was given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sip {
    /// Its size.
    pub size: Millilitres,
    /// What was seen.
    pub signs: Vec<SeenSign>,
    /// The minute after it was watched to its end and the voice was heard.
    pub watched: bool,
}

impl Sip {
    fn ends(&self) -> bool {
        self.signs.iter().any(|sign| sign.ends(SignTask::Sips))
    }
}

/// What comes next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Next {
    /// A sip of this size.
    Give(Millilitres),
    /// None: a sign ended it.
    Ended,
    /// None: all of the plan was given and watched.
    Done,
}

/// What comes next by a plan, after these sips.
pub fn next(plan: &Plan, sips: &[Sip]) -> Next {
    if sips.iter().any(Sip::ends) {
        return Next::Ended;
    }
    in_order(plan.sizes.iter().copied())
        .into_iter()
        .find(|size| done(*size, sips) < usize::from(plan.repeats))
        .map_or(Next::Done, Next::Give)
}

/// Whether the 90 mL may follow: only after the whole plan, without a sign.
pub fn all_clear(plan: &Plan, sips: &[Sip]) -> bool {
    judge(plan, sips).iter().any(|f| f.level() == Level::Pass)
}

/// What holds up the 90 mL, if something does.
pub fn before_90(plan: &Plan, sips: &[Sip]) -> Option<Flag> {
    (!all_clear(plan, sips)).then(|| {
        rules::SIPS_ORDER.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            SipsFact::CupWaits,
        )
    })
}

/// What the rules say about the sips given, by a plan. Their order means nothing but for a note
/// where a sip should have waited.
pub fn judge(plan: &Plan, sips: &[Sip]) -> Vec<Flag> {
    let eating = Domain::EatingDrinking;
    let mut flags = Vec::new();
    for size in in_order(sips.iter().map(|sip| sip.size)) {
        let seen: Vec<SeenSign> = sips
            .iter()
            .filter(|sip| sip.size == size)
            .flat_map(|sip| sip.signs.iter().copied())
            .collect();
        for flag in signs::judge(&With::Sip(size), &seen) {
            // The sips have a rule of their own for the two signs that are published for them.
            let own = [rules::TRIAL_COUGH.id, rules::TRIAL_VOICE.id];
            let rule = if own.contains(&flag.rule().id) {
                &rules::SIPS_SIGN
            } else {
                flag.rule()
            };
            flags.push(rule.flag(flag.level(), eating, flag.fact().clone()));
        }
    }
    if let Some(fact) = out_of_order(plan, sips) {
        flags.push(rules::SIPS_ORDER.flag(Level::Note, eating, fact));
    }
    // After a sign nothing more is due.
    if !sips.iter().any(Sip::ends) {
        let due = due(plan, sips).into_iter();
        flags.extend(due.map(|fact| rules::SIPS_UNFINISHED.flag(Level::Incomplete, eating, fact)));
    }
    if flags.iter().all(|f| f.level() == Level::Note) {
        let clear = SipsFact::Clear {
            sizes: in_order(plan.sizes.iter().copied()),
            times: plan.repeats,
            // What decides nothing was seen all the same.
            no_sign: sips.iter().all(|sip| sip.signs.is_empty()),
        };
        flags.push(rules::SIPS_CLEAR.flag(Level::Pass, eating, clear));
    }
    flags
}

/// Sips of a size that were given and watched.
fn done(size: Millilitres, sips: &[Sip]) -> usize {
    sips.iter().filter(|s| s.size == size && s.watched).count()
}

/// What of the plan is still due.
fn due(plan: &Plan, sips: &[Sip]) -> Vec<SipsFact> {
    if plan.sizes.is_empty() || plan.repeats == 0 {
        // Else a plan of nothing would be clear at once.
        return vec![SipsFact::NonePlanned];
    }
    let of = plan.repeats;
    in_order(plan.sizes.iter().copied())
        .into_iter()
        .map(|size| (size, done(size, sips)))
        .filter(|(_, done)| *done < usize::from(of))
        .map(|(size, done)| SipsFact::Due { size, done, of })
        .collect()
}

/// What should have waited.
fn out_of_order(plan: &Plan, sips: &[Sip]) -> Option<SipsFact> {
    for (i, sip) in sips.iter().enumerate() {
        let before = &sips[..i];
        if before.iter().any(Sip::ends) {
            return Some(SipsFact::GivenAfterSign);
        }
        let smaller_due = plan
            .sizes
            .iter()
            .any(|size| *size < sip.size && done(*size, before) < usize::from(plan.repeats));
        if smaller_due {
            return Some(SipsFact::LargerFirst);
        }
    }
    None
}

/// Each size once, small before large.
fn in_order(sizes: impl Iterator<Item = Millilitres>) -> Vec<Millilitres> {
    let mut sizes: Vec<Millilitres> = sizes.collect();
    put_in_order(&mut sizes, Ord::cmp);
    sizes.dedup();
    sizes
}
