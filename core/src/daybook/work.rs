//! What was done to a part, and by whom.

use crate::wheel::Part;

// The enum, its documentation and its codes come from this one table, so that they cannot drift
// apart.
macro_rules! works {
    ($($variant:ident: $code:literal, $words:literal;)+) => {
        /// One sort of work on a wheel.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Work {
            $(#[doc = concat!($words, ".")] $variant,)+
        }

        impl Work {
            /// Every sort, in the order of the table.
            pub const ALL: &[Work] = &[$(Work::$variant,)+];

            /// The word that stands for this sort on paper.
            pub const fn code(self) -> &'static str {
                match self {
                    $(Work::$variant => $code,)+
                }
            }
        }
    };
}

works! {
    Cut: "cut", "A piece was cut out, of a tyre or of a part";
    Fitted: "fitted", "A part was fitted";
    ReWedged: "re-wedged", "A tongue was wedged anew";
    ReSeated: "re-seated", "A foot was seated anew, or shimmed";
    Welded: "welded", "Iron was welded";
    Contracted: "contracted", "The tyre was made smaller and shrunk on";
    NewFelloe: "new-felloe", "A felloe was made new";
    NewSpoke: "new-spoke", "A spoke was made new";
    NewDowel: "new-dowel", "A dowel was made new";
    BondDriven: "bond-driven", "A bond was driven up";
    ReBoxed: "re-boxed", "The box was set anew, or a new one put in";
    Greased: "greased", "The arm was cleaned and greased";
    NewKeeper: "new-keeper", "What keeps the wheel on was made new";
    Straightened: "straightened", "An arm was made straight";
    ReNailed: "re-nailed", "Strakes or a tyre were nailed anew";
    Other: "other", "Something else, said in words";
}

impl Work {
    /// The sort a code stands for.
    pub fn from_code(code: &str) -> Option<Work> {
        Work::ALL.iter().copied().find(|work| work.code() == code)
    }
}

/// Work done on one part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WorkDone {
    /// The part.
    pub part: Part,
    /// What was done, in the order it was said.
    pub did: Vec<Work>,
    /// More of it in words; may be empty.
    pub text: String,
    /// Who did it; empty if it is not said.
    pub by_whom: String,
}

#[cfg(test)]
mod tests {
    use super::Work;
    use std::collections::BTreeSet;

    #[test]
    fn a_code_leads_back_to_its_work() {
        for work in Work::ALL {
            assert_eq!(Work::from_code(work.code()), Some(*work));
        }
        assert_eq!(Work::from_code("painted"), None);
        let codes: BTreeSet<_> = Work::ALL.iter().map(|work| work.code()).collect();
        assert_eq!(codes.len(), Work::ALL.len());
    }
}
