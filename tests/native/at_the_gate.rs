//! What ends everything by mouth at the gate, there and then, and what stays open. What must hold is
//! local policy; nobody here overrides another prescriber's order.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate::{Group, ITEMS, Item, State};
use penlight::clinical::findings::go_on::GoOn;
use penlight::clinical::knowledge::oral::Region;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::action;
use penlight::record::event::Event;
use penlight::record::way::{
    Step, after_group, after_region, after_task, looking_goes_on, next, shows,
};

const STOPS: [(&str, &str); 3] = [
    ("nothing-by-mouth", "other-reason"),
    ("distress", "distress"),
    ("awake", "unrousable"),
];

fn item(id: &str) -> &'static Item {
    ITEMS.iter().find(|item| item.id == id).unwrap()
}

/// The groups answered in order up to the one with this answer, that answer alone pressed in it.
fn pressed(screen: ScreenId, stop: (&str, &str)) -> Scene {
    let mut s = adult(Role::Slp);
    s.on(screen);
    let group = item(stop.0).group;
    for before in Group::ALL.iter().take_while(|g| **g != group) {
        let holds = before
            .items()
            .map(|i| (i.id.to_owned(), "holds".to_owned()));
        s.say(Event::Gate(holds.collect()));
    }
    s.say(Event::Gate(vec![(stop.0.to_owned(), stop.1.to_owned())]));
    s
}

#[test]
fn what_stops_is_what_the_table_says() {
    let all = ITEMS
        .iter()
        .flat_map(|i| i.exceptions.iter().map(move |e| (i.id, e)));
    let stops: Vec<_> = all.filter(|(_, e)| e.state == State::Stop).collect();
    assert_eq!(stops.len(), STOPS.len());
    for (id, e) in stops {
        assert!(STOPS.contains(&(id, e.id)), "{id}");
    }
}

/// No further question is asked, nothing is counted first, and no reason leads past it.
#[test]
fn it_ends_everything_by_mouth_there_and_then() {
    for stop in STOPS {
        let mut s = pressed(ScreenId::Swallow, stop);
        let group = item(stop.0).group;
        assert_eq!(next(&s.visit), Step::GateResult, "{stop:?}");
        assert_eq!(after_group(&s.visit, group), Step::GateResult, "{stop:?}");
        assert_eq!(after_task(&s.visit, TaskId::Breathing), Step::GateResult);
        assert_eq!(looking_goes_on(&s.visit), None);
        assert_eq!(s.verdict(), Verdict::NotDone(EndedEarly::GateClosed));
        for task in GIVEN {
            s.pass_all(task, "agreed with the team", Role::Slp);
            let key = format!("gate.{}.{}", stop.0, stop.1);
            let held = holds(task, &s.visit.exam);
            let one = held.iter().find(|h| h.id == key).unwrap();
            assert_eq!(one.go_on, GoOn::Never, "{task:?} {stop:?}");
        }
        assert_eq!(s.verdict(), Verdict::NotDone(EndedEarly::GateClosed));
    }
}

/// In a full visit the face, the mouth and the speech go on, past each of them, and end there.
#[test]
fn looking_and_speech_stay_open() {
    for stop in STOPS {
        let s = pressed(ScreenId::FullVisit, stop);
        let before = ScreenId::FullVisit.screen().oral.before();
        assert_eq!(looking_goes_on(&s.visit), Some(Step::Oral(before[0])));
        assert_eq!(after_region(&s.visit, before[0]), Step::Oral(before[1]));
        assert_eq!(
            after_task(&s.visit, TaskId::SyllablePa),
            Step::Task(TaskId::SyllableTa)
        );
        let tasks = ScreenId::FullVisit.screen().tasks;
        let speech = |t: &&TaskId| penlight::clinical::tasks::spec(**t).speech;
        let last = tasks.iter().rfind(speech).unwrap();
        assert_eq!(after_task(&s.visit, *last), Step::GateResult, "{stop:?}");
    }
}

/// New weakness that the team does not know ends all of it.
#[test]
fn new_weakness_ends_looking_and_speech_too() {
    for screen in [ScreenId::FullVisit, ScreenId::OralMotor] {
        let mut s = adult(Role::Slp);
        s.on(screen).gate(&[("new-weakness", "new")]);
        assert_eq!(next(&s.visit), Step::GateResult);
        assert_eq!(after_region(&s.visit, Region::Face), Step::GateResult);
        assert_eq!(after_task(&s.visit, TaskId::SyllablePa), Step::GateResult);
        assert_eq!(looking_goes_on(&s.visit), None);
        let tasks = screen.screen().tasks.iter();
        assert!(tasks.copied().all(|task| !shows(&s.visit, task)));
        assert_eq!(s.verdict(), Verdict::NotDone(EndedEarly::Emergency));
        assert!(s.text().starts_with("EMERGENCY"), "{}", s.text());
    }
}

/// Drowsy is asked again before the water, and a speech-language pathologist may say why not.
#[test]
fn drowsy_is_checked_again_before_anything_is_given() {
    let mut s = adult(Role::Screener);
    s.gate(&[("awake", "drowsy")]);
    assert_eq!(next(&s.visit), Step::Task(TaskId::Breathing));
    s.breaths(16).dry(&[2_000, 9_000, 17_000]);
    assert_eq!(next(&s.visit), Step::GateResult);
    assert_eq!(after_task(&s.visit, TaskId::DrySwallow), Step::GateResult);
    s.gate(&[]);
    assert_eq!(next(&s.visit), Step::Task(TaskId::Water90));
    s.gate(&[("awake", "drowsy")]);
    s.pass(TaskId::Water90, "gate.awake", Role::Slp);
    assert_eq!(next(&s.visit), Step::Task(TaskId::Water90));
}

/// One press, and the text may leave: nothing by mouth, or the order as it stands, which says for
/// itself whether tablets are meant.
#[test]
fn one_press_leads_to_a_text_that_may_leave() {
    for stop in STOPS {
        let mut s = pressed(ScreenId::Swallow, stop);
        let missing = |s: &Scene| {
            let decision = s.visit.decision().unwrap();
            action::missing(&decision, &s.visit.plan, &s.visit.exam)
        };
        for event in action::at_a_stop(&s.visit) {
            s.say(event);
        }
        assert_eq!(missing(&s), None, "{stop:?}");
        assert_eq!(s.verdict(), Verdict::NotDone(EndedEarly::GateClosed));
        let fasts = stop.0 == "nothing-by-mouth";
        let text = s.text();
        assert_eq!(
            text.contains("NOTHING BY MOUTH, tablets included"),
            !fasts,
            "{text}"
        );
        assert!(!text.contains("not chosen yet"), "{text}");
        assert_eq!(text.contains("the doctor now"), !fasts, "{text}");
    }
}

/// An earlier version let a speech-language pathologist go past an order to fast: what was given then
/// is told with the reason, though nobody goes past it now.
#[test]
fn a_reason_of_an_earlier_version_is_told_though_nobody_goes_past_it_now() {
    let mut s = adult(Role::Slp);
    s.gate(&[("nothing-by-mouth", "other-reason")]);
    s.say(Event::WentOn {
        hold: "gate.nothing-by-mouth.other-reason".to_owned(),
        because: "the surgeon agreed".to_owned(),
        by: Role::Slp,
        initials: None,
        says: String::new(),
        ground: None,
    });
    s.breaths(16).dry(&[2_000, 9_000, 17_000]).water(&[]);
    assert!(s.verdict() != Verdict::Pass);
    for text in [s.text(), s.note()] {
        assert!(text.contains("the surgeon agreed"), "{text}");
    }
}

/// The order of whoever ordered it stands in the text, above everything else.
#[test]
fn an_order_to_fast_stands_in_the_text() {
    let s = pressed(ScreenId::Swallow, STOPS[0]);
    assert!(s.text().contains("that order stands"), "{}", s.text());
}
