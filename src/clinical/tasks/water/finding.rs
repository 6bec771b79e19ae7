//! What a trial of the 90 mL yields.

use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::tasks::by_mouth::lag::since_end;
use crate::clinical::tasks::spec::{NOT_VALID, WATCH_CUT, watch_cut};
use crate::clinical::tasks::water::{
    CUP, IN_ONE_GO, NOT_GIVEN_REASONS, PAUSED, REMAINING, VOICE_AFTER, VOICE_BEFORE, WATCH,
    WATCH_CUT_REASONS,
};
use crate::measure::time::{Doubt, Elapsed, Millis};
use crate::wording::words::{small, whole_seconds};

/// What was heard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Voice {
    /// Clear.
    Clear,
    /// Wet.
    Wet,
    /// Hoarse.
    Hoarse,
    /// Something else, or none.
    Other,
}

impl Voice {
    fn of(id: &str) -> Voice {
        match id {
            "clear" => Voice::Clear,
            "wet" => Voice::Wet,
            "hoarse" => Voice::Hoarse,
            _ => Voice::Other,
        }
    }

    /// Wet or hoarse: the two the rule names.
    pub fn is_sign(self) -> bool {
        matches!(self, Voice::Wet | Voice::Hoarse)
    }

    /// The word for it.
    pub fn words(self) -> &'static str {
        match self {
            Voice::Clear => "clear",
            Voice::Wet => "wet",
            Voice::Hoarse => "hoarse",
            Voice::Other => "changed or absent",
        }
    }
}

/// How the cup ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cup {
    /// Empty, without a pause.
    InOneGo,
    /// Empty, with a pause.
    Paused,
    /// Some left; mL, if measured.
    Left(Option<f64>),
}

/// How the watch went.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Watch {
    /// Not begun: the last swallow was not pressed.
    NotBegun,
    /// Still running, or the page never saw its end.
    Running,
    /// The whole 60 seconds.
    Whole,
    /// Ended early, for this reason.
    Cut(String),
}

/// When a sign was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seen {
    /// While drinking, or before it.
    Drinking,
    /// So long after the last swallow, within the watch.
    After(Millis),
    /// So long after the last swallow, later than the watch.
    Later(Millis),
    /// After the last swallow, but the clocks can't say when.
    Sometime,
}

/// What the trial yields.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Whether anything was given.
    pub given: bool,
    /// Ended with the screen: the last swallow was not marked, the watch runs from the stop.
    pub stopped: bool,
    /// From lip contact to last swallow.
    pub drinking: Option<Elapsed>,
    /// Swallows tapped.
    pub swallows: usize,
    /// The cup.
    pub cup: Option<Cup>,
    /// Signs, in order.
    pub signs: Vec<(Sign, Seen)>,
    /// Voice before.
    pub before: Option<Voice>,
    /// Voice after.
    pub after: Option<Voice>,
    /// The watch.
    pub watch: Watch,
    /// What speaks against the watch's time.
    pub watch_doubt: Option<Doubt>,
    /// What is missing where the app was off when it ran out.
    pub unwatched: Option<&'static str>,
    /// Choking was noted in it on its own page.
    pub choked: bool,
    /// A sign was pressed and taken back long after.
    pub taken_back: bool,
    /// Why it was not given: the words.
    pub not_given: Option<&'static str>,
}

/// Reads a trial.
pub fn read(trial: &Trial) -> Finding {
    let start = trial.start();
    let end = trial.end();
    let watched = trial.first(MarkKind::WatchOver);
    let signs = trial
        .signs()
        .map(|(sign, at)| {
            let seen = match end.map(|end| since_end(trial, end, at)) {
                None => Seen::Drinking,
                Some(Elapsed { length: None, .. }) => Seen::Sometime,
                Some(Elapsed {
                    length: Some(after),
                    ..
                }) if after < Millis::ZERO => Seen::Drinking,
                Some(Elapsed {
                    length: Some(after),
                    ..
                }) if after <= WATCH => Seen::After(after),
                Some(Elapsed {
                    length: Some(after),
                    doubt,
                }) => match doubt {
                    // By a clock that may have been set meanwhile: it can't be put off as late.
                    Some(Doubt::Restarted | Doubt::Slept(_) | Doubt::Unknown) => Seen::Sometime,
                    _ => Seen::Later(after),
                },
            };
            (sign, seen)
        })
        .collect();
    Finding {
        given: start.is_some(),
        drinking: start
            .zip(trial.end_pressed())
            .map(|(start, end)| trial.between(start, end)),
        stopped: trial.is_stopped(),
        swallows: trial.taps(),
        cup: trial.choice(CUP).map(|id| match id {
            IN_ONE_GO => Cup::InOneGo,
            PAUSED => Cup::Paused,
            _ => Cup::Left(trial.number(REMAINING)),
        }),
        signs,
        before: trial.choice(VOICE_BEFORE).map(Voice::of),
        after: trial.choice(VOICE_AFTER).map(Voice::of),
        watch: match (end, watched) {
            (None, _) => Watch::NotBegun,
            (Some(end), Some(over)) => match trial.between(end, over).length {
                Some(watched) if watched >= WATCH => Watch::Whole,
                Some(_) => Watch::Running,
                None => Watch::Cut("how long it was is not known".to_owned()),
            },
            (Some(_), None) if watch_cut(trial) => Watch::Cut(
                trial
                    .choice(WATCH_CUT)
                    .and_then(|id| WATCH_CUT_REASONS.iter().find(|c| c.id == id))
                    .map_or_else(|| "no reason known".to_owned(), |c| small(c.words)),
            ),
            (Some(_), None) => Watch::Running,
        },
        watch_doubt: end
            .zip(watched)
            .and_then(|(end, over)| trial.doubt_over(end, WATCH, over)),
        unwatched: None,
        choked: false,
        taken_back: !trial.taken_back.is_empty(),
        not_given: trial.choice(NOT_VALID).map(|id| {
            NOT_GIVEN_REASONS
                .iter()
                .find(|c| c.id == id)
                .map_or("reason not known to this version", |c| c.words)
        }),
    }
}

impl Finding {
    /// When a sign was seen, in words for a sentence.
    pub fn seen_words(&self, seen: Seen) -> String {
        // Nobody marked the last swallow of what was stopped.
        let from = if self.stopped {
            "the 90 mL were stopped"
        } else {
            "the last swallow of the 90 mL"
        };
        match seen {
            Seen::Drinking => "while drinking the 90 mL".to_owned(),
            Seen::After(after) => format!("{} after {from}", whole_seconds(after)),
            Seen::Later(after) => format!("{} seconds after {from}", (after.0 + 999) / 1000),
            Seen::Sometime => format!("after {from}"),
        }
    }
}
