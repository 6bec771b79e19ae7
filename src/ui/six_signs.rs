//! Signs after a stroke: what the visit recorded already, and what is still to be asked.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{follow, live, press};
use super::parts::{Frame, overview_of};
use super::questions::question;
use super::why::flag_item;
use crate::clinical::judge::looked::Looked;
use crate::clinical::judge::six_signs::ENOUGH;
use crate::clinical::task::TaskId;
use crate::clinical::tasks::six_signs::{
    COUNTED, SPEC, YES, is_counted, judged, rows, setting, tested,
};
use crate::clinical::trial::Answer;
use crate::clinical::words::capital;

const TASK: TaskId = TaskId::SixSigns;

/// The word and the shape of what was found: never by colour alone.
const fn look_of(looked: Looked) -> (&'static str, &'static str) {
    match looked {
        Looked::Present => ("\u{25B2}", "found"),
        Looked::Absent => ("\u{25CB}", "not found"),
        Looked::NotTested => ("\u{2013}", "not tested"),
    }
}

/// The page.
#[component]
pub(super) fn SixSignsPage() -> impl IntoView {
    let desk = Desk::get();
    // The rows are drawn anew with their answers; which question is open stays by its own fold.
    let shown = follow(move || {
        desk.visit
            .with(|v| v.as_ref().map_or(Vec::new(), |v| rows(&v.exam).to_vec()))
    });
    let head = follow(move || {
        desk.visit.with(|v| {
            v.as_ref().map_or(String::new(), |v| {
                let t = tested(&v.exam);
                format!("{} found, {}", t.present, t.words())
            })
        })
    });
    let counted = follow(move || {
        desk.visit
            .with(|v| v.as_ref().is_some_and(|v| is_counted(&v.exam)))
    });
    let aside = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| (SPEC.not_for)(v.exam.age, &v.exam.policy))
        })
    });
    let gag_left_out = desk
        .visit
        .with_untracked(|v| v.as_ref().is_some_and(|v| !setting(&v.exam).gag_counts));
    let flags = move || {
        desk.visit.with(|v| {
            v.as_ref()
                .map_or(Vec::new(), |v| judged(&v.exam))
                .iter()
                .map(flag_item)
                .collect_view()
        })
    };
    let fewer = move || {
        desk.visit
            .with(|v| v.as_ref().is_some_and(|v| tested(&v.exam).present < ENOUGH))
    };
    let count = move |on: bool| {
        let answer = if on { YES } else { "no" };
        desk.answer(TASK, COUNTED, Some(Answer::Choice(answer.to_owned())));
    };
    view! {
        <Frame title=SPEC.title back=overview_of(desk)>
            {live(move || match aside.get() {
                Some(sentence) => view! { <p class="advice">{sentence}</p> }.into_any(),
                None => view! {
                    <p>"Gathered from what this visit recorded. Only what is missing is asked."</p>
                    <p class="figure" role="status">{live(move || head.get())}</p>
                    <ul class="items six">
                        {live(move || shown.get().into_iter().filter(|row| row.counts).map(|row| {
                            let (shape, words) = look_of(row.looked);
                            let asked = row.question.and_then(|id| SPEC.questions.iter().find(|q| q.id == id));
                            // Recorded elsewhere: what was found otherwise is behind a fold.
                            let here = row.from.iter().all(|from| from == "asked here");
                            view! {
                                <li class="item" class:excepted=row.looked.is_present()>
                                    <p class="line"><b>{row.words}</b><span>{shape}" "{words}</span></p>
                                    {row.from.into_iter().map(|from| view! { <p class="small">{capital(&from)}</p> }).collect_view()}
                                    {match (asked, here) {
                                        (Some(q), true) => question(desk, TASK, q),
                                        (Some(q), false) => view! {
                                            <details class="more">
                                                <summary>"Found otherwise"</summary>
                                                {question(desk, TASK, q)}
                                            </details>
                                        }.into_any(),
                                        (None, _) if row.looked.is_open() => view! {
                                            <p class="small">"From water that was watched for 60 seconds"</p>
                                        }.into_any(),
                                        (None, _) => ().into_any(),
                                    }}
                                </li>
                            }
                        }).collect_view())}
                    </ul>
                    {gag_left_out.then(|| view! {
                        <p class="small">"The gag is left out by local policy: it is missing in many healthy people."</p>
                    })}
                    <ul class="flags">{live(flags)}</ul>
                    {live(move || fewer().then(|| view! {
                        <p class="caution">"Fewer than two clear nobody: this is never \"no sign seen\"."</p>
                    }))}
                    {live(move || if counted.get() {
                        view! {
                            <p class="figure">"Counted in this visit's decision"</p>
                            <button type="button" on:click=press(move |_| count(false))>"Leave them out"</button>
                        }.into_any()
                    } else {
                        view! {
                            <button type="button" class="big primary" on:click=press(move |_| count(true))>
                                <b>"Count them in this visit"</b>
                            </button>
                        }.into_any()
                    })}
                    <button type="button" class="big" on:click=press(move |_| desk.turn(super::route::Page::Overview))>
                        <b>"Done"</b>
                    </button>
                }.into_any(),
            })}
        </Frame>
    }
}
