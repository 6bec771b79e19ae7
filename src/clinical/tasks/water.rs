//! 3-oz (90 mL) water swallow test: 90 mL in one go, then 60 seconds of watching.

use super::lag::since_end;
use super::{by_mouth, saturation, watched};
use crate::clinical::exam::Exam;
use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::policy::Policy;
use crate::clinical::rules;
use crate::clinical::sign::{Sign, SignTask, meaning_under};
use crate::clinical::task::{
    Choice, Length, NOT_VALID, Pad, Question, Takes, TaskId, TaskSpec, WATCH_CUT, When, watch_cut,
};
use crate::clinical::tasks;
use crate::clinical::trial::{MarkKind, Trial};
use crate::clinical::words::small;
use crate::measure::decimals::decimals;
use crate::measure::time::{Doubt, Elapsed, Millis};

/// The volume offered, in mL.
pub const OFFERED: i32 = 90;
/// The watch after the last swallow. A sign at 60.0 s counts.
pub const WATCH: Millis = Millis::from_secs(60);
/// Nobody drinks a cup in less: two presses closer than this are a slip (common practice).
pub const LEAST: Millis = Millis::from_secs(1);

/// Question: voice before.
pub const VOICE_BEFORE: &str = "voice-before";
/// Question: voice after.
pub const VOICE_AFTER: &str = "voice-after";
/// Question: how it was drunk.
pub const CUP: &str = "cup";
/// Question: what was left, in mL.
pub const REMAINING: &str = "left";
/// Answer to [`CUP`]: all of it, without a pause.
pub const IN_ONE_GO: &str = "one-go";
/// Answer to [`CUP`]: all of it, with a pause.
pub const PAUSED: &str = "paused";
/// Answer to [`CUP`]: some left.
pub const SOME_LEFT: &str = "some-left";

/// What a voice may sound like.
pub static VOICES: &[Choice] = &[
    Choice {
        id: "clear",
        words: "Clear",
    },
    Choice {
        id: "wet",
        words: "Wet",
    },
    Choice {
        id: "hoarse",
        words: "Hoarse",
    },
    Choice {
        id: "other",
        words: "Other, or no voice",
    },
];

/// The reasons for which the test was not given.
pub static NOT_GIVEN_REASONS: &[Choice] = &[
    Choice {
        id: "refused",
        words: "Did not want to",
    },
    Choice {
        id: "not-now",
        words: "Not suitable now",
    },
];

/// The reasons for ending the watch early.
pub static WATCH_CUT_REASONS: &[Choice] = &[
    Choice {
        id: "sign",
        words: "A sign decided already",
    },
    Choice {
        id: "called-away",
        words: "Called away",
    },
    Choice {
        id: "wish",
        words: "Person's wish",
    },
];

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    id: TaskId::Water90,
    title: "90 mL of water without a pause",
    steps: &[
        "Upright, 90 mL of plain water in a cup; straw allowed; you may hold the cup.",
        "Voice first: a few seconds of \"ah\" and a short sentence.",
        "Press at first lip contact, then at the last swallow. Swallow taps are welcome, not needed.",
        "At a cough, choke, drool, wet voice or distress: stop, take the cup away, press the sign.",
        "Watch for 60 seconds, then hear the voice again.",
    ],
    say: "Drink all of this water, steadily, without stopping.",
    by_mouth: true,
    pad: Pad {
        counts: ("swallow", "swallows"),
        start: "First lip contact",
        length: Length::Open,
        first_counts: false,
        touch_ends: false,
        beat: None,
        late: None,
        end: Some("Last swallow"),
        watch: Some(WATCH),
        signs: Some(SignTask::Water90),
        countdown: false,
    },
    more: "",
    questions: &[
        Question {
            id: VOICE_BEFORE,
            ask: "Voice before",
            when: When::Before,
            takes: Takes::OneOf(VOICES),
            only_if: None,
            needed: true,
        },
        Question {
            id: CUP,
            ask: "The cup",
            when: When::After,
            takes: Takes::OneOf(&[
                Choice {
                    id: IN_ONE_GO,
                    words: "Empty, in one go",
                },
                Choice {
                    id: PAUSED,
                    words: "Empty, with a pause",
                },
                Choice {
                    id: SOME_LEFT,
                    words: "Some left",
                },
            ]),
            only_if: None,
            needed: true,
        },
        Question {
            id: REMAINING,
            ask: "Left in the cup",
            when: When::After,
            takes: Takes::Number {
                unit: "mL",
                least: 1,
                most: OFFERED,
                step: 5,
            },
            only_if: Some((CUP, SOME_LEFT)),
            needed: false,
        },
        Question {
            id: VOICE_AFTER,
            ask: "Voice after: say \"ah\" again",
            when: When::AfterWatch,
            takes: Takes::OneOf(VOICES),
            only_if: None,
            needed: true,
        },
        watched::question(When::AfterWatch),
        saturation::lowest(When::AfterWatch),
        Question {
            id: NOT_VALID,
            ask: "Not given?",
            when: When::Before,
            takes: Takes::OneOf(NOT_GIVEN_REASONS),
            only_if: None,
            needed: false,
        },
    ],
    trials: 1,
    usual: |_| Vec::new(),
    lines: None,
    caveat: "How well it finds aspiration depends on who is tested: sensitivity 96.5 % in 3,000 \
             mixed referrals (published: SL08), 55.2 % in ALS (published: ALS23). Silent \
             aspiration is not seen.",
    compare: |_| Vec::new(),
    for_whom: "People from 2 years on, or from the age of the local policy, who are awake, upright and may have thin drinks.",
    rules: &[
        &rules::WATER_CLEAR,
        &rules::WATER_UNFINISHED,
        &rules::WATER_LEFT,
        &rules::WATER_FROM_TWO,
    ],
    untimed: None,
    not_for: |age, policy| match age {
        Some(age) if age.under_years(policy.water_from_years) => Some(rules::WATER_FROM_TWO.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            format!(
                "The 90 mL water test is not given under {} years.",
                policy.water_from_years
            ),
        )),
        _ => None,
    },
};

/// What was heard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Voice {
    /// Clear.
    Clear,
    /// Wet.
    Wet,
    /// Hoarse.
    Hoarse,
    /// Something else, or none.
    Other,
}

impl Voice {
    fn of(id: &str) -> Voice {
        match id {
            "clear" => Voice::Clear,
            "wet" => Voice::Wet,
            "hoarse" => Voice::Hoarse,
            _ => Voice::Other,
        }
    }

    /// Wet or hoarse: the two the rule names.
    pub fn is_sign(self) -> bool {
        matches!(self, Voice::Wet | Voice::Hoarse)
    }

    /// The word for it.
    pub fn words(self) -> &'static str {
        match self {
            Voice::Clear => "clear",
            Voice::Wet => "wet",
            Voice::Hoarse => "hoarse",
            Voice::Other => "changed or absent",
        }
    }
}

/// How the cup ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cup {
    /// Empty, without a pause.
    InOneGo,
    /// Empty, with a pause.
    Paused,
    /// Some left; mL, if measured.
    Left(Option<f64>),
}

/// How the watch went.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Watch {
    /// Not begun: the last swallow was not pressed.
    NotBegun,
    /// Still running, or the page never saw its end.
    Running,
    /// The whole 60 seconds.
    Whole,
    /// Ended early, for this reason.
    Cut(String),
}

/// When a sign was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seen {
    /// While drinking, or before it.
    Drinking,
    /// So long after the last swallow, within the watch.
    After(Millis),
    /// So long after the last swallow, later than the watch.
    Later(Millis),
    /// After the last swallow, but the clocks can't say when.
    Sometime,
}

/// What the trial yields.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Whether anything was given.
    pub given: bool,
    /// From lip contact to last swallow.
    pub drinking: Option<Elapsed>,
    /// Swallows tapped.
    pub swallows: usize,
    /// The cup.
    pub cup: Option<Cup>,
    /// Signs, in order.
    pub signs: Vec<(Sign, Seen)>,
    /// Voice before.
    pub before: Option<Voice>,
    /// Voice after.
    pub after: Option<Voice>,
    /// The watch.
    pub watch: Watch,
    /// What speaks against the watch's time.
    pub watch_doubt: Option<Doubt>,
    /// What is missing where the app was off when it ran out.
    pub unwatched: Option<&'static str>,
    /// Why it was not given: the words.
    pub not_given: Option<&'static str>,
}

/// Reads a trial.
pub fn read(trial: &Trial) -> Finding {
    let start = trial.start();
    let end = trial.end();
    let watched = trial.first(MarkKind::WatchOver);
    let signs = trial
        .signs()
        .map(|(sign, at)| {
            let seen = match end.map(|end| since_end(trial, end, at)) {
                None => Seen::Drinking,
                Some(Elapsed { length: None, .. }) => Seen::Sometime,
                Some(Elapsed {
                    length: Some(after),
                    ..
                }) if after < Millis::ZERO => Seen::Drinking,
                Some(Elapsed {
                    length: Some(after),
                    ..
                }) if after <= WATCH => Seen::After(after),
                Some(Elapsed {
                    length: Some(after),
                    doubt,
                }) => match doubt {
                    // By a clock that may have been set meanwhile: it can't be put off as late.
                    Some(Doubt::Restarted | Doubt::Slept(_) | Doubt::Unknown) => Seen::Sometime,
                    _ => Seen::Later(after),
                },
            };
            (sign, seen)
        })
        .collect();
    Finding {
        given: start.is_some(),
        drinking: start.zip(end).map(|(start, end)| trial.between(start, end)),
        swallows: trial.taps(),
        cup: trial.choice(CUP).map(|id| match id {
            IN_ONE_GO => Cup::InOneGo,
            PAUSED => Cup::Paused,
            _ => Cup::Left(trial.number(REMAINING)),
        }),
        signs,
        before: trial.choice(VOICE_BEFORE).map(Voice::of),
        after: trial.choice(VOICE_AFTER).map(Voice::of),
        watch: match (end, watched) {
            (None, _) => Watch::NotBegun,
            (Some(end), Some(over)) => match trial.between(end, over).length {
                Some(watched) if watched >= WATCH => Watch::Whole,
                Some(_) => Watch::Running,
                None => Watch::Cut("how long it was is not known".to_owned()),
            },
            (Some(_), None) if watch_cut(trial) => Watch::Cut(
                trial
                    .choice(WATCH_CUT)
                    .and_then(|id| WATCH_CUT_REASONS.iter().find(|c| c.id == id))
                    .map_or_else(|| "no reason known".to_owned(), |c| small(c.words)),
            ),
            (Some(_), None) => Watch::Running,
        },
        watch_doubt: end
            .zip(watched)
            .and_then(|(end, over)| trial.doubt_over(end, WATCH, over)),
        unwatched: None,
        not_given: trial.choice(NOT_VALID).map(|id| {
            NOT_GIVEN_REASONS
                .iter()
                .find(|c| c.id == id)
                .map_or("reason not known to this version", |c| c.words)
        }),
    }
}

/// When a sign was seen, in words for a sentence.
pub fn seen_words(seen: Seen) -> String {
    match seen {
        Seen::Drinking => "while drinking".to_owned(),
        Seen::After(after) => format!("{} seconds after the last swallow", after.0 / 1000),
        Seen::Later(after) => format!("{} seconds after the last swallow", (after.0 + 999) / 1000),
        Seen::Sometime => "after the last swallow".to_owned(),
    }
}

/// The rule of this task.
pub fn judge(finding: &Finding, policy: &Policy) -> Vec<Flag> {
    let eating = Domain::EatingDrinking;
    let mut flags = Vec::new();
    for (sign, seen, times) in grouped(&finding.signs) {
        let times = if times > 1 {
            format!(" {times} times")
        } else {
            String::new()
        };
        let words = format!("{}{times} {}", sign.past(), seen_words(seen));
        let (level, rule) = meaning_under(sign, SignTask::Water90, policy);
        if let Seen::Later(_) = seen
            && level != Level::Stop
        {
            flags.push(rules::WATER_AFTER_WATCH.flag(
                Level::Note,
                eating,
                format!("{words}: later than the 60 seconds the rule counts"),
            ));
        } else {
            flags.push(rule.flag(level, eating, words));
        }
    }
    if !finding.given {
        if flags.iter().all(|f| f.level() < Level::Refer) {
            let why = match finding.not_given {
                Some(why) => format!("90 mL of water not given: {}", small(why)),
                None => "90 mL of water not given".to_owned(),
            };
            flags.push(rules::WATER_UNFINISHED.flag(Level::Incomplete, eating, why));
        }
        return flags;
    }
    match finding.cup {
        Some(Cup::Paused) => flags.push(rules::WATER_INTERRUPTED.flag(
            Level::Refer,
            eating,
            "did not drink the 90 mL in one go",
        )),
        Some(Cup::Left(left)) => flags.push(rules::WATER_LEFT.flag(
            Level::Refer,
            eating,
            match left {
                Some(ml) => format!("{} of 90 mL left in the cup", millilitres(ml)),
                None => "did not finish the 90 mL".to_owned(),
            },
        )),
        Some(Cup::InOneGo) | None => {}
    }
    voice(finding, policy, &mut flags);
    let mut missing =
        |words: &str| flags.push(rules::WATER_UNFINISHED.flag(Level::Incomplete, eating, words));
    match &finding.watch {
        Watch::NotBegun => missing("the last swallow was not marked"),
        Watch::Running => missing("the watch of 60 seconds is not over"),
        Watch::Cut(why) => missing(&format!("the watch of 60 seconds was ended early: {why}")),
        Watch::Whole => {}
    }
    if let Some(Elapsed {
        length: Some(length),
        ..
    }) = finding.drinking
        && length < LEAST
    {
        missing("first lip contact and last swallow were marked within one second");
    }
    if finding.cup.is_none() {
        missing("not recorded whether the cup was emptied");
    }
    if finding.after.is_none() {
        missing("voice after the water not recorded");
    }
    if finding.before.is_none() {
        missing("voice before the water not recorded");
    }
    if let Some(words) = finding.unwatched {
        missing(words);
    }
    if let Some(doubt) = finding.watch_doubt {
        flags.push(rules::WATER_UNFINISHED.flag(
            Level::Note,
            eating,
            format!("Watch of 60 seconds: {doubt}"),
        ));
    }
    if flags.iter().all(|f| f.level() == Level::Note) {
        flags.push(rules::WATER_CLEAR.flag(
            Level::Pass,
            eating,
            "90 mL of water drunk in one go, no sign for 60 seconds after it",
        ));
    }
    flags
}

/// The same sign seen while drinking counts up; later ones stand with their times.
fn grouped(signs: &[(Sign, Seen)]) -> Vec<(Sign, Seen, usize)> {
    let mut groups: Vec<(Sign, Seen, usize)> = Vec::new();
    for (sign, seen) in signs {
        match groups.iter_mut().find(|(s, at, _)| s == sign && at == seen) {
            Some((_, _, times)) => *times += 1,
            None => groups.push((*sign, *seen, 1)),
        }
    }
    groups
}

/// The voice before and after.
fn voice(finding: &Finding, policy: &Policy, flags: &mut Vec<Flag>) {
    let Some(after) = finding.after else {
        return;
    };
    let eating = Domain::EatingDrinking;
    let changed = finding.before != Some(after);
    if changed && (after.is_sign() || after == Voice::Other) {
        let level = if policy.voice_refers {
            Level::Refer
        } else {
            Level::Note
        };
        flags.push(rules::WATER_VOICE.flag(
            level,
            eating,
            match finding.before {
                Some(before) => format!(
                    "voice {} after the water, {} before",
                    after.words(),
                    before.words()
                ),
                None => format!(
                    "voice {} after the water, not recorded before",
                    after.words()
                ),
            },
        ));
    } else if let Some(before) = finding.before.filter(|v| v.is_sign()) {
        flags.push(rules::WATER_BASELINE_VOICE.flag(
            Level::Note,
            Domain::SpeechVoice,
            format!("voice {} already before the water", before.words()),
        ));
    }
}

/// Millilitres without a needless decimal.
pub fn millilitres(ml: f64) -> String {
    if ml.fract() == 0.0 {
        decimals(ml, 0)
    } else {
        decimals(ml, 1)
    }
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let mut flags: Vec<Flag> = (SPEC.not_for)(exam.age, &exam.policy).into_iter().collect();
    // What was given before the age was put right is judged all the same.
    if !flags.is_empty() && exam.latest_started(TaskId::Water90).is_none() {
        return flags;
    }
    flags.extend(tasks::of_all(exam, TaskId::Water90, |trial| {
        let finding = Finding {
            unwatched: watched::missing(trial),
            ..read(trial)
        };
        let mut flags = judge(&finding, &exam.policy);
        flags.extend(by_mouth::wet_before(trial));
        flags
    }));
    if flags.is_empty() {
        flags.push(rules::WATER_UNFINISHED.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            "90 mL of water not given",
        ));
    }
    flags
}
