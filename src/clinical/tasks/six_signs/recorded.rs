//! What a visit recorded of the six signs, place by place.
//!
//! **Invariant:** only what is the sign itself counts as the sign. What is near it (a narrow pitch,
//! distorted syllables, a low cough flow) is shown and makes one ask; nothing is concluded from it.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::gate::HOLDS;
use crate::clinical::findings::looked::Looked;
use crate::clinical::findings::oral::Answer;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::oral;
use crate::clinical::knowledge::sign::{Sign, SignTask};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::by_mouth::seen;
use crate::clinical::tasks::spec::Takes;
use crate::clinical::tasks::{syllables, water};
use crate::wording::words::small;

/// Where an answer of the examination comes from.
pub const MOUTH: &str = "from the examination of the mouth";

/// What was recorded of one sign.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Recorded {
    /// The sign, found or not, and where.
    pub places: Vec<(Looked, String)>,
    /// What is not the sign but speaks against calling it absent unasked.
    pub beside: Vec<String>,
}

impl Recorded {
    fn place(&mut self, there: bool, whence: String) {
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
        let whence = |words: &str| {
            format!(
                "{MOUTH}, {}: {words}",
                small(crate::wording::oral_items::name(item))
            )
        };
        let answer = exam.oral.answer(item);
        for found in answer.found() {
            let words = whence(&crate::wording::found::words(found));
            if same.contains(&found.exception().id) {
                self.place(true, words);
            } else {
                self.beside.push(words);
            }
        }
        if answer == Answer::AsExpected && !same.is_empty() {
            self.place(false, whence("as expected"));
        }
    }
}

/// The voice before water, in the longest "ah", and as the examination heard it.
pub fn voice(exam: &Exam) -> Recorded {
    let mut voice = Recorded::default();
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
        let words = words.map_or_else(|| answer.to_owned(), small);
        voice.place(answer != "clear", format!("voice {place}: {words}"));
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
        let title = small(tasks::spec(trial.task).title);
        speech.beside.push(format!("{title}: sounded distorted"));
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
        cough.place(
            true,
            "before you start: cannot cough on request and was not heard to".to_owned(),
        );
    }
    cough.examined(exam, "cough", &["weak", "voiced", "none"]);
    // Heard to cough is no cough on request: shown, and asked where nothing better was recorded.
    if gate == Some(HOLDS) && cough.places.is_empty() {
        let heard = "before you start: coughs on request, or was heard to cough";
        cough.beside.push(heard.to_owned());
    }
    // A flow on a meter is another measure than the cough one hears.
    if let Some(item) = oral::find("cough.flow") {
        let flags = crate::clinical::tasks::oral::flags::of_item(exam, item);
        let low = flags.iter().map(|f| format!("{MOUTH}, {}", f.reason()));
        cough.beside.extend(low);
    }
    cough
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
pub fn after(exam: &Exam, sign: Sign) -> Recorded {
    let mut after = Recorded::default();
    for trial in drinks(exam) {
        let title = small(tasks::spec(trial.task).title);
        let mut there = seen::signs(trial)
            .iter()
            .any(|s| s.sign == sign && !s.is_late());
        let mut looked_for = seen::watched(trial) && !exam.choked;
        let mut questions = tasks::spec(trial.task).questions.iter();
        if sign == Sign::VoiceChange && questions.any(|q| q.id == water::VOICE_AFTER) {
            let finding = Reading::of(trial);
            looked_for = finding.after.is_some();
            there |= finding
                .after
                .is_some_and(|after| after != water::Voice::Clear && finding.before != Some(after));
        }
        match (there, looked_for) {
            (true, _) => after.place(true, format!("in \"{title}\": seen")),
            (false, true) => after.place(false, format!("in \"{title}\": not seen")),
            (false, false) => {}
        }
    }
    after
}
