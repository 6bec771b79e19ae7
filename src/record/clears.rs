//! What takes a thing away that is in the way of a task: the page where it is asked or counted anew,
//! or a press.

use crate::clinical::decision::in_the_way::InTheWay;
use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::breathing::Reading;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{AgainstCracker, CrackerFact, Fact};
use crate::clinical::findings::gate::{self, Group, State};
use crate::clinical::findings::in_the_way::{AfterChoking, Obstacle};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::oral::Region;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::dry_swallow::is_none_again;
use crate::clinical::tasks::oral::flags::WEAKNESS;
use crate::clinical::tasks::water::VOICE_BEFORE;
use crate::record::event::Event;
use crate::record::step::Step;

/// What takes it away.
#[derive(Clone, Debug, PartialEq)]
pub enum Clears {
    /// Another page.
    Page(Step),
    /// A press where it stands.
    Press(Box<Event>),
}

impl Clears {
    fn press(event: Event) -> Clears {
        Clears::Press(Box::new(event))
    }
}

/// What takes this away; none for a sign that was seen, for what ends everything by mouth, and where
/// nothing can be done about it.
pub fn clears(one: &InTheWay, exam: &Exam) -> Option<Clears> {
    let page = |step| Some(Clears::Page(step));
    match one {
        Obstacle::Ended { .. } => Some(Clears::press(Event::TakenUpAgain)),
        Obstacle::Gate { item, state, .. } => match state {
            State::Stop | State::Emergency => None,
            State::Caution | State::Fix | State::Block => page(Step::Gate(item.group)),
        },
        Obstacle::AgainstGate { found, .. } => page(Step::Oral(Region::of(found.item()))),
        Obstacle::CouldBeNew { .. } => page(Step::Gate(group_of(WEAKNESS)?)),
        Obstacle::GateOpen { .. } => {
            let open = exam.gate.open().next()?;
            page(Step::Gate(open.group))
        }
        Obstacle::Choked { missing, .. } => match missing.first()? {
            AfterChoking::Baseline | AfterChoking::Voice => page(Step::Choking),
            AfterChoking::Breaths => page(Step::Task(TaskId::Breathing)),
        },
        // Taken back, it is asked for like one that was not said yet.
        Obstacle::Old(old) => match (old.what, old.trial) {
            (Answered::Voice, Some(trial)) => Some(Clears::press(voice_again(trial))),
            (Answered::Group(group), _) => page(Step::Gate(group)),
            (what, _) => page(Step::Task(what.task()?)),
        },
        Obstacle::Breathing { .. } => page(Step::Task(TaskId::Breathing)),
        // Heard anew where it was heard so.
        Obstacle::WetBefore { .. } if by_mouth::is_wet_since_choking(exam) => page(Step::Choking),
        Obstacle::WetBefore { task } => {
            let heard = exam.latest(*task).filter(|trial| is_wet(trial))?;
            Some(Clears::press(voice_again(heard.number)))
        }
        // Counted again and none made up for it: nothing is counted a third time.
        Obstacle::DrySwallows { said, .. } if is_none_again(said) => None,
        Obstacle::DrySwallows { .. } => page(Step::Task(TaskId::DrySwallow)),
        Obstacle::Running { of, .. } | Obstacle::Watched { of, .. } => page(Step::Task(*of)),
        // On the page of that trial it stands there.
        Obstacle::Seen {
            of, task, unsaid, ..
        } => (*unsaid && of != task).then_some(Clears::Page(Step::Task(*of))),
        Obstacle::SmallSipsFirst { .. } => page(Step::Task(TaskId::Sips)),
        Obstacle::Cracker { said, .. } => {
            let no_drink = Fact::from(CrackerFact::Against(AgainstCracker::NoDrinkTried));
            (*said.fact() == no_drink).then_some(Clears::Page(Step::Task(TaskId::Sips)))
        }
        Obstacle::NotFor { .. } | Obstacle::Child { .. } => None,
    }
}

/// Whether it is asked before the task it holds is led to: the page would only refuse.
pub fn comes_first(one: &InTheWay) -> bool {
    match one {
        Obstacle::Old(_) | Obstacle::GateOpen { .. } => true,
        Obstacle::Breathing { reading, .. } => matches!(reading, Reading::NoCount(_)),
        Obstacle::Gate { state, .. } => *state == State::Fix,
        _ => false,
    }
}

fn group_of(item: &str) -> Option<Group> {
    gate::find(item).map(|item| item.group)
}

fn is_wet(trial: &Trial) -> bool {
    trial.start().is_none() && trial.choice(VOICE_BEFORE) == Some("wet")
}

fn voice_again(trial: u32) -> Event {
    Event::Answer {
        trial,
        question: VOICE_BEFORE.to_owned(),
        answer: None,
    }
}
