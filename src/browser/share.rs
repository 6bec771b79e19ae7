//! The ways a text leaves the app.
//!
//! Clipboard and sharing belong to a press: the browser refuses them once the handler has
//! awaited anything. So the call is made in the function itself, and only its outcome is awaited.

use std::future::Future;

use gloo_timers::callback::Timeout;
use js_sys::{Array, Function, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, BlobPropertyBag, Document, HtmlAnchorElement, HtmlElement, HtmlTextAreaElement,
    ShareData, Url,
};

use super::{error_name, error_words, navigator_with, window};

const NO_PAGE: &str = "there is no page";

/// Copies a text. Call it in the handler of the press.
///
/// # Errors
/// The future gives the browser's words where the text did not reach the clipboard.
pub fn copy(text: &str) -> impl Future<Output = Result<(), String>> + 'static + use<> {
    // Missing without https, and in old phones.
    let asked: Result<Promise, Result<(), String>> = navigator_with("clipboard")
        .map(|navigator| navigator.clipboard().write_text(text))
        .ok_or_else(|| copy_by_selection(text));
    let text = text.to_owned();
    async move {
        match asked {
            Err(done) => done,
            Ok(promise) => match JsFuture::from(promise).await {
                Ok(_) => Ok(()),
                // Refused by a setting, not by the platform: the old way may still be allowed.
                Err(error) => copy_by_selection(&text).map_err(|_| error_words(&error)),
            },
        }
    }
}

/// Copies by selecting the text in a field that nobody sees.
fn copy_by_selection(text: &str) -> Result<(), String> {
    let document = document()?;
    let before = document.active_element();
    let field = document
        .create_element("textarea")
        .map_err(|error| error_words(&error))?
        .dyn_into::<HtmlTextAreaElement>()
        .map_err(|_| NO_PAGE.to_owned())?;
    field.set_value(text);
    field.set_read_only(true);
    let style = field.style();
    // Above the fold, so that the page doesn't jump; 16 px, so that iOS doesn't zoom in.
    for (name, value) in [
        ("position", "fixed"),
        ("top", "0"),
        ("opacity", "0"),
        ("font-size", "16px"),
    ] {
        let _ = style.set_property(name, value);
    }
    // An open dialog takes all focus: the field must be inside.
    let parent = match document.query_selector("dialog[open]") {
        Ok(Some(dialog)) => dialog,
        _ => document.body().ok_or(NO_PAGE)?.into(),
    };
    parent
        .append_child(&field)
        .map_err(|error| error_words(&error))?;
    field.select();
    let copied = exec_copy(&document);
    field.remove();
    if let Some(before) = before.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
        let _ = before.focus();
    }
    if copied {
        Ok(())
    } else {
        Err("this browser does not let the page copy".to_owned())
    }
}

fn exec_copy(document: &Document) -> bool {
    Reflect::get(document, &JsValue::from_str("execCommand"))
        .ok()
        .and_then(|command| command.dyn_into::<Function>().ok())
        .and_then(|command| command.call1(document, &JsValue::from_str("copy")).ok())
        .is_some_and(|done| done.is_truthy())
}

/// Whether the phone offers its share sheet to this page.
pub fn can_share() -> bool {
    navigator_with("share").is_some()
}

/// Opens the share sheet with a text. Call it in the handler of the press.
///
/// Gives true once the text was handed on, false where the user closed the sheet.
///
/// # Errors
/// The future gives the browser's words where there is no sheet or it failed.
pub fn share(
    title: &str,
    text: &str,
) -> impl Future<Output = Result<bool, String>> + 'static + use<> {
    let asked = navigator_with("share").map(|navigator| {
        let data = ShareData::new();
        data.set_title(title);
        data.set_text(text);
        navigator.share_with_data(&data)
    });
    async move {
        let asked = asked.ok_or("this browser has no share sheet")?;
        match JsFuture::from(asked).await {
            Ok(_) => Ok(true),
            Err(error) if error_name(&error) == "AbortError" => Ok(false),
            Err(error) => Err(error_words(&error)),
        }
    }
}

/// How long the browser may take to fetch a file it was given.
const FETCH_MS: u32 = 60_000;

/// Offers a text as a file to be saved. Call it in the handler of the press.
///
/// Whether it was saved in the end is between the user and the browser.
///
/// # Errors
/// The browser's words where it could not even be offered.
pub fn save_file(name: &str, text: &str) -> Result<(), String> {
    let words = |error: JsValue| error_words(&error);
    let document = document()?;
    let kind = BlobPropertyBag::new();
    kind.set_type("text/plain;charset=utf-8");
    let parts = Array::of1(&JsValue::from_str(text));
    let blob = Blob::new_with_str_sequence_and_options(&parts, &kind).map_err(words)?;
    let url = Url::create_object_url_with_blob(&blob).map_err(words)?;
    let link = document
        .create_element("a")
        .map_err(words)?
        .dyn_into::<HtmlAnchorElement>()
        .map_err(|_| NO_PAGE.to_owned())?;
    link.set_href(&url);
    link.set_download(name);
    link.click();
    // The file is read after the handler has ended, on iOS only once the user has agreed.
    Timeout::new(FETCH_MS, move || {
        let _ = Url::revoke_object_url(&url);
    })
    .forget();
    Ok(())
}

fn document() -> Result<Document, String> {
    window()
        .and_then(|window| window.document())
        .ok_or_else(|| NO_PAGE.to_owned())
}
