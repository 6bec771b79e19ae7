//! Readings that hold up a water trial, and who may go on past each.

use crate::clinical::findings::breathing::{Method, Reading};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::BreathingFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::in_the_way::breathing_key;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::breath_taps;
use crate::clinical::tasks::breathing::adult_bands::Band;
use crate::clinical::tasks::breathing::bands::{rate_band, reading_band};
use crate::clinical::tasks::breathing::reading::{Finding, counts, read, reading};

/// A reading that holds up a water trial.
#[derive(Clone, Debug)]
pub struct Block {
    /// The reading, or that there is none.
    pub reading: Reading,
    /// The rule that going on past it is kept under.
    pub under: &'static Rule,
    /// Who may go on.
    pub go_on: GoOn,
    /// What is said.
    pub flag: Flag,
}

impl Block {
    fn new(rule: &'static Rule, reading: Reading, go_on: GoOn) -> Block {
        Block {
            reading,
            under: rule,
            go_on,
            flag: rule.flag(
                Level::Incomplete,
                Domain::EatingDrinking,
                BreathingFact::InTheWay {
                    reading,
                    chart: rule.id == rules::BREATHING_CHILD.id,
                    gone_past: None,
                },
            ),
        }
    }

    /// Kept under the id of another rule, as records have it.
    fn kept_under(self, under: &'static Rule) -> Block {
        Block { under, ..self }
    }

    /// The flag, told with who went on past it where somebody did.
    pub fn told(self, exam: &Exam) -> Flag {
        let Some(on) = exam.went_on(&breathing_key(self.under, self.reading), self.go_on) else {
            return self.flag;
        };
        self.flag.rule().flag(
            Level::Note,
            Domain::EatingDrinking,
            BreathingFact::InTheWay {
                reading: self.reading,
                chart: self.asks_chart(),
                gone_past: Some(on.gone_past()),
            },
        )
    }

    /// Whether it is asked to be held against the local chart of the age.
    fn asks_chart(&self) -> bool {
        self.flag.rule().id == rules::BREATHING_CHILD.id
    }
}

/// Whether a reading closes the gate, rather than asking for a count or a look at the chart.
pub fn closes(flag: &Flag) -> bool {
    [
        rules::BREATHING_RATE.id,
        rules::BREATHING_SPO2.id,
        rules::BREATHING_SECOND_SCALE.id,
    ]
    .contains(&flag.rule().id)
}

/// Readings that hold up a water trial, what was gone past included.
pub fn blocks(exam: &Exam) -> Vec<Block> {
    let finding = reading(exam);
    let mut blocks = of_rates(exam, finding.as_ref());
    blocks.extend(finding.and_then(|finding| of_saturation(exam, &finding)));
    blocks
}

fn is_adult(exam: &Exam) -> bool {
    exam.age.is_none_or(|age| age.is_adult())
}

/// What holds up the water by the breaths: none counted, too many, too few, or a child's.
fn of_rates(exam: &Exam, finding: Option<&Finding>) -> Vec<Block> {
    let adult = is_adult(exam);
    let counted = finding.map_or(Vec::new(), |f| f.rates.clone());
    let rates = if counted.is_empty() {
        uncounted(exam, adult)
    } else {
        counted.clone()
    };
    let mut blocks = Vec::new();
    if counted.is_empty() && (adult || rates.is_empty()) {
        let reading = Reading::NoCount(finding.and_then(|f| f.doubt));
        let rule = &rules::BREATHING_NOT_COUNTED;
        blocks.push(Block::new(rule, reading, GoOn::SlpWithReason));
    }
    for (rate, method) in rates {
        let reading = Reading::Rate(rate, method);
        if !adult {
            let rule = &rules::BREATHING_CHILD;
            blocks.push(Block::new(rule, reading, GoOn::WithReason));
        } else if rate_band(rate, &exam.policy) == Band::Block {
            let rule = &rules::BREATHING_RATE;
            blocks.push(Block::new(rule, reading, GoOn::SlpWithReason));
        }
    }
    blocks
}

/// The rates that count where none was counted for 60 seconds.
fn uncounted(exam: &Exam, adult: bool) -> Vec<(u16, Method)> {
    let shorter = breath_taps::rate(exam).map(|(rate, _)| (rate, Method::Shorter));
    if !adult {
        // A child's rate is read with the local chart, however it was counted.
        return shorter.into_iter().collect();
    }
    // Neither taps nor a count before one that was not finished clears an adult. What is too
    // fast or too slow by them is so all the same.
    let before = counts(exam).map(|t| read(t).rates).find(|r| !r.is_empty());
    let seen = before.unwrap_or_default().into_iter().chain(shorter);
    seen.filter(|(rate, _)| rate_band(*rate, &exam.policy) == Band::Block)
        .collect()
}

/// What holds up the water by the oxygen saturation.
fn of_saturation(exam: &Exam, finding: &Finding) -> Option<Block> {
    let spo2 = finding.saturation()?;
    let reading = Reading::Spo2(spo2);
    let adult = is_adult(exam);
    let below_target = spo2.target.is_some_and(|lowest| spo2.percent < lowest);
    // A chart says what is usual, not that a reading which holds an adult is safe.
    if below_target || reading_band(finding, spo2.percent, &exam.policy) == Band::Block {
        // Above the target it is the second scale that blocks; the id of the hold is stored and
        // stays.
        let rule = match finding.confirmed {
            Some(_) if !below_target => &rules::BREATHING_SECOND_SCALE,
            _ => &rules::BREATHING_SPO2,
        };
        let stored = if adult || below_target {
            &rules::BREATHING_SPO2
        } else {
            &rules::BREATHING_CHILD
        };
        let block = Block::new(rule, reading, GoOn::SlpWithReason);
        return Some(block.kept_under(stored));
    }
    (!adult).then(|| Block::new(&rules::BREATHING_CHILD, reading, GoOn::WithReason))
}
