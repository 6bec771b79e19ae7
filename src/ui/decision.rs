//! The decision with every reason, rule and source.

use super::desk::{Desk, versions};
use super::ended::take_up;
use super::oral_points::{oral_points, say_if_new};
use super::parts::{big, button, choking_button, frame, overview_of};
use super::route::Page;
use super::told::outdated;
use super::why::{flag_item, rule_fold};
use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::findings::flag::Flag;
use crate::clinical::knowledge::person::Role;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::oral::points;
use crate::draw::{El, Piece, all, el, live};
use crate::handover::action::{DETERIORATION, deteriorating, suggested};
use crate::record::event::{Event, Whom};
use crate::record::way::{self, Step};
use crate::wording::verdict as verdict_words;
use crate::wording::words::capital;

/// The page.
pub(super) fn decision_page() -> Piece {
    let desk = Desk::get();
    frame(
        "Decision".into(),
        overview_of(desk),
        all![
            outdated(),
            live(move || {
                desk.visit
                    .with(|v| v.and_then(|v| v.decision().map(|d| (d, v.exam.ended.is_some()))))
                    .map(|(decision, ended)| shown(decision, ended))
            })
        ],
    )
}

/// The look and the shape of a decision: never by colour alone.
pub(super) fn look_of(decision: &Decision) -> (&'static str, &'static str) {
    match decision.verdict {
        // Not the look of "no sign" where one was pressed.
        Verdict::Pass if decision.noted().is_some() => ("verdict not-done", "\u{2013}"),
        Verdict::Stop => ("verdict stop", "\u{25A0}"),
        Verdict::Refer => ("verdict refer", "\u{25B2}"),
        Verdict::Incomplete => ("verdict incomplete", "\u{25D0}"),
        Verdict::Pass => ("verdict pass", "\u{25CB}"),
        Verdict::NoDecision | Verdict::NotDone(_) => ("verdict not-done", "\u{2013}"),
    }
}

/// What a screen does not see.
const CAUTION: &str = "A screen is not a diagnosis. It does not see silent aspiration: in one \
    series of acute stroke 14 of 21 who aspirated did so silently (published: DAN98), and no \
    bedside protocol is adequate in all groups (published: OHO15).";

fn shown(decision: Decision, ended: bool) -> Piece {
    let desk = Desk::get();
    let (class, shape) = look_of(&decision);
    let verdict = decision.verdict;
    let by = desk
        .visit
        .with_untracked(|v| v.map_or(Role::default(), |v| v.role));
    let unfinished = desk
        .visit
        .with_untracked(|v| v.map(way::next))
        .filter(|page| *page != Step::Decision && verdict == Verdict::Incomplete);
    let trials = desk
        .visit
        .with_untracked(|v| v.and_then(way::trials_after_sign));
    // The headline names neither.
    let doctor = verdict.needs_action() && suggested(&decision).0 == Whom::Doctor;
    let urgent = [
        doctor.then_some("Call the doctor now."),
        deteriorating(&decision).then_some(DETERIORATION),
    ];
    // What points to a nerve stands with its nerve.
    let also: Vec<Flag> = decision
        .also
        .iter()
        .filter(|f| !points::is_pointing(f))
        .cloned()
        .collect();
    let why = match verdict {
        Verdict::NotDone(why) => Some(desk.visit.with_untracked(|v| {
            v.map_or(String::new(), |v| {
                capital(&verdict_words::ended_under(why, &v.exam.policy))
            })
        })),
        Verdict::Pass | Verdict::NoDecision => {
            let early = desk
                .visit
                .with_untracked(|v| v.and_then(|v| v.exam.ended))
                .map_or(String::new(), |why| {
                    format!("Not finished: {}. ", verdict_words::ended(why))
                });
            let noted = decision.noted().map_or(String::new(), |noted| {
                format!(
                    "{}. Let speech-language pathology know; whether it needs more is your \
                     judgement. ",
                    capital(&verdict_words::noted(&noted))
                )
            });
            let stands = match verdict {
                Verdict::Pass => format!("; {}", verdict_words::ORDER_STANDS),
                _ => String::new(),
            };
            Some(format!(
                "{early}{noted}This screen changes no eating or drinking order{stands}."
            ))
        }
        _ => None,
    };
    all![
        el("section")
            .class(class)
            .with(
                el("p.word")
                    .with(el("span").attr("aria-hidden", "true").with(shape).with(" "))
                    .with(verdict_words::decided(&decision, by))
            )
            .with(why.map(|w| el("p").with(w)))
            .with(urgent.map(|words| words.map(|w| el("p").with(el("b").with(w))))),
        say_if_new(desk),
        list("Why", &decision.reasons),
        list("Missing or not valid", &decision.missing),
        list(
            // Not over what was clear beside a sign.
            if decision.noted().is_some() {
                "As expected"
            } else {
                "No sign"
            },
            &decision.clear
        ),
        oral_points(),
        list("Also found", &also),
        el("p.caution").with(CAUTION),
        rule_fold(&rules::DECISION_HEADLINE),
        el("div.foot")
            .with(
                unfinished
                    .map(|page| { big("", "Go on with the screen", move |_| desk.turn(page)) })
            )
            .with(ended.then(|| take_up(desk, "")))
            .with(trials.map(|page| {
                el("div.row.quiet").with(button("", "Go on with trials", move || desk.turn(page)))
            }))
            .with(big("primary", "Handover", move |_| hand_over(desk)))
            .with(choking_button())
    ]
}

/// On to the text, with the decision recorded as it stands.
pub(super) fn hand_over(desk: Desk) {
    let decided = desk.visit.with_untracked(|v| {
        let decision = v?.decision()?;
        let reasons = decision.reasons.iter().chain(&decision.missing);
        Some(Event::Decided {
            verdict: decision.verdict.id().to_owned(),
            reasons: reasons
                .map(|f| (f.rule().id.to_owned(), f.reason()))
                .collect(),
            versions: versions(),
            policy: v.map_or(String::new(), |v| v.exam.policy.name.clone()),
        })
    });
    desk.record(decided);
    desk.turn(Page::Handover);
}

fn list(heading: &'static str, flags: &[Flag]) -> Option<El> {
    (!flags.is_empty()).then(|| {
        el("section")
            .with(el("h2").with(heading))
            .with(el("ul.flags").with(flags.iter().map(flag_item).collect::<Piece>()))
    })
}
