//! A measured value beside the published one.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::measured::Measured;
use crate::clinical::knowledge::norms::{
    Method, NoNorm, Norm, Place, Quantity, Query, Task, lookup,
};
use crate::clinical::tasks::compared::Judged;

/// A value, and what is published for this person.
#[derive(Clone, Debug)]
pub struct Comparison {
    /// The value.
    pub value: Measured,
    /// The published value, or why there is none.
    pub norm: Result<Norm, NoNorm>,
    /// Where the value stands, if a published one was found.
    pub place: Option<Place>,
}

impl Comparison {
    /// What a judged value was put beside, if it was.
    pub fn of(judged: &Judged) -> Option<Comparison> {
        let compared = judged.compared.as_ref().ok()?;
        Some(Comparison {
            value: judged.value.clone(),
            norm: Ok(compared.norm),
            place: Some(compared.place),
        })
    }
}

/// Puts a value beside the published one for the person examined.
pub fn compare(
    exam: &Exam,
    task: Task,
    method: Method,
    quantity: Quantity,
    value: Measured,
) -> Comparison {
    let norm = lookup(&Query {
        task,
        method,
        unit: quantity.unit(),
        age: exam.age,
        sex: exam.sex,
        language: exam.language.map(|language| language.tag()),
    });
    // A norm found for the unit of the value is in that unit.
    let place = norm
        .as_ref()
        .ok()
        .and_then(|norm| norm.place(quantity).ok());
    Comparison { value, norm, place }
}
