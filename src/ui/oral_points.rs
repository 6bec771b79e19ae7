//! What the examination points to, nerve by nerve, on the decision page.

use leptos::prelude::*;

use super::desk::Desk;
use super::oral::{Weakness, options};
use super::parts::{Choices, para};
use super::why::flag_item;
use crate::clinical::oral::{Answer, Oral, Reason, Region, Seen, findings, flags, points, told};
use crate::clinical::words::capital;
use crate::record::event::Event;

/// Asks once more why something was not tested, where nobody said: one press for all of it.
fn because(desk: Desk, regions: &[Region], oral: &Oral) -> Option<AnyView> {
    let open: Vec<&'static str> = regions
        .iter()
        .flat_map(|region| region.items())
        .filter(|item| oral.answer(item) == Answer::Open)
        .map(|item| item.id)
        .collect();
    let n = open.len();
    let s = if n == 1 { "" } else { "s" };
    let pick = Callback::new(move |id: Option<String>| {
        if let Some(reason) = Reason::ALL
            .into_iter()
            .find(|r| id.as_deref() == Some(r.words()))
        {
            let all = open
                .iter()
                .map(|id| ((*id).to_owned(), Seen::NotTested(reason)));
            desk.record([Event::Oral(all.collect())]);
        }
    });
    (n > 0).then(|| {
        view! {
            <Choices
                label=format!("Not tested, and nobody said why: {n} item{s}. Because:")
                options=options(Reason::ALL.map(Reason::words))
                chosen=Signal::derive(|| None::<String>)
                pick=pick
            />
        }
        .into_any()
    })
}

/// The section. Draws nothing where nothing was looked at.
#[component]
pub(super) fn OralPoints() -> impl IntoView {
    let desk = Desk::get();
    let exam = desk.visit.with_untracked(|v| {
        v.as_ref()
            .filter(|v| v.screen.is_some_and(|id| id.screen().oral.is_some()))
            .filter(|v| v.exam.oral.is_begun())
            .map(|v| (v.exam.clone(), v.screen))
    });
    exam.map(|(exam, screen)| {
        let oral = &exam.oral;
        let regions: Vec<_> = screen.map_or(Vec::new(), |id| id.screen().oral.regions().collect());
        let groups = points::groups(oral);
        let ask = findings::could_be_new(oral) && !flags::emergency(&exam);
        let line = told::line(oral, &regions, usize::MAX, |_| false);
        let line = capital(line.strip_prefix(told::BEGINS).unwrap_or(&line));
        view! {
            <section>
                <h2>"Face, mouth and throat"</h2>
                {para("", line)}
                {ask.then(|| view! {
                    {para("advice", "Weakness was found. If it is new or worse and the team did not know, say so now.")}
                    <Weakness/>
                })}
                {because(desk, &regions, oral)}
                {(!groups.is_empty()).then(|| view! {
                    <h2>"What it points to"</h2>
                    {para("caution", points::MEANT)}
                })}
                {groups.into_iter().map(|group| view! {
                    <div class="found">
                        <h3>{group.nerve.words()}</h3>
                        <ul>{group.lines.into_iter().map(|l| view! { <li>{l}</li> }).collect_view()}</ul>
                        <ul class="flags">{group.flags.iter().map(flag_item).collect_view()}</ul>
                    </div>
                }).collect_view()}
            </section>
        }
    })
}
