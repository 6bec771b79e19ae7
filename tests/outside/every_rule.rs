//! No rule is left without an example that raises it.

use crate::outside::groups;

use groups::{FILES, stands_for, takes};
use penlight::clinical::knowledge::rules;

#[test]
fn every_rule_has_its_file_of_examples() {
    for rule in rules::ALL {
        let files = FILES.iter().filter(|f| stands_for(f, rule.id)).count();
        assert_eq!(files, 1, "{} is exemplified in {files} files", rule.id);
    }
}

#[test]
fn every_group_has_a_rule() {
    for entry in FILES.into_iter().flatten() {
        let rules = rules::ALL.iter().filter(|rule| takes(entry, rule.id));
        assert_ne!(rules.count(), 0, "{entry}");
    }
}
