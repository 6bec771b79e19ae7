//! Where in the app one is: an enum, kept in the address after the `#`.
//!
//! The address works under any path of any host, and "back" on the phone works.

use crate::clinical::findings::gate::Group;
use crate::clinical::knowledge::oral;
use crate::clinical::knowledge::oral::Region;
use crate::clinical::knowledge::screen::ScreenId;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::record::id::VisitId;
use crate::record::way::Step;

/// A page of a visit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Page {
    /// What there is of it so far.
    #[default]
    Overview,
    /// A group of the gate.
    Gate(Group),
    /// What the gate found, where it found something.
    GateResult,
    /// A region of the examination of face, mouth and throat.
    Oral(Region),
    /// What to say for one of its items, in large type: the item's id.
    OralShow(&'static str),
    /// A task.
    Task(TaskId),
    /// What to say, in large type.
    Show(TaskId),
    /// Choking.
    Choking,
    /// The decision.
    Decision,
    /// The handover.
    Handover,
}

impl From<Step> for Page {
    fn from(step: Step) -> Page {
        match step {
            Step::Overview => Page::Overview,
            Step::Gate(group) => Page::Gate(group),
            Step::GateResult => Page::GateResult,
            Step::Oral(region) => Page::Oral(region),
            Step::Task(task) => Page::Task(task),
            Step::Choking => Page::Choking,
            Step::Decision => Page::Decision,
        }
    }
}

/// A place in the app.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Route {
    /// The first page.
    Home,
    /// A new visit with a screen.
    NewVisit(ScreenId),
    /// One task on its own.
    Single,
    /// Past visits.
    History,
    /// Settings.
    Settings,
    /// The local policy.
    Policy,
    /// Where everything comes from, and what the app is.
    Sources,
    /// A page of a visit.
    Visit(VisitId, Page),
    /// A count without a visit; its task, where it is one on its own that may not be begun yet.
    Count(VisitId, Option<TaskId>),
}

/// The task with this name in an address.
fn task_named(slug: &str) -> Option<TaskId> {
    let named = |id: &TaskId| tasks::spec(*id).slug == slug;
    TaskId::ALL.iter().copied().find(named)
}

const SCREENS: [(ScreenId, &str); ScreenId::ALL.len()] = [
    (ScreenId::Swallow, "swallow"),
    (ScreenId::Water, "water"),
    (ScreenId::OralMotor, "oral-motor"),
    (ScreenId::FullVisit, "full"),
    (ScreenId::Stepped, "stepped"),
    (ScreenId::OwnTrials, "own"),
];

const GROUPS: [(Group, &str); 4] = [
    (Group::Person, "person"),
    (Group::Orders, "orders"),
    (Group::Airway, "airway"),
    (Group::Ready, "ready"),
];

const REGIONS: [(Region, &str); Region::ALL.len()] = [
    (Region::Face, "face"),
    (Region::Lips, "lips"),
    (Region::Jaw, "jaw"),
    (Region::Mouth, "mouth"),
    (Region::Tongue, "tongue"),
    (Region::Palate, "palate"),
    (Region::Feeling, "feeling"),
    (Region::Voice, "voice"),
    (Region::Gag, "gag"),
];

fn word_of<T: Copy + PartialEq>(table: &[(T, &'static str)], value: T) -> &'static str {
    table
        .iter()
        .find(|(v, _)| *v == value)
        .map_or("", |(_, word)| word)
}

fn value_of<T: Copy>(table: &[(T, &'static str)], word: &str) -> Option<T> {
    table.iter().find(|(_, w)| *w == word).map(|(v, _)| *v)
}

impl Route {
    /// The address of this place.
    pub(super) fn hash(&self) -> String {
        match self {
            Route::Home => String::new(),
            Route::NewVisit(screen) => format!("new/{}", word_of(&SCREENS, *screen)),
            Route::Single => "one-task".to_owned(),
            Route::History => "history".to_owned(),
            Route::Settings => "settings".to_owned(),
            Route::Policy => "policy".to_owned(),
            Route::Sources => "sources".to_owned(),
            Route::Count(id, None) => format!("count/{}", id.as_str()),
            Route::Count(id, Some(task)) => {
                format!("count/{}/{}", id.as_str(), tasks::spec(*task).slug)
            }
            Route::Visit(id, page) => {
                let page = match page {
                    Page::Overview => "overview".to_owned(),
                    Page::Gate(group) => format!("gate/{}", word_of(&GROUPS, *group)),
                    Page::GateResult => "gate/result".to_owned(),
                    Page::Oral(region) => format!("oral/{}", word_of(&REGIONS, *region)),
                    Page::OralShow(item) => format!("oral/show/{item}"),
                    Page::Task(task) => format!("task/{}", tasks::spec(*task).slug),
                    Page::Show(task) => format!("show/{}", tasks::spec(*task).slug),
                    Page::Choking => "choking".to_owned(),
                    Page::Decision => "decision".to_owned(),
                    Page::Handover => "handover".to_owned(),
                };
                format!("visit/{}/{page}", id.as_str())
            }
        }
    }

    /// The place an address names; the first page for anything unknown.
    pub(super) fn parse(hash: &str) -> Route {
        Route::read(hash).unwrap_or(Route::Home)
    }

    fn read(hash: &str) -> Option<Route> {
        let parts: Vec<&str> = hash.split('/').collect();
        Some(match parts.as_slice() {
            ["new", screen] => Route::NewVisit(value_of(&SCREENS, screen)?),
            ["one-task"] => Route::Single,
            ["history"] => Route::History,
            ["settings"] => Route::Settings,
            ["policy"] => Route::Policy,
            ["sources"] => Route::Sources,
            ["count", id] => Route::Count(VisitId::new(id)?, None),
            ["count", id, task] => {
                let task = task_named(task).filter(|task| tasks::spec(*task).alone)?;
                Route::Count(VisitId::new(id)?, Some(task))
            }
            ["visit", id, rest @ ..] => {
                let page = match rest {
                    ["overview"] => Page::Overview,
                    ["gate", "result"] => Page::GateResult,
                    ["gate", group] => Page::Gate(value_of(&GROUPS, group)?),
                    ["oral", region] => Page::Oral(value_of(&REGIONS, region)?),
                    ["oral", "show", item] => Page::OralShow(oral::find(item)?.id),
                    ["task", task] => Page::Task(task_named(task)?),
                    ["show", task] => Page::Show(task_named(task)?),
                    ["choking"] => Page::Choking,
                    ["decision"] => Page::Decision,
                    ["handover"] => Page::Handover,
                    _ => return None,
                };
                Route::Visit(VisitId::new(id)?, page)
            }
            _ => return None,
        })
    }

    /// The visit whose events this place needs.
    pub(super) fn visit(&self) -> Option<&VisitId> {
        match self {
            Route::Visit(id, _) | Route::Count(id, _) => Some(id),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_has_an_address_that_leads_back_to_it() {
        let id = VisitId::new("0123456789abcdef").unwrap();
        let mut places = vec![
            Route::Home,
            Route::Single,
            Route::History,
            Route::Settings,
            Route::Policy,
            Route::Sources,
            Route::Count(id.clone(), None),
            Route::Count(id.clone(), Some(TaskId::BreathHold)),
        ];
        places.extend(SCREENS.map(|(s, _)| Route::NewVisit(s)));
        let mut pages = vec![
            Page::Overview,
            Page::GateResult,
            Page::Choking,
            Page::Decision,
            Page::Handover,
        ];
        pages.extend(GROUPS.map(|(g, _)| Page::Gate(g)));
        pages.extend(REGIONS.map(|(r, _)| Page::Oral(r)));
        pages.extend(oral::items().map(|i| Page::OralShow(i.id)));
        pages.extend(TaskId::ALL.iter().map(|t| Page::Task(*t)));
        pages.extend(TaskId::ALL.iter().map(|t| Page::Show(*t)));
        places.extend(pages.into_iter().map(|p| Route::Visit(id.clone(), p)));
        for place in places {
            assert_eq!(Route::parse(&place.hash()), place);
        }
        assert_eq!(Route::parse("visit/BAD/overview"), Route::Home);
        assert_eq!(
            Route::parse("visit/0123456789abcdef/task/none"),
            Route::Home
        );
    }
}
