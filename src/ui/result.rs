//! The result of a task, with what it is compared with, its rule, its source and its caveat.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{follow, live};
use super::why::{comparison_item, flag_item, rule_fold, task_fold};
use crate::clinical::figures;
use crate::clinical::flag::Level;
use crate::clinical::judge::speech::trials::evenness;
use crate::clinical::task::TaskId;
use crate::clinical::tasks::{self, by_mouth, own};
use crate::clinical::trial::Trial;
use crate::measure::series::Series;

/// The figures of a task, each with what speaks against it.
#[component]
pub(super) fn Figures(
    /// The task.
    task: TaskId,
) -> impl IntoView {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let figures = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .map_or(Vec::new(), |v| figures::of_task(spec, &v.exam))
        })
    });
    live(move || {
        figures
            .get()
            .into_iter()
            .map(|(figure, beside)| {
                view! {
                    <p class="figure">{figure}</p>
                    {(!beside.is_empty()).then(|| view! { <p class="small">{beside}</p> })}
                }
            })
            .collect_view()
    })
}

/// The result of the newest trial of a task; where several are asked for, their figures stand at
/// the top of the page.
#[component]
pub(super) fn TaskResult(
    /// The task.
    task: TaskId,
) -> impl IntoView {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let flags = move || {
        desk.visit.with(|v| {
            v.as_ref()
                .map_or(Vec::new(), |v| {
                    let mut flags = tasks::flags(task, &v.exam);
                    // While a plan is gone through, what is still to come is no finding.
                    if tasks::over(task, &v.exam) == Some(false) {
                        flags.retain(|f| f.level() != Level::Incomplete);
                    }
                    flags
                })
                .iter()
                .map(flag_item)
                .collect_view()
        })
    };
    let beside = move || {
        desk.visit.with(|v| {
            v.as_ref()
                .map_or(Vec::new(), |v| (spec.compare)(&v.exam))
                .iter()
                .map(comparison_item)
                .collect_view()
        })
    };
    view! {
        <section class="result" aria-label="Result">
            {(spec.trials < 2 || tasks::goes_on(task)).then(|| view! { <Figures task=task/> })}
            {spec.pad.first_counts.then(|| live(move || time_line(desk, task)))}
            {[TaskId::Water90, TaskId::Sips, TaskId::TimedWater, TaskId::Own].contains(&task).then(|| live(move || sign_line(desk, task)))}
            {(task == TaskId::Own).then(|| live(move || own_table(desk)))}
            <ul class="flags">{live(flags)}</ul>
            <ul class="flags">{live(beside)}</ul>
            <p class="caveat">{spec.caveat}</p>
            {task_fold(spec)}
        </section>
    }
}

/// The taps of the newest trial on a line: where they crowd and where they gap is seen at once.
fn time_line(desk: Desk, task: TaskId) -> AnyView {
    let taps = desk.visit.with(|v| {
        v.as_ref()
            .and_then(|v| v.exam.latest(task))
            .map_or(Vec::new(), Trial::tap_offsets)
    });
    let Some(last) = taps.last().map(|at| at.0).filter(|last| *last > 0) else {
        return ().into_any();
    };
    // Labelled as the finger's: it is no measure of the speaker.
    let even = evenness(&Series::new(taps.iter().copied())).ok();
    let first = taps.first().map_or(0, |at| at.0);
    view! {
        <div class="time-line" role="img" aria-label="The taps on a line of time">
            {taps.iter().map(|at| {
                let percent = (at.0 - first) * 1000 / (last - first).max(1);
                let left = format!("{}.{}%", percent / 10, percent % 10);
                view! { <i style:left=left></i> }
            }).collect_view()}
        </div>
        {even.map(|even| view! {
            <p class="small">{even.flag.reason().to_owned()}</p>
            {rule_fold(even.flag.rule())}
        })}
    }
    .into_any()
}

/// The presses of the newest trial on a line of time, signs among them, and in words below it.
fn sign_line(desk: Desk, task: TaskId) -> AnyView {
    let marks = desk.visit.with(|v| {
        v.as_ref()
            .and_then(|v| v.exam.latest_started(task))
            .map_or(Vec::new(), by_mouth::time_line)
    });
    let Some(last) = marks.iter().map(|m| m.0.0).max().filter(|last| *last > 0) else {
        return ().into_any();
    };
    let words: Vec<String> = marks
        .iter()
        .map(|(at, _, what)| format!("{at} {what}"))
        .collect();
    view! {
        <div class="time-line" aria-hidden="true">
            {marks.iter().map(|(at, sign, _)| {
                let tenths = at.0.max(0) * 1000 / last;
                let left = format!("{}.{}%", tenths / 10, tenths % 10);
                view! { <i class:sign=*sign style:left=left></i> }
            }).collect_view()}
        </div>
        <p class="small">{words.join(" \u{b7} ")}</p>
    }
    .into_any()
}

/// The clinician's own trials as a table: what was given, how often, the signs.
fn own_table(desk: Desk) -> AnyView {
    let rows = desk
        .visit
        .with(|v| v.as_ref().map_or(Vec::new(), |v| own::table(&v.exam)));
    if rows.is_empty() {
        return ().into_any();
    }
    view! {
        <table class="trials">
            <thead><tr><th>"Given"</th><th>"Times"</th><th>"Signs"</th></tr></thead>
            <tbody>
                {rows.into_iter().map(|row| view! {
                    <tr><td>{row.what}</td><td>{row.given}</td><td>{row.signs}</td></tr>
                }).collect_view()}
            </tbody>
        </table>
    }
    .into_any()
}
