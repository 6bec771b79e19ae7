//! The gate: the answers to its items, and what they mean under a policy.

use std::collections::BTreeMap;

use crate::clinical::findings::go_on::GoOn;
use crate::clinical::knowledge::policy::Policy;

pub use crate::clinical::knowledge::gate_items::{Exception, Group, ITEMS, Item, State};

/// The stored answer for "holds".
pub const HOLDS: &str = "holds";

/// Answers by item id; an exception's id or [`HOLDS`]. What is not there was not asked.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct GateAnswers(pub BTreeMap<String, String>);

impl GateAnswers {
    /// The exception picked for an item, if one was.
    pub fn exception(&self, item: &Item) -> Option<&'static Exception> {
        let id = self.0.get(item.id)?;
        // By id from the static table, so that the answer outlives the borrow.
        find(item.id)?.exceptions.iter().find(|e| e.id == id)
    }

    /// Whether an item was answered at all.
    ///
    /// An answer that this version does not know counts as not asked: it never opens the gate.
    pub fn answered(&self, item: &Item) -> bool {
        self.0
            .get(item.id)
            .is_some_and(|id| id == HOLDS || item.exceptions.iter().any(|e| e.id == id))
    }

    /// Items not asked yet.
    pub fn open(&self) -> impl Iterator<Item = &'static Item> + '_ {
        ITEMS.iter().filter(|item| !self.answered(item))
    }

    /// The exceptions picked, in the order of the items, with the state the policy gives them.
    pub fn exceptions<'a>(
        &'a self,
        policy: &'a Policy,
    ) -> impl Iterator<Item = (&'static Item, &'static Exception, State)> + 'a {
        ITEMS.iter().filter_map(move |item| {
            self.exception(item)
                .map(|e| (item, e, state_of(item, e, policy)))
        })
    }
}

/// The item with an id.
pub fn find(id: &str) -> Option<&'static Item> {
    ITEMS.iter().find(|item| item.id == id)
}

/// What an exception does under a policy.
pub fn state_of(item: &Item, exception: &Exception, policy: &Policy) -> State {
    let closes = match item.id {
        "requests" => policy.requests_block,
        "suction" => policy.suction_blocks,
        _ => false,
    };
    if closes {
        State::Block
    } else {
        exception.state
    }
}

/// Who may go on past an exception of an item: nobody without knowing who it is, without consent,
/// or where everything by mouth ends.
pub fn go_on(item: &Item, state: State) -> GoOn {
    if state >= State::Stop || ["identity", "consent"].contains(&item.id) {
        GoOn::Never
    } else {
        GoOn::SlpWithReason
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn answers(pairs: &[(&str, &str)]) -> GateAnswers {
        GateAnswers(
            pairs
                .iter()
                .map(|(a, b)| ((*a).to_owned(), (*b).to_owned()))
                .collect(),
        )
    }

    #[test]
    fn ids_are_unique_and_every_group_has_items() {
        for (i, item) in ITEMS.iter().enumerate() {
            assert!(!ITEMS[..i].iter().any(|b| b.id == item.id), "{}", item.id);
            assert!(!item.exceptions.iter().any(|e| e.id == HOLDS));
        }
        assert!(Group::ALL.iter().all(|g| g.items().count() >= 4));
    }

    #[test]
    fn an_unknown_answer_never_opens_the_gate() {
        let a = answers(&[("awake", "half")]);
        assert!(find("awake").is_some_and(|item| !a.answered(item)));
    }

    #[test]
    fn policy_can_make_requests_and_suction_a_block_and_nothing_else() {
        let a = answers(&[("requests", "no"), ("suction", "none")]);
        let mut policy = Policy::default();
        let states = |p: &Policy| a.exceptions(p).map(|(_, _, s)| s).collect::<Vec<_>>();
        assert_eq!(states(&policy), [State::Caution, State::Caution]);
        policy.requests_block = true;
        assert_eq!(states(&policy), [State::Block, State::Caution]);
        policy.suction_blocks = true;
        assert_eq!(states(&policy), [State::Block, State::Block]);
    }
}
