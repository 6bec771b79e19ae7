//! What must hold for any finding about swallow, breathing and mouth.
//!
//! A sign never makes a decision better; the order of runs, sips, signs and sightings has no
//! meaning; what was not tested is never normal; a flag stands on a rule of the table.

#![allow(clippy::unwrap_used)]

use penlight::clinical::decision::verdict::{Verdict, decide};
use penlight::clinical::findings::breathing::State;
use penlight::clinical::findings::fact::{OwnGiven, Seen, SeenSign, With};
use penlight::clinical::findings::flag::{Flag, Level};
use penlight::clinical::findings::looked::Looked;
use penlight::clinical::findings::oral::FrontTeeth;
use penlight::clinical::findings::oral::Gag;
use penlight::clinical::findings::oral::{Forehead, Sighting};
use penlight::clinical::knowledge::oral::nerve::{Nerve, Side};
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::policy::Wording;
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::tasks::breath_taps::judge as breath_taps;
use penlight::clinical::tasks::breathing::child as breathing_child;
use penlight::clinical::tasks::by_mouth::signs;
use penlight::clinical::tasks::cracker::judge as cracker;
use penlight::clinical::tasks::cracker::judge::CrackerError;
use penlight::clinical::tasks::flow::judge as flow;
use penlight::clinical::tasks::flow::judge::LeftOfTen;
use penlight::clinical::tasks::oral::gag;
use penlight::clinical::tasks::oral::mouth;
use penlight::clinical::tasks::oral::tongue_range;
use penlight::clinical::tasks::oral::weak_side;
use penlight::clinical::tasks::sips::judge as sips;
use penlight::clinical::tasks::sips::judge::{Plan, Sip};
use penlight::clinical::tasks::sips::three_ml;
use penlight::clinical::tasks::sips::three_ml::{Grade, Run};
use penlight::clinical::tasks::six_signs::judge as six_signs;
use penlight::clinical::tasks::six_signs::judge::{Setting, SixSigns};
use penlight::clinical::tasks::timed_water::judge as timed_water;
use penlight::clinical::tasks::timed_water::judge::Cup;
use penlight::measure::series::Series;
use penlight::measure::time::Millis;
use penlight::measure::units::{LitresPerMinute, Millilitres, Millimetres, PerMinute};
use proptest::prelude::*;
use proptest::sample::{Index, select};

fn verdict(flags: &[Flag]) -> Verdict {
    decide(flags.to_vec(), None).verdict
}

/// Higher is graver.
fn grave(flags: &[Flag]) -> u8 {
    match verdict(flags) {
        Verdict::Pass => 0,
        Verdict::Incomplete | Verdict::NoDecision | Verdict::NotDone(_) => 1,
        Verdict::Refer => 2,
        Verdict::Stop => 3,
    }
}

/// Flags as text, in any order.
fn sorted(flags: &[Flag]) -> Vec<String> {
    let mut all: Vec<String> = flags
        .iter()
        .map(|f| {
            format!(
                "{} {:?} {:?} {}",
                f.rule().id,
                f.level(),
                f.domain(),
                f.reason()
            )
        })
        .collect();
    all.sort();
    all
}

/// Every flag stands on a rule of the table and says something.
fn check(flags: &[Flag]) -> Result<(), TestCaseError> {
    for flag in flags {
        prop_assert!(
            rules::ALL.iter().any(|r| std::ptr::eq(*r, flag.rule())),
            "{flag:?}"
        );
        prop_assert!(!flag.reason().trim().is_empty());
        prop_assert!(!flag.reason().contains("not known"), "{}", flag.reason());
    }
    Ok(())
}

fn any_looked() -> impl Strategy<Value = Looked> {
    select(vec![
        Looked::Absent,
        Looked::Absent,
        Looked::Present,
        Looked::NotTested,
    ])
}

fn any_wording() -> impl Strategy<Value = Wording> {
    select(vec![Wording::A, Wording::B])
}

fn any_run() -> impl Strategy<Value = Run> {
    let good = Run {
        swallowed: Looked::Present,
        cough: Looked::Absent,
        wet_voice: Looked::Absent,
        breathing_change: Looked::Absent,
        residue: Looked::Absent,
        extra: Some(2),
    };
    let any = (
        any_looked(),
        any_looked(),
        any_looked(),
        any_looked(),
        any_looked(),
        prop::option::of(0_u8..4),
    )
        .prop_map(
            |(swallowed, cough, wet_voice, breathing_change, residue, extra)| Run {
                swallowed,
                cough,
                wet_voice,
                breathing_change,
                residue,
                extra,
            },
        );
    // Mostly without a sign, so that what needs several good runs is reached.
    prop_oneof![3 => Just(good), 2 => any]
}

fn any_runs() -> impl Strategy<Value = Vec<Run>> {
    prop::collection::vec(any_run(), 0..4)
}

/// One part of a run, by number.
fn part(run: &mut Run, which: usize) -> &mut Looked {
    match which % 5 {
        0 => &mut run.swallowed,
        1 => &mut run.cough,
        2 => &mut run.wet_voice,
        3 => &mut run.breathing_change,
        _ => &mut run.residue,
    }
}

fn any_sign() -> impl Strategy<Value = SeenSign> {
    (select(Sign::ALL.to_vec()), prop::option::of(0_i64..90_000)).prop_map(|(sign, after)| {
        let at_once = SeenSign::at_once(sign);
        after.map_or(at_once, |after| {
            SeenSign::so_long_after(sign, Millis(after))
        })
    })
}

/// Every column but the 90 mL.
fn any_with() -> impl Strategy<Value = With> {
    let given = OwnGiven::default();
    select(vec![
        With::Sip(Millilitres::whole(3)),
        With::TimedCup,
        With::Cracker,
        With::Meal,
        With::Own { given, times: 2 },
    ])
}

fn any_sips() -> impl Strategy<Value = Vec<Sip>> {
    let sip = (
        select(vec![3_u8, 5, 10, 20]),
        prop_oneof![5 => Just(Vec::new()), 1 => prop::collection::vec(any_sign(), 1..3)],
        prop::bool::weighted(0.9),
    )
        .prop_map(|(ml, signs, watched)| Sip {
            size: Millilitres::whole(ml),
            signs,
            watched,
        });
    let whole = [3_u8, 3, 5, 5, 10, 10].map(|ml| Sip {
        size: Millilitres::whole(ml),
        signs: Vec::new(),
        watched: true,
    });
    prop_oneof![
        2 => prop::collection::vec(sip, 0..9),
        1 => Just(whole.to_vec()),
    ]
}

fn any_six() -> impl Strategy<Value = SixSigns> {
    prop::collection::vec(any_looked(), 6).prop_map(|l| SixSigns {
        voice: l[0],
        speech: l[1],
        gag: l[2],
        cough_on_request: l[3],
        cough_after: l[4],
        voice_after: l[5],
    })
}

fn six_part(signs: &mut SixSigns, which: usize) -> &mut Looked {
    match which % 6 {
        0 => &mut signs.voice,
        1 => &mut signs.speech,
        2 => &mut signs.gag,
        3 => &mut signs.cough_on_request,
        4 => &mut signs.cough_after,
        _ => &mut signs.voice_after,
    }
}

fn any_setting() -> impl Strategy<Value = Setting> {
    any::<bool>().prop_map(|gag_counts| Setting { gag_counts })
}

fn any_side() -> impl Strategy<Value = Side> {
    select(vec![Side::Left, Side::Right])
}

fn any_sightings() -> impl Strategy<Value = Vec<Sighting>> {
    let one =
        (0_u8..5, any_side(), select(Nerve::ALL.to_vec())).prop_map(|(n, side, nerve)| match n {
            0 => Sighting::TonguePointsTo(side),
            1 => Sighting::UvulaPulledTo(side),
            2 => Sighting::JawOpensTo(side),
            3 => Sighting::SmilePulledTo(side),
            _ => Sighting::FoundWeak(nerve, side),
        });
    prop::collection::vec(one, 0..7)
}

fn any_forehead() -> impl Strategy<Value = Forehead> {
    (any_looked(), any_looked()).prop_map(|(left, right)| Forehead { left, right })
}

fn any_age() -> impl Strategy<Value = Age> {
    prop_oneof![
        Just(Age::Adult),
        (1_u8..=120).prop_map(Age::Years),
        (0_u8..=35).prop_map(Age::Months),
    ]
}

fn config() -> ProptestConfig {
    ProptestConfig {
        cases: 1_000,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

/// A list and the same list in another order.
fn shuffled<T: Clone + std::fmt::Debug + 'static>(
    list: impl Strategy<Value = Vec<T>>,
) -> impl Strategy<Value = (Vec<T>, Vec<T>)> {
    list.prop_flat_map(|list| (Just(list.clone()), Just(list).prop_shuffle()))
}

proptest! {
    #![proptest_config(config())]

    /// 3 mL: one more sign in a run, or no swallow in place of one, never makes its grade better.
    #[test]
    fn three_ml_a_sign_never_improves(
        run in any_run(), wording in any_wording(), which in 0_usize..5,
    ) {
        let mut worse = run;
        *part(&mut worse, which) = if which == 0 { Looked::Absent } else { Looked::Present };
        if let (Some(before), Some(after)) = (run.grade(wording), worse.grade(wording)) {
            // A cough outranks a change of breathing in one of the wordings, as printed; a reaction
            // to water that was not swallowed is better than none.
            let printed = wording == Wording::B && before == Grade::Two && which == 1;
            let reacts = before == Grade::NotRated;
            prop_assert!(after <= before || printed || reacts, "{before:?} {after:?}");
        }
    }

    /// 3 mL: residue is said wherever there was a swallow, and refers in the wording that has it.
    #[test]
    fn three_ml_residue_is_said(runs in any_runs(), wording in any_wording()) {
        let residue = |run: &&Run| !run.swallowed.is_absent() && run.residue.is_present();
        let flags = three_ml::judge(&runs, wording);
        let said = flags.iter().find(|f| f.rule() == &rules::THREE_ML_RESIDUE);
        prop_assert_eq!(said.is_some(), runs.iter().any(|run| residue(&run)));
        let refers = said.is_some_and(|f| f.level() == Level::Refer);
        prop_assert_eq!(refers, said.is_some() && wording == Wording::B);
    }

    /// 3 mL: the order of the runs has no meaning, for flags and for grades.
    #[test]
    fn three_ml_order_has_no_meaning((one, other) in shuffled(any_runs()), wording in any_wording()) {
        prop_assert_eq!(
            sorted(&three_ml::judge(&one, wording)),
            sorted(&three_ml::judge(&other, wording))
        );
        prop_assert_eq!(three_ml::grades(&one), three_ml::grades(&other));
    }

    /// 3 mL: what was not looked at is never taken for absent.
    #[test]
    fn three_ml_not_tested_is_not_graded(
        run in any_run(), wording in any_wording(), which in 0_usize..6,
    ) {
        let mut less = run;
        if which == 5 {
            less.extra = None;
        } else {
            *part(&mut less, which) = Looked::NotTested;
        }
        let grade = less.grade(wording);
        prop_assert!(grade.is_none() || grade == run.grade(wording));
        check(&three_ml::judge(&[less], wording))?;
    }

    /// Any trial: one more sign never makes it better, and their order has no meaning.
    #[test]
    fn signs_never_improve(
        (one, other) in shuffled(prop::collection::vec(any_sign(), 0..6)),
        more in any_sign(), with in any_with(),
    ) {
        let before = signs::judge(&with, &one);
        check(&before)?;
        let mut worse = one.clone();
        worse.push(more);
        let worst = |flags: &[Flag]| flags.iter().map(Flag::level).max();
        prop_assert!(worst(&signs::judge(&with, &worse)) >= worst(&before));
        prop_assert!(grave(&signs::judge(&with, &worse)) >= grave(&before));
        if one.iter().all(|s| s.seen == Seen::While) {
            prop_assert_eq!(sorted(&before), sorted(&signs::judge(&with, &other)));
        }
        prop_assert_eq!(verdict(&before), verdict(&signs::judge(&with, &other)));
    }

    /// Sips: one more sign never makes them better, nor a sip with a sign.
    #[test]
    fn sips_a_sign_never_improves(given in any_sips(), sign in any_sign(), at: Index) {
        prop_assume!(!given.is_empty());
        let plan = Plan::default();
        let before = sips::judge(&plan, &given);
        let mut worse = given.clone();
        worse[at.index(given.len())].signs.push(sign);
        let after = sips::judge(&plan, &worse);
        prop_assert!(grave(&after) >= grave(&before), "{before:?}\n{after:?}");
        check(&after)?;
    }

    /// Sips: their order decides nothing.
    #[test]
    fn sips_order_decides_nothing((one, other) in shuffled(any_sips())) {
        let plan = Plan::default();
        let (one, other) = (sips::judge(&plan, &one), sips::judge(&plan, &other));
        prop_assert_eq!(verdict(&one), verdict(&other));
        let deciding = |flags: &[Flag]| {
            let deciding: Vec<Flag> =
                flags.iter().filter(|f| f.level() != Level::Note).cloned().collect();
            deciding
                .iter()
                .map(|f| (f.rule().id, f.level()))
                .collect::<Vec<_>>()
        };
        prop_assert_eq!(deciding(&one), deciding(&other));
    }

    /// Sips: one that was not watched never clears, and nothing follows a sign.
    #[test]
    fn sips_not_watched_never_clear(given in any_sips(), at: Index) {
        prop_assume!(!given.is_empty());
        let plan = Plan::default();
        let mut less = given.clone();
        less[at.index(given.len())].watched = false;
        let (before, after) = (sips::judge(&plan, &given), sips::judge(&plan, &less));
        prop_assert!(verdict(&before) == Verdict::Pass || verdict(&after) != Verdict::Pass);
        let clear = sips::all_clear(&plan, &given);
        prop_assert_eq!(clear, sips::next(&plan, &given) == sips::Next::Done);
        prop_assert_eq!(clear, sips::before_90(&plan, &given).is_none());
        prop_assert_eq!(clear, verdict(&before) == Verdict::Pass);
    }

    /// Sips: following the plan step by step ends in "no sign", never before its last sip.
    #[test]
    fn sips_by_the_plan(sizes in prop::collection::vec(1_u8..30, 0..5), repeats in 0_u8..4) {
        let plan = Plan { sizes: sizes.iter().copied().map(Millilitres::whole).collect(), repeats };
        let mut given: Vec<Sip> = Vec::new();
        while let sips::Next::Give(size) = sips::next(&plan, &given) {
            prop_assert!(!sips::all_clear(&plan, &given));
            prop_assert!(given.iter().all(|sip| sip.size <= size));
            given.push(Sip { size, signs: Vec::new(), watched: true });
            prop_assert!(given.len() < 100);
        }
        let planned = !sizes.is_empty() && repeats > 0;
        prop_assert_eq!(sips::all_clear(&plan, &given), planned);
    }

    /// Six signs: one more never makes it better; not tested is never normal.
    #[test]
    fn six_signs_never_improve(signs in any_six(), setting in any_setting(), which in 0_usize..6) {
        let judge = |signs: &SixSigns| six_signs::judge(signs, Some(Age::Adult), setting);
        let levels = |signs: &SixSigns| judge(signs).iter().map(Flag::level).max();
        let mut more = signs;
        let was = *six_part(&mut more, which);
        *six_part(&mut more, which) = Looked::Present;
        // From "not tested" to "present" an open result may become a reason to refer, or stay.
        prop_assert!(grave(&judge(&more)) >= grave(&judge(&signs)));
        if was == Looked::Absent {
            prop_assert!(levels(&more) >= levels(&signs));
        }
        let mut open = signs;
        *six_part(&mut open, which) = Looked::NotTested;
        if levels(&signs) == Some(Level::Incomplete) {
            prop_assert_eq!(levels(&open), Some(Level::Incomplete));
        }
        // It clears nobody.
        prop_assert!(judge(&signs).iter().all(|f| f.level() != Level::Pass));
        check(&judge(&signs))?;
        let t = six_signs::tested(&signs, setting);
        prop_assert!(t.present <= t.tested && t.tested <= t.of);
    }

    /// Weak side: the order of what was seen has no meaning, no side is made up, and the pattern
    /// of the face needs its forehead.
    #[test]
    fn weak_side_is_what_was_seen(
        (one, other) in shuffled(any_sightings()), forehead in any_forehead(),
    ) {
        let flags = weak_side::judge(&one, forehead);
        check(&flags)?;
        prop_assert!(flags.iter().all(|f| f.level() == Level::Note && !f.domain().decides()));
        let ids = |flags: &[Flag]| {
            let mut ids: Vec<&str> = flags.iter().map(|f| f.rule().id).collect();
            ids.sort_unstable();
            ids
        };
        prop_assert_eq!(ids(&flags), ids(&weak_side::judge(&other, forehead)));
        for nerve in Nerve::ALL {
            let weak = weak_side::weak_by(nerve, &one);
            prop_assert_eq!(weak, weak_side::weak_by(nerve, &other));
            prop_assert_eq!(weak.is_none(), one.iter().all(|s| s.weak().0 != nerve));
        }
        prop_assert!(weak_side::face_pattern(&one, Forehead::default()).is_none());
    }

    /// Timed water: the line is met exactly, and nothing is worked out of nonsense.
    #[test]
    fn timed_water_meets_its_line(offered in 1_u8..=250, left in 0_u8..=250, ms in -5_i64..60_000) {
        let cup = Cup {
            offered: Millilitres::whole(offered),
            left: Millilitres::whole(left),
            time: Millis(ms),
            swallows: Some(3),
        };
        let judged = timed_water::judge(&cup);
        if left == offered {
            // Not touched: no rate, but told.
            prop_assert!(timed_water::figures(&cup).is_err());
            prop_assert_eq!(judged.unwrap()[0].level(), Level::Incomplete);
        } else if ms <= 0 || left > offered {
            prop_assert!(timed_water::figures(&cup).is_err());
            prop_assert!(judged.is_err());
        } else if let Ok(flags) = judged {
            check(&flags)?;
            let slow = flags.iter().any(|f| f.rule().id == "timed-water.slow");
            prop_assert_eq!(slow, i64::from(offered - left) * 100 < ms);
            prop_assert_eq!(flags.iter().any(|f| f.rule().id == "timed-water.left"), left > 0);
            for flag in flags.iter().filter(|f| f.rule().id == "timed-water.slow") {
                prop_assert!(!flag.reason().contains("drank 10.0"), "{}", flag.reason());
            }
        }
    }

    /// Cracker: reported, never judged, never without its words.
    #[test]
    fn cracker_is_only_reported(bites: u32, chews: u32, swallows: u32, ms in -5_i64..600_000) {
        let eaten = cracker::Cracker { bites, chews, swallows, time: Millis(ms) };
        match cracker::judge(&eaten) {
            Ok(flags) => {
                check(&flags)?;
                prop_assert!(flags.iter().all(|f| f.level() == Level::Note));
            }
            Err(error) => prop_assert_eq!(error == CrackerError::NoTime, ms <= 0),
        }
    }

    /// Flow, gag, tongue: notes only.
    #[test]
    fn notes_stay_notes(tenths in 0_i32..=100, looked in any_looked()) {
        let mut flags = flow::judge(LeftOfTen::tenths(tenths).unwrap());
        flags.extend(tongue_range::judge(looked));
        for gag in [Gag::Present, Gag::Weak, Gag::Absent, Gag::NotTested] {
            flags.push(gag::judge(gag));
        }
        check(&flags)?;
        prop_assert!(flags.iter().all(|f| f.level() == Level::Note));
    }

    /// A child's rate is a note at most, about breathing; an adult has no child's range.
    #[test]
    fn a_child_s_rate_is_a_note(rate in 0_u16..200, age in any_age(), awake: bool) {
        let state = if awake { State::Awake } else { State::Asleep };
        let rate = PerMinute::new(f64::from(rate)).unwrap();
        let flags = breathing_child::judge(rate, age, Some(state));
        check(&flags)?;
        prop_assert!(flags.len() <= 1);
        prop_assert!(flags.iter().all(|f| f.level() == Level::Note && !f.domain().decides()));
        if age.is_adult() {
            prop_assert!(flags.is_empty());
        }
    }

    /// Taps alone never clear an adult, whatever they are.
    #[test]
    fn taps_alone_never_clear(
        (one, other) in shuffled(prop::collection::vec(0_i64..60_000, 0..20)), age in any_age(),
        counted: bool,
    ) {
        let judge = |taps: Vec<i64>| {
            let taps = Series::new(taps.into_iter().map(Millis));
            breath_taps::judge(&taps, Some(age), counted, breath_taps::Setting::default())
        };
        let flags = judge(one);
        check(&flags)?;
        prop_assert_eq!(sorted(&flags), sorted(&judge(other)));
        prop_assert!(flags.iter().all(|f| f.level() != Level::Pass));
        if age.is_adult() && !counted {
            prop_assert!(flags.iter().any(|f| f.level() == Level::Incomplete));
        }
    }

    /// Mouth and cough: a narrower mouth or a weaker cough never does better, and the words show
    /// the side of the line that was taken.
    #[test]
    fn narrower_and_weaker_never_improve(
        a in 0_u32..1_500, b in 0_u32..1_500, flow_a in 0_u32..18_000, flow_b in 0_u32..18_000,
        age in any_age(),
    ) {
        let level = |flags: &[Flag]| flags.iter().map(Flag::level).max();
        let opening = |tenths: u32| {
            let width = Millimetres::new(f64::from(tenths) / 10.0).unwrap();
            mouth::opening(width, Some(age), FrontTeeth::UpperAndLower)
        };
        let (narrow, wide) = (opening(a.min(b)), opening(a.max(b)));
        prop_assert!(level(&narrow) >= level(&wide));
        let cough = |tenths: u32| {
            mouth::cough(LitresPerMinute::new(f64::from(tenths) / 10.0).unwrap(), Some(age))
        };
        let (weak, strong) = (cough(flow_a.min(flow_b)), cough(flow_a.max(flow_b)));
        prop_assert!(level(&weak) >= level(&strong));
        for flags in [narrow, wide, weak, strong] {
            check(&flags)?;
            prop_assert!(flags.iter().all(|f| !f.domain().decides()));
            if !age.is_adult() {
                prop_assert_eq!(level(&flags), Some(Level::Note));
            }
        }
    }
}
