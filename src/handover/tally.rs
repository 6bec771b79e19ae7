//! A tally as a file and as a picture.

use std::fmt::Write;

use crate::clinical::findings::counted::{Counted, note_id};
use crate::clinical::findings::trial::{Answer, Mark, MarkKind, Trial};
use crate::clinical::tasks::meal::{kinds, summary, totals};
use crate::measure::decimals::decimals;
use crate::wording::counted::counted;
use crate::wording::meal::{part_words, words_of};

/// The tally as a table with commas: every press with its time, then the parts of five minutes.
pub fn csv(trial: &Trial) -> String {
    let mut text = "seconds,what,note\r\n".to_owned();
    let Some(start) = trial.start() else {
        return text;
    };
    for mark in &trial.marks {
        let Some(what) = what(mark.kind) else {
            continue;
        };
        let seconds = trial
            .between(start, mark.at)
            .length
            .map_or_else(|| "not known".to_owned(), |l| decimals(l.seconds(), 1));
        // A text is being written to: this can't fail.
        let _ = write!(text, "{seconds},{what},{}\r\n", cell(note(trial, mark)));
    }
    let mut line = |name: &str, counts: &[usize]| {
        text.push_str(name);
        for n in counts {
            let _ = write!(text, ",{n}");
        }
        text.push_str("\r\n");
    };
    let words: Vec<&str> = kinds().into_iter().map(|kind| words_of(kind).1).collect();
    line(&format!("\r\nminutes,{}", words.join(",")), &[]);
    for part in summary(trial) {
        line(&part_words(part.part), &part.counts);
    }
    line("all", &totals(trial));
    text
}

fn what(kind: MarkKind) -> Option<&'static str> {
    match kind {
        MarkKind::Start => Some("start"),
        MarkKind::End | MarkKind::Stopped => Some("end"),
        kind => Some(words_of(kind).0).filter(|words| !words.is_empty()),
    }
}

/// The words of a note.
pub fn note<'a>(trial: &'a Trial, mark: &Mark) -> &'a str {
    match trial.answers.get(&note_id(mark.at)) {
        Some(Answer::Words(words)) if mark.kind == MarkKind::Count(Counted::Note) => words,
        _ => "",
    }
}

/// Free words as one cell: quoted, in one line, and never the beginning of a formula.
fn cell(words: &str) -> String {
    if words.is_empty() {
        return String::new();
    }
    let line = words.split_whitespace().collect::<Vec<_>>().join(" ");
    let guard = if line.starts_with(['=', '+', '-', '@']) {
        "'"
    } else {
        ""
    };
    format!("\"{guard}{}\"", line.replace('"', "\"\""))
}

/// The picture, as markup: for each thing that was pressed its count, and a line of time with a
/// stroke for each press. Numbers and this app's own words only: nothing anybody typed is in it.
///
/// One path a line: a thousand presses are one element.
pub fn picture(trial: &Trial) -> String {
    let whole = trial
        .start()
        .zip(trial.end())
        .and_then(|(start, end)| trial.between(start, end).length)
        .map_or(1, |length| length.0.max(1));
    let mut markup = String::new();
    for kind in kinds() {
        let n = trial.count_of(kind);
        if n == 0 {
            continue;
        }
        let (one, many) = words_of(kind);
        let _ = write!(
            markup,
            "<p>{}</p><svg viewBox=\"-4 0 1008 20\" preserveAspectRatio=\"none\" \
             aria-hidden=\"true\"><path d=\"",
            counted(n, one, many)
        );
        // Strokes closer than a pixel of a phone are one: thousands draw as fast as some.
        let mut last = -2;
        for at in trial.offsets_of(kind) {
            let x = at.0.clamp(0, whole) * 1000 / whole;
            if x - last >= 2 || x < last {
                let _ = write!(markup, "M{x} 0v20");
                last = x;
            }
        }
        markup.push_str("\"/></svg>");
    }
    markup
}
