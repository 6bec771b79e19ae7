//! What the trade knows: people, sources, rules, the gate, tasks, screens and the decision.
//!
//! Pure. A screen and a task are data: adding one means listing it, not writing a page.
//!
//! **Invariant:** a [`flag::Flag`] can only be made by a [`rule::Rule`], and a rule can't be
//! written without its source or the words "local policy".

pub mod assess;
pub mod compare;
pub mod counted;
pub mod decision;
pub mod exam;
pub mod figures;
pub mod flag;
pub mod fresh;
pub mod gate;
pub mod gate_flags;
pub mod gate_items;
pub mod go_on;
pub mod hold;
pub mod judge;
pub mod levels;
pub mod norms;
pub mod oral;
pub mod order;
pub mod person;
pub mod policy;
pub mod predictive;
pub mod rule;
pub mod rules;
pub mod screen;
pub mod sign;
pub mod source;
pub mod table;
pub mod task;
pub mod tasks;
pub mod trial;
pub mod words;
