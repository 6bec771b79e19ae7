//! The marks of a trial: its presses and the ends of its times.

use std::fmt;
use std::ops::{Deref, DerefMut};

use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::sign::Sign;
use crate::measure::time::Stamp;

/// A thing counted beside the plain taps of a trial.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Counted {
    /// Chewed once.
    Chew,
    /// Swallowed.
    Swallow,
    /// Breathed in.
    Breath,
    /// The other thing, on the right one of two pads.
    Other,
    /// A remark in words, kept as an answer under its own time, see `note_id`.
    Note,
}

/// What a press on the pad, or the end of a time, stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum MarkKind {
    /// The time starts: "go", or the first lip contact.
    Start,
    /// One thing counted.
    Tap,
    /// A sign was seen.
    Sign(Sign),
    /// Ended by a press: the last swallow, "stop".
    End,
    /// The window ran out.
    WindowOver,
    /// The watch after the end ran out.
    WatchOver,
    /// One thing counted beside the plain taps.
    Count(Counted),
    /// Ended with the screen, which somebody ended while the time ran: not by its own press.
    Stopped,
}

impl MarkKind {
    /// Whether somebody pressed for it: only such a mark can be undone.
    pub fn pressed(self) -> bool {
        !matches!(self, MarkKind::WindowOver | MarkKind::WatchOver)
    }
}

/// One time-stamped press (or end of a time).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mark {
    /// When.
    pub at: Stamp,
    /// What.
    pub kind: MarkKind,
}

/// The marks of a trial, in the order they were recorded, undone ones gone.
///
/// A long meal has thousands, and every press asks for the start, the end and the counts: those are
/// kept beside the marks as they come. **Invariant:** they are what a look through all marks finds;
/// whoever changes the marks in another way than by adding one drops them, and the next mark that
/// is added brings them back.
#[derive(Clone, Default)]
pub struct Marks {
    all: Vec<Mark>,
    kept: Kept,
}

/// The marks of one kind in short.
#[derive(Clone, Copy)]
struct OfKind {
    kind: MarkKind,
    first: Stamp,
    count: usize,
}

/// What is kept of each kind of which there is a mark; none where it was dropped.
#[derive(Clone)]
struct Kept(Option<Vec<OfKind>>);

impl Default for Kept {
    fn default() -> Kept {
        Kept(Some(Vec::new()))
    }
}

impl Marks {
    /// The first mark of a kind.
    pub fn first_of(&self, kind: MarkKind) -> Option<Stamp> {
        match &self.kept.0 {
            Some(kinds) => kinds.iter().find(|of| of.kind == kind).map(|of| of.first),
            None => self.all.iter().find(|m| m.kind == kind).map(|m| m.at),
        }
    }

    /// How many marks of a kind there are.
    pub fn count_of(&self, kind: MarkKind) -> usize {
        match &self.kept.0 {
            Some(kinds) => kinds
                .iter()
                .find(|of| of.kind == kind)
                .map_or(0, |of| of.count),
            None => self.all.iter().filter(|m| m.kind == kind).count(),
        }
    }

    /// How many of them somebody pressed.
    pub fn pressed(&self) -> usize {
        let by_time = self.count_of(MarkKind::WindowOver) + self.count_of(MarkKind::WatchOver);
        self.all.len() - by_time
    }

    /// Adds one.
    pub fn push(&mut self, mark: Mark) {
        let mut kinds = self.kept.0.take().unwrap_or_else(|| in_short(&self.all));
        note(&mut kinds, mark);
        self.kept = Kept(Some(kinds));
        self.all.push(mark);
    }
}

fn in_short(marks: &[Mark]) -> Vec<OfKind> {
    let mut kinds = Vec::new();
    for mark in marks {
        note(&mut kinds, *mark);
    }
    kinds
}

fn note(kinds: &mut Vec<OfKind>, Mark { at, kind }: Mark) {
    match kinds.iter_mut().find(|of| of.kind == kind) {
        Some(of) => of.count += 1,
        None => kinds.push(OfKind {
            kind,
            first: at,
            count: 1,
        }),
    }
}

impl Deref for Marks {
    type Target = Vec<Mark>;

    fn deref(&self) -> &Vec<Mark> {
        &self.all
    }
}

impl DerefMut for Marks {
    fn deref_mut(&mut self) -> &mut Vec<Mark> {
        self.kept = Kept(None);
        &mut self.all
    }
}

impl From<Vec<Mark>> for Marks {
    fn from(all: Vec<Mark>) -> Marks {
        let kept = Kept(Some(in_short(&all)));
        Marks { all, kept }
    }
}

impl<'a> IntoIterator for &'a Marks {
    type Item = &'a Mark;
    type IntoIter = std::slice::Iter<'a, Mark>;

    fn into_iter(self) -> Self::IntoIter {
        self.all.iter()
    }
}

impl PartialEq for Marks {
    fn eq(&self, other: &Marks) -> bool {
        self.all == other.all
    }
}

impl Eq for Marks {}

impl fmt::Debug for Marks {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.all.fmt(f)
    }
}
