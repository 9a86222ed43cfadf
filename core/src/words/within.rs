//! Where one text stands in another: the library's way, made for long texts, weighs more than its haste is worth here.

/// Where the sought text first stands, in bytes; `None` where it does not, or where nothing is sought.
#[must_use]
pub fn find(text: &str, sought: &str) -> Option<usize> {
    let (text, sought) = (text.as_bytes(), sought.as_bytes());
    let first = sought.first()?;
    let mut places = text.iter().enumerate().filter(|(_, byte)| *byte == first);
    let at = places.find(|(at, _)| text.get(*at..).is_some_and(|it| it.starts_with(sought)));
    at.map(|(at, _)| at)
}

/// Takes the sought text out where it first stands; whether it stood there.
pub fn take_out(text: &mut String, sought: &str) -> bool {
    let at = find(text, sought);
    if let Some(at) = at {
        text.drain(at..at + sought.len());
    }
    at.is_some()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::{find, take_out};

    proptest! {
        #[test]
        fn it_stands_where_the_library_finds_it(text in "[abé½]{0,12}", sought in "[abé½]{1,3}") {
            prop_assert_eq!(find(&text, &sought), text.find(&sought));
        }

        #[test]
        fn what_is_taken_out_is_gone_once(text in "[abé½]{0,12}", sought in "[abé½]{1,3}") {
            let mut left = text.clone();
            prop_assert_eq!(take_out(&mut left, &sought), text.contains(&sought));
            prop_assert_eq!(left, text.replacen(&sought, "", 1));
        }
    }

    #[test]
    fn nothing_is_found_nowhere() {
        assert_eq!(find("spoke", ""), None);
    }
}
