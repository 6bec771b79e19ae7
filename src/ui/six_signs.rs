//! Signs after a stroke: what the visit recorded already, and what is still to be asked.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{follow, live, press};
use super::parts::{Frame, overview_of};
use super::questions::question;
use super::route::Page;
use super::why::{flag_item, task_fold};
use crate::clinical::judge::looked::Looked;
use crate::clinical::judge::six_signs::ENOUGH;
use crate::clinical::task::TaskId;
use crate::clinical::tasks::six_signs::{
    COUNTED, HERE, Row, SPEC, YES, is_counted, judged, rows, tested,
};
use crate::clinical::trial::Answer;
use crate::clinical::words::capital;

const TASK: TaskId = TaskId::SixSigns;

/// The shape and the words of what was found: never by colour alone.
const fn look_of(looked: Looked) -> &'static str {
    match looked {
        Looked::Present => "\u{25B2} found",
        Looked::Absent => "\u{25CB} not found",
        Looked::NotTested => "\u{2013} not tested",
    }
}

/// One sign, with where it comes from and what can be asked about it.
fn row_item(desk: Desk, row: Row) -> AnyView {
    let asked = row
        .question
        .and_then(|id| SPEC.questions.iter().find(|q| q.id == id));
    // Recorded elsewhere: what is found otherwise is behind a fold.
    let here = row.from.iter().all(|from| from == HERE);
    let from = match (asked, row.looked) {
        (None, Looked::NotTested) => "Known after water that was watched for 60 seconds".to_owned(),
        _ => capital(&row.from.join("; ")),
    };
    let question = asked.map(|q| {
        let question = question(desk, TASK, q);
        if here {
            question
        } else {
            view! { <details class="more"><summary>"Found otherwise"</summary>{question}</details> }
                .into_any()
        }
    });
    view! {
        <li class="item">
            <p class="line"><b>{row.words}</b><span>{look_of(row.looked)}</span></p>
            <p class="small">{from}</p>
            {question}
        </li>
    }
    .into_any()
}

/// The page.
#[component]
pub(super) fn SixSignsPage() -> impl IntoView {
    let desk = Desk::get();
    let body = move || {
        desk.visit.with(|v| {
            let exam = &v.as_ref()?.exam;
            if let Some(aside) = (SPEC.not_for)(exam.age, &exam.policy) {
                return Some(view! { <ul class="flags">{flag_item(&aside)}</ul> }.into_any());
            }
            let t = tested(exam);
            let rows = rows(exam);
            let left_out = rows.iter().any(|row| !row.counts);
            Some(
                view! {
                    <p class="figure" role="status">{format!("{} found, {}", t.present, t.words())}</p>
                    <ul class="items six">
                        {rows.into_iter().filter(|row| row.counts).map(|row| row_item(desk, row)).collect::<Vec<_>>()}
                    </ul>
                    <ul class="flags">{judged(exam).iter().map(flag_item).collect_view()}</ul>
                    <p class="caution">
                        {(t.present < ENOUGH).then_some("Fewer than two clear nobody: this is never \"no sign seen\". ")}
                        {left_out.then_some("The gag is left out by local policy: it is missing in many healthy people.")}
                    </p>
                    {task_fold(&SPEC)}
                }
                .into_any(),
            )
        })
    };
    let counted = follow(move || {
        desk.visit
            .with(|v| v.as_ref().is_some_and(|v| is_counted(&v.exam)))
    });
    let count = move |_| {
        let answer = if counted.get_untracked() { "no" } else { YES };
        desk.answer(TASK, COUNTED, Some(Answer::Choice(answer.to_owned())));
    };
    view! {
        <Frame title=SPEC.title back=overview_of(desk)>
            <p>"Gathered from what this visit recorded. Only what is missing is asked."</p>
            {live(body)}
            <p class="figure" role="status">
                {live(move || counted.get().then_some("Counted in this visit's decision"))}
            </p>
            <button type="button" class="big" on:click=press(count)>
                <b>{live(move || if counted.get() { "Leave them out" } else { "Count them in this visit" })}</b>
            </button>
            <button type="button" class="big primary" on:click=press(move |_| desk.turn(Page::Overview))>
                <b>"Done"</b>
            </button>
        </Frame>
    }
}
