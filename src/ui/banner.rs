//! What must be said on every page: storage that fails, a watch that runs, a waiting update.

use leptos::ev;
use leptos::prelude::*;

use super::desk::Desk;
use super::keeper::Saved;
use super::live::{follow, live, press};
use super::route::{Page, Route};
use super::steps;
use crate::browser::{clock, page, prefs, share, worker};
use crate::clinical::task::Phase;
use crate::clinical::tasks;
use crate::measure::time::Millis;
use crate::record::export;
use crate::record::store::StoreError;

/// All banners.
#[component]
pub(super) fn Banners() -> impl IntoView {
    view! {
        <NotSaved/>
        <NotSafe/>
        {page::must_be_installed_first().then(|| view! {
            <section class="banner" role="status">
                <p>
                    <b>"Add Penlight to the Home Screen first "</b>
                    "(Share, Add to Home Screen). Safari deletes what a page stores after seven days \
                     without use, and the Home Screen keeps its own records."
                </p>
            </section>
        })}
        <PolicyLost/>
        <Aside/>
        <SamePerson/>
        <Watch/>
        <Update/>
    }
}

/// A file name with the moment in it, so that two files never have the same.
pub(super) fn file_name(what: &str, kind: &str) -> String {
    format!("penlight-{what}-{}.{kind}", clock::now().wall.0)
}

/// The store refused: what is queued is in memory only.
#[component]
fn NotSaved() -> impl IntoView {
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
            view! {
                <section class="banner grave" role="alert">
                    <p>
                        <b>"Not saved. "</b>
                        {error.to_string()}
                        " What you entered is still on this page; do not close it."
                    </p>
                    <div class="row">
                        <button type="button" on:click=press(save)>"Save a copy as a file"</button>
                        <button type="button" on:click=press(move |_| desk.keeper().flush())>
                            "Try again"
                        </button>
                    </div>
                    {conflict.then(|| view! {
                        <p>"Save the copy, close the other window, then open the visit again."</p>
                    })}
                    <p>{live(move || trouble.get())}</p>
                </section>
            }
            .into_any()
        }
        _ => ().into_any(),
    })
}

/// Records may not outlive the page here, or could not be read.
#[component]
fn NotSafe() -> impl IntoView {
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
            Some(error) => view! {
                <section class="banner grave" role="alert">
                    <p><b>"Past visits can't be read. "</b>{error.to_string()}" Nothing was deleted."</p>
                    <button type="button" on:click=press(move |_| { desk.unreadable.set(None); desk.start(); })>
                        "Try again"
                    </button>
                </section>
            }
            .into_any(),
            None if unsafe_store => view! {
                <section class="banner" role="status">
                    <p>
                        <b>"Records are less safe here. "</b>
                        {why}
                        " Copy or save the handover before you close Penlight."
                    </p>
                </section>
            }
            .into_any(),
            None => ().into_any(),
        }
    })
}

/// Entries of the open visit that can't be read are set aside.
#[component]
fn Aside() -> impl IntoView {
    let desk = Desk::get();
    let aside = move || desk.visit.with(|v| v.as_ref().map_or(0, |v| v.aside.len()));
    let save = move |_| {
        let text = desk
            .visit
            .with_untracked(|v| v.as_ref().map(|v| export::aside_lines(&v.aside)))
            .unwrap_or_default();
        let _ = share::save_file(&file_name("set-aside", "txt"), &text);
    };
    live(move || {
        let n = aside();
        (n > 0).then(|| {
            let why = desk.visit.with_untracked(|v| {
                v.as_ref()
                    .and_then(|v| v.aside.first())
                    .map_or(String::new(), |a| a.why.to_string())
            });
            notice(
                format!("{n} of this visit's entries can't be read"),
                format!(
                    " ({why}). They are set aside, not deleted; everything else is here. Do not \
                     decide by this visit alone."
                ),
                "Save them as a file",
                press(save),
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
) -> AnyView {
    view! {
        <section class="banner" role="status">
            <p><b>{what}</b>{more}</p>
            <button type="button" on:click=handle>{button}</button>
        </section>
    }
    .into_any()
}

/// The local policy that this phone kept can't be used: said on the first page until it is read.
#[component]
fn PolicyLost() -> impl IntoView {
    let desk = Desk::get();
    live(move || {
        let why = desk.policy_lost.get();
        (!why.is_empty() && desk.route.get() == Route::Home).then(|| {
            notice(
                "The local policy kept on this phone can't be used. ".to_owned(),
                format!("{why} Penlight's default is in force. Take the policy file in again."),
                "Go on with the default",
                press(move |_| {
                    prefs::keep_policy("");
                    desk.policy_lost.set(String::new());
                }),
            )
        })
    })
}

/// Somebody comes back to a visit after a while: whose it is, before anything is pressed in it.
#[component]
fn SamePerson() -> impl IntoView {
    let desk = Desk::get();
    live(move || {
        let away = desk.away.get()?;
        if !matches!(desk.route.get(), Route::Visit(..)) {
            return None;
        }
        let whose = desk.visit.with_untracked(|v| {
            let v = v.as_ref().filter(|v| !v.is_loose())?;
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
            press(move |_| desk.go(Route::Home)),
        ))
    })
}

/// The running watch, wherever one is.
#[component]
fn Watch() -> impl IntoView {
    let desk = Desk::get();
    let watched = follow(move || {
        desk.visit.with(|v| {
            let visit = v.as_ref()?;
            let trial = steps::watched(visit)?;
            Some((visit.id.clone(), trial.task, trial.number))
        })
    });
    let left = move || {
        let now = desk.now.get();
        desk.visit.with(|v| {
            let visit = v.as_ref()?;
            let trial = visit.trial(watched.get()?.2)?;
            let spec = tasks::spec(trial.task);
            match (spec.phase(trial, now), spec.pad.watch) {
                (Phase::Watching(so_far), Some(watch)) => {
                    so_far.length.map(|length| whole_seconds(watch - length))
                }
                _ => None,
            }
        })
    };
    live(move || {
        let (id, task, _) = watched.get()?;
        // On the task's own page the pad shows it.
        let here = desk.route.get();
        if matches!(&here, Route::Visit(_, Page::Task(t)) if *t == task) {
            return None;
        }
        let go = move |_| desk.go(Route::Visit(id.clone(), Page::Task(task)));
        Some(view! {
            <section class="banner watch">
                <p>"Watching: "<b class="left" role="timer">{live(move || left().unwrap_or_default())}" s"</b></p>
                <button type="button" on:click=press(go)>"Sign seen"</button>
            </section>
        })
    })
}

/// Seconds left, rounded up: 0 is shown only when it is over.
pub(super) fn whole_seconds(left: Millis) -> String {
    ((left.0.max(0) + 999) / 1000).to_string()
}

/// A new version waits: offered, never applied while a visit is open.
#[component]
fn Update() -> impl IntoView {
    let desk = Desk::get();
    live(move || {
        let calm = desk.route.get() == Route::Home
            && !desk.visit.with(|v| v.as_ref().is_some_and(|v| v.running()))
            && desk.saved.get() == Saved::Yes;
        (desk.update.get() && calm).then(|| {
            view! {
                <section class="banner" role="status">
                    <p>"A new version of Penlight is ready. Visits stay as they are."</p>
                    <button type="button" on:click=press(|_| worker::activate_update())>"Use it now"</button>
                </section>
            }
        })
    })
}
