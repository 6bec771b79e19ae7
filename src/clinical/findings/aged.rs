//! What was asked, counted, read or heard, and can grow too old for a trial by mouth.

use crate::clinical::findings::go_on::GoOn;
use crate::clinical::knowledge::gate_items::Group;
use crate::measure::time::Millis;

/// What can grow too old.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aged {
    /// The answers of a group of the gate.
    Group(Group),
    /// The breaths that were counted.
    Breaths,
    /// The oxygen saturation that was read.
    Saturation,
    /// The voice before a trial that is made ready.
    Voice,
}

impl Aged {
    /// Who may go on with it as it is.
    pub fn who_may_go_on(self) -> GoOn {
        match self {
            Aged::Group(_) | Aged::Voice => GoOn::Never,
            Aged::Breaths => GoOn::SlpWithReason,
            Aged::Saturation => GoOn::WithReason,
        }
    }
}

/// How long it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Span {
    /// So many minutes.
    Minutes(i32),
    /// So many hours.
    Hours(i32),
}

impl Span {
    /// Its length.
    pub fn length(self) -> Millis {
        match self {
            Span::Minutes(n) => Millis::from_secs(i64::from(n) * 60),
            Span::Hours(n) => Millis::from_secs(i64::from(n) * 3_600),
        }
    }
}

/// One that is too old.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Old {
    /// What.
    pub what: Aged,
    /// When it was asked, counted, read or heard, by the wall clock.
    pub at: Millis,
    /// The time it stands for, which is over; none where nobody knows how long ago it was.
    pub longer_than: Option<Span>,
}
