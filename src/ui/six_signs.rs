//! Signs after a stroke: what the visit recorded already, and what is still to be asked.

use super::desk::Desk;
use super::follow::follow;
use super::parts::{big, choking_button, folded, frame, overview_of};
use super::questions::question;
use super::route::Page;
use super::why::{flag_item, task_fold};
use crate::clinical::findings::looked::Looked;
use crate::clinical::findings::trial::Answer;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::six_signs::judge::ENOUGH;
use crate::clinical::tasks::six_signs::recorded::Whence;
use crate::clinical::tasks::six_signs::{
    COUNTED, Row, SPEC, YES, is_counted, judged, rows, tested,
};
use crate::draw::{Drawn, Piece, all, el, live};
use crate::wording::six_signs as words;
use crate::wording::tasks;
use crate::wording::words::capital;

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
fn row_item(desk: Desk, row: Row) -> Piece {
    let asked = row
        .question
        .and_then(|id| SPEC.questions.iter().find(|q| q.id == id));
    // Recorded elsewhere: what is found otherwise is behind a fold.
    let here = row.looked == Looked::NotTested || row.from.iter().all(|from| *from == Whence::Here);
    let beside = (!row.beside.is_empty()).then(|| {
        format!(
            "Recorded, and not the same: {}.",
            words::whences(&row.beside)
        )
    });
    let from = match (asked, row.looked) {
        (None, Looked::NotTested) => "Known after water that was watched for 60 seconds".to_owned(),
        _ => capital(&words::whences(&row.from)),
    };
    let question = asked.map(|q| {
        let question = question(desk, TASK, q);
        if here {
            question
        } else {
            folded("Found otherwise").with(question).piece()
        }
    });
    el("li.item")
        .with(
            el("p.line")
                .with(el("b").with(words::heading(row.sign)))
                .with(el("span").with(look_of(row.looked))),
        )
        .with(el("p.small").with(from))
        .with(beside.map(|beside| el("p.small").with(beside)))
        .with(question)
        .piece()
}

/// The page.
pub(super) fn six_signs_page() -> Piece {
    let desk = Desk::get();
    let body = move || {
        desk.visit.with(|v| {
            let exam = &v?.exam;
            if let Some(aside) = (SPEC.not_for)(SPEC.id, exam) {
                return Some(el("ul.flags").with(flag_item(&aside)).piece());
            }
            let t = tested(exam);
            let rows = rows(exam);
            let left_out = rows.iter().any(|row| !row.counts);
            Some(all![
                el("p.figure").attr("role", "status").with(format!(
                    "{} found, {}",
                    t.present,
                    words::tested(t)
                )),
                el("ul.items.six").with(
                    rows.into_iter()
                        .filter(|row| row.counts)
                        .map(|row| row_item(desk, row))
                        .collect::<Vec<_>>()
                ),
                el("ul.flags").with(judged(exam).iter().map(flag_item).collect::<Piece>()),
                el("p.caution")
                    .with(
                        (t.present < ENOUGH).then_some(
                            "Fewer than two clear nobody: this is never \"no sign seen\". "
                        )
                    )
                    .with(left_out.then_some(
                        "The gag is left out by local policy: it is missing in many healthy people."
                    )),
                task_fold(&SPEC)
            ])
        })
    };
    let counted = follow(move || desk.visit.with(|v| v.is_some_and(|v| is_counted(&v.exam))));
    let count = move |_| {
        let answer = if counted.get_untracked() { "no" } else { YES };
        desk.answer(TASK, COUNTED, Some(Answer::Choice(answer.to_owned())));
    };
    frame(
        tasks::of(TASK).title.into(),
        overview_of(desk),
        all![
            el("p").with("Gathered from what this visit recorded. Only what is missing is asked."),
            live(body),
            el("p.figure")
                .attr("role", "status")
                .with(live(move || counted
                    .get()
                    .then_some("Counted in this visit's decision"))),
            big(
                "",
                live(move || if counted.get() {
                    "Leave them out"
                } else {
                    "Count them in this visit"
                }),
                count
            ),
            big("primary", "Done", move |_| desk.turn(Page::Overview)),
            choking_button()
        ],
    )
}
