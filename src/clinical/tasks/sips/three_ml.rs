//! 3 mL of cold water under the tongue, then two more dry swallows (modified water swallowing
//! test).
//!
//! The signs are kept. Out of them come the published grade in both wordings that are in use, and
//! the flags. A grade is for the record and for comparison; what a person reads are words.

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::policy::Wording;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::{Sign, SignTask, meaning};

/// Runs it takes to call the test clear (source: STM).
pub const RUNS: usize = 3;
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

impl Grade {
    /// In words for a sentence.
    pub const fn words(self) -> &'static str {
        match self {
            Grade::NotRated => "no swallow and no reaction",
            Grade::One => "no swallow, but a reaction",
            Grade::Two => "a swallow with a change of breathing",
            Grade::Three => "a swallow with a cough, a wet voice or residue",
            Grade::Four => "a swallow without a sign, but not two more dry swallows",
            Grade::Five => "a swallow without a sign, and two more dry swallows",
        }
    }

    /// Whether the test is given once more after a run like this.
    pub fn repeats(self, wording: Wording) -> bool {
        match wording {
            Wording::A => self == Grade::Five,
            Wording::B => self >= Grade::Four,
        }
    }
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

    /// Whether it shows something that ends the test.
    fn has_sign(&self, wording: Wording) -> bool {
        self.swallowed.is_absent()
            || self.reaction().is_present()
            || wording == Wording::B && self.residue.is_present()
    }
}

/// Whether a run shows something.
type Shows<'a> = &'a dyn Fn(&Run) -> bool;

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

/// What the rules say about the runs of one test.
pub fn judge(runs: &[Run], wording: Wording) -> Vec<Flag> {
    let mut flags = Vec::new();
    let of_sign = |sign| meaning(sign, SignTask::ThreeMl).0;
    // No swallow comes first: what was seen besides is its reaction, not a sign after a swallow.
    let silent = |run: &Run| run.swallowed.is_absent() && !run.reaction().is_present();
    let reacted = |run: &Run| run.swallowed.is_absent() && run.reaction().is_present();
    let after = |looked: Looked, run: &Run| !run.swallowed.is_absent() && looked.is_present();
    let mut tell = |rule: &'static Rule, level, words: &str, shows: Shows| {
        let n = runs.iter().filter(|run| shows(run)).count();
        if n > 0 {
            let which = match runs.len() {
                1 => String::new(),
                all => format!(" (in {n} of {all} tries)"),
            };
            let words = format!("3 mL of water: {words}{which}");
            flags.push(rule.flag(level, Domain::EatingDrinking, words));
        }
    };
    tell(
        &rules::THREE_ML_NO_REACTION,
        of_sign(Sign::NoSwallow),
        "no swallow and no reaction",
        &silent,
    );
    tell(
        &rules::THREE_ML_NO_SWALLOW,
        of_sign(Sign::NoSwallow),
        "no swallow, but a cough or another reaction",
        &reacted,
    );
    tell(
        &rules::THREE_ML_BREATHING,
        of_sign(Sign::BreathingChange),
        "breathing changed",
        &|run| after(run.breathing_change, run),
    );
    tell(
        &rules::THREE_ML_SIGN,
        of_sign(Sign::Cough),
        "coughed",
        &|run| after(run.cough, run),
    );
    tell(
        &rules::THREE_ML_SIGN,
        of_sign(Sign::VoiceChange),
        "voice turned wet",
        &|run| after(run.wet_voice, run),
    );
    let (level, words) = match wording {
        Wording::A => (
            Level::Note,
            "residue in the mouth, which the wording in use does not count",
        ),
        Wording::B => (Level::Refer, "residue in the mouth"),
    };
    tell(&rules::THREE_ML_RESIDUE, level, words, &|run| {
        after(run.residue, run)
    });
    tell(
        &rules::THREE_ML_EXTRA,
        Level::Note,
        "fewer than two more dry swallows within 30 seconds",
        &|run| run.grade(wording) == Some(Grade::Four),
    );
    flags.extend(unfinished(runs, wording).into_iter().map(|words| {
        rules::THREE_ML_UNFINISHED.flag(Level::Incomplete, Domain::EatingDrinking, words)
    }));
    if runs.len() >= RUNS && runs.iter().all(|r| r.grade(wording) == Some(Grade::Five)) {
        flags.push(rules::THREE_ML_CLEAR.flag(
            Level::Pass,
            Domain::EatingDrinking,
            "3 mL of water, three times: swallowed without a sign, and two more dry swallows",
        ));
    }
    flags
}

/// What is missing, in words.
fn unfinished(runs: &[Run], wording: Wording) -> Vec<String> {
    if runs.is_empty() {
        return vec!["3 mL of water not given".to_owned()];
    }
    let mut missing = Vec::new();
    // A run that shows a sign needs no more looking at; one without needs all of it.
    let unseen = |part: Shows| {
        runs.iter()
            .any(|run| !run.has_sign(wording) && run.grade(wording).is_none() && part(run))
    };
    let parts: [(&str, Shows); 6] = [
        ("the swallow", &|r| r.swallowed.is_open()),
        ("a cough", &|r| r.cough.is_open()),
        ("the voice", &|r| r.wet_voice.is_open()),
        ("breathing", &|r| r.breathing_change.is_open()),
        ("residue", &|r| wording == Wording::B && r.residue.is_open()),
        ("two more dry swallows", &|r| r.extra.is_none()),
    ];
    let open: Vec<&str> = parts
        .iter()
        .filter(|(_, part)| unseen(*part))
        .map(|(words, _)| *words)
        .collect();
    if !open.is_empty() {
        missing.push(format!("3 mL of water: not looked at: {}", open.join(", ")));
    }
    let over = runs.len() >= RUNS
        || runs.iter().any(|run| {
            run.has_sign(wording) || run.grade(wording).is_some_and(|g| !g.repeats(wording))
        });
    if !over {
        missing.push(format!(
            "3 mL of water: {} of {RUNS} tries done",
            runs.len()
        ));
    }
    missing
}
