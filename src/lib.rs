//! Penlight: an offline bedside examination of mouth, speech and swallow.
//!
//! The map of the house. Arrows run one way:
//!
//! ```text
//! ui -> draw, browser, handover, wording, record, clinical, measure
//! handover -> wording, record, clinical, measure
//! wording -> record, clinical, measure
//! record -> clinical, measure
//! clinical -> measure; in it decision -> tasks -> findings -> knowledge
//! ```
//!
//! * [`measure`] turns time-stamped marks into numbers.
//! * [`clinical`] is what the trade knows, what was found of a person, the tasks, the decision.
//! * [`wording`] turns facts into sentences. Nothing reads a sentence back.
//! * [`record`] keeps visits as an append-only journal, over a small store.
//! * [`handover`] turns a record into the texts that leave: for nursing, and the full note.
//! * `browser` is the only place that touches the web platform, but for `draw`, which shows pieces
//!   of a page and keeps them up to date.
//! * `ui` is the pages.
//!
//! A press flows: pointer event, stamp, event; the event goes into the visit, from which the page is
//! drawn, and into the queue in front of the store. Everything a page shows is rebuilt from events:
//! marks and answers, readings, flags with their facts, the decision, words.
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
