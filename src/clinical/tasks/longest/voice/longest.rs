//! The longest "ah", s and z.

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::norms::{Method, Task};
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::compared::{
    BELOW_USUAL, CAVEAT, Compared, Judged, NotCompared, Who, no_norm,
};
use crate::clinical::tasks::longest::voice::Held;

/// Adults: an "ah" shorter than so many seconds is a note. Local policy (VDOC).
pub const ADULT_SHORT: f64 = 10.0;

/// What is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sound {
    /// "ah".
    Ah,
    /// s.
    S,
    /// z.
    Z,
}

impl Sound {
    /// All, in order.
    pub const ALL: [Sound; 3] = [Sound::Ah, Sound::S, Sound::Z];

    /// Its task in the tables.
    pub const fn task(self) -> Task {
        match self {
            Sound::Ah => Task::Ah,
            Sound::S => Task::S,
            Sound::Z => Task::Z,
        }
    }

    /// In words, to begin a sentence.
    pub(super) const fn words(self) -> &'static str {
        match self {
            Sound::Ah => "Longest \"ah\"",
            Sound::S => "Longest s",
            Sound::Z => "Longest z",
        }
    }
}

/// Judges how long a sound was held, by the best trial.
///
/// Never above a note, and never a pass: the spread among healthy people is wide, and published
/// samples differ. Only "ah" is judged at all; s and z are for their ratio.
pub fn longest(sound: Sound, held: &Held, who: &Who) -> Judged {
    let value = format!("{}: {}", sound.words(), held.words());
    let compared =
        Compared::find(sound.task(), Method::Longest, held.best(), who).map_err(NotCompared::from);
    let mut flags = Vec::new();
    if sound == Sound::Ah && who.by_adult_rules() {
        flags.extend(short_adult(&value, held, who));
    }
    match &compared {
        Ok(compared) if sound == Sound::Ah && !who.by_adult_rules() => {
            flags.extend(child(&value, compared));
        }
        Ok(_) => {}
        Err(why) => flags.push(no_norm(&value, why)),
    }
    Judged {
        value,
        compared,
        flags,
    }
}

fn short_adult(value: &str, held: &Held, who: &Who) -> Option<Flag> {
    // By whole milliseconds, as it is timed and shown.
    let millis = (held.best().get() * 1000.0).round();
    (millis < ADULT_SHORT * 1000.0).then(|| {
        let reason = format!(
            "{value}: under 10 seconds. The spread among healthy people is wide, and a short one \
             is not specific to the larynx: frailty shortens it too.{} {CAVEAT}",
            who.age_remark()
        );
        rules::VOICE_LONGEST_AH.flag(Level::Note, Domain::SpeechVoice, reason)
    })
}

/// What the comparison says of a child; nothing where the group has no published spread.
fn child(value: &str, compared: &Compared) -> Option<Flag> {
    let stands = compared.stands()?;
    let says = if compared.is_worse_by(BELOW_USUAL) {
        "short beside this group"
    } else {
        "not short beside this group, which proves little: other samples of children hold longer"
    };
    let group = compared.group();
    let reason = format!("{value}: {says}; {stands}. {group} {CAVEAT}");
    Some(rules::VOICE_LONGEST_CHILD.flag(Level::Note, Domain::SpeechVoice, reason))
}
