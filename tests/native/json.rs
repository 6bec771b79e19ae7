//! Records as JSON, against serde_json, a general-purpose library for it, and against RFC 8259.

#![allow(clippy::unwrap_used)]

use std::collections::BTreeMap;

use penlight::json::{read, write};
use proptest::prelude::*;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// Everything that serde can ask for and a record may have one day.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct All {
    text: String,
    on: bool,
    small: i8,
    large: i64,
    count: u64,
    maybe: Option<u8>,
    nothing: (),
    pair: (u32, String),
    list: Vec<Kind>,
    names: BTreeMap<String, i32>,
    fraction: f64,
    letter: char,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    later: Option<String>,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
enum Kind {
    Plain,
    One(u16),
    Two(i32, bool),
    Named { a: Option<String>, b: Vec<u8> },
    Wrapped(Wrapped),
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Wrapped(String);

fn any_text() -> impl Strategy<Value = String> {
    prop_oneof![
        "[ -~]{0,12}",
        "\\PC{0,8}",
        // What has to be escaped.
        prop::collection::vec(any::<char>(), 0..6).prop_map(|c| c.into_iter().collect()),
        "[\"\\\\/\u{0}-\u{1f}\u{7f}]{0,6}",
    ]
}

fn any_kind() -> impl Strategy<Value = Kind> {
    prop_oneof![
        Just(Kind::Plain),
        any::<u16>().prop_map(Kind::One),
        any::<(i32, bool)>().prop_map(|(a, b)| Kind::Two(a, b)),
        (prop::option::of(any_text()), any::<Vec<u8>>()).prop_map(|(a, b)| Kind::Named { a, b }),
        any_text().prop_map(|t| Kind::Wrapped(Wrapped(t))),
    ]
}

fn any_all() -> impl Strategy<Value = All> {
    let first = (
        any_text(),
        any::<(bool, i8, i64, u64, Option<u8>)>(),
        (any::<u32>(), any_text()),
        prop::collection::vec(any_kind(), 0..4),
    );
    let second = (
        prop::collection::btree_map(any_text(), any::<i32>(), 0..4),
        // Of the size that a measurement has: beyond it the two write exponents differently.
        (-2_000_000_i32..2_000_000).prop_map(|n| f64::from(n) / 1000.0),
        any::<char>(),
        prop::option::of(any_text()),
    );
    (first, second).prop_map(|(first, second)| {
        let (text, (on, small, large, count, maybe), pair, list) = first;
        let (names, fraction, letter, later) = second;
        All {
            text,
            on,
            small,
            large,
            count,
            maybe,
            nothing: (),
            pair,
            list,
            names,
            fraction,
            letter,
            later,
        }
    })
}

/// Any JSON of whole numbers: what both read into the library's own tree.
fn any_value() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<u64>().prop_map(Value::from),
        any_text().prop_map(Value::from),
    ];
    leaf.prop_recursive(5, 40, 6, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..6).prop_map(Value::from),
            prop::collection::vec((any_text(), inner), 0..6)
                .prop_map(|entries| Value::Object(entries.into_iter().collect())),
        ]
    })
}

proptest! {
    #[test]
    fn writes_what_the_library_writes_and_reads_it_back(all in any_all()) {
        let text = write(&all).unwrap();
        prop_assert_eq!(&text, &serde_json::to_string(&all).unwrap());
        prop_assert_eq!(read::<All>(&text).unwrap(), all.clone());
        // With white space too.
        let pretty = serde_json::to_string_pretty(&all).unwrap();
        prop_assert_eq!(read::<All>(&pretty).unwrap(), all);
    }

    #[test]
    fn reads_any_tree_as_the_library_does(value in any_value()) {
        prop_assert_eq!(read::<Value>(&value.to_string()).unwrap(), value.clone());
        prop_assert_eq!(write(&value).unwrap(), value.to_string());
    }

    /// One piece of the text replaced: refused where the library refuses it.
    #[test]
    fn refuses_what_the_library_refuses(
        value in any_value(),
        at: prop::sample::Index,
        length in 0_usize..3,
        other in "[\\[\\]{},:\"\\\\ 0-9eE.+ntu\\-\n\u{1}é]{0,3}",
    ) {
        let chars: Vec<char> = value.to_string().chars().collect();
        let at = at.index(chars.len() + 1);
        let damaged: String = chars[..at]
            .iter()
            .copied()
            .chain(other.chars())
            .chain(chars[(at + length).min(chars.len())..].iter().copied())
            .collect();
        let library = serde_json::from_str::<Value>(&damaged);
        let ours = read::<Value>(&damaged);
        // A number beyond what a fraction holds is JSON. The library stops there, and says nothing of
        // what follows it.
        let too_large = library.as_ref().is_err_and(|e| e.to_string().contains("out of range"));
        if !too_large {
            prop_assert_eq!(ours.is_ok(), library.is_ok(), "{}", damaged);
        }
    }

    #[test]
    fn never_panics(text in "\\PC{0,30}") {
        let library = serde_json::from_str::<Value>(&text).is_ok();
        prop_assert_eq!(read::<Value>(&text).is_ok(), library);
        let _ = read::<All>(&text);
    }
}

/// The examples of RFC 8259, section 13, without their fractions, and its three small texts.
#[test]
fn examples_of_the_standard() {
    let image = r#"{ "Image": { "Width": 800, "Height": 600, "Title": "View from 15th Floor",
        "Thumbnail": { "Url": "http://www.example.com/image/481989943", "Height": 125, "Width": 100 },
        "Animated" : false, "IDs": [116, 943, 234, 38793] } }"#;
    let read_image: Value = read(image).unwrap();
    assert_eq!(read_image["Image"]["Thumbnail"]["Width"], 100);
    assert_eq!(read_image["Image"]["Animated"], false);
    assert_eq!(read_image["Image"]["IDs"][3], 38793);
    assert_eq!(read::<String>(r#""Hello world!""#).unwrap(), "Hello world!");
    assert_eq!(read::<u8>("42").unwrap(), 42);
    assert!(read::<bool>("true").unwrap());
    // Section 7: the G clef, beyond the first 65,536 characters, as two halves.
    assert_eq!(read::<String>(r#""\uD834\uDD1E""#).unwrap(), "\u{1D11E}");
}

#[test]
fn says_where_a_text_is_wrong() {
    let wrong = |text: &str| read::<Value>(text).unwrap_err();
    let at = |text: &str| {
        let wrong = wrong(text);
        (wrong.line, wrong.column, wrong.cut)
    };
    assert_eq!(at("{\n  \"a\": 1,\n  b: 2\n}"), (3, 3, false));
    assert_eq!(at("[1, 2"), (1, 6, true));
    assert_eq!(at(""), (1, 1, true));
    assert_eq!(at("\"h\u{e9}\n\""), (1, 4, false));
    assert_eq!(at("[true] x"), (1, 8, false));
    assert_eq!(wrong("{} {}").to_string(), "line 1, character 4");
}

#[test]
fn depth_does_not_exhaust_the_stack() {
    for (open, close) in [("[", "]"), ("{\"a\":", "}")] {
        let deep = |n: usize| format!("{}1{}", open.repeat(n), close.repeat(n));
        assert!(read::<Value>(&deep(100)).is_ok());
        assert!(read::<Value>(&deep(100_000)).is_err());
        assert!(read::<serde::de::IgnoredAny>(&deep(100_000)).is_err());
    }
}

/// A number that does not fit, a fraction where a whole number is asked for, a name twice.
#[test]
fn what_does_not_fit_is_not_read() {
    assert!(read::<u8>("256").is_err());
    assert!(read::<u8>("-1").is_err());
    assert!(read::<i64>("9223372036854775808").is_err());
    assert!(read::<i64>("1.0").is_err());
    assert!(read::<i64>("01").is_err());
    assert!(read::<Wrapped>("1").is_err());
    assert!(read::<Kind>("\"One\"").is_err());
    // A variant is told by its name, never by its place.
    assert!(read::<Kind>("0").is_err());
    assert!(read::<Kind>("{1:5}").is_err());
    assert!(read::<Kind>("{0:null}").is_err());
    assert!(read::<f64>("1e999").is_err());
    assert!(read::<Kind>("{\"Plain\":1}").is_err());
    assert!(read::<Kind>("{\"One\":1,\"Two\":[1,true]}").is_err());
    let twice = r#"{"a":null,"a":null,"b":[]}"#;
    assert!(read::<Kind>(&format!("{{\"Named\":{twice}}}")).is_err());
    assert!(serde_json::from_str::<Kind>(&format!("{{\"Named\":{twice}}}")).is_err());
    assert_eq!(read::<f64>("24.5").unwrap(), 24.5);
    assert_eq!(read::<f32>("24.5").unwrap(), 24.5);
    assert_eq!(
        write(&BTreeMap::from([((1, 2), 3)])),
        Err(penlight::json::Unwritable)
    );
}

/// What is not known is passed over, and what is missing is none.
#[test]
fn unknown_and_missing_fields() {
    let text = r#"{"Named":{"new":{"x":[1.5,"]",{}]},"b":[1]}}"#;
    let kind = Kind::Named {
        a: None,
        b: vec![1],
    };
    assert_eq!(read::<Kind>(text).unwrap(), kind);
    assert_eq!(serde_json::from_str::<Kind>(text).unwrap(), kind);
}
