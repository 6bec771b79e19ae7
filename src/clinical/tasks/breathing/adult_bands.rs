//! The band of an adult's oxygen saturation on the second scale.
//!
//! A single-parameter band of NEWS2 (Royal College of Physicians 2017), as those of the policy are:
//! there is no score, and none is shown. They were made for general deterioration, not for swallowing;
//! what they mean for a water trial is local policy, see [`crate::clinical::tasks::breathing`].

use std::ops::RangeInclusive;

/// What a reading means for a water trial.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Band {
    /// In the usual band.
    Usual,
    /// The clinician decides.
    Caution,
    /// No water.
    Block,
}

/// How far a reading is off the usual band. Never shown as a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Step {
    /// In the usual band.
    Usual,
    /// One band off.
    One,
    /// Two bands off.
    Two,
    /// Three bands off: a trigger by itself.
    Three,
}

impl Step {
    /// What it means for a water trial, by Penlight's own policy.
    pub fn band(self) -> Band {
        match self {
            Step::Usual => Band::Usual,
            Step::One | Step::Two => Band::Caution,
            Step::Three => Band::Block,
        }
    }
}

/// A saturation as an oximeter shows it: 0 to 100 whole per cent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Saturation(u8);

impl Saturation {
    /// So many per cent; none above 100.
    pub const fn new(percent: u8) -> Option<Saturation> {
        if percent <= 100 {
            Some(Saturation(percent))
        } else {
            None
        }
    }

    /// The bare number of per cent.
    pub const fn get(self) -> u8 {
        self.0
    }
}

/// What the person breathes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Breathes {
    /// Room air.
    Air,
    /// Oxygen.
    Oxygen,
}

/// What is known about a saturation target.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Prescription {
    /// Respiratory failure with raised carbon dioxide is confirmed.
    pub hypercapnic_failure_confirmed: bool,
    /// Lowest per cent prescribed.
    pub lowest: u8,
    /// Highest per cent prescribed.
    pub highest: u8,
}

/// The target in per cent that the second scale is for (NEWS2, Royal College of Physicians 2017).
pub const SECOND_SCALE: RangeInclusive<u8> = 88..=92;

/// A prescribed target of 88 to 92 % in confirmed hypercapnic respiratory failure: without it the
/// second scale is not used, so it can't be asked for without one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ConfirmedTarget(());

/// Why the second scale is not used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotConfirmed {
    /// The failure is not confirmed.
    Failure,
    /// Another target is prescribed.
    OtherTarget,
}

impl TryFrom<Prescription> for ConfirmedTarget {
    type Error = NotConfirmed;
    fn try_from(p: Prescription) -> Result<ConfirmedTarget, NotConfirmed> {
        if !p.hypercapnic_failure_confirmed {
            Err(NotConfirmed::Failure)
        } else if (p.lowest..=p.highest) != SECOND_SCALE {
            Err(NotConfirmed::OtherTarget)
        } else {
            Ok(ConfirmedTarget(()))
        }
    }
}

/// The band of an adult's saturation on the second scale (NEWS2, Royal College of Physicians 2017):
/// too much oxygen is a reason too.
pub fn scale_2(saturation: Saturation, breathes: Breathes, _: ConfirmedTarget) -> Step {
    match (saturation.0, breathes) {
        (..=83, _) => Step::Three,
        (84 | 85, _) => Step::Two,
        (86 | 87, _) => Step::One,
        (88..=92, _) | (93.., Breathes::Air) => Step::Usual,
        (93 | 94, Breathes::Oxygen) => Step::One,
        (95 | 96, Breathes::Oxygen) => Step::Two,
        (97.., Breathes::Oxygen) => Step::Three,
    }
}
