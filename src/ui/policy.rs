//! Local policy: what is in force, why, and the way of a policy file in and out.

use leptos::ev;
use leptos::prelude::*;
use leptos::task::spawn_local;

use super::banner::file_name;
use super::desk::Desk;
use super::parts::frame;
use super::route::Route;
use crate::browser::{page, pick, prefs, share};
use crate::clinical::knowledge::policy::file;
use crate::clinical::knowledge::policy::file::MOST_BYTES;
use crate::clinical::knowledge::policy::{
    Policy, PolicyFileError, SETTINGS, Setting, differing, fixed,
};
use crate::draw::{Drawn, Piece, all, el, live, said};

/// For which visits a policy holds, and how it is set.
const HOW_SET: &str = "It holds for visits begun from now on. A visit keeps the policy it was \
    begun under, and every handover names it. Nothing is set here by hand: an organisation hands \
    its policy out as a file. Save this one, change its values and its name in any text editor, \
    and take it in. Published figures can't be set.";

/// Why some choices are fixed.
const WHY_FIXED: &str = "No published rule was found for these either, but safety or the meaning \
    of a record hangs on them. Each has one value, its default, and no policy file changes it.";

/// The page.
pub(super) fn policy_page() -> Piece {
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
            pair(s.title(), &words(&new), &words(&now))
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
    frame(
        "Local policy".into(),
        Route::Settings,
        all![
            el("p.advice").with(live(summary)),
            el("p.small").with(HOW_SET),
            el("div.words")
                .with(
                    el("label")
                        .attr("for", "policy-file")
                        .with("Take a policy file in")
                )
                .with(
                    el("input")
                        .attr("id", "policy-file")
                        .attr("type", "file")
                        .attr("accept", ".json,application/json")
                        .attr("aria-describedby", "policy-problem")
                        .on("change", take)
                )
                .with(
                    el("p.problem")
                        .attr("id", "policy-problem")
                        .attr("role", "alert")
                        .with(live(move || problem.get()))
                ),
            el("section")
                .class(said(move || if offered.get().is_empty() {
                    "away"
                } else {
                    "found"
                }))
                .with(el("h2").with("What would change"))
                .with(el("ul.pairs").with(live(move || listed(changes()))))
                .with(
                    el("div.row")
                        .with(el("button").press(put_in_force).with("Use this policy"))
                        .with(
                            el("button")
                                .press(move |_| clear())
                                .with("Leave it as it is")
                        )
                ),
            el("p.figure")
                .attr("role", "status")
                .with(live(move || done.get())),
            el("div.row")
                .with(el("button").press(save).with("Save this policy as a file"))
                .with(
                    el("button")
                        .press(default)
                        .with("Back to Penlight's default")
                ),
            el("h2").with("Settings"),
            el("ul.pairs").with(live(move || {
                let now = in_force();
                listed(
                    SETTINGS
                        .iter()
                        .map(|setting| described(setting, &now))
                        .collect(),
                )
            })),
            el("details.why")
                .with(el("summary").with(format!("Fixed choices, and why: {}", fixed().count())))
                .with(el("p.small").with(WHY_FIXED))
                .with(
                    el("ul.pairs").with(listed(
                        fixed()
                            .map(|(what, why)| (what.to_owned(), format!("Fixed: {why}")))
                            .collect()
                    ))
                )
        ],
    )
}

fn refuse(problem: RwSignal<String>, error: &PolicyFileError) {
    problem.set(format!("{error} The policy in force stays."));
}

/// Lines of a list: what it is, and what is to be said about it.
fn listed(lines: Vec<(String, String)>) -> Piece {
    lines
        .into_iter()
        .map(|(what, more)| el("li").with(el("b").with(what)).with(more))
        .collect::<Piece>()
        .piece()
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
    (
        format!("{}: {}", setting.title(), setting.words(value)),
        more,
    )
}
