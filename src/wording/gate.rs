//! What is asked before anything is given, in words: what must hold, what can be the case instead,
//! and what to do about it. Keyed by the ids of [`crate::clinical::knowledge::gate_items`].

use crate::clinical::knowledge::gate_items::{Exception, Group, Item};
use crate::clinical::knowledge::policy::Policy;

/// A group's heading.
pub const fn group_title(group: Group) -> &'static str {
    match group {
        Group::Person => "The person",
        Group::Orders => "Orders and limits",
        Group::Airway => "Airway and chest",
        Group::Ready => "Ready now",
    }
}

/// What is wanted, on its line.
pub fn holds(item: &Item) -> &'static str {
    match item.id {
        "identity" => "Right person: name band read, or confirmed",
        "consent" => "Agrees; or assent or best-interest route is recorded",
        "language" => "Understands me, or an interpreter is here",
        "aids" => "Dentures, hearing aid, glasses are in, if used",
        "nothing-by-mouth" => "No nothing-by-mouth order, other than waiting for this screen",
        "diet" => "No modified diet or thickened drinks for a known swallowing problem",
        "tube" => "No feeding tube because of swallowing",
        "clot-treatment" => "No clot-dissolving treatment in the last 24 hours",
        "fluids" => "No fluid restriction",
        "allergy" => "No allergy that matters here",
        "spine" => "Neck and spine may be moved and sat up",
        "risk-plan" => "No plan to eat and drink with acknowledged risks",
        "airway-tube" => "No tracheostomy, no laryngectomy",
        "mask" => "No mask ventilation",
        "extubation" => "Not extubated in the last 24 hours after 24 hours or more on a tube",
        "high-flow" => "No high-flow oxygen",
        "chest" => "No chest infection, no fever",
        "distress" => "Breathes quietly and can finish a sentence",
        "new-weakness" => "No new or worse weakness, droop or speech",
        "awake" => "Awake, and will stay awake",
        "upright" => "Sits upright, 60 degrees or more",
        "saliva" => "Manages saliva: no pooling, no drooling, no wet voice",
        "cough" => "Coughs on request, or was heard to cough",
        "requests" => "Follows a one-step request: open mouth, put out tongue",
        "mouth" => "Mouth clean and moist",
        "suction" => "Suction within reach",
        id => id,
    }
}

/// What is the case instead: on the button, and in the handover.
pub fn exception(item: &Item, exception: &Exception) -> &'static str {
    match (item.id, exception.id) {
        ("identity", "unsure") => "Identity not confirmed",
        ("consent", "no") => "No agreement, no recorded best-interest route",
        ("language", "no") => "No shared language and no interpreter",
        ("aids", "no") => "Dentures, hearing aid or glasses not in",
        ("aids", "none-here") => "Dentures, hearing aid or glasses not at hand",
        ("nothing-by-mouth", "other-reason") => "Nothing by mouth for another reason",
        ("diet", "modified") => "Already on a modified diet or thickened drinks",
        ("tube", "tube") => "Fed by tube because of a swallowing problem",
        ("clot-treatment", "recent") => "Clot-dissolving treatment in the last 24 hours",
        ("fluids", "restricted") => "Fluid restriction",
        ("allergy", "allergy") => "Allergy that matters here",
        ("spine", "limit") => "Neck or spine limit",
        ("risk-plan", "plan") => "Has a plan to eat and drink with acknowledged risks",
        ("airway-tube", "tracheostomy") => "Tracheostomy tube",
        ("airway-tube", "laryngectomy") => "Laryngectomy",
        ("mask", "mask") => "Mask ventilation",
        ("extubation", "recent") => "Extubated within 24 hours, after 24 hours or more on a tube",
        ("high-flow", "high-flow") => "High-flow oxygen",
        ("chest", "chest") => "Chest infection or fever",
        ("distress", "distress") => "Visible effort, or cannot finish a sentence",
        ("new-weakness", "new") => "New or worse weakness, droop or speech; the team did not know",
        ("new-weakness", "known") => "Weakness, droop or speech change, known to the team",
        ("awake", "drowsy") => "Drowsy now",
        ("awake", "no") => "Cannot stay awake",
        ("awake", "unrousable") => "Cannot be roused",
        ("upright", "part") => "Only 30 to 60 degrees",
        ("upright", "flat") => "Cannot be raised to 30 degrees",
        ("saliva", "no") => "Does not manage saliva",
        ("cough", "no") => "Cannot cough on request and was not heard to",
        ("requests", "no") => "Does not follow one-step requests",
        ("mouth", "no") => "Mouth dry or not clean",
        ("suction", "none") => "No suction within reach",
        (_, id) => id,
    }
}

/// What to do about it under a policy; empty where there is nothing.
pub fn advice(item: &Item, exception: &Exception, policy: &Policy) -> String {
    match (item.id, exception.id) {
        ("awake", "drowsy") => {
            return format!("Wait about {} minutes, then ask again.", policy.drowsy_wait);
        }
        ("identity", "unsure") => "Confirm who this is, then ask again.",
        ("consent", "no") => "Nothing is given without it.",
        ("language", "no") => "Show each step; read results with care.",
        ("aids", "no") => "Put them in, then ask again.",
        ("aids", "none-here") => "Say so in the handover.",
        ("nothing-by-mouth", "other-reason") => "The order stands. Ask whoever gave it.",
        ("diet", "modified") => "No thin water. Refer to speech-language pathology.",
        ("tube", "tube") => "No thin water. Refer to speech-language pathology.",
        ("clot-treatment", "recent") => {
            "Wait until 24 hours have passed, unless the physician exempts."
        }
        ("fluids", "restricted") => "Count the water given.",
        ("allergy", "allergy") => "Check what is given.",
        ("spine", "limit") => "Keep to the limit; say so in the handover.",
        ("risk-plan", "plan") => "The plan stands: nothing by mouth is not written automatically.",
        ("airway-tube", "tracheostomy") => "Specialist route.",
        ("airway-tube", "laryngectomy") => "Specialist route.",
        ("mask", "mask") => "Physician and speech-language pathologist decide.",
        ("extubation", "recent") => "Refer to speech-language pathology.",
        ("high-flow", "high-flow") => {
            "Studies disagree: physician and speech-language pathologist decide."
        }
        ("chest", "chest") => "Read every result with care; say so.",
        ("distress", "distress") | ("awake", "unrousable") => {
            "Use the local procedure for deterioration."
        }
        ("new-weakness", "new") => "Use your local emergency procedure. Note the time last well.",
        ("awake", "no") => "No oral trial.",
        ("upright", "part") => "As high as tolerated.",
        ("upright", "flat") => "No oral trial.",
        ("saliva", "no") => "No oral trial. Refer.",
        ("cough", "no") => "Hospital practice stops here and refers.",
        ("requests", "no") => "Liquid aspiration was seen more often (odds ratio 1.57).",
        ("mouth", "no") => "Mouth care first, then ask again.",
        ("suction", "none") => "In most homes there is none.",
        _ => "",
    }
    .to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clinical::knowledge::gate_items::ITEMS;

    fn exceptions() -> impl Iterator<Item = (&'static Item, &'static Exception)> {
        let of = |item: &'static Item| item.exceptions.iter().map(move |e| (item, e));
        ITEMS.iter().flat_map(of)
    }

    #[test]
    fn every_id_has_words() {
        for item in ITEMS {
            assert_ne!(holds(item), item.id);
        }
        for (item, e) in exceptions() {
            assert_ne!(exception(item, e), e.id, "{}", item.id);
        }
    }

    /// Weakness that the team knows of asks for nothing; everything else does.
    #[test]
    fn every_other_exception_has_advice() {
        let without = exceptions().filter(|(i, e)| advice(i, e, &Policy::default()).is_empty());
        let without: Vec<_> = without.map(|(i, e)| (i.id, e.id)).collect();
        assert_eq!(without, [("new-weakness", "known")]);
    }

    #[test]
    fn policy_says_how_long_to_wait_and_nothing_else() {
        let all = |policy: &Policy| -> Vec<String> {
            exceptions().map(|(i, e)| advice(i, e, policy)).collect()
        };
        let waits = Policy {
            drowsy_wait: 45,
            ..Policy::default()
        };
        let before = all(&Policy::default());
        let mut changed = all(&waits);
        changed.retain(|advice| !before.contains(advice));
        assert_eq!(changed, ["Wait about 45 minutes, then ask again."]);
    }
}
