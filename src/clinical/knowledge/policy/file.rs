//! A policy file: what an organisation hands out to change its settings, and nothing else.
//!
//! ```json
//! {
//!   "penlight_policy": 1,
//!   "name": "Ward 4, spring",
//!   "settings": {
//!     "gate.requests-close": true,
//!     "breathing.block-at-or-above": 24
//!   }
//! }
//! ```
//!
//! A setting that is left out has Penlight's default. Anything else that is not as described is
//! an error, and no part of such a file is taken.

use std::fmt;

use crate::clinical::knowledge::policy::file_error::PolicyFileError;
pub use crate::clinical::knowledge::policy::file_error::{MOST_BYTES, VERSION};
use crate::clinical::knowledge::policy::json::Json;
use crate::clinical::knowledge::policy::setting::out_of_order;
use crate::clinical::knowledge::policy::settings::{Policy, SETTINGS};
use crate::clinical::knowledge::policy::{differing, find};

/// Reads a policy file.
///
/// # Errors
/// [`PolicyFileError`], the first that is found; it names the place.
///
/// ```
/// use penlight::clinical::knowledge::policy::file::parse;
/// let text = r#"{"penlight_policy": 1, "name": "Ward 4", "settings": {"water.from-years": 5}}"#;
/// assert_eq!(parse(text).map(|policy| policy.water_from_years).ok(), Some(5));
/// let error = parse(&text.replace('5', "50")).unwrap_err();
/// assert_eq!(
///     error.to_string(),
///     "\"water.from-years\" in \"settings\": allowed is a whole number from 2 to 18 (years)."
/// );
/// ```
pub fn parse(text: &str) -> Result<Policy, PolicyFileError> {
    if text.len() > MOST_BYTES {
        return Err(PolicyFileError::TooLarge);
    }
    // Some editors put a mark in front that says how the text is encoded.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let json: Json = serde_json::from_str(text).map_err(|wrong| {
        if wrong.is_eof() {
            // Behind the last character there is.
            PolicyFileError::Cut(wrong.line(), wrong.column() + 1)
        } else {
            PolicyFileError::Broken(wrong.line(), wrong.column())
        }
    })?;
    let Json::Object(entries) = json else {
        return Err(PolicyFileError::NotAPolicy);
    };
    // First of all: a newer file may well have keys that are not known here.
    match value(&entries, "penlight_policy") {
        Some(Json::Whole(VERSION)) => {}
        Some(Json::Whole(version)) if *version > VERSION => {
            return Err(PolicyFileError::Newer(*version));
        }
        _ => return Err(PolicyFileError::NotAPolicy),
    }
    none_twice(&entries)?;
    for (key, _) in &entries {
        if !["penlight_policy", "name", "settings"].contains(&key.as_str()) {
            return Err(PolicyFileError::UnknownKey(key.clone()));
        }
    }
    let name = match value(&entries, "name") {
        Some(Json::Text(name)) if good_name(name) => name.clone(),
        _ => return Err(PolicyFileError::Name),
    };
    let mut policy = Policy {
        name,
        ..Policy::default()
    };
    let Some(Json::Object(settings)) = value(&entries, "settings") else {
        return Err(PolicyFileError::Settings);
    };
    none_twice(settings)?;
    for (key, json) in settings {
        let setting = find(key).ok_or_else(|| PolicyFileError::UnknownSetting(key.clone()))?;
        let value = setting
            .read(json)
            .filter(|value| setting.takes(*value))
            .ok_or(PolicyFileError::Value(setting))?;
        (setting.set)(&mut policy, value);
    }
    if let Some(order) = out_of_order(&policy) {
        return Err(PolicyFileError::Order(order));
    }
    let ours =
        policy.name == Policy::OURS && differing(&policy, &Policy::default()).next().is_none();
    if !ours && kept_for_us(&policy.name) {
        return Err(PolicyFileError::OurName);
    }
    Ok(policy)
}

/// Whether a name begins like that of Penlight's own policy: a handover that names it must not
/// mean another one.
fn kept_for_us(name: &str) -> bool {
    const KEPT: &str = "Penlight default";
    name.get(..KEPT.len())
        .is_some_and(|start| start.eq_ignore_ascii_case(KEPT))
}

/// A policy as a file: every setting, in the order of the table, one a line.
pub fn write(policy: &Policy) -> String {
    let mut text = format!("{{\n  \"penlight_policy\": {VERSION},\n  \"name\": \"");
    for c in policy.name.chars() {
        if matches!(c, '"' | '\\') {
            text.push('\\');
        }
        text.push(c);
    }
    text.push_str("\",\n  \"settings\": {");
    for (i, setting) in SETTINGS.iter().enumerate() {
        let comma = if i == 0 { "" } else { "," };
        let value = setting.written(policy);
        text.push_str(&format!("{comma}\n    \"{}\": {value}", setting.key));
    }
    text.push_str("\n  }\n}\n");
    text
}

fn value<'a>(entries: &'a [(String, Json)], key: &str) -> Option<&'a Json> {
    entries.iter().find(|(k, _)| k == key).map(|(_, v)| v)
}

fn none_twice(entries: &[(String, Json)]) -> Result<(), PolicyFileError> {
    for (i, (key, _)) in entries.iter().enumerate() {
        if value(&entries[..i], key).is_some() {
            return Err(PolicyFileError::Twice(key.clone()));
        }
    }
    Ok(())
}

/// A name that stands in a line of the handover as it is: no signs that break a line, are not
/// seen or turn the direction of writing.
fn good_name(name: &str) -> bool {
    let unseen = |c: char| {
        c.is_control()
            || matches!(c, '\u{ad}' | '\u{61c}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}'
                | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{ffff}')
    };
    let ends = |c: char| c == ' ' || c == '\u{a0}';
    !name.is_empty()
        && !name.starts_with(ends)
        && !name.ends_with(ends)
        && name.chars().count() <= Policy::MOST_NAME
        && !name.chars().any(unseen)
}

/// A policy reads as its file.
impl fmt::Debug for Policy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&write(self))
    }
}
