//! Sentences about small sips of water, the 3 mL under the tongue among them.

use crate::clinical::findings::fact::{SipsFact, Tries};
use crate::clinical::findings::flag::Flag;
use crate::measure::decimals::short;
use crate::wording::by_mouth::why_not;
use crate::wording::words::times;

pub(super) fn reason(fact: &SipsFact, _flag: &Flag) -> String {
    match fact {
        SipsFact::NotGiven(None) => "small sips of water not given".to_owned(),
        SipsFact::NotGiven(Some(why)) => {
            format!("small sips of water not given: {}", why_not(why))
        }
        SipsFact::NextNotGiven(why) => format!("the next small sip not given: {}", why_not(why)),
        SipsFact::NonePlanned => "no sips of water planned".to_owned(),
        SipsFact::Due { size, done, of } => format!(
            "sips of {} mL: {done} of {of} given and watched",
            short(size.get())
        ),
        SipsFact::NoVoiceBefore => {
            "no voice before the sips: whether the voice changed could not be judged".to_owned()
        }
        SipsFact::GivenAfterSign => "a further sip was given after a sign".to_owned(),
        SipsFact::LargerFirst => {
            "a larger sip was given before the smaller ones were done".to_owned()
        }
        SipsFact::Clear {
            sizes,
            times: n,
            no_sign,
        } => {
            let sizes: Vec<String> = sizes.iter().map(|size| short(size.get())).collect();
            let sizes = sizes.join(", ");
            let times = times(usize::from(*n));
            let no_sign = if *no_sign { ": no sign" } else { "" };
            format!("sips of {sizes} mL, each given {times} and watched{no_sign}")
        }
        SipsFact::FewExtra(tries) => {
            of_three("fewer than two more dry swallows within 30 seconds", *tries)
        }
        SipsFact::Residue {
            tries,
            counts: true,
        } => of_three("residue in the mouth", *tries),
        SipsFact::Residue {
            tries,
            counts: false,
        } => of_three(
            "residue in the mouth, which the wording in use does not count",
            *tries,
        ),
        SipsFact::CupWaits => {
            "90 mL of water waits: the small sips were not all given, watched and clear".to_owned()
        }
        SipsFact::CupWaitsForSwallows => {
            "90 mL of water waits: not two more dry swallows after 3 mL".to_owned()
        }
    }
}

fn of_three(what: &str, tries: Tries) -> String {
    match tries {
        Tries { of: 1, .. } => format!("3 mL of water: {what}"),
        Tries { n, of } => format!("3 mL of water: {what} (in {n} of {of} tries)"),
    }
}
