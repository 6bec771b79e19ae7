//! Words about how thick a drink is outside the sentence of a flag.

use crate::clinical::findings::trial::Trial;
use crate::clinical::tasks::flow;
use crate::clinical::tasks::flow::judge::OutOfRange;
use crate::measure::decimals::decimals;

/// What was read of a trial.
pub fn lines(trial: &Trial) -> Vec<String> {
    vec![match flow::left(trial) {
        Some(left) => format!("{} left", of_ten(left.get_tenths())),
        None => "what is left was not read".to_owned(),
    }]
}

/// "4.2 mL of 10".
pub(super) fn of_ten(tenths: u8) -> String {
    format!("{} mL of 10", decimals(f64::from(tenths) / 10.0, 1))
}

/// Why what was typed can't be.
pub fn out_of_range(_: OutOfRange) -> &'static str {
    "What is left of 10 mL is from 0 to 10 mL: please check."
}
