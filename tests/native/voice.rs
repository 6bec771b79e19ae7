//! The voice before and after a trial: wet before it holds and is told, turned wet is a sign.
//! What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::timed_water;

/// A wet voice taken over from the trial before holds as one that was answered.
#[test]
fn a_wet_voice_that_is_taken_over_holds_too() {
    let mut s = adult(Role::Screener);
    s.on(ScreenId::Stepped)
        .gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    s.given(TaskId::Sips, 100_000, &[]).number("sip", 10);
    s.choose("voice-after", "wet");
    let held = holds(TaskId::Water90, &s.visit.exam);
    let wet = held
        .iter()
        .find(|h| h.id.starts_with("water.wet-before"))
        .unwrap();
    assert!(!wet.go_on.open_to(Role::Screener));
}

#[test]
fn a_wet_voice_after_the_cup_is_not_told_as_without_a_sign() {
    let mut s = ready(Role::Screener);
    s.water(&[]).choose("voice-after", "wet");
    assert_eq!(s.verdict(), Verdict::Refer);
    assert!(!s.text().contains("no sign for 60 seconds"), "{}", s.text());
}

/// The voice is asked for after the minute: heard wet, the sign pressed at 63 s, and answered wet.
#[test]
fn a_wet_voice_that_is_pressed_late_and_answered_counts() {
    let mut s = ready(Role::Screener);
    s.timed_cup(300_000, &[], "wet");
    assert_eq!(s.verdict(), Verdict::Refer);
    let mut s = ready(Role::Screener);
    s.timed_cup(300_000, &[(Sign::VoiceChange, 63_000)], "wet");
    assert_eq!(s.verdict(), Verdict::Refer, "{}", s.text());
}

#[test]
fn a_wet_voice_after_a_sip_that_is_pressed_late_and_answered_counts() {
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[(Sign::VoiceChange, 61_500)])
        .number("sip", 5)
        .choose("voice-after", "wet");
    assert_eq!(s.verdict(), Verdict::Refer, "{}", s.text());
}

/// Heard wet after a timed cup, the sign pressed at 63 s, and 90 mL that went well.
#[test]
fn a_late_press_of_a_wet_voice_that_was_answered_is_never_clear() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.timed_cup(300_000, &[(Sign::VoiceChange, 63_000)], "wet");
    assert_eq!(s.verdict(), Verdict::Refer, "{}", s.text());
}

/// Wet already before any water: as "does not manage saliva" at the gate.
#[test]
fn a_wet_voice_before_water_that_was_then_not_given_is_told() {
    for (task, screen) in [
        (TaskId::Water90, ScreenId::Swallow),
        (TaskId::Sips, ScreenId::Stepped),
    ] {
        let mut s = ready(Role::Screener);
        s.on(screen).open(task);
        s.choose("voice-before", "wet");
        let text = s.text();
        let before_advice = text.split("Recommendation:").next().unwrap();
        assert!(before_advice.contains("wet"), "{text}");
    }
}

#[test]
fn a_wet_voice_before_water_is_not_told_as_managing_saliva() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "wet");
    let text = s.text();
    assert!(!text.contains("manages saliva"), "{text}");
}

/// Wet before a cup that was added to the screen, and then not given.
#[test]
fn a_wet_voice_before_what_was_added_is_told() {
    let mut s = ready(Role::Screener);
    s.water(&[]).open(TaskId::TimedWater);
    s.choose("voice-before", "wet");
    assert_eq!(s.verdict(), Verdict::Incomplete, "{}", s.text());
}

/// As for the 90 mL: a voice nobody heard before can't be heard to have changed.
#[test]
fn a_timed_cup_without_the_voice_before_is_incomplete() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.open(TaskId::TimedWater);
    s.choose(timed_water::OFFERED, "100");
    s.mark(300_000, MarkKind::Start)
        .mark(304_000, MarkKind::Tap)
        .mark(308_000, MarkKind::End)
        .mark(368_030, MarkKind::WatchOver);
    s.choose(timed_water::CUP, timed_water::EMPTY)
        .choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Incomplete, "{}", s.text());
}

/// A clear timed cup; before a second the voice is wet, and it is not given.
#[test]
fn a_wet_voice_before_a_further_cup_is_told() {
    for task in [TaskId::TimedWater, TaskId::Sips] {
        let mut s = ready(Role::Screener);
        s.water(&[]);
        match task {
            TaskId::TimedWater => s.timed_cup(300_000, &[], "clear"),
            _ => {
                s.given(task, 300_000, &[]).number("sip", 10);
            }
        }
        s.open(task);
        s.choose("voice-before", "wet");
        assert_ne!(s.verdict(), Verdict::Pass, "{task:?}");
        assert!(s.found().contains("oice wet"), "{task:?} {}", s.text());
    }
}

/// ... nor is it taken back by another that was opened and left.
#[test]
fn a_wet_voice_before_is_not_taken_back_by_one_that_was_opened() {
    for task in [TaskId::TimedWater, TaskId::Sips, TaskId::Water90] {
        let mut s = ready(Role::Screener);
        s.open(task);
        s.choose("voice-before", "wet").open(task);
        assert_ne!(s.verdict(), Verdict::Pass, "{task:?}");
        assert!(s.found().contains("oice wet"), "{task:?} {}", s.text());
        let held = holds(task, &s.visit.exam);
        assert!(
            held.iter().any(|h| h.id.starts_with("water.wet-before")),
            "{task:?} {held:?}"
        );
    }
}

/// Breathy and weak are answers of their own: new after the water they are a sign, as a new hoarse
/// voice is; there before and unchanged they are told.
#[test]
fn a_breathy_or_weak_voice_is_a_sign_where_it_is_new() {
    for voice in ["hoarse", "breathy", "weak", "none"] {
        let mut s = ready(Role::Screener);
        s.water(&[]).choose("voice-after", voice);
        assert_eq!(s.verdict(), Verdict::Refer, "{voice}");
    }
    for voice in ["hoarse", "breathy", "weak"] {
        let mut s = ready(Role::Screener);
        s.water(&[])
            .choose("voice-before", voice)
            .choose("voice-after", voice);
        assert_eq!(s.verdict(), Verdict::Pass, "{voice}");
        let told = format!("voice {voice} already before the water");
        assert!(s.note().to_lowercase().contains(&told), "{}", s.note());
    }
}

/// No voice before: nobody can hear whether it changed, and both texts say so.
#[test]
fn without_a_voice_before_the_voice_sign_cannot_be_judged() {
    let said = "whether the voice changed could not be judged";
    let mut s = ready(Role::Screener);
    s.water(&[])
        .choose("voice-before", "none")
        .choose("voice-after", "none");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    for text in [s.text(), s.note()] {
        assert!(text.contains(said), "{text}");
    }
    let mut s = stepped(Role::Screener, 97);
    s.sips_given(&mut |_, s| {
        s.choose("voice-before", "none")
            .choose("voice-after", "none");
    });
    assert_eq!(s.verdict(), Verdict::Incomplete);
    for text in [s.text(), s.note()] {
        assert!(text.contains(said), "{text}");
    }
    let mut s = ready(Role::Slp);
    s.timed_cup(300_000, &[], "none");
    s.choose("voice-before", "none");
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
}
