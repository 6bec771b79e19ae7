//! Sentences about what all trials by mouth share: signs late, moved or taken back, oxygen saturation, the voice before.

use super::sign::rounded_up;
use crate::clinical::findings::fact::{ByMouthFact, Came, WhenRead};
use crate::clinical::findings::flag::Flag;
use crate::measure::decimals::short;
use crate::wording::by_mouth::WET_BEFORE;
use crate::wording::tasks;
use crate::wording::words::small;

pub(super) fn reason(fact: &ByMouthFact, _flag: &Flag) -> String {
    match fact {
        ByMouthFact::SeenWithin { sign, after } => format!(
            "{}: pressed {} seconds after the swallow, seen within the 60 as the clinician says",
            sign.past(),
            rounded_up(*after)
        ),
        ByMouthFact::TakenBack { sign, after } => {
            let when = after.map_or_else(
                || "later".to_owned(),
                |after| format!("{} minutes later", after.0 / 60_000),
            );
            format!("{}: pressed, and taken back {when}", sign.past())
        }
        ByMouthFact::NextInMouth { sign, after } => format!(
            "{} {} seconds after the last swallow: not said whether the next was in the mouth",
            sign.past(),
            rounded_up(*after)
        ),
        ByMouthFact::WetBefore => WET_BEFORE.to_owned(),
        ByMouthFact::WatchDoubt(doubt) => format!("Watch of 60 seconds: {doubt}"),
        ByMouthFact::Saturation {
            before,
            lowest,
            read,
            came,
        } => {
            let lowest = short(*lowest);
            let figures = match before {
                Some(before) => format!("from {} to {lowest} %", short(*before)),
                None => format!("to {lowest} %"),
            };
            let when = match read {
                WhenRead::During => "during the trial",
                WhenRead::After => "after the trial",
                WhenRead::AfterMeal => "after the meal",
            };
            let fell = format!("oxygen saturation fell {figures} {when}");
            match came {
                Came::Low => format!(
                    "oxygen saturation {figures} {when}: too low to give anything (measure again; \
                     local procedure for deterioration)"
                ),
                Came::WithSign => format!(
                    "{fell}, and a sign was seen (stopped for respiratory safety; a fall does not \
                     show aspiration)"
                ),
                Came::BreathesFaster => format!(
                    "{fell}, and breathing is faster than usual since (stopped for respiratory safety; a fall \
                     does not show aspiration)"
                ),
                Came::Fell => format!("{fell} (a fall does not show aspiration)"),
                Came::Steady => format!("oxygen saturation {figures} {when}"),
            }
        }
        ByMouthFact::StudiedInAdults(task) => format!(
            "{}: studied in adults, no adult line is drawn",
            small(tasks::of(*task).title)
        ),
    }
}
