//! A breathing rate from a tap at every breath.

use std::num::NonZeroUsize;

use crate::clinical::findings::fact::BreathingFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::rules;
use crate::measure::series::{Series, SeriesError, Steadiness};
use crate::measure::units::{PerMinute, Percent};

/// When taps are even enough: local policy, since the published limits were not seen (KAR14).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Setting {
    /// So many intervals must agree.
    pub least_intervals: NonZeroUsize,
    /// So many per cent of the middle interval an interval may be off it.
    pub spread: u8,
}

/// As the policy has it by default: 4 intervals, within 15 %.
impl Default for Setting {
    fn default() -> Setting {
        Setting::of(&Policy::default())
    }
}

impl Setting {
    /// As a policy has it.
    pub fn of(policy: &Policy) -> Setting {
        Setting {
            least_intervals: usize::try_from(policy.tap_intervals)
                .ok()
                .and_then(NonZeroUsize::new)
                .unwrap_or(NonZeroUsize::MIN),
            spread: u8::try_from(policy.tap_spread).unwrap_or(0),
        }
    }
}

/// What taps say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Taps {
    /// Even enough.
    Rate {
        /// 60 over the middle interval.
        rate: PerMinute,
        /// Intervals left out as missed or doubled taps.
        left_out: usize,
    },
    /// Too few, or too uneven: go on tapping.
    KeepTapping,
}

/// Reads taps.
pub fn read(taps: &Series, setting: Setting) -> Taps {
    // Too few marks, or no time between them: more taps put both right.
    let breathing = Percent::new(f64::from(setting.spread))
        .map_err(SeriesError::from)
        .and_then(|spread| taps.breathing(setting.least_intervals, spread));
    let Ok(breathing) = breathing else {
        return Taps::KeepTapping;
    };
    match breathing.steadiness {
        Steadiness::Steady => Taps::Rate {
            rate: breathing.rate,
            left_out: 0,
        },
        Steadiness::SteadyApartFrom { outside } => Taps::Rate {
            rate: breathing.rate,
            left_out: outside,
        },
        Steadiness::KeepCounting { .. } => Taps::KeepTapping,
    }
}

/// What the rule says. `counted` tells whether breaths were also counted for 60 seconds: without
/// that taps never clear an adult. Without an age the rule for adults is used.
pub fn judge(taps: &Series, age: Option<Age>, counted: bool, setting: Setting) -> Vec<Flag> {
    let alone = age.is_none_or(Age::is_adult) && !counted;
    let fact = match read(taps, setting) {
        Taps::KeepTapping => BreathingFact::TapsUneven,
        Taps::Rate { rate, left_out } => BreathingFact::Taps {
            rate: rate.whole(),
            left_out,
            alone,
        },
    };
    let (level, domain) = decides(alone);
    vec![rules::BREATHING_TAPS.flag(level, domain, fact)]
}

/// What a quick rate decides: alone in an adult it keeps a screen incomplete.
pub(super) fn decides(alone: bool) -> (Level, Domain) {
    if alone {
        (Level::Incomplete, Domain::EatingDrinking)
    } else {
        (Level::Note, Domain::Breathing)
    }
}
