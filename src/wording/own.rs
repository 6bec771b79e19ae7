//! What was given in an own trial, in words.

use crate::clinical::findings::fact::OwnGiven;
use crate::clinical::tasks::own::{AMOUNTS, LEVELS, POSTURES, STRATEGIES, WAYS};
use crate::clinical::tasks::spec::Choice;
use crate::measure::decimals::short;
use crate::wording::words::small;

/// "0 Thin, 5 mL, spoon, upright".
pub fn settings(given: &OwnGiven) -> String {
    words_of(given, true)
}

/// The same for a reason that must fit a line: free words only where no choice stands for them.
pub fn brief(given: &OwnGiven) -> String {
    words_of(given, false)
}

fn words_of(given: &OwnGiven, whole: bool) -> String {
    let chosen = |id: &Option<String>, from: &'static [Choice]| {
        let id = id.as_deref()?;
        from.iter().find(|c| c.id == id).map(|c| c.words)
    };
    let run_on = |id: &Option<String>, from| chosen(id, from).map(small);
    let strategy = run_on(&given.strategy, STRATEGIES).filter(|s| s != "no strategy");
    // "Teaspoon, spoon" is one thing said twice.
    let spoon = given.amount.as_deref() == Some("teaspoon") && given.millilitres.is_none();
    let no_strategy = strategy.is_none();
    let parts = [
        chosen(&given.level, LEVELS).map(str::to_owned),
        given
            .what
            .clone()
            .filter(|_| whole || given.level.is_none()),
        given
            .millilitres
            .map(|ml| format!("{} mL", short(ml)))
            .or_else(|| run_on(&given.amount, AMOUNTS)),
        run_on(&given.by, WAYS).filter(|by| by != "spoon" || !spoon),
        run_on(&given.posture, POSTURES),
        strategy,
        given
            .strategy_words
            .clone()
            .filter(|_| whole || no_strategy),
    ];
    let unsaid = (!given.is_said()).then(|| "not said what".to_owned());
    let parts: Vec<String> = unsaid
        .into_iter()
        .chain(parts.into_iter().flatten())
        .collect();
    parts.join(", ")
}
