//! What must be said on every page: storage that fails, a choking or a watch that runs, a waiting
//! update.

use leptos::ev;
use leptos::prelude::*;

use super::choking::time_between;
use super::desk::Desk;
use super::follow::follow;
use super::keeper::Saved;
use super::parts::button;
use super::route::{Page, Route};
use crate::browser::{clock, page, prefs, share, worker};
use crate::clinical::tasks;
use crate::clinical::tasks::spec::Phase;
use crate::draw::{Drawn, El, Piece, Said, all, el, live, said};
use crate::measure::time::Millis;
use crate::record::store::StoreError;
use crate::record::way;
use crate::wording::record::aside_lines;

/// Why the Home Screen, on an iPhone.
const HOME_SCREEN_FIRST: &str = "(Share, Add to Home Screen). Safari deletes what a page stores \
    after seven days without use, and the Home Screen keeps its own records.";

/// All banners.
pub(super) fn banners() -> Piece {
    all![
        not_saved(),
        not_safe(),
        page::must_be_installed_first().then(|| el("section.banner").attr("role", "status").with(
            el("p")
                .with(el("b").with("Add Penlight to the Home Screen first "))
                .with(HOME_SCREEN_FIRST)
        )),
        policy_lost(),
        aside(),
        same_person(),
        running(),
        update()
    ]
}

/// A file name with the moment in it, so that two files never have the same.
pub(super) fn file_name(what: &str, kind: &str) -> String {
    format!("penlight-{what}-{}.{kind}", clock::now().wall.0)
}

/// The store refused: what is queued is in memory only.
fn not_saved() -> Piece {
    let desk = Desk::get();
    let trouble = RwSignal::new(String::new());
    let save = move |_| {
        let text = desk.keeper().unsaved();
        if let Err(why) = share::save_file(&file_name("unsaved", "txt"), &text) {
            trouble.set(why);
        }
    };
    live(move || match desk.saved.get() {
        Saved::Failed(error) => {
            let conflict = error == StoreError::Conflict;
            el("section.banner.grave")
                .attr("role", "alert")
                .with(
                    el("p")
                        .with(el("b").with("Not saved. "))
                        .with(error.to_string())
                        .with(" What you entered is still on this page; do not close it."),
                )
                .with(
                    el("div.row")
                        .with(el("button").press(save).with("Save a copy as a file"))
                        .with(
                            el("button")
                                .press(move |_| desk.keeper().flush())
                                .with("Try again"),
                        ),
                )
                .with(conflict.then(|| {
                    el("p")
                        .with("Save the copy, close the other window, then open the visit again.")
                }))
                .with(el("p").with(live(move || trouble.get())))
                .piece()
        }
        _ => ().piece(),
    })
}

/// Records may not outlive the page here, or could not be read.
fn not_safe() -> Piece {
    let desk = Desk::get();
    live(move || {
        let failed = desk.unreadable.get();
        let unsafe_store = desk.ready.get() && !desk.keeper().is_safe();
        let why = desk
            .downgrade
            .get()
            .map(|e| e.to_string())
            .unwrap_or_default();
        match failed {
            Some(error) => el("section.banner.grave")
                .attr("role", "alert")
                .with(
                    el("p")
                        .with(el("b").with("Past visits can't be read. "))
                        .with(error.to_string())
                        .with(" Nothing was deleted."),
                )
                .with(
                    el("button")
                        .press(move |_| {
                            desk.unreadable.set(None);
                            desk.start();
                        })
                        .with("Try again"),
                )
                .piece(),
            None if unsafe_store => el("section.banner")
                .attr("role", "status")
                .with(
                    el("p")
                        .with(el("b").with("Records are less safe here. "))
                        .with(why)
                        .with(" Copy or save the handover before you close Penlight."),
                )
                .piece(),
            None => ().piece(),
        }
    })
}

/// Entries of the open visit that can't be read are set aside.
fn aside() -> Piece {
    let desk = Desk::get();
    let aside = move || desk.visit.with(|v| v.map_or(0, |v| v.aside.len()));
    let save = move |_| {
        let text = desk
            .visit
            .with_untracked(|v| v.map(|v| aside_lines(&v.aside)))
            .unwrap_or_default();
        let _ = share::save_file(&file_name("set-aside", "txt"), &text);
    };
    live(move || {
        let n = aside();
        (n > 0).then(|| {
            let why = desk.visit.with_untracked(|v| {
                v.and_then(|v| v.aside.first())
                    .map_or(String::new(), |a| a.why.to_string())
            });
            notice(
                format!("{n} of this visit's entries can't be read"),
                format!(
                    " ({why}). They are set aside, not deleted; everything else is here. Do not \
                     decide by this visit alone."
                ),
                "Save them as a file",
                Box::new(save),
            )
        })
    })
}

/// What is to be known, and what can be done about it.
fn notice(
    what: String,
    more: String,
    button: &'static str,
    handle: Box<dyn FnMut(ev::MouseEvent)>,
) -> Piece {
    el("section.banner")
        .attr("role", "status")
        .with(el("p").with(el("b").with(what)).with(more))
        .with(el("button").press(handle).with(button))
        .piece()
}

/// The local policy that this phone kept can't be used: said on the first page until it is read.
fn policy_lost() -> Piece {
    let desk = Desk::get();
    live(move || {
        let why = desk.policy_lost.get();
        (!why.is_empty() && desk.route.get() == Route::Home).then(|| {
            notice(
                "The local policy kept on this phone can't be used. ".to_owned(),
                format!("{why} Penlight's default is in force. Take the policy file in again."),
                "Go on with the default",
                Box::new(move |_| {
                    prefs::keep_policy("");
                    desk.policy_lost.set(String::new());
                }),
            )
        })
    })
}

/// Somebody comes back to a visit after a while: whose it is, before anything is pressed in it.
fn same_person() -> Piece {
    let desk = Desk::get();
    live(move || {
        let away = desk.away.get()?;
        if !matches!(desk.route.get(), Route::Visit(..)) {
            return None;
        }
        let whose = desk.visit.with_untracked(|v| {
            let v = v.filter(|v| !v.is_loose())?;
            let age = v.details.as_ref().and_then(|d| d.age);
            Some(age.map_or_else(|| v.label(), |age| format!("{}, {age}", v.label())))
        })?;
        let minutes = away.0 / 60_000;
        let left = if minutes < 120 {
            format!("{minutes} minutes")
        } else {
            format!("{} hours", minutes / 60)
        };
        Some(notice(
            format!("Still {whose}?"),
            format!(" Left for {left}."),
            "Another person",
            Box::new(move |_| desk.go(Route::Home)),
        ))
    })
}

/// What runs, wherever one is: a choking, which outranks it, else the watch.
fn running() -> Piece {
    let desk = Desk::get();
    let choking = follow(move || {
        desk.visit.with(|v| {
            let visit = v.filter(|v| v.is_choking())?;
            Some((visit.id.clone(), visit.choking()?.since))
        })
    });
    let watched = follow(move || {
        desk.visit.with(|v| {
            let visit = v?;
            let trial = way::watched(visit)?;
            Some((visit.id.clone(), trial.task, trial.number))
        })
    });
    let left = move || {
        let now = desk.now.get();
        desk.visit.with(|v| {
            let visit = v?;
            let trial = visit.trial(watched.get()?.2)?;
            let spec = tasks::spec(trial.task);
            match (spec.phase(trial, now), spec.pad.watch) {
                (Phase::Watching(so_far), Some(watch)) => so_far
                    .length
                    .map(|length| format!("{} s", whole_seconds(watch - length))),
                _ => None,
            }
        })
    };
    live(move || {
        let here = desk.route.get();
        let there = |page: Page| !matches!(&here, Route::Visit(_, p) if *p == page);
        if let Some((id, since)) = choking.get().filter(|_| there(Page::Choking)) {
            let to = Route::Visit(id, Page::Choking);
            let clock = said(move || time_between(since, desk.now.get()));
            return Some(strip(
                "banner watch grave",
                "Choking: ",
                clock,
                to,
                "Back to it",
            ));
        }
        let (id, task, _) = watched.get()?;
        // On the task's own page the pad shows it.
        there(Page::Task(task)).then(|| {
            let to = Route::Visit(id, Page::Task(task));
            let left = said(move || left().unwrap_or_default());
            strip("banner watch", "Watching: ", left, to, "Sign seen")
        })
    })
}

/// What runs, its time, and the way to its page. It takes room of its own and covers nothing.
fn strip(
    class: &'static str,
    what: &'static str,
    time: Said,
    to: Route,
    words: &'static str,
) -> El {
    let desk = Desk::get();
    el("section")
        .class(class)
        .with(
            el("p")
                .with(what)
                .with(el("b.left").attr("role", "timer").with(time)),
        )
        .with(button("", words, move || desk.go(to.clone())))
}

/// Seconds left, rounded up: 0 is shown only when it is over.
pub(super) fn whole_seconds(left: Millis) -> String {
    ((left.0.max(0) + 999) / 1000).to_string()
}

/// A new version waits: offered, never applied while a visit is open.
fn update() -> Piece {
    let desk = Desk::get();
    live(move || {
        let calm = desk.route.get() == Route::Home
            && !desk.visit.with(|v| v.is_some_and(|v| v.running()))
            && desk.saved.get() == Saved::Yes;
        (desk.update.get() && calm).then(|| {
            el("section.banner")
                .attr("role", "status")
                .with(el("p").with("A new version of Penlight is ready. Visits stay as they are."))
                .with(
                    el("button")
                        .press(|_| worker::activate_update())
                        .with("Use it now"),
                )
        })
    })
}
