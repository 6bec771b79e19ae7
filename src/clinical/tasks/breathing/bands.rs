//! The bands: what a rate or a saturation means for a water trial.

use crate::clinical::knowledge::policy::Policy;
use crate::clinical::tasks::breathing::Finding;
use crate::clinical::tasks::breathing::adult_bands::{
    Band, Breathes, SECOND_SCALE, Saturation, scale_2,
};

/// The band of an adult's breathing rate under a policy.
pub fn rate_band(rate: u16, policy: &Policy) -> Band {
    let rate = i32::from(rate);
    if rate <= policy.breaths_low || rate >= policy.breaths_high {
        Band::Block
    } else if rate <= policy.breaths_caution_low || rate >= policy.breaths_caution_high {
        Band::Caution
    } else {
        Band::Usual
    }
}

/// Least and most breaths a minute that are neither a caution nor a block.
pub(super) fn usual(policy: &Policy) -> (i32, i32) {
    (
        policy.breaths_caution_low.saturating_add(1),
        policy.breaths_caution_high.saturating_sub(1),
    )
}

/// An oximeter is read off in these steps.
const WHOLE_PERCENT: f64 = 1.0;

/// The band of an adult's SpO2 under a policy, or against the prescribed target.
pub fn spo2_band(percent: f64, target: Option<f64>, policy: &Policy) -> Band {
    match target {
        Some(lowest) if percent < lowest => Band::Block,
        Some(_) => Band::Usual,
        None if percent <= f64::from(policy.spo2_low) => Band::Block,
        // A whole percent is read off; what lies between two belongs to the lower one.
        None if percent < f64::from(policy.spo2_caution) + WHOLE_PERCENT => Band::Caution,
        None => Band::Usual,
    }
}

/// The band of a reading: the second scale only with a confirmed target, and with oxygen unless
/// air was said. Below it the target itself blocks.
pub(super) fn reading_band(f: &Finding, percent: f64, policy: &Policy) -> Band {
    let saturation = Saturation::new(percent.round() as u8);
    match (f.confirmed, saturation) {
        (Some(target), Some(saturation)) if percent >= f64::from(*SECOND_SCALE.start()) => {
            let breathes = match f.oxygen {
                Some(false) => Breathes::Air,
                _ => Breathes::Oxygen,
            };
            scale_2(saturation, breathes, target).band()
        }
        (Some(_), _) => Band::Block,
        (None, _) => spo2_band(percent, f.target, policy),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NEWS2, Royal College of Physicians 2017: bands 3, 1, 0, 2, 3 of the breathing rate.
    #[test]
    fn adult_rate_bands() {
        let policy = Policy::default();
        for (rate, band) in [
            (8, Band::Block),
            (9, Band::Caution),
            (11, Band::Caution),
            (12, Band::Usual),
            (20, Band::Usual),
            (21, Band::Caution),
            (24, Band::Caution),
            (25, Band::Block),
        ] {
            assert_eq!(rate_band(rate, &policy), band, "{rate}");
        }
    }

    /// NEWS2, Royal College of Physicians 2017: SpO2 scale 1, bands 3, 2, 2, 1, 1, 0.
    #[test]
    fn spo2_bands() {
        let policy = Policy::default();
        for (percent, band) in [
            (91.0, Band::Block),
            (92.0, Band::Caution),
            (93.0, Band::Caution),
            (94.0, Band::Caution),
            (95.0, Band::Caution),
            (96.0, Band::Usual),
        ] {
            assert_eq!(spo2_band(percent, None, &policy), band, "{percent}");
        }
        assert_eq!(spo2_band(90.0, Some(88.0), &policy), Band::Usual);
        assert_eq!(spo2_band(87.0, Some(88.0), &policy), Band::Block);
    }
}
