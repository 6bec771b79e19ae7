//! From a person and a task to the published value that fits, or the reason why there is none.

use std::fmt;

use super::row::{Method, ROWS, Row, Task, Unit, ends, starts};
use crate::clinical::person::{Age, Sex};

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
}

impl Fit {
    /// Whether the group is the person's own. Where it is not, what follows is a note at most.
    pub fn is_own(self) -> bool {
        !self.nearest_group && !self.other_language
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
    /// What to say beside it: in which way the group is not the person's own.
    pub fn remarks(&self) -> Vec<String> {
        let mut remarks = Vec::new();
        if self.fit.nearest_group {
            remarks.push(format!("Nearest published group: {}.", self.row.population));
        }
        if self.fit.other_language {
            remarks.push("The group speaks another language.".to_owned());
        }
        if self.fit.other_method {
            remarks.push(format!(
                "Measured otherwise there: {}.",
                self.row.method.words()
            ));
        }
        remarks
    }
}

/// Why there is no published value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoNorm {
    /// None at all for this task.
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
                "No published value for {}: the nearest table starts at {}.",
                at(age),
                starts(first)
            ),
            NoNorm::TooOld(age, last) => write!(
                f,
                "No published value for {}: the nearest table ends at {}.",
                at(age),
                ends(last)
            ),
            NoNorm::Between(age, last, first) => write!(
                f,
                "No published value for {}: one table ends at {}, the next starts at {}.",
                at(age),
                ends(last),
                starts(first)
            ),
        }
    }
}

fn at(age: Age) -> String {
    match age {
        Age::Adult => "an adult of unknown age".to_owned(),
        age => format!("age {age}"),
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
/// age; among several, one with a spread, then one of the person's sex, then the narrower group.
///
/// # Errors
/// [`NoNorm`] with the sentence to show.
///
/// ```
/// use penlight::clinical::norms::{lookup, Method, Query, Task, Unit};
/// use penlight::clinical::person::Age;
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
    let sex_fits = |row: &&Row| row.sex.is_none() || row.sex == query.sex;

    let best = |rows: &mut dyn Iterator<Item = &'static Row>| {
        rows.min_by_key(|row| (row.sd.is_none(), row.sex.is_none(), row.ages.1 - row.ages.0))
    };
    let row = best(&mut of_method().filter(own).filter(sex_fits))
        .or_else(|| best(&mut of_method().filter(read).filter(sex_fits)));
    if let Some(row) = row {
        return Ok(Norm {
            row,
            fit: Fit {
                nearest_group: !within(row.ages, months),
                other_language: row.language != "-"
                    && row.language != "not shown"
                    && !row.speaks(language),
                other_method: row.method != query.method,
            },
        });
    }
    // Nothing fits: which of the reasons is it?
    let at_this_age = of_method().find(|row| own(row) || read(row));
    if let Some(sex) = at_this_age.and_then(|row| row.sex) {
        return Err(match query.sex {
            None => NoNorm::SexNotGiven,
            Some(_) => NoNorm::OtherSex(sex),
        });
    }
    let reach = |row: &'static Row| row.read.unwrap_or(row.ages);
    let before = of_method()
        .map(reach)
        .filter(|ages| ages.1 < months)
        .map(|ages| ages.1)
        .max();
    let after = of_method()
        .map(reach)
        .filter(|ages| ages.0 > months)
        .map(|ages| ages.0)
        .min();
    Err(match (before, after) {
        (Some(last), Some(first)) => NoNorm::Between(age, last, first),
        (Some(last), None) => NoNorm::TooOld(age, last),
        (None, Some(first)) => NoNorm::TooYoung(age, first),
        // Only groups of other languages have this age, and they are not read for others.
        (None, None) => NoNorm::NoTable(query.task),
    })
}
