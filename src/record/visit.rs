//! A visit: the fold of its events.

use super::envelope::{Envelope, Unreadable, VisitId};
use super::event::{Details, Event, Plan, Route, Text, Versions};
use crate::clinical::assess::assess;
use crate::clinical::decision::Decision;
use crate::clinical::exam::Exam;
use crate::clinical::go_on::WentOn;
use crate::clinical::oral::flags::emergency;
use crate::clinical::person::Role;
use crate::clinical::screen::ScreenId;
use crate::clinical::task::TaskId;
use crate::clinical::tasks::{self, breathing};
use crate::clinical::trial::{Mark, MarkKind, Trial};
use crate::json;
use crate::measure::order::put_in_order;
use crate::measure::time::{Millis, Stamp, elapsed};

/// A text that left the app.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Issue {
    /// How.
    pub route: Route,
    /// The exact text.
    pub text: String,
    /// The time it carries.
    pub clock: String,
    /// Which.
    pub which: Text,
}

impl Issue {
    /// The line that says which text it replaces; empty where it is the first.
    fn corrects(&self) -> &str {
        let first = self.text.lines().next().unwrap_or_default();
        if first.starts_with("CORRECTED ") {
            first
        } else {
            ""
        }
    }
}

/// Somebody who was told of the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// Who.
    pub whom: String,
    /// Whether it was read back.
    pub read_back: bool,
    /// When.
    pub at: Millis,
    /// The time that the text carries which was the newest then.
    pub of: String,
}

/// The decision as it was recorded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decided {
    /// The verdict's id.
    pub verdict: String,
    /// Versions in force.
    pub versions: Versions,
    /// The policy's name.
    pub policy: String,
}

/// Choking, as it went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choking {
    /// Since when.
    pub since: Stamp,
    /// When help was called.
    pub help: Option<Stamp>,
    /// When it was over.
    pub over: Option<Stamp>,
}

impl Choking {
    /// For so long after its press it can still be called a slip.
    const SLIP: Millis = Millis::from_secs(120);

    /// Whether it may have been pressed by mistake: just now, and nothing was recorded of it since.
    /// Later, a slip on the way to its page would take a real one back.
    pub fn may_be_a_slip(&self, now: Stamp) -> bool {
        let so_far = elapsed(self.since, now, true).length;
        self.help.is_none()
            && self.over.is_none()
            && so_far.is_some_and(|so_far| so_far < Choking::SLIP)
    }
}

/// Events that could not be read: set aside, still in the store.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// The record as it stands, as text.
    pub raw: String,
    /// Why.
    pub why: Unreadable,
}

/// A visit as it stands.
#[derive(Clone, Debug)]
pub struct Visit {
    /// Its id.
    pub id: VisitId,
    /// The next event's sequence number.
    pub next: u32,
    /// When it was begun, by the wall clock.
    pub opened: Millis,
    /// When something last happened, by the wall clock.
    pub touched: Millis,
    /// Person and place.
    pub details: Option<Details>,
    /// The screen chosen.
    pub screen: Option<ScreenId>,
    /// Who holds the phone.
    pub role: Role,
    /// Everything the rules look at.
    pub exam: Exam,
    /// Chokings, oldest first.
    pub chokings: Vec<Choking>,
    /// When last well, in an emergency.
    pub last_well: String,
    /// The plan for the handover.
    pub plan: Plan,
    /// The decision as last recorded.
    pub decided: Option<Decided>,
    /// Texts that left, oldest first.
    pub issued: Vec<Issue>,
    /// Who was told.
    pub told: Vec<Told>,
    /// Signs that were given to the other trial: from, to, and the mark.
    moved: Vec<(u32, u32, Mark)>,
    /// Whether anything was pressed or answered after the decision was recorded.
    pub pressed_since_decided: bool,
    /// How an earlier refer or stop was closed, and what was open then.
    pub closed: Option<(String, Vec<String>)>,
    /// The visit this loose count was attached to.
    pub attached_to: Option<VisitId>,
    /// Only a tombstone is left.
    pub deleted: bool,
    /// What could not be read.
    pub aside: Vec<Aside>,
}

impl Visit {
    /// A visit in which nothing has happened.
    pub fn new(id: VisitId) -> Visit {
        Visit {
            id,
            next: 0,
            opened: Millis::ZERO,
            touched: Millis::ZERO,
            details: None,
            screen: None,
            role: Role::default(),
            exam: Exam::default(),
            chokings: Vec::new(),
            last_well: String::new(),
            plan: Plan::default(),
            decided: None,
            issued: Vec::new(),
            told: Vec::new(),
            moved: Vec::new(),
            pressed_since_decided: false,
            closed: None,
            attached_to: None,
            deleted: false,
            aside: Vec::new(),
        }
    }

    /// Rebuilds a visit from its stored events, whatever order they come in.
    pub fn replay(id: VisitId, mut stored: Vec<Envelope>) -> Visit {
        put_in_order(&mut stored, |a, b| a.seq.cmp(&b.seq));
        let mut visit = Visit::new(id);
        for envelope in stored {
            visit.take(&envelope);
        }
        visit
    }

    /// Takes one stored event. One that can't be read is set aside and changes nothing else.
    pub fn take(&mut self, envelope: &Envelope) {
        // Sequences have no gaps; where there is one, something was lost.
        let gap = envelope.seq.saturating_sub(self.next);
        self.next = self.next.max(envelope.seq.saturating_add(1));
        self.exam.unread = self.exam.unread.saturating_add(gap);
        match envelope.open() {
            Ok(event) => self.apply(event, envelope.at),
            Err(why) => {
                self.exam.unread = self.exam.unread.saturating_add(1);
                self.aside.push(Aside {
                    raw: json::write(envelope).unwrap_or_else(|_| envelope.body.clone()),
                    why,
                })
            }
        }
    }

    fn apply(&mut self, event: Event, at: Stamp) {
        if self.deleted {
            return;
        }
        if self.opened == Millis::ZERO {
            self.opened = at.wall;
        }
        self.touched = at.wall;
        self.pressed_since_decided |= matches!(
            event,
            Event::Mark { .. }
                | Event::Undo { .. }
                | Event::Answer { .. }
                | Event::Attached { .. }
                | Event::Choking(_)
                | Event::NotChoking
                | Event::Gate(_)
                | Event::GateCleared(_)
                | Event::Oral(_)
                | Event::OralTakenBack(_)
                | Event::SignMoved { .. }
                | Event::EndedEarly(_)
                | Event::TakenUpAgain
                | Event::Details(_)
                | Event::ScreenChosen(_)
        );
        match event {
            Event::Opened {
                details,
                screen,
                policy,
                role,
                ..
            } => {
                self.exam.policy = policy;
                self.know(details);
                self.choose(screen);
                self.role = role;
            }
            Event::Details(details) => self.know(details),
            Event::ScreenChosen(screen) => self.choose(Some(screen)),
            Event::Role(role) => self.role = role,
            Event::Gate(answers) => {
                let before = emergency(&self.exam);
                self.exam.gate.0.extend(answers);
                self.exam.emergency_changed |= before && !emergency(&self.exam);
            }
            Event::GateCleared(item) => {
                let before = emergency(&self.exam);
                self.exam.gate.0.remove(&item);
                self.exam.emergency_changed |= before && !emergency(&self.exam);
            }
            Event::Oral(press) => self.exam.oral.take(press),
            Event::OralTakenBack(items) => self.exam.oral.take_back(&items),
            Event::OralCue { region, cue } => self.exam.oral.take_cue(region, cue),
            Event::Order(order) => self.exam.order = order,
            Event::TrialOpened {
                trial,
                task,
                length,
            } => self.exam.trials.push(Trial::new(task, trial, length)),
            Event::Mark { trial, at, kind } => self.mark(trial, Mark { at, kind }),
            Event::Undo { trial } => {
                if self.move_back(trial) {
                    return;
                }
                if let Some(trial) = self.trial_mut(trial)
                    && let Some(last) = trial.marks.iter().rposition(|m| m.kind.pressed())
                {
                    let gone = trial.marks.remove(last);
                    // The time that ran from it never ran out.
                    match gone.kind {
                        MarkKind::Start => trial.marks.retain(|m| m.kind.pressed()),
                        MarkKind::End => trial.marks.retain(|m| m.kind != MarkKind::WatchOver),
                        // One press made both: the start is the first thing counted.
                        MarkKind::Tap
                            if trial
                                .marks
                                .last()
                                .is_some_and(|m| m.kind == MarkKind::Start && m.at == gone.at)
                                && tasks::spec(trial.task).pad.first_counts =>
                        {
                            trial.marks.clear();
                        }
                        _ => {}
                    }
                    // An answer about what was timed is none without a time.
                    if let (None, Some(untimed)) = (trial.start(), tasks::spec(trial.task).untimed)
                    {
                        trial.answers.remove(untimed.question);
                    }
                }
            }
            Event::Hidden { from, to } => {
                for trial in &mut self.exam.trials {
                    if trial.start().is_some() {
                        trial.hidden.push((from, to));
                    }
                }
            }
            Event::Answer {
                trial,
                question,
                answer,
            } => {
                if let Some(trial) = self.trial_mut(trial) {
                    match answer {
                        Some(answer) => trial.answers.insert(question, answer),
                        None => {
                            trial.answers.remove(&question);
                        }
                    }
                }
            }
            Event::WentOn {
                hold,
                because,
                by,
                says,
            } => {
                self.exam.went_on.push(WentOn {
                    hold,
                    because,
                    by,
                    says,
                });
            }
            Event::SignMoved { from, to, sign, at } => self.move_sign(
                from,
                to,
                Mark {
                    at,
                    kind: MarkKind::Sign(sign),
                },
            ),
            Event::EndedEarly(why) => self.exam.ended = Some(why),
            Event::TakenUpAgain => self.exam.ended = None,
            Event::Choking(since) => {
                self.exam.choked = true;
                self.chokings.push(Choking {
                    since,
                    help: None,
                    over: None,
                });
                self.exam.chokings.push(since);
            }
            Event::NotChoking => {
                // The newest was the mistake; one before it was not.
                self.chokings.pop();
                self.exam.chokings.pop();
                self.exam.choked = !self.chokings.is_empty();
            }
            Event::HelpCalled(at) => {
                if let Some(choking) = self.chokings.last_mut() {
                    choking.help = Some(at);
                }
            }
            Event::BackToBaseline(at) => {
                if let Some(choking) = self.chokings.last_mut() {
                    choking.over = Some(at);
                }
            }
            Event::LastWell(words) => self.last_well = words,
            Event::Plan(plan) => self.plan = plan,
            Event::Decided {
                verdict,
                versions,
                policy,
                ..
            } => {
                self.pressed_since_decided = false;
                self.decided = Some(Decided {
                    verdict,
                    versions,
                    policy,
                });
            }
            Event::Issued {
                route,
                text,
                clock,
                which,
            } => self.issue(Issue {
                route,
                text,
                clock,
                which,
            }),
            Event::Told { whom, read_back } => self.told.push(Told {
                whom,
                read_back,
                at: at.wall,
                of: self
                    .last_text()
                    .map_or(String::new(), |issue| issue.clock.clone()),
            }),
            Event::Attached {
                trial,
                task,
                length,
                marks,
                hidden,
                answers,
                ..
            } => {
                let mut copy = Trial::new(task, trial, length);
                copy.marks = marks
                    .into_iter()
                    .map(|(at, kind)| Mark { at, kind })
                    .collect();
                copy.hidden = hidden;
                copy.answers = answers.into_iter().collect();
                self.attach(copy);
            }
            Event::AttachedTo(visit) => self.attached_to = Some(visit),
            Event::Closed(how) => {
                self.closed = Some((how, self.open_reasons()));
            }
            Event::Deleted => {
                *self = Visit {
                    next: self.next,
                    opened: self.opened,
                    touched: at.wall,
                    deleted: true,
                    ..Visit::new(self.id.clone())
                };
            }
        }
    }

    /// Takes a text that left. Two texts of one minute carry the same time: who was told of the
    /// first does not know of the second.
    fn issue(&mut self, issue: Issue) {
        let before = self.last_text().cloned();
        self.issued.push(issue);
        let newest = self.last_text().cloned();
        if let (Some(before), Some(newest)) = (before, newest)
            && before.clock == newest.clock
            && before.text != newest.text
        {
            for told in self.told.iter_mut().filter(|t| t.of == newest.clock) {
                told.of.push_str(", since replaced");
            }
        }
    }

    fn choose(&mut self, screen: Option<ScreenId>) {
        self.screen = screen;
        self.exam.screen = screen;
    }

    /// Takes over what is known of the person.
    fn know(&mut self, details: Details) {
        self.exam.age = details.age;
        self.exam.sex = details.sex;
        self.exam.language = details.language;
        self.details = Some(details);
    }

    fn mark(&mut self, number: u32, mark: Mark) {
        let spo2 = (mark.kind == MarkKind::Start)
            .then(|| breathing::reading(&self.exam)?.spo2)
            .flatten();
        if let Some(trial) = self.trial_mut(number) {
            // A second start, or a second end, is kept in the journal and changes nothing here.
            let once = matches!(mark.kind, MarkKind::Start | MarkKind::End);
            if !(once && trial.first(mark.kind).is_some()) {
                trial.marks.push(mark);
                if mark.kind == MarkKind::Start {
                    trial.spo2_before = spo2.map(|percent| (percent * 10.0).round() as i32);
                }
            }
        }
    }

    /// Moves a sign; where it or the other trial is not there, nothing changes and nothing is lost.
    fn move_sign(&mut self, from: u32, to: u32, sign: Mark) {
        if self.trial(to).is_none() {
            return;
        }
        let Some(here) = self.trial_mut(from) else {
            return;
        };
        let Some(place) = here.marks.iter().rposition(|m| *m == sign) else {
            return;
        };
        let mark = here.marks.remove(place);
        if let Some(there) = self.trial_mut(to) {
            there.marks.push(mark);
        }
        let back = self.moved.iter().rposition(|m| *m == (to, from, sign));
        match back {
            Some(back) => {
                self.moved.remove(back);
            }
            None => self.moved.push((from, to, sign)),
        }
    }

    /// Takes back that a sign was moved, where that is what "undo" would take from this trial: the
    /// sign was there all the same, and goes only with a press of its own.
    fn move_back(&mut self, number: u32) -> bool {
        let newest = self.trial(number).and_then(|t| {
            let mut pressed = t.marks.iter().rev();
            pressed.find(|m| m.kind.pressed()).copied()
        });
        let Some(&(from, to, sign)) = self
            .moved
            .iter()
            .rfind(|(_, to, mark)| *to == number && newest == Some(*mark))
        else {
            return false;
        };
        // Where the trial it was pressed in is none any more, it stays with the other.
        if self.trial(from).is_none_or(|t| t.start().is_none()) {
            return false;
        }
        self.move_sign(to, from, sign);
        true
    }

    /// A count that was made elsewhere takes its place in time: what was found after it stays the
    /// newest.
    fn attach(&mut self, copy: Trial) {
        let opened = self.opened;
        let place = copy.start().and_then(|start| {
            self.exam.trials.iter().position(|t| match t.start() {
                Some(own) => start.wall < own.wall,
                None => t.task == copy.task && !t.answers.is_empty() && start.wall < opened,
            })
        });
        let trials = &mut self.exam.trials;
        trials.insert(place.unwrap_or(trials.len()), copy);
    }

    fn trial_mut(&mut self, number: u32) -> Option<&mut Trial> {
        self.exam.trials.iter_mut().find(|t| t.number == number)
    }

    /// The trial with a number.
    pub fn trial(&self, number: u32) -> Option<&Trial> {
        self.exam.trials.iter().find(|t| t.number == number)
    }

    /// The trial whose newest press "undo" takes back on a task's page: that of the newest trial;
    /// where the next one is only being made ready, a sign of the one before. Never more of that
    /// one: it was given, and must not come up again as due.
    pub fn undo_goes_to(&self, task: TaskId) -> Option<u32> {
        let pressed = |trial: &Trial| trial.marks.iter().rev().find(|m| m.kind.pressed()).copied();
        let newest = self.exam.latest(task)?;
        if pressed(newest).is_some() {
            return Some(newest.number);
        }
        let before = self.exam.latest_started(task)?;
        matches!(pressed(before)?.kind, MarkKind::Sign(_)).then_some(before.number)
    }

    /// The number the next trial gets.
    pub fn next_trial(&self) -> u32 {
        self.exam
            .trials
            .iter()
            .map(|t| t.number.saturating_add(1))
            .max()
            .unwrap_or(0)
    }

    /// What it is called.
    pub fn label(&self) -> String {
        self.details.as_ref().map_or_else(
            || match self.exam.trials.first() {
                Some(trial) if trial.task != TaskId::FreeCount => {
                    tasks::spec(trial.task).title.to_owned()
                }
                _ => "Count".to_owned(),
            },
            |d| d.label.as_str().to_owned(),
        )
    }

    /// A count that was made without a visit.
    pub fn is_loose(&self) -> bool {
        self.details.is_none() && !self.deleted && self.aside.is_empty()
    }

    /// The newest text for nursing, as it left first: sent once more with the same words, it is the
    /// same text.
    pub fn last_text(&self) -> Option<&Issue> {
        let mut texts = self
            .issued
            .iter()
            .rev()
            .filter(|issue| issue.which == Text::Nursing);
        let newest = texts.next()?;
        texts
            .take_while(|issue| {
                let same_minute = issue.clock == newest.clock;
                issue.corrects() == newest.corrects() && !(same_minute && issue.text != newest.text)
            })
            .last()
            .or(Some(newest))
    }

    /// What somebody is to look at: the reasons of a refer or stop, and each choking.
    fn open_reasons(&self) -> Vec<String> {
        let reasons = self.decision().map_or(Vec::new(), |d| d.reasons);
        let mut open: Vec<String> = reasons
            .iter()
            .map(|flag| format!("{} {}", flag.rule().id, flag.reason()))
            .collect();
        if !open.is_empty() {
            open.extend(self.chokings.iter().map(|_| "choking".to_owned()));
        }
        open
    }

    /// Whether there is a reason for a refer or stop that nobody closed. What was closed speaks for
    /// itself alone: a choke that took the place of a cough is open.
    pub fn unclosed(&self) -> bool {
        let mut closed = match &self.closed {
            Some((_, reasons)) => reasons.clone(),
            None => Vec::new(),
        };
        self.open_reasons().iter().any(|reason| {
            let known = closed.iter().position(|c| c == reason);
            known.map(|at| closed.swap_remove(at)).is_none()
        })
    }

    /// Choking, if it happened: the newest.
    pub fn choking(&self) -> Option<Choking> {
        self.chokings.last().copied()
    }

    /// The decision of its screen, if it has one.
    pub fn decision(&self) -> Option<Decision> {
        self.screen.map(|id| assess(id.screen(), &self.exam))
    }

    /// Whether the text for the nurse has left the app. A full note alone tells the ward nothing.
    pub fn handed_over(&self) -> bool {
        self.issued.iter().any(|issue| issue.which == Text::Nursing)
    }

    /// Whether a time still runs in it.
    pub fn running(&self) -> bool {
        self.exam.trials.iter().any(is_running) || self.choking().is_some_and(|c| c.over.is_none())
    }
}

/// Whether a trial was started and neither its time nor its watch has ended.
pub fn is_running(trial: &Trial) -> bool {
    use crate::clinical::task::Phase;
    let Some(newest) = trial.marks.last() else {
        return false;
    };
    // Any moment after the newest mark tells a state that only a mark can change.
    matches!(
        tasks::spec(trial.task).phase(trial, newest.at),
        Phase::Running(_) | Phase::Watching(_) | Phase::Countdown(_)
    )
}

/// The tasks that have at least one trial.
pub fn tried(visit: &Visit, task: TaskId) -> bool {
    visit.exam.trials.iter().any(|t| t.task == task)
}
