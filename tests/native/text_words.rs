//! The sentences of the text for the ward, as a tired reader meets them.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::person::Label;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::full_note;
use penlight::record::event::Details;
use penlight::record::event::Event;

#[test]
fn each_cup_is_told() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 5_000)]).water(&[]);
    assert_eq!(s.verdict(), Verdict::Refer);
    let text = s.text();
    assert!(
        text.contains("cup 1: 90 mL") && text.contains("cup 2: 90 mL"),
        "{text}"
    );
    assert_eq!(text.matches("no sign for 60 seconds").count(), 1, "{text}");
}

/// "... in adults.." reads as a slip of the pen.
#[test]
fn no_sentence_ends_with_two_full_stops() {
    for age in [
        Age::Months(18),
        Age::Years(5),
        Age::Years(12),
        Age::Years(72),
    ] {
        for screen in ScreenId::ALL {
            let mut s = Scene::new(age, Role::Screener);
            s.on(screen).gate(&[]).breaths(20);
            for text in [
                s.text(),
                full_note::write(&s.visit, &clock("14:31")).unwrap().text,
            ] {
                assert!(
                    !text.contains("..") && !text.contains(".;"),
                    "{age:?} {screen:?} {text}"
                );
            }
        }
    }
}

/// Broken off: what was counted and doubted before it is told all the same.
#[test]
fn what_was_missing_before_it_was_broken_off_is_told() {
    for end in [
        EndedEarly::BrokenOff,
        EndedEarly::Withdrew,
        EndedEarly::Refused,
    ] {
        let mut s = adult(Role::Screener);
        s.gate(&[])
            .breaths(16)
            .dry(&[])
            .choose("not-valid", "not-felt");
        s.say(Event::EndedEarly(end));
        assert!(s.text().contains("0 counted"), "{end:?} {}", s.text());
        // A cup that nobody watched to the end.
        let mut s = ready(Role::Screener);
        s.open(TaskId::Water90);
        s.choose("voice-before", "clear")
            .mark(100_000, MarkKind::Start)
            .mark(108_400, MarkKind::End)
            .choose("watch-cut", "called-away")
            .choose("cup", "one-go");
        s.say(Event::EndedEarly(end));
        let text = s.text();
        assert!(text.contains("ended early"), "{end:?} {text}");
    }
}

/// Levels, remark and "until review" never speak beside what forbids them.
#[test]
fn every_hold_of_the_gate_says_so_in_the_text_that_leaves() {
    for item in gate::ITEMS {
        for exception in item.exceptions {
            let mut s = ready(Role::Slp);
            s.water(&[]);
            s.gate(&[(item.id, exception.id)]);
            let says = penlight::wording::gate::exception(item, exception);
            let words = penlight::wording::words::small(says);
            assert!(
                s.text().contains(&words) || s.text().contains(says),
                "{} {}",
                says,
                s.text()
            );
        }
    }
}

/// Glasses are to be put in; that saliva is not managed is why nothing may be given.
#[test]
fn what_blocks_gives_the_headline_before_what_can_be_put_right() {
    let mut s = adult(Role::Screener);
    s.gate(&[("aids", "no"), ("identity", "unsure"), ("saliva", "no")]);
    let head = s.first_line();
    assert!(head.contains("aliva"), "{head}");
}

/// Forty of 150 mL with a cough, then a second cup: the text knew of the second alone.
#[test]
fn each_timed_cup_is_told() {
    let mut s = ready(Role::Slp);
    s.timed_cup(100_000, &[(Sign::Cough, 1_000)], "clear");
    s.choose("cup-left", "some-left").number("cup-left-ml", 60);
    s.timed_cup(400_000, &[], "clear");
    let words = "timed cup of water: 40 of 100 mL drunk, slowly (by itself no sign of aspiration), then \
                 100 of 100 mL drunk";
    assert!(s.text().contains(words), "{}", s.text());
}

/// Swallow taps are welcome and not needed: without them the ward read "no swallow".
#[test]
fn swallows_that_nobody_tapped_are_not_called_none() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear");
    s.mark(100_000, MarkKind::Start)
        .mark(108_400, MarkKind::End);
    assert!(!s.text().contains("no swallow"), "{}", s.text());
    assert!(s.text().contains("swallows not counted"), "{}", s.text());
}

#[test]
fn what_was_drunk_is_said() {
    let mut s = ready(Role::Screener);
    s.water(&[]).choose("cup", "some-left").number("left", 60);
    assert!(
        s.text()
            .contains("30 of 90 mL of water drunk, not finished"),
        "{}",
        s.text()
    );
    // Stopped half-way.
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start)
        .mark(102_000, MarkKind::Tap)
        .mark(104_000, MarkKind::Tap);
    s.say(Event::EndedEarly(EndedEarly::BrokenOff));
    let told = "some of the 90 mL of water drunk, 2 swallows counted, amount not recorded, not \
                watched afterwards";
    assert!(s.text().contains(told), "{}", s.text());
}

#[test]
fn an_age_that_was_not_given_is_told_where_the_person_is() {
    let mut s = ready(Role::Screener);
    s.say(Event::Details(Details {
        label: Label::parse("Visit 3, 14:10").unwrap(),
        age: None,
        sex: None,
        setting: None,
        language: None,
    }));
    s.water(&[]);
    let text = s.text();
    assert!(
        text.contains("Identify: Visit 3, 14:10, age not given. Patient"),
        "{text}"
    );
    assert!(text.contains("the rules for adults were used"), "{text}");
}

#[test]
fn sentences_read_as_such() {
    // A child's reading is a question, and its answer no defiance.
    let mut s = Scene::new(Age::Years(6), Role::Screener);
    s.gate(&[]).breaths(24);
    s.pass_all(
        TaskId::Water90,
        "it fits the local chart for this age",
        Role::Screener,
    );
    s.water(&[]);
    let told = "does it fit the local chart for this age? Answer of the clinician trained to \
                screen: it fits the local chart for this age";
    let text = s.text();
    assert!(text.contains(told), "{text}");
    assert!(!text.contains(".."), "{text}");
    assert!(!text.contains("?;"), "{text}");

    let mut s = own_trials(Role::Slp);
    for (from, signs) in [(0, vec![]), (100_000, vec![(Sign::BreathingChange, 1_000)])] {
        s.given(TaskId::Own, from, &signs)
            .choose("own-level", "d2")
            .choose("own-amount", "teaspoon")
            .choose("own-by", "spoon");
    }
    let text = s.text();
    assert!(
        text.contains("2 Mildly thick, teaspoon: given twice, breathing changed in 1 of 2"),
        "{text}"
    );
}

/// Nobody refers to himself: the words are those of who goes on.
#[test]
fn a_speech_language_pathologist_who_refers_sees_to_it() {
    let words = |role| {
        let mut s = ready(role);
        s.water(&[(Sign::Cough, 2_000)]);
        (s.headline(), s.first_line())
    };
    assert_eq!(
        words(Role::Screener),
        (
            "Refer to speech-language pathology",
            "REFER to speech-language pathology today.".to_owned()
        )
    );
    assert_eq!(
        words(Role::Slp),
        (
            "Refer: further examination",
            "REFER: speech-language pathology sees to it today.".to_owned()
        )
    );
}
