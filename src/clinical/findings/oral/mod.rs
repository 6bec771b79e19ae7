//! What was found in face, mouth and throat.
//!
//! The answers are typed so that what can't be can't be written ([`answer`]); the journal's fold of
//! them is [`Oral`].
//!
//! **Invariants:** an item without an answer was not tested, and "not tested" is never "as
//! expected". One press settles only the items it names.

pub mod answer;
pub mod findings;
mod record;
mod sighting;

pub use answer::{
    Answer, CoughFlow, Found, FoundId, FrontTeeth, Gag, Reason, Seen, Severity, Sides, Touches,
};
pub use record::{Cue, Oral};
pub use sighting::{FacePattern, Forehead, Sighting};
