//! The first page.

use leptos::prelude::*;

use super::desk::Desk;
use super::history::head_row;
use super::live::{follow, live, press};
use super::route::Route;
use super::steps;
use crate::clinical::screen::ScreenId;
use crate::record::head::Head;

/// The first page: begin, go on, look back.
#[component]
pub(super) fn HomePage() -> impl IntoView {
    let desk = Desk::get();
    // A visit on the desk may be newer than the list that was read.
    let current = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .filter(|v| v.next > 0 && !v.deleted && (!v.handed_over() || v.running()))
                .map(Head::of)
        })
    });
    let go_on = move |_| {
        let place = desk.visit.with_untracked(|v| {
            v.as_ref().map(|v| {
                if v.is_loose() {
                    Route::Count(v.id.clone(), None)
                } else {
                    Route::Visit(v.id.clone(), steps::next(v))
                }
            })
        });
        if let Some(place) = place {
            desk.go(place);
        }
    };
    let others = move || {
        let open = current.get().map(|h| h.visit);
        desk.heads
            .get()
            .into_iter()
            .filter(|h| !h.deleted && Some(&h.visit) != open.as_ref())
            .take(3)
            .map(|h| head_row(desk, h))
            .collect_view()
    };
    view! {
        <header class="top home">
            <h1 tabindex="-1">"Penlight"</h1>
        </header>
        <main>
            {live(move || current.get().map(|head| view! {
                <button type="button" class="big go-on" on:click=press(go_on)>
                    <b>"Go on: "{head.label}</b>
                    <span>{head.what}{if head.running { ", running" } else { "" }}</span>
                </button>
            }))}
            {ScreenId::ALL.iter().copied().map(|id| {
                let screen = id.screen();
                view! {
                    <button
                        type="button"
                        class="big"
                        class:primary=id == ScreenId::Swallow
                        on:click=press(move |_| desk.go(Route::NewVisit(id)))
                    >
                        <b>{screen.title}</b>
                        <span>{screen.about}</span>
                    </button>
                }
            }).collect_view()}
            <button type="button" class="big" on:click=press(move |_| desk.go(Route::Single))>
                <b>"One task"</b>
                <span>"Any count or time on its own"</span>
            </button>
            <button type="button" class="big" on:click=press(move |_| desk.begin_count())>
                <b>"Just count something"</b>
                <span>"Stopwatch, any window, taps"</span>
            </button>
            <section class="recent">
                <h2>"Last visits"</h2>
                <ul class="heads">{live(others)}</ul>
                <button type="button" on:click=press(move |_| desk.go(Route::History))>"All visits"</button>
            </section>
            <p class="small">
                {live(move || if desk.stored.get() {
                    "Stored on this phone: opens without a network."
                } else {
                    "Not stored on this phone yet: needs the network to open again."
                })}
            </p>
            <p class="caution">
                "A screen is not a diagnosis and does not see silent aspiration. Emergencies go to your \
                 local procedure. Local policy and the licensed clinician decide."
            </p>
            <div class="row quiet">
                <button type="button" on:click=press(move |_| desk.go(Route::Settings))>"Settings"</button>
                <button type="button" on:click=press(move |_| desk.go(Route::Sources))>"Sources, about"</button>
            </div>
        </main>
    }
}
