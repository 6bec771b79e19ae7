//! Worked examples of the published rules, each through the real trial, its reading, its rule
//! and the whole swallow screen.
//!
//! Keys such as OGU00a are those of `clinical/source.rs`, where the citations stand.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::{EndedEarly, Exam};
use penlight::clinical::findings::flag::{Domain, Flag, Level};
use penlight::clinical::findings::trial::{MarkKind, Trial};
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::source::Source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::by_mouth::reading::Reading;
use penlight::clinical::tasks::spec::NOT_VALID;
use penlight::clinical::tasks::{dry_swallow, water as water90};
use penlight::measure::time::Millis;

#[track_caller]
fn only(flags: &[Flag]) -> &Flag {
    assert_eq!(flags.len(), 1, "{flags:?}");
    &flags[0]
}

#[track_caller]
fn rests_on(flag: &Flag, sources: &[&'static Source]) {
    for source in sources {
        assert!(
            flag.rule().sources().contains(source),
            "{} is not in {:?}",
            source.key,
            flag
        );
    }
}

// Dry swallows in 30 seconds. Rule: fewer than 3 is a reason to look further (OGU00a, OGU00b).

#[track_caller]
fn judge_dry(trial: &Trial) -> (usize, Vec<Flag>) {
    let finding = dry_swallow::read(trial).unwrap();
    (
        finding.count.count(),
        dry_swallow::judge(&finding, &Policy::default()),
    )
}

/// Worked example, dry swallows, row 1: 2.1, 9.8, 17.5, 26.0 -> 4, no sign.
#[test]
fn dry_row_1_four() {
    let trial = dry(&[2_100, 9_800, 17_500, 26_000]);
    let (count, flags) = judge_dry(&trial);
    assert_eq!(count, 4);
    assert_eq!(only(&flags).level(), Level::Pass);
    assert_eq!(
        only(&flags).reason(),
        "4 dry swallows in 30 seconds (3 or more expected)"
    );
    rests_on(only(&flags), &[&source::OGU00A, &source::OGU00B]);
    assert_eq!(verdict(&exam_with_dry(trial)), Verdict::Pass);
}

/// Worked example, dry swallows, row 2: 4.0, 19.0 -> 2, refer.
#[test]
fn dry_row_2_two() {
    let trial = dry(&[4_000, 19_000]);
    let (count, flags) = judge_dry(&trial);
    assert_eq!(count, 2);
    assert_eq!(only(&flags).level(), Level::Refer);
    assert_eq!(
        only(&flags).reason(),
        "2 dry swallows in 30 seconds (3 or more expected)"
    );
    rests_on(only(&flags), &[&source::OGU00A, &source::OGU00B]);
    let decision = decision(&exam_with_dry(trial));
    assert_eq!(decision.verdict, Verdict::Refer);
    assert_eq!(only(&decision.reasons).rule().id, "dry.few");
}

/// Worked example, dry swallows, row 3: 3.0, 15.0, 30.2 -> 2, refer (30.2 is late).
#[test]
fn dry_row_3_the_third_is_late() {
    let trial = dry(&[3_000, 15_000, 30_200]);
    let (count, flags) = judge_dry(&trial);
    assert_eq!(count, 2);
    assert_eq!(only(&flags).level(), Level::Refer);
    let finding = dry_swallow::read(&trial).unwrap();
    assert_eq!(finding.count.late, [Millis(30_200)]);
    assert_eq!(trial.taps(), 3);
    assert!(
        only(&flags)
            .reason()
            .ends_with(", 1 more within 60 seconds"),
        "{flags:?}"
    );
    assert_eq!(verdict(&exam_with_dry(trial)), Verdict::Refer);
}

/// Worked example, dry swallows, row 4: 3.0, 15.0, 30.0 -> 3, no sign (30.0 counts: local policy).
#[test]
fn dry_row_4_thirty_seconds_count() {
    let trial = dry(&[3_000, 15_000, 30_000]);
    let (count, flags) = judge_dry(&trial);
    assert_eq!(count, 3);
    assert_eq!(only(&flags).level(), Level::Pass);
    assert_eq!(verdict(&exam_with_dry(trial)), Verdict::Pass);
}

/// Worked example, dry swallows, row 5: none in 30, one at 41 -> 0, "1 in 60 s".
///
/// It refers, as the table does; what is read is a count after the mouth was moistened, by local
/// policy (`dry.none`); the late one is told all the same.
#[test]
fn dry_row_5_none_in_the_window_and_one_late() {
    let trial = dry(&[41_000]);
    let (count, flags) = judge_dry(&trial);
    assert_eq!(count, 0);
    assert_eq!(only(&flags).level(), Level::Refer);
    assert_eq!(only(&flags).rule().id, "dry.none");
    assert!(
        only(&flags)
            .rule()
            .basis_line()
            .starts_with("Local policy: ")
    );
    assert_eq!(
        only(&flags).reason(),
        "no dry swallow in 30 seconds (3 or more expected), 1 more within 60 seconds"
    );
    assert_eq!(verdict(&exam_with_dry(trial)), Verdict::Refer);
}

/// Worked example, dry swallows, row 6: could not feel the larynx -> not valid.
///
/// Whatever was tapped: a count nobody could take is neither low nor enough. The cup is read without
/// it, but where few were tapped in the whole time: they may have been few.
#[test]
fn dry_row_6_not_valid() {
    let mut never_started = Trial::new(TaskId::DrySwallow, 0, None);
    choose(&mut never_started, NOT_VALID, "not-felt");
    let mut trials = vec![never_started];
    for taps in [&[][..], &[4_000, 19_000], &[3_000, 15_000, 20_000, 25_000]] {
        let mut trial = dry(taps);
        choose(&mut trial, NOT_VALID, "not-felt");
        trials.push(trial);
    }
    for trial in trials {
        let (_, flags) = judge_dry(&trial);
        let few = trial.start().is_some() && trial.taps() < 3;
        let level = if few { Level::Incomplete } else { Level::Note };
        assert_eq!(only(&flags).level(), level);
        let told = only(&flags).reason();
        let words = "Dry swallows not valid: could not feel the larynx";
        assert!(told.starts_with(words), "{told}");
        // What was tapped all the same is told, and counts for nothing.
        assert_eq!(told.ends_with(" counted)"), trial.start().is_some());
        let decision = decision(&exam_with_dry(trial));
        let verdict = if few {
            Verdict::Incomplete
        } else {
            Verdict::Pass
        };
        assert_eq!(decision.verdict, verdict);
        assert!(decision.reasons.is_empty());
    }
}

/// Procedure, step 4 (STM, REHK) with the cut-off of OGU00a: every count around the line.
#[test]
fn dry_counts_around_the_line() {
    for (n, level) in [
        (0, Level::Refer),
        (1, Level::Refer),
        (2, Level::Refer),
        (3, Level::Pass),
        (4, Level::Pass),
    ] {
        let taps: Vec<i64> = (1..=n).map(|i| i * 5_000).collect();
        assert_eq!(only(&judge_dry(&dry(&taps)).1).level(), level, "{n}");
    }
}

// 3-oz (90 mL) water. Rule: TH4, IDC; the voice sign is a setting, since sources differ.

fn judge_water(trial: &Trial) -> Vec<Flag> {
    water90::judge(&Reading::of(trial), false, &Policy::default())
}

/// A water trial with one sign so long after the last swallow.
fn with_sign(sign: Sign, after_last_swallow: i64) -> Trial {
    let mut trial = water();
    mark(
        &mut trial,
        MarkKind::Sign(sign),
        at(LAST_SWALLOW + after_last_swallow),
    );
    trial
}

#[track_caller]
fn refers(trial: &Trial, rule: &str, sources: &[&'static Source]) -> Flag {
    let flags = judge_water(trial);
    let signs: Vec<_> = flags.iter().filter(|f| f.level() >= Level::Refer).collect();
    assert_eq!(signs.len(), 1, "{flags:?}");
    assert_eq!((signs[0].level(), signs[0].rule().id), (Level::Refer, rule));
    assert!(!flags.iter().any(|f| f.level() == Level::Pass), "{flags:?}");
    rests_on(signs[0], sources);
    let decision = decision(&exam_with_water(trial.clone()));
    assert_eq!(decision.verdict, Verdict::Refer);
    assert_eq!(only(&decision.reasons).rule().id, rule);
    signs[0].clone()
}

/// Worked example, 3-oz, row 1: continuous, finished, no cough, voice clear -> pass.
#[test]
fn water_row_1_no_sign() {
    let flags = judge_water(&water());
    assert_eq!(
        (only(&flags).level(), only(&flags).rule().id),
        (Level::Pass, "water.clear")
    );
    rests_on(only(&flags), &[&source::TH4, &source::IDC]);
    let decision = decision(&exam_with_water(water()));
    assert_eq!(decision.verdict, Verdict::Pass);
    assert!(decision.reasons.is_empty() && decision.missing.is_empty());
}

/// Worked example, 3-oz, row 2: cough at 20 s after the last swallow -> refer.
#[test]
fn water_row_2_cough_at_20() {
    let flag = refers(
        &with_sign(Sign::Cough, 20_000),
        "water.cough",
        &[&source::TH4, &source::IDC],
    );
    assert_eq!(
        flag.reason(),
        "coughed 20 seconds after the last swallow of the 90 mL"
    );
}

/// Worked example, 3-oz, row 3: cough at 59.9 s -> refer.
#[test]
fn water_row_3_cough_at_59_9() {
    refers(
        &with_sign(Sign::Cough, 59_900),
        "water.cough",
        &[&source::TH4],
    );
}

/// Worked example, 3-oz, row 4: cough at 60.0 s -> refer (60 counts).
#[test]
fn water_row_4_cough_at_60_0() {
    refers(
        &with_sign(Sign::Cough, 60_000),
        "water.cough",
        &[&source::TH4],
    );
}

/// Worked example, 3-oz, row 5: cough at 61 s -> not counted by the rule; recorded and told.
#[test]
fn water_row_5_cough_at_61() {
    for after in [60_001, 61_000] {
        let trial = with_sign(Sign::Cough, after);
        assert_eq!(trial.signs().count(), 1);
        let flags = judge_water(&trial);
        assert_eq!(worst(&flags), Some(Level::Pass), "{flags:?}");
        let note = flags
            .iter()
            .find(|f| f.rule().id == "water.after-watch")
            .unwrap();
        assert_eq!(note.level(), Level::Note);
        assert!(note.reason().contains("coughed"), "{note:?}");
        let decision = decision(&exam_with_water(trial));
        assert_eq!(decision.verdict, Verdict::Pass);
        assert!(words(&decision.also).contains("coughed"));
    }
}

/// A cough just past the watch is not told as "60 seconds ... later than the 60 seconds".
#[test]
fn water_row_5_the_words_do_not_contradict_themselves() {
    let text = words(&judge_water(&with_sign(Sign::Cough, 60_400)));
    assert!(!text.contains("coughed 60 seconds after"), "{text}");
}

/// Worked example, 3-oz, row 6: paused for breath, then finished -> refer (interrupted).
///
/// Answered after the cup, pressed while drinking, or both.
#[test]
fn water_row_6_paused() {
    let mut answered = water();
    choose(&mut answered, water90::CUP, water90::PAUSED);
    refers(
        &answered,
        "water.interrupted",
        &[&source::TH4, &source::IDC],
    );

    let mut pressed = water();
    mark(&mut pressed, MarkKind::Sign(Sign::Pause), at(6_000));
    refers(&pressed, "water.interrupted", &[&source::TH4, &source::IDC]);

    choose(&mut pressed, water90::CUP, water90::PAUSED);
    assert_eq!(verdict(&exam_with_water(pressed)), Verdict::Refer);
}

/// Every sign while drinking reads as one sentence, nothing said twice.
#[test]
fn water_signs_read_as_sentences() {
    for sign in Sign::ALL {
        let mut trial = water();
        mark(&mut trial, MarkKind::Sign(sign), at(6_000));
        let text = words(&judge_water(&trial));
        assert_eq!(text.matches("while drinking").count(), 1, "{text}");
    }
}

/// Worked example, 3-oz, row 7: 15 mL left -> refer (incomplete).
#[test]
fn water_row_7_fifteen_left() {
    let mut trial = water();
    choose(&mut trial, water90::CUP, water90::SOME_LEFT);
    number(&mut trial, water90::REMAINING, 150);
    let flag = refers(&trial, "water.left", &[&source::TH4, &source::IDC]);
    assert_eq!(flag.reason(), "15 of 90 mL left in the cup");

    trial.answers.remove(water90::REMAINING);
    refers(&trial, "water.left", &[&source::TH4, &source::IDC]);
}

fn wet_after(before: &str) -> Trial {
    let mut trial = water();
    choose(&mut trial, water90::VOICE_BEFORE, before);
    choose(&mut trial, water90::VOICE_AFTER, "wet");
    mark(&mut trial, MarkKind::Tap, at(3_000));
    trial
}

/// Worked example, 3-oz, row 8: clear before, wet after -> refer, with the voice setting on.
///
/// Heard at 40 s and pressed as a sign, or heard when the voice was asked for.
#[test]
fn water_row_8_wet_with_the_setting_on() {
    let sources = [&source::TH4, &source::IDC];
    refers(&wet_after("clear"), "water.voice", &sources);
    refers(
        &with_sign(Sign::VoiceChange, 40_000),
        "water.voice",
        &sources,
    );
    let mut hoarse = wet_after("clear");
    choose(&mut hoarse, water90::VOICE_AFTER, "hoarse");
    refers(&hoarse, "water.voice", &sources);
}

/// Worked example, 3-oz, row 8: the same with the voice setting off -> record only.
#[test]
fn water_row_8_wet_with_the_setting_off() {
    let policy = Policy {
        voice_refers: false,
        ..Policy::default()
    };
    for trial in [wet_after("clear"), with_sign(Sign::VoiceChange, 40_000)] {
        let flags = water90::judge(&Reading::of(&trial), false, &policy);
        assert_eq!(worst(&flags), Some(Level::Pass), "{flags:?}");
        let note = flags.iter().find(|f| f.rule().id == "water.voice").unwrap();
        assert_eq!(note.level(), Level::Note);
        let exam = Exam {
            policy: policy.clone(),
            ..exam_with_water(trial)
        };
        let decision = decision(&exam);
        assert_eq!(decision.verdict, Verdict::Pass);
        assert!(words(&decision.also).contains("wet"), "{decision:?}");
    }
}

/// Worked example, 3-oz, row 9: wet before, wet after, unchanged -> no voice sign; the dysphonia
/// at baseline is noted, itself a predictor (GRO23).
#[test]
fn water_row_9_wet_before_and_after() {
    let trial = wet_after("wet");
    let flags = judge_water(&trial);
    assert_eq!(worst(&flags), Some(Level::Pass), "{flags:?}");
    let note = flags
        .iter()
        .find(|f| f.rule().id == "water.baseline-voice")
        .unwrap();
    assert_eq!(
        (note.level(), note.domain()),
        (Level::Note, Domain::SpeechVoice)
    );
    rests_on(note, &[&source::GRO23]);
    let decision = decision(&exam_with_water(trial));
    assert_eq!(decision.verdict, Verdict::Pass);
    assert!(words(&decision.also).contains("already before the water"));
}

/// A voice that was hoarse before and stayed so is no change, by the same row.
#[test]
fn water_row_9_hoarse_before_and_after() {
    let mut trial = wet_after("hoarse");
    choose(&mut trial, water90::VOICE_AFTER, "hoarse");
    let flags = judge_water(&trial);
    assert_eq!(worst(&flags), Some(Level::Pass), "{flags:?}");
    let decision = decision(&exam_with_water(trial));
    assert_eq!(decision.verdict, Verdict::Pass);
    // Wet after it is a change.
    refers(&wet_after("hoarse"), "water.voice", &[&source::TH4]);
}

/// Worked example, 3-oz, row 10: gate item P02 (upright) failed -> not done, no result.
#[test]
fn water_row_10_gate_closed() {
    let mut exam = exam(Vec::new());
    exam.gate.0.insert("upright".to_owned(), "flat".to_owned());
    let closed = decision(&exam);
    assert_eq!(closed.verdict, Verdict::NotDone(EndedEarly::GateClosed));
    assert!(closed.reasons.is_empty() && closed.clear.is_empty());

    // Nor does a cup that was given behind a closed gate clear anybody.
    exam.trials = exam_with_water(water()).trials;
    assert_eq!(verdict(&exam), Verdict::NotDone(EndedEarly::GateClosed));
}

/// Stop criteria during any trial: choking, breathing distress, no swallow (local policy; STM).
#[test]
fn water_stops() {
    for sign in [Sign::Choke, Sign::BreathingChange, Sign::NoSwallow] {
        // Even later than the watch: a stop is a stop.
        for after in [-5_000, 20_000, 300_000] {
            let exam = exam_with_water(with_sign(sign, after));
            assert_eq!(verdict(&exam), Verdict::Stop, "{sign:?} at {after}");
        }
    }
}
