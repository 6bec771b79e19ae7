//! At the table: the last thing pressed, a note in words, the tally's picture, and its file.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{follow, live, press, said};
use crate::browser::{clock, share};
use crate::clinical::counted::{Counted, note_id, word};
use crate::clinical::task::TaskId;
use crate::clinical::tasks::meal;
use crate::clinical::trial::{Answer, MarkKind};
use crate::handover::tally;

const TASK: TaskId = TaskId::Meal;

/// Most characters of a note.
const MOST: &str = "80";

/// What was pressed last, and a note, while the tally runs.
#[component]
pub(super) fn Running() -> impl IntoView {
    let desk = Desk::get();
    let last = follow(move || {
        desk.visit.with(|v| {
            let trial = v.as_ref()?.exam.latest(TASK)?;
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
    view! {
        <p class="figure" role="status">{live(move || last.get())}</p>
        <div class="words">
            <label for="note">"Note. No names."</label>
            <div class="note">
                <input
                    id="note"
                    type="text"
                    autocomplete="off"
                    maxlength=MOST
                    prop:value=said(move || words.get())
                    on:input=move |event| words.set(event_target_value(&event))
                    on:keydown=move |event: leptos::ev::KeyboardEvent| if event.key() == "Enter" { add() }
                />
                <button type="button" on:click=press(move |_| add())>"Add"</button>
            </div>
        </div>
    }
}

/// The picture of a tally and its file, once it ended.
#[component]
pub(super) fn Ended() -> impl IntoView {
    let desk = Desk::get();
    let picture = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| v.exam.latest(TASK))
                .map_or(String::new(), tally::picture)
        })
    });
    let problem = RwSignal::new(String::new());
    let save = move |_| {
        let text = desk.visit.with_untracked(|v| {
            v.as_ref()
                .and_then(|v| v.exam.latest(TASK))
                .map_or(String::new(), tally::csv)
        });
        let name = format!("penlight-tally-{}.csv", clock::now().wall.0);
        problem.set(share::save_file(&name, &text).err().unwrap_or_default());
    };
    view! {
        <div class="tally-picture" inner_html=said(move || picture.get())></div>
        <button type="button" on:click=press(save)>"Save the tally as a file"</button>
        <p class="problem" role="alert">{live(move || problem.get())}</p>
    }
}
