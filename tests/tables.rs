//! The build's checks of the clinical tables: a typo fails with its file, line and reason.
//! And of the tables themselves: what they hold against each other.

#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "../scripts/tables/norms.rs"]
mod norms;
#[path = "../scripts/tables/rules.rs"]
mod rules;
#[path = "../scripts/tables/sheet.rs"]
mod sheet;
#[path = "../scripts/tables/sources.rs"]
mod sources;

use std::path::Path;

use sheet::{Fault, Sheet};
use sources::Source;

const SOURCES: &str = "key,kind,mark,population,citation\n\
    AB01,study,published,40 adults,\"Somebody A, 2001.\"\n\
    TEACH,teaching page,secondary,not seen,Notes.\n\
    MEM,study,from memory,not seen,\"Somebody B, 1980.\"\n\
    HABIT,practice,common practice,wards,Common practice.\n";

fn known() -> Vec<Source> {
    sources::check(&Sheet::parse("sources.csv", SOURCES).unwrap()).unwrap()
}

fn rule_faults(row: &str) -> Vec<Fault> {
    let text = format!("{}\n{row}\n", rules::COLUMNS.join(","));
    rules::check(&Sheet::parse("rules.csv", &text).unwrap(), &known())
        .err()
        .unwrap_or_default()
}

fn norm_faults(rows: &[&str]) -> Vec<Fault> {
    let text = format!("{}\n{}\n", norms::COLUMNS.join(","), rows.join("\n"));
    let sheet = Sheet::parse("norms/test.csv", &text).unwrap();
    norms::check(&[sheet], &known()).err().unwrap_or_default()
}

/// A good row with some cells changed.
fn row(changes: &[(&str, &str)]) -> String {
    let good = [
        ("measure", "syllable-rate"),
        ("task", "pa"),
        ("method", "count-5s"),
        ("unit", "syl/s"),
        ("language", "en"),
        ("sex", "any"),
        ("age_from", "20"),
        ("age_to", "40"),
        ("age_in", "years"),
        ("mean", "6.0"),
        ("sd", "0.9"),
        ("n", "40"),
        ("population", "adults"),
        ("procedure", "counted"),
        ("source", "AB01"),
        ("mark", "published"),
    ];
    let cell = |column: &str| {
        let changed = changes.iter().rev().find(|(name, _)| *name == column);
        let cell = changed.or(good.iter().find(|(name, _)| *name == column));
        cell.map_or("", |(_, value)| *value)
    };
    norms::COLUMNS
        .iter()
        .map(|c| cell(c))
        .collect::<Vec<_>>()
        .join(",")
}

#[track_caller]
fn one(faults: &[Fault], file: &str, line: u64, reason: &str) {
    let [fault] = faults else {
        panic!("{faults:?}");
    };
    assert_eq!((fault.file.as_str(), fault.line), (file, line), "{fault}");
    assert!(fault.reason.contains(reason), "{fault}");
}

#[track_caller]
fn norm(changes: &[(&str, &str)], reason: &str) {
    one(&norm_faults(&[&row(changes)]), "norms/test.csv", 2, reason);
}

#[test]
fn a_good_row_has_no_fault() {
    assert_eq!(norm_faults(&[&row(&[])]), []);
    let child = row(&[("age_from", "6"), ("age_to", "11"), ("age_in", "months")]);
    assert_eq!(norm_faults(&[&row(&[]), &child]), []);
}

#[test]
fn a_typo_in_a_norm_is_named() {
    norm(
        &[("measure", "sylable-rate")],
        "measure \"sylable-rate\" is not known; known are",
    );
    norm(
        &[("task", "ba")],
        "task \"ba\" is not known; known are pa, ta, ka, pa-ta-ka",
    );
    norm(&[("task", "drink")], "task \"drink\" is not known");
    norm(
        &[("method", "count-6s")],
        "method \"count-6s\" is not known",
    );
    norm(
        &[("unit", "seq/s")],
        "unit \"seq/s\" is not the unit of syllable-rate, which is syl/s",
    );
    norm(
        &[("sex", "female")],
        "sex \"female\" is not known; known are any, F, M",
    );
    norm(&[("age_in", "weeks")], "age_in \"weeks\" is not known");
    norm(
        &[("source", "AB02")],
        "the source AB02 is not in sources.csv",
    );
    norm(
        &[("mark", "V2")],
        "mark \"V2\" is not known; known are published, secondary, derived",
    );
    norm(&[("mean", "six")], "mean is no number: \"six\"");
    norm(&[("mean", "NaN")], "mean is no number");
    norm(&[("n", "4.5")], "n is no whole number");
    norm(&[("age_to", "19")], "age_from 20 is above age_to 19");
    norm(&[("age_to", "121")], "above 120 years");
    norm(&[("age_to", "")], "age_from and age_to go together");
    norm(&[("population", "")], "population is empty");
    norm(&[("procedure", "")], "procedure is empty");
    norm(
        &[("age_from", ""), ("age_to", "")],
        "a row has an age range",
    );
    norm(&[("read_from", "20")], "read_from and read_to go together");
    norm(&[("read_to", "64")], "read_from and read_to go together");
}

#[test]
fn a_language_is_a_tag_or_says_why_it_is_none() {
    for good in ["-", "not shown", "en", "pt-BR"] {
        assert_eq!(norm_faults(&[&row(&[("language", good)])]), [], "{good}");
    }
    for bad in [
        "", "EN", "english", "en-", "en-us", "en_US", "e", "en-USA", "en-US-x", "unknown",
    ] {
        let reason = format!("language \"{bad}\" is not known; known are -, not shown, and tags");
        norm(&[("language", bad)], &reason);
    }
}

/// Ages that were not seen are said to be taken, and are checked all the same.
#[test]
fn ages_that_were_not_seen_say_so() {
    let unseen = |changes: &[(&str, &str)]| {
        let mut all = vec![("age_in", "years not seen")];
        all.extend(changes);
        row(&all)
    };
    let read = |row: &str| {
        let text = format!("{}\n{row}\n", norms::COLUMNS.join(","));
        let sheet = Sheet::parse("norms/test.csv", &text).unwrap();
        norms::rust(&norms::check(&[sheet], &known()).unwrap())
    };
    assert!(read(&unseen(&[])).contains("ages: (240, 491), ages_seen: false"));
    assert!(read(&row(&[])).contains("ages: (240, 491), ages_seen: true"));
    let faults = norm_faults(&[&unseen(&[("age_to", "121")])]);
    one(&faults, "norms/test.csv", 2, "above 120 years");
}

#[test]
fn figures_that_can_not_be_are_named() {
    norm(&[("mean", "")], "a row has a mean");
    norm(&[("mean", "0")], "mean is not above 0");
    norm(&[("sd", "-0.9")], "sd is not above 0");
    norm(&[("mean", ""), ("p50", "6")], "an SD needs its mean");
    norm(&[("low", "4")], "a range has both ends");
    norm(&[("low", "7"), ("high", "4")], "fall");
    norm(&[("p25", "7"), ("p50", "6")], "fall");
}

/// An SD is taken only where it was published, and a figure from memory is no row.
#[test]
fn marks_keep_their_places() {
    norm(
        &[("mark", "derived")],
        "an SD is taken only where it was published",
    );
    norm(
        &[("mark", "from memory")],
        "mark \"from memory\" is not known",
    );
    norm(
        &[("source", "MEM")],
        "a row can't be published where its source MEM is from memory",
    );
    norm(
        &[("source", "TEACH")],
        "a row can't be published where its source TEACH is secondary",
    );
    norm(&[("source", "HABIT")], "is common practice");
}

#[test]
fn ages_do_not_overlap_within_a_method() {
    let over = |changes: &[(&str, &str)]| norm_faults(&[&row(&[]), &row(changes)]);
    one(
        &over(&[("age_from", "40"), ("age_to", "60")]),
        "norms/test.csv",
        3,
        "overlap those of norms/test.csv:2",
    );
    assert_eq!(over(&[("age_from", "41"), ("age_to", "60")]), []);
    // 40 years end with month 491.
    one(
        &over(&[("age_from", "491"), ("age_to", "500"), ("age_in", "months")]),
        "norms/test.csv",
        3,
        "overlap",
    );
    assert_eq!(
        over(&[("age_from", "492"), ("age_to", "500"), ("age_in", "months")]),
        []
    );
    assert_eq!(over(&[("method", "count-10s")]), []);
    assert_eq!(over(&[("language", "ta")]), []);
    assert_eq!(over(&[("task", "ta")]), []);
    // Ages for which rows of other languages are read must not overlap either.
    let read = [("language", "ta"), ("read_from", "20"), ("read_to", "64")];
    let faults = norm_faults(&[&row(&[("read_from", "60"), ("read_to", "80")]), &row(&read)]);
    one(
        &faults,
        "norms/test.csv",
        3,
        "the ages it is read for overlap",
    );
}

/// The tables are one: a row of one file must not overlap that of another.
#[test]
fn ages_do_not_overlap_across_files() {
    let sheet = |file: &str, changes: &[(&str, &str)]| {
        let text = format!("{}\n{}\n", norms::COLUMNS.join(","), row(changes));
        Sheet::parse(file, &text).unwrap()
    };
    let check = |changes: &[(&str, &str)]| {
        let sheets = [sheet("norms/a.csv", &[]), sheet("norms/b.csv", changes)];
        norms::check(&sheets, &known()).err().unwrap_or_default()
    };
    let faults = check(&[("age_from", "40"), ("age_to", "60")]);
    one(&faults, "norms/b.csv", 2, "overlap those of norms/a.csv:2");
    assert_eq!(check(&[("age_from", "41"), ("age_to", "60")]), []);
}

#[test]
fn a_wrong_column_is_named() {
    let text = norms::COLUMNS.join(",").replace("language", "lang");
    let sheet = Sheet::parse("norms/test.csv", &format!("{text}\n")).unwrap();
    let faults = norms::check(&[sheet], &known()).unwrap_err();
    one(&faults, "norms/test.csv", 1, "the columns are");
}

#[test]
fn a_row_with_too_many_cells_is_named() {
    let text = format!("{SOURCES}AB02,study,published,10 adults,one,two\n");
    let fault = Sheet::parse("sources.csv", &text).unwrap_err();
    assert_eq!(
        (fault.file.as_str(), fault.line),
        ("sources.csv", 6),
        "{fault}"
    );
}

#[test]
fn a_source_needs_all_its_cells_and_a_key_of_its_own() {
    let faults = |row: &str| {
        let sheet = Sheet::parse("sources.csv", &format!("{SOURCES}{row}\n")).unwrap();
        sources::check(&sheet).err().unwrap_or_default()
    };
    one(
        &faults("AB01,study,published,x,y"),
        "sources.csv",
        6,
        "the key AB01 stands in line 2",
    );
    one(
        &faults("A B,study,published,x,y"),
        "sources.csv",
        6,
        "is no key",
    );
    one(
        &faults("AB02,study,V,x,y"),
        "sources.csv",
        6,
        "mark \"V\" is not known",
    );
    one(
        &faults("AB02,study,published,,y"),
        "sources.csv",
        6,
        "population is empty",
    );
}

/// No rule rests on a figure from memory, and "published" means that a source was seen.
#[test]
fn a_rule_rests_on_what_was_seen() {
    assert_eq!(rule_faults("dry.few,Says.,count,published,,AB01"), []);
    assert_eq!(
        rule_faults("dry.few,Says.,count,local policy,why.,AB01 HABIT"),
        []
    );
    let fault = |row: &str, reason: &str| one(&rule_faults(row), "rules.csv", 2, reason);
    fault(
        "dry.few,Says.,count,published,,MEM",
        "MEM is from memory: no rule may rest on it",
    );
    fault(
        "dry.few,Says.,count,local policy,why.,MEM",
        "MEM is from memory",
    );
    fault(
        "dry.few,Says.,count,published,,HABIT",
        "HABIT is common practice",
    );
    fault("dry.few,Says.,count,published,,", "names its source");
    fault(
        "dry.few,Says.,count,published,,AB9",
        "the source AB9 is not in sources.csv",
    );
    fault("dry.few,Says.,count,local policy,,", "says why");
    fault(
        "dry.few,Says.,count,guess,why.,",
        "basis \"guess\" is not known",
    );
    fault("dry.few,,count,published,,AB01", "says is empty");
    fault("dry.few,Says.,,published,,AB01", "looks_at is empty");
    fault(
        "dry.few,Says.,count,published,why.,AB01",
        "a local policy says why, a published rule has its source for it",
    );
    fault("dry few,Says.,count,published,,AB01", "is no id");
}

/// An id is the name of a constant and stands in stored decisions: it is one rule's.
#[test]
fn a_rule_has_an_id_of_its_own() {
    let good = "dry.few,Says.,count,published,,AB01";
    for again in [good, "dry-few,Says.,count,published,,AB01"] {
        let faults = rule_faults(&format!("{good}\n{again}"));
        one(&faults, "rules.csv", 3, "stands in line 2 already");
    }
}

#[test]
fn the_tables_that_ship_have_no_fault() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/clinical/knowledge");
    let read = |name: &str| Sheet::read(&root.join(name)).unwrap();
    let sources = sources::check(&read("sources.csv")).unwrap();
    let rules = rules::check(&read("rules.csv"), &sources).unwrap();
    assert!(rules::rust(&rules).contains(penlight::clinical::knowledge::rules::ALL[0].id));
    let files = norms::files(&root.join("norms")).unwrap();
    assert!(files.len() >= 5, "{files:?}");
    let sheets: Vec<Sheet> = files.iter().map(|f| Sheet::read(f).unwrap()).collect();
    let rows = norms::check(&sheets, &sources).unwrap();
    assert_eq!(rows.len(), penlight::clinical::knowledge::norms::ROWS.len());
    // What they are written as is what is compiled in.
    assert!(sources::rust(&sources).contains(penlight::clinical::knowledge::source::ALL[0].key));
    assert!(norms::rust(&rows).contains("Task::PaTaKa"));
}
