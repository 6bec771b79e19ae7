//! What was measured in a task, in words and with its units, and what was answered beside it.

use crate::clinical::findings::counted::Counted;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::trial::{Answer, MarkKind, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{QUICK, Question, Takes, TaskSpec};
use crate::measure::decimals::{decimals, short};
use crate::measure::series::Series;
use crate::measure::time::{Doubt, NoTime};
use crate::measure::window::Window;
use crate::wording;

/// The figures of the newest trial; of every trial where several are asked for, what speaks against
/// one beside it.
pub fn of_task(spec: &TaskSpec, exam: &Exam) -> Vec<(String, String)> {
    if spec.trials < 2 {
        return exam
            .latest(spec.id)
            .map_or(Vec::new(), |t| lines(spec, t))
            .into_iter()
            .map(|line| (line, String::new()))
            .collect();
    }
    exam.trials
        .iter()
        .filter(|t| t.task == spec.id && spec.is_tried(t))
        .zip(1..)
        .map(|(trial, n)| {
            let mut lines = lines(spec, trial);
            let beside = lines.split_off(lines.len().min(1)).join(" ");
            (format!("Trial {n}: {}", lines.concat()), beside)
        })
        .collect()
}

/// The figures of a trial in words, and everything that speaks against them.
pub fn lines(spec: &TaskSpec, trial: &Trial) -> Vec<String> {
    let mut lines = Vec::new();
    let Some(start) = trial.start() else {
        if spec.is_untimed(trial) {
            lines.extend(wording::task::lines(trial).unwrap_or_default());
        }
        return lines;
    };
    let offsets = trial.tap_offsets();
    let (one, many) = wording::tasks::of(spec.id).counts;
    let counted = |n: usize| format!("{n} {}", if n == 1 { one } else { many });
    let mut doubt: Option<Doubt> = None;
    let own = wording::task::lines(trial);
    let has_own = own.is_some();
    lines.extend(own.unwrap_or_default());
    match spec
        .window(trial)
        .and_then(|w| Window::new(w, spec.pad.late).ok())
    {
        Some(window) => {
            let split = window.split(&offsets);
            let seconds = window.length().0 / 1000;
            if !has_own {
                lines.push(format!("{} in {seconds} seconds", counted(split.count())));
            }
            if !split.early.is_empty() {
                lines.push(format!(
                    "{} before \"go\", not counted",
                    counted(split.early.len())
                ));
            }
            let late = split.late.len() + split.after.len();
            if late > 0 {
                lines.push(format!("{} later, kept apart", counted(late)));
            }
            let noticed = trial.first(MarkKind::WindowOver).or(trial.end());
            doubt = noticed.and_then(|at| trial.doubt_over(start, window.length(), at));
        }
        None => {
            if let Some(end) = trial.end_pressed() {
                let time = trial.between(start, end);
                let taps = counted(trial.taps());
                match time.timed() {
                    Ok(length) => {
                        doubt = time.doubt;
                        if !has_own {
                            lines.push(format!("{length}, {taps}"));
                        }
                    }
                    Err(why) if has_own => lines.push(no_time(why)),
                    Err(why) => lines.push(format!("{taps}. {}", no_time(why))),
                }
            }
        }
    }
    let other = MarkKind::Count(Counted::Other);
    if trial.first(other).is_some() {
        let on_time = spec
            .window(trial)
            .and_then(|w| Window::new(w, spec.pad.late).ok())
            .map_or(trial.count_of(other), |window| {
                window.split(&trial.offsets_of(other)).count()
            });
        lines.push(format!("on the right pad: {}", counted(on_time)));
    }
    if spec.pad.touch_ends {
        // Nothing is counted: the time alone stands.
        lines.extend(doubt.map(|d| d.to_string()));
        return lines;
    }
    let series = Series::new(offsets);
    // So many in a window is the result; between its taps alone it may have been another rate.
    if trial.task == TaskId::FreeCount
        && spec.window(trial).is_none()
        && let Ok(rate) = series.rate_from_onsets()
    {
        lines.push(format!(
            "{} a second from first to last tap ({} a minute)",
            decimals(rate.get(), 2),
            decimals(rate.per_minute().get(), 0)
        ));
    }
    let quick = series.quicker_than(QUICK);
    if quick > 0 {
        lines.push(format!(
            "{quick} came within {} ms of the one before: check the count",
            QUICK.0
        ));
    }
    lines.extend(doubt.map(|d| d.to_string()));
    lines
}

/// Why a trial has no time.
fn no_time(why: NoTime) -> String {
    match why {
        NoTime::Before(by) => {
            format!("Stop was {by} before the start: please time this again.")
        }
        NoTime::Nothing => "Start and stop are the same moment: please time this again.".to_owned(),
        NoTime::Unknown => "The phone's clock was set back and the app restarted: please time \
                            this again."
            .to_owned(),
    }
}

/// The questions of a task that were answered in a trial, each with its answer.
pub fn answers(spec: &TaskSpec, trial: &Trial) -> Vec<String> {
    spec.questions
        .iter()
        .filter_map(|q| Some((q, trial.answers.get(q.id)?)))
        .map(|(q, answer)| {
            let ask = wording::tasks::ask(spec.id, q.id).trim_end_matches(['?', '.']);
            format!("{ask}: {}", answer_words(spec, q, answer))
        })
        .collect()
}

/// An answer to a question of a task, whichever version asked it.
pub(in crate::wording) fn said(spec: &TaskSpec, question: &str, answer: &Answer) -> String {
    let known = spec.questions.iter().find(|q| q.id == question);
    match (known, answer) {
        (Some(question), answer) => answer_words(spec, question, answer),
        (None, Answer::Choice(id)) => id.clone(),
        (None, Answer::Tenths(n)) => short(f64::from(*n) / 10.0),
        (None, Answer::Words(words)) => words.clone(),
    }
}

fn answer_words(spec: &TaskSpec, question: &Question, answer: &Answer) -> String {
    match (answer, &question.takes) {
        (Answer::Choice(id), _) => wording::tasks::choice(spec.id, question.id, id)
            .unwrap_or(id)
            .to_owned(),
        (Answer::Tenths(n), Takes::Number { .. } | Takes::Tenths { .. }) => {
            let unit = wording::tasks::unit(spec.id, question.id);
            format!("{} {unit}", short(f64::from(*n) / 10.0))
        }
        (Answer::Tenths(n), _) => short(f64::from(*n) / 10.0),
        (Answer::Words(words), _) => words.split_whitespace().collect::<Vec<_>>().join(" "),
    }
}
