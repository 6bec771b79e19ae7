//! Every native test in one program: it links once.

#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "../outside/mod.rs"]
mod outside;
#[path = "../support/mod.rs"]
mod support;

mod away;
mod bad_input;
mod decision_properties;
mod dry_swallows;
mod ending;
mod full_note;
mod going_on;
mod journal;
mod judgements;
mod meal;
mod measure_vectors;
mod mixed_texts;
mod norms;
mod nursing_text;
mod oral_items;
mod own_trials;
mod plans;
mod policy_file;
mod presses;
mod reasons;
mod safety;
mod safety_fourth;
mod safety_later;
mod safety_lost;
mod safety_third;
mod saturation;
mod screen_properties;
mod sign_said;
mod six_signs;
mod speech_flow;
mod speech_properties;
mod speech_scores;
mod swallow_steps;
mod swallow_vectors;
mod table_tasks;
mod task_specs;
mod text_walk;
mod words_walk;
