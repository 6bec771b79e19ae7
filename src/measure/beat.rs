//! A beat on a fixed grid.
//!
//! **Invariant:** every beat is worked out from the start, never from the beat before: what comes
//! late once does not move those after it.

use super::time::Millis;

/// A grid of beats from a start on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Beat {
    period: Millis,
}

impl Beat {
    /// Beats so far apart; none where that is no time at all.
    pub fn every(period: Millis) -> Option<Beat> {
        (period > Millis::ZERO).then_some(Beat { period })
    }

    /// How many beats have sounded, the first at the start itself: 0 before it.
    ///
    /// ```
    /// use penlight::measure::beat::Beat;
    /// use penlight::measure::time::Millis;
    /// let beat = Beat::every(Millis(500)).unwrap();
    /// assert_eq!(beat.sounded(Millis(-1)), 0);
    /// assert_eq!(beat.sounded(Millis(0)), 1);
    /// assert_eq!(beat.sounded(Millis(59_999)), 120);
    /// ```
    pub fn sounded(self, since_start: Millis) -> u32 {
        if since_start < Millis::ZERO {
            return 0;
        }
        u32::try_from(since_start.0 / self.period.0 + 1).unwrap_or(u32::MAX)
    }

    /// The beats after `after` and up to `until`, both since the start: number from 0, and time.
    ///
    /// A page that was hidden goes on here with the next beat of the original grid.
    pub fn between(self, after: Millis, until: Millis) -> impl Iterator<Item = (i64, Millis)> {
        let first = if after < Millis::ZERO {
            0
        } else {
            after.0 / self.period.0 + 1
        };
        let period = self.period.0;
        (first..)
            .map(move |n| (n, Millis(n * period)))
            .take_while(move |(_, at)| *at <= until)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn beat() -> Beat {
        Beat::every(Millis(500)).unwrap()
    }

    #[test]
    fn no_time_at_all_is_no_beat() {
        assert_eq!(Beat::every(Millis(0)), None);
        assert_eq!(Beat::every(Millis(-500)), None);
    }

    #[test]
    fn a_hundred_and_twenty_beats_in_a_minute() {
        let all: Vec<_> = beat().between(Millis(-1), Millis(59_999)).collect();
        assert_eq!(all.len(), 120);
        assert!(all.iter().all(|(n, at)| at.0 == n * 500));
    }

    #[test]
    fn looking_ahead_in_any_steps_gives_each_beat_once() {
        let mut heard = Vec::new();
        let mut after = Millis(-1);
        for until in [0, 25, 130, 499, 500, 501, 1_400, 11_400, 60_000] {
            heard.extend(beat().between(after, Millis(until)).map(|(n, _)| n));
            after = Millis(until);
        }
        assert_eq!(heard, (0..=120).collect::<Vec<_>>());
    }

    #[test]
    fn after_ten_hidden_seconds_the_next_beat_is_on_the_grid() {
        let next = beat().between(Millis(13_260), Millis(14_000)).next();
        assert_eq!(next, Some((27, Millis(13_500))));
    }
}
