//! Values worked out from signals.

use std::any::Any;
use std::marker::PhantomData;
use std::sync::{Arc, Mutex};

use leptos::prelude::*;

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

/// Whether a value changed since it was asked last.
trait Changed: Send + Sync {
    fn changed(&self) -> bool;
}

impl<F: Fn() -> bool + Send + Sync> Changed for F {
    fn changed(&self) -> bool {
        self()
    }
}

fn count_changes(changed: Box<dyn Changed>) -> Memo<u32> {
    Memo::new(move |before: Option<&u32>| {
        let before = before.copied().unwrap_or(0);
        if changed.changed() {
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

impl<T: PartialEq + Clone + Send + Sync + 'static> From<Follow<Option<T>>> for Signal<Option<T>> {
    fn from(value: Follow<Option<T>>) -> Self {
        Signal::derive(move || value.get())
    }
}
