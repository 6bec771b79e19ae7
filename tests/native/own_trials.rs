//! Own trials: what was given, in the text for the ward.

#![allow(clippy::unwrap_used)]

use crate::support::bedside;
use crate::support::script;

use bedside::*;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use script::Script;

fn spoon(s: &mut Script, n: i64, level: &str, signs: &[(Sign, i64)]) {
    s.given(TaskId::Own, n * 100_000, signs)
        .choose("own-level", level)
        .choose("own-amount", "5")
        .choose("own-by", "spoon");
}

/// A nurse reads how often the same was given, not a list of each spoon.
#[test]
fn tries_of_the_same_add_up_in_the_text() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    for n in 1..=5 {
        spoon(&mut s, n, "d2", &[]);
    }
    spoon(&mut s, 6, "f4", &[(Sign::Cough, 4_000)]);
    let text = s.text();
    let told = "2 Mildly thick, 5 mL, spoon: given 5 times, no sign";
    assert!(text.contains(told), "{text}");
    assert_eq!(text.matches("Mildly thick").count(), 1, "{text}");
    assert!(text.contains("4 Pureed, 5 mL, spoon"), "{text}");
}
