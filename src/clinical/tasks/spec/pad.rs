//! What the pad of a task does.

use crate::measure::time::Millis;

/// A second press within this time after another is pointed out.
pub const QUICK: Millis = Millis(60);

/// How the time of a task ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Length {
    /// By itself after this long.
    Fixed(Millis),
    /// By itself after the length chosen on the page, or by a press where none was.
    Chosen,
    /// By the answer to this question: by itself after so long, or by a press.
    Answered(&'static str, &'static [(&'static str, Option<Millis>)]),
    /// By a press only.
    Open,
}

/// What the pad does.
#[derive(Clone, Copy, Debug)]
pub struct Pad {
    /// Whether a tap counts something.
    pub counts: bool,
    /// How the time ends.
    pub length: Length,
    /// Whether the start is the first thing counted: the window opens with the first syllable.
    pub first_counts: bool,
    /// Whether a touch of the pad ends the time: nothing is counted, the whole pad is "stop".
    pub touch_ends: bool,
    /// The period of a beat that sounds and shows while the time runs.
    pub beat: Option<Millis>,
    /// How long after the start later taps are still kept, apart.
    pub late: Option<Millis>,
    /// How long the watch after the end lasts.
    pub watch: Option<Millis>,
    /// Whether "ready, set, go" is offered.
    pub countdown: bool,
}

impl Pad {
    /// A pad with nothing of its own: it counts nothing, and a press ends the time.
    pub const PLAIN: Pad = Pad {
        counts: false,
        length: Length::Open,
        first_counts: false,
        touch_ends: false,
        beat: None,
        late: None,
        watch: None,
        countdown: false,
    };

    /// Whether nothing is counted or touched: the time runs to its end by itself.
    pub fn is_silent(&self) -> bool {
        !self.counts && !self.touch_ends
    }

    /// Whether a press can end the time: wherever it is not of one length.
    pub const fn ends_by_press(&self) -> bool {
        !matches!(self.length, Length::Fixed(_))
    }
}
