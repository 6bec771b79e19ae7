//! A rule: what follows from a finding, in plain words, with its source.
//!
//! The list of all rules is `rules.csv`; each is used by one pure function beside its task.

use crate::clinical::knowledge::source::Source;

/// What a rule rests on.
#[derive(Debug)]
pub enum Basis {
    /// Published: these sources state it.
    Published(&'static [&'static Source]),
    /// A design choice: no published rule was found. The organisation may set it otherwise.
    LocalPolicy {
        /// Why it is as it is, in one line.
        why: &'static str,
        /// What was read on the way to it.
        seen: &'static [&'static Source],
    },
}

/// One rule.
#[derive(Debug)]
pub struct Rule {
    /// Stable id, stored with every decision.
    pub id: &'static str,
    /// The rule in plain words.
    pub says: &'static str,
    /// What it looks at, in plain words.
    pub looks_at: &'static str,
    /// What it rests on.
    pub basis: Basis,
}

/// A rule is known by its id.
impl PartialEq for Rule {
    fn eq(&self, other: &Rule) -> bool {
        self.id == other.id
    }
}

impl Eq for Rule {}

impl Rule {
    /// The sources to show beside it.
    pub fn sources(&self) -> &'static [&'static Source] {
        match self.basis {
            Basis::Published(sources) | Basis::LocalPolicy { seen: sources, .. } => sources,
        }
    }
}
