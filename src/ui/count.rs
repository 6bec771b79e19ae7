//! Just count something, and attach it to a visit afterwards.

use leptos::prelude::*;

use super::attached::attach;
use super::desk::Desk;
use super::pad::pad;
use super::parts::{Number, Steps, choices, folded, frame_with_pad, number_field};
use super::result::task_result;
use super::route::Route;
use super::running::face;
use super::state::task_state;
use crate::browser::prefs::{self, Hands};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::Face;
use crate::draw::{Piece, all, el, live};
use crate::measure::time::Millis;

const TASK: TaskId = TaskId::FreeCount;

/// Windows offered with one press, in seconds.
const WINDOWS: [i64; 4] = [10, 15, 30, 60];

/// How many pads, as offered.
const HANDS: [(Hands, &str, &str); 3] = [
    (Hands::One, "one", "One"),
    (Hands::TwoPads, "two", "Two, the same thing"),
    (Hands::TwoThings, "things", "Two things"),
];

/// The page.
pub(super) fn count_page() -> Piece {
    let desk = Desk::get();
    let face = face(desk, TASK);
    let state = task_state(desk, TASK, face);
    // A length in tenths of a second; none is a plain stopwatch.
    let length = RwSignal::new(None::<i32>);
    let chosen = Signal::derive(move || {
        Some(match length.get() {
            None => "open".to_owned(),
            Some(tenths) => tenths.to_string(),
        })
    });
    let mut options = vec![("open".to_owned(), "Stopwatch".to_owned())];
    options.extend(
        WINDOWS
            .iter()
            .map(|s| ((s * 10).to_string(), format!("{s} s"))),
    );
    let pick = Callback::new(move |id: Option<String>| {
        length.set(id.and_then(|id| id.parse().ok()));
    });
    let pads: Vec<(String, String)> = HANDS
        .iter()
        .map(|(_, id, words)| ((*id).to_owned(), (*words).to_owned()))
        .collect();
    let hands = Signal::derive(move || {
        let now = desk.prefs.get().hands;
        HANDS
            .iter()
            .find(|(hands, _, _)| *hands == now)
            .map(|(_, id, _)| (*id).to_owned())
    });
    let pick_hands = Callback::new(move |picked: Option<String>| {
        let found = HANDS
            .iter()
            .find(|(_, id, _)| Some(*id) == picked.as_deref());
        desk.prefs
            .update(|p| p.hands = found.map_or(Hands::One, |(hands, _, _)| *hands));
        prefs::save(&desk.prefs.get_untracked());
    });
    let window = Signal::derive(move || length.get().map(|tenths| Millis(i64::from(tenths) * 100)));
    frame_with_pad(
        "Just count something".into(),
        Route::Home,
        all![
            el("div.above")
                .with(live(move || (face.get() == Face::Ready).then(|| all![
                    choices("How long?".into(), options.clone(), chosen, pick),
                    choices("Pads".into(), pads.clone(), hands, pick_hands),
                    folded("Another length").with(number_field(
                        Number {
                            id: "window",
                            label: "Seconds",
                            unit: "s",
                            range: (1, 3600),
                            steps: Steps::By(50),
                        },
                        length.into(),
                        Callback::new(move |tenths| length.set(tenths))
                    ))
                ])))
                .with(live(move || (face.get() == Face::Over).then(|| all![
                    task_result(TASK),
                    attach(),
                    el("div.row.quiet").with(
                        el("button")
                            .press(move |_| desk.begin_count())
                            .with("Count again")
                    )
                ]))),
            pad(TASK, window, face, state)
        ],
    )
}
