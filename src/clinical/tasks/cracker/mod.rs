//! One plain cracker against the clock: bites, chews and swallows on a pad each.

pub mod judge;

use crate::clinical::findings::counted::Counted;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{AgainstCracker, CrackerFact, CrackerOpen, With};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::looked::Looked;
use crate::clinical::findings::trial::{Answer, MarkKind, Trial};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::by_mouth::signs;
use crate::clinical::tasks::by_mouth::signs::WATCH;
use crate::clinical::tasks::by_mouth::{saturation, watched};
use crate::clinical::tasks::cracker::judge as cracker;
use crate::clinical::tasks::cracker::judge::{Before, Cracker};
use crate::clinical::tasks::spec::{Pad, Question, Takes, TaskSpec, When, watch_cut};
use crate::measure::time::Millis;

/// Question: an allergy to it.
pub const ALLERGY: &str = "allergy";
/// Question: teeth.
pub const TEETH: &str = "teeth";
/// Question: the diet order.
pub const ORDER: &str = "diet-order";
/// Question: which cracker.
const WHICH: &str = "which";
/// The answer that speaks for the cracker, to each of the three.
pub const FINE: &str = "fine";
/// The answer that speaks against it, to each of the three.
pub const AGAINST: &str = "against";

const fn asked_first(id: &'static str) -> Question {
    Question {
        id,
        when: When::Before,
        takes: Takes::OneOf(&[FINE, AGAINST]),
        only_if: None,
        needed: true,
    }
}

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    pad: Pad {
        counts: true,
        first_counts: true,
        watch: Some(WATCH),
        ..Pad::PLAIN
    },
    questions: &[
        asked_first(ALLERGY),
        asked_first(TEETH),
        asked_first(ORDER),
        watched::question(When::AfterWatch),
        saturation::lowest(When::AfterWatch),
        Question {
            id: WHICH,
            when: When::After,
            takes: Takes::Words(40),
            only_if: None,
            needed: false,
        },
    ],
    rules: &[
        &rules::CRACKER_REPORT,
        &rules::CRACKER_NOT_FOR,
        &rules::EATEN_UNFINISHED,
    ],
    slug: "cracker",
    flags: |_, exam| flags(exam),
    fits: |question, exam| by_mouth::fits(TaskId::Cracker, question, exam),
    studied_in_adults: true,
    asks_first: Some(asked),
    asked_though_held: true,
    ..TaskSpec::plain(TaskId::Cracker)
};

/// The counts of a trial that was ended; none before, or where its time is not known.
pub fn read(trial: &Trial) -> Option<Cracker> {
    let time = trial.between(trial.start()?, trial.end_pressed()?).length?;
    let count = |kind| u32::try_from(trial.count_of(kind)).unwrap_or(u32::MAX);
    Some(Cracker {
        bites: count(MarkKind::Tap),
        chews: count(MarkKind::Count(Counted::Chew)),
        swallows: count(MarkKind::Count(Counted::Swallow)),
        time,
    })
}

/// What must be known before it is given, as far as the visit knows it.
fn known(exam: &Exam, drink_went_wrong: Looked) -> Before {
    let trial = exam.latest(TaskId::Cracker);
    let answer = |id: &str| trial.and_then(|t| t.choice(id));
    // The questions on teeth and on the order ask for what speaks for it, that on allergy for
    // what speaks against it.
    let there = |id: &str, fine: Looked, against: Looked| match answer(id) {
        Some(FINE) => fine,
        Some(AGAINST) => against,
        _ => Looked::NotTested,
    };
    Before {
        teeth: there(TEETH, Looked::Present, Looked::Absent),
        drink_went_wrong,
        allergy: there(ALLERGY, Looked::Absent, Looked::Present),
        diet_order: there(ORDER, Looked::Absent, Looked::Present),
    }
}

/// Whether everything was asked that comes before it.
pub fn asked(exam: &Exam) -> bool {
    let known = known(exam, Looked::NotTested);
    [known.teeth, known.allergy, known.diet_order]
        .iter()
        .all(|one| !one.is_open())
}

/// What holds it up where a drink of this visit went wrong, went well or was not tried, each with
/// who may go on. What was not asked yet is not among it: the pad comes after the questions.
pub fn holds(exam: &Exam, drink_went_wrong: Looked) -> Vec<(AgainstCracker, Flag, GoOn)> {
    cracker::against(&known(exam, drink_went_wrong))
        .into_iter()
        .filter_map(|against| Some((against, cracker::not_for(against), go_on(against)?)))
        .collect()
}

/// Who may go on; none where it is only not asked yet.
fn go_on(against: AgainstCracker) -> Option<GoOn> {
    match against {
        AgainstCracker::NoDrinkTried => Some(GoOn::WithReason),
        AgainstCracker::DrinkWentWrong | AgainstCracker::NoTeeth | AgainstCracker::DietOrder => {
            Some(GoOn::SlpWithReason)
        }
        AgainstCracker::Allergy => Some(GoOn::Never),
        AgainstCracker::AllergyNotAsked
        | AgainstCracker::TeethNotKnown
        | AgainstCracker::DietOrderNotChecked => None,
    }
}

/// What the rules say about one trial.
pub fn judge(trial: &Trial) -> Vec<Flag> {
    let mut flags = signs::judge(&With::Cracker, &Reading::of(trial).pressed);
    if trial.start().is_none() {
        return flags;
    }
    // A trial that was rightly stopped is not asked for its end.
    let stopped = flags.iter().any(|f| f.level() == Level::Stop);
    if let Some(open) = open(trial).filter(|_| !stopped) {
        let fact = CrackerFact::Open(open);
        flags.push(rules::EATEN_UNFINISHED.flag(Level::Incomplete, Domain::EatingDrinking, fact));
    }
    if let Some(counts) = read(trial) {
        let typed = match trial.answers.get(WHICH) {
            Some(Answer::Words(words)) => Some(words.as_str()),
            _ => None,
        };
        flags.extend(cracker::judge_of(typed, &counts).unwrap_or_default());
    }
    flags
}

/// What is missing of one that was begun.
fn open(trial: &Trial) -> Option<CrackerOpen> {
    match read(trial) {
        None => Some(CrackerOpen::End),
        Some(c) if c.time <= Millis::ZERO => Some(CrackerOpen::NoTime),
        Some(_) if watch_cut(trial) => Some(CrackerOpen::WatchCut),
        Some(_) if !Reading::of(trial).was_watched() => Some(CrackerOpen::WatchRuns),
        Some(_) => Reading::of(trial).unwatched.map(CrackerOpen::Unwatched),
    }
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    by_mouth::of_all(exam, TaskId::Cracker, judge)
}
