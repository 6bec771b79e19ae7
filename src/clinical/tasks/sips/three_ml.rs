//! 3 mL of cold water under the tongue, then two more dry swallows (modified water swallowing
//! test).
//!
//! Out of what was seen come the published grade in both wordings that are in use, and two flags.
//! The other signs of such a sip are those of any sip. A grade is for the record and for comparison.

use crate::clinical::findings::fact::{SipsFact, Tries};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::policy::Wording;
use crate::clinical::knowledge::rules;

/// Dry swallows expected within 30 s after a swallow without a sign (source: STM).
pub const EXTRA: u8 = 2;

/// One run as it was seen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Run {
    /// A swallow was felt.
    pub swallowed: Looked,
    /// A cough, at once or while watching.
    pub cough: Looked,
    /// The voice turned wet.
    pub wet_voice: Looked,
    /// Breathing changed, or distress.
    pub breathing_change: Looked,
    /// Residue in the mouth.
    pub residue: Looked,
    /// Dry swallows within 30 s after it; none where they were not asked for.
    pub extra: Option<u8>,
}

/// The published grade of a run, the worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// No swallow and no reaction: printed as "not rated", here the worst of all.
    NotRated,
    /// No swallow, with a reaction.
    One,
    /// A swallow, with a change of breathing.
    Two,
    /// A swallow, with a cough or a wet voice; in wording B also with residue.
    Three,
    /// A swallow without a sign, fewer than two more dry swallows.
    Four,
    /// A swallow without a sign, and two more dry swallows.
    Five,
}

impl Run {
    /// The grade, or none where something it hangs on was not looked at.
    pub fn grade(&self, wording: Wording) -> Option<Grade> {
        match (self.swallowed, self.reaction()) {
            (Looked::Present, _) => {}
            (Looked::Absent, Looked::Present) => return Some(Grade::One),
            (Looked::Absent, Looked::Absent) => return Some(Grade::NotRated),
            (Looked::Absent, Looked::NotTested) | (Looked::NotTested, _) => return None,
        }
        // In the order of the printed lists: the first that is there decides.
        let steps = match wording {
            Wording::A => [
                (self.breathing_change, Grade::Two),
                (Looked::any(&[self.cough, self.wet_voice]), Grade::Three),
                (Looked::Absent, Grade::Three),
            ],
            Wording::B => [
                (self.cough, Grade::Three),
                (self.breathing_change, Grade::Two),
                (Looked::any(&[self.wet_voice, self.residue]), Grade::Three),
            ],
        };
        for (looked, grade) in steps {
            match looked {
                Looked::Present => return Some(grade),
                Looked::NotTested => return None,
                Looked::Absent => {}
            }
        }
        self.extra
            .map(|n| if n < EXTRA { Grade::Four } else { Grade::Five })
    }

    fn reaction(&self) -> Looked {
        Looked::any(&[self.cough, self.wet_voice, self.breathing_change])
    }
}

/// The worst grade of the runs that can be graded, in both wordings; none without such a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Grades {
    /// By wording A.
    pub a: Option<Grade>,
    /// By wording B.
    pub b: Option<Grade>,
}

/// Both grades of a test. The order of its runs has no meaning.
pub fn grades(runs: &[Run]) -> Grades {
    let worst = |wording| runs.iter().filter_map(|run| run.grade(wording)).min();
    Grades {
        a: worst(Wording::A),
        b: worst(Wording::B),
    }
}

/// What the rules say about the sips of 3 mL, besides what they say of any sip.
pub fn judge(runs: &[Run], wording: Wording) -> Vec<Flag> {
    let tries = |shows: &dyn Fn(&Run) -> bool| {
        let n = runs.iter().filter(|run| shows(run)).count();
        let of = runs.len();
        (n > 0).then_some(Tries { n, of })
    };
    // Without a swallow, what is in the mouth is no residue of one.
    let residue = tries(&|run| !run.swallowed.is_absent() && run.residue.is_present());
    let residue = residue.map(|tries| {
        let counts = wording == Wording::B;
        let level = if counts { Level::Refer } else { Level::Note };
        let fact = SipsFact::Residue { tries, counts };
        rules::THREE_ML_RESIDUE.flag(level, Domain::EatingDrinking, fact)
    });
    // Below the published line for referring, and no "no sign seen" either.
    let few = tries(&|run| run.grade(wording) == Some(Grade::Four));
    let few = few.map(|tries| {
        let fact = SipsFact::FewExtra(tries);
        rules::SIPS_UNFINISHED.flag(Level::Incomplete, Domain::EatingDrinking, fact)
    });
    residue.into_iter().chain(few).collect()
}
