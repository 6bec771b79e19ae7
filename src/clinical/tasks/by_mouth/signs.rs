//! Signs of a trial by mouth: what was seen, when, and what the table says of it.
//!
//! For every column but the 90 mL, which has its own rules in [`crate::clinical::tasks::water`].

pub use crate::clinical::findings::fact::SeenSign;
use crate::clinical::findings::fact::{SignFact, With};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::sign::{Sign, SignTask, meaning};
pub use crate::clinical::tasks::by_mouth::within::WATCH;

impl SeenSign {
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

/// What the rules say about the signs of one trial, or of several given alike, in the order of the
/// buttons; their own order has no meaning.
pub fn judge(with: &With, seen: &[SeenSign]) -> Vec<Flag> {
    let mut flags = Vec::new();
    for sign in Sign::ALL {
        for late in [false, true] {
            let same = |s: &&SeenSign| s.sign == sign && s.is_late() == late;
            let Some(first) = seen.iter().find(same) else {
                continue;
            };
            let (level, rule) = first.means(with.task());
            let fact = SignFact {
                sign,
                seen: first.seen,
                times: seen.iter().filter(same).count(),
                too_late: late && level != Level::Stop,
                with: with.clone(),
            };
            flags.push(rule.flag(level, Domain::EatingDrinking, fact));
        }
    }
    flags
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::time::Millis;

    fn cough(after: i64) -> SeenSign {
        SeenSign::so_long_after(Sign::Cough, Millis(after))
    }

    fn fact(flag: &Flag) -> &SignFact {
        flag.fact().sign().expect("a flag of a sign")
    }

    /// DAN06T: at once or within one minute.
    #[test]
    fn the_minute_includes_its_end() {
        let judged = |after| judge(&With::Meal, &[cough(after)]).remove(0);
        for (after, level) in [
            (0, Level::Refer),
            (60_000, Level::Refer),
            (60_001, Level::Note),
        ] {
            let flag = judged(after);
            assert_eq!(flag.level(), level);
            assert_eq!(fact(&flag).too_late, level == Level::Note);
        }
    }

    #[test]
    fn a_late_sign_does_not_take_one_in_time_with_it() {
        let flags = judge(&With::Meal, &[cough(70_000), cough(3_000), cough(9_000)]);
        assert_eq!(flags.len(), 2);
        assert_eq!((flags[0].level(), fact(&flags[0]).times), (Level::Refer, 2));
        assert_eq!((flags[1].level(), fact(&flags[1]).times), (Level::Note, 1));
    }

    #[test]
    fn choking_is_a_stop_however_late() {
        let choke = SeenSign::so_long_after(Sign::Choke, Millis::from_secs(300));
        let flags = judge(&With::TimedCup, &[choke]);
        assert_eq!(flags[0].level(), Level::Stop);
        assert!(!fact(&flags[0]).too_late);
    }
}
