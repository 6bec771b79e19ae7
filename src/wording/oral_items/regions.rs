//! Regions in words.

use crate::clinical::knowledge::oral::Region;
use crate::wording::words::small;

/// A region's heading.
pub const fn region_title(region: Region) -> &'static str {
    match region {
        Region::Face => "Face and neck",
        Region::Lips => "Lips and cheeks",
        Region::Jaw => "Jaw",
        Region::Mouth => "Teeth and mouth",
        Region::Tongue => "Tongue",
        Region::Palate => "Soft palate",
        Region::Feeling => "Feeling",
        Region::Voice => "Voice and throat",
        Region::Gag => "Gag (optional)",
    }
}

/// A region's name within a sentence that says what was not done: there nobody needs to know that it is
/// optional.
pub fn region_within(region: Region) -> String {
    small(match region {
        Region::Gag => "Gag",
        region => region_title(region),
    })
}

/// What to mind before a region's first item.
pub const fn region_care(region: Region) -> &'static str {
    match region {
        Region::Face => "Neck limit ordered? Then look only, do not move it.",
        Region::Palate => {
            "Fresh single-use depressor, no further back than the middle of the tongue: \
             further back it can bring on the gag."
        }
        Region::Lips => "Fresh single-use depressor. Loose teeth: do not pull between them.",
        Region::Jaw => "Firm and brief, never against pain. Loose teeth: no hard bite.",
        Region::Mouth => {
            "Fresh single-use depressor. Dentures in first, then out. Take out what is left of food."
        }
        Region::Tongue => "Finger outside on the cheek, never between the teeth.",
        Region::Feeling => "Soft cotton tip, one for each person, lightly. Eyes closed.",
        Region::Voice => "Stand aside for the cough; cover mouth and eyes where it may splash.",
        Region::Gag => {
            "Leave it out if the person refuses, ate a short while ago, feels sick, has a sore \
             mouth, loose teeth, a risk of bleeding, or if pressure in the head may be raised."
        }
    }
}
