//! What can happen in a visit: one event per press or answer.
//!
//! **Invariant:** a variant or a field that was released keeps its name and meaning; new things
//! get new variants or optional fields, and [`super::envelope::SCHEMA`] goes up.

use serde::{Deserialize, Serialize};

use crate::clinical::findings::exam::EndedEarly;
use crate::clinical::findings::go_on::Ground;
use crate::clinical::findings::oral::{Cue, Seen};
use crate::clinical::findings::trial::{Answer, MarkKind};
use crate::clinical::knowledge::oral::Region;
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::person::{Age, Initials, Label, Language, Role, Setting, Sex};
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::screen::ScreenId;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::measure::time::{Millis, Stamp};

use super::id::VisitId;

/// The versions a visit was begun under.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Versions {
    /// Of the app.
    pub app: String,
    /// Of the rules and norms.
    pub rules: String,
}

/// Who is examined and where, as a whole.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Details {
    /// What the visit is called.
    pub label: Label,
    /// Age, if given.
    pub age: Option<Age>,
    /// Sex, if given.
    pub sex: Option<Sex>,
    /// Setting, if given.
    pub setting: Option<Setting>,
    /// Language spoken in speech tasks, if given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub language: Option<Language>,
}

/// What is to be done until somebody reviews.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Action {
    /// Nothing by mouth, tablets included, until assessed.
    NothingByMouth,
    /// The current plan goes on, for a stated reason.
    KeepPlan,
    /// The plan to eat and drink with acknowledged risks goes on.
    AcknowledgedRisk,
}

/// To whom the handover goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Whom {
    /// Speech-language pathology.
    Slp,
    /// The doctor on duty.
    Doctor,
    /// The nurse in charge.
    Nurse,
}

/// By when.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum ByWhen {
    /// Now.
    Now,
    /// Today.
    Today,
    /// Within 24 hours.
    Within24Hours,
}

/// What the clinician settled for the handover, as a whole.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Plan {
    /// What it was made for, see [`crate::clinical::decision::basis`]: it does not outlive a change
    /// of it.
    #[serde(default)]
    pub verdict: String,
    /// What to do until review.
    pub action: Option<Action>,
    /// Why the current plan goes on.
    #[serde(default)]
    pub because: String,
    /// To whom.
    pub whom: Option<Whom>,
    /// By when.
    pub by_when: Option<ByWhen>,
    /// Drink level of the framework, 0 to 4, picked by the clinician.
    pub drink: Option<u8>,
    /// Food level of the framework, 3 to 7, picked by the clinician.
    pub food: Option<u8>,
    /// A remark in free words.
    #[serde(default)]
    pub remark: String,
}

/// How the text left.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Route {
    /// Copied.
    Copied,
    /// Shared.
    Shared,
    /// Saved as a file.
    Saved,
}

/// Which text left. A record that does not say means the nursing text.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Text {
    /// For the nurse.
    #[default]
    Nursing,
    /// The full note, for the record of speech-language pathology.
    FullNote,
}

impl Text {
    // By reference: serde asks so.
    #[allow(clippy::trivially_copy_pass_by_ref)]
    fn is_nursing(&self) -> bool {
        *self == Text::Nursing
    }
}

/// That a text replaces an earlier one of its kind: the times that both carry, in the words of the
/// text ("14:30", or "14:30 on 25 Nov 2026" where their days differ).
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Correction {
    /// When this one was written.
    pub at: String,
    /// When the one that it replaces was.
    pub replaces: String,
}

/// What happened. See the module's invariant.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Event {
    /// The visit was begun.
    Opened {
        /// Person and place.
        details: Details,
        /// The screen chosen, if one was.
        screen: Option<ScreenId>,
        /// Versions in force.
        versions: Versions,
        /// Policy in force.
        policy: Policy,
        /// Who holds the phone.
        role: Role,
        /// By these initials. Earlier versions asked for none.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        initials: Option<Initials>,
    },
    /// Person and place, filled in or corrected.
    Details(Details),
    /// A screen was chosen.
    ScreenChosen(ScreenId),
    /// Who holds the phone.
    Role(Role),
    /// Gate items answered with one press: item ids with an exception's id or "holds".
    Gate(Vec<(String, String)>),
    /// A gate item was taken back: it counts as not asked.
    GateCleared(String),
    /// A trial was opened.
    TrialOpened {
        /// Its number.
        trial: u32,
        /// Its task.
        task: TaskId,
        /// The chosen window.
        length: Option<Millis>,
    },
    /// A press on the pad, or a time that ran out.
    Mark {
        /// Its trial.
        trial: u32,
        /// When.
        at: Stamp,
        /// What.
        kind: MarkKind,
    },
    /// The newest pressed mark of a trial was taken back.
    Undo {
        /// Its trial.
        trial: u32,
    },
    /// The page was out of sight while a trial was open.
    Hidden {
        /// Since when.
        from: Stamp,
        /// Until when.
        to: Stamp,
    },
    /// A question was answered.
    Answer {
        /// Its trial.
        trial: u32,
        /// The question.
        question: String,
        /// The answer; none takes it back.
        answer: Option<Answer>,
    },
    /// Somebody went on past a hold.
    WentOn {
        /// Which: its key, see [`crate::clinical::findings::in_the_way`].
        hold: String,
        /// Why.
        because: String,
        /// Who.
        by: Role,
        /// By these initials. Earlier versions asked for none.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        initials: Option<Initials>,
        /// What stood there, in words: kept by earlier versions only.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        says: String,
        /// Why, as it was picked; earlier versions kept its words alone.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        ground: Option<Ground>,
    },
    /// The visit ended before its screen was through.
    EndedEarly(EndedEarly),
    /// ... and was taken up again.
    TakenUpAgain,
    /// Choking: since when.
    Choking(Stamp),
    /// Choking was pressed by mistake.
    NotChoking,
    /// Choking: help was called.
    HelpCalled(Stamp),
    /// Choking: back to baseline.
    BackToBaseline(Stamp),
    /// Choking: the voice as it was heard after it, by its id.
    VoiceAfterChoking(String),
    /// Emergency: when the person was last well, in free words.
    LastWell(String),
    /// The plan for the handover.
    Plan(Plan),
    /// The decision as it stood when the handover was opened.
    Decided {
        /// The verdict's id.
        verdict: String,
        /// The reasons as shown, each with its rule's id.
        reasons: Vec<(String, String)>,
        /// Versions in force.
        versions: Versions,
        /// The policy's name.
        policy: String,
    },
    /// The text left the app.
    Issued {
        /// How.
        route: Route,
        /// The exact text.
        text: String,
        /// When, by the wall clock, in the words of the text ("14:30").
        clock: String,
        /// Which.
        #[serde(default, skip_serializing_if = "Text::is_nursing")]
        which: Text,
        /// What it replaces. Earlier versions kept it in the text alone.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        corrects: Option<Correction>,
    },
    /// Somebody was told.
    Told {
        /// Whom, in free words or as chosen.
        whom: String,
        /// Whether it was read back.
        read_back: bool,
    },
    /// A trial counted outside a visit was attached: a copy, with where it came from.
    Attached {
        /// The loose count it came from.
        from: VisitId,
        /// Its number in this visit.
        trial: u32,
        /// Its task.
        task: TaskId,
        /// The chosen window.
        length: Option<Millis>,
        /// Its marks.
        marks: Vec<(Stamp, MarkKind)>,
        /// Times the page was out of sight.
        hidden: Vec<(Stamp, Stamp)>,
        /// Its answers.
        #[serde(default)]
        answers: Vec<(String, Answer)>,
        /// Chokings noted with it: since when, when help was called, when it was over.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        chokings: Vec<(Stamp, Option<Stamp>, Option<Stamp>)>,
    },
    /// This loose count was attached to a visit.
    AttachedTo(VisitId),
    /// What was attached by mistake is detached: this trial counts no longer, nor what choked in it.
    Detached {
        /// Its number in this visit.
        trial: u32,
    },
    /// This loose count was detached from a visit.
    DetachedFrom(VisitId),
    /// An earlier refer or stop was closed: by whom or how, in free words.
    Closed(String),
    /// Everything else of this visit was deleted.
    Deleted,
    /// Items of the examination of face, mouth and throat, answered with one press: item ids with
    /// what was seen. An earlier answer stays in the journal.
    Oral(Vec<(String, Seen)>),
    /// Answers of that examination taken back: these items count as not tested.
    OralTakenBack(Vec<String>),
    /// How a region of that examination was asked for.
    OralCue {
        /// Which.
        region: Region,
        /// How; none takes it back.
        cue: Option<Cue>,
    },
    /// A sign that was pressed while the minutes of two trials ran belongs to the other one.
    SignMoved {
        /// The trial it was recorded with.
        from: u32,
        /// The trial it belongs to.
        to: u32,
        /// Which sign.
        sign: Sign,
        /// When it was pressed.
        at: Stamp,
    },
    /// Which of the repeated syllables are asked for, in which order.
    Order(Order),
}

impl Event {
    /// Whether it can change what was decided, or the words of it.
    pub(super) fn may_change_the_decision(&self) -> bool {
        matches!(
            self,
            Event::Mark { .. }
                | Event::Undo { .. }
                | Event::Answer { .. }
                | Event::Attached { .. }
                | Event::Detached { .. }
                | Event::Choking(_)
                | Event::NotChoking
                | Event::Gate(_)
                | Event::GateCleared(_)
                | Event::Oral(_)
                | Event::OralTakenBack(_)
                | Event::SignMoved { .. }
                | Event::EndedEarly(_)
                | Event::TakenUpAgain
                | Event::Details(_)
                | Event::ScreenChosen(_)
        )
    }

    /// Whether somebody looked at the person for it.
    pub(super) fn is_looked_at(&self) -> bool {
        matches!(
            self,
            Event::Mark { .. }
                | Event::Answer { .. }
                | Event::Choking(_)
                | Event::VoiceAfterChoking(_)
                | Event::Gate(_)
                | Event::Oral(_)
        )
    }
}
