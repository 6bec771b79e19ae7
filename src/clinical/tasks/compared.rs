//! What a task of speech comes to: its value, the published one beside it, and flags.

use crate::clinical::findings::fact::SpeechFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::measured::Measured;
use crate::clinical::knowledge::norms::{Compared, NotCompared};
use crate::clinical::knowledge::rules;

/// So many standard deviations on the worse side of the mean, or more, are below the usual range:
/// the 5th percentile where values are normally spread. Local policy.
pub const BELOW_USUAL: f64 = 1.645;

/// What a task comes to: the value, what it is put beside, and flags.
#[derive(Clone, Debug)]
pub struct Judged {
    /// What was measured.
    pub value: Measured,
    /// The published value beside it, or why there is none.
    pub compared: Result<Compared, NotCompared>,
    /// What the rules say.
    pub flags: Vec<Flag>,
}

/// That a value is shown and not judged, and why.
pub(super) fn no_norm(value: Measured, why: NotCompared) -> Flag {
    let fact = SpeechFact::NotCompared { value, why };
    rules::SPEECH_NO_NORM.flag(Level::Note, Domain::SpeechVoice, fact)
}

/// The level of a conclusion from a comparison: `own` where the group is the person's own, else a
/// note.
pub(super) fn level(compared: &Compared, own: Level) -> Level {
    if compared.norm.fit.is_own() {
        own
    } else {
        Level::Note
    }
}
