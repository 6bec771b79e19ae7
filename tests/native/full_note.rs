//! The full note: everything behind the nursing text, for the record of speech-language pathology.

use crate::support::*;
use penlight::clinical::findings::oral::{Cue, FoundId, Reason, Seen, Severity, Sides, Touches};
use penlight::clinical::findings::trial::{Answer, MarkKind};
use penlight::clinical::knowledge::oral::Region;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::oral::flags::WEAKNESS;
use penlight::handover::{full_note, nursing};
use penlight::record::event::{Action, Event, Route, Text, Versions};

fn note(s: &Scene) -> String {
    full_note::write(&s.visit, &clock("14:31")).unwrap().text
}

fn found(what: &str, side: Sides, severity: Option<Severity>) -> Seen {
    Seen::Found(vec![FoundId {
        what: what.to_owned(),
        side: Some(side),
        severity,
    }])
}

/// A mixed examination: a weak left face, a tongue that disagrees with its push, touch counted,
/// one region not tested, and repeated syllables.
fn mixed() -> Scene {
    let mut s = Scene::new(Age::Years(72), Role::Slp);
    s.on(ScreenId::OralMotor);
    s.say(Event::Gate(vec![(WEAKNESS.to_owned(), "known".to_owned())]));
    let put = |item: &str, seen: Seen| (item.to_owned(), seen);
    s.say(Event::Oral(vec![
        put(
            "face.rest",
            found("droop", Sides::Left, Some(Severity::Moderate)),
        ),
        put("face.forehead", Seen::AsExpected),
        put("face.eyes", Seen::AsExpected),
        put("neck.rest", Seen::AsExpected),
        put("lips.smile", found("pulled", Sides::Right, None)),
        put("tongue.out", found("to-side", Sides::Left, None)),
        put("tongue.push", Seen::AsExpected),
        put(
            "jaw.mm",
            Seen::Measured {
                tenths: Some(350),
                front_teeth: Some(true),
            },
        ),
        put(
            "touch.cheek",
            Seen::Touched {
                left: Touches {
                    felt: 1,
                    less: 1,
                    missed: 1,
                },
                right: Touches {
                    felt: 3,
                    less: 0,
                    missed: 0,
                },
            },
        ),
        put("gag", Seen::NotTested(Reason::Refused)),
    ]));
    s.say(Event::OralCue {
        region: Region::Face,
        cue: Some(Cue::Copied),
    });
    s.open(TaskId::SyllablePa);
    s.choose("how", "5s");
    s.mark(0, MarkKind::Start);
    for n in 0..30 {
        s.mark(n * 166, MarkKind::Tap);
    }
    s.mark(5_010, MarkKind::WindowOver)
        .choose("sound", "correct");
    s.say(Event::Decided {
        verdict: "no-decision".to_owned(),
        reasons: Vec::new(),
        versions: Versions {
            app: "0.1.0".to_owned(),
            rules: "2".to_owned(),
        },
        policy: Policy::OURS.to_owned(),
    });
    s
}

#[test]
fn it_has_everything_behind_the_nursing_text() {
    let s = mixed();
    let text = note(&s);
    let first: Vec<&str> = text.lines().take(2).collect();
    assert_eq!(first[0], full_note::BEGINS);
    assert!(first[1].starts_with("EXAMINED: "), "{text}");
    for words in [
        // Each task with what was measured, its unit and the published value.
        "pa-pa-pa:\n- 30 ",
        "syllables per second",
        "Published: mean",
        "n = ",
        "Longest \"ah\": not done (no reason given).",
        // By region, with side and severity, and how it was asked for.
        "- Face and neck (asked for: copied): face at rest: droops on the left, moderate. Everything else looked at: as expected.",
        "- Lips and cheeks: wide smile: mouth pulled to the right. Not tested: ",
        "mouth opens 35 millimetres",
        "- Feeling: touch on the cheek: left 2 of 3 felt, 1 of them less, right 3 of 3 felt.",
        "- Soft palate: Not tested: soft palate (no reason given).",
        "gag (refused)",
        // By nerve.
        "Cranial nerve VII: face\n",
        "- Face at rest: droops on the left, moderate. Weak side: left.",
        "Mouth pulled to the right on smiling: face (cranial nerve VII) weak on the left. [weak-side.smile. ",
        "upper motor neuron pattern",
        "Cranial nerve XII: tongue\n",
        "No place of a lesion and no diagnosis is meant.",
        // Flags with their rules.
        "[mouth.opening. Published: ",
        "Policy: Penlight default 1.",
        "Penlight 0.1.0, rules and published values 2.",
        "silent aspiration is not seen",
    ] {
        assert!(text.contains(words), "{words}\n\n{text}");
    }
    // What disagrees stands by itself, below the nerves, and once.
    let conflict = "but as expected: tongue into the right cheek. Shown together, not resolved";
    assert_eq!(text.matches(conflict).count(), 1, "{text}");
    let at = |words: &str| text.find(words).unwrap();
    assert!(at("FINDINGS THAT DISAGREE, NOT RESOLVED") > at("Cranial nerve XII"));
    assert!(at(conflict) > at("FINDINGS THAT DISAGREE, NOT RESOLVED"));
}

#[test]
fn the_nerves_stand_in_the_full_note_only() {
    let s = mixed();
    assert!(note(&s).contains("Cranial nerve"));
    let text = s.text().to_lowercase();
    for words in ["nerve", "neuron", "weak side", "lesion"] {
        assert!(!text.contains(words), "{words}: {text}");
    }
}

#[test]
fn a_swallow_screen_with_a_sign_says_first_what_to_do() {
    let mut s = Scene::new(Age::Years(72), Role::Slp);
    s.gate(&[("suction", "none")])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[(Sign::Cough, 20_300)]);
    s.plan(Action::NothingByMouth, "");
    let text = note(&s);
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(
        lines[1..4],
        [
            "REFER: speech-language pathology sees to it today.",
            "NOTHING BY MOUTH, tablets included, until assessed.",
            "Time-critical medicines: ask the prescriber now for another route.",
        ]
    );
    for words in [
        "WHY\n- Coughed 20 seconds after the last swallow of the 90 mL. [water.cough. ",
        "- Or enter a rate counted for 60 seconds elsewhere: 16 breaths per minute.",
        "3 in 30 seconds",
        "Voice before: Clear",
        "28.7 s coughed",
        "NO SIGN\n",
    ] {
        assert!(text.contains(words), "{words}\n\n{text}");
    }
    assert!(!text.contains("FACE, MOUTH AND THROAT"), "{text}");
}

#[test]
fn a_policy_of_its_own_is_named_with_what_differs() {
    let policy = Policy {
        name: "Ward 4".to_owned(),
        upright_minutes: 30,
        ..Policy::default()
    };
    let mut s = Scene::under(policy, Age::Adult, Role::Slp);
    s.gate(&[]);
    let text = note(&s);
    assert!(text.contains("Policy: Ward 4.\n- "), "{text}");
    assert!(text.contains(": 30 minutes."), "{text}");
}

/// Each text is corrected against the last one of its own kind; a record from before there were
/// two kinds reads as the nursing text.
#[test]
fn each_text_replaces_its_own_kind() {
    let mut s = mixed();
    let issue = |s: &mut Scene, which: Text, time: &str| {
        let clock = clock(time);
        let written = match which {
            Text::Nursing => nursing::write(&s.visit, &clock),
            Text::FullNote => full_note::write(&s.visit, &clock),
        }
        .unwrap();
        let text = written.text.clone();
        s.say(written.issued(Route::Copied, time));
        text
    };
    // A full note alone hands nothing over.
    issue(&mut s, Text::FullNote, "14:09");
    assert!(!s.visit.handed_over());
    assert!(!issue(&mut s, Text::Nursing, "14:10").contains("CORRECTED"));
    assert!(s.visit.handed_over());
    assert!(!issue(&mut s, Text::FullNote, "14:12").contains("CORRECTED"));
    assert!(!issue(&mut s, Text::Nursing, "14:14").contains("CORRECTED"));
    assert!(!issue(&mut s, Text::FullNote, "14:15").contains("CORRECTED"));
    s.say(Event::Oral(vec![(
        "palate.ah".to_owned(),
        found("pulled", Sides::Right, None),
    )]));
    let full = issue(&mut s, Text::FullNote, "14:20");
    assert!(
        full.starts_with("CORRECTED 14:20, replaces 14:15.\nFULL NOTE"),
        "{full}"
    );
    let nursing = issue(&mut s, Text::Nursing, "14:21");
    assert!(
        nursing.starts_with("CORRECTED 14:21, replaces 14:14.\nEXAMINED"),
        "{nursing}"
    );

    let old = r#"{"Issued":{"route":"Copied","text":"t","clock":"14:10"}}"#;
    let read: Event = serde_json::from_str(old).unwrap();
    assert!(matches!(
        read,
        Event::Issued {
            which: Text::Nursing,
            ..
        }
    ));
    assert_eq!(serde_json::to_string(&read).unwrap(), old);
}

/// Numbers, words and choices that were answered stand with their question and unit.
#[test]
fn answers_stand_with_their_question() {
    let mut s = Scene::new(Age::Years(72), Role::Slp);
    s.gate(&[]).breaths(16);
    let trial = s.open(TaskId::Water90);
    s.say(Event::Answer {
        trial,
        question: "not-valid".to_owned(),
        answer: Some(Answer::Choice("refused".to_owned())),
    });
    let text = note(&s);
    assert!(
        text.contains("90 mL of water without a pause: not done ("),
        "{text}"
    );
    assert!(
        text.contains("Dry swallows in 30 seconds: not done (no reason given)."),
        "{text}"
    );
}
