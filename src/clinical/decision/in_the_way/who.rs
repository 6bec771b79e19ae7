//! Who may go on past a thing, and by which rule it stands there.

use super::kind::InTheWay;
use crate::clinical::findings::flag::{Flag, Level};
use crate::clinical::findings::gate;
use crate::clinical::findings::gate::State;
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::dry_swallow;

impl InTheWay {
    /// Who may go on past it.
    pub fn who_may_go_on(&self) -> GoOn {
        match self {
            Obstacle::NotFor { .. } | Obstacle::Ended { .. } | Obstacle::GateOpen { .. } => {
                GoOn::Never
            }
            Obstacle::Gate { item, state, .. } => gate::go_on(item, *state),
            Obstacle::Child { .. }
            | Obstacle::CouldBeNew { .. }
            | Obstacle::Running { .. }
            | Obstacle::Watched { .. }
            | Obstacle::SmallSipsFirst { .. } => GoOn::WithReason,
            Obstacle::WetBefore { .. } => GoOn::SlpWithReason,
            Obstacle::Choked { missing, .. } => match missing.is_empty() {
                true => GoOn::SlpWithReason,
                false => GoOn::Never,
            },
            Obstacle::Old(old) => old.who_may_go_on(),
            Obstacle::AgainstGate { go_on, .. }
            | Obstacle::Breathing { go_on, .. }
            | Obstacle::Cracker { go_on, .. }
            | Obstacle::DrySwallows { go_on, .. } => *go_on,
            // As before a trial, no screener goes on past a reading of the breathing.
            Obstacle::Seen { seen, .. } => {
                match decides(seen) || seen.iter().any(|flag| flag.fact().is_of_breathing()) {
                    true => GoOn::SlpWithReason,
                    false => GoOn::WithReason,
                }
            }
        }
    }

    /// Whether the screen ends with it: its way leads to nothing more by mouth, whoever examines.
    pub fn ends_trials(&self) -> bool {
        match self {
            Obstacle::Choked { .. } => true,
            Obstacle::Seen { seen, .. } | Obstacle::Cracker { seen, .. } => decides(seen),
            Obstacle::Gate { state, .. } => *state >= State::Stop,
            // None at all, and none made up for it: a first one is counted again.
            Obstacle::DrySwallows { said, .. } => {
                said.level() == Level::Stop || dry_swallow::is_none_again(said)
            }
            _ => false,
        }
    }

    /// The rule by which it stands there.
    pub fn rule(&self) -> &'static Rule {
        match self {
            Obstacle::NotFor { said, .. }
            | Obstacle::Breathing { said, .. }
            | Obstacle::Cracker { said, .. }
            | Obstacle::DrySwallows { said, .. }
            | Obstacle::SmallSipsFirst { said, .. } => said.rule(),
            Obstacle::Ended { .. } => &rules::GATE_CONSENT,
            Obstacle::Gate { item, .. } | Obstacle::AgainstGate { item, .. } => item.rule,
            Obstacle::Child { .. } => &rules::PERSON_CHILD_TRIAL,
            Obstacle::CouldBeNew { .. } => &rules::GATE_NEW_WEAKNESS,
            Obstacle::Choked { .. } => &rules::TRIAL_CHOKE,
            Obstacle::GateOpen { .. } => &rules::GATE_NOT_ASKED,
            Obstacle::Old(_) => &rules::GATE_READY_OLD,
            // The same as "does not manage saliva" at the gate, heard a little later.
            Obstacle::WetBefore { .. } => &rules::GATE_SALIVA,
            Obstacle::Seen { seen, .. } => seen.first().map_or(&rules::TRIAL_CHOKE, |f| f.rule()),
            Obstacle::Running { .. } | Obstacle::Watched { .. } => &rules::OWN_OVERLAP,
        }
    }
}

/// Whether a sign that refers or stops is among what was seen.
fn decides(seen: &[Flag]) -> bool {
    seen.iter().any(|flag| flag.level() >= Level::Refer)
}
