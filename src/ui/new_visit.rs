//! A new visit: everything optional but the label, which is suggested.

use leptos::prelude::*;

use super::desk::Desk;
use super::details::{DetailsFields, Form};
use super::history::head_row;
use super::live::{live, press};
use super::parts::{Choices, Frame, para};
use super::route::Route;
use crate::browser::{clock, prefs, sound};
use crate::clinical::order::Order;
use crate::clinical::person::Role;
use crate::clinical::screen::ScreenId;
use crate::clinical::tasks;

/// A suggested label: which visit of the day on this phone, and when. Never a bed alone.
fn suggested(desk: Desk) -> String {
    let now = clock::local(clock::now().wall);
    let today = desk.heads.with_untracked(|heads| {
        heads
            .iter()
            .filter(|h| !h.loose && clock::local(h.opened).date == now.date)
            .count()
    });
    format!("Visit {}, {}", today + 1, now.time)
}

/// The page.
#[component]
pub(super) fn NewVisitPage(
    /// The screen to begin with.
    screen: ScreenId,
) -> impl IntoView {
    let desk = Desk::get();
    let form = Form::new(suggested(desk), None);
    let role = Signal::derive(move || Some(role_id(desk.prefs.get().role).to_owned()));
    let pick_role = Callback::new(move |id: Option<String>| {
        let role = if id.as_deref() == Some("slp") {
            Role::Slp
        } else {
            Role::Screener
        };
        desk.prefs.update(|p| p.role = role);
        prefs::save(&desk.prefs.get_untracked());
    });
    let begin = move |_| {
        sound::unlock();
        if let Some(details) = form.read() {
            desk.begin(details, Some(screen), desk.prefs.get_untracked().role);
        }
    };
    // What this phone keeps of the order is said before it holds.
    let order = desk.prefs.get_untracked().order;
    let kept = if order != Order::default() && screen.screen().has_order() {
        let titles: Vec<&str> = order
            .tasks()
            .iter()
            .map(|t| tasks::spec(*t).title)
            .collect();
        let titles = titles.join(", ");
        let titles = if titles.is_empty() { "none" } else { &titles };
        format!("Syllables, as kept: {titles}")
    } else {
        String::new()
    };
    view! {
        <Frame title=screen.screen().title back=Route::Home>
            <Unclosed/>
            <DetailsFields form=form/>
            <Choices
                label="You are a"
                options=vec![
                    ("screener".to_owned(), "Clinician trained to screen".to_owned()),
                    ("slp".to_owned(), "Speech-language pathologist".to_owned()),
                ]
                chosen=role
                pick=pick_role
            />
            <p class="small">"Local policy: "{prefs::policy_in_force().name}</p>
            {para("small", kept)}
            <div class="foot">
                <button type="button" class="big primary" on:click=press(begin)><b>"Begin"</b></button>
            </div>
        </Frame>
    }
}

fn role_id(role: Role) -> &'static str {
    match role {
        Role::Screener => "screener",
        Role::Slp => "slp",
    }
}

/// An earlier refer or stop that nobody closed, so that it is not overlooked at the next visit.
#[component]
fn Unclosed() -> impl IntoView {
    let desk = Desk::get();
    let open = move || {
        desk.heads
            .get()
            .into_iter()
            .filter(|h| h.unclosed && !h.deleted)
            .collect::<Vec<_>>()
    };
    live(move || {
        let open = open();
        (!open.is_empty()).then(|| {
            view! {
                <section class="found caution">
                    <h2>"Earlier, and not closed. Same person?"</h2>
                    <ul class="heads">
                        {open.into_iter().map(|h| head_row(desk, h)).collect_view()}
                    </ul>
                </section>
            }
        })
    })
}
