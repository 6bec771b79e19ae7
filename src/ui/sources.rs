//! Where everything comes from, and what the app is.

use super::desk::Desk;
use super::parts::frame;
use super::route::Route;
use super::why::{row_item, rule_item, source_line};
use crate::browser::prefs;
use crate::clinical::knowledge::norms;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::source;
use crate::draw::{Piece, all, el};

/// What the app says and does not say.
const WHAT_IT_SAYS: &str = "A screen says \"refer\" or \"no sign seen\". It does not diagnose \
    and does not see silent aspiration; that takes an instrumental assessment. Emergencies go to \
    your local procedure. Diet levels are recorded as you set them, never derived. Local policy \
    and the licensed clinician decide.";

/// Where records stay, and what touches one person only.
const WHERE_IT_STAYS: &str = "Everything stays on this phone. Nothing is sent anywhere but what \
    you copy, share or save. Do not touch the phone with used gloves; single-use cups, straws \
    and depressors are for one person (common practice).";

/// Licence of the levels.
const LICENCES: &str = "Drink and food level numbers and names, and the bands of the 10 mL flow \
    test: \u{a9} The International Dysphagia Diet Standardisation Initiative 2019, \
    iddsi.org/framework, licensed under Creative Commons Attribution-ShareAlike 4.0, \
    creativecommons.org/licenses/by-sa/4.0. Works that go beyond translation are not permitted, \
    and none is made here: numbers, names and bands stand unchanged, the help text is Penlight's \
    own.";

/// The page.
pub(super) fn sources_page() -> Piece {
    let desk = Desk::get();
    let policy = prefs::policy_in_force();
    frame(
        "Sources, about".into(),
        Route::Home,
        all![
            el("p")
                .with("Penlight ")
                .with(env!("CARGO_PKG_VERSION"))
                .with(", rules ")
                .with(super::desk::RULES)
                .with(", policy \"")
                .with(policy.name)
                .with("\"."),
            el("p").with(WHAT_IT_SAYS),
            el("p").with(WHERE_IT_STAYS),
            el("button")
                .press(move |_| desk.go(Route::Policy))
                .with("Local policy"),
            el("h2").with("Published values"),
            el("details.why")
                .with(el("summary").with(format!("All {} of them", norms::ROWS.len())))
                .with(el("ul").with(norms::ROWS.iter().map(row_item).collect::<Piece>())),
            el("h2").with("Rules"),
            el("details.why")
                .with(el("summary").with(format!("All {} of them", rules::ALL.len())))
                .with(el("ul").with(rules::ALL.iter().map(|r| rule_item(r)).collect::<Piece>())),
            el("h2").with("Sources"),
            el("ul.sources").with(
                source::ALL
                    .iter()
                    .map(|s| source_line(s))
                    .collect::<Piece>()
            ),
            el("h2").with("Licence"),
            el("p").with("MIT OR Apache-2.0."),
            el("p").with(LICENCES)
        ],
    )
}
