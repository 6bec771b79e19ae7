//! A policy file changes settings and nothing else; what is wrong with one is said in one sentence
//! that names the place, and no part of it is taken.
//!
//! And: a changed setting changes the flag it is meant for, and no other.

use crate::support::*;
use penlight::clinical::decision::assess::flags;
use penlight::clinical::decision::fresh;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::gate::Group;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::policy::Wording;
use penlight::clinical::knowledge::policy::file::{MOST_BYTES, parse, write};
use penlight::clinical::knowledge::policy::{
    Kind, Policy, PolicyFileError, SETTINGS, differing, find, fixed, out_of_order,
};
use penlight::clinical::knowledge::rule::Basis;
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::breath_taps::judge as breath_taps;
use penlight::clinical::tasks::breathing;
use penlight::clinical::tasks::by_mouth::saturation;
use penlight::clinical::tasks::sips::judge as sips;
use penlight::clinical::tasks::six_signs::judge as six_signs;
use penlight::measure::time::{Millis, Stamp};
use penlight::measure::units::Millilitres;
use proptest::prelude::*;
use proptest::sample::Index;

/// A policy file with this in its settings.
fn with(settings: &str) -> String {
    format!("{{\"penlight_policy\": 1, \"name\": \"Ward 4\", \"settings\": {{{settings}}}}}")
}

/// What is said about a file that is not taken.
#[track_caller]
fn refused(text: &str) -> String {
    let words = parse(text).unwrap_err().to_string();
    assert!(words.ends_with('.') && !words.contains('\n'), "{words:?}");
    words
}

#[test]
fn what_is_left_out_is_penlights_default() {
    let policy = parse(&with("\"water.from-years\": 5")).unwrap();
    assert_eq!(
        (policy.name.as_str(), policy.water_from_years),
        ("Ward 4", 5)
    );
    let changed: Vec<_> = differing(&policy, &Policy::default())
        .map(|s| s.key)
        .collect();
    assert_eq!(changed, ["water.from-years"]);
    assert_eq!(
        differing(&parse(&with("")).unwrap(), &Policy::default()).count(),
        0
    );
}

#[test]
fn penlights_own_policy_reads_back() {
    let text = write(&Policy::default());
    assert_eq!(parse(&text).unwrap(), Policy::default());
    assert_eq!(
        parse(&format!("\u{feff}{text}")).unwrap(),
        Policy::default()
    );
    // Every setting once, in the order of the table, one a line.
    let keys: Vec<&str> = text
        .lines()
        .filter_map(|line| line.strip_prefix("    \"")?.split('"').next())
        .collect();
    assert_eq!(keys, SETTINGS.iter().map(|s| s.key).collect::<Vec<_>>());
}

#[test]
fn a_file_cut_short_anywhere_is_refused() {
    let text = write(&Policy::default());
    let text = text.trim_end();
    for end in 0..text.len() {
        let error = parse(&text[..end]).unwrap_err();
        assert!(
            matches!(error, PolicyFileError::Cut(..)),
            "at {end}: {error}"
        );
    }
    assert_eq!(
        refused(&text[..40]),
        "The file ends too soon, in line 3 at column 15: it is not complete."
    );
}

#[test]
fn what_is_not_json_names_line_and_column() {
    assert_eq!(
        refused("{\n  \"penlight_policy\": 1,\n  name: \"x\"\n}"),
        "Line 3, column 3 can't be read: it is not JSON as a policy file is."
    );
    for text in ["<html>", "{'a': 1}", "{\"a\": 1,}", "{\"a\": 08}", "{} {}"] {
        assert!(
            matches!(parse(text), Err(PolicyFileError::Broken(..))),
            "{text}"
        );
    }
    // No policy has such a number.
    assert!(parse("{\"penlight_policy\": 1e999}").is_err());
    // Depth is no way to exhaust it.
    assert!(parse(&"[".repeat(60_000)).is_err());
}

#[test]
fn what_is_no_policy_file() {
    for text in [
        "[]",
        "7",
        "null",
        "\"penlight_policy\"",
        "{}",
        "{\"name\": \"x\", \"settings\": {}}",
        "{\"penlight_policy\": \"1\", \"name\": \"x\", \"settings\": {}}",
        "{\"penlight_policy\": 0, \"name\": \"x\", \"settings\": {}}",
        "{\"penlight_policy\": 1.0, \"name\": \"x\", \"settings\": {}}",
    ] {
        assert_eq!(
            refused(text),
            "This is not a policy file: it has no \"penlight_policy\": 1 in it.",
            "{text}"
        );
    }
}

/// A newer file may have what is not known here: it is the version that is named.
#[test]
fn a_newer_version() {
    assert_eq!(
        refused("{\"penlight_policy\": 2, \"valid_until\": 7, \"settings\": []}"),
        "\"penlight_policy\" is 2: the file is for a newer Penlight. This one reads version 1."
    );
}

#[test]
fn keys_that_there_are_not() {
    assert_eq!(
        refused("{\"penlight_policy\": 1, \"name\": \"x\", \"settings\": {}, \"author\": \"y\"}"),
        "\"author\" is not part of a policy file. It has \"penlight_policy\", \"name\" and \"settings\"."
    );
    assert_eq!(
        refused(&with("\"water.sips\": 3")),
        "\"water.sips\" in \"settings\" is not a setting. All settings stand on this page and in a \
         file saved from it."
    );
    // A stranger's key neither fills the page nor breaks its line.
    let words = refused(&with(&format!("\"\\n\\u0007{}\": 3", "x".repeat(5_000))));
    assert!(words.len() < 200, "{words}");
}

#[test]
fn a_key_that_stands_there_twice() {
    let twice = |key: &str| format!("\"{key}\" stands there twice. Keep one.");
    assert_eq!(
        refused(&with("\"sips.first\": 3, \"sips.first\": 3")),
        twice("sips.first")
    );
    assert_eq!(
        refused("{\"penlight_policy\": 1, \"name\": \"x\", \"name\": \"y\", \"settings\": {}}"),
        twice("name")
    );
}

#[test]
fn names() {
    let named = |name: &str| {
        format!("{{\"penlight_policy\": 1, \"name\": {name}, \"settings\": {{\"sips.first\": 2}}}}")
    };
    let over = format!("\"{}\"", "x".repeat(61));
    for bad in [
        "\"\"",
        "\" \"",
        "\" Ward\"",
        "\"Ward \"",
        "7",
        "null",
        "\"a\\nb\"",
        "\"a\\u0000b\"",
        "\"a\\u202eb\"",
        "\"a\\u200bb\"",
        &over,
    ] {
        assert_eq!(
            refused(&named(bad)),
            "\"name\" is a text of 1 to 60 characters in one line.",
            "{bad}"
        );
    }
    assert!(matches!(
        parse("{\"penlight_policy\": 1, \"settings\": {}}"),
        Err(PolicyFileError::Name)
    ));
    for good in [
        "x",
        "Ward 4, \\\"spring\\\" \\\\ 2",
        "Station f\u{fc}r \u{1f441}",
        &"\u{e4}".repeat(60),
    ] {
        let policy = parse(&named(&format!("\"{good}\""))).unwrap();
        assert_eq!(parse(&write(&policy)).unwrap(), policy, "{good}");
    }
}

/// A handover that names Penlight's own policy means it.
#[test]
fn penlights_name_is_kept_for_its_own() {
    let text = write(&Policy::default());
    for changed in [
        text.replace("\"sips.first\": 3", "\"sips.first\": 2"),
        text.replace("default 1", "default 2"),
        text.replace("default 1", "DEFAULT 1"),
    ] {
        assert_eq!(
            refused(&changed),
            "\"name\" may not begin like that of Penlight's own policy. Give this one a name of its own."
        );
    }
}

#[test]
fn settings_that_are_none() {
    for text in [
        "{\"penlight_policy\": 1, \"name\": \"x\"}",
        "{\"penlight_policy\": 1, \"name\": \"x\", \"settings\": []}",
        "{\"penlight_policy\": 1, \"name\": \"x\", \"settings\": null}",
    ] {
        assert_eq!(
            refused(text),
            "\"settings\" must be there: names and values between { and }."
        );
    }
}

/// Every setting, one step out of its range on either side, and of every other kind.
#[test]
fn values_that_no_setting_takes() {
    for setting in SETTINGS {
        let mut bad = vec![
            "null",
            "[]",
            "{}",
            "8.5",
            "-1",
            "99999999999",
            "1e3",
            "\"\"",
            "\"8\"",
        ]
        .into_iter()
        .map(str::to_owned)
        .collect::<Vec<_>>();
        match setting.kind {
            Kind::Whole { least, most, .. } => {
                bad.extend([
                    (least - 1).to_string(),
                    (most + 1).to_string(),
                    "true".to_owned(),
                ]);
            }
            Kind::OnOff => bad.extend(["0", "1", "\"on\""].map(str::to_owned)),
            Kind::OneOf(_) => bad.extend(["0", "true", "\"a\""].map(str::to_owned)),
        }
        for value in bad {
            assert_eq!(
                refused(&with(&format!("\"{}\": {value}", setting.key))),
                format!(
                    "\"{}\" in \"settings\": allowed is {}.",
                    setting.key,
                    setting.allowed()
                ),
                "{value}"
            );
        }
    }
}

#[test]
fn settings_that_contradict_each_other() {
    for (settings, words) in [
        (
            "\"breathing.block-at-or-below\": 10, \"breathing.caution-at-or-below\": 10",
            "\"breathing.block-at-or-below\" in \"settings\" must be lower than \
             \"breathing.caution-at-or-below\".",
        ),
        (
            "\"breathing.block-at-or-above\": 22, \"breathing.caution-at-or-above\": 22",
            "\"breathing.caution-at-or-above\" in \"settings\" must be lower than \
             \"breathing.block-at-or-above\".",
        ),
        (
            "\"breathing.spo2-block-at-or-below\": 94, \"breathing.spo2-caution-at-or-below\": 93",
            "\"breathing.spo2-block-at-or-below\" in \"settings\" must be lower than \
             \"breathing.spo2-caution-at-or-below\".",
        ),
        (
            "\"sips.first\": 5, \"sips.second\": 3",
            "\"sips.first\" in \"settings\" must not be higher than \"sips.second\".",
        ),
        // The one that is left out has its default.
        (
            "\"sips.second\": 10, \"sips.third\": 5",
            "\"sips.second\" in \"settings\" must not be higher than \"sips.third\".",
        ),
    ] {
        assert_eq!(refused(&with(settings)), words);
    }
    assert!(parse(&with("\"sips.first\": 5, \"sips.second\": 5")).is_ok());
}

#[test]
fn a_file_of_10_mb_is_not_even_looked_at() {
    let text = format!("{}{}", with(""), " ".repeat(10_000_000));
    assert_eq!(
        refused(&text),
        "The file is too large: a policy file has at most 64 KB."
    );
    let full = format!("{}{}", with(""), " ".repeat(MOST_BYTES - with("").len()));
    assert!(parse(&full).is_ok());
    assert!(parse(&format!("{full} ")).is_err());
}

// What a setting changes.

/// Key, value in a file; the one flag that it is meant to change, by rule, and its level then.
type Effect = (&'static str, &'static str, &'static str, Level);

fn flagged(exam: &Exam) -> Vec<(String, Level, String)> {
    flags(ScreenId::Swallow.screen(), exam)
        .into_iter()
        .map(|f| (f.rule().id.to_owned(), f.level(), f.reason().to_owned()))
        .collect()
}

/// Under the setting the flags differ in those of one rule, now at this level, and in no other.
#[track_caller]
fn changes(exam: &Exam, (key, value, rule, level): Effect) {
    let policy = parse(&with(&format!("\"{key}\": {value}"))).unwrap();
    let (before, after) = (
        flagged(exam),
        flagged(&Exam {
            policy,
            ..exam.clone()
        }),
    );
    let new: Vec<_> = after.iter().filter(|f| !before.contains(f)).collect();
    assert!(!new.is_empty(), "{key}: nothing changed");
    for flag in &new {
        assert_eq!((flag.0.as_str(), flag.1), (rule, level), "{key}: {flag:?}");
    }
    // Nothing else went, but what the new flag stands in for.
    let gone: Vec<_> = before.iter().filter(|f| !after.contains(f)).collect();
    for flag in gone {
        assert!(
            flag.0 == rule || ["water.clear", "dry.none"].contains(&flag.0.as_str()),
            "{key}: lost {flag:?}"
        );
    }
}

fn clear() -> Exam {
    exam_with_water(water())
}

fn breathing_at(rate: i32, spo2: Option<i32>) -> Exam {
    let mut trial = trial(TaskId::Breathing, &[]);
    number(&mut trial, breathing::TYPED, rate * 10);
    if let Some(spo2) = spo2 {
        number(&mut trial, breathing::SATURATION, spo2 * 10);
    }
    let mut exam = clear();
    exam.trials[0] = trial;
    exam
}

fn answering(item: &str, exception: &str) -> Exam {
    let mut exam = clear();
    exam.gate.0.insert(item.to_owned(), exception.to_owned());
    exam
}

#[test]
fn a_setting_changes_its_flag_and_nothing_else() {
    use Level::*;
    let requests = answering("requests", "no");
    changes(
        &requests,
        ("gate.requests-close", "true", "gate.requests", Incomplete),
    );
    let suction = answering("suction", "none");
    changes(
        &suction,
        ("gate.no-suction-closes", "true", "gate.suction", Incomplete),
    );

    // A cup begun 30 minutes after readiness was asked.
    let mut waited = clear();
    let asked = waited.now;
    let later = |minutes: i64| {
        asked.next(Stamp {
            wall: Millis(minutes * 60_000),
            ..Stamp::default()
        })
    };
    let ready = Group::Ready.items().map(|i| (i.id.to_owned(), asked));
    waited.asked.extend(ready);
    let is_old = |e: &Exam| {
        let asked = fresh::ready_at(e).unwrap();
        asked.is_older(later(30), e.policy.moment_stands())
    };
    assert!(!is_old(&waited));
    waited.policy = parse(&with("\"gate.ready-minutes\": 15")).unwrap();
    assert!(is_old(&waited));
    // Orders that were asked after five hours ago.
    let old = |e: &Exam, now| fresh::is_group_old(Group::Orders, e, now);
    let orders = Group::Orders.items().map(|i| (i.id.to_owned(), asked));
    waited.asked.extend(orders);
    assert!(!old(&waited, later(300)));
    waited.policy = parse(&with("\"gate.orders-hours\": 4")).unwrap();
    assert!(old(&waited, later(300)));

    let rate = |rate| breathing_at(rate, None);
    changes(
        &rate(9),
        (
            "breathing.block-at-or-below",
            "9",
            "breathing.rate",
            Incomplete,
        ),
    );
    changes(
        &rate(24),
        (
            "breathing.block-at-or-above",
            "24",
            "breathing.rate",
            Incomplete,
        ),
    );
    changes(
        &rate(12),
        (
            "breathing.caution-at-or-below",
            "12",
            "breathing.rate",
            Note,
        ),
    );
    changes(
        &rate(20),
        (
            "breathing.caution-at-or-above",
            "20",
            "breathing.rate",
            Note,
        ),
    );
    let spo2 = |spo2| breathing_at(16, Some(spo2));
    changes(
        &spo2(92),
        (
            "breathing.spo2-block-at-or-below",
            "92",
            "breathing.spo2",
            Incomplete,
        ),
    );
    changes(
        &spo2(96),
        (
            "breathing.spo2-caution-at-or-below",
            "96",
            "breathing.spo2",
            Note,
        ),
    );

    let mut seventeen = exam_with_dry(dry(&[5_000]));
    seventeen.age = Some(Age::Years(17));
    let policy = parse(&with("\"dry.from-years\": 18")).unwrap();
    let stepped_aside = flagged(&Exam {
        policy,
        ..seventeen.clone()
    });
    assert!(
        flagged(&seventeen)
            .iter()
            .any(|f| f.0 == "dry.few" && f.1 == Refer)
    );
    assert!(
        stepped_aside
            .iter()
            .any(|f| f.0 == "dry.adults" && f.1 == Note && f.2.contains("18"))
    );

    let none = exam_with_dry(dry(&[]));
    assert!(
        flagged(&none)
            .iter()
            .any(|f| f.0 == "dry.none" && f.1 == Refer)
    );
    changes(&none, ("dry.none-stops", "true", "dry.none", Stop));

    let mut throat = water();
    mark(&mut throat, MarkKind::Sign(Sign::ThroatClear), at(6_000));
    changes(
        &exam_with_water(throat),
        (
            "water.throat-clear-refers",
            "true",
            "water.throat-clear",
            Refer,
        ),
    );
    let mut child = clear();
    child.age = Some(Age::Years(4));
    child.trials.retain(|t| t.task != TaskId::Water90);
    let policy = parse(&with("\"water.from-years\": 5")).unwrap();
    let aside = flagged(&Exam { policy, ..child });
    let said: Vec<_> = aside.iter().filter(|f| f.0.starts_with("water.")).collect();
    assert_eq!(said.len(), 1);
    assert_eq!(
        said[0].2,
        "The 90 mL water test is not given under 5 years."
    );
}

/// A setting that no flag of these examinations turns on leaves every one as it is.
#[test]
fn no_other_setting_touches_a_clear_screen() {
    let exam = breathing_at(16, Some(98));
    let before = flagged(&exam);
    for setting in SETTINGS {
        for value in 0..200 {
            let mut policy = Policy::default();
            if setting.takes(value) {
                (setting.set)(&mut policy, value);
                assert_eq!(
                    flagged(&Exam {
                        policy,
                        ..exam.clone()
                    }),
                    before,
                    "{}",
                    setting.key
                );
            }
        }
    }
}

#[test]
fn the_wait_when_drowsy_is_said_where_it_holds_up_the_water() {
    let mut exam = answering("awake", "drowsy");
    exam.policy = parse(&with("\"gate.drowsy-wait\": 60")).unwrap();
    let advice: Vec<_> = holds(TaskId::Water90, &exam)
        .into_iter()
        .map(|h| h.advice)
        .collect();
    assert_eq!(advice, ["Wait about 60 minutes, then ask again."]);
}

#[test]
fn what_is_usual_follows_the_bands() {
    let policy = parse(&with("\"breathing.caution-at-or-above\": 19")).unwrap();
    let told = flagged(&Exam {
        policy,
        ..breathing_at(20, None)
    });
    assert!(
        told.iter().any(|f| f.2.ends_with("(12 to 18 is usual)")),
        "{told:?}"
    );
}

// Any policy.

fn any_policy() -> impl Strategy<Value = Policy> {
    let values = prop::collection::vec(any::<Index>(), SETTINGS.len());
    ("[A-Za-z0-9 .,\"\\\\äé-]{1,58}", values).prop_filter_map("in order", |(name, values)| {
        let mut policy = Policy {
            name: format!("x{name}x"),
            ..Policy::default()
        };
        for (setting, value) in SETTINGS.iter().zip(values) {
            let taken: Vec<i32> = (0..200).filter(|v| setting.takes(*v)).collect();
            (setting.set)(&mut policy, *value.get(&taken));
        }
        out_of_order(&policy).is_none().then_some(policy)
    })
}

fn config() -> ProptestConfig {
    ProptestConfig {
        cases: 400,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn written_and_read_it_is_the_same(policy in any_policy()) {
        prop_assert_eq!(parse(&write(&policy)).unwrap(), policy);
    }

    /// Whatever happens to a file on its way: no panic, and no value that its setting does not
    /// take.
    #[test]
    fn damage_never_yields_a_policy_outside_the_ranges(
        policy in any_policy(),
        damage in prop::collection::vec((any::<Index>(), any::<u8>(), 0_u8..3), 1..6),
    ) {
        let mut bytes = write(&policy).into_bytes();
        for (at, byte, how) in damage {
            let at = at.index(bytes.len());
            match how {
                0 => bytes[at] = byte,
                1 => bytes.insert(at, byte),
                _ => { bytes.remove(at); }
            }
        }
        sound(&String::from_utf8_lossy(&bytes))?;
    }

    /// Digits in place of digits: what a slip in an editor makes, and mostly still readable.
    #[test]
    fn other_digits_never_yield_a_policy_outside_the_ranges(
        policy in any_policy(), digits in prop::collection::vec((any::<Index>(), 0_u8..10), 1..8),
    ) {
        let mut bytes = write(&policy).into_bytes();
        let places: Vec<usize> = (0..bytes.len()).filter(|i| bytes[*i].is_ascii_digit()).collect();
        for (at, digit) in digits {
            bytes[*at.get(&places)] = b'0' + digit;
        }
        sound(&String::from_utf8_lossy(&bytes))?;
    }
}

fn sound(text: &str) -> Result<(), TestCaseError> {
    match parse(text) {
        Ok(policy) => {
            for setting in SETTINGS {
                prop_assert!(setting.takes((setting.get)(&policy)), "{}", setting.key);
            }
            prop_assert_eq!(out_of_order(&policy), None);
            prop_assert!((1..=Policy::MOST_NAME).contains(&policy.name.chars().count()));
        }
        Err(error) => prop_assert!(error.to_string().ends_with('.')),
    }
    Ok(())
}

/// The judging functions that are handed a setting start from the same defaults.
#[test]
fn defaults_agree_with_those_of_the_rules() {
    let policy = Policy::default();
    let taps = breath_taps::Setting::default();
    assert_eq!(taps.least_intervals.get(), policy.tap_intervals as usize);
    assert_eq!(i32::from(taps.spread), policy.tap_spread);
    let plan = sips::Plan::default();
    let sizes = [policy.sip_first, policy.sip_second, policy.sip_third];
    assert_eq!(plan.sizes, sizes.map(|ml| Millilitres::whole(ml as u8)));
    assert_eq!(i32::from(plan.repeats), policy.sip_repeats);
    assert_eq!(six_signs::Setting::default().gag_counts, policy.gag_counts);
    assert_eq!(policy.small_water_wording, Wording::A);
}

#[test]
fn keys_are_found_by_name() {
    assert_eq!(find("sips.first").map(|s| s.field), Some("sip_first"));
    assert!(find("sips").is_none());
}

/// A design choice is a setting, or is listed as fixed with its reason.
#[test]
fn every_design_choice_is_a_setting_or_said_to_be_fixed() {
    for setting in SETTINGS {
        let known = rules::ALL.iter().any(|rule| rule.id == setting.read_by);
        let page = ["handover", "visit"].contains(&setting.read_by);
        assert!(known || page, "{}", setting.key);
    }
    let listed: Vec<_> = fixed().map(|(what, _)| what).collect();
    for rule in rules::ALL {
        let choice = matches!(rule.basis, Basis::LocalPolicy { .. });
        let set = SETTINGS.iter().any(|s| s.read_by == rule.id);
        assert_eq!(listed.contains(&rule.says), choice && !set, "{}", rule.id);
    }
    assert!(fixed().all(|(_, why)| !why.is_empty()));
    for rule in [
        &rules::GATE_NEW_WEAKNESS,
        &rules::GATE_CONSENT,
        &rules::WATER_CHOKE,
        &rules::FLOW_BORDER,
    ] {
        assert!(listed.contains(&rule.says), "{}", rule.id);
    }
}

#[test]
fn how_far_saturation_may_fall_is_a_setting() {
    let mut drunk = water();
    number(&mut drunk, saturation::LOWEST, 920);
    let mut exam = exam_with_water(drunk);
    number(&mut exam.trials[0], breathing::SATURATION, 960);
    let fell = |exam: &Exam| flagged(exam).iter().any(|f| f.0 == "breathing.spo2-fall");
    assert!(fell(&exam));
    exam.policy = parse(&with("\"breathing.spo2-fall-stops\": 4")).unwrap();
    assert!(!fell(&exam));
}
