//! Sentences about counting on one breath, breath hold, 5 cm of water for 5 seconds.

use crate::clinical::findings::fact::BreathFact;
use crate::clinical::findings::speech::Bubbles;
use crate::clinical::tasks::breath::judge::{COUNT_CHECK_BELOW, COUNT_EXPECTED, COUNT_WEAK_BELOW};
use crate::wording::flag::speech::age_remark;
use crate::wording::speech::breath_value;

pub(super) fn reason(fact: &BreathFact) -> String {
    let value = breath_value(fact);
    match *fact {
        BreathFact::CountOfChild { .. } => format!(
            "{value}: reported, not judged. In children it goes by height, and no published value \
             was seen."
        ),
        BreathFact::Count {
            enough, age_given, ..
        } => {
            let usual = format!(
                "{COUNT_EXPECTED} and more fits normal breathing muscles (studies in myasthenia)."
            );
            let age = age_remark(age_given);
            if enough {
                format!("{value}: {usual}{age}")
            } else {
                let fewer = fewer(&value);
                format!("{fewer}. {usual} A sign to look further, not a diagnosis.{age}")
            }
        }
        BreathFact::ConsiderSpirometry { reached, weak } => {
            let weak = if weak {
                format!(
                    " Below {COUNT_WEAK_BELOW} went with weak breathing in (61 in 100 of the weak \
                     were found, 86 in 100 of the others left alone)."
                )
            } else {
                String::new()
            };
            format!(
                "Counted to {reached}: consider spirometry. Among people with neuromuscular \
                 disease, below {COUNT_CHECK_BELOW} went with a vital capacity under 80 % of \
                 predicted (89 in 100 were found, 62 in 100 of the others left alone).{weak}"
            )
        }
        BreathFact::Hold(_) => {
            format!("{value}: recorded, not judged. Published values differ threefold.")
        }
        BreathFact::Five { bubbles, .. } => {
            let phone = match bubbles {
                Bubbles::NotSeen => " The phone only times.",
                Bubbles::Continuous | Bubbles::Broken => "",
            };
            format!(
                "{value}.{phone} Taught as the least breath support for speech; the first papers \
                 were not seen."
            )
        }
    }
}

/// That an adult's count was short, without what it fits; none of anything else.
pub(super) fn result(fact: &BreathFact) -> Option<String> {
    match fact {
        BreathFact::Count { enough: false, .. } => Some(fewer(&breath_value(fact))),
        _ => None,
    }
}

fn fewer(value: &str) -> String {
    format!("{value}: fewer than {COUNT_EXPECTED}")
}
