//! What the rows and the picture of a page of the examination share.

use leptos::prelude::*;

use super::desk::Desk;
use crate::clinical::findings::oral::Answer;
use crate::clinical::knowledge::oral::Item;
use crate::clinical::knowledge::oral::nerve::Side;

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

/// Options of a [`Choices`] whose words are their ids.
pub(super) fn options<'a>(words: impl IntoIterator<Item = &'a str>) -> Vec<(String, String)> {
    words
        .into_iter()
        .map(|w| (w.to_owned(), crate::wording::words::capital(w)))
        .collect()
}
