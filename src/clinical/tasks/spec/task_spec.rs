//! A task as data.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::next_trial::NextTrial;
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::compare::Comparison;
use crate::clinical::tasks::spec::pad::Pad;
use crate::clinical::tasks::spec::question::{Question, REMARK, Untimed, When};

/// What a task shows besides its figures.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shows {
    /// Nothing.
    #[default]
    Figures,
    /// A table of what was given, a row for what was given alike.
    Table,
    /// One time line of all that was pressed, and notes on it.
    Tally,
    /// No pad: what the visit recorded already, and what is still to be asked.
    Found,
}

/// A task: what every one of them may have of its own. [`TaskSpec::plain`] has the rest.
#[derive(Debug)]
pub struct TaskSpec {
    /// Which.
    pub id: TaskId,
    /// Its name in an address.
    pub slug: &'static str,
    /// The pad.
    pub pad: Pad,
    /// The questions, in order.
    pub questions: &'static [Question],
    /// How many trials are asked for.
    pub trials: u8,
    /// How many of these are used up: a trial without a known time leaves its place to the next,
    /// one that could not be done does not.
    pub used: fn(TaskId, &Exam) -> usize,
    /// Answers that are taken as given until somebody says otherwise: question and choice. Those
    /// of the trial before outrank them.
    pub usual: fn(&Exam) -> Vec<(&'static str, &'static str)>,
    /// Answers taken as given for the trial to come, besides the usual.
    pub taken_over: fn(&Exam) -> Vec<(&'static str, Answer)>,
    /// The question whose answer one to another question takes the place of.
    pub instead: fn(&str) -> Option<&'static str>,
    /// Whether a question is asked in this visit at all; see [`TaskSpec::asks`].
    pub fits: fn(&str, &Exam) -> bool,
    /// What can be answered without a press on the pad; none where a trial needs one.
    pub untimed: Option<Untimed>,
    /// Whether its studies are in adults: for a child the clinician decides, and says why.
    pub studied_in_adults: bool,
    /// Why it can't be given to this person, if it can't.
    pub not_for: fn(TaskId, &Exam) -> Option<Flag>,
    /// Its values beside the published ones.
    pub compare: fn(TaskId, &Exam) -> Vec<Comparison>,
    /// The rules that read it, whatever came out; none where nothing is read from it.
    pub rules: &'static [&'static Rule],
    /// What these rules say about an examination.
    pub flags: fn(TaskId, &Exam) -> Vec<Flag>,
    /// The question whose answer stands for a count made elsewhere.
    pub entered: Option<&'static str>,
    /// What must be asked before the pad stands there: whether it was; none where nothing must.
    pub asks_first: Option<fn(&Exam) -> bool>,
    /// Whether its questions before the start are asked although something is in the way: their
    /// answers are what can be.
    pub asked_though_held: bool,
    /// Whether the way may lead on from it once it was begun; none where its newest trial decides.
    pub over: fn(&Exam) -> Option<bool>,
    /// What the pad offers where one trial follows the other; none while one runs, and elsewhere.
    pub next: fn(&Exam) -> Option<NextTrial>,
    /// Whether rules read the count of a trial that still runs. Elsewhere nothing but its end and
    /// its signs are news.
    pub read_running: bool,
    /// Whether it was added to a visit; none where that is so once it was begun.
    pub added: Option<fn(&Exam) -> bool>,
    /// What it shows besides its figures.
    pub shows: Shows,
    /// Whether it can count two things at once: only where no rule looks at one.
    pub two_things: bool,
    /// Other ways to come to the same reading.
    pub other_ways: &'static [TaskId],
    /// Whether it is one of speech and breath timing.
    pub speech: bool,
    /// Whether it can be done without a visit: it lives on nothing recorded elsewhere. What is
    /// given by mouth never can.
    pub alone: bool,
}

impl TaskSpec {
    /// A task with nothing of its own: one trial, no question, no rule.
    pub const fn plain(id: TaskId) -> TaskSpec {
        TaskSpec {
            id,
            slug: "",
            pad: Pad::PLAIN,
            questions: &[],
            trials: 1,
            used: |_, _| 0,
            usual: |_| Vec::new(),
            taken_over: |_| Vec::new(),
            instead: |_| None,
            fits: |_, _| true,
            untimed: None,
            studied_in_adults: false,
            not_for: |_, _| None,
            compare: |_, _| Vec::new(),
            rules: &[],
            flags: |_, _| Vec::new(),
            entered: None,
            asks_first: None,
            asked_though_held: false,
            over: |_| None,
            next: |_| None,
            read_running: false,
            added: None,
            shows: Shows::Figures,
            two_things: false,
            other_ways: &[],
            speech: false,
            alone: !id.is_by_mouth(),
        }
    }
}

impl TaskSpec {
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

    /// Whether a question is asked in this visit.
    pub fn asks(&self, question: &str, exam: &Exam) -> bool {
        // Of what could not be begun nothing more is asked than a remark.
        if let Some(untimed) = self.untimed
            && exam.latest(self.id).is_some_and(|t| self.is_untimed(t))
        {
            return [untimed.question, REMARK].contains(&question);
        }
        (self.fits)(question, exam)
    }

    /// Whether another trial is offered where several are asked for: not once as many count.
    pub fn another(&self, exam: &Exam) -> bool {
        (self.used)(self.id, exam) < usize::from(self.trials)
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
