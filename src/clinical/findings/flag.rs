//! What a rule says about findings.

use serde::{Serialize, Serializer};

use crate::clinical::findings::fact::Fact;
pub use crate::clinical::knowledge::level::{Domain, Level};
use crate::clinical::knowledge::rule::Rule;

/// A conclusion with its reason and its rule. Made by [`Rule::flag`] only.
#[derive(Clone, Debug, PartialEq)]
pub struct Flag {
    level: Level,
    domain: Domain,
    fact: Fact,
    rule: &'static Rule,
}

impl Flag {
    /// How grave.
    pub fn level(&self) -> Level {
        self.level
    }

    /// What about.
    pub fn domain(&self) -> Domain {
        self.domain
    }

    /// What about, as data.
    pub fn fact(&self) -> &Fact {
        &self.fact
    }

    /// Why, in plain words a ward uses.
    pub fn reason(&self) -> String {
        crate::wording::flag::reason(self)
    }

    /// By which rule.
    pub fn rule(&self) -> &'static Rule {
        self.rule
    }
}

/// In a key or a fact it is its rule and what it is about.
impl Serialize for Flag {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        (self.rule.id, &self.fact).serialize(to)
    }
}

impl Rule {
    /// The only way to a [`Flag`].
    pub fn flag(&'static self, level: Level, domain: Domain, fact: impl Into<Fact>) -> Flag {
        Flag {
            level,
            domain,
            fact: fact.into(),
            rule: self,
        }
    }
}
