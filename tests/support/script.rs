//! A visit written press by press, as the journal would have it, and its text for the ward.

#![allow(dead_code, clippy::unwrap_used)]

use penlight::clinical::findings::gate::{HOLDS, ITEMS};
use penlight::clinical::findings::oral::{FoundId, Seen};
use penlight::clinical::findings::trial::{Answer, MarkKind};
use penlight::clinical::knowledge::oral;
use penlight::clinical::knowledge::oral::Takes;
use penlight::clinical::knowledge::person::{Age, Label, Role, Setting};
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::action;
use penlight::handover::nursing::{Clock, write};
use penlight::measure::time::{Millis, PageLife, Stamp};
use penlight::record::envelope::{Envelope, SCHEMA, body};
use penlight::record::event::{Action, Details, Event, Plan, Versions};
use penlight::record::id::VisitId;
use penlight::record::visit::Visit;

/// The afternoon of an invented visit, in milliseconds since it began.
pub(crate) fn at(ms: i64) -> Stamp {
    Stamp {
        life: PageLife(7),
        mono: Millis(ms),
        wall: Millis(1_795_000_000_000 + ms),
    }
}

pub(crate) fn clock(time: &str) -> Clock {
    let (hours, minutes) = time.split_once(':').unwrap();
    let minute = |n: &str| n.parse::<i64>().unwrap();
    clock_after((minute(hours) - 14) * 60 + minute(minutes))
}

/// The time so many minutes after the visit began.
pub(crate) fn clock_after(minutes: i64) -> Clock {
    let wall = at(minutes * 60_000).wall;
    let (date, time) = local(wall);
    Clock {
        date,
        time,
        wall,
        local,
    }
}

/// The visits begin at 14:00 on this day.
pub(crate) fn local(wall: Millis) -> (String, String) {
    let minutes = (wall - at(0).wall).0 / 60_000 + 14 * 60;
    let date = format!("{} Nov 2026", 25 + minutes.div_euclid(1440));
    let minutes = minutes.rem_euclid(1440);
    (date, format!("{:02}:{:02}", minutes / 60, minutes % 60))
}

pub(crate) struct Script {
    pub(crate) visit: Visit,
    pub(crate) trial: u32,
    /// When events are recorded, in milliseconds since the visit began.
    pub(crate) now: i64,
}

impl Script {
    pub(crate) fn new(age: Age, role: Role) -> Script {
        Script::under(Policy::default(), age, role)
    }

    pub(crate) fn under(policy: Policy, age: Age, role: Role) -> Script {
        let mut script = Script {
            visit: Visit::new(VisitId::new("0123456789abcdef").unwrap()),
            trial: 0,
            now: 0,
        };
        script.say(Event::Opened {
            details: Details {
                label: Label::parse("Visit 3, 14:10").unwrap(),
                age: Some(age),
                sex: None,
                setting: Some(Setting::Ward),
                language: None,
            },
            screen: Some(ScreenId::Swallow),
            versions: Versions {
                app: "0".to_owned(),
                rules: "1".to_owned(),
            },
            policy,
            role,
        });
        script
    }

    pub(crate) fn say(&mut self, event: Event) -> &mut Script {
        self.say_at(at(self.now), event)
    }

    /// The same, recorded at a moment.
    pub(crate) fn say_at(&mut self, at: Stamp, event: Event) -> &mut Script {
        let envelope = Envelope {
            device: "here".to_owned(),
            visit: self.visit.id.clone(),
            seq: self.visit.next,
            schema: SCHEMA,
            key: String::new(),
            at,
            body: body(&event).unwrap(),
        };
        self.visit.take(&envelope);
        self
    }

    /// All of the gate holds but these exceptions.
    pub(crate) fn gate(&mut self, exceptions: &[(&str, &str)]) -> &mut Script {
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

    pub(crate) fn mark(&mut self, ms: i64, kind: MarkKind) -> &mut Script {
        let trial = self.trial;
        self.say(Event::Mark {
            trial,
            at: at(ms),
            kind,
        })
    }

    pub(crate) fn choose(&mut self, question: &str, answer: &str) -> &mut Script {
        let trial = self.trial;
        self.say(Event::Answer {
            trial,
            question: question.to_owned(),
            answer: Some(Answer::Choice(answer.to_owned())),
        })
    }

    pub(crate) fn breaths(&mut self, rate: i32) -> &mut Script {
        let trial = self.open(TaskId::Breathing);
        self.say(Event::Answer {
            trial,
            question: "rate".to_owned(),
            answer: Some(Answer::Tenths(rate * 10)),
        })
    }

    pub(crate) fn dry(&mut self, times: &[i64]) -> &mut Script {
        self.open(TaskId::DrySwallow);
        self.mark(0, MarkKind::Start);
        for ms in times {
            self.mark(*ms, MarkKind::Tap);
        }
        self.mark(30_020, MarkKind::WindowOver)
    }

    /// A cup in one go, with signs so long after the last swallow (negative: while drinking).
    pub(crate) fn water(&mut self, signs: &[(Sign, i64)]) -> &mut Script {
        self.open(TaskId::Water90);
        self.choose("voice-before", "clear");
        self.mark(100_000, MarkKind::Start);
        self.mark(108_400, MarkKind::End);
        for (sign, after) in signs {
            self.mark(108_400 + after, MarkKind::Sign(*sign));
        }
        self.mark(168_430, MarkKind::WatchOver);
        self.choose("cup", "one-go").choose("voice-after", "clear")
    }

    pub(crate) fn plan(&mut self, action: Action, because: &str) -> &mut Script {
        let decision = self.visit.decision().unwrap();
        self.say(Event::Plan(Plan {
            action: Some(action),
            because: because.to_owned(),
            ..action::standing(&decision, &self.visit.plan)
        }))
    }

    pub(crate) fn text(&self) -> String {
        write(&self.visit, &clock("14:31")).unwrap()
    }
}

impl Script {
    /// The screen chosen instead.
    pub(crate) fn on(&mut self, screen: ScreenId) -> &mut Script {
        self.say(Event::ScreenChosen(screen))
    }

    pub(crate) fn number(&mut self, question: &str, n: i32) -> &mut Script {
        let trial = self.trial;
        self.say(Event::Answer {
            trial,
            question: question.to_owned(),
            answer: Some(Answer::Tenths(n * 10)),
        })
    }

    pub(crate) fn words(&mut self, question: &str, words: &str) -> &mut Script {
        let trial = self.trial;
        self.say(Event::Answer {
            trial,
            question: question.to_owned(),
            answer: Some(Answer::Words(words.to_owned())),
        })
    }

    /// A watched trial by mouth.
    pub(crate) fn given(&mut self, task: TaskId, from: i64, signs: &[(Sign, i64)]) -> &mut Script {
        self.open(task);
        self.choose("voice-before", "clear");
        self.mark(from, MarkKind::Start);
        self.mark(from + 2_000, MarkKind::End);
        for (sign, after) in signs {
            self.mark(from + 2_000 + after, MarkKind::Sign(*sign));
        }
        self.mark(from + 62_030, MarkKind::WatchOver);
        self.choose("voice-after", "clear")
    }

    /// Everything looked at in face, mouth and throat as expected, but these.
    pub(crate) fn examined(&mut self, but: &[(&str, &str)]) -> &mut Script {
        let press = oral::items().filter_map(|item| {
            let found = but.iter().find(|(id, _)| *id == item.id);
            let seen = match found {
                Some((_, what)) => Seen::Found(vec![FoundId {
                    what: (*what).to_owned(),
                    side: None,
                    severity: None,
                }]),
                None if item.takes == Takes::Look => Seen::AsExpected,
                None => return None,
            };
            Some((item.id.to_owned(), seen))
        });
        let press = press.collect();
        self.say(Event::Oral(press))
    }
}
