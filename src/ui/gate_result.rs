//! What the gate found, where it found something: the way past it, or asking again.

use leptos::prelude::*;

use super::decision::hand_over;
use super::desk::Desk;
use super::holds::go_on_past;
use super::parts::{big, button, choking_button, frame, overview_of};
use super::route::Page;
use super::why::rule_fold;
use crate::clinical::decision::in_the_way::{InTheWay, closing_readings};
use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::gate;
use crate::clinical::findings::gate::{Exception, Item, State};
use crate::clinical::findings::in_the_way::{Obstacle, gate_key};
use crate::clinical::knowledge::oral::Region;
use crate::draw::{Drawn, Piece, all, el, live, when};
use crate::handover::action::at_a_stop;
use crate::record::event::Event;
use crate::record::visit::Visit;
use crate::record::way::{self, Step};
use crate::wording::gate as wording;

/// Whether the visit's screen has a gate; others ask of new weakness where the examination begins.
fn has_gate(visit: &Visit) -> bool {
    visit.screen.is_none_or(|id| id.screen().gate)
}

/// What the gate found, where it found something.
pub(super) fn gate_result_page() -> Piece {
    let desk = Desk::get();
    let back = overview_of(desk);
    frame("Before you start".into(), back, gate_findings())
}

/// What an emergency asks for.
const EMERGENCY_NOW: &str = "New or worse, and the team does not know: use your local emergency \
    procedure now.";

fn gate_findings() -> Piece {
    let desk = Desk::get();
    let found = move |wanted: State| {
        desk.visit.with(|v| {
            v.map_or(Vec::new(), |v| {
                v.exam
                    .gate
                    .exceptions(&v.exam.policy)
                    .filter(|(_, _, state)| *state == wanted)
                    .map(|(item, exception, _)| {
                        (
                            item,
                            exception,
                            wording::advice(item, exception, &v.exam.policy),
                        )
                    })
                    .collect()
            })
        })
    };
    let list = move |state: State, heading: &'static str, class: &'static str| {
        live(move || {
            let found = found(state);
            (!found.is_empty()).then(|| {
                el("section")
                    .class(class)
                    .with(el("h2").with(heading))
                    .with(
                        el("ul").with(
                            found
                                .into_iter()
                                .map(|(item, exception, advice)| {
                                    el("li")
                                        .with(el("p").with(
                                            el("b").with(wording::exception(item, exception)),
                                        ))
                                        .with((!advice.is_empty()).then(|| el("p").with(advice)))
                                        .with(answered(item, exception))
                                        .with(rule_fold(item.rule))
                                })
                                .collect::<Piece>(),
                        ),
                    )
            })
        })
    };
    let emergency = move || desk.visit.with(|v| v.is_some_and(way::emergency));
    let stopped = move || {
        let stops = |v: &Visit| !way::emergency(v) && has_gate(v) && way::gate_stops(v);
        desk.visit.with(|v| v.is_some_and(stops))
    };
    let end = move |why: EndedEarly| {
        desk.record([Event::EndedEarly(why)]);
        desk.turn(Page::Decision);
    };
    let to_text = move |_| {
        let events = desk.visit.with_untracked(|v| v.map(at_a_stop));
        desk.record(events.unwrap_or_default());
        hand_over(desk);
    };
    // Blocks that nobody took on, and readings of the breathing that hold up the water.
    let closed = move || {
        desk.visit
            .with(|v| v.and_then(|v| crate::clinical::decision::assess::gate_closed(&v.exam)))
    };
    // What stays open although nothing may be given.
    let looking = move || {
        let open = closed().and(desk.visit.with(|v| v.and_then(way::looking_goes_on)));
        open.map(|page| {
            let words = "Go on with looking and speech";
            el("div.row.quiet").with(button("", words, move || desk.turn(page)))
        })
    };
    let waits = move || {
        let next = desk.visit.with(|v| v.map(way::next));
        next == Some(Step::GateResult)
    };
    let go_on = move |_| {
        if let Some(page) = desk.visit.with_untracked(|v| v.map(way::next)) {
            desk.turn(page);
        }
    };
    all![
        live(move || {
            emergency().then(|| {
                all![
                    el("section.verdict.stop")
                        .attr("role", "alert")
                        .with(el("p.word").with("Emergency"))
                        .with(el("p").with(EMERGENCY_NOW)),
                    super::parts::words_field(
                        "last-well",
                        "When was the person last well?",
                        desk.visit
                            .with_untracked(|v| v.map(|v| v.last_well.clone()).unwrap_or_default())
                            .into(),
                        60,
                        Callback::new(move |words| desk.record([Event::LastWell(words)]))
                    )
                ]
            })
        }),
        list(State::Emergency, "What was answered", "found block"),
        live(move || stopped().then(|| el("section.verdict.stop")
            .attr("role", "alert")
            .with(el("p.word").with("Nothing by mouth"))
            .with(el("p").with("Looking and speech can go on.")))),
        list(State::Stop, "What was answered", "found block"),
        list(State::Block, "Do not start", "found block"),
        live(move || {
            let readings = desk.visit.with(|v| {
                v.map_or(Vec::new(), |v| {
                    closing_readings(&v.exam).collect::<Vec<_>>()
                })
            });
            (!readings.is_empty()).then(|| {
                el("section.found.block")
                    .with(el("h2").with("Breathing: do not start"))
                    .with(el("p").with("Use your local procedure for deterioration."))
                    .with(
                        el("ul").with(
                            readings
                                .into_iter()
                                .map(|reading| all![said_of(&reading), go_on_past(&reading)])
                                .collect::<Piece>(),
                        ),
                    )
            })
        }),
        // One instruction where everything by mouth ends.
        when(
            move || !stopped(),
            move || all![
                list(State::Fix, "Fix this, then check again", "found fix"),
                list(State::Caution, "With care: you decide", "found caution"),
            ]
        ),
        el("div.foot")
            .with(live(move || match (emergency(), closed()) {
                (true, _) => big("primary", "Emergency: end the screen", move |_| end(
                    EndedEarly::Emergency
                ))
                .piece(),
                _ if stopped() => big("primary", "Nothing by mouth: to the text", to_text).piece(),
                (false, Some(_)) => big("primary", "End: screen not done", move |_| end(
                    EndedEarly::GateClosed
                ))
                .piece(),
                // Nothing is left to do before it is put right.
                (false, None) if waits() =>
                    big("", "Decision so far", move |_| desk.turn(Page::Decision)).piece(),
                // What is to be put right comes first: its own button asks again.
                (false, None) => el("button")
                    .class(if found(State::Fix).is_empty() {
                        "big primary"
                    } else {
                        "big"
                    })
                    .press(go_on)
                    .with(el("b").with("Go on"))
                    .piece(),
            }))
            .with(live(looking))
            .with(choking_button())
    ]
}

/// What the rule says of a reading.
fn said_of(reading: &InTheWay) -> Piece {
    match reading {
        Obstacle::Breathing { said, .. } => super::why::flag_item(said).piece(),
        _ => ().piece(),
    }
}

/// "Ask again" for an exception, and what was said to go on past it.
fn answered(
    // The item.
    item: &'static Item,
    // The exception picked.
    exception: &'static Exception,
) -> Piece {
    let desk = Desk::get();
    let on = move || {
        desk.visit.with(|v| {
            v.and_then(|v| {
                let state = gate::state_of(item, exception, &v.exam.policy);
                v.exam
                    .went_on(&gate_key(item, exception), gate::go_on(item, state))
                    .cloned()
            })
        })
    };
    let ask_again = move || {
        let gate = desk.visit.with_untracked(|v| v.is_some_and(has_gate));
        if gate {
            Page::Gate(item.group)
        } else {
            Page::Oral(Region::Face)
        }
    };
    all![
        live(move || on().map(|on| el("p.advice").with(format!(
            "Going on ({}): {}",
            on.by.words(),
            on.because
        )))),
        el("button")
            .press(move |_| desk.turn(ask_again()))
            .with("Ask again"),
        live(move || {
            let blocked = desk.visit.with(|v| {
                v.is_some_and(|v| gate::state_of(item, exception, &v.exam.policy) == State::Block)
            });
            (blocked && on().is_none()).then(|| {
                go_on_past(&Obstacle::Gate {
                    item,
                    exception,
                    state: State::Block,
                })
            })
        })
    ]
}
