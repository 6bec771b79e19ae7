//! A visit: what stands in it once its events are folded.

use super::envelope::Unreadable;

use super::event::{Details, Plan, Versions};
use super::id::VisitId;
use crate::clinical::findings::exam::{EndedEarly, Exam};
use crate::clinical::findings::moment::Moment;
use crate::clinical::findings::trial::Mark;
use crate::clinical::knowledge::person::{Initials, Role};
use crate::clinical::knowledge::screen::ScreenId;
use crate::measure::time::{Millis, Stamp, elapsed};

mod asked;
mod attached;
mod changes;
mod ending;
mod fold;
mod given;
mod open;
mod reasons;
mod texts;
mod trials;

pub use asked::is_running;
pub use attached::Attached;
pub use open::Open;
pub use texts::{Issue, Stood, Told, stands};

/// The decision as it was recorded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decided {
    /// The verdict's id.
    pub verdict: String,
    /// Versions in force.
    pub versions: Versions,
    /// The policy's name.
    pub policy: String,
}

/// Choking, as it went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choking {
    /// Since when.
    pub since: Stamp,
    /// When help was called.
    pub help: Option<Stamp>,
    /// When it was over.
    pub over: Option<Stamp>,
    /// The voice as it was heard after it, and when.
    pub voice: Option<(&'static str, Moment)>,
    /// When in the visit it was recorded.
    pub noted: Moment,
}

impl Choking {
    /// For so long after its press it can still be called a slip.
    pub(super) const SLIP: Millis = Millis::from_secs(120);

    /// One of which only the press is known.
    pub const fn since(since: Stamp, noted: Moment) -> Choking {
        Choking {
            since,
            help: None,
            over: None,
            voice: None,
            noted,
        }
    }

    /// Whether it may have been pressed by mistake: just now, and nothing was recorded of it since.
    /// Later, a slip on the way to its page would take a real one back.
    pub fn may_be_a_slip(&self, now: Stamp) -> bool {
        self.help.is_none() && self.over.is_none() && self.began_within(Choking::SLIP, now)
    }

    /// Whether one that comes now may be another: this one began a while ago, and nobody marked its
    /// end.
    pub fn may_hide_another(&self, now: Stamp) -> bool {
        // Not at once: what calls it a slip stood in the same place.
        let a_while = Choking::SLIP + Millis::from_secs(5);
        self.over.is_none() && !self.began_within(a_while, now)
    }

    fn began_within(&self, length: Millis, now: Stamp) -> bool {
        let so_far = elapsed(self.since, now, true).length;
        so_far.is_some_and(|so_far| so_far < length)
    }
}

/// An end before the screen was through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Break {
    /// Why.
    pub why: EndedEarly,
    /// When, by the wall clock.
    pub at: Millis,
    /// When it was taken up again.
    pub again: Option<Millis>,
}

/// Events that could not be read: set aside, still in the store.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// The record as it stands, as text.
    pub raw: String,
    /// Why.
    pub why: Unreadable,
}

/// A visit as it stands.
#[derive(Clone, Debug)]
pub struct Visit {
    /// Its id.
    pub id: VisitId,
    /// The next event's sequence number.
    pub next: u32,
    /// When it was begun, by the wall clock.
    pub opened: Millis,
    /// When something last happened, by the wall clock.
    pub touched: Millis,
    /// When something was first looked at, asked or pressed in an examination, by the wall clock.
    pub seen_first: Millis,
    /// When something was last looked at, asked or pressed in an examination, by the wall clock.
    pub seen: Millis,
    /// Person and place.
    pub details: Option<Details>,
    /// The screen chosen.
    pub screen: Option<ScreenId>,
    /// Who holds the phone.
    pub role: Role,
    /// By these initials, where they were asked for.
    pub initials: Option<Initials>,
    /// Everything the rules look at.
    pub exam: Exam,
    /// Ends before the screen was through, oldest first.
    pub breaks: Vec<Break>,
    /// Chokings, oldest first.
    pub chokings: Vec<Choking>,
    /// When last well, in an emergency.
    pub last_well: String,
    /// The plan for the handover.
    pub plan: Plan,
    /// The decision as last recorded.
    pub decided: Option<Decided>,
    /// Texts that left, oldest first.
    pub issued: Vec<Issue>,
    /// Who was told.
    pub told: Vec<Told>,
    /// Answers that were changed.
    changes: given::Changes,
    /// Counts that were attached, oldest first, those that were detached again among them.
    pub attached: Vec<Attached>,
    /// Signs that were given to the other trial: from, to, and the mark.
    moved: Vec<(u32, u32, Mark)>,
    /// Whether anything was pressed or answered after the decision was recorded.
    pub pressed_since_decided: bool,
    /// How an earlier refer or stop was closed, and what was open then.
    pub closed: Option<(String, Vec<Open>)>,
    /// The visit this loose count was attached to.
    pub attached_to: Option<VisitId>,
    /// Only a tombstone is left.
    pub deleted: bool,
    /// What could not be read.
    pub aside: Vec<Aside>,
    /// How many events there were when its head last had to be worked out anew: since then things
    /// were only counted in a trial that runs.
    pub(in crate::record) weighed: u32,
}

impl Visit {
    /// A visit in which nothing has happened.
    pub fn new(id: VisitId) -> Visit {
        Visit {
            id,
            next: 0,
            opened: Millis::ZERO,
            touched: Millis::ZERO,
            seen_first: Millis::ZERO,
            seen: Millis::ZERO,
            details: None,
            screen: None,
            role: Role::default(),
            initials: None,
            exam: Exam::default(),
            breaks: Vec::new(),
            chokings: Vec::new(),
            last_well: String::new(),
            plan: Plan::default(),
            decided: None,
            issued: Vec::new(),
            told: Vec::new(),
            changes: given::Changes::default(),
            attached: Vec::new(),
            moved: Vec::new(),
            pressed_since_decided: false,
            closed: None,
            attached_to: None,
            deleted: false,
            aside: Vec::new(),
            weighed: 0,
        }
    }
}
