//! Answers: what was seen, felt, measured, or not tested and why.
//!
//! [`Seen`] is what the journal keeps; [`Answer`] is what it comes to for an item. Only
//! [`Found::new`] puts a side or a grade to an exception, so that a side of the midline, a
//! direction to both sides or a grade of what has none can't be written.

use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::oral::item::{Exception, Item, Sided, Takes};
use crate::clinical::knowledge::oral::nerve::Side;
use crate::measure::units::{LitresPerMinute, Millimetres};

/// Left, right or both: the patient's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Sides {
    /// The patient's left.
    Left,
    /// The patient's right.
    Right,
    /// Both.
    Both,
}

impl Sides {
    /// All, in the order offered: as one faces the patient, and as on the picture.
    pub const ALL: [Sides; 3] = [Sides::Right, Sides::Left, Sides::Both];

    /// The one side, where it is one.
    pub const fn one(self) -> Option<Side> {
        match self {
            Sides::Left => Some(Side::Left),
            Sides::Right => Some(Side::Right),
            Sides::Both => None,
        }
    }

    /// Whether it takes in a side.
    pub fn has(self, side: Side) -> bool {
        self == Sides::Both || self.one() == Some(side)
    }
}

impl From<Side> for Sides {
    fn from(side: Side) -> Sides {
        match side {
            Side::Left => Sides::Left,
            Side::Right => Sides::Right,
        }
    }
}

/// How grave, in the clinician's judgement. Three words, no points.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Severity {
    /// Mild.
    Mild,
    /// Moderate.
    Moderate,
    /// Severe.
    Severe,
}

impl Severity {
    /// All, in the order offered.
    pub const ALL: [Severity; 3] = [Severity::Mild, Severity::Moderate, Severity::Severe];
}

/// Why something was not tested.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Reason {
    /// The person did not want it.
    Refused,
    /// Not safe.
    NotSafe,
    /// The person could not follow.
    CouldNotFollow,
    /// No equipment.
    NoEquipment,
    /// No time.
    NoTime,
    /// Not needed today.
    NotNeeded,
}

impl Reason {
    /// All, in the order offered.
    pub const ALL: [Reason; 6] = [
        Reason::Refused,
        Reason::NotSafe,
        Reason::CouldNotFollow,
        Reason::NoEquipment,
        Reason::NoTime,
        Reason::NotNeeded,
    ];
}

/// An exception as it is stored.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FoundId {
    /// The exception's id.
    pub what: String,
    /// Its side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<Sides>,
    /// Its grade.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub severity: Option<Severity>,
}

/// Touches at one place of one side, each told apart by what the person felt: there can't be more
/// felt than touched.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Touches {
    /// Felt.
    pub felt: u8,
    /// Felt, but less than elsewhere.
    pub less: u8,
    /// Not felt.
    pub missed: u8,
}

impl Touches {
    /// How many touches.
    pub fn all(self) -> u32 {
        self.hits() + u32::from(self.missed)
    }

    /// How many were felt, less or not.
    pub fn hits(self) -> u32 {
        u32::from(self.felt) + u32::from(self.less)
    }

    /// Whether all of them were felt alike. Not where nothing was touched.
    pub fn is_whole(self) -> bool {
        self.felt > 0 && self.less == 0 && self.missed == 0
    }
}

/// What is stored for an item.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Seen {
    /// As expected.
    AsExpected,
    /// These exceptions.
    Found(Vec<FoundId>),
    /// Not tested.
    NotTested(Reason),
    /// A number, in tenths of the item's unit; and for the mouth opening, whether there are upper
    /// and lower front teeth.
    Measured {
        /// In tenths.
        tenths: Option<i32>,
        /// Upper and lower front teeth.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        front_teeth: Option<bool>,
    },
    /// Touches.
    Touched {
        /// On the patient's left.
        left: Touches,
        /// On the patient's right.
        right: Touches,
    },
}

/// An exception of an item, with its side and its grade.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Found {
    item: &'static Item,
    exception: &'static Exception,
    side: Option<Sides>,
    severity: Option<Severity>,
}

/// Why a side or a grade can't be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotOfIt {
    /// It has no side.
    NoSide,
    /// It goes to one side, never to both.
    OneSide,
    /// It has no grade.
    NoGrade,
}

impl Found {
    /// Puts an exception, its side and its grade together.
    ///
    /// # Errors
    /// [`NotOfIt`] where it has no such side or grade.
    pub fn new(
        item: &'static Item,
        exception: &'static Exception,
        side: Option<Sides>,
        severity: Option<Severity>,
    ) -> Result<Found, NotOfIt> {
        match (exception.side, side) {
            (Sided::No, Some(_)) => return Err(NotOfIt::NoSide),
            (Sided::To, Some(Sides::Both)) => return Err(NotOfIt::OneSide),
            _ => {}
        }
        if severity.is_some() && !exception.graded {
            return Err(NotOfIt::NoGrade);
        }
        Ok(Found {
            item,
            exception,
            side,
            severity,
        })
    }

    /// From what is stored. A side or a grade that can't be is left out; the finding stays.
    fn read(item: &'static Item, stored: &FoundId) -> Option<Found> {
        let exception = item.exception(&stored.what)?;
        let side = stored
            .side
            .filter(|_| Found::new(item, exception, stored.side, None).is_ok());
        let severity = stored.severity.filter(|_| exception.graded);
        Found::new(item, exception, side, severity).ok()
    }

    /// As it is stored.
    pub fn store(&self) -> FoundId {
        FoundId {
            what: self.exception.id.to_owned(),
            side: self.side,
            severity: self.severity,
        }
    }

    /// The item.
    pub fn item(&self) -> &'static Item {
        self.item
    }

    /// The exception.
    pub fn exception(&self) -> &'static Exception {
        self.exception
    }

    /// Its side, if said.
    pub fn side(&self) -> Option<Sides> {
        self.side
    }

    /// Its grade, if said.
    pub fn severity(&self) -> Option<Severity> {
        self.severity
    }
}

/// What an answer comes to.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Answer {
    /// None yet: not tested, and nobody said why.
    #[default]
    Open,
    /// As expected.
    AsExpected,
    /// These exceptions, at least one.
    Found(Vec<Found>),
    /// Not tested, for this reason.
    NotTested(Reason),
    /// Opening of the mouth.
    Opening(Millimetres, FrontTeeth),
    /// Peak cough flow.
    Flow(LitresPerMinute),
    /// Touches, at least one.
    Touched {
        /// On the patient's left.
        left: Touches,
        /// On the patient's right.
        right: Touches,
    },
}

/// Least and most millimetres taken.
pub const OPENING: (i32, i32) = (1, 100);

/// Below so many tenths of a millimetre the page asks whether it was read right.
pub const OPENING_ODD: i32 = 150;

/// Least and most litres a minute taken.
pub const FLOW: (i32, i32) = (20, 900);

fn inside(tenths: i32, (least, most): (i32, i32)) -> Option<f64> {
    (least * 10..=most * 10)
        .contains(&tenths)
        .then(|| f64::from(tenths) / 10.0)
}

impl Answer {
    /// What is stored, read for its item. What can't be for it counts as open: it never reads as
    /// "as expected".
    pub fn read(item: &'static Item, seen: &Seen) -> Answer {
        let read = match (seen, item.takes) {
            (Seen::NotTested(reason), _) => Some(Answer::NotTested(*reason)),
            (Seen::AsExpected, Takes::Look | Takes::Touches) => Some(Answer::AsExpected),
            (Seen::Found(found), Takes::Look) => {
                let found: Vec<Found> = found.iter().filter_map(|f| Found::read(item, f)).collect();
                (!found.is_empty()).then_some(Answer::Found(found))
            }
            (
                Seen::Measured {
                    tenths: Some(tenths),
                    front_teeth,
                },
                Takes::Millimetres,
            ) => inside(*tenths, OPENING)
                .and_then(|mm| Millimetres::new(mm).ok())
                .map(|mm| {
                    let teeth = match front_teeth {
                        Some(true) => FrontTeeth::UpperAndLower,
                        Some(false) => FrontTeeth::NotBoth,
                        None => FrontTeeth::NotLooked,
                    };
                    Answer::Opening(mm, teeth)
                }),
            (
                Seen::Measured {
                    tenths: Some(tenths),
                    ..
                },
                Takes::Flow,
            ) => inside(*tenths, FLOW)
                .and_then(|flow| LitresPerMinute::new(flow).ok())
                .map(Answer::Flow),
            (Seen::Touched { left, right }, Takes::Touches) => (left.all() + right.all() > 0)
                .then_some(Answer::Touched {
                    left: *left,
                    right: *right,
                }),
            _ => None,
        };
        read.unwrap_or_default()
    }

    /// The exceptions found.
    pub fn found(&self) -> &[Found] {
        match self {
            Answer::Found(found) => found,
            _ => &[],
        }
    }

    /// Whether it is "as expected", by press or by touches that were all felt on both sides.
    pub fn is_as_expected(&self) -> bool {
        match self {
            Answer::AsExpected => true,
            Answer::Touched { left, right } => left.is_whole() && right.is_whole(),
            _ => false,
        }
    }

    /// Whether the item was done.
    pub fn is_done(&self) -> bool {
        !matches!(self, Answer::Open | Answer::NotTested(_))
    }
}

/// Front teeth, between whose edges the opening is measured.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FrontTeeth {
    /// Upper and lower ones.
    UpperAndLower,
    /// Not both: the line is for another distance.
    NotBoth,
    /// Not looked at.
    #[default]
    NotLooked,
}

/// What was seen on touch.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub enum Gag {
    /// On both sides.
    Present,
    /// Weak, or on one side only.
    Weak,
    /// Not there.
    Absent,
    /// Not tested.
    #[default]
    NotTested,
}

/// The band of a peak cough flow (sources: CPF22, WIL23). The lines come from neuromuscular
/// practice, not from swallow screening.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum CoughFlow {
    /// 270 litres a minute or more.
    Usual,
    /// From 160 to below 270.
    Reduced,
    /// Below 160.
    Weak,
}
