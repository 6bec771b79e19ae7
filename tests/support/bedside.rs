//! What sequences at the bedside begin with, and what is asked of them.

#![allow(dead_code)]

use crate::support::in_the_way::holds;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::{breathing, timed_water};
use penlight::record::event::Event;

use crate::support::script::*;

pub(crate) fn adult(role: Role) -> Script {
    Script::new(Age::Years(72), role)
}

pub(crate) fn ready(role: Role) -> Script {
    let mut s = adult(role);
    s.gate(&[]).breaths(16).dry(&[2_000, 9_000, 17_000]);
    s
}

/// Much that the gate has to tell, and that closes nothing.
pub(crate) const MUCH_AT_THE_GATE: &[(&str, &str)] = &[
    ("fluids", "restricted"),
    ("allergy", "allergy"),
    ("chest", "chest"),
    ("spine", "limit"),
    ("suction", "none"),
    ("requests", "no"),
    ("language", "no"),
    ("high-flow", "high-flow"),
    ("risk-plan", "plan"),
    ("new-weakness", "known"),
];

/// Much that the examination has to tell, and that holds nothing.
pub(crate) const MUCH_IN_THE_MOUTH: &[(&str, &str)] = &[
    ("mouth.clean", "coated"),
    ("speech", "slurred"),
    ("voice.pitch", "narrow"),
    ("throat.clear", "weak"),
    ("nose", "blocked"),
    ("mouth.moist", "dry"),
];

/// A full visit with much to tell before anything is counted: texts are cut from here on.
pub(crate) fn much_to_tell(role: Role) -> Script {
    let mut s = adult(role);
    s.on(ScreenId::FullVisit).gate(MUCH_AT_THE_GATE);
    s.examined(MUCH_IN_THE_MOUTH);
    s
}

impl Script {
    pub(crate) fn verdict(&self) -> Verdict {
        self.visit.decision().unwrap().verdict
    }

    pub(crate) fn spo2(&mut self, percent: i32) -> &mut Script {
        self.breaths(16).number(breathing::SATURATION, percent)
    }
}

/// Passes the first hold whose id begins so, as the page would.
pub(crate) fn pass(s: &mut Script, task: TaskId, begins: &str, by: Role) {
    let held = holds(task, &s.visit.exam);
    let hold = held.iter().find(|h| h.id.starts_with(begins));
    assert!(hold.is_some(), "no {begins} in {held:?}");
    let hold = hold.unwrap();
    s.say(Event::WentOn {
        hold: hold.id.clone(),
        because: "needed for the assessment".to_owned(),
        by,
        says: hold.says.clone(),
        ground: None,
    });
}

pub(crate) fn first_line(s: &Script) -> String {
    s.text().lines().next().unwrap().to_owned()
}

/// A clear stepped screen up to the 90 mL, but for what `each` says of every sip.
pub(crate) fn sips_given(s: &mut Script, each: &mut dyn FnMut(usize, &mut Script)) {
    for (n, ml) in [3, 3, 5, 5, 10, 10].into_iter().enumerate() {
        let from = 100_000 + i64::try_from(n).unwrap() * 70_000;
        s.given(TaskId::Sips, from, &[]).number("sip", ml);
        if ml == 3 {
            s.choose("sip-way", "under-tongue")
                .choose("extra-swallows", "2");
        }
        each(n, s);
    }
}

pub(crate) fn stepped(role: Role, spo2: i32) -> Script {
    let mut s = adult(role);
    s.on(ScreenId::Stepped).gate(&[]).spo2(spo2);
    s.dry(&[2_000, 9_000, 17_000]);
    s
}

pub(crate) fn timed(s: &mut Script, from: i64, signs: &[(Sign, i64)], after: &str) {
    s.open(TaskId::TimedWater);
    s.choose(timed_water::OFFERED, "100")
        .choose("voice-before", "clear");
    s.mark(from, MarkKind::Start)
        .mark(from + 4_000, MarkKind::Tap);
    s.mark(from + 8_000, MarkKind::End);
    for (sign, at) in signs {
        s.mark(from + 8_000 + at, MarkKind::Sign(*sign));
    }
    s.mark(from + 68_030, MarkKind::WatchOver);
    s.choose(timed_water::CUP, timed_water::EMPTY)
        .choose("voice-after", after);
}
