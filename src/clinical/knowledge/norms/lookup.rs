//! From a person and a task to the published value that fits, or the reason why there is none.

use std::fmt;

use serde::Serialize;

use crate::clinical::knowledge::norms::row::{Method, ROWS, Row, Task, Unit, ends, starts};
use crate::clinical::knowledge::person::{Age, Sex};

/// What is asked for.
#[derive(Clone, Copy, Debug)]
pub struct Query<'a> {
    /// The task.
    pub task: Task,
    /// How it was measured here.
    pub method: Method,
    /// The unit of the measured value.
    pub unit: Unit,
    /// Age, if given.
    pub age: Option<Age>,
    /// Sex, if given.
    pub sex: Option<Sex>,
    /// The person's language as a BCP 47 tag; English is taken where it is not known.
    pub language: Option<&'a str>,
}

/// How near a published group is to the person.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fit {
    /// The person is outside the ages of the group: it is the nearest published one.
    pub nearest_group: bool,
    /// The group speaks another language than the person.
    pub other_language: bool,
    /// It was measured otherwise there.
    pub other_method: bool,
    /// The group speaks one language, and the person's was not given.
    pub language_not_given: bool,
    /// The ages of the group were not seen.
    pub ages_not_seen: bool,
}

impl Fit {
    /// Whether the group is the person's own. Where it is not, what follows is a note at most.
    pub fn is_own(self) -> bool {
        !self.nearest_group && !self.other_language && !self.ages_not_seen
    }
}

/// A published value for this person.
#[derive(Clone, Copy, Debug)]
pub struct Norm {
    /// The row.
    pub row: &'static Row,
    /// How near it is.
    pub fit: Fit,
}

impl Norm {
    /// Whose group it is: to stand before who was studied.
    pub fn which(&self) -> &'static str {
        if self.fit.nearest_group {
            "Nearest published group"
        } else {
            "Group"
        }
    }

    /// What to say beside it, a sentence each: in which way the group is not the person's own.
    pub fn remarks(&self) -> Vec<String> {
        let fit = self.fit;
        let mut remarks = Vec::new();
        let mut say = |when: bool, sentence: &str| {
            if when {
                remarks.push(sentence.to_owned());
            }
        };
        say(fit.ages_not_seen, "The ages of the group were not seen.");
        say(fit.other_language, "The group speaks another language.");
        say(
            fit.language_not_given,
            "The person's language was not given.",
        );
        match self.row.method {
            _ if !fit.other_method => {}
            Method::NotShown => say(true, "How it was measured there was not shown."),
            Method::Pooled => say(true, "Measured there in several ways."),
            method => say(
                true,
                &format!("Measured otherwise there: {}.", method.words()),
            ),
        }
        remarks
    }
}

/// Why there is no published value.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum NoNorm {
    /// None at all for this task, or none that is read for anybody of this language and sex.
    NoTable(Task),
    /// Only in another unit.
    OtherUnit(Task, Unit),
    /// Only by another method.
    OtherMethod(Task, Method),
    /// Tables go by age, and none in years or months was given.
    AgeNotGiven,
    /// Tables go by sex at this age, and none was given.
    SexNotGiven,
    /// Only for the other sex at this age.
    OtherSex(Sex),
    /// The person is younger than every table: its first month.
    TooYoung(Age, u32),
    /// The person is older than every table: its last month.
    TooOld(Age, u32),
    /// The age falls between two tables: the last month before and the first after.
    Between(Age, u32, u32),
}

impl fmt::Display for NoNorm {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            NoNorm::NoTable(task) => write!(f, "No published value for {}.", task.words()),
            NoNorm::OtherUnit(task, unit) => write!(
                f,
                "No published value for {} in this unit; published in {}.",
                task.words(),
                unit.words()
            ),
            NoNorm::OtherMethod(task, method) => write!(
                f,
                "No published value for {} measured this way; published: {}.",
                task.words(),
                method.words()
            ),
            NoNorm::AgeNotGiven => f.write_str("No comparison without the age in years."),
            NoNorm::SexNotGiven => f.write_str(
                "No comparison: at this age the published values go by sex, and none was given.",
            ),
            NoNorm::OtherSex(sex) => write!(
                f,
                "No published value: at this age it is published for the {} sex only.",
                sex.words()
            ),
            NoNorm::TooYoung(age, first) => write!(
                f,
                "No published value for age {}: the nearest table starts at {}.",
                age,
                starts(first)
            ),
            NoNorm::TooOld(age, last) => write!(
                f,
                "No published value for age {}: the nearest table ends at {}.",
                age,
                ends(last)
            ),
            NoNorm::Between(age, last, first) => write!(
                f,
                "No published value for age {}: one table ends at {}, the next starts at {}.",
                age,
                ends(last),
                starts(first)
            ),
        }
    }
}

/// The language taken for the person's where none was given: that of the words the app has them
/// say. A flag must not rest on a guess that happens to fit a group.
const ASSUMED: &str = "en";

fn within(ages: (u32, u32), months: u32) -> bool {
    (ages.0..=ages.1).contains(&months)
}

/// Finds the published value for a person, or says why there is none.
///
/// A table of the person's own language and age comes first, then the one read by default at this
/// age, then one for which language does not matter; among several, one with a spread, then one of
/// the person's sex, then the narrower group.
///
/// # Errors
/// [`NoNorm`] with the sentence to show.
///
/// ```
/// use penlight::clinical::knowledge::norms::{lookup, Method, Query, Task, Unit};
/// use penlight::clinical::knowledge::person::Age;
/// let query = Query {
///     task: Task::Pa,
///     method: Method::Time20,
///     unit: Unit::Seconds,
///     age: Some(Age::Years(14)),
///     sex: None,
///     language: None,
/// };
/// assert_eq!(
///     lookup(&query).unwrap_err().to_string(),
///     "No published value for age 14 years: the nearest table ends at 13 years."
/// );
/// ```
pub fn lookup(query: &Query) -> Result<Norm, NoNorm> {
    let of_task = || ROWS.iter().filter(|row| row.task == query.task);
    let first = of_task().next().ok_or(NoNorm::NoTable(query.task))?;
    let of_unit = || of_task().filter(|row| row.unit == query.unit);
    if of_unit().next().is_none() {
        return Err(NoNorm::OtherUnit(query.task, first.unit));
    }
    let comparable = |row: &&Row| {
        row.method == query.method || !(row.method.is_strict() || query.method.is_strict())
    };
    let of_method = || of_unit().filter(comparable);
    if of_method().next().is_none() {
        let other = of_unit().next().map_or(first.method, |row| row.method);
        return Err(NoNorm::OtherMethod(query.task, other));
    }
    let age = match query.age {
        Some(age @ (Age::Years(_) | Age::Months(_))) => age,
        Some(Age::Adult) | None => return Err(NoNorm::AgeNotGiven),
    };
    let months = age.at_least_months();
    let language = query.language.unwrap_or(ASSUMED);
    let own = |row: &&Row| within(row.ages, months) && row.speaks(language);
    let read = |row: &&Row| row.read.is_some_and(|ages| within(ages, months));
    let any = |row: &&Row| within(row.ages, months) && row.language == "-";
    let sex_fits = |row: &&Row| row.sex.is_none() || row.sex == query.sex;

    let best = |fits: &dyn Fn(&&'static Row) -> bool| {
        of_method()
            .filter(|row| fits(row) && sex_fits(row))
            .min_by_key(|row| (row.sd.is_none(), row.sex.is_none(), row.ages.1 - row.ages.0))
    };
    if let Some(row) = best(&own).or_else(|| best(&read)).or_else(|| best(&any)) {
        let one_language = !matches!(row.language, "-" | "not shown");
        return Ok(Norm {
            row,
            fit: Fit {
                nearest_group: !within(row.ages, months),
                other_language: one_language && !row.speaks(language),
                other_method: row.method != query.method,
                language_not_given: one_language && query.language.is_none(),
                ages_not_seen: !row.ages_seen,
            },
        });
    }
    // Nothing fits: which of the reasons is it?
    let at_this_age = of_method().find(|row| own(row) || read(row) || any(row));
    if let Some(sex) = at_this_age.and_then(|row| row.sex) {
        return Err(match query.sex {
            None => NoNorm::SexNotGiven,
            Some(_) => NoNorm::OtherSex(sex),
        });
    }
    // Only ages at which this person could get a row: not those of a group of another language that
    // is read for its own people only, nor those of the other sex.
    let mut before: Option<u32> = None;
    let mut after: Option<u32> = None;
    for row in of_method().filter(|row| query.sex.is_none() || sex_fits(row)) {
        let theirs = row.language == "-" || row.speaks(language);
        for (first, last) in [theirs.then_some(row.ages), row.read].into_iter().flatten() {
            if last < months {
                before = Some(before.map_or(last, |b| b.max(last)));
            } else {
                after = Some(after.map_or(first, |a| a.min(first)));
            }
        }
    }
    Err(match (before, after) {
        (Some(last), Some(first)) => NoNorm::Between(age, last, first),
        (Some(last), None) => NoNorm::TooOld(age, last),
        (None, Some(first)) => NoNorm::TooYoung(age, first),
        (None, None) => NoNorm::NoTable(query.task),
    })
}
