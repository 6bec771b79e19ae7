//! Two or more of six signs, in adults after a stroke.

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
    fn with_words(&self) -> [(Looked, &'static str); 6] {
        [
            (self.voice, "changed voice"),
            (self.speech, "slurred speech"),
            (self.gag, "weak or missing gag"),
            (self.cough_on_request, "weak cough on request"),
            (self.cough_after, "cough after the swallow"),
            (self.voice_after, "changed voice after the swallow"),
        ]
    }
}

/// Local policy. By default the gag is left out: it is missing in many healthy people.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Setting {
    /// The gag counts among the six, as published.
    pub gag_counts: bool,
}

/// How many were tested and found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tested {
    /// Found.
    pub present: usize,
    /// Tested.
    pub tested: usize,
    /// Signs that count: six, or five without the gag.
    pub of: usize,
}

impl Tested {
    /// "4 of 6 tested".
    pub fn words(&self) -> String {
        format!("{} of {} tested", self.tested, self.of)
    }
}

/// The signs that count under a setting.
fn counting(signs: &SixSigns, setting: Setting) -> Vec<(Looked, &'static str)> {
    let mut counting = signs.with_words().to_vec();
    if !setting.gag_counts {
        counting.remove(2);
    }
    counting
}

/// Counts what was tested and found.
pub fn tested(signs: &SixSigns, setting: Setting) -> Tested {
    let counting = counting(signs, setting);
    Tested {
        present: counting.iter().filter(|(l, _)| l.is_present()).count(),
        tested: counting.iter().filter(|(l, _)| !l.is_open()).count(),
        of: counting.len(),
    }
}

/// What the rules say. Without an age the rules for adults are used. No flag means: fewer than
/// two, and the untested ones can't make it two. That clears nobody, so it is no "no sign seen".
pub fn judge(signs: &SixSigns, age: Option<Age>, setting: Setting) -> Vec<Flag> {
    let eating = Domain::EatingDrinking;
    if age.is_some_and(|age| !age.is_adult()) {
        return vec![rules::SIX_SIGNS_ADULTS.flag(
            Level::Note,
            eating,
            "the rule of two signs was studied in adults and is not used here",
        )];
    }
    let t = tested(signs, setting);
    let counting = counting(signs, setting);
    let list = |wanted: fn(Looked) -> bool| {
        let words: Vec<&str> = counting
            .iter()
            .filter(|(looked, _)| wanted(*looked))
            .map(|(_, words)| *words)
            .collect();
        words.join(", ")
    };
    let mut flags = Vec::new();
    if t.present >= ENOUGH {
        flags.push(rules::SIX_SIGNS_TWO.flag(
            Level::Refer,
            eating,
            format!(
                "two or more signs seen: {} ({})",
                list(Looked::is_present),
                t.words()
            ),
        ));
    } else if t.present + (t.of - t.tested) >= ENOUGH {
        flags.push(rules::SIX_SIGNS_INCOMPLETE.flag(
            Level::Incomplete,
            eating,
            format!(
                "signs after a stroke, {}; still open: {}",
                t.words(),
                list(Looked::is_open)
            ),
        ));
    }
    if !setting.gag_counts && !signs.gag.is_open() {
        flags.push(rules::SIX_SIGNS_GAG.flag(
            Level::Note,
            eating,
            "the gag was tested and is not counted: it is missing in many healthy people",
        ));
    }
    flags
}
