//! What a visit is called in the store and in addresses.

use serde::{Deserialize, Serialize};

/// A visit's id: random, 16 to 40 characters of `0-9a-z-`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String")]
pub struct VisitId(String);

impl TryFrom<String> for VisitId {
    type Error = &'static str;

    fn try_from(id: String) -> Result<VisitId, Self::Error> {
        VisitId::new(&id).ok_or("not a visit id")
    }
}

impl VisitId {
    /// Takes an id.
    ///
    /// # Errors
    /// None where it has other characters or another length, so that it can be part of a key or
    /// an address.
    pub fn new(id: &str) -> Option<VisitId> {
        let plain = id
            .bytes()
            .all(|b| b.is_ascii_digit() || b.is_ascii_lowercase() || b == b'-');
        (plain && (16..=40).contains(&id.len())).then(|| VisitId(id.to_owned()))
    }

    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}
