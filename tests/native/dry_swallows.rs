//! Dry swallows: what is told of the count.

#![allow(clippy::unwrap_used)]

use crate::support::bedside;
use crate::support::script;

use bedside::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::knowledge::person::Role;
use penlight::handover::full_note;
use script::clock;

/// One that came after the 30 seconds is no third one, and is not lost either.
#[test]
fn a_late_one_is_told_beside_the_count() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[3_000, 15_000, 30_200]);
    assert_eq!(s.verdict(), Verdict::Refer);
    let note = full_note::write(&s.visit, &clock("14:31")).unwrap();
    for words in ["2 swallows in 30 seconds", "1 swallow later, kept apart"] {
        assert!(note.contains(words), "{note}");
    }
}
