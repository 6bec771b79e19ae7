//! Keeps the screen on while something runs.
//!
//! Works in iOS home-screen apps from 18.4 on only. The system may take the lock back at any
//! time, and always does when the page goes out of sight.

use std::cell::{Cell, RefCell};

use js_sys::Promise;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};

use super::{navigator_with, page};

// The bindings have the wake lock behind a switch for the whole build.
#[wasm_bindgen]
extern "C" {
    type AwakeNavigator;
    #[wasm_bindgen(method, getter, js_name = wakeLock)]
    fn wake_lock(this: &AwakeNavigator) -> Locks;

    type Locks;
    #[wasm_bindgen(method, catch)]
    fn request(this: &Locks, kind: &str) -> Result<Promise, JsValue>;

    type Lock;
    #[wasm_bindgen(method, getter)]
    fn released(this: &Lock) -> bool;
    #[wasm_bindgen(method, catch)]
    fn release(this: &Lock) -> Result<Promise, JsValue>;
}

thread_local! {
    static WANTED: Cell<bool> = const { Cell::new(false) };
    static ASKING: Cell<bool> = const { Cell::new(false) };
    static WATCHING: Cell<bool> = const { Cell::new(false) };
    static LOCK: RefCell<Option<Lock>> = const { RefCell::new(None) };
}

/// Whether the screen is kept on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WakeState {
    /// It is.
    Held,
    /// It is not: not asked for, refused, or taken back.
    NotHeld,
    /// This browser has no such thing.
    Missing,
}

/// Keeps the screen on from now, and again whenever the page comes back into sight, until
/// [`release`]. Calls are not counted.
pub fn hold() {
    WANTED.set(true);
    if !WATCHING.replace(true) {
        page::on_visibility(|hidden, _| {
            if !hidden && WANTED.get() {
                ask();
            }
        });
    }
    ask();
}

/// Lets the screen go off again.
pub fn release() {
    WANTED.set(false);
    if let Some(lock) = LOCK.take() {
        let_go(&lock);
    }
}

/// Whether the screen is kept on right now. A lock that was just asked for is not held yet.
pub fn state() -> WakeState {
    if navigator_with("wakeLock").is_none() {
        WakeState::Missing
    } else if LOCK.with_borrow(|lock| lock.as_ref().is_some_and(|lock| !lock.released())) {
        WakeState::Held
    } else {
        WakeState::NotHeld
    }
}

fn ask() {
    // A hidden page is always refused.
    if page::hidden() || state() != WakeState::NotHeld || ASKING.replace(true) {
        return;
    }
    let asked = navigator_with("wakeLock")
        .map(|navigator| navigator.unchecked_into::<AwakeNavigator>().wake_lock())
        .and_then(|locks| locks.request("screen").ok());
    spawn_local(async move {
        let lock = match asked {
            Some(promise) => JsFuture::from(promise).await.ok(),
            None => None,
        };
        ASKING.set(false);
        if let Some(lock) = lock.map(JsValue::unchecked_into::<Lock>) {
            if WANTED.get() {
                LOCK.set(Some(lock));
            } else {
                // Released while the browser was still thinking.
                let_go(&lock);
            }
        }
    });
}

fn let_go(lock: &Lock) {
    if let Ok(promise) = lock.release() {
        spawn_local(async move {
            let _ = JsFuture::from(promise).await;
        });
    }
}
