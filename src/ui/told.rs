//! Who was told of the text, and who still goes by an older one.

use super::desk::Desk;
use super::follow::follow;
use crate::browser::clock;
use crate::draw::{Piece, el, live};
use crate::handover::nursing::Clock;
use crate::handover::outdated;
use crate::record::event::{Event, Whom};
use crate::record::visit::Visit;

/// The time a text carries that is written now.
pub(super) fn clock_now() -> Clock {
    let wall = clock::now().wall;
    let local = clock::local(wall);
    Clock {
        date: local.date,
        time: local.time,
        wall,
        local: |wall| {
            let local = clock::local(wall);
            (local.date, local.time)
        },
    }
}

/// Who goes by a text that no longer stands: before anything else on a page.
pub(super) fn outdated() -> Piece {
    let desk = Desk::get();
    let words = follow(move || {
        desk.visit
            .with(|v| v.and_then(|v| outdated::outdated(v, &clock_now())))
    });
    live(move || {
        words.get().map(|words| {
            el("section.found.block")
                .attr("role", "alert")
                .with(el("p").with(el("b").with(words)))
        })
    })
}

/// Told whom, and whether it was read back: afterwards.
pub(super) fn told() -> Piece {
    let desk = Desk::get();
    let issued = follow(move || desk.visit.with(|v| v.is_some_and(Visit::handed_over)));
    let told = follow(move || {
        desk.visit
            .with(|v| v.map(|v| v.told.clone()).unwrap_or_default())
    });
    // Whoever was told of an earlier text does not know of a corrected one.
    let knows = follow(move || {
        desk.visit.with(|v| {
            v.map_or(Vec::new(), |v| {
                let known = v.told.iter().filter(|told| v.knows_last(told));
                known.map(|told| told.whom.clone()).collect()
            })
        })
    });
    let tell = move |whom: &'static str, read_back: bool| {
        desk.record([Event::Told {
            whom: whom.to_owned(),
            read_back,
        }]);
    };
    live(move || {
        issued.get().then(|| {
            el("section.told")
                .with(el("h2").with("Told"))
                .with(el("ul.plain").with(live(move || {
                    told.get()
                        .into_iter()
                        .map(|told| {
                            el("li").with(format!(
                                "{} at {}{}: the text of {}",
                                crate::wording::words::capital(&told.whom),
                                clock_now().say(told.at),
                                if told.read_back { ", read back" } else { "" },
                                told.of,
                            ))
                        })
                        .collect::<Piece>()
                })))
                .with(live(move || {
                    Whom::ALL
                        .into_iter()
                        .filter(|w| knows.get().iter().all(|whom| whom != w.words()))
                        .map(|w| {
                            el("div.row")
                                .with(
                                    el("button")
                                        .press(move |_| tell(w.words(), false))
                                        .with(format!("Told {}", w.words())),
                                )
                                .with(
                                    el("button")
                                        .attr(
                                            "aria-label",
                                            format!("Told {}, and read back", w.words()),
                                        )
                                        .press(move |_| tell(w.words(), true))
                                        .with("and read back"),
                                )
                        })
                        .collect::<Piece>()
                }))
        })
    })
}
