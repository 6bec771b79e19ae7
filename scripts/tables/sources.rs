//! `sources.csv`: key, kind, mark, population, citation.

use std::fmt::Write;

use crate::sheet::{self, Fault, Line, Sheet, constant, gather, is_key};

/// The columns, in order.
pub const COLUMNS: &[&str] = &["key", "kind", "mark", "population", "citation"];

/// The marks a source may have.
pub const MARKS: &[&str] = &["published", "secondary", "common practice", "from memory"];

/// A source, checked.
#[derive(Clone, Debug)]
pub struct Source {
    /// Its key.
    pub key: String,
    /// Study, guideline, teaching page.
    pub kind: String,
    /// One of [`MARKS`].
    pub mark: String,
    /// Who was studied.
    pub population: String,
    /// The citation as far as it is known.
    pub citation: String,
}

/// Checks a table of sources: no cell is empty, no key stands twice.
pub fn check(sheet: &Sheet) -> Result<Vec<Source>, Vec<Fault>> {
    sheet.has_columns(COLUMNS).map_err(|fault| vec![fault])?;
    let sources = gather(sheet.lines.iter().map(source))?;
    gather(sheet.lines.iter().enumerate().map(|(i, line)| {
        let first = sources
            .iter()
            .position(|s| constant(&s.key) == constant(line.cell("key")));
        match first {
            Some(first) if first < i => Err(line.fault(format!(
                "the key {} stands in line {} already",
                line.cell("key"),
                sheet.lines[first].number
            ))),
            _ => Ok(()),
        }
    }))?;
    Ok(sources)
}

fn source(line: &Line) -> Result<Source, Fault> {
    for column in COLUMNS {
        if line.cell(column).is_empty() {
            return Err(line.fault(format!("{column} is empty")));
        }
    }
    let key = line.cell("key").to_owned();
    if !is_key(&key) {
        return Err(line.fault(format!("\"{key}\" is no key: letters, digits and - only")));
    }
    Ok(Source {
        key,
        kind: line.cell("kind").to_owned(),
        mark: sheet::one_of(line, "mark", MARKS)?.to_owned(),
        population: line.cell("population").to_owned(),
        citation: line.cell("citation").to_owned(),
    })
}

/// The source with this key, or a fault of `line`.
pub fn find<'a>(sources: &'a [Source], key: &str, line: &Line) -> Result<&'a Source, Fault> {
    sources
        .iter()
        .find(|s| s.key == key)
        .ok_or_else(|| line.fault(format!("the source {key} is not in sources.csv")))
}

/// The variant of `Mark` for a mark's words.
pub fn mark_variant(mark: &str) -> &'static str {
    match mark {
        "published" => "Published",
        "secondary" => "Secondary",
        "derived" => "Derived",
        "common practice" => "CommonPractice",
        _ => "FromMemory",
    }
}

/// The sources as Rust.
pub fn rust(sources: &[Source]) -> String {
    let mut out = String::new();
    for s in sources {
        let _ = writeln!(
            out,
            "#[doc = {:?}]\npub static {}: Source = Source {{ key: {:?}, kind: {:?}, citation: {:?}, \
             population: {:?}, mark: Mark::{} }};",
            s.citation,
            constant(&s.key),
            s.key,
            s.kind,
            s.citation,
            s.population,
            mark_variant(&s.mark),
        );
    }
    let all: Vec<_> = sources
        .iter()
        .map(|s| format!("&{}", constant(&s.key)))
        .collect();
    let _ = writeln!(
        out,
        "/// Every source, in the order of the table.\npub static ALL: &[&Source] = &[{}];",
        all.join(", ")
    );
    out
}
