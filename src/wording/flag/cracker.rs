//! Sentences about the cracker.

use crate::clinical::findings::fact::{AgainstCracker, CrackerFact, CrackerOpen};
use crate::clinical::findings::flag::Flag;
use crate::measure::decimals::decimals;
use crate::wording::by_mouth::unwatched;
use crate::wording::cracker::NO_TIME;

pub(super) fn reason(fact: &CrackerFact, _flag: &Flag) -> String {
    match fact {
        CrackerFact::Report {
            typed,
            bites,
            chews,
            swallows,
            time,
        } => {
            let named = typed
                .as_ref()
                .map_or_else(String::new, |typed| format!(" ({typed})"));
            format!(
                "one cracker{named}: {}, {}, {}, {} seconds; reported, not judged",
                counted(*bites, "bite", "bites"),
                counted(*chews, "chew", "chews"),
                counted(*swallows, "swallow", "swallows"),
                decimals(time.seconds(), 1),
            )
        }
        CrackerFact::Open(open) => missing(*open),
        CrackerFact::Against(why) => format!("no cracker: {}", against(*why)),
    }
}

fn counted(n: u32, one: &str, many: &str) -> String {
    match n {
        0 => format!("{many} not counted"),
        1 => format!("1 {one}"),
        n => format!("{n} {many}"),
    }
}

fn missing(open: CrackerOpen) -> String {
    let words = match open {
        CrackerOpen::End => "the cracker was begun and its end not marked",
        CrackerOpen::NoTime => NO_TIME,
        CrackerOpen::WatchCut => "the watch of 60 seconds after the cracker was ended early",
        CrackerOpen::WatchRuns => "the watch of 60 seconds after the cracker is not over",
        CrackerOpen::Unwatched(why) => return format!("cracker: {}", unwatched(why)),
    };
    words.to_owned()
}

const fn against(why: AgainstCracker) -> &'static str {
    match why {
        AgainstCracker::DrinkWentWrong => "a drink went wrong",
        AgainstCracker::NoDrinkTried => "no drink was tried before",
        AgainstCracker::Allergy => "an allergy to it",
        AgainstCracker::AllergyNotAsked => "not asked about an allergy to it",
        AgainstCracker::NoTeeth => "no teeth and no dentures that fit",
        AgainstCracker::TeethNotKnown => "not known whether there are teeth or dentures that fit",
        AgainstCracker::DietOrder => "a diet order does not allow it",
        AgainstCracker::DietOrderNotChecked => "not checked whether a diet order allows it",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clinical::findings::fact::Unwatched;

    #[test]
    fn what_is_missing_and_what_speaks_against_it() {
        assert_eq!(
            missing(CrackerOpen::Unwatched(Unwatched::Not)),
            "cracker: the 60 seconds after it were not watched"
        );
        assert_eq!(
            missing(CrackerOpen::WatchCut),
            "the watch of 60 seconds after the cracker was ended early"
        );
        assert_eq!(
            against(AgainstCracker::NoTeeth),
            "no teeth and no dentures that fit"
        );
        assert_eq!(counted(0, "bite", "bites"), "bites not counted");
        assert_eq!(counted(1, "bite", "bites"), "1 bite");
    }
}
