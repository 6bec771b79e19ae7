//! One attempt at one task: its presses and its answers, as they were given.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::marks::Marks;
pub use crate::clinical::findings::marks::{Mark, MarkKind};
use crate::clinical::findings::moment::Moment;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::measure::time::{Doubt, Elapsed, Millis, Stamp, elapsed};

/// An answer to one of a task's questions.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Answer {
    /// The id of one of the offered choices.
    Choice(String),
    /// A number in tenths of the question's unit.
    Tenths(i32),
    /// Free words.
    Words(String),
}

impl Answer {
    /// The choice's id, if it is one.
    pub fn choice(&self) -> Option<&str> {
        match self {
            Answer::Choice(id) => Some(id),
            _ => None,
        }
    }

    /// The number, if it is one.
    pub fn number(&self) -> Option<f64> {
        match self {
            Answer::Tenths(n) => Some(f64::from(*n) / 10.0),
            _ => None,
        }
    }
}

/// The name under which the moment of the start is kept among those of the answers.
pub const STARTED: &str = "";

/// One attempt at a task.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trial {
    /// Which task.
    pub task: TaskId,
    /// Its number within the visit, from 0.
    pub number: u32,
    /// The window's length where the person at the phone chose it.
    pub length: Option<Millis>,
    /// Presses in the order they were recorded, undone ones gone.
    pub marks: Marks,
    /// Signs that were taken back long after their press, and how long after; none where that
    /// can't be known.
    pub taken_back: Vec<(Sign, Option<Millis>)>,
    /// Times during which the page was out of sight.
    pub hidden: Vec<(Stamp, Stamp)>,
    /// Answers by question id; the last one given counts.
    pub answers: BTreeMap<String, Answer>,
    /// The SpO2 that stood when it was started, in tenths of a percent. A reading may be typed over
    /// later; what the trial began with is not.
    pub spo2_before: Option<i32>,
    /// When each question was answered last, and when it was started.
    pub said_at: BTreeMap<String, Moment>,
    /// What was missing or too old when it was started.
    pub begun_on: Vec<Answered>,
}

impl Trial {
    /// A trial in which nothing has happened yet.
    pub fn new(task: TaskId, number: u32, length: Option<Millis>) -> Trial {
        Trial {
            task,
            number,
            length,
            marks: Marks::default(),
            taken_back: Vec::new(),
            hidden: Vec::new(),
            answers: BTreeMap::new(),
            spo2_before: None,
            said_at: BTreeMap::new(),
            begun_on: Vec::new(),
        }
    }

    /// The first mark of a kind.
    pub fn first(&self, kind: MarkKind) -> Option<Stamp> {
        self.marks.first_of(kind)
    }

    /// When it started.
    pub fn start(&self) -> Option<Stamp> {
        self.first(MarkKind::Start)
    }

    /// When in its visit it was started.
    pub fn started_at(&self) -> Option<Moment> {
        let start = self.said_at.get(STARTED).copied();
        start.filter(|_| self.start().is_some())
    }

    /// When it was ended: by its own press, or with the screen.
    pub fn end(&self) -> Option<Stamp> {
        self.end_pressed().or_else(|| self.first(MarkKind::Stopped))
    }

    /// When it was ended by its own press: the end of what is timed.
    pub fn end_pressed(&self) -> Option<Stamp> {
        self.first(MarkKind::End)
    }

    /// Whether it was ended with the screen: what is timed has no end of its own.
    pub fn is_stopped(&self) -> bool {
        self.end_pressed().is_none() && self.first(MarkKind::Stopped).is_some()
    }

    /// The chosen answer to a question.
    pub fn choice(&self, question: &str) -> Option<&str> {
        self.answers.get(question)?.choice()
    }

    /// The number given to a question.
    pub fn number(&self, question: &str) -> Option<f64> {
        self.answers.get(question)?.number()
    }

    /// The signs, in order.
    pub fn signs(&self) -> impl Iterator<Item = (Sign, Stamp)> + '_ {
        self.marks.iter().filter_map(|m| match m.kind {
            MarkKind::Sign(sign) => Some((sign, m.at)),
            _ => None,
        })
    }

    /// How many marks of a kind there are.
    pub fn count_of(&self, kind: MarkKind) -> usize {
        self.marks.count_of(kind)
    }

    /// How many taps there are, inside or outside any window.
    pub fn taps(&self) -> usize {
        self.count_of(MarkKind::Tap)
    }

    /// The time between two of this trial's points, with what is known against it.
    pub fn between(&self, from: Stamp, to: Stamp) -> Elapsed {
        let hidden = self.hidden_between(from, to);
        let mut time = elapsed(from, to, hidden > Millis::ZERO);
        if time.doubt.is_none() && hidden > Millis::ZERO {
            time.doubt = Some(Doubt::Hidden(hidden));
        }
        time
    }

    /// Offsets of all taps from the start. Empty where it never started, and without a tap whose
    /// distance can't be known.
    pub fn tap_offsets(&self) -> Vec<Millis> {
        self.offsets_of(MarkKind::Tap)
    }

    /// Offsets of all marks of a kind from the start, without one whose distance can't be known.
    pub fn offsets_of(&self, kind: MarkKind) -> Vec<Millis> {
        let Some(start) = self.start() else {
            return Vec::new();
        };
        self.marks
            .iter()
            .filter(|m| m.kind == kind)
            .filter_map(|m| self.between(start, m.at).length)
            .collect()
    }

    /// What speaks against a time of this length from `from`, whose end was noticed at `noticed`.
    ///
    /// Only what falls into the time itself counts against it, but for a restart or a sleep up to
    /// the moment its end was noticed: then nobody knows what the page would have seen.
    pub fn doubt_over(&self, from: Stamp, length: Millis, noticed: Stamp) -> Option<Doubt> {
        let within = self.between(from, from.later(length)).doubt;
        within.or_else(|| match self.between(from, noticed).doubt {
            Some(Doubt::Hidden(_)) => None,
            other => other,
        })
    }

    /// The page's time out of sight that falls between two points, by the wall clock.
    fn hidden_between(&self, from: Stamp, to: Stamp) -> Millis {
        self.hidden
            .iter()
            .map(|(gone, back)| {
                let begin = gone.wall.0.max(from.wall.0);
                let end = back.wall.0.min(to.wall.0);
                Millis(end.saturating_sub(begin).max(0))
            })
            .fold(Millis::ZERO, |sum, gap| sum + gap)
    }
}
