//! Opening: the store at the start, where one was, and a visit read from its events.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::{AWAY, Desk};
use crate::browser::{clock, prefs};
use crate::measure::time::Millis;
use crate::record::envelope::Unreadable;
use crate::record::head::Head;
use crate::record::id::VisitId;
use crate::record::visit::{Aside, Visit};
use crate::record::way;
use crate::ui::route::Route;

/// How many of the newest visits the first page knows.
const RECENT: usize = 8;

/// A visit touched within this time is opened again where it was.
const RESUME: Millis = Millis::from_secs(3600);

impl Desk {
    /// Opens the store and finds back where one was.
    pub(in crate::ui) fn start(self) {
        spawn_local(async move {
            let keeper = self.keeper();
            keeper.open().await;
            let heads = keeper.heads(RECENT, None).await;
            match heads {
                Ok(heads) => {
                    self.find_back(&heads);
                    self.heads.set(heads);
                }
                Err(error) => self.unreadable.set(Some(error)),
            }
            self.ready.set(true);
        });
    }

    /// Opens what the address names; else the visit that was touched last, where it was.
    ///
    /// The pointer in localStorage may be half a minute old after a crash, so the store decides
    /// which visit it was, and the pointer only which page.
    fn find_back(self, heads: &[Head]) {
        let here = self.route.get_untracked();
        if let Some(id) = here.visit().cloned() {
            self.loading.set(true);
            spawn_local(async move {
                self.load(id).await;
                self.come_back();
            });
            return;
        }
        // Whoever has begun to move about is not to be moved.
        if here != Route::Home || self.moved.get_value() {
            return;
        }
        let now = clock::now().wall;
        let Some(head) = heads.first().filter(|h| {
            !h.deleted && (h.running || (!h.issued && !h.loose && now - h.touched < RESUME))
        }) else {
            return;
        };
        let pointer = prefs::running()
            .map(|hash| Route::parse(&hash))
            .filter(|route| route.visit() == Some(&head.visit) && !head.running);
        let id = head.visit.clone();
        let loose = head.loose;
        // Home stays behind it, so that "back" leads there.
        self.open_then(id.clone(), move |visit| {
            pointer.unwrap_or_else(|| {
                if loose {
                    Route::Count(id, None)
                } else {
                    Route::Visit(id, way::next(visit).into())
                }
            })
        });
    }

    /// Reads the newest visits again.
    pub(in crate::ui) fn refresh(self) {
        // What was recorded in this very turn stands in them.
        self.keeper().flush();
        spawn_local(async move {
            if let Ok(heads) = self.keeper().heads(RECENT, None).await {
                self.heads.set(heads);
            }
        });
    }

    pub(super) fn open(self, id: VisitId) {
        self.loading.set(true);
        spawn_local(async move {
            self.load(id).await;
        });
    }

    fn open_then(self, id: VisitId, to: impl FnOnce(&Visit) -> Route + 'static) {
        self.loading.set(true);
        spawn_local(async move {
            self.load(id).await;
            let route = self.visit.with_untracked(|v| v.map(to));
            if let (Some(route), false) = (route, self.moved.get_value()) {
                // Home stood there for a moment: a press on its way must not hit the new page.
                self.hold_still();
                self.go(route);
                self.come_back();
            }
        });
    }

    /// The app was opened on a visit: how long ago it was touched last.
    fn come_back(self) {
        let touched = self.visit.with_untracked(|v| v.map(|v| v.touched));
        let away = touched.map(|touched| clock::now().wall - touched);
        self.away.set(away.filter(|away| *away >= AWAY));
    }

    async fn load(self, id: VisitId) {
        match self.keeper().read(&id).await {
            Ok((events, raw)) => {
                let mut visit = Visit::replay(id, events);
                visit.aside.extend(raw.into_iter().map(|raw| Aside {
                    raw: raw.0,
                    why: Unreadable::Damaged,
                }));
                // A task on its own is in the store from its first press on.
                let alone = matches!(self.route.get_untracked(), Route::Count(..));
                let known = alone || visit.next > 0 || !visit.aside.is_empty();
                self.visit.set(known.then_some(visit));
                self.settle();
            }
            Err(error) => self.unreadable.set(Some(error)),
        }
        self.loading.set(false);
    }
}
