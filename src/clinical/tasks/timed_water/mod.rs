//! A cup of water against the clock: from lip contact until the larynx rests.
//!
//! An index of efficiency, not a sign of aspiration. Its signs count as in every trial by mouth.

pub mod judge;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::With;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::SignTask;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::by_mouth::signs;
use crate::clinical::tasks::by_mouth::{saturation, watched};
use crate::clinical::tasks::spec::{
    Length, NOT_VALID, Pad, Question, Takes, TaskSpec, When, choice,
};
use crate::clinical::tasks::timed_water::judge as timed_water;
use crate::clinical::tasks::timed_water::judge::{Cup, figures};
use crate::clinical::tasks::water::{
    NOT_GIVEN_REASONS, SOME_LEFT, VOICE_AFTER, VOICE_BEFORE, VOICES, WATCH, millilitres,
};
use crate::measure::decimals::decimals;
use crate::measure::units::Millilitres;
use crate::wording::by_mouth as wording;

/// How much is offered.
pub const OFFERED: &str = "cup-size";
/// Another volume, in mL.
pub const OTHER: &str = "cup-other";
/// Whether the cup was emptied.
pub const CUP: &str = "cup-left";
/// Answer to [`CUP`]: nothing left.
pub const EMPTY: &str = "empty";
/// What was left, in mL.
pub const LEFT: &str = "cup-left-ml";
/// Swallows counted otherwise than by taps.
pub const SWALLOWS: &str = "cup-swallows";

const fn question(id: &'static str, ask: &'static str, when: When, takes: Takes) -> Question {
    Question {
        id,
        ask,
        when,
        takes,
        only_if: None,
        needed: true,
    }
}

const fn number(unit: &'static str, least: i32, most: i32, step: i32) -> Takes {
    Takes::Number {
        unit,
        least,
        most,
        step,
    }
}

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    id: TaskId::TimedWater,
    title: "Timed cup of water",
    steps: &[
        "Only after small sips were clear. Upright, water in a cup, fingers on the larynx.",
        "Touch the pad at lip contact, then at each swallow.",
        "\"Larynx at rest\" after the last swallow: a breath, a word or the mouth opening tells.",
        "At a cough, choke, drool, wet voice or distress: stop, take the cup away, press the sign.",
    ],
    say: "Drink this water as quickly as is comfortable.",
    by_mouth: true,
    pad: Pad {
        counts: ("swallow", "swallows"),
        start: "Lip contact",
        length: Length::Open,
        first_counts: false,
        touch_ends: false,
        beat: None,
        late: None,
        end: Some("Larynx at rest"),
        watch: Some(WATCH),
        signs: Some(SignTask::TimedWater),
        countdown: false,
    },
    more: "",
    questions: &[
        question(
            OFFERED,
            "How much is in the cup?",
            When::Before,
            Takes::OneOf(&[
                choice("100", "100 mL"),
                choice("150", "150 mL"),
                choice("other", "Another amount"),
            ]),
        ),
        Question {
            only_if: Some((OFFERED, "other")),
            ..question(OTHER, "Amount", When::Before, number("mL", 20, 500, 10))
        },
        question(
            VOICE_BEFORE,
            "Voice before",
            When::Before,
            Takes::OneOf(VOICES),
        ),
        question(
            CUP,
            "The cup",
            When::After,
            Takes::OneOf(&[choice(EMPTY, "Empty"), choice(SOME_LEFT, "Some left")]),
        ),
        Question {
            only_if: Some((CUP, SOME_LEFT)),
            ..question(LEFT, "Left in it", When::After, number("mL", 1, 500, 5))
        },
        question(
            SWALLOWS,
            "How many swallows were there?",
            When::After,
            number("swallows", 1, 99, 1),
        ),
        question(
            VOICE_AFTER,
            "Voice after: say \"ah\" again",
            When::AfterWatch,
            Takes::OneOf(VOICES),
        ),
        watched::question(When::AfterWatch),
        saturation::lowest(When::AfterWatch),
        Question {
            needed: false,
            ..question(
                NOT_VALID,
                "Not given?",
                When::Before,
                Takes::OneOf(NOT_GIVEN_REASONS),
            )
        },
    ],
    trials: 1,
    usual: |_| vec![(OFFERED, "150")],
    lines: Some(lines),
    compare: |_| Vec::new(),
    caveat: "Speed is efficiency: in stroke no link between speed and aspiration was seen \
             (published: OSA13). It is lower in women and falls with age; different volumes are not \
             compared (published: NAT92, DOD20). No value predicted from age, sex and height is \
             shown: the equation was not seen.",
    untimed: None,
    for_whom: "Adults in whom small sips were clear: the line of 10 mL a second is from adults.",
    rules: &[
        &rules::TIMED_WATER_SLOW,
        &rules::TIMED_WATER_LEFT,
        &rules::TIMED_WATER_VOLUME,
        &rules::TIMED_WATER_AFTER_SIPS,
        &rules::TIMED_CUP_UNFINISHED,
    ],
    not_for: |_, _| None,
};

/// The volume offered.
fn offered(trial: &Trial) -> Option<Millilitres> {
    let ml = match trial.choice(OFFERED)? {
        "100" => 100.0,
        "150" => 150.0,
        _ => trial.number(OTHER)?,
    };
    Millilitres::new(ml).ok()
}

/// The cup, once it is known how much was offered, how long it took and what was left.
pub fn cup(trial: &Trial) -> Option<Cup> {
    let (start, end) = trial.start().zip(trial.end_pressed())?;
    let left = match trial.choice(CUP)? {
        EMPTY => Millilitres::ZERO,
        _ => Millilitres::new(trial.number(LEFT)?).ok()?,
    };
    let swallows = match trial.taps() {
        0 => trial.number(SWALLOWS).map(|n| n as u32),
        n => u32::try_from(n).ok(),
    };
    Some(Cup {
        offered: offered(trial)?,
        left,
        time: trial.between(start, end).length?,
        swallows,
    })
}

/// The figures, for the clinician.
fn lines(trial: &Trial) -> Vec<String> {
    let Some(cup) = cup(trial) else {
        return Vec::new();
    };
    let figures = match figures(&cup) {
        Ok(figures) => figures,
        Err(why) => return vec![why.to_string()],
    };
    let mut lines = vec![format!(
        "{} mL in {}: {} mL a second",
        millilitres(figures.drunk.get()),
        cup.time,
        decimals(figures.capacity.get(), 1)
    )];
    lines.push(match (figures.each, cup.swallows) {
        (Some((ml, seconds)), Some(n)) => format!(
            "{n} swallows: {} mL and {} seconds for each",
            decimals(ml.get(), 1),
            decimals(seconds.get(), 1)
        ),
        _ => figures.ask().unwrap_or_default().to_owned(),
    });
    lines
}

/// Answers taken as given: the voice as it was heard last, unless that is too long ago.
pub fn taken_over(exam: &Exam) -> Vec<(&'static str, Answer)> {
    let heard = by_mouth::given(TaskId::Sips, exam)
        .filter_map(|t| Some((t.answers.get(VOICE_AFTER)?, t.said_at.get(VOICE_AFTER)?)))
        .next_back()
        .filter(|(_, at)| !at.is_older(exam.now, exam.policy.moment_stands()))
        .map(|(voice, _)| voice);
    heard
        .map(|voice| (VOICE_BEFORE, voice.clone()))
        .into_iter()
        .collect()
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let eating = Domain::EatingDrinking;
    let unfinished =
        |words: String| rules::TIMED_CUP_UNFINISHED.flag(Level::Incomplete, eating, words);
    let mut flags = Vec::new();
    let mut before = None;
    let mut trials = by_mouth::given(TaskId::TimedWater, exam).peekable();
    if trials.peek().is_none() {
        let why = by_mouth::refused(TaskId::TimedWater, exam);
        let why = why.map_or(String::new(), |why| format!(": {why}"));
        return vec![unfinished(format!("timed cup of water not given{why}"))];
    }
    while let Some(trial) = trials.next() {
        let signs = signs::judge(&With::TimedCup, &by_mouth::seen(trial));
        let sign = signs.iter().any(|f| f.level() >= Level::Refer);
        flags.extend(signs);
        let cup = cup(trial);
        // Only what was seen of an earlier cup stands beside a later one.
        if trials.peek().is_none() {
            match cup.map(|cup| timed_water::judge(&cup)) {
                Some(Ok(judged)) => flags.extend(judged),
                Some(Err(why)) => flags.push(unfinished(format!("timed cup of water: {why}"))),
                None if trial.end().is_some() && !sign => flags.push(unfinished(
                    "timed cup of water: its amounts are not recorded".to_owned(),
                )),
                None => {}
            }
            if let Some(missing) = by_mouth::unfinished(trial, exam).filter(|_| !sign) {
                flags.push(unfinished(format!(
                    "timed cup of water: {}",
                    wording::missing(&missing)
                )));
            }
            flags.extend(cup.zip(before).and_then(|(now, then): (Cup, Cup)| {
                timed_water::other_volume(now.offered, then.offered)
            }));
        }
        before = cup.or(before);
    }
    if let Some(why) = by_mouth::refused(TaskId::TimedWater, exam) {
        flags.push(unfinished(format!(
            "another timed cup of water not given: {why}"
        )));
    }
    flags.extend(by_mouth::doubt(
        TaskId::TimedWater,
        exam,
        &rules::TIMED_CUP_UNFINISHED,
    ));
    flags
}

/// What was drunk of each, in a few words for the handover: no rate, which means nothing on a ward.
pub fn summary(exam: &Exam) -> Option<String> {
    let adult = exam.age.is_none_or(|age| age.is_adult());
    let cups = by_mouth::given(TaskId::TimedWater, exam).map(|trial| {
        let cup = cup(trial).and_then(|cup| Some((figures(&cup).ok()?, cup)));
        let Some((figures, cup)) = cup else {
            return "amount drunk not recorded".to_owned();
        };
        let slowly = if figures.slow && adult {
            ", slowly (by itself no sign of aspiration)"
        } else {
            ""
        };
        format!(
            "{} of {} mL drunk{slowly}",
            millilitres(figures.drunk.get()),
            millilitres(cup.offered.get())
        )
    });
    let cups: Vec<String> = cups.collect();
    (!cups.is_empty()).then(|| format!("timed cup of water: {}", cups.join(", then ")))
}
