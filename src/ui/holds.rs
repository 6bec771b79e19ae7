//! What is in the way of a task, and going on past it with a stated reason.

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::follow::{Follow, follow};
use super::parts::{big, choices};
use super::route::Page;
use super::why::rule_fold;
use crate::browser::clock;
use crate::clinical::decision::fresh;
use crate::clinical::decision::hold;
use crate::clinical::decision::hold::Hold;
use crate::clinical::findings::gate::Group;
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::moment::Moment;
use crate::clinical::knowledge::person::Role;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::water::VOICE_BEFORE;
use crate::draw::{Drawn, Piece, el, live};
use crate::record::event::Event;
use crate::record::visit::Visit;

/// Offered where a child's reading is held.
const CHART: &str = "it fits the local chart for this age";

/// The way back into a screen that was ended.
pub(super) const TAKE_UP: &str = "Take the screen up again";

/// Reasons offered with one press; any other can be typed.
const REASONS: [&str; 5] = [
    hold::TEAM_KNOWS,
    "the team agreed",
    "needed for the assessment",
    "person's informed wish",
    "low risk in my judgement",
];

/// What is in the way, each with its way past where there is one. Draws nothing when free.
pub(super) fn holds(
    // What holds it.
    held: Follow<Vec<Hold>>,
) -> Piece {
    let desk = Desk::get();
    live(move || {
        let now = held.get();
        (!now.is_empty()).then(|| {
            // What nobody goes past, and nothing can be done about, is not lifted later today.
            let never = |h: &Hold| h.go_on == GoOn::Never && h.advice.is_empty();
            let heading = if now.iter().any(never) {
                "Not for this person now"
            } else {
                "Not yet"
            };
            el("section.found.block").with(el("h2").with(heading)).with(
                el("ul").with(
                    now.into_iter()
                        .map(|hold| {
                            el("li")
                                .with(
                                    el("p").with(
                                        el("b").with(crate::wording::words::capital(&hold.says)),
                                    ),
                                )
                                .with((!hold.advice.is_empty()).then(|| el("p").with(hold.advice)))
                                .with((hold.id == hold::ENDED).then(|| {
                                    big("primary", TAKE_UP, move |_| {
                                        desk.record([Event::TakenUpAgain])
                                    })
                                }))
                                .with(again(&hold.id).map(|page| {
                                    big("primary", "Ask again", move |_| desk.turn(page))
                                }))
                                .with(fresh::voice_of(&hold.id).map(|trial| {
                                    // Taken back, it is asked for like one that was not said yet.
                                    let heard = move || Event::Answer {
                                        trial,
                                        question: VOICE_BEFORE.to_owned(),
                                        answer: None,
                                    };
                                    big("primary", "Ask again", move |_| desk.record([heard()]))
                                }))
                                .with(go_on_past(hold.id, hold.says, hold.go_on))
                                .with(rule_fold(hold.rule))
                        })
                        .collect::<Piece>(),
                ),
            )
        })
    })
}

/// Where what is too old is asked again.
pub(super) fn again(hold: &str) -> Option<Page> {
    let asked = |group: &Group| hold.starts_with(fresh::begins(*group));
    if let Some(group) = Group::ALL.into_iter().find(asked) {
        return Some(Page::Gate(group));
    }
    let breaths = hold.starts_with(fresh::BREATHING);
    breaths.then_some(Page::Task(TaskId::Breathing))
}

/// The way past one hold, for whoever may take it.
pub(super) fn go_on_past(
    // The hold.
    id: String,
    // What it says.
    says: String,
    // Who may.
    go_on: GoOn,
) -> Piece {
    let desk = Desk::get();
    let role = desk
        .visit
        .with_untracked(|v| v.map_or(Role::default(), |v| v.role));
    match go_on {
        GoOn::Never => ().piece(),
        way if way.open_to(role) => go_on_with(id, says),
        _ => el("p.small")
            .with("Only a speech-language pathologist may go on past this.")
            .piece(),
    }
}

/// The reason for going on, by press or typed; recorded with who takes it on.
fn go_on_with(
    // The hold gone past.
    id: String,
    // What it says.
    says: String,
) -> Piece {
    let desk = Desk::get();
    let asked = RwSignal::new(false);
    let typed = RwSignal::new(String::new());
    let problem = RwSignal::new("");
    let chart = id.starts_with(rules::BREATHING_CHILD.id).then_some(CHART);
    let reasons: Vec<&'static str> = chart.into_iter().chain(REASONS).collect();
    let on = Callback::new(move |because: String| {
        let by = desk
            .visit
            .with_untracked(|v| v.map_or(Role::default(), |v| v.role));
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
    live(move || {
        if asked.get() {
            el("div.go-on-with")
                .with(choices(
                    "I go on all the same, because ... (this is handed over)".into(),
                    reasons
                        .iter()
                        .map(|r| ((*r).to_owned(), crate::wording::words::capital(r)))
                        .collect(),
                    Signal::derive(|| None::<String>),
                    Callback::new(move |id: Option<String>| {
                        if let Some(words) = id {
                            on.run(words);
                        }
                    }),
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

/// The holds of a task, followed as the visit changes.
pub(super) fn held(desk: Desk, task: TaskId) -> Follow<Vec<Hold>> {
    let old = follow(move || {
        desk.now.get();
        desk.visit.with(|v| {
            v.map_or(0, |v| {
                let now = moment(v);
                let voice = fresh::old_voice(task, &v.exam, now).is_some();
                fresh::old(&v.exam, now).len() + usize::from(voice)
            })
        })
    });
    follow(move || {
        old.get();
        desk.visit
            .with(|v| v.map_or(Vec::new(), |v| hold::holds_at(task, &v.exam, moment(v))))
    })
}

/// Where a visit stands in time now.
pub(super) fn moment(visit: &Visit) -> Moment {
    visit.exam.now.next(clock::now())
}
