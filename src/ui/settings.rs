//! Preferences of this phone.

use leptos::prelude::*;

use super::desk::Desk;
use super::follow::follow;
use super::parts::{choices, frame};
use super::route::Route;
use crate::browser::prefs::{self, Hands, Look, Prefs};
use crate::browser::sound;
use crate::draw::{Piece, all, el, live, said};

/// The page.
pub(super) fn settings_page() -> Piece {
    let desk = Desk::get();
    let change = move |f: &dyn Fn(&mut Prefs)| {
        desk.prefs.update(|p| f(p));
        let now = desk.prefs.get_untracked();
        prefs::save(&now);
        prefs::apply_look(now.look);
        prefs::apply_hand(now.left_hand);
    };
    let looks = [
        (Look::Auto, "auto", "As the phone"),
        (Look::Light, "light", "Light"),
        (Look::Dark, "dark", "Dark"),
        (Look::Contrast, "contrast", "High contrast"),
    ];
    let look = Signal::derive(move || {
        let now = desk.prefs.get().look;
        looks
            .iter()
            .find(|(l, _, _)| *l == now)
            .map(|(_, id, _)| (*id).to_owned())
    });
    let switch = move |label: &'static str, get: fn(&Prefs) -> bool, set: fn(&mut Prefs, bool)| {
        let on = follow(move || get(&desk.prefs.get()));
        el("button.switch")
            .attr("role", "switch")
            .attr("aria-checked", said(move || on.get().to_string()))
            .press(move |_| {
                change(&|p: &mut Prefs| {
                    let now = get(p);
                    set(p, !now)
                });
                sound::unlock();
            })
            .with(el("span").with(label))
            .with(el("b").with(live(move || if on.get() { "on" } else { "off" })))
    };
    frame(
        "Settings".into(),
        Route::Home,
        all![
            switch(
                "Ready, set, go before a timed count",
                |p| p.countdown,
                |p, on| p.countdown = on
            ),
            switch("Sound", |p| p.sound, |p, on| p.sound = on),
            switch(
                "Vibration, where the phone has it",
                |p| p.vibrate,
                |p, on| p.vibrate = on
            ),
            switch(
                "Left hand: end, undo and signs on the left",
                |p| p.left_hand,
                |p, on| p.left_hand = on
            ),
            switch(
                "Two pads, as with a helper",
                |p| p.hands != Hands::One,
                |p, on| {
                    p.hands = if on { Hands::TwoPads } else { Hands::One };
                }
            ),
            choices(
                "Look".into(),
                looks
                    .iter()
                    .map(|(_, id, words)| ((*id).to_owned(), (*words).to_owned()))
                    .collect(),
                look,
                Callback::new(move |id: Option<String>| {
                    let look = looks
                        .iter()
                        .find(|(_, l, _)| Some(*l) == id.as_deref())
                        .map_or(Look::Auto, |(l, _, _)| *l);
                    change(&|p: &mut Prefs| p.look = look);
                })
            ),
            el("button")
                .press(move |_| desk.go(Route::Policy))
                .with("Local policy")
        ],
    )
}
