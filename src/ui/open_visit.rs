//! The visit on the desk, as the pages see it.

use std::sync::Arc;

use leptos::prelude::*;

use crate::record::visit::Visit;

/// The open visit, if one is. Copied freely.
///
/// Every page looks at it in dozens of places: only the looking itself is compiled for each.
#[derive(Clone, Copy)]
pub(super) struct OpenVisit(RwSignal<Option<Arc<Visit>>>);

impl OpenVisit {
    /// None open.
    pub(super) fn none() -> OpenVisit {
        OpenVisit(RwSignal::new(None))
    }

    /// Looks at it, and follows it.
    pub(super) fn with<T>(self, look: impl FnOnce(Option<&Visit>) -> T) -> T {
        look(self.followed().as_deref())
    }

    /// Looks at it as it is now.
    pub(super) fn with_untracked<T>(self, look: impl FnOnce(Option<&Visit>) -> T) -> T {
        look(self.now().as_deref())
    }

    /// Opens another, or none.
    pub(super) fn set(self, visit: Option<Visit>) {
        self.0.set(visit.map(Arc::new));
    }

    /// Changes it.
    pub(super) fn update(self, change: impl FnOnce(&mut Visit)) {
        self.0.update(|slot| {
            if let Some(visit) = slot {
                change(Arc::make_mut(visit));
            }
        });
    }

    #[inline(never)]
    fn followed(self) -> Option<Arc<Visit>> {
        self.0.get()
    }

    /// It as it is now, and stays whatever comes.
    #[inline(never)]
    pub(super) fn now(self) -> Option<Arc<Visit>> {
        self.0.get_untracked()
    }
}
