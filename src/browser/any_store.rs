//! The best store there is on this phone.

use std::pin::Pin;

use wasm_bindgen_futures::JsFuture;

use super::idb::IndexedStore;
use super::local::LocalStore;
use super::navigator_with;
use crate::measure::time::Millis;
use crate::record::envelope::Envelope;
use crate::record::head::Head;
use crate::record::id::VisitId;
use crate::record::memory::MemoryStore;
use crate::record::store::{Store, StoreError, Stored};

/// A store's work in a box: unboxed, every caller would carry the code of all three stores.
type Work<'a, T> = Pin<Box<dyn Future<Output = T> + 'a>>;

/// One of the stores.
#[derive(Debug)]
pub enum AnyStore {
    /// The store of record.
    Indexed(IndexedStore),
    /// Keeps records, but may lose the newest.
    Local(LocalStore),
    /// Keeps nothing beyond this life of the page.
    Memory(MemoryStore),
}

/// Opens the best store that works, and says why a better one could not be had.
///
/// Records that the fallback took while the safe store was out of reach are moved into it first:
/// nobody would find them otherwise.
pub async fn open() -> (AnyStore, Option<StoreError>) {
    let why = match IndexedStore::open().await {
        Ok(safe) => {
            move_into(&safe).await;
            return (AnyStore::Indexed(safe), None);
        }
        Err(why) => why,
    };
    let store = match LocalStore::open() {
        Ok(local) => AnyStore::Local(local),
        Err(_) => AnyStore::Memory(MemoryStore::default()),
    };
    (store, Some(why))
}

/// Moves what the fallback holds. A visit leaves it only once it is safe; one that can't be
/// moved stays.
async fn move_into(safe: &IndexedStore) {
    let Ok(local) = LocalStore::open() else {
        return;
    };
    for head in local.heads(usize::MAX, None).await.unwrap_or_default() {
        let visit = head.visit.clone();
        let Ok((events, _)) = local.read(&visit).await else {
            continue;
        };
        if events.is_empty() {
            continue;
        }
        let moved = match safe.append(events.clone(), head).await {
            Ok(()) => true,
            // As when the app was killed between the two steps.
            Err(StoreError::Conflict) => safe
                .read(&visit)
                .await
                .is_ok_and(|(kept, _)| events.iter().all(|event| kept.contains(event))),
            Err(_) => false,
        };
        if moved {
            local.let_go(&events);
        }
    }
}

/// Asks the browser not to clear Penlight's records when space runs low, and gives its answer.
///
/// Chrome answers by itself, Firefox asks the user, Safari goes by its own rules. It protects
/// from nothing that the user clears.
pub async fn ask_to_persist() -> bool {
    let Some(asked) =
        navigator_with("storage").and_then(|navigator| navigator.storage().persist().ok())
    else {
        return false;
    };
    JsFuture::from(asked)
        .await
        .is_ok_and(|granted| granted.is_truthy())
}

impl AnyStore {
    /// Whether what it says is kept survives the death of the browser.
    pub fn is_safe(&self) -> bool {
        matches!(self, AnyStore::Indexed(_))
    }
}

impl Store for AnyStore {
    async fn append(&self, events: Vec<Envelope>, head: Head) -> Result<(), StoreError> {
        let work: Work<'_, Result<(), StoreError>> = match self {
            AnyStore::Indexed(store) => Box::pin(store.append(events, head)),
            AnyStore::Local(store) => Box::pin(store.append(events, head)),
            AnyStore::Memory(store) => Box::pin(store.append(events, head)),
        };
        work.await
    }

    async fn read(&self, visit: &VisitId) -> Result<Stored, StoreError> {
        let work: Work<'_, Result<Stored, StoreError>> = match self {
            AnyStore::Indexed(store) => Box::pin(store.read(visit)),
            AnyStore::Local(store) => Box::pin(store.read(visit)),
            AnyStore::Memory(store) => Box::pin(store.read(visit)),
        };
        work.await
    }

    async fn heads(&self, most: usize, before: Option<Millis>) -> Result<Vec<Head>, StoreError> {
        let work: Work<'_, Result<Vec<Head>, StoreError>> = match self {
            AnyStore::Indexed(store) => Box::pin(store.heads(most, before)),
            AnyStore::Local(store) => Box::pin(store.heads(most, before)),
            AnyStore::Memory(store) => Box::pin(store.heads(most, before)),
        };
        work.await
    }

    async fn bury(&self, tombstone: Envelope, head: Head) -> Result<(), StoreError> {
        let work: Work<'_, Result<(), StoreError>> = match self {
            AnyStore::Indexed(store) => Box::pin(store.bury(tombstone, head)),
            AnyStore::Local(store) => Box::pin(store.bury(tombstone, head)),
            AnyStore::Memory(store) => Box::pin(store.bury(tombstone, head)),
        };
        work.await
    }
}
