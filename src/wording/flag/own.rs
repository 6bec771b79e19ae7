//! Sentences about the clinician's own trials.

use crate::clinical::findings::fact::{Given, OwnFact};
use crate::clinical::findings::flag::Flag;
use crate::wording::by_mouth::why_not;
use crate::wording::own::brief;
use crate::wording::tasks;
use crate::wording::words::small;

pub(super) fn reason(fact: &OwnFact, _flag: &Flag) -> String {
    match fact {
        OwnFact::NoneGiven { why: None } => "own trials: none given".to_owned(),
        OwnFact::NoneGiven { why: Some(why) } => {
            format!("own trials: none given: {}", why_not(why))
        }
        OwnFact::NotGiven { given, why } => {
            let what = given
                .as_ref()
                .map_or_else(String::new, |given| format!(" ({})", brief(given)));
            format!("own trials: one not given{what}: {}", why_not(why))
        }
        OwnFact::NotWatched { open, of } => {
            format!("own trials: {open} of {of} not watched for 60 seconds")
        }
        OwnFact::NotSaidWhat => "own trials: not recorded what was given".to_owned(),
        OwnFact::Clear { given, seen } => {
            let no_sign = if *seen {
                ""
            } else {
                ", no sign within 60 seconds"
            };
            format!("own trials: {given} given and watched{no_sign}")
        }
        OwnFact::Either { sign, with, other } => format!(
            "{} with {}: within 60 seconds of {} as well, either may be meant",
            sign.past(),
            given(with),
            given(other)
        ),
    }
}

fn given(given: &Given) -> String {
    match given {
        Given::Own(what) => brief(what),
        Given::Task(task) => small(tasks::of(*task).title),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clinical::findings::fact::{OwnGiven, WhyNot};
    use crate::clinical::findings::flag::{Domain, Level};
    use crate::clinical::knowledge::rules;
    use crate::clinical::knowledge::sign::Sign;
    use crate::clinical::knowledge::task::TaskId;

    #[test]
    fn each_fact() {
        let thin = || OwnGiven {
            level: Some("d0".to_owned()),
            ..OwnGiven::default()
        };
        let declined = || WhyNot("refused".to_owned());
        for (fact, words) in [
            (
                OwnFact::NoneGiven { why: None },
                "own trials: none given".to_owned(),
            ),
            (
                OwnFact::NoneGiven {
                    why: Some(declined()),
                },
                format!("own trials: none given: {}", why_not(&declined())),
            ),
            (
                OwnFact::NotGiven {
                    given: Some(thin()),
                    why: declined(),
                },
                format!(
                    "own trials: one not given (0 Thin): {}",
                    why_not(&declined())
                ),
            ),
            (
                OwnFact::NotWatched { open: 1, of: 3 },
                "own trials: 1 of 3 not watched for 60 seconds".to_owned(),
            ),
            (
                OwnFact::Clear {
                    given: 2,
                    seen: false,
                },
                "own trials: 2 given and watched, no sign within 60 seconds".to_owned(),
            ),
            (
                OwnFact::Either {
                    sign: Sign::Cough,
                    with: Given::Own(thin()),
                    other: Given::Task(TaskId::Cracker),
                },
                "coughed with 0 Thin: within 60 seconds of timed cracker as well, either may be \
                 meant"
                    .to_owned(),
            ),
        ] {
            let flag = rules::OWN_UNFINISHED.flag(Level::Note, Domain::EatingDrinking, fact);
            assert_eq!(flag.reason(), words);
        }
    }
}
