//! Sentences about what is asked before anything is given.

use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::fact::GateFact;
use crate::clinical::findings::flag::Flag;
use crate::wording::gone_past::told_if;
use crate::wording::{found, fresh, gate};

pub(super) fn reason(fact: &GateFact, _flag: &Flag) -> String {
    match fact {
        GateFact::Excepted {
            exception,
            gone_past,
            ..
        } => told_if(exception.words.to_owned(), gone_past.as_ref()),
        GateFact::Against {
            found, gone_past, ..
        } => told_if(found::named(found), gone_past.as_ref()),
        GateFact::NotAsked { group, open } => format!(
            "\"{}\": {open} of {} not asked",
            gate::group_title(*group),
            group.items().count()
        ),
        GateFact::BegunOn(what) => begun_on(what),
        GateFact::WeaknessNotSaid => {
            "weakness was found: not said whether it is new or worse".to_owned()
        }
        GateFact::WeaknessNotAsked => {
            "not asked whether weakness, droop or speech is new or worse".to_owned()
        }
    }
}

fn begun_on(what: &[Answered]) -> String {
    let what: Vec<String> = what.iter().map(|what| fresh::what(*what)).collect();
    format!(
        "something was given on answers that were missing or too old: {}",
        what.join(", ")
    )
}
