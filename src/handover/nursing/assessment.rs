//! The assessment: what was given, what came of it, and what was examined.

use super::background::old_at;
use super::choking::choking;
use super::cup::water_words;
use super::flag::{gravest_first, is_seen, situated, worded};
use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::fact::{Fact, VisitFact};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::oral::Region;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::oral;
use crate::clinical::tasks::{self, by_mouth};
use crate::handover::issue::Clock;
use crate::handover::parts::{Joined, Line, List, Need, Part};
use crate::handover::untested;
use crate::record::visit::Visit;
use crate::wording;
use crate::wording::flag::visit::despite;
use crate::wording::flag::without_comparison;
use crate::wording::words::small;

pub(super) fn assessment(visit: &Visit, decision: &Decision, now: &Clock) -> Vec<Part> {
    let mut parts = Vec::new();
    let passed = |f: &&Flag| short_passed(f).is_some();
    let kept = |words: String| Part::new(Need::Kept, words);
    let plain = |words: String| Part::new(Need::Assessment, words);
    parts.extend(choking(visit, now).map(|words| Part::new(Need::Always, words)));
    // What was gone past at the gate stands in the background, readings too.
    let told_there = |f: &Flag| f.domain() != Domain::Urgent && f.fact().is_of_gate();
    // What was seen comes before what was gone past for it: of these there may be many.
    let missing = beside_signs(visit, decision);
    // The first line has said it.
    let noted = decision.noted().map(|noted| noted.gravest);
    let also = decision
        .also
        .iter()
        .filter(|f| f.domain().decides() && !told_there(f) && noted != Some(*f));
    let seen = gravest_first(
        missing
            .iter()
            .chain(also)
            .filter(|f| is_seen(f) && !passed(f)),
    );
    parts.extend(seen.into_iter().map(|flag| situated(flag, Need::Kept)));
    let dry = visit.exam.latest_started(TaskId::DrySwallow);
    let dry = dry.and_then(Trial::started_at);
    let dry = old_at(&visit.exam, now, dry, "dry swallows counted at ");
    parts.extend((!dry.is_empty()).then(|| kept(dry)));
    for flag in &decision.clear {
        if flag.rule().id == rules::DRY_FEW.id {
            parts.push(kept(small(&flag.reason())));
        }
    }
    let cups: Vec<&Trial> = by_mouth::given(TaskId::Water90, &visit.exam).collect();
    for (cup, n) in cups.iter().zip(1..) {
        let which = match cups.len() {
            1 => String::new(),
            _ => format!("cup {n}: "),
        };
        let (result, more) = water_words(visit, cup);
        let result = format!("{which}{result}");
        let whole = format!("{result}{more}");
        parts.push(Part::or(Need::Short, whole, result));
    }
    parts.extend(
        missing
            .iter()
            .filter(|f| !is_seen(f))
            .map(|f| kept(worded(f))),
    );
    parts.extend(decision.also.iter().filter_map(|f| {
        let (long, short) = (small(&f.reason()), short_passed(f)?);
        Some(Part::or(Need::GonePast, long, short))
    }));
    for flag in &decision.also {
        let seen = flag.domain().decides() && is_seen(flag);
        let told = told_there(flag) || passed(&flag) || seen;
        match flag.domain() {
            _ if told => {}
            // What decides nothing is told where it is a flag, without its comparison.
            Domain::Breathing | Domain::SpeechVoice | Domain::Mouth => {
                if flag.level() >= Level::Refer {
                    parts.push(kept(small(&without_comparison(flag))));
                }
            }
            // The rate means nothing on a ward; that it was slow is said with what was drunk.
            _ if flag.rule().id == rules::TIMED_WATER_SLOW.id => {}
            Domain::Urgent | Domain::EatingDrinking => parts.push(plain(worded(flag))),
        }
    }
    parts.extend(untested::told(visit, decision).into_iter().map(plain));
    parts.extend(TaskId::ALL.iter().filter_map(|task| {
        let words = wording::task::summary(*task, &visit.exam)?;
        // What was swallowed is no less than what was asked of the speech.
        let by_mouth = task.is_by_mouth();
        Some(if by_mouth { kept(words) } else { plain(words) })
    }));
    // A part each, so that what does not fit is counted and not cut.
    parts.extend(wording::own::told(&visit.exam).into_iter().map(kept));
    parts
}

/// What was given after going on past something, without who decided it and why.
fn short_passed(flag: &Flag) -> Option<String> {
    match flag.fact() {
        Fact::Visit(VisitFact::GonePast { given, past, .. }) => Some(small(&despite(*given, past))),
        _ => None,
    }
}

/// What is missing beside the signs that decided; where the screen was not done, what is missing of
/// what was begun of it.
fn beside_signs(visit: &Visit, decision: &Decision) -> Vec<Flag> {
    let missing = decision.missing.iter();
    match decision.verdict {
        Verdict::Stop | Verdict::Refer => missing.cloned().collect(),
        Verdict::NotDone(why) if why != EndedEarly::Emergency => {
            let tasks = TaskId::ALL.iter().copied();
            let begun = tasks.filter(|task| visit.exam.latest_started(*task).is_some());
            let own: Vec<Flag> = begun
                .flat_map(|task| tasks::flags(task, &visit.exam))
                .collect();
            let of_begun = |f: &&Flag| own.iter().any(|own| own.fact() == f.fact());
            missing
                .filter(|f| !is_seen(f))
                .filter(of_begun)
                .cloned()
                .collect()
        }
        _ => Vec::new(),
    }
}

/// Face, mouth and throat, where the screen has it: exceptions with side and severity, what was
/// not tested and why, and everything else in one sentence. No nerves.
pub(super) fn examined(visit: &Visit) -> Option<Line> {
    let screen = visit.screen?.screen();
    let regions: Vec<Region> = screen.oral.regions().collect();
    if regions.is_empty() {
        return None;
    }
    let flagged = |item| {
        oral::flags::of_item(&visit.exam, item)
            .iter()
            .any(|f| f.level() >= Level::Refer)
    };
    let heading = "Face, mouth and throat: ";
    let Some(told) = wording::oral::examined(&visit.exam.oral, &regions, flagged) else {
        let not = Part::new(Need::Always, wording::oral::NOT_LOOKED_AT);
        return Some(Line::of(List::new(heading, Joined::Run, vec![not])));
    };
    // Said as long as a side is.
    let sided = told.exceptions.iter().position(|e| e.sided);
    let sided = sided.map(|first| Part::new(Need::With(first), wording::oral::WHOSE));
    let found = told.exceptions.into_iter();
    let found = found.map(|e| Part::new(Need::Finding, e.words)).collect();
    let open = told.not_tested.into_iter();
    let open = open.map(|(named, counted)| Part::or(Need::NotTested, named, counted));
    let rest = told.rest.map(|words| Part::new(Need::Always, words));
    let ends = rest.into_iter().chain(sided);
    Some(Line::under(
        heading,
        vec![
            List::new("", Joined::List, found),
            List::new("Not tested: ", Joined::List, open.collect()),
            List::new("", Joined::Words, ends.collect()),
        ],
    ))
}
