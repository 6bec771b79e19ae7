//! What a tired reader stumbles over: headlines, and the sentences of the text for the ward.

#![allow(clippy::unwrap_used)]

use crate::support::bedside;
use crate::support::script;

use crate::support::in_the_way::holds;
use bedside::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::{Age, Label, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::by_mouth::lag;
use penlight::handover::nursing::MOST;
use penlight::record::event::{Action, Details, Event};
use penlight::record::head::Head;
use penlight::record::visit::Visit;
use script::*;

fn headline(visit: &Visit) -> &'static str {
    penlight::wording::verdict::decided(&visit.decision().unwrap(), visit.role)
}

/// Told and not counted, by the published rule; but nobody reads "no sign" where one was pressed.
#[test]
fn a_late_sign_is_no_no_sign() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 121_000)]);
    assert_eq!(s.verdict(), Verdict::Pass);
    assert_eq!(
        headline(&s.visit),
        "No sign within the 60 seconds; one came later"
    );
    let text = s.text();
    assert!(
        text.starts_with(
            "NO SIGN within the 60 seconds; LATER: coughed 121 seconds after the last swallow of \
             the 90 mL. This screen changes no eating or drinking order."
        ),
        "{text}"
    );
    assert!(
        text.contains("Recommendation: let speech-language pathology know of the sign; keep to"),
        "{text}"
    );
    assert!(!text.contains("no sign"), "{text}");
    decided(&mut s);
    assert_eq!(Head::of(&s.visit).verdict, "Sign noted");
}

/// One that is only noted, in time; and beside it a graver one that came too late.
#[test]
fn a_sign_that_is_only_noted_is_no_no_sign() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::ThroatClear, 20_000)]);
    assert_eq!(headline(&s.visit), "No sign that refers; one was noted");
    let noted = "NO SIGN THAT REFERS; NOTED: cleared the throat 20 seconds after the last swallow \
                 of the 90 mL. ";
    assert!(s.text().starts_with(noted), "{}", s.text());

    let mut s = ready(Role::Screener);
    s.water(&[(Sign::ThroatClear, 20_000), (Sign::Cough, 70_000)]);
    let noted = "NO SIGN THAT REFERS; NOTED: coughed 70 seconds after the last swallow of the \
                 90 mL, and 1 more. ";
    assert!(s.text().starts_with(noted), "{}", s.text());
    assert!(s.text().contains("cleared the throat 20 seconds"));

    let mut s = ready(Role::Screener);
    s.water(&[]);
    assert_eq!(headline(&s.visit), "No sign seen on this screen");
}

/// The sips have a rule of their own for it.
#[test]
fn a_late_sign_of_a_sip_is_no_no_sign() {
    let mut s = stepped(Role::Screener, 97);
    sips_given(&mut s, &mut |n, s| {
        if n == 2 {
            s.mark(305_000, MarkKind::Sign(Sign::Cough));
            s.choose(&lag::late_id(at(305_000)), lag::NOTHING);
        }
    });
    s.given(TaskId::Water90, 600_000, &[])
        .choose("cup", "one-go");
    assert_eq!(s.verdict(), Verdict::Pass, "{}", s.text());
    let late = "NO SIGN within the 60 seconds; LATER: sip of 5 mL: coughed 63 seconds after the \
                swallow. ";
    assert!(s.text().starts_with(late), "{}", s.text());
}

fn decided(s: &mut Script) {
    let verdict = s.verdict().id().to_owned();
    s.say(Event::Decided {
        verdict,
        reasons: Vec::new(),
        versions: penlight::record::event::Versions {
            app: "0".to_owned(),
            rules: "1".to_owned(),
        },
        policy: String::new(),
    });
}

/// Nobody rings speech-language pathology for somebody who turns blue.
#[test]
fn choking_and_colour_change_go_to_the_local_procedure() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let watch = "Watch for choking, colour change: local emergency procedure; cough, wet voice, \
                 watering eyes, fever: stop, call speech-language pathology now.";
    assert!(s.text().contains(watch), "{}", s.text());
    // Where the text names the doctor, he is called.
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, 1_000)])
        .plan(Action::NothingByMouth, "");
    let watch = "watering eyes, fever: call the doctor now.";
    assert!(s.text().contains(watch), "{}", s.text());
}

/// A full visit with findings all over, and reasons given for going on.
#[test]
fn the_water_and_its_signs_are_never_cut() {
    let mut s = much_to_tell(Role::Slp);
    s.breaths(22).dry(&[2_000]);
    for task in [TaskId::Water90, TaskId::Own] {
        for hold in holds(task, &s.visit.exam) {
            s.say(Event::WentOn {
                hold: hold.id,
                because: "the team, the family and the person agreed to it this morning".to_owned(),
                by: Role::Slp,
                says: hold.says,
                ground: None,
            });
        }
    }
    s.given(TaskId::Own, 300_000, &[(Sign::Spill, 1_000)])
        .choose("own-level", "d2");
    s.water(&[(Sign::Cough, -2_000), (Sign::VoiceChange, 9_000)])
        .choose("cup", "some-left")
        .number("left", 60);
    s.plan(Action::NothingByMouth, "");
    let text = s.text();
    assert!(text.chars().count() < MOST, "{text}");
    for told in [
        "30 of 90 mL of water drunk, not finished",
        "coughed",
        "voice turned wet or changed",
        "spilled or drooled",
        "1 dry swallow in 30 seconds",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
    // The sentences of what was gone past were the first to go.
    assert!(!text.contains("the family"), "{text}");
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
    s.say(Event::EndedEarly(
        penlight::clinical::findings::exam::EndedEarly::BrokenOff,
    ));
    let told = "some of the 90 mL of water drunk, 2 swallows counted, amount not recorded, not \
                watched afterwards";
    assert!(s.text().contains(told), "{}", s.text());
}

/// Nothing by mouth until this screen: the gate lets it through, and the text ends no order.
#[test]
fn a_clear_screen_lifts_no_order() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let order = "keep to the orders in force; an order of nothing by mouth until this screen: only \
                 whoever gave it lifts it; food and drink only awake";
    assert!(s.text().contains(order), "{}", s.text());
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

/// Shown before the press, and not yet to leave: nothing in it is milder than it may become.
#[test]
fn what_was_not_chosen_is_said_to_be_open() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, 1_000)]);
    let text = s.text();
    assert!(
        text.contains("\nUNTIL REVIEWED: not chosen yet.\n"),
        "{text}"
    );
    assert!(
        text.contains("Recommendation: mouth care; upright."),
        "{text}"
    );
    s.plan(Action::KeepPlan, "the doctor decided so");
    assert!(!s.text().contains("not chosen"), "{}", s.text());
}

#[test]
fn sentences_read_as_such() {
    // A child's reading is a question, and its answer no defiance.
    let mut s = Script::new(Age::Years(6), Role::Screener);
    s.gate(&[]).breaths(24);
    for hold in holds(TaskId::Water90, &s.visit.exam) {
        s.say(Event::WentOn {
            hold: hold.id,
            because: "it fits the local chart for this age".to_owned(),
            by: Role::Screener,
            says: hold.says,
            ground: None,
        });
    }
    s.water(&[]);
    let told = "does it fit the local chart for this age? Answer of the clinician trained to \
                screen: it fits the local chart for this age";
    let text = s.text();
    assert!(text.contains(told), "{text}");
    assert!(!text.contains(".."), "{text}");
    assert!(!text.contains("?;"), "{text}");

    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
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

/// What a choking makes moot is no reproach; one after it is.
#[test]
fn a_trial_rightly_stopped_misses_nothing() {
    let begun = |sign: bool| {
        let mut s = ready(Role::Screener);
        s.open(TaskId::Water90);
        s.choose("voice-before", "clear")
            .mark(100_000, MarkKind::Start)
            .mark(102_000, MarkKind::Tap);
        if sign {
            s.mark(104_000, MarkKind::Sign(Sign::Choke));
        }
        s.say(Event::Choking(at(104_000)));
        s
    };
    for sign in [true, false] {
        let s = begun(sign);
        assert_eq!(s.verdict(), Verdict::Stop);
        assert!(
            s.visit.decision().unwrap().missing.is_empty(),
            "{}",
            s.text()
        );
        assert!(!s.text().contains("not marked"), "{}", s.text());
        assert!(!s.text().contains("not watched"), "{}", s.text());
    }
    for task in [TaskId::Cracker, TaskId::TimedWater] {
        let mut s = ready(Role::Slp);
        s.open(task);
        s.mark(100_000, MarkKind::Start)
            .say(Event::Choking(at(104_000)));
        let missing = s.visit.decision().unwrap().missing;
        assert!(
            missing.iter().all(|f| !f.reason().contains("marked")),
            "{missing:?}"
        );
    }
    // A cup begun after it is asked for all.
    let mut s = begun(true);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(300_000, MarkKind::Start);
    assert!(!s.visit.decision().unwrap().missing.is_empty());
    // Nor does a request to stop, or a choking long after the watch, excuse what is open.
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, 300_000)]);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(600_000, MarkKind::Start)
        .mark(604_000, MarkKind::Sign(Sign::AskedToStop));
    assert!(!s.visit.decision().unwrap().missing.is_empty());
}

/// While the watch runs the page of the task lists what was seen; the decision is as careful as ever.
#[test]
fn a_running_watch_is_no_finding() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start)
        .mark(108_000, MarkKind::End);
    let task = TaskId::Water90;
    assert!(tasks::flags_so_far(task, &s.visit.exam).is_empty());
    assert!(!tasks::flags(task, &s.visit.exam).is_empty());
    assert_eq!(s.verdict(), Verdict::Incomplete);
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    let shown = tasks::flags_so_far(task, &s.visit.exam);
    assert!(
        shown.len() == 1 && shown[0].level() == Level::Refer,
        "{shown:?}"
    );
    s.mark(168_030, MarkKind::WatchOver);
    let open = tasks::flags_so_far(task, &s.visit.exam);
    assert!(open.iter().any(|f| f.level() == Level::Incomplete));
}

/// Nobody refers to himself: the words are those of who goes on.
#[test]
fn a_speech_language_pathologist_who_refers_sees_to_it() {
    let words = |role| {
        let mut s = ready(role);
        s.water(&[(Sign::Cough, 2_000)]);
        (headline(&s.visit), first_line(&s))
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
