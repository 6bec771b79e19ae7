//! An item of the examination as data.

use serde::{Serialize, Serializer};

use crate::clinical::knowledge::oral::nerve::Nerve;
use crate::clinical::knowledge::rule::Rule;

/// How an item is settled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// Looked at or listened to: settled by the region's "I checked these".
    Eye,
    /// Against resistance, by touch or with the fingers: its own "I tested these"; not tested
    /// until then.
    Hand,
    /// Each by its own press only: gag, taste, millimetres, peak flow, neck. Not tested until done.
    Alone,
}

impl By {
    /// Those that one press settles together.
    pub const GROUPS: [By; 2] = [By::Eye, By::Hand];
}

/// What an item takes as an answer, besides "not tested".
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Takes {
    /// As expected, or exceptions.
    Look,
    /// Touches on the left and on the right, each felt, felt less or not felt.
    Touches,
    /// Millimetres between the front teeth.
    Millimetres,
    /// Litres a minute on a meter.
    Flow,
}

/// Cranial nerves, for grouping what was found (textbook; CN-REV, DER in the notes).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Cranial {
    /// V: jaw; touch on face, cheek and front of the tongue.
    Fifth,
    /// VII: face.
    Seventh,
    /// IX: touch on palate and back of the tongue.
    Ninth,
    /// X, with IX: palate, voice.
    Tenth,
    /// XI: neck and shoulders.
    Eleventh,
    /// XII: tongue.
    Twelfth,
    /// Several at once.
    Several,
    /// None that the finding speaks of.
    None,
}

impl Cranial {
    /// Those that findings are grouped by, in order.
    pub const ALL: [Cranial; 7] = [
        Cranial::Fifth,
        Cranial::Seventh,
        Cranial::Ninth,
        Cranial::Tenth,
        Cranial::Eleventh,
        Cranial::Twelfth,
        Cranial::Several,
    ];

    /// For a heading.
    pub const fn words(self) -> &'static str {
        match self {
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

    /// Its number, for a line under an item; empty where there is none.
    pub const fn number(self) -> &'static str {
        match self {
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

    /// The same, as the rules of the weak side have it.
    pub const fn of_rules(self) -> Option<Nerve> {
        match self {
            Cranial::Fifth => Some(Nerve::Fifth),
            Cranial::Seventh => Some(Nerve::Seventh),
            Cranial::Tenth => Some(Nerve::Tenth),
            Cranial::Twelfth => Some(Nerve::Twelfth),
            _ => None,
        }
    }
}

/// Whether an exception has a side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sided {
    /// In the middle, or nowhere in particular.
    No,
    /// A direction: left or right, never both.
    To,
    /// Left, right or both.
    On,
}

/// What an exception says to the rules of the weak side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Points {
    /// Nothing.
    Nowhere,
    /// The tongue points to its side.
    TongueTo,
    /// The uvula is pulled to its side.
    UvulaTo,
    /// The jaw opens towards its side.
    JawTo,
    /// The mouth is pulled to its side.
    SmileTo,
    /// Its side is weak by itself.
    Weak,
    /// The forehead is weak on its side: tells the pattern of a weak face, not a weak lower face.
    Forehead,
    /// The eye closes less on its side.
    Eye,
    /// The tongue falls short of its range.
    Range,
    /// The tongue is thin or furrowed on its side.
    Wasted,
    /// The tongue twitches on its side.
    Twitching,
    /// The tongue pushes less into this cheek. It is the work of the other half, and by itself names no weak side.
    Push,
}

/// An answer other than "as expected".
#[derive(Debug)]
pub struct Exception {
    /// Stable id within its item, stored.
    pub id: &'static str,
    /// The words on the button, and in the handover where it has no direction.
    pub words: &'static str,
    /// The words before "left" or "right", for a direction; else empty.
    pub towards: &'static str,
    /// Whether it has a side.
    pub side: Sided,
    /// Whether it has a severity.
    pub graded: bool,
    /// What it says to the rules.
    pub points: Points,
}

/// A place on the picture, in its units (320 wide, 256 high), for the patient's right; the left
/// is mirrored.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spot(pub i32, pub i32);

/// One item.
#[derive(Debug)]
pub struct Item {
    /// Stable id, stored.
    pub id: &'static str,
    /// Its name, that can stand alone.
    pub name: &'static str,
    /// What to say, word for word; empty where nothing is said.
    pub ask: &'static str,
    /// What to look for, with figures where a figure helps.
    pub look: &'static str,
    /// What to mind; empty where there is nothing.
    pub care: &'static str,
    /// Its nerve.
    pub nerve: Cranial,
    /// How it is settled.
    pub by: By,
    /// What it takes.
    pub takes: Takes,
    /// Its exceptions.
    pub exceptions: &'static [Exception],
    /// Its place on the picture, if it has one.
    pub spot: Option<Spot>,
    /// The rule to show beside it, if there is one.
    pub rule: Option<&'static Rule>,
}

impl Item {
    /// Its exception with an id.
    pub fn exception(&self, id: &str) -> Option<&Exception> {
        self.exceptions.iter().find(|e| e.id == id)
    }
}

/// An item is its id; what else its row says is the same wherever the id is.
impl PartialEq for Item {
    fn eq(&self, other: &Item) -> bool {
        self.id == other.id
    }
}

/// Known by its id within its item.
impl PartialEq for Exception {
    fn eq(&self, other: &Exception) -> bool {
        self.id == other.id
    }
}

impl Serialize for Item {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.id)
    }
}

impl Serialize for Exception {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.id)
    }
}

/// The blank from which the rows of the tables differ.
pub(super) const BLANK: Item = Item {
    id: "",
    name: "",
    ask: "",
    look: "",
    care: "",
    nerve: Cranial::None,
    by: By::Eye,
    takes: Takes::Look,
    exceptions: &[],
    spot: None,
    rule: None,
};

const fn exception(id: &'static str, words: &'static str, side: Sided, graded: bool) -> Exception {
    Exception {
        id,
        words,
        towards: "",
        side,
        graded,
        points: Points::Nowhere,
    }
}

/// In the middle, without a grade.
pub(super) const fn plain(id: &'static str, words: &'static str) -> Exception {
    exception(id, words, Sided::No, false)
}

/// In the middle, with a grade.
pub(super) const fn graded(id: &'static str, words: &'static str) -> Exception {
    exception(id, words, Sided::No, true)
}

/// On a side or both, without a grade.
pub(super) const fn on(id: &'static str, words: &'static str) -> Exception {
    exception(id, words, Sided::On, false)
}

/// On a side or both, with a grade.
pub(super) const fn graded_on(id: &'static str, words: &'static str) -> Exception {
    exception(id, words, Sided::On, true)
}

/// Towards one side.
pub(super) const fn towards(
    id: &'static str,
    words: &'static str,
    towards: &'static str,
    points: Points,
) -> Exception {
    Exception {
        towards,
        points,
        ..exception(id, words, Sided::To, false)
    }
}

impl Exception {
    /// The same, with what it says to the rules.
    pub(super) const fn says(self, points: Points) -> Exception {
        Exception { points, ..self }
    }
}
