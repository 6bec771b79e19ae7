//! The gate: one page a group, one press where all of it holds.

use leptos::prelude::*;

use super::desk::Desk;
use super::ended::leave;
use super::follow::follow;
use super::holds::moment;
use super::parts::{big, button, choices, frame, overview_of};
use super::route::Page;
use super::why::rule_fold;
use crate::browser::page;
use crate::clinical::decision::fresh;
use crate::clinical::findings::gate::{Group, HOLDS, Item};
use crate::draw::{Drawn, Piece, all, el, live, said, when};
use crate::record::event::Event;
use crate::record::visit::Visit;
use crate::record::way;
use crate::wording::gate as wording;

/// Over a group whose answers are old.
const ASKED_LONG_AGO: &str = "Asked a while ago. Look again now: it may have changed.";

/// Whether a group must be asked again.
pub(super) fn is_old(visit: &Visit, group: Group) -> bool {
    fresh::is_group_old(group, &visit.exam, moment(visit))
}

/// One group.
pub(super) fn gate_page(
    // Which.
    group: Group,
) -> Piece {
    let desk = Desk::get();
    let at = Group::ALL.iter().position(|g| *g == group).unwrap_or(0) + 1;
    let items: Vec<&'static Item> = group.items().collect();
    let without_exception = move |v: Option<&Visit>| {
        let items = group
            .items()
            .filter(|i| v.is_some_and(|v| v.exam.gate.exception(i).is_none()));
        items.map(|i| i.id).collect::<Vec<_>>()
    };
    let opened = RwSignal::new(desk.visit.with_untracked(|v| {
        let items = group
            .items()
            .filter(|i| v.is_some_and(|v| v.exam.gate.exception(i).is_some()));
        items.map(|i| i.id).collect::<Vec<_>>()
    }));
    let rest = follow(move || desk.visit.with(without_exception));
    // A line that was opened and says nothing yet may not hold: no press settles it with the others.
    let unsaid = follow(move || {
        let opened = opened.get();
        rest.get().into_iter().find(|id| opened.contains(id))
    });
    let settle = move |_| {
        if let Some(id) = unsaid.get_untracked() {
            page::focus_on(id);
            return;
        }
        // What was excepted is so still: asked again, it was asked now.
        let answers = desk.visit.with_untracked(|v| {
            let answer = |i: &Item| v.and_then(|v| v.exam.gate.exception(i));
            let items = group.items();
            items
                .map(|i| {
                    (
                        i.id.to_owned(),
                        answer(i).map_or(HOLDS, |e| e.id).to_owned(),
                    )
                })
                .collect()
        });
        desk.record([Event::Gate(answers)]);
        if let Some(next) = desk
            .visit
            .with_untracked(|v| v.map(|v| way::after_group(v, group)))
        {
            desk.turn(next);
        }
    };
    let old = move || desk.visit.with(|v| v.is_some_and(|v| is_old(v, group)));
    let total = items.len();
    let words = move || match (rest.get().len(), unsaid.get()) {
        (_, Some(_)) => "First say what is the case".to_owned(),
        (0, None) => "Go on".to_owned(),
        (n, None) if n == total => format!("All {n} hold"),
        (1, None) => "The other one holds".to_owned(),
        (n, None) => format!("The other {n} hold"),
    };
    let title = format!(
        "{} ({at} of {})",
        wording::group_title(group),
        Group::ALL.len()
    );
    frame(
        title.into(),
        overview_of(desk),
        all![
            live(move || old().then(|| el("p.advice").with(ASKED_LONG_AGO))),
            el("p.hint").with("Press a line that does not hold."),
            el("ul.items").with(
                items
                    .into_iter()
                    .map(|item| gate_item(item, opened))
                    .collect::<Piece>()
            ),
            el("div.foot").with(big("primary", live(words), settle)),
            leave()
        ],
    )
}

/// One line of the gate, with its exceptions behind a press.
fn gate_item(
    // The item.
    item: &'static Item,
    // The lines of its page that are open.
    opened: RwSignal<Vec<&'static str>>,
) -> Piece {
    let desk = Desk::get();
    let exception = follow(move || {
        desk.visit
            .with(|v| v.and_then(|v| v.exam.gate.exception(item)))
            .map(|e| e.id.to_owned())
    });
    let held = move || {
        desk.visit.with(|v| {
            v.is_some_and(|v| {
                let holds = v.exam.gate.0.get(item.id).is_some_and(|a| a == HOLDS);
                holds && !is_old(v, item.group)
            })
        })
    };
    let open = follow(move || opened.with(|o| o.contains(&item.id)));
    let toggle = move || {
        opened.update(|o| {
            if o.contains(&item.id) {
                o.retain(|id| *id != item.id);
            } else {
                o.push(item.id);
            }
        });
    };
    let pick = Callback::new(move |id: Option<String>| {
        desk.record([match id {
            Some(id) => Event::Gate(vec![(item.id.to_owned(), id)]),
            None => {
                // Taken back, it is as if it had not been opened.
                toggle();
                Event::GateCleared(item.id.to_owned())
            }
        }]);
        // Neither an emergency nor what ends everything by mouth waits for another question.
        let stops = |v: &Visit| way::emergency(v) || way::gate_stops(v);
        if desk.visit.with_untracked(|v| v.is_some_and(stops)) {
            desk.turn(Page::GateResult);
        }
    });
    let class = move || {
        if exception.get().is_some() {
            "item excepted"
        } else if held() {
            "item held"
        } else {
            "item"
        }
    };
    let advice = move || {
        item.exceptions
            .iter()
            .find(|e| exception.get().as_deref() == Some(e.id))
            .map(|e| {
                desk.visit
                    .with(|v| v.map_or(String::new(), |v| wording::advice(item, e, &v.exam.policy)))
            })
            .filter(|a| !a.is_empty())
    };
    el("li")
        .class(said(class))
        .with(
            el("button.line")
                .attr("id", item.id)
                .attr("aria-expanded", said(move || open.get().to_string()))
                .press(move |_| toggle())
                .with(el("span").with(wording::holds(item)))
                .with(live(move || held().then(|| el("span.tick").with("holds")))),
        )
        .with(live(move || {
            open.get().then(|| {
                el("div.exceptions")
                    .with(when(
                        move || exception.get().is_none(),
                        move || {
                            button("choice", "It holds", move || {
                                desk.record([Event::Gate(vec![(
                                    item.id.to_owned(),
                                    HOLDS.to_owned(),
                                )])]);
                                toggle();
                            })
                        },
                    ))
                    .with(choices(
                        "What is the case?".into(),
                        item.exceptions
                            .iter()
                            .map(|e| (e.id.to_owned(), wording::exception(item, e).to_owned()))
                            .collect(),
                        exception.into(),
                        pick,
                    ))
                    .with(live(move || advice().map(|a| el("p.advice").with(a))))
                    .with(rule_fold(item.rule))
            })
        }))
        .piece()
}
