//! What the trade prints of the draw, one row after the other.

use super::about;
use crate::tyring::advice::Row;
use crate::words::style::Style;

/// What stands above the rows.
pub const EACH_FOR_ITSELF: &str =
    "Printed by the trade, each for its own wheels; they differ, and no mean of them is advice.";

/// One row: the wheel it speaks of, what it gives, who prints it.
#[must_use]
pub fn row(row: &Row, style: Style) -> String {
    let most = about(row.most().0, style);
    let gives = match row.least() {
        None => format!("{most} at most"),
        Some(least) if least == row.most() => most,
        Some(least) => format!("{} to {most}", about(least.0, style)),
    };
    format!("{}: {gives} ({})", row.wheel, row.source)
}

#[cfg(test)]
mod tests {
    use super::row;
    use crate::tyring::advice::ROWS;
    use crate::words::sample::{inches, style};

    #[test]
    fn each_row_is_said_with_its_source() {
        let mut said = ROWS.map(|it| row(&it, inches())).to_vec();
        said.push(row(&ROWS[3], style()));
        insta::assert_snapshot!(said.join("\n"), @r"
        straight wagon wheel, set again: 1/2 in (J. G. Holmström, Modern Blacksmithing, 1901)
        the same, heavy and strong: 5/8 in at most (J. G. Holmström, Modern Blacksmithing, 1901)
        poor and dished wagon wheel: 1/4 in at most (J. G. Holmström, Modern Blacksmithing, 1901)
        straight wagon wheel, tyre of ½ in: 1/2 in to 3/4 in (Wagon and carriage tires, an American smith's manual (freeblacksmith.com))
        wagon wheel, dished and easily bent: 1/4 in at most (Wagon and carriage tires, an American smith's manual (freeblacksmith.com))
        carriage wheel: 1/8 in at most (Wagon and carriage tires, an American smith's manual (freeblacksmith.com))
        light wheel, much dished: 0 in (Wagon and carriage tires, an American smith's manual (freeblacksmith.com))
        two-horse wagon, spokes driven straight: 1/4 in (M. T. Richardson (comp.), Practical Carriage Building, vol. 1, 1891)
        Warner wheel of an English cart: 3/8 in (P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, c. 1900)
        large heavy English cart wheel: 1 1/4 in at most (P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, c. 1900)
        straight wagon wheel, tyre of ½ in: 12.5 mm to 19 mm (Wagon and carriage tires, an American smith's manual (freeblacksmith.com))
        ");
    }
}
