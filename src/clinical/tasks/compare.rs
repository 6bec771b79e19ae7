//! A measured value beside the published one.

use crate::clinical::findings::exam::Exam;
use crate::clinical::knowledge::norms::{
    Method, NoNorm, Norm, Place, Quantity, Query, Task, lookup,
};
use crate::clinical::tasks::compared::Judged;
use crate::wording::words::small;

/// A value, and what is published for this person.
#[derive(Clone, Debug)]
pub struct Comparison {
    /// The value in words: "6 in 30 seconds".
    pub value: String,
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

    /// In words: the published value, where this one stands, and how far the group is the
    /// person's own; or why there is no published value.
    pub fn words(&self) -> String {
        let norm = match &self.norm {
            Ok(norm) => norm,
            Err(none) => return format!("{}. {none}", self.value),
        };
        let mut words = vec![format!(
            "{}. Published: {}.",
            self.value,
            small(&norm.row.to_string())
        )];
        if let Some(z) = self.place.and_then(|place| place.z) {
            words.push(format!("This one is {z}."));
        }
        words.push(format!("{}: {}.", norm.which(), norm.row.population));
        words.extend(norm.remarks());
        words.join(" ")
    }
}

/// Puts a value beside the published one for the person examined.
pub fn compare(
    exam: &Exam,
    task: Task,
    method: Method,
    quantity: Quantity,
    value: String,
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
