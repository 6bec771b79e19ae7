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

/// What was counted, without what is expected: "first count: 2 dry swallows in 30 seconds". None
/// where nothing was counted that says anything.
pub fn counted(fact: &DryFact) -> Option<String> {
    let DryFact::Count(count, result) = fact else {
        return None;
    };
    let swallows = match result {
        DryResult::Enough { swallows } | DryResult::TooFew { swallows, .. } => in_time(*swallows),
        _ => return None,
    };
    Some(match count {
        DryCount::Newest => swallows,
        DryCount::Earlier => format!("first count: {swallows}"),
    })
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
    format!("{} ({EXPECTED} or more expected)", in_time(n))
}

/// "2 dry swallows in 30 seconds".
fn in_time(n: usize) -> String {
    match n {
        0 => in_window("no dry swallow"),
        1 => in_window("1 dry swallow"),
        n => in_window(format_args!("{n} dry swallows")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::time::{Doubt, Millis};

    #[test]
    fn what_was_counted_stands_without_what_is_expected() {
        let few = DryResult::TooFew {
            swallows: 0,
            later: 2,
        };
        let first = DryFact::Count(DryCount::Earlier, few);
        let words = counted(&first);
        assert_eq!(
            words.as_deref(),
            Some("first count: no dry swallow in 30 seconds")
        );
        let enough = DryFact::Count(DryCount::Newest, DryResult::Enough { swallows: 4 });
        let words = counted(&enough);
        assert_eq!(words.as_deref(), Some("4 dry swallows in 30 seconds"));
        assert_eq!(counted(&DryFact::NotCounted), None);
        let left = DryFact::Count(DryCount::Newest, DryResult::NotFinished);
        assert_eq!(counted(&left), None);
    }

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
