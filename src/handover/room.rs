//! Room on one phone screen: which parts of a text stand, and which are counted.

use crate::wording;

/// How many parts of each list are told; what is left out is counted. Shrunk list by list, the
/// least needed first.
#[derive(Clone, Copy)]
pub(super) struct Room {
    /// What holds at the gate.
    pub(super) holding: bool,
    pub(super) examined: usize,
    pub(super) background: usize,
    pub(super) assessment: usize,
    /// The recommendation in full.
    pub(super) whole: bool,
    /// What was gone past with who did and why: the first to go of what touches swallowing.
    pub(super) reasons: bool,
    /// What was gone past, readings, what is missing: only where nothing else is left to cut.
    pub(super) kept: usize,
}

impl Room {
    /// Room for everything.
    pub(super) const FULL: Room = Room {
        holding: true,
        examined: wording::oral::ROOM,
        background: 12,
        assessment: 12,
        whole: true,
        reasons: true,
        kept: 40,
    };

    /// The next smaller one; none where nothing is left to cut.
    pub(super) fn less(self) -> Option<Room> {
        let mut room = self;
        if room.holding {
            room.holding = false;
        } else if room.examined > 5 {
            room.examined -= 1;
        } else if room.whole {
            room.whole = false;
        } else if room.examined > 3 {
            room.examined -= 1;
        } else if room.reasons {
            room.reasons = false;
        } else if room.background > 1 {
            room.background -= 1;
        } else if room.assessment > 3 {
            room.assessment -= 1;
        } else if room.examined > 0 {
            room.examined -= 1;
        } else if room.assessment > 0 {
            room.assessment -= 1;
        } else if room.background > 0 {
            room.background -= 1;
        } else if room.kept > 0 {
            room.kept -= 1;
        } else {
            return None;
        }
        Some(room)
    }
}

/// A part of a line.
pub(super) struct Part {
    pub(super) words: String,
    cut: Cut,
}

/// When a part is cut.
enum Cut {
    First,
    Last,
    /// To these words before anything else goes, and then among the last.
    Soon(String),
    /// Among the last, and then to these words.
    To(String),
    Never,
}

/// A part that is among the last to be cut.
pub(super) fn kept(words: impl Into<String>) -> Part {
    Part {
        words: words.into(),
        cut: Cut::Last,
    }
}

pub(super) fn plain(words: impl Into<String>) -> Part {
    Part {
        words: words.into(),
        cut: Cut::First,
    }
}

/// A part of which at least the short words are told.
pub(super) fn at_least(short: impl Into<String>, words: impl Into<String>) -> Part {
    Part {
        words: words.into(),
        cut: Cut::To(short.into()),
    }
}

/// What was gone past with its reason: cut to the first as soon as there is no room for both.
pub(super) fn gone_past(words: &str) -> Part {
    let end = words.find("decided by the ").unwrap_or(words.len());
    Part {
        words: words.to_owned(),
        cut: Cut::Soon(words[..end].trim_end_matches([' ', ',', ';']).to_owned()),
    }
}

/// A part that is told whatever else there is.
pub(super) fn always(words: impl Into<String>) -> Part {
    Part {
        words: words.into(),
        cut: Cut::Never,
    }
}

/// Words as the end of a sentence; a question has its own.
pub(super) fn ended(words: &str) -> String {
    let end = if words.ends_with('?') { "" } else { "." };
    format!("{words}{end}")
}

/// The parts in one line as far as there is room, and how many more there are; at least so many of
/// those that are kept.
pub(super) fn some_of(parts: Vec<Part>, most: usize, room: Room, least: usize) -> String {
    let (mut plain, mut kept, mut more) = (0, 0, 0);
    let mut told: Vec<String> = Vec::new();
    for part in parts {
        let (count, most) = match part.cut {
            Cut::First => (&mut plain, most),
            Cut::Never => {
                told.push(part.words);
                continue;
            }
            Cut::To(_) => (&mut kept, room.kept),
            _ => (&mut kept, room.kept.max(least)),
        };
        let fits = *count < most;
        *count += usize::from(fits);
        match part.cut {
            Cut::Soon(short) if fits && !room.reasons => told.push(short),
            _ if fits => told.push(part.words),
            // Said once, however often it was seen.
            Cut::To(short) if !told.iter().any(|told| told.contains(&short)) => told.push(short),
            _ => more += 1,
        }
    }
    if more > 0 {
        told.push(format!("{more} more in the record"));
    }
    // Some parts are whole sentences elsewhere; here the line has the only full stop.
    let told: Vec<&str> = told
        .iter()
        .map(|words| words.trim_end_matches('.'))
        .collect();
    told.join("; ")
}
