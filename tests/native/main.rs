//! Every native test in one program: it links once.

#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "../outside/mod.rs"]
mod outside;
#[path = "../support/mod.rs"]
mod support;

mod advice;
mod bad_input;
mod breath_rates;
mod breathing;
mod children;
mod choking;
mod cracker;
mod decision_properties;
mod drink_thickness;
mod dry_swallows;
mod ending;
mod found_in_the_mouth;
mod full_note;
mod going_on;
mod journal;
mod judgements;
mod late_signs;
mod list_at_home;
mod lost_records;
mod meal;
mod measure_vectors;
mod mixed_texts;
mod next_trial;
mod norms;
mod nursing_text;
mod oral_items;
mod own_trials;
mod plans;
mod policy_file;
mod presses;
mod random_visits;
mod readiness;
mod readiness_overnight;
mod reasons;
mod reasons_told;
mod refusals;
mod saturation;
mod screen_properties;
mod screened_at;
mod sign_said;
mod signs;
mod sips;
mod six_signs;
mod speech_flow;
mod speech_properties;
mod speech_scores;
mod swallow_vectors;
mod tally;
mod task_specs;
mod task_state;
mod task_words;
mod text_later;
mod text_room;
mod text_words;
mod timed_cup;
mod typed_words;
mod voice;
mod watch;
mod way;
