//! Face, mouth and throat: worked examples, each with the publication its rule rests on, and
//! properties. Sides are the patient's.

#![allow(clippy::unwrap_used, clippy::panic)]

use crate::outside::groups;

use penlight::clinical::decision::assess::{assess, flags};
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::{EndedEarly, Exam};
use penlight::clinical::findings::flag::{Domain, Flag, Level};
use penlight::clinical::findings::gate::HOLDS;
use penlight::clinical::findings::oral::answer::NotOfIt;
use penlight::clinical::findings::oral::{
    Answer, Found, FoundId, Oral, Reason, Seen, Severity, Sides, Touches,
};
use penlight::clinical::knowledge::oral;
use penlight::clinical::knowledge::oral::{By, Cranial, Examination, Points, Region, Sided, Takes};
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::tasks::oral::flags::WEAKNESS;
use penlight::clinical::tasks::oral::points;
use penlight::wording;
use penlight::wording::oral as told;
use penlight::wording::oral_items;
use proptest::prelude::*;
use proptest::sample::select;

fn found(what: &str, side: Option<Sides>) -> Seen {
    Seen::Found(vec![FoundId {
        what: what.to_owned(),
        side,
        severity: None,
    }])
}

fn oral(answers: &[(&str, Seen)]) -> Oral {
    let mut oral = Oral::default();
    for (item, seen) in answers {
        assert!(oral::find(item).is_some(), "no item {item}");
        oral.take(vec![((*item).to_owned(), seen.clone())]);
    }
    oral
}

fn exam(answers: &[(&str, Seen)]) -> Exam {
    let mut exam = Exam {
        age: Some(Age::Adult),
        oral: oral(answers),
        ..Exam::default()
    };
    exam.gate.0.insert(WEAKNESS.to_owned(), HOLDS.to_owned());
    exam
}

fn raised(exam: &Exam) -> Vec<Flag> {
    flags(ScreenId::OralMotor.screen(), exam)
}

fn says(exam: &Exam, rule: &str) -> Vec<String> {
    raised(exam)
        .iter()
        .filter(|f| f.rule().id == rule)
        .map(|f| f.reason().to_owned())
        .collect()
}

const SIDES: [(Sides, Sides); 2] = [(Sides::Left, Sides::Right), (Sides::Right, Sides::Left)];

fn word(side: Sides) -> &'static str {
    oral_items::side(side.one().unwrap())
}

/// Tongue ALPF; uvula DER; jaw and smile MW.
#[test]
fn what_deviates_names_the_weak_side_on_both_sides() {
    for (side, other) in SIDES {
        for (item, what, rule, weak) in [
            ("tongue.out", "to-side", "weak-side.tongue", side),
            ("palate.ah", "pulled", "weak-side.uvula", other),
            ("jaw.open", "to-side", "weak-side.jaw", side),
            ("lips.smile", "pulled", "weak-side.smile", other),
        ] {
            let reasons = says(&exam(&[(item, found(what, Some(side)))]), rule);
            assert_eq!(reasons.len(), 1, "{item}");
            let end = format!("weak on the {}", word(weak));
            assert!(reasons[0].ends_with(&end), "{}", reasons[0]);
        }
    }
}

/// NB: the forehead tells the pattern, and only where it was tested.
#[test]
fn the_pattern_of_a_weak_face() {
    for (side, other) in SIDES {
        let pulled = ("lips.smile", found("pulled", Some(side)));
        let upper = exam(&[pulled.clone(), ("face.forehead", Seen::AsExpected)]);
        let lower = exam(&[
            pulled.clone(),
            ("face.forehead", found("weak", Some(other))),
        ]);
        let untested = exam(std::slice::from_ref(&pulled));
        let no_side = exam(&[pulled.clone(), ("face.forehead", found("weak", None))]);
        let told = says(&upper, "face.upper-neuron");
        assert!(told[0].contains(word(other)), "{told:?}");
        assert!(says(&lower, "face.lower-neuron")[0].contains(word(other)));
        for exam in [&untested, &no_side] {
            assert!(says(exam, "face.upper-neuron").is_empty());
            assert!(says(exam, "face.lower-neuron").is_empty());
        }
        // The forehead weak on the other side than the mouth: shown, and no pattern named.
        let odd = exam(&[pulled, ("face.forehead", found("weak", Some(side)))]);
        assert_eq!(says(&odd, "weak-side.conflict").len(), 1);
        assert!(says(&odd, "face.upper-neuron").is_empty());
    }
}

/// PASS: thin and twitching on one side.
#[test]
fn a_wasted_and_twitching_tongue() {
    let both = |wasted, twitching| {
        let one = |what: &str, side| FoundId {
            what: what.to_owned(),
            side: Some(side),
            severity: None,
        };
        exam(&[(
            "tongue.rest",
            Seen::Found(vec![one("wasted", wasted), one("twitching", twitching)]),
        )])
    };
    for (side, other) in SIDES {
        let told = says(&both(side, side), "oral.tongue-lower-neuron");
        assert!(told[0].contains(word(side)));
        assert!(says(&both(side, other), "oral.tongue-lower-neuron").is_empty());
    }
}

#[test]
fn findings_that_disagree_are_shown_and_not_resolved() {
    for (side, other) in SIDES {
        let to = ("tongue.out", found("to-side", Some(side)));
        // A tongue that is weak on the left points to the left, and pushes weakly into the right
        // cheek, since each half moves it to the other side (LEW, JUN12): a strong push into the
        // right cheek disagrees, and so does one that is weak into the left cheek alone.
        for push in [Seen::AsExpected, found("weak", Some(side))] {
            let exam = exam(&[to.clone(), ("tongue.push", push)]);
            let told = says(&exam, "oral.strong");
            assert_eq!(told.len(), 1, "{told:?}");
            assert!(told[0].contains("not resolved") && told[0].contains(word(side)));
            let cheek = format!("as expected: tongue into the {} cheek", word(other));
            assert!(told[0].contains(&cheek), "{told:?}");
            assert_eq!(says(&exam, "weak-side.tongue").len(), 1);
        }
        for push in [
            Seen::NotTested(Reason::NoTime),
            found("weak", Some(other)),
            found("weak", Some(Sides::Both)),
        ] {
            let exam = exam(&[to.clone(), ("tongue.push", push)]);
            assert!(says(&exam, "oral.strong").is_empty());
        }
        let wasted = ("tongue.rest", found("wasted", Some(other)));
        assert_eq!(says(&exam(&[to, wasted]), "weak-side.conflict").len(), 1);
    }
    // Weak on both sides is no conflict, and names no side.
    let weak = exam(&[("lips.cheeks", found("leak", Some(Sides::Both)))]);
    assert!(points::flags(&weak.oral).is_empty());
    assert_eq!(points::groups(&weak.oral).len(), 1);
}

/// GEE19: 35 mm or less between front teeth, adults.
#[test]
fn mouth_opening() {
    let at = |tenths, front_teeth, age| Exam {
        age,
        ..exam(&[(
            "jaw.mm",
            Seen::Measured {
                tenths: Some(tenths),
                front_teeth,
            },
        )])
    };
    let adult = Some(Age::Years(50));
    let narrow = |exam: &Exam| says(exam, "mouth.opening").len();
    assert_eq!(narrow(&at(350, Some(true), adult)), 1);
    assert_eq!(narrow(&at(360, Some(true), adult)), 0);
    assert_eq!(narrow(&at(350, Some(true), None)), 1);
    for (front_teeth, age) in [
        (Some(false), adult),
        (None, adult),
        (Some(true), Some(Age::Years(9))),
    ] {
        let exam = at(350, front_teeth, age);
        assert_eq!(narrow(&exam), 0);
        assert_eq!(says(&exam, "mouth.opening-who").len(), 1);
    }
    let item = oral::find("jaw.mm").unwrap();
    for wrong in [0, -10, 3_500] {
        let answer = at(wrong, Some(true), adult).oral.answer(item);
        assert_eq!(answer, Answer::Open, "{wrong}");
    }
}

/// CPF22, WIL23: 270 none, 269 and 160 reduced, 159 weak.
#[test]
fn peak_cough_flow() {
    let at = |litres: i32| {
        exam(&[(
            "cough.flow",
            Seen::Measured {
                tenths: Some(litres * 10),
                front_teeth: None,
            },
        )])
    };
    for (litres, rule) in [
        (270, None),
        (269, Some("cough.flow-reduced")),
        (160, Some("cough.flow-reduced")),
        (159, Some("cough.flow-weak")),
    ] {
        let raised = raised(&at(litres));
        let by: Vec<&str> = raised.iter().map(|f| f.rule().id).collect();
        assert_eq!(by, Vec::from_iter(rule), "{litres}");
        assert!(raised.iter().all(|f| f.domain() == Domain::Breathing));
    }
}

/// LED13: a short tongue is a note with its odds; lips that do not close alone are nothing.
#[test]
fn tongue_range_and_lips() {
    for (item, what) in [
        ("tongue.out", "short"),
        ("tongue.sides", "short"),
        ("tongue.up", "short"),
        ("tongue.palate", "short"),
        ("tongue.lick-upper", "short"),
        ("tongue.lick-lower", "short"),
    ] {
        let told = says(&exam(&[(item, found(what, None))]), "tongue.range");
        assert!(told[0].contains("2.72"), "{item}");
    }
    let weak_only = exam(&[("tongue.push", found("weak", Some(Sides::Left)))]);
    assert!(says(&weak_only, "tongue.range").is_empty());
    let lips = exam(&[("lips.together", found("gap", None))]);
    assert!(raised(&lips).is_empty());
}

/// DAV95, LED96: the gag never decides, and says why with figures.
#[test]
fn the_gag_decides_nothing() {
    for seen in [
        Seen::AsExpected,
        found("weak", Some(Sides::Left)),
        found("absent", None),
    ] {
        let exam = exam(&[("gag", seen)]);
        let raised = raised(&exam);
        assert_eq!(raised.len(), 1);
        assert_eq!(raised[0].level(), Level::Note);
        assert!(raised[0].reason().contains("37 %") && raised[0].reason().contains("13 %"));
        let decision = assess(ScreenId::OralMotor.screen(), &exam);
        assert_eq!(decision.verdict, Verdict::NoDecision);
    }
    let refused = exam(&[("gag", Seen::NotTested(Reason::Refused))]);
    assert!(raised(&refused).is_empty());
}

#[test]
fn the_gag_is_never_before_a_swallow_trial() {
    for id in ScreenId::ALL {
        let screen = id.screen();
        let swallows = screen.tasks.iter().any(|t| t.is_by_mouth());
        let before = screen.oral.before().contains(&Region::Gag);
        assert!(!(swallows && before), "{:?}", screen.id);
        if screen.oral.is_some() {
            let all: Vec<Region> = screen.oral.regions().collect();
            assert_eq!(all, Region::ALL);
        }
    }
    assert_eq!(Examination::GagLast.after(), [Region::Gag]);
    assert_eq!(Examination::None.regions().count(), 0);
}

#[test]
fn new_weakness_is_an_emergency_and_an_old_stroke_is_not() {
    let mut exam = exam(&[("face.rest", found("droop", Some(Sides::Left)))]);
    let verdict = |exam: &Exam, id: ScreenId| assess(id.screen(), exam).verdict;
    assert_eq!(verdict(&exam, ScreenId::OralMotor), Verdict::NoDecision);
    exam.gate.0.insert(WEAKNESS.to_owned(), "known".to_owned());
    assert_eq!(verdict(&exam, ScreenId::OralMotor), Verdict::NoDecision);
    exam.gate.0.insert(WEAKNESS.to_owned(), "new".to_owned());
    for id in [ScreenId::OralMotor, ScreenId::FullVisit] {
        assert_eq!(verdict(&exam, id), Verdict::NotDone(EndedEarly::Emergency));
    }
    exam.gate.0.remove(WEAKNESS);
    assert_eq!(says(&exam, "oral.weakness-not-asked").len(), 1);
    assert_eq!(verdict(&exam, ScreenId::OralMotor), Verdict::NoDecision);
}

/// Every rule about the examination itself, an example that raises it, and its level.
#[test]
fn every_rule_of_the_examination_has_an_example() {
    let unasked = Exam {
        oral: oral(&[("face.rest", Seen::AsExpected)]),
        ..Exam::default()
    };
    let one = |what: &str| FoundId {
        what: what.to_owned(),
        side: Some(Sides::Left),
        severity: None,
    };
    let thin = Seen::Found(vec![one("wasted"), one("twitching")]);
    let examples = [
        (
            "oral.strong",
            exam(&[
                ("tongue.out", found("to-side", Some(Sides::Left))),
                ("tongue.push", Seen::AsExpected),
            ]),
        ),
        ("oral.tongue-lower-neuron", exam(&[("tongue.rest", thin)])),
        ("oral.wet-voice", exam(&[("voice.ah", found("wet", None))])),
        ("oral.larynx", exam(&[("larynx", found("not-felt", None))])),
        ("oral.weakness-not-asked", unasked),
    ];
    for (id, exam) in &examples {
        let raised = raised(exam);
        let levels: Vec<Level> = raised
            .iter()
            .filter(|f| f.rule().id == *id)
            .map(Flag::level)
            .collect();
        assert_eq!(levels, [Level::Note], "{id}: {raised:?}");
    }
    for rule in rules::ALL {
        let ours = groups::stands_for(groups::ORAL, rule.id);
        let raised = examples.iter().any(|(id, _)| *id == rule.id);
        assert_eq!(ours, raised, "{}", rule.id);
    }
}

/// What is shown of gag, wet voice and palpation stands in the rows of its sources.
#[test]
fn figures_match_their_sources() {
    for (rule, figures) in [
        (&rules::GAG_NEVER_DECIDES, vec!["37 %", "13 %"]),
        (&rules::ORAL_WET_VOICE, vec!["8-29 %"]),
        (&rules::ORAL_LARYNX, vec!["87 people", "16 felt", "17 felt"]),
    ] {
        let known: Vec<&str> = rule.sources().iter().map(|s| s.population).collect();
        for figure in figures {
            assert!(rule.says.contains(figure), "{}: {figure}", rule.id);
            assert!(
                known.iter().any(|k| k.contains(figure)),
                "{figure}: {known:?}"
            );
        }
    }
    let gag = oral::find("gag").unwrap();
    let look = oral_items::look(gag);
    assert!(look.contains("37 %") && look.contains("13 %"));
    let wet = exam(&[("voice.ah", found("wet", None))]);
    assert_eq!(says(&wet, "oral.wet-voice").len(), 1);
    let larynx = exam(&[("larynx", found("not-felt", None))]);
    assert_eq!(says(&larynx, "oral.larynx").len(), 1);
}

/// The items of the examination by structure: every one that an examination of the oral mechanism
/// looks at has its place, its wording and its nerve.
#[test]
fn the_items_are_whole() {
    let mut ids = Vec::new();
    for item in oral::items() {
        assert!(!ids.contains(&item.id), "{} twice", item.id);
        ids.push(item.id);
        let mut exceptions: Vec<&str> = item.exceptions.iter().map(|e| e.id).collect();
        exceptions.dedup();
        assert_eq!(exceptions.len(), item.exceptions.len(), "{}", item.id);
        let looks = item.takes == Takes::Look;
        assert_eq!(looks, !item.exceptions.is_empty(), "{}", item.id);
        for e in item.exceptions {
            assert!(
                e.side == Sided::On || e.points != Points::Weak,
                "{} {}",
                item.id,
                e.id
            );
        }
        assert!(Region::of(item).items().any(|i| i.id == item.id));
        if item.points_by_resistance() {
            assert_eq!(item.by, By::Hand, "{}", item.id);
        }
    }
    for region in Region::ALL {
        assert!(region.items().next().is_some());
    }
    for alone in ["gag", "taste", "jaw.mm", "cough.flow", "neck.strength"] {
        assert_eq!(oral::find(alone).unwrap().by, By::Alone);
    }
    assert_eq!(oral::find("larynx").unwrap().by, By::Hand);
    assert!(ids.len() >= 50, "{}", ids.len());
}

trait Resistance {
    fn points_by_resistance(&self) -> bool;
}

impl Resistance for oral::Item {
    /// Against resistance, by its own wording; or touch.
    fn points_by_resistance(&self) -> bool {
        let ask = oral_items::ask(self).to_lowercase();
        self.takes == Takes::Touches && self.nerve == Cranial::Fifth
            || ["against my", "don't let me", "press on them"]
                .iter()
                .any(|w| ask.contains(w))
                && self.by != By::Alone
    }
}

#[test]
fn wrong_answers_can_not_be_written() {
    let exception = |item: &str, what: &str| {
        let item = oral::find(item).unwrap();
        (item, item.exception(what).unwrap())
    };
    let middle = exception("voice.ah", "wet");
    let to = exception("tongue.out", "to-side");
    let new = |(item, e), side, severity| Found::new(item, e, side, severity).err();
    assert_eq!(new(middle, Some(Sides::Left), None), Some(NotOfIt::NoSide));
    assert_eq!(new(to, Some(Sides::Both), None), Some(NotOfIt::OneSide));
    assert_eq!(new(to, None, Some(Severity::Mild)), Some(NotOfIt::NoGrade));
    assert_eq!(new(to, Some(Sides::Left), None), None);
    // A stored one keeps the finding and loses what can't be.
    let item = oral::find("tongue.out").unwrap();
    let stored = Seen::Found(vec![FoundId {
        what: "to-side".to_owned(),
        side: Some(Sides::Both),
        severity: Some(Severity::Severe),
    }]);
    let answer = Answer::read(item, &stored);
    assert_eq!(
        wording::found::words(&answer.found()[0]),
        "points to one side (side not noted)"
    );
    // As expected is no answer for a number, a number none for a look.
    let mm = oral::find("jaw.mm").unwrap();
    assert_eq!(Answer::read(mm, &Seen::AsExpected), Answer::Open);
    assert_eq!(
        Answer::read(item, &found("nothing-known", None)),
        Answer::Open
    );
}

#[test]
fn one_press_settles_what_it_names_and_is_taken_back_whole() {
    let press: Vec<(String, Seen)> = Region::Face
        .items()
        .map(|item| (item.id.to_owned(), Seen::AsExpected))
        .collect();
    let names: Vec<String> = press.iter().map(|(id, _)| id.clone()).collect();
    let mut oral = Oral::default();
    oral.take(vec![(
        "lips.smile".to_owned(),
        found("less", Some(Sides::Left)),
    )]);
    let before = oral.clone();
    oral.take(press);
    assert!(oral.is_done(Region::Face) && !oral.is_done(Region::Lips));
    assert_eq!(oral.newest_press(), names);
    // One of them corrected afterwards is no longer the press's to take back.
    let mut corrected = oral.clone();
    corrected.take(vec![("face.rest".to_owned(), found("droop", None))]);
    let left = corrected.newest_press().to_vec();
    assert_eq!(left.len(), names.len() - 1);
    corrected.take_back(&left);
    let face = oral::find("face.rest").unwrap();
    assert_eq!(corrected.answer(face).found().len(), 1);
    oral.take_back(&names);
    assert_eq!(oral, before);
}

#[test]
fn touches_are_counted() {
    let touches = |felt, less, missed| Touches { felt, less, missed };
    assert_eq!(
        wording::found::touches(touches(2, 0, 1)).unwrap(),
        "2 of 3 felt"
    );
    assert_eq!(
        wording::found::touches(touches(1, 1, 0)).unwrap(),
        "2 of 2 felt, 1 of them less"
    );
    assert_eq!(wording::found::touches(Touches::default()), None);
    let item = oral::find("touch.cheek").unwrap();
    let read = |left, right| Answer::read(item, &Seen::Touched { left, right });
    assert!(read(touches(3, 0, 0), touches(3, 0, 0)).is_as_expected());
    assert!(!read(touches(3, 0, 0), Touches::default()).is_as_expected());
    assert!(!read(touches(3, 0, 0), touches(2, 0, 1)).is_as_expected());
    assert_eq!(read(Touches::default(), Touches::default()), Answer::Open);
}

#[test]
fn the_ward_reads_exceptions_what_was_not_tested_and_the_rest() {
    let mut mixed = oral(&[
        ("face.forehead", Seen::AsExpected),
        ("face.eyes", Seen::AsExpected),
        ("neck.rest", Seen::AsExpected),
        ("lips.smile", found("pulled", Some(Sides::Right))),
        ("lips.together", Seen::AsExpected),
        ("lips.pucker", Seen::AsExpected),
        ("lips.cheeks", Seen::AsExpected),
        ("lips.pull", Seen::AsExpected),
        ("gag", Seen::NotTested(Reason::NotNeeded)),
        ("touch.palate", Seen::NotTested(Reason::NotNeeded)),
    ]);
    mixed.take(vec![(
        "face.rest".to_owned(),
        Seen::Found(vec![FoundId {
            what: "droop".to_owned(),
            side: Some(Sides::Left),
            severity: Some(Severity::Moderate),
        }]),
    )]);
    let line = told::line(
        &mixed,
        &[Region::Face, Region::Lips, Region::Gag, Region::Voice],
    );
    assert_eq!(
        line,
        "face at rest: droops on the left, moderate; wide smile: mouth \
         pulled to the right. Not tested: touch on the soft palate, gag (not needed today); touch \
         on the back of the tongue, voice and throat (no reason given). Everything else looked \
         at: as expected."
    );
    assert!(!line.contains("nerve"));
    let nothing = told::line(&Oral::default(), &Region::ALL);
    assert_eq!(nothing, "not looked at.");
}

/// An answer of any kind to any item, whether it fits or not.
fn any_seen() -> impl Strategy<Value = Seen> {
    let sides = prop::option::of(select(Sides::ALL.to_vec()));
    let severity = prop::option::of(select(Severity::ALL.to_vec()));
    let whats: Vec<String> = oral::items()
        .flat_map(|i| i.exceptions)
        .map(|e| e.id.to_owned())
        .collect();
    let one = (select(whats), sides, severity).prop_map(|(what, side, severity)| FoundId {
        what,
        side,
        severity,
    });
    let touches = || {
        (0_u8..4, 0_u8..3, 0_u8..3).prop_map(|(felt, less, missed)| Touches { felt, less, missed })
    };
    prop_oneof![
        2 => Just(Seen::AsExpected),
        4 => prop::collection::vec(one, 0..3).prop_map(Seen::Found),
        1 => select(Reason::ALL.to_vec()).prop_map(Seen::NotTested),
        1 => (prop::option::of(-10..4_000), prop::option::of(any::<bool>())).prop_map(
            |(tenths, front_teeth)| Seen::Measured { tenths, front_teeth }
        ),
        1 => (touches(), touches()).prop_map(|(left, right)| Seen::Touched { left, right }),
    ]
}

fn any_answers() -> impl Strategy<Value = Vec<(String, Seen)>> {
    let ids: Vec<String> = oral::items().map(|i| i.id.to_owned()).collect();
    prop::collection::vec((select(ids), any_seen()), 0..30)
}

fn mirrored(seen: &Seen) -> Seen {
    match seen.clone() {
        Seen::Found(found) => Seen::Found(
            found
                .into_iter()
                .map(|f| FoundId {
                    side: f.side.map(|s| match s.one() {
                        Some(side) => side.other().into(),
                        None => s,
                    }),
                    ..f
                })
                .collect(),
        ),
        Seen::Touched { left, right } => Seen::Touched {
            left: right,
            right: left,
        },
        other => other,
    }
}

fn swapped(words: &str) -> String {
    words
        .replace("cleft", "\u{2}")
        .replace("left", "\u{1}")
        .replace("right", "left")
        .replace('\u{1}', "right")
        .replace('\u{2}', "cleft")
}

fn of(answers: Vec<(String, Seen)>) -> Exam {
    let mut exam = exam(&[]);
    for answer in answers {
        exam.oral.take(vec![answer]);
    }
    exam
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..Default::default() })]

    /// Left and right changed over in what was seen, left and right changed over in all that is
    /// concluded.
    #[test]
    fn a_mirrored_patient_mirrors_every_conclusion(answers in any_answers()) {
        let other = answers.iter().map(|(id, seen)| (id.clone(), mirrored(seen))).collect();
        let sorted = |exam: &Exam, swap: bool| {
            let mut all: Vec<(String, String)> = points::groups(&exam.oral)
                .iter()
                .flat_map(|g| {
                    let lines = g.lines.iter().map(|l| (String::new(), wording::found::point(l)));
                    let flags = g.flags.iter().map(|f| {
                        (f.rule().id.to_owned(), f.reason().to_owned())
                    });
                    lines.chain(flags).collect::<Vec<_>>()
                })
                .map(|(rule, words)| (rule, if swap { swapped(&words) } else { words }))
                .collect();
            all.sort();
            all
        };
        let (exam, other) = (of(answers), of(other));
        prop_assert_eq!(sorted(&exam, true), sorted(&other, false));
        // And in all that is told. What is listed side by side may change its order.
        let told = |exam: &Exam, swap: bool| {
            let line = told::line(&exam.oral, &Region::ALL);
            let line = if swap { swapped(&line) } else { line };
            let mut parts: Vec<String> = line.split([':', ',', ';', '.']).map(|p| p.trim().to_owned()).collect();
            parts.sort();
            parts
        };
        prop_assert_eq!(told(&exam, true), told(&other, false));
    }

    /// What was not tested is never as expected, and nothing here ever decides on swallowing.
    #[test]
    fn not_tested_is_never_as_expected(answers in any_answers()) {
        let exam = of(answers);
        let mut expected = 0;
        for item in oral::items() {
            let answer = exam.oral.answer(item);
            match exam.oral.seen(item) {
                None | Some(Seen::NotTested(_)) => prop_assert!(!answer.is_as_expected()),
                _ => {}
            }
            expected += usize::from(answer.is_as_expected());
        }
        prop_assert_eq!(told::as_expected(&exam.oral, &Region::ALL).0, expected);
        let untested = told::not_tested(&exam.oral, &Region::ALL).join(" ");
        for region in Region::ALL {
            if region.items().all(|i| exam.oral.answer(i) == Answer::Open) {
                let title = oral_items::region_title(region).replace(" (optional)", "").to_lowercase();
                prop_assert!(untested.to_lowercase().contains(&title), "{} in {}", title, untested);
            }
        }
        let decision = assess(ScreenId::OralMotor.screen(), &exam);
        prop_assert_eq!(decision.verdict, Verdict::NoDecision);
        prop_assert!(decision.reasons.is_empty());
    }

    /// No side is named that nobody noted.
    #[test]
    fn a_side_comes_from_a_side(answers in any_answers()) {
        let without = answers
            .into_iter()
            .map(|(id, seen)| {
                let seen = match seen {
                    Seen::Found(found) => Seen::Found(
                        found.into_iter().map(|f| FoundId { side: None, ..f }).collect(),
                    ),
                    other => other,
                };
                (id, seen)
            })
            .collect();
        let exam = of(without);
        prop_assert!(points::flags(&exam.oral).is_empty());
    }
}
