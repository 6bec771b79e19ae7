//! What is in the way of a task, and going on past it with a stated reason.

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::parts::{big, choices};
use super::why::rule_fold;
use crate::browser::clock;
use crate::clinical::decision::in_the_way::InTheWay;
use crate::clinical::decision::task_state::TaskState;
use crate::clinical::findings::go_on::{GoOn, Ground};
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::moment::Moment;
use crate::clinical::knowledge::person::Role;
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::rules;
use crate::draw::{Drawn, El, Piece, el, live};
use crate::record::clears::{Clears, clears};
use crate::record::event::Event;
use crate::record::visit::Visit;
use crate::wording::in_the_way as words;
use crate::wording::words::capital;

pub(super) use crate::wording::in_the_way::TAKE_UP;

/// What is in the way, each with its way past where there is one. Draws nothing when free.
pub(super) fn holds(
    // The task's state.
    state: Memo<TaskState>,
) -> Piece {
    let desk = Desk::get();
    live(move || {
        let now = state.get().in_the_way;
        let policy = desk
            .visit
            .with_untracked(|v| v.map(|v| v.exam.policy.clone()))
            .unwrap_or_default();
        (!now.is_empty()).then(|| {
            // What nobody goes past, and nothing can be done about, is not lifted later today.
            let never = |one: &InTheWay| {
                one.who_may_go_on() == GoOn::Never && words::advice(one, &policy).is_empty()
            };
            let heading = if now.iter().any(never) {
                "Not for this person now"
            } else {
                "Not yet"
            };
            let each = now.into_iter().map(|one| item(desk, &one, &policy));
            el("section.found.block")
                .with(el("h2").with(heading))
                .with(el("ul").with(each.collect::<Piece>()))
        })
    })
}

/// One thing in the way: what it is, what to do about it, the way past it, its rule.
fn item(desk: Desk, one: &InTheWay, policy: &Policy) -> El {
    let advice = words::advice(one, policy);
    let says = capital(&words::says(one));
    el("li")
        .with(el("p").with(el("b").with(says)))
        .with((!advice.is_empty()).then(|| el("p").with(advice)))
        .with(what_helps(desk, one))
        .with(go_on_past(one))
        .with(rule_fold(one.rule()))
}

/// The press that takes it away, where there is one.
fn what_helps(desk: Desk, one: &InTheWay) -> Option<El> {
    let words = words::clears(one)?;
    let clears = desk
        .visit
        .with_untracked(|v| v.and_then(|v| clears(one, &v.exam)))?;
    Some(big("primary", words, move |_| match &clears {
        Clears::Page(step) => desk.turn(*step),
        Clears::Press(event) => desk.record([(**event).clone()]),
    }))
}

/// The way past one thing, for whoever may take it.
pub(super) fn go_on_past(one: &InTheWay) -> Piece {
    let desk = Desk::get();
    let role = desk
        .visit
        .with_untracked(|v| v.map_or(Role::default(), |v| v.role));
    match one.who_may_go_on() {
        GoOn::Never => ().piece(),
        way if way.open_to(role) => go_on_with(one),
        _ => el("p.small")
            .with("Only a speech-language pathologist may go on past this.")
            .piece(),
    }
}

/// The reason for going on, by press or typed; recorded with who takes it on.
fn go_on_with(one: &InTheWay) -> Piece {
    let desk = Desk::get();
    let asked = RwSignal::new(false);
    let typed = RwSignal::new(String::new());
    let problem = RwSignal::new("");
    let hold = one.key();
    let chart = matches!(one, Obstacle::Breathing { under, .. }
        if *under == &rules::BREATHING_CHILD)
    .then_some(Ground::FitsChart);
    let grounds: Vec<Ground> = chart.into_iter().chain(Ground::ALL).collect();
    let on = Callback::new(move |(ground, because): (Ground, String)| {
        let (by, initials) = desk
            .visit
            .with_untracked(|v| v.map(|v| (v.role, v.initials.clone())))
            .unwrap_or_default();
        desk.record([Event::WentOn {
            hold: hold.clone(),
            because,
            by,
            initials,
            says: String::new(),
            ground: Some(ground),
        }]);
    });
    let say = move |_| {
        let words = typed.get_untracked().trim().to_owned();
        if words.is_empty() {
            problem.set("Say why, in a few words.");
        } else {
            on.run((Ground::OwnWords, words));
        }
    };
    live(move || {
        if asked.get() {
            el("div.go-on-with")
                .with(choices(
                    "I go on all the same, because ... (this is handed over)".into(),
                    (0_usize..)
                        .zip(&grounds)
                        .map(|(n, ground)| (n.to_string(), capital(words::ground(*ground))))
                        .collect(),
                    Signal::derive(|| None::<String>),
                    picked(grounds.clone(), on),
                ))
                .with(
                    el("div.words")
                        .with(
                            el("label")
                                .attr("for", "because")
                                .with("or in your own words"),
                        )
                        .with(
                            el("input")
                                .attr("id", "because")
                                .attr("type", "text")
                                .attr("maxlength", "80")
                                .attr("autocomplete", "off")
                                .attr("aria-describedby", "because-problem")
                                .on("input", move |event: ev::Event| {
                                    typed.set(event_target_value(&event))
                                }),
                        )
                        .with(
                            el("p.problem")
                                .attr("id", "because-problem")
                                .attr("role", "alert")
                                .with(live(move || problem.get())),
                        )
                        .with(el("button").press(say).with("Go on with this reason")),
                )
                .piece()
        } else {
            el("button")
                .press(move |_| asked.set(true))
                .with("Go on all the same")
                .piece()
        }
    })
}

/// Records the ground that was picked, with its words.
fn picked(grounds: Vec<Ground>, on: Callback<(Ground, String)>) -> Callback<Option<String>> {
    Callback::new(move |n: Option<String>| {
        let n = n.and_then(|n| n.parse::<usize>().ok());
        if let Some(ground) = n.and_then(|n| grounds.get(n)) {
            on.run((*ground, words::ground(*ground).to_owned()));
        }
    })
}

/// Where a visit stands in time now.
pub(super) fn moment(visit: &Visit) -> Moment {
    visit.exam.now.next(clock::now())
}
