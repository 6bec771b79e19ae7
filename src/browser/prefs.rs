//! What this phone prefers, and where it was.
//!
//! In localStorage, which may lose the last half minute when the browser is killed: good enough
//! for preferences and for a pointer, never for records.

use serde::{Deserialize, Serialize};

use super::{local_storage, window};
use crate::clinical::person::Role;

const PREFS_KEY: &str = "penlight.prefs";
const RUNNING_KEY: &str = "penlight.running";

/// Preferences.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Prefs {
    /// Who holds the phone.
    pub role: Role,
    /// "Ready, set, go" before a timed task.
    pub countdown: bool,
    /// Tones.
    pub sound: bool,
    /// Vibration.
    pub vibrate: bool,
    /// The pad's buttons for the left hand.
    pub left_hand: bool,
    /// Colours.
    pub look: Look,
}

impl Default for Prefs {
    fn default() -> Prefs {
        Prefs {
            role: Role::Screener,
            countdown: false,
            sound: true,
            vibrate: true,
            left_hand: false,
            look: Look::Auto,
        }
    }
}

/// Colours.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Look {
    /// As the phone is set.
    #[default]
    Auto,
    /// Light.
    Light,
    /// Dark.
    Dark,
    /// High contrast.
    Contrast,
}

/// The preferences as kept; the defaults where nothing readable is kept.
pub fn load() -> Prefs {
    get(PREFS_KEY)
        .and_then(|text| serde_json::from_str(&text).ok())
        .unwrap_or_default()
}

/// Keeps the preferences, if anything can be kept.
pub fn save(prefs: &Prefs) {
    if let Ok(text) = serde_json::to_string(prefs) {
        set(PREFS_KEY, Some(&text));
    }
}

/// The page of the trial that was running, so that a killed app opens where it was.
pub fn running() -> Option<String> {
    get(RUNNING_KEY).filter(|page| !page.is_empty())
}

/// Keeps or forgets the page of the running trial.
pub fn set_running(page: Option<&str>) {
    set(RUNNING_KEY, page);
}

/// Shows a look: `data-look` on `<html>`, which the style sheets go by.
pub fn apply_look(look: Look) {
    let Some(root) = window()
        .and_then(|window| window.document())
        .and_then(|document| document.document_element())
    else {
        return;
    };
    let name = match look {
        Look::Auto => None,
        Look::Light => Some("light"),
        Look::Dark => Some("dark"),
        Look::Contrast => Some("contrast"),
    };
    // Neither fails for a plain name.
    let _ = match name {
        Some(name) => root.set_attribute("data-look", name),
        None => root.remove_attribute("data-look"),
    };
}

fn get(key: &str) -> Option<String> {
    local_storage()?.get_item(key).ok()?
}

fn set(key: &str, value: Option<&str>) {
    if let Some(storage) = local_storage() {
        // A full or blocked storage costs a preference, nothing more.
        let _ = match value {
            Some(value) => storage.set_item(key, value),
            None => storage.remove_item(key),
        };
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_missing_preference_has_its_default_and_the_others_stay() {
        let prefs: Option<Prefs> = serde_json::from_str(r#"{"sound":false,"other":1}"#).ok();
        let expected = Prefs {
            sound: false,
            ..Prefs::default()
        };
        assert_eq!(prefs, Some(expected));
    }
}
