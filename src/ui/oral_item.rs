//! One item of the examination: what to ask, and what is not as expected.

use leptos::prelude::*;

use super::desk::Desk;
use super::follow::{Follow, follow};
use super::oral_rows::{Rows, answer_of, one_of, why_not, worded};
use super::parts::{Number, Steps, button, number_field, para, problem_line};
use super::route::Page;
use super::why::rule_fold;
use crate::clinical::findings::oral::FrontTeeth;
use crate::clinical::findings::oral::answer::{FLOW, OPENING, OPENING_ODD};
use crate::clinical::findings::oral::{Answer, Found, FoundId, Seen, Severity, Sides, Touches};
use crate::clinical::knowledge::oral::{Exception, Item, Sided, Takes};
use crate::draw::{Drawn, Piece, all, el, live, said};
use crate::measure::decimals::short;
use crate::record::event::Event;
use crate::wording::found as wording;
use crate::wording::oral_answers;
use crate::wording::oral_items;
use crate::wording::words::capital;

/// Records an item's answer.
fn put(desk: Desk, item: &'static Item, seen: Seen) {
    desk.record([Event::Oral(vec![(item.id.to_owned(), seen)])]);
}

/// Takes it back.
fn clear(desk: Desk, item: &'static Item) {
    desk.record([Event::OralTakenBack(vec![item.id.to_owned()])]);
}

/// Records exceptions; none left takes the answer back.
fn put_found(desk: Desk, item: &'static Item, found: Vec<FoundId>) {
    if found.is_empty() {
        clear(desk, item);
    } else {
        put(desk, item, Seen::Found(found));
    }
}

fn stored(answer: &Answer) -> Vec<FoundId> {
    answer.found().iter().map(Found::store).collect()
}

/// Where an item stands, in a few words.
fn state(answer: &Answer) -> String {
    match answer {
        Answer::Open => String::new(),
        Answer::AsExpected => "as expected".to_owned(),
        Answer::Found(found) => {
            let words: Vec<String> = found.iter().map(wording::words).collect();
            words.join("; ")
        }
        Answer::NotTested(reason) => format!("not tested: {}", oral_answers::reason(*reason)),
        Answer::Opening(mm, _) => format!("{} millimetres", short(mm.get())),
        Answer::Flow(flow) => format!("{} litres a minute", short(flow.get())),
        Answer::Touched { left, right } => {
            let side = |touches: &Touches, side| {
                wording::touches(*touches)
                    .map_or_else(|| format!("{side} not tested"), |w| format!("{side} {w}"))
            };
            format!("{}; {}", side(left, "left"), side(right, "right"))
        }
    }
}

/// One line, with everything else behind a press.
pub(super) fn oral_item(
    // The item.
    item: &'static Item,
    // What the page shares.
    rows: Rows,
) -> Piece {
    let desk = Desk::get();
    let answer = follow(move || answer_of(desk, item));
    let open = follow(move || rows.opened.with(|o| o.contains(&item.id)));
    let toggle = move |_| {
        rows.opened.update(|o| {
            if o.contains(&item.id) {
                o.retain(|id| *id != item.id);
            } else {
                o.push(item.id);
            }
        });
    };
    let class = move || match answer.get() {
        Answer::Open => "item",
        a if a.is_as_expected() => "item held",
        Answer::NotTested(_) => "item",
        _ => "item excepted",
    };
    el("li")
        .class(said(class))
        .with(
            el("button.line")
                .attr("id", item.id)
                .attr("aria-expanded", said(move || open.get().to_string()))
                .press(toggle)
                .with(el("span").with(el("b").with(oral_items::name(item))).with(
                    (!oral_items::ask(item).is_empty()).then(|| {
                        el("span.asked")
                            .with("\u{201C}")
                            .with(oral_items::ask(item))
                            .with("\u{201D}")
                    }),
                ))
                .with(el("span.tick").with(live(move || state(&answer.get())))),
        )
        .with(live(move || open.get().then(|| inside(item, rows, answer))))
        .piece()
}

fn inside(item: &'static Item, rows: Rows, answer: Follow<Answer>) -> Piece {
    let desk = Desk::get();
    let problem = RwSignal::new(String::new());
    // What can be as expected by one press.
    let plain = matches!(item.takes, Takes::Look | Takes::Touches);
    let reason = move || match answer.get() {
        Answer::NotTested(reason) => Some(reason),
        _ => None,
    };
    let nerve = match oral_items::nerve_number(item.nerve) {
        "" => "No cranial nerve of its own".to_owned(),
        number => format!("Cranial nerve {number}"),
    };
    el("div.exceptions")
        .with(para("small", oral_items::look(item)))
        .with(para("small", nerve))
        .with(para("advice", oral_items::care(item)))
        .with((!item.exceptions.is_empty()).then(|| exceptions(desk, item, rows, answer, problem)))
        .with(problem_line(problem))
        .with(match item.takes {
            Takes::Look => ().piece(),
            Takes::Touches => touches(desk, item, answer),
            Takes::Millimetres | Takes::Flow => number(desk, item, answer),
        })
        .with(
            el("div.row.apart")
                .with(plain.then(|| {
                    button("choice", "As expected", move || {
                        put(desk, item, Seen::AsExpected)
                    })
                }))
                .with(live(move || {
                    matches!(answer.get(), Answer::Touched { .. })
                        .then(|| button("", "Undo last touch", move || undo_touch(desk, item)))
                }))
                .with(live(move || {
                    (answer.get() != Answer::Open)
                        .then(|| button("", "Clear", move || clear(desk, item)))
                }))
                .with((!oral_items::ask(item).is_empty()).then(|| {
                    button("", "Show to patient", move || {
                        desk.turn(Page::OralShow(item.id))
                    })
                })),
        )
        .with(why_not(
            "Not tested, because".into(),
            reason,
            move |reason| match reason {
                Some(reason) => put(desk, item, Seen::NotTested(reason)),
                None => clear(desk, item),
            },
        ))
        .with(item.rule.map(rule_fold))
        .piece()
}

/// The exceptions, several of which may be the case; below each its side and its severity.
fn exceptions(
    desk: Desk,
    item: &'static Item,
    rows: Rows,
    answer: Follow<Answer>,
    problem: RwSignal<String>,
) -> Piece {
    let has = move |id: &str| answer.get().found().iter().any(|f| f.exception().id == id);
    let toggle = move |exception: &'static Exception| {
        let now = answer.get_untracked();
        if let Answer::NotTested(reason) = &now {
            let marked = format!(
                "Marked as not tested ({}). Press again to record this instead.",
                oral_answers::reason(*reason)
            );
            // What was marked is not overwritten by a stray press.
            if problem.with_untracked(|p| *p != marked) {
                problem.set(marked);
                return;
            }
        }
        problem.set(String::new());
        let mut found = stored(&now);
        let before = found.len();
        found.retain(|f| f.what != exception.id);
        if found.len() == before {
            let picked = rows.picked.get_untracked().filter(|(id, _)| *id == item.id);
            let mut side = picked.map(|(_, side)| Sides::from(side));
            // What can't have a side is kept without the one that was picked.
            if let Err(why) = Found::new(item, exception, side, None) {
                problem.set(format!("{why} Kept without one."));
                side = None;
            }
            found.push(FoundId {
                what: exception.id.to_owned(),
                side,
                severity: None,
            });
        }
        put_found(desk, item, found);
    };
    // Which are the case; their sides and severities are followed by themselves.
    let cases = follow(move || {
        answer
            .get()
            .found()
            .iter()
            .map(|f| f.exception().id)
            .collect::<Vec<_>>()
    });
    all![
        el("div.choices")
            .attr("role", "group")
            .attr("aria-label", "What is the case?")
            .with(el("p.ask").with("What is the case?"))
            .with(
                el("div.row").with(
                    item.exceptions
                        .iter()
                        .map(|exception| el("button.choice")
                            .attr("aria-pressed", said(move || has(exception.id).to_string()))
                            .press(move |_| toggle(exception))
                            .with(capital(oral_items::exception(item, exception))))
                        .collect::<Piece>()
                )
            ),
        live(move || cases
            .get()
            .into_iter()
            .filter_map(|id| item.exception(id))
            .map(|exception| all![
                (exception.side != Sided::No).then(|| part(
                    desk,
                    item,
                    exception,
                    answer,
                    "which side?",
                    worded(
                        Sides::ALL
                            .into_iter()
                            .filter(|s| exception.side == Sided::On || *s != Sides::Both),
                        oral_answers::sides
                    ),
                    |f| f.side,
                    |f, side| f.side = side,
                )),
                exception.graded.then(|| part(
                    desk,
                    item,
                    exception,
                    answer,
                    "how much?",
                    worded(Severity::ALL, oral_answers::severity),
                    |f| f.severity,
                    |f, severity| f.severity = severity,
                ))
            ])
            .collect::<Piece>())
    ]
}

/// The side or the severity of an exception.
#[allow(clippy::too_many_arguments)]
fn part<T: Copy + PartialEq + Send + Sync + 'static>(
    desk: Desk,
    item: &'static Item,
    exception: &'static Exception,
    answer: Follow<Answer>,
    asks: &'static str,
    offered: Vec<(T, &'static str)>,
    read: fn(&FoundId) -> Option<T>,
    write: fn(&mut FoundId, Option<T>),
) -> Piece {
    let chosen = move || {
        let found = stored(&answer.get());
        found.iter().find(|f| f.what == exception.id).and_then(read)
    };
    let pick = move |value: Option<T>| {
        let mut found = stored(&answer.get_untracked());
        if let Some(one) = found.iter_mut().find(|f| f.what == exception.id) {
            write(one, value);
        }
        put_found(desk, item, found);
    };
    one_of(
        format!(
            "{}: {asks}",
            capital(oral_items::exception(item, exception))
        ),
        offered,
        chosen,
        pick,
    )
}

/// Takes the newest touch back; the first of them takes the answer back.
fn undo_touch(desk: Desk, item: &'static Item) {
    let before = desk.visit.with_untracked(|v| {
        let v = v?;
        v.exam.oral.before_touch(item).cloned()
    });
    match before {
        Some(seen) => put(desk, item, seen),
        None => clear(desk, item),
    }
}

/// Counts touches, left and right.
fn touches(desk: Desk, item: &'static Item, answer: Follow<Answer>) -> Piece {
    let sides = move || match answer.get() {
        Answer::Touched { left, right } => [right, left],
        _ => <[Touches; 2]>::default(),
    };
    let count = move |side: usize, felt: usize| {
        let mut both = match answer.get_untracked() {
            Answer::Touched { left, right } => [right, left],
            _ => <[Touches; 2]>::default(),
        };
        if let Some(t) = both.get_mut(side) {
            let n = match felt {
                0 => &mut t.felt,
                1 => &mut t.less,
                _ => &mut t.missed,
            };
            *n = n.saturating_add(1);
        }
        let [right, left] = both;
        put(desk, item, Seen::Touched { left, right });
    };
    let rows = [Sides::Right, Sides::Left]
        .into_iter()
        .enumerate()
        .map(|(at, side)| {
            let words = move || {
                let counted = sides().get(at).and_then(|t| wording::touches(*t));
                format!(
                    "{}: {}",
                    oral_answers::sides(side),
                    counted.unwrap_or_else(|| "no touch yet".to_owned())
                )
            };
            el("div.choices")
                .attr("role", "group")
                .attr("aria-label", oral_answers::sides(side))
                .with(el("p.ask").attr("role", "status").with(live(words)))
                .with(
                    el("div.row").with(
                        ["Felt", "Felt less", "Not felt"]
                            .into_iter()
                            .enumerate()
                            .map(|(felt, words)| button("choice", words, move || count(at, felt)))
                            .collect::<Piece>(),
                    ),
                )
        })
        .collect::<Piece>();
    all![para("small", "One press for each touch."), rows]
}

/// A measured number.
fn number(desk: Desk, item: &'static Item, answer: Follow<Answer>) -> Piece {
    let opening = item.takes == Takes::Millimetres;
    let seen = move || {
        desk.visit
            .with(|v| match v.and_then(|v| v.exam.oral.seen(item)) {
                Some(Seen::Measured {
                    tenths,
                    front_teeth,
                }) => (*tenths, *front_teeth),
                _ => (None, None),
            })
    };
    let keep = move |tenths: Option<i32>, front_teeth: Option<bool>| {
        if tenths.is_none() && front_teeth.is_none() {
            clear(desk, item);
        } else {
            put(
                desk,
                item,
                Seen::Measured {
                    tenths,
                    front_teeth,
                },
            );
        }
    };
    let (id, label, unit, range) = if opening {
        ("opening", "Mouth opening", "mm", OPENING)
    } else {
        ("flow", "Peak cough flow", "L/min", FLOW)
    };
    let teeth = vec![(true, "upper and lower front teeth"), (false, "not both")];
    all![
        number_field(
            Number {
                id,
                label,
                unit,
                range,
                steps: Steps::None,
            },
            Signal::derive(move || seen().0),
            Callback::new(move |tenths: Option<i32>| keep(tenths, untrack(seen).1))
        ),
        live(move || para(
            "advice",
            if seen().0.is_some_and(|t| opening && t < OPENING_ODD) {
                "Very narrow. Read again: millimetres, edge to edge of the front teeth."
            } else {
                ""
            }
        )),
        opening.then(|| one_of(
            "Measured between".into(),
            teeth,
            move || seen().1,
            move |both| keep(untrack(seen).0, both)
        )),
        live(move || para(
            "small",
            match answer.get() {
                Answer::Opening(_, FrontTeeth::NotLooked) => {
                    "Say between what it was measured, or it is not judged."
                }
                _ => "",
            }
        ))
    ]
}
