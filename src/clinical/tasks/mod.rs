//! The tasks, one file or folder each: its data, its finding, its rules.

pub mod breath;
pub mod breath_taps;
pub mod breathing;
pub mod by_mouth;
pub mod compare;
pub mod compared;
pub mod cracker;
pub mod dry_swallow;
pub mod flow;
pub mod free_count;
pub mod kept;
pub mod longest;
pub mod meal;
pub mod oral;
pub mod own;
pub mod sips;
pub mod six_signs;
pub mod spec;
pub mod syllables;
pub mod timed_water;
pub mod water;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::ByMouthFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::{Answer, MarkKind, Trial};
use crate::clinical::knowledge::policy::Wording;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::by_mouth::{saturation, watched};
use crate::clinical::tasks::spec::{REMARK, TaskSpec};
use crate::clinical::tasks::water::Watch;

/// A task's data.
pub fn spec(id: TaskId) -> &'static TaskSpec {
    match id {
        TaskId::Breathing => &breathing::SPEC,
        TaskId::DrySwallow => &dry_swallow::SPEC,
        TaskId::Water90 => &water::SPEC,
        TaskId::FreeCount => &free_count::SPEC,
        TaskId::SyllablePa => &syllables::PA,
        TaskId::SyllableTa => &syllables::TA,
        TaskId::SyllableKa => &syllables::KA,
        TaskId::Sequence => &syllables::PA_TA_KA,
        TaskId::LongestAh => &longest::AH,
        TaskId::LongestS => &longest::S,
        TaskId::LongestZ => &longest::Z,
        TaskId::PitchGlide => &breath::GLIDE,
        TaskId::BreathCount => &breath::COUNT,
        TaskId::BreathHold => &breath::HOLD,
        TaskId::FiveForFive => &breath::FIVE,
        TaskId::Flow => &flow::SPEC,
        TaskId::Cracker => &cracker::SPEC,
        TaskId::Meal => &meal::SPEC,
        TaskId::SixSigns => &six_signs::SPEC,
        TaskId::Sips => &sips::SPEC,
        TaskId::TimedWater => &timed_water::SPEC,
        TaskId::Own => &own::SPEC,
        TaskId::BreathTaps => &breath_taps::TAPS,
        TaskId::Breaths30 => &breath_taps::COUNT_30,
    }
}

/// Whether the way may lead on from a task that was begun; none where its newest trial decides.
pub fn over(id: TaskId, exam: &Exam) -> Option<bool> {
    match id {
        TaskId::Sips => Some(sips::over(exam)),
        TaskId::Own => Some(by_mouth::given(id, exam).next().is_some()),
        // A child's rate by taps is read with the local chart as a counted one is.
        TaskId::Breathing => {
            let child = exam.age.is_some_and(|a| !a.is_adult());
            (child && breath_taps::rate(exam).is_some()).then_some(true)
        }
        _ => None,
    }
}

/// Answers taken as given for the trial to come, besides [`TaskSpec::usual`].
pub fn taken_over(id: TaskId, exam: &Exam) -> Vec<(&'static str, Answer)> {
    match id {
        TaskId::Sips => sips::taken_over(exam),
        TaskId::Own => own::taken_over(exam),
        TaskId::TimedWater | TaskId::Water90 => timed_water::taken_over(exam),
        _ => Vec::new(),
    }
}

/// The answer that one to another question takes the place of.
pub fn instead(id: TaskId, question: &str) -> Option<&'static str> {
    (id == TaskId::Own)
        .then(|| own::instead(question))
        .flatten()
}

/// Whether a question is asked in this visit at all.
pub fn fits(id: TaskId, question: &str, exam: &Exam) -> bool {
    // Of what could not be begun nothing more is asked than a remark.
    if let Some(untimed) = spec(id).untimed
        && exam.latest(id).is_some_and(|t| spec(id).is_untimed(t))
    {
        return [untimed.question, REMARK].contains(&question);
    }
    match question {
        sips::RESIDUE => sips::wording(&exam.policy) == Wording::B,
        timed_water::SWALLOWS => exam.latest_started(id).is_some_and(|t| t.taps() == 0),
        breath_taps::STATE => breath_taps::asks_state(exam),
        saturation::LOWEST => saturation::was_read(exam),
        watched::WATCHED => watched::asked(id, exam),
        _ => true,
    }
}

/// Whether another trial is offered where several are asked for: not once as many count.
///
/// A trial without a known time leaves its place to the next; one that could not be done does not.
pub fn another(id: TaskId, exam: &Exam) -> bool {
    let used = match id {
        TaskId::SyllablePa | TaskId::SyllableTa | TaskId::SyllableKa | TaskId::Sequence => {
            syllables::used(id, exam)
        }
        _ => kept::numbered(id, exam)
            .filter(|(_, t)| longest::held(t).is_some() || kept::untimed(t).is_some())
            .count(),
    };
    used < usize::from(spec(id).trials)
}

/// What a running trial comes to so far.
pub fn running(id: TaskId, trial: &Trial, exam: &Exam) -> Option<breath_taps::Running> {
    (id == TaskId::BreathTaps)
        .then(|| breath_taps::running(trial, &exam.policy))
        .flatten()
}

/// Whether rules read the count of a trial that still runs: elsewhere nothing but its end and its
/// signs are news. Three dry swallows are three before the window is over.
pub fn is_read_running(id: TaskId) -> bool {
    matches!(id, TaskId::BreathTaps | TaskId::DrySwallow)
}

/// Why a task steps aside for this person, if it does.
pub fn aside(id: TaskId, exam: &Exam) -> Option<Flag> {
    (spec(id).not_for)(exam.age, &exam.policy).or_else(|| syllables::left_out(id, exam))
}

/// What a task's rules say about an examination.
pub fn flags(id: TaskId, exam: &Exam) -> Vec<Flag> {
    let mut flags = own_flags(id, exam);
    flags.extend(by_mouth::wet_before(id, exam));
    let fell = saturation::flags(id, exam);
    // Choking that was pressed on its own page may have been with any of them.
    let choked = exam.choked && spec(id).by_mouth;
    if choked || fell.iter().any(|flag| flag.level() > Level::Note) {
        // "No sign seen" is not said of a trial that was stopped.
        flags.retain(|flag| flag.level() != Level::Pass);
    }
    // Nor is it asked for what choking left no time for.
    let within = |t: &Trial| exam.chokings.iter().any(|at| by_mouth::was_within(t, *at));
    if choked && exam.latest_started(id).is_some_and(within) {
        let open = [rules::TIMED_CUP_UNFINISHED.id, rules::EATEN_UNFINISHED.id];
        flags.retain(|f| f.level() != Level::Incomplete || !open.contains(&f.rule().id));
    }
    flags.extend(fell);
    if of_adults(id, exam) && exam.latest_started(id).is_some() {
        let fact = ByMouthFact::StudiedInAdults(id);
        flags.push(rules::PERSON_CHILD_TRIAL.flag(Level::Note, Domain::EatingDrinking, fact));
    }
    flags
}

/// The same while a plan is gone through, or a watch runs: what is still to come is no finding.
pub fn flags_so_far(id: TaskId, exam: &Exam) -> Vec<Flag> {
    let mut flags = flags(id, exam);
    let watching = |t: &Trial| {
        let over = t.first(MarkKind::WatchOver).is_some();
        !over && spec(id).pad.watch.is_some() && Reading::of(t).watch == Watch::Running
    };
    if over(id, exam) == Some(false) || exam.latest_started(id).is_some_and(watching) {
        flags.retain(|f| {
            f.level() != Level::Incomplete
                || f.fact().of_sign().is_some()
                || f.fact().is_of_breathing()
        });
    }
    flags
}

/// Whether a task was studied in adults and this is a child.
pub fn of_adults(id: TaskId, exam: &Exam) -> bool {
    matches!(id, TaskId::Sips | TaskId::TimedWater | TaskId::Cracker)
        && exam.age.is_some_and(|age| !age.is_adult())
}

/// What the rules of one task say.
fn own_flags(id: TaskId, exam: &Exam) -> Vec<Flag> {
    match id {
        TaskId::Breathing => breathing::flags(exam),
        TaskId::DrySwallow => dry_swallow::flags(exam),
        TaskId::Water90 => water::flags(exam),
        TaskId::FreeCount => Vec::new(),
        TaskId::SyllablePa | TaskId::SyllableTa | TaskId::SyllableKa | TaskId::Sequence => {
            syllables::flags(id, exam)
        }
        TaskId::LongestAh | TaskId::LongestS | TaskId::LongestZ => longest::flags(id, exam),
        TaskId::PitchGlide | TaskId::BreathCount | TaskId::BreathHold | TaskId::FiveForFive => {
            breath::flags(id, exam)
        }
        TaskId::Flow => flow::flags(exam),
        TaskId::Cracker => cracker::flags(exam),
        TaskId::Meal => meal::flags(exam),
        TaskId::SixSigns => six_signs::flags(exam),
        TaskId::Sips => sips::flags(exam),
        TaskId::TimedWater => timed_water::flags(exam),
        TaskId::Own => own::flags(exam),
        TaskId::BreathTaps | TaskId::Breaths30 => breath_taps::flags(id, exam),
    }
}

/// Tasks that stand beside every screen: given or looked at where the clinician wants to.
pub const BESIDE: [TaskId; 4] = [
    TaskId::Cracker,
    TaskId::Meal,
    TaskId::Flow,
    TaskId::SixSigns,
];

/// Whether a task is one of speech and breath timing.
pub fn is_speech(id: TaskId) -> bool {
    matches!(
        id,
        TaskId::SyllablePa
            | TaskId::SyllableTa
            | TaskId::SyllableKa
            | TaskId::Sequence
            | TaskId::LongestAh
            | TaskId::LongestS
            | TaskId::LongestZ
            | TaskId::PitchGlide
            | TaskId::BreathCount
            | TaskId::BreathHold
            | TaskId::FiveForFive
    )
}

/// Whether a task can be done on its own, without a visit: nothing is given by mouth that a gate
/// would have to come before, and it lives on nothing recorded elsewhere.
pub fn alone(id: TaskId) -> bool {
    !spec(id).by_mouth && id != TaskId::FreeCount && id != TaskId::SixSigns
}
