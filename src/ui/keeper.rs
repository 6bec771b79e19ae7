//! Keeps events: a queue in front of the store.
//!
//! A press is queued in its own handler and written in the same turn; "saved" is shown only once the
//! store confirmed. What the store refuses stays in the queue, is tried again, and can be taken out
//! as a file.

use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::sync::Arc;

use gloo_timers::callback::Timeout;
use leptos::prelude::*;
use leptos::task::{spawn_local, tick};

use crate::browser::any_store::{self, AnyStore};
use crate::measure::time::Millis;
use crate::record::envelope::Envelope;
use crate::record::export;
use crate::record::head::Head;
use crate::record::id::VisitId;
use crate::record::queue::Queue;
use crate::record::store::{Store, StoreError, Stored};
use crate::record::visit::Visit;

/// How the saving stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Saved {
    /// Everything is confirmed.
    Yes,
    /// Something is on its way.
    Saving,
    /// The store refused; what is queued is still in memory.
    Failed(StoreError),
}

/// How long a refused append waits before it is tried again.
const RETRY_MS: u32 = 2_000;

/// The queue in front of the store.
pub(super) struct Keeper {
    store: RefCell<Option<Rc<AnyStore>>>,
    queue: RefCell<Queue>,
    busy: Cell<bool>,
    state: RwSignal<Saved>,
    downgrade: RwSignal<Option<StoreError>>,
}

impl Keeper {
    /// A queue without a store yet: presses are taken from the first moment on.
    pub(super) fn new(
        state: RwSignal<Saved>,
        downgrade: RwSignal<Option<StoreError>>,
    ) -> Rc<Keeper> {
        Rc::new(Keeper {
            store: RefCell::new(None),
            queue: RefCell::default(),
            busy: Cell::new(false),
            state,
            downgrade,
        })
    }

    /// Says that something could not be kept.
    pub(super) fn refused(&self, error: StoreError) {
        self.state.set(Saved::Failed(error));
    }

    /// Opens the best store there is.
    pub(super) async fn open(self: &Rc<Self>) {
        let (store, why_not_better) = any_store::open().await;
        self.downgrade.set(why_not_better);
        *self.store.borrow_mut() = Some(Rc::new(store));
        self.flush();
    }

    /// Queues events of a visit, with the visit as it stands after them.
    ///
    /// They go to the store in this very turn, but after the page has them: asking the browser for a
    /// write takes as long as all else at a press.
    pub(super) fn push(self: &Rc<Self>, events: Vec<Envelope>, visit: Arc<Visit>) {
        self.queue.borrow_mut().push(events, visit);
        if *self.state.read_untracked() == Saved::Yes {
            self.state.set(Saved::Saving);
        }
        let keeper = Rc::clone(self);
        spawn_local(async move {
            tick().await;
            keeper.flush();
        });
    }

    /// Tries to write what is queued.
    pub(super) fn flush(self: &Rc<Self>) {
        let Some(store) = self.store.borrow().clone() else {
            return;
        };
        if self.busy.replace(true) {
            return;
        }
        let keeper = Rc::clone(self);
        spawn_local(async move {
            while let Some((batch, head)) = keeper.batch() {
                let outcome = match store.append(batch.clone(), head).await {
                    // A write that seemed to fail may have been kept: then this is our own.
                    Err(StoreError::Conflict) if is_kept(&store, &batch).await => Ok(()),
                    other => other,
                };
                match outcome {
                    Ok(()) => {
                        keeper.queue.borrow_mut().stored(&batch);
                    }
                    Err(error) => {
                        keeper.busy.set(false);
                        keeper.state.set(Saved::Failed(error));
                        let again = Rc::clone(&keeper);
                        Timeout::new(RETRY_MS, move || again.flush()).forget();
                        return;
                    }
                }
            }
            keeper.busy.set(false);
            keeper.state.set(Saved::Yes);
        });
    }

    fn batch(&self) -> Option<(Vec<Envelope>, Head)> {
        self.queue.borrow_mut().batch()
    }

    fn store(&self) -> Result<Rc<AnyStore>, StoreError> {
        self.store.borrow().clone().ok_or(StoreError::Missing)
    }

    /// A visit's stored events, and behind them those still queued.
    pub(super) async fn read(&self, visit: &VisitId) -> Result<Stored, StoreError> {
        let (mut events, raw) = self.store()?.read(visit).await?;
        let queued: Vec<Envelope> = {
            let queue = self.queue.borrow();
            queue
                .events()
                .filter(|e| e.visit == *visit && !events.iter().any(|s| s.seq == e.seq))
                .cloned()
                .collect()
        };
        events.extend(queued);
        Ok((events, raw))
    }

    /// The newest heads.
    pub(super) async fn heads(
        &self,
        most: usize,
        before: Option<Millis>,
    ) -> Result<Vec<Head>, StoreError> {
        self.store()?.heads(most, before).await
    }

    /// Buries a visit: what is queued of it goes with it.
    pub(super) async fn bury(&self, tombstone: Envelope, head: Head) -> Result<(), StoreError> {
        let visit = tombstone.visit.clone();
        self.store()?.bury(tombstone, head).await?;
        self.queue.borrow_mut().forget(&visit);
        Ok(())
    }

    /// Whether records outlive the page here.
    pub(super) fn is_safe(&self) -> bool {
        self.store.borrow().as_ref().is_some_and(|s| s.is_safe())
    }

    /// What is not saved yet, as text.
    pub(super) fn unsaved(&self) -> String {
        let queue = self.queue.borrow();
        let envelopes: Vec<_> = queue.events().cloned().collect();
        export::lines(&envelopes)
    }
}

/// Whether the store holds exactly these events already.
async fn is_kept(store: &AnyStore, batch: &[Envelope]) -> bool {
    let Some(first) = batch.first() else {
        return true;
    };
    match store.read(&first.visit).await {
        Ok((kept, _)) => batch.iter().all(|event| kept.contains(event)),
        Err(_) => false,
    }
}
