//! After a trial of a task: what is said about it, the next trial, and the way on.

use leptos::prelude::*;

use super::parts::{big, button, choices, folded, para};
use super::questions::question;
use super::state::TaskPage;
use crate::clinical::decision::task_state::WayOn;
use crate::clinical::findings::trial::Answer;
use crate::clinical::tasks::spec::{NOT_VALID, WATCH_CUT};
use crate::clinical::tasks::{spec, water};
use crate::draw::{Drawn, El, Piece, el, live, said};
use crate::wording::tasks as words;

/// The question under which the way of cueing is kept.
const CUE: &str = "cue";

/// The way on. Above the signs once all is over, where the thumb is; otherwise after what is asked.
pub(super) fn way_on(page: TaskPage, by_signs: bool) -> Piece {
    live(move || {
        let state = page.state.get();
        if by_signs != state.way_on_by_signs() {
            return ().piece();
        }
        match state.way_on() {
            None => ().piece(),
            Some(WayOn::WatchGoesOn) => big("", "Next", move |_| page.next())
                .with(el("span").with("The watch goes on"))
                .piece(),
            Some(way) => {
                let words = if page.loose { "Done" } else { "Next" };
                big("", words, move |_| page.next())
                    .class_if("primary", move || way == WayOn::Done)
                    .piece()
            }
        }
    })
}

/// Another trial, as long as more are asked for.
pub(super) fn next_trial(page: TaskPage) -> Piece {
    let most = spec(page.task).trials;
    live(move || {
        if !page.state.get().another {
            let words = format!("{most} trials are done: no more are asked for.");
            return para("small", words);
        }
        let so_far = said(move || format!("{} done, up to {most}", page.state.get().tried));
        big("", "Next trial", move |_| page.repeat())
            .with(el("span").with(so_far))
            .piece()
    })
}

/// Takes back what was said without a touch of the pad.
pub(super) fn take_back(page: TaskPage) -> Piece {
    let untimed = spec(page.task).untimed;
    let take_back = move |question| {
        button("choice", "Take this answer back", move || {
            page.desk.answer(page.task, question, None);
        })
    };
    untimed.map(|untimed| take_back(untimed.question)).piece()
}

/// Whether it counts at all, where that is asked.
pub(super) fn not_valid(page: TaskPage) -> Piece {
    let mut asked = spec(page.task).questions.iter();
    let asked = asked.find(|q| q.id == NOT_VALID);
    let fold = |q| folded(words::ask(page.task, NOT_VALID)).with(question(page.desk, page.task, q));
    asked.map(fold).piece()
}

/// A press that is seldom meant, in a quiet row.
pub(super) fn quiet(words: &'static str, on: impl FnMut() + 'static) -> El {
    el("div.row.quiet").with(button("", words, on))
}

/// How it was cued.
pub(super) fn cued(page: TaskPage) -> Piece {
    let TaskPage { desk, task, .. } = page;
    let cue = Signal::derive(move || {
        desk.visit.with(|v| {
            v.and_then(|v| v.exam.latest(task))
                .and_then(|t| t.choice(CUE).map(str::to_owned))
        })
    });
    let offered = [
        ("spoken", "Spoken"),
        ("shown", "Shown"),
        ("copied", "Copied"),
    ];
    let offered = offered.map(|(id, words)| (id.to_owned(), words.to_owned()));
    choices(
        "How was it cued?".into(),
        offered.to_vec(),
        cue,
        Callback::new(move |id: Option<String>| {
            desk.answer(task, CUE, id.map(Answer::Choice));
        }),
    )
}

/// Ending the watch early asks why.
pub(super) fn watch_cut(page: TaskPage) -> Piece {
    let TaskPage { desk, task, .. } = page;
    let offered = words::choices(task, WATCH_CUT, water::WATCH_CUT_REASONS);
    let offered = offered.map(|(id, words)| (id.to_owned(), words.to_owned()));
    folded("End the watch early")
        .with(choices(
            words::ask(task, WATCH_CUT).into(),
            offered.collect(),
            Signal::derive(|| None::<String>),
            Callback::new(move |id: Option<String>| {
                desk.answer(task, WATCH_CUT, id.map(Answer::Choice));
            }),
        ))
        .piece()
}
