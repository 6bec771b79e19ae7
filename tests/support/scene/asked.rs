//! What is asked of a scene: its decision, and its texts.

use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::handover::full_note;
use penlight::handover::nursing::{Clock, write};
use penlight::record::event::{Event, Route};
use penlight::record::id::VisitId;
use penlight::record::visit::Visit;
use penlight::wording;

use super::Scene;
use crate::support::moments::{MINUTE, at, clock, clock_after};

impl Scene {
    pub(crate) fn verdict(&self) -> Verdict {
        self.visit.decision().unwrap().verdict
    }

    /// The headline of the decision page.
    pub(crate) fn headline(&self) -> &'static str {
        wording::verdict::decided(&self.visit.decision().unwrap(), self.visit.role)
    }

    /// The text for the ward, at 14:31.
    pub(crate) fn text(&self) -> String {
        self.text_at(&clock("14:31"))
    }

    pub(crate) fn text_at(&self, now: &Clock) -> String {
        write(&self.visit, now).unwrap().text
    }

    pub(crate) fn first_line(&self) -> String {
        self.text().lines().next().unwrap().to_owned()
    }

    /// Everything that is told before the advice: that has the words "wet voice" and "coughing"
    /// itself.
    pub(crate) fn found(&self) -> String {
        let text = self.text();
        text.split("Recommendation:").next().unwrap().to_owned()
    }

    /// The full note, at 14:31.
    pub(crate) fn note(&self) -> String {
        full_note::write(&self.visit, &clock("14:31")).unwrap().text
    }

    /// The nursing text leaves so many minutes after the visit began.
    pub(crate) fn leaves(&mut self, minutes: i64) -> String {
        let now = clock_after(minutes);
        let written = write(&self.visit, &now).unwrap();
        let text = written.text.clone();
        let issued = written.issued(Route::Copied, &now.time);
        self.say_at(at(minutes * MINUTE), issued);
        text
    }

    /// The nurse in charge is told, and reads it back.
    pub(crate) fn told(&mut self, minutes: i64) -> &mut Scene {
        let told = Event::Told {
            whom: "the nurse in charge".to_owned(),
            read_back: true,
        };
        self.say_at(at(minutes * MINUTE), told)
    }
}

/// The text for the ward of an examination that was made as a value.
pub(crate) fn text_of(screen: ScreenId, exam: Exam) -> String {
    let mut visit = Visit::new(VisitId::new("0123456789abcdef").unwrap());
    visit.screen = Some(screen);
    visit.exam = Exam {
        screen: Some(screen),
        ..exam
    };
    write(&visit, &clock("14:31")).unwrap().text
}
