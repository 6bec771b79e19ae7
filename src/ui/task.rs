//! The task page: what to say, the pad, how it was cued and what came out, and what comes next.
//!
//! One component serves every task; what differs is in the task's data, and what stands on the page
//! now is in its [`TaskState`].

use leptos::prelude::*;

use super::attached::attach;
use super::desk::Desk;
use super::ended::{choking_row, end_here};
use super::holds::holds;
use super::order::syllable_order;
use super::pad::pad;
use super::parts::{big, frame_with_pad, overview_of, para};
use super::questions::questions;
use super::result::{figures, own_table, task_result};
use super::running::face;
use super::sign_said::sign_said;
use super::silence::silence;
use super::state::{TaskPage, task_state};
use super::tally;
use super::task_after::{cued, next_trial, not_valid, quiet, take_back, watch_cut, way_on};
use super::task_before::{before, other_counts, what_to_say, without};
use crate::clinical::decision::task_state::TaskState;
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec;
use crate::clinical::tasks::spec::{Face, NOT_VALID, Shows, When};
use crate::draw::{Drawn, El, Piece, all, el};
use crate::record::visit::Visit;
use crate::wording::tasks as words;

/// Over a reading of the breathing that is too old for a trial by mouth.
const COUNTED_LONG_AGO: &str = "Counted a while ago: count again before anything is given.";

/// A task.
pub(super) fn task_page(
    // Which.
    task: TaskId,
) -> Piece {
    let desk = Desk::get();
    let face = face(desk, task);
    let state = task_state(desk, task, face);
    let loose = desk
        .visit
        .with_untracked(|v| v.is_some_and(Visit::is_loose));
    let page = TaskPage {
        desk,
        task,
        state,
        loose,
    };
    let goes_on = task.goes_on();
    // The pad comes last, at the lower edge of the screen, so that it stands in the same place
    // before and after the start; what is above it scrolls by itself and is never covered.
    frame_with_pad(
        words::of(task).title.into(),
        overview_of(desk),
        all![
            el("div.above").with(all![beginning(page), come(page), ending(page)]),
            // Beside the signs, where the eye is: a short screen shows nothing of what is above.
            page.part(
                move |s| s.has_result() || goes_on && s.face == Face::Ready,
                move |_| sign_said(task),
            ),
            way_on(page, true),
            page.part(TaskState::is_free, move |_| {
                pad(task, Signal::derive(|| None), face, state)
            })
        ],
    )
}

/// What is said and asked before, and what is in the way.
fn beginning(page: TaskPage) -> Piece {
    let task = page.task;
    all![
        page.part(
            |s| s.face == Face::Watching && s.ended,
            |_| alert("The screen was ended. Watch for 60 seconds all the same.").piece(),
        ),
        page.part(TaskState::says, |p| what_to_say(p.task)),
        page.part(
            |s| s.has_result() && s.read_long_ago,
            |p| all![
                para("advice", COUNTED_LONG_AGO),
                big("primary", "Count again", move |_| p.repeat())
            ],
        ),
        page.part(TaskState::ended_by_sign, |p| all![
            alert("A sign was seen: give no further sip."),
            big("primary", "Next", move |_| p.next())
        ]),
        page.part(TaskState::tells_in_the_way, |p| holds(p.state).piece()),
        page.part(TaskState::asks_before, |p| before(p.task)),
        spec(task).pad.beat.map(|_| silence(task))
    ]
}

/// What came out so far, and what is asked about it.
fn come(page: TaskPage) -> Piece {
    let spec = spec(page.task);
    let several = spec.trials > 1 && !page.task.goes_on();
    let (table, tally) = (spec.shows == Shows::Table, spec.shows == Shows::Tally);
    let shown = |s: &TaskState| s.has_result() || s.face == Face::Running;
    let ended = |s: &TaskState| matches!(s.face, Face::Watching | Face::Over);
    all![
        page.part(move |s| table && shown(s), |p| own_table(p.desk)),
        page.part(move |s| several && s.has_result(), |p| figures(p.task)),
        page.part(
            move |s| tally && s.face == Face::Running,
            |_| { tally::running() }
        ),
        page.part(
            move |s| table && ended(s),
            |p| { big("", "Change what is given", move |_| p.repeat()).piece() }
        ),
        page.part(ended, |p| questions(p.task, When::After, Some(NOT_VALID))),
        page.part(
            |s| s.face == Face::Over,
            |p| questions(p.task, When::AfterWatch, None),
        ),
        way_on(page, false),
        page.part(move |s| several && s.face == Face::Over, next_trial),
        page.part(|s| s.face == Face::Over && s.untimed, take_back),
        page.part(|s| s.face == Face::Watching, watch_cut),
        page.part(TaskState::has_result, |p| task_result(p.task)),
        page.part(move |s| tally && s.face == Face::Over, |_| tally::ended())
    ]
}

/// What else can be said of it, and other ways on.
fn ending(page: TaskPage) -> Piece {
    let (task, loose) = (page.task, page.loose);
    let says = !words::of(task).say.is_empty();
    let once = spec(task).trials == 1;
    let other_ways = !spec(task).other_ways.is_empty();
    let ordered = !loose && Order::ALL.contains(&task);
    all![
        page.part(
            move |s| says && matches!(s.face, Face::Over | Face::Late),
            cued,
        ),
        page.part(TaskState::is_resting, not_valid),
        page.part(
            move |s| once && s.face == Face::Over,
            |p| quiet("Do it again", move || p.repeat()).piece(),
        ),
        page.part(TaskState::leaves_the_rest, |p| {
            quiet("Go on without the rest", move || p.next()).piece()
        }),
        page.part(
            move |s| other_ways && !loose && s.is_resting(),
            |p| { other_counts(p).piece() }
        ),
        without(page),
        page.part(move |s| loose && s.face == Face::Over, |_| attach()),
        page.part(
            move |s| ordered && s.face == Face::Ready,
            |_| { syllable_order() }
        ),
        // Once the signs stand there, choking is one of them.
        (!loose).then(|| all![
            page.part(|s| !s.has_signs(), |_| choking_row().piece()),
            end_here()
        ])
    ]
}

/// Words that are to be read at once.
fn alert(words: &'static str) -> El {
    el("p.advice")
        .attr("role", "alert")
        .with(el("b").with(words))
}
