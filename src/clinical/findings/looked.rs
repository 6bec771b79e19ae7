//! Looked for and there, looked for and not there, or not looked for.

/// What became of looking for something.
///
/// **Invariant:** not tested is the default, and is never taken for absent.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Looked {
    /// Looked for and found.
    Present,
    /// Looked for and not found.
    Absent,
    /// Not looked for, or it can't be said.
    #[default]
    NotTested,
}

impl Looked {
    /// Whether it was looked for and found.
    pub fn is_present(self) -> bool {
        self == Looked::Present
    }

    /// Whether it was looked for and not found.
    pub fn is_absent(self) -> bool {
        self == Looked::Absent
    }

    /// Whether it was not looked for.
    pub fn is_open(self) -> bool {
        self == Looked::NotTested
    }

    /// Several taken together: present where one is, absent only where all are.
    pub fn any(all: &[Looked]) -> Looked {
        if all.contains(&Looked::Present) {
            Looked::Present
        } else if all.iter().all(|one| one.is_absent()) {
            Looked::Absent
        } else {
            Looked::NotTested
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Looked::{self, *};

    #[test]
    fn together() {
        assert_eq!(Looked::any(&[Absent, NotTested, Present]), Present);
        assert_eq!(Looked::any(&[Absent, NotTested]), NotTested);
        assert_eq!(Looked::any(&[Absent, Absent]), Absent);
        assert_eq!(Looked::default(), NotTested);
    }
}
