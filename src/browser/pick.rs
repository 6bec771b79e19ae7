//! A file that somebody chose on this phone.

use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Event, File, HtmlInputElement};

use super::error_words;

/// A file, not read yet.
#[derive(Debug)]
pub struct Chosen(File);

/// The file that was just chosen in a field, by the field's `change` event.
///
/// The field is then empty again: the same file, mended, can be chosen once more.
pub fn chosen(event: &Event) -> Option<Chosen> {
    let field = event.target()?.dyn_into::<HtmlInputElement>().ok()?;
    let file = field.files()?.get(0)?;
    field.set_value("");
    Some(Chosen(file))
}

impl Chosen {
    /// Whether it is larger than so many bytes. Reads nothing of it.
    pub fn is_over(&self, bytes: usize) -> bool {
        self.0.size() > bytes as f64
    }

    /// Its text, taken as UTF-8.
    ///
    /// # Errors
    /// The browser's words, where the file went away or may not be read.
    pub async fn text(self) -> Result<String, String> {
        let text = JsFuture::from(self.0.text())
            .await
            .map_err(|error| error_words(&error))?;
        Ok(text.as_string().unwrap_or_default())
    }
}
