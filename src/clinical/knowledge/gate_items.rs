//! The gate's items, as a table: what must hold before anything is given by mouth.
//!
//! An item states what is wanted, so that one press can settle a group ("all of these hold");
//! an exception is picked beside it. A published limit for breathing does not exist, see
//! [`crate::clinical::tasks::breathing`].

use serde::{Serialize, Serializer};

use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;

/// The groups, one page each.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Group {
    /// The person and the consent.
    Person,
    /// Orders and limits.
    Orders,
    /// Airway and chest.
    Airway,
    /// Ready now.
    Ready,
}

impl Group {
    /// All, in order.
    pub const ALL: [Group; 4] = [Group::Person, Group::Orders, Group::Airway, Group::Ready];

    /// Its items.
    pub fn items(self) -> impl Iterator<Item = &'static Item> {
        ITEMS.iter().filter(move |item| item.group == self)
    }
}

/// What an exception does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum State {
    /// The clinician decides.
    Caution,
    /// Put right, then asked again.
    Fix,
    /// No oral trial.
    Block,
    /// Nothing by mouth, there and then: nobody goes past it. Looking and speech stay open.
    Stop,
    /// Not a screen: the local emergency procedure.
    Emergency,
}

/// An answer other than "holds".
#[derive(Debug)]
pub struct Exception {
    /// Stable id, stored.
    pub id: &'static str,
    /// What it does.
    pub state: State,
}

/// One item of the gate.
#[derive(Debug)]
pub struct Item {
    /// Stable id, stored.
    pub id: &'static str,
    /// The page it stands on.
    pub group: Group,
    /// The other answers.
    pub exceptions: &'static [Exception],
    /// Its rule.
    pub rule: &'static Rule,
}

impl Item {
    /// Whether it is a state of the moment: how awake somebody is, or how hard he breathes.
    pub fn is_of_the_moment(&self) -> bool {
        self.group == Group::Ready || self.id == "distress"
    }
}

/// An item is its id; what else its row says is the same wherever the id is.
impl PartialEq for Item {
    fn eq(&self, other: &Item) -> bool {
        self.id == other.id
    }
}

/// Known by its id within its item.
impl PartialEq for Exception {
    fn eq(&self, other: &Exception) -> bool {
        self.id == other.id
    }
}

impl Serialize for Item {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.id)
    }
}

impl Serialize for Exception {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.id)
    }
}

macro_rules! exception {
    ($id:literal, $state:ident) => {
        Exception {
            id: $id,
            state: State::$state,
        }
    };
}

macro_rules! item {
    ($group:ident, $id:literal, [$($exception:expr),+ $(,)?], $rule:ident) => {
        Item {
            id: $id,
            group: Group::$group,
            exceptions: &[$($exception),+],
            rule: &rules::$rule,
        }
    };
}

/// Every item, in the order asked. Its words stand in [`crate::wording::gate`], by its id.
pub static ITEMS: &[Item] = &[
    item!(
        Person,
        "identity",
        [exception!("unsure", Fix)],
        GATE_IDENTITY
    ),
    item!(Person, "consent", [exception!("no", Block)], GATE_CONSENT),
    item!(
        Person,
        "language",
        [exception!("no", Caution)],
        GATE_LANGUAGE
    ),
    item!(
        Person,
        "aids",
        [exception!("no", Fix), exception!("none-here", Caution)],
        GATE_AIDS
    ),
    item!(
        Orders,
        "nothing-by-mouth",
        [exception!("other-reason", Stop)],
        GATE_NOTHING_BY_MOUTH
    ),
    item!(Orders, "diet", [exception!("modified", Block)], GATE_DIET),
    item!(Orders, "tube", [exception!("tube", Block)], GATE_TUBE),
    item!(
        Orders,
        "clot-treatment",
        [exception!("recent", Fix)],
        GATE_CLOT_TREATMENT
    ),
    item!(
        Orders,
        "fluids",
        [exception!("restricted", Caution)],
        GATE_FLUIDS
    ),
    item!(
        Orders,
        "allergy",
        [exception!("allergy", Caution)],
        GATE_ALLERGY
    ),
    item!(Orders, "spine", [exception!("limit", Caution)], GATE_SPINE),
    item!(
        Orders,
        "risk-plan",
        [exception!("plan", Caution)],
        GATE_RISK_PLAN
    ),
    item!(
        Airway,
        "airway-tube",
        [
            exception!("tracheostomy", Block),
            exception!("laryngectomy", Block)
        ],
        GATE_AIRWAY_TUBE
    ),
    item!(Airway, "mask", [exception!("mask", Block)], GATE_MASK),
    item!(
        Airway,
        "extubation",
        [exception!("recent", Block)],
        GATE_EXTUBATION
    ),
    item!(
        Airway,
        "high-flow",
        [exception!("high-flow", Caution)],
        GATE_HIGH_FLOW
    ),
    item!(Airway, "chest", [exception!("chest", Caution)], GATE_CHEST),
    item!(
        Airway,
        "distress",
        [exception!("distress", Stop)],
        GATE_DISTRESS
    ),
    item!(
        Ready,
        "new-weakness",
        [exception!("new", Emergency), exception!("known", Caution)],
        GATE_NEW_WEAKNESS
    ),
    item!(
        Ready,
        "awake",
        [
            exception!("drowsy", Fix),
            exception!("no", Block),
            exception!("unrousable", Stop)
        ],
        GATE_AWAKE
    ),
    item!(
        Ready,
        "upright",
        [exception!("part", Caution), exception!("flat", Block)],
        GATE_UPRIGHT
    ),
    item!(Ready, "saliva", [exception!("no", Block)], GATE_SALIVA),
    item!(Ready, "cough", [exception!("no", Block)], GATE_COUGH),
    item!(
        Ready,
        "requests",
        [exception!("no", Caution)],
        GATE_REQUESTS
    ),
    item!(Ready, "mouth", [exception!("no", Fix)], GATE_MOUTH),
    item!(
        Ready,
        "suction",
        [exception!("none", Caution)],
        GATE_SUCTION
    ),
];
