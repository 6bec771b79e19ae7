//! Two or more of six signs: what feeds them, and what they say. Rule: DAN97, DAN98, DAN06T.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::fact::Tested;
use penlight::clinical::findings::flag::{Flag, Level};
use penlight::clinical::findings::looked::Looked;
use penlight::clinical::findings::oral::{FoundId, Reason, Seen};
use penlight::clinical::findings::trial::{MarkKind, Trial};
use penlight::clinical::knowledge::oral;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::six_signs::recorded::{Heard, Whence};
use penlight::clinical::tasks::spec::WATCH_CUT;
use penlight::clinical::tasks::{six_signs, water as water90};
use penlight::wording::six_signs as words;

const COUGH: MarkKind = MarkKind::Sign(Sign::Cough);

fn says(flags: &[Flag]) -> Vec<(&'static str, Level)> {
    flags.iter().map(|f| (f.rule().id, f.level())).collect()
}

fn asked(answers: &[(&str, &str)]) -> Trial {
    let mut trial = Trial::new(TaskId::SixSigns, 8, None);
    for (question, answer) in answers {
        choose(&mut trial, question, answer);
    }
    trial
}

fn with_signs(water: Trial, answers: &[(&str, &str)]) -> Exam {
    let mut exam = exam_with_water(water);
    exam.trials.push(asked(answers));
    exam
}

#[test]
fn what_was_recorded_is_not_asked_again() {
    let exam = exam_with_water(water());
    let rows = six_signs::rows(&exam);
    let looked = rows.each_ref().map(|row| row.looked);
    assert_eq!(
        looked,
        [
            Looked::Absent,
            Looked::NotTested,
            Looked::NotTested,
            Looked::NotTested,
            Looked::Absent,
            Looked::Absent,
        ]
    );
    let clear = Whence::Voice {
        heard: Heard::BeforeWater,
        answer: "clear".to_owned(),
    };
    assert_eq!(rows[0].from, [clear]);
    // "Coughs on request, or was heard to cough" says nothing of how strong on request.
    assert_eq!(rows[3].beside, [Whence::Coughs]);
    let (task, seen) = (TaskId::Water90, false);
    assert_eq!(rows[4].from, [Whence::Water { task, seen }]);
    let told = rows.each_ref().map(|row| words::whences(&row.from));
    assert_eq!(told[0], "voice before the water: clear");
    assert_eq!(told[4], "in \"90 mL of water without a pause\": not seen");
    assert_eq!(
        words::whences(&rows[3].beside),
        "before you start: coughs on request, or was heard to cough"
    );
    assert_eq!(
        six_signs::tested(&exam),
        Tested {
            present: 0,
            tested: 3,
            of: 5
        },
        "the gag is left out"
    );
    assert!(
        six_signs::flags(&exam).is_empty(),
        "it speaks only where it is counted in"
    );
}

/// Worked examples, other flags: 1 present, 5 absent -> no flag; 2 present -> refer; 1 present,
/// 1 not tested, 4 absent -> incomplete; 0 present, 1 not tested, 5 absent -> no flag.
#[test]
fn two_of_the_signs_refer() {
    let gag = |mut exam: Exam| {
        exam.policy.gag_counts = true;
        exam
    };
    let absent = [
        ("speech", six_signs::NOT_FOUND),
        ("gag", six_signs::NOT_FOUND),
        ("cough", six_signs::NOT_FOUND),
    ];
    let speech = [
        ("speech", six_signs::FOUND),
        ("gag", six_signs::NOT_FOUND),
        ("cough", six_signs::NOT_FOUND),
    ];
    let mut hoarse = water();
    choose(&mut hoarse, water90::VOICE_BEFORE, "hoarse");
    choose(&mut hoarse, water90::VOICE_AFTER, "hoarse");

    let one = gag(with_signs(water(), &speech));
    assert_eq!(
        six_signs::tested(&one),
        Tested {
            present: 1,
            tested: 6,
            of: 6
        }
    );
    assert!(six_signs::flags(&one).is_empty());
    assert_eq!(
        verdict(&one),
        Verdict::Pass,
        "the 90 mL say that, not the signs"
    );

    let two = gag(with_signs(hoarse.clone(), &speech));
    let flags = six_signs::flags(&two);
    assert_eq!(says(&flags), [("six-signs.two", Level::Refer)]);
    assert_eq!(
        flags[0].reason(),
        "two or more signs seen: changed voice, slurred speech (6 of 6 tested)"
    );
    assert!(flags[0].rule().sources().contains(&&source::DAN98));
    assert_eq!(verdict(&two), Verdict::Refer);

    // One present, one not tested, four absent.
    let open = gag(with_signs(water(), &[speech[0], speech[2]]));
    assert_eq!(
        says(&six_signs::flags(&open)),
        [("six-signs.incomplete", Level::Incomplete)]
    );
    assert_eq!(verdict(&open), Verdict::Incomplete);

    let none = gag(with_signs(water(), &[absent[0], absent[2]]));
    assert!(six_signs::flags(&none).is_empty());
    let left_out = with_signs(hoarse, &[("gag", six_signs::FOUND), absent[0], absent[2]]);
    assert_eq!(six_signs::tested(&left_out).of, 5);
    assert_eq!(
        says(&six_signs::flags(&left_out)),
        [("six-signs.gag", Level::Note)],
        "a missing gag makes no second sign"
    );
}

#[test]
fn a_recorded_sign_is_not_wiped_out_by_an_answer() {
    let mut exam = with_signs(
        water(),
        &[("voice", six_signs::NOT_FOUND), ("cough", six_signs::FOUND)],
    );
    choose(&mut exam.trials[2], water90::VOICE_BEFORE, "wet");
    let rows = six_signs::rows(&exam);
    assert_eq!(rows[0].looked, Looked::Present);
    assert_eq!(
        rows[3].looked,
        Looked::Present,
        "heard weak outranks what the gate says"
    );
    assert_eq!(rows[3].from.last(), Some(&Whence::Here));
}

fn examined(exam: &mut Exam, item: &str, what: &[&str]) {
    let seen = if what.is_empty() {
        Seen::AsExpected
    } else {
        let found = |what: &&str| FoundId {
            what: (*what).to_owned(),
            side: None,
            severity: None,
        };
        Seen::Found(what.iter().map(found).collect())
    };
    assert!(oral::find(item).is_some(), "no item {item}");
    exam.oral.take(vec![(item.to_owned(), seen)]);
}

/// Definitions: DAN06T. Voice impaired in quality, pitch or loudness; cough on request weak,
/// only voiced or none; gag weak or missing on one side or both.
#[test]
fn the_examination_of_the_mouth_feeds_the_signs() {
    let mut exam = exam_with_water(water());
    for (item, what) in [
        ("voice.ah", "hoarse"),
        ("speech", "slurred"),
        ("gag", "one-side"),
        ("cough", "voiced"),
    ] {
        let mut expected = exam.clone();
        examined(&mut expected, item, &[]);
        examined(&mut exam, item, &[what]);
        let row = |exam: &Exam| {
            six_signs::rows(exam)
                .into_iter()
                .find(|row| {
                    let of_mouth = |from: &Whence| matches!(from, Whence::Mouth { .. });
                    row.from.iter().any(of_mouth)
                })
                .unwrap()
        };
        assert_eq!(row(&expected).looked, Looked::Absent, "{item}");
        assert_eq!(row(&exam).looked, Looked::Present, "{item}");
        exam.oral.take_back(&[item.to_owned()]);
    }
    examined(&mut exam, "cough", &["weak"]);
    examined(&mut exam, "speech", &["slurred", "slow"]);
    let rows = six_signs::rows(&exam);
    assert_eq!(
        words::whences(&rows[3].from),
        "from the examination of the mouth, cough on request: weak"
    );
    assert_eq!(
        six_signs::tested(&exam),
        Tested {
            present: 2,
            tested: 5,
            of: 5
        },
        "nothing is left to ask"
    );
    exam.trials
        .push(asked(&[(six_signs::COUNTED, six_signs::YES)]));
    assert_eq!(
        says(&six_signs::flags(&exam)),
        [("six-signs.two", Level::Refer)]
    );
    // Each exception of these items is one of the sign or is shown beside it.
    for (item, at) in [("voice.ah", 0), ("speech", 1), ("gag", 2), ("cough", 3)] {
        for exception in oral::find(item).unwrap().exceptions {
            let mut exam = exam_with_water(water());
            examined(&mut exam, item, &[exception.id]);
            let row = &six_signs::rows(&exam)[at];
            let is_shown = |whence: &Whence| match whence {
                Whence::Mouth { item: of, found } => {
                    of.id == item && found.is_some_and(|f| f.exception().id == exception.id)
                }
                _ => false,
            };
            assert!(
                row.from.iter().chain(&row.beside).any(is_shown),
                "{item}: {} is not shown",
                exception.id
            );
            assert_ne!(row.looked, Looked::Absent);
        }
    }
}

#[test]
fn what_is_near_a_sign_is_shown_and_asked() {
    let base = || exam_with_water(water());
    let looked = |exam: &Exam, at: usize| {
        let row = six_signs::rows(exam)[at].clone();
        (row.looked, row.beside)
    };
    // Each would be "not found" without what lies beside it.
    let mut narrow = base();
    examined(&mut narrow, "voice.pitch", &["narrow"]);
    let mut slow = base();
    examined(&mut slow, "speech", &["slow"]);
    let mut distorted = base();
    examined(&mut distorted, "speech", &[]);
    let mut syllables = Trial::new(TaskId::SyllablePa, 5, None);
    choose(&mut syllables, "sound", "distorted");
    distorted.trials.push(syllables);
    let mut low = base();
    let measured = Seen::Measured {
        tenths: Some(1_590),
        front_teeth: None,
    };
    low.oral.take(vec![("cough.flow".to_owned(), measured)]);
    for (mut exam, at, question, told) in [
        (narrow, 0, "voice", "pitch up and down: hardly changes"),
        (slow, 1, "speech", "speech: slow or halting"),
        (distorted, 1, "speech", "sounded distorted"),
        (low, 3, "cough", "peak cough flow 159 litres a minute"),
    ] {
        let (found, beside) = looked(&exam, at);
        assert_eq!(found, Looked::NotTested, "{told}");
        assert!(words::whences(&beside).contains(told), "{beside:?}");
        exam.trials.push(asked(&[(question, six_signs::NOT_FOUND)]));
        assert_eq!(looked(&exam, at).0, Looked::Absent, "asked, and said");
    }
    let mut usual = base();
    let measured = Seen::Measured {
        tenths: Some(2_700),
        front_teeth: None,
    };
    usual.oral.take(vec![("cough.flow".to_owned(), measured)]);
    // Nor does a usual flow say how the cough sounded.
    assert_eq!(looked(&usual, 3).0, Looked::NotTested);
    // Pitch as expected says nothing of the voice.
    let mut pitch = base();
    pitch.trials.retain(|t| t.task != TaskId::Water90);
    examined(&mut pitch, "voice.pitch", &[]);
    assert_eq!(looked(&pitch, 0), (Looked::NotTested, Vec::new()));
    // Not tested by the examination is not tested.
    let mut none = base();
    let not = Seen::NotTested(Reason::Refused);
    none.oral.take(vec![("speech".to_owned(), not)]);
    assert_eq!(looked(&none, 1), (Looked::NotTested, Vec::new()));
}

#[test]
fn signs_after_water_need_a_whole_watch_to_be_absent() {
    let mut cut = water();
    cut.marks.retain(|m| m.kind != MarkKind::WatchOver);
    choose(&mut cut, WATCH_CUT, "wish");
    let rows = six_signs::rows(&exam_with_water(cut));
    assert_eq!(rows[4].looked, Looked::NotTested);
    let mut coughed = water();
    mark(&mut coughed, COUGH, at(LAST_SWALLOW + 60_000));
    assert_eq!(
        six_signs::rows(&exam_with_water(coughed))[4].looked,
        Looked::Present
    );
    let mut late = water();
    mark(&mut late, COUGH, at(LAST_SWALLOW + 60_001));
    assert_eq!(
        six_signs::rows(&exam_with_water(late))[4].looked,
        Looked::Absent
    );
    let mut wet = water();
    choose(&mut wet, water90::VOICE_AFTER, "wet");
    assert_eq!(
        six_signs::rows(&exam_with_water(wet))[5].looked,
        Looked::Present
    );
}

#[test]
fn they_are_counted_where_somebody_says_so_and_left_out_again() {
    let yes = [(six_signs::COUNTED, six_signs::YES)];
    assert!(six_signs::is_counted(&with_signs(water(), &yes)));
    assert!(six_signs::is_counted(&with_signs(
        water(),
        &[("speech", six_signs::FOUND)]
    )));
    let no = [("speech", six_signs::FOUND), (six_signs::COUNTED, "no")];
    assert!(!six_signs::is_counted(&with_signs(water(), &no)));
    let mut child = with_signs(water(), &yes);
    child.age = Some(Age::Years(9));
    assert_eq!(
        says(&six_signs::flags(&child)),
        [("six-signs.adults", Level::Note)]
    );
    assert!(tasks::aside(TaskId::SixSigns, &child).is_some());
}
