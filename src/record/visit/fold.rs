//! The fold: what each event changes in a visit.

use std::collections::BTreeMap;

use super::texts::{Issue, Told, kept_in_text};
use super::{Aside, Break, Choking, Decided, Visit};
use crate::clinical::decision::basis;
use crate::clinical::decision::in_the_way;
use crate::clinical::decision::in_the_way::stored::meant;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::gate;
use crate::clinical::findings::go_on::WentOn;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::oral::findings::weakness;
use crate::clinical::findings::trial::{Mark, MarkKind, STARTED, Trial};
use crate::clinical::knowledge::screen::ScreenId;
use crate::clinical::tasks;
use crate::clinical::tasks::oral::flags::{WEAKNESS, emergency};
use crate::measure::time::{Millis, Stamp, elapsed};
use crate::record::envelope::{Envelope, Unreadable};
use crate::record::event::{Details, Event, Plan};
use crate::record::id::VisitId;

impl Visit {
    /// Rebuilds a visit from its stored events, whatever order they come in.
    pub fn replay(id: VisitId, mut stored: Vec<Envelope>) -> Visit {
        stored.sort_by_key(|event| event.seq);
        let mut visit = Visit::new(id);
        for envelope in stored {
            visit.take(&envelope);
        }
        visit
    }

    /// Takes one stored event. One that can't be read is set aside and changes nothing else.
    pub fn take(&mut self, envelope: &Envelope) {
        self.take_read(envelope, envelope.open());
    }

    /// Takes an event that was put into its envelope just now: what [`Visit::take`] makes of the
    /// envelope, without reading it again.
    pub fn take_new(&mut self, envelope: &Envelope, event: Event) {
        self.take_read(envelope, Ok(event));
    }

    fn take_read(&mut self, envelope: &Envelope, read: Result<Event, Unreadable>) {
        // Sequences have no gaps; where there is one, something was lost.
        let gap = envelope.seq.saturating_sub(self.next);
        let only_counts = gap == 0 && read.as_ref().is_ok_and(|event| self.only_counts(event));
        self.next = self.next.max(envelope.seq.saturating_add(1));
        self.exam.unread = self.exam.unread.saturating_add(gap);
        // It may have been a sign.
        self.pressed_since_decided |= gap > 0;
        match read {
            Ok(event) => self.apply(event, envelope.at),
            Err(why) => {
                self.exam.unread = self.exam.unread.saturating_add(1);
                self.pressed_since_decided = true;
                self.aside.push(Aside {
                    raw: serde_json::to_string(envelope).unwrap_or_else(|_| envelope.body.clone()),
                    why,
                })
            }
        }
        if !only_counts {
            self.weighed = self.next;
        }
    }

    /// Whether an event only counts one more thing in a trial that runs, see [`Visit::weighed`].
    fn only_counts(&self, event: &Event) -> bool {
        let Event::Mark { trial, kind, .. } = event else {
            return false;
        };
        let counts = matches!(kind, MarkKind::Tap | MarkKind::Count(_));
        // The first press after the decision was recorded can change its words.
        let news = self.decided.is_some() && !self.pressed_since_decided;
        let over = [MarkKind::End, MarkKind::Stopped, MarkKind::WindowOver];
        let runs = |t: &Trial| t.start().is_some() && over.iter().all(|k| t.first(*k).is_none());
        let silent = |t: &Trial| runs(t) && !tasks::is_read_running(t.task);
        counts && !news && self.trial(*trial).is_some_and(silent)
    }

    fn apply(&mut self, event: Event, at: Stamp) {
        if self.deleted {
            return;
        }
        self.exam.now = self.exam.now.next(at);
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
        if matches!(
            event,
            Event::Mark { .. }
                | Event::Answer { .. }
                | Event::Choking(_)
                | Event::Gate(_)
                | Event::Oral(_)
        ) {
            self.seen = at.wall;
        }
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
                // Said by itself, with what was found before one's eyes; no press for a whole page.
                if let [(item, _)] = answers.as_slice()
                    && item == WEAKNESS
                {
                    self.exam.weakness_said = weakness(&self.exam.oral);
                }
                self.lapse_old(&answers);
                for (item, _) in &answers {
                    self.exam.asked.insert(item.clone(), self.exam.now);
                }
                self.at_gate(|gate| gate.extend(answers));
            }
            Event::GateCleared(item) => self.at_gate(|gate| {
                gate.remove(&item);
            }),
            Event::Oral(press) => {
                self.exam.oral.take(press);
                self.lapse();
            }
            Event::OralTakenBack(items) => {
                self.exam.oral.take_back(&items);
                self.lapse();
            }
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
                    if let MarkKind::Sign(sign) = gone.kind {
                        let after = elapsed(gone.at, at, true).length;
                        if after.is_none_or(|after| after > Choking::SLIP) {
                            trial.taken_back.push((sign, after));
                        }
                    }
                    // The time that ran from it never ran out.
                    match gone.kind {
                        MarkKind::Start => trial.marks.retain(|m| m.kind.pressed()),
                        MarkKind::End | MarkKind::Stopped => {
                            trial.marks.retain(|m| m.kind != MarkKind::WatchOver);
                        }
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
                let now = self.exam.now;
                if let Some(trial) = self.trial_mut(trial) {
                    trial.said_at.insert(question.clone(), now);
                    match answer {
                        Some(answer) => {
                            trial.answers.insert(question, answer);
                        }
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
                ground,
            } => {
                let past = meant(&hold, by, &self.exam);
                let key = past.as_ref().map_or(hold, Obstacle::key);
                if let Some(past) = past {
                    self.exam.gone_past.insert(key.clone(), past);
                }
                self.exam.went_on.push(WentOn {
                    hold: key,
                    // It is told within a sentence.
                    because: because.trim().trim_end_matches('.').to_owned(),
                    by,
                    says,
                    ground,
                    lapsed: false,
                    led_to: Vec::new(),
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
            Event::EndedEarly(why) => {
                self.exam.ended = Some(why);
                self.breaks.push(Break {
                    why,
                    at: at.wall,
                    again: None,
                });
            }
            Event::TakenUpAgain => {
                self.exam.ended = None;
                if let Some(last) = self.breaks.last_mut() {
                    last.again.get_or_insert(at.wall);
                }
            }
            Event::Choking(since) => self.choked(since),
            Event::NotChoking => {
                // The newest was the mistake; one before it was not.
                self.chokings.pop();
                self.which_choked();
            }
            Event::HelpCalled(at) => self.choking_or_lost(at).help = Some(at),
            Event::BackToBaseline(at) => self.choking_or_lost(at).over = Some(at),
            Event::LastWell(words) => self.last_well = words,
            Event::Plan(plan) => {
                let verdict = basis::of_today(plan.verdict, self.decision().as_ref());
                self.plan = Plan { verdict, ..plan };
            }
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
                corrects,
            } => self.issue(Issue {
                route,
                corrects: corrects.or_else(|| kept_in_text(&text)),
                text,
                clock,
                which,
                at: at.wall,
            }),
            Event::Told { whom, read_back } => {
                let last = self.last_text();
                let (of, of_at) = last.map_or_else(Default::default, |i| (i.clock.clone(), i.at));
                self.told.push(Told {
                    whom,
                    read_back,
                    at: at.wall,
                    of,
                    of_at,
                });
            }
            Event::Attached {
                trial,
                task,
                length,
                marks,
                hidden,
                answers,
                chokings,
                ..
            } => {
                for (since, help, over) in chokings {
                    self.choked_elsewhere(Choking { since, help, over });
                }
                let mut copy = Trial::new(task, trial, length);
                let marks = marks.into_iter().map(|(at, kind)| Mark { at, kind });
                copy.marks = marks.collect::<Vec<_>>().into();
                copy.hidden = hidden;
                copy.answers = answers.into_iter().collect();
                // Nothing tells when it was answered but the time it was counted at.
                let started = copy.start();
                let then = self.exam.now.of_elsewhere(started);
                let names = copy.answers.keys().cloned();
                let names: Vec<String> = names.chain([STARTED.to_owned()]).collect();
                copy.said_at
                    .extend(names.into_iter().map(|name| (name, then)));
                self.attach(copy);
            }
            Event::AttachedTo(visit) => self.attached_to = Some(visit),
            Event::Closed(how) => {
                let open = self.open_reasons(self.decision().as_ref());
                self.closed = Some((how, open));
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

    fn at_gate(&mut self, change: impl FnOnce(&mut BTreeMap<String, String>)) {
        let before = emergency(&self.exam);
        change(&mut self.exam.gate.0);
        self.exam.emergency_changed |= before && !emergency(&self.exam);
        self.lapse();
    }

    /// Where a state of the moment is asked again because it was old, a reason that was given for
    /// it spoke for then.
    fn lapse_old(&mut self, answers: &[(String, String)]) {
        let exam = &self.exam;
        let old = |id: &str| {
            let item = gate::find(id).filter(|item| item.is_of_the_moment());
            let asked = item.and_then(|item| exam.asked.get(item.id));
            asked.is_some_and(|at| at.is_older(exam.now, exam.policy.moment_stands()))
        };
        let ids = answers.iter().map(|(id, _)| id).filter(|id| old(id));
        let ids: Vec<&String> = ids.collect();
        for on in &mut self.exam.went_on {
            let past = self.exam.gone_past.get(&on.hold);
            on.lapsed |= matches!(past, Some(Obstacle::Gate { item, .. })
                if ids.iter().any(|id| *id == item.id));
        }
    }

    /// Reasons for what the gate and the mouth do not show any more speak for it no longer.
    fn lapse(&mut self) {
        let mut went_on = std::mem::take(&mut self.exam.went_on);
        for on in &mut went_on {
            let past = self.exam.gone_past.get(&on.hold);
            on.lapsed |= is_of_state(past) && !in_the_way::stands(&on.hold, &self.exam);
        }
        self.exam.went_on = went_on;
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
}

/// Whether it is one of the gate's answers, or what the mouth shows against them. What nothing known
/// had is taken for one: its reason speaks no longer than those do.
fn is_of_state(past: Option<&Obstacle<Flag>>) -> bool {
    matches!(
        past,
        None | Some(Obstacle::Gate { .. } | Obstacle::AgainstGate { .. })
    )
}
