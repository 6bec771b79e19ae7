//! The handover: what to do until review, the text, and its ways out.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::banner::file_name;
use super::desk::Desk;
use super::live::{Follow, follow, live, press, said};
use super::parts::{Choices, Frame, WordsField};
use super::route::{Page, Route};
use crate::browser::{clock, share};
use crate::handover::action::{missing, standing, suggested};
use crate::handover::nursing::{self, Clock};
use crate::handover::{full_note, levels};
use crate::record::event::{Action, ByWhen, Event, Plan, Route as Way, Text, Whom};
use crate::record::visit::Visit;

/// The page.
#[component]
pub(super) fn HandoverPage() -> impl IntoView {
    let desk = Desk::get();
    let back = desk.visit.with_untracked(|v| {
        v.as_ref()
            .map_or(Route::Home, |v| Route::Visit(v.id.clone(), Page::Decision))
    });
    // Drawn anew when the verdict changes: what was pressed for another one does not stand.
    let verdict = follow(move || {
        desk.visit
            .with(|v| v.as_ref().and_then(|v| v.decision()).map(|d| d.verdict))
    });
    let watching = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .is_some_and(|v| super::steps::watched(v).is_some())
        })
    });
    view! {
        <Frame title="Handover" back=back>
            {live(move || watching.get().then(|| view! {
                <p class="advice">"The watch is still running: the text may change. Wait for it, or say in the handover that it was cut."</p>
            }))}
            {live(move || verdict.get().filter(|v| v.needs_action()).map(|_| view! { <UntilReview/> }))}
            <TextAndWays/>
            <Levels/>
            <Told/>
        </Frame>
    }
}

/// The plan as far as it was made for the decision as it stands.
fn plan_now(visit: Option<&Visit>) -> Plan {
    visit
        .and_then(|v| v.decision().map(|d| standing(&d, &v.plan)))
        .unwrap_or_default()
}

/// Changes the plan and records it.
fn plan(desk: Desk, change: impl FnOnce(&mut Plan)) {
    let before = desk.visit.with_untracked(|v| plan_now(v.as_ref()));
    let mut plan = before.clone();
    change(&mut plan);
    if plan != before {
        desk.record([Event::Plan(plan)]);
    }
}

fn planned<T: Send + Sync + Clone + PartialEq + 'static>(
    desk: Desk,
    f: impl Fn(&Plan) -> T + Send + Sync + 'static,
) -> Follow<T> {
    follow(move || desk.visit.with(|v| f(&plan_now(v.as_ref()))))
}

/// What to do until review, to whom, by when.
#[component]
fn UntilReview() -> impl IntoView {
    let desk = Desk::get();
    let action = planned(desk, |p| p.action);
    let (whom, by_when) = desk
        .visit
        .with_untracked(|v| v.as_ref().and_then(|v| v.decision()))
        .map_or((Whom::Slp, ByWhen::Today), |d| suggested(&d));
    let chosen_whom = planned(desk, move |p| {
        Some(p.whom.unwrap_or(whom).words().to_owned())
    });
    let chosen_when = planned(desk, move |p| {
        Some(p.by_when.unwrap_or(by_when).words().to_owned())
    });
    view! {
        <section class="until">
            <h2>"Until reviewed"</h2>
            <div class="actions" role="group" aria-label="Until reviewed">
                {Action::ALL.into_iter().map(|a| view! {
                    <button
                        type="button"
                        class="choice"
                        aria-pressed=said(move || (action.get() == Some(a)).to_string())
                        on:click=press(move |_| plan(desk, |p| p.action = Some(a)))
                    >
                        {a.button()}
                    </button>
                }).collect_view()}
            </div>
            {live(move || (action.get() == Some(Action::KeepPlan)).then(|| {
                let reasons = ["the plan in force already covers this", "the doctor decided so", "comfort comes first"];
                let because = planned(desk, |p| Some(p.because.clone()).filter(|b| !b.is_empty()));
                view! {
                    <Choices
                        label="Because"
                        options=reasons.iter().map(|r| ((*r).to_owned(), crate::clinical::words::capital(r))).collect()
                        chosen=because
                        pick=Callback::new(move |id: Option<String>| plan(desk, |p| p.because = id.unwrap_or_default()))
                    />
                    <WordsField
                        id="because-own"
                        label="or in your own words"
                        value=String::new()
                        most=80
                        take=Callback::new(move |words: String| {
                            if !words.trim().is_empty() { plan(desk, |p| p.because = words) }
                        })
                    />
                }
            }))}
            <details class="more">
                <summary>
                    {live(move || format!(
                        "To {}, {}",
                        chosen_whom.get().unwrap_or_default(),
                        chosen_when.get().unwrap_or_default(),
                    ))}
                </summary>
                <Choices
                    label="To"
                    options=Whom::ALL.iter().map(|w| (w.words().to_owned(), crate::clinical::words::capital(w.words()))).collect()
                    chosen=chosen_whom
                    pick=Callback::new(move |id: Option<String>| plan(desk, |p| {
                        p.whom = Whom::ALL.into_iter().find(|w| Some(w.words()) == id.as_deref());
                    }))
                />
                <Choices
                    label="By"
                    options=ByWhen::ALL.iter().map(|w| (w.words().to_owned(), crate::clinical::words::capital(w.words()))).collect()
                    chosen=chosen_when
                    pick=Callback::new(move |id: Option<String>| plan(desk, |p| {
                        p.by_when = ByWhen::ALL.into_iter().find(|w| Some(w.words()) == id.as_deref());
                    }))
                />
            </details>
        </section>
    }
}

/// Drink and food levels, picked by the clinician, and a remark.
#[component]
fn Levels() -> impl IntoView {
    let desk = Desk::get();
    let drink = planned(desk, |p| p.drink.map(|l| l.to_string()));
    let food = planned(desk, |p| p.food.map(|l| l.to_string()));
    let remark = desk.visit.with_untracked(|v| {
        v.as_ref()
            .map(|v| v.plan.remark.clone())
            .unwrap_or_default()
    });
    let offer = |range: std::ops::RangeInclusive<u8>, name: fn(u8) -> Option<&'static str>| {
        range
            .filter_map(|l| name(l).map(|n| (l.to_string(), n.to_owned())))
            .collect::<Vec<_>>()
    };
    view! {
        <details class="more">
            <summary>"Levels you set, a remark"</summary>
            <p class="small">
                "Recorded as you set them; never derived from this screen. Left out where nothing is \
                 given by mouth."
            </p>
            <Choices
                label="Drinks"
                options=offer(0..=4, levels::drink)
                chosen=drink
                pick=Callback::new(move |id: Option<String>| plan(desk, |p| p.drink = id.and_then(|l| l.parse().ok())))
            />
            <Choices
                label="Food"
                options=offer(3..=7, levels::food)
                chosen=food
                pick=Callback::new(move |id: Option<String>| plan(desk, |p| p.food = id.and_then(|l| l.parse().ok())))
            />
            <WordsField
                id="remark"
                label="Remark. No names."
                value=remark
                most=120
                take=Callback::new(move |words| plan(desk, |p| p.remark = words))
            />
        </details>
    }
}

/// The texts, with the words on their buttons and the names of their files.
const TEXTS: [(Text, &str, &str); 2] = [
    (Text::Nursing, "For the nurse", "handover"),
    (Text::FullNote, "Full note", "full-note"),
];

/// The name of a text's file.
fn named(which: Text) -> &'static str {
    TEXTS.iter().find(|t| t.0 == which).map_or("", |t| t.2)
}

/// A text as it would leave now.
fn text_now(desk: Desk, which: Text) -> Option<(String, Clock)> {
    let local = clock::local(clock::now().wall);
    let now = Clock {
        date: local.date,
        time: local.time,
    };
    desk.visit.with(|v| {
        v.as_ref()
            .and_then(|v| match which {
                Text::Nursing => nursing::write(v, &now),
                Text::FullNote => full_note::write(v, &now),
            })
            .map(|text| (text, now))
    })
}

/// The text, and the ways it can leave.
#[component]
fn TextAndWays() -> impl IntoView {
    let desk = Desk::get();
    let blocked = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| v.decision().and_then(|d| missing(&d, &v.plan)))
        })
    });
    let problem = RwSignal::new(String::new());
    let done = RwSignal::new(String::new());
    // The one shown is the one that leaves.
    let which = RwSignal::new(Text::Nursing);
    // Nothing leaves before it is said what to do; the message goes as soon as it is answered.
    let asked = RwSignal::new(false);
    let ready = move || {
        problem.set(String::new());
        let free = blocked.get_untracked().is_none();
        asked.set(!free);
        free.then(|| text_now(desk, which.get_untracked()))
            .flatten()
    };
    let left = move |which: Text, route: Way, words: &'static str, text: String, clock: Clock| {
        desk.record([Event::Issued {
            route,
            text,
            clock: clock.time.clone(),
            which,
        }]);
        done.set(format!("{words} at {}", clock.time));
    };
    let copy = move |_| {
        if let Some((text, clock)) = ready() {
            let which = which.get_untracked();
            let copying = share::copy(&text);
            spawn_local(async move {
                match copying.await {
                    Ok(()) => left(which, Way::Copied, "Copied", text, clock),
                    Err(why) => problem.set(format!(
                        "Copying did not work ({why}). Save it as a file instead."
                    )),
                }
            });
        }
    };
    let send = move |_| {
        if let Some((text, clock)) = ready() {
            let which = which.get_untracked();
            let sharing = share::share("Handover", &text);
            spawn_local(async move {
                match sharing.await {
                    Ok(true) => left(which, Way::Shared, "Shared", text, clock),
                    Ok(false) => problem.set("Not shared: it was called off.".to_owned()),
                    Err(why) => {
                        problem.set(format!("Sharing did not work ({why}). Copy it instead."))
                    }
                }
            });
        }
    };
    let save = move |_| {
        if let Some((text, clock)) = ready() {
            let which = which.get_untracked();
            match share::save_file(&file_name(named(which), "txt"), &text) {
                Ok(()) => left(which, Way::Saved, "Saved as a file", text, clock),
                Err(why) => problem.set(format!("Saving did not work ({why}). Copy it instead.")),
            }
        }
    };
    view! {
        // Outside the section at whose lower edge the ways out stay: they must not cover it.
        <Choices
            label="Text"
            options=TEXTS.iter().map(|t| (t.2.to_owned(), t.1.to_owned())).collect()
            chosen=Signal::derive(move || Some(named(which.get()).to_owned()))
            pick=Callback::new(move |id: Option<String>| {
                if let Some(text) = TEXTS.iter().find(|t| id.as_deref() == Some(t.2)) {
                    which.set(text.0);
                    done.set(String::new());
                }
            })
        />
        <section>
            <pre class="handover" tabindex="0">{live(move || text_now(desk, which.get()).map(|(text, _)| text))}</pre>
            <div class="foot ways">
                <p class="problem" role="alert">
                    {live(move || match (asked.get(), blocked.get()) {
                        (true, Some(words)) => words.to_owned(),
                        _ => problem.get(),
                    })}
                </p>
                <button type="button" class="big primary" on:click=press(copy)><b>"Copy"</b></button>
                <div class="row">
                    {share::can_share().then(|| view! { <button type="button" on:click=press(send)>"Share"</button> })}
                    <button type="button" on:click=press(save)>"Save as a file"</button>
                </div>
                <p class="figure" role="status">{live(move || done.get())}</p>
            </div>
        </section>
    }
}

/// Told whom, and whether it was read back: afterwards.
#[component]
fn Told() -> impl IntoView {
    let desk = Desk::get();
    let issued = follow(move || {
        desk.visit
            .with(|v| v.as_ref().is_some_and(|v| !v.issued.is_empty()))
    });
    let told = follow(move || {
        desk.visit
            .with(|v| v.as_ref().map(|v| v.told.clone()).unwrap_or_default())
    });
    let tell = move |whom: &'static str, read_back: bool| {
        desk.record([Event::Told {
            whom: whom.to_owned(),
            read_back,
        }]);
    };
    view! {
        {live(move || issued.get().then(|| view! {
            <section>
                <h2>"Told"</h2>
                <ul class="plain">
                    {live(move || told.get().into_iter().map(|(whom, back, at)| view! {
                        <li>{format!(
                            "{} at {}{}",
                            crate::clinical::words::capital(&whom),
                            clock::local(at).time,
                            if back { ", read back" } else { "" },
                        )}</li>
                    }).collect_view())}
                </ul>
                {live(move || Whom::ALL
                    .into_iter()
                    .filter(|w| !told.get().iter().any(|(whom, _, _)| whom == w.words()))
                    .map(|w| view! {
                        <div class="row">
                            <button type="button" on:click=press(move |_| tell(w.words(), false))>
                                {format!("Told {}", w.words())}
                            </button>
                            <button type="button" on:click=press(move |_| tell(w.words(), true))>"and read back"</button>
                        </div>
                    })
                    .collect_view())}
            </section>
        }))}
    }
}
