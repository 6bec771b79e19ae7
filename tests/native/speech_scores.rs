//! What a trial of speech or breath is scored by, and what is told where it is not: each through the
//! visit to its flags and its two texts.

use crate::support::*;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::handover::full_note;

fn oral_motor(age: Age) -> Scene {
    let mut s = Scene::new(age, Role::Slp);
    s.on(ScreenId::OralMotor);
    s
}

/// Repeated syllables: `n` taps from the first on, then the window ran out or Stop was pressed.
fn syllables(s: &mut Scene, task: TaskId, how: &str, n: i64, end: (MarkKind, i64)) {
    s.open(task);
    s.choose("how", how).choose("each-tap", "syllable");
    s.mark(0, MarkKind::Start);
    for tap in 0..n {
        s.mark(tap * end.1 / n, MarkKind::Tap);
    }
    s.mark(end.1, end.0);
}

fn held(s: &mut Scene, task: TaskId, ms: i64) {
    s.open(task);
    s.mark(0, MarkKind::Start).mark(ms, MarkKind::End);
}

fn note(s: &Scene) -> String {
    full_note::write(&s.visit, &clock("14:31")).unwrap().text
}

/// The rules that speak of a task, and what they say.
fn said(s: &Scene, task: TaskId) -> Vec<(&'static str, String)> {
    let flags = tasks::flags(task, &s.visit.exam).into_iter();
    flags
        .map(|f| (f.rule().id, f.reason().to_string()))
        .collect()
}

/// Until then nobody knows whether it was pa at all.
#[test]
fn syllables_are_scored_only_once_somebody_said_how_they_sounded() {
    for (task, says) in [
        (TaskId::SyllablePa, "pa"),
        (TaskId::SyllableTa, "ta"),
        (TaskId::SyllableKa, "ka"),
        (TaskId::Sequence, "pa-ta-ka"),
    ] {
        let mut s = oral_motor(Age::Years(72));
        syllables(&mut s, task, "5s", 30, (MarkKind::WindowOver, 5_010));
        let unsaid = said(&s, task);
        let ids: Vec<_> = unsaid.iter().map(|(id, _)| *id).collect();
        assert_eq!(ids, ["speech.best-trial"], "{unsaid:?}");
        let told = format!("{says} not scored, how it sounded was not said");
        assert!(s.text().to_lowercase().contains(&told), "{}", s.text());
        assert!(!s.text().contains("per second"), "{}", s.text());
        let reason = "how it sounded was not said, so no rate is scored";
        assert!(note(&s).contains(reason), "{}", note(&s));
        // Said, the same taps are a rate.
        s.choose("sound", "correct");
        assert!(
            s.text().contains("syllables per second") && !s.text().contains("not scored"),
            "{}",
            s.text()
        );
        assert!(!note(&s).contains(reason), "{}", note(&s));
        // What sounded wrong has none.
        s.choose("sound", "distorted");
        assert!(!s.text().contains("per second"), "{}", s.text());
    }
}

/// The published seconds are for 20: 23 are told, and put beside nothing.
#[test]
fn syllables_by_another_count_than_the_table_s_are_told_and_compared_with_nothing() {
    let by_count = |n| {
        let mut s = oral_motor(Age::Years(6));
        syllables(
            &mut s,
            TaskId::SyllablePa,
            "by-count",
            n,
            (MarkKind::End, 6_900),
        );
        s.choose("sound", "correct");
        (said(&s, TaskId::SyllablePa), note(&s))
    };
    let (flags, text) = by_count(23);
    let ids: Vec<_> = flags.iter().map(|(id, _)| *id).collect();
    assert_eq!(ids, ["speech.no-norm"]);
    let why = "No published value for pa measured this way; published: seconds for 20 repetitions.";
    assert!(flags[0].1.contains(why), "{flags:?}");
    assert!(
        text.contains("23 ") && text.contains("6.9 seconds"),
        "{text}"
    );
    // 20 of them are.
    let (flags, _) = by_count(20);
    let ids: Vec<_> = flags.iter().map(|(id, _)| *id).collect();
    assert_eq!(ids, ["speech.child-time"]);
}

/// A time of nothing has no rate: it is kept with its reason, and another trial counts alone.
#[test]
fn start_and_stop_in_one_millisecond_are_kept_and_not_scored() {
    let mut s = oral_motor(Age::Years(6));
    s.open(TaskId::SyllablePa);
    s.choose("how", "by-count")
        .mark(0, MarkKind::Start)
        .mark(0, MarkKind::Tap)
        .mark(0, MarkKind::End);
    s.choose("sound", "correct");
    assert!(!s.text().contains("per second"), "{}", s.text());
    let flags = said(&s, TaskId::SyllablePa);
    let kept = "pa-pa-pa, trial 1: kept, not scored: start and stop are the same moment.";
    assert!(
        flags.contains(&("speech.not-scored", kept.to_owned())),
        "{flags:?}"
    );

    let mut s = oral_motor(Age::Years(72));
    held(&mut s, TaskId::LongestAh, 0);
    let kept = "Longest \"ah\", trial 1: kept, not scored: start and stop are the same moment.";
    let not_scored = ("speech.not-scored", kept.to_owned());
    assert_eq!(
        said(&s, TaskId::LongestAh),
        std::slice::from_ref(&not_scored)
    );
    assert!(tasks::spec(TaskId::LongestAh).another(&s.visit.exam));
    let again = "Start and stop are the same moment: please time this again";
    assert!(note(&s).contains(again), "{}", note(&s));
    held(&mut s, TaskId::LongestAh, 12_000);
    assert_eq!(said(&s, TaskId::LongestAh), [not_scored]);
    assert!(
        s.text().contains("longest \"ah\" 12.0 seconds"),
        "{}",
        s.text()
    );
}

/// A nurse must not take a rate for a count.
#[test]
fn every_figure_of_an_oral_motor_screen_has_its_unit() {
    let mut s = oral_motor(Age::Years(72));
    for (task, taps) in [
        (TaskId::SyllablePa, 30),
        (TaskId::SyllableTa, 29),
        (TaskId::SyllableKa, 27),
        (TaskId::Sequence, 25),
    ] {
        syllables(&mut s, task, "5s", taps, (MarkKind::WindowOver, 5_010));
        s.choose("sound", "correct");
    }
    held(&mut s, TaskId::LongestAh, 15_400);
    let text = s.text();
    for told in [
        "pa-ta-ka 5.0 syllables per second = 1.7 sequences per second",
        "longest \"ah\" 15.4 seconds",
    ] {
        assert!(text.contains(told), "{text}");
    }
    let words: Vec<&str> = text.split_whitespace().collect();
    let mut figures = 0;
    for pair in words.windows(2) {
        let has_decimal = pair[0]
            .split_once('.')
            .is_some_and(|(whole, part)| [whole, part].iter().all(|p| p.parse::<u32>().is_ok()));
        if has_decimal {
            figures += 1;
            let unit = ["syllables", "sequences", "seconds"];
            assert!(
                unit.iter().any(|unit| pair[1].starts_with(unit)),
                "{pair:?} in {text}"
            );
        }
    }
    assert_eq!(figures, 6, "{text}");
    // It changes no order of eating and drinking, and asks for no plan.
    let decision = s.visit.decision().unwrap();
    assert!(!decision.verdict.needs_action());
    assert!(!text.contains("NOTHING BY MOUTH"), "{text}");
}

#[test]
fn an_age_that_was_not_given_is_told_beside_what_was_read_by_it() {
    let mut s = oral_motor(Age::Years(72));
    let mut details = s.visit.details.clone().unwrap();
    details.age = None;
    s.say(penlight::record::event::Event::Details(details));
    held(&mut s, TaskId::BreathCount, 12_000);
    s.number("reached", 24);
    let flags = said(&s, TaskId::BreathCount);
    let by_adult_rule = "Age not given: read by the rule for adults.";
    assert!(
        flags.iter().any(|(_, says)| says.contains(by_adult_rule)),
        "{flags:?}"
    );
}

/// The ward reads what came of it; what it is compared with stands in the full note.
#[test]
fn the_nursing_text_has_a_result_without_its_comparison() {
    let mut adult = Scene::new(Age::Years(50), Role::Slp);
    adult.on(ScreenId::FullVisit);
    held(&mut adult, TaskId::LongestS, 20_000);
    held(&mut adult, TaskId::LongestZ, 10_000);
    held(&mut adult, TaskId::BreathCount, 10_000);
    adult.number("reached", 20);
    let mut child = oral_motor(Age::Years(6));
    let stopped = (MarkKind::End, 12_000);
    syllables(&mut child, TaskId::SyllablePa, "by-count", 20, stopped);
    child.choose("sound", "correct");
    for (s, result, compared) in [
        (
            &adult,
            "ongest s 20.0 seconds, longest z 10.0 seconds, ratio 2.00 to 1: above 1.4, a reason to \
             have the larynx looked at",
            "; not a diagnosis.",
        ),
        (
            &adult,
            "ounted to 20 on one breath (about 10.0 seconds at 2 a second): fewer than 25",
            ". 25 and more fits normal breathing muscles",
        ),
        (
            &child,
            "20 repetitions of pa in 12.0 seconds: 1.7 syllables per second: slow for this age",
            "; 7.20 standard deviations above the mean",
        ),
    ] {
        let (text, note) = (s.text(), s.note());
        assert!(note.contains(&format!("{result}{compared}")), "{note}");
        assert!(
            text.contains(result) && !text.contains(compared),
            "{result}\n{text}"
        );
    }
}
