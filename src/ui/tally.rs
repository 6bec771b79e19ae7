//! At the table: the last thing pressed, a note in words, the tally's picture, and its file.

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::follow::follow;
use super::parts::problem_line;
use crate::browser::{clock, share};
use crate::clinical::findings::counted::{Counted, note_id};
use crate::clinical::findings::trial::{Answer, MarkKind};
use crate::clinical::knowledge::task::TaskId;
use crate::draw::{Piece, all, el, live, said};
use crate::handover::tally;
use crate::wording::counted::word;
use crate::wording::meal;

const TASK: TaskId = TaskId::Meal;

/// Most characters of a note.
const MOST: &str = "80";

/// What was pressed last, and a note, while the tally runs.
pub(super) fn running() -> Piece {
    let desk = Desk::get();
    let last = follow(move || {
        desk.visit.with(|v| {
            let trial = v?.exam.latest(TASK)?;
            let mark = trial.marks.last()?;
            let so_far = trial.between(trial.start()?, mark.at).length?;
            Some(format!(
                "Last: {} at {}",
                word(TASK, mark.kind).to_ascii_lowercase(),
                meal::minutes(so_far)
            ))
        })
    });
    let words = RwSignal::new(String::new());
    let add = move || {
        let note = words.get_untracked().trim().to_owned();
        if note.is_empty() {
            return;
        }
        let at = clock::now();
        desk.press(TASK, None, at, MarkKind::Count(Counted::Note));
        desk.answer(TASK, &note_id(at), Some(Answer::Words(note)));
        words.set(String::new());
    };
    all![
        el("p.figure")
            .attr("role", "status")
            .with(live(move || last.get())),
        el("div.words")
            .with(el("label").attr("for", "note").with("Note. No names."))
            .with(
                el("div.note")
                    .with(
                        el("input")
                            .attr("id", "note")
                            .attr("type", "text")
                            .attr("autocomplete", "off")
                            .attr("maxlength", MOST)
                            .held(said(move || words.get()))
                            .on("input", move |event: ev::Event| words
                                .set(event_target_value(&event)))
                            .on("keydown", move |event: leptos::ev::KeyboardEvent| {
                                if event.key() == "Enter" {
                                    add()
                                }
                            })
                    )
                    .with(el("button").press(move |_| add()).with("Add"))
            )
    ]
}

/// The picture of a tally and its file, once it ended.
pub(super) fn ended() -> Piece {
    let desk = Desk::get();
    let picture = follow(move || {
        desk.visit.with(|v| {
            v.and_then(|v| v.exam.latest(TASK))
                .map_or(String::new(), tally::picture)
        })
    });
    let problem = RwSignal::new(String::new());
    let save = move |_| {
        let text = desk.visit.with_untracked(|v| {
            v.and_then(|v| v.exam.latest(TASK))
                .map_or(String::new(), tally::csv)
        });
        let name = format!("penlight-tally-{}.csv", clock::now().wall.0);
        problem.set(share::save_file(&name, &text).err().unwrap_or_default());
    };
    all![
        el("div.tally-picture").html(said(move || picture.get())),
        el("button").press(save).with("Save the tally as a file"),
        problem_line(problem)
    ]
}
