//! What this phone prefers, and where it was.
//!
//! In localStorage, which may lose the last half minute when the browser is killed: good enough
//! for preferences and for a pointer, never for records.

use serde::{Deserialize, Serialize};

use super::{local_storage, window};
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::person::Role;
use crate::clinical::knowledge::policy::file;
use crate::clinical::knowledge::policy::file::write;
use crate::clinical::knowledge::policy::{Policy, PolicyFileError};

const PREFS_KEY: &str = "penlight.prefs";
const RUNNING_KEY: &str = "penlight.running";
const POLICY_KEY: &str = "penlight.policy";

/// Preferences.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Prefs {
    /// Who held the phone last: shown, never taken as given.
    pub role: Option<Role>,
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
    /// One pad, or two for two hands.
    pub hands: Hands,
    /// Which of the repeated syllables new visits ask for, in which order.
    pub order: Order,
}

/// How many pads a count has.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Hands {
    /// One pad.
    #[default]
    One,
    /// Two pads that count the same, as with a helper.
    TwoPads,
    /// Two pads that count a thing each, where anything is counted.
    TwoThings,
}

impl Default for Prefs {
    fn default() -> Prefs {
        Prefs {
            role: None,
            countdown: false,
            sound: true,
            vibrate: true,
            left_hand: false,
            look: Look::Auto,
            hands: Hands::One,
            order: Order::default(),
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

/// The local policy in force for visits begun now: what was taken in, else Penlight's.
///
/// It is kept as a policy file, and checked like one every time it is read.
///
/// # Errors
/// What is kept can't be used any more. Penlight's default holds then, and that is to be said.
pub fn policy() -> Result<Policy, PolicyFileError> {
    get(POLICY_KEY).map_or_else(|| Ok(Policy::default()), |text| file::parse(&text))
}

/// The same, with Penlight's default where what is kept can't be used.
#[inline(never)]
pub fn policy_in_force() -> Policy {
    policy().unwrap_or_default()
}

/// Keeps a policy by its file's text, and says whether it could be kept.
///
/// Penlight's own is kept by keeping none, so that a later version brings its own default.
pub fn keep_policy(text: &str) -> bool {
    let ours = text.is_empty() || text == write(&Policy::default());
    set(POLICY_KEY, (!ours).then_some(text))
}

/// The page of the trial that was running, so that a killed app opens where it was.
pub fn running() -> Option<String> {
    get(RUNNING_KEY).filter(|page| !page.is_empty())
}

/// Keeps or forgets the page of the running trial.
pub fn set_running(page: Option<&str>) {
    // A full or blocked storage costs the place, nothing more.
    set(RUNNING_KEY, page);
}

/// Shows a look: `data-look` on `<html>`, which the style sheets go by.
pub fn apply_look(look: Look) {
    let name = match look {
        Look::Auto => None,
        Look::Light => Some("light"),
        Look::Dark => Some("dark"),
        Look::Contrast => Some("contrast"),
    };
    mark_root("data-look", name);
}

/// Shows on whose side the buttons are: `data-hand` on `<html>`.
pub fn apply_hand(left: bool) {
    mark_root("data-hand", left.then_some("left"));
}

fn mark_root(attribute: &str, value: Option<&str>) {
    let Some(root) = window()
        .and_then(|window| window.document())
        .and_then(|document| document.document_element())
    else {
        return;
    };
    // Neither fails for a plain name.
    let _ = match value {
        Some(value) => root.set_attribute(attribute, value),
        None => root.remove_attribute(attribute),
    };
}

fn get(key: &str) -> Option<String> {
    local_storage()?.get_item(key).ok()?
}

/// Keeps a text, or none, and says whether that worked.
fn set(key: &str, value: Option<&str>) -> bool {
    local_storage().is_some_and(|storage| {
        match value {
            Some(value) => storage.set_item(key, value),
            None => storage.remove_item(key),
        }
        .is_ok()
    })
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
