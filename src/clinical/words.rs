//! Joining the app's own words into sentences. All of them begin with a plain letter.

/// With a capital in front, to stand alone.
pub fn capital(words: &str) -> String {
    with_first(words, char::to_ascii_uppercase)
}

/// With a small letter in front, to run on within a sentence. Words such as "SpO2" and "IDDSI"
/// keep their capitals.
pub fn small(words: &str) -> String {
    let capitals = words
        .chars()
        .take(2)
        .filter(char::is_ascii_uppercase)
        .count();
    if capitals > 1 {
        words.to_owned()
    } else {
        with_first(words, char::to_ascii_lowercase)
    }
}

/// "1 second", "20 seconds".
pub fn seconds(n: i64) -> String {
    let s = if n == 1 { "" } else { "s" };
    format!("{n} second{s}")
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
        assert_eq!(small("4 dry swallows"), "4 dry swallows");
        assert_eq!(small(""), "");
    }
}
