//! Counts that were made elsewhere: attached to a visit, and detached again.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::desk::Desk;
use super::follow::follow;
use super::heads::{head_words, newest, state, when_and_what};
use super::parts::{button, problem_line};
use super::route::{Page, Route};
use super::told::clock_now;
use crate::clinical::tasks;
use crate::draw::{Drawn, Piece, all, el, live, when};
use crate::record::event::Event;
use crate::record::head::Head;
use crate::record::id::VisitId;
use crate::record::visit::{Attached, Visit};
use crate::wording;

/// Among so many of the newest visits one is chosen: those of some weeks.
const OFFERED: usize = 200;

/// Attaches the count to a visit.
pub(super) fn attach() -> Piece {
    let desk = Desk::get();
    let heads = newest(desk, OFFERED);
    let attached = move || {
        desk.visit
            .with(|v| v.is_some_and(|v| v.attached_to.is_some()))
    };
    let visits = move || {
        let heads = heads.get().into_iter();
        heads.filter(|h| !h.loose && !h.deleted).collect::<Vec<_>>()
    };
    let problem = RwSignal::new(String::new());
    // It changes what another visit says, so it is asked first.
    let asked = RwSignal::new(None::<Head>);
    let attach = move |head: Head| {
        let Some(count) = desk.visit.with_untracked(|v| v.cloned()) else {
            return;
        };
        spawn_local(async move {
            match desk.keeper().read(&head.visit).await {
                Ok((events, _)) => {
                    let visit = Visit::replay(head.visit.clone(), events);
                    attach_to(desk, &count, visit);
                }
                Err(error) => problem.set(error.to_string()),
            }
        });
    };
    el("section")
        .with(el("h2").with("Attach to a visit"))
        .with(live(move || {
            if attached() {
                el("p").with("Attached.").piece()
            } else if let Some(head) = asked.get() {
                let state = state(&head);
                let state = match state.as_str() {
                    "" => String::new(),
                    state => format!(", {state}"),
                };
                all![
                    el("p")
                        .with("To ")
                        .with(el("b").with(head.label.to_string()))
                        .with(format!(", {}{state}?", when_and_what(&head))),
                    el("div.row")
                        .with(button("choice", "Attach", move || attach(head.clone())))
                        .with(button("choice", "Another visit", move || asked.set(None)))
                ]
            } else if visits().is_empty() {
                el("p")
                    .with("There is no visit on this phone yet. The count is kept.")
                    .piece()
            } else {
                let row = |head: Head| {
                    let words = head_words("", &head);
                    el("li").with(
                        el("button.head")
                            .press(move |_| asked.set(Some(head.clone())))
                            .with(words),
                    )
                };
                let rows = visits().into_iter().map(row);
                el("ul.heads").with(rows.collect::<Piece>()).piece()
            }
        }))
        .with(problem_line(problem))
        .piece()
}

/// Copies the count into a visit and notes on the count where it went.
fn attach_to(desk: Desk, count: &Visit, visit: Visit) {
    let mut chokings = count.chokings.iter().map(|c| (c.since, c.help, c.over));
    let copies: Vec<Event> = count
        .exam
        .trials
        .iter()
        .filter(|t| tasks::spec(t.task).is_tried(t))
        .zip(visit.next_trial()..)
        .map(|(trial, number)| Event::Attached {
            from: count.id.clone(),
            trial: number,
            task: trial.task,
            length: trial.length,
            marks: trial.marks.iter().map(|m| (m.at, m.kind)).collect(),
            hidden: trial.hidden.clone(),
            answers: trial.answers.clone().into_iter().collect(),
            // With the first, once.
            chokings: chokings.by_ref().collect(),
        })
        .collect();
    let to = visit.id.clone();
    // The visit first: stopped in between, a count is attached twice and not lost.
    desk.visit.set(Some(visit));
    desk.record(copies);
    note_on(desk, count.clone(), Event::AttachedTo(to.clone()));
    desk.go(Route::Visit(to, Page::Overview));
}

/// Records an event of another visit, and comes back to the open one.
fn note_on(desk: Desk, other: Visit, event: Event) {
    let visit = desk.visit.with_untracked(|v| v.cloned());
    desk.visit.set(Some(other));
    desk.record([event]);
    desk.visit.set(visit);
}

/// What was attached to the open visit, with the way to take it out again.
pub(super) fn detachable() -> Piece {
    let desk = Desk::get();
    let all = follow(move || {
        desk.visit.with(|v| {
            let attached = v.map_or(&[][..], |v| v.attached.as_slice());
            let still = attached.iter().filter(|a| a.detached.is_none());
            still.cloned().collect::<Vec<_>>()
        })
    });
    live(move || {
        let all = all.get();
        (!all.is_empty()).then(|| {
            let rows = all.into_iter().map(|a| detach_row(desk, a));
            all![
                el("h3").with("Attached to this visit"),
                el("ul.plain").with(rows.collect::<Piece>())
            ]
        })
    })
}

fn detach_row(desk: Desk, attached: Attached) -> Piece {
    let asked = RwSignal::new(false);
    let title = wording::tasks::of(attached.task).title;
    let counted = attached.counted.map(|at| clock_now().say(at));
    let counted = counted.map_or_else(String::new, |at| format!(", counted at {at}"));
    let (from, trial) = (attached.from, attached.trial);
    el("li")
        .with(format!("{title}{counted}"))
        .with(when(
            move || !asked.get(),
            move || button("", "Detach", move || asked.set(true)),
        ))
        .with(when(
            move || asked.get(),
            move || {
                let from = from.clone();
                all![
                    el("p")
                        .with("It counts here no longer. That it was attached stays in the note."),
                    el("div.row")
                        .with(button("choice", "Detach it", move || {
                            detach(desk, from.clone(), trial)
                        }))
                        .with(button("choice", "Leave it", move || asked.set(false)))
                ]
            },
        ))
        .piece()
}

/// Takes a copy out of the open visit; the count it was made of is free for another visit once none of
/// it is left.
fn detach(desk: Desk, from: VisitId, trial: u32) {
    desk.record([Event::Detached { trial }]);
    let left = desk.visit.with_untracked(|v| {
        let still = |a: &Attached| a.from == from && a.detached.is_none();
        let id = v.map(|v| v.id.clone());
        id.filter(|_| !v.is_some_and(|v| v.attached.iter().any(still)))
    });
    let Some(here) = left else {
        return;
    };
    spawn_local(async move {
        // Where the count was deleted or can't be read, there is nothing to note on.
        if let Ok((events, _)) = desk.keeper().read(&from).await {
            let count = Visit::replay(from, events);
            if count.next > 0 && !count.deleted {
                note_on(desk, count, Event::DetachedFrom(here));
            }
        }
    });
}
