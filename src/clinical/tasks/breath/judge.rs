//! Breath: counting on one breath, holding it, and 5 cm of water for 5 seconds.

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::compared::{Who, seconds};
use crate::measure::decimals::decimals;
use crate::measure::time::Millis;
use crate::measure::units::Seconds;

/// Counting on one breath: from here on it fits normal breathing muscles (DIS23).
pub const COUNT_EXPECTED: u32 = 25;
/// Counting on one breath: below this, consider spirometry (BOE22).
pub const COUNT_CHECK_BELOW: u32 = 41;
/// Counting on one breath: below this went with weak breathing in (BOE22).
const COUNT_WEAK_BELOW: u32 = 27;
/// Counts a second (BAR94).
pub const COUNTS_A_SECOND: u32 = 2;
/// How long a breath hold is asked for. Common practice, no source.
pub const HOLD_ASKED: Millis = Millis::from_secs(5);
/// How long the bubbles must last at 5 cm (TEACH2, LAB).
pub const FIVE: Millis = Millis::from_secs(5);

fn flag(rule: &'static Rule, level: Level, reason: String) -> Flag {
    rule.flag(level, Domain::Breathing, reason)
}

/// What a breath task comes to: the value in words and what the rules say.
#[derive(Clone, Debug)]
pub struct Breath {
    /// The value in words, its unit written out.
    pub value: String,
    /// What the rules say.
    pub flags: Vec<Flag>,
}

/// Judges the highest number reached counting aloud on one breath, two a second.
pub fn count(reached: u32, who: &Who) -> Breath {
    let time = decimals(f64::from(reached) / f64::from(COUNTS_A_SECOND), 1);
    let value = format!(
        "Counted to {reached} on one breath (about {time} seconds at {COUNTS_A_SECOND} a second)"
    );
    let mut flags = Vec::new();
    if !who.by_adult_rules() {
        let reason = format!(
            "{value}: reported, not judged. In children it goes by height, and no published value \
             was seen."
        );
        flags.push(flag(&rules::BREATH_COUNT_CHILD, Level::Note, reason));
        return Breath { value, flags };
    }
    let age = who.age_remark();
    if reached < COUNT_EXPECTED {
        let reason = format!(
            "{value}: fewer than {COUNT_EXPECTED}. {COUNT_EXPECTED} and more fits normal \
             breathing muscles (studies in myasthenia). A sign to look further, not a \
             diagnosis.{age}"
        );
        flags.push(flag(&rules::BREATH_COUNT, Level::Refer, reason));
        return Breath { value, flags };
    }
    let reason = format!(
        "{value}: {COUNT_EXPECTED} and more fits normal breathing muscles (studies in \
         myasthenia).{age}"
    );
    flags.push(flag(&rules::BREATH_COUNT, Level::Pass, reason));
    if reached < COUNT_CHECK_BELOW {
        let weak = if reached < COUNT_WEAK_BELOW {
            format!(
                " Below {COUNT_WEAK_BELOW} went with weak breathing in (61 in 100 of the weak \
                 were found, 86 in 100 of the others left alone)."
            )
        } else {
            String::new()
        };
        let reason = format!(
            "Counted to {reached}: consider spirometry. Among people with neuromuscular disease, \
             below {COUNT_CHECK_BELOW} went with a vital capacity under 80 % of predicted (89 in \
             100 were found, 62 in 100 of the others left alone).{weak}"
        );
        flags.push(flag(&rules::BREATH_COUNT_CHECK, Level::Note, reason));
    }
    Breath { value, flags }
}

/// Records how long a breath was held. Not judged: published values differ threefold with the way
/// it is done (CHE13, VER).
pub fn hold(held: Seconds) -> Breath {
    let value = format!("Breath held for {} (5 seconds asked)", seconds(held));
    let reason = format!("{value}: recorded, not judged. Published values differ threefold.");
    let flags = vec![flag(&rules::BREATH_HOLD, Level::Note, reason)];
    Breath { value, flags }
}

/// What the clinician saw of the bubbles with the straw 5 cm under water.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bubbles {
    /// Without a break, at 5 cm.
    Continuous,
    /// With a break, or not at 5 cm.
    Broken,
    /// Nobody watched.
    NotSeen,
}

/// Whether 5 cm of water were held for 5 seconds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Five {
    /// Yes, by the clinician's eye and 5.0 seconds or more.
    Done,
    /// No.
    NotDone,
    /// Not known: the phone can time, and can't see the pressure.
    NotKnown,
}

/// 5 cm of water for 5 seconds: the clinician's word and the time. Always a note, never a pass.
pub fn five(time: Seconds, bubbles: Bubbles) -> (Five, Breath) {
    let long_enough = (time.get() * 1000.0).round() >= FIVE.seconds() * 1000.0;
    let (five, says) = match bubbles {
        Bubbles::NotSeen => (
            Five::NotKnown,
            "not known, nobody saw the bubbles. The phone only times",
        ),
        Bubbles::Continuous if long_enough => (
            Five::Done,
            "done: the clinician saw continuous bubbles at 5 cm",
        ),
        Bubbles::Continuous => (Five::NotDone, "not done: shorter than 5.0 seconds"),
        Bubbles::Broken => (
            Five::NotDone,
            "not done: the bubbles broke off or were not at 5 cm",
        ),
    };
    let value = format!("5 cm of water for 5 seconds: blown for {}", seconds(time));
    let reason = format!(
        "{value}; {says}. Taught as the least breath support for speech; the first papers were \
         not seen."
    );
    let flags = vec![flag(&rules::BREATH_FIVE, Level::Note, reason)];
    (five, Breath { value, flags })
}
