//! Small parts that every page is built of.

use leptos::prelude::*;

use super::desk::Desk;
use super::keeper::Saved;
use super::live::{follow, live, press, said};
use super::route::{Page, Route};
use crate::browser::clock;
use crate::measure::decimals::decimals;
use crate::record::event::Event;

/// The frame of a page: back, title, whether it is saved, and the page below.
#[component]
pub(super) fn Frame(
    /// The heading.
    #[prop(into)]
    title: Signal<String>,
    /// Where "back" leads.
    back: Route,
    /// Whether a pad stands at its lower edge.
    #[prop(optional)]
    with_pad: bool,
    /// The page.
    children: Children,
) -> impl IntoView {
    let desk = Desk::get();
    // Followed, so that a tap on the pad does not draw it anew.
    let label = follow(move || whose(desk));
    view! {
        <header class="top">
            <button class="back" type="button" on:click=press(move |_| desk.go(back.clone()))>
                <span aria-hidden="true">"\u{2039}"</span>
                <span class="for-reader">"Back"</span>
            </button>
            <div class="title">
                <h1 tabindex="-1">{title}</h1>
                {live(move || label.get().map(|label| view! { <p class="whose">{label}</p> }))}
            </div>
            <SavedMark/>
        </header>
        <main class:with-pad=with_pad class:still=move || desk.still.get()>{children()}</main>
    }
}

/// Whose page it is, on every page of a visit but the one that has it as its title.
fn whose(desk: Desk) -> Option<String> {
    match desk.route.get() {
        Route::Visit(_, page) if page != Page::Overview => {
            desk.visit.with(|v| v.as_ref().map(|v| v.label()))
        }
        _ => None,
    }
}

/// Choking can come at any time: the way to its page is on every page of a visit.
#[component]
pub(super) fn ChokingButton() -> impl IntoView {
    let desk = Desk::get();
    let open = move |_| {
        if desk
            .visit
            .with_untracked(|v| v.as_ref().is_some_and(|v| v.choking().is_none()))
        {
            desk.record([Event::Choking(clock::now())]);
        }
        desk.turn(Page::Choking);
    };
    view! { <button type="button" class="grave" on:click=press(open)>"Choking"</button> }
}

/// Whether everything is saved. Says "saved" only after the store confirmed.
#[component]
fn SavedMark() -> impl IntoView {
    let desk = Desk::get();
    let words = move || match desk.saved.get() {
        Saved::Yes => "Saved",
        Saved::Saving => "Saving",
        Saved::Failed(_) => "Not saved",
    };
    let class = move || match desk.saved.get() {
        Saved::Failed(_) => "saved failed",
        _ => "saved",
    };
    let shown = move || desk.visit.with(Option::is_some);
    view! { <p class=class>{live(move || shown().then(words))}</p> }
}

/// The way out of a visit that any page offers: its overview.
pub(super) fn overview_of(desk: Desk) -> Route {
    desk.visit.with_untracked(|v| {
        v.as_ref()
            .filter(|v| !v.is_loose())
            .map_or(Route::Home, |v| Route::Visit(v.id.clone(), Page::Overview))
    })
}

/// A plain button. One place draws all of them: each drawn by itself costs the app 1 to 2 KB.
pub(super) fn button(
    class: &'static str,
    words: impl Into<String>,
    on: impl FnMut() + 'static,
) -> AnyView {
    boxed_button(class, words.into(), Box::new(on))
}

fn boxed_button(class: &'static str, words: String, mut on: Box<dyn FnMut()>) -> AnyView {
    view! { <button type="button" class=class on:click=press(move |_| on())>{words}</button> }
        .into_any()
}

/// A paragraph; nothing where there are no words.
pub(super) fn para(class: &'static str, words: impl Into<String>) -> AnyView {
    let words: String = words.into();
    if words.is_empty() {
        ().into_any()
    } else {
        view! { <p class=class>{words}</p> }.into_any()
    }
}

/// A row of choices of which one is pressed: real radio behaviour by pressed buttons.
#[component]
pub(super) fn Choices(
    /// What is asked.
    #[prop(into)]
    label: String,
    /// Ids and words.
    options: Vec<(String, String)>,
    /// The id chosen, if one is.
    #[prop(into)]
    chosen: Signal<Option<String>>,
    /// Called with the id pressed; pressing the chosen one again takes it back.
    pick: Callback<Option<String>>,
) -> impl IntoView {
    let buttons = options
        .into_iter()
        .map(|(id, words)| {
            let mine = id.clone();
            let on = Signal::derive(move || chosen.get().as_deref() == Some(mine.as_str()));
            let choose = move |_| {
                pick.run((!on.get_untracked()).then(|| id.clone()));
            };
            view! {
                <button
                    type="button"
                    class="choice"
                    aria-pressed=said(move || on.get().to_string())
                    on:click=press(choose)
                >
                    {words}
                </button>
            }
        })
        .collect_view();
    view! {
        <div class="choices" role="group" aria-label=label.clone()>
            <p class="ask">{label.clone()}</p>
            <div class="row">{buttons}</div>
        </div>
    }
}

/// A number with a stepper: typed or pressed, with a message beside the field.
#[component]
pub(super) fn NumberField(
    /// Id of the field, unique on the page.
    id: &'static str,
    /// What is asked.
    label: &'static str,
    /// The unit, in words.
    unit: &'static str,
    /// What the field holds from the record, in tenths of the unit.
    #[prop(into)]
    value: Signal<Option<i32>>,
    /// Least and most, in the unit.
    range: (i32, i32),
    /// What one press changes, in tenths of the unit; zero for a field that is only typed, as a
    /// stray press must not make a reading.
    step: i32,
    /// What a press of a second pair of buttons changes, in tenths; zero for none.
    #[prop(optional)]
    coarse: i32,
    /// Called with a number that was taken, in tenths of the unit, or none for an empty field.
    take: Callback<Option<i32>>,
) -> impl IntoView {
    let (least, most) = range;
    // What is typed stays in the field, taken or not: nothing typed is lost to a message.
    let typed = RwSignal::new(value.get_untracked().map(shown).unwrap_or_default());
    let message = RwSignal::new(String::new());
    let read = move |text: String| {
        typed.set(text.clone());
        if text.trim().is_empty() {
            message.set(String::new());
            take.run(None);
            return;
        }
        match crate::clinical::task::parse_tenths(&text, least, most, unit) {
            Ok(tenths) => {
                message.set(String::new());
                take.run(Some(tenths));
            }
            Err(error) => message.set(error.to_string()),
        }
    };
    let nudge = move |by: i32| {
        let now = value.get_untracked();
        let next = match now {
            Some(tenths) => tenths + by,
            // The first press lands on the nearer end, from which one steps inwards.
            None if by > 0 => by,
            None => most * 10,
        };
        read(shown(next.clamp(least * 10, most * 10)));
    };
    let problem = format!("{id}-problem");
    let described = problem.clone();
    view! {
        <div class="number">
            <label for=id>{label}</label>
            <div class="stepper" class:typed=(step == 0 || coarse > 0)>
                {(step > 0 && coarse == 0).then(|| view! {
                    <button type="button" aria-label=format!("{label}: less") on:click=press(move |_| nudge(-step))>
                        "\u{2212}"
                    </button>
                })}
                <input
                    id=id
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    maxlength="20"
                    prop:value=said(move || typed.get())
                    aria-describedby=described
                    aria-invalid=said(move || (!message.get().is_empty()).to_string())
                    on:input=move |event| read(event_target_value(&event))
                />
                <span class="unit">{unit}</span>
                {(step > 0 && coarse == 0).then(|| view! {
                    <button type="button" aria-label=format!("{label}: more") on:click=press(move |_| nudge(step))>
                        "+"
                    </button>
                })}
            </div>
            {(coarse > 0).then(|| view! {
                <div class="row steps-of">
                    {[-coarse, -step, step, coarse].map(|by| view! {
                        <button type="button" on:click=press(move |_| nudge(by))>
                            {if by < 0 { "\u{2212}" } else { "+" }}{shown(by.abs())}
                        </button>
                    })}
                </div>
            })}
            <p class="problem" id=problem role="alert">{live(move || message.get())}</p>
        </div>
    }
}

/// Tenths as they are typed: "15" or "15.5".
fn shown(tenths: i32) -> String {
    if tenths % 10 == 0 {
        (tenths / 10).to_string()
    } else {
        decimals(f64::from(tenths) / 10.0, 1)
    }
}

/// A line of free words that is kept as it is typed.
#[component]
pub(super) fn WordsField(
    /// Id of the field, unique on the page.
    id: &'static str,
    /// What is asked.
    label: &'static str,
    /// What the record holds.
    value: String,
    /// Most characters.
    most: u32,
    /// Called when the field is left, with what it holds.
    take: Callback<String>,
) -> impl IntoView {
    view! {
        <div class="words">
            <label for=id>{label}</label>
            <input
                id=id
                type="text"
                autocomplete="off"
                maxlength=most.to_string()
                prop:value=value
                on:change=move |event| take.run(event_target_value(&event))
            />
        </div>
    }
}
