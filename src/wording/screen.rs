//! Screens in words.

use crate::clinical::knowledge::screen::ScreenId;
use crate::record::called::What;

/// A screen's name.
pub const fn title(screen: ScreenId) -> &'static str {
    match screen {
        ScreenId::Swallow => "Swallow screen",
        ScreenId::OralMotor => "Oral motor screen",
        ScreenId::FullVisit => "Full visit",
        ScreenId::Stepped => "Stepped swallow screen",
        ScreenId::OwnTrials => "Own trials",
        ScreenId::Water => "Water screen",
    }
}

/// What it is for, in one line.
pub const fn about(screen: ScreenId) -> &'static str {
    match screen {
        ScreenId::Swallow => "Ready? Breaths, dry swallows, 90 mL of water, decision, handover.",
        ScreenId::Water => "Ready? Breaths, 90 mL of water, decision, handover.",
        ScreenId::OralMotor => {
            "Face, mouth and throat, then repeated syllables and longest \"ah\"."
        }
        ScreenId::FullVisit => {
            "Ready? Face, mouth and throat, speech and breath timing, dry swallows and water."
        }
        ScreenId::Stepped => {
            "Ready? Breaths, dry swallows, small sips, 90 mL only when all were clear."
        }
        ScreenId::OwnTrials => {
            "Ready? Breaths, then any food or drink, amount and posture you choose."
        }
    }
}

/// What a visit is, in a list.
pub const fn what(what: What) -> &'static str {
    match what {
        What::Screen(screen) => title(screen),
        What::Count => "Count",
        What::Visit => "Visit",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// That each has words, the match sees to; that they are its own, this does.
    #[test]
    fn every_screen_has_words_of_its_own() {
        for words in [title, about] {
            let all: Vec<&str> = ScreenId::ALL.into_iter().map(words).collect();
            for (i, said) in all.iter().enumerate() {
                assert!(!said.is_empty() && !all[..i].contains(said), "{said}");
            }
        }
    }
}
