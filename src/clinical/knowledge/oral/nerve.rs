//! Sides and cranial nerves, as the items name them.

use serde::Serialize;

/// A side of the person, not of the examiner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Side {
    /// The person's left.
    Left,
    /// The person's right.
    Right,
}

impl Side {
    /// The other one.
    pub const fn other(self) -> Side {
        match self {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
        }
    }

    /// The word for it.
    pub const fn words(self) -> &'static str {
        match self {
            Side::Left => "left",
            Side::Right => "right",
        }
    }
}

/// A cranial nerve that the four deviations speak of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Nerve {
    /// V, moves the jaw.
    Fifth,
    /// VII, moves the face.
    Seventh,
    /// X, lifts the palate.
    Tenth,
    /// XII, moves the tongue.
    Twelfth,
}

impl Nerve {
    /// All, in order.
    pub const ALL: [Nerve; 4] = [Nerve::Fifth, Nerve::Seventh, Nerve::Tenth, Nerve::Twelfth];

    /// In words for a sentence.
    pub const fn words(self) -> &'static str {
        match self {
            Nerve::Fifth => "jaw (cranial nerve V)",
            Nerve::Seventh => "face (cranial nerve VII)",
            Nerve::Tenth => "palate (cranial nerve X)",
            Nerve::Twelfth => "tongue (cranial nerve XII)",
        }
    }
}
