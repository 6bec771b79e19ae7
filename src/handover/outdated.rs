//! Who still goes by a text that no longer stands.

use super::nursing::{self, Clock};
use crate::clinical::words::capital;
use crate::record::visit::{Visit, correction};

/// Those who were told of a text which what is known now no longer bears out, in a sentence.
///
/// None where nobody was told, or all know the text as it stands.
pub fn outdated(visit: &Visit, now: &Clock) -> Option<String> {
    let text = nursing::write(visit, now)?;
    let last = visit.last_text()?;
    // A text that stands is written with the same line about what it replaced.
    let stands = correction(&text) == correction(&last.text);
    let mut newest: Vec<(&str, &str)> = Vec::new();
    for told in &visit.told {
        newest.retain(|(whom, _)| *whom != told.whom);
        newest.push((&told.whom, &told.of));
    }
    let old: Vec<String> = newest
        .into_iter()
        .filter(|(_, of)| !stands || *of != last.clock)
        .map(|(whom, of)| format!("{whom} (text of {of})"))
        .collect();
    (!old.is_empty()).then(|| {
        capital(&format!(
            "{}: what was told no longer stands. Tell again.",
            old.join(", ")
        ))
    })
}
