//! Both texts of an examination with a mixed set of findings, word for word as they were read by
//! somebody and found right. `PENLIGHT_WRITE_TEXTS=1` writes them anew, to be read again.

use crate::support::*;
use std::path::Path;
use std::{env, fs};

use penlight::clinical::findings::oral::{Cue, FoundId, Reason, Seen, Severity, Sides, Touches};
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::oral;
use penlight::clinical::knowledge::oral::{By, Region};
use penlight::clinical::knowledge::person::{Age, Label, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::oral::flags::WEAKNESS;
use penlight::handover::nursing::Clock;
use penlight::handover::{full_note, nursing};
use penlight::record::event::{Event, Versions};

fn saw(s: &mut Scene, item: &str, seen: Seen) {
    s.say(Event::Oral(vec![(item.to_owned(), seen)]));
}

fn found(s: &mut Scene, item: &str, what: &str, side: Sides, severity: Option<Severity>) {
    let found = FoundId {
        what: what.to_owned(),
        side: Some(side),
        severity,
    };
    saw(s, item, Seen::Found(vec![found]));
}

/// An old stroke: a weak left face, a tongue and a palate that point, touch that is missed.
fn mixed() -> Scene {
    let mut s = Scene::new(Age::Years(72), Role::Screener);
    let mut details = s.visit.details.clone().unwrap();
    details.label = Label::parse("Visit 1, 09:30").unwrap();
    details.setting = None;
    s.say(Event::Details(details)).on(ScreenId::OralMotor);
    s.say(Event::Gate(vec![(WEAKNESS.to_owned(), "known".to_owned())]));
    let moderate = Some(Severity::Moderate);
    found(&mut s, "face.rest", "droop", Sides::Left, moderate);
    s.say(Event::OralCue {
        region: Region::Face,
        cue: Some(Cue::Copied),
    });
    found(&mut s, "lips.smile", "pulled", Sides::Right, None);
    let opening = Seen::Measured {
        tenths: Some(350),
        front_teeth: Some(true),
    };
    saw(&mut s, "jaw.mm", opening);
    found(&mut s, "tongue.out", "to-side", Sides::Left, None);
    found(&mut s, "tongue.sides", "short", Sides::Right, None);
    found(&mut s, "palate.ah", "pulled", Sides::Right, None);
    let touches = |felt, less, missed| Touches { felt, less, missed };
    let cheek = Seen::Touched {
        left: touches(1, 1, 1),
        right: touches(1, 0, 0),
    };
    saw(&mut s, "touch.cheek", cheek);
    let settled = [
        "face.rest",
        "lips.smile",
        "jaw.mm",
        "tongue.out",
        "tongue.sides",
        "palate.ah",
        "touch.cheek",
    ];
    let left = oral::items().filter(|item| !settled.contains(&item.id));
    let left = left.map(|item| {
        let seen = match item.by {
            By::Eye | By::Hand => Seen::AsExpected,
            By::Alone => Seen::NotTested(Reason::NotNeeded),
        };
        (item.id.to_owned(), seen)
    });
    s.say(Event::Oral(left.collect()));
    s.open(TaskId::SyllablePa);
    s.choose("how", "5s").choose("each-tap", "syllable");
    s.mark(0, MarkKind::Start);
    for n in 0..30 {
        s.mark(n * 166, MarkKind::Tap);
    }
    s.mark(5_000, MarkKind::WindowOver)
        .choose("sound", "correct");
    s.say(Event::Decided {
        verdict: "no-decision".to_owned(),
        reasons: Vec::new(),
        versions: Versions {
            app: "(version)".to_owned(),
            rules: "(version)".to_owned(),
        },
        policy: "Penlight default 1".to_owned(),
    });
    s
}

#[track_caller]
fn as_reviewed(name: &str, text: &str) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures");
    let file = folder.join(format!("{name}.txt"));
    let text = format!("{text}\n");
    if env::var_os("PENLIGHT_WRITE_TEXTS").is_some() {
        fs::write(&file, &text).unwrap();
    }
    assert_eq!(
        text,
        fs::read_to_string(&file).unwrap(),
        "{}",
        file.display()
    );
}

#[test]
fn both_texts_are_as_they_were_read() {
    let s = mixed();
    let now = Clock {
        date: "4 Mar 2026".to_owned(),
        time: "09:30".to_owned(),
        wall: at(0).wall,
        local: |_| ("4 Mar 2026".to_owned(), "09:30".to_owned()),
    };
    as_reviewed(
        "mixed-nursing",
        &nursing::write(&s.visit, &now).unwrap().text,
    );
    let note = full_note::write(&s.visit, &now).unwrap().text;
    as_reviewed("mixed-full-note", &note);
}
