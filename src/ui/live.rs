//! Parts of a page that follow their signals, and handlers, in a form that is compiled once.
//!
//! Drawn directly, every closure gets a copy of the drawing code of its own, which more than
//! doubled the size of the app; boxed, all share one.

use leptos::ev;
use leptos::prelude::*;

/// A part that is drawn anew when what it reads changes.
pub(super) fn live<V: IntoAny>(draw: impl Fn() -> V + Send + 'static) -> AnyView {
    boxed(Box::new(move || draw().into_any()))
}

fn boxed(draw: Box<dyn Fn() -> AnyView + Send>) -> AnyView {
    (move || draw()).into_any()
}

/// A handler for a press.
pub(super) fn press(
    handle: impl FnMut(ev::MouseEvent) + 'static,
) -> Box<dyn FnMut(ev::MouseEvent)> {
    Box::new(handle)
}

/// The text of an attribute that follows its signals.
pub(super) fn said<S: Into<String>>(
    words: impl Fn() -> S + Send + Sync + 'static,
) -> Signal<String> {
    Signal::derive(move || words().into())
}

/// A value worked out from signals, that tells only when it changes.
pub(super) fn follow<T: PartialEq + Send + Sync + 'static>(
    value: impl Fn() -> T + Send + Sync + 'static,
) -> Memo<T> {
    followed(Box::new(value))
}

fn followed<T: PartialEq + Send + Sync + 'static>(
    value: Box<dyn Fn() -> T + Send + Sync>,
) -> Memo<T> {
    Memo::new(move |_| value())
}
