//! Readings as the ward says them.

use crate::clinical::tasks::breathing::Method;
use crate::measure::decimals::decimals;

/// The rate as the ward says it.
pub fn rate_words(rate: u16, method: Method) -> String {
    match method {
        Method::Counted => format!("breathing {rate} a minute (counted for 60 seconds)"),
        Method::Entered => format!("breathing {rate} a minute (counted elsewhere)"),
        Method::Shorter => format!("breathing {rate} a minute (by taps or in 30 seconds)"),
    }
}

/// The SpO2 as the ward says it.
pub fn spo2_words(percent: f64, oxygen: Option<bool>, target: Option<f64>) -> String {
    let on = match oxygen {
        Some(true) => " on oxygen",
        Some(false) => " on air",
        None => "",
    };
    let target = target.map_or(String::new(), |lowest| {
        format!(" (prescribed: {} % or more)", decimals(lowest, 0))
    });
    format!("oxygen saturation {} %{on}{target}", decimals(percent, 0))
}
