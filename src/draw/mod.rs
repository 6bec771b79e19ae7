//! Drawing: a page is a tree of pieces, shown and brought up to date in one place.
//!
//! Signals, effects and owners are Leptos'. Its views are not used: they compile a copy of the
//! drawing code for every shape that a page has, which was a third of the app. A piece has one
//! type, and what shows it is compiled once.
//!
//! **Invariants:** a part drawn anew keeps the elements it has where the new piece has the same ones
//! in the same places, so that focus, what is typed and what is unfolded stay. What is taken away
//! takes its effects with it at once: none of them runs after its signals are gone.

mod piece;
mod shown;

pub(crate) use piece::all;
pub use piece::{Draw, Drawn, El, Piece, Said, Say, el, live, said, when};
pub use shown::show;
