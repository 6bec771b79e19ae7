//! A region of the examination of face, mouth and throat: one page, one press where all of it is
//! as expected.

use leptos::prelude::*;

use super::desk::Desk;
use super::ended::leave;
use super::follow::follow;
use super::oral_item::oral_item;
use super::oral_picture::oral_picture;
use super::oral_rows::{Rows, one_of, why_not, worded};
use super::parts::{big, button, choices, folded, frame, overview_of, para};
use super::route::Page;
use super::why::rule_fold;
use crate::browser::page;
use crate::clinical::findings::gate;
use crate::clinical::findings::gate::HOLDS;
use crate::clinical::findings::oral::{Answer, Cue, Reason, Seen};
use crate::clinical::knowledge::oral;
use crate::clinical::knowledge::oral::{By, Item, Region};
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::oral::flags::{WEAKNESS, unsaid};
use crate::draw::{Drawn, El, Piece, all, el, live};
use crate::record::event::Event;
use crate::record::way;
use crate::wording;
use crate::wording::oral_answers;
use crate::wording::oral_items;
use crate::wording::words::small;

/// When the gag is tested.
const NO_GAG_YET: &str = "The gag is never tested before a swallow trial. First the trials, then \
    this page.";

/// The page.
pub(super) fn oral_page(
    // Which.
    region: Region,
) -> Piece {
    let desk = Desk::get();
    let regions: Vec<Region> = desk.visit.with_untracked(|v| {
        v.and_then(|v| v.screen)
            .map_or(Vec::new(), |id| id.screen().oral.regions().collect())
    });
    let at = regions.iter().position(|r| *r == region).unwrap_or(0) + 1;
    let title = format!(
        "{} ({at} of {})",
        oral_items::region_title(region),
        regions.len()
    );
    let rows = Rows {
        opened: RwSignal::new(desk.visit.with_untracked(|v| {
            let oral = v.map(|v| &v.exam.oral);
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
    // What holds for every region is offered before the first and after the others.
    let first = region == Region::Face;
    // Whether the question at the top must be answered before something is settled.
    let first_said = RwSignal::new(false);
    // The gag waits until nothing is to be swallowed any more.
    let waits =
        follow(move || region == Region::Gag && desk.visit.with(|v| v.is_some_and(way::gag_waits)));
    frame(
        title.into(),
        overview_of(desk),
        all![
            first.then(|| all![
                weakness(),
                el("p.problem")
                    .attr("role", "alert")
                    .with(live(
                        move || (first_said.get() && unasked(desk)).then_some(SAY_FIRST)
                    )),
                safety()
            ]),
            para("advice", oral_items::region_care(region)),
            live(move || if waits.get() {
                el("section.found.caution")
                    .with(el("h2").with("Not yet"))
                    .with(el("p").with(NO_GAG_YET))
                    .with(rule_fold(&rules::GAG_NEVER_DECIDES))
                    .piece()
            } else {
                items(region, rows)
            }),
            foot(region, rows, first_said),
            (!first).then(safety),
            leave()
        ],
    )
}

/// The items, which are what is to be done, and their picture below them.
fn items(region: Region, rows: Rows) -> Piece {
    let groups = [
        (By::Eye, "Look and listen"),
        (By::Hand, "By hand: not tested until you did"),
        (By::Alone, "Each by itself: not tested until you did"),
    ];
    all![
        para(
            "hint",
            "Left and right are the patient's. Press a line that is not as expected."
        ),
        groups
            .into_iter()
            .filter(|(by, _)| region.items_by(*by).next().is_some())
            .map(|(by, heading)| all![
                el("h2").with(heading),
                el("ul.items.oral").with(
                    region
                        .items_by(by)
                        .map(|item| oral_item(item, rows))
                        .collect::<Piece>()
                )
            ])
            .collect::<Piece>(),
        oral_picture(region, rows),
        cue_used(region)
    ]
}

/// The question on weakness: its place on the page.
const FIRST: &str = "weakness";

/// What is said where it has no answer yet.
const SAY_FIRST: &str = "First answer whether anything is new or worse.";

fn unasked(desk: Desk) -> bool {
    desk.visit
        .with(|v| v.is_some_and(|v| !v.exam.gate.0.contains_key(WEAKNESS)))
}

/// New or worse, and not known: asked before anything else, an emergency where it is so.
pub(super) fn weakness() -> Piece {
    let desk = Desk::get();
    let given = follow(move || {
        desk.visit.with(|v| {
            // What was said before weakness was found is no answer to it.
            let v = v.filter(|v| unsaid(&v.exam).is_none())?;
            v.exam.gate.0.get(WEAKNESS).cloned()
        })
    });
    let mut answers = vec![(HOLDS.to_owned(), "No, nothing new or worse".to_owned())];
    let item = gate::find(WEAKNESS);
    answers.extend(item.into_iter().flat_map(|item| {
        let answer = |e| wording::gate::exception(item, e).to_owned();
        item.exceptions
            .iter()
            .map(move |e| (e.id.to_owned(), answer(e)))
    }));
    let pick = Callback::new(move |id: Option<String>| {
        desk.record([match id {
            Some(id) => Event::Gate(vec![(WEAKNESS.to_owned(), id)]),
            None => Event::GateCleared(WEAKNESS.to_owned()),
        }]);
        if desk.visit.with_untracked(|v| v.is_some_and(way::emergency)) {
            desk.turn(Page::GateResult);
        }
    });
    el("section")
        .attr("id", FIRST)
        .attr("tabindex", "-1")
        .with(choices(
            "Is any weakness, droop or speech problem new or worse?".into(),
            answers,
            given.into(),
            pick,
        ))
        .piece()
}

/// What touches one person only.
const ONE_PERSON: &str = "Gloves on. Depressor and cotton tip for this person only, then away.";

/// How the phone is touched.
const PHONE_CLEAN: &str = "The phone is touched with a clean hand, by a helper, or in a clear \
    bag, never with a used glove. Wipe it afterwards.";

/// What is seen to first.
const TEETH_FIRST: &str = "Loose teeth first: see to them before anything is pulled, bitten or \
    pressed.";

/// What holds for every region: in a line, and in full behind a press.
fn safety() -> El {
    let rules = [
        ONE_PERSON,
        PHONE_CLEAN,
        TEETH_FIRST,
        "Stop at pain, distress or a sign to stop.",
    ];
    folded("Gloves on. Phone clean. Stop at pain.")
        .with(el("ul.small").with(rules.map(|rule| el("li").with(rule))))
}

/// How the region was asked for.
fn cue_used(region: Region) -> Piece {
    let desk = Desk::get();
    one_of(
        "How was it asked for?".into(),
        worded(Cue::ALL, oral_answers::cue),
        move || desk.visit.with(|v| v.and_then(|v| v.exam.oral.cue(region))),
        move |cue| desk.record([Event::OralCue { region, cue }]),
    )
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
    let names: Vec<String> = items
        .iter()
        .map(|item| small(oral_items::name(item)))
        .collect();
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
        v.filter(|v| v.exam.oral.is_done(region))
            .map(|v| way::after_region(v, region))
    }) && !page::refused()
    {
        desk.turn(next);
    }
}

/// What settles the region, and what takes it back.
fn foot(region: Region, rows: Rows, first_said: RwSignal<bool>) -> Piece {
    let desk = Desk::get();
    let open = follow(move || {
        desk.visit.with(|v| {
            v.map_or(Vec::new(), |v| {
                region
                    .items()
                    .filter(|item| v.exam.oral.answer(item) == Answer::Open)
                    .map(|item| item.id)
                    .collect::<Vec<_>>()
            })
        })
    });
    let waits =
        region == Region::Gag && desk.visit.with_untracked(|v| v.is_some_and(way::gag_waits));
    let next = move || {
        if page::refused() {
            return;
        }
        if let Some(page) = desk
            .visit
            .with_untracked(|v| v.map(|v| way::after_region(v, region)))
        {
            desk.hold_still();
            desk.turn(page);
        }
    };
    // A line that was opened and says nothing yet may be otherwise: no press settles it with others.
    let unsaid = follow(move || {
        let opened = rows.opened.get();
        open.get().into_iter().find(|id| opened.contains(id))
    });
    let group = move || {
        let opened = rows.opened.get();
        let mut closed = open.get();
        closed.retain(|id| !opened.contains(id));
        to_settle(region, &closed)
    };
    let because = move |reason: Option<Reason>| {
        if let Some(reason) = reason {
            settle(desk, region, open.get_untracked(), &Seen::NotTested(reason));
        }
    };
    // What is left of the page, and why it is not tested.
    let rest = move |label: String| why_not(label, || None, because);
    let left = move || {
        let open = open.get();
        let items: Vec<&'static Item> = region
            .items()
            .filter(|item| open.contains(&item.id))
            .collect();
        format!("Not tested: {}. Because:", names(&items))
    };
    let newest = follow(move || {
        desk.visit
            .with(|v| v.map_or(Vec::new(), |v| v.exam.oral.newest_press().to_vec()))
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
    all![
        live(move || match group() {
            None if !open.get().is_empty() => Some(rest(left()).piece()),
            _ => None,
        }),
        el("div.foot.settle")
            .with(live(move || match group() {
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
                        let first = region == Region::Face && unasked(desk);
                        first_said.set(first);
                        if first {
                            page::focus_on(FIRST);
                        } else {
                            settle(desk, region, ids.clone(), &Seen::AsExpected);
                        }
                    };
                    big("primary", words, press_all)
                        .with(el("span").with(names))
                        .piece()
                }
                None => match unsaid.get() {
                    Some(id) => big("primary", "First say what you found", move |_| {
                        page::focus_on(id)
                    }),
                    None => big("primary", "Next", move |_| next()),
                }
                .piece(),
            }))
            .with(live(move || {
                let items = newest.get();
                items.first().and_then(|id| oral::find(id)).map(|first| {
                    let words = format!(
                        "Undo: {}, last {} settled",
                        oral_items::region_title(Region::of(first)),
                        items.len()
                    );
                    button("", words, undo)
                })
            })),
        live(move || {
            let settles = group().is_some();
            ((settles || unsaid.get().is_some()) && !waits).then(|| {
                folded("Leave the rest untested")
                    .with(settles.then(|| rest(left())))
                    .with(button("", "Next page, come back later", next))
            })
        })
    ]
}
