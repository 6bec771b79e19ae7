//! Drink and food levels of the international framework: numbers and names, unchanged, by text
//! only. Recorded when the clinician picks one, never derived.

/// A drink level, 0 to 4.
pub const fn drink(level: u8) -> Option<&'static str> {
    Some(match level {
        0 => "0 Thin",
        1 => "1 Slightly thick",
        2 => "2 Mildly thick",
        3 => "3 Moderately thick",
        4 => "4 Extremely thick",
        _ => return None,
    })
}

/// A food level, 3 to 7.
pub const fn food(level: u8) -> Option<&'static str> {
    Some(match level {
        3 => "3 Liquidised",
        4 => "4 Pureed",
        5 => "5 Minced & moist",
        6 => "6 Soft & bite-sized",
        7 => "7 Regular",
        _ => return None,
    })
}
