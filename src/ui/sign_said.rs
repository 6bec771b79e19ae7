//! What the clinician can say of a sign after its press: that it was seen within the minute, and
//! which of two trials it is of. One press each, and one takes it back.

use leptos::prelude::*;

use super::desk::Desk;
use super::live::{follow, live};
use super::parts::{button, para};
use crate::clinical::task::TaskId;
use crate::clinical::tasks::{lag, own_shared};
use crate::clinical::trial::Answer;
use crate::clinical::words::capital;
use crate::record::event::Event;
use crate::record::visit::Visit;

/// What stands there, what can be said of it, and what is recorded then.
type Said = (String, String, Event);

/// The signs of which something can be said.
#[component]
pub(super) fn SignSaid(
    /// The task.
    task: TaskId,
) -> impl IntoView {
    let desk = Desk::get();
    let all = follow(move || {
        desk.visit
            .with(|v| v.as_ref().map_or(Vec::new(), |v| of(task, v)))
    });
    live(move || {
        all.get()
            .into_iter()
            .map(|(stands, can_say, event)| {
                view! {
                    <div class="sign-said">
                        {para("", stands)}
                        {button("", can_say, move || desk.record([event.clone()]))}
                    </div>
                }
            })
            .collect_view()
    })
}

fn of(task: TaskId, visit: &Visit) -> Vec<Said> {
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
            can_say.to_owned(),
            event,
        )
    });
    let shared = own_shared::shared(&visit.exam).into_iter().map(|shared| {
        let (of, other) = (shared.of, shared.other);
        let stands = format!("{} with {}.", capital(shared.sign.past()), of.1);
        let event = Event::SignMoved {
            from: of.0,
            to: other.0,
            sign: shared.sign,
            at: shared.at,
        };
        (stands, format!("It was with {}", other.1), event)
    });
    let shared = shared.filter(|_| task == TaskId::Own);
    near.chain(shared).collect()
}
