//! Going on past what is in the way, in words.

use crate::clinical::findings::go_on::GonePast;
use crate::wording::person::signed;
use crate::wording::words::small;

impl GonePast {
    /// Who decided it.
    pub(super) fn signed(&self) -> String {
        signed(self.by, self.initials.as_ref())
    }
}

/// What was gone past, and that it was, for the record and the handover.
pub fn told(what: &str, gone: &GonePast) -> String {
    let (by, because) = (gone.signed(), small(&gone.because));
    format!("{}, decided by the {by}: {because}", without_reason(what))
}

/// That it was gone past, without who did and why.
pub fn without_reason(what: &str) -> String {
    format!("{what}; gone on despite this")
}

/// A question that was answered: nothing was gone on despite.
pub fn answered(question: &str, gone: &GonePast) -> String {
    let (by, because) = (gone.signed(), small(&gone.because));
    format!("{question} Answer of the {by}: {because}")
}

/// The same words, with that it was gone past where it was.
pub fn told_if(what: String, gone: Option<&GonePast>) -> String {
    match gone {
        Some(gone) => told(&what, gone),
        None => what,
    }
}
