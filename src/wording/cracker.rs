//! Words about the cracker outside the sentence of a flag.

use crate::clinical::findings::pads::pads;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::cracker;
use crate::clinical::tasks::cracker::judge::{CrackerError, Figures, figures};
use crate::measure::decimals::decimals;
use crate::measure::units::Seconds;
use crate::wording::counted::{counted, pad};

/// Why a cracker yields no figures.
pub const fn no_figures(error: CrackerError) -> &'static str {
    match error {
        CrackerError::NoTime => NO_TIME,
        CrackerError::Unit(_) => "These figures can't belong to one cracker: please check them.",
    }
}

/// Its time is nothing.
pub(super) const NO_TIME: &str = "The time must be more than zero: time the cracker again.";

/// The figures of a trial.
pub fn lines(trial: &Trial) -> Vec<String> {
    let counts: Vec<String> = pads(TaskId::Cracker)
        .iter()
        .filter_map(|kind| Some((*kind, pad(TaskId::Cracker, *kind)?)))
        .map(|(kind, (one, many))| counted(trial.count_of(kind), one, many))
        .collect();
    let counts = counts.join(", ");
    let Some(eaten) = cracker::read(trial) else {
        return vec![counts];
    };
    let seconds = decimals(eaten.time.seconds(), 1);
    let mut lines = vec![format!("{counts} in {seconds} s")];
    match figures(&eaten) {
        Ok(figures) => lines.extend(each(&figures)),
        Err(why) => lines.push(no_figures(why).to_owned()),
    }
    lines
}

fn each(figures: &Figures) -> impl Iterator<Item = String> {
    let seconds = |each: &str, value: Option<Seconds>| {
        value.map(|s| format!("{} s a {each}", decimals(s.get(), 1)))
    };
    let chews = figures.chews_per_bite;
    let swallows = figures.swallows_per_bite;
    [
        seconds("bite", figures.time_per_bite),
        chews.map(|n| format!("{} chews a bite", decimals(n.get(), 1))),
        swallows.map(|n| format!("{} swallows a bite", decimals(n.get(), 2))),
        seconds("swallow", figures.time_per_swallow),
    ]
    .into_iter()
    .flatten()
}
