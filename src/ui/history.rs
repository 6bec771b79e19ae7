//! Past visits, newest first, a page at a time.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::desk::Desk;
use super::live::{live, press};
use super::parts::Frame;
use super::route::{Page, Route};
use crate::browser::clock;
use crate::measure::time::Millis;
use crate::record::head::Head;

/// How many visits a press brings.
const PAGE: usize = 30;

/// One visit as a line that opens it.
pub(super) fn head_row(desk: Desk, head: Head) -> impl IntoView {
    let when = clock::local(head.opened);
    let place = if head.loose {
        Route::Count(head.visit.clone(), None)
    } else {
        Route::Visit(head.visit.clone(), Page::Overview)
    };
    let state = if head.running {
        "running".to_owned()
    } else {
        head.verdict.clone()
    };
    view! {
        <li>
            <button type="button" class="head" class:unclosed=head.unclosed on:click=press(move |_| desk.go(place.clone()))>
                <b>{head.label.clone()}</b>
                <span>{format!("{} {}, {}", when.date, when.time, head.what)}</span>
                <span class="state">{state}</span>
                {head.unclosed.then(|| view! { <span class="state open">"not closed"</span> })}
            </button>
        </li>
    }
}

/// The page.
#[component]
pub(super) fn HistoryPage() -> impl IntoView {
    let desk = Desk::get();
    let heads = RwSignal::new(Vec::<Head>::new());
    let more = RwSignal::new(true);
    let problem = RwSignal::new(String::new());
    let bring = move || {
        // Several visits may have been touched in the last one's very millisecond, and only some of
        // them have come: that millisecond is asked for again.
        let (again, before) = heads.with_untracked(|h| {
            let last = h.last().map(|h| h.touched);
            let again = h.iter().filter(|h| Some(h.touched) == last).count();
            (again, last.map(|last| last + Millis(1)))
        });
        let most = PAGE + again;
        spawn_local(async move {
            match desk.keeper().heads(most, before).await {
                Ok(mut next) => {
                    more.set(next.len() == most);
                    heads.update(|h| {
                        next.retain(|new| h.iter().all(|old| old.visit != new.visit));
                        h.extend(next);
                    });
                }
                Err(error) => problem.set(error.to_string()),
            }
        });
    };
    bring();
    view! {
        <Frame title="All visits" back=Route::Home>
            <ul class="heads">
                <For each=move || heads.get().into_iter().filter(|h| !h.deleted) key=|h| h.visit.clone() let:head>
                    {head_row(desk, head)}
                </For>
            </ul>
            <p class="problem" role="alert">{live(move || problem.get())}</p>
            {live(move || (!more.get() && heads.with(Vec::is_empty)).then(|| view! { <p>"No visits yet."</p> }))}
            {live(move || more.get().then(|| view! {
                <button type="button" class="big" on:click=press(move |_| bring())><b>"Older visits"</b></button>
            }))}
        </Frame>
    }
}
