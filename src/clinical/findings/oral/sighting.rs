//! What deviates in face, mouth and throat, and the weak side it speaks of.

use serde::Serialize;

use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::oral::nerve::{Nerve, Side};

/// One thing seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Sighting {
    /// The tongue, put out, points to this side.
    TonguePointsTo(Side),
    /// On "ah" the uvula is pulled to this side.
    UvulaPulledTo(Side),
    /// The jaw opens towards this side.
    JawOpensTo(Side),
    /// On smiling the mouth is pulled to this side.
    SmilePulledTo(Side),
    /// Found weak on this side by itself: at rest, against resistance, in range.
    FoundWeak(Nerve, Side),
}

impl Sighting {
    /// The nerve and the weak side it speaks of (sources: ALPF, DER, MW).
    pub const fn weak(self) -> (Nerve, Side) {
        match self {
            Sighting::TonguePointsTo(side) => (Nerve::Twelfth, side),
            Sighting::UvulaPulledTo(side) => (Nerve::Tenth, side.other()),
            Sighting::JawOpensTo(side) => (Nerve::Fifth, side),
            Sighting::SmilePulledTo(side) => (Nerve::Seventh, side.other()),
            Sighting::FoundWeak(nerve, side) => (nerve, side),
        }
    }
}

/// Whether the forehead moves, side by side: brows raised.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Forehead {
    /// It moves on the left.
    pub left: Looked,
    /// It moves on the right.
    pub right: Looked,
}

/// The pattern of a weak face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum FacePattern {
    /// The forehead moves on the weak side: upper motor neuron.
    Upper(Side),
    /// The forehead does not move on the weak side either: lower motor neuron.
    Lower(Side),
}
