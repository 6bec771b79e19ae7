//! Facts about what is asked before anything is given.

use serde::Serialize;

use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::go_on::GonePast;
use crate::clinical::findings::oral::Found;
use crate::clinical::knowledge::gate_items::{Exception, Group, Item};

/// What a rule says about what is asked before anything is given.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum GateFact {
    /// An item does not hold.
    Excepted {
        /// The item.
        item: &'static Item,
        /// What is the case instead.
        exception: &'static Exception,
        /// Who went on past it.
        gone_past: Option<GonePast>,
    },
    /// The examination shows that an item does not hold which was said to.
    Against {
        /// The item.
        item: &'static Item,
        /// What was found.
        found: Found,
        /// Who went on past it.
        gone_past: Option<GonePast>,
    },
    /// Items of a group were not asked.
    NotAsked {
        /// The group.
        group: Group,
        /// How many.
        open: usize,
    },
    /// Something was given on answers that were missing or too old.
    BegunOn(Vec<Answered>),
    /// Weakness was found, and nobody said whether it is new or worse.
    WeaknessNotSaid,
    /// Nobody was asked whether a weakness is new or worse.
    WeaknessNotAsked,
}
