//! The tasks of a screen as one visit asks for them.

use crate::clinical::findings::exam::Exam;
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::screen::Screen;
use crate::clinical::knowledge::task::TaskId;

impl Screen {
    /// Its tasks in a visit: the repeated syllables are those the visit asks for, in its order.
    ///
    /// What was begun stays, whatever was left out since. A child's sequences stand last: whether
    /// they are asked for depends on how the single syllables went.
    pub fn tasks_of(&self, exam: &Exam) -> Vec<TaskId> {
        let begun = |task: &TaskId| exam.latest(*task).is_some();
        let wanted = exam.order.tasks();
        let mut order: Vec<TaskId> = wanted.to_vec();
        order.extend(
            Order::ALL
                .into_iter()
                .filter(|t| !wanted.contains(t) && begun(t)),
        );
        if !exam.who().by_adult_rules()
            && let Some(at) = order.iter().position(|t| *t == TaskId::Sequence)
        {
            let last = order.remove(at);
            order.push(last);
        }
        let mut order = Some(order);
        let mut tasks = Vec::new();
        for task in self.tasks {
            if Order::ALL.contains(task) {
                tasks.extend(order.take().into_iter().flatten());
            } else {
                tasks.push(*task);
            }
        }
        tasks
    }

    /// The repeated syllables that a visit does not ask for.
    pub fn left_out(&self, exam: &Exam) -> Vec<TaskId> {
        let asked = self.tasks_of(exam);
        self.tasks
            .iter()
            .copied()
            .filter(|t| !asked.contains(t))
            .collect()
    }
}
