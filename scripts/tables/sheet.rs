//! A table as text: its cells by column name, each row with its line.

use std::collections::BTreeMap;
use std::fmt;
use std::path::Path;

/// What is wrong in a table, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The file, from the project's root.
    pub file: String,
    /// The line, from 1; 0 where it is the whole file.
    pub line: u64,
    /// Why.
    pub reason: String,
}

impl Fault {
    /// A fault of a file as a whole.
    pub fn of_file(file: &str, reason: impl fmt::Display) -> Fault {
        Fault {
            file: file.to_owned(),
            line: 0,
            reason: reason.to_string(),
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}: {}", self.file, self.line, self.reason)
    }
}

/// A row.
#[derive(Clone, Debug)]
pub struct Line {
    file: String,
    /// Its line in the file, from 1.
    pub number: u64,
    cells: BTreeMap<String, String>,
}

impl Line {
    /// The cell of a column, without blanks around it.
    pub fn cell(&self, column: &str) -> &str {
        self.cells.get(column).map_or("", String::as_str)
    }

    /// The cell of a column, or none where it is empty.
    pub fn filled(&self, column: &str) -> Option<&str> {
        Some(self.cell(column)).filter(|cell| !cell.is_empty())
    }

    /// A fault in this row.
    pub fn fault(&self, reason: impl fmt::Display) -> Fault {
        Fault {
            file: self.file.clone(),
            line: self.number,
            reason: reason.to_string(),
        }
    }

    /// The number in a column, if one is there.
    pub fn number(&self, column: &str) -> Result<Option<f64>, Fault> {
        let Some(cell) = self.filled(column) else {
            return Ok(None);
        };
        match cell.parse::<f64>() {
            Ok(number) if number.is_finite() => Ok(Some(number)),
            _ => Err(self.fault(format!("{column} is no number: \"{cell}\""))),
        }
    }

    /// The whole number in a column, if one is there.
    pub fn whole(&self, column: &str) -> Result<Option<u32>, Fault> {
        let Some(cell) = self.filled(column) else {
            return Ok(None);
        };
        cell.parse()
            .map(Some)
            .map_err(|_| self.fault(format!("{column} is no whole number: \"{cell}\"")))
    }
}

/// A table.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// The file, from the project's root.
    pub file: String,
    columns: Vec<String>,
    /// Its rows.
    pub lines: Vec<Line>,
}

impl Sheet {
    /// Reads a file.
    pub fn read(path: &Path) -> Result<Sheet, Fault> {
        let file = path.to_string_lossy().replace('\\', "/");
        let text = std::fs::read_to_string(path).map_err(|error| Fault::of_file(&file, error))?;
        Sheet::parse(&file, &text)
    }

    /// Reads a table from text.
    pub fn parse(file: &str, text: &str) -> Result<Sheet, Fault> {
        let fault = |error: csv::Error| Fault {
            file: file.to_owned(),
            line: error.position().map_or(0, csv::Position::line),
            reason: error.to_string(),
        };
        let mut reader = csv::ReaderBuilder::new()
            .trim(csv::Trim::All)
            .from_reader(text.as_bytes());
        let columns: Vec<String> = reader
            .headers()
            .map_err(fault)?
            .iter()
            .map(str::to_owned)
            .collect();
        let mut lines = Vec::new();
        for record in reader.records() {
            let record = record.map_err(fault)?;
            lines.push(Line {
                file: file.to_owned(),
                number: record.position().map_or(0, csv::Position::line),
                cells: columns
                    .iter()
                    .cloned()
                    .zip(record.iter().map(str::to_owned))
                    .collect(),
            });
        }
        Ok(Sheet {
            file: file.to_owned(),
            columns,
            lines,
        })
    }

    /// That it has these columns, in this order, and no others.
    pub fn has_columns(&self, wanted: &[&str]) -> Result<(), Fault> {
        if self.columns == wanted {
            return Ok(());
        }
        Err(Fault {
            file: self.file.clone(),
            line: 1,
            reason: format!(
                "the columns are \"{}\", wanted are \"{}\"",
                self.columns.join(","),
                wanted.join(",")
            ),
        })
    }
}

/// The words of a set, or a fault that names them.
pub fn one_of<'a>(line: &'a Line, column: &str, known: &[&str]) -> Result<&'a str, Fault> {
    let cell = line.cell(column);
    if known.contains(&cell) {
        Ok(cell)
    } else {
        Err(line.fault(format!(
            "{column} \"{cell}\" is not known; known are {}",
            known.join(", ")
        )))
    }
}

/// A constant's name out of a key: `NHS-AA` is `NHS_AA`, `dry.few` is `DRY_FEW`.
pub fn constant(key: &str) -> String {
    key.chars()
        .map(|c| match c {
            '-' | '.' => '_',
            c => c.to_ascii_uppercase(),
        })
        .collect()
}

/// Whether a key can be made into a constant's name.
pub fn is_key(key: &str) -> bool {
    key.starts_with(|c: char| c.is_ascii_alphabetic())
        && key
            .chars()
            .all(|c| c.is_ascii_alphanumeric() || c == '-' || c == '.')
}

/// Keeps what came out well, or all faults.
pub fn gather<T>(
    results: impl IntoIterator<Item = Result<T, Fault>>,
) -> Result<Vec<T>, Vec<Fault>> {
    let mut good = Vec::new();
    let mut faults = Vec::new();
    for result in results {
        match result {
            Ok(value) => good.push(value),
            Err(fault) => faults.push(fault),
        }
    }
    if faults.is_empty() {
        Ok(good)
    } else {
        Err(faults)
    }
}
