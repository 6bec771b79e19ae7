//! What is asked before anything is given, in words.

use crate::clinical::knowledge::gate_items::Group;

/// A group's heading.
pub const fn group_title(group: Group) -> &'static str {
    match group {
        Group::Person => "The person",
        Group::Orders => "Orders and limits",
        Group::Airway => "Airway and chest",
        Group::Ready => "Ready now",
    }
}
