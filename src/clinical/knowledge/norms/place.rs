//! Where a measured value stands against a published one.

use serde::Serialize;

use crate::clinical::knowledge::norms::lookup::Norm;
use crate::clinical::knowledge::norms::row::{Task, Unit};
use crate::measure::normal::{Better, Percentile, StandardScore};
use crate::measure::units::{
    MillilitresPerSecond, Millimetres, PerMinute, Seconds, SequencesPerSecond, SyllablesPerSecond,
};

/// A measured value with its unit. Made out of the unit types only, so that sequences can't pass
/// for syllables.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quantity {
    unit: Unit,
    value: f64,
}

impl Quantity {
    /// Its unit.
    pub fn unit(self) -> Unit {
        self.unit
    }

    /// A whole number of something that is counted or read off a ruler.
    pub fn counted(unit: Unit, count: u32) -> Quantity {
        Quantity {
            unit,
            value: f64::from(count),
        }
    }
}

macro_rules! quantity {
    ($($type:ty => $unit:ident;)*) => {$(
        impl From<$type> for Quantity {
            fn from(value: $type) -> Quantity {
                Quantity { unit: Unit::$unit, value: value.get() }
            }
        }
    )*};
}

quantity! {
    Seconds => Seconds;
    SyllablesPerSecond => SyllablesPerSecond;
    SequencesPerSecond => SequencesPerSecond;
    MillilitresPerSecond => MillilitresPerSecond;
    PerMinute => PerMinute;
    Millimetres => Millimetres;
}

/// Which way is better for a task in a unit; none where neither is: the pitch of a voice.
pub const fn better(task: Task, unit: Unit) -> Option<Better> {
    match (task, unit) {
        (Task::Pa | Task::Ta | Task::Ka | Task::PaTaKa | Task::EatCracker, Unit::Seconds)
        | (Task::EatCracker, _) => Some(Better::Less),
        (Task::Talk | Task::Breathe, _) => None,
        _ => Some(Better::More),
    }
}

/// The value is in another unit than the norm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WrongUnit {
    /// The unit of the value.
    pub is: Unit,
    /// The unit of the norm.
    pub wanted: Unit,
}

/// Where a value stands.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Place {
    /// (value - mean) / SD in the norm's own unit, where it has an SD.
    pub z: Option<StandardScore>,
    /// Which way is better, if one is.
    pub better: Option<Better>,
}

impl Place {
    /// SDs on the worse side of the mean: above 0 is worse. None without an SD, or where neither
    /// side is worse.
    ///
    /// Rounded to hundredths, as the published lines are: 6.8 s against 4.8 (1.0) is 2.00.
    pub fn sds_worse(self) -> Option<f64> {
        let z = (self.z?.get() * 100.0).round() / 100.0;
        match self.better? {
            Better::Less => Some(z),
            Better::More => Some(-z),
        }
    }

    /// The part of the published group that did worse, taking its values as normally spread.
    pub fn percentile(self) -> Option<Percentile> {
        Some(self.z?.percentile_of_performance(self.better?))
    }
}

impl Norm {
    /// Puts a value against this norm.
    ///
    /// # Errors
    /// [`WrongUnit`]: units are never converted. A spread in seconds has no counterpart in
    /// syllables per second.
    pub fn place(&self, value: impl Into<Quantity>) -> Result<Place, WrongUnit> {
        let value = value.into();
        if value.unit != self.row.unit {
            return Err(WrongUnit {
                is: value.unit,
                wanted: self.row.unit,
            });
        }
        let z = match (self.row.mean, self.row.sd) {
            (Some(mean), Some(sd)) => StandardScore::new(value.value, mean, sd).ok(),
            _ => None,
        };
        Ok(Place {
            z,
            better: better(self.row.task, self.row.unit),
        })
    }
}
