//! Where everything comes from, and what the app is.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::press;
use super::parts::Frame;
use super::route::Route;
use super::why::{row_item, rule_item, source_line};
use crate::browser::prefs;
use crate::clinical::norms;
use crate::clinical::rules;
use crate::clinical::source;

/// The page.
#[component]
pub(super) fn SourcesPage() -> impl IntoView {
    let desk = Desk::get();
    let policy = prefs::policy_in_force();
    view! {
        <Frame title="Sources, about" back=Route::Home>
            <p>
                "Penlight "{env!("CARGO_PKG_VERSION")}", rules "{super::desk::RULES}", policy \""{policy.name}"\"."
            </p>
            <p>
                "A screen says \"refer\" or \"no sign seen\". It does not diagnose and does not see silent \
                 aspiration; that takes an instrumental assessment. Emergencies go to your local procedure. \
                 Diet levels are recorded as you set them, never derived. Local policy and the licensed \
                 clinician decide."
            </p>
            <p>
                "Everything stays on this phone. Nothing is sent anywhere but what you copy, share or save. \
                 Do not touch the phone with used gloves; single-use cups, straws and depressors are for \
                 one person (common practice)."
            </p>
            <button type="button" on:click=press(move |_| desk.go(Route::Policy))>"Local policy"</button>
            <h2>"Published values"</h2>
            <details class="why">
                <summary>{format!("All {} of them", norms::ROWS.len())}</summary>
                <ul>{norms::ROWS.iter().map(row_item).collect_view()}</ul>
            </details>
            <h2>"Rules"</h2>
            <details class="why">
                <summary>{format!("All {} of them", rules::ALL.len())}</summary>
                <ul>{rules::ALL.iter().map(|r| rule_item(r)).collect_view()}</ul>
            </details>
            <h2>"Sources"</h2>
            <ul class="sources">{source::ALL.iter().map(|s| source_line(s)).collect_view()}</ul>
            <h2>"Licence"</h2>
            <p>"MIT OR Apache-2.0."</p>
            <p>"Drink and food level numbers and names, and the bands of the 10 mL flow test: \u{a9} The \
                International Dysphagia Diet Standardisation Initiative 2019, iddsi.org/framework, \
                licensed under Creative Commons Attribution-ShareAlike 4.0, \
                creativecommons.org/licenses/by-sa/4.0. Works that go beyond translation are not \
                permitted, and none is made here: numbers, names and bands stand unchanged, the help \
                text is Penlight's own."</p>
        </Frame>
    }
}
