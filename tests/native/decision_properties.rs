//! What must hold for any examination at all.
//!
//! Order of verdicts: Stop > Refer > (Not done, Incomplete) > Pass. "Better" is further down.
//! The principles are these: "not tested" is never "normal"; no oral trial
//! behind a closed gate (gate table and breathing gate); no further trial after no swallow
//! (RHD, STM); a figure from memory never drives a flag.

use crate::support::*;
use std::collections::BTreeSet;

use crate::support::any::*;
use penlight::clinical::decision::assess::{assess, flags};
use penlight::clinical::decision::verdict::{Verdict, decide};
use penlight::clinical::findings::exam::{EndedEarly, Exam};
use penlight::clinical::findings::flag::{Domain, Flag, Level};
use penlight::clinical::findings::gate;
use penlight::clinical::findings::gate::{GateAnswers, HOLDS, ITEMS, State};
use penlight::clinical::findings::go_on::GoOn;
use penlight::clinical::findings::trial::{Mark, MarkKind, Trial};
use penlight::clinical::knowledge::oral::Examination;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::rule::{Basis, Rule};
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::screen::{Screen, ScreenId};
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::source::Mark as SourceMark;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::by_mouth::saturation;
use penlight::clinical::tasks::spec::{NOT_VALID, WATCH_CUT};
use penlight::clinical::tasks::{breathing, dry_swallow};
use proptest::prelude::*;
use proptest::sample::{Index, select, subsequence};

// Any examination: see also [`support::any`].

fn any_breathing() -> impl Strategy<Value = Trial> {
    let counted = prop_oneof![
        3 => (0_i64..40).prop_map(breaths),
        1 => Just(Trial::new(TaskId::Breathing, 0, None)),
    ];
    let usual = select(vec![12_i64, 16, 20]).prop_map(breaths);
    prop_oneof![
        2 => usual,
        1 => (counted, any_answers(TaskId::Breathing)).prop_map(|(t, a)| with_answers(t, a)),
    ]
    .prop_flat_map(any_hidden)
}

fn any_dry() -> impl Strategy<Value = Trial> {
    let counted = prop::collection::vec(-1_000_i64..65_000, 0..7).prop_map(|mut taps| {
        taps.sort_unstable();
        dry(&taps)
    });
    let unfinished = counted.clone().prop_map(|mut trial| {
        trial.marks.retain(|m| m.kind != MarkKind::WindowOver);
        trial
    });
    prop_oneof![
        2 => Just(dry(&[3_000, 9_000, 15_000, 24_000])),
        3 => counted,
        1 => unfinished,
        1 => Just(Trial::new(TaskId::DrySwallow, 0, None)),
        1 => Just(with_not_valid(Trial::new(TaskId::DrySwallow, 0, None))),
        1 => Just(with_not_valid(dry(&[3_000, 9_000, 15_000]))),
    ]
    .prop_flat_map(any_hidden)
}

fn with_not_valid(mut trial: Trial) -> Trial {
    choose(&mut trial, NOT_VALID, "not-felt");
    trial
}

fn any_water() -> impl Strategy<Value = Trial> {
    let marks = [
        Mark {
            at: at(0),
            kind: MarkKind::Start,
        },
        Mark {
            at: at(LAST_SWALLOW),
            kind: MarkKind::End,
        },
        Mark {
            at: at(LAST_SWALLOW + 60_000),
            kind: MarkKind::WatchOver,
        },
    ];
    // Cut off anywhere: not started, no last swallow, no whole watch.
    let cut = (0_usize..4, any_answers(TaskId::Water90), any::<bool>()).prop_map(
        move |(kept, answers, cut)| {
            let mut trial = with_answers(Trial::new(TaskId::Water90, 0, None), answers);
            trial.marks = marks[..kept].to_vec().into();
            if cut {
                choose(&mut trial, WATCH_CUT, "called-away");
            }
            trial
        },
    );
    let signs = prop::option::weighted(0.5, prop::collection::vec(any_sign_mark(), 0..3));
    (prop_oneof![3 => Just(water()), 2 => cut], signs)
        .prop_map(|(mut trial, signs)| {
            trial.marks.extend(signs.into_iter().flatten());
            trial
        })
        .prop_flat_map(any_hidden)
}

/// Who went on past which of the holds in the way, by its place among them.
fn any_overrides(most: usize) -> impl Strategy<Value = Vec<(Index, bool)>> {
    prop::collection::vec((any::<Index>(), prop::bool::weighted(0.8)), 0..=most)
}

/// Goes on past these of the holds that are in the way of the water.
fn go_on(exam: &mut Exam, overrides: &[(Index, bool)]) {
    let holds = holds(TaskId::Water90, exam);
    for (which, slp) in overrides {
        let by = if *slp { Role::Slp } else { Role::Screener };
        if !holds.is_empty() {
            exam.went_on.push(went_on(&which.get(&holds).id, by));
        }
    }
}

fn any_trials() -> impl Strategy<Value = Vec<Trial>> {
    (
        prop::collection::vec(any_breathing(), 0..=2),
        prop::collection::vec(any_dry(), 0..=2),
        prop::collection::vec(any_water(), 0..=2),
    )
        .prop_map(|(breathing, dry, water)| {
            let mut trials: Vec<Trial> = [breathing, dry, water].into_iter().flatten().collect();
            for (number, trial) in trials.iter_mut().enumerate() {
                trial.number = u32::try_from(number).unwrap();
            }
            trials
        })
}

fn any_exam() -> impl Strategy<Value = Exam> {
    // Mostly a screen that is clear but for one task, so that this one task decides.
    let usual = vec![breaths(16), dry(&[3_000, 9_000, 15_000, 24_000]), water()];
    let one = prop_oneof![
        2 => any_water(),
        1 => any_dry(),
        1 => any_breathing(),
    ]
    .prop_map(move |other| {
        let mut trials = usual.clone();
        for trial in &mut trials {
            if trial.task == other.task {
                *trial = other.clone();
            }
        }
        trials
    });
    (
        any_age(),
        any_gate(),
        prop_oneof![2 => one, 1 => any_trials()],
        any_overrides(2),
        prop::option::weighted(0.1, Just(EndedEarly::Withdrew)),
        any_policy(),
    )
        .prop_map(|(age, gate, trials, overrides, ended, policy)| {
            let mut exam = Exam {
                age,
                gate,
                trials,
                ended,
                policy,
                ..Exam::default()
            };
            go_on(&mut exam, &overrides);
            exam
        })
}

/// The swallow screen with its tasks in every order.
static ORDERS: [Screen; 6] = {
    use TaskId::{Breathing as B, DrySwallow as D, Water90 as W};
    const fn screen(tasks: &'static [TaskId]) -> Screen {
        Screen {
            id: ScreenId::Swallow,
            gate: true,
            decides: true,
            oral: Examination::None,
            tasks,
        }
    }
    [
        screen(&[B, D, W]),
        screen(&[B, W, D]),
        screen(&[D, B, W]),
        screen(&[D, W, B]),
        screen(&[W, B, D]),
        screen(&[W, D, B]),
    ]
};

/// Answers that say why something is worth nothing, and readings entered only where there are
/// any: taking one back is a correction, not a test left out.
fn is_correction(task: TaskId, question: &str) -> bool {
    // The lowest saturation is seen as a sign is: it is entered only where there was one.
    [NOT_VALID, WATCH_CUT, saturation::LOWEST].contains(&question) || task == TaskId::Breathing
}

/// Whether a later trial of the same task stands for this one.
fn repeated(exam: &Exam, i: usize) -> bool {
    exam.trials[i + 1..]
        .iter()
        .any(|t| t.task == exam.trials[i].task)
}

#[track_caller]
fn assert_rule(flag: &Flag) {
    let rule = flag.rule();
    assert!(!flag.reason().trim().is_empty(), "{}", rule.id);
    check_rule(rule);
}

#[track_caller]
fn check_rule(rule: &Rule) {
    assert!(!rule.id.trim().is_empty());
    assert!(!rule.says.trim().is_empty(), "{}", rule.id);
    match rule.basis {
        Basis::Published(sources) => assert!(!sources.is_empty(), "{}", rule.id),
        Basis::LocalPolicy { why, .. } => assert!(!why.trim().is_empty(), "{}", rule.id),
    }
    for used in rule.sources() {
        assert!(
            source::ALL.iter().any(|s| std::ptr::eq(*s, *used)),
            "{}",
            used.key
        );
        assert_ne!(
            used.mark,
            SourceMark::FromMemory,
            "{} rests on {}",
            rule.id,
            used.key
        );
    }
}

/// Which holds there are, as (id, words, who may go on).
fn hold_set(holds: &[Hold]) -> Vec<(String, String, GoOn)> {
    holds
        .iter()
        .map(|h| (h.id.clone(), h.says.clone(), h.go_on))
        .collect()
}

proptest! {
    #![proptest_config(config(1_000))]

    /// A sign seen never makes the verdict better, whenever it was pressed and in whatever state
    /// the cup is.
    #[test]
    fn adding_a_sign_never_improves(exam in any_exam(), which: Index, sign in any_sign_mark()) {
        let waters: Vec<usize> = (0..exam.trials.len())
            .filter(|i| exam.trials[*i].task == TaskId::Water90)
            .collect();
        prop_assume!(!waters.is_empty());
        let mut more = exam.clone();
        more.trials[waters[which.index(waters.len())]].marks.push(sign);
        let (before, after) = (verdict(&exam), verdict(&more));
        prop_assert!(grave(after) >= grave(before), "{before:?} became {after:?}");
    }

    /// What was not asked or not answered is never "no sign seen".
    #[test]
    fn removing_an_answer_never_clears(exam in any_exam()) {
        let before = verdict(&exam);
        for item in exam.gate.0.keys() {
            let mut less = exam.clone();
            less.gate.0.remove(item);
            prop_assert_ne!(verdict(&less), Verdict::Pass, "without {}", item);
        }
        for (i, trial) in exam.trials.iter().enumerate() {
            for question in trial.answers.keys() {
                if is_correction(trial.task, question) || repeated(&exam, i) {
                    continue;
                }
                let mut less = exam.clone();
                less.trials[i].answers.remove(question);
                let after = verdict(&less);
                prop_assert!(
                    after != Verdict::Pass || before == Verdict::Pass,
                    "{before:?} became Pass without {question}"
                );
            }
        }
    }

    /// Nor is a trial that was left out, unless it was a repeat.
    #[test]
    fn a_task_left_out_never_clears(exam in any_exam(), task in select(vec![
        TaskId::Breathing, TaskId::DrySwallow, TaskId::Water90,
    ])) {
        let mut less = exam;
        less.trials.retain(|t| t.task != task);
        let passed = !less.went_on.is_empty() && task == TaskId::Breathing;
        // The dry-swallow count steps aside for whom it is not meant.
        if !(passed || tasks::aside(task, &less).is_some()) {
            prop_assert_ne!(verdict(&less), Verdict::Pass);
        }
    }

    /// Nor a mark that was lost.
    #[test]
    fn a_time_that_was_not_seen_to_its_end_never_clears(exam in any_exam()) {
        for kind in [MarkKind::Start, MarkKind::End, MarkKind::WatchOver] {
            let mut less = exam.clone();
            for trial in less.trials.iter_mut().filter(|t| t.task == TaskId::Water90) {
                trial.marks.retain(|m| m.kind != kind);
            }
            prop_assert_ne!(verdict(&less), Verdict::Pass, "without {:?}", kind);
        }
    }

    #[test]
    fn the_order_of_the_tasks_decides_nothing(exam in any_exam()) {
        let wanted = assess(&ORDERS[0], &exam);
        for screen in &ORDERS {
            let got = assess(screen, &exam);
            prop_assert_eq!(got.verdict, wanted.verdict, "{:?}", screen.tasks);
            prop_assert_eq!(got.reasons.len(), wanted.reasons.len());
        }
    }

    #[test]
    fn the_order_of_the_gate_decides_nothing(
        exam in any_exam(),
        order in Just((0..ITEMS.len()).collect::<Vec<_>>()).prop_shuffle(),
    ) {
        let mut again = exam.clone();
        again.gate = GateAnswers::default();
        for i in order {
            let id = ITEMS[i].id;
            if let Some(answer) = exam.gate.0.get(id) {
                again.gate.0.insert(id.to_owned(), answer.clone());
            }
        }
        prop_assert_eq!(verdict(&again), verdict(&exam));
        prop_assert_eq!(words(&all(&decision(&again))), words(&all(&decision(&exam))));
    }

    /// Every flag has a reason, a rule and what the rule rests on; none rests on memory.
    #[test]
    fn every_flag_has_its_rule_and_its_sources(exam in any_exam()) {
        for flag in flags(ScreenId::Swallow.screen(), &exam) {
            assert_rule(&flag);
        }
    }

    /// Every flag ends up in exactly one list, and only what decides is a reason.
    #[test]
    fn no_flag_is_lost_and_only_what_decides_is_a_reason(exam in any_exam()) {
        let flags = flags(ScreenId::Swallow.screen(), &exam);
        let decision = decision(&exam);
        prop_assert_eq!(all(&decision).len(), flags.len());
        for flag in &decision.reasons {
            prop_assert!(flag.domain().decides(), "{:?}", flag);
            prop_assert!(flag.level() >= Level::Refer);
        }
        prop_assert!(decision.reasons.is_sorted_by_key(|f| std::cmp::Reverse(f.level())));
        prop_assert!(decision.clear.iter().all(|f| f.level() == Level::Pass));
        if decision.verdict == Verdict::Pass {
            prop_assert!(decision.missing.is_empty() && decision.reasons.is_empty());
        }
    }

    /// After no swallow in 30 s, not repeated with enough, no screener gives water, whatever reason
    /// is given; and it refers.
    #[test]
    fn no_dry_swallow_holds_the_water_for_a_screener(mut exam in any_exam()) {
        exam.went_on.clear();
        let none = |f: &Flag| f.level() >= Level::Refer && dry_swallow::is_none_at_all(f.fact());
        if dry_swallow::flags(&exam).iter().any(none) {
            let held = |exam: &Exam| {
                let held = holds(TaskId::Water90, exam);
                held.iter().any(|h| !h.go_on.open_to(Role::Screener))
            };
            prop_assert!(held(&exam));
            let mut passed = exam.clone();
            for hold in holds(TaskId::Water90, &exam) {
                passed.went_on.push(went_on(&hold.id, Role::Screener));
            }
            prop_assert!(held(&passed));
            prop_assert!(verdict(&exam) != Verdict::Pass);
        }
    }

    /// A closed gate never yields "no sign seen" where nobody went on with a reason.
    #[test]
    fn a_block_without_a_reason_never_passes(mut exam in any_exam()) {
        // Only that breaths were not counted may have been passed: that is another hold.
        exam.went_on.retain(|w| w.hold == "breathing.not-counted" && w.by == Role::Slp);
        let gate = exam.gate.exceptions(&exam.policy).any(|(_, _, s)| s != State::Caution);
        // The breathing gate for adults, from the readings themselves: NEWS2 bands, local policy.
        let adult = exam.age.is_none_or(Age::is_adult);
        let low = exam.latest(TaskId::Breathing).map(breathing::read).is_some_and(|f| {
            // With a confirmed target of 88 to 92 % the second scale reads what is not below it.
            let spo2 = f.spo2.filter(|p| f.confirmed.is_none() || *p < 88.0);
            let spo2 = spo2.map(|p| breathing::spo2_band(p, f.target, &exam.policy));
            spo2 == Some(breathing::Band::Block)
                || f.rates.iter().any(|(rate, _)| *rate <= 8 || *rate >= 25)
        });
        if gate || adult && low {
            prop_assert_ne!(verdict(&exam), Verdict::Pass);
        }
    }

    /// Going on past one hold leaves every other hold, and every sign, where it was.
    #[test]
    fn a_reason_turns_off_only_the_hold_it_was_stated_for(
        exam in any_exam(), which: Index, slp: bool,
    ) {
        let before = hold_set(&holds(TaskId::Water90, &exam));
        prop_assume!(!before.is_empty());
        let by = if slp { Role::Slp } else { Role::Screener };
        let on = went_on(&which.get(&before).0, by);
        let mut passed = exam.clone();
        passed.went_on.push(on.clone());
        let after = hold_set(&holds(TaskId::Water90, &passed));
        let wanted: Vec<_> = before
            .into_iter()
            .filter(|(id, _, go_on)| *id != on.hold || !go_on.open_to(on.by))
            .collect();
        prop_assert_eq!(after, wanted);
        prop_assert_eq!(
            words(&decision(&passed).reasons),
            words(&decision(&exam).reasons)
        );
    }

    /// Flags about the mouth, the voice or breathing alone never reach the headline.
    #[test]
    fn mouth_and_speech_never_reach_the_headline(flags in any_flags(), ended in any_end()) {
        let decision = decide(flags.clone(), ended);
        prop_assert!(decision.reasons.iter().all(|f| f.domain().decides()));
        let deciding: Vec<Flag> = flags.iter().filter(|f| f.domain().decides()).cloned().collect();
        let others = flags.len() - deciding.len();
        prop_assert_eq!(decide(deciding, ended).verdict, decision.verdict);
        prop_assert!(decision.also.len() >= others);
    }

    /// One more flag never makes the verdict better, unless it says "no sign".
    #[test]
    fn one_more_flag_never_improves(
        flags in any_flags(), more in any_flag(), ended in any_end(), place: Index,
    ) {
        prop_assume!(more.level() != Level::Pass);
        let before = decide(flags.clone(), ended).verdict;
        let mut all = flags;
        all.insert(place.index(all.len() + 1), more);
        let after = decide(all, ended).verdict;
        prop_assert!(grave(after) >= grave(before), "{before:?} became {after:?}");
    }
}

static ANY: Rule = Rule {
    id: "any",
    says: "Any.",
    looks_at: "anything",
    basis: Basis::LocalPolicy {
        why: "any.",
        seen: &[],
    },
};

fn any_flag() -> impl Strategy<Value = Flag> {
    let levels = [
        Level::Note,
        Level::Pass,
        Level::Incomplete,
        Level::Refer,
        Level::Stop,
    ];
    let domains = [
        Domain::Urgent,
        Domain::EatingDrinking,
        Domain::Breathing,
        Domain::SpeechVoice,
        Domain::Mouth,
    ];
    (select(levels.to_vec()), select(domains.to_vec())).prop_map(|(level, domain)| {
        ANY.flag(
            level,
            domain,
            penlight::clinical::findings::fact::VisitFact::AgeNotGiven,
        )
    })
}

fn any_flags() -> impl Strategy<Value = Vec<Flag>> {
    prop::collection::vec(any_flag(), 0..6)
}

fn any_end() -> impl Strategy<Value = Option<EndedEarly>> {
    prop::option::of(select(vec![
        EndedEarly::Refused,
        EndedEarly::Withdrew,
        EndedEarly::GateClosed,
        EndedEarly::Emergency,
        EndedEarly::BrokenOff,
    ]))
}

// The same by name, one case each.

/// Every rule there is, flagged or not.
fn all_rules() -> &'static [&'static Rule] {
    rules::ALL
}

#[test]
fn every_rule_has_its_id_its_words_and_its_sources() {
    let rules = all_rules();
    rules.iter().for_each(|rule| check_rule(rule));
    let ids: BTreeSet<&str> = rules.iter().map(|r| r.id).collect();
    assert_eq!(ids.len(), rules.len(), "an id twice");
}

/// A rule that names its basis "published" does not rest on a source that says it is none.
#[test]
fn published_means_published() {
    for rule in all_rules() {
        if let Basis::Published(sources) = rule.basis {
            for used in sources {
                assert!(
                    !used.citation.contains("no published source"),
                    "{}: {}",
                    rule.id,
                    rule.basis_line()
                );
            }
        }
    }
}

/// Each needed answer, each task and each item of the gate, left out of a clear screen one at a
/// time: never "no sign seen".
#[test]
fn nothing_needed_can_be_left_out_of_a_clear_screen() {
    let clear = exam_with_water(water());
    assert_eq!(verdict(&clear), Verdict::Pass);
    for item in ITEMS {
        let mut less = clear.clone();
        less.gate.0.remove(item.id);
        assert_eq!(verdict(&less), Verdict::Incomplete, "{}", item.id);
    }
    for i in 0..clear.trials.len() {
        let mut less = clear.clone();
        let left_out = less.trials.remove(i).task;
        assert_eq!(verdict(&less), Verdict::Incomplete, "{left_out:?}");
    }
    for question in tasks::spec(TaskId::Water90)
        .questions
        .iter()
        .filter(|q| q.needed)
    {
        let mut less = clear.clone();
        less.trials[2].answers.remove(question.id);
        assert_eq!(verdict(&less), Verdict::Incomplete, "{}", question.id);
    }
}

/// A throat clear before any water was given does not stand in for the water.
#[test]
fn a_sign_that_decides_nothing_does_not_stand_in_for_the_cup() {
    for (sign, voice_refers) in [(Sign::ThroatClear, true), (Sign::VoiceChange, false)] {
        let mut not_given = Trial::new(TaskId::Water90, 0, None);
        mark(&mut not_given, MarkKind::Sign(sign), at(0));
        let mut exam = exam_with_water(not_given);
        exam.policy.voice_refers = voice_refers;
        assert_eq!(verdict(&exam), Verdict::Incomplete, "{sign:?}");
    }
}

/// Breathing gate (NEWS2 band 3, local policy): an SpO2 of 80 % blocks, breaths counted or not.
#[test]
fn a_low_saturation_blocks_without_a_counted_rate() {
    let mut uncounted = Trial::new(TaskId::Breathing, 0, None);
    number(&mut uncounted, breathing::SATURATION, 800);
    let mut exam = exam(vec![uncounted, dry(&[3_000, 9_000, 15_000]), water()]);
    exam.went_on
        .push(went_on("breathing.not-counted", Role::Slp));
    assert!(
        holds(TaskId::Water90, &exam)
            .iter()
            .any(|h| h.id.starts_with("breathing.spo2")),
        "nothing holds up water at an SpO2 of 80 %"
    );
    assert_ne!(verdict(&exam), Verdict::Pass);
}

/// A child's SpO2 has no adult band, but it is told.
#[test]
fn a_child_s_saturation_is_told() {
    let mut trial = breaths(30);
    number(&mut trial, breathing::SATURATION, 800);
    let mut exam = exam(vec![trial, dry(&[3_000, 9_000, 15_000]), water()]);
    exam.age = Some(Age::Years(5));
    assert!(words(&all(&decision(&exam))).contains("80 %"));
}

/// Breathing gate: a rate counted here and a rate entered that disagree; the usual one does not
/// hide the other.
#[test]
fn an_entered_rate_does_not_hide_a_counted_one() {
    let mut trial = breaths(32);
    number(&mut trial, breathing::TYPED, 160);
    let exam = exam(vec![trial, dry(&[3_000, 9_000, 15_000]), water()]);
    let told = words(&all(&decision(&exam)));
    assert!(
        verdict(&exam) != Verdict::Pass || told.contains("32"),
        "{told}"
    );
}

/// A reason stated for one finding does not cover another one found later at the same item.
#[test]
fn a_reason_stated_for_one_answer_does_not_cover_another() {
    for item in ITEMS {
        let blocks: Vec<_> = item
            .exceptions
            .iter()
            .filter(|e| matches!(e.state, State::Block | State::Fix))
            .collect();
        for (first, second) in blocks
            .iter()
            .flat_map(|a| blocks.iter().map(move |b| (a, b)))
        {
            if first.id == second.id {
                continue;
            }
            let mut exam = exam_with_water(water());
            exam.gate.0.insert(item.id.to_owned(), first.id.to_owned());
            for hold in holds(TaskId::Water90, &exam) {
                exam.went_on.push(went_on(&hold.id, Role::Slp));
            }
            exam.gate.0.insert(item.id.to_owned(), second.id.to_owned());
            assert_ne!(
                verdict(&exam),
                Verdict::Pass,
                "\"{}\" was passed with the reason given for \"{}\"",
                second.id,
                first.id
            );
        }
    }
}

/// A clear screen of somebody who does not manage saliva, and the hold that stands for it.
fn not_managing_saliva() -> (Exam, String) {
    let mut exam = exam_with_water(water());
    exam.gate.0.insert("saliva".to_owned(), "no".to_owned());
    let holds = holds(TaskId::Water90, &exam);
    assert_eq!(holds.len(), 1);
    (exam, holds[0].id.clone())
}

/// A hold that only a speech-language pathologist may pass stays when somebody else did.
#[test]
fn a_hold_is_not_passed_by_somebody_who_may_not() {
    let (mut exam, hold) = not_managing_saliva();
    exam.went_on.push(went_on(&hold, Role::Screener));
    assert!(holds(TaskId::Water90, &exam).iter().any(|h| h.id == hold));
    assert_ne!(verdict(&exam), Verdict::Pass);

    exam.went_on.push(went_on(&hold, Role::Slp));
    assert!(holds(TaskId::Water90, &exam).is_empty());
    assert_eq!(verdict(&exam), Verdict::Pass);
}

/// "With a stated reason": blanks are none.
#[test]
fn a_blank_reason_is_no_reason() {
    let (mut exam, hold) = not_managing_saliva();
    let mut on = went_on(&hold, Role::Slp);
    on.because = "  ".to_owned();
    exam.went_on.push(on);
    assert_ne!(verdict(&exam), Verdict::Pass);
}

/// An emergency is never gone past.
#[test]
fn an_emergency_stays_one() {
    let mut exam = exam_with_water(water());
    exam.gate
        .0
        .insert("new-weakness".to_owned(), "new".to_owned());
    for hold in holds(TaskId::Water90, &exam) {
        exam.went_on.push(went_on(&hold.id, Role::Slp));
    }
    assert_eq!(verdict(&exam), Verdict::NotDone(EndedEarly::Emergency));
    for task in [TaskId::Breathing, TaskId::DrySwallow, TaskId::Water90] {
        assert!(
            holds(task, &exam).iter().any(|h| h.go_on == GoOn::Never),
            "{task:?}"
        );
    }
}

/// After choking no further trial by mouth: the rule says so to everybody.
#[test]
fn after_choking_no_further_cup() {
    let mut choked = water();
    mark(&mut choked, MarkKind::Sign(Sign::Choke), at(5_000));
    let exam = exam_with_water(choked);
    assert_eq!(verdict(&exam), Verdict::Stop);
    assert!(
        holds(TaskId::Water90, &exam)
            .iter()
            .all(|h| !h.go_on.open_to(Role::Screener)),
        "{:?}",
        holds(TaskId::Water90, &exam)
    );
}

/// A later cup or count never wipes out a sign that an earlier one showed.
#[test]
fn a_repeat_never_wipes_out_a_sign() {
    let mut coughed = water();
    mark(&mut coughed, MarkKind::Sign(Sign::Cough), at(5_000));
    let mut exam = exam_with_water(coughed);
    exam.trials.push(water());
    assert_eq!(verdict(&exam), Verdict::Refer);

    let mut exam = exam_with_dry(dry(&[4_000]));
    exam.trials.push(dry(&[3_000, 9_000, 15_000]));
    assert_eq!(verdict(&exam), Verdict::Refer);
}

/// Any mix of answers the gate does not know leaves it closed.
#[test]
fn an_answer_of_another_version_never_opens_the_gate() {
    for item in ITEMS {
        for odd in ["", "Holds", "yes", "holds "] {
            assert_ne!(odd, HOLDS);
            let mut exam = exam_with_water(water());
            exam.gate.0.insert(item.id.to_owned(), odd.to_owned());
            assert_eq!(verdict(&exam), Verdict::Incomplete, "{} {odd:?}", item.id);
        }
    }
}

proptest! {
    #![proptest_config(config(1_000))]

    /// With several holds in the way, each needs its own reason: a part of them leaves the rest.
    #[test]
    fn every_block_needs_its_own_reason(
        blocked in subsequence(
            ITEMS.iter()
                .filter(|i| i.exceptions.iter().any(|e| e.state == State::Block))
                .filter(|i| gate::go_on(i, State::Block) != GoOn::Never)
                .collect::<Vec<_>>(),
            1..4,
        ),
        passed: Index,
    ) {
        let mut exam = exam_with_water(water());
        for item in &blocked {
            let block = item.exceptions.iter().find(|e| e.state == State::Block).unwrap();
            exam.gate.0.insert(item.id.to_owned(), block.id.to_owned());
        }
        let blocks = holds(TaskId::Water90, &exam);
        prop_assert_eq!(blocks.len(), blocked.len());
        let passed = passed.index(blocks.len() + 1);
        for hold in &blocks[..passed] {
            exam.went_on.push(went_on(&hold.id, Role::Slp));
        }
        prop_assert_eq!(holds(TaskId::Water90, &exam).len(), blocks.len() - passed);
        let cleared = verdict(&exam) == Verdict::Pass;
        prop_assert_eq!(cleared, passed == blocks.len());
    }
}
