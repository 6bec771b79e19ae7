//! What the clinician can say of a sign after its press: that it was seen within the minute, and
//! which of two trials it is of. One press each, and one takes it back.

use super::desk::Desk;
use super::follow::follow;
use super::parts::{button, para};
use crate::clinical::findings::trial::Answer;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::by_mouth::lag;
use crate::clinical::tasks::own::shared as own_shared;
use crate::clinical::tasks::spec;
use crate::clinical::tasks::spec::Shows;
use crate::draw::{Piece, el, live};
use crate::record::event::Event;
use crate::record::visit::Visit;
use crate::wording::own::brief;
use crate::wording::words::capital;

/// What stands there, what can be said of it, and what is recorded then.
type Sayable = (String, Vec<(String, Vec<Event>)>);

/// The signs of which something can be said.
pub(super) fn sign_said(
    // The task.
    task: TaskId,
) -> Piece {
    let desk = Desk::get();
    let all = follow(move || {
        desk.visit
            .with(|v| v.map_or(Vec::new(), |v| of(desk, task, v)))
    });
    live(move || {
        all.get()
            .into_iter()
            .map(|(stands, can_say)| {
                let buttons = can_say
                    .into_iter()
                    .map(|(words, events)| button("", words, move || desk.record(events.clone())))
                    .collect::<Piece>();
                el("div.sign-said").with(para("", stands)).with(buttons)
            })
            .collect::<Piece>()
    })
}

fn of(desk: Desk, task: TaskId, visit: &Visit) -> Vec<Sayable> {
    let trials = visit.exam.trials.iter().filter(|t| t.task == task);
    let near = trials.flat_map(lag::near).map(|near| {
        let (stands, can_say, answer) = if near.said {
            ("counted, as you said", "It was later", None)
        } else {
            let within = Answer::Choice(lag::WITHIN.to_owned());
            (
                "told, not counted",
                "It was within the minute",
                Some(within),
            )
        };
        let seconds = (near.after.0 + 999) / 1000;
        let what = format!("{}: pressed after {seconds} seconds", near.sign.past());
        let event = Event::Answer {
            trial: near.trial,
            question: lag::id(near.at),
            answer,
        };
        (
            capital(&format!("{what}, {stands}.")),
            vec![(can_say.to_owned(), vec![event])],
        )
    });
    let shared = own_shared::shared(&visit.exam).into_iter().map(|shared| {
        let (of, other) = (shared.of, shared.other);
        let stands = format!("{} with {}.", capital(shared.sign.past()), brief(&of.1));
        let event = Event::SignMoved {
            from: of.0,
            to: other.0,
            sign: shared.sign,
            at: shared.at,
        };
        let can_say = format!("It was with {}", brief(&other.1));
        (stands, vec![(can_say, vec![event])])
    });
    let shared = shared.filter(|_| spec(task).shows == Shows::Table);
    near.chain(shared).chain(late(desk, task, visit)).collect()
}

/// A sign long after the minute of a trial, before the next was said to be given: it may be the
/// next one's, given with both hands busy.
fn late(desk: Desk, task: TaskId, visit: &Visit) -> Vec<Sayable> {
    let given = || by_mouth::given(task, &visit.exam);
    given()
        .flat_map(lag::late)
        .map(|late| {
            let seconds = (late.after.0 + 999) / 1000;
            let stands = format!(
                "{}: {seconds} seconds after the last swallow. Was the next in the mouth?",
                capital(late.sign.past())
            );
            let nothing = Event::Answer {
                trial: late.trial,
                question: lag::late_id(late.at),
                answer: Some(Answer::Choice(lag::NOTHING.to_owned())),
            };
            // Where the next was given since, it is that one.
            let next = given().skip_while(|t| t.number != late.trial).nth(1);
            let (to, mut given) = match next {
                Some(next) => (next.number, Vec::new()),
                None => desk.next_given(visit, task, late.at),
            };
            given.push(Event::SignMoved {
                from: late.trial,
                to,
                sign: late.sign,
                at: late.at,
            });
            let can_say = vec![
                ("Yes: it was given".to_owned(), given),
                ("No, nothing".to_owned(), vec![nothing]),
            ];
            (stands, can_say)
        })
        .collect()
}
