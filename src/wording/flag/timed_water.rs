//! Sentences about the timed cup of water.

use crate::clinical::findings::fact::TimedWaterFact;
use crate::clinical::findings::flag::Flag;
use crate::clinical::tasks::timed_water::judge::SLOW_BELOW;
use crate::measure::decimals::{decimals, short};
use crate::wording::by_mouth::{missing, why_not};
use crate::wording::timed_water::no_figures;

pub(super) fn reason(fact: &TimedWaterFact, _flag: &Flag) -> String {
    match fact {
        TimedWaterFact::NotGiven(None) => "timed cup of water not given".to_owned(),
        TimedWaterFact::NotGiven(Some(why)) => {
            format!("timed cup of water not given: {}", why_not(why))
        }
        TimedWaterFact::AnotherNotGiven(why) => {
            format!("another timed cup of water not given: {}", why_not(why))
        }
        TimedWaterFact::Slow(rate) => {
            let rate = decimals(rate.get(), 1);
            // Rounded, it would read as the line itself.
            let rate = if rate == decimals(f64::from(SLOW_BELOW), 1) {
                format!("just under {SLOW_BELOW}")
            } else {
                rate
            };
            format!(
                "drank {rate} millilitres a second ({SLOW_BELOW} or more expected): slow for this \
                 test; read it with age and sex; not by itself a sign of aspiration"
            )
        }
        TimedWaterFact::Left { left, offered } => format!(
            "timed cup not finished: {} of {} mL left",
            short(left.get()),
            short(offered.get())
        ),
        TimedWaterFact::OtherVolume { now, before } => format!(
            "{} mL now, {} mL before: drinking rates of different volumes are not compared",
            short(now.get()),
            short(before.get())
        ),
        TimedWaterFact::NoFigures(why) => format!("timed cup of water: {}", no_figures(*why)),
        TimedWaterFact::NoAmounts => "timed cup of water: its amounts are not recorded".to_owned(),
        TimedWaterFact::Missing(which) => format!("timed cup of water: {}", missing(which)),
        TimedWaterFact::SipsNotClear => "timed cup waits: the small sips were not clear".to_owned(),
        TimedWaterFact::NoSips => "timed cup waits: no small sips were given before".to_owned(),
    }
}
