//! Penlight: an offline bedside examination of mouth, speech and swallow.
//!
//! The map of the house. Arrows run one way:
//!
//! ```text
//! ui -> draw, browser, handover, record, clinical, measure
//! handover -> record, clinical, measure
//! record -> clinical, measure
//! clinical -> measure
//! ```
//!
//! * [`measure`] turns time-stamped marks into numbers.
//! * [`clinical`] is what the trade knows: sources, rules, the gate, tasks, screens, the decision.
//! * [`record`] keeps visits as an append-only journal, over a small store.
//! * [`handover`] turns a record into the text for nursing.
//! * `browser` is the only place that touches the web platform.
//! * `draw` shows pieces of a page and keeps them up to date.
//! * `ui` is the pages.
//!
//! A press flows: pointer event, mark, trial, finding, flag, journal, page; and everything can be
//! rebuilt from the journal alone.
//!
//! `browser`, `draw` and `ui` need the feature `app`; the rest is pure and compiles without it.

#[cfg(feature = "app")]
pub mod browser;
pub mod clinical;
#[cfg(feature = "app")]
pub mod draw;
pub mod handover;
pub mod measure;
pub mod record;
#[cfg(feature = "app")]
pub mod ui;
pub mod wording;
