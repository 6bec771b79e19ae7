//! The store of record: IndexedDB with strict durability.
//!
//! localStorage loses writes up to half a minute old when the browser is killed; a strict
//! IndexedDB transaction has been flushed when it says "complete", and costs 12 ms (median, on a
//! virtual disk).

use std::cell::RefCell;
use std::rc::Rc;

use gloo_timers::callback::Timeout;
use js_sys::{Array, JSON, Object, Promise, Reflect};
use serde::Serialize;
use serde_wasm_bindgen::{Serializer, from_value};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Event, IdbCursorDirection, IdbCursorWithValue, IdbDatabase, IdbKeyRange,
    IdbObjectStoreParameters, IdbOpenDbRequest, IdbRequest, IdbTransaction,
};

use super::{error_name, error_words, window};
use crate::measure::time::Millis;
use crate::record::envelope::Envelope;
use crate::record::head::Head;
use crate::record::id::VisitId;
use crate::record::store::{Raw, Store, StoreError, Stored};

const DATABASE: &str = "penlight";
const VERSION: u32 = 1;
const EVENTS: &str = "events";
const HEADS: &str = "heads";
const TOUCHED: &str = "touched";

/// Opening takes well under a second on a slow phone; WebKit has left such requests without any
/// answer, and a clinician can't wait for one.
const OPEN_WITHIN_MS: u32 = 5_000;

// The bindings have the third argument behind a switch for the whole build. A browser that does
// not know `durability` ignores it.
#[wasm_bindgen]
extern "C" {
    type Durable;
    #[wasm_bindgen(method, catch)]
    fn transaction(
        this: &Durable,
        stores: &JsValue,
        mode: &str,
        options: &JsValue,
    ) -> Result<IdbTransaction, JsValue>;
}

// The bindings take it for deprecated, which it is not.
#[wasm_bindgen]
extern "C" {
    type Asked;
    #[wasm_bindgen(method, catch)]
    fn commit(this: &Asked) -> Result<(), JsValue>;
}

#[derive(Debug)]
enum Link {
    Open(IdbDatabase),
    /// The browser closed it: WebKit does so to an app in the background. The next call opens it
    /// again.
    Lost,
    /// Closed for a window with a newer version: opening it again would get in its way.
    GivenUp,
}

#[derive(Clone, Copy)]
enum Mode {
    Read,
    Write,
}

/// The store over IndexedDB.
#[derive(Debug)]
pub struct IndexedStore {
    link: Rc<RefCell<Link>>,
}

impl IndexedStore {
    /// Opens it, and makes it where there is none.
    ///
    /// # Errors
    /// [`StoreError::Missing`] where the browser has none for this page, and
    /// [`StoreError::Locked`] where another window holds it or nothing happens for five seconds.
    pub async fn open() -> Result<IndexedStore, StoreError> {
        let store = IndexedStore {
            link: Rc::new(RefCell::new(Link::Lost)),
        };
        store.database().await?;
        Ok(store)
    }

    async fn database(&self) -> Result<IdbDatabase, StoreError> {
        match &*self.link.borrow() {
            Link::Open(database) => return Ok(database.clone()),
            Link::GivenUp => return Err(StoreError::Locked),
            Link::Lost => {}
        }
        let database = open_database().await?;
        self.keep(&database);
        Ok(database)
    }

    fn keep(&self, database: &IdbDatabase) {
        let link = self.link.clone();
        let closing = database.clone();
        let on_upgrade = Closure::<dyn FnMut()>::new(move || {
            closing.close();
            link.replace(Link::GivenUp);
        });
        database.set_onversionchange(Some(on_upgrade.into_js_value().unchecked_ref()));
        let link = self.link.clone();
        let on_close = Closure::<dyn FnMut()>::new(move || lose(&link));
        database.set_onclose(Some(on_close.into_js_value().unchecked_ref()));
        self.link.replace(Link::Open(database.clone()));
    }

    async fn begin(&self, mode: Mode) -> Result<IdbTransaction, StoreError> {
        let database = self.database().await?;
        match transaction(&database, mode) {
            // A connection may be dead without having said so. Nothing was asked of it yet, so
            // trying again can't do anything twice.
            Err(error) if error_name(&error) == "InvalidStateError" => {
                lose(&self.link);
                let database = self.database().await?;
                transaction(&database, mode).map_err(|error| failed(&error))
            }
            other => other.map_err(|error| failed(&error)),
        }
    }

    /// Runs one transaction that writes. All requests are made at once, so that the browser
    /// can't take it for finished in between, and it is told that there are no more: it need not
    /// wait for this page to have heard of each, which may be gone by then.
    async fn write(
        &self,
        requests: impl FnOnce(&IdbTransaction) -> Result<(), JsValue>,
    ) -> Result<(), StoreError> {
        let writing = self.begin(Mode::Write).await?;
        if let Err(error) = requests(&writing) {
            // What was already asked for must not stay.
            let _ = writing.abort();
            return Err(failed(&error));
        }
        // Where this is not to be had it commits by itself.
        let _ = writing.unchecked_ref::<Asked>().commit();
        let outcome = complete(&writing).await;
        if matches!(outcome, Err(StoreError::Broken(_))) {
            // Often the connection's fault ("server lost"): the next call gets a new one.
            lose(&self.link);
        }
        outcome
    }
}

impl Store for IndexedStore {
    async fn append(&self, events: Vec<Envelope>, head: Head) -> Result<(), StoreError> {
        let events = events.iter().map(to_js).collect::<Result<Vec<_>, _>>()?;
        let head = to_js(&head)?;
        self.write(|writing| {
            let store = writing.object_store(EVENTS)?;
            for event in &events {
                // Not `put`: a sequence number that is taken must fail.
                store.add(event)?;
            }
            writing.object_store(HEADS)?.put(&head)?;
            Ok(())
        })
        .await
    }

    async fn read(&self, visit: &VisitId) -> Result<Stored, StoreError> {
        let reading = self.begin(Mode::Read).await?;
        let all = all_of(visit)
            .and_then(|range| reading.object_store(EVENTS)?.get_all_with_key(&range))
            .map_err(|error| failed(&error))?;
        let mut stored = Stored::default();
        for value in Array::from(&result(&all).await?).iter() {
            match from_value(value.clone()) {
                Ok(envelope) => stored.0.push(envelope),
                Err(_) => stored.1.push(Raw(text(&value))),
            }
        }
        Ok(stored)
    }

    async fn heads(&self, most: usize, before: Option<Millis>) -> Result<Vec<Head>, StoreError> {
        let reading = self.begin(Mode::Read).await?;
        let cursors = newest_first(&reading, before).map_err(|error| failed(&error))?;
        let mut heads = Vec::new();
        while heads.len() < most {
            let Ok(cursor) = result(&cursors).await?.dyn_into::<IdbCursorWithValue>() else {
                break;
            };
            let value = cursor.value().map_err(|error| failed(&error))?;
            // A head is derived and can be made anew from its events; one that can't be read must
            // not keep the others from the list.
            heads.extend(from_value::<Head>(value).ok());
            cursor.continue_().map_err(|error| failed(&error))?;
        }
        Ok(heads)
    }

    async fn bury(&self, tombstone: Envelope, head: Head) -> Result<(), StoreError> {
        let stone = to_js(&tombstone)?;
        let head = to_js(&head)?;
        self.write(|writing| {
            let store = writing.object_store(EVENTS)?;
            store.delete(&all_of(&tombstone.visit)?.into())?;
            store.add(&stone)?;
            writing.object_store(HEADS)?.put(&head)?;
            Ok(())
        })
        .await
    }
}

/// Lets go of a connection that is no good, unless it was given up for another window.
fn lose(link: &RefCell<Link>) {
    let mut link = link.borrow_mut();
    if let Link::Open(database) = &*link {
        database.close();
        *link = Link::Lost;
    }
}

/// All keys of a visit. An array key is above every other kind, and a shorter one below: this
/// also finds a record whose sequence is no number.
fn all_of(visit: &VisitId) -> Result<IdbKeyRange, JsValue> {
    let visit = JsValue::from_str(visit.as_str());
    IdbKeyRange::bound(&Array::of1(&visit), &Array::of2(&visit, &Array::new()))
}

fn newest_first(reading: &IdbTransaction, before: Option<Millis>) -> Result<IdbRequest, JsValue> {
    let range = match before {
        Some(before) => {
            let before = JsValue::from_f64(before.0 as f64);
            IdbKeyRange::upper_bound_with_open(&before, true)?.into()
        }
        None => JsValue::NULL,
    };
    reading
        .object_store(HEADS)?
        .index(TOUCHED)?
        .open_cursor_with_range_and_direction(&range, IdbCursorDirection::Prev)
}

fn transaction(database: &IdbDatabase, mode: Mode) -> Result<IdbTransaction, JsValue> {
    let (mode, durability) = match mode {
        Mode::Read => ("readonly", "default"),
        // Chrome's own default has been "relaxed" since 121: complete before it is flushed.
        Mode::Write => ("readwrite", "strict"),
    };
    let stores = Array::of2(&JsValue::from_str(EVENTS), &JsValue::from_str(HEADS));
    let options = Object::new();
    Reflect::set(
        &options,
        &JsValue::from_str("durability"),
        &JsValue::from_str(durability),
    )?;
    database
        .unchecked_ref::<Durable>()
        .transaction(&stores, mode, &options)
}

/// Waits until a transaction is complete, which is later than the success of its requests.
async fn complete(transaction: &IdbTransaction) -> Result<(), StoreError> {
    let over = Promise::new(&mut |resolve, reject| {
        transaction.set_oncomplete(Some(&resolve));
        transaction.set_onabort(Some(&reject));
    });
    match JsFuture::from(over).await {
        Ok(_) => Ok(()),
        Err(_) => Err(transaction.error().map_or_else(
            || StoreError::Broken("the browser called off the transaction".to_owned()),
            |error| failed(&error),
        )),
    }
}

/// Waits for a request's result.
async fn result(request: &IdbRequest) -> Result<JsValue, StoreError> {
    let done = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
    });
    match JsFuture::from(done).await {
        Ok(_) => request.result().map_err(|error| failed(&error)),
        Err(_) => Err(request_failed(request, failed)),
    }
}

fn request_failed(request: &IdbRequest, why: fn(&JsValue) -> StoreError) -> StoreError {
    match request.error() {
        Ok(Some(error)) => why(&error),
        Ok(None) => why(&JsValue::UNDEFINED),
        Err(error) => why(&error),
    }
}

async fn open_database() -> Result<IdbDatabase, StoreError> {
    let factory = window()
        .and_then(|window| window.indexed_db().ok()?)
        .ok_or(StoreError::Missing)?;
    let request = factory
        .open_with_u32(DATABASE, VERSION)
        .map_err(|error| no_open(&error))?;
    let asked = request.clone();
    let upgrade = Closure::<dyn FnMut()>::new(move || {
        // A store that can't be made shows as a failure of the first transaction.
        let _ = make_stores(&asked);
    });
    // Handed to the garbage collector: a request that seemed dead may still want it later.
    request.set_onupgradeneeded(Some(upgrade.into_js_value().unchecked_ref()));

    let mut giving_up = None;
    let outcome = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
        request.set_onblocked(Some(&reject));
        giving_up = Some(Timeout::new(OPEN_WITHIN_MS, move || {
            let _ = reject.call0(&JsValue::UNDEFINED);
        }));
    });
    let outcome = JsFuture::from(outcome).await;
    drop(giving_up);
    let Err(event) = outcome else {
        let database = request.result().map_err(|error| no_open(&error))?;
        return Ok(database.unchecked_into());
    };
    if event
        .dyn_ref::<Event>()
        .is_some_and(|event| event.type_() == "error")
    {
        return Err(request_failed(&request, no_open));
    }
    // Blocked, or no answer. Should it come through after all, nobody waits for it any more, and
    // an open connection would block the next window.
    let late = request.clone();
    let close = Closure::once_into_js(move || {
        if let Ok(database) = late.result() {
            database.unchecked_into::<IdbDatabase>().close();
        }
    });
    request.set_onsuccess(Some(close.unchecked_ref()));
    Err(StoreError::Locked)
}

fn make_stores(request: &IdbOpenDbRequest) -> Result<(), JsValue> {
    let database: IdbDatabase = request.result()?.unchecked_into();
    let names = database.object_store_names();
    if !names.contains(EVENTS) {
        let path = Array::of2(&JsValue::from_str("visit"), &JsValue::from_str("seq"));
        let key = IdbObjectStoreParameters::new();
        key.set_key_path(&path);
        database.create_object_store_with_optional_parameters(EVENTS, &key)?;
    }
    if !names.contains(HEADS) {
        let key = IdbObjectStoreParameters::new();
        key.set_key_path(&JsValue::from_str("visit"));
        database
            .create_object_store_with_optional_parameters(HEADS, &key)?
            .create_index_with_str(TOUCHED, "touched")?;
    }
    Ok(())
}

/// A value as a plain object, its numbers as numbers: a BigInt would be no key, and would not go
/// through JSON. [`from_value`] reads it back.
fn to_js(value: &impl Serialize) -> Result<JsValue, StoreError> {
    value
        .serialize(&Serializer::new())
        .map_err(|error| StoreError::Broken(error.to_string()))
}

/// Whatever it is, as JSON text, for people: what can't be read is set aside as it stands.
fn text(value: &JsValue) -> String {
    JSON::stringify(value)
        .ok()
        .and_then(|text| text.as_string())
        .unwrap_or_else(|| format!("{value:?}"))
}

/// What an error of a request or a transaction means.
fn failed(error: &JsValue) -> StoreError {
    match error_name(error).as_str() {
        "ConstraintError" => StoreError::Conflict,
        "QuotaExceededError" => StoreError::Full,
        _ => StoreError::Broken(error_words(error)),
    }
}

/// What an error in opening means.
fn no_open(error: &JsValue) -> StoreError {
    match error_name(error).as_str() {
        "QuotaExceededError" => StoreError::Full,
        "VersionError" => StoreError::Broken(
            "it belongs to a newer Penlight. Load this page again with a network connection"
                .to_owned(),
        ),
        // Private windows and blocked site data fail in a different way in every browser.
        _ => StoreError::Missing,
    }
}
