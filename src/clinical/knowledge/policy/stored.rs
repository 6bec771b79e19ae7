//! A policy within a visit's record: its fields by name, as the rules read them.
//!
//! **Invariant:** a field that was released keeps its name and its meaning. The first fields are
//! always written; a later one is left out while it has the value that a record without it means.

use serde::de::{Deserialize, Deserializer, Error};
use serde::ser::{Serialize, SerializeMap, Serializer};

use crate::clinical::knowledge::policy::json::Json;
use crate::clinical::knowledge::policy::settings::{Policy, SETTINGS};
use crate::clinical::knowledge::policy::{Kind, Setting};

/// The fields that records have had from the first day on, in their order there.
const FIRST: [&str; 6] = [
    "voice_refers",
    "requests_block",
    "breaths_low",
    "breaths_high",
    "spo2_low",
    "dry_swallow_from_years",
];

/// What a record means that does not name a setting: what the rules did before there was one.
///
/// The day a default changes, its old value is named here, so that old visits keep theirs.
fn left_out(setting: &Setting) -> i32 {
    match setting.field {
        // No dry swallow was a stop.
        "dry_none_stops" => 1,
        // A fall of more than 3 stopped.
        "spo2_fall" => 3,
        _ => setting.default,
    }
}

impl Setting {
    /// The value that JSON gives for it; none for another kind. It may lie outside the range.
    pub(super) fn read(&self, json: &Json) -> Option<i32> {
        match (self.kind, json) {
            (Kind::Whole { .. }, Json::Whole(n)) => i32::try_from(*n).ok(),
            (Kind::OnOff, Json::OnOff(on)) => Some(i32::from(*on)),
            (Kind::OneOf(choices), Json::Text(id)) => choices
                .iter()
                .position(|choice| choice == id)
                .and_then(|at| i32::try_from(at).ok()),
            _ => None,
        }
    }

    /// The value in a policy as JSON.
    pub(super) fn written(&self, policy: &Policy) -> String {
        let value = (self.get)(policy);
        match self.kind {
            Kind::Whole { .. } => value.to_string(),
            Kind::OnOff => (value != 0).to_string(),
            Kind::OneOf(choices) => usize::try_from(value)
                .ok()
                .and_then(|at| choices.get(at))
                .map_or(String::new(), |id| format!("\"{id}\"")),
        }
    }
}

impl Serialize for Policy {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let first = FIRST
            .iter()
            .filter_map(|field| SETTINGS.iter().find(|s| s.field == *field));
        let later = SETTINGS
            .iter()
            .filter(|s| !FIRST.contains(&s.field) && (s.get)(self) != left_out(s));
        let mut map = to.serialize_map(None)?;
        map.serialize_entry("name", &self.name)?;
        for setting in first.chain(later) {
            let value = (setting.get)(self);
            match setting.kind {
                Kind::Whole { .. } => map.serialize_entry(setting.field, &value)?,
                Kind::OnOff => map.serialize_entry(setting.field, &(value != 0))?,
                Kind::OneOf(choices) => {
                    let id = choices.get(value as usize).copied().unwrap_or_default();
                    map.serialize_entry(setting.field, id)?;
                }
            }
        }
        map.end()
    }
}

/// A value outside today's range is kept: the visit was judged by it.
impl<'de> Deserialize<'de> for Policy {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Policy, D::Error> {
        let Json::Object(fields) = Json::deserialize(from)? else {
            return Err(Error::custom("no policy"));
        };
        let mut policy = Policy::default();
        policy.name.clear();
        for setting in SETTINGS {
            (setting.set)(&mut policy, left_out(setting));
        }
        for (field, json) in fields {
            if field == "name" {
                if let Json::Text(name) = json {
                    policy.name = name;
                }
            } else if let Some(setting) = SETTINGS.iter().find(|s| s.field == field) {
                let value = setting
                    .read(&json)
                    .ok_or_else(|| Error::custom("not a value of this setting"))?;
                (setting.set)(&mut policy, value);
            }
        }
        Ok(policy)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What records without these fields mean, for good. Where this fails because a default
    /// changed, [`left_out`] is to name the old value.
    #[test]
    fn records_without_a_field_keep_their_meaning() {
        let old = r#"{"name":"Penlight default 1","voice_refers":true,"requests_block":false,"breaths_low":8,"breaths_high":25,"spo2_low":91,"dry_swallow_from_years":16}"#;
        let policy: Policy = serde_json::from_str(old).unwrap();
        let meant: Vec<_> = SETTINGS
            .iter()
            .filter(|s| !FIRST.contains(&s.field))
            .map(|s| (s.field, (s.get)(&policy)))
            .collect();
        assert_eq!(
            meant,
            [
                ("slp_here", 1),
                ("suction_blocks", 0),
                ("drowsy_wait", 30),
                ("ready_minutes", 60),
                ("orders_hours", 8),
                ("breaths_caution_low", 11),
                ("breaths_caution_high", 21),
                ("spo2_caution", 95),
                ("spo2_fall", 3),
                ("tap_spread", 15),
                ("tap_intervals", 4),
                ("dry_none_stops", 1),
                ("water_from_years", 2),
                ("throat_clear_refers", 0),
                ("sip_first", 3),
                ("sip_second", 5),
                ("sip_third", 10),
                ("sip_repeats", 2),
                ("small_water_wording", 0),
                ("gag_counts", 0),
                ("upright_minutes", 0),
            ]
        );
        assert_eq!(serde_json::to_string(&policy).unwrap(), old);
    }

    #[test]
    fn every_setting_reads_back_as_it_was() {
        let mut policy = Policy {
            name: "Ward \"4\"".to_owned(),
            ..Policy::default()
        };
        for setting in SETTINGS {
            let other = (0..200).rfind(|v| setting.takes(*v) && *v != setting.default);
            (setting.set)(&mut policy, other.unwrap());
        }
        let text = serde_json::to_string(&policy).unwrap();
        assert_eq!(serde_json::from_str::<Policy>(&text).unwrap(), policy);
    }

    #[test]
    fn a_field_of_another_kind_is_no_policy() {
        for bad in [
            "[]",
            "7",
            r#"{"name":"x","breaths_low":"8"}"#,
            r#"{"name":"x","breaths_low":8.5}"#,
            r#"{"name":"x","voice_refers":1}"#,
            r#"{"name":"x","small_water_wording":"C"}"#,
        ] {
            assert!(serde_json::from_str::<Policy>(bad).is_err(), "{bad}");
        }
        let newer: Policy = serde_json::from_str(r#"{"name":"x","not_known":[1]}"#).unwrap();
        assert_eq!(newer.name, "x");
    }
}
