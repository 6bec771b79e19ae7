//! Speech and breath: what was measured in a trial, why one is not scored, and what a task came to.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{BreathFact, Fact, SyllablesFact};
use crate::clinical::findings::speech::{
    Bubbles, Held, Repeated, SToZ, Sound, Syllables, Timing, Unbegun, Unscored,
};
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breath::judge::{COUNTS_A_SECOND, HOLD_ASKED};
use crate::clinical::tasks::breath::{GLIDE_DOWN, GLIDE_UP};
use crate::clinical::tasks::longest::VOICE;
use crate::clinical::tasks::spec::REMARK;
use crate::clinical::tasks::syllables::speech::trials::FROM_MONTHS;
use crate::clinical::tasks::syllables::{Came, SOUND};
use crate::clinical::tasks::{self, breath, kept, longest as held, syllables};
use crate::measure::decimals::decimals;
use crate::measure::time::Doubt;
use crate::measure::units::{Seconds, SyllablesPerSecond};
use crate::wording::tasks::choice;
use crate::wording::words::{capital, small};
use crate::wording::{self, norms};

/// Seconds, cut off at the tenth as on every page: what says 10.0 has reached ten.
pub fn seconds(time: Seconds) -> String {
    let tenths = time.millis().0 / 100;
    format!("{}.{} seconds", tenths / 10, tenths % 10)
}

/// What is repeated.
pub fn syllables(what: Syllables) -> &'static str {
    norms::task(what.task())
}

/// A rate with its unit written out, for pa-ta-ka in both: "6.1 syllables per second = 2.0
/// sequences per second". Some papers print the one for the other.
pub fn rate(what: Syllables, rate: SyllablesPerSecond) -> String {
    let syllables = format!("{} syllables per second", decimals(rate.get(), 1));
    if what != Syllables::PaTaKa {
        return syllables;
    }
    let sequences = rate.sequences(what.each());
    format!(
        "{syllables} = {} sequences per second",
        decimals(sequences.get(), 1)
    )
}

/// What was done and how fast, with every unit written out: "31 syllables of pa in 5.0 seconds: 6.2
/// syllables per second". Where there is no rate, why.
pub fn repeated(trial: &Repeated) -> String {
    let per_second = match trial.rate() {
        Ok(per_second) => per_second,
        Err(why) => return why.to_string(),
    };
    let what = syllables(trial.what);
    let (count, time) = match trial.timing {
        Timing::ByCount { repetitions, time } => {
            (format!("{repetitions} repetitions of {what}"), time)
        }
        Timing::Syllables { count, window } => (format!("{count} syllables of {what}"), window),
        Timing::Sequences { count, window } => (format!("{count} repetitions of {what}"), window),
    };
    let rate = rate(trial.what, per_second);
    format!("{count} in {}: {rate}", seconds(time))
}

/// What is held, to run on within a sentence.
const fn sound(sound: Sound) -> &'static str {
    match sound {
        Sound::Ah => "longest \"ah\"",
        Sound::S => "longest s",
        Sound::Z => "longest z",
    }
}

/// How long a sound was held: "21.3 seconds (one trial)", or "21.3 seconds, the best of 3 (mean
/// 19.8 seconds, shortest 18.0 seconds)".
fn trials(held: &Held) -> String {
    let best = seconds(held.best());
    match held.count() {
        1 => format!("{best} (one trial)"),
        n => format!(
            "{best}, the best of {n} (mean {}, shortest {})",
            seconds(held.mean()),
            seconds(held.shortest())
        ),
    }
}

/// A sound and how long it was held.
pub fn longest(of: Sound, held: &Held) -> String {
    format!("{}: {}", capital(sound(of)), trials(held))
}

/// The ratio of s to z, with both times.
pub fn s_to_z(value: &SToZ) -> String {
    format!(
        "Longest s {}, longest z {}, ratio {} to 1",
        seconds(value.s),
        seconds(value.z),
        decimals(value.ratio.get(), 2)
    )
}

/// The highest number reached on one breath.
fn counted_to(reached: u32) -> String {
    let time = decimals(f64::from(reached) / f64::from(COUNTS_A_SECOND), 1);
    format!(
        "Counted to {reached} on one breath (about {time} seconds at {COUNTS_A_SECOND} a second)"
    )
}

/// How long a breath was held.
fn breath_held(time: Seconds) -> String {
    let asked = HOLD_ASKED.0 / 1000;
    format!("Breath held for {} ({asked} seconds asked)", seconds(time))
}

/// How long bubbles were blown, and whether that is 5 cm of water for 5 seconds.
pub fn five(time: Seconds, long_enough: bool, bubbles: Bubbles) -> String {
    let says = match bubbles {
        Bubbles::NotSeen => "not known, nobody saw the bubbles",
        Bubbles::Continuous if long_enough => "done: the clinician saw continuous bubbles at 5 cm",
        Bubbles::Continuous => "not done: shorter than 5.0 seconds",
        Bubbles::Broken => "not done: the bubbles broke off or were not at 5 cm",
    };
    format!(
        "5 cm of water for 5 seconds: blown for {}; {says}",
        seconds(time)
    )
}

/// What was answered of a trial that could not be begun.
const fn unbegun(why: Unbegun) -> &'static str {
    match why {
        Unbegun::CouldNot => "could not",
        Unbegun::NoVoice => "no voice came",
    }
}

/// What speaks against a time, in short.
fn doubted(doubt: Doubt) -> String {
    match doubt {
        Doubt::Restarted => "The app was restarted during this time".to_owned(),
        Doubt::Slept(by) => format!("The phone slept for about {by} during this time"),
        Doubt::ClockSet(_) => "The phone's clock was changed during this time".to_owned(),
        Doubt::Unknown => "The phone's clock was set back and the app restarted".to_owned(),
        Doubt::Hidden(by) => format!("Penlight was out of sight for {by} during this time"),
    }
}

/// Why a trial is not scored.
pub fn unscored(why: Unscored) -> String {
    match why {
        Unscored::Unbegun(why) => unbegun(why).to_owned(),
        Unscored::ScreenEnded => "the screen was ended meanwhile".to_owned(),
        Unscored::Doubted(doubt) => doubted(doubt),
        Unscored::NoTime => "start and stop are the same moment".to_owned(),
        Unscored::CutShort => "stopped before the time was up".to_owned(),
        Unscored::NotTimed => "not timed".to_owned(),
        Unscored::SoundNotSaid => "how it sounded was not said".to_owned(),
        Unscored::AfterTheFirst(scored) => format!("the first {scored} with a time are"),
        Unscored::NumberNotSaid(time) => format!("{time} timed, the highest number was not said"),
        Unscored::BubblesNotSaid(time) => {
            format!("{time} timed, what was seen of the bubbles was not said")
        }
    }
}

/// A trial of repeated syllables: count, time, rate with its unit, how it sounded.
pub fn syllable_lines(trial: &Trial) -> Vec<String> {
    let timed = syllables::timing(trial).map(|timing| {
        repeated(&Repeated {
            what: syllables::what(trial.task),
            timing,
        })
    });
    let no_rate = || match trial.taps() {
        1 => "1 tap, no rate".to_owned(),
        n => format!("{n} taps, no rate"),
    };
    let mut parts = Vec::new();
    if trial.start().is_some() {
        parts.push(timed.unwrap_or_else(no_rate));
    } else if syllables::is_heard_only(trial) {
        parts.push(unscored(Unscored::NotTimed));
    }
    parts.extend(sounded(trial));
    parts.extend(remark(trial));
    vec![parts.join(", ")]
}

/// How a trial sounded; none where nobody said.
fn sounded(trial: &Trial) -> Option<String> {
    choice(trial.task, SOUND, trial.choice(SOUND)?).map(small)
}

/// A trial of a sound that is held: its time, and how the voice sounded.
pub fn held_lines(trial: &Trial) -> Vec<String> {
    let mut parts = time_lines(trial);
    let voice = held::voice_heard(trial).and_then(|id| choice(TaskId::LongestAh, VOICE, id));
    parts.extend(voice.map(|words| format!("voice {}", small(words))));
    parts.extend(remark(trial));
    vec![parts.join(", ")]
}

/// What was typed about a trial.
fn remark(trial: &Trial) -> Option<String> {
    match trial.answers.get(REMARK) {
        Some(Answer::Words(words)) => Some(words.clone()),
        _ => None,
    }
}

/// The time of a trial, and that it is not scored where it is not.
pub fn time_lines(trial: &Trial) -> Vec<String> {
    if let Some(why) = kept::untimed(tasks::spec(trial.task), trial) {
        return vec![unbegun(why).to_owned()];
    }
    let time = || trial.between(trial.start()?, trial.end_pressed()?).length;
    let mut words = time().map_or_else(|| "no time".to_owned(), |length| length.to_string());
    if trial.end_pressed().is_some() && held::held(trial).is_none() {
        words.push_str(", not scored");
    }
    vec![words]
}

/// A count on one breath. The number is what is judged, whatever is known of the time.
pub fn count_lines(trial: &Trial) -> Vec<String> {
    let time = trial.start().zip(trial.end_pressed());
    let time = time.and_then(|(start, end)| trial.between(start, end).length);
    match (breath::reached(trial), time) {
        (Some(n), Some(time)) => vec![format!("counted to {n}, {time}")],
        (Some(n), None) => vec![format!("counted to {n}")],
        (None, _) => time_lines(trial),
    }
}

/// A glide of the voice, as it was heard.
pub fn glide_lines(trial: &Trial) -> Vec<String> {
    if let Some(why) = kept::untimed(tasks::spec(trial.task), trial) {
        return vec![unbegun(why).to_owned()];
    }
    let heard = |question| {
        let glide = breath::glide_heard(trial, question);
        let words = glide.and_then(|id| choice(trial.task, question, id));
        words.map_or("not said".to_owned(), small)
    };
    vec![format!(
        "heard: up {}, down {}",
        heard(GLIDE_UP),
        heard(GLIDE_DOWN)
    )]
}

/// What a task of speech or breath came to, in a few words for the handover; none for another task,
/// or where nothing was tried.
pub fn summary(task: TaskId, exam: &Exam) -> Option<String> {
    match task {
        TaskId::SyllablePa | TaskId::SyllableTa | TaskId::SyllableKa | TaskId::Sequence => {
            syllables_summary(task, exam)
        }
        TaskId::LongestAh | TaskId::LongestS | TaskId::LongestZ => {
            let result = held_summary(task, exam);
            let name = sound(held::sound(task));
            told(name, result, &held::unscored(task, exam))
        }
        TaskId::PitchGlide | TaskId::BreathCount | TaskId::BreathHold | TaskId::FiveForFive => {
            let name = small(wording::tasks::of(task).title);
            let result = breath_summary(task, exam);
            told(&name, result, &breath::unscored(task, exam))
        }
        _ => None,
    }
}

fn syllables_summary(task: TaskId, exam: &Exam) -> Option<String> {
    let what = syllables(syllables::what(task));
    let not_scored = syllables::unscored(task, exam);
    match syllables::came(task, exam)? {
        Came::SoundNotSaid => Some(format!(
            "{what} not scored, {}",
            unscored(Unscored::SoundNotSaid)
        )),
        Came::Scored(trial) => {
            let rate = rate(trial.what, trial.rate().ok()?);
            told(what, Some(format!("{what} {rate}")), &not_scored)
        }
        Came::CouldNot => Some(format!("{what} could not be said")),
        Came::NoneScored => {
            let none = format!("{what} no correct trial with a time");
            Some(match not_scored.last() {
                Some((_, why)) => format!("{none} ({})", unscored(*why)),
                None => none,
            })
        }
    }
}

/// The ratio stands with z, the second of the two.
fn held_summary(task: TaskId, exam: &Exam) -> Option<String> {
    let held = held::scored(task, exam)?;
    Some(match held::ratio(exam) {
        Some(Ok(ratio)) if task == TaskId::LongestZ => small(&s_to_z(&ratio.value)),
        _ => format!("{} {}", sound(held::sound(task)), trials(&held)),
    })
}

fn breath_summary(task: TaskId, exam: &Exam) -> Option<String> {
    if task == TaskId::PitchGlide {
        let trial = exam.latest(task).filter(|t| t.end_pressed().is_some())?;
        return Some(format!("pitch glide {}", glide_lines(trial).join(" ")));
    }
    match breath::scored(task, exam).first()?.fact() {
        Fact::Breath(fact) => Some(small(&breath_value(fact))),
        _ => None,
    }
}

/// What was measured of a breath.
pub fn breath_value(fact: &BreathFact) -> String {
    match *fact {
        BreathFact::CountOfChild { reached }
        | BreathFact::Count { reached, .. }
        | BreathFact::ConsiderSpirometry { reached, .. } => counted_to(reached),
        BreathFact::Hold(time) => breath_held(time),
        BreathFact::Five {
            time,
            long_enough,
            bubbles,
        } => five(time, long_enough, bubbles),
    }
}

/// A result with what was not scored beside it; none where nothing was tried.
fn told(name: &str, result: Option<String>, not_scored: &[(usize, Unscored)]) -> Option<String> {
    match (result, not_scored) {
        (result, []) => result,
        (Some(result), [(_, why)]) => Some(format!(
            "{result}, 1 trial more not scored ({})",
            unscored(*why)
        )),
        (Some(result), many) => Some(format!("{result}, {} trials more not scored", many.len())),
        (None, [.., (_, why)]) => Some(format!("{name} not scored: {}", unscored(*why))),
    }
}

/// From which age repeated syllables are offered.
pub fn from_three() -> String {
    format!(
        "Repeated syllables are offered from {} years",
        FROM_MONTHS / 12
    )
}

/// Why sequences are left out for a child.
pub fn sequences_left_out(succeeded: usize, needed: usize) -> String {
    format!(
        "Sequences such as pa-ta-ka are left out: {succeeded} of the single syllables succeeded, \
         and it takes {needed}"
    )
}

/// Why a task of speech steps aside, in short; none where the fact is no such thing.
pub fn aside(fact: &Fact) -> Option<String> {
    match *fact {
        Fact::Syllables(SyllablesFact::TooYoung(_)) => Some(from_three()),
        Fact::Syllables(SyllablesFact::SequencesLeftOut { succeeded, needed }) => {
            Some(sequences_left_out(succeeded, needed))
        }
        _ => None,
    }
}
