//! What the pad offers where one trial follows the other, in words.

use crate::clinical::findings::next_trial::{NextTrial, Sip, ToGive, WaitsFor};
use crate::measure::decimals::short;
use crate::wording::own::{NOT_SAID_WHAT, brief};

/// "Make ready: 5 mL, 1 of 2".
pub fn next_trial(next: &NextTrial) -> String {
    match next {
        NextTrial::Waits(WaitsFor::SignSeen) => "A sign was seen: no further sip".to_owned(),
        NextTrial::Waits(WaitsFor::Watch(next)) => format!("Make ready: {}", sip(*next)),
        NextTrial::Waits(WaitsFor::Answers) => "First answer what is asked above".to_owned(),
        NextTrial::Waits(WaitsFor::VoiceBefore) => "First: the voice before".to_owned(),
        NextTrial::Waits(WaitsFor::WhatIsGiven) => "First: what is given".to_owned(),
        NextTrial::Now(ToGive::Sip(next)) => format!("Lip contact: {}", sip(*next)),
        NextTrial::Now(ToGive::Own { again, given }) => {
            let again = if *again { " again" } else { "" };
            let what = given.as_ref().map_or(NOT_SAID_WHAT.to_owned(), brief);
            format!("Given{again}: {what}")
        }
    }
}

/// "5 mL, 1 of 2".
fn sip(sip: Sip) -> String {
    format!("{} mL, {} of {}", short(sip.size.get()), sip.nth, sip.of)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clinical::findings::fact::OwnGiven;

    #[test]
    fn the_pad_says_what_comes() {
        let words = |again, level: Option<&str>| {
            let given = level.map(|level| OwnGiven {
                level: Some(level.to_owned()),
                ..OwnGiven::default()
            });
            next_trial(&NextTrial::Now(ToGive::Own { again, given }))
        };
        assert_eq!(words(false, Some("d2")), "Given: 2 Mildly thick");
        assert_eq!(words(true, None), "Given again: not said what");
    }
}
