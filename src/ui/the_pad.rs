//! A press on the pad: start, then every tap counts.
//!
//! **Invariants:** a tap's time is the event's own stamp, not the moment the handler ran; it is
//! counted on the way down, so nothing that comes after (scroll, palm, cancel) can lose it; two
//! thumbs are two taps.

use leptos::prelude::*;

use super::desk::Desk;
use super::follow::Follow;
use super::pads::several;
use super::running::with_trial;
use crate::browser::{page, sound, vibrate};
use crate::clinical::decision::task_state::TaskState;
use crate::clinical::findings::trial::MarkKind;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{Face, TaskSpec};
use crate::measure::time::{Millis, Stamp};

/// How long "ready, set" lasts before "go".
const COUNTDOWN: Millis = Millis::from_secs(3);

/// Two touches closer than this are one, where the second would end a swallow.
const BOUNCE: Millis = Millis(250);

/// The pad of a task: what a press on it does.
#[derive(Clone, Copy)]
pub(super) struct ThePad {
    pub(super) desk: Desk,
    pub(super) task: TaskId,
    pub(super) spec: &'static TaskSpec,
    /// The window chosen on the page, where the task leaves it open.
    pub(super) length: Signal<Option<Millis>>,
    /// The face to show.
    pub(super) face: Follow<Face>,
    /// Where the task stands.
    pub(super) state: Memo<TaskState>,
}

impl ThePad {
    fn buzz(self, ms: u32) {
        if self.desk.prefs.get_untracked().vibrate {
            vibrate::buzz(&[ms]);
        }
    }

    pub(super) fn is_split(self) -> bool {
        several(self.desk, self.task).len() > 1
    }

    fn start(self, at: Stamp) {
        let (desk, pad) = (self.desk, &self.spec.pad);
        sound::unlock();
        let prefs = desk.prefs.get_untracked();
        let countdown = pad.countdown && !pad.first_counts && (pad.is_silent() || prefs.countdown);
        let at = if countdown {
            if prefs.sound {
                sound::countdown();
            }
            at.later(COUNTDOWN)
        } else {
            // A syllable or a sound that starts the time is on its way already, and a beat has its
            // own first tick: no tone over them.
            let quiet = pad.first_counts || pad.touch_ends;
            if prefs.sound && !quiet {
                sound::go_tone();
            }
            at
        };
        desk.press(self.task, self.length.get_untracked(), at, MarkKind::Start);
        // The first beat is now, not at the next turn of the clock.
        desk.tick();
        page::above_to_top();
        if self.is_split() {
            // The pads stand where other things were: a second touch must not hit those.
            desk.hold_still();
        }
        self.buzz(40);
        desk.said.set("Started.".to_owned());
    }

    pub(super) fn end(self, at: Stamp) {
        self.desk.press(self.task, None, at, MarkKind::End);
        self.desk.hold_still();
        page::above_to_top();
        self.buzz(60);
        self.desk.said.set("Ended.".to_owned());
    }

    /// Whether a touch comes so soon after the start that a finger bounced: it has felt no swallow.
    fn bounced(self, at: Stamp) -> bool {
        if self.task.sign_column().is_none() {
            return false;
        }
        let since = with_trial(self.desk, self.task, |_, trial| {
            trial.between(trial.start()?, at).length
        });
        since.flatten().is_some_and(|since| since < BOUNCE)
    }

    /// What a press means depends on the face that was on the screen when it came.
    pub(super) fn touch(self, at: Stamp) {
        let ends = self.spec.pad.touch_ends;
        match self.face.get_untracked() {
            Face::Ready if self.state.get_untracked().waits() => {}
            Face::Ready => self.start(at),
            Face::Running if ends && self.bounced(at) => {}
            Face::Running if ends => self.end(at),
            Face::Countdown if ends => {}
            Face::Countdown | Face::Running | Face::Late => {
                self.desk.press(self.task, None, at, MarkKind::Tap);
                self.buzz(15);
            }
            Face::Watching | Face::Over => {
                // A second touch of the end is no new trial.
                if self.state.get_untracked().next_now() && !self.desk.still.get_untracked() {
                    self.desk.repeat(self.task, None);
                    self.start(at);
                }
            }
        }
    }
}
