//! What the trade knows, whoever is examined: sources, rules, published values, levels, policy, and
//! the tables of what is asked and looked at.
//!
//! Read by clinicians: the tables stand in `sources.csv`, `rules.csv` and `norms/*.csv`.

pub mod gate_items;
pub mod level;
pub mod levels;
pub mod norms;
pub mod oral;
pub mod order;
pub mod person;
pub mod policy;
pub mod rule;
pub mod rules;
pub mod screen;
pub mod sign;
pub mod signed;
pub mod source;
pub mod task;
