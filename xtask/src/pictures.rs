//! `cargo xtask pictures`: the README's pictures, taken anew of the app as it is.

use crate::plan::Need;
use crate::test::Run;
use crate::{setup, step};
use anyhow::Result;

/// The program that takes them.
const PICTURES: &str = "pictures";
/// Where they lie.
const PLACE: &str = "public/pictures";

/// Builds the app and takes the pictures of its demonstration.
pub(crate) fn run() -> Result<()> {
    let run = Run::begin(setup::prepare(Need::BuildAndBrowse)?)?;
    let dist = run.build()?;
    let place = dist.with_file_name(PLACE);
    step::run(
        "take the pictures",
        "The step that failed is named above.",
        || {
            let mut take = run.program(PICTURES);
            take.args(["--", "--ignored", "--nocapture"]);
            step::call(take.env("CARTSIDE_PICTURES", &place))
        },
    )?;
    println!("{}: look at them", place.display());
    Ok(())
}
