//! Signs of a trial by mouth: what was seen, when, and what the table says of it.
//!
//! For every column but the 90 mL, which has its own rules in [`crate::clinical::tasks::water`].

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::sign::{Sign, SignTask, meaning};
use crate::measure::time::Millis;
use crate::wording::words::whole_seconds;

/// Up to so long after the swallow a sign counts; at 60.0 s it does (source: DAN06T, "within one
/// minute").
pub const WATCH: Millis = Millis::from_secs(60);

/// A sign with its time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SeenSign {
    /// What was seen.
    pub sign: Sign,
    /// So long after the last swallow; none while swallowing, or where the time is not known.
    pub after: Option<Millis>,
}

impl SeenSign {
    /// A sign during the swallow, or without a known time: it counts.
    pub const fn at_once(sign: Sign) -> SeenSign {
        SeenSign { sign, after: None }
    }

    /// Whether it came later than the rules count.
    pub fn is_late(self) -> bool {
        self.after.is_some_and(|after| after > WATCH)
    }

    /// What it means in a task, its time taken in: a late sign is told and decides nothing,
    /// unless it is one that ends every trial.
    pub fn means(self, task: SignTask) -> (Level, &'static Rule) {
        let (level, rule) = meaning(self.sign, task);
        if self.is_late() && level != Level::Stop {
            (Level::Note, rule)
        } else {
            (level, rule)
        }
    }

    /// Whether the trial ends with it: after it nothing more is given without a reason.
    pub fn ends(self, task: SignTask) -> bool {
        self.means(task).0 >= Level::Incomplete
    }
}

/// What the rules say about the signs of one trial, in the order of the buttons; their own order
/// has no meaning.
pub fn judge(task: SignTask, seen: &[SeenSign]) -> Vec<Flag> {
    judge_in(task, "", seen)
}

/// The same, with where it was seen in front of each reason: "at the table: coughed".
pub fn judge_in(task: SignTask, place: &str, seen: &[SeenSign]) -> Vec<Flag> {
    let mut flags = Vec::new();
    for sign in Sign::ALL {
        for late in [false, true] {
            let same: Vec<SeenSign> = seen
                .iter()
                .copied()
                .filter(|s| s.sign == sign && s.is_late() == late)
                .collect();
            if let Some(first) = same.first() {
                let (level, rule) = first.means(task);
                let words = format!("{place}{}", words(*first, &same, level));
                flags.push(rule.flag(level, Domain::EatingDrinking, words));
            }
        }
    }
    flags
}

/// "coughed", "coughed 20 seconds after the swallow", "coughed 3 times".
fn words(first: SeenSign, same: &[SeenSign], level: Level) -> String {
    let past = first.sign.past();
    // What stops every trial counts whenever it was seen.
    let late = if first.is_late() && level != Level::Stop {
        ": later than the 60 seconds that count"
    } else {
        ""
    };
    match (first.after, same.len()) {
        // A late sign's seconds are rounded up, or 60.4 would read as 60, which counts.
        (Some(after), 1) if first.is_late() => {
            let seconds = (after.0 + 999) / 1000;
            format!("{past} {seconds} seconds after the swallow{late}")
        }
        (Some(after), 1) => format!("{past} {} after the swallow", whole_seconds(after)),
        (None, 1) => past.to_owned(),
        (_, times) => format!("{past} {times} times{late}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cough(after: i64) -> SeenSign {
        SeenSign {
            sign: Sign::Cough,
            after: Some(Millis(after)),
        }
    }

    /// DAN06T: at once or within one minute.
    #[test]
    fn the_minute_includes_its_end() {
        let level = |after| judge(SignTask::Own, &[cough(after)])[0].level();
        assert_eq!(level(0), Level::Refer);
        assert_eq!(level(60_000), Level::Refer);
        assert_eq!(level(60_001), Level::Note);
        let late = judge(SignTask::Own, &[cough(60_400)]);
        assert_eq!(
            late[0].reason(),
            "coughed 61 seconds after the swallow: later than the 60 seconds that count"
        );
    }

    #[test]
    fn a_late_sign_does_not_take_one_in_time_with_it() {
        let flags = judge(SignTask::Meal, &[cough(70_000), cough(3_000), cough(9_000)]);
        assert_eq!(flags.len(), 2);
        assert_eq!(
            (flags[0].level(), flags[0].reason().as_str()),
            (Level::Refer, "coughed 2 times")
        );
        assert_eq!(flags[1].level(), Level::Note);
    }

    #[test]
    fn choking_is_a_stop_however_late() {
        let choke = SeenSign {
            sign: Sign::Choke,
            after: Some(Millis::from_secs(300)),
        };
        assert_eq!(judge(SignTask::Sips, &[choke])[0].level(), Level::Stop);
    }
}
