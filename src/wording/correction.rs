//! That a text replaces an earlier one.

use crate::record::event::Correction;

/// The line that a text begins with which replaces another; nothing where it replaces none.
pub fn line(corrects: Option<&Correction>) -> String {
    corrects.map_or_else(String::new, |Correction { at, replaces }| {
        format!("CORRECTED {at}, replaces {replaces}.\n")
    })
}
