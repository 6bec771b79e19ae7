//! What can keep a task from being given, as data; and the key under which going on past it is
//! recorded.
//!
//! # The form of a key
//!
//! Made of stable ids, numbers and, where a state of what was seen matters, of facts: a reason given
//! for one reading or one state never speaks for another. No sentence is in it, so that rewording
//! changes none. It stands in stored records: a released form stays.
//!
//! | what | key |
//! |---|---|
//! | an answer of the gate | `gate.ITEM.EXCEPTION` |
//! | what the mouth shows against the gate | `oral.ITEM.EXCEPTION` |
//! | studied in adults | `child.TASK` |
//! | weakness that could be new | `weakness.FOUND` |
//! | choking | `choked.TASK.AT+AT` |
//! | an answer, a count, a reading too old | `old.WHAT.AT`, `old.voice.TRIAL.AT` |
//! | breaths and saturation | `RULE.READING`, or `RULE` without a reading |
//! | a wet voice before it | `water.wet-before.TASK` |
//! | the cracker's own reasons | `cracker.STATE` |
//! | dry swallows | `dry.STATE` |
//! | a sign in this task, or in another | `again.TASK.TRIED.STATE`, `after.OTHER.TRIED.TASK.STATE` |
//! | another trial runs, or its watch does | `runs.OTHER.TRIED.TASK`, `watch.OTHER.TRIED.TASK` |
//! | small sips come first | `first.TASK.TRIED.STATE` |
//! | nobody may go on, so that none is stored | `not-for.TASK`, `ended`, `gate.open` |
//!
//! `TASK`, `OTHER`: [`TaskId::id`]. `TRIED`: how many trials of it were given. `AT`: milliseconds by
//! the wall clock. `FOUND`: a JSON list of `[item, exception, side, grade]`. `STATE`: a JSON list of
//! `[rule, fact]`, see [`crate::clinical::findings::fact::Fact::key`].
//!
//! Earlier versions had sentences where `FOUND` and `STATE` stand, and other words in front of some:
//! `crate::clinical::decision::in_the_way::stored` reads them.

use serde::{Serialize, Serializer};

use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::breathing::Reading;
use crate::clinical::findings::ended::EndedEarly;
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::old::Old;
use crate::clinical::findings::oral::{Found, Severity, Sides};
use crate::clinical::knowledge::gate_items::{Exception, Group, Item, State};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::task::TaskId;
use crate::measure::decimals::decimals;
use crate::measure::time::Millis;

/// What must be recorded after a choking before anybody may go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AfterChoking {
    /// That the person is back to baseline.
    Baseline,
    /// The breaths, counted anew.
    Breaths,
    /// The voice, heard anew.
    Voice,
}

/// One thing in the way. `F` is what a rule says of it, a flag.
///
/// A flag can tell that somebody went on past one of these: so the type of a flag is open here.
#[derive(Clone, Debug, PartialEq)]
pub enum Obstacle<F> {
    /// The task is not meant for this person.
    NotFor {
        /// Which.
        task: TaskId,
        /// What its rule says.
        said: F,
    },
    /// The screen was ended.
    Ended {
        /// Why.
        why: EndedEarly,
        /// From how many years the water is given under the policy.
        water_from_years: i32,
    },
    /// An answer before the start.
    Gate {
        /// To which item.
        item: &'static Item,
        /// Which.
        exception: &'static Exception,
        /// What it does under the policy.
        state: State,
    },
    /// What the mouth shows against an answer before the start.
    AgainstGate {
        /// What was seen.
        found: Found,
        /// The gate's item it speaks against.
        item: &'static Item,
        /// The gravest exception of that item: what is to be done is the same.
        worst: &'static Exception,
        /// Who may go on.
        go_on: GoOn,
    },
    /// The task was studied in adults, and this is a child.
    Child {
        /// Which.
        task: TaskId,
    },
    /// Weakness was found after nothing new or worse was known.
    CouldBeNew {
        /// What.
        weak: Vec<Found>,
    },
    /// Choked.
    Choked {
        /// What is to be given after it.
        task: TaskId,
        /// When, each of them, by the wall clock.
        at: Vec<Millis>,
        /// What was not recorded since the newest.
        missing: Vec<AfterChoking>,
    },
    /// Questions before the start are not answered.
    GateOpen {
        /// How many.
        open: usize,
    },
    /// What was asked, counted, read or heard is too old.
    Old(Old),
    /// A reading of the breathing, or none.
    Breathing {
        /// Which.
        reading: Reading,
        /// The rule it is kept under.
        under: &'static Rule,
        /// Who may go on.
        go_on: GoOn,
        /// What its rule says.
        said: F,
    },
    /// A voice that is wet before anything is given.
    WetBefore {
        /// What is to be given.
        task: TaskId,
    },
    /// What the cracker asks for first.
    Cracker {
        /// Who may go on.
        go_on: GoOn,
        /// What its rule says.
        said: F,
        /// What was seen with a drink.
        seen: Vec<F>,
    },
    /// What the dry swallows say.
    DrySwallows {
        /// Who may go on.
        go_on: GoOn,
        /// What their rule says.
        said: F,
    },
    /// A sign, or a low reading, in a trial by mouth.
    Seen {
        /// In which task.
        of: TaskId,
        /// How many of its trials were given.
        tried: usize,
        /// What is to be given: the same once more, or another.
        task: TaskId,
        /// What was seen, the gravest first.
        seen: Vec<F>,
        /// Whether nobody said of a late sign whose it was.
        unsaid: bool,
    },
    /// Another trial was begun and is not ended.
    Running {
        /// Of which task.
        of: TaskId,
        /// How many of its trials were given.
        tried: usize,
        /// What is to be given.
        task: TaskId,
    },
    /// The watch after another trial still runs.
    Watched {
        /// Of which task.
        of: TaskId,
        /// How many of its trials were given.
        tried: usize,
        /// What is to be given.
        task: TaskId,
    },
    /// Small sips come first.
    SmallSipsFirst {
        /// What is to be given.
        task: TaskId,
        /// How many sips were given.
        tried: usize,
        /// What its rule says.
        said: F,
    },
}

/// What is stored of an item looked at.
type StoredFound = (&'static str, &'static str, Option<Sides>, Option<Severity>);

impl<F: Serialize> Obstacle<F> {
    /// The key under which going on past it is recorded: see the table above.
    pub fn key(&self) -> String {
        match self {
            Obstacle::NotFor { task, .. } => format!("not-for.{}", task.id()),
            Obstacle::Ended { .. } => "ended".to_owned(),
            Obstacle::Gate {
                item, exception, ..
            } => gate_key(item, exception),
            Obstacle::AgainstGate { found, .. } => against_key(found),
            Obstacle::Child { task } => format!("child.{}", task.id()),
            Obstacle::CouldBeNew { weak } => {
                format!("weakness.{}", json(weak.iter().map(stored).collect()))
            }
            Obstacle::Choked { task, at, .. } => format!("choked.{}.{}", task.id(), times(at)),
            Obstacle::GateOpen { .. } => "gate.open".to_owned(),
            Obstacle::Old(old) => old_key(old),
            Obstacle::Breathing { reading, under, .. } => breathing_key(under, *reading),
            Obstacle::WetBefore { task } => format!("water.wet-before.{}", task.id()),
            Obstacle::Cracker { said, seen, .. } => {
                let all = std::iter::once(said).chain(seen).collect();
                format!("cracker.{}", json(all))
            }
            Obstacle::DrySwallows { said, .. } => format!("dry.{}", json(vec![said])),
            Obstacle::Seen {
                of,
                tried,
                task,
                seen,
                ..
            } => {
                let state = json(seen.iter().collect());
                let of_id = of.id();
                match of == task {
                    true => format!("again.{of_id}.{tried}.{state}"),
                    false => format!("after.{of_id}.{tried}.{}.{state}", task.id()),
                }
            }
            Obstacle::Running { of, tried, task } => {
                format!("runs.{}.{tried}.{}", of.id(), task.id())
            }
            Obstacle::Watched { of, tried, task } => {
                format!("watch.{}.{tried}.{}", of.id(), task.id())
            }
            Obstacle::SmallSipsFirst { task, tried, said } => {
                format!("first.{}.{tried}.{}", task.id(), json(vec![said]))
            }
        }
    }
}

/// As part of a fact it is its key.
impl<F: Serialize> Serialize for Obstacle<F> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.key())
    }
}

/// The key of an answer of the gate. A reason given for one exception of an item does not speak for
/// another.
pub fn gate_key(item: &Item, exception: &Exception) -> String {
    format!("gate.{}.{}", item.id, exception.id)
}

/// The key of what the mouth shows against an answer of the gate.
pub fn against_key(found: &Found) -> String {
    format!("oral.{}.{}", found.item().id, found.exception().id)
}

/// The key of a reading of the breathing: a reason given for 25 breaths does not speak for 40.
pub fn breathing_key(under: &Rule, reading: Reading) -> String {
    match reading {
        Reading::NoCount(_) => under.id.to_owned(),
        Reading::Rate(rate, _) => format!("{}.{rate}", under.id),
        Reading::Spo2(spo2) => format!("{}.{}", under.id, decimals(spo2.percent, 0)),
    }
}

fn old_key(old: &Old) -> String {
    let what = match old.what {
        Answered::Group(Group::Person) => "person",
        Answered::Group(Group::Orders) => "orders",
        Answered::Group(Group::Airway) => "airway",
        Answered::Group(Group::Ready) => "ready",
        Answered::Breaths => "breath",
        Answered::Saturation => "breath-spo2",
        Answered::Voice => "voice",
    };
    let at = old.at.at.wall.0;
    match old.trial {
        Some(trial) => format!("old.{what}.{trial}.{at}"),
        None => format!("old.{what}.{at}"),
    }
}

fn stored(found: &Found) -> StoredFound {
    let (item, exception) = (found.item().id, found.exception().id);
    (item, exception, found.side(), found.severity())
}

fn times(at: &[Millis]) -> String {
    let each: Vec<String> = at.iter().map(|at| at.0.to_string()).collect();
    each.join("+")
}

fn json<T: Serialize>(state: Vec<T>) -> String {
    // Ids, numbers and facts: every one of them can be written.
    serde_json::to_string(&state).unwrap_or_default()
}
