//! Going on past what is in the way: who may, and who did.

use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::person::{Initials, Role};

/// Who may go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GoOn {
    /// Nobody.
    Never,
    /// A speech-language pathologist, with a stated reason.
    SlpWithReason,
    /// Whoever holds the phone, with a stated reason.
    WithReason,
}

impl GoOn {
    /// Whether this person may.
    pub fn open_to(self, role: Role) -> bool {
        match self {
            GoOn::Never => false,
            GoOn::SlpWithReason => role == Role::Slp,
            GoOn::WithReason => true,
        }
    }
}

/// Why somebody went on, as it was picked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Ground {
    /// The team knows: answers whether weakness is new, and nobody asks again.
    TeamKnows,
    /// The team agreed.
    TeamAgreed,
    /// Needed for the assessment.
    Needed,
    /// The person's informed wish.
    InformedWish,
    /// Low risk in the judgement of whoever goes on.
    LowRisk,
    /// A child's reading fits the local chart.
    FitsChart,
    /// Typed.
    OwnWords,
}

impl Ground {
    /// Those offered for everything, in order.
    pub const ALL: [Ground; 5] = [
        Ground::TeamKnows,
        Ground::TeamAgreed,
        Ground::Needed,
        Ground::InformedWish,
        Ground::LowRisk,
    ];
}

/// Going on past what is in the way, with the reason given for it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WentOn {
    /// What was gone past: its key, see [`crate::clinical::findings::in_the_way`].
    pub hold: String,
    /// Why, as it was picked; none in records of earlier versions.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ground: Option<Ground>,
    /// The stated reason, in the words that were picked or typed.
    pub because: String,
    /// Who took it on.
    pub by: Role,
    /// By these initials; none in records of earlier versions, and of a trained screener.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub initials: Option<Initials>,
    /// What was gone past, in the words that stood there, where an earlier version kept them.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub says: String,
    /// What was gone past stood otherwise since: come again, it is asked for anew.
    #[serde(skip)]
    pub lapsed: bool,
    /// The trials that were started after it, by number: what it led to.
    #[serde(skip)]
    pub led_to: Vec<u32>,
}

impl WentOn {
    /// Whether it speaks for its hold: with a reason, for what stands since it was given.
    pub fn counts(&self) -> bool {
        !self.lapsed && !self.because.trim().is_empty()
    }

    /// Why, as it was picked. Earlier versions stored its words alone.
    pub fn picked(&self) -> Option<Ground> {
        let by_words = (self.because == "the team knows").then_some(Ground::TeamKnows);
        self.ground.or(by_words)
    }

    /// Who decided it, and why, for what is said of it.
    pub fn gone_past(&self) -> GonePast {
        GonePast {
            by: self.by,
            initials: self.initials.clone(),
            because: self.because.clone(),
        }
    }
}

/// That something in the way was gone past.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct GonePast {
    /// Who decided it.
    pub by: Role,
    /// By these initials, where they were asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub initials: Option<Initials>,
    /// The stated reason, as it was picked or typed.
    pub because: String,
}
