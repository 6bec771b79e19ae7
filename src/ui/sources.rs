//! Where everything comes from, and what the app is.

use leptos::prelude::*;

use super::parts::Frame;
use super::route::Route;
use super::why::{row_item, rule_item, source_line};
use crate::clinical::norms;
use crate::clinical::policy::Policy;
use crate::clinical::rules;
use crate::clinical::source;

/// The page.
#[component]
pub(super) fn SourcesPage() -> impl IntoView {
    let policy = Policy::default();
    view! {
        <Frame title="Sources, about" back=Route::Home>
            <p>
                "Penlight "{env!("CARGO_PKG_VERSION")}", rules "{super::desk::RULES}", policy \""{policy.name.clone()}"\"."
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
            <h2>"Local policy in force"</h2>
            <ul>
                <li>{format!(
                    "Adults: no water at {} or fewer, or {} or more breaths a minute, or at an oxygen saturation of \
                     {} % or lower without an own target.",
                    policy.breaths_low, policy.breaths_high, policy.spo2_low,
                )}</li>
                <li>{if policy.voice_refers {
                    "A changed voice after water is a reason to refer."
                } else {
                    "A changed voice after water is recorded only."
                }}</li>
                <li>{if policy.requests_block {
                    "Not following one-step requests closes the gate."
                } else {
                    "Not following one-step requests is a caution."
                }}</li>
                <li>{format!("Dry swallows are counted from {} years.", policy.dry_swallow_from_years)}</li>
            </ul>
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
            <p>"MIT OR Apache-2.0. Drink and food level names: IDDSI framework, 2019, iddsi.org/framework, \
                CC BY-SA 4.0; works that go beyond translation are not permitted, and none is made here."</p>
        </Frame>
    }
}
