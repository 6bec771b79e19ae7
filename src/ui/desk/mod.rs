//! The desk: what the pages share, and the one way from a press to the journal and back to the
//! page.

use std::ops::Deref;
use std::rc::Rc;

use leptos::prelude::*;

use super::keeper::{Keeper, Saved};
use super::open_visit::OpenVisit;
use super::route::Route;
use crate::browser::prefs::{self, Prefs};
use crate::browser::{clock, page};
use crate::measure::time::{Millis, Stamp};
use crate::record::event::Versions;
use crate::record::head::Head;
use crate::record::id::VisitId;
use crate::record::store::StoreError;

mod moving;
mod opening;
mod pressing;
mod recording;
mod time;

/// The version of the rules and norms compiled in.
pub(super) const RULES: &str = "6";

/// The versions in force.
pub(super) fn versions() -> Versions {
    Versions {
        app: env!("CARGO_PKG_VERSION").to_owned(),
        rules: RULES.to_owned(),
    }
}

/// The desk. Copied freely: it points to what the pages share, which stays for as long as the app
/// runs.
#[derive(Clone, Copy)]
pub(super) struct Desk(&'static Shared);

impl Deref for Desk {
    type Target = Shared;

    fn deref(&self) -> &Shared {
        self.0
    }
}

/// Everything the pages share.
pub(super) struct Shared {
    /// Where one is.
    pub(super) route: RwSignal<Route>,
    /// The open visit.
    pub(super) visit: OpenVisit,
    /// Set while a visit is being read.
    pub(super) loading: RwSignal<bool>,
    /// Why a visit could not be read.
    pub(super) unreadable: RwSignal<Option<StoreError>>,
    /// Whether everything is saved.
    pub(super) saved: RwSignal<Saved>,
    /// Why the best store could not be had, if so.
    pub(super) downgrade: RwSignal<Option<StoreError>>,
    /// The newest visits.
    pub(super) heads: RwSignal<Vec<Head>>,
    /// Preferences of this phone.
    pub(super) prefs: RwSignal<Prefs>,
    /// Why the local policy that this phone kept can't be used; empty where it can.
    pub(super) policy_lost: RwSignal<String>,
    /// The moment the running figures show.
    pub(super) now: RwSignal<Stamp>,
    /// Spoken politely to a screen reader.
    pub(super) said: RwSignal<String>,
    /// A new version waits.
    pub(super) update: RwSignal<bool>,
    /// What was pressed moved the page: for a moment nothing but the pad and the signs takes a
    /// press, so that a tap meant for what stood there before does nothing.
    pub(super) still: RwSignal<bool>,
    /// The app is stored on this phone and opens without a network.
    pub(super) stored: RwSignal<bool>,
    /// The store was opened and read.
    pub(super) ready: RwSignal<bool>,
    /// The open visit was come back to after so long; until something is pressed in it.
    pub(super) away: RwSignal<Option<Millis>>,
    /// Somebody went somewhere since the start.
    moved: StoredValue<bool>,
    keeper: StoredValue<Rc<Keeper>, LocalStorage>,
}

/// After so long away it is asked whether it is still the same person.
const AWAY: Millis = Millis::from_secs(300);

impl Desk {
    /// A desk with nothing on it.
    pub(super) fn new() -> Desk {
        let saved = RwSignal::new(Saved::Yes);
        let downgrade = RwSignal::new(None);
        let prefs = prefs::load();
        prefs::apply_look(prefs.look);
        prefs::apply_hand(prefs.left_hand);
        Desk(Box::leak(Box::new(Shared {
            route: RwSignal::new(Route::parse(&page::hash())),
            visit: OpenVisit::none(),
            loading: RwSignal::new(false),
            unreadable: RwSignal::new(None),
            saved,
            downgrade,
            heads: RwSignal::new(Vec::new()),
            prefs: RwSignal::new(prefs),
            policy_lost: RwSignal::new(
                prefs::policy()
                    .err()
                    .map_or(String::new(), |error| error.to_string()),
            ),
            now: RwSignal::new(clock::now()),
            said: RwSignal::new(String::new()),
            update: RwSignal::new(false),
            still: RwSignal::new(false),
            stored: RwSignal::new(false),
            ready: RwSignal::new(false),
            away: RwSignal::new(None),
            moved: StoredValue::new(false),
            keeper: StoredValue::new_local(Keeper::new(saved, downgrade)),
        })))
    }

    /// The desk of this app.
    pub(super) fn get() -> Desk {
        expect_context()
    }

    pub(super) fn keeper(self) -> Rc<Keeper> {
        self.keeper.get_value()
    }

    fn id(self) -> Option<VisitId> {
        self.visit.with_untracked(|v| v.map(|v| v.id.clone()))
    }
}
