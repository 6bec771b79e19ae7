//! Moments of an invented afternoon, and their words.

use penlight::handover::nursing::Clock;
use penlight::measure::time::{Millis, PageLife, Stamp};

pub(crate) const MINUTE: i64 = 60_000;
pub(crate) const HOUR: i64 = 60 * MINUTE;
/// Nine o'clock on the next day, in minutes since the visit began.
pub(crate) const NEXT_DAY: i64 = 19 * 60;

/// The wall clock at the zero of every time.
pub(crate) const WALL: i64 = 1_780_000_000_000;

/// `ms` after the zero, both clocks in step, in the first life of the page.
pub(crate) fn at(ms: i64) -> Stamp {
    stamp(1, ms, ms)
}

/// A stamp of any life; both times count from the zero.
pub(crate) fn stamp(life: u32, mono: i64, wall: i64) -> Stamp {
    Stamp {
        life: PageLife(life),
        mono: Millis(mono),
        wall: Millis(WALL + wall),
    }
}

/// The clock of a text written at this time of that day.
pub(crate) fn clock(time: &str) -> Clock {
    let (hours, minutes) = time.split_once(':').unwrap();
    let minute = |n: &str| n.parse::<i64>().unwrap();
    clock_after((minute(hours) - 14) * 60 + minute(minutes))
}

/// The time so many minutes after the visit began.
pub(crate) fn clock_after(minutes: i64) -> Clock {
    let wall = at(minutes * MINUTE).wall;
    let (date, time) = local(wall);
    Clock {
        date,
        time,
        wall,
        local,
    }
}

/// The visits begin at 14:00 on this day.
pub(crate) fn local(wall: Millis) -> (String, String) {
    let minutes = (wall - at(0).wall).0 / MINUTE + 14 * 60;
    let date = format!("{} Nov 2026", 25 + minutes.div_euclid(1440));
    let minutes = minutes.rem_euclid(1440);
    (date, format!("{:02}:{:02}", minutes / 60, minutes % 60))
}
