//! The timed cup of water in words.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::CupError;
use crate::clinical::findings::trial::Trial;
use crate::clinical::tasks::timed_water;
use crate::clinical::tasks::timed_water::judge::{Figures, figures};
use crate::measure::decimals::{decimals, short};

/// Why a cup yields no figures.
pub fn no_figures(why: CupError) -> &'static str {
    match why {
        CupError::NoTime => "The time must be more than zero: time the cup again.",
        CupError::MoreLeftThanOffered => {
            "More is left than was offered: please check both volumes."
        }
        CupError::NothingDrunk => "Nothing was drunk: there is no rate.",
        CupError::Unit => "These figures can't belong to one cup: please check them.",
    }
}

/// What to ask for, where something is missing of the figures.
pub fn ask(figures: &Figures) -> Option<&'static str> {
    figures.each.is_none().then_some(
        "How many swallows were there? Without the count there are no figures for each swallow.",
    )
}

/// The figures, for the clinician.
pub fn lines(trial: &Trial) -> Vec<String> {
    let Some(cup) = timed_water::cup(trial) else {
        return Vec::new();
    };
    let figures = match figures(&cup) {
        Ok(figures) => figures,
        Err(why) => return vec![no_figures(why).to_owned()],
    };
    let drunk = format!(
        "{} mL in {}: {} mL a second",
        short(figures.drunk.get()),
        cup.time,
        decimals(figures.capacity.get(), 1)
    );
    let each = match (figures.each, cup.swallows) {
        (Some((ml, seconds)), Some(n)) => format!(
            "{n} swallows: {} mL and {} seconds for each",
            decimals(ml.get(), 1),
            decimals(seconds.get(), 1)
        ),
        _ => ask(&figures).unwrap_or_default().to_owned(),
    };
    vec![drunk, each]
}

/// What was drunk of each, in a few words for the handover.
pub fn summary(exam: &Exam) -> Option<String> {
    let cups: Vec<String> = timed_water::drunk(exam)
        .into_iter()
        .map(|cup| match cup {
            None => "amount drunk not recorded".to_owned(),
            Some(cup) => format!(
                "{} of {} mL drunk{}",
                short(cup.drunk.get()),
                short(cup.offered.get()),
                if cup.slow {
                    ", slowly (by itself no sign of aspiration)"
                } else {
                    ""
                }
            ),
        })
        .collect();
    (!cups.is_empty()).then(|| format!("timed cup of water: {}", cups.join(", then ")))
}
