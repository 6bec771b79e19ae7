//! What the trials by mouth share: signs with their times, the voice, the watch after them.
//!
//! The 90 mL have rules of their own in [`crate::clinical::tasks::water`]; the reading of a trial is the same.

pub mod lag;
pub mod questions;
pub mod reading;
pub mod saturation;
pub mod signs;
pub mod watched;
pub mod within;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{ByMouthFact, Missing, WhyNot};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::moment::Moment;
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth::questions::{VOICE_AFTER, VOICE_BEFORE};
use crate::clinical::tasks::by_mouth::reading::{Reading, Watch};
use crate::clinical::tasks::by_mouth::within::WATCH;
use crate::clinical::tasks::spec::{TaskSpec, When};
use crate::measure::time::{Millis, Stamp};

/// The trials of a task that were given, in order.
pub fn given(task: TaskId, exam: &Exam) -> impl DoubleEndedIterator<Item = &Trial> {
    let of = move |t: &&Trial| t.task == task && was_given(t);
    exam.trials.iter().filter(of)
}

/// Started, or with a sign in it though the entry of its start is lost.
fn was_given(trial: &Trial) -> bool {
    trial.start().is_some() || trial.signs().next().is_some()
}

/// The trials of a task that were opened after the last that was given, the newest first.
fn opened(task: TaskId, exam: &Exam) -> impl Iterator<Item = &Trial> {
    let trials = exam.trials.iter().rev().filter(move |t| t.task == task);
    trials.take_while(|t| !was_given(t))
}

/// Whether a question that several of these tasks ask is asked in this visit.
pub fn fits(task: TaskId, question: &str, exam: &Exam) -> bool {
    match question {
        saturation::LOWEST => saturation::was_read(exam),
        watched::WATCHED => watched::asked(task, exam),
        _ => true,
    }
}

/// Whether everything that must be asked after the trial was answered.
pub fn answered(spec: &TaskSpec, trial: &Trial, exam: &Exam) -> bool {
    [When::After, When::AfterWatch].iter().all(|when| {
        spec.questions_at(*when, trial)
            .all(|q| !q.needed || trial.answers.contains_key(q.id) || !spec.asks(q.id, exam))
    })
}

fn voice_before_open(spec: &TaskSpec, trial: &Trial) -> bool {
    let mut questions = spec.questions.iter();
    questions.any(|q| q.id == VOICE_BEFORE) && !trial.answers.contains_key(VOICE_BEFORE)
}

/// Why a trial was not given; none where it was, or where nobody said.
pub fn not_given(trial: &Trial) -> Option<WhyNot> {
    let reading = Reading::of(trial);
    reading.not_given.filter(|_| reading.start.is_none())
}

/// Why the next trial of a task was not given: what was said of those opened after the last that
/// was, or beside that one, which stands on the page until the next is opened.
pub fn refused(task: TaskId, exam: &Exam) -> Option<WhyNot> {
    let last = given(task, exam).next_back();
    let said = |trial: &Trial| Reading::of(trial).not_given;
    opened(task, exam).chain(last).find_map(said)
}

/// The voice as it was heard last before the trial to come, or before the newest.
pub fn heard_before(task: TaskId, exam: &Exam) -> Option<&str> {
    let heard = |t: &'_ Trial| t.choice(VOICE_BEFORE).is_some();
    let newest = opened(task, exam).find(|t| heard(t));
    newest.or(exam.latest(task))?.choice(VOICE_BEFORE)
}

/// A wet voice before something that was then not given, as the hold says it: told all the same.
pub fn wet_before(task: TaskId, exam: &Exam) -> Option<Flag> {
    let mut opened = opened(task, exam);
    let wet = opened.any(|t| t.choice(VOICE_BEFORE) == Some("wet"));
    let fact = ByMouthFact::WetBefore;
    wet.then(|| rules::GATE_SALIVA.flag(Level::Incomplete, Domain::EatingDrinking, fact))
}

/// Whether a moment lies between the start of a trial and the end of its watch. What the clocks
/// can't place does.
pub fn was_within(trial: &Trial, at: Stamp) -> bool {
    let since = |from| trial.between(from, at).length;
    let begun = trial.start().and_then(since);
    let ended = trial.end().and_then(since);
    begun.is_none_or(|l| l >= Millis::ZERO) && ended.is_none_or(|l| l <= WATCH)
}

/// What is still missing of a trial that was given; none where it is whole.
pub fn unfinished(spec: &TaskSpec, trial: &Trial, exam: &Exam) -> Option<Missing> {
    let reading = Reading::of(trial);
    match reading.watch {
        _ if reading.stopped => Some(Missing::End),
        Watch::NotBegun => Some(Missing::End),
        Watch::Running => Some(Missing::WatchRuns),
        Watch::Cut(why) => Some(Missing::WatchCut(why)),
        Watch::Whole if !answered(spec, trial, exam) => Some(Missing::Answers),
        Watch::Whole if voice_before_open(spec, trial) => Some(Missing::VoiceBefore),
        Watch::Whole if reading.is_voiceless() => Some(Missing::NoVoiceBefore),
        Watch::Whole => reading.unwatched.map(Missing::Unwatched),
    }
}

/// What speaks against the time of a watch of this task, as a note: of the newest that has such.
pub fn doubt(task: TaskId, exam: &Exam, rule: &'static Rule) -> Option<Flag> {
    let doubt = given(task, exam)
        .filter_map(|trial| Reading::of(trial).watch_doubt)
        .next_back()?;
    let fact = ByMouthFact::WatchDoubt(doubt);
    Some(rule.flag(Level::Note, Domain::EatingDrinking, fact))
}

/// What a task's rules say about each of its trials; a repeat never wipes out a sign that an
/// earlier one showed, nor anything else that was seen.
pub fn of_all(exam: &Exam, id: TaskId, judge: impl Fn(&Trial) -> Vec<Flag>) -> Vec<Flag> {
    let mut flags = Vec::new();
    // One that was opened and left clears nothing of the one before.
    let tells = |t: &&Trial| {
        t.task == id
            && (t.start().is_some() || t.signs().next().is_some() || not_given(t).is_some())
    };
    let mut trials = exam.trials.iter().filter(tells).peekable();
    if trials.peek().is_none() {
        return exam.latest(id).map_or(flags, judge);
    }
    while let Some(trial) = trials.next() {
        let newest = trials.peek().is_none();
        flags.extend(judge(trial).into_iter().filter(|f| {
            newest
                || !matches!(f.level(), Level::Incomplete | Level::Pass)
                || f.fact().of_sign().is_some()
        }));
    }
    flags
}

/// The voice as it is after the small sips, taken as given for what comes next: as it was heard after
/// the newest trial by mouth, where that is a sip.
///
/// **Invariant:** a voice that was not heard after that sip, or was heard too long ago or before a
/// choking, is never taken as given.
pub(super) fn voice_of_sips(exam: &Exam) -> Vec<(&'static str, Answer)> {
    let mut given = exam.trials.iter().rev();
    let newest = given.find(|t| t.task.is_by_mouth() && was_given(t));
    let heard = newest.filter(|t| t.task == TaskId::Sips).and_then(|sip| {
        let at = *sip.said_at.get(VOICE_AFTER)?;
        let choked = exam.choking_noted.is_some_and(|noted| !at.is_after(noted));
        let stands = !at.is_older(exam.now, exam.policy.moment_stands());
        let voice = sip.answers.get(VOICE_AFTER)?;
        (stands && !choked).then(|| (VOICE_BEFORE, voice.clone()))
    });
    heard.into_iter().collect()
}

/// Whether the voice before the trial to come is known: asked first, since without it no sign of the
/// voice can be judged.
pub(super) fn voice_is_known(task: TaskId, exam: &Exam) -> bool {
    let answered = opened(task, exam).any(|t| t.choice(VOICE_BEFORE).is_some());
    answered || !voice_of_sips(exam).is_empty()
}

/// When the voice was heard last: before or after a trial, or after a choking.
pub fn voice_heard_at(exam: &Exam) -> Option<Moment> {
    let heard = |t: &Trial| {
        let answered = |q: &&str| t.choice(q).is_some();
        let asked = [VOICE_BEFORE, VOICE_AFTER].into_iter().filter(answered);
        let at: Vec<Moment> = asked.filter_map(|q| t.said_at.get(q).copied()).collect();
        at
    };
    let in_trials = exam.trials.iter().flat_map(heard);
    let all = in_trials.chain(exam.choking_voice.map(|(_, at)| at));
    all.reduce(|a, b| if b.is_after(a) { b } else { a })
}

/// Whether the voice was wet after a choking, and was not heard since.
pub fn is_wet_since_choking(exam: &Exam) -> bool {
    let wet = exam.choking_voice.filter(|(voice, _)| *voice == "wet");
    wet.is_some_and(|(_, at)| voice_heard_at(exam) == Some(at))
}
