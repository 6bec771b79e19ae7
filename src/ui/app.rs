//! The app: banners above, one page below.

use leptos::prelude::*;

use super::banner::banners;
use super::choking::choking_page;
use super::count::count_page;
use super::decision::decision_page;
use super::desk::Desk;
use super::follow::follow;
use super::gate::gate_page;
use super::gate_result::gate_result_page;
use super::handover::handover_page;
use super::history::history_page;
use super::home::home_page;
use super::new_visit::new_visit_page;
use super::oral::oral_page;
use super::parts::frame;
use super::policy::policy_page;
use super::route::{Page, Route};
use super::settings::settings_page;
use super::show::show_page;
use super::single::{single_page, single_task};
use super::six_signs::six_signs_page;
use super::sources::sources_page;
use super::task::task_page;
use super::visit::overview_page;
use crate::browser::{page, worker};
use crate::clinical::knowledge::oral;
use crate::clinical::knowledge::oral::Region;
use crate::clinical::tasks::spec;
use crate::clinical::tasks::spec::Shows;
use crate::draw::{Drawn, Piece, all, el, live};
use crate::wording::tasks;

/// The whole app.
pub fn app() -> Piece {
    let desk = Desk::new();
    provide_context(desk);
    desk.start();
    desk.keep_time();
    page::on_back(move |hash| desk.arrive(Route::parse(&hash)));
    worker::register(move || desk.update.set(true));
    worker::when_stored(move || desk.stored.set(true));
    all![
        banners(),
        live(move || {
            let route = desk.route.get();
            // A page of a visit is drawn once its visit is on the desk.
            let wanted = route.visit().cloned();
            let open = follow(move || desk.visit.with(|v| v.map(|v| v.id.clone())) == wanted);
            match route {
                Route::Home => live(home_page),
                Route::NewVisit(screen) => live(move || new_visit_page(screen)),
                Route::Single => live(single_page),
                // It reads the store as soon as it is drawn.
                Route::History => live(move || desk.ready.get().then(history_page)),
                Route::Settings => live(settings_page),
                Route::Policy => live(policy_page),
                Route::Sources => live(sources_page),
                Route::Count(_, task) => live(move || {
                    if !open.get() {
                        return not_here();
                    }
                    match task.or_else(|| single_task(desk)) {
                        Some(task) => task_page(task),
                        None => count_page(),
                    }
                }),
                Route::Visit(_, page) => live(move || {
                    if !open.get() {
                        return not_here();
                    }
                    match page {
                        Page::Overview => overview_page(),
                        Page::Gate(group) => gate_page(group),
                        Page::GateResult => gate_result_page(),
                        Page::Task(task) if spec(task).shows == Shows::Found => six_signs_page(),
                        Page::Task(task) => task_page(task),
                        Page::Show(task) => show_page(tasks::of(task).say, Page::Task(task)),
                        Page::Oral(region) => oral_page(region),
                        Page::OralShow(id) => oral::find(id)
                            .map(|item| {
                                show_page(
                                    crate::wording::oral_items::ask(item),
                                    Page::Oral(Region::of(item)),
                                )
                            })
                            .piece(),
                        Page::Choking => choking_page(),
                        Page::Decision => decision_page(),
                        Page::Handover => handover_page(),
                    }
                }),
            }
        }),
        el("p.for-reader")
            .attr("role", "status")
            .with(live(move || desk.said.get()))
    ]
}

/// The address names a visit that is still being read, or is not here.
fn not_here() -> Piece {
    let desk = Desk::get();
    frame(
        "Visit".into(),
        Route::Home,
        live(move || {
            if desk.loading.get() || !desk.ready.get() {
                el("p").with("Opening the visit.").piece()
            } else {
                el("p").with("This visit is not on this phone.").piece()
            }
        }),
    )
}
