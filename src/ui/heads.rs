//! Visits in lists: how each is told, and all that are kept.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::desk::Desk;
use crate::browser::clock;
use crate::draw::{Piece, all, el};
use crate::measure::time::Millis;
use crate::record::head::Head;
use crate::wording::screen::what;
use crate::wording::verdict::in_list;

/// "broken off 09:31".
fn broken_words(at: Option<Millis>) -> Option<String> {
    at.map(|at| format!("broken off {}", clock::local(at).time))
}

/// When a visit was begun, and what it is.
pub(super) fn when_and_what(head: &Head) -> String {
    let when = clock::local(head.opened);
    format!("{} {}, {}", when.date, when.time, what(head.what))
}

/// How a visit stands, in words; empty before anything was decided.
pub(super) fn state(head: &Head) -> String {
    // What was forgotten to be ended hides no verdict.
    let verdict = in_list(head);
    match (head.running, verdict.as_str()) {
        (true, "") => "running".to_owned(),
        (true, verdict) => format!("{verdict}, running"),
        (false, verdict) => verdict.to_owned(),
    }
}

/// A visit as every list tells it: label, time, screen, verdict, and what is open of it. `before`: what
/// a press on it does, where that is not to open it.
pub(super) fn head_words(before: &'static str, head: &Head) -> Piece {
    let broken = broken_words(head.broken);
    all![
        el("b").with(before).with(head.label.to_string()),
        el("span").with(when_and_what(head)),
        el("span.state").with(state(head)),
        broken.map(|words| el("span.state.open").with(words)),
        head.unclosed
            .then(|| el("span.state.open").with("not closed"))
    ]
}

/// More visits than a phone has in years.
pub(super) const ALL: usize = 10_000;

/// The newest visits, as many as this: those that the first page knows at once, then further back.
pub(super) fn newest(desk: Desk, most: usize) -> RwSignal<Vec<Head>> {
    let heads = RwSignal::new(desk.heads.get_untracked());
    spawn_local(async move {
        if let Ok(more) = desk.keeper().heads(most, None).await {
            // Without effect where its page is gone already.
            let _ = heads.try_set(more);
        }
    });
    heads
}
