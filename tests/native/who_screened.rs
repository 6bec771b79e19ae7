//! Who holds the phone: asked at each visit, signed for by a speech-language pathologist, and told
//! with everything that was decided. What must hold is local policy.

use crate::support::*;
use penlight::clinical::knowledge::person::{Age, Initials, InitialsError, Label, Role};
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::signed::{Signed, SignedError};
use penlight::clinical::knowledge::task::TaskId;
use penlight::record::event::{Details, Event, Versions};

fn initials(letters: &str) -> Option<Initials> {
    Some(Initials::parse(letters).unwrap())
}

/// A visit as the page begins it.
fn begun(by: Signed) -> Scene {
    let mut s = adult(by.role);
    s.say(Event::Opened {
        details: Details {
            label: Label::parse("Visit 3, 14:10").unwrap(),
            age: Some(Age::Years(72)),
            sex: None,
            setting: None,
            language: None,
        },
        screen: Some(ScreenId::Swallow),
        versions: Versions {
            app: "0".to_owned(),
            rules: "1".to_owned(),
        },
        policy: Policy::default(),
        role: by.role,
        initials: by.initials,
    });
    s
}

/// Goes on past the first thing in the way of the cup, as the page records it.
fn goes_past(s: &mut Scene) {
    let hold = holds(TaskId::Water90, &s.visit.exam).remove(0);
    s.say(Event::WentOn {
        hold: hold.id,
        because: "low risk in my judgement".to_owned(),
        by: s.visit.role,
        initials: s.visit.initials.clone(),
        says: String::new(),
        ground: None,
    });
}

/// The next visit was signed as a speech-language pathologist without a press.
#[test]
fn a_speech_language_pathologist_signs_and_a_screener_does_not() {
    let policy = Policy::default();
    let read = |role, typed: &str| Signed::read(role, typed, &policy);
    let refused = |error| Err(SignedError::Initials(error));
    assert_eq!(read(Role::Slp, " "), refused(InitialsError::Empty));
    assert_eq!(read(Role::Slp, "A1"), refused(InitialsError::NotLetters));
    let long = read(Role::Slp, &"A".repeat(40));
    assert_eq!(long, refused(InitialsError::TooLong(40)));
    let words = "Initials have at most 4 letters; these have 40.";
    assert_eq!(long.unwrap_err().to_string(), words);
    let signed = read(Role::Slp, "a. b.").unwrap();
    assert_eq!(signed.initials, initials("ab"));
    // What was typed and not wanted is not kept: it might be anybody's.
    assert_eq!(read(Role::Screener, "AB").unwrap().initials, None);
}

#[test]
fn a_policy_takes_the_role_off_a_shared_phone() {
    let shared = Policy {
        slp_here: false,
        ..Policy::default()
    };
    assert_eq!(
        Role::offered(&Policy::default()),
        [Role::Screener, Role::Slp]
    );
    assert_eq!(Role::offered(&shared), [Role::Screener]);
    let refused = Signed::read(Role::Slp, "AB", &shared);
    assert_eq!(refused, Err(SignedError::NotHere));
    assert!(Signed::read(Role::Screener, "", &shared).is_ok());
}

#[test]
fn both_texts_say_who_screened() {
    let signed = Signed::read(Role::Slp, "AB", &Policy::default()).unwrap();
    let mut s = begun(signed);
    s.gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[]);
    let line = "\nScreened at 14:01 by AB (speech-language pathologist, role as stated). Issued";
    for text in [s.text(), s.note()] {
        assert!(text.contains(line), "{text}");
    }
    // A name is written by hand where no initials were asked for.
    let mut s = ready(Role::Screener);
    s.water(&[]);
    assert!(
        s.text()
            .contains(" by ____ (clinician trained to screen). ")
    );
}

/// Whoever went on past a block is named, and that nobody could check the role.
#[test]
fn every_override_prints_the_initials_and_that_the_role_is_as_stated() {
    let signed = Signed::read(Role::Slp, "AB", &Policy::default()).unwrap();
    let mut s = begun(signed);
    s.gate(&[("tube", "tube")])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    goes_past(&mut s);
    s.water(&[]);
    let words = "decided by the speech-language pathologist AB, role as stated: low risk";
    for text in [s.text(), s.note()] {
        assert!(text.contains(words), "{text}");
    }
}

/// Records of earlier versions have no initials: the role alone is printed, nothing is invented.
#[test]
fn a_record_without_initials_prints_the_role_alone() {
    let mut s = adult(Role::Slp);
    s.gate(&[("tube", "tube")])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    goes_past(&mut s);
    s.water(&[]);
    let words = "decided by the speech-language pathologist: low risk in my judgement";
    for text in [s.text(), s.note()] {
        assert!(text.contains(words), "{text}");
        assert!(!text.contains("as stated"), "{text}");
    }
    let old = r#"{"WentOn":{"hold":"gate.tube.tube","because":"low risk","by":"Slp"}}"#;
    let read: Event = serde_json::from_str(old).unwrap();
    assert!(matches!(read, Event::WentOn { initials: None, .. }));
    assert_eq!(serde_json::to_string(&read).unwrap(), old);
}

/// Someone else took the phone over in the visit: the initials of the first do not speak for him.
#[test]
fn initials_do_not_outlast_the_role() {
    let signed = Signed::read(Role::Slp, "AB", &Policy::default()).unwrap();
    let mut s = begun(signed);
    s.say(Event::Role(Role::Slp));
    assert_eq!(s.visit.initials, None);
}
