//! Local policy: every design choice that an organisation may set otherwise.
//!
//! Published figures are not in here. The policy used is stored with every visit and named in its
//! handover.

use serde::{Deserialize, Serialize};

/// The settings, with the values Penlight ships.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Policy {
    /// Name and version, as the handover gives it.
    pub name: String,
    /// A wet or hoarse voice after the water that was not there before is a reason to refer.
    /// Sources differ: the first rule has it, a later one drops it.
    pub voice_refers: bool,
    /// Not following one-step requests closes the gate. Sources differ: one hospital list blocks,
    /// a large study only raises the odds.
    pub requests_block: bool,
    /// Breaths per minute at or below which no water is offered (adults).
    pub breaths_low: u16,
    /// Breaths per minute at or above which no water is offered (adults).
    pub breaths_high: u16,
    /// SpO2 in percent at or below which no water is offered, where no own target is prescribed.
    pub spo2_low: u16,
    /// Youngest age in years for the dry-swallow count: its studies are in adults.
    pub dry_swallow_from_years: u8,
}

impl Default for Policy {
    fn default() -> Policy {
        Policy {
            name: "Penlight default 1".to_owned(),
            voice_refers: true,
            requests_block: false,
            breaths_low: 8,
            breaths_high: 25,
            spo2_low: 91,
            dry_swallow_from_years: 16,
        }
    }
}
