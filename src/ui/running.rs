//! Where a trial stands now, and what is said of it while it runs: its time, what is left of it, what undo
//! takes back.

use leptos::prelude::*;

use super::banner::whole_seconds;
use super::desk::Desk;
use super::follow::{Follow, follow};
use super::signs::stop_words;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{Face, Length, Phase, Shows, TaskSpec};
use crate::clinical::tasks::{self, breath_taps};
use crate::draw::{Drawn, Piece, el, live};
use crate::measure::time::{Millis, Stamp};
use crate::wording;
use crate::wording::counted::word;
use crate::wording::meal::minutes;

/// Which face the pad of a task shows now.
pub(super) fn face(desk: Desk, task: TaskId) -> Follow<Face> {
    follow(move || {
        let now = desk.now.get();
        Face::from(phase_of(desk, task, now))
    })
}

pub(super) fn phase_of(desk: Desk, task: TaskId, now: Stamp) -> Phase {
    with_trial(desk, task, |spec, trial| spec.phase(trial, now)).unwrap_or(Phase::Ready)
}

pub(super) fn with_trial<T>(
    desk: Desk,
    task: TaskId,
    f: impl FnOnce(&TaskSpec, &Trial) -> T,
) -> Option<T> {
    desk.visit.with(|v| {
        let trial = v?.exam.latest(task)?;
        Some(f(tasks::spec(task), trial))
    })
}

/// What undo says: which press it takes back where there are several kinds.
pub(super) fn undo_words(desk: Desk, task: TaskId) -> String {
    let newest = desk.visit.with(|v| {
        let visit = v?;
        let trial = visit.trial(visit.undo_goes_to(task)?)?;
        trial.marks.iter().rev().find(|m| m.kind.pressed()).copied()
    });
    newest.map_or_else(String::new, |m| {
        format!("Undo: {}", word(task, m.kind).to_ascii_lowercase())
    })
}

/// Whole seconds until "go", then until the window's end.
pub(super) fn seconds_left(desk: Desk, task: TaskId) -> String {
    let now = desk.now.get();
    with_trial(desk, task, |spec, trial| match spec.phase(trial, now) {
        Phase::Countdown(left) => whole_seconds(left),
        Phase::Running(so_far) => match (so_far.length, spec.window(trial)) {
            (Some(length), Some(window)) => whole_seconds(window - length),
            _ => "not known".to_owned(),
        },
        _ => String::new(),
    })
    .unwrap_or_default()
}

/// The time left of a task's watch.
pub(super) fn left_to_watch(desk: Desk, task: TaskId) -> String {
    let now = desk.now.get();
    desk.visit
        .with(|v| {
            let trial = v?.exam.latest_started(task)?;
            let spec = tasks::spec(task);
            Some(match (spec.phase(trial, now), spec.pad.watch) {
                (Phase::Watching(so_far), Some(watch)) => so_far.length.map_or_else(
                    || "not known".to_owned(),
                    |l| format!("{} s", whole_seconds(watch - l)),
                ),
                _ => String::new(),
            })
        })
        .unwrap_or_default()
}

/// The running figures: time so far, time left.
pub(super) fn clock(task: TaskId, face: Follow<Face>, length: Signal<Option<Millis>>) -> Piece {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let figures = move || {
        let now = desk.now.get();
        let so_far_words = desk.visit.with(|v| {
            let exam = &v?.exam;
            breath_taps::running(exam.latest(task)?, &exam.policy).map(wording::breathing::running)
        });
        with_trial(desk, task, |spec, trial| {
            let so_far = match spec.phase(trial, now) {
                Phase::Running(so_far) | Phase::Late(so_far) => so_far,
                _ => return (String::new(), String::new()),
            };
            let Some(elapsed) = so_far.length else {
                return ("not known".to_owned(), String::new());
            };
            match spec.phase(trial, now) {
                Phase::Late(_) => (
                    elapsed.to_string(),
                    "time is up; later ones are kept apart".to_owned(),
                ),
                _ => match spec.window(trial) {
                    Some(window) => (
                        format!("{} s", whole_seconds(window - elapsed)),
                        "left".to_owned(),
                    ),
                    // A meal is told in minutes.
                    None if spec.shows == Shows::Tally => (minutes(elapsed), String::new()),
                    None => (elapsed.to_string(), so_far_words.unwrap_or_default()),
                },
            }
        })
        .unwrap_or_default()
    };
    let figures = follow(figures);
    let before_runs = move || !left_to_watch(desk, task).is_empty();
    // Where nothing is counted the panel shows it.
    let on_panel = !spec.pad.counts && !spec.pad.touch_ends;
    let at_once = follow(move || {
        (face.get() == Face::Running)
            .then(|| stop_words(desk, task))
            .flatten()
    });
    live(move || match face.get() {
        // In the place of the time: what is counted on with one eye must not hide it.
        Face::Running if at_once.get().is_some() => el("p.clock.at-once")
            .attr("role", "alert")
            .with(at_once.get())
            .piece(),
        Face::Running | Face::Late if on_panel => ().piece(),
        Face::Running | Face::Late => el("p.clock")
            .attr("role", "timer")
            .with(el("b").with(live(move || figures.get().0)))
            .with(" ")
            .with(el("span").with(live(move || figures.get().1)))
            .piece(),
        Face::Ready if before_runs() => el("p.clock")
            .attr("role", "timer")
            .with(el("b").with(live(move || left_to_watch(desk, task))))
            .with(" ")
            .with(el("span").with("left to watch, the trial before"))
            .piece(),
        Face::Ready => {
            let window = match spec.pad.length {
                Length::Fixed(window) => Some(window),
                Length::Answered(question, lengths) => desk.visit.with(|v| {
                    let visit = v?;
                    let given = visit
                        .exam
                        .latest(task)
                        .and_then(|t| t.choice(question).map(str::to_owned));
                    let id = given.or_else(|| spec.assumed(&visit.exam, question))?;
                    lengths.iter().find(|(known, _)| *known == id)?.1
                }),
                _ => length.get(),
            };
            let from = if spec.pad.first_counts {
                "first tap"
            } else {
                "start"
            };
            window
                .map(|w| {
                    el("p.clock")
                        .with(el("span").with(format!("{} seconds from the {from}", w.0 / 1000)))
                })
                .piece()
        }
        Face::Countdown | Face::Watching | Face::Over => ().piece(),
    })
}
