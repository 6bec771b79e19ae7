//! What somebody types changes nothing that the app concludes.
//!
//! The same presses twice: once with the app's own sentences in every field of free text, once with
//! harmless text of the same length. Verdict, headline, order, holds, cuts, and every word that was
//! not typed must be the same.
//!
//! `PENLIGHT_WALKS=5000` presses more visits.

use std::collections::BTreeSet;

use penlight::clinical::decision::verdict::Decision;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate::ITEMS;
use penlight::clinical::findings::go_on::Ground;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::{Age, Label, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::spec::{REMARK, Takes};
use penlight::handover::nursing::write;
use penlight::handover::{action, full_note};
use penlight::record::event::{Action, Event, Plan};
use penlight::record::head::Head;
use penlight::wording::verdict;
use penlight::wording::words::{capital, small};

use crate::support::*;

/// Sentences in which later code once looked for something.
const PLANTS: [&str; 12] = [
    "soup: later than lunch",
    "bread he choked on",
    "decided by the nurse?",
    "gone on despite this",
    "coughed",
    "choked",
    "voice turned wet or changed",
    "the team knows",
    "first count: 2 dry swallows",
    "gate.awake.drowsy",
    "again.Own.1.trial.cough: coughed",
    "2 more in the record",
];

/// Tasks with a field of free text, or by mouth.
const TASKS: [TaskId; 9] = [
    TaskId::Own,
    TaskId::Own,
    TaskId::Water90,
    TaskId::Sips,
    TaskId::TimedWater,
    TaskId::Cracker,
    TaskId::Meal,
    TaskId::Flow,
    TaskId::DrySwallow,
];

/// Presses a visit; `typed` gives what is typed, one text a field. Every other one is mild: nothing
/// refers, and something may be noted.
fn pressed(seed: u64, typed: &mut dyn FnMut() -> String) -> Scene {
    let mut dice = Dice(seed);
    if seed.is_multiple_of(2) {
        return mild(&mut dice, typed);
    }
    let mut s = adult(dice.of(&[Role::Slp, Role::Slp, Role::Screener]));
    s.on(dice.of(&[
        ScreenId::OwnTrials,
        ScreenId::OwnTrials,
        ScreenId::Swallow,
        ScreenId::Stepped,
        ScreenId::FullVisit,
    ]));
    let mut details = s.visit.details.clone().unwrap();
    details.label = Label::parse(&typed()).unwrap();
    details.age = dice.of(&[Some(Age::Years(72)), Some(Age::Years(9)), None]);
    s.say(Event::Details(details));
    s.gate(dice.of(&[&[], &[], &[("awake", "drowsy")], &[("new-weakness", "new")]]));
    s.breaths(dice.of(&[16, 16, 30]));
    if dice.below(3) > 0 {
        s.dry(&[2_000, 9_000, 17_000]);
    }
    for n in 0..1 + dice.below(5) {
        go_past(&mut s, &mut dice, typed);
        trial(
            &mut s,
            &mut dice,
            i64::try_from(n).unwrap() * 100_000,
            typed,
        );
    }
    s.say(Event::LastWell(typed()));
    match dice.below(8) {
        0 => s.say(Event::EndedEarly(EndedEarly::Withdrew)),
        1 => s.say(Event::Choking(at(900_000))),
        2 => s.examined(&[("speech", "slurred")]),
        3 => s.say(Event::Closed(typed())),
        4 => {
            let item = &ITEMS[dice.below(ITEMS.len())];
            let exception = dice.below(item.exceptions.len());
            let answer = (item.id.to_owned(), item.exceptions[exception].id.to_owned());
            s.say(Event::Gate(vec![answer]))
        }
        _ => &mut s,
    };
    if let Some(decision) = s.visit.decision().filter(|_| dice.below(3) > 0) {
        s.say(Event::Plan(Plan {
            action: Some(dice.of(&Action::ALL)),
            because: typed(),
            remark: typed(),
            ..action::standing(&decision, &s.visit.plan)
        }));
    }
    s
}

/// Own trials with what is only noted, or came too late.
fn mild(dice: &mut Dice, typed: &mut dyn FnMut() -> String) -> Scene {
    let mut s = own_trials(dice.of(&[Role::Slp, Role::Screener]));
    for n in 0..1 + dice.below(3) {
        let signs: &[(Sign, i64)] = dice.of(&[
            &[],
            &[(Sign::ThroatClear, 3_000)],
            &[(Sign::Pause, -500), (Sign::ThroatClear, 70_000)],
            &[(Sign::Cough, 61_500)],
            &[(Sign::Cough, 75_000)],
        ]);
        let from = 100_000 + 200_000 * i64::try_from(n).unwrap();
        s.given(TaskId::Own, from, signs);
        for field in ["own-what", "own-strategy-words", REMARK] {
            s.words(field, &typed());
        }
        for (_, after) in signs.iter().filter(|(_, after)| *after > 62_000) {
            let late = format!("late.{}", at(from + 2_000 + after).wall.0);
            s.choose(&late, "nothing");
        }
    }
    if dice.below(2) == 0 {
        let mut details = s.visit.details.clone().unwrap();
        details.label = Label::parse(&typed()).unwrap();
        s.say(Event::Details(details));
    }
    s
}

fn go_past(s: &mut Scene, dice: &mut Dice, typed: &mut dyn FnMut() -> String) {
    let by = s.visit.role;
    for hold in holds(dice.of(&TASKS), &s.visit.exam) {
        if hold.go_on.open_to(by) && dice.below(4) > 0 {
            s.say(Event::WentOn {
                hold: hold.id,
                because: typed(),
                by,
                says: String::new(),
                initials: None,
                ground: Some(Ground::OwnWords),
            });
        }
    }
}

fn trial(s: &mut Scene, dice: &mut Dice, from: i64, typed: &mut dyn FnMut() -> String) {
    let task = dice.of(&TASKS);
    let from = 200_000 + from;
    let after = [-500, 1_000, 30_000, 61_000, 65_000, 120_000];
    s.open(task);
    for question in ["allergy", "teeth", "diet-order"] {
        s.choose(question, "fine");
    }
    s.choose("voice-before", "clear").choose("cup-size", "100");
    s.number("sip", dice.of(&[3, 5, 10]));
    let words = |takes: &Takes| matches!(takes, Takes::Words(_));
    let questions = tasks::spec(task).questions.iter();
    let fields: Vec<&str> = questions
        .filter(|q| words(&q.takes))
        .map(|q| q.id)
        .chain([REMARK])
        .collect();
    for field in fields {
        if dice.below(4) > 0 {
            s.words(field, &typed());
        }
    }
    s.mark(from, MarkKind::Start);
    s.mark(from + 1_000, MarkKind::Tap);
    s.mark(from + 8_000, MarkKind::End);
    for _ in 0..dice.of(&[0, 0, 1, 1, 2]) {
        let kind = MarkKind::Sign(dice.of(&Sign::ALL));
        s.mark(from + 8_000 + dice.of(&after), kind);
    }
    s.mark(from + 68_030, MarkKind::WatchOver);
    s.choose("cup", "one-go").choose("cup-left", "empty");
    s.choose("voice-after", dice.of(&["clear", "clear", "wet"]));
}

/// All that the app concludes and tells, a line each.
fn concluded(s: &Scene) -> Vec<String> {
    let visit = &s.visit;
    let mut lines = Vec::new();
    let mut tell = |name: &str, what: String| lines.push(format!("{name}: {what}"));
    if let Some(decision) = visit.decision() {
        tell("verdict", decision.verdict.id().to_owned());
        tell(
            "headline",
            verdict::decided(&decision, visit.role).to_owned(),
        );
        let noted = decision.noted();
        tell("noted", format!("{:?}", noted.map(|n| (n.late, n.more))));
        let missing = action::missing(&decision, &visit.plan, &visit.exam);
        tell("missing for the text", format!("{missing:?}"));
        tell("suggested", format!("{:?}", action::suggested(&decision)));
        for (list, flags) in lists(&decision) {
            for flag in flags {
                let (rule, level) = (flag.rule().id, flag.level());
                tell(list, format!("{rule} {level:?} {:?}", flag.domain()));
                tell(list, flag.fact().key());
                tell(list, flag.reason());
            }
        }
    }
    for task in TaskId::ALL {
        for hold in holds(*task, &visit.exam) {
            let name = format!("{task:?}");
            tell(&name, format!("{} {:?}", hold.rule.id, hold.go_on));
            tell(&name, hold.id);
            tell(&name, format!("{} / {}", hold.says, hold.advice));
        }
    }
    let head = Head::of(visit);
    tell("head", format!("{:?} {}", head.state, head.unclosed));
    let clock = clock("14:31");
    for text in [write(visit, &clock), full_note::write(visit, &clock)] {
        for line in text.unwrap().text.lines() {
            tell("text", line.to_owned());
        }
    }
    lines
}

fn lists(decision: &Decision) -> [(&'static str, &[penlight::clinical::findings::flag::Flag]); 4] {
    [
        ("reasons", &decision.reasons),
        ("missing", &decision.missing),
        ("clear", &decision.clear),
        ("also", &decision.also),
    ]
}

/// Text that says nothing, of this length; the first letters tell one field from another.
fn harmless(n: usize, length: usize) -> String {
    let letters: Vec<char> = "bcdfghjklm".chars().collect();
    let digit = |place: usize| letters[n / 10_usize.pow(place as u32) % 10];
    let code = ['q', 'z', digit(2), digit(1), digit(0)];
    code.into_iter()
        .chain(std::iter::repeat('q'))
        .take(length)
        .collect()
}

/// The app's own sentences, as they come out of visits with harmless text.
fn catalogue(visits: u64) -> Vec<String> {
    let mut all: BTreeSet<String> = PLANTS.iter().map(|plant| (*plant).to_owned()).collect();
    for seed in 0..visits {
        let mut n = 0;
        let s = pressed(seed, &mut || {
            n += 1;
            harmless(n, 12)
        });
        for line in concluded(&s) {
            let (_, words) = line.split_once(": ").unwrap();
            all.extend(words.split("; ").map(small));
        }
    }
    // What a field would change by itself is no plant: signs of writing at the ends, too long a label.
    let plain = |words: &String| {
        let inside = words.trim_matches(|c: char| !c.is_ascii_alphanumeric() && c != '?');
        words.len() >= 6 && words.len() <= 60 && inside == words && words.is_ascii()
    };
    let mut all: Vec<String> = all.into_iter().filter(plain).collect();
    all.retain(|words| !words.contains("qz") && !words.contains(['"', '\\', '{']));
    all
}

/// The same line with the typed text in it instead of the harmless one.
fn typed_instead(line: &str, texts: &[(String, String)]) -> String {
    let mut line = line.to_owned();
    for (harmless, plant) in texts {
        line = line.replace(&capital(harmless), &capital(plant));
        line = line.replace(harmless, plant);
    }
    line
}

#[test]
fn nothing_typed_moves_what_is_concluded() {
    let walks = std::env::var("PENLIGHT_WALKS").ok();
    let walks: u64 = walks.and_then(|n| n.parse().ok()).unwrap_or(150);
    let phrases = catalogue(40);
    assert!(phrases.len() > 150, "{}", phrases.len());
    let mut planted = BTreeSet::new();
    let (mut fields, mut noted) = (0, 0);
    for seed in 0..walks {
        let mut dice = Dice(seed ^ 0x5eed);
        let mut texts: Vec<(String, String)> = Vec::new();
        let with_plants = pressed(seed, &mut || {
            let plant = match dice.below(3) {
                0 => dice.of(&PLANTS).to_owned(),
                _ => phrases[dice.below(phrases.len())].clone(),
            };
            texts.push((harmless(texts.len(), plant.len()), plant.clone()));
            plant
        });
        let mut next = texts.iter();
        let plain = pressed(seed, &mut || next.next().unwrap().0.clone());
        let (told, expected) = (concluded(&with_plants), concluded(&plain));
        for (told, expected) in told.iter().zip(&expected) {
            assert_eq!(*told, typed_instead(expected, &texts), "visit {seed}");
        }
        assert_eq!(told.len(), expected.len(), "visit {seed}");
        fields += texts.len();
        let decision = plain.visit.decision();
        noted += usize::from(decision.is_some_and(|d| d.noted().is_some()));
        planted.extend(texts.into_iter().map(|(_, plant)| plant));
    }
    assert!(noted > 20, "{noted}");
    assert!(
        fields > 1_000 && planted.len() > 150,
        "{fields}, {}",
        planted.len()
    );
}

/// The sentence that once made a throat cleared 3 s after the swallow read as one that came later.
#[test]
fn a_soup_later_than_lunch_makes_no_sign_late() {
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::ThroatClear, 3_000)])
        .words("own-what", "soup: later than lunch");
    let decision = s.visit.decision().unwrap();
    assert!(decision.noted().is_none_or(|noted| !noted.late));
}
