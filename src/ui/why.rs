//! "Where this comes from": a flag or a rule with its statement and its sources.

use leptos::prelude::*;

use super::live::live;
use crate::clinical::compare::Comparison;
use crate::clinical::flag::Flag;
use crate::clinical::norms::Row;
use crate::clinical::rule::Rule;
use crate::clinical::source::Source;
use crate::clinical::task::TaskSpec;
use crate::clinical::words::capital;

/// What a fold says behind which sources stand.
const WHENCE: &str = "Where this comes from";

/// A source in full: citation, who was studied, and how it was seen.
pub(super) fn source_line(source: &'static Source) -> impl IntoView {
    view! {
        <li>
            <b>{source.key}</b>
            ": "
            {source.citation}
            " "
            <i>{source.population}</i>
            ". "
            {capital(source.mark.words())}
            "."
        </li>
    }
}

/// A fold whose inside is drawn when it is first opened: a page of results has dozens of them, and
/// few are looked into.
fn fold(words: &'static str, inside: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let opened = RwSignal::new(false);
    view! {
        <details class="why" on:toggle=move |_| opened.set(true)>
            <summary>{words}</summary>
            {live(move || opened.get().then(&inside))}
        </details>
    }
    .into_any()
}

fn rule_lines(rule: &'static Rule) -> impl IntoView {
    view! {
        <p>{rule.says}</p>
        <p>{rule.basis_line()}</p>
        <p class="small">{format!("Rule {}. Looks at: {}.", rule.id, rule.looks_at)}</p>
    }
}

/// A rule in a list of all: its statement, what it looks at and what it rests on.
pub(super) fn rule_item(rule: &'static Rule) -> impl IntoView {
    view! {
        <li>
            {rule_lines(rule)}
        </li>
    }
}

/// For whom a task is, and every rule that reads it: there whatever came out.
pub(super) fn task_fold(spec: &'static TaskSpec) -> impl IntoView {
    fold("For whom, and by which rules", move || {
        let mut sources: Vec<&'static Source> = Vec::new();
        for source in spec.rules.iter().flat_map(|rule| rule.sources()) {
            if sources.iter().all(|known| known.key != source.key) {
                sources.push(source);
            }
        }
        view! {
            <p>{spec.for_whom}</p>
            <ul>{spec.rules.iter().map(|r| rule_item(r)).collect_view()}</ul>
            <ul>{sources.into_iter().map(source_line).collect_view()}</ul>
        }
        .into_any()
    })
}

/// A rule, its basis and its sources, folded away behind one press.
pub(super) fn rule_fold(rule: &'static Rule) -> impl IntoView {
    fold(WHENCE, move || {
        view! {
            {rule_lines(rule)}
            <ul>{rule.sources().iter().map(|s| source_line(s)).collect_view()}</ul>
        }
        .into_any()
    })
}

/// A published value: its figures, who was studied and how, its source, its mark and its caveat.
pub(super) fn row_item(row: &'static Row) -> impl IntoView {
    let language = match row.language {
        "-" => String::new(),
        tag => format!(" Language: {tag}."),
    };
    view! {
        <li>
            <p>{format!("{}: {row}.", capital(row.task.words()))}</p>
            <p>{format!(
                "{}. Ages: {}. Method: {}. {}.{language}",
                capital(row.population), row.ages_words(), row.method.words(), capital(row.procedure),
            )}</p>
            <p>{format!("{}: {}", capital(row.mark.words()), row.source.citation)}</p>
            <p class="caveat">{row.caveat}</p>
        </li>
    }
}

/// A value beside the published one, and where that comes from.
pub(super) fn comparison_item(comparison: &Comparison) -> impl IntoView + use<> {
    let words = capital(&comparison.words());
    let fold = comparison.norm.as_ref().ok().map(|norm| {
        let row = norm.row;
        fold(WHENCE, move || {
            view! { <ul>{row_item(row)}</ul> }.into_any()
        })
    });
    view! {
        <li class="flag">
            <p>{words}</p>
            {fold}
        </li>
    }
}

/// A flag: its reason, and where it comes from.
pub(super) fn flag_item(flag: &Flag) -> impl IntoView + use<> {
    view! {
        <li class="flag">
            <p>{capital(flag.reason())}</p>
            <p class="small">{flag.domain().words()}</p>
            {rule_fold(flag.rule())}
        </li>
    }
}
