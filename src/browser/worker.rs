//! The service worker, as seen from the page: it keeps the app on the phone and brings the next
//! version, which waits until it is asked for.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use gloo_timers::callback::Timeout;
use js_sys::{Object, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{
    RegistrationOptions, ServiceWorker, ServiceWorkerRegistration, ServiceWorkerState,
    ServiceWorkerUpdateViaCache,
};

use super::{clock, listen, navigator_with, page, window};
use crate::measure::time::Millis;

/// How often the network is asked at most.
const CHECK_EVERY: Millis = Millis::from_secs(600);

/// iOS may never say that the new worker took over.
const RELOAD_ANYWAY_MS: u32 = 10_000;

thread_local! {
    static REGISTRATION: RefCell<Option<ServiceWorkerRegistration>> = const { RefCell::new(None) };
    static RELOADING: Cell<bool> = const { Cell::new(false) };
}

/// Registers the worker, and calls `on_update` when a new version waits. It goes on waiting
/// until [`activate_update`].
pub fn register(on_update: impl Fn() + 'static) {
    if !window().is_some_and(|window| window.is_secure_context()) {
        return;
    }
    let Some(navigator) = navigator_with("serviceWorker") else {
        return;
    };
    let options = RegistrationOptions::new();
    // The worker's own file never comes from the HTTP cache.
    options.set_update_via_cache(ServiceWorkerUpdateViaCache::None);
    let promise = navigator
        .service_worker()
        .register_with_options("./sw.js", &options);
    spawn_local(async move {
        if let Ok(registration) = JsFuture::from(promise).await {
            watch(registration.unchecked_into(), Rc::new(on_update));
        }
    });
}

fn watch(registration: ServiceWorkerRegistration, on_update: Rc<dyn Fn()>) {
    REGISTRATION.set(Some(registration.clone()));
    if registration.waiting().is_some() && registration.active().is_some() {
        on_update();
    }
    if let Some(worker) = registration.installing() {
        watch_install(&registration, worker, on_update.clone());
    }
    let of = registration.clone();
    listen(&registration, "updatefound", move |_| {
        if let Some(worker) = of.installing() {
            watch_install(&of, worker, on_update.clone());
        }
    });
    // iOS home-screen apps don't reliably look for a new version by themselves.
    let checked = Cell::new(clock::now().wall);
    check(&registration);
    page::on_visibility(move |hidden, at| {
        let since = at.wall - checked.get();
        // Below zero where the clock was set back in between.
        if !hidden && !(Millis::ZERO..CHECK_EVERY).contains(&since) {
            checked.set(at.wall);
            check(&registration);
        }
    });
}

fn watch_install(
    registration: &ServiceWorkerRegistration,
    worker: ServiceWorker,
    on_update: Rc<dyn Fn()>,
) {
    let registration = registration.clone();
    let target = worker.clone();
    listen(&target, "statechange", move |_| {
        // The very first worker has nothing to replace.
        if worker.state() == ServiceWorkerState::Installed && registration.active().is_some() {
            on_update();
        }
    });
}

fn check(registration: &ServiceWorkerRegistration) {
    if let Ok(promise) = registration.update() {
        spawn_local(async move {
            // Offline is the ordinary case.
            let _ = JsFuture::from(promise).await;
        });
    }
}

/// Lets the waiting version take over, and loads it. The page is gone after this: call it only
/// when nothing runs and everything is kept.
pub fn activate_update() {
    let waiting =
        REGISTRATION.with_borrow(|registration| registration.as_ref().and_then(|of| of.waiting()));
    let (Some(waiting), Some(navigator)) = (waiting, navigator_with("serviceWorker")) else {
        // Another window has let it take over already: loading is all that is left.
        reload();
        return;
    };
    listen(&navigator.service_worker(), "controllerchange", |_| {
        reload()
    });
    Timeout::new(RELOAD_ANYWAY_MS, reload).forget();
    let message = Object::new();
    // Setting a field of a new object does not fail; without it the time above still runs out.
    let _ = Reflect::set(
        &message,
        &JsValue::from_str("type"),
        &JsValue::from_str("activate-update"),
    );
    let _ = waiting.post_message(&message);
}

fn reload() {
    if let Some(window) = window()
        && !RELOADING.replace(true)
    {
        let _ = window.location().reload();
    }
}

/// Calls `then` once the app is stored on this phone and opens without a network. Never calls it
/// where it can't be stored.
pub fn when_stored(then: impl FnOnce() + 'static) {
    let Some(navigator) = navigator_with("serviceWorker") else {
        return;
    };
    let Ok(ready) = navigator.service_worker().ready() else {
        return;
    };
    spawn_local(async move {
        if JsFuture::from(ready).await.is_ok() {
            then();
        }
    });
}
