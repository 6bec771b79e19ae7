//! `norms/*.csv`: published values, a row each.

use std::fmt::Write;
use std::path::{Path, PathBuf};

use crate::sheet::{self, Fault, Line, Sheet, constant, gather};
use crate::sources::{self, Source, mark_variant};

/// The columns, in order. They are explained in `src/clinical/knowledge/norms/README.md`.
pub const COLUMNS: &[&str] = &[
    "measure",
    "task",
    "method",
    "unit",
    "language",
    "sex",
    "age_from",
    "age_to",
    "age_in",
    "read_from",
    "read_to",
    "mean",
    "sd",
    "p25",
    "p50",
    "p75",
    "low",
    "high",
    "n",
    "population",
    "procedure",
    "source",
    "mark",
    "caveat",
];

/// What is measured: its word, its unit, the variant of `Unit`, and the tasks it goes with.
pub const MEASURES: &[(&str, &str, &str, &[&str])] = &[
    (
        "syllable-time",
        "s",
        "Seconds",
        &["pa", "ta", "ka", "pa-ta-ka"],
    ),
    (
        "syllable-rate",
        "syl/s",
        "SyllablesPerSecond",
        &["pa", "ta", "ka", "pa-ta-ka"],
    ),
    ("longest-sound", "s", "Seconds", &["ah", "s", "z"]),
    ("pitch-range", "ST", "Semitones", &["glide"]),
    ("speaking-pitch", "Hz", "Hertz", &["talk"]),
    (
        "dry-swallows",
        "per 30 s",
        "PerHalfMinute",
        &["swallow-saliva"],
    ),
    ("drinking-rate", "mL/s", "MillilitresPerSecond", &["drink"]),
    ("cracker-bites", "bites", "Bites", &["eat-cracker"]),
    ("cracker-chews", "chews", "Chews", &["eat-cracker"]),
    ("cracker-swallows", "swallows", "Swallows", &["eat-cracker"]),
    ("cracker-time", "s", "Seconds", &["eat-cracker"]),
    ("mouth-opening", "mm", "Millimetres", &["open-mouth"]),
    ("breaths", "/min", "PerMinute", &["breathe"]),
];

/// What a person does.
pub const TASKS: &[(&str, &str)] = &[
    ("pa", "Pa"),
    ("ta", "Ta"),
    ("ka", "Ka"),
    ("pa-ta-ka", "PaTaKa"),
    ("ah", "Ah"),
    ("s", "S"),
    ("z", "Z"),
    ("glide", "Glide"),
    ("talk", "Talk"),
    ("swallow-saliva", "SwallowSaliva"),
    ("drink", "Drink"),
    ("eat-cracker", "EatCracker"),
    ("open-mouth", "OpenMouth"),
    ("breathe", "Breathe"),
];

/// How it was measured. Values of different methods are never compared without saying so.
pub const METHODS: &[(&str, &str)] = &[
    ("time-20", "Time20"),
    ("time-10", "Time10"),
    ("count-5s", "Count5s"),
    ("count-8s", "Count8s"),
    ("count-10s", "Count10s"),
    ("count-15s", "Count15s"),
    ("pooled", "Pooled"),
    ("not-shown", "NotShown"),
    ("three-trials", "ThreeTrials"),
    ("longest", "Longest"),
    ("sung-profile", "SungProfile"),
    ("conversation", "Conversation"),
    ("reading", "Reading"),
    ("count-30s", "Count30s"),
    ("cup-150ml", "Cup150"),
    ("one-cracker", "OneCracker"),
    ("ruler", "Ruler"),
    ("range-table", "RangeTable"),
];

/// The marks a row may have: a figure from memory is no row.
pub const MARKS: &[&str] = &["published", "secondary", "derived"];

/// What stands in `age_in` where the ages of the group were not seen: years for which it is taken.
const NOT_SEEN: &str = "years not seen";

/// Ages of one row, in whole months, both ends included.
type Months = (u32, u32);

/// A row, checked.
#[derive(Clone, Debug)]
pub struct Row {
    line: Line,
    file: String,
    unit: &'static str,
    task: &'static str,
    method: &'static str,
    ages: Months,
    ages_seen: bool,
    read: Option<Months>,
    figures: [(&'static str, Option<f64>); 7],
    n: Option<u32>,
}

/// The tables of a folder.
pub fn files(folder: &Path) -> Result<Vec<PathBuf>, Fault> {
    let fault = |error| Fault::of_file(&folder.to_string_lossy(), error);
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(fault)? {
        let path = entry.map_err(fault)?.path();
        if path.extension().is_some_and(|end| end == "csv") {
            files.push(path);
        }
    }
    files.sort();
    Ok(files)
}

/// Checks the tables: columns, words, units, sources, figures, and that within a method neither
/// the ages of one language nor the ages for which rows are read lie over each other.
pub fn check(sheets: &[Sheet], sources: &[Source]) -> Result<Vec<Row>, Vec<Fault>> {
    let mut rows = Vec::new();
    for sheet in sheets {
        sheet.has_columns(COLUMNS).map_err(|fault| vec![fault])?;
        rows.extend(gather(
            sheet.lines.iter().map(|line| row(sheet, line, sources)),
        )?);
    }
    gather(rows.iter().enumerate().map(|(i, row)| {
        rows[..i]
            .iter()
            .try_for_each(|earlier| overlap(earlier, row))
    }))?;
    Ok(rows)
}

fn row(sheet: &Sheet, line: &Line, known: &[Source]) -> Result<Row, Fault> {
    let measure = line.cell("measure");
    let Some((_, unit_word, unit, tasks)) = MEASURES.iter().find(|(word, ..)| *word == measure)
    else {
        return Err(unknown(line, "measure", MEASURES.iter().map(|m| m.0)));
    };
    if line.cell("unit") != *unit_word {
        return Err(line.fault(format!(
            "unit \"{}\" is not the unit of {measure}, which is {unit_word}",
            line.cell("unit"),
        )));
    }
    if !tasks.contains(&line.cell("task")) {
        return Err(unknown(line, "task", tasks.iter().copied()));
    }
    let task = variant(line, "task", TASKS)?;
    let method = variant(line, "method", METHODS)?;
    if !is_language(line.cell("language")) {
        return Err(line.fault(format!(
            "language \"{}\" is not known; known are -, not shown, and tags such as en or en-US",
            line.cell("language"),
        )));
    }
    sheet::one_of(line, "sex", &["any", "F", "M"])?;
    sheet::one_of(line, "mark", MARKS)?;
    for column in ["population", "procedure"] {
        if line.cell(column).is_empty() {
            return Err(line.fault(format!("{column} is empty")));
        }
    }
    let source = sources::find(known, line.cell("source"), line)?;
    match (source.mark.as_str(), line.cell("mark")) {
        ("published", _) | ("secondary", "secondary" | "derived") => {}
        (source_mark, mark) => {
            return Err(line.fault(format!(
                "a row can't be {mark} where its source {} is {source_mark}",
                source.key
            )));
        }
    }
    let figures = figures(line)?;
    Ok(Row {
        line: line.clone(),
        file: sheet.file.clone(),
        unit,
        task,
        method,
        ages: ages(line, "age_from", "age_to")?
            .ok_or_else(|| line.fault("a row has an age range"))?,
        ages_seen: line.cell("age_in") != NOT_SEEN,
        read: ages(line, "read_from", "read_to")?,
        figures,
        n: line.whole("n")?,
    })
}

/// "-" where it does not matter, "not shown", or a tag: two small letters, and where it says more a
/// "-" and two capitals.
fn is_language(cell: &str) -> bool {
    let letters = |part: &str, is: fn(&u8) -> bool| part.len() == 2 && part.bytes().all(|b| is(&b));
    let (language, region) = match cell.split_once('-') {
        Some((language, region)) => (language, Some(region)),
        None => (cell, None),
    };
    matches!(cell, "-" | "not shown")
        || letters(language, u8::is_ascii_lowercase)
            && region.is_none_or(|region| letters(region, u8::is_ascii_uppercase))
}

fn unknown<'a>(line: &Line, column: &str, known: impl Iterator<Item = &'a str>) -> Fault {
    line.fault(format!(
        "{column} \"{}\" is not known; known are {}",
        line.cell(column),
        known.collect::<Vec<_>>().join(", ")
    ))
}

fn variant(
    line: &Line,
    column: &str,
    known: &'static [(&'static str, &'static str)],
) -> Result<&'static str, Fault> {
    known
        .iter()
        .find(|(word, _)| *word == line.cell(column))
        .map(|(_, variant)| *variant)
        .ok_or_else(|| unknown(line, column, known.iter().map(|k| k.0)))
}

/// The seven figures a row may have, checked against each other.
fn figures(line: &Line) -> Result<[(&'static str, Option<f64>); 7], Fault> {
    let mut figures = ["mean", "sd", "p25", "p50", "p75", "low", "high"].map(|name| (name, None));
    for (name, figure) in &mut figures {
        *figure = line.number(name)?;
        if figure.is_some_and(|f| f <= 0.0) {
            return Err(line.fault(format!("{name} is not above 0")));
        }
    }
    let [mean, sd, p25, p50, p75, low, high] = figures.map(|(_, figure)| figure);
    if [mean, p50, low].iter().all(Option::is_none) {
        return Err(line.fault("a row has a mean, a median (p50) or a range (low, high)"));
    }
    if sd.is_some() && mean.is_none() {
        return Err(line.fault("an SD needs its mean"));
    }
    if sd.is_some() && line.cell("mark") == "derived" {
        return Err(line.fault("an SD is taken only where it was published"));
    }
    if low.is_some() != high.is_some() {
        return Err(line.fault("a range has both ends, low and high"));
    }
    let rising = |parts: &[Option<f64>]| {
        let parts: Vec<f64> = parts.iter().flatten().copied().collect();
        parts.windows(2).all(|w| w[0] <= w[1])
    };
    if !rising(&[p25, p50, p75]) || !rising(&[low, high]) {
        return Err(line.fault("the percentiles or the range fall"));
    }
    Ok(figures)
}

/// Whole months, both ends included: 6 to 6 years is 72 to 83 months.
fn ages(line: &Line, from: &str, to: &str) -> Result<Option<Months>, Fault> {
    let (from_word, to_word) = (line.whole(from)?, line.whole(to)?);
    let (Some(first), Some(last)) = (from_word, to_word) else {
        return match (from_word, to_word) {
            (None, None) => Ok(None),
            _ => Err(line.fault(format!("{from} and {to} go together"))),
        };
    };
    if first > last {
        return Err(line.fault(format!("{from} {first} is above {to} {last}")));
    }
    let months = match sheet::one_of(line, "age_in", &["years", "months", NOT_SEEN])? {
        "months" => (first, last),
        _ => (first * 12, last * 12 + 11),
    };
    if months.1 > 120 * 12 + 11 {
        return Err(line.fault(format!("{to} {last} is above 120 years")));
    }
    Ok(Some(months))
}

fn overlap(a: &Row, b: &Row) -> Result<(), Fault> {
    let sex = |row: &Row| row.line.cell("sex").to_owned();
    let same = a.unit == b.unit && a.task == b.task && sex(a) == sex(b);
    if !same {
        return Ok(());
    }
    let over = |a: Months, b: Months| a.0 <= b.1 && b.0 <= a.1;
    let there = format!("{}:{}", a.file, a.line.number);
    let alike = a.method == b.method && a.line.cell("language") == b.line.cell("language");
    if alike && over(a.ages, b.ages) {
        return Err(b.line.fault(format!("its ages overlap those of {there}")));
    }
    match (a.read, b.read) {
        (Some(x), Some(y)) if a.method == b.method && over(x, y) => Err(b
            .line
            .fault(format!("the ages it is read for overlap those of {there}"))),
        _ => Ok(()),
    }
}

/// The rows as Rust.
pub fn rust(rows: &[Row]) -> String {
    let mut out = String::from(
        "/// Every published value, in the order of the tables.\npub static ROWS: &[Row] = &[\n",
    );
    for row in rows {
        let line = &row.line;
        let sex = match line.cell("sex") {
            "F" => "Some(Sex::Female)",
            "M" => "Some(Sex::Male)",
            _ => "None",
        };
        let _ = write!(
            out,
            "Row {{ task: Task::{}, method: Method::{}, unit: Unit::{}, \
             language: {:?}, sex: {sex}, ages: {:?}, ages_seen: {}, read: {:?}, ",
            row.task,
            row.method,
            row.unit,
            line.cell("language"),
            row.ages,
            row.ages_seen,
            row.read,
        );
        for (name, figure) in &row.figures {
            let _ = write!(out, "{name}: {figure:?}, ");
        }
        let _ = writeln!(
            out,
            "n: {:?}, population: {:?}, procedure: {:?}, source: &source::{}, mark: Mark::{}, \
             caveat: {:?} }},",
            row.n,
            line.cell("population"),
            line.cell("procedure"),
            constant(line.cell("source")),
            mark_variant(line.cell("mark")),
            line.cell("caveat"),
        );
    }
    out.push_str("];\n");
    out
}
