//! A text after it left: corrections, who was told of which, and what it says on another day.
//! What must hold is local policy.

use crate::support::*;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::full_note;
use penlight::handover::nursing::write;
use penlight::handover::outdated;
use penlight::record::event::Event;
use penlight::record::event::Route;

/// The text of 14:31 lies on the ward; the visit is opened the next morning and nothing is pressed.
/// A correction that corrects nothing makes the next one unread.
#[test]
fn a_text_that_says_the_same_is_no_correction_on_the_next_day() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.leaves(31);
    s.told(32);
    let next = clock_after(NEXT_DAY);
    assert_eq!(outdated::outdated(&s.visit, &next), None);
    let text = s.text_at(&next);
    assert!(!text.contains("CORRECTED"), "{text}");
}

/// "CORRECTED 09:00, replaces 14:31" reads as if the older text was the newer one.
#[test]
fn a_correction_of_a_text_of_another_day_names_that_day() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.leaves(31);
    s.told(32);
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    let text = s.text_at(&clock_after(NEXT_DAY));
    let first = "CORRECTED 09:00 on 26 Nov 2026, replaces 14:31 on 25 Nov 2026.\nREFER";
    assert!(text.starts_with(first), "{text}");
    let who = "The nurse in charge (text of 14:31 on 25 Nov 2026): what was told no longer stands. \
               Tell again.";
    assert_eq!(
        outdated::outdated(&s.visit, &clock_after(NEXT_DAY)).as_deref(),
        Some(who)
    );
    // The same minute of another day is another text.
    s.leaves(31 + 24 * 60);
    let told = outdated::outdated(&s.visit, &clock_after(32 + 24 * 60));
    assert_eq!(told.as_deref(), Some(who));
}

/// Records of earlier versions have what a text replaces in its first line alone: they read as those
/// of today, which have it beside the text.
#[test]
fn a_correction_that_only_the_text_told_is_read_from_it() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.leaves(31);
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    for day in [clock("14:40"), clock_after(NEXT_DAY)] {
        let issued = write(&s.visit, &day)
            .unwrap()
            .issued(Route::Copied, &day.time);
        let Event::Issued { corrects, .. } = &issued else {
            panic!("{issued:?}");
        };
        let mut stored = serde_json::to_value(&issued).unwrap();
        let told = stored["Issued"].as_object_mut().unwrap().remove("corrects");
        assert_eq!(told, serde_json::to_value(corrects).ok());
        let mut old = ready(Role::Screener);
        old.say(serde_json::from_value(stored).unwrap());
        assert_eq!(&old.visit.issued[0].corrects, corrects);
        assert!(corrects.is_some());
    }
    // What replaces nothing has neither.
    assert_eq!(s.visit.issued[0].corrects, None);
}

/// Drunk at 14:01, handed over the next morning: nothing in the text said that it was not today.
#[test]
fn a_text_that_is_written_later_says_when_swallowing_was_tested() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let text = s.text_at(&clock_after(NEXT_DAY));
    for words in [
        "Screened at 14:01 on 25 Nov 2026",
        "can cough (asked at 14:00 on 25 Nov 2026)",
        "at 14:00 on 25 Nov 2026",
    ] {
        assert!(text.contains(words), "{words}\n{text}");
    }
    let note = full_note::write(&s.visit, &clock_after(NEXT_DAY))
        .unwrap()
        .text;
    let words = "Screened at 14:01 on 25 Nov 2026";
    assert!(note.contains(words), "{note}");
}

/// The first cup in the evening, the second in the morning: both read as of one moment.
#[test]
fn trials_of_two_days_are_told_with_both_times() {
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear");
    let later = 19 * HOUR;
    s.mark_at(later, MarkKind::Start);
    s.mark_at(later + 8_000, MarkKind::End);
    s.mark_at(later + 68_030, MarkKind::WatchOver);
    s.choose("cup", "one-go").choose("voice-after", "clear");
    let text = s.text_at(&clock_after(NEXT_DAY + 5));
    let words = "Screened at 14:01 on 25 Nov 2026 to 09:00 by";
    assert!(text.contains(words), "{text}");
}

/// Where nothing was given, what was looked at is as old as it is.
#[test]
fn what_was_looked_at_long_before_the_text_says_so() {
    let mut s = adult(Role::Screener);
    s.gate(&[("airway-tube", "tracheostomy")]);
    let text = s.text_at(&clock_after(NEXT_DAY));
    let words = "No swallow was tested. Examined at 14:00 on 25 Nov 2026 by";
    assert!(text.contains(words), "{text}");
}

/// A cough, then the person wanted to stop; a break of half an hour: only the ward was told.
#[test]
fn the_full_note_tells_ends_and_breaks_as_the_nursing_text_does() {
    let mut s = ready(Role::Slp);
    s.say_at(at(MINUTE), Event::EndedEarly(EndedEarly::BrokenOff));
    s.say_at(at(31 * MINUTE), Event::TakenUpAgain);
    s.water(&[(Sign::Cough, 1_000)]);
    s.say(Event::EndedEarly(EndedEarly::Withdrew));
    let note = full_note::write(&s.visit, &clock("14:40")).unwrap().text;
    for words in [
        "he person wanted to stop",
        "roken off by the clinician at 14:01, taken up again at 14:31",
    ] {
        assert!(s.text().contains(words), "{words}\n{}", s.text());
        assert!(note.contains(words), "{words}\n{note}");
    }
}

/// Who was told of an earlier text was not told of the corrected one.
#[test]
fn told_goes_with_the_text_it_was_told_of() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let issue = |s: &mut Scene, time: &str| {
        let written = write(&s.visit, &clock(time)).unwrap();
        s.say(written.issued(Route::Copied, time));
    };
    let tell = |s: &mut Scene| {
        s.say(Event::Told {
            whom: "nurse".to_owned(),
            read_back: true,
        });
    };
    issue(&mut s, "14:31");
    tell(&mut s);
    issue(&mut s, "14:33");
    assert_eq!(s.visit.told[0].of, s.visit.last_text().unwrap().clock);
    s.mark(120_000, MarkKind::Sign(Sign::BreathingChange));
    issue(&mut s, "14:40");
    assert_ne!(s.visit.told[0].of, s.visit.last_text().unwrap().clock);
    tell(&mut s);
    assert_eq!(s.visit.told[1].of, "14:40");
}

/// Two texts in one minute: who was told of the first was not told of the second.
#[test]
fn told_goes_with_the_text_also_within_a_minute() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let issue = |s: &mut Scene| {
        let written = write(&s.visit, &clock("14:40")).unwrap();
        s.say(written.issued(Route::Copied, "14:40"));
    };
    issue(&mut s);
    s.say(Event::Told {
        whom: "the nurse in charge".to_owned(),
        read_back: true,
    });
    s.mark(120_000, MarkKind::Sign(Sign::BreathingChange));
    issue(&mut s);
    assert!(s.visit.last_text().unwrap().text.contains("STOP"));
    assert_ne!(s.visit.told[0].of, s.visit.last_text().unwrap().clock);
}
