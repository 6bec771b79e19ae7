//! Cargo's build script: reads the tables of `src/clinical/knowledge`, checks them, and writes them as Rust.
//!
//! A wrong table fails the build with its file, line and reason. `tests/tables.rs` tests the checks.

#![allow(clippy::print_stdout)] // This is how a build script talks to cargo.

use std::path::{Path, PathBuf};
use std::{env, fs};

mod norms;
mod rules;
mod sheet;
mod sources;

use sheet::{Fault, Sheet};

const CLINICAL: &str = "src/clinical/knowledge";

fn main() {
    println!("cargo::rerun-if-changed=scripts/tables");
    println!("cargo::rerun-if-changed={CLINICAL}/sources.csv");
    println!("cargo::rerun-if-changed={CLINICAL}/rules.csv");
    println!("cargo::rerun-if-changed={CLINICAL}/norms");
    if let Err(faults) = make() {
        for fault in faults {
            println!("cargo::error={fault}");
        }
    }
}

fn make() -> Result<(), Vec<Fault>> {
    let out = env::var_os("OUT_DIR")
        .map(PathBuf::from)
        .unwrap_or_default();
    let write = |name: &str, text: String| {
        fs::write(out.join(name), text).map_err(|error| vec![Fault::of_file(name, error)])
    };
    let read = |path: &Path| Sheet::read(path).map_err(|fault| vec![fault]);

    let clinical = Path::new(CLINICAL);
    let sources = sources::check(&read(&clinical.join("sources.csv"))?)?;
    write("sources.rs", sources::rust(&sources))?;
    let rules = rules::check(&read(&clinical.join("rules.csv"))?, &sources)?;
    write("rules.rs", rules::rust(&rules))?;
    let mut sheets = Vec::new();
    for path in norms::files(&clinical.join("norms")).map_err(|fault| vec![fault])? {
        sheets.push(read(&path)?);
    }
    let rows = norms::check(&sheets, &sources)?;
    write("norms.rs", norms::rust(&rows))
}
