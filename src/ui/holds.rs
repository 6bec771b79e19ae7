//! What is in the way of a task, and going on past it with a stated reason.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{Follow, follow, live, press};
use super::parts::Choices;
use super::why::rule_fold;
use crate::clinical::go_on::GoOn;
use crate::clinical::hold::{Hold, holds};
use crate::clinical::person::Role;
use crate::clinical::rules;
use crate::clinical::task::TaskId;
use crate::record::event::Event;

/// Offered where a child's reading is held.
const CHART: &str = "it fits the local chart for this age";

/// Reasons offered with one press; any other can be typed.
const REASONS: [&str; 5] = [
    "the team knows",
    "the team agreed",
    "needed for the assessment",
    "person's informed wish",
    "low risk in my judgement",
];

/// What is in the way, each with its way past where there is one. Draws nothing when free.
#[component]
pub(super) fn Holds(
    /// What holds it.
    held: Follow<Vec<Hold>>,
) -> impl IntoView {
    view! {
        {live(move || {
            let now = held.get();
            (!now.is_empty()).then(|| view! {
                <section class="found block">
                    <h2>"Not yet"</h2>
                    <ul>
                        {now.into_iter().map(|hold| view! {
                            <li>
                                <p><b>{crate::clinical::words::capital(&hold.says)}</b></p>
                                {(!hold.advice.is_empty()).then(|| view! { <p>{hold.advice}</p> })}
                                <GoOnPast id=hold.id says=hold.says go_on=hold.go_on/>
                                {rule_fold(hold.rule)}
                            </li>
                        }).collect_view()}
                    </ul>
                </section>
            })
        })}
    }
}

/// The way past one hold, for whoever may take it.
#[component]
pub(super) fn GoOnPast(
    /// The hold.
    id: String,
    /// What it says.
    says: String,
    /// Who may.
    go_on: GoOn,
) -> impl IntoView {
    let desk = Desk::get();
    let role = desk
        .visit
        .with_untracked(|v| v.as_ref().map_or(Role::default(), |v| v.role));
    match go_on {
        GoOn::Never => ().into_any(),
        way if way.open_to(role) => view! { <GoOnWith id=id says=says/> }.into_any(),
        _ => view! {
            <p class="small">"Only a speech-language pathologist may go on past this."</p>
        }
        .into_any(),
    }
}

/// The reason for going on, by press or typed; recorded with who takes it on.
#[component]
fn GoOnWith(
    /// The hold gone past.
    id: String,
    /// What it says.
    says: String,
) -> impl IntoView {
    let desk = Desk::get();
    let asked = RwSignal::new(false);
    let typed = RwSignal::new(String::new());
    let problem = RwSignal::new("");
    let chart = id.starts_with(rules::BREATHING_CHILD.id).then_some(CHART);
    let reasons: Vec<&'static str> = chart.into_iter().chain(REASONS).collect();
    let on = Callback::new(move |because: String| {
        let by = desk
            .visit
            .with_untracked(|v| v.as_ref().map_or(Role::default(), |v| v.role));
        desk.record([Event::WentOn {
            hold: id.clone(),
            because,
            by,
            says: says.clone(),
        }]);
    });
    let say = move |_| {
        let words = typed.get_untracked().trim().to_owned();
        if words.is_empty() {
            problem.set("Say why, in a few words.");
        } else {
            on.run(words);
        }
    };
    view! {
        {live(move || if asked.get() {
            view! {
                <div class="go-on-with">
                    <Choices
                        label="I go on all the same, because ... (this is handed over)"
                        options=reasons.iter().map(|r| ((*r).to_owned(), crate::clinical::words::capital(r))).collect()
                        chosen=Signal::derive(|| None::<String>)
                        pick=Callback::new(move |id: Option<String>| {
                            if let Some(words) = id { on.run(words); }
                        })
                    />
                    <div class="words">
                        <label for="because">"or in your own words"</label>
                        <input
                            id="because"
                            type="text"
                            maxlength="80"
                            autocomplete="off"
                            aria-describedby="because-problem"
                            on:input=move |event| typed.set(event_target_value(&event))
                        />
                        <p class="problem" id="because-problem" role="alert">{live(move || problem.get())}</p>
                        <button type="button" on:click=press(say)>"Go on with this reason"</button>
                    </div>
                </div>
            }.into_any()
        } else {
            view! {
                <button type="button" on:click=press(move |_| asked.set(true))>"Go on all the same"</button>
            }.into_any()
        })}
    }
}

/// The holds of a task, followed as the visit changes.
pub(super) fn held(desk: Desk, task: TaskId) -> Follow<Vec<Hold>> {
    follow(move || {
        desk.visit
            .with(|v| v.as_ref().map_or(Vec::new(), |v| holds(task, &v.exam)))
    })
}
