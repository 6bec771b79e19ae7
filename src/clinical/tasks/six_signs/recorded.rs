//! What a visit recorded of the six signs, place by place.
//!
//! **Invariant:** only what is the sign itself counts as the sign. What is near it (a narrow pitch,
//! distorted syllables, a low cough flow) is shown and makes one ask; nothing is concluded from it.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::SeenSign;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::gate::HOLDS;
use crate::clinical::findings::looked::Looked;
use crate::clinical::findings::oral::Answer;
use crate::clinical::findings::oral::answer::Found;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::oral;
use crate::clinical::knowledge::oral::Item;
use crate::clinical::knowledge::sign::{Sign, SignTask};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::{syllables, water};

/// Where something was recorded, and what it was there.
#[derive(Clone, Debug, PartialEq)]
pub enum Whence {
    /// Asked on the page of the six signs.
    Here,
    /// The voice.
    Voice {
        /// In what.
        heard: Heard,
        /// The id of how it sounded.
        answer: String,
    },
    /// An item of the examination of the mouth.
    Mouth {
        /// The item.
        item: &'static Item,
        /// What was found; none where it was as expected.
        found: Option<Found>,
    },
    /// What a rule says about a measurement of the examination of the mouth.
    Measured(Box<Flag>),
    /// Before anything was given: cannot cough on request and was not heard to.
    CannotCough,
    /// Before anything was given: coughs on request, or was heard to cough.
    Coughs,
    /// Syllables that sounded distorted.
    Distorted(TaskId),
    /// A trial of water.
    Water {
        /// Which.
        task: TaskId,
        /// Whether the sign was seen in it.
        seen: bool,
    },
}

/// In what the voice was heard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heard {
    /// In the longest "ah".
    LongestAh,
    /// Before water was given.
    BeforeWater,
}

/// What was recorded of one sign.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Recorded {
    /// The sign, found or not, and where.
    pub places: Vec<(Looked, Whence)>,
    /// What is not the sign but speaks against calling it absent unasked.
    pub beside: Vec<Whence>,
}

impl Recorded {
    fn place(&mut self, there: bool, whence: Whence) {
        let looked = if there {
            Looked::Present
        } else {
            Looked::Absent
        };
        self.places.push((looked, whence));
    }

    /// Takes over what the examination found at an item. `same`: the exceptions that are the sign.
    fn examined(&mut self, exam: &Exam, id: &str, same: &[&str]) {
        let Some(item) = oral::find(id) else { return };
        let whence = |found| Whence::Mouth { item, found };
        let answer = exam.oral.answer(item);
        for found in answer.found() {
            if same.contains(&found.exception().id) {
                self.place(true, whence(Some(*found)));
            } else {
                self.beside.push(whence(Some(*found)));
            }
        }
        if answer == Answer::AsExpected && !same.is_empty() {
            self.place(false, whence(None));
        }
    }
}

/// The voice before water, in the longest "ah", and as the examination heard it.
pub fn voice(exam: &Exam) -> Recorded {
    let mut voice = Recorded::default();
    for trial in &exam.trials {
        let (id, heard) = match trial.task {
            TaskId::LongestAh => ("voice", Heard::LongestAh),
            _ => (water::VOICE_BEFORE, Heard::BeforeWater),
        };
        let asked = trial.task == TaskId::LongestAh || is_of_water(trial.task);
        if let Some(answer) = trial.choice(id).filter(|_| asked) {
            let answer = answer.to_owned();
            voice.place(answer != "clear", Whence::Voice { heard, answer });
        }
    }
    // Every exception there is one of quality or loudness (DAN06T).
    let same = ["wet", "breathy", "hoarse", "weak", "strained"];
    voice.examined(exam, "voice.ah", &same);
    // A glide that hardly moves tells of the range, not of the pitch of the voice.
    voice.examined(exam, "voice.pitch", &[]);
    voice
}

/// Slurred speech: as the examination heard it; distorted syllables are not yet that.
pub fn speech(exam: &Exam) -> Recorded {
    let mut speech = Recorded::default();
    speech.examined(exam, "speech", &["slurred"]);
    for trial in exam.trials.iter().filter(|t| syllables::distorted(t)) {
        speech.beside.push(Whence::Distorted(trial.task));
    }
    speech
}

/// The gag.
pub fn gag(exam: &Exam) -> Recorded {
    let mut gag = Recorded::default();
    gag.examined(exam, "gag", &["weak", "one-side", "absent"]);
    gag
}

/// The cough on request: at the gate, and as the examination heard it.
pub fn cough(exam: &Exam) -> Recorded {
    let mut cough = Recorded::default();
    let gate = exam.gate.0.get("cough").map(String::as_str);
    if gate == Some("no") {
        cough.place(true, Whence::CannotCough);
    }
    cough.examined(exam, "cough", &["weak", "voiced", "none"]);
    // Heard to cough is no cough on request: shown, and asked where nothing better was recorded.
    if gate == Some(HOLDS) && cough.places.is_empty() {
        cough.beside.push(Whence::Coughs);
    }
    // A flow on a meter is another measure than the cough one hears.
    if let Some(item) = oral::find("cough.flow") {
        let low = tasks::oral::flags::of_item(exam, item);
        cough
            .beside
            .extend(low.into_iter().map(Box::new).map(Whence::Measured));
    }
    cough
}

/// Whether water is given in it, and the voice heard before and after.
fn is_of_water(task: TaskId) -> bool {
    matches!(
        task.sign_column(),
        Some(SignTask::Water90 | SignTask::ThreeMl | SignTask::Sips | SignTask::TimedWater)
    )
}

/// Trials of water in which signs are watched for.
fn drinks(exam: &Exam) -> impl Iterator<Item = &Trial> {
    exam.trials
        .iter()
        .filter(|t| t.start().is_some() && is_of_water(t.task))
}

/// A sign after water. Not found only where the whole minute was watched.
pub fn after(exam: &Exam, sign: Sign) -> Recorded {
    let mut after = Recorded::default();
    for trial in drinks(exam) {
        let finding = Reading::of(trial);
        let in_time = |s: &SeenSign| s.sign == sign && !s.is_late();
        let mut there = finding.pressed.iter().any(in_time);
        let mut looked_for = finding.was_watched() && !exam.choked;
        if sign == Sign::VoiceChange {
            looked_for = finding.after.is_some();
            there |= finding
                .after
                .is_some_and(|after| after != water::Voice::Clear && finding.before != Some(after));
        }
        if there || looked_for {
            let (task, seen) = (trial.task, there);
            after.place(there, Whence::Water { task, seen });
        }
    }
    after
}
