//! The gate: one page a group, one press where all of it holds.

use leptos::prelude::*;

use super::desk::Desk;
use super::holds::GoOnPast;
use super::live::{follow, live, press, said};
use super::parts::{Choices, Frame, overview_of};
use super::route::Page;
use super::steps;
use super::task::Leave;
use super::why::rule_fold;
use crate::clinical::exam::EndedEarly;
use crate::clinical::gate::{self, Exception, Group, HOLDS, Item, State};

use crate::clinical::oral::Region;
use crate::record::event::Event;
use crate::record::visit::Visit;

/// One group.
#[component]
pub(super) fn GatePage(
    /// Which.
    group: Group,
) -> impl IntoView {
    let desk = Desk::get();
    let at = Group::ALL.iter().position(|g| *g == group).unwrap_or(0) + 1;
    let items: Vec<&'static Item> = group.items().collect();
    let excepted = {
        let items = items.clone();
        move || {
            desk.visit.with(|v| {
                v.as_ref().map_or(0, |v| {
                    items
                        .iter()
                        .filter(|i| v.exam.gate.exception(i).is_some())
                        .count()
                })
            })
        }
    };
    let total = items.len();
    let settle = {
        let items = items.clone();
        move |_| {
            let settled = desk.visit.with_untracked(|v| {
                v.as_ref().map_or(Vec::new(), |v| {
                    items
                        .iter()
                        .filter(|i| v.exam.gate.exception(i).is_none())
                        .map(|i| (i.id.to_owned(), HOLDS.to_owned()))
                        .collect()
                })
            });
            if !settled.is_empty() {
                desk.record([Event::Gate(settled)]);
            }
            if let Some(next) = desk
                .visit
                .with_untracked(|v| v.as_ref().map(|v| steps::after_group(v, group)))
            {
                desk.turn(next);
            }
        }
    };
    let words = move || match total - excepted() {
        0 => "Go on".to_owned(),
        n if n == total => format!("All {n} hold"),
        1 => "The other one holds".to_owned(),
        n => format!("The other {n} hold"),
    };
    let title = format!("{} ({at} of {})", group.title(), Group::ALL.len());
    view! {
        <Frame title=title back=overview_of(desk)>
            <p class="hint">"Press a line that does not hold."</p>
            <ul class="items">
                {items.into_iter().map(|item| view! { <GateItem item=item/> }).collect_view()}
            </ul>
            <div class="foot">
                <button type="button" class="big primary" on:click=press(settle)><b>{live(words)}</b></button>
            </div>
            <Leave/>
        </Frame>
    }
}

/// One line of the gate, with its exceptions behind a press.
#[component]
fn GateItem(
    /// The item.
    item: &'static Item,
) -> impl IntoView {
    let desk = Desk::get();
    let exception = follow(move || {
        desk.visit
            .with(|v| v.as_ref().and_then(|v| v.exam.gate.exception(item)))
            .map(|e| e.id.to_owned())
    });
    let held = move || {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| v.exam.gate.0.get(item.id))
                .is_some_and(|a| a == HOLDS)
        })
    };
    let open = RwSignal::new(exception.get_untracked().is_some());
    let pick = Callback::new(move |id: Option<String>| {
        desk.record([match id {
            Some(id) => Event::Gate(vec![(item.id.to_owned(), id)]),
            None => Event::GateCleared(item.id.to_owned()),
        }]);
        // An emergency waits for no other question.
        if desk
            .visit
            .with_untracked(|v| v.as_ref().is_some_and(steps::emergency))
        {
            desk.turn(Page::GateResult);
        }
    });
    let class = move || {
        if exception.get().is_some() {
            "item excepted"
        } else if held() {
            "item held"
        } else {
            "item"
        }
    };
    let advice = move || {
        item.exceptions
            .iter()
            .find(|e| exception.get().as_deref() == Some(e.id))
            .map(|e| {
                desk.visit.with(|v| {
                    v.as_ref()
                        .map_or(String::new(), |v| gate::advice(item, e, &v.exam.policy))
                })
            })
            .filter(|a| !a.is_empty())
    };
    view! {
        <li class=class>
            <button
                type="button"
                class="line"
                aria-expanded=said(move || open.get().to_string())
                on:click=press(move |_| open.update(|o| *o = !*o))
            >
                <span>{item.holds}</span>
                {live(move || held().then(|| view! { <span class="tick">"holds"</span> }))}
            </button>
            {live(move || open.get().then(|| view! {
                <div class="exceptions">
                    <Choices
                        label="What is the case?"
                        options=item.exceptions.iter().map(|e| (e.id.to_owned(), e.words.to_owned())).collect()
                        chosen=exception
                        pick=pick
                    />
                    {live(move || advice().map(|a| view! { <p class="advice">{a}</p> }))}
                    {rule_fold(item.rule)}
                </div>
            }))}
        </li>
    }
}

/// Whether the visit's screen has a gate; others ask of new weakness where the examination begins.
fn has_gate(visit: &Visit) -> bool {
    visit.screen.is_none_or(|id| id.screen().gate)
}

/// What the gate found, where it found something.
#[component]
pub(super) fn GateResultPage() -> impl IntoView {
    let desk = Desk::get();
    let back = overview_of(desk);
    view! {
        <Frame title="Before you start" back=back>
            <GateFindings/>
        </Frame>
    }
}

#[component]
fn GateFindings() -> impl IntoView {
    let desk = Desk::get();
    let found = move |wanted: State| {
        desk.visit.with(|v| {
            v.as_ref().map_or(Vec::new(), |v| {
                v.exam
                    .gate
                    .exceptions(&v.exam.policy)
                    .filter(|(_, _, state)| *state == wanted)
                    .map(|(item, exception, _)| {
                        (
                            item,
                            exception,
                            gate::advice(item, exception, &v.exam.policy),
                        )
                    })
                    .collect()
            })
        })
    };
    let list = move |state: State, heading: &'static str, class: &'static str| {
        move || {
            let found = found(state);
            (!found.is_empty()).then(|| {
                view! {
                    <section class=class>
                        <h2>{heading}</h2>
                        <ul>
                            {found.into_iter().map(|(item, exception, advice)| view! {
                                <li>
                                    <p><b>{exception.words}</b></p>
                                    {(!advice.is_empty()).then(|| view! { <p>{advice}</p> })}
                                    <Answered item=item exception=exception/>
                                    {rule_fold(item.rule)}
                                </li>
                            }).collect_view()}
                        </ul>
                    </section>
                }
            })
        }
    };
    let emergency = move || {
        desk.visit
            .with(|v| v.as_ref().is_some_and(steps::emergency))
    };
    let end = move |why: EndedEarly| {
        desk.record([Event::EndedEarly(why)]);
        desk.turn(Page::Decision);
    };
    // Blocks that nobody took on, and readings of the breathing that hold up the water.
    let closed = move || {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| crate::clinical::assess::gate_closed(&v.exam))
        })
    };
    let go_on = move |_| {
        if let Some(page) = desk.visit.with_untracked(|v| v.as_ref().map(steps::next)) {
            desk.turn(page);
        }
    };
    view! {
        {live(move || emergency().then(|| view! {
            <section class="verdict stop" role="alert">
                <p class="word">"Emergency"</p>
                <p>"New or worse, and the team does not know: use your local emergency procedure now."</p>
            </section>
            <super::parts::WordsField
                id="last-well"
                label="When was the person last well?"
                value=desk.visit.with_untracked(|v| v.as_ref().map(|v| v.last_well.clone()).unwrap_or_default())
                most=60
                take=Callback::new(move |words| desk.record([Event::LastWell(words)]))
            />
        }))}
        {list(State::Emergency, "What was answered", "found block")}
        {list(State::Block, "Do not start", "found block")}
        {live(move || {
            let readings = desk.visit.with(|v| v.as_ref().map_or(Vec::new(), |v| {
                crate::clinical::tasks::breathing::blocks(&v.exam)
                    .into_iter()
                    .filter(|b| b.closes())
                    .collect::<Vec<_>>()
            }));
            (!readings.is_empty()).then(|| view! {
                <section class="found block">
                    <h2>"Breathing: do not start"</h2>
                    <p>"Use your local procedure for deterioration."</p>
                    <ul>{readings.into_iter().map(|block| {
                        let item = super::why::flag_item(&block.flag);
                        view! { {item}<GoOnPast id=block.hold says=block.flag.reason().to_owned() go_on=block.go_on/> }
                    }).collect_view()}</ul>
                </section>
            })
        })}
        {list(State::Fix, "Put right first, then ask again", "found fix")}
        {list(State::Caution, "With care: you decide", "found caution")}
        <div class="foot">
            {live(move || match (emergency(), closed()) {
                (true, _) => view! {
                    <button type="button" class="big primary" on:click=press(move |_| end(EndedEarly::Emergency))>
                        <b>"Emergency: end the screen"</b>
                    </button>
                }.into_any(),
                (false, Some(_)) => view! {
                    <button type="button" class="big primary" on:click=press(move |_| end(EndedEarly::GateClosed))>
                        <b>"End: screen not done"</b>
                    </button>
                }.into_any(),
                // What is to be put right comes first: its own button asks again.
                (false, None) => view! {
                    <button
                        type="button"
                        class=if found(State::Fix).is_empty() { "big primary" } else { "big" }
                        on:click=press(go_on)
                    >
                        <b>"Go on"</b>
                    </button>
                }.into_any(),
            })}
        </div>
    }
}

/// "Ask again" for an exception, and what was said to go on past it.
#[component]
fn Answered(
    /// The item.
    item: &'static Item,
    /// The exception picked.
    exception: &'static Exception,
) -> impl IntoView {
    let desk = Desk::get();
    let on = move || {
        desk.visit.with(|v| {
            v.as_ref().and_then(|v| {
                v.exam
                    .went_on(&gate::hold_id(item, exception), gate::go_on(item))
                    .cloned()
            })
        })
    };
    let ask_again = move || {
        let gate = desk
            .visit
            .with_untracked(|v| v.as_ref().is_some_and(has_gate));
        if gate {
            Page::Gate(item.group)
        } else {
            Page::Oral(Region::Face)
        }
    };
    view! {
        {live(move || on().map(|on| view! {
            <p class="advice">{format!("Going on ({}): {}", on.by.words(), on.because)}</p>
        }))}
        <button type="button" on:click=press(move |_| desk.turn(ask_again()))>"Ask again"</button>
        {live(move || {
            let blocked = desk.visit.with(|v| v.as_ref().is_some_and(|v| {
                gate::state_of(item, exception, &v.exam.policy) == State::Block
            }));
            (blocked && on().is_none()).then(|| view! {
                <GoOnPast id=gate::hold_id(item, exception) says=exception.words.to_owned() go_on=gate::go_on(item)/>
            })
        })}
    }
}
