//! The one reading of a trial by mouth: what was pressed and answered, for every task to judge.

use crate::clinical::findings::fact::{SeenSign, Unwatched, Voice, WatchCut, WhyNot};
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::tasks::by_mouth::questions::{
    CUP, EMPTY, IN_ONE_GO, PAUSED, REMAINING, TIMED_CUP, TIMED_LEFT, VOICE_AFTER, VOICE_BEFORE,
    WATCHED, WATCHED_ALL,
};
use crate::clinical::tasks::by_mouth::within::{WATCH, is_unsure, seen};
use crate::clinical::tasks::spec::{NOT_VALID, WATCH_CUT, watch_cut};
use crate::measure::time::{Doubt, Elapsed, Millis, Stamp};

/// So much of a watch may be hidden and it is one all the same: a look at another page (local
/// policy).
const HIDDEN_AT_MOST: Millis = Millis::from_secs(5);

/// How a cup ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cup {
    /// Empty, without a pause.
    InOneGo,
    /// Empty, with a pause.
    Paused,
    /// Empty, whether with a pause or without.
    Empty,
    /// Some left; mL, if measured.
    Left(Option<f64>),
}

/// How the watch went.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Watch {
    /// Not begun: the end was not pressed.
    NotBegun,
    /// Still running, or the page never saw its end.
    Running,
    /// The whole 60 seconds.
    Whole,
    /// Ended early.
    Cut(WatchCut),
}

/// What a trial by mouth yields.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// When it was begun.
    pub start: Option<Stamp>,
    /// When it ended: by its own press, or with the screen.
    pub end: Option<Stamp>,
    /// Ended with the screen: the last swallow was not marked, the watch runs from the stop.
    pub stopped: bool,
    /// From the start to the end's own press.
    pub drinking: Option<Elapsed>,
    /// Swallows tapped.
    pub swallows: usize,
    /// How the cup ended.
    pub cup: Option<Cup>,
    /// The watch after the end.
    pub watch: Watch,
    /// Somebody ended the watch early, whatever the clock says of it.
    pub watch_cut: bool,
    /// What speaks against the watch's time.
    pub watch_doubt: Option<Doubt>,
    /// The watch was not on the screen, or not all of it.
    pub unseen: bool,
    /// What is missing then.
    pub unwatched: Option<Unwatched>,
    /// The signs that were pressed, in order.
    pub pressed: Vec<SeenSign>,
    /// Signs that were taken back long after their press, and how long after.
    pub taken_back: Vec<(Sign, Option<Millis>)>,
    /// Voice before.
    pub before: Option<Voice>,
    /// Voice after.
    pub after: Option<Voice>,
    /// Why it was not given.
    pub not_given: Option<WhyNot>,
}

impl Reading {
    /// Reads a trial.
    pub fn of(trial: &Trial) -> Reading {
        let start = trial.start();
        let end = trial.end();
        let over = trial.first(MarkKind::WatchOver);
        let watch_doubt = end
            .zip(over)
            .and_then(|(end, over)| trial.doubt_over(end, WATCH, over));
        let unseen = unseen(watch_doubt);
        Reading {
            start,
            end,
            stopped: trial.is_stopped(),
            drinking: start
                .zip(trial.end_pressed())
                .map(|(start, end)| trial.between(start, end)),
            swallows: trial.taps(),
            cup: cup(trial),
            watch: watch(trial, end, over),
            watch_cut: watch_cut(trial),
            watch_doubt,
            unseen,
            unwatched: unwatched(trial).filter(|_| unseen),
            pressed: trial
                .signs()
                .map(|(sign, at)| SeenSign {
                    sign,
                    seen: seen(trial, at),
                })
                .collect(),
            taken_back: trial.taken_back.clone(),
            before: trial.choice(VOICE_BEFORE).map(Voice::of),
            after: trial.choice(VOICE_AFTER).map(Voice::of),
            not_given: trial.choice(NOT_VALID).map(|id| WhyNot(id.to_owned())),
        }
    }

    /// The signs, a voice that was heard to have changed among them.
    pub fn signs(&self) -> Vec<SeenSign> {
        let mut signs = self.pressed.clone();
        // One that was pressed late is told as late, and takes nothing from what was answered.
        let pressed = signs
            .iter()
            .any(|s| s.sign == Sign::VoiceChange && !s.is_late());
        if self.voice_changed() && !pressed {
            signs.push(SeenSign::at_once(Sign::VoiceChange));
        }
        signs
    }

    /// Whether the voice after is not clear and was not so before.
    pub fn voice_changed(&self) -> bool {
        self.after
            .is_some_and(|after| self.before != Some(after) && after.is_changed())
    }

    /// Whether there was no voice before: then nobody can hear whether it changed.
    pub fn is_voiceless(&self) -> bool {
        self.before == Some(Voice::Absent)
    }

    /// Whether the watch was kept to its end, and nobody ended it early.
    pub fn was_watched(&self) -> bool {
        self.watch == Watch::Whole && !self.watch_cut
    }
}

fn cup(trial: &Trial) -> Option<Cup> {
    if let Some(id) = trial.choice(CUP) {
        return Some(match id {
            IN_ONE_GO => Cup::InOneGo,
            PAUSED => Cup::Paused,
            _ => Cup::Left(trial.number(REMAINING)),
        });
    }
    trial.choice(TIMED_CUP).map(|id| match id {
        EMPTY => Cup::Empty,
        _ => Cup::Left(trial.number(TIMED_LEFT)),
    })
}

fn watch(trial: &Trial, end: Option<Stamp>, over: Option<Stamp>) -> Watch {
    match (end, over) {
        (None, _) => Watch::NotBegun,
        (Some(end), Some(over)) => match trial.between(end, over).length {
            Some(watched) if watched >= WATCH => Watch::Whole,
            Some(_) => Watch::Running,
            None => Watch::Cut(WatchCut::LengthNotKnown),
        },
        (Some(_), None) if watch_cut(trial) => {
            Watch::Cut(WatchCut::Said(trial.choice(WATCH_CUT).map(str::to_owned)))
        }
        (Some(_), None) => Watch::Running,
    }
}

/// Whether a watch was not on the screen: the app was hidden for more than a moment of it, or was off
/// or slept, and nobody knows for how long.
fn unseen(doubt: Option<Doubt>) -> bool {
    match doubt {
        Some(Doubt::Hidden(so_long) | Doubt::Slept(so_long)) => so_long > HIDDEN_AT_MOST,
        doubt => is_unsure(doubt),
    }
}

/// What was said of a watch whose end was not seen.
fn unwatched(trial: &Trial) -> Option<Unwatched> {
    match trial.choice(WATCHED) {
        Some(WATCHED_ALL) => None,
        Some(_) => Some(Unwatched::Not),
        None => Some(Unwatched::NotSaid),
    }
}
