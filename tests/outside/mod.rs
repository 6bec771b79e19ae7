//! Against figures that come from outside: publications, and what the trade does.

mod arithmetic;
mod every_rule;
mod figures;
pub(crate) mod groups;
mod infant_breathing;
mod oral_examples;
mod read;
pub(crate) mod screen_rule_examples;
mod speech_rule_examples;
mod speech_tables;
mod speech_vectors;
mod swallow_rule_examples;
mod swallow_rule_properties;
