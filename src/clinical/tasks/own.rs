//! The clinician's own trials: any food or drink, amount, way, posture and strategy.
//!
//! What is given is said once; a repeat of the same takes two presses, its settings are taken
//! over. The next trial may begin while the watch of the one before still runs; a sign is then
//! that of the newest, and that the other may be meant is said.

use super::by_mouth::{self, Offer};
use super::lag;
use super::own_shared;
use super::sips::sign_words;
use super::water::{NOT_GIVEN_REASONS, WATCH, Watch};
use super::{saturation, watched};
use crate::clinical::exam::Exam;
use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::judge::signs::{self, SeenSign};
use crate::clinical::levels::{drink, food};
use crate::clinical::rules;
use crate::clinical::sign::SignTask;
use crate::clinical::task::{
    Choice, Length, NOT_VALID, Pad, Question, REMARK, Takes, TaskId, TaskSpec, When, choice,
};
use crate::clinical::trial::{Answer, Trial};
use crate::clinical::words::small;
use crate::measure::decimals::short;

/// What is given: a level of the framework.
pub const LEVEL: &str = "own-level";
/// What is given, in free words.
pub const WHAT: &str = "own-what";
/// How much.
pub const AMOUNT: &str = "own-amount";
/// How much, in millilitres.
pub const MILLILITRES: &str = "own-ml";
/// Spoon, cup, straw.
pub const BY: &str = "own-by";
/// Posture.
pub const POSTURE: &str = "own-posture";
/// Strategy.
pub const STRATEGY: &str = "own-strategy";
/// Another strategy, in free words.
pub const STRATEGY_WORDS: &str = "own-strategy-words";
/// What is said of trials without one.
const NO_SIGN: &str = "no sign";

/// In words, where the watch was cut.
const NOT_WATCHED: &str = "not watched for 60 seconds";

/// What is taken over from the trial before.
const SETTINGS: [&str; 8] = [
    LEVEL,
    WHAT,
    AMOUNT,
    MILLILITRES,
    BY,
    POSTURE,
    STRATEGY,
    STRATEGY_WORDS,
];

/// Two answers that say one thing: where one is given anew, the other is not taken over.
const PAIRS: [[&str; 2]; 3] = [
    [LEVEL, WHAT],
    [AMOUNT, MILLILITRES],
    [STRATEGY, STRATEGY_WORDS],
];

/// The answer that another takes the place of: an amount is one of those offered or typed.
pub fn instead(question: &str) -> Option<&'static str> {
    match question {
        AMOUNT => Some(MILLILITRES),
        MILLILITRES => Some(AMOUNT),
        _ => None,
    }
}

const fn level(id: &'static str, name: Option<&'static str>) -> Choice {
    Choice {
        id,
        words: match name {
            Some(name) => name,
            None => "",
        },
    }
}

const fn before(id: &'static str, ask: &'static str, takes: Takes) -> Question {
    Question {
        id,
        ask,
        when: When::Before,
        takes,
        only_if: None,
        needed: true,
    }
}

static LEVELS: &[Choice] = &[
    level("d0", drink(0)),
    level("d1", drink(1)),
    level("d2", drink(2)),
    level("d3", drink(3)),
    level("d4", drink(4)),
    level("f3", food(3)),
    level("f4", food(4)),
    level("f5", food(5)),
    level("f6", food(6)),
    level("f7", food(7)),
];

static AMOUNTS: &[Choice] = &[
    choice("teaspoon", "Teaspoon"),
    choice("mouthful", "Sip or bite"),
    choice("5", "5 mL"),
    choice("10", "10 mL"),
    choice("20", "20 mL"),
    choice("free", "As wanted"),
];

static WAYS: &[Choice] = &[
    choice("spoon", "Spoon"),
    choice("cup", "Cup"),
    choice("straw", "Straw"),
    choice("self", "Self-fed"),
    choice("syringe", "Syringe"),
];

static POSTURES: &[Choice] = &[
    choice("upright", "Upright"),
    choice("reclined", "Reclined"),
    choice("chin-down", "Chin down"),
    choice("turned-left", "Head turned left"),
    choice("turned-right", "Head turned right"),
    choice("side", "Lying on the side"),
];

static STRATEGIES: &[Choice] = &[
    choice("none", "No strategy"),
    choice("slow", "Small, one at a time"),
    choice("twice", "Two swallows each"),
    choice("effort", "Effortful swallow"),
    choice("breath", "Breath held first"),
    choice("wash", "Drink after food"),
];

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    id: TaskId::Own,
    title: "Own trials",
    steps: &[
        "Say once what is given and how. It is taken over for the trials that follow.",
        "Touch the pad when it is given, touch it again at the last swallow: two presses a trial.",
        "A sign is pressed at any time; it is that of the newest trial, until you say that it was the one before.",
        "Each trial is watched for 60 seconds. The next may begin before.",
    ],
    say: "",
    by_mouth: true,
    pad: Pad {
        counts: ("", ""),
        start: "Given",
        length: Length::Open,
        first_counts: false,
        touch_ends: true,
        beat: None,
        late: None,
        end: Some("Last swallow"),
        watch: Some(WATCH),
        signs: Some(SignTask::Own),
        countdown: false,
    },
    more: "",
    questions: &[
        before(
            LEVEL,
            "What is given? Drinks 0 to 4, food 3 to 7",
            Takes::OneOf(LEVELS),
        ),
        before(WHAT, "In your own words, or what exactly", Takes::Words(30)),
        before(AMOUNT, "How much?", Takes::OneOf(AMOUNTS)),
        before(
            MILLILITRES,
            "or so many millilitres",
            Takes::Number {
                unit: "mL",
                least: 1,
                most: 250,
                step: 5,
            },
        ),
        before(BY, "By", Takes::OneOf(WAYS)),
        before(POSTURE, "Posture", Takes::OneOf(POSTURES)),
        before(STRATEGY, "Strategy", Takes::OneOf(STRATEGIES)),
        before(STRATEGY_WORDS, "or another strategy", Takes::Words(30)),
        watched::question(When::After),
        saturation::lowest(When::After),
        Question {
            when: When::After,
            needed: false,
            ..before(REMARK, "Remark on this trial. No names.", Takes::Words(80))
        },
        Question {
            needed: false,
            ..before(NOT_VALID, "Not given?", Takes::OneOf(NOT_GIVEN_REASONS))
        },
    ],
    trials: 2,
    usual: |_| Vec::new(),
    lines: Some(|trial| vec![line(trial)]),
    compare: |_| Vec::new(),
    caveat: "Levels by the framework's own names, as you picked them. What was swallowed without a \
             sign says nothing about another consistency. Silent aspiration is not seen.",
    untimed: None,
    for_whom: "Anybody to whom the clinician decides to give it: no published rule covers what is chosen.",
    rules: &[
        &rules::OWN_CLEAR,
        &rules::OWN_UNFINISHED,
        &rules::OWN_OVERLAP,
    ],
    not_for: |_, _| None,
};

/// Whether it was said what is given.
fn said(trial: &Trial) -> bool {
    [LEVEL, WHAT].iter().any(|q| trial.answers.contains_key(q))
}

/// What the pad offers.
pub fn offer(exam: &Exam) -> Option<Offer> {
    let newest = exam.latest(TaskId::Own);
    match newest.filter(|t| t.start().is_some()) {
        Some(trial) if trial.end().is_none() => None,
        Some(_) => Some(Offer::now("The same again: given")),
        None if newest.is_some_and(said) || !taken_over(exam).is_empty() => {
            Some(Offer::now("Given"))
        }
        None => Some(Offer::waits("First: what is given")),
    }
}

/// The settings of the trial before.
pub fn taken_over(exam: &Exam) -> Vec<(&'static str, Answer)> {
    let Some(before) = exam.latest_started(TaskId::Own) else {
        return Vec::new();
    };
    let anew = exam.latest(TaskId::Own).filter(|t| t.start().is_none());
    let kept = |q: &&str| {
        !PAIRS
            .iter()
            .filter(|pair| pair.contains(q))
            .flatten()
            .any(|other| other != q && anew.is_some_and(|t| t.answers.contains_key(other)))
    };
    SETTINGS
        .into_iter()
        .filter(kept)
        .filter_map(|q| Some((q, before.answers.get(q)?.clone())))
        .collect()
}

/// "0 Thin, 5 mL, spoon, upright".
pub(super) fn settings(trial: &Trial) -> String {
    words_of(trial, true)
}

/// The same for a reason that must fit a line: free words only where no choice stands for them.
pub(super) fn brief(trial: &Trial) -> String {
    words_of(trial, false)
}

fn words_of(trial: &Trial, whole: bool) -> String {
    let chosen = |q: &str, from: &'static [Choice], first: bool| {
        let id = trial.choice(q)?;
        let words = from.iter().find(|c| c.id == id).map(|c| c.words)?;
        Some(if first {
            words.to_owned()
        } else {
            small(words)
        })
    };
    let free = |q: &str| match trial.answers.get(q) {
        Some(Answer::Words(words)) => Some(words.clone()),
        _ => None,
    };
    let strategy = chosen(STRATEGY, STRATEGIES, false).filter(|s| s != "no strategy");
    let no_level = trial.choice(LEVEL).is_none();
    let no_strategy = strategy.is_none();
    let parts: Vec<String> = [
        chosen(LEVEL, LEVELS, true),
        free(WHAT).filter(|_| whole || no_level),
        trial
            .number(MILLILITRES)
            .map(|ml| format!("{} mL", short(ml)))
            .or_else(|| chosen(AMOUNT, AMOUNTS, false)),
        chosen(BY, WAYS, false),
        chosen(POSTURE, POSTURES, false),
        strategy,
        free(STRATEGY_WORDS).filter(|_| whole || no_strategy),
    ]
    .into_iter()
    .flatten()
    .collect();
    if said(trial) {
        parts.join(", ")
    } else {
        ["not said what".to_owned()]
            .into_iter()
            .chain(parts)
            .collect::<Vec<_>>()
            .join(", ")
    }
}

/// A trial in words.
fn line(trial: &Trial) -> String {
    let mut words = vec![settings(trial)];
    let signs = sign_words(trial);
    words.push(if !signs.is_empty() {
        signs.join(", ")
    } else if let Watch::Cut(_) = by_mouth::watch(trial) {
        NOT_WATCHED.to_owned()
    } else {
        NO_SIGN.to_owned()
    });
    if let Some(Answer::Words(remark)) = trial.answers.get(REMARK) {
        words.push(remark.clone());
    }
    words.join(": ")
}

/// A row of the table: trials with the same settings.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Row {
    /// What was given and how.
    pub what: String,
    /// How often.
    pub given: usize,
    /// The signs, each with the number of trials it was seen in.
    pub signs: String,
}

/// The table of trials, in the order in which each was first given.
pub fn table(exam: &Exam) -> Vec<Row> {
    rows(exam)
        .into_iter()
        .map(|(what, trials)| Row {
            what,
            given: trials.len(),
            signs: sign_counts(&trials),
        })
        .collect()
}

fn rows(exam: &Exam) -> Vec<(String, Vec<&Trial>)> {
    let mut rows: Vec<(String, Vec<&Trial>)> = Vec::new();
    for trial in by_mouth::given(TaskId::Own, exam) {
        let what = settings(trial);
        match rows.iter_mut().find(|(w, _)| *w == what) {
            Some((_, trials)) => trials.push(trial),
            None => rows.push((what, vec![trial])),
        }
    }
    rows
}

/// "coughed in 1, cleared the throat in 2", or "no sign".
fn sign_counts(trials: &[&Trial]) -> String {
    let mut counts: Vec<String> = Vec::new();
    for sign in crate::clinical::sign::Sign::ALL {
        let n = trials
            .iter()
            .filter(|t| by_mouth::seen(t).iter().any(|s| s.sign == sign))
            .count();
        if n > 0 {
            counts.push(format!("{} in {n}", sign.past()));
        }
    }
    let cut = |t: &&&Trial| matches!(by_mouth::watch(t), Watch::Cut(_));
    match trials.iter().filter(cut).count() {
        0 if counts.is_empty() => NO_SIGN.to_owned(),
        0 => counts.join(", "),
        n => {
            counts.push(format!("{NOT_WATCHED} in {n}"));
            counts.join(", ")
        }
    }
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let eating = Domain::EatingDrinking;
    let rows = rows(exam);
    if rows.is_empty() {
        return vec![rules::OWN_UNFINISHED.flag(
            Level::Incomplete,
            eating,
            "own trials: none given",
        )];
    }
    let mut flags = Vec::new();
    for (_, trials) in &rows {
        let what = trials.first().map_or(String::new(), |t| brief(t));
        let seen: Vec<SeenSign> = trials.iter().flat_map(|t| by_mouth::seen(t)).collect();
        for flag in signs::judge(SignTask::Own, &seen) {
            let words = format!("{what} (given {}): {}", times(trials.len()), flag.reason());
            flags.push(flag.rule().flag(flag.level(), eating, words));
        }
    }
    flags.extend(own_shared::flags(exam));
    flags.extend(lag::late_flags(TaskId::Own, exam, &rules::OWN_UNFINISHED));
    flags.extend(by_mouth::doubt(TaskId::Own, exam, &rules::OWN_UNFINISHED));
    let open = by_mouth::given(TaskId::Own, exam)
        .filter(|t| {
            let sign = by_mouth::seen(t).iter().any(|s| s.ends(SignTask::Own));
            !sign && by_mouth::unfinished(t, exam).is_some()
        })
        .count();
    let unsaid = by_mouth::given(TaskId::Own, exam).any(|t| !said(t));
    let all: usize = rows.iter().map(|(_, trials)| trials.len()).sum();
    let mut missing =
        |words: String| flags.push(rules::OWN_UNFINISHED.flag(Level::Incomplete, eating, words));
    if open > 0 {
        missing(format!(
            "own trials: {open} of {all} not watched for 60 seconds"
        ));
    }
    if unsaid {
        missing("own trials: not recorded what was given".to_owned());
    }
    if flags.iter().all(|f| f.level() == Level::Note) {
        let words = format!("own trials: {all} given and watched, no sign within 60 seconds");
        flags.push(rules::OWN_CLEAR.flag(Level::Pass, eating, words));
    }
    flags
}

fn times(n: usize) -> String {
    match n {
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        n => format!("{n} times"),
    }
}

/// What is given now, or what came of the newest, in words beside the pad.
pub fn lately(exam: &Exam) -> Option<String> {
    let newest = exam.latest_started(TaskId::Own)?;
    let what = settings(newest);
    let row = table(exam).into_iter().find(|row| row.what == what)?;
    Some(format!("{what}: given {}, {}", times(row.given), row.signs))
}

/// The rows of the table in words for the handover, those with a sign first.
pub fn told(exam: &Exam) -> Vec<String> {
    let rows = table(exam);
    let (signs, clear): (Vec<Row>, Vec<Row>) =
        rows.into_iter().partition(|row| row.signs != NO_SIGN);
    signs
        .into_iter()
        .chain(clear)
        .map(|row| format!("{}: given {}, {}", row.what, times(row.given), row.signs))
        .collect()
}
