//! Design choices that no policy file can change.

use super::SETTINGS;
use crate::clinical::rule::{Basis, Rule};
use crate::clinical::rules;

/// The rules that rest on local policy and that no setting changes, each with why it is so.
///
/// Their range is the one value they have: safety or the meaning of a record hangs on them, so
/// that they are the same on every phone.
pub fn fixed() -> impl Iterator<Item = (&'static Rule, &'static str)> {
    rules::ALL.iter().filter_map(|rule| match rule.basis {
        Basis::LocalPolicy { why, .. } if SETTINGS.iter().all(|s| s.read_by != rule.id) => {
            Some((*rule, why))
        }
        _ => None,
    })
}
