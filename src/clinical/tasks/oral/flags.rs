//! What the rules say about the examination: notes, and a narrow opening or a weak cough flow
//! under "Also found". The headline is never touched but by an emergency.

use crate::clinical::decision::gate_flags;
use crate::clinical::decision::hold;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::gate;
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::oral::Gag;
use crate::clinical::findings::oral::answer::Answer;
use crate::clinical::findings::oral::findings::{gag, tongue_short, weakness as weakness_words};
use crate::clinical::knowledge::oral::item::Item;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::oral::points;

/// The gate's item on new or worse weakness, which the examination asks first.
pub const WEAKNESS: &str = "new-weakness";

/// Everything. `gate`: the screen has a gate, which says its part itself.
pub fn flags(exam: &Exam, gate: bool) -> Vec<Flag> {
    let mut flags = Vec::new();
    if !gate {
        flags.extend(weakness(exam));
    }
    // Without a gate nothing is given, and no verdict says that nothing was seen.
    if gate && to_be_said(exam).is_some() {
        flags.push(rules::GATE_NEW_WEAKNESS.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            "weakness was found: not said whether it is new or worse",
        ));
    }
    flags.extend(points::flags(&exam.oral));
    flags.extend(crate::clinical::tasks::oral::tongue_range::judge(
        tongue_short(&exam.oral),
    ));
    let gag = gag(&exam.oral);
    if gag != Gag::NotTested {
        flags.push(crate::clinical::tasks::oral::gag::judge(gag));
    }
    for item in crate::clinical::knowledge::oral::items() {
        flags.extend(of_item(exam, item));
    }
    flags
}

/// What a single item's rule says.
pub fn of_item(exam: &Exam, item: &'static Item) -> Vec<Flag> {
    let answer = exam.oral.answer(item);
    let has = |id: &str| answer.found().iter().any(|f| f.exception().id == id);
    match &answer {
        Answer::Opening(mm, teeth) => {
            crate::clinical::tasks::oral::mouth::opening(*mm, exam.age, *teeth)
        }
        Answer::Flow(flow) => crate::clinical::tasks::oral::mouth::cough(*flow, exam.age),
        Answer::Found(_) if item.id == "voice.ah" && has("wet") => {
            vec![rules::ORAL_WET_VOICE.flag(
                Level::Note,
                Domain::SpeechVoice,
                "wet voice: a reason to look further, not proof",
            )]
        }
        Answer::Found(_) if item.id == "larynx" && has("not-felt") => {
            vec![rules::ORAL_LARYNX.flag(
                Level::Note,
                Domain::Mouth,
                "no swallow felt under four fingers: tells nothing about how far the larynx moves",
            )]
        }
        _ => Vec::new(),
    }
}

/// The answer on new or worse weakness, for screens without a gate.
fn weakness(exam: &Exam) -> Vec<Flag> {
    let Some(item) = gate::find(WEAKNESS) else {
        return Vec::new();
    };
    let mut flags: Vec<Flag> = exam
        .gate
        .exceptions(&exam.policy)
        .filter(|(i, _, _)| i.id == item.id)
        .map(|(item, exception, state)| gate_flags::of(exam, item, exception, state))
        .collect();
    if exam.oral.is_begun() && !exam.gate.answered(item) {
        flags.push(rules::ORAL_WEAKNESS_NOT_ASKED.flag(
            Level::Note,
            Domain::Urgent,
            "not asked whether weakness, droop or speech is new or worse",
        ));
    }
    flags
}

/// Weakness that was found after nothing new or worse was known, and of which nobody said since
/// whether it is: in words.
pub fn unsaid(exam: &Exam) -> Option<String> {
    let answer = exam.gate.0.get(WEAKNESS);
    let open = answer.is_none_or(|a| a == gate::HOLDS);
    let weak = weakness_words(&exam.oral).filter(|_| open)?;
    (exam.weakness_said.as_ref() != Some(&weak)).then_some(weak)
}

/// The same for the decision: where somebody went on before something was given because the team
/// knows, that was the answer.
pub fn to_be_said(exam: &Exam) -> Option<String> {
    let weak = unsaid(exam)?;
    let said = exam.went_on(&hold::could_be_new(&weak), GoOn::WithReason);
    said.is_none_or(|on| on.because != hold::TEAM_KNOWS)
        .then_some(weak)
}

/// Whether a weakness is new or worse and the team did not know.
pub fn emergency(exam: &Exam) -> bool {
    exam.gate
        .exceptions(&exam.policy)
        .any(|(_, _, state)| state == gate::State::Emergency)
}
