//! The text for nursing: the decision and what to do first, then the order of ISBAR
//! (identify, situation, background, assessment, recommendation).

use super::action::{deteriorating, is_deterioration, standing, suggested};
pub use super::issue::Clock;
use super::issue::after_last;
use super::levels;
use super::room::{Part, Room, always, at_least, kept, plain, some_of};
use super::untested;
use crate::clinical::decision::{Decision, Verdict};
use crate::clinical::exam::EndedEarly;
use crate::clinical::exam::Exam;
use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::gate::{self, State, hold_id};
use crate::clinical::oral;
use crate::clinical::oral::against_gate::against_gate;
use crate::clinical::rules;
use crate::clinical::screen::ScreenId;
use crate::clinical::sign::{Sign, SignTask, meaning};
use crate::clinical::task::TaskId;
use crate::clinical::tasks::{
    self, breath_taps, breathing, by_mouth, own, saturation, watched, water,
};
use crate::clinical::trial::Trial;
use crate::clinical::words::{capital, small};
use crate::measure::time::{Millis, elapsed};
use crate::record::event::{Action, Plan, Text};
use crate::record::visit::Visit;

/// Most characters the text of a Swallow screen may have: one phone screen.
pub const MOST: usize = 1_200;

/// Writes the text. None where the visit has no screen to decide on.
pub fn write(visit: &Visit, now: &Clock) -> Option<String> {
    let decision = visit.decision()?;
    Some(after_last(visit, Text::Nursing, now, &|now, before| {
        fitted(visit, &decision, now, before)
    }))
}

/// The longest text that fits one phone screen. The lines at the top are never cut.
fn fitted(visit: &Visit, decision: &Decision, now: &Clock, before: &str) -> String {
    let mut room = Room::FULL;
    loop {
        let text = format!("{before}{}", body(visit, decision, now, room));
        if text.chars().count() < MOST {
            return text;
        }
        let Some(less) = room.less() else {
            return text;
        };
        room = less;
    }
}

fn body(visit: &Visit, decision: &Decision, now: &Clock, room: Room) -> String {
    let plan = standing(decision, &visit.plan);
    let mut lines = vec![headline(visit, decision, &plan)];
    lines.extend(until_review(visit, decision, &plan));
    lines.push(String::new());
    lines.push(format!("Identify: {}", identify(visit, now)));
    lines.push(format!(
        "Situation: {}.",
        situation(visit, decision, room.kept.max(3))
    ));
    let background = background(visit, room.holding);
    if !background.is_empty() {
        let told = some_of(background, room.background, room.kept);
        lines.push(format!("Background: {told}."));
    }
    let assessment = assessment(visit, decision);
    if !assessment.is_empty() {
        let told = some_of(assessment, room.assessment, room.kept);
        lines.push(format!("Assessment: {told}."));
    }
    lines.extend(examined(visit, room.examined));
    lines.push(format!(
        "Recommendation: {}",
        recommendation(visit, decision, &plan, room.whole)
    ));
    lines.push(format!(
        "This is a screen, not a diagnosis; silent aspiration is not seen. Policy: {}.",
        visit.exam.policy.name
    ));
    lines.join("\n")
}

fn addressed(decision: &Decision, plan: &Plan) -> (&'static str, &'static str) {
    let (whom, by_when) = suggested(decision);
    (
        plan.whom.unwrap_or(whom).words(),
        plan.by_when.unwrap_or(by_when).words(),
    )
}

pub(super) fn headline(visit: &Visit, decision: &Decision, plan: &Plan) -> String {
    let (whom, by_when) = addressed(decision, plan);
    match decision.verdict {
        Verdict::Stop => format!("STOP: no more trials by mouth. Call {whom} {by_when}."),
        Verdict::Refer => format!("REFER to {whom} {by_when}."),
        Verdict::Incomplete => format!("INCOMPLETE: not cleared. To {whom} {by_when}."),
        Verdict::Pass if visit.screen == Some(ScreenId::OwnTrials) => {
            "NO SIGN SEEN in what was given, listed below, and of nothing else. \
             This screen changes no eating or drinking order."
                .to_owned()
        }
        Verdict::Pass => "NO SIGN SEEN on this screen. \
                          This screen changes no eating or drinking order."
            .to_owned(),
        Verdict::NoDecision if visit.exam.ended.is_some() => {
            "EXAMINATION NOT FINISHED: face, mouth or speech. No food or drink was tested. \
             This changes no eating or drinking order."
                .to_owned()
        }
        Verdict::NoDecision => "EXAMINED: face, mouth or speech. No food or drink was tested. \
                                This changes no eating or drinking order."
            .to_owned(),
        Verdict::NotDone(EndedEarly::Emergency) => {
            "EMERGENCY: swallow screen NOT DONE. Use your local emergency procedure.".to_owned()
        }
        Verdict::NotDone(why) => {
            let why = closed_by(decision)
                .first()
                .map_or_else(|| why.told(&visit.exam.policy), |f| worded(f));
            format!("SWALLOW SCREEN NOT DONE: {why}. To {whom} {by_when}.")
        }
    }
}

/// What closed the gate.
fn closed_by(decision: &Decision) -> Vec<&Flag> {
    if decision.verdict != Verdict::NotDone(EndedEarly::GateClosed) {
        return Vec::new();
    }
    let closed = |f: &&Flag| {
        let id = f.rule().id;
        let readings = [
            rules::BREATHING_RATE.id,
            rules::BREATHING_SPO2.id,
            rules::BREATHING_SECOND_SCALE.id,
        ];
        readings.contains(&id) || id.starts_with("gate.") && id != rules::GATE_NOT_ASKED.id
    };
    // Failing breathing or alertness gives the headline, whatever else closed it.
    let (grave, others): (Vec<&Flag>, Vec<&Flag>) = decision
        .missing
        .iter()
        .filter(closed)
        .partition(|f| is_deterioration(f));
    grave.into_iter().chain(others).collect()
}

/// What to do until somebody reviews.
pub(super) fn until_review(visit: &Visit, decision: &Decision, plan: &Plan) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = |words: String| lines.push(words);
    let nothing = "NOTHING BY MOUTH, tablets included, until assessed.";
    let planned_risk = visit.exam.has_risk_plan();
    let ask = "A plan to eat and drink with acknowledged risks exists: ask now whether it stands.";
    let emergency = decision.verdict == Verdict::NotDone(EndedEarly::Emergency);
    let nothing_by_mouth = emergency || plan.action == Some(Action::NothingByMouth);
    if emergency {
        if !visit.last_well.trim().is_empty() {
            line(format!("Last well: {}.", sentence(&visit.last_well)));
        }
        line(nothing.to_owned());
        if planned_risk {
            line(ask.to_owned());
        }
    }
    if deteriorating(decision) {
        line("Breathing or alertness: use your local procedure for deterioration.".to_owned());
    }
    if decision.reasons.iter().any(no_swallow) {
        line("No swallow was seen or felt: clear the mouth.".to_owned());
    }
    if decision.verdict.needs_action() {
        match plan.action {
            Some(Action::NothingByMouth) => {
                line(nothing.to_owned());
                if planned_risk {
                    line(ask.to_owned());
                }
            }
            Some(Action::KeepPlan) => line(format!(
                "Keep the current plan, because {}.",
                small(&sentence(&plan.because))
            )),
            Some(Action::AcknowledgedRisk) => line(if planned_risk {
                "The plan to eat and drink with acknowledged risks goes on.".to_owned()
            } else {
                format!(
                    "Acknowledged-risk plan, because {}: follow it where it is recorded.",
                    small(&sentence(&plan.because))
                )
            }),
            None => {}
        }
        line(
            if plan.action == Some(Action::NothingByMouth) {
                "Time-critical medicines: ask the prescriber now for another route."
            } else {
                "Time-critical medicines: ask the prescriber now."
            }
            .to_owned(),
        );
    }
    // No level to drink or eat beside "nothing by mouth".
    if !nothing_by_mouth {
        lines.extend(diet(plan));
    }
    lines
}

/// Whether a flag says that something was given and no swallow came.
fn no_swallow(flag: &Flag) -> bool {
    SignTask::ALL
        .iter()
        .any(|task| meaning(Sign::NoSwallow, *task).1.id == flag.rule().id)
}

/// The levels the clinician picked, if any.
fn diet(plan: &Plan) -> Option<String> {
    let drink = plan
        .drink
        .and_then(levels::drink)
        .map(|d| format!("drinks level {d}"));
    let food = plan
        .food
        .and_then(levels::food)
        .map(|f| format!("food level {f}"));
    let both: Vec<String> = drink.into_iter().chain(food).collect();
    (!both.is_empty()).then(|| {
        format!(
            "{}: set by the clinician, not by this screen.",
            capital(&both.join(", "))
        )
    })
}

pub(super) fn identify(visit: &Visit, now: &Clock) -> String {
    let mut parts = vec![visit.label()];
    if let Some(details) = &visit.details {
        parts.extend(details.age.map(|a| a.to_string()));
        parts.extend(details.sex.map(|s| s.words().to_owned()));
        parts.extend(details.setting.map(|s| s.words().to_owned()));
    }
    format!(
        "{}. Patient: ____ (check the name band). By a {}, {}, {}.",
        parts.join(", "),
        visit.role.words(),
        now.date,
        now.time
    )
}

fn situation(visit: &Visit, decision: &Decision, most: usize) -> String {
    let reasons = || decision.reasons.iter().map(situated);
    let words = |words: &str| kept(words);
    let mut parts: Vec<Part> = match decision.verdict {
        Verdict::Stop | Verdict::Refer => reasons().collect(),
        Verdict::Incomplete => decision.missing.iter().map(situated).collect(),
        Verdict::Pass if visit.screen == Some(ScreenId::OwnTrials) => {
            vec![words("own trials given")]
        }
        Verdict::Pass => vec![words("swallow screen done")],
        Verdict::NoDecision if visit.exam.ended.is_some() => {
            vec![words("examination not finished")]
        }
        Verdict::NoDecision => {
            vec![words("examination done")]
        }
        Verdict::NotDone(EndedEarly::Emergency) => decision
            .missing
            .iter()
            .chain(&decision.reasons)
            .filter(|f| f.domain() == Domain::Urgent || f.level() >= Level::Refer || is_seen(f))
            .map(situated)
            .collect(),
        // The headline says why it was not done; what was seen before is told all the same.
        Verdict::NotDone(_) => {
            let closed = closed_by(decision);
            let told: Vec<&str> = closed.iter().map(|f| f.reason()).collect();
            let seen = |f: &&Flag| is_seen(f) && !told.contains(&f.reason());
            let seen = decision.missing.iter().filter(seen);
            closed.iter().copied().chain(seen).map(situated).collect()
        }
    };
    match (visit.exam.ended, decision.verdict) {
        (Some(EndedEarly::Withdrew | EndedEarly::Refused | EndedEarly::BrokenOff), verdict)
            if !matches!(verdict, Verdict::NotDone(_)) =>
        {
            parts.extend(visit.exam.ended.map(|e| kept(e.words())));
        }
        _ => {}
    }
    if parts.is_empty() {
        parts.push(words("swallow screen not done"));
    }
    some_of(parts, 0, most)
}

/// A flag in the situation: nothing of it is cut first.
fn situated(flag: &Flag) -> Part {
    if is_airway_tube(flag) {
        always(worded(flag))
    } else {
        kept(worded(flag))
    }
}

/// A flag beside the headline: what was seen or read in a trial is among the last to be cut.
fn beside(flag: &Flag) -> Part {
    if is_seen(flag) {
        situated(flag)
    } else {
        plain(worded(flag))
    }
}

/// A flag in words. A reading above its target reads as well as any, unless that is said.
fn worded(flag: &Flag) -> String {
    let words = small(flag.reason());
    if flag.rule().id == rules::BREATHING_SECOND_SCALE.id && flag.level() >= Level::Incomplete {
        format!("{words}, above the confirmed 88 to 92 %")
    } else {
        words
    }
}

/// Whether a flag says what was seen of the person, or read, rather than what was left out.
fn is_seen(flag: &Flag) -> bool {
    let rule = flag.rule().id;
    let named = |sign: Sign| {
        let table = |task: &SignTask| meaning(sign, *task).1.id == rule;
        flag.reason().contains(sign.past()) || SignTask::ALL.iter().any(table)
    };
    is_airway_tube(flag) || is_deterioration(flag) || Sign::ALL.into_iter().any(named)
}

fn is_airway_tube(flag: &Flag) -> bool {
    flag.rule().id == rules::GATE_AIRWAY_TUBE.id
}

/// Items of the gate worth saying when they hold, and the words for it.
const HOLDING: [(&str, &str); 4] = [
    ("awake", "awake"),
    ("upright", "sits upright"),
    ("saliva", "manages saliva"),
    ("cough", "can cough"),
];

pub(super) fn background(visit: &Visit, holds: bool) -> Vec<Part> {
    let exam = &visit.exam;
    let mut parts = Vec::new();
    let against = against_gate(exam);
    let holding: Vec<&str> = HOLDING
        .iter()
        .filter(|(id, _)| exam.gate.0.get(id).is_some_and(|a| a == gate::HOLDS))
        // What was seen in the mouth later outranks it.
        .filter(|(id, _)| against.iter().all(|a| a.item.id != *id))
        .filter(|(id, _)| *id != "saliva" || !wet_before(exam))
        .map(|(_, words)| *words)
        .collect();
    if holds && !holding.is_empty() {
        parts.push(plain(holding.join(", ")));
    }
    parts.extend(against.iter().filter_map(|a| {
        let on = exam.went_on(&a.hold, a.go_on)?;
        Some(kept(small(&on.told(&a.says))))
    }));
    // The gravest first: what is counted and not listed is the least.
    for wanted in [State::Block, State::Fix, State::Caution] {
        for (item, exception, state) in exam.gate.exceptions(&exam.policy) {
            if state != wanted {
                continue;
            }
            match exam.went_on(&hold_id(item, exception), gate::go_on(item)) {
                Some(on) => {
                    let words = small(&on.told(exception.words));
                    parts.push(if item.rule.id == rules::GATE_AIRWAY_TUBE.id {
                        at_least(small(exception.words), words)
                    } else {
                        kept(words)
                    });
                }
                // Those that closed the gate stand in the situation already.
                None if state >= State::Block => {}
                None => parts.push(plain(small(exception.words))),
            }
        }
    }
    let mut rates = Vec::new();
    let mut saturations: Vec<String> = Vec::new();
    for trial in exam.trials.iter().filter(|t| t.task == TaskId::Breathing) {
        let finding = breathing::read(trial);
        rates.extend(
            finding
                .rates
                .iter()
                .map(|(r, m)| breathing::rate_words(*r, *m)),
        );
        if let Some(percent) = finding.spo2 {
            saturations.push(breathing::spo2_words(
                percent,
                finding.oxygen,
                finding.target,
            ));
        }
    }
    if rates.is_empty() && exam.age.is_some_and(|a| !a.is_adult()) {
        rates.extend(
            breath_taps::rate(exam)
                .map(|(rate, _)| breathing::rate_words(rate, breathing::Method::Shorter)),
        );
    }
    if !rates.is_empty() {
        parts.push(kept(rates.join(", then ")));
    }
    if !saturations.is_empty() {
        parts.push(kept(saturations.join(", then ")));
    }
    let asked = visit.screen.is_some_and(|id| id.screen().gate);
    if parts.is_empty() && asked {
        parts.push(plain("questions before the start not finished"));
    }
    parts
}

/// Whether the voice was heard wet before something was given.
fn wet_before(exam: &Exam) -> bool {
    let wet = |trial: &Trial| trial.choice(water::VOICE_BEFORE) == Some("wet");
    exam.trials.iter().any(wet)
}

fn assessment(visit: &Visit, decision: &Decision) -> Vec<Part> {
    let mut parts = Vec::new();
    let passed = |f: &&Flag| f.rule().id == rules::HOLD_PASSED.id;
    parts.extend(
        decision
            .also
            .iter()
            .filter(passed)
            .map(|f| kept(small(f.reason()))),
    );
    parts.extend(choking(visit).map(always));
    for flag in &decision.clear {
        if flag.rule().id == rules::DRY_FEW.id {
            parts.push(plain(small(flag.reason())));
        }
    }
    let cups: Vec<&Trial> = by_mouth::given(TaskId::Water90, &visit.exam).collect();
    for (cup, n) in cups.iter().zip(1..) {
        let which = match cups.len() {
            1 => String::new(),
            _ => format!("cup {n}: "),
        };
        parts.push(kept(format!("{which}{}", water_words(visit, cup))));
    }
    if matches!(decision.verdict, Verdict::Stop | Verdict::Refer) {
        parts.extend(decision.missing.iter().map(beside));
    }
    for flag in &decision.also {
        // What was gone past at the gate stands in the background, readings too.
        let told =
            flag.domain() != Domain::Urgent && flag.rule().id.starts_with("gate.") || passed(&flag);
        match flag.domain() {
            _ if told => {}
            // What decides nothing is told where it is a flag, without its comparison.
            Domain::Breathing | Domain::SpeechVoice | Domain::Mouth => {
                if flag.level() >= Level::Refer {
                    parts.push(kept(first_part(flag.reason())));
                }
            }
            // The rate means nothing on a ward; that it was slow is said with what was drunk.
            _ if flag.rule().id == rules::TIMED_WATER_SLOW.id => {}
            Domain::Urgent | Domain::EatingDrinking => parts.push(beside(flag)),
        }
    }
    parts.extend(untested::told(visit, decision).into_iter().map(plain));
    parts.extend(
        TaskId::ALL
            .iter()
            .filter_map(|task| tasks::summary(*task, &visit.exam))
            .map(plain),
    );
    // A part each, so that what does not fit is counted and not cut.
    parts.extend(own::told(&visit.exam).into_iter().map(kept));
    parts
}

/// Face, mouth and throat, where the screen has it: exceptions with side and severity, what was
/// not tested and why, and everything else in one sentence. No nerves.
fn examined(visit: &Visit, most: usize) -> Option<String> {
    let screen = visit.screen?.screen();
    let regions: Vec<oral::Region> = screen.oral.regions().collect();
    let flagged = |item| {
        oral::flags::of_item(&visit.exam, item)
            .iter()
            .any(|f| f.level() >= Level::Refer)
    };
    (!regions.is_empty()).then(|| oral::told::line(&visit.exam.oral, &regions, most, flagged))
}

/// A reason up to its comparison, which the full record has.
fn first_part(reason: &str) -> String {
    let end = reason
        .find("; ")
        .or_else(|| reason.find(". "))
        .unwrap_or(reason.len());
    small(&reason[..end])
}

/// How a choking went.
pub(super) fn choking(visit: &Visit) -> Option<String> {
    let choking = visit.choking()?;
    let after = |at| {
        elapsed(choking.since, at, true)
            .length
            .map_or_else(|| "an unknown time".to_owned(), minutes)
    };
    let help = choking.help.map_or_else(
        || "help call not recorded".to_owned(),
        |at| format!("help called after {}", after(at)),
    );
    let over = choking.over.map_or_else(
        || "NOT back to baseline yet".to_owned(),
        |at| format!("back to baseline after {}", after(at)),
    );
    let (_, earlier) = visit.chokings.split_last()?;
    let what = match earlier.len() {
        0 => "choking".to_owned(),
        n => format!("choked {} times, the last time", n + 1),
    };
    // The one that went well does not cover the one before it.
    let no_help = earlier.iter().any(|c| c.help.is_none());
    let no_end = earlier.iter().any(|c| c.over.is_none());
    let before = match (no_help, no_end) {
        (true, true) => " (before that: help call not recorded, back to baseline not recorded)",
        (true, false) => " (before that: help call not recorded)",
        (false, true) => " (before that: back to baseline not recorded)",
        (false, false) => "",
    };
    Some(format!("{what}: {help}, {over}{before}"))
}

/// "1 min 5 s".
fn minutes(length: Millis) -> String {
    let seconds = length.0.max(0) / 1000;
    if seconds < 60 {
        format!("{seconds} s")
    } else {
        format!("{} min {} s", seconds / 60, seconds % 60)
    }
}

/// The water test in words a ward uses.
fn water_words(visit: &Visit, trial: &Trial) -> String {
    let finding = water::read(trial);
    let stopped = |(sign, _): &(Sign, water::Seen)| {
        matches!(
            sign,
            Sign::Pause | Sign::Choke | Sign::AskedToStop | Sign::NoSwallow | Sign::BreathingChange
        )
    };
    let mut words = match finding.cup {
        // A sign that means it was not one go outranks the press that says it was.
        Some(water::Cup::InOneGo) if finding.signs.iter().any(stopped) => {
            "90 mL of water, cup emptied".to_owned()
        }
        Some(water::Cup::InOneGo) => "90 mL of water drunk in one go".to_owned(),
        Some(water::Cup::Paused) => "90 mL of water drunk with a pause".to_owned(),
        Some(water::Cup::Left(_)) => "90 mL of water offered, not finished".to_owned(),
        None => "90 mL of water offered".to_owned(),
    };
    if let Some(length) = finding.drinking.and_then(|e| e.length)
        && length >= water::LEAST
    {
        words.push_str(&format!(" in {} seconds", length.0 / 1000));
    }
    match finding.watch {
        water::Watch::Whole if watched::missing(trial).is_some() => {}
        water::Watch::Whole if nothing_seen(visit, trial) => {
            words.push_str(", no sign for 60 seconds after it");
        }
        water::Watch::Whole => words.push_str(", watched for 60 seconds"),
        _ => {}
    }
    match (finding.before, finding.after) {
        (Some(before), Some(after)) if before == after => {
            words.push_str(&format!(", voice {} before and after", before.words()));
        }
        (Some(before), Some(after)) => words.push_str(&format!(
            ", voice {} before, {} after",
            before.words(),
            after.words()
        )),
        _ => {}
    }
    words
}

/// Whether nothing was seen, heard, read or pressed from the start of a cup to the end of its watch.
fn nothing_seen(visit: &Visit, trial: &Trial) -> bool {
    // On the page of choking, which has no trial. What the clocks can't place counts.
    let choked = visit.chokings.iter().any(|choking| {
        let since = |at| trial.between(at, choking.since).length;
        let begun = trial.start().and_then(since);
        let ended = trial.end().and_then(since);
        begun.is_none_or(|l| l >= Millis::ZERO) && ended.is_none_or(|l| l <= water::WATCH)
    });
    let low = trial.number(saturation::LOWEST).is_some()
        && saturation::flags(trial.task, &visit.exam)
            .iter()
            .any(|f| f.level() >= Level::Incomplete);
    !choked && !low && by_mouth::seen(trial).is_empty()
}

pub(super) fn recommendation(
    visit: &Visit,
    decision: &Decision,
    plan: &Plan,
    whole: bool,
) -> String {
    if decision.verdict == Verdict::NotDone(EndedEarly::Emergency) {
        return "the local emergency procedure. Screen when it is over.".to_owned();
    }
    let (whom, _) = addressed(decision, plan);
    // A limit of neck or spine goes before sitting up.
    let limit = visit.exam.gate.0.get("spine").is_some_and(|a| a == "limit");
    let position = if limit {
        "as upright as the neck or spine limit allows"
    } else {
        "upright"
    };
    let first = match (decision.verdict, plan.action) {
        (Verdict::Pass | Verdict::NoDecision, _) => format!(
            "keep to the orders in force; food and drink only awake and {position}; mouth care"
        ),
        (_, Some(Action::NothingByMouth)) => format!("mouth care; {position}"),
        _ => format!("only awake and {position}; mouth care"),
    };
    // How long is local: said only where the policy says it, and where something may be taken.
    let upright = visit.exam.policy.upright_minutes;
    let upright = if upright > 0 && plan.action != Some(Action::NothingByMouth) {
        format!(
            " {} for {upright} minutes after eating or drinking.",
            if limit { "Stay so" } else { "Upright" }
        )
    } else {
        String::new()
    };
    // Signs to watch for: adult dysphagia policy (NHS-AA). When to screen again: RNAO.
    let mut text = format!(
        "{first}.{upright} Watch for coughing or choking, a wet voice, watering eyes, colour change, fever. \
         If any of these: {}call {whom} now.",
        if plan.action == Some(Action::NothingByMouth) {
            ""
        } else {
            "stop and "
        },
    );
    if whole {
        text.push_str(
            " Screen again after any new weakness, drowsiness, chest or swallowing change.",
        );
    }
    if !plan.remark.trim().is_empty() {
        text.push_str(&format!(" {}.", sentence(&plan.remark)));
    }
    text
}

/// Free words as the end of a sentence: trimmed, in one line, without a full stop of their own.
fn sentence(words: &str) -> String {
    let line = words.split_whitespace().collect::<Vec<_>>().join(" ");
    line.trim_end_matches('.').to_owned()
}
