//! Moving about: the page shown, and the address that names it.

use leptos::prelude::*;

use super::Desk;
use crate::browser::{page, prefs};
use crate::ui::route::{Page, Route};

impl Desk {
    /// Goes to a place.
    pub(in crate::ui) fn go(self, route: Route) {
        self.moved.set_value(true);
        if *self.route.read_untracked() != route {
            page::push(&route.hash());
        }
        self.arrive(route);
    }

    /// Goes to a place that takes the current one's place in the history.
    pub(in crate::ui) fn go_instead(self, route: Route) {
        page::replace(&route.hash());
        self.arrive(route);
    }

    /// Goes to a page of the open visit.
    pub(in crate::ui) fn turn(self, to: impl Into<Page>) {
        if let Some(id) = self.id() {
            self.go(Route::Visit(id, to.into()));
        }
    }

    /// Shows a place that the address names already.
    pub(in crate::ui) fn arrive(self, route: Route) {
        page::leave_field();
        prefs::set_running(route.visit().map(|_| route.hash()).as_deref());
        if let Some(id) = route.visit().cloned()
            && self.id().as_ref() != Some(&id)
        {
            self.open(id);
        }
        if route == Route::Home || route == Route::History {
            self.refresh();
        }
        self.route.set(route);
        self.said.set(String::new());
        page::scroll_to_top();
        page::focus_heading();
    }
}
