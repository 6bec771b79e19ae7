//! Visits pressed at random, by a generator of their own so that they are the same every time: what
//! no text may leave out, say of what was not, or say beside its own headline, whatever came when.
//!
//! `PENLIGHT_WALKS=5000` walks further.

#![allow(clippy::unwrap_used)]

use crate::support::script;

use crate::support::in_the_way::holds;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::gate::ITEMS;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::{Sign, meaning};
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::by_mouth::saturation;
use penlight::handover::nursing::write;
use penlight::handover::{action, full_note, outdated};
use penlight::measure::time::{Millis, PageLife, Stamp};
use penlight::record::envelope::{Envelope, SCHEMA, body};
use penlight::record::event::{Event, Route, Text};
use penlight::wording::meal::words_of;
use script::*;

struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        let step = self.0.wrapping_mul(6_364_136_223_846_793_005);
        self.0 = step.wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % n
    }

    fn of<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.below(all.len())]
    }

    fn signs(&mut self) -> Vec<(Sign, i64)> {
        let after = [-500, 1_000, 30_000, 61_000, 65_000, 120_000];
        let n = self.of(&[0, 0, 0, 1, 1, 2]);
        (0..n)
            .map(|_| (self.of(&Sign::ALL), self.of(&after)))
            .collect()
    }
}

const GIVEN: [TaskId; 5] = [
    TaskId::Water90,
    TaskId::Own,
    TaskId::Sips,
    TaskId::TimedWater,
    TaskId::Cracker,
];

/// A trial of a task with signs, whole but for what `cut` leaves out of it.
fn trial(s: &mut Script, dice: &mut Dice, task: TaskId, t: i64) {
    let signs = dice.signs();
    let end = t + 8_000;
    let number = s.open(task);
    for question in ["allergy", "teeth", "diet-order"] {
        s.choose(question, "fine");
    }
    s.choose("voice-before", "clear").choose("cup-size", "100");
    let level = dice.of(&["d0", "d2", "f4"]);
    s.choose("own-level", level);
    s.number("sip", dice.of(&[3, 5, 10]));
    if dice.below(12) == 0 {
        lost(s);
    } else {
        s.mark(t, MarkKind::Start);
    }
    s.mark(t + 1_000, MarkKind::Tap).mark(end, MarkKind::End);
    for (sign, after) in signs {
        s.mark(end + after, MarkKind::Sign(sign));
    }
    let over = match dice.below(8) {
        // The app was off when the watch ran out, and the clock was set.
        0 => Stamp {
            life: PageLife(8),
            mono: Millis(5),
            ..at(end + dice.of(&[900_000, -900_000]))
        },
        _ => at(end + 60_030),
    };
    s.say(Event::Mark {
        trial: number,
        at: over,
        kind: MarkKind::WatchOver,
    });
    s.choose("cup", "one-go").choose("cup-left", "empty");
    s.choose("voice-after", dice.of(&["clear", "clear", "wet"]));
    if dice.below(5) == 0 {
        s.number(saturation::LOWEST, dice.of(&[96, 92, 89, 80]));
    }
}

fn lost(s: &mut Script) {
    let envelope = Envelope {
        device: "here".to_owned(),
        visit: s.visit.id.clone(),
        seq: s.visit.next,
        schema: SCHEMA,
        key: String::new(),
        at: at(0),
        body: "{".to_owned(),
    };
    s.visit.take(&envelope);
}

/// One thing that happens. Whether it takes something back, or puts it right.
fn happens(s: &mut Script, dice: &mut Dice, t: i64) -> bool {
    match dice.below(20) {
        0 => {
            let item = &ITEMS[dice.below(ITEMS.len())];
            let exception = &item.exceptions[dice.below(item.exceptions.len())];
            s.say(Event::Gate(vec![(item.id.into(), exception.id.into())]));
            return item.id == "new-weakness";
        }
        1 => {
            s.gate(&[]);
            return true;
        }
        2 => {
            s.breaths(dice.of(&[16, 16, 30, 22]));
        }
        3 => {
            s.spo2(dice.of(&[97, 97, 93, 89]));
        }
        4 => {
            let n = dice.below(4);
            s.dry(&[2_000, 9_000, 17_000][..n]);
        }
        5 => {
            s.dry(&[]).choose("not-valid", "not-felt");
        }
        6..=9 => {
            let task = dice.of(&GIVEN);
            trial(s, dice, task, t);
        }
        10 => {
            let signs = dice.signs();
            s.open(TaskId::Meal);
            s.mark(t, MarkKind::Start);
            for (sign, after) in signs {
                s.mark(t + 30_000 + after, MarkKind::Sign(sign));
            }
            s.mark(t + 60_000, MarkKind::End);
        }
        11 => {
            s.say(Event::Choking(at(t)));
            if dice.below(2) == 0 {
                s.say(Event::HelpCalled(at(t + 3_000)))
                    .say(Event::BackToBaseline(at(t + 50_000)));
            }
        }
        12 => {
            let task = dice.of(&GIVEN);
            s.open(task);
            s.choose("voice-before", dice.of(&["clear", "wet"]));
            if dice.below(2) == 0 {
                s.choose("not-valid", "refused");
            }
        }
        13 | 14 => {
            let role = s.visit.role;
            for hold in holds(dice.of(&GIVEN), &s.visit.exam) {
                if hold.go_on.open_to(role) {
                    s.say(Event::WentOn {
                        hold: hold.id,
                        because: "needed".to_owned(),
                        by: role,
                        says: hold.says,
                        ground: None,
                    });
                }
            }
        }
        15 => {
            let all = [
                EndedEarly::Refused,
                EndedEarly::Withdrew,
                EndedEarly::BrokenOff,
            ];
            s.say(Event::EndedEarly(dice.of(&all)));
        }
        16 => {
            let found = [
                ("voice.ah", "wet"),
                ("mouth.moist", "pooled"),
                ("cough", "none"),
            ];
            s.examined(&[dice.of(&found)]);
        }
        17 => {
            let all: Vec<u32> = s.visit.exam.trials.iter().map(|t| t.number).collect();
            if let Some(last) = all.last() {
                s.say(Event::Undo { trial: *last });
            }
            return true;
        }
        18 => {
            let mut details = s.visit.details.clone().unwrap();
            details.age = dice.of(&[Some(Age::Years(72)), Some(Age::Years(5)), None]);
            s.say(Event::Details(details));
            return true;
        }
        _ => lost(s),
    }
    false
}

fn rank(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::NotDone(EndedEarly::Emergency) => 3,
        Verdict::Stop => 2,
        Verdict::Refer => 1,
        _ => 0,
    }
}

/// What must hold of a visit that is looked at so many minutes later, nothing pressed meanwhile:
/// the text that left still stands, and one that leaves then says when swallowing was tested.
fn wrong_later(s: &Script, minutes: i64) -> Option<String> {
    let left_at = s.now / 60_000 + 2;
    let mut visit = s.visit.clone();
    let now = clock_after(left_at);
    let issued = Event::Issued {
        route: Route::Copied,
        text: write(&visit, &now).unwrap(),
        clock: now.time,
        which: Text::Nursing,
    };
    let told = Event::Told {
        whom: "the nurse in charge".to_owned(),
        read_back: true,
    };
    for event in [issued, told] {
        let envelope = Envelope {
            device: "here".to_owned(),
            visit: visit.id.clone(),
            seq: visit.next,
            schema: SCHEMA,
            key: String::new(),
            at: at(left_at * 60_000),
            body: body(&event).unwrap(),
        };
        visit.take(&envelope);
    }
    let later = clock_after(left_at + minutes);
    let text = write(&visit, &later).unwrap();
    if text.contains("CORRECTED") || outdated::outdated(&visit, &later).is_some() {
        return Some(format!("corrected by nothing\n{text}"));
    }
    let mut trials = visit.exam.trials.iter();
    let tested = trials.any(|t| tasks::spec(t.task).pad.signs.is_some() && t.start().is_some());
    if tested && !text.contains("swallowing was tested") {
        return Some(format!("when swallowing was tested is not told\n{text}"));
    }
    None
}

/// What must hold of a visit as it stands; else what does not.
fn wrong(s: &Script, before: u8) -> Option<String> {
    let text = s.text();
    let note = full_note::write(&s.visit, &clock("14:31")).unwrap();
    let note = note.to_lowercase();
    let exam = &s.visit.exam;
    let decision = s.visit.decision().unwrap();
    // What is cut is counted.
    let cut = text.contains("more in the record");
    let found = text.split("Recommendation:").next().unwrap();
    if rank(decision.verdict) < before {
        return Some("a sign weighs less than it did".to_owned());
    }
    if decision.verdict == Verdict::Pass && exam.unread > 0 {
        return Some("clear beside what can't be read".to_owned());
    }
    if decision.verdict == Verdict::Pass && exam.trials.iter().any(|t| !t.begun_on.is_empty()) {
        return Some("clear on answers too old or missing".to_owned());
    }
    for (sign, _) in exam.trials.iter().flat_map(|t| &t.taken_back) {
        let words = format!("{}: pressed, and taken back", sign.past());
        let told = cut || text.contains(&words);
        if !told || !note.contains(&words) || text.starts_with("NO SIGN SEEN") {
            return Some(format!("{sign:?} taken back late is not told"));
        }
    }
    for trial in &exam.trials {
        let Some(column) = tasks::spec(trial.task).pad.signs else {
            continue;
        };
        for (sign, _) in trial.signs() {
            let words = [sign.past(), words_of(MarkKind::Sign(sign)).0];
            if !cut && words.iter().all(|w| !found.contains(w)) || !note.contains(sign.past()) {
                return Some(format!("{sign:?} of {:?} is not told", trial.task));
            }
            let stops = meaning(sign, column).0 == Level::Stop;
            if stops && rank(decision.verdict) < 2 {
                return Some(format!("{sign:?} stops nothing"));
            }
        }
    }
    let free = penlight::clinical::findings::exam::Exam {
        went_on: Vec::new(),
        ..exam.clone()
    };
    if rank(decision.verdict) == 2 && GIVEN.iter().any(|task| holds(*task, &free).is_empty()) {
        return Some("a stop holds not all".to_owned());
    }
    let calls = decision.reasons.iter().chain(&decision.missing);
    let gravest = decision
        .reasons
        .first()
        .map_or(Level::Incomplete, |f| f.level());
    let mut calls = calls.filter(|f| f.level() == gravest && action::calls_doctor(f));
    let told = |words: &str| text.to_lowercase().contains(&words.to_lowercase());
    if calls.next().is_some_and(|f| !told(&f.reason())) {
        return Some("why the doctor is called is cut".to_owned());
    }
    let whom = action::suggested(&decision).0.words();
    if decision.verdict.needs_action() && !text.lines().next().unwrap().contains(whom) {
        return Some("the headline calls somebody else".to_owned());
    }
    let swallowed =
        |t: &penlight::clinical::findings::trial::Trial| tasks::spec(t.task).pad.signs.is_some();
    let given = exam
        .trials
        .iter()
        .any(|t| swallowed(t) && !t.marks.is_empty());
    if !given && (found.contains("the trial") || found.contains("given despite")) {
        return Some("of a trial that was none".to_owned());
    }
    let slip = ["..", ".;", "; ;", ": ;"];
    if slip.iter().any(|slip| text.contains(slip)) {
        return Some("a slip of the pen".to_owned());
    }
    None
}

#[test]
fn no_walk_makes_a_text_that_says_too_little() {
    let walks = std::env::var("PENLIGHT_WALKS").map_or(60, |n| n.parse().unwrap());
    for walk in 0..walks {
        let mut dice = Dice(walk * 7_919 + 13);
        let mut s = Script::new(
            dice.of(&[Age::Years(72), Age::Years(5), Age::Adult]),
            dice.of(&[Role::Slp, Role::Screener]),
        );
        s.on(dice.of(&[
            ScreenId::Swallow,
            ScreenId::Stepped,
            ScreenId::OwnTrials,
            ScreenId::FullVisit,
        ]));
        if dice.below(5) > 0 {
            s.gate(&[]);
        }
        let mut t = 100_000;
        for step in 0..3 + dice.below(12) {
            let before = rank(s.verdict());
            s.now = t;
            let taken_back = happens(&mut s, &mut dice, t);
            t += dice.of(&[
                70_000, 200_000, 20_000, 70_000, 200_000, 20_000, 7_200_000, 68_400_000,
            ]);
            let before = if taken_back { 0 } else { before };
            let wrong = wrong(&s, before);
            if let Some(wrong) = wrong {
                panic!("walk {walk}, step {step}: {wrong}\n{}", s.text());
            }
        }
        if let Some(wrong) = wrong_later(&s, dice.of(&[90, 19 * 60])) {
            panic!("walk {walk}, later: {wrong}");
        }
    }
}
