//! Visits pressed at random, by a generator of their own so that they are the same every time.

use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate::ITEMS;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::by_mouth::saturation;
use penlight::clinical::tasks::{self, dry_swallow};
use penlight::measure::time::Millis;
use penlight::measure::time::PageLife;
use penlight::measure::time::Stamp;
use penlight::record::event::Event;

use super::in_the_way::holds;
use super::moments::at;
use super::scene::Scene;

/// Chance that is the same every time.
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    pub(crate) fn below(&mut self, n: usize) -> usize {
        let step = self.0.wrapping_mul(6_364_136_223_846_793_005);
        self.0 = step.wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % n
    }

    pub(crate) fn of<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.below(all.len())]
    }

    fn signs(&mut self) -> Vec<(Sign, i64)> {
        let after = [-500, 1_000, 30_000, 61_000, 65_000, 120_000];
        let n = self.of(&[0, 0, 0, 1, 1, 2]);
        (0..n)
            .map(|_| (self.of(&Sign::ALL), self.of(&after)))
            .collect()
    }
}

/// What gives something by mouth.
pub(crate) const GIVEN: [TaskId; 5] = [
    TaskId::Water90,
    TaskId::Own,
    TaskId::Sips,
    TaskId::TimedWater,
    TaskId::Cracker,
];

/// A trial of a task with signs, whole but for what `cut` leaves out of it.
fn given(s: &mut Scene, dice: &mut Dice, task: TaskId, t: i64) {
    let signs = dice.signs();
    let end = t + 8_000;
    let number = s.open(task);
    for question in ["allergy", "teeth", "diet-order"] {
        s.choose(question, "fine");
    }
    s.choose("voice-before", "clear").choose("cup-size", "100");
    let level = dice.of(&["d0", "d2", "f4"]);
    s.choose("own-level", level);
    s.number("sip", dice.of(&[3, 5, 10]));
    if dice.below(12) == 0 {
        s.lost();
    } else {
        s.mark(t, MarkKind::Start);
    }
    s.mark(t + 1_000, MarkKind::Tap).mark(end, MarkKind::End);
    for (sign, after) in signs {
        s.mark(end + after, MarkKind::Sign(sign));
    }
    let over = match dice.below(8) {
        // The app was off when the watch ran out, and the clock was set.
        0 => Stamp {
            life: PageLife(8),
            mono: Millis(5),
            ..at(end + dice.of(&[900_000, -900_000]))
        },
        _ => at(end + 60_030),
    };
    s.say(Event::Mark {
        trial: number,
        at: over,
        kind: MarkKind::WatchOver,
    });
    s.choose("cup", "one-go").choose("cup-left", "empty");
    s.choose("voice-after", dice.of(&["clear", "clear", "wet"]));
    if dice.below(5) == 0 {
        s.number(saturation::LOWEST, dice.of(&[96, 92, 89, 80]));
    }
}

/// One thing that happens. Whether it takes something back, or puts it right.
fn happens(s: &mut Scene, dice: &mut Dice, t: i64) -> bool {
    match dice.below(20) {
        0 => {
            let item = &ITEMS[dice.below(ITEMS.len())];
            let exception = &item.exceptions[dice.below(item.exceptions.len())];
            s.say(Event::Gate(vec![(item.id.into(), exception.id.into())]));
            return item.id == "new-weakness";
        }
        1 => {
            s.gate(&[]);
            return true;
        }
        2 => {
            s.breaths(dice.of(&[16, 16, 30, 22]));
        }
        3 => {
            s.spo2(dice.of(&[97, 97, 93, 89]));
        }
        4 => {
            let n = dice.below(4);
            let told = tasks::flags(TaskId::DrySwallow, &s.visit.exam);
            let none = told.iter().any(|f| dry_swallow::is_none_at_all(f.fact()));
            s.dry(&[2_000, 9_000, 17_000][..n]);
            // None at all, and enough once the mouth was moistened.
            return none && n == 3;
        }
        5 => {
            s.dry(&[]).choose("not-valid", "not-felt");
        }
        6..=9 => {
            let task = dice.of(&GIVEN);
            given(s, dice, task, t);
        }
        10 => {
            let signs = dice.signs();
            s.open(TaskId::Meal);
            s.mark(t, MarkKind::Start);
            for (sign, after) in signs {
                s.mark(t + 30_000 + after, MarkKind::Sign(sign));
            }
            s.mark(t + 60_000, MarkKind::End);
        }
        11 => {
            s.say(Event::Choking(at(t)));
            if dice.below(2) == 0 {
                s.say(Event::HelpCalled(at(t + 3_000)))
                    .say(Event::BackToBaseline(at(t + 50_000)));
            }
        }
        12 => {
            let task = dice.of(&GIVEN);
            s.open(task);
            s.choose("voice-before", dice.of(&["clear", "wet"]));
            if dice.below(2) == 0 {
                s.choose("not-valid", "refused");
            }
        }
        13 | 14 => {
            let role = s.visit.role;
            for hold in holds(dice.of(&GIVEN), &s.visit.exam) {
                if hold.go_on.open_to(role) {
                    s.say(Event::WentOn {
                        hold: hold.id,
                        because: "needed".to_owned(),
                        by: role,
                        says: hold.says,
                        initials: None,
                        ground: None,
                    });
                }
            }
        }
        15 => {
            let all = [
                EndedEarly::Refused,
                EndedEarly::Withdrew,
                EndedEarly::BrokenOff,
            ];
            s.say(Event::EndedEarly(dice.of(&all)));
        }
        16 => {
            let found = [
                ("voice.ah", "wet"),
                ("mouth.moist", "pooled"),
                ("cough", "none"),
            ];
            s.examined(&[dice.of(&found)]);
        }
        17 => {
            let all: Vec<u32> = s.visit.exam.trials.iter().map(|t| t.number).collect();
            if let Some(last) = all.last() {
                s.say(Event::Undo { trial: *last });
            }
            return true;
        }
        18 => {
            s.age(dice.of(&[Some(Age::Years(72)), Some(Age::Years(5)), None]));
            return true;
        }
        _ => s.lost(),
    }
    false
}

/// A visit pressed at random, the same for the same number every time.
pub(crate) struct Walk {
    pub(crate) scene: Scene,
    dice: Dice,
    /// When the next thing happens, in milliseconds since the visit began.
    next: i64,
    left: usize,
}

impl Walk {
    pub(crate) fn new(number: u64) -> Walk {
        let mut dice = Dice(number * 7_919 + 13);
        let mut scene = Scene::new(
            dice.of(&[Age::Years(72), Age::Years(5), Age::Adult]),
            dice.of(&[Role::Slp, Role::Screener]),
        );
        scene.on(dice.of(&[
            ScreenId::Swallow,
            ScreenId::Stepped,
            ScreenId::OwnTrials,
            ScreenId::FullVisit,
        ]));
        if dice.below(5) > 0 {
            scene.gate(&[]);
        }
        Walk {
            scene,
            left: 3 + dice.below(12),
            dice,
            next: 100_000,
        }
    }

    /// The next thing that happens: whether it takes something back, or puts it right. None at the
    /// end.
    pub(crate) fn step(&mut self) -> Option<bool> {
        self.left = self.left.checked_sub(1)?;
        self.scene.now = self.next;
        let taken_back = happens(&mut self.scene, &mut self.dice, self.next);
        self.next += self.dice.of(&[
            70_000, 200_000, 20_000, 70_000, 200_000, 20_000, 7_200_000, 68_400_000,
        ]);
        Some(taken_back)
    }

    /// One of these.
    pub(crate) fn of<T: Copy>(&mut self, all: &[T]) -> T {
        self.dice.of(all)
    }
}
