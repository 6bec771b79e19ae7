//! Oxygen saturation during a trial by mouth: asked only where it was read before, and judged for
//! respiratory safety alone.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{ByMouthFact, Came, Fact, WhenRead};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breathing;
use crate::clinical::tasks::breathing::Band;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::spec::{Question, When};

/// Question: the lowest SpO2 of a trial and its watch, in percent.
pub const LOWEST: &str = "lowest-spo2";

/// The question, for a task by mouth.
pub const fn lowest(when: When) -> Question {
    Question {
        id: LOWEST,
        when,
        takes: breathing::PERCENT,
        only_if: None,
        needed: false,
    }
}

/// Whether SpO2 was read before anything was given: else there is nothing to compare with.
pub fn was_read(exam: &Exam) -> bool {
    breathing::reading(exam).is_some_and(|reading| reading.spo2.is_some())
}

/// What the SpO2 of each trial of a task says: a stop where it was so low that nothing would be
/// given, or where it fell with a sign or faster breathing; else a note of what was read in the
/// trial, so that no reading is lost.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let trials = exam.trials.iter().enumerate();
    trials
        .filter(|(_, trial)| trial.task == task)
        .flat_map(|(at, _)| of_trial(at, exam))
        .collect()
}

/// Whether the SpO2 of a trial speaks against "no sign".
pub fn fell(trial: &Trial, exam: &Exam) -> bool {
    let at = exam.trials.iter().position(|t| t.number == trial.number);
    at.is_some_and(|at| of_trial(at, exam).iter().any(|f| f.level() > Level::Note))
}

fn of_trial(at: usize, exam: &Exam) -> Vec<Flag> {
    // Where nothing is swallowed it is a reading as any other.
    if exam.trials[at].task.sign_column().is_none() {
        return Vec::new();
    }
    let before = before(at, exam);
    let during = exam.trials[at].number(LOWEST);
    let mut flags: Vec<Flag> = during
        .map(|lowest| flag(before, lowest, WhenRead::During, at, exam))
        .into_iter()
        .collect();
    // Read on the page of the breaths once it was given: told there, judged here too.
    if let Some(after) = after(at, exam).filter(|after| during.is_none_or(|d| *after < d)) {
        let read = match exam.trials[at].task {
            TaskId::Meal => WhenRead::AfterMeal,
            _ => WhenRead::After,
        };
        let judged = flag(before, after, read, at, exam);
        flags.extend(Some(judged).filter(|f| !is_steady(f)));
    }
    flags
}

/// Whether a reading was neither low nor a fall.
fn is_steady(flag: &Flag) -> bool {
    let Fact::ByMouth(ByMouthFact::Saturation { came, .. }) = flag.fact() else {
        return true;
    };
    *came == Came::Steady
}

fn percent(tenths: i32) -> f64 {
    f64::from(tenths) / 10.0
}

/// The readings on the page of the breaths.
fn readings(trials: &[Trial]) -> impl Iterator<Item = f64> + '_ {
    let breathing = trials.iter().filter(|t| t.task == TaskId::Breathing);
    breathing.filter_map(|t| t.number(breathing::SATURATION))
}

/// What was read before a trial: as it stood at its start, else the highest of the readings
/// before it.
fn before(at: usize, exam: &Exam) -> Option<f64> {
    let stood = exam.trials[at].spo2_before.map(percent);
    stood.or_else(|| readings(&exam.trials[..at]).reduce(f64::max))
}

/// The lowest of what was read after a trial and before the next.
fn after(at: usize, exam: &Exam) -> Option<f64> {
    // Without what stood at its start there is nothing to compare with.
    exam.trials[at].start()?;
    exam.trials[at].spo2_before?;
    let later = &exam.trials[at + 1..];
    let given = |t: &Trial| t.task.is_by_mouth() && t.start().is_some();
    let next = later.iter().position(given);
    // A reading typed over the one before it stands in its place.
    let now = match next {
        Some(next) => later[next].spo2_before.map(percent),
        None => breathing::reading(exam).and_then(|reading| reading.spo2),
    };
    let between = readings(&later[..next.unwrap_or(later.len())]);
    between.chain(now).reduce(f64::min)
}

/// What a reading means, and how grave that is: low is low, whatever it was before; a fall above
/// that is told, and with a sign or faster breathing it stops.
fn flag(before: Option<f64>, lowest: f64, read: WhenRead, at: usize, exam: &Exam) -> Flag {
    let target = breathing::reading(exam).and_then(|reading| reading.target);
    // A child's usual values stand in its chart; a reading that holds an adult clears no child.
    let low = breathing::spo2_band(lowest, target, &exam.policy) == Band::Block;
    let fall = f64::from(exam.policy.spo2_fall);
    let fell = before.is_some_and(|before| before - lowest > fall);
    let signs = Reading::of(&exam.trials[at]).signs();
    let with_sign = signs.iter().any(|sign| !sign.is_late());
    let (rule, level, came) = match (low, fell) {
        (true, _) => (&rules::BREATHING_SPO2_LOW, Level::Stop, Came::Low),
        (false, true) if with_sign => (&rules::BREATHING_SPO2_FALL, Level::Stop, Came::WithSign),
        (false, true) if breathes_faster(at, exam) => (
            &rules::BREATHING_SPO2_FALL,
            Level::Stop,
            Came::BreathesFaster,
        ),
        (false, true) => (&rules::BREATHING_SPO2_FALL, Level::Note, Came::Fell),
        (false, false) => (&rules::BREATHING_SPO2, Level::Note, Came::Steady),
    };
    let fact = ByMouthFact::Saturation {
        before,
        lowest,
        read,
        came,
    };
    rule.flag(level, Domain::EatingDrinking, fact)
}

/// Whether an adult's breaths, counted or entered since a trial, are faster than usual, and than before
/// it.
fn breathes_faster(at: usize, exam: &Exam) -> bool {
    let rates = |trials: &[Trial]| {
        let breaths = trials.iter().filter(|t| t.task == TaskId::Breathing);
        let rates = breaths.flat_map(|t| breathing::read(t).rates);
        rates.map(|(rate, _)| rate).max()
    };
    let (before, since) = (rates(&exam.trials[..at]), rates(&exam.trials[at + 1..]));
    let fast = |rate: u16| i32::from(rate) >= exam.policy.breaths_caution_high;
    exam.who().by_adult_rules() && since.is_some_and(|rate| fast(rate) && Some(rate) > before)
}
