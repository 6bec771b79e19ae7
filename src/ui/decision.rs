//! The decision with every reason, rule and source.

use leptos::prelude::*;

use super::desk::{Desk, versions};
use super::live::{live, press};
use super::oral_points::OralPoints;
use super::parts::{ChokingButton, Frame, overview_of};
use super::route::Page;
use super::steps;
use super::why::{flag_item, rule_fold};
use crate::clinical::decision::{Decision, Verdict};
use crate::clinical::flag::Flag;
use crate::clinical::oral::points;
use crate::clinical::rules;
use crate::record::event::Event;

/// The page.
#[component]
pub(super) fn DecisionPage() -> impl IntoView {
    let desk = Desk::get();
    view! {
        <Frame title="Decision" back=overview_of(desk)>
            {live(move || desk
                .visit
                .with(|v| v.as_ref().and_then(|v| v.decision().map(|d| (d, v.exam.ended.is_some()))))
                .map(|(decision, ended)| view! { <Shown decision=decision ended=ended/> }))}
        </Frame>
    }
}

/// The word and the shape of a verdict: never by colour alone.
pub(super) fn look_of(verdict: Verdict) -> (&'static str, &'static str) {
    match verdict {
        Verdict::Stop => ("verdict stop", "\u{25A0}"),
        Verdict::Refer => ("verdict refer", "\u{25B2}"),
        Verdict::Incomplete => ("verdict incomplete", "\u{25D0}"),
        Verdict::Pass => ("verdict pass", "\u{25CB}"),
        Verdict::NoDecision | Verdict::NotDone(_) => ("verdict not-done", "\u{2013}"),
    }
}

#[component]
fn Shown(decision: Decision, ended: bool) -> impl IntoView {
    let desk = Desk::get();
    let (class, shape) = look_of(decision.verdict);
    let verdict = decision.verdict;
    let unfinished = desk
        .visit
        .with_untracked(|v| v.as_ref().map(steps::next))
        .filter(|page| *page != Page::Decision && verdict == Verdict::Incomplete);
    let to_handover = {
        let reasons: Vec<(String, String)> = decision
            .reasons
            .iter()
            .chain(&decision.missing)
            .map(|f| (f.rule().id.to_owned(), f.reason().to_owned()))
            .collect();
        move |_| {
            let policy = desk.visit.with_untracked(|v| {
                v.as_ref()
                    .map_or(String::new(), |v| v.exam.policy.name.clone())
            });
            desk.record([Event::Decided {
                verdict: verdict.id().to_owned(),
                reasons: reasons.clone(),
                versions: versions(),
                policy,
            }]);
            desk.turn(Page::Handover);
        }
    };
    // What points to a nerve stands with its nerve.
    let also: Vec<Flag> = decision
        .also
        .iter()
        .filter(|f| !points::is_pointing(f))
        .cloned()
        .collect();
    let why = match verdict {
        Verdict::NotDone(why) => Some(desk.visit.with_untracked(|v| {
            v.as_ref().map_or(String::new(), |v| {
                crate::clinical::words::capital(&why.told(&v.exam.policy))
            })
        })),
        Verdict::Pass | Verdict::NoDecision => {
            let early = desk
                .visit
                .with_untracked(|v| v.as_ref().and_then(|v| v.exam.ended))
                .map_or(String::new(), |why| {
                    format!("Not finished: {}. ", why.words())
                });
            Some(format!(
                "{early}This screen changes no eating or drinking order."
            ))
        }
        _ => None,
    };
    view! {
        <section class=class>
            <p class="word"><span aria-hidden="true">{shape}" "</span>{verdict.headline()}</p>
            {why.map(|w| view! { <p>{w}</p> })}
        </section>

        {list("Why", &decision.reasons)}
        {list("Missing or not valid", &decision.missing)}
        {list("No sign", &decision.clear)}
        <OralPoints/>
        {list("Also found", &also)}
        <p class="caution">
            "A screen is not a diagnosis. It does not see silent aspiration: in one series of acute \
             stroke 14 of 21 who aspirated did so silently (published: DAN98), and no bedside \
             protocol is adequate in all groups (published: OHO15)."
        </p>
        {rule_fold(&rules::DECISION_HEADLINE)}
        <div class="foot">
            {unfinished.map(|page| view! {
                <button type="button" class="big" on:click=press(move |_| desk.turn(page))>
                    <b>"Go on with the screen"</b>
                </button>
            })}
            {ended.then(|| view! {
                <button type="button" class="big" on:click=press(move |_| {
                    desk.record([Event::TakenUpAgain]);
                    if let Some(page) = desk.visit.with_untracked(|v| v.as_ref().map(steps::next)) {
                        desk.turn(page);
                    }
                })>
                    <b>"Take the screen up again"</b>
                </button>
            })}
            <button type="button" class="big primary" on:click=press(to_handover)><b>"Handover"</b></button>
            <ChokingButton/>
        </div>
    }
}

fn list(heading: &'static str, flags: &[Flag]) -> Option<impl IntoView + use<>> {
    (!flags.is_empty()).then(|| {
        view! {
            <section>
                <h2>{heading}</h2>
                <ul class="flags">{flags.iter().map(flag_item).collect_view()}</ul>
            </section>
        }
    })
}
