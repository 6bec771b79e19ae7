//! Parts of a page that follow their signals, and handlers, in a form that is compiled once.
//!
//! Drawn directly, every closure gets a copy of the drawing code of its own, which more than
//! doubled the size of the app; boxed, all share one.

use std::any::Any;
use std::marker::PhantomData;
use std::sync::{Arc, Mutex};

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

/// A handler for a field that was changed.
pub(super) fn changed(handle: impl FnMut(ev::Event) + 'static) -> Box<dyn FnMut(ev::Event)> {
    Box::new(handle)
}

/// The text of an attribute that follows its signals.
pub(super) fn said<S: Into<String>>(
    words: impl Fn() -> S + Send + Sync + 'static,
) -> Signal<String> {
    Signal::derive(move || words().into())
}

/// A value worked out from signals, that tells only when it changes. Copied freely.
///
/// A library's memo of each kind of value takes 3 KB of the app; here all share one memo, which
/// counts the changes, and the value lies beside it.
pub(super) struct Follow<T: 'static> {
    changes: Memo<u32>,
    value: StoredValue<Arc<dyn Any + Send + Sync>>,
    kind: PhantomData<fn() -> T>,
}

impl<T> Clone for Follow<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Follow<T> {}

/// Follows a value.
pub(super) fn follow<T: PartialEq + Clone + Send + Sync + 'static>(
    value: impl Fn() -> T + Send + Sync + 'static,
) -> Follow<T> {
    let last = Arc::new(Mutex::new(None::<T>));
    let kept = Arc::clone(&last);
    let changed = move || {
        let new = value();
        let Ok(mut last) = last.lock() else {
            return false;
        };
        let changed = last.as_ref() != Some(&new);
        *last = Some(new);
        changed
    };
    Follow {
        changes: count_changes(Box::new(changed)),
        value: StoredValue::new(kept),
        kind: PhantomData,
    }
}

fn count_changes(changed: Box<dyn Fn() -> bool + Send + Sync>) -> Memo<u32> {
    Memo::new(move |before: Option<&u32>| {
        let before = before.copied().unwrap_or(0);
        if changed() {
            before.wrapping_add(1)
        } else {
            before
        }
    })
}

impl<T: Clone + Default + Send + 'static> Follow<T> {
    /// The value, followed.
    pub(super) fn get(self) -> T {
        self.changes.track();
        // Reading brings the value up to date; tracking alone does not.
        self.changes.get_untracked();
        self.last()
    }

    /// The value now.
    pub(super) fn get_untracked(self) -> T {
        self.changes.get_untracked();
        self.last()
    }

    fn last(self) -> T {
        let value = self.value.get_value();
        // It was stored under this very type and filled by the count just read.
        value
            .downcast_ref::<Mutex<Option<T>>>()
            .and_then(|value| value.lock().ok().and_then(|v| v.clone()))
            .unwrap_or_default()
    }
}

impl From<Follow<Option<String>>> for Signal<Option<String>> {
    fn from(value: Follow<Option<String>>) -> Self {
        Signal::derive(move || value.get())
    }
}
