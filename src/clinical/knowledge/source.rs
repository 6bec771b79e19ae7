//! Where a figure or a rule comes from, and how far that can be trusted.
//!
//! The list itself is `sources.csv`, checked by the build (`scripts/tables`).

/// How a figure was come by. The app shows these in words beside every figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Seen in the publication itself, its abstract or its table.
    Published,
    /// Seen in a secondary report of the publication.
    Secondary,
    /// Plain arithmetic on published figures.
    Derived,
    /// A design choice without a published rule: the organisation may set it otherwise.
    LocalPolicy,
    /// A fact of the trade without a source.
    CommonPractice,
    /// From memory only. Background text; **never drives a flag**.
    FromMemory,
}

/// One publication, guideline or teaching page.
#[derive(Debug, PartialEq, Eq)]
pub struct Source {
    /// Short key, used in code and in the source list.
    pub key: &'static str,
    /// What it is: study, guideline, teaching page.
    pub kind: &'static str,
    /// Full citation as far as it is known.
    pub citation: &'static str,
    /// Who was studied, where it matters to the reader.
    pub population: &'static str,
    /// How its statements used here were seen.
    pub mark: Mark,
}

include!(concat!(env!("OUT_DIR"), "/sources.rs"));

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_unique_and_nothing_is_blank() {
        for (i, a) in ALL.iter().enumerate() {
            assert!(
                !a.citation.is_empty() && !a.population.is_empty(),
                "{}",
                a.key
            );
            assert!(!ALL[..i].iter().any(|b| b.key == a.key), "twice: {}", a.key);
        }
    }
}
