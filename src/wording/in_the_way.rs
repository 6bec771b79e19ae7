//! What is in the way of a task, and what to do about it, in words.

use crate::clinical::decision::in_the_way::InTheWay;
use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::breathing::Reading;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::go_on::Ground;
use crate::clinical::findings::in_the_way::{AfterChoking, Obstacle};
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::tasks::dry_swallow::is_none_at_all;
use crate::wording::by_mouth::WET_BEFORE;
use crate::wording::words::small;
use crate::wording::{found, fresh, gate, tasks, verdict};

/// What is in the way, in plain words.
pub fn says(what: &InTheWay) -> String {
    match what {
        Obstacle::NotFor { said, .. }
        | Obstacle::Breathing { said, .. }
        | Obstacle::DrySwallows { said, .. }
        | Obstacle::SmallSipsFirst { said, .. } => said.reason(),
        Obstacle::Ended {
            why,
            water_from_years,
        } => format!(
            "The screen was ended: {}",
            verdict::ended_from(*why, *water_from_years)
        ),
        Obstacle::Gate {
            item, exception, ..
        } => gate::exception(item, exception).to_owned(),
        Obstacle::AgainstGate { found, .. } => found::named(found),
        Obstacle::Child { .. } => "Studied in adults: no line for children was found".to_owned(),
        Obstacle::CouldBeNew { weak } => format!(
            "The examination found weakness where nothing new or worse was known: {}",
            small(&found::all(weak))
        ),
        Obstacle::Choked { missing, .. } => match missing.is_empty() {
            true => "Choked".to_owned(),
            false => {
                let each: Vec<&str> = missing.iter().map(|what| after_choking(*what)).collect();
                format!("Choked; not recorded since: {}", each.join(", "))
            }
        },
        Obstacle::GateOpen { open } => {
            format!("{open} of the questions before you start are not answered")
        }
        Obstacle::Old(old) => fresh::says(old),
        Obstacle::WetBefore { .. } => WET_BEFORE.to_owned(),
        Obstacle::Cracker { said, seen, .. } => match seen.is_empty() {
            true => said.reason(),
            false => format!("{}: {}", said.reason(), reasons(seen)),
        },
        Obstacle::Seen { seen, .. } => {
            format!("{}{}", seen_begins(seen), reasons(seen))
        }
        Obstacle::Running { of, .. } => format!(
            "{}: a trial was begun and its end is not pressed",
            tasks::of(*of).title
        ),
        Obstacle::Watched { .. } => {
            "The watch of 60 seconds after the trial before still runs".to_owned()
        }
    }
}

/// What to do about it; empty where there is nothing.
pub fn advice(what: &InTheWay, policy: &Policy) -> String {
    let plain = match what {
        Obstacle::Gate {
            item, exception, ..
        } => return gate::advice(item, exception, policy),
        Obstacle::AgainstGate { item, worst, .. } => return gate::advice(item, worst, policy),
        Obstacle::Ended { .. } => "Ask the person again before you take it up.",
        Obstacle::Child { .. } => "Say why it is given to this child.",
        Obstacle::CouldBeNew { .. } => {
            "If it is new or worse and the team does not know: go back and say so there."
        }
        Obstacle::GateOpen { .. } => "Answer them first.",
        Obstacle::Old(old) => fresh::advice(old.what),
        Obstacle::WetBefore { .. } => "No oral trial. Refer.",
        Obstacle::Seen { unsaid: true, .. } => {
            "Say beside that trial whether the next was in the mouth."
        }
        Obstacle::Running { .. } => "End it there first.",
        Obstacle::DrySwallows { said, .. } if is_none_at_all(said.fact()) => {
            "Moisten the mouth and count again."
        }
        Obstacle::NotFor { .. }
        | Obstacle::Choked { .. }
        | Obstacle::Breathing { .. }
        | Obstacle::Cracker { .. }
        | Obstacle::DrySwallows { .. }
        | Obstacle::Seen { unsaid: false, .. }
        | Obstacle::Watched { .. }
        | Obstacle::SmallSipsFirst { .. } => "",
    };
    plain.to_owned()
}

/// The way back into a screen that was ended.
pub const TAKE_UP: &str = "Take the screen up again";

/// The press that takes it away; none where there is none.
pub fn clears(what: &InTheWay) -> Option<&'static str> {
    Some(match what {
        Obstacle::Ended { .. } => TAKE_UP,
        Obstacle::Gate { .. } => "Check again",
        Obstacle::AgainstGate { .. } => "Look again",
        Obstacle::CouldBeNew { .. } => "Say whether it is new",
        Obstacle::GateOpen { .. } => "Answer them",
        Obstacle::Choked { missing, .. } => match missing.first() {
            Some(AfterChoking::Breaths) => "Count the breaths",
            _ => "Choking",
        },
        Obstacle::Old(old) => match old.what {
            Answered::Breaths => "Count again",
            Answered::Saturation => "Read again",
            Answered::Voice => "Hear it again",
            Answered::Group(_) => "Ask again",
        },
        Obstacle::Breathing { reading, .. } => match reading {
            Reading::NoCount(_) => "Count the breaths",
            Reading::Rate(..) => "Count again",
            Reading::Spo2(_) => "Read again",
        },
        Obstacle::WetBefore { .. } => "Hear it again",
        Obstacle::DrySwallows { .. } => "Dry swallows",
        Obstacle::SmallSipsFirst { .. } | Obstacle::Cracker { .. } => "Small sips",
        Obstacle::Seen { .. } | Obstacle::Running { .. } | Obstacle::Watched { .. } => {
            "Go to that trial"
        }
        Obstacle::NotFor { .. } | Obstacle::Child { .. } => return None,
    })
}

/// What must be recorded after a choking.
const fn after_choking(what: AfterChoking) -> &'static str {
    match what {
        AfterChoking::Baseline => "back to baseline",
        AfterChoking::Breaths => "breaths counted",
        AfterChoking::Voice => "voice heard",
    }
}

/// Why somebody went on, within a sentence; what was typed stands in its own words.
pub const fn ground(ground: Ground) -> &'static str {
    match ground {
        Ground::TeamKnows => "the team knows",
        Ground::TeamAgreed => "the team agreed",
        Ground::Needed => "needed for the assessment",
        Ground::InformedWish => "person's informed wish",
        Ground::LowRisk => "low risk in my judgement",
        Ground::FitsChart => "it fits the local chart for this age",
        Ground::OwnWords => "",
    }
}

/// A reading of the breathing is no sign.
fn seen_begins(seen: &[Flag]) -> &'static str {
    match seen.iter().all(|flag| flag.fact().is_of_breathing()) {
        true => "",
        false => "A sign was seen: ",
    }
}

fn reasons(flags: &[Flag]) -> String {
    let all: Vec<String> = flags.iter().map(Flag::reason).collect();
    all.join("; ")
}
