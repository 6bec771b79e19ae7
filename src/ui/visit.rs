//! A visit at a glance: what there is, what is missing, and every way on.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::banner::file_name;
use super::decision::look_of;
use super::desk::Desk;
use super::details::{DetailsFields, Form};
use super::live::{follow, live, press};
use super::order::SyllableOrder;
use super::parts::{Frame, WordsField};
use super::route::{Page, Route};
use super::steps;
use super::task::Leave;
use crate::browser::{clock, ids, share};
use crate::clinical::figures::lines;
use crate::clinical::gate::Group;
use crate::clinical::oral::{Answer, Region};
use crate::clinical::task::TaskId;
use crate::clinical::tasks::{self, six_signs};
use crate::record::envelope::{Envelope, SCHEMA, body};
use crate::record::event::Event;
use crate::record::export;
use crate::record::head::Head;
use crate::record::visit::Visit;

/// The page.
#[component]
pub(super) fn OverviewPage() -> impl IntoView {
    let desk = Desk::get();
    let title = Signal::derive(move || {
        desk.visit
            .with(|v| v.as_ref().map_or(String::new(), |v| v.label()))
    });
    let deleted = follow(move || desk.visit.with(|v| v.as_ref().is_some_and(|v| v.deleted)));
    view! {
        <Frame title=title back=Route::Home>
            {live(move || if deleted.get() {
                view! { <p>"This visit was deleted."</p> }.into_any()
            } else {
                view! { <Whole/> }.into_any()
            })}
        </Frame>
    }
}

#[component]
fn Whole() -> impl IntoView {
    let desk = Desk::get();
    let next = follow(move || {
        desk.visit
            .with(|v| v.as_ref().map_or(Page::Overview, steps::next))
    });
    let verdict = move || {
        desk.visit
            .with(|v| {
                v.as_ref()
                    .filter(|v| v.decided.is_some())
                    .and_then(|v| v.decision())
            })
            .map(|d| d.verdict)
    };
    view! {
        {live(move || verdict().map(|v| {
            let (class, shape) = look_of(v);
            view! {
                <section class=class>
                    <p class="word"><span aria-hidden="true">{shape}" "</span>{v.headline()}</p>
                </section>
            }
        }))}
        {live(move || (next.get() != Page::Overview).then(|| view! {
            <button type="button" class="big primary" on:click=press(move |_| desk.turn(next.get_untracked()))>
                <b>{if next.get() == Page::Decision { "Decision" } else { "Go on" }}</b>
            </button>
        }))}
        <Steps/>
        <SyllableOrder/>
        <Beside/>
        <CloseOut/>
        <Person/>
        <Leave/>
        <Keep/>
    }
}

/// The screen's steps, each a way in.
#[component]
fn Steps() -> impl IntoView {
    let desk = Desk::get();
    let groups = move || {
        desk.visit.with(|v| {
            v.as_ref().map_or(Vec::new(), |v| {
                Group::ALL
                    .into_iter()
                    .map(|g| {
                        let open = g.items().filter(|i| !v.exam.gate.answered(i)).count();
                        let excepted = g
                            .items()
                            .filter(|i| v.exam.gate.exception(i).is_some())
                            .count();
                        let state = match (open, excepted) {
                            (0, 0) => "holds".to_owned(),
                            (0, n) => format!("{n} noted"),
                            _ => "not asked".to_owned(),
                        };
                        (Page::Gate(g), g.title().to_owned(), state)
                    })
                    .collect()
            })
        })
    };
    let rows = move || {
        desk.visit.with(|v| {
            let Some(v) = v.as_ref() else {
                return Vec::new();
            };
            let Some(screen) = v.screen.map(|id| id.screen()) else {
                return Vec::new();
            };
            let mut rows = if screen.gate { groups() } else { Vec::new() };
            let region = |region: &Region| {
                let oral = &v.exam.oral;
                let open = region
                    .items()
                    .filter(|i| oral.answer(i) == Answer::Open)
                    .count();
                let noted = region
                    .items()
                    .filter(|i| !oral.answer(i).found().is_empty())
                    .count();
                let state = match (open, noted) {
                    (0, 0) => "done".to_owned(),
                    (0, n) => format!("{n} noted"),
                    (open, _) => format!("{open} of {} not tested", region.items().count()),
                };
                (Page::Oral(*region), region.title().to_owned(), state)
            };
            rows.extend(screen.oral.before().iter().map(region));
            let row = |task: TaskId| {
                let spec = tasks::spec(task);
                let state = match v.exam.latest(task) {
                    // Of several trials the one that is scored.
                    Some(trial) => tasks::summary(task, &v.exam)
                        .or_else(|| lines(spec, trial).first().cloned())
                        .unwrap_or_else(|| {
                            if steps::done(v, task) {
                                "recorded"
                            } else {
                                "begun"
                            }
                            .to_owned()
                        }),
                    None if tasks::aside(task, &v.exam).is_some() => "left out".to_owned(),
                    None => "not done".to_owned(),
                };
                (Page::Task(task), spec.title.to_owned(), state)
            };
            rows.extend(screen.tasks_of(&v.exam).into_iter().map(row));
            // What was added stands with the screen's own.
            let begun = |task: &TaskId| v.exam.latest(*task).is_some();
            rows.extend(screen.extras().filter(begun).map(row));
            rows.extend(screen.oral.after().iter().map(region));
            rows
        })
    };
    let loose = move || {
        desk.visit.with(|v| {
            v.as_ref().map_or(Vec::new(), |v| {
                v.exam
                    .trials
                    .iter()
                    .filter(|t| {
                        v.screen.is_none_or(|s| {
                            let screen = s.screen();
                            !screen.tasks.contains(&t.task) && screen.extras().all(|e| e != t.task)
                        })
                    })
                    .filter(|t| !tasks::BESIDE.contains(&t.task))
                    .flat_map(|t| {
                        let spec = tasks::spec(t.task);
                        let mut lines = lines(spec, t);
                        // A count says what it counted, a time does not.
                        if let (Some(first), true) = (lines.first_mut(), spec.lines.is_some()) {
                            *first = format!("{}: {first}", spec.title);
                        }
                        lines
                    })
                    .collect()
            })
        })
    };
    let more = move || {
        desk.visit.with(|v| {
            let v = v.as_ref()?;
            let screen = v.screen?.screen();
            let open = |task: &TaskId| v.exam.latest(*task).is_none();
            let more: Vec<TaskId> = screen.extras().filter(open).collect();
            (!more.is_empty()).then_some(more)
        })
    };
    let more = follow(more);
    view! {
        <ul class="steps">
            {live(move || rows().into_iter().map(|row| step_row(desk, row)).collect::<Vec<_>>())}
        </ul>
        {live(move || more.get().map(|more| view! {
            <details class="more">
                <summary>"Add to this visit"</summary>
                <div class="row">
                    {more.into_iter().map(|task| view! {
                        <button type="button" on:click=press(move |_| desk.turn(Page::Task(task)))>
                            {tasks::spec(task).title}
                        </button>
                    }).collect_view()}
                </div>
            </details>
        }))}
        {live(move || {
            let counts: Vec<String> = loose();
            (!counts.is_empty()).then(|| view! {
                <h2>"Attached counts and times"</h2>
                <ul class="plain">{counts.into_iter().map(|l| view! { <li>{l}</li> }).collect_view()}</ul>
            })
        })}
    }
}

/// Tasks beside the screen, for whoever wants them: done ones say what they came to.
#[component]
fn Beside() -> impl IntoView {
    let desk = Desk::get();
    let rows = move || {
        desk.visit.with(|v| {
            let Some((v, screen)) = v.as_ref().and_then(|v| Some((v, v.screen?.screen()))) else {
                return Vec::new();
            };
            tasks::BESIDE
                .into_iter()
                .filter(|id| !screen.tasks.contains(id))
                // Nothing by mouth where no gate was asked.
                .filter(|id| screen.gate || !tasks::spec(*id).by_mouth)
                .filter(|id| tasks::aside(*id, &v.exam).is_none())
                .map(|id| {
                    (
                        Page::Task(id),
                        tasks::spec(id).title.to_owned(),
                        beside_state(v, id),
                    )
                })
                .collect()
        })
    };
    live(move || {
        let rows: Vec<(Page, String, String)> = rows();
        let done = rows.iter().any(|(_, _, state)| !state.is_empty());
        (!rows.is_empty()).then(|| {
            view! {
                <details class="more" open=done>
                    <summary>"More in this visit"</summary>
                    <ul class="steps">
                        {rows.into_iter().map(|row| step_row(desk, row)).collect::<Vec<_>>()}
                    </ul>
                </details>
            }
        })
    })
}

/// A step, and the way to it.
fn step_row(desk: Desk, (page, title, state): (Page, String, String)) -> AnyView {
    view! {
        <li>
            <button type="button" class="head" on:click=press(move |_| desk.turn(page))>
                <b>{title}</b>
                <span>{state}</span>
            </button>
        </li>
    }
    .into_any()
}

/// What a task beside the screen came to; nothing where it was not begun.
fn beside_state(visit: &Visit, id: TaskId) -> String {
    if id == TaskId::SixSigns {
        return if six_signs::is_counted(&visit.exam) {
            let tested = six_signs::tested(&visit.exam);
            format!("{} found, {}", tested.present, tested.words())
        } else {
            String::new()
        };
    }
    visit.exam.latest(id).map_or(String::new(), |trial| {
        lines(tasks::spec(id), trial)
            .first()
            .cloned()
            .unwrap_or_else(|| "begun".to_owned())
    })
}

/// An earlier refer or stop stays open until somebody closes it.
#[component]
fn CloseOut() -> impl IntoView {
    let desk = Desk::get();
    let open = follow(move || {
        desk.visit
            .with(|v| v.as_ref().is_some_and(|v| Head::of(v).unclosed))
    });
    let closed = follow(move || {
        desk.visit.with(|v| {
            v.as_ref()
                .and_then(|v| v.closed.as_ref().map(|(how, _)| how.clone()))
        })
    });
    view! {
        {live(move || open.get().then(|| view! {
            <section class="found caution">
                <h2>"Not closed"</h2>
                <p>"Somebody was to look further. Who did?"</p>
                <div class="row">
                    {["Seen by speech-language pathology", "Seen by the doctor"].into_iter().map(|how| view! {
                        <button type="button" on:click=press(move |_| desk.record([Event::Closed(how.to_owned())]))>
                            {how}
                        </button>
                    }).collect_view()}
                </div>
                <WordsField
                    id="closed-by"
                    label="or in your own words. No names."
                    value=String::new()
                    most=80
                    take=Callback::new(move |words: String| {
                        if !words.trim().is_empty() { desk.record([Event::Closed(words)]) }
                    })
                />
            </section>
        }))}
        {live(move || closed.get().map(|how| view! { <p class="figure">{format!("Closed: {how}")}</p> }))}
    }
}

/// Person and place, filled in or corrected afterwards.
#[component]
fn Person() -> impl IntoView {
    let desk = Desk::get();
    let details = desk
        .visit
        .with_untracked(|v| v.as_ref().and_then(|v| v.details.clone()));
    let label = details
        .as_ref()
        .map_or(String::new(), |d| d.label.as_str().to_owned());
    let form = Form::new(label, details.as_ref());
    let kept = RwSignal::new(false);
    let keep = move |_| {
        if let Some(details) = form.read() {
            desk.record([Event::Details(details)]);
            kept.set(true);
        }
    };
    view! {
        <details class="more">
            <summary>"Person and place"</summary>
            <DetailsFields form=form/>
            <button type="button" on:click=press(keep)>"Keep"</button>
            <p role="status">{live(move || kept.get().then_some("Kept."))}</p>
        </details>
    }
}

/// The whole record as a file, and deleting it.
#[component]
fn Keep() -> impl IntoView {
    let desk = Desk::get();
    let sure = RwSignal::new(false);
    let problem = RwSignal::new(String::new());
    let save = move |_| {
        let Some(id) = desk
            .visit
            .with_untracked(|v| v.as_ref().map(|v| v.id.clone()))
        else {
            return;
        };
        spawn_local(async move {
            let outcome = match desk.keeper().read(&id).await {
                Ok((events, raw)) => {
                    let mut text = export::lines(&events);
                    for line in raw {
                        text.push_str(&line.0);
                        text.push('\n');
                    }
                    share::save_file(&file_name("visit", "txt"), &text)
                }
                Err(error) => Err(error.to_string()),
            };
            problem.set(outcome.err().unwrap_or_default());
        });
    };
    let delete = move |_| {
        let Some(mut visit) = desk.visit.get_untracked() else {
            return;
        };
        let tombstone = Envelope {
            device: ids::device_id(),
            visit: visit.id.clone(),
            seq: visit.next,
            schema: SCHEMA,
            key: String::new(),
            at: clock::now(),
            body: body(&Event::Deleted),
        };
        visit.take(&tombstone);
        visit.aside.clear();
        spawn_local(async move {
            match desk.keeper().bury(tombstone, Head::of(&visit)).await {
                Ok(()) => {
                    desk.visit.set(None);
                    desk.go(Route::Home);
                }
                Err(error) => problem.set(format!("Not deleted. {error}")),
            }
        });
    };
    view! {
        <details class="more">
            <summary>"Keep a copy, delete"</summary>
            <button type="button" on:click=press(save)>"Save the whole record as a file"</button>
            {live(move || if sure.get() {
                view! {
                    <p>"Everything of this visit goes from this phone, for good."</p>
                    <div class="row">
                        <button type="button" on:click=press(move |_| sure.set(false))>"Keep it"</button>
                        <button type="button" class="grave" on:click=press(delete)>"Delete for good"</button>
                    </div>
                }.into_any()
            } else {
                view! {
                    <button type="button" on:click=press(move |_| sure.set(true))>"Delete this visit"</button>
                }.into_any()
            })}
            <p class="problem" role="alert">{live(move || problem.get())}</p>
        </details>
    }
}
