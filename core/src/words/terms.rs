//! The one table of trade words that differ from country to country, and the one place where they are
//! put into a sentence. A sentence names them in braces: `Gap under the {tyre}`.

// The struct, both tables and the look-up by name come from this one list, so that they cannot drift
// apart.
macro_rules! terms {
    ($($(#[$line:meta])+ $name:ident: $british:literal, $american:literal;)+) => {
        /// Words of the trade, each in the singular and without an article.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub struct Terms {
            $($(#[$line])+ pub $name: &'static str,)+
        }

        /// British words.
        pub const BRITISH: Terms = Terms { $($name: $british,)+ };

        /// American words.
        pub const AMERICAN: Terms = Terms { $($name: $american,)+ };

        impl Terms {
            /// The word that goes by this name, in the form it has in a sentence.
            #[must_use]
            pub fn word(&self, name: &str) -> Option<&'static str> {
                match name {
                    $(stringify!($name) => Some(self.$name),)+
                    _ => None,
                }
            }
        }
    };
}

terms! {
    /// The iron ring, or what stands in its stead.
    tyre: "tyre", "tire";
    /// Putting a tyre on hot.
    tyring: "tyring", "setting tires";
    /// The middle of the wheel, into which the spokes are driven.
    nave: "nave", "hub";
    /// An iron ring on the nave.
    bond: "bond", "band";
    /// The iron lining of the nave, which turns on the arm.
    wheel_box: "box", "boxing";
    /// A length of the rim.
    felloe: "felloe", "felloe";
    /// The outside of the rim, on which the tyre sits.
    sole: "sole", "tread";
    /// The inside of the rim, towards the nave.
    belly: "belly", "belly";
    /// The face of the tyre that runs on the ground.
    running_face: "running face", "wearing face";
    /// The end of a spoke in the nave.
    foot: "foot", "foot";
    /// Several such ends.
    feet: "feet", "feet";
    /// The end of a spoke in the felloe.
    tongue: "tongue", "tenon";
    /// The pin through the end of an arm.
    linch_pin: "linch pin", "linchpin";
    /// Four wheels, for goods.
    waggon: "waggon", "wagon";
    /// The wheel's movement along its arm.
    end_play: "end play", "end play";
    /// How much smaller the tyre is made than the wheel, both measured round.
    draw: "draw", "draft";
    /// Making a tyre smaller.
    contract: "contract", "shrink";
    /// Upsetting a tyre hot, or cutting and welding it.
    cut_and_shut: "cut and shut", "cut and weld";
    /// The middle, as it is spelt.
    centre: "centre", "center";
}

impl Terms {
    /// The words of the other country.
    #[must_use]
    pub fn other(&self) -> &'static Terms {
        if self.tyre == BRITISH.tyre {
            &AMERICAN
        } else {
            &BRITISH
        }
    }

    /// The sentence with these words in the place of their names.
    #[must_use]
    pub fn fill(&self, sentence: &str) -> String {
        let mut said = String::with_capacity(sentence.len());
        let mut rest = sentence;
        while let Some((before, after)) = rest.split_once('{') {
            let (name, after) = after.split_once('}').unwrap_or((after, ""));
            said.push_str(before);
            said.push_str(self.word(name).unwrap_or(name));
            rest = after;
        }
        said.push_str(rest);
        said
    }
}

#[cfg(test)]
mod tests {
    use super::{AMERICAN, BRITISH};

    #[test]
    fn names_in_braces_become_words() {
        let sentence = "{tyre}: the {nave}'s {bond}s, {sole}";
        assert_eq!(BRITISH.fill(sentence), "tyre: the nave's bonds, sole");
        assert_eq!(AMERICAN.fill(sentence), "tire: the hub's bands, tread");
    }

    #[test]
    fn a_sentence_without_names_or_with_odd_ones_loses_nothing() {
        for (sentence, said) in [
            ("plain", "plain"),
            ("", ""),
            ("{unknown} word", "unknown word"),
            ("open {tyre", "open tyre"),
            ("shut }", "shut }"),
        ] {
            assert_eq!(BRITISH.fill(sentence), said);
        }
    }
}
