//! A breathing rate from a tap at every breath.

use std::num::NonZeroUsize;

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::person::Age;
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

/// 4 intervals, within 15 %.
impl Default for Setting {
    fn default() -> Setting {
        Setting {
            least_intervals: NonZeroUsize::MIN.saturating_add(3),
            spread: 15,
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
    let adult = age.is_none_or(Age::is_adult);
    let words = match read(taps, setting) {
        Taps::KeepTapping => {
            "breaths by taps: too few even ones yet; go on tapping, or count for 60 seconds"
                .to_owned()
        }
        Taps::Rate { rate, left_out } => {
            let rate = rate.whole();
            let left_out = match left_out {
                0 => String::new(),
                1 => ", one uneven interval left out".to_owned(),
                n => format!(", {n} uneven intervals left out"),
            };
            let count = if adult && !counted {
                ": taps alone do not clear an adult; count for 60 seconds"
            } else {
                ""
            };
            format!("breathing {rate} a minute by taps{left_out}{count}")
        }
    };
    let (level, domain) = if adult && !counted {
        (Level::Incomplete, Domain::EatingDrinking)
    } else {
        (Level::Note, Domain::Breathing)
    };
    vec![rules::BREATHING_TAPS.flag(level, domain, words)]
}
