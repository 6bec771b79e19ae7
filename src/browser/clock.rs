//! The phone's two clocks.

use js_sys::Date;
use wasm_bindgen::JsValue;
use web_sys::Event;

use super::{ids, window};
use crate::measure::time::{Millis, PageLife, Stamp};

thread_local! {
    static LIFE: PageLife = PageLife(u32::from_le_bytes(ids::random()));
}

/// This life of the page: drawn once per load.
///
/// A page that comes back from the back/forward cache is still the same life, since its
/// `performance.now()` goes on from the same origin.
pub fn life() -> PageLife {
    LIFE.with(|life| *life)
}

/// This moment.
pub fn now() -> Stamp {
    stamp(monotonic(), 0.0)
}

/// When an event happened, which is earlier than the moment its handler runs: 9 to 14 ms on a
/// loaded machine, more while the main thread is busy.
///
/// An event without a usable time stamp is taken to happen now: some browsers have given zero,
/// or milliseconds since 1970.
pub fn stamp_of(event: &Event) -> Stamp {
    let now = monotonic();
    let at = event.time_stamp();
    if at > 0.0 && at <= now {
        stamp(at, now - at)
    } else {
        stamp(now, 0.0)
    }
}

fn stamp(mono: f64, ago: f64) -> Stamp {
    Stamp {
        life: life(),
        mono: Millis(mono.round() as i64),
        wall: Millis((Date::now() - ago).round() as i64),
    }
}

/// Milliseconds since the page's origin. Zero where there is no such clock: the wall clock in
/// the stamp then stands alone.
fn monotonic() -> f64 {
    window()
        .and_then(|window| window.performance())
        .map_or(0.0, |performance| performance.now())
}

/// A wall time in the words of the phone's time zone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Local {
    /// Like "25 Nov 2026": the month in letters, since 04/05 is read both ways round.
    pub date: String,
    /// Like "14:10".
    pub time: String,
}

/// A wall time as the phone would show it.
pub fn local(wall: Millis) -> Local {
    let date = Date::new(&JsValue::from_f64(wall.0 as f64));
    words(
        date.get_full_year(),
        date.get_month(),
        date.get_date(),
        date.get_hours(),
        date.get_minutes(),
    )
}

const MONTHS: [&str; 12] = [
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
];

/// `month` from 0, as the platform counts it.
fn words(year: u32, month: u32, day: u32, hour: u32, minute: u32) -> Local {
    let month = MONTHS.get(month as usize).copied().unwrap_or_default();
    Local {
        date: format!("{day} {month} {year}"),
        time: format!("{hour:02}:{minute:02}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_date_has_letters_and_a_time_two_digits() {
        let local = words(2026, 10, 25, 4, 7);
        assert_eq!(local.date, "25 Nov 2026");
        assert_eq!(local.time, "04:07");
    }
}
