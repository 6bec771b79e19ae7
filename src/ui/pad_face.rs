//! What stands on the pad, or in its place.

use leptos::prelude::*;

use super::follow::follow;
use super::pads::figures;
use super::running::{left_to_watch, phase_of, seconds_left, with_trial};
use super::the_pad::ThePad;
use crate::clinical::tasks::spec::{Face, Phase};
use crate::draw::{Drawn, Piece, all, el, live};
use crate::measure::beat::Beat;
use crate::wording::next_trial::next_trial;
use crate::wording::tasks as words;

impl ThePad {
    /// Whether its time runs.
    pub(super) fn runs(self) -> bool {
        matches!(
            self.face.get(),
            Face::Countdown | Face::Running | Face::Late
        )
    }

    /// Its look.
    pub(super) fn class(self) -> &'static str {
        match self.face.get() {
            Face::Ready | Face::Watching | Face::Over => "pad ready",
            Face::Countdown => "pad countdown",
            Face::Late => "pad late",
            Face::Running => "pad running",
        }
    }

    /// What comes next, where one trial follows the other.
    fn next_words(self) -> Option<String> {
        self.state.get().next.as_ref().map(next_trial)
    }
}

/// What stands on the pad.
pub(super) fn face_of_pad(pad: ThePad) -> Piece {
    let words = words::of(pad.task);
    match pad.face.get() {
        Face::Ready => {
            let next = pad.next_words();
            let start = next.unwrap_or_else(|| words.start.to_owned());
            el("span.start").with(start).piece()
        }
        Face::Countdown => {
            let left = move || match phase_of(pad.desk, pad.task, pad.desk.now.get()) {
                Phase::Countdown(left) if left.0 > 2000 => "Ready",
                Phase::Countdown(left) if left.0 > 1000 => "Set",
                Phase::Countdown(_) => "Go in a moment",
                _ => "Go",
            };
            el("span.start").with(live(left)).piece()
        }
        Face::Running if pad.spec.pad.touch_ends => {
            let beats = pad.spec.pad.beat.map(|_| beats(pad));
            all![beats, el("span.start").with(words.end)]
        }
        Face::Running | Face::Late => {
            let (one, many) = words.counts;
            let taps = move || with_trial(pad.desk, pad.task, |_, t| t.taps());
            let taps = follow(move || taps().unwrap_or(0));
            figures(
                live(move || taps.get()),
                live(move || if taps.get() == 1 { one } else { many }),
            )
        }
        Face::Watching | Face::Over => all![
            el("span.start").with(pad.next_words()),
            (pad.face.get() == Face::Watching).then(|| {
                el("span.what")
                    .with(el("b.left").with(live(move || left_to_watch(pad.desk, pad.task))))
                    .with(" left to watch")
            })
        ],
    }
}

/// The number to be said now, with the beat.
fn beats(pad: ThePad) -> Piece {
    let beats = follow(move || {
        let now = pad.desk.now.get();
        with_trial(pad.desk, pad.task, |spec, trial| {
            let beat = Beat::every(spec.pad.beat?)?;
            let since = trial.between(trial.start()?, now).length?;
            Some(beat.sounded(since))
        })
        .flatten()
        .unwrap_or(0)
    });
    el("span.count")
        .class_if("beat", move || beats.get() % 2 == 1)
        .with(live(move || beats.get()))
        .piece()
}

/// Nothing is counted: the time runs to its end by itself.
pub(super) fn panel(pad: ThePad) -> Piece {
    let then = move || match pad.face.get() {
        Face::Countdown => "then uncover the tip",
        _ => "then cover the tip",
    };
    el("div.pad.panel")
        .with(
            el("span.start")
                .attr("role", "timer")
                .with(live(move || seconds_left(pad.desk, pad.task))),
        )
        .with(el("span.what").with(live(then)))
        .piece()
}

/// The pad's place stays taken while the watch runs: a tap that comes late must not hit a sign.
pub(super) fn watch(pad: ThePad) -> Piece {
    let waits = move || pad.state.get().waits().then(|| pad.next_words());
    el("div.pad.panel")
        .with(el("span.start").with(live(move || left_to_watch(pad.desk, pad.task))))
        .with(el("span.what").with("left to watch"))
        .with(el("span.what").with(live(move || waits().flatten())))
        .piece()
}

/// What the next trial waits for.
pub(super) fn waiting(pad: ThePad) -> Piece {
    el("div.pad.panel")
        .with(el("span.what").with(live(move || pad.next_words())))
        .piece()
}
