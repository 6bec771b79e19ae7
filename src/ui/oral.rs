//! A region of the examination of face, mouth and throat: one page, one press where all of it is
//! as expected.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{follow, live, press};
use super::oral_item::OralItem;
use super::oral_picture::OralPicture;
use super::parts::{Choices, Frame, button, overview_of, para};
use super::route::Page;
use super::steps;
use super::task::Leave;
use super::why::rule_fold;
use crate::clinical::gate::{self, HOLDS};
use crate::clinical::judge::weak_side::Side;
use crate::clinical::oral::flags::WEAKNESS;
use crate::clinical::oral::{self, Answer, By, Cue, Item, Reason, Region, Seen};
use crate::clinical::rules;
use crate::clinical::words::small;
use crate::record::event::Event;

/// What the rows and the picture of a page share.
#[derive(Clone, Copy)]
pub(super) struct Rows {
    /// Items whose row is open.
    pub(super) opened: RwSignal<Vec<&'static str>>,
    /// The place that was picked on the picture: an item and its side.
    pub(super) picked: RwSignal<Option<(&'static str, Side)>>,
}

/// An item's answer, followed.
pub(super) fn answer_of(desk: Desk, item: &'static Item) -> Answer {
    desk.visit.with(|v| {
        v.as_ref()
            .map_or(Answer::Open, |v| v.exam.oral.answer(item))
    })
}

/// Options of a [`Choices`] whose words are their ids.
pub(super) fn options<'a>(words: impl IntoIterator<Item = &'a str>) -> Vec<(String, String)> {
    words
        .into_iter()
        .map(|w| (w.to_owned(), crate::clinical::words::capital(w)))
        .collect()
}

/// The page.
#[component]
pub(super) fn OralPage(
    /// Which.
    region: Region,
) -> impl IntoView {
    let desk = Desk::get();
    let regions: Vec<Region> = desk.visit.with_untracked(|v| {
        v.as_ref()
            .and_then(|v| v.screen)
            .map_or(Vec::new(), |id| id.screen().oral.regions().collect())
    });
    let at = regions.iter().position(|r| *r == region).unwrap_or(0) + 1;
    let title = format!("{} ({at} of {})", region.title(), regions.len());
    let rows = Rows {
        opened: RwSignal::new(desk.visit.with_untracked(|v| {
            let oral = v.as_ref().map(|v| &v.exam.oral);
            region
                .items()
                .filter(|item| {
                    oral.is_some_and(|o| {
                        !matches!(
                            o.answer(item),
                            Answer::Open | Answer::AsExpected | Answer::NotTested(_)
                        )
                    })
                })
                .map(|item| item.id)
                .collect()
        })),
        picked: RwSignal::new(None),
    };
    // The gag waits until nothing is to be swallowed any more.
    let waits = follow(move || {
        region == Region::Gag
            && desk
                .visit
                .with(|v| v.as_ref().is_some_and(steps::gag_waits))
    });
    view! {
        <Frame title=title back=overview_of(desk)>
            {if region == Region::Face {
                view! { <Weakness/><Safety/> }.into_any()
            } else {
                para("small", SAFETY)
            }}
            {para("advice", region.care())}
            {live(move || if waits.get() {
                view! {
                    <section class="found caution">
                        <h2>"Not yet"</h2>
                        <p>"The gag is never tested before a swallow trial. First the trials, then this page."</p>
                        {rule_fold(&rules::GAG_NEVER_DECIDES)}
                    </section>
                }.into_any()
            } else {
                view! { <Items region=region rows=rows/> }.into_any()
            })}
            <Foot region=region/>
            <Leave/>
        </Frame>
    }
}

/// The items with their picture.
#[component]
fn Items(region: Region, rows: Rows) -> impl IntoView {
    let groups = [
        (By::Eye, "Look and listen"),
        (By::Hand, "By hand: not tested until you did"),
        (By::Alone, "Each by itself: not tested until you did"),
    ];
    view! {
        {para("hint", "Left and right are the patient's. Press a line that is not as expected.")}
        <OralPicture region=region rows=rows/>
        {groups.into_iter().filter(|(by, _)| region.items_by(*by).next().is_some()).map(|(by, heading)| view! {
            <h2>{heading}</h2>
            <ul class="items oral">
                {region.items_by(by).map(|item| view! { <OralItem item=item rows=rows/> }).collect_view()}
            </ul>
        }).collect_view()}
        <CueUsed region=region/>
    }
}

/// New or worse, and not known: asked before anything else, an emergency where it is so.
#[component]
pub(super) fn Weakness() -> impl IntoView {
    let desk = Desk::get();
    let given = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| v.exam.gate.0.get(WEAKNESS).cloned())
        })
    });
    let mut answers = vec![(HOLDS.to_owned(), "No, nothing new or worse".to_owned())];
    let item = gate::find(WEAKNESS);
    answers.extend(
        item.into_iter()
            .flat_map(|i| i.exceptions)
            .map(|e| (e.id.to_owned(), e.words.to_owned())),
    );
    let pick = Callback::new(move |id: Option<String>| {
        desk.record([match id {
            Some(id) => Event::Gate(vec![(WEAKNESS.to_owned(), id)]),
            None => Event::GateCleared(WEAKNESS.to_owned()),
        }]);
        if desk
            .visit
            .with_untracked(|v| v.as_ref().is_some_and(steps::emergency))
        {
            desk.turn(Page::GateResult);
        }
    });
    view! {
        <section class="first">
            <Choices
                label="Is any weakness, droop or speech problem new or worse?"
                options=answers
                chosen=given
                pick=pick
            />
        </section>
    }
}

/// What holds for every region, in a line: the first page has it in full.
const SAFETY: &str = "Gloves on. Single-use things. Phone by a clean hand or in a clear bag. Stop at \
    pain or distress.";

/// What holds for every region.
#[component]
fn Safety() -> impl IntoView {
    view! {
        <ul class="small">
            <li>"Gloves on. Depressor and cotton tip for this person only, then away."</li>
            <li>"The phone is touched with a clean hand, by a helper, or in a clear bag, never with a used glove. Wipe it afterwards."</li>
            <li>"Loose teeth first: see to them before anything is pulled, bitten or pressed."</li>
            <li>"Stop at pain, distress or a sign to stop."</li>
        </ul>
    }
}

/// How the region was asked for.
#[component]
fn CueUsed(region: Region) -> impl IntoView {
    let desk = Desk::get();
    let cue = Signal::derive(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| v.exam.oral.cue(region))
                .map(|cue| cue.words().to_owned())
        })
    });
    view! {
        <Choices
            label="How was it asked for?"
            options=options(Cue::ALL.map(Cue::words))
            chosen=cue
            pick=Callback::new(move |id: Option<String>| {
                let cue = Cue::ALL.into_iter().find(|c| id.as_deref() == Some(c.words()));
                desk.record([Event::OralCue { region, cue }]);
            })
        />
    }
}

/// The items that one press may settle next: a group of which some have no answer yet.
fn to_settle(region: Region, open: &[&'static str]) -> Option<(By, Vec<&'static Item>)> {
    By::GROUPS.into_iter().find_map(|by| {
        let items: Vec<&'static Item> = region
            .items_by(by)
            .filter(|item| open.contains(&item.id))
            .collect();
        (!items.is_empty()).then_some((by, items))
    })
}

/// Names in a row, in one sentence.
fn names(items: &[&'static Item]) -> String {
    let names: Vec<String> = items.iter().map(|item| small(item.name)).collect();
    names.join(", ")
}

/// Settles items, goes on where the region is done, and stands still for a moment, so that a
/// second touch settles nothing else.
fn settle(desk: Desk, region: Region, items: Vec<&'static str>, seen: &Seen) {
    let press: Vec<(String, Seen)> = items
        .into_iter()
        .map(|id| (id.to_owned(), seen.clone()))
        .collect();
    if !press.is_empty() {
        desk.record([Event::Oral(press)]);
    }
    desk.hold_still();
    if let Some(next) = desk.visit.with_untracked(|v| {
        v.as_ref()
            .filter(|v| v.exam.oral.is_done(region))
            .map(|v| steps::after_region(v, region))
    }) {
        desk.turn(next);
    }
}

/// What settles the region, and what takes it back.
#[component]
fn Foot(region: Region) -> impl IntoView {
    let desk = Desk::get();
    let open = follow(move || {
        desk.visit.with(|v| {
            v.as_ref().map_or(Vec::new(), |v| {
                region
                    .items()
                    .filter(|item| v.exam.oral.answer(item) == Answer::Open)
                    .map(|item| item.id)
                    .collect::<Vec<_>>()
            })
        })
    });
    let unasked = move || {
        region == Region::Face
            && desk.visit.with(|v| {
                v.as_ref()
                    .is_some_and(|v| !v.exam.gate.0.contains_key(WEAKNESS))
            })
    };
    let problem = RwSignal::new("");
    let waits = region == Region::Gag
        && desk
            .visit
            .with_untracked(|v| v.as_ref().is_some_and(steps::gag_waits));
    let next = move || {
        if let Some(page) = desk
            .visit
            .with_untracked(|v| v.as_ref().map(|v| steps::after_region(v, region)))
        {
            desk.hold_still();
            desk.turn(page);
        }
    };
    let group = move || to_settle(region, &open.get());
    let because = Callback::new(move |id: Option<String>| {
        if let Some(reason) = Reason::ALL
            .into_iter()
            .find(|r| id.as_deref() == Some(r.words()))
        {
            settle(desk, region, open.get_untracked(), &Seen::NotTested(reason));
        }
    });
    // What is left of the page, and why it is not tested.
    let rest = move |label: String| {
        view! {
            <Choices
                label=label
                options=options(Reason::ALL.map(Reason::words))
                chosen=Signal::derive(|| None::<String>)
                pick=because
            />
        }
    };
    let left = move || {
        let open = open.get();
        let items: Vec<&'static Item> = region
            .items()
            .filter(|item| open.contains(&item.id))
            .collect();
        format!("Not tested: {}. Because:", names(&items))
    };
    let newest = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .map_or(Vec::new(), |v| v.exam.oral.newest_press().to_vec())
        })
    });
    let undo = move || {
        let items = newest.get_untracked();
        let Some(back) = items.first().and_then(|id| oral::find(id)).map(Region::of) else {
            return;
        };
        desk.record([Event::OralTakenBack(items)]);
        desk.hold_still();
        if back != region {
            desk.turn(Page::Oral(back));
        }
    };
    view! {
        {live(move || match group() {
            None if !open.get().is_empty() => Some(rest(left()).into_any()),
            _ => None,
        })}
        <div class="foot settle">
            <p class="problem" role="alert">{live(move || problem.get())}</p>
            {live(move || match group() {
                Some((by, items)) => {
                    let names = names(&items);
                    let n = items.len();
                    let did = if by == By::Hand { "tested" } else { "checked" };
                    let words = if n == 1 {
                        format!("I {did} this: as expected")
                    } else {
                        format!("I {did} these {n}: as expected")
                    };
                    let ids: Vec<&'static str> = items.iter().map(|item| item.id).collect();
                    let press_all = move |_| {
                        if unasked() {
                            problem.set("First answer whether anything is new or worse, at the top.");
                        } else {
                            problem.set("");
                            settle(desk, region, ids.clone(), &Seen::AsExpected);
                        }
                    };
                    view! {
                        <button type="button" class="big primary" on:click=press(press_all)>
                            <b>{words}</b>
                            <span>{names}</span>
                        </button>
                    }.into_any()
                }
                None => view! {
                    <button type="button" class="big primary" on:click=press(move |_| next())><b>"Next"</b></button>
                }.into_any(),
            })}
            {live(move || {
                let items = newest.get();
                items.first().and_then(|id| oral::find(id)).map(|first| {
                    let words = format!("Undo: {}, last {} settled", Region::of(first).title(), items.len());
                    button("", words, undo)
                })
            })}
        </div>
        {live(move || (group().is_some() && !waits).then(|| view! {
            <details class="more">
                <summary>"Leave the rest untested"</summary>
                {rest(left())}
                {button("", "Next page, come back later", next)}
            </details>
        }))}
    }
}
