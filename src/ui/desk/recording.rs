//! Recording: an event to the page and to the store, from the first of a visit on.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::{Desk, versions};
use crate::browser::{clock, ids, prefs};
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::screen::ScreenId;
use crate::clinical::knowledge::signed::Signed;
use crate::clinical::knowledge::task::TaskId;
use crate::record::envelope::{Envelope, SCHEMA, body};
use crate::record::event::{Details, Event};
use crate::record::store::StoreError;
use crate::record::visit::Visit;
use crate::record::way;
use crate::ui::route::{Page, Route};

impl Desk {
    /// Records events of the open visit: the page and the queue get them in the same breath.
    pub(in crate::ui) fn record(self, events: impl IntoIterator<Item = Event>) {
        let at = clock::now();
        let keeper = self.keeper();
        let mut written = Vec::new();
        let mut by_hand = false;
        self.visit.update(|visit| {
            for event in events {
                by_hand |= match event {
                    Event::Mark { kind, .. } => kind.pressed(),
                    Event::Hidden { .. } => false,
                    _ => true,
                };
                // What can't be written down is said, and nothing is put in its place.
                let body = match body(&event) {
                    Ok(body) => body,
                    Err(error) => {
                        keeper.refused(StoreError::Broken(error.to_string()));
                        continue;
                    }
                };
                let envelope = Envelope {
                    device: ids::device_id(),
                    visit: visit.id.clone(),
                    seq: visit.next,
                    schema: SCHEMA,
                    key: String::new(),
                    at,
                    body,
                };
                visit.take_new(&envelope, event);
                written.push(envelope);
            }
        });
        if let Some(visit) = self.visit.now().filter(|_| !written.is_empty()) {
            keeper.push(written, visit);
        }
        // Whoever goes on in a visit has seen whose it is.
        if by_hand && self.away.get_untracked().is_some() {
            self.away.set(None);
        }
    }

    /// Begins a visit and goes to its first page.
    pub(in crate::ui) fn begin(self, details: Details, screen: Option<ScreenId>, by: Signed) {
        let id = ids::new_visit_id();
        self.visit.set(Some(Visit::new(id.clone())));
        self.record([Event::Opened {
            details,
            screen,
            versions: versions(),
            policy: prefs::policy_in_force(),
            role: by.role,
            initials: by.initials,
        }]);
        let order = self.prefs.get_untracked().order;
        if order != Order::default() && screen.is_some_and(|id| id.screen().has_order()) {
            self.record([Event::Order(order)]);
        }
        let first = self
            .visit
            .with_untracked(|v| v.map_or(Page::Overview, |v| way::next(v).into()));
        // "Back" from the first page leads home, not to the filled-in form.
        self.go_instead(Route::Visit(id, first));
        spawn_local(async {
            crate::browser::any_store::ask_to_persist().await;
        });
    }

    /// Begins a count without a visit.
    pub(in crate::ui) fn begin_count(self) {
        let id = ids::new_visit_id();
        self.visit.set(Some(Visit::new(id.clone())));
        self.go(Route::Count(id, None));
    }

    /// Begins one task without a visit.
    pub(in crate::ui) fn begin_single(self, task: TaskId) {
        let id = ids::new_visit_id();
        self.visit.set(Some(Visit::new(id.clone())));
        self.go(Route::Count(id, Some(task)));
    }
}
