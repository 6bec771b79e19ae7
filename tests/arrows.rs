//! The house keeps its one-way arrows, between its parts, between the rooms of `clinical`, and
//! between files: none leads round in a circle. Only `browser` touches the web platform, and `draw`
//! the document; only they and `ui` know of signals, and the pure parts read no clock.
//!
//! Read from the source text, comments and strings left out.

#![allow(clippy::unwrap_used)]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Most lines a file has.
const MOST_LINES: usize = 700;

/// The parts of the house and the rooms of `clinical`, each with those it may use. A path belongs to
/// the longest of them it begins with.
const ROOMS: [(&str, &[&str]); 12] = [
    ("measure", &[]),
    ("clinical::knowledge", &["measure"]),
    ("clinical::findings", &["clinical::knowledge", "measure"]),
    (
        "clinical::tasks",
        &["clinical::findings", "clinical::knowledge", "measure"],
    ),
    (
        "clinical::decision",
        &[
            "clinical::tasks",
            "clinical::findings",
            "clinical::knowledge",
            "measure",
        ],
    ),
    // The mod file that names the rooms.
    ("clinical", &["clinical"]),
    ("record", &["clinical", "measure"]),
    ("wording", &["record", "clinical", "measure"]),
    ("handover", &["wording", "record", "clinical", "measure"]),
    (
        "browser",
        &["handover", "wording", "record", "clinical", "measure"],
    ),
    ("draw", &[]),
    (
        "ui",
        &[
            "draw", "browser", "handover", "wording", "record", "clinical", "measure",
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

/// A path as it stands in the source: its names, in order.
type Names = Vec<String>;

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

/// Every path of the source, those of a tree of `use` each by itself, with whether it is handed on
/// by `pub use`, and under which name.
fn paths(tokens: &[String]) -> Vec<(Names, Option<String>)> {
    let is = |i: usize, word: &str| tokens.get(i).is_some_and(|t| t == word);
    let is_word = |i: usize| {
        tokens
            .get(i)
            .is_some_and(|t| t.starts_with(|c: char| c.is_alphabetic() || c == '_'))
    };
    let joins = |i: usize| is(i, ":") && is(i + 1, ":");
    // A tree from `i` on; gives back where it ends.
    fn tree(
        i: usize,
        before: &Names,
        tokens: &[String],
        all: &mut Vec<(Names, Option<String>)>,
        public: bool,
    ) -> usize {
        let is = |i: usize, word: &str| tokens.get(i).is_some_and(|t| t == word);
        let mut i = i;
        let mut names = before.clone();
        loop {
            if is(i, "{") {
                i += 1;
                while !is(i, "}") && i < tokens.len() {
                    i = tree(i, &names, tokens, all, public);
                    if is(i, ",") {
                        i += 1;
                    }
                }
                return i + 1;
            }
            let Some(word) = tokens.get(i) else { return i };
            if word == ":" {
                i += 1;
                continue;
            }
            names.push(word.clone());
            i += 1;
            if is(i, ":") && is(i + 1, ":") {
                i += 2;
                continue;
            }
            let mut called = names.last().cloned();
            if is(i, "as") {
                called = tokens.get(i + 1).cloned();
                i += 2;
            }
            if names.last().is_some_and(|n| n == "self") && names.len() > 1 {
                names.pop();
            }
            all.push((names, called.filter(|_| public)));
            return i;
        }
    }
    let mut all = Vec::new();
    let mut i = 0;
    while i < tokens.len() {
        if is(i, "use") {
            let public = i > 0 && (is(i - 1, "pub") || is(i - 1, "}"));
            i = tree(i + 1, &Vec::new(), tokens, &mut all, public);
            continue;
        }
        let begins = is_word(i) && !(i > 1 && joins(i - 2));
        // Who may see something is no use of it.
        let sees = is(i, "super") && i > 1 && is(i - 1, "(") && is(i - 2, "pub");
        if begins && !sees && (joins(i + 1) || ["crate", "super"].contains(&tokens[i].as_str())) {
            let mut names = vec![tokens[i].clone()];
            let mut at = i + 1;
            while joins(at) && is_word(at + 2) {
                names.push(tokens[at + 2].clone());
                at += 3;
            }
            all.push((names, None));
            i = at;
            continue;
        }
        i += 1;
    }
    all
}

/// The module of a file, its path given from the root with `/`: "clinical::tasks::water".
fn module(path: &str) -> String {
    let path = path.trim_start_matches("src/").trim_end_matches(".rs");
    let path = path.trim_end_matches("/mod");
    match path {
        "lib" | "main" => String::new(),
        path => path.replace('/', "::"),
    }
}

/// A path from the root of the crate; none where it leads out of it.
fn from_root(names: &Names, of: &str) -> Option<Names> {
    let mut base: Names = of.split("::").map(str::to_owned).collect();
    base.retain(|name| !name.is_empty());
    let mut names = names.iter();
    match names.next()?.as_str() {
        "crate" => base.clear(),
        "self" => {}
        "super" => {
            base.pop();
        }
        _ => return None,
    }
    for name in names {
        match name.as_str() {
            "super" => {
                base.pop();
            }
            _ => base.push(name.clone()),
        }
    }
    Some(base)
}

/// The part or room that a path from the root lies in.
fn room(path: &str) -> Option<&'static (&'static str, &'static [&'static str])> {
    let within = |room: &str| path == room || path.starts_with(&format!("{room}::"));
    let rooms = ROOMS.iter().filter(|(room, _)| within(room));
    rooms.max_by_key(|(room, _)| room.len())
}

/// A file without the tests that stand at its end: these may reach for anything.
fn product(source: &str) -> &str {
    let end = source
        .find("#[cfg(test)]\nmod tests")
        .unwrap_or(source.len());
    &source[..end]
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
    let tokens = tokens(product(source));
    let paths = paths(&tokens);
    let of = module(path);
    let part = path.split('/').nth(1).unwrap_or_default();
    let has = |word: &str| tokens.iter().any(|t| t == word);

    if let Some((here, may)) = room(&of) {
        for names in paths.iter().filter_map(|(names, _)| from_root(names, &of)) {
            let to = names.join("::");
            if to == "*" {
                faults.push(format!("{path}: {here} uses all of the crate"));
            }
            let Some((there, _)) = room(&to) else {
                continue;
            };
            let allowed = |may: &&str| there == may || there.starts_with(&format!("{may}::"));
            if there != here && !may.iter().any(allowed) {
                faults.push(format!("{path}: {here} uses {to}"));
            }
        }
    }
    let outside = |name: &'static str| paths.iter().filter(move |(p, _)| p[0] == name);
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
        if outside("std").any(|(p, _)| p.get(1).is_some_and(|n| n == "time")) {
            faults.push(format!("{path}: {part} is pure and uses std::time"));
        }
    }
    match part {
        "browser" | "draw" => {}
        "ui" if has("web_sys") => {
            let allowed = |p: &Names| p.get(1).is_some_and(|n| EVENT_TYPES.contains(&n.as_str()));
            let named = tokens.iter().filter(|t| *t == "web_sys").count();
            let trees = outside("web_sys").count().max(1);
            if !outside("web_sys").all(|(p, _)| allowed(p)) || named > trees {
                faults.push(format!("{path}: ui uses more of web_sys than its events"));
            } else if outside("web_sys").next().is_none() {
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

/// Every file under `src`, its path from the root with `/`, and its text.
fn sources() -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let path = |file: &Path| {
        let path = file.strip_prefix(root).unwrap().to_str().unwrap();
        path.replace('\\', "/")
    };
    let text = |file: &Path| String::from_utf8_lossy(&fs::read(file).unwrap()).into_owned();
    let files = files(&root.join("src"));
    files.iter().map(|f| (path(f), text(f))).collect()
}

#[test]
fn the_source_tree_keeps_its_arrows() {
    let sources = sources();
    // An empty tree keeps every rule.
    for part in ["measure", "clinical", "record"] {
        let folder = format!("src/{part}/");
        let any = sources.iter().any(|(path, _)| path.starts_with(&folder));
        assert!(any, "nothing read in {folder}");
    }
    let wrong: Vec<String> = sources
        .iter()
        .flat_map(|(path, source)| faults(path, source))
        .collect();
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// Which file each file takes something from. A name that a mod file hands on leads to where it was
/// made; what a file declares with `mod` is no arrow.
fn arrows(sources: &[(String, String)]) -> BTreeMap<String, BTreeSet<String>> {
    let rust: BTreeMap<String, Vec<(Names, Option<String>)>> = sources
        .iter()
        .filter(|(path, _)| path.ends_with(".rs"))
        .map(|(path, source)| (module(path), paths(&tokens(product(source)))))
        .collect();
    let mut handed: BTreeMap<String, String> = BTreeMap::new();
    for (of, paths) in &rust {
        for (names, called) in paths {
            let Some(called) = called else { continue };
            let own = [vec!["self".to_owned()], names.clone()].concat();
            let to = from_root(names, of).or_else(|| from_root(&own, of));
            handed.extend(to.map(|to| (format!("{of}::{called}"), to.join("::"))));
        }
    }
    let file_of = |mut path: String| {
        for _ in 0..8 {
            // The longest beginning that is handed on is what it stands for.
            // Where a file has that name too, what stands in it is the file's.
            let within =
                |key: &str| path.starts_with(&format!("{key}::")) && !rust.contains_key(key);
            let begins = |key: &str| path == key || within(key);
            let Some((key, to)) = handed
                .iter()
                .filter(|(k, _)| begins(k))
                .max_by_key(|(k, _)| k.len())
            else {
                break;
            };
            path = format!("{to}{}", &path[key.len()..]);
        }
        while !rust.contains_key(&path) {
            path = path.rsplit_once("::")?.0.to_owned();
        }
        Some(path)
    };
    let mut arrows = BTreeMap::new();
    for (of, paths) in &rust {
        let to: BTreeSet<String> = paths
            .iter()
            .filter(|(_, called)| called.is_none())
            .filter_map(|(names, _)| {
                // A mod file names its own parts without a word before them.
                let own = [of.split("::").map(str::to_owned).collect(), names.clone()].concat();
                let is_part = rust.contains_key(&own[..own.len() - names.len() + 1].join("::"));
                from_root(names, of).or_else(|| (is_part && !of.is_empty()).then_some(own))
            })
            .filter_map(|names| file_of(names.join("::")))
            .filter(|to| to != of && !to.is_empty())
            .collect();
        arrows.insert(of.clone(), to);
    }
    arrows
}

/// Files that lead round to themselves, by the ways between them.
fn circles(arrows: &BTreeMap<String, BTreeSet<String>>) -> Vec<Vec<String>> {
    let reach = |from: &String| {
        let mut seen = BTreeSet::new();
        let mut open = vec![from];
        while let Some(at) = open.pop() {
            for to in arrows.get(at).into_iter().flatten() {
                if seen.insert(to.clone()) {
                    open.push(to);
                }
            }
        }
        seen
    };
    let all: BTreeMap<&String, BTreeSet<String>> = arrows.keys().map(|f| (f, reach(f))).collect();
    let mut circles: Vec<Vec<String>> = Vec::new();
    for (file, seen) in &all {
        if !seen.contains(*file) || circles.iter().any(|c| c.contains(file)) {
            continue;
        }
        let back = |to: &&String| all.get(to).is_some_and(|seen| seen.contains(*file));
        circles.push(seen.iter().filter(back).cloned().collect());
    }
    circles
}

#[test]
fn no_file_leads_round_to_itself() {
    let arrows = arrows(&sources());
    assert!(arrows.values().map(BTreeSet::len).sum::<usize>() > 200);
    let mut told = Vec::new();
    for circle in circles(&arrows) {
        told.push(format!("a circle of {} files:", circle.len()));
        for file in &circle {
            let to = arrows[file].iter().filter(|to| circle.contains(to));
            let to: Vec<&str> = to.map(String::as_str).collect();
            told.push(format!("  {file} -> {}", to.join(", ")));
        }
    }
    assert!(told.is_empty(), "\n{}", told.join("\n"));
}

// The checker itself.

#[test]
fn finds_a_circle_and_no_other() {
    let circle = |files: &[(&str, &str)]| {
        let own = |(path, source): &(&str, &str)| ((*path).to_owned(), (*source).to_owned());
        circles(&arrows(&files.iter().map(own).collect::<Vec<_>>()))
    };
    let a = ("src/record/a.rs", "use crate::record::b::B; pub struct A;");
    let b = ("src/record/b.rs", "pub struct B; fn f() { super::a::A; }");
    assert_eq!(circle(&[a, b]), [["record::a", "record::b"]]);
    let b = ("src/record/b.rs", "pub struct B;");
    assert!(circle(&[a, b]).is_empty());
    // Through a mod file that hands names on, as straight.
    let hands = (
        "src/record/mod.rs",
        "mod a; mod b; pub use a::A; pub use b::B;",
    );
    let a = ("src/record/a.rs", "use crate::record::B; pub struct A;");
    assert!(circle(&[hands, a, b]).is_empty());
    let b = ("src/record/b.rs", "use super::A; pub struct B;");
    assert_eq!(circle(&[hands, a, b]), [["record::a", "record::b"]]);
}

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
    bad(
        "src/measure/time.rs",
        "use crate::clinical::findings::flag::Flag;",
    );
    bad(
        "src/clinical/findings/gate.rs",
        "use crate::record::visit::Visit;",
    );
    bad("src/record/head.rs", "use crate::handover::text;");
    bad(
        "src/handover/text.rs",
        "fn f() { crate::browser::clock::now(); }",
    );
    bad("src/browser/store.rs", "use crate::ui::Page;");
    bad(
        "src/clinical/findings/gate.rs",
        "use crate::{measure::time::Millis, record::visit};",
    );
    bad(
        "src/clinical/findings/gate.rs",
        "use crate::{\n    measure::{time, units},\n    ui,\n};",
    );
    bad(
        "src/clinical/findings/gate.rs",
        "use crate :: record :: visit;",
    );
    bad("src/clinical/findings/gate.rs", "use crate::*;");
    bad(
        "src/clinical/findings/gate.rs",
        "macro_rules! m { () => { $crate::record::x() } }",
    );
    bad(
        "src/clinical/findings/gate.rs",
        "pub(in crate::record) fn f() {}",
    );
    bad("src/clinical/mod.rs", "use super::record;");
    bad("src/clinical/findings/gate.rs", "use super::super::record;");
    bad(
        "src/clinical/tasks/water.rs",
        "use super::super::super::{measure::time, record};",
    );

    good(
        "src/clinical/findings/gate.rs",
        "use crate::{clinical::knowledge::rule, measure::time::Millis};",
    );
    good(
        "src/clinical/findings/gate.rs",
        "pub(crate) fn f() {} use super::record;",
    );
    good("src/clinical/tasks/water.rs", "use super::super::findings;");
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
