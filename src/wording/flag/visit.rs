//! Sentences about the visit as a whole: person, record, what was gone past.

use crate::clinical::findings::fact::{Past, VisitFact};
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::go_on::GonePast;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::wording::counted::counted;
use crate::wording::in_the_way;
use crate::wording::words::small;

pub(super) fn reason(fact: &VisitFact<Flag>, _flag: &Flag) -> String {
    match fact {
        VisitFact::Choked => Sign::Choke.past().to_owned(),
        VisitFact::EmergencyChanged => {
            "new weakness, droop or speech was first answered as an emergency, then changed"
                .to_owned()
        }
        VisitFact::Unread(entries) => unread(*entries),
        VisitFact::AgeNotGiven => "age not given: the rules for adults were used".to_owned(),
        VisitFact::GonePast { given, past, gone } => gone_past(*given, past, gone),
    }
}

fn unread(entries: u32) -> String {
    let entries = usize::try_from(entries).unwrap_or(usize::MAX);
    let (one, many) = ("entry of this visit is", "entries of this visit are");
    format!("{} missing or can't be read", counted(entries, one, many))
}

fn gone_past(given: TaskId, past: &Past<Flag>, gone: &GonePast) -> String {
    let (by, because) = (gone.signed(), small(&gone.because));
    let before = despite(given, past);
    let join = match past {
        Past::NotKnown => ",",
        Past::Thing(_) | Past::Words(_) => ";",
    };
    format!("{before}{join} decided by the {by}: {because}")
}

/// That something was given despite what was in the way, without who decided it and why.
pub fn despite(given: TaskId, past: &Past<Flag>) -> String {
    let given = match given {
        TaskId::Cracker => "A cracker was given",
        TaskId::Own => "A trial by mouth was given",
        TaskId::Meal => "A meal was watched",
        _ => "Water was given",
    };
    let past = match past {
        Past::Thing(thing) => in_the_way::says(thing),
        Past::Words(words) => words.clone(),
        Past::NotKnown => return format!("{given} despite this"),
    };
    format!(
        "{given} despite this: {}",
        small(past.trim_end_matches('.'))
    )
}
