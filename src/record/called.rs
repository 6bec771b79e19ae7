//! What a visit is and what it is called, as lists show it. Its words are made in `crate::wording`.

use serde::de::IgnoredAny;
use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::person::Label;
use crate::clinical::knowledge::screen::ScreenId;
use crate::clinical::knowledge::task::TaskId;

/// What a visit is called.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(from = "KeptCalled")]
pub enum Called {
    /// As somebody typed it.
    Label(String),
    /// A task on its own.
    Task(TaskId),
    /// A loose count.
    Count,
}

/// A label that no other visit has: where one has it, with a number behind it. Two of the same name in
/// a list are mixed up, whatever stands beside them.
pub fn unlike(label: Label, others: &[Called]) -> Label {
    let taken = |label: &Label| {
        let small = label.as_str().to_lowercase();
        let same = |other: &Called| matches!(other, Called::Label(o) if o.to_lowercase() == small);
        others.iter().any(same)
    };
    if !taken(&label) {
        return label;
    }
    // One more than there are others is free.
    let numbered = (2..others.len() + 3).filter_map(|n| {
        let end = format!(" ({n})");
        let room = Label::MOST.saturating_sub(end.chars().count());
        let begin: String = label.as_str().chars().take(room).collect();
        Label::parse(&format!("{begin}{end}")).ok()
    });
    let mut free = numbered.filter(|label| !taken(label));
    free.next().unwrap_or(label)
}

/// What a visit is called, as a head has it.
#[derive(Deserialize)]
#[serde(untagged)]
enum KeptCalled {
    Label {
        #[serde(rename = "Label")]
        label: String,
    },
    Task {
        #[serde(rename = "Task")]
        task: TaskId,
    },
    /// A loose count; and in heads of earlier versions anything, in words.
    Words(String),
    /// By a later version.
    Other(IgnoredAny),
}

impl From<KeptCalled> for Called {
    fn from(kept: KeptCalled) -> Called {
        match kept {
            KeptCalled::Words(words) if words == "Count" => Called::Count,
            KeptCalled::Label { label: words } | KeptCalled::Words(words) => Called::Label(words),
            KeptCalled::Task { task } => Called::Task(task),
            KeptCalled::Other(_) => Called::Count,
        }
    }
}

/// What a visit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(from = "KeptWhat")]
pub enum What {
    /// A screen.
    Screen(ScreenId),
    /// A loose count, or a task on its own.
    Count,
    /// A visit without a screen.
    Visit,
}

/// What a visit is, as a head has it.
#[derive(Deserialize)]
#[serde(untagged)]
enum KeptWhat {
    Screen {
        #[serde(rename = "Screen")]
        id: ScreenId,
    },
    Words(String),
    /// By a later version.
    Other(IgnoredAny),
}

/// What earlier versions wrote: the screen's title of their day. They are part of that form and change
/// no more; what is no screen had the words that are its name today.
const OLD_TITLES: [(&str, ScreenId); 5] = [
    ("Swallow screen", ScreenId::Swallow),
    ("Oral motor screen", ScreenId::OralMotor),
    ("Full visit", ScreenId::FullVisit),
    ("Stepped swallow screen", ScreenId::Stepped),
    ("Own trials", ScreenId::OwnTrials),
];

impl From<KeptWhat> for What {
    fn from(kept: KeptWhat) -> What {
        match kept {
            KeptWhat::Screen { id } => What::Screen(id),
            KeptWhat::Words(words) if words == "Count" => What::Count,
            KeptWhat::Words(words) => OLD_TITLES
                .iter()
                .find(|(title, _)| *title == words)
                .map_or(What::Visit, |(_, id)| What::Screen(*id)),
            KeptWhat::Other(_) => What::Visit,
        }
    }
}
