//! One builder of scenes: a visit written press by press, as the journal would have it.
//!
//! ```ignore
//! let mut s = ready(Role::Screener);
//! s.water(&[(Sign::Cough, 5_000)]);
//! assert_eq!(s.verdict(), Verdict::Refer);
//! ```

mod asked;
mod begun;
mod given;

pub(crate) use asked::*;
pub(crate) use begun::*;

use penlight::clinical::findings::gate::{HOLDS, ITEMS};
use penlight::clinical::findings::trial::{Answer, MarkKind};
use penlight::clinical::knowledge::person::{Age, Label, Role, Setting};
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::action;
use penlight::measure::time::Stamp;
use penlight::record::envelope::{Envelope, SCHEMA, body};
use penlight::record::event::{Action, Details, Event, Plan, Versions};
use penlight::record::id::VisitId;
use penlight::record::visit::Visit;

use super::in_the_way::holds;
use super::moments::at;

/// A visit, and where its next press goes.
pub(crate) struct Scene {
    pub(crate) visit: Visit,
    /// The trial that presses and answers belong to.
    pub(crate) trial: u32,
    /// When events are recorded, in milliseconds since the visit began.
    pub(crate) now: i64,
}

impl Scene {
    pub(crate) fn new(age: Age, role: Role) -> Scene {
        Scene::under(Policy::default(), age, role)
    }

    pub(crate) fn under(policy: Policy, age: Age, role: Role) -> Scene {
        let mut scene = Scene {
            visit: Visit::new(VisitId::new("0123456789abcdef").unwrap()),
            trial: 0,
            now: 0,
        };
        scene.say(Event::Opened {
            details: Details {
                label: Label::parse("Visit 3, 14:10").unwrap(),
                age: Some(age),
                sex: None,
                setting: Some(Setting::Ward),
                language: None,
            },
            screen: Some(ScreenId::Swallow),
            versions: versions(),
            policy,
            role,
            initials: None,
        });
        scene
    }

    pub(crate) fn say(&mut self, event: Event) -> &mut Scene {
        self.say_at(at(self.now), event)
    }

    /// The same, recorded at a moment.
    pub(crate) fn say_at(&mut self, at: Stamp, event: Event) -> &mut Scene {
        self.take(at, body(&event).unwrap())
    }

    /// An entry that can't be read takes the next place.
    pub(crate) fn lost(&mut self) {
        self.take(at(0), "{\"Mark\":{".to_owned());
    }

    fn take(&mut self, at: Stamp, body: String) -> &mut Scene {
        let envelope = Envelope {
            device: "here".to_owned(),
            visit: self.visit.id.clone(),
            seq: self.visit.next,
            schema: SCHEMA,
            key: String::new(),
            at,
            body,
        };
        self.visit.take(&envelope);
        self
    }

    /// The screen chosen instead.
    pub(crate) fn on(&mut self, screen: ScreenId) -> &mut Scene {
        self.say(Event::ScreenChosen(screen))
    }

    /// All of the gate holds but these exceptions.
    pub(crate) fn gate(&mut self, exceptions: &[(&str, &str)]) -> &mut Scene {
        let answers = ITEMS
            .iter()
            .map(|item| {
                let answer = exceptions.iter().find(|(id, _)| *id == item.id);
                let answer = answer.map_or(HOLDS, |(_, answer)| answer);
                (item.id.to_owned(), answer.to_owned())
            })
            .collect();
        self.say(Event::Gate(answers))
    }

    /// The age put right.
    pub(crate) fn age(&mut self, age: Option<Age>) -> &mut Scene {
        let mut details = self.visit.details.clone().unwrap();
        details.age = age;
        self.say(Event::Details(details))
    }

    pub(crate) fn open(&mut self, task: TaskId) -> u32 {
        let trial = self.visit.next_trial();
        self.say(Event::TrialOpened {
            trial,
            task,
            length: None,
        });
        self.trial = trial;
        trial
    }

    pub(crate) fn mark(&mut self, ms: i64, kind: MarkKind) -> &mut Scene {
        self.mark_stamped(at(ms), kind)
    }

    /// A press whose clocks may have been restarted or set.
    pub(crate) fn mark_stamped(&mut self, at: Stamp, kind: MarkKind) -> &mut Scene {
        let trial = self.trial;
        self.say(Event::Mark { trial, at, kind })
    }

    /// A press that is recorded when it is made.
    pub(crate) fn mark_at(&mut self, ms: i64, kind: MarkKind) -> &mut Scene {
        let (trial, at) = (self.trial, at(ms));
        self.say_at(at, Event::Mark { trial, at, kind })
    }

    /// The newest press of the trial taken back.
    pub(crate) fn undo(&mut self) -> &mut Scene {
        let trial = self.trial;
        self.say(Event::Undo { trial })
    }

    pub(crate) fn choose(&mut self, question: &str, answer: &str) -> &mut Scene {
        self.answer(question, Answer::Choice(answer.to_owned()))
    }

    pub(crate) fn number(&mut self, question: &str, n: i32) -> &mut Scene {
        self.answer(question, Answer::Tenths(n * 10))
    }

    pub(crate) fn words(&mut self, question: &str, words: &str) -> &mut Scene {
        self.answer(question, Answer::Words(words.to_owned()))
    }

    fn answer(&mut self, question: &str, answer: Answer) -> &mut Scene {
        self.answer_at(self.now, question, answer)
    }

    /// An answer that is recorded at a moment.
    pub(crate) fn answer_at(&mut self, ms: i64, question: &str, answer: Answer) -> &mut Scene {
        let (trial, question) = (self.trial, question.to_owned());
        let answer = Some(answer);
        let event = Event::Answer {
            trial,
            question,
            answer,
        };
        self.say_at(at(ms), event)
    }

    /// A count made outside the visit, attached to it.
    pub(crate) fn attach(&mut self, task: TaskId, marks: Vec<(Stamp, MarkKind)>) -> &mut Scene {
        let trial = self.visit.next_trial();
        self.say(Event::Attached {
            from: self.visit.id.clone(),
            trial,
            task,
            length: None,
            marks,
            hidden: Vec::new(),
            answers: Vec::new(),
            chokings: Vec::new(),
        })
    }

    /// Goes on past the first thing in the way whose key begins so, as the page would.
    pub(crate) fn pass(&mut self, task: TaskId, begins: &str, by: Role) -> &mut Scene {
        let held = holds(task, &self.visit.exam);
        let hold = held.iter().find(|h| h.id.starts_with(begins));
        assert!(hold.is_some(), "no {begins} in {held:?}");
        let hold = hold.unwrap();
        self.say(Event::WentOn {
            hold: hold.id.clone(),
            because: "needed for the assessment".to_owned(),
            by,
            says: hold.says.clone(),
            initials: None,
            ground: None,
        })
    }

    /// Goes on past everything that is in the way of a task, with one reason.
    pub(crate) fn pass_all(&mut self, task: TaskId, because: &str, by: Role) -> &mut Scene {
        for hold in holds(task, &self.visit.exam) {
            self.say(Event::WentOn {
                hold: hold.id,
                because: because.to_owned(),
                by,
                says: hold.says,
                initials: None,
                ground: None,
            });
        }
        self
    }

    /// What to do until review is pressed.
    pub(crate) fn plan(&mut self, action: Action, because: &str) -> &mut Scene {
        self.plan_with(|plan| Plan {
            action: Some(action),
            because: because.to_owned(),
            ..plan
        })
    }

    /// A plan as it stands for the decision, changed.
    pub(crate) fn plan_with(&mut self, change: impl FnOnce(Plan) -> Plan) -> &mut Scene {
        let decision = self.visit.decision().unwrap();
        self.say(Event::Plan(change(action::standing(
            &decision,
            &self.visit.plan,
        ))))
    }

    /// The decision as it stood when the handover was opened.
    pub(crate) fn decided(&mut self) -> &mut Scene {
        let verdict = self.verdict().id().to_owned();
        self.say(Event::Decided {
            verdict,
            reasons: Vec::new(),
            versions: versions(),
            policy: Policy::OURS.to_owned(),
        })
    }
}

fn versions() -> Versions {
    Versions {
        app: "0".to_owned(),
        rules: "1".to_owned(),
    }
}
