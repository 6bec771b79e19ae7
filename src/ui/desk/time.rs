//! Time: what runs, what has come due, and for how long the page stands still.

use gloo_timers::callback::Timeout;
use leptos::prelude::*;

use super::{AWAY, Desk};
use crate::browser::{clock, metronome, page, sound, vibrate, wake};
use crate::clinical::findings::trial::MarkKind;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::spec::Phase;
use crate::measure::beat::Beat;
use crate::measure::time::Stamp;
use crate::record::event::Event;
use crate::record::visit::Visit;
use crate::ui::follow::follow;
use crate::wording::tasks as words;

/// How long the page stands still: longer than a tap that was already on its way, shorter than
/// a thought.
const STILL_MS: u32 = 600;

impl Desk {
    /// Moves the running figures on and records what has come due.
    pub(in crate::ui) fn tick(self) {
        self.now.set(clock::now());
        self.settle();
        self.keep_beat();
    }

    /// Sounds the beat of a running task that has one.
    fn keep_beat(self) {
        let now = self.now.get_untracked();
        let beating = self.visit.with_untracked(|v| {
            v.iter().flat_map(|v| &v.exam.trials).find_map(|t| {
                let spec = tasks::spec(t.task);
                let beat = Beat::every(spec.pad.beat?)?;
                matches!(spec.phase(t, now), Phase::Running(_)).then_some((beat, t.start()?))
            })
        });
        match beating {
            Some((beat, start)) if self.prefs.get_untracked().sound => {
                metronome::keep(beat, start, now);
            }
            _ => metronome::stop(),
        }
    }

    /// Records every window and watch that has run out.
    pub(super) fn settle(self) {
        let now = clock::now();
        let due: Vec<(u32, TaskId, MarkKind)> = self.visit.with_untracked(|v| {
            v.iter()
                .flat_map(|v| &v.exam.trials)
                .filter_map(|t| {
                    tasks::spec(t.task)
                        .due(t, now)
                        .map(|kind| (t.number, t.task, kind))
                })
                .collect()
        });
        for (trial, task, kind) in due {
            self.record([Event::Mark {
                trial,
                at: now,
                kind,
            }]);
            self.hold_still();
            let prefs = self.prefs.get_untracked();
            if prefs.sound {
                sound::end_tone();
            }
            if prefs.vibrate {
                vibrate::buzz(&[200, 80, 200]);
            }
            self.said.set(match kind {
                MarkKind::WatchOver => "The watch is over. Hear the voice again.".to_owned(),
                _ => format!("{}: time is up.", words::of(task).title),
            });
        }
    }

    /// Lets the page stand still for a moment, see [`Desk::still`].
    pub(in crate::ui) fn hold_still(self) {
        self.still.set(true);
        Timeout::new(STILL_MS, move || self.still.set(false)).forget();
    }

    /// Follows the page's coming and going, and keeps time only while something runs.
    pub(in crate::ui) fn keep_time(self) {
        // Since when, and whether something ran then: what runs out while nobody looks may be
        // recorded before anybody comes back.
        let gone = StoredValue::new(None::<(Stamp, bool)>);
        page::on_visibility(move |hidden, at| {
            if hidden {
                let running = self.visit.with_untracked(|v| v.is_some_and(Visit::running));
                gone.set_value(Some((at, running)));
                return;
            }
            if let Some((from, true)) = gone.get_value() {
                self.record([Event::Hidden { from, to: at }]);
            }
            let away = gone.get_value().map(|(from, _)| at.wall - from.wall);
            if let Some(away) = away.filter(|away| *away >= AWAY) {
                self.away.set(Some(away));
            }
            gone.set_value(None);
            self.tick();
            self.keeper().flush();
        });
        let running = follow(move || {
            let now = self.now.get();
            self.visit
                .with(|v| v.is_some_and(|v| v.running() || late(v, now)))
        });
        let ticker = StoredValue::new_local(None);
        Effect::new(move || {
            if running.get() {
                wake::hold();
                self.now.set(clock::now());
                ticker.set_value(Some(page::every(50, move || self.tick())));
            } else {
                wake::release();
                metronome::stop();
                ticker.set_value(None);
            }
        });
    }
}

/// Whether late marks of some task are still being kept.
fn late(visit: &Visit, now: Stamp) -> bool {
    visit
        .exam
        .trials
        .iter()
        .any(|t| matches!(tasks::spec(t.task).phase(t, now), Phase::Late(_)))
}
