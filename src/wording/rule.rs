//! What a rule rests on, in words.

use crate::clinical::knowledge::rule::{Basis, Rule};
use crate::clinical::knowledge::source::{Mark, Source};
use crate::wording::words::capital;

impl Rule {
    /// What the rule rests on, in a few words: "Published: OGU00a" or "Local policy".
    pub fn basis_short(&self) -> String {
        match self.basis {
            Basis::Published(_) => self.basis_line(),
            Basis::LocalPolicy { .. } => "Local policy".to_owned(),
        }
    }

    /// One line on what the rule rests on: "Published: GRA; published, secondary copy: TH4, IDC"
    /// or "Local policy: ...".
    pub fn basis_line(&self) -> String {
        let keys = |mark: Option<Mark>| {
            let of = |s: &&&Source| mark.is_none_or(|mark| s.mark == mark);
            let keys: Vec<_> = self.sources().iter().filter(of).map(|s| s.key).collect();
            keys.join(", ")
        };
        match self.basis {
            Basis::Published(_) => {
                let marks = [Mark::Published, Mark::Secondary].map(|mark| (mark, keys(Some(mark))));
                let parts: Vec<_> = marks
                    .iter()
                    .filter(|(_, keys)| !keys.is_empty())
                    .map(|(mark, keys)| format!("{}: {keys}", mark.words()))
                    .collect();
                capital(&parts.join("; "))
            }
            Basis::LocalPolicy { why, seen: [] } => format!("Local policy: {why}"),
            Basis::LocalPolicy { why, .. } => {
                format!("Local policy: {why} Read for it: {}", keys(None))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::clinical::knowledge::rules;

    #[test]
    fn a_basis_says_how_each_source_was_seen() {
        for (rule, line) in [
            (&rules::WATER_FROM_TWO, "Published: SLK09"),
            (&rules::WATER_CLEAR, "Published, secondary copy: TH4, IDC"),
            (
                &rules::WATER_COUGH,
                "Published: GRA; published, secondary copy: TH4, IDC",
            ),
            (
                &rules::CRACKER_NOT_FOR,
                "Local policy: common practice, no published rule.",
            ),
            (
                &rules::MOUTH_OPENING_WHO,
                "Local policy: the studies were in adults between incisor edges. Read for it: \
                 GEE19",
            ),
        ] {
            assert_eq!(rule.basis_line(), line, "{}", rule.id);
        }
        for rule in rules::ALL {
            let line = rule.basis_line();
            for source in rule.sources() {
                assert!(line.contains(source.key), "{}: {line}", rule.id);
            }
        }
    }
}
