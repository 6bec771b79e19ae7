//! Parts of a reading, for tasks that take no other.

use crate::clinical::findings::fact::SeenSign;
use crate::clinical::findings::trial::Trial;
use crate::clinical::tasks::by_mouth::reading::Reading;

/// The signs of a trial that were pressed, each with its time after the end press.
pub fn signs(trial: &Trial) -> Vec<SeenSign> {
    Reading::of(trial).pressed
}

/// Whether the watch after the end was kept to its end.
pub fn watched(trial: &Trial) -> bool {
    Reading::of(trial).was_watched()
}
