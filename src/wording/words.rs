//! Joining the app's own words into sentences. All of them begin with a plain letter.

use crate::measure::time::Millis;

/// With a capital in front, to stand alone.
pub fn capital(words: &str) -> String {
    with_first(words, char::to_ascii_uppercase)
}

/// With a small letter in front, to run on within a sentence. Words with another capital in them, such
/// as "SpO2" and "IDDSI", keep their first.
pub fn small(words: &str) -> String {
    let first = words.chars().take_while(|c| c.is_alphanumeric());
    if first.skip(1).any(char::is_uppercase) {
        words.to_owned()
    } else {
        with_first(words, char::to_ascii_lowercase)
    }
}

/// "1 chew", "12 chews".
pub fn counted(n: usize, one: &str, many: &str) -> String {
    format!("{n} {}", if n == 1 { one } else { many })
}

/// "1 second", "20 seconds": those that are over.
pub fn whole_seconds(length: Millis) -> String {
    let n = usize::try_from(length.0 / 1000).unwrap_or(0);
    counted(n, "second", "seconds")
}

/// "once", "twice", "3 times".
pub fn times(n: usize) -> String {
    match n {
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        n => format!("{n} times"),
    }
}

fn with_first(words: &str, change: fn(&char) -> char) -> String {
    let mut chars = words.chars();
    match chars.next() {
        Some(first) => std::iter::once(change(&first)).chain(chars).collect(),
        None => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn first_letters() {
        assert_eq!(capital("coughed"), "Coughed");
        assert_eq!(small("Breaths not counted"), "breaths not counted");
        assert_eq!(small("NEWS2 bands"), "NEWS2 bands");
        assert_eq!(small("SpO2 95 %"), "SpO2 95 %");
        assert_eq!(small("Read by NEWS2"), "read by NEWS2");
        assert_eq!(small("4 dry swallows"), "4 dry swallows");
        assert_eq!(small(""), "");
    }
}
