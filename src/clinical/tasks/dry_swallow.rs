//! Dry swallows in 30 seconds (repetitive saliva swallowing test).

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{DryCount, DryFact, DryResult, Fact};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::measured::Measured;
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::norms::{Method, Quantity, Task, Unit};
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::compare;
use crate::clinical::tasks::compare::Comparison;
use crate::clinical::tasks::spec::{
    Length, NOT_VALID, Pad, QUICK, Question, Takes, TaskSpec, When,
};
use crate::measure::series::Series;
use crate::measure::time::{Doubt, Millis};
use crate::measure::window::{Window, WindowCount};

/// The window (source: OGU00a). A swallow at 30.0 s counts.
pub const WINDOW: Millis = Millis::from_secs(30);
/// Until when later swallows are kept, apart (local policy). They are told and decide nothing.
pub const LATE: Millis = Millis::from_secs(60);
/// Fewer than this many in the window is a sign (source: OGU00a, OGU00b).
pub const EXPECTED: usize = 3;
/// A touch so soon after the one before is no swallow of its own: a finger that bounced (local
/// policy).
pub const TOO_QUICK: Millis = QUICK;

/// The reasons for which a count is not valid.
static NOT_VALID_REASONS: &[&str] = &["not-felt", "not-followed", "too-dry", "neck", "refused"];
/// Of these: that it can't be done with this person, now or later. The water is read without it.
const CANNOT_BE_DONE: [&str; 3] = ["not-felt", "not-followed", "neck"];

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    pad: Pad {
        counts: true,
        length: Length::Fixed(WINDOW),
        late: Some(LATE),
        countdown: true,
        ..Pad::PLAIN
    },
    questions: &[Question {
        id: NOT_VALID,
        when: When::After,
        takes: Takes::OneOf(NOT_VALID_REASONS),
        only_if: None,
        needed: false,
    }],
    compare: |_, exam| compare(exam),
    rules: &[
        &rules::DRY_FEW,
        &rules::DRY_NONE,
        &rules::DRY_NOT_VALID,
        &rules::DRY_ADULTS,
    ],
    not_for: |_, exam| aside(exam),
    slug: "dry-swallows",
    flags: |_, exam| flags(exam),
    read_running: true,
    ..TaskSpec::plain(TaskId::DrySwallow)
};

fn aside(exam: &Exam) -> Option<Flag> {
    let from = exam.policy.dry_swallow_from_years;
    exam.age.is_some_and(|age| age.under_years(from)).then(|| {
        rules::DRY_ADULTS.flag(
            Level::Note,
            Domain::EatingDrinking,
            DryFact::NotFor { from_years: from },
        )
    })
}

/// What the trial yields.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// The taps, split by the window.
    pub count: WindowCount,
    /// Whether the window ran to its end.
    pub whole: bool,
    /// The id of the reason it is not valid, if one was given.
    pub not_valid: Option<String>,
    /// What speaks against the time.
    pub doubt: Option<Doubt>,
}

/// Reads a trial. None where it never started and no reason was given.
pub fn read(trial: &Trial) -> Option<Finding> {
    let not_valid = trial.choice(NOT_VALID).map(str::to_owned);
    let start = trial.start();
    if start.is_none() && not_valid.is_none() {
        return None;
    }
    let over = trial.first(MarkKind::WindowOver);
    let doubt = match (start, over) {
        (Some(start), Some(over)) => trial.doubt_over(start, WINDOW, over),
        _ => None,
    };
    Some(Finding {
        count: Window::new(WINDOW, Some(LATE))
            .map(|window| window.split(&trial.tap_offsets()))
            .unwrap_or_default(),
        whole: start.zip(over).is_some_and(|(start, over)| {
            trial
                .between(start, over)
                .length
                .is_none_or(|length| length >= WINDOW)
        }),
        not_valid,
        doubt,
    })
}

/// The count beside the mean of healthy adults of this age.
fn compare(exam: &Exam) -> Vec<Comparison> {
    let valid = exam
        .latest(TaskId::DrySwallow)
        .and_then(read)
        .filter(|f| f.whole && f.not_valid.is_none());
    let Some(n) = valid.and_then(|f| u32::try_from(f.count.count()).ok()) else {
        return Vec::new();
    };
    vec![compare::compare(
        exam,
        Task::SwallowSaliva,
        Method::Count30s,
        Quantity::counted(Unit::PerHalfMinute, n),
        Measured::DrySwallows(n),
    )]
}

/// The rule of this task.
pub fn judge(finding: &Finding, policy: &Policy) -> Vec<Flag> {
    let (level, rule, result) = result(finding, policy);
    let fact = DryFact::Count(DryCount::Newest, result);
    vec![rule.flag(level, Domain::EatingDrinking, fact)]
}

/// What came of a count, how grave that is, and by which rule.
fn result(finding: &Finding, policy: &Policy) -> (Level, &'static Rule, DryResult) {
    let swallows = finding.count.count();
    let later = finding.count.late.len();
    let quick = Series::new(finding.count.inside.iter().copied()).quicker_than(TOO_QUICK);
    let again = |result| (Level::Incomplete, &rules::DRY_NOT_VALID, result);
    if let Some(why) = finding.not_valid.clone() {
        let swallows = finding.whole.then_some(swallows);
        // Few in a whole count may be the very thing that is looked for.
        let few = swallows.is_some_and(|n| n < EXPECTED);
        let cannot = CANNOT_BE_DONE.contains(&why.as_str()) && !few;
        let level = if cannot {
            Level::Note
        } else {
            Level::Incomplete
        };
        let result = DryResult::NotValid { why, swallows };
        return (level, &rules::DRY_NOT_VALID, result);
    }
    if swallows >= EXPECTED && swallows - quick.min(swallows) < EXPECTED {
        return again(DryResult::TooQuick { touches: quick });
    }
    let no_time = matches!(
        finding.doubt,
        Some(Doubt::Restarted | Doubt::Slept(_) | Doubt::Unknown)
    );
    // Three are three, even where the window was cut short or not seen whole.
    if swallows >= EXPECTED && !no_time {
        let result = DryResult::Enough { swallows };
        return (Level::Pass, &rules::DRY_FEW, result);
    }
    if !finding.whole {
        return again(DryResult::NotFinished);
    }
    if let Some(doubt) = finding.doubt {
        return again(DryResult::Doubtful(doubt));
    }
    let result = DryResult::TooFew { swallows, later };
    match swallows {
        0 if policy.dry_none_stops => (Level::Stop, &rules::DRY_NONE, result),
        0 => (Level::Refer, &rules::DRY_NONE, result),
        _ => (Level::Refer, &rules::DRY_FEW, result),
    }
}

/// A valid count without any swallow: the mouth is moistened and it is counted again.
fn is_none(result: &DryResult) -> bool {
    matches!(result, DryResult::TooFew { swallows: 0, .. })
}

/// Whether the newest count that is valid had no swallow in it.
pub fn none_stands(exam: &Exam) -> bool {
    let valid = |f: &Finding| {
        let (level, _, result) = result(f, &exam.policy);
        matches!(level, Level::Pass | Level::Refer | Level::Stop).then(|| is_none(&result))
    };
    findings(exam).filter_map(|f| valid(&f)).last() == Some(true)
}

/// Whether a flag tells of a count without any swallow that was counted again and not made up for.
pub fn is_none_again(flag: &Flag) -> bool {
    let again = matches!(
        flag.fact(),
        Fact::Dry(DryFact::Count(DryCount::Earlier, result)) if is_none(result)
    );
    again && flag.level() >= Level::Refer
}

/// Whether a flag tells of such a count.
pub fn is_none_at_all(fact: &Fact) -> bool {
    matches!(fact, Fact::Dry(DryFact::Count(_, result)) if is_none(result))
}

/// A whole count without a swallow that was then called not valid.
fn is_doubted_none(finding: &Finding) -> bool {
    finding.whole && finding.not_valid.is_some() && finding.count.count() == 0
}

/// Whether a whole count had no swallow in it and was then called not valid: what was not felt may
/// not have been there. A later count that is valid settles it, one that was left or refused does
/// not.
pub fn none_and_not_valid(exam: &Exam) -> bool {
    let settles = |f: &Finding| {
        let (level, ..) = result(f, &exam.policy);
        matches!(level, Level::Pass | Level::Refer | Level::Stop)
    };
    findings(exam)
        .filter(|f| is_doubted_none(f) || settles(f))
        .last()
        .is_some_and(|f| is_doubted_none(&f))
}

fn findings(exam: &Exam) -> impl Iterator<Item = Finding> + '_ {
    let trials = exam.trials.iter().filter(|t| t.task == TaskId::DrySwallow);
    trials.filter_map(read)
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let aside = aside(exam);
    // The line is for adults; a count without any swallow, made before the age was put right, was
    // seen all the same.
    let told = |f: &Finding| aside.is_none() || f.whole && f.count.count() == 0;
    let mut flags = Vec::new();
    let mut counts = findings(exam).filter(told).peekable();
    let doubted = none_and_not_valid(exam);
    let asked = exam.screen.is_none() || exam.on_screen(TaskId::DrySwallow);
    let superseded = !none_stands(exam) && !exam.policy.dry_none_stops;
    while let Some(finding) = counts.next() {
        let (level, rule, result) = result(&finding, &exam.policy);
        let count = match counts.peek() {
            Some(_) => DryCount::Earlier,
            None => DryCount::Newest,
        };
        // A repeat doesn't wipe out a low count; marking that count "not valid" does, but for
        // one without any swallow, until a valid one follows.
        let stays = count == DryCount::Newest
            || level >= Level::Refer
            || doubted && is_doubted_none(&finding);
        // None, and then some once the mouth was moistened: both are told, and the newer is read.
        let level = match count {
            DryCount::Earlier if superseded && is_none(&result) => Level::Note,
            // Where the screen does not ask for them they inform, and what is left open is no gap.
            _ if level == Level::Incomplete && !asked && !doubted => Level::Note,
            _ => level,
        };
        if stays {
            let fact = DryFact::Count(count, result);
            flags.push(rule.flag(level, Domain::EatingDrinking, fact));
        }
    }
    if let Some(aside) = aside {
        flags.push(aside);
    } else if flags.is_empty() {
        flags.push(rules::DRY_NOT_VALID.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            DryFact::NotCounted,
        ));
    }
    flags
}
