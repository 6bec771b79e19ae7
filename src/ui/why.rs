//! "Where this comes from": a flag or a rule with its statement and its sources.

use leptos::prelude::*;

use crate::clinical::flag::Flag;
use crate::clinical::rule::Rule;
use crate::clinical::source::Source;
use crate::clinical::words::capital;

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

/// A rule, its basis and its sources, folded away behind one press.
pub(super) fn rule_fold(rule: &'static Rule) -> impl IntoView {
    view! {
        <details class="why">
            <summary>"Where this comes from"</summary>
            <p>{rule.says}</p>
            <p>{rule.basis_line()}</p>
            <ul>{rule.sources().iter().map(|s| source_line(s)).collect_view()}</ul>
            <p class="small">"Rule "{rule.id}</p>
        </details>
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
