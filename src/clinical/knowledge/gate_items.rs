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

    /// Its heading.
    pub const fn title(self) -> &'static str {
        match self {
            Group::Person => "The person",
            Group::Orders => "Orders and limits",
            Group::Airway => "Airway and chest",
            Group::Ready => "Ready now",
        }
    }

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
    /// Not a screen: the local emergency procedure.
    Emergency,
}

/// An answer other than "holds".
#[derive(Debug)]
pub struct Exception {
    /// Stable id, stored.
    pub id: &'static str,
    /// The words on the button, and in the handover.
    pub words: &'static str,
    /// What it does.
    pub state: State,
    /// What to do about it, where there is something.
    pub advice: &'static str,
}

/// One item of the gate.
#[derive(Debug)]
pub struct Item {
    /// Stable id, stored.
    pub id: &'static str,
    /// The page it stands on.
    pub group: Group,
    /// What is wanted.
    pub holds: &'static str,
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
    ($id:literal, $state:ident, $words:literal, $advice:literal) => {
        Exception {
            id: $id,
            words: $words,
            state: State::$state,
            advice: $advice,
        }
    };
}

macro_rules! item {
    ($group:ident, $id:literal, $holds:literal, [$($exception:expr),+ $(,)?], $rule:ident) => {
        Item {
            id: $id,
            group: Group::$group,
            holds: $holds,
            exceptions: &[$($exception),+],
            rule: &rules::$rule,
        }
    };
}

/// Every item, in the order asked.
pub static ITEMS: &[Item] = &[
    item!(
        Person,
        "identity",
        "Right person: name band read, or confirmed",
        [exception!(
            "unsure",
            Fix,
            "Identity not confirmed",
            "Confirm who this is, then ask again."
        )],
        GATE_IDENTITY
    ),
    item!(
        Person,
        "consent",
        "Agrees; or assent or best-interest route is recorded",
        [exception!(
            "no",
            Block,
            "No agreement, no recorded best-interest route",
            "Nothing is given without it."
        )],
        GATE_CONSENT
    ),
    item!(
        Person,
        "language",
        "Understands me, or an interpreter is here",
        [exception!(
            "no",
            Caution,
            "No shared language and no interpreter",
            "Show each step; read results with care."
        )],
        GATE_LANGUAGE
    ),
    item!(
        Person,
        "aids",
        "Dentures, hearing aid, glasses are in, if used",
        [
            exception!(
                "no",
                Fix,
                "Dentures, hearing aid or glasses not in",
                "Put them in, then ask again."
            ),
            exception!(
                "none-here",
                Caution,
                "Dentures, hearing aid or glasses not at hand",
                "Say so in the handover."
            )
        ],
        GATE_AIDS
    ),
    item!(
        Orders,
        "nothing-by-mouth",
        "No nothing-by-mouth order, other than waiting for this screen",
        [exception!(
            "other-reason",
            Block,
            "Nothing by mouth for another reason",
            "The order stands. Ask whoever gave it."
        )],
        GATE_NOTHING_BY_MOUTH
    ),
    item!(
        Orders,
        "diet",
        "No modified diet or thickened drinks for a known swallowing problem",
        [exception!(
            "modified",
            Block,
            "Already on a modified diet or thickened drinks",
            "No thin water. Refer to speech-language pathology."
        )],
        GATE_DIET
    ),
    item!(
        Orders,
        "tube",
        "No feeding tube because of swallowing",
        [exception!(
            "tube",
            Block,
            "Fed by tube because of a swallowing problem",
            "No thin water. Refer to speech-language pathology."
        )],
        GATE_TUBE
    ),
    item!(
        Orders,
        "clot-treatment",
        "No clot-dissolving treatment in the last 24 hours",
        [exception!(
            "recent",
            Fix,
            "Clot-dissolving treatment in the last 24 hours",
            "Wait until 24 hours have passed, unless the physician exempts."
        )],
        GATE_CLOT_TREATMENT
    ),
    item!(
        Orders,
        "fluids",
        "No fluid restriction",
        [exception!(
            "restricted",
            Caution,
            "Fluid restriction",
            "Count the water given."
        )],
        GATE_FLUIDS
    ),
    item!(
        Orders,
        "allergy",
        "No allergy that matters here",
        [exception!(
            "allergy",
            Caution,
            "Allergy that matters here",
            "Check what is given."
        )],
        GATE_ALLERGY
    ),
    item!(
        Orders,
        "spine",
        "Neck and spine may be moved and sat up",
        [exception!(
            "limit",
            Caution,
            "Neck or spine limit",
            "Keep to the limit; say so in the handover."
        )],
        GATE_SPINE
    ),
    item!(
        Orders,
        "risk-plan",
        "No plan to eat and drink with acknowledged risks",
        [exception!(
            "plan",
            Caution,
            "Has a plan to eat and drink with acknowledged risks",
            "The plan stands: nothing by mouth is not written automatically."
        )],
        GATE_RISK_PLAN
    ),
    item!(
        Airway,
        "airway-tube",
        "No tracheostomy, no laryngectomy",
        [
            exception!(
                "tracheostomy",
                Block,
                "Tracheostomy tube",
                "Specialist route."
            ),
            exception!("laryngectomy", Block, "Laryngectomy", "Specialist route.")
        ],
        GATE_AIRWAY_TUBE
    ),
    item!(
        Airway,
        "mask",
        "No mask ventilation",
        [exception!(
            "mask",
            Block,
            "Mask ventilation",
            "Physician and speech-language pathologist decide."
        )],
        GATE_MASK
    ),
    item!(
        Airway,
        "extubation",
        "Not extubated in the last 24 hours after 24 hours or more on a tube",
        [exception!(
            "recent",
            Block,
            "Extubated within 24 hours, after 24 hours or more on a tube",
            "Refer to speech-language pathology."
        )],
        GATE_EXTUBATION
    ),
    item!(
        Airway,
        "high-flow",
        "No high-flow oxygen",
        [exception!(
            "high-flow",
            Caution,
            "High-flow oxygen",
            "Studies disagree: physician and speech-language pathologist decide."
        )],
        GATE_HIGH_FLOW
    ),
    item!(
        Airway,
        "chest",
        "No chest infection, no fever",
        [exception!(
            "chest",
            Caution,
            "Chest infection or fever",
            "Read every result with care; say so."
        )],
        GATE_CHEST
    ),
    item!(
        Airway,
        "distress",
        "Breathes quietly and can finish a sentence",
        [exception!(
            "distress",
            Block,
            "Visible effort, or cannot finish a sentence",
            "No oral trial. Use the local procedure for deterioration."
        )],
        GATE_DISTRESS
    ),
    item!(
        Ready,
        "new-weakness",
        "No new or worse weakness, droop or speech",
        [
            exception!(
                "new",
                Emergency,
                "New or worse weakness, droop or speech; the team did not know",
                "Use your local emergency procedure. Note the time last well."
            ),
            exception!(
                "known",
                Caution,
                "Weakness, droop or speech change, known to the team",
                ""
            )
        ],
        GATE_NEW_WEAKNESS
    ),
    item!(
        Ready,
        "awake",
        "Awake, and will stay awake",
        [
            exception!(
                "drowsy",
                Fix,
                "Drowsy now",
                "Wait about 30 minutes, then ask again."
            ),
            exception!("no", Block, "Cannot stay awake", "No oral trial.")
        ],
        GATE_AWAKE
    ),
    item!(
        Ready,
        "upright",
        "Sits upright, 60 degrees or more",
        [
            exception!(
                "part",
                Caution,
                "Only 30 to 60 degrees",
                "As high as tolerated."
            ),
            exception!(
                "flat",
                Block,
                "Cannot be raised to 30 degrees",
                "No oral trial."
            )
        ],
        GATE_UPRIGHT
    ),
    item!(
        Ready,
        "saliva",
        "Manages saliva: no pooling, no drooling, no wet voice",
        [exception!(
            "no",
            Block,
            "Does not manage saliva",
            "No oral trial. Refer."
        )],
        GATE_SALIVA
    ),
    item!(
        Ready,
        "cough",
        "Coughs on request, or was heard to cough",
        [exception!(
            "no",
            Block,
            "Cannot cough on request and was not heard to",
            "Hospital practice stops here and refers."
        )],
        GATE_COUGH
    ),
    item!(
        Ready,
        "requests",
        "Follows a one-step request: open mouth, put out tongue",
        [exception!(
            "no",
            Caution,
            "Does not follow one-step requests",
            "Liquid aspiration was seen more often (odds ratio 1.57)."
        )],
        GATE_REQUESTS
    ),
    item!(
        Ready,
        "mouth",
        "Mouth clean and moist",
        [exception!(
            "no",
            Fix,
            "Mouth dry or not clean",
            "Mouth care first, then ask again."
        )],
        GATE_MOUTH
    ),
    item!(
        Ready,
        "suction",
        "Suction within reach",
        [exception!(
            "none",
            Caution,
            "No suction within reach",
            "In most homes there is none."
        )],
        GATE_SUCTION
    ),
];
