//! Every figure that is shown as published can be traced: to the row of a source, or to a row of
//! `clinical/norms` with that source.

#![allow(clippy::unwrap_used, clippy::panic)]

use penlight::clinical::knowledge::norms::ROWS;
use penlight::clinical::knowledge::rule::{Basis, Rule};
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::source::Source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::breath::judge as breath;
use penlight::clinical::tasks::by_mouth::signs;
use penlight::clinical::tasks::compared;
use penlight::clinical::tasks::longest::voice;
use penlight::clinical::tasks::syllables::speech;
use penlight::clinical::tasks::timed_water::judge as timed_water;
use penlight::clinical::tasks::{dry_swallow, flow, water};
use penlight::measure::time::Millis;
use penlight::wording::norms;
use penlight::wording::tasks as words;

/// The figures in a text, as they are written.
fn figures(text: &str) -> Vec<&str> {
    text.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == ','))
        .map(|n| n.trim_matches(['.', ',']))
        .filter(|n| n.contains(|c: char| c.is_ascii_digit()))
        .collect()
}

/// All that is told of a source: who was studied and what came out, and its rows.
fn told(source: &Source) -> String {
    let mut told = source.population.to_owned();
    for row in ROWS.iter().filter(|row| row.source.key == source.key) {
        let (words, ages) = (norms::row(row), norms::ages(row));
        let texts = [row.population, row.procedure, row.caveat];
        told.push_str(&format!(" {words} {ages} {}", texts.join(" ")));
    }
    told
}

/// Figures that are no finding: they follow from another line, or are set here.
#[rustfmt::skip] // One figure a line.
const OTHERWISE: [(&str, &str, &str); 3] = [
    ("breathing.taught-range", "15", "the last year before the bands for adults begin, at 16"),
    ("speech.older-line", "65", "set here, as its basis says"),
    ("breath.count-check", "40", "the last whole number below the published 41"),
];

/// Rules that are local policy and tell figures as published, or borrow published bands.
const BORROWED: [&str; 7] = [
    "gate.requests",
    "breathing.rate",
    "breathing.spo2",
    "breathing.second-scale",
    "breathing.not-counted",
    "speech.older-line",
    "voice.longest-ah",
];

/// The figures of a rule that stand nowhere in its sources.
fn untraced(rule: &Rule) -> Vec<&'static str> {
    let told: Vec<String> = rule.sources().iter().map(|s| told(s)).collect();
    let known: Vec<&str> = told.iter().flat_map(|text| figures(text)).collect();
    figures(rule.says)
        .into_iter()
        .filter(|figure| !known.contains(figure))
        .collect()
}

#[test]
fn every_figure_of_a_published_rule_is_in_a_row_of_its_sources() {
    let mut seen = 0;
    for rule in rules::ALL {
        let published = matches!(rule.basis, Basis::Published(_));
        if !published && !BORROWED.contains(&rule.id) {
            continue;
        }
        seen += figures(rule.says).len();
        let open = untraced(rule);
        let listed: Vec<&str> = OTHERWISE
            .iter()
            .filter(|(id, ..)| *id == rule.id)
            .map(|(_, figure, _)| *figure)
            .collect();
        assert_eq!(open, listed, "{}: {}", rule.id, rule.says);
    }
    assert!(seen >= 90, "only {seen} figures found");
    for (id, figure, why) in OTHERWISE {
        assert!(
            rules::ALL.iter().any(|r| r.id == id),
            "{id} {figure}: {why}"
        );
    }
    for id in BORROWED {
        let rule = rules::ALL.iter().find(|r| r.id == id).unwrap();
        assert!(matches!(rule.basis, Basis::LocalPolicy { .. }), "{id}");
    }
}

/// A figure that is not in its source is found.
#[test]
fn a_figure_of_nowhere_is_found() {
    static SOURCES: [&Source; 1] = [&source::LED13];
    let rule = |says| Rule {
        id: "any",
        says,
        looks_at: "anything",
        basis: Basis::Published(&SOURCES),
    };
    assert_eq!(untraced(&rule("An odds ratio of 2.72.")), [""; 0]);
    assert_eq!(untraced(&rule("An odds ratio of 2.73.")), ["2.73"]);
    // Not as a part of another figure.
    assert_eq!(untraced(&rule("An odds ratio of 2.7.")), ["2.7"]);
}

/// A line in the code is the figure that its rule tells.
#[test]
#[rustfmt::skip] // One line a line.
fn the_lines_in_the_code_are_those_of_the_rules() {
    for (rule, line) in [
        (&rules::VOICE_S_Z, voice::S_Z_LIMIT),
        (&rules::VOICE_S_Z_BORDER, voice::S_Z_BORDER),
        (&rules::VOICE_LONGEST_AH, voice::ADULT_SHORT),
        (&rules::VOICE_LONGEST_CHILD, compared::BELOW_USUAL),
        (&rules::SPEECH_ADULT_SEQUENCE, compared::BELOW_USUAL),
        (&rules::SPEECH_OLDER_SINGLE, compared::BELOW_USUAL),
        (&rules::SPEECH_ADULT_LINE, speech::ADULT_LINE),
        (&rules::SPEECH_OLDER_LINE, speech::PA_LINE),
        (&rules::SPEECH_OLDER_LINE, speech::TA_LINE_MEN),
        (&rules::SPEECH_OLDER_LINE, speech::TA_LINE_WOMEN),
        (&rules::SPEECH_TAP_LIMIT, speech::TAP_LIMIT),
        (&rules::BREATH_COUNT, f64::from(breath::COUNT_EXPECTED)),
        (&rules::BREATH_COUNT_CHECK, f64::from(breath::COUNT_CHECK_BELOW)),
        (&rules::WATER_LEFT, f64::from(water::OFFERED)),
        (&rules::WATER_COUGH, seconds(water::WATCH)),
        (&rules::WATER_AFTER_WATCH, seconds(signs::WATCH)),
        (&rules::TIMED_WATER_SLOW, f64::from(timed_water::SLOW_BELOW)),
        (&rules::FLOW_LEVEL, seconds(flow::WINDOW)),
        (&rules::DRY_FEW, seconds(dry_swallow::WINDOW)),
        (&rules::DRY_FEW, f64::from(u32::try_from(dry_swallow::EXPECTED).unwrap())),
    ] {
        let told = figures(rule.says);
        assert!(told.contains(&line.to_string().as_str()), "{}: {line}", rule.id);
    }
}

fn seconds(time: Millis) -> f64 {
    f64::from(u32::try_from(time.0 / 1000).unwrap())
}

/// IDDSI-S: the syringe of the flow test.
#[test]
fn the_syringe_of_the_flow_test() {
    let steps = words::of(TaskId::Flow).steps;
    let step = steps.iter().find(|s| s.contains("mm")).unwrap();
    let told = told(&source::IDDSI_S);
    for figure in figures(step) {
        assert!(figures(&told).contains(&figure), "{figure}");
    }
}

/// The numbers in `text` that stand before `(published: KEY)`, back to the last full stop or
/// bracket: each with the key.
fn claims(text: &str) -> Vec<(String, Vec<String>)> {
    let mut claims = Vec::new();
    for mark in ["(published: ", "(published, secondary copy: "] {
        for (at, _) in text.match_indices(mark) {
            let key: String = text[at + mark.len()..]
                .chars()
                .take_while(|c| c.is_ascii_alphanumeric() || *c == '-')
                .collect();
            let before = &text[..at];
            let from = before.rfind(['(', ')', ':', ';']).map_or(0, |i| i + 1);
            let numbers = before[from..]
                .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == ','))
                .map(|n| n.trim_matches(['.', ',']).to_owned())
                .filter(|n| n.contains(|c: char| c.is_ascii_digit()))
                .collect();
            claims.push((key, numbers));
        }
    }
    claims
}

/// Every figure that the app's own text gives with "(published: KEY)" stands in that source's row,
/// or in a table row of it.
#[test]
fn every_published_figure_in_a_text_is_in_its_sources_row() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut folders = vec![root];
    let mut seen = 0;
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            if path.extension().is_none_or(|end| end != "rs") {
                continue;
            }
            let text = std::fs::read_to_string(&path).unwrap();
            for (key, numbers) in claims(&text) {
                let source = source::ALL.iter().find(|s| s.key == key);
                let source = source.unwrap_or_else(|| panic!("{key} in {}", path.display()));
                let mut known = format!("{} {}", source.population, source.citation);
                for row in ROWS {
                    if row.source.key == key {
                        known.push_str(&norms::row(row));
                    }
                }
                for number in numbers {
                    assert!(
                        known.contains(&number),
                        "{number} of {key} in {}",
                        path.display()
                    );
                    seen += 1;
                }
            }
        }
    }
    assert!(
        seen >= 4,
        "only {seen} figures found: the texts are written otherwise now"
    );
}
