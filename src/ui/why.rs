//! "Where this comes from": a flag or a rule with its statement and its sources.

use std::rc::Rc;

use leptos::ev;
use leptos::prelude::*;

use crate::clinical::findings::flag::Flag;
use crate::clinical::knowledge::norms::Row;
use crate::clinical::knowledge::person::Language;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::source::Source;
use crate::clinical::tasks::compare::Comparison;
use crate::clinical::tasks::spec::TaskSpec;
use crate::draw::{Drawn, Piece, all, el, live};
use crate::wording::tasks as words;
use crate::wording::words::capital;
use crate::wording::{compared, norms};

/// What a fold says behind which sources stand.
const WHENCE: &str = "Where this comes from";

/// A source in full: citation, who was studied, and how it was seen.
pub(super) fn source_line(source: &'static Source) -> Piece {
    el("li")
        .with(el("b").with(source.key))
        .with(": ")
        .with(source.citation)
        .with(" ")
        .with(el("i").with(source.population))
        .with(". ")
        .with(capital(source.mark.words()))
        .with(".")
        .piece()
}

/// A fold whose inside is drawn when it is first opened: a page of results has dozens of them, and
/// few are looked into.
fn fold(words: &'static str, inside: impl Fn() -> Piece + 'static) -> Piece {
    let inside = Rc::new(inside);
    // A live part, so that one drawn anew is folded again and never unfolded with nothing in it.
    live(move || {
        let opened = RwSignal::new(false);
        let inside = Rc::clone(&inside);
        el("details.why")
            .on("toggle", move |_: ev::Event| opened.set(true))
            .with(el("summary").with(words))
            .with(live(move || opened.get().then(&*inside)))
    })
}

fn rule_lines(rule: &'static Rule) -> Piece {
    all![
        el("p").with(rule.says),
        el("p").with(rule.basis_line()),
        el("p.small").with(format!("Rule {}. Looks at: {}.", rule.id, rule.looks_at))
    ]
}

/// A rule in a list of all: its statement, what it looks at and what it rests on.
pub(super) fn rule_item(rule: &'static Rule) -> Piece {
    el("li").with(rule_lines(rule)).piece()
}

/// For whom a task is, and every rule that reads it: there whatever came out.
pub(super) fn task_fold(spec: &'static TaskSpec) -> Piece {
    fold("For whom, and by which rules", move || {
        let mut sources: Vec<&'static Source> = Vec::new();
        for source in spec.rules.iter().flat_map(|rule| rule.sources()) {
            if sources.iter().all(|known| known.key != source.key) {
                sources.push(source);
            }
        }
        all![
            el("p").with(words::of(spec.id).for_whom),
            el("ul").with(spec.rules.iter().map(|r| rule_item(r)).collect::<Piece>()),
            el("ul").with(sources.into_iter().map(source_line).collect::<Piece>())
        ]
    })
}

/// A rule, its basis and its sources, folded away behind one press.
pub(super) fn rule_fold(rule: &'static Rule) -> Piece {
    fold(WHENCE, move || {
        all![
            rule_lines(rule),
            el("ul").with(
                rule.sources()
                    .iter()
                    .map(|s| source_line(s))
                    .collect::<Piece>()
            )
        ]
    })
}

/// A published value: its figures, who was studied and how, its source, its mark and its caveat.
pub(super) fn row_item(row: &'static Row) -> Piece {
    let language = match row.language {
        "-" => String::new(),
        tag => {
            let known = Language::ALL.iter().find(|l| tag.starts_with(l.tag()));
            format!(" Language: {}.", known.map_or(tag, |l| l.words()))
        }
    };
    el("li")
        .with(el("p").with(format!(
            "{}: {}.",
            capital(norms::task(row.task)),
            norms::row(row)
        )))
        .with(el("p").with(format!(
            "{}. Ages: {}. Method: {}. {}.{language}",
            capital(row.population),
            norms::ages(row),
            norms::method(row.method),
            capital(row.procedure),
        )))
        .with(el("p").with(format!(
            "{}: {}",
            capital(row.mark.words()),
            row.source.citation
        )))
        .with(el("p.caveat").with(row.caveat))
        .piece()
}

/// A value beside the published one, and where that comes from.
pub(super) fn comparison_item(comparison: &Comparison) -> Piece {
    let words = capital(&compared::comparison(comparison));
    let fold = comparison.norm.as_ref().ok().map(|norm| {
        let row = norm.row;
        fold(WHENCE, move || el("ul").with(row_item(row)).piece())
    });
    el("li.flag").with(el("p").with(words)).with(fold).piece()
}

/// A flag: its reason, and where it comes from.
pub(super) fn flag_item(flag: &Flag) -> Piece {
    el("li.flag")
        .with(el("p").with(capital(&flag.reason())))
        .with(el("p.small").with(flag.domain().words()))
        .with(rule_fold(flag.rule()))
        .piece()
}
