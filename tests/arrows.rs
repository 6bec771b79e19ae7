//! The house keeps its one-way arrows: `ui -> draw, browser, handover, record, clinical, measure`;
//! `handover -> record, clinical, measure`; `record -> clinical, measure`;
//! `clinical -> measure`. Only `browser` touches the web platform, and `draw` the document;
//! only they and `ui` know of signals, and the pure parts read no clock.
//!
//! Read from the source text, comments and strings left out.

#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::{Path, PathBuf};

/// Most lines a file has.
const MOST_LINES: usize = 700;

/// The parts of the house, each with those it may use.
const PARTS: [(&str, &[&str]); 8] = [
    ("measure", &["measure"]),
    ("clinical", &["clinical", "measure"]),
    ("record", &["record", "clinical", "measure"]),
    ("wording", &["wording", "record", "clinical", "measure"]),
    (
        "handover",
        &["handover", "wording", "record", "clinical", "measure"],
    ),
    (
        "browser",
        &["browser", "handover", "record", "clinical", "measure"],
    ),
    ("draw", &["draw"]),
    (
        "ui",
        &[
            "ui", "draw", "browser", "handover", "record", "clinical", "measure",
        ],
    ),
];

/// Parts that compile without a browser and read no clock.
const PURE: [&str; 5] = ["measure", "clinical", "record", "wording", "handover"];

/// What pages may name of the web platform: the events they are handed.
const EVENT_TYPES: [&str; 7] = [
    "PointerEvent",
    "KeyboardEvent",
    "Event",
    "MouseEvent",
    "SubmitEvent",
    "HtmlInputElement",
    "HtmlTextAreaElement",
];

/// The words and punctuation of Rust source, without comments, strings and characters.
fn tokens(source: &str) -> Vec<String> {
    let chars: Vec<char> = source.chars().collect();
    let mut tokens = Vec::new();
    let mut i = 0;
    let next = |i: usize| chars.get(i + 1).copied().unwrap_or(' ');
    while i < chars.len() {
        let c = chars[i];
        if c == '/' && next(i) == '/' {
            while i < chars.len() && chars[i] != '\n' {
                i += 1;
            }
        } else if c == '/' && next(i) == '*' {
            let mut depth = 0;
            loop {
                match (chars.get(i), next(i)) {
                    (None, _) => break,
                    (Some('/'), '*') => {
                        depth += 1;
                        i += 2;
                    }
                    (Some('*'), '/') => {
                        depth -= 1;
                        i += 2;
                        if depth == 0 {
                            break;
                        }
                    }
                    _ => i += 1,
                }
            }
        } else if c == '"' {
            i += 1;
            while i < chars.len() && chars[i] != '"' {
                i += if chars[i] == '\\' { 2 } else { 1 };
            }
            i += 1;
        } else if c == '\'' {
            // A character, or else a lifetime, whose name then reads as a word.
            if next(i) == '\\' {
                i += 3;
                while i < chars.len() && chars[i] != '\'' {
                    i += 1;
                }
                i += 1;
            } else if chars.get(i + 2) == Some(&'\'') {
                i += 3;
            } else {
                i += 1;
            }
        } else if c.is_alphanumeric() || c == '_' {
            let start = i;
            while i < chars.len() && (chars[i].is_alphanumeric() || chars[i] == '_') {
                i += 1;
            }
            let word: String = chars[start..i].iter().collect();
            let hashes = chars[i..].iter().take_while(|c| **c == '#').count();
            let raw = matches!(word.as_str(), "r" | "br" | "cr");
            if raw && chars.get(i + hashes) == Some(&'"') {
                i += hashes + 1;
                let end: String = std::iter::once('"')
                    .chain("#".repeat(hashes).chars())
                    .collect();
                let rest: String = chars[i..].iter().collect();
                let length = rest.find(&end).map_or(rest.len(), |at| at + end.len());
                i += rest[..length].chars().count();
            } else if raw && hashes == 1 {
                // A raw word such as r#type: the word follows.
                i += 1;
            } else {
                tokens.push(word);
            }
        } else {
            if !c.is_whitespace() {
                tokens.push(c.to_string());
            }
            i += 1;
        }
    }
    tokens
}

/// What follows a path's `::` at `at`: one name, or the first names of every branch of a group.
fn branches(tokens: &[String], at: usize) -> Vec<&str> {
    let word = |i: usize| tokens.get(i).map_or("", String::as_str);
    if word(at) != "{" {
        return vec![word(at)];
    }
    let mut names = Vec::new();
    let (mut depth, mut i) = (1, at + 1);
    let mut first = true;
    while depth > 0 && i < tokens.len() {
        match word(i) {
            "{" => depth += 1,
            "}" => depth -= 1,
            "," if depth == 1 => first = true,
            // A leading `::` of a branch is not its name.
            ":" => {}
            name => {
                if first {
                    names.push(name);
                    first = false;
                }
            }
        }
        i += 1;
    }
    names
}

/// The names used directly under the path `prefix`, such as `crate` or `std`.
fn under<'a>(tokens: &'a [String], prefix: &str) -> Vec<&'a str> {
    let mut found = Vec::new();
    for (i, token) in tokens.iter().enumerate() {
        if token == prefix {
            if tokens[i + 1..].starts_with(&[":".to_owned(), ":".to_owned()]) {
                found.extend(branches(tokens, i + 3));
            } else if i > 0 && tokens[i - 1] == "use" {
                // `use web_sys;` or `use web_sys as w;`: all of it.
                found.push("*");
            }
        }
    }
    found
}

/// The names reached by as many `super::` as lead from `path` up to the root of the crate.
fn above<'a>(tokens: &'a [String], path: &str) -> Vec<&'a str> {
    let modules = path.trim_start_matches("src/").trim_end_matches(".rs");
    let depth = modules.trim_end_matches("/mod").split('/').count();
    let mut found = Vec::new();
    let mut i = 0;
    while i < tokens.len() {
        let mut ups = 0;
        while tokens.get(i).is_some_and(|t| t == "super")
            && tokens[i + 1..].starts_with(&[":".to_owned(), ":".to_owned()])
        {
            ups += 1;
            i += 3;
        }
        if ups >= depth {
            found.extend(branches(tokens, i));
        }
        i += 1;
    }
    found
}

/// What is wrong in one file, its path given from the root with `/`.
fn faults(path: &str, source: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let lines = source.lines().count();
    if lines > MOST_LINES {
        faults.push(format!("{path}: {lines} lines, at most {MOST_LINES}"));
    }
    if !path.ends_with(".rs") {
        return faults;
    }
    let tokens = tokens(source);
    let part = path.split('/').nth(1).unwrap_or_default();
    let has = |word: &str| tokens.iter().any(|t| t == word);

    if let Some((_, may)) = PARTS.iter().find(|(name, _)| *name == part) {
        for name in under(&tokens, "crate")
            .into_iter()
            .chain(above(&tokens, path))
        {
            let is_part = PARTS.iter().any(|(part, _)| *part == name);
            if (is_part || name == "*" || name == "self") && !may.contains(&name) {
                faults.push(format!("{path}: {part} uses crate::{name}"));
            }
        }
    }
    if PURE.contains(&part) {
        for token in &tokens {
            let platform = ["web_sys", "js_sys", "leptos", "serde_wasm_bindgen"];
            let clock = ["SystemTime", "Instant"];
            if platform.contains(&token.as_str())
                || clock.contains(&token.as_str())
                || token.starts_with("gloo")
                || token.starts_with("wasm_bindgen")
                || token.starts_with("leptos_")
            {
                faults.push(format!("{path}: {part} is pure and uses {token}"));
            }
        }
        if under(&tokens, "std").contains(&"time") {
            faults.push(format!("{path}: {part} is pure and uses std::time"));
        }
    }
    match part {
        "browser" | "draw" => {}
        "ui" => {
            let named = tokens.iter().filter(|t| *t == "web_sys").count();
            let paths = under(&tokens, "web_sys");
            let odd = paths.iter().find(|name| !EVENT_TYPES.contains(name));
            if let Some(name) = odd {
                faults.push(format!("{path}: ui uses web_sys::{name}"));
            } else if named > 0 && paths.is_empty() {
                faults.push(format!("{path}: ui uses web_sys"));
            }
        }
        _ if has("web_sys") => {
            faults.push(format!("{path}: web_sys outside src/browser and src/draw"))
        }
        _ => {}
    }
    if has("leptos") && !["ui", "draw"].contains(&part) && path != "src/main.rs" {
        faults.push(format!(
            "{path}: leptos outside src/ui, src/draw and src/main.rs"
        ));
    }
    faults
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(files(&path));
        } else {
            found.push(path);
        }
    }
    found.sort();
    found
}

#[test]
fn the_source_tree_keeps_its_arrows() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut read = Vec::new();
    let mut wrong = Vec::new();
    for file in files(&root.join("src")) {
        let path = file
            .strip_prefix(root)
            .unwrap()
            .to_str()
            .unwrap()
            .replace('\\', "/");
        let source = String::from_utf8_lossy(&fs::read(&file).unwrap()).into_owned();
        wrong.extend(faults(&path, &source));
        read.push(path);
    }
    // An empty tree keeps every rule.
    for part in ["measure", "clinical", "record"] {
        let folder = format!("src/{part}/");
        assert!(
            read.iter().any(|path| path.starts_with(&folder)),
            "nothing read in {folder}"
        );
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

// The checker itself.

#[track_caller]
fn bad(path: &str, source: &str) {
    assert!(
        !faults(path, source).is_empty(),
        "not found in {path}: {source}"
    );
}

#[track_caller]
fn good(path: &str, source: &str) {
    assert_eq!(faults(path, source), Vec::<String>::new());
}

#[test]
fn finds_an_arrow_that_runs_backwards() {
    bad("src/measure/time.rs", "use crate::clinical::flag::Flag;");
    bad("src/clinical/hold.rs", "use crate::record::visit::Visit;");
    bad("src/record/head.rs", "use crate::handover::text;");
    bad(
        "src/handover/text.rs",
        "fn f() { crate::browser::clock::now(); }",
    );
    bad("src/browser/store.rs", "use crate::ui::Page;");
    bad(
        "src/clinical/hold.rs",
        "use crate::{measure::time::Millis, record::visit};",
    );
    bad(
        "src/clinical/hold.rs",
        "use crate::{\n    measure::{time, units},\n    ui,\n};",
    );
    bad("src/clinical/hold.rs", "use crate :: record :: visit;");
    bad("src/clinical/hold.rs", "use crate::*;");
    bad(
        "src/clinical/hold.rs",
        "macro_rules! m { () => { $crate::record::x() } }",
    );
    bad("src/clinical/hold.rs", "pub(in crate::record) fn f() {}");
    bad("src/clinical/mod.rs", "use super::record;");
    bad("src/clinical/hold.rs", "use super::super::record;");
    bad(
        "src/clinical/tasks/water.rs",
        "use super::super::super::{measure::time, record};",
    );

    good(
        "src/clinical/hold.rs",
        "use crate::{clinical::flag, measure::time::Millis};",
    );
    good(
        "src/clinical/hold.rs",
        "pub(crate) fn f() {} use super::record;",
    );
    good("src/clinical/tasks/water.rs", "use super::super::record;");
    good(
        "src/ui/page.rs",
        "use crate::{browser::clock, record::visit::Visit};",
    );
    good("src/lib.rs", "pub mod ui; use crate::ui::Page;");
}

#[test]
fn finds_the_platform_and_the_clock_in_the_pure_parts() {
    for part in PURE {
        let path = format!("src/{part}/deep/in.rs");
        for source in [
            "use web_sys::window;",
            "use js_sys::Date;",
            "use leptos::prelude::*;",
            "use wasm_bindgen::JsValue;",
            "use wasm_bindgen_futures::spawn_local;",
            "use gloo_timers::future::sleep;",
            "use std::time::Duration;",
            "use std::{fmt, time};",
            "let t = std::time::Instant::now();",
            "fn f(t: SystemTime) {}",
        ] {
            bad(&path, source);
        }
        good(
            &path,
            "use std::fmt; use core::cell::Cell; struct InstantNoodles;",
        );
    }
}

#[test]
fn finds_the_platform_in_the_pages() {
    bad("src/ui/page.rs", "use web_sys::Storage;");
    bad("src/ui/page.rs", "use web_sys::{PointerEvent, window};");
    bad("src/ui/page.rs", "use web_sys::*;");
    bad("src/ui/page.rs", "use web_sys as w;");
    bad("src/ui/page.rs", "use leptos::web_sys;");
    bad("src/ui/page.rs", "leptos::web_sys::window();");
    bad("src/main.rs", "web_sys::window();");
    good("src/ui/page.rs", "fn f(e: web_sys::PointerEvent) {}");
    good(
        "src/ui/page.rs",
        "use web_sys::{Event, HtmlInputElement, KeyboardEvent};",
    );
    good("src/browser/store.rs", "use web_sys::{IdbFactory, window};");
}

#[test]
fn finds_leptos_where_nothing_is_drawn() {
    bad("src/browser/clock.rs", "use leptos::prelude::*;");
    bad("src/lib.rs", "use leptos::prelude::*;");
    good("src/main.rs", "use leptos::prelude::*;");
    good("src/ui/page.rs", "use leptos::prelude::*;");
}

#[test]
fn finds_a_file_that_is_too_long() {
    good("src/ui/page.rs", &"//\n".repeat(MOST_LINES));
    bad("src/ui/page.rs", &"//\n".repeat(MOST_LINES + 1));
    bad(
        "src/clinical/norms/long.csv",
        &"1,2\n".repeat(MOST_LINES + 1),
    );
}

#[test]
fn reads_past_comments_strings_and_characters() {
    good(
        "src/measure/time.rs",
        "// use web_sys::window;\n/// Instant\n//! SystemTime",
    );
    good(
        "src/measure/time.rs",
        "/* web_sys /* nested Instant */ std::time */ fn f() {}",
    );
    good(
        "src/measure/time.rs",
        r##"const A: &str = "std::time \" Instant"; const B: char = '"';"##,
    );
    good(
        "src/measure/time.rs",
        r##"const A: &str = r#"a " Instant"#; const B: char = '\'';"##,
    );
    good(
        "src/measure/time.rs",
        "fn f<'a>(a: &'a str) -> &'a str { a }",
    );

    bad(
        "src/measure/time.rs",
        "const A: &str = \"//\"; use web_sys::window;",
    );
    bad(
        "src/measure/time.rs",
        "const A: char = '\"'; use web_sys::window; // \"",
    );
    bad(
        "src/measure/time.rs",
        r##"const A: &str = r#"""#; use web_sys::window;"##,
    );
    bad(
        "src/measure/time.rs",
        "fn f<'a>() {} use web_sys::window; // '",
    );
    bad("src/measure/time.rs", "/* */ use web_sys::window;");
    bad(
        "src/measure/time.rs",
        r"const A: char = '\''; use web_sys::window;",
    );
    bad(
        "src/measure/time.rs",
        r"const A: char = '\u{22}'; use web_sys::window;",
    );
}
