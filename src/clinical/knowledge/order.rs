//! Which of the repeated syllables a visit asks for, and in which order.

use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::task::TaskId;

/// Some of the repeated syllables, each at most once.
///
/// Stored with the visit. It never hides what was done: see [`crate::clinical::knowledge::screen::Screen::tasks_of`].
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(from = "Vec<TaskId>", into = "Vec<TaskId>")]
pub struct Order(Vec<TaskId>);

impl Order {
    /// All four, in the order of the screens.
    pub const ALL: [TaskId; 4] = [
        TaskId::SyllablePa,
        TaskId::SyllableTa,
        TaskId::SyllableKa,
        TaskId::Sequence,
    ];

    /// The tasks asked for, in order.
    pub fn tasks(&self) -> &[TaskId] {
        &self.0
    }

    /// This order without a task, or with it at the end.
    pub fn turned(&self, task: TaskId) -> Order {
        let mut tasks = self.0.clone();
        match tasks.iter().position(|t| *t == task) {
            Some(at) => {
                tasks.remove(at);
            }
            None => tasks.push(task),
        }
        Order::from(tasks)
    }

    /// This order with a task one place earlier.
    pub fn earlier(&self, task: TaskId) -> Order {
        let mut tasks = self.0.clone();
        if let Some(at) = tasks.iter().position(|t| *t == task).filter(|at| *at > 0) {
            tasks.swap(at - 1, at);
        }
        Order(tasks)
    }
}

impl Default for Order {
    fn default() -> Order {
        Order(Order::ALL.to_vec())
    }
}

impl From<Vec<TaskId>> for Order {
    fn from(wanted: Vec<TaskId>) -> Order {
        let mut tasks = Vec::new();
        for task in wanted {
            if Order::ALL.contains(&task) && !tasks.contains(&task) {
                tasks.push(task);
            }
        }
        Order(tasks)
    }
}

impl From<Order> for Vec<TaskId> {
    fn from(order: Order) -> Vec<TaskId> {
        order.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use TaskId::{Sequence, SyllableKa, SyllablePa, SyllableTa};

    #[test]
    fn one_press_changes_one_thing() {
        let order = Order::default().turned(SyllableTa);
        assert_eq!(order.tasks(), [SyllablePa, SyllableKa, Sequence]);
        let order = order.earlier(SyllableKa);
        assert_eq!(order.tasks(), [SyllableKa, SyllablePa, Sequence]);
        assert_eq!(order.earlier(SyllableKa), order);
        assert_eq!(order.earlier(SyllableTa), order);
        let back = order.turned(SyllableTa);
        assert_eq!(back.tasks(), [SyllableKa, SyllablePa, Sequence, SyllableTa]);
    }

    #[test]
    fn what_is_no_syllable_or_comes_twice_is_left_out() {
        let stored = r#"["Sequence","Water90","SyllablePa","Sequence"]"#;
        let order: Order = serde_json::from_str(stored).unwrap_or_default();
        assert_eq!(order.tasks(), [Sequence, SyllablePa]);
        let kept = serde_json::to_string(&order).unwrap_or_default();
        assert_eq!(kept, r#"["Sequence","SyllablePa"]"#);
    }
}
