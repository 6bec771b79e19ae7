//! Readings of the breathing as the ward says them.

use crate::clinical::findings::breathing::{Method, NoRange, Reading, Spo2, State};
use crate::clinical::tasks::breath_taps::{Even, Running};
use crate::measure::decimals::decimals;

/// The rate as the ward says it.
pub fn rate(rate: u16, method: Method) -> String {
    match method {
        Method::Counted => format!("breathing {rate} a minute (counted for 60 seconds)"),
        Method::Entered => format!("breathing {rate} a minute (counted elsewhere)"),
        Method::Shorter => format!("breathing {rate} a minute (by taps or in 30 seconds)"),
    }
}

/// The SpO2 as the ward says it.
pub fn spo2(spo2: Spo2) -> String {
    let on = match spo2.oxygen {
        Some(true) => " on oxygen",
        Some(false) => " on air",
        None => "",
    };
    let target = spo2.target.map_or(String::new(), |lowest| {
        format!(" (prescribed: {} % or more)", decimals(lowest, 0))
    });
    let percent = decimals(spo2.percent, 0);
    format!("oxygen saturation {percent} %{on}{target}")
}

/// A reading, or that there is none.
pub fn reading(reading: Reading) -> String {
    match reading {
        Reading::NoCount(None) => "Breaths not counted".to_owned(),
        Reading::NoCount(Some(doubt)) => format!("Breaths: count again. {doubt}"),
        Reading::Rate(breaths, method) => rate(breaths, method),
        Reading::Spo2(read) => spo2(read),
    }
}

/// The word for it.
pub const fn state(state: State) -> &'static str {
    match state {
        State::Awake => "awake",
        State::Asleep => "asleep",
    }
}

/// Why a child's rate is set beside nothing.
pub fn no_range(why: NoRange) -> String {
    match why {
        NoRange::TooYoung => "No published value is used in the first month of life.",
        NoRange::GiveMonths => "No comparison: under 3 years the published values go by months.",
        NoRange::StateNotGiven => {
            "No comparison: under 3 years the published values go by awake or asleep."
        }
        NoRange::Adult => "From 16 years the bands for adults are used.",
        NoRange::NoTable(why) => return why.to_string(),
        NoRange::NoRate => "No comparison: the equation gave no rate.",
    }
    .to_owned()
}

/// The rate so far and how even it is, while one taps.
pub fn running(so_far: Running) -> String {
    let Running {
        rate,
        all,
        within,
        spread,
        even,
    } = so_far;
    let even = match even {
        Even::Enough => "even enough".to_owned(),
        Even::More(more) => format!("{more} more"),
        Even::Uneven => "uneven: count for 60 seconds".to_owned(),
    };
    format!("about {rate} a minute, {within} of {all} within {spread} %: {even}")
}
