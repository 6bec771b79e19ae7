//! What is asked of trials by mouth, and the answers, by their ids.

/// Question: voice before.
pub const VOICE_BEFORE: &str = "voice-before";
/// Question: voice after.
pub const VOICE_AFTER: &str = "voice-after";
/// Question: how the cup of 90 mL was drunk.
pub const CUP: &str = "cup";
/// Question: what was left of it, in mL.
pub const REMAINING: &str = "left";
/// Answer to [`CUP`]: all of it, without a pause.
pub const IN_ONE_GO: &str = "one-go";
/// Answer to [`CUP`]: all of it, with a pause.
pub const PAUSED: &str = "paused";
/// Answer to [`CUP`] and to [`TIMED_CUP`]: some left.
pub const SOME_LEFT: &str = "some-left";
/// Question: whether the timed cup was emptied.
pub const TIMED_CUP: &str = "cup-left";
/// Answer to [`TIMED_CUP`]: nothing left.
pub const EMPTY: &str = "empty";
/// Question: what was left of the timed cup, in mL.
pub const TIMED_LEFT: &str = "cup-left-ml";
/// Question: whether the whole watch was watched.
pub const WATCHED: &str = "watched-through";
/// Answer to [`WATCHED`].
pub const WATCHED_ALL: &str = "yes";

/// What a voice may sound like.
pub static VOICES: &[&str] = &["clear", "wet", "hoarse", "breathy", "weak", "none"];

/// The reasons for which something was not given.
pub static NOT_GIVEN_REASONS: &[&str] = &["refused", "not-now"];

/// Answer: whoever watched was called away.
pub const CALLED_AWAY: &str = "called-away";

/// The reasons for ending the watch early.
pub static WATCH_CUT_REASONS: &[&str] = &["sign", CALLED_AWAY, "wish"];
