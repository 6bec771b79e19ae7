//! The desk: the open visit, and the one way from a press to the journal and back to the page.

use std::ops::Deref;
use std::rc::Rc;

use gloo_timers::callback::Timeout;
use leptos::prelude::*;
use leptos::task::spawn_local;

use super::follow::follow;
use super::keeper::{Keeper, Saved};
use super::open_visit::OpenVisit;
use super::route::{Page, Route};
use super::steps;
use crate::browser::prefs::{self, Prefs};
use crate::browser::{clock, ids, metronome, page, sound, vibrate, wake};
use crate::clinical::order::Order;
use crate::clinical::person::Role;
use crate::clinical::screen::ScreenId;
use crate::clinical::task::{Phase, TaskId};
use crate::clinical::tasks;
use crate::clinical::trial::{Answer, MarkKind};
use crate::measure::beat::Beat;
use crate::measure::time::{Millis, Stamp};
use crate::record::envelope::Unreadable;
use crate::record::envelope::{Envelope, SCHEMA, VisitId, body};
use crate::record::event::{Details, Event, Versions};
use crate::record::head::Head;
use crate::record::store::StoreError;
use crate::record::visit::{Aside, Visit};

/// The version of the rules and norms compiled in.
pub(super) const RULES: &str = "2";

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

/// How long the page stands still: longer than a tap that was already on its way, shorter than
/// a thought.
const STILL_MS: u32 = 600;

/// How many of the newest visits the first page knows.
const RECENT: usize = 8;

/// After so long away it is asked whether it is still the same person.
const AWAY: Millis = Millis::from_secs(300);

/// A visit touched within this time is opened again where it was.
const RESUME: Millis = Millis::from_secs(3600);

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

    // --- Moving about -------------------------------------------------------------------------

    /// Goes to a place.
    pub(super) fn go(self, route: Route) {
        self.moved.set_value(true);
        if *self.route.read_untracked() != route {
            page::push(&route.hash());
        }
        self.arrive(route);
    }

    /// Goes to a place that takes the current one's place in the history.
    pub(super) fn go_instead(self, route: Route) {
        page::replace(&route.hash());
        self.arrive(route);
    }

    /// Goes to a page of the open visit.
    pub(super) fn turn(self, to: Page) {
        if let Some(id) = self.id() {
            self.go(Route::Visit(id, to));
        }
    }

    /// Shows a place that the address names already.
    pub(super) fn arrive(self, route: Route) {
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

    fn id(self) -> Option<VisitId> {
        self.visit.with_untracked(|v| v.map(|v| v.id.clone()))
    }

    // --- Starting up --------------------------------------------------------------------------

    /// Opens the store and finds back where one was.
    pub(super) fn start(self) {
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
                    Route::Visit(id, steps::next(visit))
                }
            })
        });
    }

    /// Reads the newest visits again.
    pub(super) fn refresh(self) {
        spawn_local(async move {
            if let Ok(heads) = self.keeper().heads(RECENT, None).await {
                self.heads.set(heads);
            }
        });
    }

    fn open(self, id: VisitId) {
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

    // --- From a press to the journal ------------------------------------------------------------

    /// Records events of the open visit: the page and the queue get them in the same breath.
    pub(super) fn record(self, events: impl IntoIterator<Item = Event>) {
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
                let envelope = Envelope {
                    device: ids::device_id(),
                    visit: visit.id.clone(),
                    seq: visit.next,
                    schema: SCHEMA,
                    key: String::new(),
                    at,
                    body: body(&event),
                };
                visit.take(&envelope);
                written.push((envelope, Head::of(visit)));
            }
        });
        for (envelope, head) in written {
            keeper.push(envelope, head);
        }
        // Whoever goes on in a visit has seen whose it is.
        if by_hand && self.away.get_untracked().is_some() {
            self.away.set(None);
        }
    }

    /// Begins a visit and goes to its first page.
    pub(super) fn begin(self, details: Details, screen: Option<ScreenId>, role: Role) {
        let id = ids::new_visit_id();
        self.visit.set(Some(Visit::new(id.clone())));
        self.record([Event::Opened {
            details,
            screen,
            versions: versions(),
            policy: prefs::policy_in_force(),
            role,
        }]);
        let order = self.prefs.get_untracked().order;
        if order != Order::default() && screen.is_some_and(|id| id.screen().has_order()) {
            self.record([Event::Order(order)]);
        }
        let first = self
            .visit
            .with_untracked(|v| v.map_or(Page::Overview, steps::next));
        // "Back" from the first page leads home, not to the filled-in form.
        self.go_instead(Route::Visit(id, first));
        spawn_local(async {
            crate::browser::any_store::ask_to_persist().await;
        });
    }

    /// Begins a count without a visit.
    pub(super) fn begin_count(self) {
        let id = ids::new_visit_id();
        self.visit.set(Some(Visit::new(id.clone())));
        self.go(Route::Count(id, None));
    }

    /// Begins one task without a visit.
    pub(super) fn begin_single(self, task: TaskId) {
        let id = ids::new_visit_id();
        self.visit.set(Some(Visit::new(id.clone())));
        self.go(Route::Count(id, Some(task)));
    }

    /// The number of the trial that presses and answers of a task belong to, and the event that
    /// opens it where there is none yet.
    fn trial_for(self, task: TaskId, length: Option<Millis>) -> (u32, Option<Event>) {
        self.visit.with_untracked(|v| match v {
            Some(visit) => match visit.exam.latest(task) {
                Some(trial) => (trial.number, None),
                None => {
                    let trial = visit.next_trial();
                    (
                        trial,
                        Some(Event::TrialOpened {
                            trial,
                            task,
                            length,
                        }),
                    )
                }
            },
            None => (0, None),
        })
    }

    /// Opens another trial of a task.
    pub(super) fn repeat(self, task: TaskId, length: Option<Millis>) {
        page::leave_field();
        let trial = self
            .visit
            .with_untracked(|v| v.map_or(0, Visit::next_trial));
        self.record([Event::TrialOpened {
            trial,
            task,
            length,
        }]);
    }

    /// Records a press on a task's pad.
    pub(super) fn press(self, task: TaskId, length: Option<Millis>, at: Stamp, kind: MarkKind) {
        // Words belong to the trial they were typed under, not to the one this press begins.
        page::leave_field();
        let (trial, opened) = match kind {
            // A sign seen while the next trial is only made ready is that of the one before.
            MarkKind::Sign(_) => self.visit.with_untracked(|v| {
                v.and_then(|v| v.exam.latest_started(task))
                    .map(|t| (t.number, None))
            }),
            _ => None,
        }
        .unwrap_or_else(|| self.trial_for(task, length));
        let mut events: Vec<Event> = opened.into_iter().collect();
        if kind == MarkKind::Start {
            let assumed = self
                .visit
                .with_untracked(|v| v.map_or(Vec::new(), |v| assumed(v, task, trial)));
            events.extend(assumed);
        }
        events.push(Event::Mark { trial, at, kind });
        if kind == MarkKind::Start && tasks::spec(task).pad.first_counts {
            events.push(Event::Mark {
                trial,
                at,
                kind: MarkKind::Tap,
            });
        }
        self.record(events);
    }

    /// The number of the trial to come, and what records that it was given at `at`.
    pub(super) fn next_given(self, visit: &Visit, task: TaskId, at: Stamp) -> (u32, Vec<Event>) {
        let ready = visit.exam.latest(task).filter(|t| t.start().is_none());
        let trial = ready.map_or_else(|| visit.next_trial(), |t| t.number);
        let mut events = Vec::new();
        if ready.is_none() {
            events.push(Event::TrialOpened {
                trial,
                task,
                length: None,
            });
        }
        events.extend(assumed(visit, task, trial));
        events.push(Event::Mark {
            trial,
            at,
            kind: MarkKind::Start,
        });
        (trial, events)
    }

    /// Records an answer to a task's question; none takes it back.
    pub(super) fn answer(self, task: TaskId, question: &str, answer: Option<Answer>) {
        let (trial, opened) = self.trial_for(task, None);
        let instead = tasks::instead(task, question).filter(|other| {
            let given = |v: &Visit| {
                v.trial(trial)
                    .is_some_and(|t| t.answers.contains_key(other))
            };
            answer.is_some() && self.visit.with_untracked(|v| v.is_some_and(given))
        });
        let answered = Event::Answer {
            trial,
            question: question.to_owned(),
            answer,
        };
        let taken_back = instead.map(|other| Event::Answer {
            trial,
            question: other.to_owned(),
            answer: None,
        });
        self.record(opened.into_iter().chain([answered]).chain(taken_back));
    }

    /// Takes the newest press of a task back.
    pub(super) fn undo(self, task: TaskId) {
        let trial = self
            .visit
            .with_untracked(|v| v.and_then(|v| v.undo_goes_to(task)));
        if let Some(trial) = trial {
            self.record([Event::Undo { trial }]);
        }
    }

    // --- Time -----------------------------------------------------------------------------------

    /// Moves the running figures on and records what has come due.
    pub(super) fn tick(self) {
        self.now.set(clock::now());
        self.settle();
        self.keep_beat();
    }

    /// Sounds the beat of a running task that has one.
    fn keep_beat(self) {
        let now = self.now.get_untracked();
        let beating = self.visit.with_untracked(|v| {
            v.iter().flat_map(|v| &v.exam.trials).find_map(|t| {
                let spec = tasks::spec(t.task);
                let beat = Beat::every(spec.pad.beat?)?;
                matches!(spec.phase(t, now), Phase::Running(_)).then_some((beat, t.start()?))
            })
        });
        match beating {
            Some((beat, start)) if self.prefs.get_untracked().sound => {
                metronome::keep(beat, start, now);
            }
            _ => metronome::stop(),
        }
    }

    /// Records every window and watch that has run out.
    fn settle(self) {
        let now = clock::now();
        let due: Vec<(u32, TaskId, MarkKind)> = self.visit.with_untracked(|v| {
            v.iter()
                .flat_map(|v| &v.exam.trials)
                .filter_map(|t| {
                    tasks::spec(t.task)
                        .due(t, now)
                        .map(|kind| (t.number, t.task, kind))
                })
                .collect()
        });
        for (trial, task, kind) in due {
            self.record([Event::Mark {
                trial,
                at: now,
                kind,
            }]);
            self.hold_still();
            let prefs = self.prefs.get_untracked();
            if prefs.sound {
                sound::end_tone();
            }
            if prefs.vibrate {
                vibrate::buzz(&[200, 80, 200]);
            }
            self.said.set(match kind {
                MarkKind::WatchOver => "The watch is over. Hear the voice again.".to_owned(),
                _ => format!("{}: time is up.", tasks::spec(task).title),
            });
        }
    }

    /// Lets the page stand still for a moment, see [`Desk::still`].
    pub(super) fn hold_still(self) {
        self.still.set(true);
        Timeout::new(STILL_MS, move || self.still.set(false)).forget();
    }

    /// Follows the page's coming and going, and keeps time only while something runs.
    pub(super) fn keep_time(self) {
        // Since when, and whether something ran then: what runs out while nobody looks may be
        // recorded before anybody comes back.
        let gone = StoredValue::new(None::<(Stamp, bool)>);
        page::on_visibility(move |hidden, at| {
            if hidden {
                let running = self.visit.with_untracked(|v| v.is_some_and(Visit::running));
                gone.set_value(Some((at, running)));
                return;
            }
            if let Some((from, true)) = gone.get_value() {
                self.record([Event::Hidden { from, to: at }]);
            }
            let away = gone.get_value().map(|(from, _)| at.wall - from.wall);
            if let Some(away) = away.filter(|away| *away >= AWAY) {
                self.away.set(Some(away));
            }
            gone.set_value(None);
            self.tick();
            self.keeper().flush();
        });
        let running = follow(move || {
            let now = self.now.get();
            self.visit
                .with(|v| v.is_some_and(|v| v.running() || late(v, now)))
        });
        let ticker = StoredValue::new_local(None);
        Effect::new(move || {
            if running.get() {
                wake::hold();
                self.now.set(clock::now());
                ticker.set_value(Some(page::every(50, move || self.tick())));
            } else {
                wake::release();
                metronome::stop();
                ticker.set_value(None);
            }
        });
    }
}

/// Whether late marks of some task are still being kept.
fn late(visit: &Visit, now: Stamp) -> bool {
    visit
        .exam
        .trials
        .iter()
        .any(|t| matches!(tasks::spec(t.task).phase(t, now), Phase::Late(_)))
}

/// What was taken as given on the page, as answers: the record must not depend on what a later
/// version takes as given.
fn assumed(visit: &Visit, task: TaskId, trial: u32) -> Vec<Event> {
    let spec = tasks::spec(task);
    let open = |id: &str| {
        visit
            .trial(trial)
            .is_none_or(|t| !t.answers.contains_key(id))
    };
    let usual = (spec.usual)(&visit.exam)
        .into_iter()
        .filter_map(|(id, _)| Some((id, Answer::Choice(spec.assumed(&visit.exam, id)?))));
    usual
        .chain(tasks::taken_over(task, &visit.exam))
        .filter(|(id, _)| open(id))
        .map(|(id, answer)| Event::Answer {
            trial,
            question: id.to_owned(),
            answer: Some(answer),
        })
        .collect()
}
