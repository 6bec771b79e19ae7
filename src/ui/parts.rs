//! Small parts that every page is built of.

use leptos::ev;
use leptos::ev::MouseEvent;
use leptos::prelude::*;

use super::desk::Desk;
use super::follow::follow;
use super::keeper::Saved;
use super::route::{Page, Route};
use crate::browser::{clock, page};
use crate::clinical::tasks::spec::{NumberError, parse_tenths};
use crate::draw::{Drawn, El, Piece, Said, all, el, live, said, when};
use crate::measure::decimals::decimals;
use crate::record::event::Event;
use crate::record::visit::Visit;
use crate::wording::number::problem;
use crate::wording::words::capital;

/// The frame of a page: where "back" leads, title, whether it is saved, and the page below.
pub(super) fn frame(title: Said, back: Route, page: Piece) -> Piece {
    framed(title, back, "", page)
}

/// The frame of a page at whose lower edge a pad stands.
pub(super) fn frame_with_pad(title: Said, back: Route, page: Piece) -> Piece {
    framed(title, back, "with-pad", page)
}

fn framed(title: Said, back: Route, class: &'static str, page: Piece) -> Piece {
    let desk = Desk::get();
    // Followed, so that a tap on the pad does not draw it anew.
    let label = follow(move || whose(desk));
    all![
        el("header.top")
            .with(
                el("button.back")
                    .press(move |_| desk.go(back.clone()))
                    .with(el("span").attr("aria-hidden", "true").with("\u{2039}"))
                    .with(el("span.for-reader").with("Back"))
            )
            .with(
                el("div.title")
                    .with(el("h1").attr("tabindex", "-1").with(title))
                    .with(
                        el("div.under")
                            .with(el("p").with(live(move || label.get())))
                            .with(saved_mark())
                    )
            ),
        el("main")
            .class(class)
            .class_if("still", move || desk.still.get())
            .with(page)
    ]
}

/// Whose page it is, on every page of a visit but the one that has it as its title.
fn whose(desk: Desk) -> Option<String> {
    match desk.route.get() {
        Route::Visit(_, page) if page != Page::Overview => {
            desk.visit.with(|v| v.map(|v| v.label()))
        }
        _ => None,
    }
}

/// Choking can come at any time, and again: the way to its page is on every page of a visit. While
/// one is not over the strip above the page leads there.
pub(super) fn choking_button() -> Piece {
    let desk = Desk::get();
    let open = move |_| {
        desk.record([Event::Choking(clock::now())]);
        // A second touch must not say that help was called.
        desk.hold_still();
        desk.turn(Page::Choking);
    };
    when(
        move || !desk.visit.with(|v| v.is_some_and(Visit::is_choking)),
        move || el("button.grave").press(open).with("Choking"),
    )
}

/// Whether everything is saved. Says "saved" only after the store confirmed.
fn saved_mark() -> Piece {
    let desk = Desk::get();
    let words = move || match desk.saved.get() {
        Saved::Yes => "Saved",
        Saved::Saving => "Saving",
        Saved::Failed(_) => "Not saved",
    };
    let class = move || match desk.saved.get() {
        Saved::Failed(_) => "saved failed",
        _ => "saved",
    };
    let shown = move || desk.visit.with(|v| v.is_some());
    el("p")
        .class(said(class))
        .with(live(move || shown().then(words)))
        .piece()
}

/// The way out of a visit that any page offers: its overview.
pub(super) fn overview_of(desk: Desk) -> Route {
    desk.visit.with_untracked(|v| {
        v.filter(|v| !v.is_loose())
            .map_or(Route::Home, |v| Route::Visit(v.id.clone(), Page::Overview))
    })
}

/// A plain button. One place draws all of them: each drawn by itself costs the app 1 to 2 KB.
pub(super) fn button(
    class: &'static str,
    words: impl Into<String>,
    on: impl FnMut() + 'static,
) -> Piece {
    boxed_button(class, words.into(), Box::new(on))
}

fn boxed_button(class: &'static str, words: String, mut on: Box<dyn FnMut()>) -> Piece {
    el("button")
        .class(class)
        .press(move |_| on())
        .with(words)
        .piece()
}

/// A large button, the way on of its page. More can stand below its words.
pub(super) fn big(
    more_classes: &'static str,
    words: impl Into<Piece>,
    on: impl FnMut(MouseEvent) + 'static,
) -> El {
    let class = if more_classes.is_empty() {
        "big".to_owned()
    } else {
        format!("big {more_classes}")
    };
    el("button")
        .class(class)
        .press(on)
        .with(el("b").with(words))
}

/// A paragraph; nothing where there are no words.
pub(super) fn para(class: &'static str, words: impl Into<String>) -> Piece {
    let words: String = words.into();
    if words.is_empty() {
        ().piece()
    } else {
        el("p").class(class).with(words).piece()
    }
}

/// What stands behind a press on its words.
pub(super) fn folded(words: impl Into<Piece>) -> El {
    el("details.more").with(el("summary").with(words))
}

/// What went wrong, in words that are read at once; nothing while it is empty.
pub(super) fn problem_line(problem: RwSignal<String>) -> El {
    el("p.problem")
        .attr("role", "alert")
        .with(live(move || problem.get()))
}

/// A row of choices of which one is pressed: real radio behaviour by pressed buttons.
pub(super) fn choices(
    // What is asked.
    label: String,
    // Ids and words.
    options: Vec<(String, String)>,
    // The id chosen, if one is.
    chosen: Signal<Option<String>>,
    // Called with the id pressed; pressing the chosen one again takes it back.
    pick: Callback<Option<String>>,
) -> Piece {
    let buttons = options
        .into_iter()
        .map(|(id, words)| {
            let mine = id.clone();
            let on = Signal::derive(move || chosen.get().as_deref() == Some(mine.as_str()));
            let choose = move |_| {
                pick.run((!on.get_untracked()).then(|| id.clone()));
            };
            el("button.choice")
                .attr("aria-pressed", said(move || on.get().to_string()))
                .press(choose)
                .with(words)
        })
        .collect::<Piece>();
    el("div.choices")
        .attr("role", "group")
        .attr("aria-label", label.clone())
        .with(el("p.ask").with(label.clone()))
        .with(el("div.row").with(buttons))
        .piece()
}

/// A row of choices of values of one kind, each known by its place among them.
pub(super) fn one_of<T: Copy + PartialEq + Send + Sync + 'static>(
    // What is asked.
    label: &str,
    // What there is to choose from.
    all: &'static [T],
    // Each in words.
    words: fn(T) -> &'static str,
    // The one chosen, if one is.
    chosen: Signal<Option<T>>,
    // Called with the one pressed; pressing the chosen one again takes it back.
    pick: Callback<Option<T>>,
) -> Piece {
    let options = all.iter().enumerate();
    let options = options.map(|(at, one)| (at.to_string(), capital(words(*one))));
    let place = move |one: T| all.iter().position(|other| *other == one);
    let at = move |place: &str| all.get(place.parse::<usize>().ok()?).copied();
    choices(
        label.to_owned(),
        options.collect(),
        Signal::derive(move || Some(place(chosen.get()?)?.to_string())),
        Callback::new(move |place: Option<String>| {
            pick.run(place.as_deref().and_then(at));
        }),
    )
}

/// A number that is asked for.
#[derive(Clone, Copy)]
pub(super) struct Number {
    /// Id of its field, unique on the page.
    pub(super) id: &'static str,
    /// What is asked.
    pub(super) label: &'static str,
    /// The unit, in words.
    pub(super) unit: &'static str,
    /// Least and most, in the unit.
    pub(super) range: (i32, i32),
    /// The buttons beside it.
    pub(super) steps: Steps,
}

/// Buttons that change a number, in tenths of its unit.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Steps {
    /// None: it is only typed, as a stray press must not make a reading.
    None,
    /// Less and more.
    By(i32),
    /// A pair below the field and a coarser pair around it.
    Fine(i32, i32),
}

/// A number with its buttons: typed or pressed, with a message beside the field.
///
/// `value` is what the record has, and `take` is called with a number that was taken or with none
/// for an empty field, in tenths of the unit.
pub(super) fn number_field(
    asked: Number,
    value: Signal<Option<i32>>,
    take: Callback<Option<i32>>,
) -> Piece {
    let Number {
        id,
        label,
        unit,
        range: (least, most),
        steps,
    } = asked;
    // What is typed stays in the field, taken or not: nothing typed is lost to a message.
    let typed = RwSignal::new(value.get_untracked().map(shown).unwrap_or_default());
    let message = RwSignal::new(String::new());
    let before = StoredValue::new(None);
    // An answer elsewhere may take the place of this one: then nothing stands here any more.
    let stands = move || {
        let typed = typed.get();
        if message.get().is_empty() && value.get().is_none() {
            String::new()
        } else {
            typed
        }
    };
    let read = move |text: String| {
        typed.set(text.clone());
        if text.trim().is_empty() {
            message.set(String::new());
            // What was never taken is not taken back: another answer may stand by now.
            if value.get_untracked().is_some() {
                take.run(None);
            }
            return;
        }
        match parse_tenths(&text, least, most) {
            Ok(tenths) => {
                message.set(String::new());
                take.run(Some(tenths));
            }
            Err(error) => {
                message.set(problem(&error, unit));
                // "25" on the way to "250" was never meant: what stood before the typing does.
                let was = before.get_value();
                let on_the_way = value
                    .get_untracked()
                    .filter(|taken| was != Some(*taken))
                    .is_some_and(|taken| text.trim().starts_with(&shown(taken)));
                if matches!(error, NumberError::OutOfRange { .. }) && on_the_way {
                    take.run(was);
                }
            }
        }
    };
    let nudge = move |by: i32| {
        let now = value.get_untracked();
        let next = match now {
            Some(tenths) => tenths + by,
            // The first press lands on the nearer end, from which one steps inwards.
            None if by > 0 => by,
            None => most * 10,
        };
        read(shown(next.clamp(least * 10, most * 10)));
    };
    let (beside, below) = match steps {
        Steps::None => (None, None),
        Steps::By(step) => (Some(step), None),
        Steps::Fine(step, coarse) => (None, Some([-coarse, -step, step, coarse])),
    };
    let problem = format!("{id}-problem");
    let described = problem.clone();
    el("div.number")
        .with(el("label").attr("for", id).with(label))
        .with(
            el("div.stepper")
                .class_if("typed", move || beside.is_none())
                .with(beside.map(|step| {
                    el("button")
                        .attr("aria-label", format!("{label}: less"))
                        .press(move |_| nudge(-step))
                        .with("\u{2212}")
                }))
                .with(
                    el("input")
                        .attr("id", id)
                        .attr("type", "text")
                        .attr("inputmode", "decimal")
                        .attr("autocomplete", "off")
                        .attr("maxlength", "20")
                        .held(said(stands))
                        .attr("aria-describedby", described)
                        .attr(
                            "aria-invalid",
                            said(move || (!message.get().is_empty()).to_string()),
                        )
                        .on("focus", move |_: ev::FocusEvent| {
                            before.set_value(value.get_untracked());
                        })
                        .on("input", move |event: ev::Event| {
                            read(event_target_value(&event))
                        }),
                )
                .with(el("span.unit").with(unit))
                .with(beside.map(|step| {
                    el("button")
                        .attr("aria-label", format!("{label}: more"))
                        .press(move |_| nudge(step))
                        .with("+")
                })),
        )
        .with(below.map(|steps| {
            el("div.row.steps-of").with(steps.map(|by| {
                el("button")
                    .press(move |_| nudge(by))
                    .with(if by < 0 { "\u{2212}" } else { "+" })
                    .with(shown(by.abs()))
            }))
        }))
        .with(problem_line(message).attr("id", problem))
        .with(when(
            move || !message.get().is_empty(),
            move || {
                button("", "Clear this number", move || {
                    read(String::new());
                    page::focus_on(id);
                })
            },
        ))
        .piece()
}

/// Tenths as they are typed: "15" or "15.5".
fn shown(tenths: i32) -> String {
    if tenths % 10 == 0 {
        (tenths / 10).to_string()
    } else {
        decimals(f64::from(tenths) / 10.0, 1)
    }
}

/// A line of free words that is kept as it is typed.
pub(super) fn words_field(
    // Id of the field, unique on the page.
    id: &'static str,
    // What is asked.
    label: &'static str,
    // What the record holds.
    value: Said,
    // Most characters.
    most: u32,
    // Called when the field is left, with what it holds.
    take: Callback<String>,
) -> Piece {
    el("div.words")
        .with(el("label").attr("for", id).with(label))
        .with(
            el("input")
                .attr("id", id)
                .attr("type", "text")
                .attr("autocomplete", "off")
                .attr("maxlength", most.to_string())
                .held(value)
                .on("change", move |event: ev::Event| {
                    // Without effect where its page is gone already.
                    let _ = take.try_run(event_target_value(&event));
                }),
        )
        .piece()
}
