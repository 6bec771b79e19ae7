//! Each rule about swallow, breathing and mouth by examples that a clinician can read:
//! `swallow_rule_examples.csv`.
//!
//! A row names a rule, what went in, what that rule says, and the source of the line. `expect` is
//! a level and words of the flag ("refer: coughed"), "none" where the rule is not raised, "error:"
//! or "ask:" with words of the sentence, or the headline of a decision.

#![allow(clippy::unwrap_used, clippy::panic)]

use crate::outside::groups;
use crate::outside::read;

use penlight::clinical::decision::verdict::{ALSO_FOUND, HEADLINE};
use penlight::clinical::findings::flag::{Domain, Flag, Level};
use penlight::clinical::findings::oral::CoughFlow;
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::sign::{Sign, SignTask, meaning};
use penlight::clinical::knowledge::source;
use penlight::clinical::tasks::cracker::judge as cracker;
use penlight::clinical::tasks::flow::judge as flow;
use penlight::clinical::tasks::oral::mouth;
use penlight::clinical::tasks::sips::three_ml;
use penlight::clinical::tasks::six_signs::judge as six_signs;
use penlight::clinical::tasks::timed_water::judge as timed_water;
use penlight::measure::decimals::decimals;
use penlight::measure::time::Millis;
use penlight::measure::units::{LitresPerSecond, Millilitres};
use penlight::wording::timed_water::ask;
use read::Says;

/// One row of the table.
struct Example {
    rule: String,
    input: String,
    expect: String,
    sources: String,
}

fn examples() -> Vec<Example> {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/tests/outside/swallow_rule_examples.csv"
    );
    let mut table = csv::Reader::from_path(path).unwrap();
    assert_eq!(
        table.headers().unwrap(),
        vec!["rule", "input", "expect", "source"]
    );
    table
        .records()
        .map(|row| {
            let row = row.unwrap();
            let cell = |i: usize| row.get(i).unwrap().to_owned();
            Example {
                rule: cell(0),
                input: cell(1),
                expect: cell(2),
                sources: cell(3),
            }
        })
        .collect()
}

fn level(word: &str) -> Level {
    match word {
        "note" => Level::Note,
        "pass" => Level::Pass,
        "incomplete" => Level::Incomplete,
        "refer" => Level::Refer,
        "stop" => Level::Stop,
        other => panic!("no level: {other}"),
    }
}

/// What went wrong with an example, if something did.
fn fault(example: &Example) -> Option<String> {
    let said = read::run(&example.input);
    let wrong = |what: &str| {
        Some(format!(
            "{} | {} | expected \"{}\", {what}: {said:?}",
            example.rule, example.input, example.expect
        ))
    };
    match &said {
        Says::Error(sentence) => match example.expect.strip_prefix("error: ") {
            Some(words) if sentence.contains(words) => None,
            _ => wrong("got an error"),
        },
        Says::Headline(headline, also) => {
            let all = format!("{headline}; {also} also found");
            let rule = [HEADLINE.id, ALSO_FOUND.id].contains(&example.rule.as_str());
            if rule && (*headline == example.expect || all == example.expect) {
                None
            } else {
                wrong("got another headline")
            }
        }
        Says::Flags(flags, ask) => {
            let of_rule: Vec<&Flag> = flags
                .iter()
                .filter(|f| f.rule().id == example.rule)
                .collect();
            if let Some(words) = example.expect.strip_prefix("ask: ") {
                return match ask {
                    Some(sentence) if sentence.contains(words) => None,
                    _ => wrong("nothing is asked"),
                };
            }
            if example.expect == "none" {
                return if of_rule.is_empty() {
                    None
                } else {
                    wrong("it was raised")
                };
            }
            let (word, words) = example.expect.split_once(": ").unwrap();
            let fits = |f: &&&Flag| f.level() == level(word) && f.reason().contains(words);
            match of_rule.iter().find(fits) {
                Some(_) => None,
                None => wrong("no such flag"),
            }
        }
    }
}

#[test]
fn every_example_holds() {
    let faults: Vec<String> = examples().iter().filter_map(fault).collect();
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

/// The published grades of the 3 mL, of which nothing here makes a flag: the signs of such a sip are
/// those of any sip. `three_ml_in_both_wordings` holds the grades.
const GRADED_ONLY: [&str; 7] = [
    "three-ml.no-reaction",
    "three-ml.no-swallow",
    "three-ml.breathing",
    "three-ml.sign",
    "three-ml.extra",
    "three-ml.clear",
    "three-ml.unfinished",
];

#[test]
fn every_rule_of_these_groups_has_an_example_that_raises_it() {
    let examples = examples();
    let raises = |e: &&Example| {
        let empty =
            e.expect == "none" || ["error: ", "ask: "].iter().any(|p| e.expect.starts_with(p));
        !empty
    };
    let of_us = |id: &str| groups::stands_for(groups::SWALLOW, id);
    let mut seen = 0;
    for rule in rules::ALL.iter().filter(|rule| of_us(rule.id)) {
        seen += 1;
        assert_eq!(
            examples.iter().filter(raises).any(|e| e.rule == rule.id),
            !GRADED_ONLY.contains(&rule.id),
            "whether an example raises {}",
            rule.id
        );
    }
    for id in GRADED_ONLY {
        assert!(rules::ALL.iter().any(|rule| rule.id == id), "{id}");
    }
    assert!(seen > 40, "{seen}");
    for e in &examples {
        assert!(
            rules::ALL.iter().any(|rule| rule.id == e.rule) && of_us(&e.rule),
            "no such rule: {}",
            e.rule
        );
    }
}

#[test]
fn every_example_names_its_source() {
    for e in examples() {
        let known = e
            .sources
            .split_whitespace()
            .all(|key| source::ALL.iter().any(|s| s.key == key));
        assert!(
            e.sources == "local policy" || !e.sources.is_empty() && known,
            "{}: {}",
            e.rule,
            e.sources
        );
    }
}

/// The whole table of signs. The 90 mL column: TH4, IDC, GRA; the others: GRA, DAN06T, STM, and
/// local policy where the rule says so.
#[test]
fn the_whole_table_of_signs() {
    use Level::{Incomplete, Note, Refer, Stop};
    let lines: [(Sign, Level, &str, Level, &str); 9] = [
        (Sign::Cough, Refer, "water.cough", Refer, "trial.cough"),
        (
            Sign::VoiceChange,
            Refer,
            "water.voice",
            Refer,
            "trial.voice",
        ),
        (
            Sign::ThroatClear,
            Note,
            "water.throat-clear",
            Note,
            "trial.throat-clear",
        ),
        (Sign::Pause, Refer, "water.interrupted", Note, "trial.pause"),
        (Sign::Spill, Refer, "water.spill", Refer, "trial.spill"),
        (
            Sign::BreathingChange,
            Stop,
            "water.breathing-change",
            Stop,
            "trial.breathing-change",
        ),
        (
            Sign::NoSwallow,
            Stop,
            "water.no-swallow",
            Stop,
            "trial.no-swallow",
        ),
        (
            Sign::AskedToStop,
            Refer,
            "water.asked-to-stop",
            Incomplete,
            "trial.asked-to-stop",
        ),
        (Sign::Choke, Stop, "water.choke", Stop, "trial.choke"),
    ];
    assert_eq!(lines.map(|line| line.0), Sign::ALL);
    for (sign, level_90, rule_90, level, rule) in lines {
        for task in SignTask::ALL {
            let (is, by) = meaning(sign, task);
            let wanted = match task {
                SignTask::Water90 => (level_90, rule_90),
                _ => (level, rule),
            };
            assert_eq!((is, by.id), wanted, "{sign:?} {task:?}");
        }
    }
}

/// Both wordings of the 3 mL test (STM), from the same signs.
#[test]
fn three_ml_in_both_wordings() {
    use three_ml::Grade::*;
    for (runs, a, b) in [
        ("no swallow", Some(NotRated), Some(NotRated)),
        ("no swallow, cough", Some(One), Some(One)),
        ("no swallow, wet voice", Some(One), Some(One)),
        // Here they differ: with a cough, wording B has no change of breathing.
        ("swallow, breathing change, cough", Some(Two), Some(Three)),
        ("swallow, breathing change", Some(Two), Some(Two)),
        ("swallow, wet voice", Some(Three), Some(Three)),
        ("swallow, residue, 2 extra", Some(Five), Some(Three)),
        ("swallow, 1 extra", Some(Four), Some(Four)),
        (
            "swallow, 2 extra / swallow, 1 extra / swallow, 2 extra",
            Some(Four),
            Some(Four),
        ),
        (
            "swallow, 2 extra / swallow, 2 extra / swallow, 2 extra",
            Some(Five),
            Some(Five),
        ),
        (
            "swallow, 1 extra / swallow, cough",
            Some(Three),
            Some(Three),
        ),
        ("swallow, residue not tested, 2 extra", Some(Five), None),
        ("swallow, cough not tested, 2 extra", None, None),
        ("swallow not tested, cough", None, None),
    ] {
        let grades = three_ml::grades(&read::three_ml_runs(runs));
        assert_eq!((grades.a, grades.b), (a, b), "{runs}");
    }
    assert!(NotRated < One && Four < Five);
}

/// The figures of timed water to four decimals (the three indices: HUG96).
#[test]
fn timed_water_figures() {
    for (offered, left, ms, swallows, capacity, volume, time) in [
        (100, 0, 12_500, 8, "8.0000", "12.5000", "1.5625"),
        (150, 0, 11_800, 7, "12.7119", "21.4286", "1.6857"),
        (150, 40, 20_000, 9, "5.5000", "12.2222", "2.2222"),
        (100, 0, 10_000, 6, "10.0000", "16.6667", "1.6667"),
        (90, 0, 9_500, 5, "9.4737", "18.0000", "1.9000"),
    ] {
        let cup = timed_water::Cup {
            offered: Millilitres::whole(offered),
            left: Millilitres::whole(left),
            time: Millis(ms),
            swallows: Some(swallows),
        };
        let figures = timed_water::figures(&cup).unwrap();
        let (each_volume, each_time) = figures.each.unwrap();
        assert_eq!(decimals(figures.capacity.get(), 4), capacity);
        assert_eq!(decimals(each_volume.get(), 4), volume);
        assert_eq!(decimals(each_time.get(), 4), time);
        assert_eq!(
            figures.slow,
            figures.capacity.get() < f64::from(timed_water::SLOW_BELOW)
        );
        assert_eq!(ask(&figures), None);
        // Capacity = volume of a swallow over its time.
        let identity = each_volume.get() / each_time.get();
        assert!((identity - figures.capacity.get()).abs() < 1e-9);
    }
    let uncounted = timed_water::Cup {
        offered: Millilitres::whole(100),
        left: Millilitres::ZERO,
        time: Millis(9_000),
        swallows: Some(0),
    };
    let figures = timed_water::figures(&uncounted).unwrap();
    assert_eq!(decimals(figures.capacity.get(), 4), "11.1111");
    assert!(figures.each.is_none() && ask(&figures).is_some());
}

/// The four derived figures of a cracker (ASE24).
#[test]
fn cracker_figures() {
    let figures = cracker::figures(&cracker::Cracker {
        bites: 4,
        chews: 60,
        swallows: 3,
        time: Millis(48_000),
    })
    .unwrap();
    assert_eq!(figures.time_per_bite.unwrap().get(), 12.0);
    assert_eq!(figures.chews_per_bite.unwrap().get(), 15.0);
    assert_eq!(figures.swallows_per_bite.unwrap().get(), 0.75);
    assert_eq!(figures.time_per_swallow.unwrap().get(), 16.0);
    let uncounted = cracker::figures(&cracker::Cracker {
        bites: 0,
        chews: 60,
        swallows: 0,
        time: Millis(48_000),
    })
    .unwrap();
    assert_eq!(uncounted.time_per_bite, None);
    assert_eq!(uncounted.chews_per_bite, None);
    assert_eq!(uncounted.time_per_swallow, None);
}

/// All 101 readings of the syringe have a level, a border or the word that nothing flowed
/// (IDDSI-B, IDDSI-S).
#[test]
fn every_reading_of_the_syringe() {
    use penlight::clinical::findings::fact::Flow;
    let count = |wanted: fn(Flow) -> bool| {
        (0..=100)
            .filter(|t| wanted(flow::read(flow::LeftOfTen::tenths(*t).unwrap())))
            .count()
    };
    assert_eq!(count(|f| f == Flow::Level(0)), 10);
    assert_eq!(count(|f| f == Flow::Level(1)), 30);
    assert_eq!(count(|f| f == Flow::Level(2)), 39);
    assert_eq!(count(|f| f == Flow::Level(3)), 19);
    assert_eq!(count(|f| matches!(f, Flow::Border(..))), 2);
    assert_eq!(count(|f| f == Flow::None), 1);
}

/// SMH09 prints litres a second, the bands (CPF22) litres a minute.
#[test]
fn flow_of_air_per_second_and_per_minute() {
    let flow = LitresPerSecond::new(2.9).unwrap().per_minute();
    assert_eq!(decimals(flow.get(), 6), "174.000000");
    assert_eq!(mouth::cough_band(flow), CoughFlow::Reduced);
    // 4.5 litres a second are the upper line itself.
    let line = LitresPerSecond::new(4.5).unwrap().per_minute();
    assert_eq!(mouth::cough_band(line), CoughFlow::Usual);
}

/// "n of m tested": five without the gag, six with it (DAV95, LED96; DAN06T).
#[test]
fn six_signs_say_how_many_were_tested() {
    let signs = six_signs::SixSigns::default();
    let tested = |gag_counts| six_signs::tested(&signs, six_signs::Setting { gag_counts });
    assert_eq!((tested(false).tested, tested(false).of), (0, 5));
    assert_eq!((tested(true).tested, tested(true).of), (0, 6));
}

/// Nothing of the mouth, the face or a child's breathing reaches the headline.
#[test]
fn mouth_and_breathing_never_decide() {
    for input in [
        "mouth opening: 10 mm, front teeth",
        "cough flow: 90 L/min",
        "face: smile to right, forehead still left",
        "tongue range: incomplete",
        "gag: absent",
        "breaths awake: 90, 6 months",
        "breaths awake: 90, 8 years",
    ] {
        let Says::Flags(flags, _) = read::run(input) else {
            panic!("{input}");
        };
        assert!(!flags.is_empty(), "{input}");
        for flag in flags {
            assert!(!flag.domain().decides(), "{flag:?}");
            assert!(matches!(flag.domain(), Domain::Mouth | Domain::Breathing));
        }
    }
}
