//! Sentences about how thick a drink is.

use crate::clinical::findings::fact::{Flow, FlowFact};
use crate::clinical::findings::flag::Flag;
use crate::clinical::knowledge::levels;
use crate::wording::flow::of_ten;

/// The level that the test does not reach: nothing flows.
const THICKEST: u8 = 4;

pub(super) fn reason(fact: &FlowFact, _flag: &Flag) -> String {
    let FlowFact::Drink {
        typed,
        left_tenths,
        flow,
    } = fact
    else {
        return "the drink was measured; which level a person is given is the clinician's to say"
            .to_owned();
    };
    let named = typed
        .as_ref()
        .map_or_else(String::new, |drink| format!("{drink}: "));
    let left = of_ten(*left_tenths);
    match flow {
        Flow::Level(level) => format!(
            "{named}this drink flows like level {}: {left} left after 10 seconds",
            name(*level)
        ),
        Flow::Border(lower, higher) => format!(
            "{named}{left} left after 10 seconds is the border of level {} and level {}: repeat the \
             test",
            name(*lower),
            name(*higher)
        ),
        Flow::None => format!(
            "{named}nothing of 10 mL flowed in 10 seconds: this test does not apply; for level {} \
             confirm with fork drip and spoon tilt",
            name(THICKEST)
        ),
    }
}

fn name(level: u8) -> &'static str {
    levels::drink(level).unwrap_or("not known")
}
