//! Just count something, and attach it to a visit afterwards.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::desk::Desk;
use super::pad::pad;
use super::parts::{
    Number, Steps, button, choices, folded, frame_with_pad, number_field, problem_line,
};
use super::result::task_result;
use super::route::{Page, Route};
use super::running::face;
use super::state::task_state;
use crate::browser::clock;
use crate::browser::prefs::{self, Hands};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::spec::Face;
use crate::draw::{Drawn, Piece, all, el, live};
use crate::measure::time::Millis;
use crate::record::event::Event;
use crate::record::head::Head;
use crate::record::visit::Visit;
use crate::wording::screen;

const TASK: TaskId = TaskId::FreeCount;

/// Windows offered with one press, in seconds.
const WINDOWS: [i64; 4] = [10, 15, 30, 60];

/// How many pads, as offered.
const HANDS: [(Hands, &str, &str); 3] = [
    (Hands::One, "one", "One"),
    (Hands::TwoPads, "two", "Two, the same thing"),
    (Hands::TwoThings, "things", "Two things"),
];

/// The page.
pub(super) fn count_page() -> Piece {
    let desk = Desk::get();
    let face = face(desk, TASK);
    let state = task_state(desk, TASK, face);
    // A length in tenths of a second; none is a plain stopwatch.
    let length = RwSignal::new(None::<i32>);
    let chosen = Signal::derive(move || {
        Some(match length.get() {
            None => "open".to_owned(),
            Some(tenths) => tenths.to_string(),
        })
    });
    let mut options = vec![("open".to_owned(), "Stopwatch".to_owned())];
    options.extend(
        WINDOWS
            .iter()
            .map(|s| ((s * 10).to_string(), format!("{s} s"))),
    );
    let pick = Callback::new(move |id: Option<String>| {
        length.set(id.and_then(|id| id.parse().ok()));
    });
    let pads: Vec<(String, String)> = HANDS
        .iter()
        .map(|(_, id, words)| ((*id).to_owned(), (*words).to_owned()))
        .collect();
    let hands = Signal::derive(move || {
        let now = desk.prefs.get().hands;
        HANDS
            .iter()
            .find(|(hands, _, _)| *hands == now)
            .map(|(_, id, _)| (*id).to_owned())
    });
    let pick_hands = Callback::new(move |picked: Option<String>| {
        let found = HANDS
            .iter()
            .find(|(_, id, _)| Some(*id) == picked.as_deref());
        desk.prefs
            .update(|p| p.hands = found.map_or(Hands::One, |(hands, _, _)| *hands));
        prefs::save(&desk.prefs.get_untracked());
    });
    let window = Signal::derive(move || length.get().map(|tenths| Millis(i64::from(tenths) * 100)));
    frame_with_pad(
        "Just count something".into(),
        Route::Home,
        all![
            el("div.above")
                .with(live(move || (face.get() == Face::Ready).then(|| all![
                    choices("How long?".into(), options.clone(), chosen, pick),
                    choices("Pads".into(), pads.clone(), hands, pick_hands),
                    folded("Another length").with(number_field(
                        Number {
                            id: "window",
                            label: "Seconds",
                            unit: "s",
                            range: (1, 3600),
                            steps: Steps::By(50),
                        },
                        length.into(),
                        Callback::new(move |tenths| length.set(tenths))
                    ))
                ])))
                .with(live(move || (face.get() == Face::Over).then(|| all![
                    task_result(TASK),
                    attach(),
                    el("div.row.quiet").with(
                        el("button")
                            .press(move |_| desk.begin_count())
                            .with("Count again")
                    )
                ]))),
            pad(TASK, window, face, state)
        ],
    )
}

/// Attaches the count to one of the last visits.
pub(super) fn attach() -> Piece {
    let desk = Desk::get();
    desk.refresh();
    let attached = move || {
        desk.visit
            .with(|v| v.is_some_and(|v| v.attached_to.is_some()))
    };
    let visits = move || {
        desk.heads
            .get()
            .into_iter()
            .filter(|h| !h.loose && !h.deleted)
            .collect::<Vec<_>>()
    };
    let problem = RwSignal::new(String::new());
    // What was attached stays in the visit, so it is asked first.
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
                let opened = clock::local(head.opened);
                all![
                    el("p")
                        .with("To ")
                        .with(el("b").with(head.label.to_string()))
                        .with(format!(
                            ", {} {}, {}? It stays there.",
                            opened.date,
                            opened.time,
                            screen::what(head.what)
                        )),
                    el("div.row")
                        .with(button("choice", "Attach", move || attach(head.clone())))
                        .with(button("choice", "Another visit", move || asked.set(None)))
                ]
            } else if visits().is_empty() {
                el("p")
                    .with("There is no visit on this phone yet. The count is kept.")
                    .piece()
            } else {
                el("ul.heads")
                    .with(
                        visits()
                            .into_iter()
                            .map(|head| {
                                let label = head.label.to_string();
                                el("li").with(
                                    el("button.head")
                                        .press(move |_| asked.set(Some(head.clone())))
                                        .with(label),
                                )
                            })
                            .collect::<Piece>(),
                    )
                    .piece()
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
    let visit = desk.visit.with_untracked(|v| v.cloned());
    desk.visit.set(Some(count.clone()));
    desk.record([Event::AttachedTo(to.clone())]);
    desk.visit.set(visit);
    desk.go(Route::Visit(to, Page::Overview));
}
