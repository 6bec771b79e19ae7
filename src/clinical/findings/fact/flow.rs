//! Facts about how thick a drink is.

use serde::Serialize;

/// What a rule says about how thick a drink is.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum FlowFact {
    /// A drink was measured.
    Drink {
        /// What it was, as somebody typed it.
        typed: Option<String>,
        /// What was left of 10 mL, in tenths of a millilitre.
        left_tenths: u8,
        /// What that says.
        flow: Flow,
    },
    /// The drink was measured, and nothing is said of what anybody is to be given.
    NoDiet,
}

/// What the test says of a drink.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Flow {
    /// A level, 0 to 3.
    Level(u8),
    /// On the border of two levels, the lower and the higher: repeat.
    Border(u8, u8),
    /// Nothing flowed: the test does not apply.
    None,
}
