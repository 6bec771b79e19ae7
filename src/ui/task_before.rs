//! Before the start of a task: what to say, what is asked, and what leads on without it.

use leptos::prelude::*;

use super::desk::Desk;
use super::parts::{big, button, folded};
use super::questions::questions;
use super::route::Page;
use super::state::TaskPage;
use crate::clinical::decision::task_state::{TaskState, Without};
use crate::clinical::findings::trial::Answer;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec;
use crate::clinical::tasks::spec::{NOT_VALID, Untimed, When};
use crate::draw::{Drawn, El, Piece, all, el, live};
use crate::record::skip::{Cost, cost};
use crate::wording::skip;
use crate::wording::tasks as words;

/// What to say, word for word, and how it is done.
pub(super) fn what_to_say(task: TaskId) -> Piece {
    let desk = Desk::get();
    let words = words::of(task);
    el("section.say")
        .with((!words.say.is_empty()).then(|| {
            all![
                el("blockquote").with(words.say),
                el("button")
                    .press(move |_| desk.turn(Page::Show(task)))
                    .with("Show to patient")
            ]
        }))
        .with((!words.steps.is_empty()).then(|| {
            let steps = words.steps.iter().map(|s| el("li").with(*s));
            folded("How")
                .with(el("ol").with(steps.collect::<Piece>()))
                .with(el("p.small").with("For: ").with(words.for_whom))
        }))
        .piece()
}

/// The questions before the start: what is needed in the open, the rest behind a press.
pub(super) fn before(task: TaskId) -> Piece {
    let mut questions_before = spec(task)
        .questions
        .iter()
        .filter(|q| q.when == When::Before);
    let optional = questions_before.any(|q| !q.needed && q.id != NOT_VALID);
    let asked = questions(task, When::Before, Some(NOT_VALID));
    if optional {
        folded(words::of(task).more).with(asked).piece()
    } else {
        asked
    }
}

/// Other ways to count the same. None clears an adult: not in the open.
pub(super) fn other_counts(page: TaskPage) -> El {
    let desk = page.desk;
    let way = |other: &TaskId| {
        let other = *other;
        let words = words::of(other).another_way;
        button("", words, move || desk.turn(Page::Task(other)))
    };
    let ways = spec(page.task).other_ways.iter().map(way);
    folded("Another way to count").with(el("div.row").with(ways.collect::<Piece>()))
}

/// What leads on before anything was begun.
pub(super) fn without(page: TaskPage) -> Piece {
    let way = Memo::new(move |_| page.state.with(TaskState::without));
    live(move || leads_on(page, way.get()))
}

fn leads_on(page: TaskPage, way: Option<Without>) -> Piece {
    match way {
        None => ().piece(),
        // What takes it away stands with what is in the way.
        Some(Without::GoOnWithout) => {
            all![big("", "Leave this out", move |_| page.next()), costs(page)]
        }
        Some(Without::CouldNotOrSkip { skip }) => {
            let untimed = spec(page.task).untimed;
            // A task on its own is left by "back".
            let skips = skip && !page.loose;
            el("div.row.quiet")
                .with(untimed.map(|untimed| could_not(page, untimed)))
                .with(skips.then(|| button("", "Skip: not done", move || page.next())))
                .with(skips.then(|| costs(page)))
                .piece()
        }
    }
}

/// What it costs to leave this out.
fn costs(page: TaskPage) -> Piece {
    let TaskPage { desk, task, .. } = page;
    live(move || {
        let cost = desk
            .visit
            .with(|v| v.map_or(Cost::default(), |v| cost(v, task)));
        let words = skip::costs(cost);
        (!words.is_empty()).then(|| el("p.small").with(words))
    })
}

/// What can be said of a trial without a touch of the pad.
fn could_not(page: TaskPage, untimed: Untimed) -> Vec<Piece> {
    let Untimed { question, choices } = untimed;
    let TaskPage { desk, task, .. } = page;
    let say = |(id, words): (&'static str, &'static str)| {
        button("", words, move || {
            desk.answer(task, question, Some(Answer::Choice(id.to_owned())));
            desk.hold_still();
        })
    };
    words::choices(task, question, choices).map(say).collect()
}
