//! Who holds the phone: asked at each visit, and pressed to begin it. What was pressed last is shown,
//! never taken as given.

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::parts::{big, problem_line};
use crate::browser::{page, prefs};
use crate::clinical::knowledge::person::{Initials, Role};
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::signed::{Signed, SignedError};
use crate::draw::{Drawn, Piece, all, el, said};

/// The presses that begin a visit, one a role; before them the initials, where they are asked for.
pub(super) fn begin_as(policy: Policy, begin: Callback<Signed>) -> Piece {
    let desk = Desk::get();
    let typed = RwSignal::new(String::new());
    let problem = RwSignal::new(String::new());
    let last = desk.prefs.get_untracked().role;
    let offered = Role::offered(&policy);
    let press = move |role: Role| match Signed::read(role, &typed.get_untracked(), &policy) {
        Ok(signed) => {
            problem.set(String::new());
            desk.prefs.update(|p| p.role = Some(role));
            prefs::save(&desk.prefs.get_untracked());
            begin.run(signed);
        }
        Err(error) => {
            problem.set(error.to_string());
            page::to_refused();
        }
    };
    let buttons = offered.iter().copied().map(|role| {
        let press = press.clone();
        let was_last = (last == Some(role)).then(|| el("span").with("Last time on this phone"));
        big("primary", format!("Begin as {}", role.words()), move |_| {
            press(role)
        })
        .with(was_last)
    });
    all![
        offered
            .contains(&Role::Slp)
            .then(|| initials_field(typed, problem)),
        el("div.foot").with(buttons.collect::<Piece>())
    ]
}

fn initials_field(typed: RwSignal<String>, problem: RwSignal<String>) -> Piece {
    el("div.words")
        .with(
            el("label")
                .attr("for", "initials")
                .with("Initials of a speech-language pathologist"),
        )
        .with(
            el("input")
                .attr("id", "initials")
                .attr("type", "text")
                .attr("autocomplete", "off")
                .held(said(move || typed.get()))
                .attr("aria-describedby", "initials-problem")
                .attr(
                    "aria-invalid",
                    said(move || (!problem.get().is_empty()).to_string()),
                )
                .on("input", move |event: ev::Event| {
                    typed.set(event_target_value(&event));
                    let empty = typed.with_untracked(|t| t.trim().is_empty());
                    let error = Initials::parse(&typed.get_untracked()).err();
                    let error = error.filter(|_| !empty).map(SignedError::Initials);
                    problem.set(error.map(|e| e.to_string()).unwrap_or_default());
                }),
        )
        .with(problem_line(problem).attr("id", "initials-problem"))
        .piece()
}
