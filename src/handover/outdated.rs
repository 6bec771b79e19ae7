//! Who still goes by a text that no longer stands.

use super::nursing::{self, Clock};
use crate::record::visit::{Told, Visit};
use crate::wording::words::capital;

/// Those who were told of a text which what is known now no longer bears out, in a sentence.
///
/// None where nobody was told, or all know the text as it stands.
pub fn outdated(visit: &Visit, now: &Clock) -> Option<String> {
    let written = nursing::write(visit, now)?;
    let last = visit.last_text()?;
    // A text that stands is written with the same line about what it replaced.
    let stands = written.corrects == last.corrects;
    let mut newest: Vec<&Told> = Vec::new();
    for told in &visit.told {
        newest.retain(|earlier| earlier.whom != told.whom);
        newest.push(told);
    }
    let old: Vec<String> = newest
        .into_iter()
        .filter(|told| !stands || !visit.knows_last(told))
        .map(|told| {
            let date = (now.local)(told.of_at).0;
            let on = match date == now.date || told.of.is_empty() {
                true => String::new(),
                false => format!(" on {date}"),
            };
            format!("{} (text of {}{on})", told.whom, told.of)
        })
        .collect();
    (!old.is_empty()).then(|| {
        capital(&format!(
            "{}: what was told no longer stands. Tell again.",
            old.join(", ")
        ))
    })
}
