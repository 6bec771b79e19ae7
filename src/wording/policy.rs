//! Settings of a policy in words: what each is, and what it takes. Why it has its figure stands beside
//! the figure.

use crate::clinical::knowledge::policy::{Kind, Setting, Unit};

/// What each setting is, by its key.
static TITLES: &[(&str, &str)] = &[
    (
        "visit.speech-language-pathologist",
        "A visit may be begun as a speech-language pathologist",
    ),
    (
        "gate.requests-close",
        "Not following one-step requests closes the gate",
    ),
    (
        "gate.no-suction-closes",
        "No suction within reach closes the gate",
    ),
    (
        "gate.drowsy-wait",
        "Wait before asking again, when tired or drowsy",
    ),
    (
        "gate.ready-minutes",
        "Ask readiness, airway and breathing again before a trial by mouth when older than",
    ),
    (
        "gate.orders-hours",
        "Ask who it is and what is ordered again before a trial by mouth when older than",
    ),
    (
        "breathing.block-at-or-below",
        "Adults: no water at or below",
    ),
    (
        "breathing.block-at-or-above",
        "Adults: no water at or above",
    ),
    (
        "breathing.caution-at-or-below",
        "Adults: caution at or below",
    ),
    (
        "breathing.caution-at-or-above",
        "Adults: caution at or above",
    ),
    (
        "breathing.spo2-block-at-or-below",
        "Adults without an own target: no water at an SpO2 at or below",
    ),
    (
        "breathing.spo2-caution-at-or-below",
        "Adults without an own target: caution at an SpO2 at or below",
    ),
    (
        "breathing.spo2-fall-stops",
        "A fall of SpO2 during a trial is told where it is more than",
    ),
    (
        "breathing.tap-spread",
        "Tapped breaths: an interval may differ from the middle one by",
    ),
    (
        "breathing.tap-intervals",
        "Tapped breaths: least intervals for a rate",
    ),
    ("dry.from-years", "Youngest age for dry swallows"),
    ("dry.none-stops", "No dry swallow at all is a stop"),
    (
        "water.voice-refers",
        "A changed voice after 90 mL of water refers",
    ),
    ("water.from-years", "Youngest age for 90 mL of water"),
    (
        "water.throat-clear-refers",
        "Clearing the throat alone with 90 mL of water refers",
    ),
    ("sips.first", "First small sip"),
    ("sips.second", "Second small sip"),
    ("sips.third", "Third small sip"),
    ("sips.repeats", "How often each small sip is given"),
    ("small-water.wording", "Wording of the 3 mL water result"),
    ("six-signs.gag-counts", "The gag counts among the six signs"),
    (
        "handover.upright-minutes",
        "Stay upright after eating or drinking (0 is not said)",
    ),
];

/// What the choices of a setting are, by its key and the choice's id.
static CHOICES: &[(&str, &str, &str)] = &[
    ("small-water.wording", "A", "as in research reports"),
    ("small-water.wording", "B", "as in a society's manual"),
];

/// A unit; nothing for a bare number.
const fn unit(unit: Unit) -> &'static str {
    match unit {
        Unit::Minutes => "minutes",
        Unit::Hours => "hours",
        Unit::BreathsAMinute => "breaths a minute",
        Unit::Percent => "%",
        Unit::Points => "points",
        Unit::Intervals => "intervals",
        Unit::Years => "years",
        Unit::Millilitres => "mL",
        Unit::Times => "",
    }
}

impl Setting {
    /// What it is.
    pub fn title(&self) -> &'static str {
        let mut all = TITLES.iter();
        all.find(|(key, _)| *key == self.key)
            .map_or(self.key, |(_, title)| title)
    }

    /// A value in words: "8 breaths a minute", "on".
    pub fn words(&self, value: i32) -> String {
        match self.kind {
            Kind::Whole { unit: of, .. } => match unit(of) {
                "" => value.to_string(),
                unit => format!("{value} {unit}"),
            },
            Kind::OnOff => if value == 0 { "off" } else { "on" }.to_owned(),
            Kind::OneOf(choices) => usize::try_from(value)
                .ok()
                .and_then(|at| choices.get(at))
                .map_or(String::new(), |id| format!("{id}, {}", self.choice(id))),
        }
    }

    fn choice(&self, id: &str) -> &'static str {
        let mut all = CHOICES.iter();
        all.find(|(key, choice, _)| *key == self.key && *choice == id)
            .map_or("", |(_, _, words)| words)
    }

    /// What a policy file may say for it: "a whole number from 8 to 10 (breaths a minute)".
    pub fn allowed(&self) -> String {
        match self.kind {
            Kind::Whole {
                unit: of,
                least,
                most,
            } => {
                let unit = match unit(of) {
                    "" => String::new(),
                    unit => format!(" ({unit})"),
                };
                format!("a whole number from {least} to {most}{unit}")
            }
            Kind::OnOff => "true (on) or false (off)".to_owned(),
            Kind::OneOf(choices) => {
                let quoted: Vec<String> = choices.iter().map(|id| format!("\"{id}\"")).collect();
                quoted.join(" or ")
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clinical::knowledge::policy::{SETTINGS, find};

    #[test]
    fn every_setting_has_its_words_and_no_words_lack_a_setting() {
        let keys = TITLES.iter().map(|(key, _)| *key);
        assert!(keys.eq(SETTINGS.iter().map(|setting| setting.key)));
        for (key, title) in TITLES {
            assert!(!title.is_empty() && !title.ends_with('.'), "{key}");
        }
        let choices = SETTINGS.iter().filter_map(|setting| match setting.kind {
            Kind::OneOf(choices) => Some(choices.iter().map(|id| (setting.key, *id))),
            _ => None,
        });
        let told = CHOICES.iter().map(|(key, id, _)| (*key, *id));
        assert!(told.eq(choices.flatten()));
        assert!(CHOICES.iter().all(|(_, _, words)| !words.is_empty()));
    }

    #[test]
    fn words() {
        let shown = |key: &str, v| find(key).map(|s| (s.words(v), s.allowed())).unwrap();
        assert_eq!(
            shown("breathing.block-at-or-below", 8),
            (
                "8 breaths a minute".to_owned(),
                "a whole number from 8 to 10 (breaths a minute)".to_owned()
            )
        );
        assert_eq!(shown("water.voice-refers", 1).0, "on");
        assert_eq!(
            shown("small-water.wording", 1),
            (
                "B, as in a society's manual".to_owned(),
                "\"A\" or \"B\"".to_owned()
            )
        );
        assert_eq!(
            shown("sips.repeats", 2),
            ("2".to_owned(), "a whole number from 1 to 3".to_owned())
        );
    }
}
