//! What a setting may hold: its range, and which settings belong together.

use crate::clinical::knowledge::policy::kind::Kind;
use crate::clinical::knowledge::policy::settings::{Policy, SETTINGS, Setting};

impl Setting {
    /// Whether a value lies within the stated range.
    pub fn takes(&self, value: i32) -> bool {
        let (least, most) = match self.kind {
            Kind::Whole { least, most, .. } => (least, most),
            Kind::OnOff => (0, 1),
            Kind::OneOf(choices) => (0, choices.len() as i32 - 1),
        };
        (least..=most).contains(&value)
    }
}

/// Two settings of which one limits the other.
#[derive(Debug, PartialEq, Eq)]
pub struct Order {
    /// Key of the lower one.
    pub lower: &'static str,
    /// Key of the higher one.
    pub higher: &'static str,
    /// Whether both may be the same.
    pub or_same: bool,
}

const fn order(lower: &'static str, higher: &'static str, or_same: bool) -> Order {
    Order {
        lower,
        higher,
        or_same,
    }
}

/// A caution lies outside its block, so that there is always a band in which the clinician is
/// warned; the sips do not fall.
static ORDERS: [Order; 5] = [
    order(
        "breathing.block-at-or-below",
        "breathing.caution-at-or-below",
        false,
    ),
    order(
        "breathing.caution-at-or-above",
        "breathing.block-at-or-above",
        false,
    ),
    order(
        "breathing.spo2-block-at-or-below",
        "breathing.spo2-caution-at-or-below",
        false,
    ),
    order("sips.first", "sips.second", true),
    order("sips.second", "sips.third", true),
];

/// The first two settings that contradict each other in a policy, if any do.
pub fn out_of_order(policy: &Policy) -> Option<&'static Order> {
    let value = |key| {
        let setting = SETTINGS.iter().find(|setting| setting.key == key);
        setting.map_or(0, |setting| (setting.get)(policy))
    };
    ORDERS.iter().find(|order| {
        let (lower, higher) = (value(order.lower), value(order.higher));
        lower > higher || lower == higher && !order.or_same
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clinical::knowledge::policy::find;

    #[test]
    fn the_table_is_sound() {
        for (i, setting) in SETTINGS.iter().enumerate() {
            let key = setting.key;
            assert!(!SETTINGS[..i].iter().any(|s| s.key == key), "{key} twice");
            assert!(
                !SETTINGS[..i].iter().any(|s| s.field == setting.field),
                "{key}"
            );
            let plain = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b"-.".contains(&b);
            assert!(
                key.bytes().all(plain) && key.matches('.').count() == 1,
                "{key}"
            );
            assert!(setting.takes(setting.default), "{key}: default");
            assert!(setting.why.ends_with('.'), "{key}");
            assert_eq!((setting.get)(&Policy::default()), setting.default, "{key}");
        }
        assert_eq!(out_of_order(&Policy::default()), None);
    }

    /// Keys of a group stand together, so that a list by groups is the table itself.
    #[test]
    fn groups_are_not_torn() {
        let mut groups: Vec<_> = SETTINGS
            .iter()
            .filter_map(|s| s.key.split_once('.'))
            .collect();
        groups.dedup_by_key(|(group, _)| *group);
        for (i, (group, _)) in groups.iter().enumerate() {
            assert!(!groups[..i].iter().any(|(g, _)| g == group), "{group}");
        }
    }

    #[test]
    fn every_order_names_two_settings() {
        for order in &ORDERS {
            assert!(find(order.lower).is_some(), "{}", order.lower);
            assert!(find(order.higher).is_some(), "{}", order.higher);
        }
    }

    #[test]
    fn a_setting_sets_its_own_field_and_no_other() {
        for setting in SETTINGS {
            let mut policy = Policy::default();
            let other = (-200..200).find(|v| setting.takes(*v) && *v != setting.default);
            (setting.set)(&mut policy, other.unwrap());
            let changed: Vec<_> = super::super::differing(&policy, &Policy::default())
                .map(|s| s.key)
                .collect();
            assert_eq!(changed, [setting.key]);
            assert_eq!(Some((setting.get)(&policy)), other);
        }
    }
}
