//! Sentences about the six signs.

use crate::clinical::findings::fact::{OfSix, SixSignsFact};
use crate::clinical::findings::flag::Flag;
use crate::wording::six_signs::{name, tested};

pub(super) fn reason(fact: &SixSignsFact, _flag: &Flag) -> String {
    let list = |signs: &[OfSix]| {
        let names: Vec<&str> = signs.iter().copied().map(name).collect();
        names.join(", ")
    };
    match fact {
        SixSignsFact::Enough { found, tested: t } => {
            format!("two or more signs seen: {} ({})", list(found), tested(*t))
        }
        SixSignsFact::Open { open, tested: t } => format!(
            "signs after a stroke, {}; still open: {}",
            tested(*t),
            list(open)
        ),
        SixSignsFact::GagNotCounted => {
            "the gag was tested and is not counted: it is missing in many healthy people".to_owned()
        }
        SixSignsFact::NotForChildren => {
            "The six signs were studied in adults and are not used for children.".to_owned()
        }
        SixSignsFact::NotReadInChildren => {
            "the rule of two signs was studied in adults and is not used here".to_owned()
        }
    }
}
