//! What scenes begin with.

use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::record::event::Event;

use super::Scene;
use crate::support::moments::at;

/// Three dry swallows, as many as are wanted.
pub(crate) const THREE: &[i64] = &[2_000, 9_000, 17_000];

pub(crate) fn adult(role: Role) -> Scene {
    Scene::new(Age::Years(72), role)
}

/// Everything before the water, as it should be.
pub(crate) fn ready(role: Role) -> Scene {
    let mut s = adult(role);
    s.gate(&[]).breaths(16).dry(THREE);
    s
}

/// Own trials, nothing given yet.
pub(crate) fn own_trials(role: Role) -> Scene {
    let mut s = adult(role);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s
}

/// The stepped screen up to its first sip, with this saturation.
pub(crate) fn stepped(role: Role, spo2: i32) -> Scene {
    let mut s = adult(role);
    s.on(ScreenId::Stepped).gate(&[]).spo2(spo2);
    s.dry(THREE);
    s
}

/// Much that the gate has to tell, and that closes nothing.
pub(crate) const MUCH_AT_THE_GATE: &[(&str, &str)] = &[
    ("fluids", "restricted"),
    ("allergy", "allergy"),
    ("chest", "chest"),
    ("spine", "limit"),
    ("suction", "none"),
    ("requests", "no"),
    ("language", "no"),
    ("high-flow", "high-flow"),
    ("risk-plan", "plan"),
    ("new-weakness", "known"),
];

/// Much that the examination has to tell, and that holds nothing.
pub(crate) const MUCH_IN_THE_MOUTH: &[(&str, &str)] = &[
    ("mouth.clean", "coated"),
    ("speech", "slurred"),
    ("voice.pitch", "narrow"),
    ("throat.clear", "weak"),
    ("nose", "blocked"),
    ("mouth.moist", "dry"),
];

/// A full visit with much to tell before anything is counted: texts are cut from here on.
pub(crate) fn much_to_tell(role: Role) -> Scene {
    let mut s = adult(role);
    s.on(ScreenId::FullVisit).gate(MUCH_AT_THE_GATE);
    s.examined(MUCH_IN_THE_MOUTH);
    s
}

/// ... and after it was counted, up to the water.
pub(crate) fn long(role: Role) -> Scene {
    let mut s = much_to_tell(role);
    s.breaths(22).dry(THREE);
    s
}

/// Choked in the water, and all of it recorded since: this is how the voice is.
pub(crate) fn recovered(role: Role, voice: &str) -> Scene {
    let mut s = ready(role);
    s.water(&[(Sign::Choke, -2_000)]).chokes(106_400, voice);
    s
}

impl Scene {
    /// A choking by its page, with what must be recorded after it before anybody goes on.
    pub(crate) fn chokes(&mut self, ms: i64, voice: &str) -> &mut Scene {
        self.say(Event::Choking(at(ms)))
            .say(Event::BackToBaseline(at(ms + 50_000)))
            .breaths(18)
            .say(Event::VoiceAfterChoking(voice.to_owned()))
    }
}
