//! The result of a task, with what it is compared with, its rule, its source and its caveat.

use super::desk::Desk;
use super::follow::follow;
use super::why::{comparison_item, flag_item, rule_fold, task_fold};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::Shows;
use crate::clinical::tasks::syllables::speech::trials::evenness;
use crate::clinical::tasks::{self, own};
use crate::draw::{Drawn, Piece, all, el, live};
use crate::measure::series::Series;
use crate::wording;
use crate::wording::figures;
use crate::wording::own as words;

/// The figures of a task, each with what speaks against it.
pub(super) fn figures(
    // The task.
    task: TaskId,
) -> Piece {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let figures = follow(move || {
        desk.visit
            .with(|v| v.map_or(Vec::new(), |v| figures::of_task(spec, &v.exam)))
    });
    live(move || {
        figures
            .get()
            .into_iter()
            .map(|(figure, beside)| {
                all![
                    el("p.figure").with(figure),
                    (!beside.is_empty()).then(|| el("p.small").with(beside))
                ]
            })
            .collect::<Piece>()
    })
}

/// The result of the newest trial of a task; where several are asked for, their figures stand at
/// the top of the page.
pub(super) fn task_result(
    // The task.
    task: TaskId,
) -> Piece {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let flags = move || {
        desk.visit.with(|v| {
            v.map_or(Vec::new(), |v| tasks::flags_so_far(task, &v.exam))
                .iter()
                .map(flag_item)
                .collect::<Piece>()
        })
    };
    let beside = move || {
        desk.visit.with(|v| {
            v.map_or(Vec::new(), |v| (spec.compare)(task, &v.exam))
                .iter()
                .map(comparison_item)
                .collect::<Piece>()
        })
    };
    el("section.result")
        .attr("aria-label", "Result")
        .with((spec.trials < 2 || task.goes_on()).then(|| figures(task)))
        // A meal has a picture of its own.
        .with((spec.shows != Shows::Tally).then(|| {
            live(move || match (task.sign_column(), spec.pad.first_counts) {
                (Some(_), _) => sign_line(desk, task),
                (None, true) => time_line(desk, task),
                (None, false) => ().piece(),
            })
        }))
        .with(el("ul.flags").with(live(flags)))
        .with(el("ul.flags").with(live(beside)))
        .with(el("p.caveat").with(wording::tasks::of(task).caveat))
        .with(task_fold(spec))
        .piece()
}

/// The taps of the newest trial on a line: where they crowd and where they gap is seen at once.
fn time_line(desk: Desk, task: TaskId) -> Piece {
    let taps = desk.visit.with(|v| {
        v.and_then(|v| v.exam.latest(task))
            .map_or(Vec::new(), Trial::tap_offsets)
    });
    let Some(last) = taps.last().map(|at| at.0).filter(|last| *last > 0) else {
        return ().piece();
    };
    // Labelled as the finger's: it is no measure of the speaker.
    let even = evenness(&Series::new(taps.iter().copied())).ok();
    let first = taps.first().map_or(0, |at| at.0);
    all![
        el("div.time-line")
            .attr("role", "img")
            .attr("aria-label", "The taps on a line of time")
            .with(
                taps.iter()
                    .map(|at| {
                        let percent = (at.0 - first) * 1000 / (last - first).max(1);
                        let left = format!("{}.{}%", percent / 10, percent % 10);
                        el("i").style("left", left)
                    })
                    .collect::<Piece>()
            ),
        even.map(|even| all![el("p.small").with(even.reason()), rule_fold(even.rule())])
    ]
}

/// The presses of the newest trial on a line of time, signs among them, and in words below it.
fn sign_line(desk: Desk, task: TaskId) -> Piece {
    let marks = desk.visit.with(|v| {
        v.and_then(|v| v.exam.latest_started(task))
            .map_or(Vec::new(), wording::by_mouth::time_line)
    });
    let Some(last) = marks.iter().map(|m| m.0.0).max().filter(|last| *last > 0) else {
        return ().piece();
    };
    let words: Vec<String> = marks
        .iter()
        .map(|(at, _, what)| format!("{at} {what}"))
        .collect();
    all![
        el("div.time-line").attr("aria-hidden", "true").with(
            marks
                .iter()
                .map(|&(at, sign, _)| {
                    let tenths = at.0.max(0) * 1000 / last;
                    let left = format!("{}.{}%", tenths / 10, tenths % 10);
                    el("i").class_if("sign", move || sign).style("left", left)
                })
                .collect::<Piece>()
        ),
        el("p.small").with(words.join(" \u{b7} "))
    ]
}

/// The clinician's own trials as a table: what was given, how often, the signs. What was given last
/// stands on top, where it is seen without scrolling.
pub(super) fn own_table(desk: Desk) -> Piece {
    let rows = desk
        .visit
        .with(|v| v.map_or(Vec::new(), |v| own::table(&v.exam)));
    if rows.is_empty() {
        return ().piece();
    }
    el("table.trials")
        .with(
            el("thead").with(
                el("tr")
                    .with(el("th").with("Given"))
                    .with(el("th").with("Times"))
                    .with(el("th").with("Signs")),
            ),
        )
        .with(
            el("tbody").with(
                rows.into_iter()
                    .rev()
                    .map(|row| {
                        el("tr")
                            .with(el("td").with(words::given(&row.given)))
                            .with(el("td").with(row.times))
                            .with(el("td").with(words::came(&row)))
                    })
                    .collect::<Piece>(),
            ),
        )
        .piece()
}
