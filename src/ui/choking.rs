//! Choking: the signs, a clock, help, back to baseline. No airway manoeuvre is ever shown.

use leptos::prelude::*;

use super::desk::Desk;
use super::follow::follow;
use super::parts::{big, button, choices, frame};
use super::route::{Page, Route};
use crate::browser::clock;
use crate::clinical::findings::trial::MarkKind;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::water::{VOICE_AFTER, VOICES};
use crate::draw::{Drawn, Piece, all, el, live, when};
use crate::measure::time::{Stamp, elapsed};
use crate::record::event::Event;
use crate::record::visit::{Choking, Visit};
use crate::wording::tasks as words;

/// The page.
pub(super) fn choking_page() -> Piece {
    let desk = Desk::get();
    let choking = follow(move || {
        desk.visit
            .with(|v| v.and_then(Visit::choking_or_its_sign))
            .map(|c: Choking| (c.since, c.help, c.over))
    });
    let since = move || {
        choking.get().map(|(since, _, over)| {
            let to = over.unwrap_or_else(|| desk.now.get());
            time_between(since, to)
        })
    };
    // A tally on its own has no overview and no decision: it leads back to itself.
    let loose = desk
        .visit
        .with_untracked(|v| v.is_some_and(Visit::is_loose));
    let back = desk.visit.with_untracked(|v| {
        v.map_or(Route::Home, |v| {
            if loose {
                Route::Count(v.id.clone(), None)
            } else {
                Route::Visit(v.id.clone(), Page::Overview)
            }
        })
    });
    let on = StoredValue::new(back.clone());
    frame(
        "Choking".into(),
        back,
        all![
            el("section.verdict.stop")
                .attr("role", "alert")
                .with(el("p.word").with("Use your local emergency procedure"))
                .with(
                    el("p.clock")
                        .attr("role", "timer")
                        .with(el("b").with(live(move || since().unwrap_or_default())))
                ),
            el("ul.plain")
                .with(el("li").with("Nothing more by mouth."))
                .with(el("li").with("Signs so far and their times are kept.")),
            live(
                move || choking.get().map(|(since, help, over)| el("div.foot")
                    .with(match help {
                        None => big("primary", "Help called", move |_| desk
                            .record([Event::HelpCalled(clock::now())]))
                        .piece(),
                        Some(t) => el("p.figure")
                            .with(format!("Help called after {}", time_between(since, t)))
                            .piece(),
                    })
                    .with(match over {
                        None => big("", "Back to baseline", move |_| desk
                            .record([Event::BackToBaseline(clock::now())]))
                        .piece(),
                        Some(t) => all![
                            el("p.figure")
                                .with(format!("Back to baseline after {}", time_between(since, t))),
                            voice_since(desk)
                        ],
                    })
                    .with(big(
                        "",
                        if loose {
                            "Back to the tally"
                        } else {
                            "Decision"
                        },
                        move |_| if loose {
                            desk.go(on.get_value());
                        } else {
                            desk.turn(Page::Decision);
                        }
                    )))
            ),
            // Outside what is drawn with the events: it goes by the clock.
            when(
                move || newest(desk).is_some_and(|c| c.may_be_a_slip(desk.now.get())),
                move || button("", "Pressed by mistake", move || mistaken(desk))
            ),
            // One whose end nobody marked would swallow the next.
            when(
                move || newest(desk).is_some_and(|c| c.may_hide_another(desk.now.get())),
                move || button("", "This is a new choking", move || {
                    desk.record([Event::Choking(clock::now())]);
                    desk.hold_still();
                })
            )
        ],
    )
}

/// The voice, heard anew: nothing is given before it is.
fn voice_since(desk: Desk) -> Piece {
    let heard = Signal::derive(move || {
        let choking = desk.visit.with(|v| v.and_then(Visit::choking));
        choking
            .and_then(|c| c.voice)
            .map(|(voice, _)| voice.to_owned())
    });
    let offered = words::choices(TaskId::Sips, VOICE_AFTER, VOICES);
    let offered = offered.map(|(id, words)| (id.to_owned(), words.to_owned()));
    choices(
        "Voice now".into(),
        offered.collect(),
        heard,
        Callback::new(move |id: Option<String>| {
            desk.record(id.map(Event::VoiceAfterChoking));
        }),
    )
}

fn newest(desk: Desk) -> Option<Choking> {
    desk.visit.with(|v| v.and_then(Visit::choking))
}

/// "1:05", of a time that may run for minutes; "24 h 5 min".
pub(super) fn time_between(from: Stamp, to: Stamp) -> String {
    elapsed(from, to, true).length.map_or_else(
        || "not known".to_owned(),
        |length| {
            let seconds = length.0.max(0) / 1000;
            let minutes = seconds / 60;
            match minutes / 60 {
                0 => format!("{minutes}:{:02}", seconds % 60),
                // Nobody marked its end.
                hours => format!("{hours} h {} min", minutes % 60),
            }
        },
    )
}

/// Takes choking back, its sign included where it is the newest press, and returns to the task.
fn mistaken(desk: Desk) {
    let pressed = desk.visit.with_untracked(|v| {
        let visit = v?;
        let since = visit.choking()?.since;
        visit.exam.trials.iter().rev().find_map(|trial| {
            let newest = trial.marks.iter().rev().find(|m| m.kind.pressed())?;
            // An earlier choke, in another trial, was none.
            (newest.kind == MarkKind::Sign(Sign::Choke) && newest.at == since)
                .then_some((trial.number, trial.task))
        })
    });
    desk.record(
        [Event::NotChoking]
            .into_iter()
            .chain(pressed.map(|(trial, _)| Event::Undo { trial })),
    );
    desk.turn(pressed.map_or(Page::Overview, |(_, task)| Page::Task(task)));
}
