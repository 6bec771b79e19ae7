//! What the examination points to, nerve by nerve, on the decision page.

use super::desk::Desk;
use super::oral::weakness;
use super::oral_rows::why_not;
use super::parts::para;
use super::why::flag_item;
use crate::clinical::decision::gate_flags;
use crate::clinical::findings::oral::{Answer, Oral, Reason, Seen, findings};
use crate::clinical::knowledge::oral::Region;
use crate::clinical::tasks::oral::{flags, points};
use crate::draw::{Drawn, Piece, all, el};
use crate::record::event::Event;
use crate::wording::found;
use crate::wording::oral as told;
use crate::wording::oral_items;
use crate::wording::words::capital;

/// Asks once more why something was not tested, where nobody said: one press for all of it.
fn because(desk: Desk, regions: &[Region], oral: &Oral) -> Option<Piece> {
    let open: Vec<&'static str> = regions
        .iter()
        .flat_map(|region| region.items())
        .filter(|item| oral.answer(item) == Answer::Open)
        .map(|item| item.id)
        .collect();
    let n = open.len();
    let s = if n == 1 { "" } else { "s" };
    let pick = move |reason: Option<Reason>| {
        if let Some(reason) = reason {
            let all = open
                .iter()
                .map(|id| ((*id).to_owned(), Seen::NotTested(reason)));
            desk.record([Event::Oral(all.collect())]);
        }
    };
    let label = format!("Not tested, and nobody said why: {n} item{s}. Because:");
    (n > 0).then(|| why_not(label, || None, pick))
}

/// Weakness that the team may not know.
const SAY_IF_NEW: &str = "Weakness was found. If it is new or worse and the team did not know, \
    say so now.";

/// The question on weakness that was found, until it is answered.
pub(super) fn say_if_new(desk: Desk) -> Option<Piece> {
    let open = desk.visit.with_untracked(|v| {
        v.filter(|v| v.screen.is_some_and(|id| id.screen().oral.is_some()))
            .is_some_and(|v| gate_flags::to_be_said(&v.exam).is_some())
    });
    (open).then(|| all![para("advice", SAY_IF_NEW), weakness()])
}

/// The section. Draws nothing where nothing was looked at.
pub(super) fn oral_points() -> Piece {
    let desk = Desk::get();
    let exam = desk.visit.with_untracked(|v| {
        v.filter(|v| v.screen.is_some_and(|id| id.screen().oral.is_some()))
            .filter(|v| v.exam.oral.is_begun())
            .map(|v| (v.exam.clone(), v.screen))
    });
    exam.map(|(exam, screen)| {
        let oral = &exam.oral;
        let regions: Vec<_> = screen.map_or(Vec::new(), |id| id.screen().oral.regions().collect());
        let groups = points::groups(oral);
        // Once answered it can still be answered otherwise.
        let ask = !findings::weakness(oral).is_empty()
            && !flags::emergency(&exam)
            && flags::unsaid(&exam).is_none();
        let told = told::examined(oral, &regions, |_| false);
        let line = told.map_or_else(
            || told::NOT_LOOKED_AT.to_owned(),
            |told| match told.is_sided() {
                true => format!("{} {}", told.line(), told::WHOSE),
                false => told.line(),
            },
        );
        let line = capital(&line);
        el("section")
            .with(el("h2").with("Face, mouth and throat"))
            .with(para("", line))
            .with(ask.then(weakness))
            .with(because(desk, &regions, oral))
            .with((!groups.is_empty()).then(|| {
                all![
                    el("h2").with("What it points to"),
                    para("caution", found::MEANT)
                ]
            }))
            .with(
                groups
                    .into_iter()
                    .map(|group| {
                        el("div.found")
                            .with(el("h3").with(oral_items::nerve_heading(group.nerve)))
                            .with(
                                el("ul").with(
                                    group
                                        .lines
                                        .into_iter()
                                        .map(|l| el("li").with(found::point(&l)))
                                        .collect::<Piece>(),
                                ),
                            )
                            .with(
                                el("ul.flags")
                                    .with(group.flags.iter().map(flag_item).collect::<Piece>()),
                            )
                    })
                    .collect::<Piece>(),
            )
    })
    .piece()
}
