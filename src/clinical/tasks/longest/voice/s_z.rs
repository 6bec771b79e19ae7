//! The ratio of the longest s to the longest z.

use crate::clinical::findings::fact::{NoRatio, VoiceFact};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::speech::{Held, SToZ};
use crate::clinical::knowledge::norms::Who;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;

/// Adults: above this the larynx is to be looked at; 1.40 itself is not above (EB81, VDM10).
pub const S_Z_LIMIT: f64 = 1.4;
/// Adults: from here up to [`S_Z_LIMIT`] it is borderline. Local policy (CIE13).
pub const S_Z_BORDER: f64 = 1.2;

/// A ratio and what the rules say of it.
#[derive(Clone, Debug)]
pub struct JudgedRatio {
    /// The ratio and both times.
    pub value: SToZ,
    /// What the rules say; none below the borderline.
    pub flag: Option<Flag>,
}

/// That there is no ratio, as a note for the record: not computed is not "usual".
pub fn no_ratio(why: NoRatio) -> Flag {
    note(&rules::VOICE_S_Z, VoiceFact::NoRatio(why))
}

fn note(rule: &'static Rule, fact: VoiceFact) -> Flag {
    rule.flag(Level::Note, Domain::SpeechVoice, fact)
}

/// Judges the ratio of the best s to the best z, rounded to hundredths before it is compared: 15.4
/// over 11.0 is a hair above 1.4 in binary, and 1.40 on paper.
///
/// Below 1.2 nothing is said beyond the number: people with a hoarse voice and no lesion had a
/// ratio of about 1.0 as well (EB81).
///
/// # Errors
/// [`NoRatio`] where one of the two is missing or was not held.
pub fn s_to_z(s: Option<&Held>, z: Option<&Held>, who: &Who) -> Result<JudgedRatio, NoRatio> {
    let s = s.ok_or(NoRatio::NoS)?.best();
    let z = z.ok_or(NoRatio::NoZ)?.best();
    if s.get() == 0.0 {
        return Err(NoRatio::SNotHeld);
    }
    if z.get() == 0.0 {
        return Err(NoRatio::ZNotHeld);
    }
    let ratio = s.over(z).map_err(|_| NoRatio::OutOfRange)?.to_hundredths();
    let value = SToZ { s, z, ratio };
    Ok(JudgedRatio {
        value,
        flag: judge(value, who),
    })
}

fn judge(ratio: SToZ, who: &Who) -> Option<Flag> {
    if !who.by_adult_rules() {
        return Some(note(
            &rules::VOICE_S_Z_CHILD,
            VoiceFact::RatioOfChild(ratio),
        ));
    }
    let adult = |above| VoiceFact::Ratio {
        ratio,
        above,
        age_given: who.age.is_some(),
    };
    if ratio.ratio.get() > S_Z_LIMIT {
        return Some(rules::VOICE_S_Z.flag(Level::Refer, Domain::SpeechVoice, adult(true)));
    }
    (ratio.ratio.get() >= S_Z_BORDER).then(|| note(&rules::VOICE_S_Z_BORDER, adult(false)))
}
