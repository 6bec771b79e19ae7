//! The handover: what to do until review, the text, and its ways out.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::banner::file_name;
use super::desk::Desk;
use super::follow::{Follow, follow};
use super::parts::{big, choices, choking_button, folded, frame, one_of, words_field};
use super::route::{Page, Route};
use super::told::{clock_now, outdated, told};
use crate::browser::share;
use crate::draw::{Drawn, Piece, all, el, live, said};
use crate::handover::action::{missing, standing, suggested};
use crate::handover::nursing::{self, Clock, Written};
use crate::handover::{full_note, levels};
use crate::record::event::{Action, ByWhen, Event, Plan, Route as Way, Text, Whom};
use crate::record::visit::Visit;
use crate::record::way;

/// What is told while a watch runs.
const STILL_WATCHING: &str = "The watch is still running: the text may change. Wait for it, or \
    say in the handover that it was cut.";

/// The page.
pub(super) fn handover_page() -> Piece {
    let desk = Desk::get();
    let back = desk
        .visit
        .with_untracked(|v| v.map_or(Route::Home, |v| Route::Visit(v.id.clone(), Page::Decision)));
    // Drawn anew when the verdict or its reasons change: what was pressed for others does not stand.
    let basis = follow(move || {
        desk.visit.with(|v| {
            let decision = v?.decision()?;
            let needed = decision.verdict.needs_action();
            needed.then(|| standing(&decision, &Plan::default()).verdict)
        })
    });
    let watching = follow(move || {
        desk.visit
            .with(|v| v.is_some_and(|v| way::watched(v).is_some()))
    });
    frame(
        "Handover".into(),
        back,
        all![
            outdated(),
            live(move || { watching.get().then(|| el("p.advice").with(STILL_WATCHING)) }),
            live(move || basis.get().map(|_| until_review())),
            text_and_ways(),
            levels(),
            told(),
            choking_button()
        ],
    )
}

/// The plan as far as it was made for the decision as it stands.
fn plan_now(visit: Option<&Visit>) -> Plan {
    visit
        .and_then(|v| v.decision().map(|d| standing(&d, &v.plan)))
        .unwrap_or_default()
}

/// Changes the plan and records it.
fn plan(desk: Desk, change: impl FnOnce(&mut Plan)) {
    let before = desk.visit.with_untracked(plan_now);
    let mut plan = before.clone();
    change(&mut plan);
    if plan != before {
        desk.record([Event::Plan(plan)]);
    }
}

fn planned<T: Send + Sync + Clone + PartialEq + 'static>(
    desk: Desk,
    f: impl Fn(&Plan) -> T + Send + Sync + 'static,
) -> Follow<T> {
    follow(move || desk.visit.with(|v| f(&plan_now(v))))
}

/// What to do until review, to whom, by when.
fn until_review() -> Piece {
    let desk = Desk::get();
    let action = planned(desk, |p| p.action);
    let (whom, by_when) = desk
        .visit
        .with_untracked(|v| v.and_then(|v| v.decision()))
        .map_or((Whom::Slp, ByWhen::Today), |d| suggested(&d));
    let chosen_whom = planned(desk, move |p| Some(p.whom.unwrap_or(whom)));
    let chosen_when = planned(desk, move |p| Some(p.by_when.unwrap_or(by_when)));
    el("section.until")
        .with(el("h2").with("Until reviewed"))
        .with(
            el("div.actions")
                .attr("role", "group")
                .attr("aria-label", "Until reviewed")
                .with(
                    Action::ALL
                        .into_iter()
                        .map(|a| {
                            el("button.choice")
                                .attr(
                                    "aria-pressed",
                                    said(move || (action.get() == Some(a)).to_string()),
                                )
                                .press(move |_| plan(desk, |p| p.action = Some(a)))
                                .with(a.button())
                        })
                        .collect::<Piece>(),
                ),
        )
        .with(live(move || {
            asks_why(desk, action.get()).then(|| {
                let reasons = [
                    "the plan in force already covers this",
                    "the doctor decided so",
                    "comfort comes first",
                ];
                let because = planned(desk, |p| Some(p.because.clone()).filter(|b| !b.is_empty()));
                all![
                    choices(
                        "Because".into(),
                        reasons
                            .iter()
                            .map(|r| ((*r).to_owned(), crate::wording::words::capital(r)))
                            .collect(),
                        because.into(),
                        Callback::new(move |id: Option<String>| plan(desk, |p| p.because =
                            id.unwrap_or_default()))
                    ),
                    words_field(
                        "because-own",
                        "or in your own words",
                        said(move || {
                            let because = because.get().unwrap_or_default();
                            let offered = reasons.contains(&because.as_str());
                            if offered { String::new() } else { because }
                        }),
                        80,
                        Callback::new(move |words: String| {
                            if !words.trim().is_empty() {
                                plan(desk, |p| p.because = words)
                            }
                        })
                    )
                ]
            })
        }))
        .with(
            folded(live(move || {
                format!(
                    "To {}, {}",
                    chosen_whom.get().unwrap_or(whom).words(),
                    chosen_when.get().unwrap_or(by_when).words(),
                )
            }))
            .with(one_of(
                "To",
                &Whom::ALL,
                Whom::words,
                chosen_whom.into(),
                Callback::new(move |whom| plan(desk, |p| p.whom = whom)),
            ))
            .with(one_of(
                "By",
                &ByWhen::ALL,
                ByWhen::words,
                chosen_when.into(),
                Callback::new(move |when| plan(desk, |p| p.by_when = when)),
            )),
        )
        .piece()
}

/// Whether an action needs its reason.
fn asks_why(desk: Desk, action: Option<Action>) -> bool {
    match action {
        Some(Action::KeepPlan) => true,
        Some(Action::AcknowledgedRisk) => desk
            .visit
            .with_untracked(|v| v.is_some_and(|v| !v.exam.has_risk_plan())),
        _ => false,
    }
}

/// Drink and food levels, picked by the clinician, and a remark.
fn levels() -> Piece {
    let desk = Desk::get();
    let drink = planned(desk, |p| p.drink.map(|l| l.to_string()));
    let food = planned(desk, |p| p.food.map(|l| l.to_string()));
    let remark = planned(desk, |p| Some(p.remark.clone()));
    let offer = |range: std::ops::RangeInclusive<u8>, name: fn(u8) -> Option<&'static str>| {
        range
            .filter_map(|l| name(l).map(|n| (l.to_string(), n.to_owned())))
            .collect::<Vec<_>>()
    };
    folded("Levels you set, a remark")
        .with(el("p.small").with(
            "Recorded as you set them; never derived from this screen. Left out where nothing is \
                 given by mouth.",
        ))
        .with(choices(
            "Drinks".into(),
            offer(0..=4, levels::drink),
            drink.into(),
            Callback::new(move |id: Option<String>| {
                plan(desk, |p| p.drink = id.and_then(|l| l.parse().ok()))
            }),
        ))
        .with(choices(
            "Food".into(),
            offer(3..=7, levels::food),
            food.into(),
            Callback::new(move |id: Option<String>| {
                plan(desk, |p| p.food = id.and_then(|l| l.parse().ok()))
            }),
        ))
        .with(words_field(
            "remark",
            "Remark. No names.",
            said(move || remark.get().unwrap_or_default()),
            120,
            Callback::new(move |words| plan(desk, |p| p.remark = words)),
        ))
        .piece()
}

/// The texts, with the words on their buttons and the names of their files.
const TEXTS: [(Text, &str, &str); 2] = [
    (Text::Nursing, "For the nurse", "handover"),
    (Text::FullNote, "Full note", "full-note"),
];

/// The name of a text's file.
fn named(which: Text) -> &'static str {
    TEXTS.iter().find(|t| t.0 == which).map_or("", |t| t.2)
}

/// A text as it would leave now.
fn text_now(desk: Desk, which: Text) -> Option<(Written, Clock)> {
    let now = clock_now();
    desk.visit.with(|v| {
        v.and_then(|v| match which {
            Text::Nursing => nursing::write(v, &now),
            Text::FullNote => full_note::write(v, &now),
        })
        .map(|text| (text, now))
    })
}

/// The text, and the ways it can leave.
fn text_and_ways() -> Piece {
    let desk = Desk::get();
    let blocked = follow(move || {
        desk.visit
            .with(|v| v.and_then(|v| v.decision().and_then(|d| missing(&d, &v.plan, &v.exam))))
    });
    let problem = RwSignal::new(String::new());
    let done = RwSignal::new(String::new());
    // The one shown is the one that leaves.
    let which = RwSignal::new(Text::Nursing);
    // Nothing leaves before it is said what to do; the message goes as soon as it is answered.
    let asked = RwSignal::new(false);
    let ready = move || {
        problem.set(String::new());
        let free = blocked.get_untracked().is_none();
        asked.set(!free);
        free.then(|| text_now(desk, which.get_untracked()))
            .flatten()
    };
    let left = move |written: Written, route: Way, words: &'static str, clock: Clock| {
        desk.record([written.issued(route, &clock.time)]);
        done.set(format!("{words} at {}", clock.time));
    };
    let copy = move |_| {
        if let Some((written, clock)) = ready() {
            let copying = share::copy(&written.text);
            spawn_local(async move {
                match copying.await {
                    Ok(()) => left(written, Way::Copied, "Copied", clock),
                    Err(why) => problem.set(format!(
                        "Copying did not work ({why}). Save it as a file instead."
                    )),
                }
            });
        }
    };
    let send = move |_| {
        if let Some((written, clock)) = ready() {
            let sharing = share::share("Handover", &written.text);
            spawn_local(async move {
                match sharing.await {
                    Ok(true) => left(written, Way::Shared, "Shared", clock),
                    Ok(false) => problem.set("Not shared: it was called off.".to_owned()),
                    Err(why) => {
                        problem.set(format!("Sharing did not work ({why}). Copy it instead."))
                    }
                }
            });
        }
    };
    let save = move |_| {
        if let Some((written, clock)) = ready() {
            match share::save_file(&file_name(named(written.which), "txt"), &written.text) {
                Ok(()) => left(written, Way::Saved, "Saved as a file", clock),
                Err(why) => problem.set(format!("Saving did not work ({why}). Copy it instead.")),
            }
        }
    };
    all![
        // Outside the section at whose lower edge the ways out stay: they must not cover it.
        choices(
            "Text".into(),
            TEXTS
                .iter()
                .map(|t| (t.2.to_owned(), t.1.to_owned()))
                .collect(),
            Signal::derive(move || Some(named(which.get()).to_owned())),
            Callback::new(move |id: Option<String>| {
                if let Some(text) = TEXTS.iter().find(|t| id.as_deref() == Some(t.2)) {
                    which.set(text.0);
                    done.set(String::new());
                }
            })
        ),
        el("section")
            .with(el("pre.handover").attr("tabindex", "0").with(live(move || {
                text_now(desk, which.get()).map(|(written, _)| written.text)
            })))
            .with(
                el("div.foot.ways")
                    .with(
                        el("p.figure")
                            .attr("role", "status")
                            .with(live(move || done.get()))
                    )
                    .with(el("p.problem").attr("role", "alert").with(live(move || {
                        match (asked.get(), blocked.get()) {
                            (true, Some(words)) => words.to_owned(),
                            _ => problem.get(),
                        }
                    })))
                    .with(big("primary", "Copy", copy))
                    .with(
                        el("div.row")
                            .with(
                                share::can_share().then(|| el("button").press(send).with("Share"))
                            )
                            .with(el("button").press(save).with("Save as a file"))
                    )
            )
    ]
}
