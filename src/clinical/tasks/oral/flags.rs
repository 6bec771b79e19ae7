//! What the rules say about the examination: notes, and a narrow opening or a weak cough flow
//! under "Also found".

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::OralFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::gate;
use crate::clinical::findings::oral::findings;
use crate::clinical::findings::oral::{Answer, Found, Gag};
use crate::clinical::knowledge::oral;
use crate::clinical::knowledge::oral::item::Item;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::oral::{gag, mouth, points, tongue_range};

/// The gate's item on new or worse weakness, which the examination asks first.
pub const WEAKNESS: &str = "new-weakness";

/// Everything but what is asked of new weakness, which the gate says.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let mut flags = points::flags(&exam.oral);
    flags.extend(tongue_range::judge(findings::tongue_short(&exam.oral)));
    let gag = findings::gag(&exam.oral);
    if gag != Gag::NotTested {
        flags.push(gag::judge(gag));
    }
    for item in oral::items() {
        flags.extend(of_item(exam, item));
    }
    flags
}

/// What a single item's rule says.
pub fn of_item(exam: &Exam, item: &'static Item) -> Vec<Flag> {
    let answer = exam.oral.answer(item);
    let has = |id: &str| answer.found().iter().any(|f| f.exception().id == id);
    match &answer {
        Answer::Opening(mm, teeth) => mouth::opening(*mm, exam.age, *teeth),
        Answer::Flow(flow) => mouth::cough(*flow, exam.age),
        Answer::Found(_) if item.id == "voice.ah" && has("wet") => {
            let rule = &rules::ORAL_WET_VOICE;
            vec![rule.flag(Level::Note, Domain::SpeechVoice, OralFact::WetVoice)]
        }
        Answer::Found(_) if item.id == "larynx" && has("not-felt") => {
            let rule = &rules::ORAL_LARYNX;
            vec![rule.flag(Level::Note, Domain::Mouth, OralFact::NoSwallowFelt)]
        }
        _ => Vec::new(),
    }
}

/// Weakness that was found after nothing new or worse was known, and of which nobody said since
/// whether it is; none where there is none.
pub fn unsaid(exam: &Exam) -> Option<Vec<Found>> {
    let answer = exam.gate.0.get(WEAKNESS);
    let open = answer.is_none_or(|a| a == gate::HOLDS);
    let weak = findings::weakness(&exam.oral);
    (open && !weak.is_empty() && exam.weakness_said != weak).then_some(weak)
}

/// Whether a weakness is new or worse and the team did not know.
pub fn emergency(exam: &Exam) -> bool {
    exam.gate
        .exceptions(&exam.policy)
        .any(|(_, _, state)| state == gate::State::Emergency)
}
