//! A flag in words: its reason, in plain words a ward uses. A file a subject.

use crate::clinical::findings::fact::Fact;
use crate::clinical::findings::flag::Flag;

mod breath;
mod breathing;
mod by_mouth;
mod cracker;
pub mod dry;
mod flow;
mod gate;
mod meal;
mod oral;
mod own;
pub(super) mod sign;
mod sips;
mod six_signs;
mod speech;
mod syllables;
mod timed_water;
pub mod visit;
mod voice;
mod water;

/// Why, in plain words a ward uses.
pub fn reason(flag: &Flag) -> String {
    match flag.fact() {
        Fact::Sign(fact) => sign::reason(fact, flag),
        Fact::Water(fact) => water::reason(fact, flag),
        Fact::Sips(fact) => sips::reason(fact, flag),
        Fact::TimedWater(fact) => timed_water::reason(fact, flag),
        Fact::ByMouth(fact) => by_mouth::reason(fact, flag),
        Fact::Dry(fact) => dry::reason(fact, flag),
        Fact::Cracker(fact) => cracker::reason(fact, flag),
        Fact::Own(fact) => own::reason(fact, flag),
        Fact::Meal(fact) => meal::reason(fact, flag),
        Fact::Flow(fact) => flow::reason(fact, flag),
        Fact::SixSigns(fact) => six_signs::reason(fact, flag),
        Fact::Breathing(fact) => breathing::reason(fact, flag),
        Fact::Gate(fact) => gate::reason(fact, flag),
        Fact::Oral(fact) => oral::reason(fact, flag),
        Fact::Speech(fact) => speech::reason(fact),
        Fact::Syllables(fact) => syllables::reason(fact),
        Fact::Voice(fact) => voice::reason(fact),
        Fact::Breath(fact) => breath::reason(fact),
        Fact::Visit(fact) => visit::reason(fact, flag),
    }
}

/// Why, without what it is compared with, which the full record has.
pub fn without_comparison(flag: &Flag) -> String {
    let short = match flag.fact() {
        Fact::Syllables(fact) => syllables::result(fact),
        Fact::Voice(fact) => voice::result(fact),
        Fact::Breath(fact) => breath::result(fact),
        _ => None,
    };
    short.unwrap_or_else(|| reason(flag))
}

impl Flag {
    /// Why, in plain words a ward uses.
    pub fn reason(&self) -> String {
        reason(self)
    }
}
