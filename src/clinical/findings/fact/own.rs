//! Facts about the clinician's own trials.

use serde::Serialize;

/// What is given in an own trial, and how: ids of the choices, typed words as fields of their own.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OwnGiven {
    /// A level of the framework.
    pub level: Option<String>,
    /// Typed: what is given.
    pub what: Option<String>,
    /// How much.
    pub amount: Option<String>,
    /// How much, in millilitres.
    pub millilitres: Option<f64>,
    /// Spoon, cup, straw.
    pub by: Option<String>,
    /// Posture.
    pub posture: Option<String>,
    /// Strategy.
    pub strategy: Option<String>,
    /// Typed: another strategy.
    pub strategy_words: Option<String>,
}

impl OwnGiven {
    /// Whether it was said what is given.
    pub fn is_said(&self) -> bool {
        self.level.is_some() || self.what.is_some()
    }
}

/// What a rule says about the clinician's own trials.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum OwnFact {}
