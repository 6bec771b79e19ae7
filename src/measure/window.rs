//! Counting within a window of fixed length, such as dry swallows in thirty seconds.
//!
//! Nothing is thrown away: marks outside the window are kept and named, because a press just
//! before "go" or just after the end is for the clinician to judge.

use std::fmt;

use super::time::Millis;

/// Why a window can't be set up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WindowError {
    /// The length is zero or less.
    NoLength(Millis),
    /// Late marks were to be watched for until a time before the window's own end.
    LateEndsEarly,
}

impl fmt::Display for WindowError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            WindowError::NoLength(length) => {
                write!(f, "A count needs a length of more than zero, not {length}.")
            }
            WindowError::LateEndsEarly => {
                f.write_str("The time for late marks must not end before the count does.")
            }
        }
    }
}

impl std::error::Error for WindowError {}

/// A window in which marks count, and an optional stretch after it in which they are late.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Window {
    length: Millis,
    late_until: Option<Millis>,
}

impl Window {
    /// A window of `length`, watched on until `late_until` after its start.
    ///
    /// Without `late_until` every mark past the end is after, none is late.
    ///
    /// # Errors
    ///
    /// [`WindowError::NoLength`] for a length of zero or less; [`WindowError::LateEndsEarly`]
    /// when `late_until` lies before `length`.
    pub fn new(length: Millis, late_until: Option<Millis>) -> Result<Window, WindowError> {
        if length <= Millis::ZERO {
            return Err(WindowError::NoLength(length));
        }
        if late_until.is_some_and(|until| until < length) {
            return Err(WindowError::LateEndsEarly);
        }
        Ok(Window { length, late_until })
    }

    /// How long marks count.
    pub const fn length(self) -> Millis {
        self.length
    }

    /// Shares out `offsets`, each a time after the window's start.
    ///
    /// Both ends count: with a window of 30 s a mark at 30.000 s is inside and one at 30.001 s
    /// is not. Every mark ends up in exactly one list, and every list is in order of time,
    /// whatever the order they were given in.
    ///
    /// ```
    /// use penlight::measure::time::Millis;
    /// use penlight::measure::window::Window;
    /// let window = Window::new(Millis::from_secs(30), Some(Millis::from_secs(60)))?;
    /// let split = window.split(&[-400, 3_000, 30_000, 30_200, 61_000].map(Millis));
    /// assert_eq!(split.count(), 2);
    /// assert_eq!(split.early, [Millis(-400)]);
    /// assert_eq!(split.late, [Millis(30_200)]);
    /// assert_eq!(split.after, [Millis(61_000)]);
    /// # Ok::<(), penlight::measure::window::WindowError>(())
    /// ```
    pub fn split(self, offsets: &[Millis]) -> WindowCount {
        let mut sorted = offsets.to_vec();
        sorted.sort();
        let mut split = WindowCount::default();
        for at in sorted {
            let list = if at < Millis::ZERO {
                &mut split.early
            } else if at <= self.length {
                &mut split.inside
            } else if self.late_until.is_some_and(|until| at <= until) {
                &mut split.late
            } else {
                &mut split.after
            };
            list.push(at);
        }
        split
    }
}

/// Marks shared out by a [`Window`], each list in order of time.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct WindowCount {
    /// Before the start, for instance during "ready, set, go".
    pub early: Vec<Millis>,
    /// From the start to the end, both included: these count.
    pub inside: Vec<Millis>,
    /// Past the end, while it was still being watched: noted, not counted.
    pub late: Vec<Millis>,
    /// Later than that.
    pub after: Vec<Millis>,
}

impl WindowCount {
    /// How many marks count.
    pub fn count(&self) -> usize {
        self.inside.len()
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn no_length_no_window() {
        for length in [Millis::ZERO, Millis(-5_000)] {
            assert_eq!(
                Window::new(length, None),
                Err(WindowError::NoLength(length))
            );
        }
        assert_eq!(
            WindowError::NoLength(Millis::ZERO).to_string(),
            "A count needs a length of more than zero, not 0.0 s."
        );
    }

    #[test]
    fn the_late_stretch_may_be_empty_but_not_negative() {
        let length = Millis::from_secs(30);
        assert!(Window::new(length, Some(length)).is_ok());
        assert_eq!(
            Window::new(length, Some(Millis(29_999))),
            Err(WindowError::LateEndsEarly)
        );
    }

    #[test]
    fn every_edge_to_the_millisecond() {
        let window = Window::new(Millis(30_000), Some(Millis(60_000))).unwrap();
        let split = window.split(&[60_001, 60_000, 30_001, 30_000, 0, -1].map(Millis));
        assert_eq!(split.early, [Millis(-1)]);
        assert_eq!(split.inside, [Millis(0), Millis(30_000)]);
        assert_eq!(split.late, [Millis(30_001), Millis(60_000)]);
        assert_eq!(split.after, [Millis(60_001)]);
    }

    #[test]
    fn without_a_late_stretch_nothing_is_late() {
        let window = Window::new(Millis(5_000), None).unwrap();
        let split = window.split(&[Millis(5_001)]);
        assert!(split.late.is_empty());
        assert_eq!(split.after, [Millis(5_001)]);
    }

    #[test]
    fn no_marks_no_count() {
        let window = Window::new(Millis(5_000), None).unwrap();
        assert_eq!(window.split(&[]), WindowCount::default());
    }
}
