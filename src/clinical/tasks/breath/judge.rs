//! Breath: counting on one breath, holding it, and 5 cm of water for 5 seconds.

use crate::clinical::findings::fact::BreathFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::speech::Bubbles;
use crate::clinical::knowledge::norms::Who;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::measure::time::Millis;
use crate::measure::units::Seconds;

/// Counting on one breath: from here on it fits normal breathing muscles (DIS23).
pub const COUNT_EXPECTED: u32 = 25;
/// Counting on one breath: below this, consider spirometry (BOE22).
pub const COUNT_CHECK_BELOW: u32 = 41;
/// Counting on one breath: below this went with weak breathing in (BOE22).
pub const COUNT_WEAK_BELOW: u32 = 27;
/// Counts a second (BAR94).
pub const COUNTS_A_SECOND: u32 = 2;
/// From one count to the next.
pub const BEAT: Millis = Millis(1000 / COUNTS_A_SECOND as i64);
/// How long a breath hold is asked for. Common practice, no source.
pub const HOLD_ASKED: Millis = Millis::from_secs(5);
/// How long the bubbles must last at 5 cm (TEACH2, LAB).
pub const FIVE: Millis = Millis::from_secs(5);

fn flag(rule: &'static Rule, level: Level, fact: BreathFact) -> Flag {
    rule.flag(level, Domain::Breathing, fact)
}

/// Judges the highest number reached counting aloud on one breath, two a second.
pub fn count(reached: u32, who: &Who) -> Vec<Flag> {
    if !who.by_adult_rules() {
        let fact = BreathFact::CountOfChild { reached };
        return vec![flag(&rules::BREATH_COUNT_CHILD, Level::Note, fact)];
    }
    let enough = reached >= COUNT_EXPECTED;
    let level = if enough { Level::Pass } else { Level::Refer };
    let fact = BreathFact::Count {
        reached,
        enough,
        age_given: who.age.is_some(),
    };
    let mut flags = vec![flag(&rules::BREATH_COUNT, level, fact)];
    if enough && reached < COUNT_CHECK_BELOW {
        let fact = BreathFact::ConsiderSpirometry {
            reached,
            weak: reached < COUNT_WEAK_BELOW,
        };
        flags.push(flag(&rules::BREATH_COUNT_CHECK, Level::Note, fact));
    }
    flags
}

/// Records how long a breath was held. Not judged: published values differ threefold with the way
/// it is done (CHE13, VER).
pub fn hold(held: Seconds) -> Flag {
    flag(&rules::BREATH_HOLD, Level::Note, BreathFact::Hold(held))
}

/// 5 cm of water for 5 seconds: the clinician's word and the time. Always a note, never a pass:
/// the phone can time, and can't see the pressure.
pub fn five(time: Seconds, bubbles: Bubbles) -> Flag {
    let fact = BreathFact::Five {
        time,
        long_enough: time.millis() >= FIVE,
        bubbles,
    };
    flag(&rules::BREATH_FIVE, Level::Note, fact)
}
