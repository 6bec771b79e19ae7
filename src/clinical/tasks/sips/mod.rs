//! Small sips of water, small before large, each watched for 60 seconds; the 3 mL from a syringe
//! under the tongue, with two more dry swallows asked.
//!
//! One trial a sip. What comes next is worked out from the plan and the sips given, so that a
//! page that was killed finds back to it. The next sip is made ready while the watch runs and is
//! given when it is over: within one minute after a sip a sign is that sip's (DAN06T).

pub mod judge;
pub mod three_ml;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::SipsFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::findings::next_trial::{NextTrial, Sip as NextSip, ToGive, WaitsFor};
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::policy::Wording;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::by_mouth::lag;
use crate::clinical::tasks::by_mouth::questions::{
    NOT_GIVEN_REASONS, VOICE_AFTER, VOICE_BEFORE, VOICES,
};
use crate::clinical::tasks::by_mouth::reading::{Reading, Watch};
use crate::clinical::tasks::by_mouth::within::WATCH;
use crate::clinical::tasks::by_mouth::{saturation, watched};
use crate::clinical::tasks::sips::judge as sips;
use crate::clinical::tasks::sips::judge::{Next, Plan, Sip};
use crate::clinical::tasks::sips::three_ml::Run;
use crate::clinical::tasks::spec::{NOT_VALID, Pad, Question, Takes, TaskSpec, When};
use crate::measure::units::Millilitres;

/// The size of a sip in mL, recorded when it is given.
pub const SIZE: &str = "sip";
/// How it was given.
pub const WAY: &str = "sip-way";
/// Answer to [`WAY`]: from a syringe, under the tongue.
pub const UNDER_TONGUE: &str = "under-tongue";
/// Dry swallows after it.
pub const EXTRA: &str = "extra-swallows";
/// Residue in the mouth.
pub const RESIDUE: &str = "residue";

/// The size of the published test under the tongue (TOH03).
const THREE: Millilitres = Millilitres::whole(3);

const fn ask(id: &'static str, when: When, from: &'static [&'static str]) -> Question {
    Question {
        id,
        when,
        takes: Takes::OneOf(from),
        only_if: None,
        needed: true,
    }
}

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    pad: Pad {
        touch_ends: true,
        watch: Some(WATCH),
        ..Pad::PLAIN
    },
    questions: &[
        ask(VOICE_BEFORE, When::Before, VOICES),
        ask(VOICE_AFTER, When::After, VOICES),
        Question {
            only_if: Some((WAY, UNDER_TONGUE)),
            ..ask(EXTRA, When::After, &["2", "1", "0"])
        },
        Question {
            only_if: Some((WAY, UNDER_TONGUE)),
            ..ask(RESIDUE, When::After, &["no", "yes"])
        },
        watched::question(When::After),
        saturation::lowest(When::After),
        Question {
            needed: false,
            ..ask(NOT_VALID, When::Before, NOT_GIVEN_REASONS)
        },
    ],
    trials: 2,
    rules: &[
        &rules::SIPS_SIGN,
        &rules::SIPS_ORDER,
        &rules::SIPS_CLEAR,
        &rules::SIPS_UNFINISHED,
    ],
    slug: "sips",
    flags: |_, exam| flags(exam),
    over: |exam| Some(over(exam)),
    next: next_trial,
    taken_over,
    fits,
    studied_in_adults: true,
    ..TaskSpec::plain(TaskId::Sips)
};

/// What is to be given.
pub fn plan(policy: &Policy) -> Plan {
    let ml = |n: i32| Millilitres::whole(u8::try_from(n).unwrap_or(u8::MAX));
    Plan {
        sizes: vec![
            ml(policy.sip_first),
            ml(policy.sip_second),
            ml(policy.sip_third),
        ],
        repeats: u8::try_from(policy.sip_repeats).unwrap_or(1),
    }
}

/// The wording of the 3 mL test.
pub fn wording(policy: &Policy) -> Wording {
    policy.small_water_wording
}

/// Whether the small sips come before the 90 mL in this visit.
pub fn stepped(exam: &Exam) -> bool {
    exam.on_screen(TaskId::Sips) || by_mouth::given(TaskId::Sips, exam).next().is_some()
}

/// A sip's size. One that was not recorded is taken for the first planned, so that its signs are
/// not lost.
fn size(trial: &Trial, plan: &Plan) -> Millilitres {
    trial
        .number(SIZE)
        .and_then(|ml| Millilitres::new(ml).ok())
        .or_else(|| plan.sizes.iter().min().copied())
        .unwrap_or(Millilitres::ZERO)
}

/// The sips given. `hoping`: one whose watch or questions are still open is taken as watched.
fn sips(exam: &Exam, hoping: bool) -> Vec<Sip> {
    let plan = plan(&exam.policy);
    by_mouth::given(TaskId::Sips, exam)
        .map(|trial| {
            let reading = Reading::of(trial);
            let whole = by_mouth::answered(&SPEC, trial, exam) && reading.unwatched.is_none();
            Sip {
                size: size(trial, &plan),
                signs: reading.signs(),
                watched: match reading.watch {
                    Watch::Cut(_) => false,
                    Watch::Whole => hoping || whole,
                    Watch::NotBegun | Watch::Running => hoping,
                },
            }
        })
        .collect()
}

/// What comes next, once what runs is over.
pub fn next(exam: &Exam) -> Next {
    // Where the wording in use counts residue, it ends the test as a sign does.
    let residue = wording(&exam.policy) == Wording::B
        && by_mouth::given(TaskId::Sips, exam).any(|t| t.choice(RESIDUE) == Some("yes"));
    if residue {
        return Next::Ended;
    }
    sips::next(&plan(&exam.policy), &sips(exam, true))
}

/// Whether no further sip is due: a sign ended it, or the plan is through.
pub fn over(exam: &Exam) -> bool {
    !matches!(next(exam), Next::Give(_))
}

/// The sip to come.
fn to_come(size: Millilitres, exam: &Exam) -> NextSip {
    let so_far = sips(exam, true);
    let so_far = so_far.iter().filter(|sip| sip.size == size && sip.watched);
    NextSip {
        size,
        nth: so_far.count() + 1,
        of: plan(&exam.policy).repeats,
    }
}

/// What the pad offers; none while a sip runs, and where the plan is through.
fn next_trial(exam: &Exam) -> Option<NextTrial> {
    let newest = exam.latest(TaskId::Sips);
    let begun = newest.filter(|t| t.start().is_some());
    if begun.is_some_and(|t| t.end().is_none()) {
        return None;
    }
    let size = match next(exam) {
        Next::Give(size) => size,
        Next::Ended => return Some(NextTrial::Waits(WaitsFor::SignSeen)),
        Next::Done => return None,
    };
    let to_come = to_come(size, exam);
    let heard = newest.is_some_and(|t| t.choice(VOICE_BEFORE).is_some())
        || taken_over(exam).iter().any(|(id, _)| *id == VOICE_BEFORE);
    let running =
        by_mouth::given(TaskId::Sips, exam).any(|t| Reading::of(t).watch == Watch::Running);
    Some(match begun {
        _ if running => NextTrial::Waits(WaitsFor::Watch(to_come)),
        Some(trial) if !by_mouth::answered(&SPEC, trial, exam) => {
            NextTrial::Waits(WaitsFor::Answers)
        }
        None if !heard => NextTrial::Waits(WaitsFor::VoiceBefore),
        _ => NextTrial::Now(ToGive::Sip(to_come)),
    })
}

/// Answers taken as given for the sip to come: its size, how it is given, the voice before.
pub fn taken_over(exam: &Exam) -> Vec<(&'static str, Answer)> {
    let mut taken = Vec::new();
    if let Next::Give(size) = next(exam) {
        taken.push((SIZE, Answer::Tenths(i32::from(size.tenths()))));
        if size == THREE {
            taken.push((WAY, Answer::Choice(UNDER_TONGUE.to_owned())));
        }
    }
    taken.extend(by_mouth::voice_of_sips(exam));
    taken
}

/// A 3 mL sip as the published test looks at it.
pub fn run(trial: &Trial) -> Run {
    let reading = Reading::of(trial);
    let signs = reading.signs();
    let has = |wanted: &[Sign]| {
        let seen = signs
            .iter()
            .any(|s| wanted.contains(&s.sign) && !s.is_late());
        match (seen, &reading.watch) {
            (true, _) => Looked::Present,
            (false, Watch::Whole) => Looked::Absent,
            (false, _) => Looked::NotTested,
        }
    };
    Run {
        swallowed: match (has(&[Sign::NoSwallow]), trial.end_pressed()) {
            (Looked::Present, _) => Looked::Absent,
            (_, Some(_)) => Looked::Present,
            (_, None) => Looked::NotTested,
        },
        cough: has(&[Sign::Cough]),
        wet_voice: has(&[Sign::VoiceChange]),
        breathing_change: has(&[Sign::BreathingChange, Sign::Choke]),
        residue: match trial.choice(RESIDUE) {
            Some("yes") => Looked::Present,
            Some(_) => Looked::Absent,
            None => Looked::NotTested,
        },
        extra: match trial.choice(EXTRA) {
            Some("2") => Some(2),
            Some("1") => Some(1),
            Some(_) => Some(0),
            None => None,
        },
    }
}

fn fits(question: &str, exam: &Exam) -> bool {
    match question {
        RESIDUE => wording(&exam.policy) == Wording::B,
        _ => by_mouth::fits(TaskId::Sips, question, exam),
    }
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let unfinished =
        |fact| rules::SIPS_UNFINISHED.flag(Level::Incomplete, Domain::EatingDrinking, fact);
    let refused = by_mouth::refused(TaskId::Sips, exam);
    if by_mouth::given(TaskId::Sips, exam).next().is_none() {
        return vec![unfinished(SipsFact::NotGiven(refused))];
    }
    let mut flags = sips::judge(&plan(&exam.policy), &sips(exam, false));
    let runs: Vec<Run> = by_mouth::given(TaskId::Sips, exam)
        .filter(|t| t.choice(WAY) == Some(UNDER_TONGUE))
        .map(run)
        .collect();
    let three = three_ml::judge(&runs, wording(&exam.policy));
    let next = refused.filter(|_| !over(exam)).map(SipsFact::NextNotGiven);
    if !three.is_empty() || next.is_some() {
        // Whatever the cup shows that was given all the same.
        flags.retain(|f| f.level() != Level::Pass);
    }
    flags.extend(three);
    if by_mouth::given(TaskId::Sips, exam).any(|t| Reading::of(t).is_voiceless()) {
        flags.retain(|flag| flag.level() != Level::Pass);
        flags.push(unfinished(SipsFact::NoVoiceBefore));
    }
    flags.extend(next.map(unfinished));
    flags.extend(lag::late_flags(TaskId::Sips, exam, &rules::SIPS_UNFINISHED));
    flags.extend(by_mouth::doubt(TaskId::Sips, exam, &rules::SIPS_UNFINISHED));
    flags
}

/// Whether the sips were clear: present, absent, or not given at all.
pub fn clear(exam: &Exam) -> Looked {
    if by_mouth::given(TaskId::Sips, exam).next().is_none() {
        Looked::NotTested
    } else if flags(exam).iter().any(|f| f.level() == Level::Pass) {
        Looked::Present
    } else {
        Looked::Absent
    }
}

/// What holds up the 90 mL, if something does.
pub fn before_90(exam: &Exam) -> Option<Flag> {
    if clear(exam) == Looked::Present {
        return None;
    }
    sips::before_90(&plan(&exam.policy), &sips(exam, false)).or_else(|| {
        Some(rules::SIPS_ORDER.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            SipsFact::CupWaitsForSwallows,
        ))
    })
}

/// What was given: how many of each size; and whether all were watched, and nothing seen in them.
#[derive(Clone, Debug, PartialEq)]
pub struct Summary {
    /// The sizes in the order in which each was first given, with how many.
    pub given: Vec<(Millilitres, usize)>,
    /// The whole plan, each watched and clear.
    pub clear: bool,
    /// Something was seen in them, be it what decides nothing.
    pub seen: bool,
}

/// What came of the sips; none where none was given.
pub fn summary(exam: &Exam) -> Option<Summary> {
    let plan = plan(&exam.policy);
    let sips = sips(exam, false);
    let mut sizes: Vec<Millilitres> = sips.iter().map(|sip| sip.size).collect();
    sizes.dedup();
    let of = |size| sips.iter().filter(|sip| sip.size == size).count();
    let given: Vec<(Millilitres, usize)> = sizes.into_iter().map(|s| (s, of(s))).collect();
    // One that was given again because its watch was cut was not watched all the same.
    let watched = sips.iter().all(|sip| sip.watched);
    // What decides nothing was seen all the same.
    let seen = exam.choked
        || sips.iter().any(|sip| !sip.signs.is_empty())
        || by_mouth::given(TaskId::Sips, exam)
            .any(|t| !t.taken_back.is_empty() || saturation::fell(t, exam));
    let clear = watched && sips::all_clear(&plan, &sips) && clear(exam) == Looked::Present;
    (!given.is_empty()).then_some(Summary { given, clear, seen })
}
