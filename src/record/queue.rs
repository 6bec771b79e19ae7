//! What waits to be stored: in runs of events of one visit, in the order they came, each with the
//! head its visit has after them.
//!
//! **Invariant:** a head is worked out once for all that is written together, and only when it is
//! written: a press is in the queue and on the page before.

use std::collections::VecDeque;
use std::sync::Arc;

use super::envelope::Envelope;
use super::head::Head;
use super::id::VisitId;
use super::visit::Visit;

/// What waits to be stored.
#[derive(Debug, Default)]
pub struct Queue {
    runs: VecDeque<Run>,
    /// The newest head that was worked out.
    head: Option<Head>,
}

#[derive(Debug)]
struct Run {
    visit: VisitId,
    events: Vec<Envelope>,
    after: After,
}

/// What a head is made of, or the head: a visit that is held here is copied when it changes.
#[derive(Debug)]
enum After {
    Visit(Arc<Visit>),
    Head(Head),
}

impl Queue {
    /// Adds events of a visit, and the visit as it stands after them.
    pub fn push(&mut self, events: Vec<Envelope>, visit: Arc<Visit>) {
        match self.runs.back_mut() {
            Some(last) if last.visit == visit.id => {
                last.events.extend(events);
                last.after = After::Visit(visit);
            }
            _ => self.runs.push_back(Run {
                visit: visit.id.clone(),
                events,
                after: After::Visit(visit),
            }),
        }
    }

    /// The oldest events, all of one visit, with the head to write beside them.
    pub fn batch(&mut self) -> Option<(Vec<Envelope>, Head)> {
        let run = self.runs.front_mut()?;
        let head = match &run.after {
            After::Visit(visit) => Head::after(self.head.as_ref(), visit),
            After::Head(head) => head.clone(),
        };
        self.head = Some(head.clone());
        run.after = After::Head(head.clone());
        Some((run.events.clone(), head))
    }

    /// Takes out what was stored of a batch.
    pub fn stored(&mut self, batch: &[Envelope]) {
        let (Some(run), Some(last)) = (self.runs.front_mut(), batch.last()) else {
            return;
        };
        if run.visit == last.visit {
            run.events.retain(|event| event.seq > last.seq);
        }
        self.runs.retain(|run| !run.events.is_empty());
    }

    /// Takes out everything of a visit that was deleted.
    pub fn forget(&mut self, visit: &VisitId) {
        self.runs.retain(|run| run.visit != *visit);
    }

    /// Everything that waits.
    pub fn events(&self) -> impl Iterator<Item = &Envelope> {
        self.runs.iter().flat_map(|run| &run.events)
    }
}
