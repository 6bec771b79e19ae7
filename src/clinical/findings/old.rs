//! An answer that is too old for a trial by mouth.

use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::moment::Moment;
use crate::clinical::knowledge::gate_items::Group;
use crate::clinical::knowledge::policy::Policy;
use crate::measure::time::Millis;

/// How long an answer stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// So many minutes.
    Minutes(i32),
    /// So many hours.
    Hours(i32),
}

impl Stands {
    /// What is a state of the moment.
    pub fn of_the_moment(policy: &Policy) -> Stands {
        Stands::Minutes(policy.ready_minutes)
    }

    /// A group of the gate. How somebody breathes and whether a mask is on is as much of the moment
    /// as whether he is awake; orders, and who lies in the bed, change from shift to shift.
    pub fn of_group(group: Group, policy: &Policy) -> Stands {
        match group {
            Group::Person | Group::Orders => Stands::Hours(policy.orders_hours),
            Group::Airway | Group::Ready => Stands::of_the_moment(policy),
        }
    }

    fn length(self) -> Millis {
        match self {
            Stands::Minutes(n) => Millis::from_secs(i64::from(n) * 60),
            Stands::Hours(n) => Millis::from_secs(i64::from(n) * 3_600),
        }
    }
}

/// What is too old for a trial by mouth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Old {
    /// What was asked or heard.
    pub what: Answered,
    /// The trial whose voice before it is.
    pub trial: Option<u32>,
    /// When it was given.
    pub at: Moment,
    /// It is older than this; none where nobody knows how old it is.
    pub older_than: Option<Stands>,
}

impl Old {
    /// An answer given at a moment, where it is too old by now.
    pub fn new(what: Answered, at: Moment, now: Moment, stands: Stands) -> Option<Old> {
        at.is_older(now, stands.length()).then(|| Old {
            what,
            trial: None,
            at,
            older_than: at.is_known_at(now).then_some(stands),
        })
    }

    /// Who may go on with it as it is.
    pub fn who_may_go_on(&self) -> GoOn {
        match self.what {
            Answered::Group(_) | Answered::Voice => GoOn::Never,
            Answered::Breaths => GoOn::SlpWithReason,
            Answered::Saturation => GoOn::WithReason,
        }
    }
}
