//! The longest "ah", s and z.

use crate::clinical::findings::fact::VoiceFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::measured::Measured;
use crate::clinical::findings::speech::{Held, Sound};
use crate::clinical::knowledge::norms::{Compared, Method, NotCompared, Who};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::compared::{BELOW_USUAL, Judged, no_norm};

/// Adults: an "ah" shorter than so many seconds is a note. Local policy (VDOC).
pub const ADULT_SHORT: f64 = 10.0;

/// Judges how long a sound was held, by the best trial.
///
/// Never above a note, and never a pass: the spread among healthy people is wide, and published
/// samples differ. Only "ah" is judged at all; s and z are for their ratio.
pub fn longest(sound: Sound, held: &Held, who: &Who) -> Judged {
    let value = Measured::Held(sound, held.clone());
    let compared =
        Compared::find(sound.task(), Method::Longest, held.best(), who).map_err(NotCompared::from);
    let mut flags = Vec::new();
    if sound == Sound::Ah && who.by_adult_rules() {
        flags.extend(short_adult(held, who));
    }
    match &compared {
        Ok(compared) if sound == Sound::Ah && !who.by_adult_rules() => {
            flags.extend(child(held, *compared));
        }
        Ok(_) => {}
        Err(why) => flags.push(no_norm(value.clone(), *why)),
    }
    Judged {
        value,
        compared,
        flags,
    }
}

fn note(rule: &'static Rule, fact: VoiceFact) -> Flag {
    rule.flag(Level::Note, Domain::SpeechVoice, fact)
}

fn short_adult(held: &Held, who: &Who) -> Option<Flag> {
    // By whole milliseconds, as it is timed and shown.
    (held.best().millis().seconds() < ADULT_SHORT).then(|| {
        let fact = VoiceFact::ShortAh {
            held: held.clone(),
            age_given: who.age.is_some(),
        };
        note(&rules::VOICE_LONGEST_AH, fact)
    })
}

/// What the comparison says of a child; nothing where the group has no published spread.
fn child(held: &Held, compared: Compared) -> Option<Flag> {
    compared.place.z?;
    let fact = VoiceFact::AhOfChild {
        held: held.clone(),
        compared,
        short: compared.is_worse_by(BELOW_USUAL),
    };
    Some(note(&rules::VOICE_LONGEST_CHILD, fact))
}
