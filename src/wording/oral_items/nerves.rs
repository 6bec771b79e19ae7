//! Nerves and sides in words.

use crate::clinical::knowledge::oral::Cranial;
use crate::clinical::knowledge::oral::nerve::{Nerve, Side};

/// A nerve, for a heading.
pub const fn nerve_heading(nerve: Cranial) -> &'static str {
    match nerve {
        Cranial::Fifth => "Cranial nerve V: jaw, touch on face and mouth",
        Cranial::Seventh => "Cranial nerve VII: face",
        Cranial::Ninth => "Cranial nerve IX: touch in the throat",
        Cranial::Tenth => "Cranial nerve X, with IX: palate, voice",
        Cranial::Eleventh => "Cranial nerve XI: neck and shoulders",
        Cranial::Twelfth => "Cranial nerve XII: tongue",
        Cranial::Several => "Several nerves together",
        Cranial::None => "",
    }
}

/// A nerve's number, for a line under an item; empty where there is none.
pub const fn nerve_number(nerve: Cranial) -> &'static str {
    match nerve {
        Cranial::Fifth => "V",
        Cranial::Seventh => "VII",
        Cranial::Ninth => "IX",
        Cranial::Tenth => "X",
        Cranial::Eleventh => "XI",
        Cranial::Twelfth => "XII",
        Cranial::Several => "V, VII, IX, X, XII",
        Cranial::None => "",
    }
}

/// A nerve, within a sentence.
pub const fn nerve(nerve: Nerve) -> &'static str {
    match nerve {
        Nerve::Fifth => "jaw (cranial nerve V)",
        Nerve::Seventh => "face (cranial nerve VII)",
        Nerve::Tenth => "palate (cranial nerve X)",
        Nerve::Twelfth => "tongue (cranial nerve XII)",
    }
}

/// A side.
pub const fn side(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}
