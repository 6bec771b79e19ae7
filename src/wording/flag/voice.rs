//! Sentences about how long a sound is held, s to z, the range of pitch.

use crate::clinical::findings::fact::VoiceFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &VoiceFact, _flag: &Flag) -> String {
    match *fact {}
}
