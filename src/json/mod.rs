//! Records as JSON (RFC 8259), read and written through serde.
//!
//! The library for it takes a tenth of what is sent to the phone: it compiles for every type how
//! a struct would be read from a list, and the words of every error, which nobody sees here. This
//! reads and writes what that library does, for what records hold; the tests compare the two.
//!
//! Left out, as no record holds it: where the type does not ask for a fraction, one is told apart from
//! a whole number and not worked out; a struct is never a list, and the
//! names of a map are texts.

mod reader;
mod writer;

pub use reader::{Wrong, read};
pub use writer::{Unwritable, write};
