//! Facts about face, mouth and throat.

use serde::Serialize;

use crate::clinical::findings::oral::{CoughFlow, FacePattern, Found, Gag, Sighting};
use crate::clinical::knowledge::oral::Item;
use crate::clinical::knowledge::oral::item::Cranial;
use crate::clinical::knowledge::oral::nerve::{Nerve, Side};
use crate::measure::units::{LitresPerMinute, Millimetres};

/// What a rule says about face, mouth and throat.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum OralFact {
    /// What deviates to one side, and so names the weak one.
    Deviates(Sighting),
    /// What was seen by one nerve points to both sides.
    BothSides {
        /// The nerve.
        nerve: Nerve,
        /// What was seen, each once.
        seen: Vec<Sighting>,
    },
    /// The pattern of a weak face.
    Face(FacePattern),
    /// The lower face is weak on this side, forehead or eye on the other only.
    UpperFaceElsewhere(Side),
    /// The tongue is thin or furrowed and twitches on this side.
    TongueWastedAndTwitching(Side),
    /// A side looks weak, and its strength against resistance is as expected.
    Strong {
        /// The nerve.
        nerve: Cranial,
        /// The side.
        side: Side,
        /// What looks weak.
        weak: Vec<Found>,
        /// What was tested and is as expected there.
        strong: Vec<&'static Item>,
    },
    /// The tongue does not move its full range.
    TongueRange,
    /// The gag.
    Gag(Gag),
    /// The mouth's opening.
    Opening {
        /// How wide.
        width: Millimetres,
        /// What it is judged as.
        judged: Opening,
    },
    /// The peak cough flow.
    CoughFlow {
        /// How much.
        flow: LitresPerMinute,
        /// Its band; none in a child, where it is not judged.
        band: Option<CoughFlow>,
    },
    /// A wet voice.
    WetVoice,
    /// No swallow felt under four fingers.
    NoSwallowFelt,
}

/// What a mouth opening is judged as.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Opening {
    /// Narrow.
    Narrow,
    /// Not judged in a child.
    Child,
    /// Not judged without upper and lower front teeth.
    NoTeeth,
    /// Not judged where nobody noted whether there are any.
    TeethNotNoted,
}
