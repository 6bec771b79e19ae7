//! Visits pressed at random, by a generator of their own so that they are the same every time: what
//! no text may leave out, say of what was not, or say beside its own headline, whatever came when.
//!
//! `PENLIGHT_WALKS=5000` walks further.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::findings::trial::Trial;
use penlight::clinical::knowledge::sign::meaning;
use penlight::handover::action;
use penlight::handover::nursing::write;
use penlight::handover::outdated;
use penlight::record::envelope::Envelope;
use penlight::record::envelope::SCHEMA;
use penlight::record::envelope::body;
use penlight::record::event::Event;
use penlight::record::event::Route;
use penlight::wording::meal::words_of;

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
fn wrong_later(s: &Scene, minutes: i64) -> Option<String> {
    let left_at = s.now / 60_000 + 2;
    let mut visit = s.visit.clone();
    let now = clock_after(left_at);
    let issued = write(&visit, &now).unwrap();
    let issued = issued.issued(Route::Copied, &now.time);
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
    let text = write(&visit, &later).unwrap().text;
    if text.contains("CORRECTED") || outdated::outdated(&visit, &later).is_some() {
        return Some(format!("corrected by nothing\n{text}"));
    }
    let mut trials = visit.exam.trials.iter();
    let tested = trials.any(|t| t.task.sign_column().is_some() && t.start().is_some());
    if tested && !text.contains("\nScreened at ") {
        return Some(format!("when swallowing was tested is not told\n{text}"));
    }
    None
}

/// What must hold of a visit as it stands; else what does not.
fn wrong(s: &Scene, before: u8) -> Option<String> {
    let text = s.text();
    let note = s.note();
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
        let Some(column) = trial.task.sign_column() else {
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
    let free = Exam {
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
    let swallowed = |t: &Trial| t.task.sign_column().is_some();
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
        let mut visit = Walk::new(walk);
        for step in 0.. {
            let before = rank(visit.scene.verdict());
            let Some(taken_back) = visit.step() else {
                break;
            };
            let before = if taken_back { 0 } else { before };
            if let Some(wrong) = wrong(&visit.scene, before) {
                panic!("walk {walk}, step {step}: {wrong}\n{}", visit.scene.text());
            }
        }
        let minutes = visit.of(&[90, 19 * 60]);
        if let Some(wrong) = wrong_later(&visit.scene, minutes) {
            panic!("walk {walk}, later: {wrong}");
        }
    }
}
