//! A visit at a glance: what there is, what is missing, and every way on.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::banner::file_name;
use super::decision::look_of;
use super::desk::Desk;
use super::details::{DetailsFields, Form};
use super::live::{follow, live, press};
use super::order::SyllableOrder;
use super::parts::{Frame, WordsField};
use super::route::{Page, Route};
use super::steps;
use super::task::Leave;
use super::visit_steps::Steps;
use crate::browser::{clock, ids, share};
use crate::record::envelope::{Envelope, SCHEMA, body};
use crate::record::event::Event;
use crate::record::export;
use crate::record::head::Head;

/// The page.
#[component]
pub(super) fn OverviewPage() -> impl IntoView {
    let desk = Desk::get();
    let title = Signal::derive(move || {
        desk.visit
            .with(|v| v.as_ref().map_or(String::new(), |v| v.label()))
    });
    let deleted = follow(move || desk.visit.with(|v| v.as_ref().is_some_and(|v| v.deleted)));
    view! {
        <Frame title=title back=Route::Home>
            {live(move || if deleted.get() {
                view! { <p>"This visit was deleted."</p> }.into_any()
            } else {
                view! { <Whole/> }.into_any()
            })}
        </Frame>
    }
}

#[component]
fn Whole() -> impl IntoView {
    let desk = Desk::get();
    let next = follow(move || {
        desk.visit
            .with(|v| v.as_ref().map_or(Page::Overview, steps::next))
    });
    let verdict = move || {
        desk.visit
            .with(|v| {
                v.as_ref()
                    .filter(|v| v.decided.is_some())
                    .and_then(|v| v.decision())
            })
            .map(|d| d.verdict)
    };
    view! {
        {live(move || verdict().map(|v| {
            let (class, shape) = look_of(v);
            view! {
                <section class=class>
                    <p class="word"><span aria-hidden="true">{shape}" "</span>{v.headline()}</p>
                </section>
            }
        }))}
        {live(move || (next.get() != Page::Overview).then(|| view! {
            <button type="button" class="big primary" on:click=press(move |_| desk.turn(next.get_untracked()))>
                <b>{if next.get() == Page::Decision { "Decision" } else { "Go on" }}</b>
            </button>
        }))}
        <Steps/>
        <SyllableOrder/>
        <CloseOut/>
        <Person/>
        <Leave/>
        <Keep/>
    }
}

/// An earlier refer or stop stays open until somebody closes it.
#[component]
fn CloseOut() -> impl IntoView {
    let desk = Desk::get();
    let open = follow(move || {
        desk.visit
            .with(|v| v.as_ref().is_some_and(|v| Head::of(v).unclosed))
    });
    let closed = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| v.closed.as_ref().map(|(how, _)| how.clone()))
        })
    });
    view! {
        {live(move || open.get().then(|| view! {
            <section class="found caution">
                <h2>"Not closed"</h2>
                <p>"Somebody was to look further. Who did?"</p>
                <div class="row">
                    {["Seen by speech-language pathology", "Seen by the doctor"].into_iter().map(|how| view! {
                        <button type="button" on:click=press(move |_| desk.record([Event::Closed(how.to_owned())]))>
                            {how}
                        </button>
                    }).collect_view()}
                </div>
                <WordsField
                    id="closed-by"
                    label="or in your own words. No names."
                    value=String::new()
                    most=80
                    take=Callback::new(move |words: String| {
                        if !words.trim().is_empty() { desk.record([Event::Closed(words)]) }
                    })
                />
            </section>
        }))}
        {live(move || closed.get().map(|how| view! { <p class="figure">{format!("Closed: {how}")}</p> }))}
    }
}

/// Person and place, filled in or corrected afterwards.
#[component]
fn Person() -> impl IntoView {
    let desk = Desk::get();
    let details = desk
        .visit
        .with_untracked(|v| v.as_ref().and_then(|v| v.details.clone()));
    let label = details
        .as_ref()
        .map_or(String::new(), |d| d.label.as_str().to_owned());
    let form = Form::new(label, details.as_ref());
    let kept = RwSignal::new(false);
    let keep = move |_| {
        if let Some(details) = form.read() {
            desk.record([Event::Details(details)]);
            kept.set(true);
        }
    };
    view! {
        <details class="more">
            <summary>"Person and place"</summary>
            <DetailsFields form=form/>
            <button type="button" on:click=press(keep)>"Keep"</button>
            <p role="status">{live(move || kept.get().then_some("Kept."))}</p>
        </details>
    }
}

/// The whole record as a file, and deleting it.
#[component]
fn Keep() -> impl IntoView {
    let desk = Desk::get();
    let sure = RwSignal::new(false);
    let problem = RwSignal::new(String::new());
    let save = move |_| {
        let Some(id) = desk
            .visit
            .with_untracked(|v| v.as_ref().map(|v| v.id.clone()))
        else {
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
        let Some(mut visit) = desk.visit.get_untracked() else {
            return;
        };
        let tombstone = Envelope {
            device: ids::device_id(),
            visit: visit.id.clone(),
            seq: visit.next,
            schema: SCHEMA,
            key: String::new(),
            at: clock::now(),
            body: body(&Event::Deleted),
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
    view! {
        <details class="more">
            <summary>"Keep a copy, delete"</summary>
            <button type="button" on:click=press(save)>"Save the whole record as a file"</button>
            {live(move || if sure.get() {
                view! {
                    <p>"Everything of this visit goes from this phone, for good."</p>
                    <div class="row">
                        <button type="button" on:click=press(move |_| sure.set(false))>"Keep it"</button>
                        <button type="button" class="grave" on:click=press(delete)>"Delete for good"</button>
                    </div>
                }.into_any()
            } else {
                view! {
                    <button type="button" on:click=press(move |_| sure.set(true))>"Delete this visit"</button>
                }.into_any()
            })}
            <p class="problem" role="alert">{live(move || problem.get())}</p>
        </details>
    }
}
