//! How grave a conclusion is, and what it is about.

/// How grave a flag is. Ordered: a later one outranks an earlier one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Worth saying, decides nothing.
    Note,
    /// No sign seen.
    Pass,
    /// Something needed is missing or not valid.
    Incomplete,
    /// A sign was seen: somebody must look further.
    Refer,
    /// No further oral trial.
    Stop,
}

/// What a flag is about. Only [`Domain::Urgent`] and [`Domain::EatingDrinking`] decide a visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Domain {
    /// Needs somebody now.
    Urgent,
    /// Eating and drinking.
    EatingDrinking,
    /// Breathing.
    Breathing,
    /// Speech and voice.
    SpeechVoice,
    /// Mouth and throat.
    Mouth,
}

impl Domain {
    /// Whether a flag of this domain can stand in the headline.
    ///
    /// A narrow mouth opening must not read as "refer: swallow".
    pub const fn decides(self) -> bool {
        matches!(self, Domain::Urgent | Domain::EatingDrinking)
    }
}
