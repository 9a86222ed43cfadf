//! The names in a list of members, brought into order: which of them stands twice, and where one
//! stands.

/// Names in order, each with its place in the list.
pub(super) struct Names<'n>(Vec<(&'n str, usize)>);

impl<'n> FromIterator<&'n str> for Names<'n> {
    fn from_iter<I: IntoIterator<Item = &'n str>>(list: I) -> Names<'n> {
        Names::in_order(list.into_iter().zip(0..).collect())
    }
}

impl<'n> Names<'n> {
    fn in_order(mut names: Vec<(&'n str, usize)>) -> Names<'n> {
        names.sort_unstable();
        Names(names)
    }

    /// Every name in order, with its place in the list.
    pub(super) fn iter(&self) -> std::slice::Iter<'_, (&'n str, usize)> {
        self.0.iter()
    }

    /// The place of a name in the list.
    pub(super) fn place(&self, name: &str) -> Option<usize> {
        let found = self.0.binary_search_by(|(known, _)| (*known).cmp(name));
        self.0.get(found.ok()?).map(|(_, at)| *at)
    }

    /// Going down the list, the first name that has stood there before.
    pub(super) fn twice(&self) -> Option<String> {
        let mut first: Option<(&str, usize)> = None;
        for pair in self.0.windows(2) {
            if let [(one, _), (other, at)] = pair
                && one == other
                && first.is_none_or(|(_, before)| *at < before)
            {
                first = Some((other, *at));
            }
        }
        first.map(|(name, _)| name.to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::Names;

    #[test]
    fn the_first_name_met_again_is_the_one_that_stands_twice() {
        let twice = |list: &[&'static str]| list.iter().copied().collect::<Names<'_>>().twice();
        assert_eq!(twice(&[]), None);
        assert_eq!(twice(&["b", "a", "c"]), None);
        assert_eq!(twice(&["a", "b", "b", "a"]), Some("b".to_owned()));
        assert_eq!(twice(&["b", "a", "a", "b", "a"]), Some("a".to_owned()));
    }

    #[test]
    fn a_name_is_found_where_it_stands_in_the_list() {
        let names: Names<'_> = ["b", "c", "a"].into_iter().collect();
        assert_eq!(names.place("a"), Some(2));
        assert_eq!(names.place("b"), Some(0));
        assert_eq!(names.place("d"), None);
        assert!(names.iter().is_sorted());
    }
}
