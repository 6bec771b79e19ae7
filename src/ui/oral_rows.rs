//! What the rows and the picture of a page of the examination share.

use leptos::prelude::*;

use super::desk::Desk;
use super::parts::choices;
use crate::clinical::findings::oral::{Answer, Reason};
use crate::clinical::knowledge::oral::Item;
use crate::clinical::knowledge::oral::nerve::Side;
use crate::draw::Piece;
use crate::wording::oral_answers;
use crate::wording::words::capital;

/// What the rows and the picture of a page share.
#[derive(Clone, Copy)]
pub(super) struct Rows {
    /// Items whose row is open.
    pub(super) opened: RwSignal<Vec<&'static str>>,
    /// The place that was picked on the picture: an item and its side.
    pub(super) picked: RwSignal<Option<(&'static str, Side)>>,
}

/// An item's answer, followed.
pub(super) fn answer_of(desk: Desk, item: &'static Item) -> Answer {
    desk.visit
        .with(|v| v.map_or(Answer::Open, |v| v.exam.oral.answer(item)))
}

/// Choices of one value among some.
pub(super) fn one_of<T: Copy + PartialEq + Send + Sync + 'static>(
    // What is asked.
    label: String,
    // The values, each with its words.
    offered: Vec<(T, &'static str)>,
    // The value chosen, if one is.
    chosen: impl Fn() -> Option<T> + Send + Sync + 'static,
    // Called with the value pressed; pressing the chosen one again takes it back.
    pick: impl Fn(Option<T>) + Send + Sync + 'static,
) -> Piece {
    // Within the row a button goes by its place.
    let words = offered.iter().enumerate();
    let buttons = words.map(|(at, (_, words))| (at.to_string(), capital(words)));
    let buttons = buttons.collect();
    let values: Vec<T> = offered.into_iter().map(|(value, _)| value).collect();
    let places = values.clone();
    let place = move || {
        let value = chosen()?;
        let at = places.iter().position(|one| *one == value)?;
        Some(at.to_string())
    };
    let value = move |place: Option<String>| values.get(place?.parse::<usize>().ok()?).copied();
    choices(
        label,
        buttons,
        Signal::derive(place),
        Callback::new(move |place| pick(value(place))),
    )
}

/// Values with their words.
pub(super) fn worded<T: Copy>(
    values: impl IntoIterator<Item = T>,
    words: fn(T) -> &'static str,
) -> Vec<(T, &'static str)> {
    let values = values.into_iter();
    values.map(|value| (value, words(value))).collect()
}

/// Why something was not tested.
pub(super) fn why_not(
    // What is asked.
    label: String,
    // The reason given, if one is.
    given: impl Fn() -> Option<Reason> + Send + Sync + 'static,
    // Called with the reason pressed.
    pick: impl Fn(Option<Reason>) + Send + Sync + 'static,
) -> Piece {
    let reasons = worded(Reason::ALL, oral_answers::reason);
    one_of(label, reasons, given, pick)
}
