//! A handful of values by name.

/// Values by name, in the order they were first given. For a few dozen entries at most: looking
/// up is one pass, and it costs the app a tenth of what an ordered map does.
#[derive(Clone, Debug)]
pub struct Table<V>(Vec<(String, V)>);

impl<V> Default for Table<V> {
    fn default() -> Table<V> {
        Table(Vec::new())
    }
}

/// Two tables are equal when they hold the same, in whatever order it was given.
impl<V: PartialEq> PartialEq for Table<V> {
    fn eq(&self, other: &Table<V>) -> bool {
        self.0.len() == other.0.len()
            && self
                .0
                .iter()
                .all(|(name, value)| other.get(name) == Some(value))
    }
}

impl<V: Eq> Eq for Table<V> {}

impl<V> Table<V> {
    /// The value with a name.
    pub fn get(&self, name: &str) -> Option<&V> {
        self.0.iter().find(|(n, _)| n == name).map(|(_, v)| v)
    }

    /// Whether there is a value with a name.
    pub fn contains_key(&self, name: &str) -> bool {
        self.get(name).is_some()
    }

    /// Puts a value in, over the one that had its name.
    pub fn insert(&mut self, name: String, value: V) {
        match self.0.iter_mut().find(|(n, _)| *n == name) {
            Some((_, old)) => *old = value,
            None => self.0.push((name, value)),
        }
    }

    /// Takes a value out.
    pub fn remove(&mut self, name: &str) -> Option<V> {
        let at = self.0.iter().position(|(n, _)| n == name)?;
        Some(self.0.remove(at).1)
    }

    /// Names and values.
    pub fn iter(&self) -> impl Iterator<Item = (&String, &V)> {
        self.0.iter().map(|(name, value)| (name, value))
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl<V> Extend<(String, V)> for Table<V> {
    fn extend<I: IntoIterator<Item = (String, V)>>(&mut self, entries: I) {
        for (name, value) in entries {
            self.insert(name, value);
        }
    }
}

impl<V> FromIterator<(String, V)> for Table<V> {
    fn from_iter<I: IntoIterator<Item = (String, V)>>(entries: I) -> Table<V> {
        let mut table = Table::default();
        table.extend(entries);
        table
    }
}

impl<V> IntoIterator for Table<V> {
    type Item = (String, V);
    type IntoIter = std::vec::IntoIter<(String, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_value_of_a_name_counts() {
        let entry = |n: &str, v: i32| (n.to_owned(), v);
        let mut table: Table<i32> = [entry("a", 1), entry("b", 2), entry("a", 3)]
            .into_iter()
            .collect();
        assert_eq!(
            (table.get("a"), table.get("b"), table.len()),
            (Some(&3), Some(&2), 2)
        );
        assert_eq!(table, [entry("b", 2), entry("a", 3)].into_iter().collect());
        assert_eq!(table.remove("a"), Some(3));
        assert_eq!(table.remove("a"), None);
        assert!(!table.contains_key("a"));
    }
}
