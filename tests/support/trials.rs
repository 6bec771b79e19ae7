//! Trials as a clinician would leave them, as values.

use penlight::clinical::findings::counted::Counted;
use penlight::clinical::findings::trial::{Answer, Mark, MarkKind, Trial};
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::{
    breathing, cracker, dry_swallow, flow, own, sips, timed_water, water,
};
use penlight::measure::time::Stamp;

use super::moments::at;

pub(crate) fn mark(trial: &mut Trial, kind: MarkKind, at: Stamp) {
    trial.marks.push(Mark { at, kind });
}

pub(crate) fn choose(trial: &mut Trial, question: &str, choice: &str) {
    let answer = Answer::Choice(choice.to_owned());
    trial.answers.insert(question.to_owned(), answer);
}

pub(crate) fn number(trial: &mut Trial, question: &str, tenths: i32) {
    let answer = Answer::Tenths(tenths);
    trial.answers.insert(question.to_owned(), answer);
}

/// A trial with these presses, each at so many milliseconds after the zero.
pub(crate) fn trial(task: TaskId, marks: &[(MarkKind, i64)]) -> Trial {
    let mut trial = Trial::new(task, 0, None);
    for (kind, ms) in marks {
        mark(&mut trial, *kind, at(*ms));
    }
    trial
}

/// Dry swallows tapped at these times; the window ran out at 30 s.
pub(crate) fn dry(taps: &[i64]) -> Trial {
    let mut marks = vec![(MarkKind::Start, 0)];
    marks.extend(taps.iter().map(|ms| (MarkKind::Tap, *ms)));
    marks.push((MarkKind::WindowOver, dry_swallow::WINDOW.0));
    marks.sort_by_key(|(_, ms)| *ms);
    trial(TaskId::DrySwallow, &marks)
}

/// When the last swallow of [`water`] was pressed.
pub(crate) const LAST_SWALLOW: i64 = 12_000;

/// 90 mL drunk in one go, watched for 60 s, voice clear before and after.
pub(crate) fn water() -> Trial {
    let mut trial = trial(
        TaskId::Water90,
        &[
            (MarkKind::Start, 0),
            (MarkKind::End, LAST_SWALLOW),
            (MarkKind::WatchOver, LAST_SWALLOW + water::WATCH.0),
        ],
    );
    choose(&mut trial, water::VOICE_BEFORE, "clear");
    choose(&mut trial, water::CUP, water::IN_ONE_GO);
    choose(&mut trial, water::VOICE_AFTER, "clear");
    trial
}

/// So many breaths, counted for 60 s.
pub(crate) fn breaths(n: i64) -> Trial {
    let mut marks = vec![(MarkKind::Start, 0)];
    marks.extend((0..n).map(|i| (MarkKind::Tap, 500 + i * 59_000 / n.max(1))));
    marks.push((MarkKind::WindowOver, breathing::WINDOW.0));
    trial(TaskId::Breathing, &marks)
}

/// A cracker eaten to its end and watched, with so many bites, chews and swallows, and nothing
/// against it.
pub(crate) fn eaten(bites: usize, chews: usize, swallows: usize, ms: i64) -> Trial {
    let mut trial = trial(TaskId::Cracker, &[(MarkKind::Start, 0)]);
    for (kind, n) in [
        (MarkKind::Tap, bites),
        (MarkKind::Count(Counted::Chew), chews),
        (MarkKind::Count(Counted::Swallow), swallows),
    ] {
        for i in 0..n {
            mark(&mut trial, kind, at(i as i64 * 10));
        }
    }
    mark(&mut trial, MarkKind::End, at(ms));
    mark(&mut trial, MarkKind::WatchOver, at(ms + 60_000));
    for question in [cracker::ALLERGY, cracker::TEETH, cracker::ORDER] {
        choose(&mut trial, question, cracker::FINE);
    }
    trial
}

/// A meal tallied up to `end`.
pub(crate) fn tallied(marks: &[(MarkKind, i64)], end: i64) -> Trial {
    let mut all = vec![(MarkKind::Start, 0)];
    all.extend_from_slice(marks);
    all.push((MarkKind::End, end));
    trial(TaskId::Meal, &all)
}

/// A timed cup, drunk and watched, with so much left.
pub(crate) fn timed(offered: i32, left: i32, ms: i64, swallows: usize) -> Trial {
    let mut marks = vec![(MarkKind::Start, 0)];
    marks.extend((1..=swallows).map(|n| (MarkKind::Tap, n as i64)));
    marks.push((MarkKind::End, ms));
    marks.push((MarkKind::WatchOver, ms + 60_000));
    let mut trial = trial(TaskId::TimedWater, &marks);
    trial.number = 40;
    match offered {
        100 => choose(&mut trial, timed_water::OFFERED, "100"),
        150 => choose(&mut trial, timed_water::OFFERED, "150"),
        ml => {
            choose(&mut trial, timed_water::OFFERED, "other");
            number(&mut trial, timed_water::OTHER, ml * 10);
        }
    }
    if left == 0 {
        choose(&mut trial, timed_water::CUP, timed_water::EMPTY);
    } else {
        choose(&mut trial, timed_water::CUP, water::SOME_LEFT);
        number(&mut trial, timed_water::LEFT, left * 10);
    }
    choose(&mut trial, water::VOICE_BEFORE, "clear");
    choose(&mut trial, water::VOICE_AFTER, "clear");
    trial
}

/// A trial of the clinician's own, watched, with these signs so many milliseconds after it.
pub(crate) fn own_trial(number: u32, level: &str, signs: &[(Sign, i64)]) -> Trial {
    let from = i64::from(number) * 100_000;
    let mut marks = vec![(MarkKind::Start, from), (MarkKind::End, from + 3_000)];
    marks.extend(
        signs
            .iter()
            .map(|(s, after)| (MarkKind::Sign(*s), from + 3_000 + after)),
    );
    marks.push((MarkKind::WatchOver, from + 63_000));
    marks.sort_by_key(|(_, ms)| *ms);
    let mut trial = trial(TaskId::Own, &marks);
    trial.number = number;
    choose(&mut trial, own::LEVEL, level);
    choose(&mut trial, own::AMOUNT, "5");
    choose(&mut trial, own::BY, "spoon");
    trial
}

/// A sip given at `from`, swallowed 2 s later, watched, voice clear, with these signs so many
/// milliseconds after the swallow.
pub(crate) fn sip(number: u32, ml: u8, from: i64, signs: &[(Sign, i64)]) -> Trial {
    let end = from + 2_000;
    let mut marks = vec![(MarkKind::Start, from), (MarkKind::End, end)];
    marks.extend(
        signs
            .iter()
            .map(|(s, after)| (MarkKind::Sign(*s), end + after)),
    );
    marks.push((MarkKind::WatchOver, end + 60_000));
    marks.sort_by_key(|(_, ms)| *ms);
    let mut trial = trial(TaskId::Sips, &marks);
    trial.number = number;
    self::number(&mut trial, sips::SIZE, i32::from(ml) * 10);
    choose(&mut trial, water::VOICE_BEFORE, "clear");
    choose(&mut trial, water::VOICE_AFTER, "clear");
    if ml == 3 {
        choose(&mut trial, sips::WAY, sips::UNDER_TONGUE);
        choose(&mut trial, sips::EXTRA, "2");
    }
    trial
}

/// The first `n` sips of Penlight's own plan, all clear.
pub(crate) fn clear_sips(n: usize) -> Vec<Trial> {
    [3, 3, 5, 5, 10, 10]
        .into_iter()
        .zip(10..)
        .take(n)
        .map(|(ml, number)| sip(number, ml, i64::from(number) * 70_000, &[]))
        .collect()
}

/// A drink poured through the syringe for ten seconds, with so many tenths of a millilitre left.
pub(crate) fn poured(tenths: i32) -> Trial {
    let mut trial = trial(
        TaskId::Flow,
        &[(MarkKind::Start, 0), (MarkKind::WindowOver, 10_000)],
    );
    number(&mut trial, flow::LEFT, tenths);
    trial
}
