//! A task as data: what to say, what the pad does, what is asked, for whom it is meant.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::sign::SignTask;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::compare::Comparison;
use crate::measure::time::{Elapsed, Millis, Stamp};

/// A second press within this time after another is pointed out.
pub const QUICK: Millis = Millis(60);

/// How the time of a task ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Length {
    /// By itself after this long.
    Fixed(Millis),
    /// By itself after the length chosen on the page, or by a press where none was.
    Chosen,
    /// By the answer to this question: by itself after so long, or by a press.
    Answered(&'static str, &'static [(&'static str, Option<Millis>)]),
    /// By a press only.
    Open,
}

/// What the pad does.
#[derive(Clone, Copy, Debug)]
pub struct Pad {
    /// What one tap counts: one and many.
    pub counts: (&'static str, &'static str),
    /// What the pad says before the start.
    pub start: &'static str,
    /// How the time ends.
    pub length: Length,
    /// Whether the start is the first thing counted: the window opens with the first syllable.
    pub first_counts: bool,
    /// Whether a touch of the pad ends the time: nothing is counted, the whole pad is "stop".
    pub touch_ends: bool,
    /// The period of a beat that sounds and shows while the time runs.
    pub beat: Option<Millis>,
    /// How long after the start later taps are still kept, apart.
    pub late: Option<Millis>,
    /// What the end button says, where a press ends it.
    pub end: Option<&'static str>,
    /// How long the watch after the end lasts.
    pub watch: Option<Millis>,
    /// The sign buttons, by the column of the sign table.
    pub signs: Option<SignTask>,
    /// Whether "ready, set, go" is offered.
    pub countdown: bool,
}

/// When a question is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum When {
    /// Before the start.
    Before,
    /// After the end.
    After,
    /// After the watch.
    AfterWatch,
}

/// One choice of a question.
#[derive(Debug)]
pub struct Choice {
    /// Stable id, stored.
    pub id: &'static str,
    /// The words on the button.
    pub words: &'static str,
}

/// What a question takes.
#[derive(Debug)]
pub enum Takes {
    /// One of these.
    OneOf(&'static [Choice]),
    /// Free words, at most so many characters.
    Words(u16),
    /// A number.
    Number {
        /// Its unit, in words.
        unit: &'static str,
        /// Least, in the unit.
        least: i32,
        /// Most, in the unit.
        most: i32,
        /// What one press of the stepper changes, in the unit.
        step: i32,
    },
    /// A number in tenths, with a large stepper.
    Tenths {
        /// Its unit, in words.
        unit: &'static str,
        /// Least, in the unit.
        least: i32,
        /// Most, in the unit.
        most: i32,
    },
}

/// A question of a task.
#[derive(Debug)]
pub struct Question {
    /// Stable id, stored.
    pub id: &'static str,
    /// The question.
    pub ask: &'static str,
    /// When.
    pub when: When,
    /// What it takes.
    pub takes: Takes,
    /// Asked only when this earlier question has this answer.
    pub only_if: Option<(&'static str, &'static str)>,
    /// Whether the task is unfinished without it.
    pub needed: bool,
}

/// An answer that makes a trial whole without a press on the pad: it was tried, and could not even
/// be begun.
#[derive(Clone, Copy, Debug)]
pub struct Untimed {
    /// The question it answers.
    pub question: &'static str,
    /// The answers offered in the pad's stead.
    pub choices: &'static [Choice],
}

/// A task.
#[derive(Debug)]
pub struct TaskSpec {
    /// Which.
    pub id: TaskId,
    /// Its name: what it is, in full.
    pub title: &'static str,
    /// What the clinician does, one step a line.
    pub steps: &'static [&'static str],
    /// What is said to the patient, word for word.
    pub say: &'static str,
    /// Whether something is given by mouth: the gate and earlier signs then hold it up.
    pub by_mouth: bool,
    /// The pad.
    pub pad: Pad,
    /// What the questions before the start that need no answer are about.
    pub more: &'static str,
    /// The questions, in order.
    pub questions: &'static [Question],
    /// How many trials are asked for.
    pub trials: u8,
    /// Answers that are taken as given until somebody says otherwise: question and choice. Those
    /// of the trial before outrank them.
    pub usual: fn(&Exam) -> Vec<(&'static str, &'static str)>,
    /// The words that stand beside every result.
    pub caveat: &'static str,
    /// Its values beside the published ones.
    pub compare: fn(&Exam) -> Vec<Comparison>,
    /// What can be answered without a press on the pad; none where a trial needs one.
    pub untimed: Option<Untimed>,
    /// For whom it is meant.
    pub for_whom: &'static str,
    /// The rules that read it, whatever came out; none where nothing is read from it.
    pub rules: &'static [&'static Rule],
    /// Why it can't be given to this person, if it can't.
    pub not_for: fn(Option<Age>, &Policy) -> Option<Flag>,
}

/// Where a trial stands at a moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Not started.
    Ready,
    /// "Ready, set, go" is running; so long until go.
    Countdown(Millis),
    /// The time runs; its length so far.
    Running(Elapsed),
    /// The window is over; taps are kept apart. Time since the start.
    Late(Elapsed),
    /// The watch after the end runs; time since the end.
    Watching(Elapsed),
    /// Nothing runs any more.
    Over,
}

impl TaskSpec {
    /// The window's length in this trial, if it ends by itself.
    pub fn window(&self, trial: &Trial) -> Option<Millis> {
        match self.pad.length {
            Length::Fixed(length) => Some(length),
            Length::Chosen => trial.length,
            Length::Answered(question, lengths) => {
                let answer = trial.choice(question)?;
                lengths.iter().find(|(id, _)| *id == answer)?.1
            }
            Length::Open => None,
        }
    }

    /// The choice that is taken as given for a question of the trial to come: that of the trial
    /// before, else the usual one.
    pub fn assumed(&self, exam: &Exam, question: &str) -> Option<String> {
        let usual = (self.usual)(exam)
            .into_iter()
            .find(|(id, _)| *id == question)?;
        let before = exam
            .trials
            .iter()
            .rev()
            .filter(|t| t.task == self.id)
            .find_map(|t| t.choice(question));
        Some(before.unwrap_or(usual.1).to_owned())
    }

    /// Whether a trial was answered without a press on the pad.
    pub fn is_untimed(&self, trial: &Trial) -> bool {
        trial.start().is_none()
            && self
                .untimed
                .is_some_and(|u| trial.choice(u.question).is_some())
    }

    /// Whether a trial was tried: started, or answered without a press on the pad.
    pub fn is_tried(&self, trial: &Trial) -> bool {
        trial.start().is_some() || self.is_untimed(trial)
    }

    /// Where `trial` stands at `now`.
    pub fn phase(&self, trial: &Trial, now: Stamp) -> Phase {
        let Some(start) = trial.start() else {
            return if self.is_untimed(trial) {
                Phase::Over
            } else {
                Phase::Ready
            };
        };
        let since_start = trial.between(start, now);
        if let Some(length) = since_start.length
            && length < Millis::ZERO
            && trial.end().is_none()
        {
            return Phase::Countdown(Millis::ZERO - length);
        }
        if let Some(end) = trial.end() {
            return match self.pad.watch {
                Some(_) if trial.first(MarkKind::WatchOver).is_none() && !watch_cut(trial) => {
                    Phase::Watching(trial.between(end, now))
                }
                _ => Phase::Over,
            };
        }
        if trial.first(MarkKind::WindowOver).is_some() {
            let late_over = match (self.pad.late, since_start.length) {
                (Some(late), Some(length)) => length > late,
                _ => true,
            };
            return if late_over {
                Phase::Over
            } else {
                Phase::Late(since_start)
            };
        }
        Phase::Running(since_start)
    }

    /// What has come due by `now` and is to be recorded: the end of the window or of the watch.
    ///
    /// Called at every tick, and when the page comes back; a time that ran out while nobody
    /// looked is recorded then, and the stamps tell.
    pub fn due(&self, trial: &Trial, now: Stamp) -> Option<MarkKind> {
        let out = |elapsed: Elapsed, length: Millis| match elapsed.length {
            Some(so_far) => so_far >= length,
            // The length can't be known any more: nothing can be gained by waiting on.
            None => true,
        };
        match self.phase(trial, now) {
            Phase::Running(so_far) => self
                .window(trial)
                .filter(|length| out(so_far, *length))
                .map(|_| MarkKind::WindowOver),
            Phase::Watching(so_far) => self
                .pad
                .watch
                .filter(|length| out(so_far, *length))
                .map(|_| MarkKind::WatchOver),
            _ => None,
        }
    }

    /// The questions to ask at a stage, given what was answered.
    pub fn questions_at<'a>(
        &'a self,
        when: When,
        trial: &'a Trial,
    ) -> impl Iterator<Item = &'static Question> + 'a {
        self.questions.iter().filter(move |q| {
            q.when == when
                && q.only_if
                    .is_none_or(|(id, answer)| trial.choice(id) == Some(answer))
        })
    }
}

/// A choice by its id and its words.
pub const fn choice(id: &'static str, words: &'static str) -> Choice {
    Choice { id, words }
}

/// The question id under which free words on a trial are kept.
pub const REMARK: &str = "remark";

/// Free words on a trial, asked after it.
pub const fn remark() -> Question {
    Question {
        id: REMARK,
        ask: "Remark on this trial. No names.",
        when: When::After,
        takes: Takes::Words(80),
        only_if: None,
        needed: false,
    }
}

/// The question id under which an early end of the watch keeps its reason.
pub const WATCH_CUT: &str = "watch-cut";

/// The question id under which a task that could not be done keeps its reason.
pub const NOT_VALID: &str = "not-valid";

/// Whether the watch was ended early.
pub fn watch_cut(trial: &Trial) -> bool {
    trial.answers.contains_key(WATCH_CUT)
}

/// Why a number was not taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NumberError {
    /// Not a number.
    NotANumber,
    /// Outside the range, which is given with its unit.
    OutOfRange(i32, i32, &'static str),
    /// More than one decimal.
    TooFine,
}

/// Reads a number that was typed, into tenths of the unit. Takes a decimal comma too.
///
/// # Errors
/// [`NumberError`] with the words to show beside the field.
pub fn parse_tenths(
    typed: &str,
    least: i32,
    most: i32,
    unit: &'static str,
) -> Result<i32, NumberError> {
    let typed = typed.trim();
    let (minus, digits) = match typed.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, typed),
    };
    let (whole, part) = digits.split_once(['.', ',']).unwrap_or((digits, ""));
    let is_number = |s: &str| s.bytes().all(|b| b.is_ascii_digit());
    if whole.is_empty() || !is_number(whole) || !is_number(part) {
        return Err(NumberError::NotANumber);
    }
    let part = part.trim_end_matches('0');
    if part.len() > 1 {
        return Err(NumberError::TooFine);
    }
    let outside = NumberError::OutOfRange(least, most, unit);
    let Ok(size) = format!("{whole}{part:0<1}").parse::<i32>() else {
        // Only a number of more digits than any range has gets here.
        return Err(outside);
    };
    let tenths = if minus { -size } else { size };
    let inside = i64::from(least) * 10..=i64::from(most) * 10;
    if inside.contains(&i64::from(tenths)) {
        Ok(tenths)
    } else {
        Err(outside)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers() {
        assert_eq!(parse_tenths("15", 0, 90, "mL"), Ok(150));
        assert_eq!(parse_tenths("15,5", 0, 90, "mL"), Ok(155));
        assert_eq!(
            parse_tenths("-3", 0, 90, "mL"),
            Err(NumberError::OutOfRange(0, 90, "mL"))
        );
        assert_eq!(
            parse_tenths("120", 0, 90, "mL"),
            Err(NumberError::OutOfRange(0, 90, "mL"))
        );
        assert_eq!(
            parse_tenths("abc", 0, 90, "mL"),
            Err(NumberError::NotANumber)
        );
        assert_eq!(
            parse_tenths("inf", 0, 90, "mL"),
            Err(NumberError::NotANumber)
        );
        assert_eq!(parse_tenths("1.25", 0, 90, "mL"), Err(NumberError::TooFine));
    }
}
