//! The gate's answers, and the reasons for going on past what they show: each speaks as long as what
//! it was given for is shown.

use std::collections::BTreeMap;

use super::Visit;
use crate::clinical::decision::in_the_way;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::gate;
use crate::clinical::findings::go_on::WentOn;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::oral::findings::weakness;
use crate::clinical::tasks::oral::flags::{WEAKNESS, emergency};

impl Visit {
    pub(super) fn answer_gate(&mut self, answers: Vec<(String, String)>) {
        // Said by itself, with what was found before one's eyes; no press for a whole page.
        if let [(item, _)] = answers.as_slice()
            && item == WEAKNESS
        {
            self.exam.weakness_said = weakness(&self.exam.oral);
        }
        self.lapse_old(&answers);
        for (item, _) in &answers {
            self.exam.asked.insert(item.clone(), self.exam.now);
        }
        self.at_gate(|gate| gate.extend(answers));
    }

    /// Takes a reason for going on past something, if it is known what.
    pub(super) fn go_on(&mut self, past: Option<Obstacle<Flag>>, on: WentOn) {
        if let Some(past) = past {
            self.exam.gone_past.insert(on.hold.clone(), past);
        }
        self.exam.went_on.push(on);
    }

    pub(super) fn at_gate(&mut self, change: impl FnOnce(&mut BTreeMap<String, String>)) {
        let before = emergency(&self.exam);
        change(&mut self.exam.gate.0);
        self.exam.emergency_changed |= before && !emergency(&self.exam);
        self.lapse();
    }

    /// Where a state of the moment is asked again because it was old, a reason that was given for
    /// it spoke for then.
    fn lapse_old(&mut self, answers: &[(String, String)]) {
        let exam = &self.exam;
        let old = |id: &str| {
            let item = gate::find(id).filter(|item| item.is_of_the_moment());
            let asked = item.and_then(|item| exam.asked.get(item.id));
            asked.is_some_and(|at| at.is_older(exam.now, exam.policy.moment_stands()))
        };
        let ids = answers.iter().map(|(id, _)| id).filter(|id| old(id));
        let ids: Vec<&String> = ids.collect();
        for on in &mut self.exam.went_on {
            let past = self.exam.gone_past.get(&on.hold);
            on.lapsed |= matches!(past, Some(Obstacle::Gate { item, .. })
                if ids.iter().any(|id| *id == item.id));
        }
    }

    /// Reasons for what the gate and the mouth do not show any more speak for it no longer.
    pub(super) fn lapse(&mut self) {
        let mut went_on = std::mem::take(&mut self.exam.went_on);
        for on in &mut went_on {
            let past = self.exam.gone_past.get(&on.hold);
            on.lapsed |= is_of_state(past) && !in_the_way::stands(&on.hold, &self.exam);
        }
        self.exam.went_on = went_on;
    }
}

/// Whether it is one of the gate's answers, or what the mouth shows against them. What nothing known
/// had is taken for one: its reason speaks no longer than those do.
fn is_of_state(past: Option<&Obstacle<Flag>>) -> bool {
    matches!(
        past,
        None | Some(Obstacle::Gate { .. } | Obstacle::AgainstGate { .. })
    )
}
