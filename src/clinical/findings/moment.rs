//! Where a visit stands in time.

use crate::measure::time::{Doubt, Millis, Stamp, elapsed};

/// Where a visit stands in time: what passed between its events, summed, so that a clock set back
/// on the way takes nothing from it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Moment {
    /// By both clocks.
    pub at: Stamp,
    passed: Millis,
    /// How often a time on the way could not be known.
    gaps: u32,
    /// How many events came before it.
    order: u32,
}

/// A clock set back by more may hide that the phone slept.
const SET_BACK: Millis = Millis::from_secs(-60);

impl Moment {
    /// The moment of the next event.
    pub fn next(self, at: Stamp) -> Moment {
        let since = elapsed(self.at, at, true);
        let length = match since.doubt {
            Some(Doubt::ClockSet(by)) if by < SET_BACK => None,
            _ => since.length,
        };
        // A stamp taken before the one that was written first.
        if length.is_some_and(|length| length < Millis::ZERO) {
            return Moment {
                order: self.order + 1,
                ..self
            };
        }
        Moment {
            at,
            passed: self.passed + length.unwrap_or_default(),
            gaps: self.gaps + u32::from(length.is_none()),
            order: self.order + 1,
        }
    }

    /// One of another visit, or of which nobody knows when it was.
    pub fn of_elsewhere(self, at: Option<Stamp>) -> Moment {
        let at = at.unwrap_or_default();
        let ago = elapsed(at, self.at, true).length;
        let ago = ago.filter(|ago| *ago >= Millis::ZERO && at != Stamp::default());
        Moment {
            at,
            passed: self.passed - ago.unwrap_or_default(),
            gaps: if ago.is_some() { self.gaps } else { u32::MAX },
            // Nobody knows what it came after.
            order: 0,
        }
    }

    /// Whether more than `limit` lies between this and a later moment, or nobody knows.
    pub fn is_older(self, now: Moment, limit: Millis) -> bool {
        !self.is_known_at(now) || now.passed - self.passed > limit
    }

    /// Whether it is known how long before a later moment it was.
    pub fn is_known_at(self, now: Moment) -> bool {
        self.gaps == now.gaps
    }

    /// Whether it was recorded after another of its visit, whatever the clocks say.
    pub fn is_after(self, other: Moment) -> bool {
        self.order > other.order
    }

    /// The earlier of two.
    pub fn earlier(self, other: Moment) -> Moment {
        if (self.gaps, self.passed) < (other.gaps, other.passed) {
            self
        } else {
            other
        }
    }
}
