//! Two or more of six signs, in adults after a stroke.

use crate::clinical::findings::fact::{OfSix, SixSignsFact, Tested};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::rules;

/// So many signs are a reason to refer (source: DAN97).
pub const ENOUGH: usize = 2;

/// The six signs as they were tested (definitions: DAN06T).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct SixSigns {
    /// Voice changed in quality, pitch or loudness.
    pub voice: Looked,
    /// Speech slurred.
    pub speech: Looked,
    /// Gag absent or weak, on one or both sides.
    pub gag: Looked,
    /// Cough on request weak, spoken or absent.
    pub cough_on_request: Looked,
    /// Cough at once or within one minute after a sip.
    pub cough_after: Looked,
    /// Voice changed after a sip.
    pub voice_after: Looked,
}

impl SixSigns {
    fn each(&self) -> [(OfSix, Looked); 6] {
        [
            (OfSix::Voice, self.voice),
            (OfSix::Speech, self.speech),
            (OfSix::Gag, self.gag),
            (OfSix::CoughOnRequest, self.cough_on_request),
            (OfSix::CoughAfter, self.cough_after),
            (OfSix::VoiceAfter, self.voice_after),
        ]
    }

    /// Those that count under a setting.
    fn counting(&self, setting: Setting) -> impl Iterator<Item = (OfSix, Looked)> {
        let counts = move |sign: OfSix| setting.gag_counts || sign != OfSix::Gag;
        self.each()
            .into_iter()
            .filter(move |(sign, _)| counts(*sign))
    }
}

/// Local policy. By default the gag is left out: it is missing in many healthy people.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Setting {
    /// The gag counts among the six, as published.
    pub gag_counts: bool,
}

/// Counts what was tested and found.
pub fn tested(signs: &SixSigns, setting: Setting) -> Tested {
    let count = |wanted: fn(Looked) -> bool| {
        let counting = signs.counting(setting);
        counting.filter(|(_, looked)| wanted(*looked)).count()
    };
    Tested {
        present: count(Looked::is_present),
        tested: count(|looked| !looked.is_open()),
        of: count(|_| true),
    }
}

/// What the rules say. Without an age the rules for adults are used. No flag means: fewer than
/// two, and the untested ones can't make it two. That clears nobody, so it is no "no sign seen".
pub fn judge(signs: &SixSigns, age: Option<Age>, setting: Setting) -> Vec<Flag> {
    let eating = Domain::EatingDrinking;
    if age.is_some_and(|age| !age.is_adult()) {
        let fact = SixSignsFact::NotReadInChildren;
        return vec![rules::SIX_SIGNS_ADULTS.flag(Level::Note, eating, fact)];
    }
    let tested = tested(signs, setting);
    let those = |wanted: fn(Looked) -> bool| -> Vec<OfSix> {
        let counting = signs.counting(setting);
        let wanted = counting.filter(|(_, looked)| wanted(*looked));
        wanted.map(|(sign, _)| sign).collect()
    };
    let mut flags = Vec::new();
    if tested.present >= ENOUGH {
        let found = those(Looked::is_present);
        let fact = SixSignsFact::Enough { found, tested };
        flags.push(rules::SIX_SIGNS_TWO.flag(Level::Refer, eating, fact));
    } else if tested.present + (tested.of - tested.tested) >= ENOUGH {
        let open = those(Looked::is_open);
        let fact = SixSignsFact::Open { open, tested };
        flags.push(rules::SIX_SIGNS_INCOMPLETE.flag(Level::Incomplete, eating, fact));
    }
    if !setting.gag_counts && !signs.gag.is_open() {
        let fact = SixSignsFact::GagNotCounted;
        flags.push(rules::SIX_SIGNS_GAG.flag(Level::Note, eating, fact));
    }
    flags
}
