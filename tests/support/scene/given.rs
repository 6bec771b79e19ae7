//! What is counted, given and looked at in a scene.

use penlight::clinical::findings::oral::{FoundId, Seen};
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::oral;
use penlight::clinical::knowledge::oral::Takes;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::{breathing, cracker, timed_water};
use penlight::record::event::Event;

use super::Scene;

impl Scene {
    /// A rate of breathing, counted elsewhere.
    pub(crate) fn breaths(&mut self, rate: i32) -> &mut Scene {
        self.open(TaskId::Breathing);
        self.number(breathing::TYPED, rate)
    }

    /// ... and the saturation beside it.
    pub(crate) fn spo2(&mut self, percent: i32) -> &mut Scene {
        self.breaths(16).number(breathing::SATURATION, percent)
    }

    /// Dry swallows tapped at these times; the window ran out.
    pub(crate) fn dry(&mut self, times: &[i64]) -> &mut Scene {
        self.open(TaskId::DrySwallow);
        self.mark(0, MarkKind::Start);
        for ms in times {
            self.mark(*ms, MarkKind::Tap);
        }
        self.mark(30_020, MarkKind::WindowOver)
    }

    /// A cup in one go, with signs so long after the last swallow (negative: while drinking).
    pub(crate) fn water(&mut self, signs: &[(Sign, i64)]) -> &mut Scene {
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

    /// A watched trial by mouth.
    pub(crate) fn given(&mut self, task: TaskId, from: i64, signs: &[(Sign, i64)]) -> &mut Scene {
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

    /// Six clear sips, but for what `each` says of every one.
    pub(crate) fn sips_given(&mut self, each: &mut dyn FnMut(usize, &mut Scene)) {
        for (n, ml) in [3, 3, 5, 5, 10, 10].into_iter().enumerate() {
            let from = 100_000 + i64::try_from(n).unwrap() * 70_000;
            self.given(TaskId::Sips, from, &[]).number("sip", ml);
            if ml == 3 {
                self.choose("sip-way", "under-tongue")
                    .choose("extra-swallows", "2");
            }
            each(n, self);
        }
    }

    /// A timed cup, drunk in 8 seconds with one swallow, and how the voice was after it.
    pub(crate) fn timed_cup(&mut self, from: i64, signs: &[(Sign, i64)], after: &str) {
        self.open(TaskId::TimedWater);
        self.choose(timed_water::OFFERED, "100")
            .choose("voice-before", "clear");
        self.mark(from, MarkKind::Start)
            .mark(from + 4_000, MarkKind::Tap);
        self.mark(from + 8_000, MarkKind::End);
        for (sign, at) in signs {
            self.mark(from + 8_000 + at, MarkKind::Sign(*sign));
        }
        self.mark(from + 68_030, MarkKind::WatchOver);
        self.choose(timed_water::CUP, timed_water::EMPTY)
            .choose("voice-after", after);
    }

    /// A cracker made ready: nothing against it.
    pub(crate) fn cracker(&mut self) -> &mut Scene {
        self.open(TaskId::Cracker);
        for question in [cracker::ALLERGY, cracker::TEETH, cracker::ORDER] {
            self.choose(question, cracker::FINE);
        }
        self
    }

    /// Everything looked at in face, mouth and throat as expected, but these.
    pub(crate) fn examined(&mut self, but: &[(&str, &str)]) -> &mut Scene {
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
