//! Order and choice of the repeated syllables in this visit: one press a change.

use leptos::prelude::*;

use super::desk::Desk;
use super::parts::{button, folded, para};
use crate::browser::prefs;
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::task::TaskId;
use crate::draw::{Drawn, Piece, all, el, live};
use crate::record::event::Event;
use crate::wording::tasks;

/// Why a child's sequences can't be moved.
const CHILD: &str = "A child's pa-ta-ka comes last: whether it is asked for depends on the others.";

/// The fold; nothing where the visit's screen has no syllables.
pub(super) fn syllable_order() -> Piece {
    let desk = Desk::get();
    let has = desk.visit.with_untracked(|v| {
        let screen = v.and_then(|v| v.screen);
        screen.is_some_and(|id| id.screen().has_order())
    });
    has.then(|| folded("Syllables: order, leave out").with(live(move || lines(desk))))
        .piece()
}

fn lines(desk: Desk) -> Option<Piece> {
    let (order, left_out, begun, child) = desk.visit.with(|v| {
        let visit = v?;
        let screen = visit.screen?.screen();
        let exam = &visit.exam;
        // As it stands on the page, so that a press changes what is seen.
        let order = Order::from(screen.tasks_of(exam));
        let begun: Vec<TaskId> = exam.trials.iter().map(|t| t.task).collect();
        Some((
            order,
            screen.left_out(exam),
            begun,
            !exam.who().by_adult_rules(),
        ))
    })?;
    let differs = order != desk.prefs.get().order;
    let kept = order.clone();
    let keep = move || {
        desk.prefs.update(|p| p.order = kept.clone());
        prefs::save(&desk.prefs.get_untracked());
    };
    let row = |task: TaskId, asked: bool, first: bool| {
        let title = tasks::of(task).title;
        let mut presses = Vec::new();
        if asked && !first && !(child && task == TaskId::Sequence) {
            let earlier = order.earlier(task);
            presses.push(change(
                desk,
                format!("{title} earlier"),
                "\u{2191}",
                earlier,
            ));
        }
        // What was done is part of the examination.
        if !begun.contains(&task) {
            let words = if asked { "Leave out" } else { "Ask for it" };
            presses.push(change(
                desk,
                format!("{title}: {words}"),
                words,
                order.turned(task),
            ));
        }
        el("li").with(el("b").with(title)).with(presses).piece()
    };
    let asked = order.tasks().iter().enumerate();
    let asked: Vec<Piece> = asked.map(|(at, task)| row(*task, true, at == 0)).collect();
    let others: Vec<Piece> = left_out
        .iter()
        .map(|task| row(*task, false, false))
        .collect();
    let child = if child { CHILD } else { "" };
    let keep = differs.then(|| button("choice", "Keep this for the next visits", keep));
    let list = el("ul.plain.order").with(asked).with(others);
    Some(all![list, para("small", child), keep])
}

/// One press of the list.
fn change(desk: Desk, name: String, words: &'static str, order: Order) -> Piece {
    let record = move |_| desk.record([Event::Order(order.clone())]);
    el("button")
        .attr("aria-label", name)
        .press(record)
        .with(words)
        .piece()
}
