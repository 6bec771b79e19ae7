//! An answer that is changed after a text left, or that once made a verdict graver, is told in both
//! texts: what it was, what it is, when, and by whom. What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::oral::{FoundId, Seen};
use penlight::clinical::findings::trial::{Answer, MarkKind};
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::handover::full_note;
use penlight::handover::nursing::{MOST, write};
use penlight::record::event::{Action, Event, Route, Text};

fn choice(id: &str) -> Answer {
    Answer::Choice(id.to_owned())
}

#[track_caller]
fn both_say(s: &Scene, words: &str) {
    for text in [s.text(), s.note()] {
        assert!(text.contains(words), "{words}\n{text}");
    }
}

#[track_caller]
fn neither_says(s: &Scene, words: &str) {
    for text in [s.text(), s.note()] {
        assert!(!text.contains(words), "{words}\n{text}");
    }
}

/// The cup with a wet voice after it, said at this minute.
fn wet(minute: i64) -> Scene {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.answer_at(minute * MINUTE, "voice-after", choice("wet"));
    assert_eq!(s.verdict(), Verdict::Refer);
    s
}

const WET: &str = "\"wet\" changed to \"clear\" at 14:20 by the clinician trained to screen";

/// Wet, nothing by mouth, the text copied; then changed to clear: "no sign seen" and nothing else.
#[test]
fn a_voice_that_is_changed_after_the_text_left_is_told_in_both() {
    let mut s = wet(5);
    s.plan(Action::NothingByMouth, "");
    s.leaves(19);
    s.answer_at(20 * MINUTE, "voice-after", choice("clear"));
    assert_eq!(s.verdict(), Verdict::Pass);
    both_say(&s, WET);
    // Every text from then on, a correction or not.
    s.leaves(25);
    s.leaves(26);
    both_say(&s, WET);
}

/// The same before any text left: it made the verdict graver for minutes.
#[test]
fn an_answer_that_made_the_verdict_graver_is_told_before_any_text_left() {
    let mut s = wet(5);
    s.answer_at(20 * MINUTE, "voice-after", choice("clear"));
    both_say(&s, WET);
    // Also where something else refers all the same.
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    assert_eq!(s.verdict(), Verdict::Refer);
    both_say(&s, WET);
}

/// A slip of the finger that is put right at once, before anybody read it, is no change.
#[test]
fn a_slip_put_right_at_once_is_no_change() {
    let mut s = wet(5);
    s.answer_at(5 * MINUTE + 4_000, "voice-after", choice("clear"));
    neither_says(&s, "hanged");
    // Longer, or once it left, it is none.
    let mut s = wet(5);
    s.answer_at(5 * MINUTE + 11_000, "voice-after", choice("clear"));
    both_say(&s, "changed to");
    let mut s = wet(5);
    s.leaves(5);
    s.answer_at(5 * MINUTE + 4_000, "voice-after", choice("clear"));
    both_say(&s, "changed to");
}

/// What no text told and what made nothing graver is put right without a word.
#[test]
fn what_changed_nothing_and_left_with_no_text_is_not_told() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.answer_at(20 * MINUTE, "voice-before", choice("hoarse"));
    s.answer_at(30 * MINUTE, "voice-before", choice("clear"));
    neither_says(&s, "to \"clear\"");
}

/// Cup, saturation, the gate: each by what it was and what it is.
#[test]
fn cup_saturation_and_the_gate_are_told_alike() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.answer_at(5 * MINUTE, "cup", choice("paused"));
    s.answer_at(20 * MINUTE, "cup", choice("one-go"));
    both_say(
        &s,
        "\"empty, with a pause\" changed to \"empty, in one go\" at 14:20",
    );

    let mut s = adult(Role::Screener);
    s.gate(&[("cough", "no")]);
    s.now = 20 * MINUTE;
    s.gate(&[]);
    both_say(
        &s,
        "\"cannot cough on request and was not heard to\" changed to \"coughs on request, or was \
         heard to cough\" at 14:20",
    );

    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(88);
    s.answer_at(20 * MINUTE, "spo2", Answer::Tenths(970));
    both_say(&s, "\"88 %\" changed to \"97 %\" at 14:20");
}

/// One that was taken back without another in its place.
#[test]
fn an_answer_that_was_taken_back_is_told() {
    let mut s = wet(5);
    s.leaves(19);
    let (trial, question) = (s.trial, "voice-after".to_owned());
    let event = Event::Answer {
        trial,
        question,
        answer: None,
    };
    s.say_at(at(20 * MINUTE), event);
    both_say(&s, "\"wet\" changed to \"not answered\" at 14:20");
}

/// The face of the first text was drooping; in the second it is not.
#[test]
fn the_examination_is_told_with_what_was_seen() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OralMotor).examined(&[]);
    let droop = Seen::Found(vec![FoundId {
        what: "droop".to_owned(),
        side: None,
        severity: None,
    }]);
    s.say(Event::Oral(vec![("face.rest".to_owned(), droop)]));
    s.leaves(19);
    s.now = 20 * MINUTE;
    s.say(Event::Oral(vec![(
        "face.rest".to_owned(),
        Seen::AsExpected,
    )]));
    both_say(
        &s,
        "changed to \"as expected\" at 14:20 by the speech-language pathologist",
    );
}

/// Only the first and the present answer, with the time of the last change.
#[test]
fn of_many_changes_the_first_and_the_last_are_told() {
    let mut s = wet(5);
    s.leaves(6);
    for (minute, voice) in [(10, "clear"), (15, "wet"), (20, "clear")] {
        s.answer_at(minute * MINUTE, "voice-after", choice(voice));
    }
    both_say(&s, WET);
    assert_eq!(s.text().matches("\"wet\"").count(), 1, "{}", s.text());
    // Changed back to what the text had said: nothing is otherwise.
    let mut s = wet(5);
    s.leaves(6);
    for (minute, voice) in [(10, "clear"), (10, "wet")] {
        s.answer_at(minute * MINUTE, "voice-after", choice(voice));
    }
    neither_says(&s, "changed to \"wet");
}

/// "CORRECTED 14:40, replaces 14:31" left the reader to find out what.
#[test]
fn a_correction_says_what_changed() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.leaves(31);
    let note = full_note::write(&s.visit, &clock("14:31")).unwrap();
    s.say_at(at(31 * MINUTE), note.issued(Route::Copied, "14:31"));
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    let now = clock("14:40");
    for text in [
        write(&s.visit, &now).unwrap().text,
        full_note::write(&s.visit, &now).unwrap().text,
    ] {
        assert!(text.starts_with("CORRECTED"), "{text}");
        assert!(text.contains("ew: coughed 11 seconds after"), "{text}");
    }
    // Taken back at once: it is no longer told, and nothing of it is new.
    s.leaves(40);
    s.say_at(at(121_000), Event::Undo { trial: s.trial });
    let text = s.text_at(&clock("14:45"));
    assert!(
        text.contains("o longer: coughed 11 seconds after"),
        "{text}"
    );
    // Sent once more with the same words, it still says what changed.
    s.leaves(45);
    let again = s.text_at(&clock("14:50"));
    assert!(
        again.contains("o longer: coughed 11 seconds after"),
        "{again}"
    );
    let corrects = s.visit.issued.iter().rfind(|i| i.which == Text::Nursing);
    assert!(corrects.unwrap().corrects.is_some());
}

/// However full the text is: what was changed outlasts ordinary findings.
#[test]
fn a_change_outlasts_ordinary_findings_in_a_full_text() {
    let mut s = long(Role::Screener);
    s.water(&[]);
    s.answer_at(5 * MINUTE, "voice-after", choice("wet"));
    s.answer_at(20 * MINUTE, "voice-after", choice("clear"));
    let text = s.text();
    assert!(text.contains(WET), "{text}");
    assert!(text.chars().count() < MOST, "{text}");
}
