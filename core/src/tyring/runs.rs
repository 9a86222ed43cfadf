//! Runs of a traveller as they are chalked up: `6 + 471` for six turns and what is left over, several parted by `;`. A
//! tape's are lengths alone.

use super::refusal::Refusal;
use super::round::Run;
use crate::quantity::LengthRange;
use crate::quantity::spelling::{self, BareUnit};

/// The runs in a text.
///
/// ```
/// use cartside_core::quantity::spelling::BareUnit;
/// use cartside_core::tyring::runs;
///
/// let chalked = runs::read("6 + 471; 6 + 18 1/2 in", BareUnit::Millimetre).unwrap();
/// assert_eq!((chalked.len(), chalked[1].turns), (2, 6));
/// ```
///
/// # Errors
///
/// [`Refusal::NoRuns`] of an empty text, [`Refusal::Given`] where a run is neither turns and a length nor a length.
pub fn read(text: &str, bare: BareUnit) -> Result<Vec<Run>, Refusal> {
    let runs = text.split(';').map(str::trim).filter(|run| !run.is_empty());
    let runs: Vec<Run> = runs.map(|run| one(run, bare)).collect::<Result<_, _>>()?;
    if runs.is_empty() {
        Err(Refusal::NoRuns)
    } else {
        Ok(runs)
    }
}

fn one(run: &str, bare: BareUnit) -> Result<Run, Refusal> {
    let parted = run.split_once('+');
    let turns = parted.and_then(|(turns, past)| Some((turns.trim().parse().ok()?, past)));
    // Where the turns are no number the whole is refused as what it then is: no length.
    let (turns, past) = turns.unwrap_or((0, run));
    let past = spelling::parse(past, LengthRange::General, bare)?;
    Ok(Run { turns, past })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::length::to_paper_mm;

    fn chalked(text: &str) -> Result<Vec<(u16, f64)>, Refusal> {
        let runs = read(text, BareUnit::Millimetre)?;
        Ok(runs
            .iter()
            .map(|run| (run.turns, to_paper_mm(run.past)))
            .collect())
    }

    #[test]
    fn turns_and_what_is_left_over_are_read() {
        assert_eq!(
            chalked("6 + 471;6+472.5 ; "),
            Ok(vec![(6, 471.0), (6, 472.5)])
        );
        assert_eq!(chalked("4241"), Ok(vec![(0, 4241.0)]));
        assert_eq!(chalked("2 + 1 ft 2 in"), Ok(vec![(2, 355.6)]));
    }

    #[test]
    fn what_is_no_run_is_refused() {
        assert_eq!(chalked(" ; "), Err(Refusal::NoRuns));
        for text in ["six + 471", "6 +", "-1 + 20", "99999 + 20", "6 + 471 + 2"] {
            assert!(matches!(chalked(text), Err(Refusal::Given(_))), "{text}");
        }
    }
}
