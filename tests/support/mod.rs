//! What the tests beside this folder are made of: visits written press by press ([`scene`]), trials
//! and examinations as values, and any of them for properties.

pub(crate) mod any;
mod exams;
pub(crate) mod in_the_way;
mod moments;
mod scene;
mod trials;
mod walk;

pub(crate) use exams::*;
pub(crate) use in_the_way::*;
pub(crate) use moments::*;
pub(crate) use scene::*;
pub(crate) use trials::*;
pub(crate) use walk::*;
