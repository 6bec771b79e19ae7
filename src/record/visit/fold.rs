//! The fold: what each event changes in a visit.

use super::texts::{Issue, Told, kept_in_text, stands};
use super::{Aside, Break, Choking, Decided, Visit};
use crate::clinical::decision::basis;
use crate::clinical::decision::in_the_way::stored::meant;
use crate::clinical::findings::changed::Asked;
use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::go_on::WentOn;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::trial::{Mark, MarkKind, Trial};
use crate::clinical::knowledge::screen::ScreenId;
use crate::clinical::tasks;
use crate::clinical::tasks::water::VOICES;
use crate::measure::time::{Millis, Stamp};
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
        let silent = |t: &Trial| runs(t) && !tasks::spec(t.task).read_running;
        counts && !news && self.trial(*trial).is_some_and(silent)
    }

    /// What each event changes, one line an event.
    fn apply(&mut self, event: Event, at: Stamp) {
        if self.deleted {
            return;
        }
        self.exam.now = self.exam.now.next(at);
        if self.opened == Millis::ZERO {
            self.opened = at.wall;
        }
        self.touched = at.wall;
        self.pressed_since_decided |= event.may_change_the_decision();
        if event.is_looked_at() {
            self.seen = at.wall;
            if self.seen_first == Millis::ZERO {
                self.seen_first = at.wall;
            }
        }
        match event {
            Event::Opened {
                details,
                screen,
                policy,
                role,
                initials,
                ..
            } => {
                self.exam.policy = policy;
                self.know(details);
                self.choose(screen);
                self.role = role;
                self.initials = initials;
            }
            Event::Details(details) => self.know(details),
            Event::ScreenChosen(screen) => self.choose(Some(screen)),
            Event::Role(role) => {
                self.role = role;
                // Nobody signed for it.
                self.initials = None;
            }
            Event::Gate(answers) => {
                let asked = answers.iter().map(|(item, _)| Asked::Gate(item.clone()));
                self.changing(asked.collect(), at, |v| v.answer_gate(answers));
            }
            Event::GateCleared(item) => {
                let asked = vec![Asked::Gate(item.clone())];
                self.changing(asked, at, |v| {
                    v.at_gate(|gate| {
                        gate.remove(&item);
                    });
                });
            }
            Event::Oral(press) => {
                let asked = press.iter().map(|(item, _)| Asked::Oral(item.clone()));
                self.changing(asked.collect(), at, |v| {
                    v.exam.oral.take(press);
                    v.lapse();
                });
            }
            Event::OralTakenBack(items) => {
                let asked = items.iter().cloned().map(Asked::Oral);
                self.changing(asked.collect(), at, |v| {
                    v.exam.oral.take_back(&items);
                    v.lapse();
                });
            }
            Event::OralCue { region, cue } => self.exam.oral.take_cue(region, cue),
            Event::Order(order) => self.exam.order = order,
            Event::TrialOpened {
                trial,
                task,
                length,
            } => self.exam.trials.push(Trial::new(task, trial, length)),
            Event::Mark { trial, at, kind } => self.mark(trial, Mark { at, kind }),
            Event::Undo { trial } => self.undo(trial, at),
            Event::Hidden { from, to } => self.was_hidden(from, to),
            Event::Answer {
                trial,
                question,
                answer,
            } => {
                let asked = Asked::Trial {
                    number: trial,
                    question: question.clone(),
                };
                self.changing(vec![asked], at, |v| v.answer(trial, question, answer));
            }
            Event::WentOn {
                hold,
                because,
                by,
                initials,
                says,
                ground,
            } => {
                let past = meant(&hold, by, &self.exam);
                let hold = past.as_ref().map_or(hold, Obstacle::key);
                let on = WentOn {
                    hold,
                    // It is told within a sentence.
                    because: because.trim().trim_end_matches('.').to_owned(),
                    by,
                    initials,
                    says,
                    ground,
                    lapsed: false,
                    led_to: Vec::new(),
                };
                self.go_on(past, on);
            }
            Event::SignMoved { from, to, sign, at } => {
                let kind = MarkKind::Sign(sign);
                self.move_sign(from, to, Mark { at, kind });
            }
            Event::EndedEarly(why) => self.end_early(why, at),
            Event::TakenUpAgain => self.take_up_again(at),
            Event::Choking(since) => self.choked(since),
            Event::NotChoking => {
                // The newest was the mistake; one before it was not.
                self.chokings.pop();
                self.which_choked();
            }
            Event::HelpCalled(at) => self.at_choking(at, |c| c.help = Some(at)),
            Event::BackToBaseline(at) => self.at_choking(at, |c| c.over = Some(at)),
            Event::VoiceAfterChoking(voice) => {
                let now = self.exam.now;
                let known = VOICES.iter().copied().find(|id| *id == voice);
                self.at_choking(at, |c| c.voice = known.map(|voice| (voice, now)));
            }
            Event::LastWell(words) => self.last_well = words,
            Event::Plan(plan) => {
                // Where an entry is lost, nobody knows what stood when it was recorded.
                let known = self.decision().filter(|_| self.exam.unread == 0);
                let verdict = basis::of_today(plan.verdict, known.as_ref());
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
                stood: stands(self),
            }),
            Event::Told { whom, read_back } => self.tell(whom, read_back, at),
            Event::Attached {
                from,
                trial,
                task,
                length,
                marks,
                hidden,
                answers,
                chokings,
            } => {
                let now = self.exam.now;
                let chokings = chokings.into_iter().map(|(since, help, over)| Choking {
                    help,
                    over,
                    ..Choking::since(since, now)
                });
                let mut copy = Trial::new(task, trial, length);
                let marks = marks.into_iter().map(|(at, kind)| Mark { at, kind });
                copy.marks = marks.collect::<Vec<_>>().into();
                copy.hidden = hidden;
                copy.answers = answers.into_iter().collect();
                self.attach_from(from, copy, chokings.collect(), at.wall);
            }
            Event::Detached { trial } => self.detach(trial, at.wall),
            Event::AttachedTo(visit) => self.attached_to = Some(visit),
            Event::DetachedFrom(visit) => {
                self.attached_to = self.attached_to.take().filter(|to| *to != visit);
            }
            Event::Closed(how) => {
                let open = self.open_reasons(self.decision().as_ref());
                self.closed = Some((how, open));
            }
            Event::Deleted => self.forget(at),
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

    fn end_early(&mut self, why: EndedEarly, at: Stamp) {
        self.exam.ended = Some(why);
        self.breaks.push(Break {
            why,
            at: at.wall,
            again: None,
        });
    }

    fn take_up_again(&mut self, at: Stamp) {
        self.exam.ended = None;
        if let Some(last) = self.breaks.last_mut() {
            last.again.get_or_insert(at.wall);
        }
    }

    fn tell(&mut self, whom: String, read_back: bool, at: Stamp) {
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

    /// Nothing is left of it but that it was there.
    fn forget(&mut self, at: Stamp) {
        *self = Visit {
            next: self.next,
            opened: self.opened,
            touched: at.wall,
            deleted: true,
            ..Visit::new(self.id.clone())
        };
    }
}
