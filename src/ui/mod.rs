//! The pages.
//!
//! One component draws every task, one every gate group; what they show is data from
//! [`crate::clinical`]. A press becomes an event on the `desk::Desk`, and the page is drawn from
//! the visit that the events fold to.
//!
//! **Invariant:** nothing on a page knows more than the journal; what must not be lost is an
//! event before it is on the screen.

pub mod app;
mod attached;
mod banner;
mod choking;
mod count;
mod decision;
mod desk;
mod details;
mod ended;
mod follow;
mod gate;
mod gate_result;
mod handover;
mod heads;
mod history;
mod holds;
mod home;
mod keeper;
mod new_visit;
mod open_visit;
mod oral;
mod oral_item;
mod oral_picture;
mod oral_points;
mod oral_rows;
mod order;
mod pad;
mod pad_face;
mod pads;
mod parts;
mod policy;
mod questions;
mod result;
mod route;
mod running;
mod settings;
mod show;
mod sign_said;
mod signs;
mod silence;
mod single;
mod six_signs;
mod sources;
mod state;
mod tally;
mod task;
mod task_after;
mod task_before;
mod the_pad;
mod told;
mod visit;
mod visit_steps;
mod who;
mod why;
