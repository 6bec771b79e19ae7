//! Choking: the signs, a clock, help, back to baseline. No airway manoeuvre is ever shown.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{follow, live, press};
use super::parts::Frame;
use super::route::{Page, Route};
use crate::browser::clock;
use crate::clinical::sign::Sign;
use crate::clinical::trial::MarkKind;
use crate::measure::time::{Stamp, elapsed};
use crate::record::event::Event;
use crate::record::visit::{Choking, Visit};

/// The page.
#[component]
pub(super) fn ChokingPage() -> impl IntoView {
    let desk = Desk::get();
    let choking = follow(move || {
        desk.visit
            .with(|v| v.as_ref().and_then(Visit::choking))
            .map(|c: Choking| (c.since, c.help, c.over))
    });
    let at = move |from: Stamp, to: Stamp| {
        elapsed(from, to, true)
            .length
            .map_or_else(|| "not known".to_owned(), clock_words)
    };
    let since = move || {
        choking.get().map(|(since, _, over)| {
            let to = over.unwrap_or_else(|| desk.now.get());
            at(since, to)
        })
    };
    // A tally on its own has no overview and no decision: it leads back to itself.
    let loose = desk
        .visit
        .with_untracked(|v| v.as_ref().is_some_and(Visit::is_loose));
    let back = desk.visit.with_untracked(|v| {
        v.as_ref().map_or(Route::Home, |v| {
            if loose {
                Route::Count(v.id.clone(), None)
            } else {
                Route::Visit(v.id.clone(), Page::Overview)
            }
        })
    });
    let on = StoredValue::new(back.clone());
    view! {
        <Frame title="Choking" back=back>
            <section class="verdict stop" role="alert">
                <p class="word">"Use your local emergency procedure"</p>
                <p class="clock" role="timer"><b>{live(move || since().unwrap_or_default())}</b></p>
            </section>
            <ul class="plain">
                <li>"Nothing more by mouth."</li>
                <li>"Signs so far and their times are kept."</li>
            </ul>
            {live(move || choking.get().map(|(since, help, over)| view! {
                <div class="foot">
                    {match help {
                        None => view! {
                            <button type="button" class="big primary"
                                on:click=press(move |_| desk.record([Event::HelpCalled(clock::now())]))>
                                <b>"Help called"</b>
                            </button>
                        }.into_any(),
                        Some(t) => view! { <p class="figure">{format!("Help called after {}", at(since, t))}</p> }.into_any(),
                    }}
                    {match over {
                        None => view! {
                            <button type="button" class="big"
                                on:click=press(move |_| desk.record([Event::BackToBaseline(clock::now())]))>
                                <b>"Back to baseline"</b>
                            </button>
                        }.into_any(),
                        Some(t) => view! {
                            <p class="figure">{format!("Back to baseline after {}", at(since, t))}</p>
                        }.into_any(),
                    }}
                    <button type="button" class="big" on:click=press(move |_| if loose {
                        desk.go(on.get_value());
                    } else {
                        desk.turn(Page::Decision);
                    })>
                        <b>{if loose { "Back to the tally" } else { "Decision" }}</b>
                    </button>
                    <button type="button" on:click=press(move |_| mistaken(desk))>"Pressed by mistake"</button>
                </div>
            }))}
        </Frame>
    }
}

/// "1:05" for a clock that may run for minutes.
fn clock_words(length: crate::measure::time::Millis) -> String {
    let seconds = length.0.max(0) / 1000;
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

/// Takes choking back, its sign included where it is the newest press, and returns to the task.
fn mistaken(desk: Desk) {
    let pressed = desk.visit.with_untracked(|v| {
        let visit = v.as_ref()?;
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
