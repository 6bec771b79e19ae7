//! The web platform: the only place that touches it.
//!
//! Everything here fails softly or returns an error as a value. A missing interface is an
//! ordinary case: iOS has no vibration, an address without https has no clipboard and no service
//! worker, a private window may have no storage.

pub mod any_store;
pub mod clock;
pub mod idb;
pub mod ids;
pub mod local;
pub mod metronome;
pub mod page;
pub mod pick;
pub mod prefs;
pub mod share;
pub mod sound;
pub mod speak;
pub mod vibrate;
pub mod wake;
pub mod worker;

use wasm_bindgen::prelude::*;
use web_sys::{DomException, Event, EventTarget, Navigator, Storage, Window};

fn window() -> Option<Window> {
    web_sys::window()
}

/// The navigator, if it has something under this name.
///
/// The bindings call what may not be there, and then throw through the whole app.
fn navigator_with(name: &str) -> Option<Navigator> {
    let navigator = window()?.navigator();
    has(&navigator, name).then_some(navigator)
}

/// `localStorage`, if it may be used: merely looking at it throws where site data is blocked.
fn local_storage() -> Option<Storage> {
    window()?.local_storage().ok()?
}

fn has(target: &JsValue, name: &str) -> bool {
    js_sys::Reflect::get(target, &JsValue::from_str(name))
        .is_ok_and(|value| !value.is_undefined() && !value.is_null())
}

/// Calls `f` on every such event for the rest of the page's life.
fn listen(target: &EventTarget, kind: &str, f: impl FnMut(Event) + 'static) {
    let f = Closure::<dyn FnMut(Event)>::new(f).into_js_value();
    // It fails for no name of an event.
    let _ = target.add_event_listener_with_callback(kind, f.unchecked_ref());
}

/// The name the platform gives an error, like `QuotaExceededError`; empty if it has none.
fn error_name(error: &JsValue) -> String {
    match error.dyn_ref::<DomException>() {
        Some(error) => error.name(),
        None => error
            .dyn_ref::<js_sys::Error>()
            .map_or_else(String::new, |error| String::from(error.name())),
    }
}

/// An error in the browser's own words.
fn error_words(error: &JsValue) -> String {
    let name = error_name(error);
    let message = match error.dyn_ref::<DomException>() {
        Some(error) => error.message(),
        None => match error.dyn_ref::<js_sys::Error>() {
            Some(error) => String::from(error.message()),
            None => error.as_string().unwrap_or_default(),
        },
    };
    match (name.is_empty(), message.is_empty()) {
        (true, true) => "no reason given".to_owned(),
        (true, false) => message,
        (false, true) => name,
        (false, false) => format!("{name}: {message}"),
    }
}
