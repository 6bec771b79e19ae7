//! One examination as it stands: everything the rules look at.

use std::collections::BTreeMap;

use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::gate::GateAnswers;
use crate::clinical::findings::go_on::{GoOn, WentOn};
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::moment::Moment;
use crate::clinical::findings::oral::{Found, Oral};
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::norms::Who;
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::person::{Age, Language, Sex};
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::screen::ScreenId;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::measure::time::{Millis, Stamp};

pub use crate::clinical::findings::ended::EndedEarly;

/// Everything the rules look at.
#[derive(Clone, Debug, Default)]
pub struct Exam {
    /// Age, if given.
    pub age: Option<Age>,
    /// Sex, if given.
    pub sex: Option<Sex>,
    /// Language spoken in speech tasks, if given.
    pub language: Option<Language>,
    /// The gate's answers so far.
    pub gate: GateAnswers,
    /// When each of them was given last.
    pub asked: BTreeMap<String, Moment>,
    /// The moment of the newest event.
    pub now: Moment,
    /// The weakness that had been found when somebody said by itself that nothing is new or worse.
    pub weakness_said: Vec<Found>,
    /// Face, mouth and throat.
    pub oral: Oral,
    /// All trials, in the order they were begun.
    pub trials: Vec<Trial>,
    /// What was gone past with a reason.
    pub went_on: Vec<WentOn>,
    /// The same as it stood then, by its key; not there where nothing known had that key.
    pub gone_past: BTreeMap<String, Obstacle<Flag>>,
    /// Set where the visit ended before its screen was through.
    pub ended: Option<EndedEarly>,
    /// Choking was recorded, by a sign button or on its own page.
    pub choked: bool,
    /// Since when each of those recorded on its own page was.
    pub chokings: Vec<Stamp>,
    /// When in the visit the newest of them was recorded.
    pub choking_noted: Option<Moment>,
    /// The person was back to baseline after it.
    pub choking_over: bool,
    /// The voice as it was heard after it, and when.
    pub choking_voice: Option<(&'static str, Moment)>,
    /// New or worse weakness was answered as an emergency, and later otherwise.
    pub emergency_changed: bool,
    /// Records of this visit that are missing or can't be read.
    pub unread: u32,
    /// The policy in force when the visit began.
    pub policy: Policy,
    /// The screen chosen, if one was.
    pub screen: Option<ScreenId>,
    /// Which of the repeated syllables are asked for, in which order.
    pub order: Order,
}

impl Exam {
    /// The person, as far as published values go by it.
    pub fn who(&self) -> Who<'static> {
        Who {
            age: self.age,
            sex: self.sex,
            language: self.language.map(Language::tag),
        }
    }

    /// The newest trial of a task.
    pub fn latest(&self, task: TaskId) -> Option<&Trial> {
        self.trials.iter().rev().find(|t| t.task == task)
    }

    /// The newest trial of a task that was started: a sign is its.
    pub fn latest_started(&self, task: TaskId) -> Option<&Trial> {
        self.trials
            .iter()
            .rev()
            .find(|t| t.task == task && t.start().is_some())
    }

    /// Whether a task belongs to the screen chosen.
    pub fn on_screen(&self, task: TaskId) -> bool {
        self.screen
            .is_some_and(|id| id.screen().tasks.contains(&task))
    }

    /// Whether nothing is to be given by mouth for another reason than waiting for this screen.
    pub fn fasts(&self) -> bool {
        let order = self.gate.0.get("nothing-by-mouth");
        order.is_some_and(|answer| answer == "other-reason")
    }

    /// Whether a plan to eat and drink with acknowledged risks is known of.
    pub fn has_risk_plan(&self) -> bool {
        self.gate.0.get("risk-plan").is_some_and(|a| a == "plan")
    }

    /// Whether the sign for choking was pressed in any trial, an attached one included.
    pub fn choke_pressed(&self) -> bool {
        self.trials
            .iter()
            .any(|t| t.count_of(MarkKind::Sign(Sign::Choke)) > 0)
    }

    /// When the sign for choking was pressed last.
    pub fn choke_pressed_at(&self) -> Option<Stamp> {
        let signs = self.trials.iter().flat_map(Trial::signs);
        let chokes = signs.filter(|(sign, _)| *sign == Sign::Choke);
        chokes.last().map(|(_, at)| at)
    }

    /// When each choking was, by the wall clock: what tells one from the next.
    pub fn choked_at(&self) -> Vec<Millis> {
        let signs = self.trials.iter().flat_map(Trial::signs);
        let pressed = signs.filter(|(sign, _)| *sign == Sign::Choke);
        let all = self.chokings.iter().copied();
        all.chain(pressed.map(|(_, at)| at))
            .map(|at| at.wall)
            .collect()
    }

    /// How a thing in the way was gone past, if it was: with a reason, by somebody who may.
    pub fn went_past(&self, what: &Obstacle<Flag>, who_may: GoOn) -> Option<&WentOn> {
        self.went_on(&what.key(), who_may)
    }

    /// The same by its key.
    pub fn went_on(&self, hold: &str, who_may: GoOn) -> Option<&WentOn> {
        self.went_on
            .iter()
            .rev()
            .find(|on| on.hold == hold && on.counts() && who_may.open_to(on.by))
    }
}
