//! Where a task stands: everything its page shows is decided here, and drawn there.

use crate::clinical::decision::fresh;
use crate::clinical::decision::in_the_way::choked::missing;
use crate::clinical::decision::in_the_way::{InTheWay, in_the_way};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::AfterChoking;
use crate::clinical::findings::moment::Moment;
use crate::clinical::findings::next_trial::{NextTrial, WaitsFor};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::Face;
use crate::clinical::tasks::{self, kept};

/// Where a task stands.
#[derive(Clone, Debug, PartialEq)]
pub struct TaskState {
    /// Which.
    pub task: TaskId,
    /// Where its newest trial stands.
    pub face: Face,
    /// What is in the way of a trial to come. What has begun is finished in the open.
    pub in_the_way: Vec<InTheWay>,
    /// Whether what must be asked before anything can hold it up was asked.
    asked: bool,
    /// What the pad offers where one trial follows the other.
    pub next: Option<NextTrial>,
    /// Whether it was done, given up with a reason, or steps aside for this person.
    pub done: bool,
    /// How many trials were tried.
    pub tried: usize,
    /// Whether another trial is offered.
    pub another: bool,
    /// Whether the newest trial was answered without a press on the pad.
    pub untimed: bool,
    /// Whether what it read is too old for a trial by mouth.
    pub read_long_ago: bool,
    /// Whether the screen was ended.
    pub ended: bool,
    /// Whether a trial of it was begun.
    begun: bool,
}

/// The way on from a task, where it stands on its page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WayOn {
    /// On, while the watch runs.
    WatchGoesOn,
    /// On; what still needs an answer comes first.
    Open,
    /// On: nothing is left to do here.
    Done,
}

/// What leads on before anything was begun.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Without {
    /// What could not be begun is said, or it is skipped.
    CouldNotOrSkip {
        /// Whether it can still be skipped.
        skip: bool,
    },
    /// Something is in the way.
    GoOnWithout,
}

/// What stands in the pad's place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PadPlace {
    /// The pad.
    Pad,
    /// Figures that nothing can be pressed on: the time runs to its end by itself.
    Panel,
    /// What is left to watch: a tap that comes late must not hit a sign.
    Watch,
    /// What the next trial waits for.
    Waiting,
    /// Nothing: all is over, what comes next stands above.
    Over,
}

impl TaskState {
    /// Where a task stands in an examination; its face is told by the clock of the page.
    pub fn of(task: TaskId, exam: &Exam, face: Face, now: Moment) -> TaskState {
        let spec = tasks::spec(task);
        let mut state = TaskState {
            task,
            face,
            in_the_way: Vec::new(),
            asked: true,
            next: None,
            done: false,
            tried: 0,
            another: false,
            untimed: false,
            read_long_ago: false,
            ended: exam.ended.is_some(),
            begun: exam.latest_started(task).is_some(),
        };
        // Nothing is worked out at a press but what is shown.
        if matches!(face, Face::Running | Face::Countdown) {
            return state;
        }
        state.next = (spec.next)(exam);
        state.asked = spec.asks_first.is_none_or(|asked| asked(exam));
        if face == Face::Ready || state.next.as_ref().is_some_and(NextTrial::is_now) {
            state.in_the_way = in_the_way(task, exam, now);
        }
        state.done = tasks::is_done(task, exam);
        state.tried = kept::numbered(spec, exam).count();
        state.another = spec.another(exam);
        state.untimed = exam.latest(task).is_some_and(|t| spec.is_untimed(t));
        state.read_long_ago = fresh::old(exam, now)
            .iter()
            .any(|old| old.what.task() == Some(task))
            || task == TaskId::Breathing && missing(exam).contains(&AfterChoking::Breaths);
        state
    }

    /// Whether a trial may be begun, or was.
    pub fn is_free(&self) -> bool {
        self.face != Face::Ready || self.in_the_way.is_empty() && self.asked
    }

    /// Whether the words to the person stand there: nothing is offered that is then refused.
    pub fn says(&self) -> bool {
        self.face == Face::Ready && self.in_the_way.is_empty()
    }

    /// Whether the questions before the start stand there.
    pub fn asks_before(&self) -> bool {
        // What can hold it up by its answer is asked whatever else holds it.
        let own = tasks::spec(self.task).asked_though_held;
        self.face == Face::Ready && (self.in_the_way.is_empty() || own)
    }

    /// Whether what is in the way is told: before the start, and before the next trial.
    pub fn tells_in_the_way(&self) -> bool {
        !self.is_free() || self.next_is_due() && !self.in_the_way.is_empty()
    }

    fn next_is_due(&self) -> bool {
        matches!(self.face, Face::Watching | Face::Over)
            && self.next.as_ref().is_some_and(NextTrial::is_now)
    }

    /// Whether a touch of the pad begins the next trial.
    pub fn next_now(&self) -> bool {
        self.next_is_due() && self.in_the_way.is_empty()
    }

    /// Whether the next trial waits for something.
    pub fn waits(&self) -> bool {
        self.next.as_ref().is_some_and(|next| !next.is_now())
    }

    /// Whether a sign ended the trials: no more is given.
    pub fn ended_by_sign(&self) -> bool {
        self.next == Some(NextTrial::Waits(WaitsFor::SignSeen))
            && matches!(self.face, Face::Watching | Face::Over)
    }

    /// Whether something came out that is shown.
    pub fn has_result(&self) -> bool {
        matches!(self.face, Face::Over | Face::Late | Face::Watching)
    }

    /// Whether nothing runs: what speaks against the trial can be said.
    pub fn is_resting(&self) -> bool {
        matches!(self.face, Face::Ready | Face::Over | Face::Late)
    }

    /// Whether the buttons of the signs stand there. After the watch too: what comes late is
    /// recorded and told; and while the next trial is made ready, for the one before.
    pub fn has_signs(&self) -> bool {
        self.is_free()
            && self.task.sign_column().is_some()
            && match self.face {
                Face::Ready => self.begun,
                Face::Running | Face::Watching | Face::Over => true,
                Face::Countdown | Face::Late => false,
            }
    }

    /// The way on; none where something else comes first.
    pub fn way_on(&self) -> Option<WayOn> {
        match self.face {
            Face::Running | Face::Countdown => None,
            Face::Ready if !self.done => None,
            // Trials of the plan are still due: going on is in the quiet row below.
            _ if self.task.goes_on() && !self.done => None,
            // It stands with the words that say so.
            _ if self.ended_by_sign() => None,
            Face::Watching => Some(WayOn::WatchGoesOn),
            _ if self.done && !self.read_long_ago => Some(WayOn::Done),
            _ => Some(WayOn::Open),
        }
    }

    /// Whether the way on stands with the signs, where the thumb is.
    pub fn way_on_by_signs(&self) -> bool {
        self.face == Face::Over && self.task.sign_column().is_some()
    }

    /// Whether trials of the plan that are still due can be left out.
    pub fn leaves_the_rest(&self) -> bool {
        self.task.goes_on() && !self.done && matches!(self.face, Face::Watching | Face::Over)
    }

    /// What leads on before the start; none once it was begun or done.
    pub fn without(&self) -> Option<Without> {
        let untimed = tasks::spec(self.task).untimed.is_some();
        let held = !self.in_the_way.is_empty();
        match (self.face, self.done) {
            (Face::Ready, false) if held => Some(Without::GoOnWithout),
            (Face::Ready, false) => Some(Without::CouldNotOrSkip { skip: true }),
            (Face::Ready, true) if untimed && !held => {
                Some(Without::CouldNotOrSkip { skip: false })
            }
            _ => None,
        }
    }

    /// What stands in the pad's place.
    pub fn pad(&self) -> PadPlace {
        match self.face {
            Face::Ready if self.waits() => PadPlace::Waiting,
            Face::Ready => PadPlace::Pad,
            Face::Watching | Face::Over if self.next_now() => PadPlace::Pad,
            Face::Watching => PadPlace::Watch,
            Face::Over if self.waits() => PadPlace::Waiting,
            Face::Over => PadPlace::Over,
            Face::Countdown | Face::Running | Face::Late => {
                if tasks::spec(self.task).pad.is_silent() {
                    PadPlace::Panel
                } else {
                    PadPlace::Pad
                }
            }
        }
    }
}
