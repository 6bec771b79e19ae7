//! Two or more of six signs, gathered from what the visit recorded already; only what nobody
//! recorded is asked.
//!
//! **Invariants:** it speaks only where the clinician counts it in: the rule was studied after
//! stroke, and a visit of somebody else must not turn incomplete by it. A sign that was recorded
//! anywhere is not wiped out by an answer here.

use crate::clinical::exam::Exam;
use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::gate::HOLDS;
use crate::clinical::judge::looked::Looked;
use crate::clinical::judge::six_signs::{self, Setting, SixSigns, Tested};
use crate::clinical::person::Age;
use crate::clinical::policy::Policy;
use crate::clinical::rules;
use crate::clinical::sign::{Sign, SignTask};
use crate::clinical::task::{Choice, Length, Pad, Question, Takes, TaskId, TaskSpec, When, choice};
use crate::clinical::tasks::{self, seen, water};
use crate::clinical::trial::Trial;
use crate::clinical::words::small;

/// Answer: the sign is there.
pub const FOUND: &str = "found";
/// Answer: looked for and not there.
pub const NOT_FOUND: &str = "not-found";
/// Question: whether the signs are counted in this visit.
pub const COUNTED: &str = "counted";
/// Where an answer to a question of this page comes from.
pub const HERE: &str = "asked here";
/// Answer to [`COUNTED`].
pub const YES: &str = "yes";

const fn question(id: &'static str, ask: &'static str, choices: &'static [Choice]) -> Question {
    Question {
        id,
        ask,
        when: When::Before,
        takes: Takes::OneOf(choices),
        only_if: None,
        needed: false,
    }
}

/// The data. It has a page of its own and no pad.
pub static SPEC: TaskSpec = TaskSpec {
    id: TaskId::SixSigns,
    title: "Signs after a stroke",
    steps: &[],
    say: "",
    by_mouth: false,
    pad: Pad {
        counts: ("", ""),
        start: "",
        length: Length::Open,
        first_counts: false,
        touch_ends: false,
        beat: None,
        late: None,
        end: None,
        watch: None,
        signs: None,
        countdown: false,
    },
    more: "",
    questions: &[
        question(
            "voice",
            "Voice changed in quality, pitch or loudness?",
            &[choice(NOT_FOUND, "No"), choice(FOUND, "Yes")],
        ),
        question(
            "speech",
            "Speech slurred?",
            &[choice(NOT_FOUND, "No"), choice(FOUND, "Yes")],
        ),
        question(
            "gag",
            "Gag, both sides",
            &[
                choice(NOT_FOUND, "Present"),
                choice(FOUND, "Weak or absent"),
            ],
        ),
        question(
            "cough",
            "Cough on request",
            &[
                choice(NOT_FOUND, "Strong"),
                choice(FOUND, "Weak, spoken or none"),
            ],
        ),
    ],
    trials: 1,
    usual: |_| Vec::new(),
    lines: None,
    compare: |_| Vec::new(),
    caveat: "Two or more are a reason to refer. Fewer clear nobody: this is never \"no sign seen\".",
    untimed: None,
    for_whom: "Adults after a stroke; others only where the clinician counts them in.",
    rules: &[
        &rules::SIX_SIGNS_TWO,
        &rules::SIX_SIGNS_INCOMPLETE,
        &rules::SIX_SIGNS_GAG,
        &rules::SIX_SIGNS_ADULTS,
    ],
    not_for: aside,
};

fn aside(age: Option<Age>, _: &Policy) -> Option<Flag> {
    age.is_some_and(|age| !age.is_adult()).then(|| {
        rules::SIX_SIGNS_ADULTS.flag(
            Level::Note,
            Domain::EatingDrinking,
            "The six signs were studied in adults and are not used for children.",
        )
    })
}

/// One of the six, with where it was looked at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// What it is.
    pub words: &'static str,
    /// What became of it.
    pub looked: Looked,
    /// Where that comes from, one entry a source.
    pub from: Vec<String>,
    /// The id of the question that can be asked about it.
    pub question: Option<&'static str>,
    /// Whether it counts under the policy.
    pub counts: bool,
}

/// What was found in one place, and where.
type Place = (Looked, String);

fn together(places: &[Place]) -> Looked {
    let has = |looked| places.iter().any(|(l, _)| *l == looked);
    if has(Looked::Present) {
        Looked::Present
    } else if has(Looked::Absent) {
        Looked::Absent
    } else {
        Looked::NotTested
    }
}

/// Where it comes from; the same found in the same place several times is said once.
fn once(places: Vec<Place>) -> Vec<String> {
    let mut from: Vec<String> = Vec::new();
    for (_, place) in places {
        if !from.contains(&place) {
            from.push(place);
        }
    }
    from
}

/// The voice before water, and in the longest "ah".
fn voice(exam: &Exam) -> Vec<Place> {
    let mut places = Vec::new();
    for trial in &exam.trials {
        let (id, place) = match trial.task {
            TaskId::LongestAh => ("voice", "in the longest \"ah\""),
            _ => (water::VOICE_BEFORE, "before the water"),
        };
        let asked = tasks::spec(trial.task)
            .questions
            .iter()
            .find(|q| q.id == id);
        let (Some(question), Some(answer)) = (asked, trial.choice(id)) else {
            continue;
        };
        let words = match question.takes {
            Takes::OneOf(choices) => choices.iter().find(|c| c.id == answer).map(|c| c.words),
            _ => None,
        };
        let looked = if answer == "clear" {
            Looked::Absent
        } else {
            Looked::Present
        };
        let words = words.map_or_else(|| answer.to_owned(), small);
        places.push((looked, format!("voice {place}: {words}")));
    }
    places
}

/// The cough on request, at the gate.
fn cough(exam: &Exam) -> Vec<Place> {
    match exam.gate.0.get("cough").map(String::as_str) {
        Some(HOLDS) => vec![(
            Looked::Absent,
            "before you start: coughs on request, or was heard to cough".to_owned(),
        )],
        Some("no") => vec![(
            Looked::Present,
            "before you start: cannot cough on request and was not heard to".to_owned(),
        )],
        _ => Vec::new(),
    }
}

/// Trials of water in which signs are watched for.
fn drinks(exam: &Exam) -> impl Iterator<Item = &Trial> {
    exam.trials.iter().filter(|t| {
        t.start().is_some()
            && matches!(
                tasks::spec(t.task).pad.signs,
                Some(SignTask::Water90 | SignTask::ThreeMl | SignTask::Sips | SignTask::TimedWater)
            )
    })
}

/// A sign after water. Not found only where the whole minute was watched.
fn after(exam: &Exam, sign: Sign) -> Vec<Place> {
    let mut places = Vec::new();
    for trial in drinks(exam) {
        let title = small(tasks::spec(trial.task).title);
        let mut there = seen::signs(trial)
            .iter()
            .any(|s| s.sign == sign && !s.is_late());
        let mut looked_for = seen::watched(trial) && !exam.choked;
        let mut questions = tasks::spec(trial.task).questions.iter();
        if sign == Sign::VoiceChange && questions.any(|q| q.id == water::VOICE_AFTER) {
            let finding = water::read(trial);
            looked_for = finding.after.is_some();
            there |= finding
                .after
                .is_some_and(|after| after != water::Voice::Clear && finding.before != Some(after));
        }
        match (there, looked_for) {
            (true, _) => places.push((Looked::Present, format!("in \"{title}\": seen"))),
            (false, true) => places.push((Looked::Absent, format!("in \"{title}\": not seen"))),
            (false, false) => {}
        }
    }
    places
}

/// The six, in their order, with where each comes from.
pub fn rows(exam: &Exam) -> [Row; 6] {
    let own = exam.latest(TaskId::SixSigns);
    let row = |words, recorded: Vec<Place>, question: Option<&'static str>, counts| {
        let mut places = recorded;
        if let Some(answer) = question.and_then(|id| own?.choice(id)) {
            let looked = match answer {
                FOUND => Looked::Present,
                NOT_FOUND => Looked::Absent,
                _ => Looked::NotTested,
            };
            places.push((looked, HERE.to_owned()));
        }
        Row {
            words,
            looked: together(&places),
            from: once(places),
            question,
            counts,
        }
    };
    [
        row("Changed voice", voice(exam), Some("voice"), true),
        row("Slurred speech", Vec::new(), Some("speech"), true),
        row(
            "Weak or missing gag",
            Vec::new(),
            Some("gag"),
            setting(exam).gag_counts,
        ),
        row("Weak cough on request", cough(exam), Some("cough"), true),
        row("Cough after water", after(exam, Sign::Cough), None, true),
        row(
            "Changed voice after water",
            after(exam, Sign::VoiceChange),
            None,
            true,
        ),
    ]
}

/// The policy in force for this rule.
pub fn setting(exam: &Exam) -> Setting {
    Setting {
        gag_counts: exam.policy.gag_counts,
    }
}

/// The signs as the rule takes them.
pub fn read(exam: &Exam) -> SixSigns {
    let [voice, speech, gag, cough, cough_after, voice_after] = rows(exam).map(|row| row.looked);
    SixSigns {
        voice,
        speech,
        gag,
        cough_on_request: cough,
        cough_after,
        voice_after,
    }
}

/// How many were found and tested.
pub fn tested(exam: &Exam) -> Tested {
    six_signs::tested(&read(exam), setting(exam))
}

/// Whether the clinician counts the signs in this visit: said so, or answered a question.
pub fn is_counted(exam: &Exam) -> bool {
    exam.latest(TaskId::SixSigns)
        .is_some_and(|t| match t.choice(COUNTED) {
            Some(answer) => answer == YES,
            None => !t.answers.is_empty(),
        })
}

/// What the rule says, whether it is counted or not.
pub fn judged(exam: &Exam) -> Vec<Flag> {
    six_signs::judge(&read(exam), exam.age, setting(exam))
}

/// What the rule says where the clinician counts it.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    if is_counted(exam) {
        judged(exam)
    } else {
        Vec::new()
    }
}
