//! The judgements beside the clinical code each name the test that holds them: a test that was
//! renamed or taken out must not leave a name behind.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// The text of every file of a kind below a folder of the repository.
fn files(folder: &str, kind: &str) -> Vec<(PathBuf, String)> {
    let mut found = Vec::new();
    let mut folders = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join(folder)];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|e| e == kind) {
                let text = fs::read_to_string(&path).unwrap();
                found.push((path, text));
            }
        }
    }
    found
}

/// What stands between backticks below the explanation at the head of the file.
fn quoted() -> Vec<String> {
    let text = include_str!("../../src/clinical/JUDGEMENTS.md");
    let (_, body) = text.split_once("\n## ").unwrap();
    let parts = body.split('`').skip(1).step_by(2);
    parts.map(str::to_owned).collect()
}

/// Every test, by the name of its file and its own. A folder's `mod.rs` goes by the folder's name.
fn tests() -> BTreeSet<(String, String)> {
    let mut tests = BTreeSet::new();
    for (path, text) in ["src", "tests"].iter().flat_map(|f| files(f, "rs")) {
        let stem = match path.file_stem() {
            Some(stem) if stem == "mod" => path.parent().and_then(Path::file_name),
            stem => stem,
        };
        let file = stem.unwrap().to_str().unwrap();
        let mut before = "";
        for line in text.lines().map(str::trim_start) {
            let name = line.strip_prefix("fn ").and_then(|l| l.split_once('('));
            if let (Some((name, _)), true) = (name, before.starts_with("#[")) {
                tests.insert((file.to_owned(), name.to_owned()));
            }
            before = line;
        }
    }
    tests
}

#[test]
fn every_native_test_named_there_exists() {
    let tests = tests();
    let quoted = quoted();
    let named: Vec<_> = quoted.iter().filter_map(|n| n.split_once("::")).collect();
    assert!(named.len() > 100, "only {} names were read", named.len());
    for (file, test) in named {
        let there = tests.contains(&(file.to_owned(), test.to_owned()));
        assert!(there, "there is no test {test} in a file {file}.rs");
    }
}

#[test]
fn every_browser_test_named_there_exists() {
    let specs = files("tests/browser", "mjs");
    let quoted = quoted();
    let named: Vec<_> = quoted
        .iter()
        .filter_map(|n| n.split_once(".mjs: "))
        .collect();
    assert!(named.len() > 10, "only {} names were read", named.len());
    for (file, words) in named {
        let mut spec = specs
            .iter()
            .filter(|(path, _)| path.file_stem().is_some_and(|s| s == file));
        assert!(
            spec.any(|(_, text)| text.contains(words)),
            "{file}: {words}"
        );
    }
}
