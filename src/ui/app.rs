//! The app: banners above, one page below.

use leptos::prelude::*;

use super::banner::Banners;
use super::choking::ChokingPage;
use super::count::CountPage;
use super::decision::DecisionPage;
use super::desk::Desk;
use super::gate::{GatePage, GateResultPage};
use super::handover::HandoverPage;
use super::history::HistoryPage;
use super::home::HomePage;
use super::live::{follow, live};
use super::new_visit::NewVisitPage;
use super::oral::OralPage;
use super::parts::Frame;
use super::policy::PolicyPage;
use super::route::{Page, Route};
use super::settings::SettingsPage;
use super::show::ShowPage;
use super::single::{SinglePage, single_task};
use super::six_signs::SixSignsPage;
use super::sources::SourcesPage;
use super::task::TaskPage;
use super::visit::OverviewPage;
use crate::browser::{page, worker};
use crate::clinical::oral::{self, Region};
use crate::clinical::task::TaskId;
use crate::clinical::tasks;

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    let desk = Desk::new();
    provide_context(desk);
    desk.start();
    desk.keep_time();
    page::on_back(move |hash| desk.arrive(Route::parse(&hash)));
    worker::register(move || desk.update.set(true));
    worker::when_stored(move || desk.stored.set(true));
    view! {
        <Banners/>
        {live(move || {
            let route = desk.route.get();
            // A page of a visit is drawn once its visit is on the desk.
            let wanted = route.visit().cloned();
            let open = follow(move || {
                desk.visit.with(|v| v.as_ref().map(|v| v.id.clone())) == wanted
            });
            match route {
                Route::Home => view! { <HomePage/> }.into_any(),
                Route::NewVisit(screen) => view! { <NewVisitPage screen=screen/> }.into_any(),
                Route::Single => view! { <SinglePage/> }.into_any(),
                // It reads the store as soon as it is drawn.
                Route::History => live(move || desk.ready.get().then(|| view! { <HistoryPage/> })).into_any(),
                Route::Settings => view! { <SettingsPage/> }.into_any(),
                Route::Policy => view! { <PolicyPage/> }.into_any(),
                Route::Sources => view! { <SourcesPage/> }.into_any(),
                Route::Count(_, task) => live(move || {
                    if !open.get() {
                        return view! { <NotHere/> }.into_any();
                    }
                    match task.or_else(|| single_task(desk)) {
                        Some(task) => view! { <TaskPage task=task/> }.into_any(),
                        None => view! { <CountPage/> }.into_any(),
                    }
                }).into_any(),
                Route::Visit(_, page) => live(move || {
                    if !open.get() {
                        return view! { <NotHere/> }.into_any();
                    }
                    match page {
                        Page::Overview => view! { <OverviewPage/> }.into_any(),
                        Page::Gate(group) => view! { <GatePage group=group/> }.into_any(),
                        Page::GateResult => view! { <GateResultPage/> }.into_any(),
                        Page::Task(TaskId::SixSigns) => view! { <SixSignsPage/> }.into_any(),
                        Page::Task(task) => view! { <TaskPage task=task/> }.into_any(),
                        Page::Show(task) => view! {
                            <ShowPage words=tasks::spec(task).say back=Page::Task(task)/>
                        }.into_any(),
                        Page::Oral(region) => view! { <OralPage region=region/> }.into_any(),
                        Page::OralShow(id) => oral::find(id).map(|item| view! {
                            <ShowPage words=item.ask back=Page::Oral(Region::of(item))/>
                        }).into_any(),
                        Page::Choking => view! { <ChokingPage/> }.into_any(),
                        Page::Decision => view! { <DecisionPage/> }.into_any(),
                        Page::Handover => view! { <HandoverPage/> }.into_any(),
                    }
                }).into_any(),
            }
        })}
        <p class="for-reader" role="status">{live(move || desk.said.get())}</p>
    }
}

/// The address names a visit that is still being read, or is not here.
#[component]
fn NotHere() -> impl IntoView {
    let desk = Desk::get();
    view! {
        <Frame title="Visit" back=Route::Home>
            {live(move || if desk.loading.get() || !desk.ready.get() {
                view! { <p>"Opening the visit."</p> }.into_any()
            } else {
                view! { <p>"This visit is not on this phone."</p> }.into_any()
            })}
        </Frame>
    }
}
