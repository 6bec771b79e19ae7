//! How thick a drink is: what is left of 10 mL in a syringe after 10 seconds.
//!
//! The bands are those of the international framework, unchanged, and so are its names
//! ([`crate::clinical::knowledge::levels`]). A level is that of a drink, never what a person is to be given.

use std::fmt;

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::levels;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::measure::decimals::decimals;

/// What is left of 10 mL, in whole tenths of a millilitre, 0 to 100: lines at whole millilitres
/// must be met exactly.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LeftOfTen(u8);

/// Less than nothing or more than 10 mL is left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OutOfRange;

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("What is left of 10 mL is from 0 to 10 mL: please check.")
    }
}

impl std::error::Error for OutOfRange {}

impl LeftOfTen {
    /// So many tenths of a millilitre.
    ///
    /// # Errors
    /// [`OutOfRange`] outside 0 to 100.
    pub fn tenths(tenths: i32) -> Result<LeftOfTen, OutOfRange> {
        match u8::try_from(tenths) {
            Ok(tenths @ 0..=100) => Ok(LeftOfTen(tenths)),
            _ => Err(OutOfRange),
        }
    }

    /// The bare number of millilitres.
    pub fn get(self) -> f64 {
        f64::from(self.0) / 10.0
    }
}

/// What the test says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Flow {
    /// A level, 0 to 3.
    Level(u8),
    /// On the border of two levels, the lower and the higher: repeat.
    Border(u8, u8),
    /// Nothing flowed: the test does not apply.
    None,
}

/// Reads the test (bands: IDDSI-B, IDDSI-S).
pub fn read(left: LeftOfTen) -> Flow {
    match left.0 {
        0..10 => Flow::Level(0),
        10..40 => Flow::Level(1),
        40 => Flow::Border(1, 2),
        41..80 => Flow::Level(2),
        80 => Flow::Border(2, 3),
        81..100 => Flow::Level(3),
        100.. => Flow::None,
    }
}

/// What the rules say about a drink. Notes only: a drink decides nothing about a person.
pub fn judge(left: LeftOfTen) -> Vec<Flag> {
    judge_of(None, left)
}

/// The same, about a drink with a name.
pub fn judge_of(drink: Option<&str>, left: LeftOfTen) -> Vec<Flag> {
    let named = drink.map_or_else(String::new, |drink| format!("{drink}: "));
    let note =
        |rule: &'static Rule, words: String| rule.flag(Level::Note, Domain::EatingDrinking, words);
    let ml = decimals(left.get(), 1);
    let name = |level| levels::drink(level).unwrap_or("not known");
    match read(left) {
        Flow::Level(level) => vec![
            note(
                &rules::FLOW_LEVEL,
                format!(
                    "{named}this drink flows like level {}: {ml} mL of 10 left after 10 seconds",
                    name(level)
                ),
            ),
            note(
                &rules::FLOW_NO_DIET,
                "the drink was measured; which level a person is given is the clinician's to say"
                    .to_owned(),
            ),
        ],
        Flow::Border(lower, higher) => vec![note(
            &rules::FLOW_BORDER,
            format!(
                "{named}{ml} mL of 10 left after 10 seconds is the border of level {} and level {}: repeat \
                 the test",
                name(lower),
                name(higher)
            ),
        )],
        Flow::None => vec![note(
            &rules::FLOW_NONE,
            format!(
                "{named}nothing of 10 mL flowed in 10 seconds: this test does not apply; for level {} \
                 confirm with fork drip and spoon tilt",
                name(4)
            ),
        )],
    }
}
