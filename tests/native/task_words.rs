//! Every task says in words what its data names by id, and no words stand for what no task has.

use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::by_mouth::questions::WATCH_CUT_REASONS;
use penlight::clinical::tasks::spec::{Takes, TaskSpec, WATCH_CUT};
use penlight::wording::tasks as words;
use penlight::wording::tasks::shared::{RETIRED_VOICE, SHARED};
use penlight::wording::tasks::task_words::Ask;

/// What is asked in a task under one id.
struct Asked {
    id: &'static str,
    /// Whether the question itself is shown, not its answers alone.
    shown: bool,
    number: bool,
    choices: Vec<&'static str>,
}

fn asked(spec: &TaskSpec) -> Vec<Asked> {
    let mut all: Vec<Asked> = spec
        .questions
        .iter()
        .map(|q| Asked {
            id: q.id,
            shown: true,
            number: matches!(q.takes, Takes::Number { .. } | Takes::Tenths { .. }),
            choices: match q.takes {
                Takes::OneOf(choices) => choices.to_vec(),
                Takes::Words(_) | Takes::Number { .. } | Takes::Tenths { .. } => Vec::new(),
            },
        })
        .collect();
    let choices = |id, shown, choices: &[&'static str]| Asked {
        id,
        shown,
        number: false,
        choices: choices.to_vec(),
    };
    all.extend(spec.untimed.map(|u| choices(u.question, false, u.choices)));
    all.extend(
        spec.pad
            .watch
            .map(|_| choices(WATCH_CUT, true, WATCH_CUT_REASONS)),
    );
    all
}

fn all_asked() -> impl Iterator<Item = (TaskId, Asked)> {
    let tasks = TaskId::ALL.iter().copied();
    tasks.flat_map(|id| asked(tasks::spec(id)).into_iter().map(move |a| (id, a)))
}

#[test]
fn every_question_choice_and_number_of_a_task_has_words() {
    let mut choices = 0;
    for (task, asked) in all_asked() {
        let at = format!("{task:?}, {}", asked.id);
        if asked.shown {
            assert!(!words::ask(task, asked.id).is_empty(), "{at}");
        }
        // What was counted on one breath is a number and nothing else.
        let bare = asked.id == "reached";
        let unit = words::unit(task, asked.id);
        assert_eq!(!unit.is_empty(), asked.number && !bare, "{at}: {unit:?}");
        for choice in &asked.choices {
            let words = words::choice(task, asked.id, choice);
            assert!(words.is_some_and(|w| !w.is_empty()), "{at}: {choice}");
            choices += 1;
        }
    }
    assert!(choices > 100, "only {choices} choices read");
}

#[test]
fn no_words_stand_for_what_no_task_asks() {
    let mut of_tasks: Vec<(&'static Ask, Option<TaskId>)> =
        SHARED.iter().map(|ask| (ask, None)).collect();
    for task in TaskId::ALL {
        let own = words::of(*task).asks.iter();
        of_tasks.extend(own.map(|ask| (ask, Some(*task))));
    }
    for (ask, of) in of_tasks {
        // Those that are said in these very words.
        let users: Vec<Asked> = all_asked()
            .filter(|(task, asked)| {
                asked.id == ask.id
                    && of.is_none_or(|of| of == *task)
                    && words::asked(*task, ask.id).is_some_and(|a| std::ptr::eq(a, ask))
            })
            .map(|(_, asked)| asked)
            .collect();
        let at = format!("{of:?}, {}", ask.id);
        assert!(!users.is_empty(), "{at}: asked nowhere");
        let shown = users.iter().any(|asked| asked.shown);
        assert_eq!(shown, !ask.ask.is_empty(), "{at}");
        for (choice, _) in ask.choices.iter().filter(|c| **c != RETIRED_VOICE) {
            let offered = users.iter().any(|asked| asked.choices.contains(choice));
            assert!(offered, "{at}: {choice} is offered nowhere");
        }
        let mut ids: Vec<&str> = ask.choices.iter().map(|(id, _)| *id).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), ask.choices.len(), "{at}: a choice stands twice");
    }
}

#[test]
fn a_question_stands_once_among_the_words_of_a_task() {
    let own = TaskId::ALL.iter().map(|task| words::of(*task).asks);
    for asks in own.chain([SHARED]) {
        let mut ids: Vec<&str> = asks.iter().map(|ask| ask.id).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), asks.len(), "{asks:?}");
    }
}

#[test]
fn no_text_is_empty_where_the_page_shows_it() {
    for task in TaskId::ALL {
        let (spec, words) = (tasks::spec(*task), words::of(*task));
        assert!(!words.title.is_empty(), "{task:?}");
        assert!(!words.caveat.is_empty(), "{task:?}");
        assert!(!words.for_whom.is_empty(), "{task:?}");
        assert!(words.steps.iter().all(|step| !step.is_empty()), "{task:?}");
        let (one, many) = words.counts;
        assert_eq!(
            (one.is_empty(), many.is_empty()),
            (!spec.pad.counts, !spec.pad.counts),
            "{task:?}"
        );
        // These have a page of their own, without a pad.
        let has_pad = *task != TaskId::SixSigns;
        assert_eq!(!words.start.is_empty(), has_pad, "{task:?}");
        let ends = has_pad && spec.pad.ends_by_press();
        assert_eq!(words.end.is_some(), ends, "{task:?}");
        assert!(words.end.is_none_or(|end| !end.is_empty()), "{task:?}");
    }
}

/// Questions that may be left open stand behind a press on what they are about.
#[test]
fn what_is_folded_away_before_the_start_says_what_it_is_about() {
    use penlight::clinical::tasks::spec::{NOT_VALID, When};
    for task in TaskId::ALL.iter().filter(|t| **t != TaskId::SixSigns) {
        let folded = tasks::spec(*task)
            .questions
            .iter()
            .any(|q| q.when == When::Before && !q.needed && q.id != NOT_VALID);
        assert_eq!(!words::of(*task).more.is_empty(), folded, "{task:?}");
    }
}
