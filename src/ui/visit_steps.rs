//! The steps of a visit: those of its screen, what was added, and what can be added.

use super::attached::detachable;
use super::desk::Desk;
use super::follow::follow;
use super::gate::is_old;
use super::parts::folded;
use super::route::Page;
use crate::clinical::findings::gate::Group;
use crate::clinical::findings::oral::Answer;
use crate::clinical::knowledge::oral::Region;
use crate::clinical::knowledge::screen::Screen;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::draw::{Drawn, Piece, all, el, live};
use crate::record::visit::Visit;
use crate::record::way::{self, Step};
use crate::wording::figures::lines;
use crate::wording::gate as wording;
use crate::wording::oral_items;
use crate::wording::tasks as words;

/// The screen's steps, each a way in.
pub(super) fn steps() -> Piece {
    let desk = Desk::get();
    let groups = move || {
        desk.visit.with(|v| {
            v.map_or(Vec::new(), |v| {
                Group::ALL
                    .into_iter()
                    .map(|g| {
                        let open = g.items().filter(|i| !v.exam.gate.answered(i)).count();
                        let excepted = g
                            .items()
                            .filter(|i| v.exam.gate.exception(i).is_some())
                            .count();
                        let state = match (open, excepted) {
                            (0, _) if is_old(v, g) => "asked a while ago".to_owned(),
                            (0, 0) => "holds".to_owned(),
                            (0, n) => format!("{n} noted"),
                            _ => "not asked".to_owned(),
                        };
                        (Page::Gate(g), wording::group_title(g).to_owned(), state)
                    })
                    .collect()
            })
        })
    };
    let rows = move || {
        desk.visit.with(|v| {
            let Some(v) = v else {
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
                (
                    Page::Oral(*region),
                    oral_items::region_title(*region).to_owned(),
                    state,
                )
            };
            // An emergency ends all of it.
            let looks = !way::emergency(v);
            let regions = |regions: &'static [Region]| regions.iter().filter(move |_| looks);
            rows.extend(regions(screen.oral.before()).map(region));
            let row = |task: TaskId| {
                let spec = tasks::spec(task);
                let state = match v.exam.latest(task) {
                    // Of several trials the one that is scored.
                    Some(trial) => crate::wording::task::step(task, &v.exam)
                        .or_else(|| lines(spec, trial).first().cloned())
                        .unwrap_or_else(|| {
                            if tasks::is_done(task, &v.exam) {
                                "recorded"
                            } else {
                                "begun"
                            }
                            .to_owned()
                        }),
                    None if tasks::aside(task, &v.exam).is_some() => "left out".to_owned(),
                    None => "not done".to_owned(),
                };
                (Page::Task(task), words::of(task).title.to_owned(), state)
            };
            let shown = screen.tasks_of(&v.exam).into_iter();
            rows.extend(shown.filter(|id| way::shows(v, *id)).map(row));
            // What was added stands with the screen's own.
            rows.extend(addable(v).filter(|id| is_added(v, *id)).map(row));
            rows.extend(regions(screen.oral.after()).map(region));
            // Nobody has to go through what is left out to say so.
            if way::next(v) != Step::Decision {
                let so_far = "Decision so far".to_owned();
                rows.push((Page::Decision, so_far, "and what is missing".to_owned()));
            }
            rows
        })
    };
    let loose = move || {
        desk.visit.with(|v| {
            v.map_or(Vec::new(), |v| {
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
                        let named = crate::wording::task::lines(t).is_some();
                        let mut lines = lines(spec, t);
                        // A count says what it counted, a time does not.
                        if let (Some(first), true) = (lines.first_mut(), named) {
                            *first = format!("{}: {first}", words::of(t.task).title);
                        }
                        lines
                    })
                    .collect()
            })
        })
    };
    // What can be added and was not begun yet, in one list: extras of the screen, then what stands
    // beside every screen.
    let more = follow(move || {
        desk.visit.with(|v| {
            v.map_or(Vec::new(), |v| {
                addable(v)
                    .filter(|id| !is_added(v, *id) && way::shows(v, *id))
                    .map(|id| {
                        (
                            Page::Task(id),
                            words::of(id).title.to_owned(),
                            String::new(),
                        )
                    })
                    .collect()
            })
        })
    });
    all![
        el("ul.steps").with(live(move || rows()
            .into_iter()
            .map(|row| step_row(desk, row))
            .collect::<Vec<_>>())),
        live(move || {
            let more: Vec<(Page, String, String)> = more.get();
            (!more.is_empty()).then(|| {
                folded("Add to this visit").with(
                    el("ul.steps").with(
                        more.into_iter()
                            .map(|row| step_row(desk, row))
                            .collect::<Vec<_>>(),
                    ),
                )
            })
        }),
        live(move || {
            let counts: Vec<String> = loose();
            (!counts.is_empty()).then(|| {
                all![
                    el("h2").with("Attached counts and times"),
                    el("ul.plain").with(
                        counts
                            .into_iter()
                            .map(|l| el("li").with(l))
                            .collect::<Piece>()
                    )
                ]
            })
        }),
        detachable()
    ]
}

/// What this visit's clinician can add: extras of its screen, and what stands beside every screen.
fn addable(visit: &Visit) -> impl Iterator<Item = TaskId> {
    let screen = visit.screen.map(|id| id.screen());
    let extras = screen.into_iter().flat_map(Screen::extras);
    let beside = tasks::BESIDE
        .into_iter()
        // Nothing by mouth where no gate was asked.
        .filter(move |id| screen.is_some_and(|s| s.gate || !id.is_by_mouth()))
        .filter(move |id| screen.is_some_and(|s| !s.tasks.contains(id)))
        .filter(|id| tasks::aside(*id, &visit.exam).is_none());
    extras.chain(beside)
}

/// Whether it stands with the visit's own steps: begun, or for the six signs counted in.
fn is_added(visit: &Visit, task: TaskId) -> bool {
    match tasks::spec(task).added {
        Some(added) => added(&visit.exam),
        None => visit.exam.latest(task).is_some(),
    }
}

/// A step, and the way to it.
fn step_row(desk: Desk, (page, title, state): (Page, String, String)) -> Piece {
    el("li")
        .with(
            el("button.head")
                .press(move |_| desk.turn(page))
                .with(el("b").with(title))
                .with(el("span").with(state)),
        )
        .piece()
}
