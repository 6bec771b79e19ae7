//! Going on past what is in the way: the keys that stand in records, and the ids of earlier versions.

use crate::support::*;
use penlight::clinical::decision::in_the_way::{InTheWay, standing};
use penlight::clinical::findings::answered::Answered;
use penlight::clinical::findings::breathing::{Method, Reading, Spo2};
use penlight::clinical::findings::ended::EndedEarly;
use penlight::clinical::findings::fact::{Seen, SignFact, With};
use penlight::clinical::findings::flag::{Domain, Flag, Level};
use penlight::clinical::findings::gate;
use penlight::clinical::findings::gate::State;
use penlight::clinical::findings::go_on::GoOn;
use penlight::clinical::findings::in_the_way::Obstacle;
use penlight::clinical::findings::moment::Moment;
use penlight::clinical::findings::old::Old;
use penlight::clinical::findings::oral::{Found, Severity, Sides};
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::gate_items::Group;
use penlight::clinical::knowledge::oral;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::breathing;
use penlight::measure::time::Millis;
use penlight::record::event::Event;

fn cough() -> Flag {
    rules::WATER_COUGH.flag(
        Level::Refer,
        Domain::EatingDrinking,
        SignFact {
            sign: Sign::Cough,
            seen: Seen::After(Millis(3_000)),
            times: 1,
            too_late: false,
            with: With::Cup { stopped: false },
        },
    )
}

fn old(what: Answered, trial: Option<u32>) -> InTheWay {
    let at = Moment::default().next(at(0));
    Obstacle::Old(Old {
        what,
        trial,
        at,
        older_than: None,
    })
}

fn reading(
    reading: Reading,
    under: &'static penlight::clinical::knowledge::rule::Rule,
) -> InTheWay {
    Obstacle::Breathing {
        reading,
        under,
        go_on: GoOn::WithReason,
        said: cough(),
    }
}

/// The keys stand in records: a change here loses reasons that were given.
#[test]
fn the_key_of_each_thing() {
    let saliva = gate::find("saliva").unwrap();
    let worst = &saliva.exceptions[0];
    let found = |item: &str, what: &str, side, severity| {
        let item = oral::find(item).unwrap();
        let exception = item.exceptions.iter().find(|e| e.id == what).unwrap();
        Found::new(item, exception, side, severity).unwrap()
    };
    let state = r#"[["water.cough",{"Sign":{"sign":"Cough","seen":{"After":3000},"times":1,"too_late":false,"with":{"Cup":{"stopped":false}}}}]]"#;
    let seen = |of, task| Obstacle::Seen {
        of,
        tried: 2,
        task,
        seen: vec![cough()],
        unsaid: false,
    };
    let (water, own) = (TaskId::Water90, TaskId::Own);
    let spo2 = Spo2 {
        percent: 88.4,
        oxygen: None,
        target: None,
    };
    let table: Vec<(InTheWay, String)> = vec![
        (
            Obstacle::NotFor {
                task: water,
                said: cough(),
            },
            "not-for.Water90".to_owned(),
        ),
        (
            Obstacle::Ended {
                why: EndedEarly::Refused,
                water_from_years: 2,
            },
            "ended".to_owned(),
        ),
        (
            Obstacle::Gate {
                item: saliva,
                exception: worst,
                state: State::Block,
            },
            "gate.saliva.no".to_owned(),
        ),
        (
            Obstacle::AgainstGate {
                found: found("mouth.moist", "pooled", None, None),
                item: saliva,
                worst,
                go_on: GoOn::SlpWithReason,
            },
            "oral.mouth.moist.pooled".to_owned(),
        ),
        (
            Obstacle::Child { task: TaskId::Sips },
            "child.Sips".to_owned(),
        ),
        (
            Obstacle::CouldBeNew {
                weak: vec![
                    found(
                        "lips.smile",
                        "less",
                        Some(Sides::Left),
                        Some(Severity::Mild),
                    ),
                    found("speech", "slurred", None, None),
                ],
            },
            r#"weakness.[["lips.smile","less","Left","Mild"],["speech","slurred",null,null]]"#
                .to_owned(),
        ),
        (
            Obstacle::Choked {
                task: own,
                at: vec![Millis(1_780_000_000_000), Millis(1_780_000_060_000)],
                missing: Vec::new(),
            },
            "choked.Own.1780000000000+1780000060000".to_owned(),
        ),
        (Obstacle::GateOpen { open: 3 }, "gate.open".to_owned()),
        (
            old(Answered::Group(Group::Ready), None),
            "old.ready.1780000000000".to_owned(),
        ),
        (
            old(Answered::Breaths, None),
            "old.breath.1780000000000".to_owned(),
        ),
        (
            old(Answered::Saturation, None),
            "old.breath-spo2.1780000000000".to_owned(),
        ),
        (
            old(Answered::Voice, Some(4)),
            "old.voice.4.1780000000000".to_owned(),
        ),
        (
            reading(Reading::NoCount(None), &rules::BREATHING_NOT_COUNTED),
            "breathing.not-counted".to_owned(),
        ),
        (
            reading(Reading::Rate(28, Method::Counted), &rules::BREATHING_RATE),
            "breathing.rate.28".to_owned(),
        ),
        (
            reading(Reading::Spo2(spo2), &rules::BREATHING_CHILD),
            "breathing.child.88".to_owned(),
        ),
        (
            Obstacle::WetBefore { task: water },
            "water.wet-before.Water90".to_owned(),
        ),
        (
            Obstacle::Cracker {
                go_on: GoOn::SlpWithReason,
                said: cough(),
                seen: Vec::new(),
            },
            format!("cracker.{state}"),
        ),
        (
            Obstacle::DrySwallows {
                go_on: GoOn::WithReason,
                said: cough(),
            },
            format!("dry.{state}"),
        ),
        (seen(water, water), format!("again.Water90.2.{state}")),
        (seen(water, own), format!("after.Water90.2.Own.{state}")),
        (
            Obstacle::Running {
                of: own,
                tried: 1,
                task: water,
            },
            "runs.Own.1.Water90".to_owned(),
        ),
        (
            Obstacle::Watched {
                of: own,
                tried: 1,
                task: water,
            },
            "watch.Own.1.Water90".to_owned(),
        ),
        (
            Obstacle::SmallSipsFirst {
                task: water,
                tried: 0,
                said: cough(),
            },
            format!("first.Water90.0.{state}"),
        ),
    ];
    for (thing, key) in table {
        assert_eq!(thing.key(), key);
    }
}

/// Visits in which the ids of `went-on-old-ids.tsv` were recorded.
fn scene(name: &str) -> Scene {
    let child = |years| Scene::new(Age::Years(years), Role::Slp);
    let mut s = adult(Role::Slp);
    let fine = |s: &mut Scene| {
        s.gate(&[]).breaths(16).dry(&[2_000, 9_000, 17_000]);
    };
    match name {
        "new" => {}
        "gate" => {
            s.gate(&[("awake", "drowsy"), ("saliva", "no"), ("mouth", "no")]);
        }
        "mouth" => {
            fine(&mut s);
            s.examined(&[("mouth.moist", "pooled"), ("lips.smile", "less")]);
        }
        "child" => {
            s = child(8);
            s.gate(&[]).breaths(24).number(breathing::SATURATION, 88);
        }
        "fast" => {
            s.gate(&[]).breaths(30).number(breathing::SATURATION, 88);
        }
        "choked" => {
            fine(&mut s);
            s.chokes(200_000, "clear");
        }
        "later" => {
            s.gate(&[]).spo2(97).dry(&[2_000, 9_000, 17_000]);
            s.now = 2 * 3_600_000;
            s.say(Event::Role(Role::Slp));
        }
        "wet" => {
            fine(&mut s);
            s.open(TaskId::Water90);
            s.choose("voice-before", "wet");
        }
        "few" => {
            s.gate(&[]).breaths(16).dry(&[2_000]);
        }
        "few twice" => {
            s.gate(&[]).breaths(16).dry(&[2_000]).dry(&[2_000, 9_000]);
        }
        "cough" => {
            fine(&mut s);
            s.water(&[(Sign::Cough, 3_000)]);
            s.open(TaskId::Cracker);
            s.choose("teeth", "against").choose("allergy", "fine");
        }
        "stepped" => {
            s = stepped(Role::Slp, 97);
        }
        "running" => {
            fine(&mut s);
            s.open(TaskId::Own);
            s.mark(100_000, MarkKind::Start);
        }
        "watched" => {
            fine(&mut s);
            s.open(TaskId::Own);
            s.mark(100_000, MarkKind::Start);
            s.mark(102_000, MarkKind::End);
        }
        other => panic!("no scene {other}"),
    }
    if name == "stepped" {
        assert_eq!(s.visit.screen, Some(ScreenId::Stepped));
    }
    s
}

/// A key without the state of what was seen, but for what tells one of a kind from another.
fn stateless(key: &str) -> String {
    let (before, state) = key.split_once('[').unwrap_or((key, ""));
    let which = [
        "Earlier",
        "Newest",
        "NotCounted",
        "DrinkWentWrong",
        "NoTeeth",
    ];
    let which = which.into_iter().find(|which| state.contains(which));
    let told = before == "dry." || before == "cracker.";
    format!("{before}{}", which.filter(|_| told).unwrap_or_default())
}

/// Ids as earlier versions recorded them, each with what it is taken for.
#[test]
fn ids_of_earlier_versions_are_read() {
    let table = include_str!("../fixtures/went-on-old-ids.tsv");
    let mut read = 0;
    for line in table.lines().skip(1) {
        let fields: Vec<&str> = line.split('\t').collect();
        let [name, id, meant] = fields.as_slice() else {
            panic!("{line}");
        };
        let mut s = scene(name);
        s.say(Event::WentOn {
            hold: (*id).to_owned(),
            because: "needed for the assessment".to_owned(),
            by: Role::Slp,
            says: "What stood there".to_owned(),
            initials: None,
            ground: None,
        });
        let exam = &s.visit.exam;
        let on = &exam.went_on[0];
        let past = exam.gone_past.get(&on.hold);
        if *meant == "-" {
            assert!(past.is_none(), "{id}: {past:?}");
            // Kept as it is.
            assert_eq!(on.hold, *id);
        } else {
            assert_eq!(stateless(&on.hold), *meant, "{id}");
            assert_eq!(past.map(InTheWay::key).as_ref(), Some(&on.hold));
            let all = TaskId::ALL.iter();
            let mut held = all.flat_map(|task| holds(*task, exam));
            assert!(held.all(|h| h.id != on.hold), "{id} is asked for again");
        }
        read += 1;
    }
    assert!(read > 20);
}

/// What a key names stands in the way before it is gone past, and what was gone past is not asked
/// again; a new sign is.
#[test]
fn a_reason_is_found_again_by_its_key() {
    let mut s = scene("cough");
    let held = holds(TaskId::Own, &s.visit.exam);
    assert_eq!(held.len(), 1, "{held:?}");
    s.say(Event::WentOn {
        hold: held[0].id.clone(),
        because: "person's informed wish".to_owned(),
        by: Role::Slp,
        says: String::new(),
        initials: None,
        ground: None,
    });
    assert!(holds(TaskId::Own, &s.visit.exam).is_empty());
    assert_eq!(
        standing(TaskId::Own, &s.visit.exam, s.visit.exam.now).len(),
        1
    );
    s.trial = s.visit.exam.latest(TaskId::Water90).unwrap().number;
    s.mark(113_000, MarkKind::Sign(Sign::Cough));
    assert_eq!(holds(TaskId::Own, &s.visit.exam).len(), 1);
}
