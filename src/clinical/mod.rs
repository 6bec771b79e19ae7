//! What the trade knows, and what it concludes.
//!
//! Pure. Four rooms, arrows one way: `decision -> tasks -> findings -> knowledge`. A screen and a
//! task are data: adding one means listing it, not writing a page.
//!
//! **Invariant:** a [`findings::flag::Flag`] can only be made by a [`knowledge::rule::Rule`], and a
//! rule can't be written without its source or the words "local policy".

pub mod decision;
pub mod findings;
pub mod knowledge;
pub mod tasks;
