//! The shape of a task's words.

/// A task in words.
#[derive(Clone, Copy, Debug)]
pub struct TaskWords {
    /// Its name: what it is, in full.
    pub title: &'static str,
    /// What the clinician does, one step a line.
    pub steps: &'static [&'static str],
    /// What is said to the patient, word for word; empty where nothing is.
    pub say: &'static str,
    /// What the questions before the start that need no answer are about; empty where there are
    /// none.
    pub more: &'static str,
    /// The words that stand beside every result.
    pub caveat: &'static str,
    /// For whom it is meant.
    pub for_whom: &'static str,
    /// What it is where it stands as another way to count.
    pub another_way: &'static str,
    /// What one tap counts: one and many; empty where taps are not counted.
    pub counts: (&'static str, &'static str),
    /// What the pad says before the start; empty where there is no pad.
    pub start: &'static str,
    /// What is pressed at the end, where a press ends the time.
    pub end: Option<&'static str>,
    /// What it asks in words of its own; the others stand in `shared`.
    pub asks: &'static [Ask],
}

/// A task of which nothing is said.
pub const PLAIN: TaskWords = TaskWords {
    title: "",
    steps: &[],
    say: "",
    more: "",
    caveat: "",
    for_whom: "",
    another_way: "",
    counts: ("", ""),
    start: "",
    end: None,
    asks: &[],
};

/// A question in words.
#[derive(Clone, Copy, Debug)]
pub struct Ask {
    /// Its id.
    pub id: &'static str,
    /// The question; empty where only its answers are shown.
    pub ask: &'static str,
    /// The unit of a number that is asked for; empty where it has none, or no number is asked for.
    pub unit: &'static str,
    /// The choices: id, and the words on the button.
    pub choices: &'static [(&'static str, &'static str)],
}

impl Ask {
    /// The words of a choice; none for one that is not offered.
    pub fn words_of(&self, choice: &str) -> Option<&'static str> {
        let mut choices = self.choices.iter();
        choices
            .find(|(id, _)| *id == choice)
            .map(|(_, words)| *words)
    }
}

/// A question that takes free words.
pub const fn free(id: &'static str, ask: &'static str) -> Ask {
    Ask {
        id,
        ask,
        unit: "",
        choices: &[],
    }
}

/// A question that takes a number.
pub const fn number(id: &'static str, ask: &'static str, unit: &'static str) -> Ask {
    Ask {
        id,
        ask,
        unit,
        choices: &[],
    }
}

/// A question that takes a choice.
pub const fn choice(
    id: &'static str,
    ask: &'static str,
    choices: &'static [(&'static str, &'static str)],
) -> Ask {
    Ask {
        id,
        ask,
        unit: "",
        choices,
    }
}
