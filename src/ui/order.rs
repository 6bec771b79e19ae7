//! Order and choice of the repeated syllables in this visit: one press a change.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{live, press};
use crate::browser::prefs;
use crate::clinical::order::Order;
use crate::clinical::task::TaskId;
use crate::clinical::tasks;
use crate::record::event::Event;

/// The fold; nothing where the visit's screen has no syllables.
#[component]
pub(super) fn SyllableOrder() -> impl IntoView {
    let desk = Desk::get();
    let has = desk.visit.with_untracked(|v| {
        let screen = v.as_ref().and_then(|v| v.screen);
        screen.is_some_and(|id| id.screen().has_order())
    });
    has.then(|| {
        view! {
            <details class="more">
                <summary>"Syllables: order, leave out"</summary>
                {live(move || lines(desk))}
            </details>
        }
    })
}

fn lines(desk: Desk) -> Option<AnyView> {
    let (order, left_out, begun, child) = desk.visit.with(|v| {
        let visit = v.as_ref()?;
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
    let change = move |order: Order| desk.record([Event::Order(order)]);
    let differs = order != desk.prefs.get().order;
    let kept = order.clone();
    let keep = move |_| {
        desk.prefs.update(|p| p.order = kept.clone());
        prefs::save(&desk.prefs.get_untracked());
    };
    let row = |task: TaskId, asked: bool, first: bool| {
        let title = tasks::spec(task).title;
        let earlier = order.earlier(task);
        let turned = order.turned(task);
        let moves = asked && !first && !(child && task == TaskId::Sequence);
        let words = if asked { "Leave out" } else { "Ask for it" };
        view! {
            <li>
                <b>{title}</b>
                {moves.then(|| view! {
                    <button type="button" aria-label=format!("{title} earlier") on:click=press(move |_| change(earlier.clone()))>
                        "\u{2191}"
                    </button>
                })}
                // What was done is part of the examination.
                {(!begun.contains(&task)).then(|| view! {
                    <button type="button" aria-label=format!("{title}: {words}") on:click=press(move |_| change(turned.clone()))>
                        {words}
                    </button>
                })}
            </li>
        }
    };
    let asked = order.tasks().iter().enumerate();
    let asked: Vec<_> = asked.map(|(at, task)| row(*task, true, at == 0)).collect();
    let others: Vec<_> = left_out
        .iter()
        .map(|task| row(*task, false, false))
        .collect();
    Some(
        view! {
            <ul class="plain order">{asked}{others}</ul>
            {child.then(|| view! {
                <p class="small">"A child's pa-ta-ka comes last: whether it is asked for depends on the others."</p>
            })}
            {differs.then(|| view! {
                <button type="button" on:click=press(keep)>"Keep this for the next visits"</button>
            })}
        }
        .into_any(),
    )
}
