//! A visit at a glance: what there is, what is missing, and every way on.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::banner::file_name;
use super::decision::look_of;
use super::desk::Desk;
use super::details::{Form, details_fields};
use super::ended::{broken_off, leave, take_up};
use super::follow::follow;
use super::order::syllable_order;
use super::parts::{big, folded, frame, problem_line, words_field};
use super::route::{Page, Route};
use super::visit_steps::steps;
use crate::browser::{clock, ids, page, share};
use crate::draw::{Drawn, Piece, all, el, live, said};
use crate::record::envelope::{Envelope, SCHEMA, body};
use crate::record::event::Event;
use crate::record::export;
use crate::record::head::Head;
use crate::record::way;
use crate::wording::verdict as verdict_words;

/// The page.
pub(super) fn overview_page() -> Piece {
    let desk = Desk::get();
    let title = said(move || desk.visit.with(|v| v.map_or(String::new(), |v| v.label())));
    let deleted = follow(move || desk.visit.with(|v| v.is_some_and(|v| v.deleted)));
    frame(
        title,
        Route::Home,
        live(move || {
            if deleted.get() {
                el("p").with("This visit was deleted.").piece()
            } else {
                whole()
            }
        }),
    )
}

fn whole() -> Piece {
    let desk = Desk::get();
    let next = follow(move || {
        desk.visit
            .with(|v| v.map_or(Page::Overview, |v| way::next(v).into()))
    });
    let broken = follow(move || desk.visit.with(|v| v.and_then(broken_off)));
    let verdict = move || {
        desk.visit.with(|v| {
            let v = v.filter(|v| v.decided.is_some())?;
            v.decision()
                .map(|d| (look_of(&d), verdict_words::decided(&d, v.role)))
        })
    };
    all![
        live(move || verdict().map(|((class, shape), headline)| {
            el("section").class(class).with(
                el("p.word")
                    .with(el("span").attr("aria-hidden", "true").with(shape).with(" "))
                    .with(headline),
            )
        })),
        live(move || broken.get().map(|words| all![
            el("section.found.caution").with(el("h2").with(words)),
            take_up(desk, "primary")
        ])),
        live(move || (next.get() != Page::Overview).then(|| big(
            if broken.get().is_some() {
                ""
            } else {
                "primary"
            },
            if next.get() == Page::Decision {
                "Decision"
            } else {
                "Go on"
            },
            move |_| {
                let next = next.get_untracked();
                if next == Page::Choking || !page::refused() {
                    desk.turn(next);
                }
            }
        ))),
        steps(),
        syllable_order(),
        close_out(),
        person(),
        leave(),
        keep()
    ]
}

/// An earlier refer or stop stays open until somebody closes it.
fn close_out() -> Piece {
    let desk = Desk::get();
    let open = follow(move || desk.visit.with(|v| v.is_some_and(|v| Head::of(v).unclosed)));
    let closed = follow(move || {
        desk.visit
            .with(|v| v.and_then(|v| v.closed.as_ref().map(|(how, _)| how.clone())))
    });
    all![
        live(move || open.get().then(|| el("section.found.caution")
            .with(el("h2").with("Not closed"))
            .with(el("p").with("Somebody was to look further. Who did?"))
            .with(
                el("div.row").with(
                    ["Seen by speech-language pathology", "Seen by the doctor"]
                        .into_iter()
                        .map(|how| el("button")
                            .press(move |_| desk.record([Event::Closed(how.to_owned())]))
                            .with(how))
                        .collect::<Piece>()
                )
            )
            .with(words_field(
                "closed-by",
                "or in your own words. No names.",
                "".into(),
                80,
                Callback::new(move |words: String| {
                    if !words.trim().is_empty() {
                        desk.record([Event::Closed(words)])
                    }
                })
            )))),
        live(move || closed
            .get()
            .map(|how| el("p.figure").with(format!("Closed: {how}"))))
    ]
}

/// Person and place, filled in or corrected afterwards.
fn person() -> Piece {
    let desk = Desk::get();
    let details = desk
        .visit
        .with_untracked(|v| v.and_then(|v| v.details.clone()));
    let own = desk.visit.with_untracked(|v| v.map(|v| v.id.clone()));
    let label = details
        .as_ref()
        .map_or(String::new(), |d| d.label.as_str().to_owned());
    let form = Form::new(label, details.as_ref(), own);
    let kept = RwSignal::new(false);
    let keep = move |_| {
        let details = form.read();
        kept.set(details.is_some());
        match details {
            Some(details) => desk.record([Event::Details(details)]),
            None => page::to_refused(),
        }
    };
    folded("Person and place")
        .with(details_fields(form))
        .with(el("button").press(keep).with("Keep"))
        .with(
            el("p")
                .attr("role", "status")
                .with(live(move || kept.get().then_some("Kept."))),
        )
        .piece()
}

/// The whole record as a file, and deleting it.
fn keep() -> Piece {
    let desk = Desk::get();
    let sure = RwSignal::new(false);
    let problem = RwSignal::new(String::new());
    let save = move |_| {
        let Some(id) = desk.visit.with_untracked(|v| v.map(|v| v.id.clone())) else {
            return;
        };
        spawn_local(async move {
            let outcome = match desk.keeper().read(&id).await {
                Ok((events, raw)) => {
                    let mut text = export::lines(&events);
                    for line in raw {
                        text.push_str(&line.0);
                        text.push('\n');
                    }
                    share::save_file(&file_name("visit", "txt"), &text)
                }
                Err(error) => Err(error.to_string()),
            };
            problem.set(outcome.err().unwrap_or_default());
        });
    };
    let delete = move |_| {
        let Some(mut visit) = desk.visit.with_untracked(|v| v.cloned()) else {
            return;
        };
        let stone = match body(&Event::Deleted) {
            Ok(stone) => stone,
            Err(error) => return problem.set(format!("Not deleted. {error}")),
        };
        let tombstone = Envelope {
            device: ids::device_id(),
            visit: visit.id.clone(),
            seq: visit.next,
            schema: SCHEMA,
            key: String::new(),
            at: clock::now(),
            body: stone,
        };
        visit.take(&tombstone);
        visit.aside.clear();
        spawn_local(async move {
            match desk.keeper().bury(tombstone, Head::of(&visit)).await {
                Ok(()) => {
                    desk.visit.set(None);
                    desk.go(Route::Home);
                }
                Err(error) => problem.set(format!("Not deleted. {error}")),
            }
        });
    };
    folded("Keep a copy, delete")
        .with(
            el("button")
                .press(save)
                .with("Save the whole record as a file"),
        )
        .with(live(move || {
            if sure.get() {
                all![
                    el("p").with("Everything of this visit goes from this phone, for good."),
                    el("div.row")
                        .with(el("button").press(move |_| sure.set(false)).with("Keep it"))
                        .with(el("button.grave").press(delete).with("Delete for good"))
                ]
            } else {
                el("button")
                    .press(move |_| sure.set(true))
                    .with("Delete this visit")
                    .piece()
            }
        }))
        .with(problem_line(problem))
        .piece()
}
