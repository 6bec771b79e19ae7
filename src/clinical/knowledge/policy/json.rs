//! The little of JSON that a policy needs: what is there, in the order it was written.
//!
//! Unlike the library's own tree it keeps a key that stands there twice, and needs no map.

use std::fmt;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

/// One value.
#[derive(Debug)]
pub(super) enum Json {
    /// `true` or `false`.
    OnOff(bool),
    /// A whole number.
    Whole(i64),
    /// A text.
    Text(String),
    /// Names with values.
    Object(Vec<(String, Json)>),
    /// Anything that no policy has: a list, a fraction, `null`.
    Other,
}

impl<'de> Deserialize<'de> for Json {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Json, D::Error> {
        from.deserialize_any(Any)
    }
}

struct Any;

impl<'de> Visitor<'de> for Any {
    type Value = Json;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_bool<E>(self, on: bool) -> Result<Json, E> {
        Ok(Json::OnOff(on))
    }

    fn visit_i64<E>(self, n: i64) -> Result<Json, E> {
        Ok(Json::Whole(n))
    }

    fn visit_u64<E>(self, n: u64) -> Result<Json, E> {
        Ok(i64::try_from(n).map_or(Json::Other, Json::Whole))
    }

    fn visit_f64<E>(self, _: f64) -> Result<Json, E> {
        Ok(Json::Other)
    }

    fn visit_unit<E>(self) -> Result<Json, E> {
        Ok(Json::Other)
    }

    fn visit_str<E>(self, text: &str) -> Result<Json, E> {
        Ok(Json::Text(text.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Json, A::Error> {
        while list.next_element::<Json>()?.is_some() {}
        Ok(Json::Other)
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Json, A::Error> {
        let mut entries = Vec::new();
        while let Some(entry) = map.next_entry()? {
            entries.push(entry);
        }
        Ok(Json::Object(entries))
    }
}
