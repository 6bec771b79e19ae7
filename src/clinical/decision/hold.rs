//! What holds up a task that gives something by mouth, and who may go on past it.

use crate::clinical::decision::fresh;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Flag, Level};
use crate::clinical::findings::gate;
use crate::clinical::findings::gate::State;
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::moment::Moment;
use crate::clinical::findings::oral::Found;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::by_mouth::{holding, lag};
use crate::clinical::tasks::oral;
use crate::clinical::tasks::oral::against_gate::against_gate;
use crate::clinical::tasks::timed_water::judge as timed_water;
use crate::clinical::tasks::water::Watch;
use crate::clinical::tasks::{breathing, by_mouth, dry_swallow, sips, water};
use crate::wording;
use crate::wording::words::small;

/// Begins the id of the hold by weakness that could be new.
pub const COULD_BE_NEW: &str = "oral.could-be-new";

/// The hold by this weakness.
pub fn could_be_new(weak: &[Found]) -> String {
    format!("{COULD_BE_NEW}.{}", wording::found::all(weak))
}

/// The hold by a screen that was ended.
pub const ENDED: &str = "ended";

/// The reason that answers whether it is new: nobody asks again.
pub const TEAM_KNOWS: &str = "the team knows";

/// One thing in the way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hold {
    /// Stable id, under which going on is recorded.
    pub id: String,
    /// What is in the way, in plain words.
    pub says: String,
    /// What to do about it, where there is something.
    pub advice: String,
    /// Who may go on.
    pub go_on: GoOn,
    /// The rule that holds it.
    pub rule: &'static Rule,
}

/// What held up `task` when something last happened, what was gone past already left out.
pub fn holds(task: TaskId, exam: &Exam) -> Vec<Hold> {
    holds_at(task, exam, exam.now)
}

/// What holds up `task` at a moment, what was gone past already left out.
pub fn holds_at(task: TaskId, exam: &Exam, now: Moment) -> Vec<Hold> {
    let spec = tasks::spec(task);
    let mut holds = Vec::new();
    let mut hold = |id: String, says: String, advice: &str, go_on: GoOn, rule: &'static Rule| {
        holds.push(Hold {
            id,
            says,
            advice: advice.to_owned(),
            go_on,
            rule,
        });
    };
    if let Some(aside) = tasks::aside(task, exam) {
        let says = aside.reason().to_owned();
        hold(
            format!("{task:?}.not-for"),
            says,
            "",
            GoOn::Never,
            aside.rule(),
        );
    }
    // Whoever declined, or wanted to stop, is asked again before anything is given.
    if let Some(why) = exam.ended.filter(|_| spec.by_mouth) {
        hold(
            ENDED.to_owned(),
            format!("The screen was ended: {}", why.told(&exam.policy)),
            "Ask the person again before you take it up.",
            GoOn::Never,
            &rules::GATE_CONSENT,
        );
    }
    for (item, exception, state) in exam.gate.exceptions(&exam.policy) {
        let go_on = match state {
            State::Caution => continue,
            State::Emergency => GoOn::Never,
            _ if !spec.by_mouth => continue,
            State::Block | State::Fix => gate::go_on(item),
        };
        hold(
            gate::hold_id(item, exception),
            wording::gate::exception(item, exception).to_owned(),
            &wording::gate::advice(item, exception, &exam.policy),
            go_on,
            item.rule,
        );
    }
    if spec.by_mouth {
        for against in against_gate(exam) {
            let rule = against.item.rule;
            let advice = wording::gate::advice(against.item, against.worst, &exam.policy);
            let says = wording::found::named(&against.found);
            hold(against.hold, says, &advice, against.go_on, rule);
        }
    }
    if tasks::of_adults(task, exam) {
        hold(
            format!("child.{task:?}"),
            "Studied in adults: no line for children was found".to_owned(),
            "Say why it is given to this child.",
            GoOn::WithReason,
            &rules::PERSON_CHILD_TRIAL,
        );
    }
    // Found after the gate was told that nothing is new: before anything is given, somebody says so.
    if spec.by_mouth
        && exam.gate.0.contains_key(oral::flags::WEAKNESS)
        && let Some(weak) = oral::flags::unsaid(exam)
    {
        hold(
            could_be_new(&weak),
            format!(
                "The examination found weakness where nothing new or worse was known: {}",
                small(&wording::found::all(&weak))
            ),
            "If it is new or worse and the team does not know: go back and say so there.",
            GoOn::WithReason,
            &rules::GATE_NEW_WEAKNESS,
        );
    }
    // Watching a meal gives nothing, but after a choke nobody eats on unasked.
    let choked = exam.choked || exam.choke_pressed();
    if choked && (spec.by_mouth || task == TaskId::Meal) {
        hold(
            format!("choked.{task:?}.{}", exam.which_chokings()),
            "Choked".to_owned(),
            "",
            GoOn::SlpWithReason,
            &rules::TRIAL_CHOKE,
        );
    }
    if spec.by_mouth {
        let open = exam.gate.open().count();
        if open > 0 {
            hold(
                "gate.open".to_owned(),
                format!("{open} of the questions before you start are not answered"),
                "Answer them first.",
                GoOn::Never,
                &rules::GATE_NOT_ASKED,
            );
        }
        let voice = fresh::old_voice(task, exam, now);
        for old in fresh::old(exam, now).into_iter().chain(voice) {
            let rule = &rules::GATE_READY_OLD;
            let says = wording::fresh::says(&old);
            let advice = wording::fresh::advice(old.what);
            hold(old.hold(), says, advice, old.go_on(), rule);
        }
        for block in breathing::blocks(exam) {
            let says = block.flag.reason().to_owned();
            hold(block.hold, says, "", block.go_on, block.flag.rule());
        }
        // As answered here, or as it would be taken over from the trial before.
        let heard = by_mouth::heard_before(task, exam).map(str::to_owned);
        let taken = tasks::taken_over(task, exam)
            .into_iter()
            .find(|(question, _)| *question == water::VOICE_BEFORE)
            .and_then(|(_, answer)| answer.choice().map(str::to_owned));
        if heard.or(taken).as_deref() == Some("wet") {
            // The same as "does not manage saliva" at the gate, heard a little later.
            hold(
                format!("water.wet-before.{task:?}"),
                by_mouth::WET_BEFORE.to_owned(),
                "No oral trial. Refer.",
                GoOn::SlpWithReason,
                &rules::GATE_SALIVA,
            );
        }
        if task == TaskId::Cracker {
            for (flag, go_on, seen) in tasks::cracker::holds(exam) {
                let (rule, why) = (flag.rule(), flag.reason());
                let says = match seen.is_empty() {
                    true => why.to_owned(),
                    false => format!("{why}: {}", holding::words(&seen)),
                };
                let id = format!("{}.{why}.{}", rule.id, holding::state(&seen));
                hold(id, says, "", go_on, rule);
            }
        }
        // Where a screen is chosen that has no dry swallows, a count that was not made holds nothing.
        let dry_asked = exam.screen.is_none()
            || exam.on_screen(TaskId::DrySwallow)
            || exam.latest(TaskId::DrySwallow).is_some();
        let dry = if dry_asked {
            tasks::flags(TaskId::DrySwallow, exam)
        } else {
            Vec::new()
        };
        for flag in dry {
            let go_on = match flag.level() {
                Level::Stop => GoOn::Never,
                Level::Incomplete if dry_swallow::none_and_not_valid(exam) => GoOn::SlpWithReason,
                Level::Refer | Level::Incomplete => GoOn::WithReason,
                Level::Note | Level::Pass => continue,
            };
            hold(
                format!("{}.{}", flag.rule().id, flag.reason()),
                flag.reason().to_owned(),
                "",
                go_on,
                flag.rule(),
            );
        }
        again(task, exam, &mut holds);
        after_others(task, exam, &mut holds);
    } else if task == TaskId::Meal {
        again(task, exam, &mut holds);
        for other in TaskId::ALL.iter().copied().filter(|other| *other != task) {
            holds.extend(after(other, task, exam));
        }
    }
    holds.retain(|h| exam.went_on(&h.id, h.go_on).is_none());
    holds
}

/// Whether a hold is one of the gate's answers, or of what the mouth shows against them.
pub fn is_of_state(hold: &str) -> bool {
    let own = hold.starts_with("gate.") || hold.starts_with("oral.");
    own && !hold.starts_with(COULD_BE_NEW)
}

/// Whether the gate, the mouth or the breathing still show what was gone past: then they tell so
/// themselves.
pub fn stands(hold: &str, exam: &Exam) -> bool {
    let gate = || {
        let mut now = exam.gate.exceptions(&exam.policy);
        now.any(|(item, exception, _)| gate::hold_id(item, exception) == hold)
    };
    gate()
        || against_gate(exam).iter().any(|a| a.hold == hold)
        || breathing::blocks(exam).iter().any(|b| b.hold == hold)
}

/// What was seen in a task that holds another, or its own next trial.
///
/// Watching a meal gives nothing: what stops every trial holds it, and the choke that does so holds
/// it by itself.
fn seen(of: TaskId, task: TaskId, exam: &Exam) -> Vec<Flag> {
    let mut seen = holding::flags(of, exam);
    if task == TaskId::Meal {
        let choke = [&rules::WATER_CHOKE, &rules::TRIAL_CHOKE];
        seen.retain(|flag| flag.level() == Level::Stop && !choke.contains(&flag.rule()));
    }
    seen
}

/// A hold by what was seen, asked for anew for each state of it.
fn by_sign(begins: String, seen: &[Flag], advice: &str) -> Option<Hold> {
    let gravest = seen.first()?;
    let slp = gravest.level() == Level::Stop || seen.iter().any(holding::is_of_breathing);
    // A reading that is no fall is no sign.
    let sign = !seen.iter().all(holding::is_of_breathing) || gravest.level() == Level::Stop;
    Some(Hold {
        id: format!("{begins}.{}", holding::state(seen)),
        says: format!(
            "{}{}",
            if sign { "A sign was seen: " } else { "" },
            holding::words(seen)
        ),
        advice: advice.to_owned(),
        go_on: if slp {
            GoOn::SlpWithReason
        } else {
            GoOn::WithReason
        },
        rule: gravest.rule(),
    })
}

/// What to do about a sign of a task of which nobody said whose it was.
fn say_whose(of: TaskId, exam: &Exam) -> &'static str {
    match by_mouth::given(of, exam).any(|trial| !lag::late(trial).is_empty()) {
        true => "Say beside that trial whether the next was in the mouth.",
        false => "",
    }
}

/// After a sign in this task: no further try without a reason, asked for anew each time.
fn again(task: TaskId, exam: &Exam, holds: &mut Vec<Hold>) {
    let tried = by_mouth::given(task, exam).count();
    holds.extend(by_sign(
        format!("again.{task:?}.{tried}"),
        &seen(task, task, exam),
        say_whose(task, exam),
    ));
}

/// After a sign in one other task: a reason given for it speaks for this task alone.
fn after(other: TaskId, task: TaskId, exam: &Exam) -> Option<Hold> {
    // A meal gives nothing, but what was seen at it holds as well.
    tasks::spec(other).pad.signs?;
    let tried = by_mouth::given(other, exam).count();
    by_sign(
        format!("after.{other:?}.{tried}.{task:?}"),
        &seen(other, task, exam),
        say_whose(other, exam),
    )
}

/// While another trial by mouth is not over.
fn meanwhile(other: TaskId, task: TaskId, exam: &Exam) -> Option<Hold> {
    let spec = tasks::spec(other);
    let runs = |t: &Trial| spec.by_mouth && t.end().is_none();
    let watched = |t: &Trial| spec.pad.watch.is_some() && by_mouth::watch(t) == Watch::Running;
    let tried = by_mouth::given(other, exam).count();
    let (what, says, advice) = if by_mouth::given(other, exam).any(runs) {
        let says = format!(
            "{}: a trial was begun and its end is not pressed",
            spec.title
        );
        ("runs", says, "End it there first.")
    } else if by_mouth::given(other, exam).any(watched) {
        let says = "The watch of 60 seconds after the trial before still runs".to_owned();
        ("watch", says, "")
    } else {
        return None;
    };
    Some(Hold {
        id: format!("{what}.{other:?}.{tried}.{task:?}"),
        says,
        advice: advice.to_owned(),
        go_on: GoOn::WithReason,
        rule: &rules::OWN_OVERLAP,
    })
}

/// After a sign in another trial by mouth, and before small sips were clear.
fn after_others(task: TaskId, exam: &Exam, holds: &mut Vec<Hold>) {
    let mut sips_sign = false;
    for other in TaskId::ALL.iter().copied().filter(|other| *other != task) {
        holds.extend(meanwhile(other, task, exam));
        // A cracker has a rule of its own for a drink that went wrong.
        if task == TaskId::Cracker && other != TaskId::Own && other != TaskId::Meal {
            continue;
        }
        let hold = after(other, task, exam);
        sips_sign |= other == TaskId::Sips && hold.is_some();
        holds.extend(hold);
    }
    if sips_sign {
        return;
    }
    let waits = match task {
        TaskId::Water90 if sips::stepped(exam) => sips::before_90(exam),
        TaskId::TimedWater => timed_water::before(sips::clear(exam)),
        _ => None,
    };
    if let Some(flag) = waits {
        let tried = by_mouth::given(TaskId::Sips, exam).count();
        holds.push(Hold {
            id: format!("{}.{task:?}.{tried}.{}", flag.rule().id, flag.reason()),
            says: flag.reason().to_owned(),
            advice: Default::default(),
            go_on: GoOn::WithReason,
            rule: flag.rule(),
        });
    }
}
