//! How thick a drink is: what is left of 10 mL in a syringe after 10 seconds.
//!
//! The bands are those of the international framework, unchanged, and so are its names
//! ([`crate::clinical::knowledge::levels`]). A level is that of a drink, never what a person is to be given.

use crate::clinical::findings::fact::{Flow, FlowFact};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::rules;

/// What is filled in, in tenths of a millilitre (source: IDDSI-B). All of it left: nothing flowed.
const FILLED: u8 = 100;
/// From so many tenths of a millilitre left a drink is no more of level 0 (source: IDDSI-B).
const LEVEL_1: u8 = 10;
/// The end of level 1 and the beginning of level 2, which share it (source: IDDSI-B, IDDSI-S).
const BORDER_1_2: u8 = 40;
/// The end of level 2 and the beginning of level 3, which share it (source: IDDSI-B, IDDSI-S).
const BORDER_2_3: u8 = 80;

/// What is left of 10 mL, in whole tenths of a millilitre, 0 to 100: lines at whole millilitres
/// must be met exactly.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LeftOfTen(u8);

/// Less than nothing or more than 10 mL is left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OutOfRange;

impl LeftOfTen {
    /// So many tenths of a millilitre.
    ///
    /// # Errors
    /// [`OutOfRange`] outside 0 to 100.
    pub fn tenths(tenths: i32) -> Result<LeftOfTen, OutOfRange> {
        match u8::try_from(tenths) {
            Ok(tenths @ 0..=FILLED) => Ok(LeftOfTen(tenths)),
            _ => Err(OutOfRange),
        }
    }

    /// In tenths of a millilitre.
    pub fn get_tenths(self) -> u8 {
        self.0
    }
}

/// Reads the test.
pub fn read(left: LeftOfTen) -> Flow {
    match left.0 {
        n if n < LEVEL_1 => Flow::Level(0),
        n if n < BORDER_1_2 => Flow::Level(1),
        BORDER_1_2 => Flow::Border(1, 2),
        n if n < BORDER_2_3 => Flow::Level(2),
        BORDER_2_3 => Flow::Border(2, 3),
        n if n < FILLED => Flow::Level(3),
        _ => Flow::None,
    }
}

/// What the rules say about a drink. Notes only: a drink decides nothing about a person.
pub fn judge(left: LeftOfTen) -> Vec<Flag> {
    judge_of(None, left)
}

/// The same, about a drink that somebody named.
pub fn judge_of(typed: Option<&str>, left: LeftOfTen) -> Vec<Flag> {
    let flow = read(left);
    let rule = match flow {
        Flow::Level(_) => &rules::FLOW_LEVEL,
        Flow::Border(..) => &rules::FLOW_BORDER,
        Flow::None => &rules::FLOW_NONE,
    };
    let drink = FlowFact::Drink {
        typed: typed.map(str::to_owned),
        left_tenths: left.0,
        flow,
    };
    let mut flags = vec![rule.flag(Level::Note, Domain::EatingDrinking, drink)];
    if matches!(flow, Flow::Level(_)) {
        let no_diet = FlowFact::NoDiet;
        flags.push(rules::FLOW_NO_DIET.flag(Level::Note, Domain::EatingDrinking, no_diet));
    }
    flags
}
