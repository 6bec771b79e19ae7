//! `rules.csv`: id, says, looks_at, basis, why, sources.

use std::fmt::Write;

use crate::sheet::{self, Fault, Line, Sheet, constant, gather, is_key};
use crate::sources::{self, Source};

/// The columns, in order.
pub const COLUMNS: &[&str] = &["id", "says", "looks_at", "basis", "why", "sources"];

/// A rule, checked.
#[derive(Clone, Debug)]
pub struct Rule {
    /// Its id, stored with every decision.
    pub id: String,
    /// The rule in plain words.
    pub says: String,
    /// What it looks at.
    pub looks_at: String,
    /// Whether it is published; else local policy.
    pub published: bool,
    /// Why, where it is local policy.
    pub why: String,
    /// The keys of its sources.
    pub sources: Vec<String>,
}

/// Checks a table of rules: every rule is published by a source that was seen, or says that it is
/// local policy and why.
pub fn check(sheet: &Sheet, sources: &[Source]) -> Result<Vec<Rule>, Vec<Fault>> {
    sheet.has_columns(COLUMNS).map_err(|fault| vec![fault])?;
    let rules = gather(sheet.lines.iter().map(|line| rule(line, sources)))?;
    gather(sheet.lines.iter().enumerate().map(|(i, line)| {
        let first = rules
            .iter()
            .position(|r| constant(&r.id) == constant(line.cell("id")));
        match first {
            Some(first) if first < i => Err(line.fault(format!(
                "the id {} stands in line {} already",
                line.cell("id"),
                sheet.lines[first].number
            ))),
            _ => Ok(()),
        }
    }))?;
    Ok(rules)
}

fn rule(line: &Line, known: &[Source]) -> Result<Rule, Fault> {
    for column in ["id", "says", "looks_at"] {
        if line.cell(column).is_empty() {
            return Err(line.fault(format!("{column} is empty")));
        }
    }
    let id = line.cell("id").to_owned();
    if !is_key(&id) {
        return Err(line.fault(format!("\"{id}\" is no id: letters, digits, - and . only")));
    }
    let published = sheet::one_of(line, "basis", &["published", "local policy"])? == "published";
    let mut sources = Vec::new();
    for key in line.cell("sources").split_whitespace() {
        let source = sources::find(known, key, line)?;
        if source.mark == "from memory" {
            return Err(line.fault(format!("{key} is from memory: no rule may rest on it")));
        }
        if published && source.mark == "common practice" {
            return Err(line.fault(format!("{key} is common practice, not a publication")));
        }
        sources.push(key.to_owned());
    }
    if published && sources.is_empty() {
        return Err(line.fault("a published rule names its source"));
    }
    if published == line.filled("why").is_some() {
        return Err(line.fault("a local policy says why, a published rule has its source for it"));
    }
    Ok(Rule {
        id,
        says: line.cell("says").to_owned(),
        looks_at: line.cell("looks_at").to_owned(),
        published,
        why: line.cell("why").to_owned(),
        sources,
    })
}

/// The rules as Rust.
pub fn rust(rules: &[Rule]) -> String {
    let mut out = String::new();
    for r in rules {
        let keys: Vec<_> = r
            .sources
            .iter()
            .map(|key| format!("&source::{}", constant(key)))
            .collect();
        let keys = keys.join(", ");
        let basis = if r.published {
            format!("Published(&[{keys}])")
        } else {
            format!("LocalPolicy {{ why: {:?}, seen: &[{keys}] }}", r.why)
        };
        let _ = writeln!(
            out,
            "#[doc = {:?}]\npub static {}: Rule = Rule {{ id: {:?}, says: {:?}, looks_at: {:?}, \
             basis: Basis::{basis} }};",
            r.says,
            constant(&r.id),
            r.id,
            r.says,
            r.looks_at,
        );
    }
    let all: Vec<_> = rules
        .iter()
        .map(|r| format!("&{}", constant(&r.id)))
        .collect();
    let _ = writeln!(
        out,
        "/// Every rule, in the order of the table.\npub static ALL: &[&Rule] = &[{}];",
        all.join(", ")
    );
    out
}
