//! The ratio of the longest s to the longest z.

use std::fmt;

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::compared::{Who, seconds};
use crate::clinical::tasks::longest::voice::Held;
use crate::measure::decimals::decimals;
use crate::measure::units::Ratio;

/// Adults: above this the larynx is to be looked at; 1.40 itself is not above (EB81, VDM10).
pub const S_Z_LIMIT: f64 = 1.4;
/// Adults: from here up to [`S_Z_LIMIT`] it is borderline. Local policy (CIE13).
pub const S_Z_BORDER: f64 = 1.2;

/// A ratio and what the rules say of it.
#[derive(Clone, Debug)]
pub struct SToZ {
    /// Rounded to hundredths, the form in which it is compared.
    pub ratio: Ratio,
    /// The value in words.
    pub value: String,
    /// What the rules say.
    pub flags: Vec<Flag>,
}

/// Why there is no ratio.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CannotCompute {
    /// s has no trial with a time.
    NoS,
    /// z has no trial with a time.
    NoZ,
    /// s was tried and not held at all.
    SNotHeld,
    /// z was tried and not held at all.
    ZNotHeld,
    /// The ratio is beyond every number.
    OutOfRange,
}

impl fmt::Display for CannotCompute {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("The ratio of s to z cannot be computed: ")?;
        f.write_str(match self {
            CannotCompute::NoS => "there is no time for s.",
            CannotCompute::NoZ => "there is no time for z.",
            CannotCompute::SNotHeld => "s was not held.",
            CannotCompute::ZNotHeld => "z was not held.",
            CannotCompute::OutOfRange => "please check both times.",
        })
    }
}

impl std::error::Error for CannotCompute {}

impl CannotCompute {
    /// It as a note, for the record: not computed is not "usual".
    pub fn flag(self) -> Flag {
        note(&rules::VOICE_S_Z, self.to_string())
    }
}

fn note(rule: &'static Rule, reason: String) -> Flag {
    rule.flag(Level::Note, Domain::SpeechVoice, reason)
}

/// Judges the ratio of the best s to the best z, rounded to hundredths before it is compared: 15.4
/// over 11.0 is a hair above 1.4 in binary, and 1.40 on paper.
///
/// Below 1.2 nothing is said beyond the number: people with a hoarse voice and no lesion had a
/// ratio of about 1.0 as well (EB81).
///
/// # Errors
/// [`CannotCompute`] where one of the two is missing or was not held.
pub fn s_to_z(s: Option<&Held>, z: Option<&Held>, who: &Who) -> Result<SToZ, CannotCompute> {
    let s = s.ok_or(CannotCompute::NoS)?.best();
    let z = z.ok_or(CannotCompute::NoZ)?.best();
    if s.get() == 0.0 {
        return Err(CannotCompute::SNotHeld);
    }
    if z.get() == 0.0 {
        return Err(CannotCompute::ZNotHeld);
    }
    let ratio = s
        .over(z)
        .map_err(|_| CannotCompute::OutOfRange)?
        .to_hundredths();
    let value = format!(
        "Longest s {}, longest z {}, ratio {} to 1",
        seconds(s),
        seconds(z),
        decimals(ratio.get(), 2)
    );
    let flags = judge(ratio, &value, who).into_iter().collect();
    Ok(SToZ {
        ratio,
        value,
        flags,
    })
}

fn judge(ratio: Ratio, value: &str, who: &Who) -> Option<Flag> {
    if !who.by_adult_rules() {
        let reason = format!(
            "{value}. In children it is reported, not judged: nodules often leave it normal, and \
             some healthy children reach 1.42."
        );
        return Some(note(&rules::VOICE_S_Z_CHILD, reason));
    }
    let age = who.age_remark();
    if ratio.get() > S_Z_LIMIT {
        let reason = format!(
            "{value}: above 1.4, a reason to have the larynx looked at; not a diagnosis.{age}"
        );
        return Some(rules::VOICE_S_Z.flag(Level::Refer, Domain::SpeechVoice, reason));
    }
    (ratio.get() >= S_Z_BORDER).then(|| {
        let reason = format!("{value}: borderline (1.2 to 1.4), not above the line of 1.4.{age}");
        note(&rules::VOICE_S_Z_BORDER, reason)
    })
}
