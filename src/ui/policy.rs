//! Local policy: what is in force, why, and the way of a policy file in and out.

use leptos::ev;
use leptos::prelude::*;
use leptos::task::spawn_local;

use super::banner::file_name;
use super::desk::Desk;
use super::live::{changed, live, press, said};
use super::parts::Frame;
use super::route::Route;
use crate::browser::{page, pick, prefs, share};
use crate::clinical::policy::file::{self, MOST_BYTES};
use crate::clinical::policy::{Policy, PolicyFileError, SETTINGS, Setting, differing, fixed};

/// The page.
#[component]
pub(super) fn PolicyPage() -> impl IntoView {
    let desk = Desk::get();
    // A policy that would be put in force, as a file's text; empty for none.
    let offered = RwSignal::new(String::new());
    let problem = RwSignal::new(String::new());
    let done = RwSignal::new(String::new());
    // What is in force changes only by what is said to be done.
    let in_force = move || {
        done.track();
        prefs::policy_in_force()
    };
    let offer = move |text: &str| match file::parse(text) {
        Ok(new) if prefs::policy().is_ok_and(|now| now == new) => {
            problem.set("Nothing would change: this policy is in force already.".to_owned());
        }
        Ok(new) => {
            offered.set(file::write(&new));
            desk.said.set("What would change is listed.".to_owned());
        }
        Err(error) => refuse(problem, &error),
    };
    let clear = move || {
        offered.set(String::new());
        problem.set(String::new());
        done.set(String::new());
    };
    let take = move |event: ev::Event| {
        let Some(file) = pick::chosen(&event) else {
            return;
        };
        clear();
        if file.is_over(MOST_BYTES) {
            refuse(problem, &PolicyFileError::TooLarge);
            return;
        }
        spawn_local(async move {
            match file.text().await {
                Ok(text) => offer(&text),
                Err(why) => problem.set(format!("The file could not be opened ({why}).")),
            }
        });
    };
    let save = move |_| {
        clear();
        let text = file::write(&prefs::policy_in_force());
        match share::save_file(&file_name("policy", "json"), &text) {
            Ok(()) => done.set("Saved as a file.".to_owned()),
            Err(why) => problem.set(format!("Saving did not work ({why}).")),
        }
    };
    let default = move |_| {
        clear();
        offer(&file::write(&Policy::default()));
    };
    let put_in_force = move |_| {
        let text = offered.get_untracked();
        clear();
        if prefs::keep_policy(&text) {
            desk.policy_lost.set(String::new());
            done.set("This policy is in force now.".to_owned());
            page::scroll_to_top();
            page::focus_heading();
        } else {
            problem.set(
                "This phone keeps nothing for Penlight, so the policy in force stays.".to_owned(),
            );
        }
    };
    let changes = move || {
        let now = in_force();
        let Ok(new) = file::parse(&offered.get()) else {
            return Vec::new();
        };
        let name = (now.name != new.name).then(|| pair("Name", &new.name, &now.name));
        let changed = differing(&now, &new).map(|s| {
            let words = |policy| s.words((s.get)(policy));
            pair(s.title, &words(&new), &words(&now))
        });
        name.into_iter().chain(changed).collect()
    };
    let summary = move || {
        let now = in_force();
        let n = differing(&now, &Policy::default()).count();
        format!(
            "In force: {}. {n} of {} settings differ from Penlight's default.",
            now.name,
            SETTINGS.len()
        )
    };
    view! {
        <Frame title="Local policy" back=Route::Settings>
            <p class="advice">{live(summary)}</p>
            <p class="small">
                "It holds for visits begun from now on. A visit keeps the policy it was begun under, and every \
                 handover names it. Nothing is set here by hand: an organisation hands its policy out as a file. \
                 Save this one, change its values and its name in any text editor, and take it in. Published \
                 figures can't be set."
            </p>
            <div class="words">
                <label for="policy-file">"Take a policy file in"</label>
                <input
                    id="policy-file"
                    type="file"
                    accept=".json,application/json"
                    aria-describedby="policy-problem"
                    on:change=changed(take)
                />
                <p class="problem" id="policy-problem" role="alert">{live(move || problem.get())}</p>
            </div>
            <section class=said(move || if offered.get().is_empty() { "away" } else { "found" })>
                <h2>"What would change"</h2>
                <ul class="pairs">{live(move || listed(changes()))}</ul>
                <div class="row">
                    <button type="button" on:click=press(put_in_force)>"Use this policy"</button>
                    <button type="button" on:click=press(move |_| clear())>"Leave it as it is"</button>
                </div>
            </section>
            <p class="figure" role="status">{live(move || done.get())}</p>
            <div class="row">
                <button type="button" on:click=press(save)>"Save this policy as a file"</button>
                <button type="button" on:click=press(default)>"Back to Penlight's default"</button>
            </div>
            <h2>"Settings"</h2>
            <ul class="pairs">
                {live(move || {
                    let now = in_force();
                    listed(SETTINGS.iter().map(|setting| described(setting, &now)).collect())
                })}
            </ul>
            <details class="why">
                <summary>{format!("Fixed choices, and why: {}", fixed().count())}</summary>
                <p class="small">
                    "No published rule was found for these either, but safety or the meaning of a record hangs \
                     on them. Each has one value, its default, and no policy file changes it."
                </p>
                <ul class="pairs">
                    {listed(fixed().map(|(what, why)| (what.to_owned(), format!("Fixed: {why}"))).collect())}
                </ul>
            </details>
        </Frame>
    }
}

fn refuse(problem: RwSignal<String>, error: &PolicyFileError) {
    problem.set(format!("{error} The policy in force stays."));
}

/// Lines of a list: what it is, and what is to be said about it.
fn listed(lines: Vec<(String, String)>) -> AnyView {
    lines
        .into_iter()
        .map(|(what, more)| view! { <li><b>{what}</b>{more}</li> })
        .collect_view()
        .into_any()
}

/// "Adults: no water at or above: 24 breaths a minute", "now 25 breaths a minute".
fn pair(title: &str, new: &str, now: &str) -> (String, String) {
    (format!("{title}: {new}"), format!("Now {now}"))
}

/// A setting with its value; whether that is Penlight's, why, and what a file may say.
fn described(setting: &Setting, now: &Policy) -> (String, String) {
    let value = (setting.get)(now);
    let mut more = if value == setting.default {
        "As Penlight's default. ".to_owned()
    } else {
        format!(
            "Differs from Penlight's default: {}. ",
            setting.words(setting.default)
        )
    };
    more.push_str(setting.why);
    more.push_str(&format!(
        " In the file: {}, {}.",
        setting.key,
        setting.allowed()
    ));
    (format!("{}: {}", setting.title, setting.words(value)), more)
}
