//! A flag, and what it is about as data: which trial, which sign, when, which figure, who decided, and what
//! somebody typed as a field of its own. Its sentence is made in `crate::wording::flag`.
//!
//! **Invariant:** a decision, an order, a cut, a colour is made from these, never from a sentence.

use serde::{Serialize, Serializer};

use crate::clinical::knowledge::level::{Domain, Level};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::sign::Sign;

mod breath;
mod breathing;
mod by_mouth;
mod cracker;
mod dry;
mod flow;
mod gate;
mod meal;
mod oral;
mod own;
mod sign;
mod sips;
mod six_signs;
mod speech;
mod syllables;
mod timed_water;
mod visit;
mod voice;
mod water;

pub use breath::BreathFact;
pub use breathing::{BreathingFact, Off, UsualSpo2};
pub use by_mouth::{ByMouthFact, Came, Missing, Unwatched, Voice, WatchCut, WhenRead, WhyNot};
pub use cracker::{AgainstCracker, CrackerFact, CrackerOpen};
pub use dry::{DryCount, DryFact, DryResult};
pub use flow::{Flow, FlowFact};
pub use gate::GateFact;
pub use meal::{Lasted, MealFact};
pub use oral::{Opening, OralFact};
pub use own::{Amount, Given, OwnFact, OwnGiven};
pub use sign::{Seen, SeenSign, SignFact, With};
pub use sips::{SipsFact, Tries};
pub use six_signs::{OfSix, SixSignsFact, Tested};
pub use speech::SpeechFact;
pub use syllables::{OlderLine, Pace, SyllablesFact};
pub use timed_water::{CupError, TimedWaterFact};
pub use visit::{Past, VisitFact};
pub use voice::{NoRatio, VoiceFact};
pub use water::WaterFact;

/// What a flag is about.
///
/// [`Fact::key`] stands in stored records: a variant or a field that was released keeps its name.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum Fact {
    /// A sign seen in a trial by mouth.
    Sign(SignFact),
    /// The 90 mL of water.
    Water(WaterFact),
    /// Small sips of water, the 3 mL under the tongue among them.
    Sips(SipsFact),
    /// The timed cup of water.
    TimedWater(TimedWaterFact),
    /// What all trials by mouth share: signs late, moved or taken back, oxygen saturation, the voice before.
    ByMouth(ByMouthFact),
    /// Dry swallows.
    Dry(DryFact),
    /// The cracker.
    Cracker(CrackerFact),
    /// The clinician's own trials.
    Own(OwnFact),
    /// A meal or drink that is watched.
    Meal(MealFact),
    /// How thick a drink is.
    Flow(FlowFact),
    /// The six signs.
    SixSigns(SixSignsFact),
    /// Breaths and oxygen saturation before a trial.
    Breathing(BreathingFact),
    /// What is asked before anything is given.
    Gate(GateFact),
    /// Face, mouth and throat.
    Oral(OralFact),
    /// What all trials of speech and breath share: what is not scored, what is not compared.
    Speech(SpeechFact),
    /// Repeated syllables.
    Syllables(SyllablesFact),
    /// How long a sound is held, s to z, the range of pitch.
    Voice(VoiceFact),
    /// Counting on one breath, breath hold, 5 cm of water for 5 seconds.
    Breath(BreathFact),
    /// The visit as a whole: person, record, what was gone past.
    Visit(VisitFact<Flag>),
}

impl Fact {
    /// Its stable form: what tells this fact from another, whatever it is called in words.
    pub fn key(&self) -> String {
        // Facts hold numbers, names and lists, and every one of them can be written: a test does.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// The sign that was pressed in a trial by mouth, with all that is known of it.
    pub fn sign(&self) -> Option<&SignFact> {
        match self {
            Fact::Sign(sign) => Some(sign),
            _ => None,
        }
    }

    /// The sign it is of, in whatever task and however late: pressed, answered, or taken back.
    pub fn of_sign(&self) -> Option<Sign> {
        match self {
            Fact::Sign(fact) => Some(fact.sign),
            Fact::Water(WaterFact::Voice { .. }) => Some(Sign::VoiceChange),
            Fact::Water(WaterFact::Paused) => Some(Sign::Pause),
            Fact::ByMouth(ByMouthFact::TakenBack { sign, .. }) => Some(*sign),
            Fact::Visit(VisitFact::Choked) => Some(Sign::Choke),
            _ => None,
        }
    }

    /// The sign it names, be it of one or not.
    pub fn names_sign(&self) -> Option<Sign> {
        match self {
            Fact::ByMouth(
                ByMouthFact::SeenWithin { sign, .. } | ByMouthFact::NextInMouth { sign, .. },
            )
            | Fact::Own(OwnFact::Either { sign, .. }) => Some(*sign),
            fact => fact.of_sign(),
        }
    }

    /// Whether it is of a sign that came too late to count.
    pub fn is_late_sign(&self) -> bool {
        self.sign().is_some_and(|sign| sign.too_late)
    }

    /// Whether it is about a reading of breathing, before a trial or in it.
    pub fn is_of_breathing(&self) -> bool {
        matches!(
            self,
            Fact::Breathing(_) | Fact::ByMouth(ByMouthFact::Saturation { .. })
        )
    }

    /// Whether it is about what is asked at the gate. A weakness of which nobody was asked where a
    /// screen has no gate is not.
    pub fn is_of_gate(&self) -> bool {
        match self {
            Fact::Gate(fact) => *fact != GateFact::WeaknessNotAsked,
            Fact::ByMouth(ByMouthFact::WetBefore) | Fact::Visit(VisitFact::EmergencyChanged) => {
                true
            }
            _ => false,
        }
    }

    /// Whether it is about the 90 mL of water.
    pub fn is_of_90(&self) -> bool {
        match self {
            Fact::Water(_) => true,
            Fact::Sign(fact) => matches!(fact.with, With::Cup { .. }),
            _ => false,
        }
    }
}

// A fact can tell of what was gone past, and that is told by flags: so both stand here.

/// A conclusion with its reason and its rule. Made by [`Rule::flag`] only.
#[derive(Clone, Debug, PartialEq)]
pub struct Flag {
    level: Level,
    domain: Domain,
    fact: Fact,
    rule: &'static Rule,
}

impl Flag {
    /// How grave.
    pub fn level(&self) -> Level {
        self.level
    }

    /// What about.
    pub fn domain(&self) -> Domain {
        self.domain
    }

    /// What about, as data.
    pub fn fact(&self) -> &Fact {
        &self.fact
    }

    /// By which rule.
    pub fn rule(&self) -> &'static Rule {
        self.rule
    }
}

/// In a key or a fact it is its rule and what it is about.
impl Serialize for Flag {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        (self.rule.id, &self.fact).serialize(to)
    }
}

impl Rule {
    /// The only way to a [`Flag`].
    pub fn flag(&'static self, level: Level, domain: Domain, fact: impl Into<Fact>) -> Flag {
        Flag {
            level,
            domain,
            fact: fact.into(),
            rule: self,
        }
    }
}

macro_rules! subjects {
    ($($variant:ident($fact:ty)),+ $(,)?) => {
        $(impl From<$fact> for Fact {
            fn from(fact: $fact) -> Fact {
                Fact::$variant(fact)
            }
        })+
    };
}

subjects!(
    Sign(SignFact),
    Water(WaterFact),
    Sips(SipsFact),
    TimedWater(TimedWaterFact),
    ByMouth(ByMouthFact),
    Dry(DryFact),
    Cracker(CrackerFact),
    Own(OwnFact),
    Meal(MealFact),
    Flow(FlowFact),
    SixSigns(SixSignsFact),
    Breathing(BreathingFact),
    Gate(GateFact),
    Oral(OralFact),
    Speech(SpeechFact),
    Syllables(SyllablesFact),
    Voice(VoiceFact),
    Breath(BreathFact),
    Visit(VisitFact<Flag>),
);
