//! When somebody was screened stands apart from when the text was issued, and a choking has its
//! clock time, in both texts. What must hold is local policy.

use crate::support::*;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::full_note;
use penlight::record::event::Event;

#[track_caller]
fn both_say(s: &Scene, words: &str) {
    for text in [s.text(), s.note()] {
        assert!(text.contains(words), "{words}\n{text}");
    }
}

/// Drunk at 14:01, viewed at 14:31: the only time that stood there was that of viewing.
#[test]
fn the_time_of_the_screen_stands_apart_from_the_time_of_the_text() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    both_say(
        &s,
        "\nScreened at 14:01 by ____ (clinician trained to screen). \
         Issued at 14:31, 25 Nov 2026.\n",
    );
}

/// A cup at 14:01 and one at 14:20: the first and the last.
#[test]
fn trials_at_several_times_are_told_from_the_first_to_the_last() {
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    s.given(TaskId::Water90, 20 * MINUTE, &[]);
    both_say(&s, "\nScreened at 14:01 to 14:20 by ");
}

/// Read the next morning, each time has its day.
#[test]
fn times_of_another_day_have_their_day() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let words = "\nScreened at 14:01 on 25 Nov 2026 by ____ (clinician trained to screen). \
                 Issued at 09:00, 26 Nov 2026.\n";
    let next = clock_after(NEXT_DAY);
    let note = full_note::write(&s.visit, &next).unwrap().text;
    for text in [s.text_at(&next), note] {
        assert!(text.contains(words), "{text}");
    }
}

/// Where nothing was given, the times are those at which somebody was looked at; never "screened".
#[test]
fn where_nothing_was_given_it_says_when_somebody_looked() {
    let mut s = adult(Role::Screener);
    s.gate(&[("airway-tube", "tracheostomy")]);
    both_say(&s, "\nNo swallow was tested. Examined at 14:00 by ");
    let mut s = adult(Role::Screener);
    s.on(ScreenId::OralMotor).examined(&[]);
    s.now = 9 * MINUTE;
    s.examined(&[]);
    both_say(&s, "\nExamined at 14:00 to 14:09 by ");
    // Nothing was looked at at all.
    let mut s = adult(Role::Screener);
    s.on(ScreenId::Swallow);
    both_say(
        &s,
        "\nNothing looked at yet, by ____ (clinician trained to screen). Issued at 14:31, 25 Nov 2026.\n",
    );
}

/// "choking: help called after 4 s" leaves open after what.
#[test]
fn a_choking_has_its_clock_time() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, -2_000)]);
    s.say(Event::Choking(at(106_400)))
        .say(Event::HelpCalled(at(110_400)))
        .say(Event::BackToBaseline(at(171_400)));
    let words = "hoking at 14:01: help called after 4 s, back to baseline after 1 min 5 s";
    both_say(&s, words);
    s.say(Event::Choking(at(9 * MINUTE)));
    both_say(
        &s,
        "hoked 2 times, at 14:01 and 14:09; the last time: help call",
    );
}

/// A start undone was no trial.
#[test]
fn a_start_that_was_taken_back_is_no_time_of_the_screen() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.open(TaskId::Water90);
    s.mark(9 * MINUTE, MarkKind::Start).undo();
    both_say(&s, "\nScreened at 14:01 by ");
}
