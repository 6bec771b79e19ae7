//! How often somebody choked, and when.

/// "choking at 14:01"; "choked 2 times, at 14:01 and 14:09; the last time".
pub fn when(times: &[String]) -> String {
    match times {
        [] => "choking".to_owned(),
        [one] => format!("choking at {one}"),
        [earlier @ .., last] => format!(
            "choked {} times, at {} and {last}; the last time",
            times.len(),
            earlier.join(", ")
        ),
    }
}
