//! How often somebody choked, and when; the voice after it.

use crate::clinical::findings::fact::Voice;
use crate::wording::by_mouth;

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

/// "voice wet after it"; none for a clear one.
pub fn voice(id: &str) -> Option<String> {
    let voice = Voice::of(id);
    let words = by_mouth::voice(voice);
    voice
        .is_changed()
        .then(|| format!("voice {words} after it"))
}
