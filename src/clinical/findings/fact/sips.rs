//! Facts about small sips of water, the 3 mL under the tongue among them.

use serde::Serialize;

use super::WhyNot;
use crate::measure::units::Millilitres;

/// So many of the tries of 3 mL.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Tries {
    /// In so many.
    pub n: usize,
    /// Of so many.
    pub of: usize,
}

/// What a rule says about small sips of water, the 3 mL under the tongue among them.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum SipsFact {
    /// None was given; why, where somebody said so.
    NotGiven(Option<WhyNot>),
    /// The next was not given.
    NextNotGiven(WhyNot),
    /// The plan has none.
    NonePlanned,
    /// Sips of a size that are still due.
    Due {
        /// The size.
        size: Millilitres,
        /// Given and watched.
        done: usize,
        /// Planned.
        of: u8,
    },
    /// A further sip was given after a sign.
    GivenAfterSign,
    /// There was no voice before a sip: whether it changed could not be judged.
    NoVoiceBefore,
    /// A larger sip was given before the smaller ones were done.
    LargerFirst,
    /// All were given and watched.
    Clear {
        /// The sizes.
        sizes: Vec<Millilitres>,
        /// Each so often.
        times: u8,
        /// Nothing was seen, not even what decides nothing.
        no_sign: bool,
    },
    /// After 3 mL fewer than two more dry swallows.
    FewExtra(Tries),
    /// After 3 mL residue in the mouth.
    Residue {
        /// In which.
        tries: Tries,
        /// The wording in use counts it.
        counts: bool,
    },
    /// The 90 mL wait: the sips were not all given, watched and clear.
    CupWaits,
    /// The 90 mL wait: not two more dry swallows after 3 mL.
    CupWaitsForSwallows,
}
