//! Just count something, and attach it to a visit afterwards.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::desk::Desk;
use super::live::{live, press};
use super::pad::{Face, Pad, face};
use super::parts::{Choices, Frame, NumberField, button};
use super::result::TaskResult;
use super::route::{Page, Route};
use crate::browser::clock;
use crate::browser::prefs::{self, Hands};
use crate::clinical::task::TaskId;
use crate::clinical::tasks;
use crate::measure::time::Millis;
use crate::record::event::Event;
use crate::record::head::Head;
use crate::record::visit::Visit;

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
#[component]
pub(super) fn CountPage() -> impl IntoView {
    let desk = Desk::get();
    let face = face(desk, TASK);
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
    view! {
        <Frame title="Just count something" back=Route::Home with_pad=true>
            <div class="above">
            {live(move || (face.get() == Face::Ready).then(|| view! {
                <Choices label="How long?" options=options.clone() chosen=chosen pick=pick/>
                <Choices label="Pads" options=pads.clone() chosen=hands pick=pick_hands/>
                <details class="more">
                    <summary>"Another length"</summary>
                    <NumberField
                        id="window"
                        label="Seconds"
                        unit="s"
                        value=length
                        range=(1, 3600)
                        step=50
                        take=Callback::new(move |tenths| length.set(tenths))
                    />
                </details>
            }))}
            {live(move || (face.get() == Face::Over).then(|| view! {
                <TaskResult task=TASK/>
                <Attach/>
                <div class="row quiet">
                    <button type="button" on:click=press(move |_| desk.begin_count())>"Count again"</button>
                </div>
            }))}
            </div>
            <Pad task=TASK length=window face=face/>
        </Frame>
    }
}

/// Attaches the count to one of the last visits.
#[component]
pub(super) fn Attach() -> impl IntoView {
    let desk = Desk::get();
    desk.refresh();
    let attached = move || {
        desk.visit
            .with(|v| v.as_ref().is_some_and(|v| v.attached_to.is_some()))
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
        let Some(count) = desk.visit.get_untracked() else {
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
    view! {
        <section>
            <h2>"Attach to a visit"</h2>
            {live(move || if attached() {
                view! { <p>"Attached."</p> }.into_any()
            } else if let Some(head) = asked.get() {
                let opened = clock::local(head.opened);
                view! {
                    <p>
                        "To "<b>{head.label.clone()}</b>
                        {format!(", {} {}, {}? It stays there.", opened.date, opened.time, head.what)}
                    </p>
                    <div class="row">
                        {button("choice", "Attach", move || attach(head.clone()))}
                        {button("choice", "Another visit", move || asked.set(None))}
                    </div>
                }.into_any()
            } else if visits().is_empty() {
                view! { <p>"There is no visit on this phone yet. The count is kept."</p> }.into_any()
            } else {
                view! {
                    <ul class="heads">
                        {visits().into_iter().map(|head| {
                            let label = head.label.clone();
                            view! {
                                <li><button type="button" class="head" on:click=press(move |_| asked.set(Some(head.clone())))>
                                    {label}
                                </button></li>
                            }
                        }).collect_view()}
                    </ul>
                }.into_any()
            })}
            <p class="problem" role="alert">{live(move || problem.get())}</p>
        </section>
    }
}

/// Copies the count into a visit and notes on the count where it went.
fn attach_to(desk: Desk, count: &Visit, visit: Visit) {
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
        })
        .collect();
    let to = visit.id.clone();
    desk.record([Event::AttachedTo(to.clone())]);
    desk.visit.set(Some(visit));
    desk.record(copies);
    desk.go(Route::Visit(to, Page::Overview));
}
