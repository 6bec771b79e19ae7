//! Sentences about dry swallows.

use crate::clinical::findings::fact::{DryCount, DryFact, DryResult};
use crate::clinical::findings::flag::Flag;
use crate::clinical::tasks::dry_swallow::{EXPECTED, LATE, TOO_QUICK};
use crate::wording::dry::{in_window, not_valid, window};
use crate::wording::words::{small, whole_seconds};

pub(super) fn reason(fact: &DryFact, _flag: &Flag) -> String {
    match fact {
        DryFact::Count(DryCount::Newest, result) => came_to(result),
        DryFact::Count(DryCount::Earlier, result) => format!("first count: {}", came_to(result)),
        DryFact::NotCounted => "Dry swallows not counted".to_owned(),
        DryFact::NotFor { from_years } => format!(
            "The dry-swallow count is meant for people from {from_years} years: its studies are in \
             adults."
        ),
    }
}

fn came_to(result: &DryResult) -> String {
    match result {
        DryResult::Enough { swallows } => swallowed(*swallows),
        DryResult::TooFew { swallows, later } => match later {
            0 => swallowed(*swallows),
            later => format!(
                "{}, {later} more within {}",
                swallowed(*swallows),
                whole_seconds(LATE)
            ),
        },
        DryResult::NotValid { why, swallows } => {
            let why = small(not_valid(why));
            match swallows {
                Some(n) => format!("Dry swallows not valid: {why} ({n} counted)"),
                None => format!("Dry swallows not valid: {why}"),
            }
        }
        DryResult::TooQuick { touches } => format!(
            "Dry swallows: count again. {touches} came within {} ms of the one before",
            TOO_QUICK.0
        ),
        DryResult::NotFinished => format!("Dry swallows: the {} were not finished", window()),
        DryResult::Doubtful(doubt) => format!("Dry swallows: count again. {doubt}"),
    }
}

/// "2 dry swallows in 30 seconds (3 or more expected)".
fn swallowed(n: usize) -> String {
    let counted = match n {
        0 => in_window("no dry swallow"),
        1 => in_window("1 dry swallow"),
        n => in_window(format_args!("{n} dry swallows")),
    };
    format!("{counted} ({EXPECTED} or more expected)")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::time::{Doubt, Millis};

    #[test]
    fn each_result() {
        let too_few = |swallows, later| DryResult::TooFew { swallows, later };
        let not_valid = |why: &str, swallows| DryResult::NotValid {
            why: why.to_owned(),
            swallows,
        };
        for (result, words) in [
            (
                DryResult::Enough { swallows: 4 },
                "4 dry swallows in 30 seconds (3 or more expected)",
            ),
            (
                too_few(1, 0),
                "1 dry swallow in 30 seconds (3 or more expected)",
            ),
            (
                too_few(0, 2),
                "no dry swallow in 30 seconds (3 or more expected), 2 more within 60 seconds",
            ),
            (
                not_valid("neck", None),
                "Dry swallows not valid: neck surgery or collar",
            ),
            (
                not_valid("of a later version", Some(2)),
                "Dry swallows not valid: reason not known to this version (2 counted)",
            ),
            (
                DryResult::TooQuick { touches: 2 },
                "Dry swallows: count again. 2 came within 60 ms of the one before",
            ),
            (
                DryResult::NotFinished,
                "Dry swallows: the 30 seconds were not finished",
            ),
            (
                DryResult::Doubtful(Doubt::Slept(Millis(12_300))),
                "Dry swallows: count again. The phone slept for about 12.3 s during this time.",
            ),
        ] {
            assert_eq!(came_to(&result), words);
        }
    }
}
