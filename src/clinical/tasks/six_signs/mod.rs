//! Two or more of six signs, gathered from what the visit recorded already; only what nobody
//! recorded is asked.
//!
//! **Invariants:** it speaks only where the clinician counts it in: the rule was studied after
//! stroke, and a visit of somebody else must not turn incomplete by it. A sign that was recorded
//! anywhere is not wiped out by an answer here.

pub mod judge;
pub mod recorded;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{OfSix, SixSignsFact, Tested};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::six_signs::judge as six_signs;
use crate::clinical::tasks::six_signs::judge::{Setting, SixSigns};
use crate::clinical::tasks::six_signs::recorded::{Recorded, Whence};
use crate::clinical::tasks::spec::{Pad, Question, Shows, Takes, TaskSpec, When};

/// Answer: the sign is there.
pub const FOUND: &str = "found";
/// Answer: looked for and not there.
pub const NOT_FOUND: &str = "not-found";
/// Question: whether the signs are counted in this visit.
pub const COUNTED: &str = "counted";
/// Answer to [`COUNTED`].
pub const YES: &str = "yes";

const fn question(id: &'static str) -> Question {
    Question {
        id,
        when: When::Before,
        takes: Takes::OneOf(&[NOT_FOUND, FOUND]),
        only_if: None,
        needed: false,
    }
}

/// The data. It has a page of its own and no pad.
pub static SPEC: TaskSpec = TaskSpec {
    pad: Pad { ..Pad::PLAIN },
    questions: &[
        question("voice"),
        question("speech"),
        question("gag"),
        question("cough"),
    ],
    rules: &[
        &rules::SIX_SIGNS_TWO,
        &rules::SIX_SIGNS_INCOMPLETE,
        &rules::SIX_SIGNS_GAG,
        &rules::SIX_SIGNS_ADULTS,
    ],
    not_for: |_, exam| aside(exam),
    slug: "signs",
    shows: Shows::Found,
    added: Some(is_counted),
    flags: |_, exam| flags(exam),
    alone: false,
    ..TaskSpec::plain(TaskId::SixSigns)
};

fn aside(exam: &Exam) -> Option<Flag> {
    exam.age.is_some_and(|age| !age.is_adult()).then(|| {
        rules::SIX_SIGNS_ADULTS.flag(
            Level::Note,
            Domain::EatingDrinking,
            SixSignsFact::NotForChildren,
        )
    })
}

/// One of the six, with where it was looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Which.
    pub sign: OfSix,
    /// What became of it.
    pub looked: Looked,
    /// Where that comes from, each once.
    pub from: Vec<Whence>,
    /// What was recorded that is near it and not it, each once.
    pub beside: Vec<Whence>,
    /// The id of the question that can be asked about it.
    pub question: Option<&'static str>,
    /// Whether it counts under the policy.
    pub counts: bool,
}

fn together(places: &[(Looked, Whence)]) -> Looked {
    let has = |looked| places.iter().any(|(l, _)| *l == looked);
    if has(Looked::Present) {
        Looked::Present
    } else if has(Looked::Absent) {
        Looked::Absent
    } else {
        Looked::NotTested
    }
}

/// Each of them once, however often it was recorded.
fn once(all: impl IntoIterator<Item = Whence>) -> Vec<Whence> {
    let mut once: Vec<Whence> = Vec::new();
    for one in all {
        if !once.contains(&one) {
            once.push(one);
        }
    }
    once
}

/// The newest answers given on this page; one that was opened and holds none takes nothing from
/// those before it.
fn own(exam: &Exam) -> Option<&Trial> {
    let answers = |t: &&Trial| {
        let is_own = |id: &str| id == COUNTED || SPEC.questions.iter().any(|q| q.id == id);
        t.task == TaskId::SixSigns && t.answers.iter().any(|(id, _)| is_own(id))
    };
    exam.trials.iter().rev().find(answers)
}

/// The six, in their order, with where each comes from.
pub fn rows(exam: &Exam) -> [Row; 6] {
    let own = own(exam);
    let row = |sign, recorded: Recorded, question: Option<&'static str>, counts| {
        let Recorded { mut places, beside } = recorded;
        let answer = question
            .and_then(|id| own?.choice(id))
            .map(|answer| match answer {
                FOUND => Looked::Present,
                NOT_FOUND => Looked::Absent,
                _ => Looked::NotTested,
            });
        places.extend(answer.map(|looked| (looked, Whence::Here)));
        // What is near the sign leaves it open until somebody says what it is.
        let open = together(&places) == Looked::Absent && !beside.is_empty() && answer.is_none();
        Row {
            sign,
            looked: if open {
                Looked::NotTested
            } else {
                together(&places)
            },
            from: once(places.into_iter().map(|(_, whence)| whence)),
            beside: once(beside),
            question,
            counts,
        }
    };
    let (voice, speech) = (recorded::voice(exam), recorded::speech(exam));
    let (gag, cough) = (recorded::gag(exam), recorded::cough(exam));
    let gag_counts = setting(exam).gag_counts;
    let after = |sign| recorded::after(exam, sign);
    [
        row(OfSix::Voice, voice, Some("voice"), true),
        row(OfSix::Speech, speech, Some("speech"), true),
        row(OfSix::Gag, gag, Some("gag"), gag_counts),
        row(OfSix::CoughOnRequest, cough, Some("cough"), true),
        row(OfSix::CoughAfter, after(Sign::Cough), None, true),
        row(OfSix::VoiceAfter, after(Sign::VoiceChange), None, true),
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
    own(exam).is_some_and(|t| t.choice(COUNTED).is_none_or(|answer| answer == YES))
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
