//! The task page: what to say, the pad, how it was cued and what came out, and what comes next.
//!
//! One component serves every task; what differs is in the task's data.

use leptos::prelude::*;

use super::count::attach;
use super::desk::Desk;
use super::ended::{choking_row, end_here};
use super::follow::follow;
use super::holds::{held, holds, moment};
use super::order::syllable_order;
use super::pad::{pad, signs_stand};
use super::parts::{big, button, choices, folded, frame_with_pad, overview_of, para};
use super::questions::{question, questions};
use super::result::{figures, own_table, task_result};
use super::route::{Page, Route};
use super::running::{Face, face};
use super::sign_said::sign_said;
use super::silence::silence;
use super::steps;
use super::tally;
use crate::browser::page;
use crate::clinical::decision::fresh;
use crate::clinical::findings::trial::Answer;
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{NOT_VALID, Untimed, WATCH_CUT, When};
use crate::clinical::tasks::{self, cracker, kept, water};
use crate::draw::{Drawn, El, Piece, all, el, live, said, when};
use crate::record::visit::Visit;
use crate::wording::tasks as words;

/// Over a reading of the breathing that is too old for a trial by mouth.
const COUNTED_LONG_AGO: &str = "Counted a while ago: count again before anything is given.";

/// The question under which the way of cueing is kept.
const CUE: &str = "cue";

/// A task.
pub(super) fn task_page(
    // Which.
    task: TaskId,
) -> Piece {
    let desk = Desk::get();
    let spec = tasks::spec(task);
    let words = words::of(task);
    let face = face(desk, task);
    let in_the_way = held(desk, task);
    // Running trials are never held up: what has begun is finished in the open.
    // What is asked first is asked before anything is held up by it.
    let asks_first = task == TaskId::Cracker;
    let asked = follow(move || {
        !asks_first
            || desk
                .visit
                .with(|v| v.is_some_and(|v| cracker::asked(&v.exam)))
    });
    let free =
        follow(move || face.get() != Face::Ready || in_the_way.get().is_empty() && asked.get());
    let offer = follow(move || {
        desk.visit
            .with(|v| v.and_then(|v| crate::wording::task::offer(task, &v.exam)))
    });
    let goes_on = task.goes_on();
    // The next trial is due, and something is in its way.
    let next_held = move || {
        goes_on
            && matches!(face.get(), Face::Watching | Face::Over)
            && offer.get().is_some_and(|o| !o.waits)
            && !in_the_way.get().is_empty()
    };
    let done = follow(move || desk.visit.with(|v| v.is_some_and(|v| steps::done(v, task))));
    // No sip is due any more, and not because all were given: the way on stands on top.
    let ended_by_sign = move || {
        task == TaskId::Sips
            && matches!(face.get(), Face::Watching | Face::Over)
            && offer.get().is_some()
            && done.get()
    };
    let resting = move || matches!(face.get(), Face::Ready | Face::Over | Face::Late);
    let loose = desk
        .visit
        .with_untracked(|v| v.is_some_and(Visit::is_loose));
    let next = move || {
        if page::refused() {
            return;
        }
        if loose {
            desk.go(Route::Home);
            return;
        }
        if let Some(page) = desk
            .visit
            .with_untracked(|v| v.map(|v| steps::after_task(v, task)))
        {
            desk.turn(page);
        }
    };
    let not_timed = move || {
        let newest = |v: &Visit| v.exam.latest(task).is_some_and(|t| spec.is_untimed(t));
        desk.visit.with(|v| v.is_some_and(newest))
    };
    let another = follow(move || {
        desk.visit
            .with(|v| v.is_some_and(|v| tasks::spec(task).another(&v.exam)))
    });
    let old = follow(move || {
        let old = |v: &Visit| fresh::old(&v.exam, moment(v));
        task == TaskId::Breathing
            && desk
                .visit
                .with(|v| v.is_some_and(|v| old(v).iter().any(|o| o.what.is_of_the_breathing())))
    });
    let has_result = move || matches!(face.get(), Face::Over | Face::Late | Face::Watching);
    let not_valid = spec.questions.iter().find(|q| q.id == NOT_VALID);
    // The pad comes last, at the lower edge of the screen, so that it stands in the same place
    // before and after the start; what is above it scrolls by itself and is never covered.
    let ready = move || face.get() == Face::Ready;
    let over = move || face.get() == Face::Over;
    let watching = move || face.get() == Face::Watching;
    let ended = move || {
        desk.visit
            .with(|v| v.is_some_and(|v| v.exam.ended.is_some()))
    };
    // Above the signs once all is over, where the thumb is; otherwise after what is asked.
    let way_on = move |by_signs: bool| {
        live(move || match face.get() {
            // Nothing is worked out at a press but what is shown.
            Face::Running | Face::Countdown => ().piece(),
            _ if by_signs != (over() && task.sign_column().is_some()) => ().piece(),
            Face::Ready if !done.get() => ().piece(),
            // Trials of the plan are still due: going on is in the quiet row below.
            _ if goes_on && !done.get() => ().piece(),
            _ if ended_by_sign() => ().piece(),
            Face::Watching => big("", "Next", move |_| next())
                .with(el("span").with("The watch goes on"))
                .piece(),
            // What still needs an answer comes first.
            _ => big("", if loose { "Done" } else { "Next" }, move |_| next())
                .class_if("primary", move || done.get() && !old.get())
                .piece(),
        })
    };
    let next_trial = move || {
        if !another.get() {
            let words = format!("{} trials are done: no more are asked for.", spec.trials);
            return para("small", words);
        }
        let so_far = said(move || {
            let trials = |v: &Visit| kept::numbered(tasks::spec(task), &v.exam).count();
            let done = desk.visit.with(|v| v.map_or(0, trials));
            format!("{done} done, up to {}", spec.trials)
        });
        big("", "Next trial", move |_| repeat(desk, task))
            .with(el("span").with(so_far))
            .piece()
    };
    // Before the start, whether something is in the way; what runs is not held up.
    let in_the_way_now = move || ready().then(|| !in_the_way.get().is_empty());
    let without = live(move || match in_the_way_now() {
        None => ().piece(),
        Some(_) if done.get() && spec.untimed.is_none() => ().piece(),
        Some(false) => {
            // A task on its own is left by "back".
            let skips = !loose && !done.get();
            el("div.row.quiet")
                .with(spec.untimed.map(|untimed| could_not(desk, task, untimed)))
                .with(skips.then(|| button("", "Skip: not done", next)))
                .piece()
        }
        Some(true) if done.get() => ().piece(),
        Some(true) => big("primary", "Go on without it", move |_| next()).piece(),
    });
    let above = all![
        when(
            move || watching() && ended(),
            move || alert("The screen was ended. Watch for 60 seconds all the same.")
        ),
        when(ready, move || what_to_say(task)),
        when(
            move || has_result() && old.get(),
            move || all![
                para("advice", COUNTED_LONG_AGO),
                big("primary", "Count again", move |_| repeat(desk, task))
            ]
        ),
        when(ended_by_sign, move || all![
            alert("A sign was seen: give no further sip."),
            big("primary", "Next", move |_| next())
        ]),
        when(
            move || !free.get() || next_held(),
            move || holds(in_the_way)
        ),
        when(
            move || (free.get() || asks_first) && ready(),
            move || before(task)
        ),
        spec.pad.beat.map(|_| silence(task)),
        when(
            move || task == TaskId::Own && (has_result() || face.get() == Face::Running),
            move || own_table(desk)
        ),
        when(
            move || spec.trials > 1 && !goes_on && has_result(),
            move || figures(task)
        ),
        when(
            move || task == TaskId::Meal && face.get() == Face::Running,
            tally::running
        ),
        when(
            move || task == TaskId::Own && (watching() || over()),
            move || big("", "Change what is given", move |_| repeat(desk, task))
        ),
        when(
            move || watching() || over(),
            move || questions(task, When::After, Some(NOT_VALID))
        ),
        when(over, move || questions(task, When::AfterWatch, None)),
        way_on(false),
        when(move || over() && spec.trials > 1 && !goes_on, next_trial),
        spec.untimed.map(|untimed| when(
            move || over() && not_timed(),
            move || button("choice", "Take this answer back", move || {
                desk.answer(task, untimed.question, None);
            })
        )),
        when(watching, move || watch_cut(task)),
        when(has_result, move || task_result(task)),
        when(move || task == TaskId::Meal && over(), tally::ended),
        when(
            move || !words.say.is_empty() && matches!(face.get(), Face::Over | Face::Late),
            move || cued(task)
        ),
        not_valid.map(|q| when(resting, move || {
            folded(words::ask(task, q.id)).with(question(desk, task, q))
        })),
        when(
            move || over() && spec.trials == 1,
            move || quiet("Do it again", move || repeat(desk, task))
        ),
        when(
            move || goes_on && !done.get() && (watching() || over()),
            move || quiet("Go on without the rest", next)
        ),
        when(
            move || task == TaskId::Breathing && !loose && resting(),
            move || other_counts(desk)
        ),
        without,
        when(move || loose && over(), attach),
        when(
            move || !loose && Order::ALL.contains(&task) && ready(),
            syllable_order
        ),
        // Once the signs stand there, choking is one of them.
        (!loose).then(|| all![
            when(
                move || !(free.get() && signs_stand(desk, task, face.get())),
                choking_row
            ),
            end_here()
        ])
    ];
    frame_with_pad(
        words.title.into(),
        overview_of(desk),
        all![
            el("div.above").with(above),
            // Beside the signs, where the eye is: a short screen shows nothing of what is above.
            when(
                move || has_result() || goes_on && ready(),
                move || sign_said(task)
            ),
            way_on(true),
            when(
                move || free.get(),
                move || pad(task, Signal::derive(|| None), face)
            )
        ],
    )
}

/// Opens another trial; not over a field that was refused, which goes with the trial it stands in.
fn repeat(desk: Desk, task: TaskId) {
    if !page::refused() {
        desk.repeat(task, None);
    }
}

/// Words that are to be read at once.
fn alert(words: &'static str) -> El {
    el("p.advice")
        .attr("role", "alert")
        .with(el("b").with(words))
}

/// A press that is seldom meant, in a quiet row.
fn quiet(words: &'static str, on: impl FnMut() + 'static) -> El {
    el("div.row.quiet").with(button("", words, on))
}

/// Other ways to count breaths. Neither clears an adult: not in the open.
fn other_counts(desk: Desk) -> El {
    let ways = [
        (TaskId::BreathTaps, "By taps"),
        (TaskId::Breaths30, "30 seconds only"),
    ];
    let way = |(other, words)| button("", words, move || desk.turn(Page::Task(other)));
    folded("Another way to count").with(el("div.row").with(ways.map(way)))
}

/// What can be said of a trial without a touch of the pad.
fn could_not(desk: Desk, task: TaskId, untimed: Untimed) -> Vec<Piece> {
    let Untimed { question, choices } = untimed;
    let say = |(id, words): (&'static str, &'static str)| {
        button("", words, move || {
            desk.answer(task, question, Some(Answer::Choice(id.to_owned())));
            desk.hold_still();
        })
    };
    words::choices(task, question, choices).map(say).collect()
}

/// The questions before the start: what is needed in the open, the rest behind a press.
fn before(task: TaskId) -> Piece {
    let spec = tasks::spec(task);
    let optional = spec
        .questions
        .iter()
        .any(|q| q.when == When::Before && !q.needed && q.id != NOT_VALID);
    if optional {
        folded(words::of(task).more)
            .with(questions(task, When::Before, Some(NOT_VALID)))
            .piece()
    } else {
        questions(task, When::Before, Some(NOT_VALID))
    }
}

/// What to say, word for word, and how it is done.
fn what_to_say(task: TaskId) -> Piece {
    let desk = Desk::get();
    let words = words::of(task);
    el("section.say")
        .with((!words.say.is_empty()).then(|| {
            all![
                el("blockquote").with(words.say),
                el("button")
                    .press(move |_| desk.turn(Page::Show(task)))
                    .with("Show to patient")
            ]
        }))
        .with((!words.steps.is_empty()).then(|| {
            folded("How")
                .with(
                    el("ol").with(
                        words
                            .steps
                            .iter()
                            .map(|s| el("li").with(*s))
                            .collect::<Piece>(),
                    ),
                )
                .with(el("p.small").with("For: ").with(words.for_whom))
        }))
        .piece()
}

/// How it was cued.
fn cued(task: TaskId) -> Piece {
    let desk = Desk::get();
    let cue = Signal::derive(move || {
        desk.visit.with(|v| {
            v.and_then(|v| v.exam.latest(task))
                .and_then(|t| t.choice(CUE).map(str::to_owned))
        })
    });
    choices(
        "How was it cued?".into(),
        [
            ("spoken", "Spoken"),
            ("shown", "Shown"),
            ("copied", "Copied"),
        ]
        .map(|(id, words)| (id.to_owned(), words.to_owned()))
        .to_vec(),
        cue,
        Callback::new(move |id: Option<String>| {
            desk.answer(task, CUE, id.map(Answer::Choice));
        }),
    )
}

/// Ending the watch early asks why.
fn watch_cut(task: TaskId) -> Piece {
    let desk = Desk::get();
    folded("End the watch early")
        .with(choices(
            words::ask(task, WATCH_CUT).into(),
            words::choices(task, WATCH_CUT, water::WATCH_CUT_REASONS)
                .map(|(id, words)| (id.to_owned(), words.to_owned()))
                .collect(),
            Signal::derive(|| None::<String>),
            Callback::new(move |id: Option<String>| {
                desk.answer(task, WATCH_CUT, id.map(Answer::Choice));
            }),
        ))
        .piece()
}
