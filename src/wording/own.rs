//! Words about the clinician's own trials outside the sentence of a flag.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{Amount, OwnGiven};
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::by_mouth::reading::Watch;
use crate::clinical::tasks::own::{
    AMOUNT, BY, Came, InTrial, LEVEL, Lately, POSTURE, Row, STRATEGY, is_unwatched, table,
};
use crate::clinical::tasks::spec::REMARK;
use crate::measure::decimals::short;
use crate::wording::sips::sign;
use crate::wording::tasks;
use crate::wording::words::{small, times};

/// Where nobody said what was given.
pub(super) const NOT_SAID_WHAT: &str = "not said what";

/// While the watch runs.
const SO_FAR: &str = "no sign so far";

/// Where nobody said when it was swallowed.
const NO_END: &str = "last swallow not marked";

/// Where the watch was cut.
const NOT_WATCHED: &str = "not watched for 60 seconds";

/// What was given and how: "0 Thin, 5 mL, spoon, upright".
pub fn given(given: &OwnGiven) -> String {
    let words = |question, id: &str| tasks::choice(TaskId::Own, question, id);
    let chosen = |id: &Option<String>, question| words(question, id.as_ref()?);
    let amount = given.amount.as_ref().and_then(|amount| match amount {
        Amount::Tenths(tenths) => Some(format!("{} mL", short(f64::from(*tenths) / 10.0))),
        Amount::Choice(id) => words(AMOUNT, id).map(small),
    });
    let unsaid = (!given.is_said()).then(|| NOT_SAID_WHAT.to_owned());
    [
        unsaid,
        chosen(&given.level, LEVEL).map(str::to_owned),
        given.what.clone(),
        amount,
        chosen(&given.by, BY).map(small),
        chosen(&given.posture, POSTURE).map(small),
        chosen(&given.strategy, STRATEGY).map(small),
        given.strategy_words.clone(),
    ]
    .into_iter()
    .flatten()
    .collect::<Vec<_>>()
    .join(", ")
}

/// The same for a sentence that must fit a line.
pub fn brief(what: &OwnGiven) -> String {
    given(&what.clone().brief())
}

/// A trial.
pub fn lines(trial: &Trial) -> Vec<String> {
    let mut words = vec![given(&crate::clinical::tasks::own::given(trial))];
    let reading = Reading::of(trial);
    let signs: Vec<String> = reading.signs().into_iter().map(sign).collect();
    words.push(match reading.watch {
        _ if !signs.is_empty() => signs.join(", "),
        Watch::NotBegun => NO_END.to_owned(),
        Watch::Running => SO_FAR.to_owned(),
        _ if is_unwatched(trial) => NOT_WATCHED.to_owned(),
        // What is seen without a press of a sign stands elsewhere.
        _ => "no sign pressed".to_owned(),
    });
    if let Some(Answer::Words(remark)) = trial.answers.get(REMARK) {
        words.push(remark.clone());
    }
    vec![words.join(": ")]
}

/// What came of trials given alike: "coughed in 1 of 3, cleared the throat in 2 of 3", or "no
/// sign".
pub fn came(row: &Row) -> String {
    let seen = match &row.came {
        Came::Seen(seen) => seen,
        Came::Choked => return "choking was noted in this visit".to_owned(),
        Came::NoEnd => return NO_END.to_owned(),
        Came::NoneSoFar => return SO_FAR.to_owned(),
        Came::NoSign => return "no sign".to_owned(),
    };
    let each = seen.iter().map(|(what, n)| {
        let words = match what {
            InTrial::Sign(sign) => sign.past(),
            InTrial::SaturationFell => "oxygen saturation low or fallen",
            InTrial::NotWatched => NOT_WATCHED,
            InTrial::TakenBack => "a sign pressed and taken back",
        };
        match row.times {
            1 => words.to_owned(),
            of => format!("{words} in {n} of {of}"),
        }
    });
    each.collect::<Vec<_>>().join(", ")
}

fn row(row: &Row) -> String {
    let what = given(&row.given);
    format!("{what}: given {}, {}", times(row.times), came(row))
}

/// What is given now, or what came of the newest, beside the pad.
pub fn lately(lately: &Lately) -> String {
    let before = if lately.next { "Before: " } else { "" };
    format!("{before}{}", row(&lately.row))
}

/// The rows of the table for the handover, those with a sign first.
pub fn told(exam: &Exam) -> Vec<String> {
    let (signs, clear): (Vec<Row>, Vec<Row>) = table(exam)
        .into_iter()
        .partition(|row| row.came != Came::NoSign);
    signs.iter().chain(&clear).map(row).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn id(id: &str) -> Option<String> {
        Some(id.to_owned())
    }

    #[test]
    fn what_was_given() {
        let whole = OwnGiven {
            level: id("f5"),
            what: id("Cottage pie"),
            amount: Some(Amount::Choice("teaspoon".to_owned())),
            by: id("self"),
            posture: id("chin-down"),
            strategy: id("twice"),
            strategy_words: id("Pause between"),
        };
        assert_eq!(
            given(&whole),
            "5 Minced & moist, Cottage pie, teaspoon, self-fed, chin down, two swallows each, \
             Pause between"
        );
        // Typed words stand only where no choice stands for them.
        assert_eq!(
            brief(&whole),
            "5 Minced & moist, teaspoon, self-fed, chin down, two swallows each"
        );
        let typed = OwnGiven {
            what: id("Cottage pie"),
            amount: Some(Amount::Tenths(125)),
            strategy_words: id("Pause between"),
            ..OwnGiven::default()
        };
        assert_eq!(brief(&typed), "Cottage pie, 12.5 mL, Pause between");
        let unsaid = OwnGiven {
            by: id("straw"),
            ..OwnGiven::default()
        };
        assert_eq!(given(&unsaid), "not said what, straw");
    }

    #[test]
    fn what_came_of_them() {
        let words = |times, came| {
            let given = OwnGiven {
                level: id("d0"),
                ..OwnGiven::default()
            };
            row(&Row { given, times, came })
        };
        let seen = |n| {
            Came::Seen(vec![
                (
                    InTrial::Sign(crate::clinical::knowledge::sign::Sign::Cough),
                    n,
                ),
                (InTrial::TakenBack, n),
            ])
        };
        assert_eq!(
            words(3, seen(2)),
            "0 Thin: given 3 times, coughed in 2 of 3, a sign pressed and taken back in 2 of 3"
        );
        assert_eq!(
            words(1, seen(1)),
            "0 Thin: given once, coughed, a sign pressed and taken back"
        );
        assert_eq!(words(2, Came::NoSign), "0 Thin: given twice, no sign");
    }
}
