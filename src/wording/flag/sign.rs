//! Sentences about a sign seen in a trial by mouth.

use crate::clinical::findings::fact::{Seen, SignFact, With};
use crate::clinical::findings::flag::Flag;
use crate::measure::decimals::short;
use crate::measure::time::Millis;
use crate::wording::own;
use crate::wording::words::{times, whole_seconds};

pub(super) fn reason(fact: &SignFact, _flag: &Flag) -> String {
    plain_of(fact)
}

/// What was seen, when and with what.
pub(in crate::wording) fn plain_of(fact: &SignFact) -> String {
    match &fact.with {
        With::Cup { stopped } => with_cup(fact, *stopped),
        With::Sip(size) => format!("sip of {} mL: {}", short(size.get()), plain(fact)),
        With::TimedCup => format!("timed cup of water: {}", plain(fact)),
        With::Cracker => format!("with the cracker: {}", plain(fact)),
        With::Meal => format!("at the table: {}", plain(fact)),
        With::Own { given, times: n } => {
            let what = own::brief(given);
            format!("{what} (given {}): {}", times(*n), plain(fact))
        }
    }
}

/// "coughed", "coughed 20 seconds after the swallow", "coughed 3 times".
fn plain(fact: &SignFact) -> String {
    let past = fact.sign.past();
    let late = if fact.too_late {
        ": later than the 60 seconds that count"
    } else {
        ""
    };
    match (fact.seen, fact.times) {
        (Seen::While | Seen::Sometime, 1) => past.to_owned(),
        (Seen::After(after), 1) => format!("{past} {} after the swallow", whole_seconds(after)),
        (Seen::Later(after), 1) => {
            format!(
                "{past} {} seconds after the swallow{late}",
                rounded_up(after)
            )
        }
        (_, times) => format!("{past} {times} times{late}"),
    }
}

/// "coughed 2 times while drinking the 90 mL".
fn with_cup(fact: &SignFact, stopped: bool) -> String {
    let past = fact.sign.past();
    let times = match fact.times {
        1 => String::new(),
        times => format!(" {times} times"),
    };
    // Nobody marked the last swallow of what was stopped.
    let from = if stopped {
        "the 90 mL were stopped"
    } else {
        "the last swallow of the 90 mL"
    };
    let when = match fact.seen {
        Seen::While => "while drinking the 90 mL".to_owned(),
        Seen::After(after) => format!("{} after {from}", whole_seconds(after)),
        Seen::Later(after) => format!("{} seconds after {from}", rounded_up(after)),
        Seen::Sometime => format!("after {from}"),
    };
    let late = if fact.too_late {
        ": later than the 60 seconds the rule counts"
    } else {
        ""
    };
    format!("{past}{times} {when}{late}")
}

/// The seconds of a late sign are rounded up, or 60.4 would read as 60, which counts.
pub(super) fn rounded_up(after: Millis) -> i64 {
    (after.0 + 999) / 1000
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clinical::findings::fact::SeenSign;
    use crate::clinical::knowledge::sign::Sign;
    use crate::clinical::tasks::by_mouth::signs::judge;

    fn words(with: With, after: &[i64]) -> Vec<String> {
        let seen: Vec<SeenSign> = after
            .iter()
            .map(|after| SeenSign::so_long_after(Sign::Cough, Millis(*after)))
            .collect();
        judge(&with, &seen).iter().map(Flag::reason).collect()
    }

    #[test]
    fn a_late_sign_says_that_it_is_late() {
        assert_eq!(
            words(With::TimedCup, &[60_400, 3_900]),
            [
                "timed cup of water: coughed 3 seconds after the swallow",
                "timed cup of water: coughed 61 seconds after the swallow: later than the 60 \
                 seconds that count"
            ]
        );
    }

    #[test]
    fn the_same_sign_counts_up() {
        assert_eq!(
            words(With::Meal, &[70_000, 3_000, 9_000, 80_000]),
            [
                "at the table: coughed 2 times",
                "at the table: coughed 2 times: later than the 60 seconds that count"
            ]
        );
    }
}
