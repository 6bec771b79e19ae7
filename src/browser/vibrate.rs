//! Vibration.

use js_sys::{Array, Reflect};
use wasm_bindgen::JsValue;

use super::navigator_with;

/// Vibrates: on, off, on and so forth, in milliseconds.
///
/// Does nothing on iOS, which has no such interface, and nothing before the first press on the
/// page. Firefox on Android says that it vibrated and doesn't: there is no telling, so nothing
/// may be said by vibration alone.
pub fn buzz(pattern_ms: &[u32]) {
    if let Some(navigator) = navigator_with("vibrate")
        && was_touched(&navigator)
    {
        let pattern: Array = pattern_ms.iter().copied().map(JsValue::from).collect();
        navigator.vibrate_with_pattern(&pattern);
    }
}

/// Whether the page was touched since it opened: before that Chromium refuses, and complains on
/// the console. A browser that can't tell is taken at its word.
fn was_touched(navigator: &web_sys::Navigator) -> bool {
    Reflect::get(navigator, &"userActivation".into())
        .and_then(|activation| Reflect::get(&activation, &"hasBeenActive".into()))
        .is_ok_and(|touched| !touched.is_falsy() || touched.is_undefined())
}
