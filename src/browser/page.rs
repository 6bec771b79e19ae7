//! The page: whether it is seen, its address, its frames.

use std::cell::Cell;
use std::rc::Rc;

use gloo_timers::callback::{Interval, Timeout};
use wasm_bindgen::prelude::*;
use web_sys::{Event, HtmlElement};

use super::{clock, listen, window};
use crate::measure::time::Stamp;

/// Whether the page is out of sight.
pub fn hidden() -> bool {
    window()
        .and_then(|window| window.document())
        .is_some_and(|document| document.hidden())
}

/// Calls `f` whenever the page goes out of sight or comes back, once for each change, with the
/// moment it happened.
///
/// `visibilitychange` alone is not enough: a page that is left may only get `pagehide`, and one
/// that comes back from the back/forward cache only `pageshow`. "Hidden" is often the last thing
/// a page hears before it is killed, so what must be kept is kept then or earlier.
pub fn on_visibility(f: impl Fn(bool, Stamp) + 'static) {
    let Some(window) = window() else {
        return;
    };
    let Some(document) = window.document() else {
        return;
    };
    let last = Cell::new(hidden());
    let tell = Rc::new(move |hidden: bool, event: &Event| {
        if last.replace(hidden) != hidden {
            f(hidden, clock::stamp_of(event));
        }
    });
    let on_change = tell.clone();
    listen(&document, "visibilitychange", move |event| {
        on_change(hidden(), &event);
    });
    let on_leave = tell.clone();
    listen(&window, "pagehide", move |event| on_leave(true, &event));
    listen(&window, "pageshow", move |event| tell(hidden(), &event));
}

/// Shows the beginning of what stands above a pad. The page itself stays: the pad is under a finger.
pub fn above_to_top() {
    let above = window()
        .and_then(|window| window.document())
        .and_then(|document| document.query_selector(".above").ok().flatten());
    if let Some(above) = above {
        above.set_scroll_top(0);
    }
}

/// The address after the `#`, without it.
pub fn hash() -> String {
    window()
        .and_then(|window| window.location().hash().ok())
        .map(|hash| hash.strip_prefix('#').unwrap_or(&hash).to_owned())
        .unwrap_or_default()
}

/// Goes to a new address after the `#`, so that the phone's own "back" leads here again.
///
/// Safari refuses more than 100 of these in half a minute; the address then stays behind the
/// page, and nothing worse.
pub fn push(hash: &str) {
    if let Some(history) = window().and_then(|window| window.history().ok()) {
        let _ = history.push_state_with_url(&JsValue::NULL, "", Some(&format!("#{hash}")));
    }
}

/// Changes the address after the `#` without a new step back.
pub fn replace(hash: &str) {
    if let Some(history) = window().and_then(|window| window.history().ok()) {
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&format!("#{hash}")));
    }
}

/// Calls `f` with the new address after the `#` when the user went back or forward, or typed
/// another one. [`push`] and [`replace`] don't call it.
pub fn on_back(f: impl Fn(String) + 'static) {
    if let Some(window) = window() {
        listen(&window, "popstate", move |_| f(hash()));
    }
}

/// Scrolls to the top.
pub fn scroll_to_top() {
    if let Some(window) = window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
}

/// Moves the focus to the page's heading, so that a screen reader reads the new page and not
/// the button that is gone.
///
/// It waits until the new page is drawn: call it right after the change.
pub fn focus_heading() {
    Timeout::new(0, || {
        // Not the heading that waits in the page itself for an app that can't start.
        let heading = window()
            .and_then(|window| window.document())
            .and_then(|document| document.query_selector("h1:not([hidden] *)").ok()?)
            .and_then(|heading| heading.dyn_into::<HtmlElement>().ok());
        if let Some(heading) = heading {
            // By script only: a heading is no stop for the Tab key.
            heading.set_tab_index(-1);
            let _ = heading.focus();
        }
    })
    .forget();
}

/// Puts the focus on the element with an id once it is drawn, and brings it into view.
pub fn focus_on(id: &'static str) {
    Timeout::new(0, move || {
        let element = window()
            .and_then(|window| window.document())
            .and_then(|document| document.get_element_by_id(id))
            .and_then(|element| element.dyn_into::<HtmlElement>().ok());
        if let Some(element) = element {
            let _ = element.focus();
        }
    })
    .forget();
}

/// Goes to the first field whose content was refused, if one is: its fold open, the focus in it. What
/// leads on asks this first.
pub fn refused() -> bool {
    let field = window()
        .and_then(|window| window.document())
        .and_then(|document| document.query_selector("main [aria-invalid=true]").ok()?)
        .and_then(|field| field.dyn_into::<HtmlElement>().ok());
    let Some(field) = field else {
        return false;
    };
    while let Ok(Some(fold)) = field.closest("details:not([open])") {
        if fold.set_attribute("open", "").is_err() {
            break;
        }
    }
    // What describes it, its message, is read with it.
    let _ = field.focus();
    true
}

/// The same for what is refused by this very press: its message is not drawn yet.
pub fn to_refused() {
    Timeout::new(0, || {
        refused();
    })
    .forget();
}

/// Takes the focus from a field of words, so that what was typed is handed over now: a press may take
/// the field away, and a touch that is prevented leaves the focus in it.
pub fn leave_field() {
    let field = window()
        .and_then(|window| window.document())
        .and_then(|document| document.active_element())
        .and_then(|element| element.dyn_into::<web_sys::HtmlInputElement>().ok());
    if let Some(field) = field {
        let _ = field.blur();
    }
}

/// Ticks until it is dropped.
#[derive(Debug)]
pub struct Ticker {
    _interval: Interval,
}

/// Calls `f` every `ms` milliseconds.
///
/// A hidden page gets one tick a second at most, later one a minute, and none while the phone
/// sleeps: read the clock in `f`, never count.
pub fn every(ms: u32, f: impl FnMut() + 'static) -> Ticker {
    Ticker {
        _interval: Interval::new(ms, f),
    }
}

/// Whether an event came from a control: a field, a button, a fold. A key pressed there belongs
/// to that control and not to the page.
pub fn is_in_control(event: &web_sys::Event) -> bool {
    event
        .target()
        .and_then(|target| target.dyn_into::<web_sys::Element>().ok())
        .is_some_and(|element| {
            matches!(
                element.tag_name().as_str(),
                "BUTTON" | "INPUT" | "SUMMARY" | "TEXTAREA" | "SELECT" | "A"
            )
        })
}

/// The place in the document where the app goes, emptied of the words that stood there while it
/// was loading.
pub fn place_for_app() -> Option<web_sys::HtmlElement> {
    let document = web_sys::window()?.document()?;
    let Some(place) = document.get_element_by_id("app") else {
        return document.body();
    };
    place.set_inner_html("");
    place.dyn_into().ok()
}

/// Whether this is Safari on an iPhone or iPad and not the app on its home screen: there, what a
/// page stores is deleted after seven days without use, and the home screen has a store of its
/// own. Only that Safari says `navigator.standalone`.
pub fn must_be_installed_first() -> bool {
    web_sys::window()
        .and_then(|window| js_sys::Reflect::get(&window.navigator(), &"standalone".into()).ok())
        .is_some_and(|standalone| standalone == wasm_bindgen::JsValue::FALSE)
}
