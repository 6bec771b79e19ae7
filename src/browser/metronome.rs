//! Ticks on a fixed grid.
//!
//! They are placed ahead on the audio clock, which neither drifts against its own ticks nor waits
//! for the main thread. A page that was hidden places none meanwhile, and goes on with the next
//! tick of the original grid.

use std::cell::RefCell;

use super::sound;
use crate::measure::beat::Beat;
use crate::measure::time::{Millis, Stamp};

/// How far ahead ticks are placed: longer than two turns of the page's own clock on a busy phone.
const AHEAD: Millis = Millis(240);

/// A tick that could not be placed in time is left out, but for the first: it answers the press, and
/// a press is handled a little after it was made.
const LATEST: Millis = Millis(5);
const FIRST_LATEST: Millis = Millis(100);

/// The audio clock and the page's clock are joined once. Where they have come apart by more than
/// this, in seconds, the audio stood still meanwhile, and they are joined anew.
const APART: f64 = 0.03;

#[derive(Clone, Copy)]
struct Run {
    start: Stamp,
    /// Up to here, since the start, ticks are placed.
    placed: Millis,
    /// Audio time less page time, in seconds.
    offset: f64,
}

thread_local! {
    static RUN: RefCell<Option<Run>> = const { RefCell::new(None) };
}

/// Places the ticks that come due soon. Called at every turn of the page's clock while the time
/// runs; `start` is the moment of the first tick.
pub fn keep(beat: Beat, start: Stamp, now: Stamp) {
    if start.life != now.life {
        // After a restart nobody is counting along any more.
        return;
    }
    let Some(offset) = sound::offset() else {
        return;
    };
    let since = now.mono - start.mono;
    RUN.with_borrow_mut(|slot| {
        let mut run = slot.filter(|run| run.start == start).unwrap_or(Run {
            start,
            placed: Millis(-1),
            offset,
        });
        if (offset - run.offset).abs() > APART {
            run.offset = offset;
        }
        // What was missed stays missed; a tick that is just due may still sound.
        let latest = if run.placed < Millis::ZERO {
            FIRST_LATEST
        } else {
            LATEST
        };
        let after = Millis(run.placed.0.max((since - latest).0));
        let until = since + AHEAD;
        for (_, at) in beat.between(after, until) {
            sound::tick_at((start.mono + at).0 as f64 / 1000.0 + run.offset);
        }
        run.placed = Millis(run.placed.0.max(until.0));
        *slot = Some(run);
    });
}

/// Silences ticks that are placed already.
pub fn stop() {
    if RUN.with_borrow_mut(Option::take).is_some() {
        sound::hush();
    }
}
